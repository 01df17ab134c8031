"""Records what the window's first paint replays: the shipped tray's first coupon, in both looks.

After a change to that coupon or to how a section is painted, record it anew:
``python -m trainer.bench.first_picture``.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Final

from PySide6.QtCore import QDataStream
from PySide6.QtGui import QGuiApplication, QPainter, QPicture

from exercises.coupon import Coupon
from exercises.tray import load_tray
from trainer.arrangement import rooms_in
from trainer.assets import asset
from trainer.canvas.drawing import Drawing, drawing_of
from trainer.canvas.painter import paint
from trainer.canvas.scene import Scene
from trainer.canvas.view import View, capped_scale, fitted, home_box
from trainer.first_paint import FORMAT
from trainer.look.tokens import DARK, LIGHT, Theme

__all__ = ["WINDOW", "first_view", "main", "record", "write"]

WINDOW: Final = (1280, 760)
"""Logical pixels of the window that the recording is made for; others are scaled from it."""


def first_view(drawing: Drawing, eye_limit: float) -> View:
    """Return the view that a canvas in a window of the usual size has of `drawing`."""
    _, _, width, height = rooms_in(*WINDOW).picture
    largest = capped_scale(eye_limit, 1.0)
    view = View((0.0, 0.0), 10.0, (float(width), float(height)))
    return fitted(view, drawing, None, largest=largest)


def record(coupon: Coupon, theme: Theme) -> QPicture:
    """Return the painter's strokes for `coupon` before a leaf is taken. Needs an application."""
    drawing = drawing_of(coupon.section)
    # A recording can be replayed by the Qt that made it and by later ones only, unless it says so.
    picture = QPicture(QDataStream.Version.Qt_6_8.value)
    painter = QPainter(picture)
    # No scale bar: its figures would need fonts before the first paint.
    scene = Scene(section=drawing, theme=theme, capped=True, scale_bar=False)
    paint(painter, scene, first_view(drawing, coupon.eye_limit))
    painter.end()
    return picture


def write(folder: Path, coupon: Coupon) -> None:
    """Write both pictures, and what is needed to place them, into `folder`."""
    drawing = drawing_of(coupon.section)
    view = first_view(drawing, coupon.eye_limit)
    folder.mkdir(exist_ok=True)
    told = {
        "format": FORMAT,
        "of": coupon.digest,
        "size": list(view.size),
        "scale": view.scale,
        "box": list(home_box(drawing, None)),
        "largest": capped_scale(coupon.eye_limit, 1.0),
        "looks": {
            theme.name: {
                "window": theme.window,
                "panel": theme.panel,
                "light": theme.bench.light,
            }
            for theme in (LIGHT, DARK)
        },
    }
    text = json.dumps(told, indent=1) + "\n"
    (folder / "first.json").write_text(text, encoding="utf-8")
    for theme in (LIGHT, DARK):
        record(coupon, theme).save(str(folder / f"{theme.name}.pic"))


def main() -> None:
    """Record the first shipped coupon."""
    app = QGuiApplication.instance() or QGuiApplication([])
    coupon = load_tray(asset("trays", "heron-footbridge.tray.json")).coupons[0]
    write(asset("trays").parent / "stills", coupon)
    app.quit()


if __name__ == "__main__":
    main()
