"""The light table: what the section stands before, and the grid on it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QBrush, QColor, QPainter, QRadialGradient, QTransform

from geometry.lengths import Unit
from trainer.canvas.drawing import Vec
from trainer.canvas.ruler import divisions
from trainer.canvas.view import View
from trainer.look.tokens import Theme

__all__ = [
    "mixed",
    "paint_bloom",
    "paint_even_light",
    "paint_grid",
    "paint_light",
    "tint",
    "world",
]

_OFF_ROOT: Final = (0.377, 0.281)
"""mm: how far the grid's lines lie off the root, so that they don't count off a leg."""


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


def mixed(first: str, second: str, share: float) -> QColor:
    """Return the opaque tone that lies `share` of the way from `first` to `second`.

    Examples
    --------
    >>> mixed("#000000", "#ffffff", 0.2).name()
    '#333333'
    """
    a, b = QColor(first), QColor(second)
    return QColor.fromRgbF(
        a.redF() + (b.redF() - a.redF()) * share,
        a.greenF() + (b.greenF() - a.greenF()) * share,
        a.blueF() + (b.blueF() - a.blueF()) * share,
    )


def world(view: View) -> QTransform:
    """Return the transform from the section's plane (mm, up) to logical pixels (down)."""
    x, y = view.to_screen((0.0, 0.0))
    return QTransform(view.scale, 0.0, 0.0, -view.scale, x, y)


def _lamp(view: View, work: Vec) -> tuple[QPointF, float]:
    """Where the light is brightest, logical pixels, and how far it reaches.

    The lamp stands behind the work (mm), yet never so far aside that the picture falls dark.
    """
    (x, y), (width, height) = view.to_screen(work), view.size
    return (
        QPointF(min(max(x, 0.25 * width), 0.75 * width), min(max(y, 0.25 * height), 0.75 * height)),
        math.hypot(width, height),
    )


def paint_light(painter: QPainter, view: View, theme: Theme, work: Vec = (0.0, 0.0)) -> None:
    """Fill the view with a warm light, brightest behind `work` (mm)."""
    middle, reach = _lamp(view, work)
    glow = QRadialGradient(middle, 0.86 * reach)
    for at, colour in (
        (0.0, theme.bench.glow),
        (0.16, theme.bench.glow),
        (0.42, theme.bench.light),
        (1.0, theme.bench.dusk),
    ):
        glow.setColorAt(at, QColor(colour))
    painter.fillRect(QRectF(0.0, 0.0, *view.size), QBrush(glow))


def paint_even_light(painter: QPainter, view: View, theme: Theme) -> None:
    """Fill the view with the lamp's own light."""
    painter.fillRect(QRectF(0.0, 0.0, *view.size), QColor(theme.bench.glow))


def paint_bloom(painter: QPainter, view: View, theme: Theme, work: Vec) -> None:
    """Let the grid drown in the light where that is brightest."""
    middle, reach = _lamp(view, work)
    bloom = QRadialGradient(middle, 0.34 * reach)
    bloom.setColorAt(0.0, tint(theme.bench.glow, 0.72))
    bloom.setColorAt(0.35, tint(theme.bench.glow, 0.60))
    bloom.setColorAt(1.0, tint(theme.bench.glow, 0.0))
    painter.fillRect(QRectF(0.0, 0.0, *view.size), QBrush(bloom))


def paint_grid(
    painter: QPainter, view: View, theme: Theme, unit: Unit, *, faint: bool = False
) -> None:
    """Rule the light table in round divisions of `unit`, not counted from the root."""
    bench = theme.bench
    step = divisions(view.scale, unit)
    every = max(2, round(step.strong / step.fine))
    # Fine lines fade in as they part, so that zooming shows no jump.
    room = min(1.0, max(0.0, (step.fine * view.scale - 12.0) / 20.0))
    fine: list[QRectF] = []
    strong: list[QRectF] = []
    for index, line in _lines(view, step.fine):
        (strong if index % every == 0 else fine).append(line)
    # Opaque tones: blending a line takes five times as long as setting it.
    for lines, tone in (
        (fine, mixed(bench.light, bench.grid, (0.4 + 0.6 * room) * (0.5 if faint else 1.0))),
        (strong, mixed(bench.light, bench.grid_strong, 0.5 if faint else 1.0)),
    ):
        for line in lines:
            painter.fillRect(line, tone)


def _lines(view: View, step: float) -> Iterator[tuple[int, QRectF]]:
    """Grid lines with their numbers, each one device pixel wide and on whole pixels.

    They are rectangles: a stroked line of the same width takes fifty times as long to paint.
    """
    (width, height), thin = view.size, 1.0 / view.ratio
    left, bottom, right, top = view.box
    off_x, off_y = _OFF_ROOT

    def crisp(at: float) -> float:
        return math.floor(at * view.ratio) / view.ratio

    for index in range(math.ceil((left - off_x) / step), math.floor((right - off_x) / step) + 1):
        x = crisp(view.to_screen((off_x + index * step, 0.0))[0])
        yield index, QRectF(x, 0.0, thin, height)
    for index in range(math.ceil((bottom - off_y) / step), math.floor((top - off_y) / step) + 1):
        y = crisp(view.to_screen((0.0, off_y + index * step))[1])
        yield index, QRectF(0.0, y, width, thin)
