"""The section: hatched plates, the etched bead, and what spoils it."""

from __future__ import annotations

import math
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
    QTransform,
)

from trainer.canvas.light import mixed, tint, world
from trainer.canvas.shapes import SectionPaths
from trainer.canvas.view import View
from trainer.look.tokens import Theme

__all__ = ["paint_steel"]

_HATCH_PX: Final = 9.0
"""Hatch lines stand 9 to 18 logical pixels apart at any zoom."""


def paint_steel(painter: QPainter, paths: SectionPaths, view: View, theme: Theme) -> None:
    """Paint the section as it stands in `view`."""
    # Paths are mapped to pixels first: stroking under a scaling painter takes ten times as long.
    to_screen = world(view)
    bodies = [(name, to_screen.map(body)) for name, body in paths.bodies]
    steel = to_screen.map(paths.steel)
    # Under the bodies, so that no light shines through the seams where their edges meet.
    painter.fillPath(steel, QColor(theme.bench.steel_near))
    for name, body in bodies:
        if name in ("base", "upright"):
            painter.fillPath(body, _plate_brush(name, paths, to_screen, theme))
            _paint_hatch(painter, body, view, 1.0 if name == "base" else -1.0, theme)
    for band in paths.heat:
        painter.fillPath(to_screen.map(band), tint(theme.bench.heat, 0.115))
    _paint_bead(painter, paths, bodies, to_screen, theme)
    _paint_edges(painter, bodies, steel, theme)


def _plate_brush(name: str, paths: SectionPaths, to_screen: QTransform, theme: Theme) -> QBrush:
    """Darker away from the face that is worked on."""
    bench = theme.bench
    bounds = paths.body(name).boundingRect()
    if name == "base":
        far_end = QPointF(0.0, bounds.top())
        near, far = bench.steel_near, bench.steel_far
    else:
        angle = math.radians(paths.drawing.angle)
        far_end = QPointF(-math.sin(angle), math.cos(angle)) * bounds.width()
        near, far = bench.upright_near, bench.upright_far
    gradient = QLinearGradient(to_screen.map(QPointF(0.0, 0.0)), to_screen.map(far_end))
    gradient.setColorAt(0.0, QColor(near))
    gradient.setColorAt(1.0, QColor(far))
    return QBrush(gradient)


def _paint_hatch(
    painter: QPainter, outline: QPainterPath, view: View, lean: float, theme: Theme
) -> None:
    """Hatch within a plate's outline (logical pixels), at 45 degrees."""
    # An opaque pen one pixel wide: blended or wider, the lines take five times as long.
    pen = QPen(mixed(theme.bench.steel_near, theme.bench.hatch, 0.30), 1.0)
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
    ranks = [((x - root[0]) * normal[0] + (y - root[1]) * normal[1]) / spacing for x, y in corners]
    least, most = math.floor(min(ranks)), math.ceil(max(ranks))
    crossings: dict[int, list[float]] = {}
    for polygon in outline.toSubpathPolygons():
        ring = [(p.x() - root[0], p.y() - root[1]) for p in polygon.toList()]
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
                    foot[0] + near * along[0],
                    foot[1] + near * along[1],
                    foot[0] + far * along[0],
                    foot[1] + far * along[1],
                )
            )
    return lines


def _paint_bead(
    painter: QPainter,
    paths: SectionPaths,
    bodies: list[tuple[str, QPainterPath]],
    to_screen: QTransform,
    theme: Theme,
) -> None:
    bench = theme.bench
    reach = max(paths.drawing.legs) * to_screen.m11()
    metal = QRadialGradient(to_screen.map(QPointF(0.0, 0.0)), reach)
    metal.setColorAt(0.0, QColor(bench.bead_core))
    metal.setColorAt(1.0, QColor(bench.bead_rim))
    for name, body in bodies:
        if name == "weld" or name.startswith("overlap"):
            painter.fillPath(body, QBrush(metal))
        elif name.startswith("spatter"):
            painter.fillPath(body, QColor(bench.bead_core))
    layers, crystals = paths.grain
    for lines, share, width in ((crystals, 0.12, 0.8), (layers, 0.36, 1.0)):
        pen = QPen(mixed(bench.bead_rim, bench.grain, share), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.strokePath(to_screen.map(lines), pen)


def _paint_edges(
    painter: QPainter,
    bodies: list[tuple[str, QPainterPath]],
    steel: QPainterPath,
    theme: Theme,
) -> None:
    inner = QPen(mixed(theme.bench.edge, theme.bench.bead_core, 0.25), 1.0)
    outer = QPen(QColor(theme.bench.edge), 1.25)
    for pen in (inner, outer):
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    for _, body in bodies:
        painter.strokePath(body, inner)
    painter.strokePath(steel, outer)
