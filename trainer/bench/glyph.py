"""Small drawn signs: the four states, the three faces, and which way a button moves the leaf."""

from __future__ import annotations

import math
from typing import Final, Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

__all__ = ["FACE_GLYPHS", "STATE_GLYPHS", "Glyph", "GlyphShape", "paint_glyph"]

GlyphShape = Literal[
    "", "ring", "disc", "triangle", "slash", "bulge", "flat", "hollow",
    "up", "down", "left", "right", "turn left", "turn right",
]

STATE_GLYPHS: Final[dict[str, GlyphShape]] = {
    "daylight": "ring", "touch": "disc", "held off": "triangle", "not seated": "slash",
}
FACE_GLYPHS: Final[dict[str, GlyphShape]] = {
    "convex": "bulge", "flat": "flat", "concave": "hollow",
}

_SIZE: Final = 16
_ARROWS: Final = {"right": 0.0, "down": 90.0, "left": 180.0, "up": 270.0}


def paint_glyph(painter: QPainter, shape: GlyphShape, ink: QColor) -> None:
    """Draw `shape` in `ink` into a 16 px box at the painter's origin."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(ink, 1.8)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if shape in _ARROWS:
        _paint_arrow(painter, _ARROWS[shape])
    elif shape in ("turn left", "turn right"):
        _paint_turn(painter, ink, left=shape == "turn left")
    elif shape in ("bulge", "flat", "hollow"):
        _paint_face(painter, shape)
    else:
        _paint_state(painter, shape, ink)
    painter.restore()


def _paint_state(painter: QPainter, shape: GlyphShape, ink: QColor) -> None:
    if shape == "ring":
        painter.drawEllipse(QRectF(3.0, 3.0, 10.0, 10.0))
    elif shape == "disc":
        painter.setBrush(ink)
        painter.drawEllipse(QRectF(3.0, 3.0, 10.0, 10.0))
    elif shape == "triangle":
        painter.setBrush(ink)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.drawPolygon(QPolygonF([QPointF(8, 2), QPointF(14.5, 13.5), QPointF(1.5, 13.5)]))
    elif shape == "slash":
        painter.drawLine(QPointF(3.0, 11.5), QPointF(13.0, 5.0))


def _paint_face(painter: QPainter, shape: GlyphShape) -> None:
    """A corner with a face across it: the words convex, flat and hollow as a picture."""
    painter.drawPolyline(QPolygonF([QPointF(2.5, 1.5), QPointF(2.5, 13.5), QPointF(14.5, 13.5)]))
    if shape == "flat":
        painter.drawLine(QPointF(2.5, 3.5), QPointF(12.5, 13.5))
    elif shape == "bulge":
        painter.drawArc(QRectF(-7.5, 3.5, 20.0, 20.0), 0, 90 * 16)
    else:
        painter.drawArc(QRectF(2.5, -6.5, 20.0, 20.0), 180 * 16, 90 * 16)


def _paint_arrow(painter: QPainter, degrees: float) -> None:
    painter.translate(8.0, 8.0)
    painter.rotate(degrees)
    painter.drawLine(QPointF(-5.5, 0.0), QPointF(5.5, 0.0))
    painter.drawPolyline(QPolygonF([QPointF(1.5, -4.0), QPointF(5.5, 0.0), QPointF(1.5, 4.0)]))


def _paint_turn(painter: QPainter, ink: QColor, *, left: bool) -> None:
    """Three quarters of a circle, with a head on its end."""
    if not left:
        painter.translate(16.0, 0.0)
        painter.scale(-1.0, 1.0)
    centre, radius = QPointF(8.0, 8.5), 5.2
    box = QRectF(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius)
    painter.drawArc(box, -150 * 16, 270 * 16)
    tail = math.radians(120.0 + 90.0)
    end = QPointF(centre.x() + radius * math.cos(tail), centre.y() - radius * math.sin(tail))
    painter.setBrush(ink)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawPolygon(
        QPolygonF([QPointF(end.x() - 3.4, end.y() - 1.0), QPointF(end.x() + 3.2, end.y() - 1.4),
                   QPointF(end.x() + 0.4, end.y() + 4.0)])
    )


class Glyph(QWidget):
    """A sign beside a word; never the only bearer of a meaning."""

    def __init__(self, shape: GlyphShape, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shape = shape
        self.setFixedSize(_SIZE, _SIZE)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the sign in the text colour, greyed with its button."""
        painter = QPainter(self)
        paint_glyph(painter, self.shape, self.palette().color(QPalette.ColorRole.WindowText))
        painter.end()
