"""The weld symbol of a fillet on its reference line, drawn as the open standards draw it.

Arrow side of the weld: the triangle stands below the reference line, its upright leg always on
the left; size before the symbol, ``z`` for a leg and ``a`` for a throat (ISO 2553), or the bare
size in inches.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

__all__ = ["SymbolView", "paint_symbol"]

_LINE = 1.6
_WIDEST = 300.0


def paint_symbol(painter: QPainter, box: QRectF, size: str, ink: QPen, font: QFont) -> None:
    """Draw the symbol for a fillet called out as `size` into `box` (logical pixels)."""
    left = box.left() + 6.0
    right = min(box.right() - 4.0, left + _WIDEST)
    line = box.top() + box.height() * 0.24
    knee = left + 34.0
    foot = QPointF(left + 4.0, box.bottom() - 6.0)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(ink)
    painter.drawPolyline(QPolygonF([QPointF(right, line), QPointF(knee, line), foot]))
    _arrow_head(painter, QPointF(knee, line), foot, ink)
    height = min(28.0, box.height() * 0.42)
    corner = QPointF(knee + (right - knee) * 0.52, line)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    below = QPointF(corner.x(), line + height)
    painter.drawPolyline(QPolygonF([corner, below, QPointF(corner.x() + height, line)]))
    painter.setFont(font)
    metrics = QFontMetricsF(font)
    at = QPointF(corner.x() - 12.0 - metrics.horizontalAdvance(size), line + 4.0 + metrics.ascent())
    painter.drawText(at, size)


def _arrow_head(painter: QPainter, tail: QPointF, tip: QPointF, ink: QPen) -> None:
    along = tail - tip
    along /= (along.x() ** 2 + along.y() ** 2) ** 0.5
    across = QPointF(-along.y(), along.x())
    painter.setBrush(ink.color())
    painter.drawPolygon(
        QPolygonF([tip, tip + along * 15.0 + across * 5.0, tip + along * 15.0 - across * 5.0])
    )


class SymbolView(QWidget):
    """The symbol on the job card."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._size = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Room for the line, the triangle and the arrow."""
        return QSize(220, 60)

    minimumSizeHint = sizeHint

    def show_size(self, size: str, spoken: str) -> None:
        """Draw the symbol for `size`; `spoken` is what a screen reader says of it."""
        self._size = size
        self.setAccessibleName(spoken)
        self.setToolTip(spoken)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the symbol in the text colour."""
        painter = QPainter(self)
        pen = QPen(self.palette().color(QPalette.ColorRole.WindowText), _LINE)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        font = QFont(self.font())
        font.setPointSizeF(font.pointSizeF() * 1.25 if font.pointSizeF() > 0 else 14.0)
        font.setWeight(QFont.Weight.DemiBold)
        paint_symbol(painter, QRectF(self.rect()), self._size, pen, font)
        painter.end()
