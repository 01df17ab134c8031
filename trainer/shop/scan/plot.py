"""The plot painted: points kept and left out, members, toes, the section's outline, handles."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from geometry.curves import Vec
from geometry.lengths import Unit
from trainer.canvas.furniture import chip_size, paint_chip, paint_scale_bar
from trainer.canvas.view import View
from trainer.look.tokens import Theme
from trainer.shop.scan.state import Handle

__all__ = ["HandleWords", "Plot", "paint_plot"]

FloatArray = NDArray[np.float64]
HandleWords = Mapping[Handle, str]


@dataclass(frozen=True, slots=True, eq=False)
class Plot:
    """What is painted, all in the plot's frame, mm.

    Parameters
    ----------
    kept, removed
        Points (N, 2).
    unseen
        Where across nothing was seen.
    faint
        Outlines that nobody has chosen.
    numbers
        What each outline is called in the list, at a place of it.
    members
        Each from the root along a member's line.
    trace
        The face as it will be taken in.
    handles
        Where each handle is.
    chosen
        The handle that keys move.
    labels
        What is written beside handles.
    legend
        What discs, crosses and ticks are.
    words
        What stands in the middle where there is nothing to see.
    """

    kept: FloatArray
    removed: FloatArray
    unseen: FloatArray
    faint: tuple[FloatArray, ...] = ()
    numbers: tuple[tuple[Vec, str], ...] = ()
    members: tuple[tuple[Vec, Vec], ...] = ()
    trace: FloatArray | None = None
    handles: Mapping[Handle, Vec] | None = None
    chosen: Handle | None = None
    labels: HandleWords | None = None
    legend: tuple[str, str, str] = ("", "", "")
    words: str = ""


def paint_plot(painter: QPainter, plot: Plot, view: View, theme: Theme, unit: Unit) -> None:
    """Paint all of it."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.fillRect(QRectF(0, 0, *view.size), QColor(theme.raised))
    for run in plot.faint:
        painter.setPen(QPen(QColor(theme.muted), 1.8, Qt.PenStyle.DotLine))
        painter.drawPolyline(_polygon(run, view))
    _paint_members(painter, plot, view, theme)
    _paint_points(painter, plot, view, theme)
    if plot.trace is not None:
        painter.setPen(QPen(QColor(theme.accent), 1.8))
        painter.drawPolyline(_polygon(plot.trace, view))
    if plot.handles:
        _paint_handles(painter, plot, plot.handles, view, theme)
    for at, number in plot.numbers:
        wide, high = chip_size(number, theme)
        x, y = view.to_screen(at)
        paint_chip(painter, QRectF(x - wide / 2.0, y - high / 2.0, wide, high), number, theme)
    if len(plot.kept) or plot.faint:
        paint_scale_bar(painter, view, theme, unit)
        _paint_legend(painter, plot.legend, view, theme)
    elif plot.words:
        _paint_words(painter, plot.words, view, theme)


def _on_screen(points: FloatArray, view: View) -> list[Vec]:
    across = view.size[0] / 2.0 + (points[:, 0] - view.centre[0]) * view.scale
    down = view.size[1] / 2.0 - (points[:, 1] - view.centre[1]) * view.scale
    return list(zip(across.tolist(), down.tolist(), strict=True))


def _polygon(points: FloatArray, view: View) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in _on_screen(points, view)])


def _in_sight(points: FloatArray, view: View) -> FloatArray:
    left, low, right, high = view.box
    seen = (
        (points[:, 0] >= left)
        & (points[:, 0] <= right)
        & (points[:, 1] >= low)
        & (points[:, 1] <= high)
    )
    return np.asarray(points[seen], float)


def _paint_points(painter: QPainter, plot: Plot, view: View, theme: Theme) -> None:
    """Kept points as discs, those left out as crosses, unseen ones as ticks at the lower edge."""
    pen = QPen(QColor(theme.ink), 3.0)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    painter.drawPoints(_polygon(_in_sight(plot.kept, view), view))
    painter.setPen(QPen(QColor(theme.role("fault")), 1.8))
    reach = 4.5
    for x, y in _on_screen(_in_sight(plot.removed, view), view):
        painter.drawLine(QLineF(x - reach, y - reach, x + reach, y + reach))
        painter.drawLine(QLineF(x - reach, y + reach, x + reach, y - reach))
    low = view.size[1] - 2.0
    for x in plot.unseen.tolist():
        at = view.to_screen((x, 0.0))[0]
        painter.drawLine(QLineF(at, low - 9.0, at, low))


def _paint_members(painter: QPainter, plot: Plot, view: View, theme: Theme) -> None:
    for start, end in plot.members:
        a, b = (QPointF(*view.to_screen(at)) for at in (start, end))
        painter.setPen(QPen(QColor(theme.role("limit")), 1.8, Qt.PenStyle.DashLine))
        painter.drawLine(a, b)


def _paint_handles(
    painter: QPainter, plot: Plot, handles: Mapping[Handle, Vec], view: View, theme: Theme
) -> None:
    """Toes as discs, the root as a diamond, members' ends as squares; the chosen one ringed."""
    for handle, at in handles.items():
        spot = QPointF(*view.to_screen(at))
        chosen = handle == plot.chosen
        painter.setPen(QPen(QColor(theme.ink), 2.0))
        painter.setBrush(QColor(theme.accent if chosen else theme.panel))
        if handle.startswith("toe"):
            painter.drawEllipse(spot, 7.0, 7.0)
        elif handle == "root":
            x, y = spot.x(), spot.y()
            painter.drawPolygon(
                QPolygonF(
                    [QPointF(x, y - 8), QPointF(x + 8, y), QPointF(x, y + 8), QPointF(x - 8, y)]
                )
            )
        else:
            painter.drawRect(QRectF(spot.x() - 5.5, spot.y() - 5.5, 11.0, 11.0))
        if chosen:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(theme.accent), 2.0))
            painter.drawEllipse(spot, 13.0, 13.0)
    for handle, words in (plot.labels or {}).items():
        wide, high = chip_size(words, theme)
        x, y = view.to_screen(handles[handle])
        left = min(max(x + 16.0, 4.0), view.size[0] - wide - 4.0)
        top = min(max(y + 14.0, 4.0), view.size[1] - high - 4.0)
        paint_chip(painter, QRectF(left, top, wide, high), words, theme)


def _paint_legend(
    painter: QPainter, legend: tuple[str, str, str], view: View, theme: Theme
) -> None:
    """What the signs are, at the upper right; none where none is needed."""
    right = view.size[0] - 12.0
    signs = ("\u2022", "\u00d7", "|")
    for sign, words in reversed(list(zip(signs, legend, strict=True))):
        if words:
            wide, high = chip_size(f"{sign} {words}", theme)
            right -= wide + 6.0
            paint_chip(painter, QRectF(right, 12.0, wide, high), f"{sign} {words}", theme)


def _paint_words(painter: QPainter, words: str, view: View, theme: Theme) -> None:
    painter.setPen(QColor(theme.muted))
    room = QRectF(24.0, 24.0, view.size[0] - 48.0, view.size[1] - 48.0)
    flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
    painter.drawText(room, flags, words)
