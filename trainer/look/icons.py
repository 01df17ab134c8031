"""Icons: our own SVG drawings, in the colours of the theme."""

from __future__ import annotations

from functools import cache
from typing import Final

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from trainer.assets import asset

__all__ = ["ICONS", "icon_pixmap"]

ICONS: Final = (
    "arrow-down",
    "arrow-left",
    "arrow-right",
    "arrow-up",
    "clean",
    "disc",
    "face-convex",
    "face-flat",
    "face-hollow",
    "press-home",
    "put-back",
    "ring",
    "slash",
    "swap-ends",
    "triangle",
    "turn-left",
    "turn-over",
    "turn-right",
    "undo",
)


@cache
def _drawing(name: str) -> str:
    return asset("icons", f"{name}.svg").read_text(encoding="utf-8")


def icon_pixmap(name: str, colour: str, size: int, ratio: float = 1.0) -> QPixmap:
    """Return an icon of `size` logical pixels, drawn in one colour (``#rrggbb``).

    Raises
    ------
    FileNotFoundError
        If there is no icon of that name; `ICONS` lists them.
    """
    renderer = QSvgRenderer(QByteArray(_drawing(name).replace("currentColor", colour).encode()))
    pixmap = QPixmap(round(size * ratio), round(size * ratio))
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    renderer.render(painter, QRectF(0.0, 0.0, pixmap.width(), pixmap.height()))
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap
