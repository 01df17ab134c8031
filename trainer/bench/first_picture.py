"""Records what the window's first paint shows: the shipped tray's first coupon, and its rack.

After a change to that coupon, to how a section is painted or to the strip below the picture, record
it anew:
``python -m trainer.bench.first_picture``.
"""

from __future__ import annotations

import base64
import json
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QDataStream, QPoint
from PySide6.QtGui import QColor, QPainter, QPicture
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget

from exercises.coupon import Coupon
from exercises.tray import Tray, load_tray
from trainer.arrangement import Box, rooms_in
from trainer.assets import asset
from trainer.bench.layout import BenchLayout
from trainer.bench.rack import LeafButton, dress_of, mark_outline
from trainer.bench.screen import BenchScreen
from trainer.canvas.canvas import Canvas
from trainer.canvas.drawing import Drawing, drawing_of
from trainer.canvas.painter import paint
from trainer.canvas.scene import Scene
from trainer.canvas.view import View, capped_scale, fitted, home_box
from trainer.first_paint import FORMAT
from trainer.hanging import paint_hanging, strokes_of
from trainer.look.tokens import DARK, LIGHT, Theme
from trainer.settings import Settings
from trainer.window import WindowFrame

__all__ = ["WINDOW", "first_view", "main", "rack_told", "record", "write"]

WINDOW: Final = (1280, 760)
"""Logical pixels of the window that the recording is made for; others are scaled from it."""

_NARROW: Final = (1000, 640)
"""A window where the bench arranges itself for want of width."""


def first_view(drawing: Drawing, eye_limit: float) -> View:
    """Return the view that a canvas in a window of the usual size has of `drawing`."""
    _, _, width, height = rooms_in(*WINDOW).picture
    largest = capped_scale(eye_limit, 1.0)
    view = View((0.0, 0.0), 10.0, (float(width), float(height)))
    return fitted(view, drawing, None, largest=largest)


def record(coupon: Coupon, theme: Theme) -> QPicture:
    """Return the painter's strokes for `coupon` before a leaf is taken. Needs an application."""
    drawing = drawing_of(coupon.section)
    picture = _blank()
    painter = QPainter(picture)
    # No scale bar: its figures would need fonts before the first paint.
    scene = Scene(section=drawing, theme=theme, capped=True, scale_bar=False)
    paint(painter, scene, first_view(drawing, coupon.eye_limit))
    painter.end()
    return picture


def _blank() -> QPicture:
    # A recording can be replayed by the Qt that made it and by later ones only, unless it says so.
    return QPicture(QDataStream.Version.Qt_6_8.value)


def _written(picture: QPicture) -> str:
    strokes = picture.data()
    assert isinstance(strokes, memoryview)
    return base64.b64encode(strokes).decode("ascii")


def _surface(colour: str) -> str:
    """A square of one pixel in that colour, written down."""
    picture = _blank()
    painter = QPainter(picture)
    painter.fillRect(0, 0, 1, 1, QColor(colour))
    painter.end()
    return _written(picture)


def _leaf(button: LeafButton, size: tuple[int, int], theme: Theme) -> str:
    """A leaf that hangs in a room of that size, written down."""
    picture = _blank()
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    mark = mark_outline(button.leaf.mark, button.font())
    paint_hanging(painter, size, button.share, mark, dress_of(theme, lit=False, out=False))
    painter.end()
    return _written(picture)


def rack_told(coupon: Coupon) -> dict[str, Any]:
    """Return what the first paint must know of the rack that `coupon` hangs there.

    Needs an application, and dresses it.
    """
    window = QMainWindow()
    bench = BenchLayout(Canvas())
    frame = WindowFrame(window, Settings(), bench)
    screen = BenchScreen(frame, bench, Tray(coupon.title, (coupon,)), None)
    insets = {}
    for name, size in (("ample", WINDOW), ("narrow", _NARROW)):
        window.resize(*size)
        # Never shown: so nothing is laid out unless it is asked for.
        window.grab()
        insets[name] = _insets(screen.rack_panel.rack, bench.foot)
    buttons = screen.rack_panel.rack.buttons
    window.resize(*WINDOW)
    window.grab()
    size = (buttons[0].width(), buttons[0].height())
    return {
        "insets": insets,
        "size": size,
        "recorded": {
            theme.name: [_leaf(button, size, theme) for button in buttons]
            for theme in (LIGHT, DARK)
        },
        "leaves": [
            {
                "mark": button.leaf.mark,
                "share": button.share,
                "strokes": strokes_of(mark_outline(button.leaf.mark, button.font())),
            }
            for button in buttons
        ],
        "dresses": {
            theme.name: {
                "plain": dress_of(theme, lit=False, out=False),
                "lit": dress_of(theme, lit=True, out=False),
            }
            for theme in (LIGHT, DARK)
        },
    }


def _insets(inner: QWidget, outer: QWidget) -> Box:
    """Left, top, right and bottom between a widget and one that it lies in."""
    at = inner.mapTo(outer, QPoint(0, 0))
    right = outer.width() - at.x() - inner.width()
    return at.x(), at.y(), right, outer.height() - at.y() - inner.height()


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
                "window": _surface(theme.window),
                "panel": _surface(theme.panel),
                "light": _surface(theme.bench.light),
            }
            for theme in (LIGHT, DARK)
        },
        "rack": rack_told(coupon),
    }
    text = json.dumps(told) + "\n"
    (folder / "first.json").write_text(text, encoding="utf-8")
    for theme in (LIGHT, DARK):
        record(coupon, theme).save(str(folder / f"{theme.name}.pic"))


def main() -> None:
    """Record the first shipped coupon."""
    app = QApplication.instance() or QApplication([])
    coupon = load_tray(asset("trays", "heron-footbridge.tray.json")).coupons[0]
    write(asset("trays").parent / "stills", coupon)
    app.quit()


if __name__ == "__main__":
    main()
