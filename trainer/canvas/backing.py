"""The picture that a section was taken from, behind it; the section is then drawn through."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QImageReader, QPainter, QPen

from trainer.canvas.light import tint, world
from trainer.canvas.scene import Backing
from trainer.canvas.shapes import SectionPaths
from trainer.canvas.view import View
from trainer.look.tokens import Theme

__all__ = ["paint_backing", "paint_through"]

_LARGEST: Final = 64
"""MB that a picture may take once it is unpacked: what is larger was made to do harm."""

_WASH: Final = 0.10
_RIM: Final = 3.5
_LINE: Final = 1.5
"""Logical pixels: the section's edge over the picture, and the rim that parts the two."""


@lru_cache(maxsize=4)
def _unpacked(jpeg: bytes) -> QImage:
    """The picture; a null image if it is broken or too large."""
    data = QByteArray(jpeg)
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer, QByteArray(b"jpeg"))
    size = reader.size()
    if not size.isValid() or 4 * size.width() * size.height() > _LARGEST * 1024 * 1024:
        return QImage()
    image: QImage = reader.read()
    return image


def paint_backing(painter: QPainter, backing: Backing, view: View) -> bool:
    """Paint the picture where it lies; whether it could be unpacked."""
    image = _unpacked(backing.jpeg)
    if image.isNull():
        return False
    wide, high = (side * backing.mm_per_pixel for side in (image.width(), image.height()))
    x, y = view.to_screen((backing.left, backing.top))
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    painter.drawImage(QRectF(x, y, wide * view.scale, high * view.scale), image)
    painter.restore()
    return True


def paint_through(painter: QPainter, paths: SectionPaths, view: View, theme: Theme) -> None:
    """Paint the section as lines over its picture, the weld faintly tinted."""
    to_screen = world(view)
    bodies = [(name, to_screen.map(body)) for name, body in paths.bodies]
    accent = theme.role("truth")
    for name, body in bodies:
        if name not in ("base", "upright"):
            painter.fillPath(body, tint(accent, _WASH))
    for colour, width in ((tint(theme.panel, 0.8), _RIM), (QColor(accent), _LINE)):
        pen = QPen(colour, width)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        for _, body in bodies:
            painter.strokePath(body, pen)
