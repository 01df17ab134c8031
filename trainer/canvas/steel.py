"""The section: hatched plates, the etched bead, and what spoils it."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
    QRadialGradient,
)

from trainer.canvas.light import tint, world
from trainer.canvas.shapes import SectionPaths
from trainer.canvas.view import View
from trainer.look.tokens import Theme

__all__ = ["paint_steel"]

_HATCH_PX: Final = 9.0
"""Hatch lines stand 9 to 18 logical pixels apart at any zoom."""


def paint_steel(painter: QPainter, paths: SectionPaths, view: View, theme: Theme) -> None:
    """Paint the section as it stands in `view`."""
    to_screen = world(view)
    painter.save()
    painter.setTransform(to_screen, True)
    painter.setPen(Qt.PenStyle.NoPen)
    # Under the bodies, so that no light shines through the seams where their edges meet.
    painter.fillPath(paths.steel, QColor(theme.bench.steel_near))
    for name, body in paths.bodies:
        if name in ("base", "upright"):
            painter.fillPath(body, _plate_brush(name, paths, theme))
    _paint_heat(painter, paths, theme)
    painter.restore()
    for name, body in paths.bodies:
        if name in ("base", "upright"):
            lean = 1.0 if name == "base" else -1.0
            _paint_hatch(painter, to_screen.map(body), view, lean, theme)
    painter.save()
    painter.setTransform(to_screen, True)
    _paint_bead(painter, paths, view, theme)
    _paint_edges(painter, paths, view, theme)
    painter.restore()


def _plate_brush(name: str, paths: SectionPaths, theme: Theme) -> QBrush:
    """Darker away from the face that is worked on."""
    bench = theme.bench
    bounds = paths.body(name).boundingRect()
    if name == "base":
        gradient = QLinearGradient(0.0, 0.0, 0.0, bounds.top())
        near, far = bench.steel_near, bench.steel_far
    else:
        angle = math.radians(paths.drawing.angle)
        deep = bounds.width()
        gradient = QLinearGradient(0.0, 0.0, -math.sin(angle) * deep, math.cos(angle) * deep)
        near, far = bench.upright_near, bench.upright_far
    gradient.setColorAt(0.0, QColor(near))
    gradient.setColorAt(1.0, QColor(far))
    return QBrush(gradient)


def _paint_heat(painter: QPainter, paths: SectionPaths, theme: Theme) -> None:
    """Tint the members where the weld's heat has changed them, in bands as an etchant shows."""
    for band in paths.heat:
        painter.fillPath(band, tint(theme.bench.heat, 0.115))


def _paint_hatch(
    painter: QPainter, outline: QPainterPath, view: View, lean: float, theme: Theme
) -> None:
    """Hatch within a plate's outline (logical pixels), at 45 degrees."""
    pen = QPen(tint(theme.bench.hatch, 0.34), 1.0)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    painter.drawLines(_hatch_lines(outline, view, lean))


def _hatch_lines(outline: QPainterPath, view: View, lean: float) -> list[QLineF]:
    # Cut to the outline by hand: an SVG painter knows no clip.
    root = view.to_screen((0.0, 0.0))
    spacing = _HATCH_PX * 2.0 ** (math.log2(view.scale / _HATCH_PX) % 1.0)
    half = math.sqrt(0.5)
    normal, along = (half * lean, half), (half, -half * lean)
    width, height = view.size
    corners = ((0.0, 0.0), (width, 0.0), (0.0, height), (width, height))
    ranks = [
        ((x - root[0]) * normal[0] + (y - root[1]) * normal[1]) / spacing for x, y in corners
    ]
    least, most = math.floor(min(ranks)), math.ceil(max(ranks))
    crossings: dict[int, list[float]] = {}
    for polygon in outline.toSubpathPolygons():
        ring = [(p.x() - root[0], p.y() - root[1]) for p in polygon]
        for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1], strict=True):
            rank_a = (ax * normal[0] + ay * normal[1]) / spacing
            rank_b = (bx * normal[0] + by * normal[1]) / spacing
            low, high = sorted((rank_a, rank_b))
            at_a, at_b = ax * along[0] + ay * along[1], bx * along[0] + by * along[1]
            for rank in range(max(least, math.ceil(low)), min(most, math.ceil(high) - 1) + 1):
                share = (rank - rank_a) / (rank_b - rank_a)
                crossings.setdefault(rank, []).append(at_a + share * (at_b - at_a))
    lines: list[QLineF] = []
    for rank, found in crossings.items():
        foot = (root[0] + rank * spacing * normal[0], root[1] + rank * spacing * normal[1])
        found.sort()
        for near, far in zip(found[::2], found[1::2], strict=False):
            lines.append(
                QLineF(
                    foot[0] + near * along[0], foot[1] + near * along[1],
                    foot[0] + far * along[0], foot[1] + far * along[1],
                )
            )
    return lines


def _paint_bead(painter: QPainter, paths: SectionPaths, view: View, theme: Theme) -> None:
    bench = theme.bench
    metal = QRadialGradient(QPointF(0.0, 0.0), max(paths.drawing.legs))
    metal.setColorAt(0.0, QColor(bench.bead_core))
    metal.setColorAt(1.0, QColor(bench.bead_rim))
    for name, body in paths.bodies:
        if name == "weld" or name.startswith("overlap"):
            painter.fillPath(body, QBrush(metal))
        elif name.startswith("spatter"):
            painter.fillPath(body, QColor(bench.bead_core))
    for layer, (colour, alpha, width) in zip(
        paths.grain,
        ((bench.grain, 0.42, 1.1), (bench.grain, 0.16, 0.8)),
        strict=True,
    ):
        pen = QPen(tint(colour, alpha), width / view.scale)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.strokePath(layer, pen)


def _paint_edges(painter: QPainter, paths: SectionPaths, view: View, theme: Theme) -> None:
    inner = QPen(tint(theme.bench.edge, 0.75), 1.0 / view.scale)
    outer = QPen(QColor(theme.bench.edge), 1.25 / view.scale)
    for pen in (inner, outer):
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    _stroke(painter, (body for _, body in paths.bodies), inner)
    _stroke(painter, (paths.steel,), outer)


def _stroke(painter: QPainter, lines: Iterable[QPainterPath], pen: QPen) -> None:
    for line in lines:
        painter.strokePath(line, pen)

