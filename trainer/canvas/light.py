"""The light table: what the section stands before, and the grid on it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QRadialGradient, QTransform

from geometry.lengths import Unit
from trainer.canvas.ruler import divisions
from trainer.canvas.view import View
from trainer.look.tokens import Theme

__all__ = ["paint_grid", "paint_light", "tint", "world"]


def tint(colour: str, alpha: float) -> QColor:
    """Return `colour` at an opacity from 0 to 1.

    Examples
    --------
    >>> tint("#ff0000", 0.5).alpha()
    128
    """
    result = QColor(colour)
    result.setAlphaF(alpha)
    return result


def world(view: View) -> QTransform:
    """Return the transform from the section's plane (mm, up) to logical pixels (down)."""
    x, y = view.to_screen((0.0, 0.0))
    return QTransform(view.scale, 0.0, 0.0, -view.scale, x, y)


def paint_light(painter: QPainter, view: View, theme: Theme) -> None:
    """Fill the view with a warm light, brightest in its middle."""
    width, height = view.size
    glow = QRadialGradient(QPointF(0.50 * width, 0.47 * height), 0.64 * math.hypot(width, height))
    glow.setColorAt(0.0, QColor(theme.bench.glow))
    glow.setColorAt(0.30, QColor(theme.bench.glow))
    glow.setColorAt(0.66, QColor(theme.bench.light))
    glow.setColorAt(1.0, QColor(theme.bench.dusk))
    painter.fillRect(QRectF(0.0, 0.0, width, height), QBrush(glow))


def paint_grid(painter: QPainter, view: View, theme: Theme, unit: Unit) -> None:
    """Rule the light table in round divisions of `unit`, counted from the root."""
    step = divisions(view.scale, unit)
    every = max(2, round(step.strong / step.fine))
    # Fine lines fade in as they part, so that zooming shows no jump.
    room = min(1.0, max(0.0, (step.fine * view.scale - 12.0) / 20.0))
    fine: list[QLineF] = []
    strong: list[QLineF] = []
    for index, line in _lines(view, step.fine):
        (strong if index % every == 0 else fine).append(line)
    width = 1.0 / view.ratio
    for lines, colour, alpha in (
        (fine, theme.bench.grid, 0.25 + 0.35 * room),
        (strong, theme.bench.grid_strong, 0.75),
    ):
        pen = QPen(tint(colour, alpha), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        painter.drawLines(lines)


def _lines(view: View, step: float) -> Iterator[tuple[int, QLineF]]:
    width, height = view.size
    left, bottom, right, top = view.box

    def crisp(at: float) -> float:
        return (math.floor(at * view.ratio) + 0.5) / view.ratio

    for index in range(math.ceil(left / step), math.floor(right / step) + 1):
        x = crisp(view.to_screen((index * step, 0.0))[0])
        yield index, QLineF(x, 0.0, x, height)
    for index in range(math.ceil(bottom / step), math.floor(top / step) + 1):
        y = crisp(view.to_screen((0.0, index * step))[1])
        yield index, QLineF(0.0, y, width, y)
