"""A weld symbol on a job card."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from trainer.figures import figures
from trainer.symbols.drawn import TEXT, Stroke, Symbol

__all__ = ["SymbolView", "paint_symbol", "scale_of"]

_LARGEST: Final = 24.0
"""Logical pixels: no triangle is drawn higher."""

_MARGIN: Final = 3.0
_LINE: Final = 1.6


def scale_of(symbol: Symbol, box: QRectF) -> float:
    """Return how many logical pixels a symbol's unit takes so that all of it has room in `box`."""
    left, top, right, bottom = symbol.box
    return min(
        _LARGEST,
        (box.width() - 2.0 * _MARGIN) / (right - left),
        (box.height() - 2.0 * _MARGIN) / (bottom - top),
    )


def paint_symbol(painter: QPainter, box: QRectF, symbol: Symbol, ink: QPen, font: QFont) -> None:
    """Draw a symbol into `box` (logical pixels), from its left, in the middle of its height."""
    scale = scale_of(symbol, box)
    left, top, _, bottom = symbol.box
    origin = QPointF(
        box.left() + _MARGIN - left * scale, box.center().y() - (top + bottom) / 2.0 * scale
    )

    def spot(at: tuple[float, float]) -> QPointF:
        return origin + QPointF(at[0] * scale, at[1] * scale)

    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for stroke in symbol.strokes:
        painter.setPen(_pen(ink, stroke))
        polygon = QPolygonF([spot(point) for point in stroke.points])
        if stroke.closed:
            painter.drawPolygon(polygon)
        else:
            painter.drawPolyline(polygon)
    painter.setPen(ink)
    for circle in symbol.circles:
        painter.drawEllipse(spot(circle.centre), circle.radius * scale, circle.radius * scale)
    painter.setBrush(ink.color())
    for fill in symbol.fills:
        painter.drawPolygon(QPolygonF([spot(point) for point in fill.points]))
    font = QFont(font)
    font.setPixelSize(max(1, round(TEXT * scale * 0.86)))
    painter.setFont(font)
    metrics = QFontMetricsF(font)
    for word in symbol.words:
        at = spot(word.at) + QPointF(0.0, metrics.capHeight() / 2.0)
        painter.drawText(at, figures(word.text))


def _pen(ink: QPen, stroke: Stroke) -> QPen:
    pen = QPen(ink)
    if stroke.dashed:
        pen.setDashPattern([3.0, 2.5])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen


class SymbolView(QWidget):
    """The symbol on the job card."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.symbol: Symbol | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Room for the lines, what stands on them, and the arrow."""
        return QSize(220, 60)

    minimumSizeHint = sizeHint

    def show_symbol(self, symbol: Symbol, spoken: str) -> None:
        """Draw `symbol`; `spoken` is what a screen reader says of it."""
        self.setAccessibleName(spoken)
        self.setToolTip(spoken)
        if symbol != self.symbol:
            self.symbol = symbol
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the symbol in the text colour."""
        if self.symbol is None:
            return
        painter = QPainter(self)
        pen = QPen(self.palette().color(QPalette.ColorRole.WindowText), _LINE)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        font = QFont(self.font())
        font.setWeight(QFont.Weight.DemiBold)
        paint_symbol(painter, QRectF(self.rect()), self.symbol, pen, font)
        painter.end()
