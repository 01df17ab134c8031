"""What lies on the picture without being part of it: chips of text, scale bar, tether."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from geometry.lengths import Unit
from trainer.canvas.light import tint
from trainer.canvas.ruler import bar_length
from trainer.canvas.scene import Tether
from trainer.canvas.view import Box, View
from trainer.look.fonts import font
from trainer.look.tokens import Theme

__all__ = [
    "MARGIN",
    "chip_size",
    "paint_chip",
    "paint_scale_bar",
    "paint_tether",
    "scale_bar_box",
]

MARGIN = 16.0
"""Logical pixels between what lies on the picture and its edge."""


def chip_size(text: str, theme: Theme, *, marked: bool = False) -> tuple[float, float]:
    """Return width and height of a chip with `text`, logical pixels."""
    metrics = QFontMetricsF(font(theme, "caption"))
    return metrics.horizontalAdvance(text) + (26.0 if marked else 16.0), metrics.height() + 8.0


def paint_chip(
    painter: QPainter, rect: QRectF, text: str, theme: Theme, *, colour: str | None = None
) -> None:
    """Paint `text` on a small panel; `colour` adds a bar of that colour at its left."""
    painter.setPen(QPen(tint(theme.outline, 0.55), 1.0))
    painter.setBrush(tint(theme.panel, 0.95))
    painter.drawRoundedRect(rect, 5.0, 5.0)
    left = 8.0
    if colour is not None:
        bar = QRectF(rect.left() + 7.0, rect.top() + 6.0, 3.0, rect.height() - 12.0)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colour))
        painter.drawRoundedRect(bar, 1.5, 1.5)
        left = 17.0
    painter.setFont(font(theme, "caption"))
    painter.setPen(QColor(theme.ink))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawText(
        rect.adjusted(left, 0.0, -2.0, 0.0),
        int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft),
        text,
    )


def scale_bar_box(view: View, unit: Unit, theme: Theme) -> Box:
    """Return what the scale bar covers: left, top, right, bottom, logical pixels."""
    wide = bar_length(view.scale, unit, most=_longest(view))[0] * view.scale
    high = QFontMetricsF(font(theme, "caption")).height() + 22.0
    bottom = view.size[1] - MARGIN
    return (MARGIN, bottom - high, MARGIN + wide + 24.0, bottom)


def _longest(view: View) -> float:
    return min(220.0, view.size[0] * 0.3)


def paint_scale_bar(painter: QPainter, view: View, theme: Theme, unit: Unit) -> None:
    """Paint a scale bar at the lower left, a round length in `unit`."""
    length, text = bar_length(view.scale, unit, most=_longest(view))
    wide = length * view.scale
    left, top, right, bottom = scale_bar_box(view, unit, theme)
    rect = QRectF(left, top, right - left, bottom - top)
    label = rect.height() - 22.0
    painter.setPen(QPen(tint(theme.outline, 0.55), 1.0))
    painter.setBrush(tint(theme.panel, 0.92))
    painter.drawRoundedRect(rect, 6.0, 6.0)
    painter.setFont(font(theme, "caption"))
    painter.setPen(QColor(theme.ink))
    painter.drawText(
        QRectF(rect.left() + 12.0, rect.top() + 4.0, max(wide, 80.0), label),
        int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft),
        text,
    )
    pen = QPen(QColor(theme.ink), 1.5)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    left, y = rect.left() + 12.0, rect.bottom() - 9.0
    painter.drawLines(
        [
            QLineF(left, y, left + wide, y),
            QLineF(left, y - 4.0, left, y + 4.0),
            QLineF(left + wide, y - 4.0, left + wide, y + 4.0),
            QLineF(left + wide / 2.0, y - 2.5, left + wide / 2.0, y),
        ]
    )


def paint_tether(painter: QPainter, tether: Tether, view: View, theme: Theme) -> None:
    """Paint the pull of a hand that the leaf can't follow."""
    grab = QPointF(*view.to_screen(tether.grab))
    pointer = QPointF(*view.to_screen(tether.pointer))
    if QLineF(grab, pointer).length() < 1.5:
        return
    for colour, width in ((theme.bench.glow, 3.5), (theme.bench.tether, 1.4)):
        pen = QPen(QColor(colour), width)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLine(grab, pointer)
    painter.setPen(QPen(QColor(theme.bench.glow), 1.5))
    painter.setBrush(QColor(theme.bench.tether))
    painter.drawEllipse(grab, 4.0, 4.0)
    painter.setBrush(Qt.BrushStyle.NoBrush)
