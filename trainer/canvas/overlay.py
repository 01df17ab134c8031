"""Overlays: lines, areas, dimensions and marks handed in by who knows what they mean."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QPolygonF

from trainer.canvas.drawing import Vec
from trainer.canvas.furniture import chip_size, paint_chip
from trainer.canvas.light import tint
from trainer.canvas.scene import Area, Dimension, Line, Mark, Overlay, Ring, Shape
from trainer.canvas.view import Box, View
from trainer.look.tokens import LIGHT, Role, Theme

__all__ = ["Label", "mark_path", "paint_overlays", "placed_labels"]

_SHAPES: Final[dict[Role, Shape]] = {
    "truth": "diamond",
    "limit": "square",
    "shown": "ring",
    "fault": "triangle",
    "good": "disc",
    "note": "cross",
    "touch": "disc",
    "daylight": "ring",
    "held off": "triangle",
    "not seated": "slash",
}
_GAP: Final = 8.0


@dataclass(frozen=True, slots=True)
class Label:
    """A label with the place it was given, logical pixels."""

    text: str
    role: Role
    anchor: Vec
    rect: QRectF


def mark_path(shape: Shape, radius: float) -> QPainterPath:
    """Return a mark's shape about the origin, `radius` logical pixels large.

    Examples
    --------
    >>> mark_path("disc", 5.0).boundingRect().width()
    10.0
    """
    path = QPainterPath()
    if shape in ("disc", "ring"):
        path.addEllipse(QPointF(0.0, 0.0), radius, radius)
    elif shape == "triangle":
        wide = radius * 1.1
        path.addPolygon(_ring([(0.0, -wide), (wide, 0.85 * wide), (-wide, 0.85 * wide)]))
    elif shape == "diamond":
        wide = radius * 1.15
        path.addPolygon(_ring([(0.0, -wide), (wide, 0.0), (0.0, wide), (-wide, 0.0)]))
    elif shape == "square":
        path.addRect(QRectF(-0.9 * radius, -0.9 * radius, 1.8 * radius, 1.8 * radius))
    else:
        path.moveTo(-radius, 0.7 * radius)
        path.lineTo(radius, -0.7 * radius)
        if shape == "cross":
            path.moveTo(-radius, -0.7 * radius)
            path.lineTo(radius, 0.7 * radius)
    return path


def _ring(points: list[Vec]) -> QPolygonF:
    return QPolygonF([QPointF(*point) for point in [*points, points[0]]])


def paint_overlays(
    painter: QPainter,
    overlays: tuple[Overlay, ...],
    view: View,
    theme: Theme,
    taken: tuple[Box, ...] = (),
) -> None:
    """Paint `overlays` in their order, then their labels, none over another or what is `taken`."""
    for overlay in overlays:
        if isinstance(overlay, Area):
            _paint_area(painter, overlay, view, theme)
        elif isinstance(overlay, Line):
            _paint_line(painter, overlay, view, theme)
        elif isinstance(overlay, Dimension):
            _paint_dimension(painter, overlay, view, theme)
        elif isinstance(overlay, Ring):
            _paint_ring(painter, overlay, view, theme)
        else:
            _paint_mark(painter, overlay, view, theme)
    for label in placed_labels(overlays, view, theme, taken):
        _paint_label(painter, label, theme)


def _screen(points: tuple[Vec, ...], view: View) -> QPolygonF:
    return QPolygonF([QPointF(*view.to_screen(point)) for point in points])


def _casing(theme: Theme) -> QColor:
    return tint(theme.panel, 0.85)


def _paint_area(painter: QPainter, area: Area, view: View, theme: Theme) -> None:
    polygon = _screen(area.points, view)
    colour = theme.role(area.role)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tint(colour, 0.22))
    painter.drawPolygon(polygon)
    painter.setBrush(QBrush(tint(colour, 0.55), Qt.BrushStyle.BDiagPattern))
    painter.drawPolygon(polygon)
    outline = QPainterPath()
    outline.addPolygon(polygon)
    outline.closeSubpath()
    _cased(painter, outline, colour, 1.5, theme)


def _paint_line(painter: QPainter, line: Line, view: View, theme: Theme) -> None:
    path = QPainterPath()
    path.addPolygon(_screen(line.points, view))
    _cased(painter, path, theme.role(line.role), 2.0, theme, dashed=line.dashed)


def _cased(
    painter: QPainter,
    path: QPainterPath,
    colour: str,
    width: float,
    theme: Theme,
    *,
    dashed: bool = False,
) -> None:
    """Stroke with a pale casing, so that the line stands out from steel and light alike.

    Where the type is larger than usual, for who sits far off, lines are heavier too.
    """
    weight = _weight(theme)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    width *= weight
    for tone, wide in ((_casing(theme), width + 2.5 * weight), (QColor(colour), width)):
        pen = QPen(tone, wide)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        if dashed and wide == width:
            pen.setDashPattern([4.0, 2.5])
        painter.strokePath(path, pen)


def _weight(theme: Theme) -> float:
    return max(1.0, theme.text_size("body") / LIGHT.text_size("body"))


def _paint_ring(painter: QPainter, ring: Ring, view: View, theme: Theme) -> None:
    """Cased as a line is; but filled, since stroking a curve takes several times as long."""
    middle, radius = QPointF(*view.to_screen(ring.at)), ring.radius * view.scale
    weight = _weight(theme)
    for tone, wide in (
        (_casing(theme), 4.5 * weight),
        (QColor(theme.role(ring.role)), 2.0 * weight),
    ):
        path = QPainterPath()
        path.addEllipse(middle, radius + wide / 2.0, radius + wide / 2.0)
        path.addEllipse(middle, radius - wide / 2.0, radius - wide / 2.0)
        painter.fillPath(path, tone)


def _dimension_ends(dimension: Dimension, view: View) -> tuple[Vec, Vec, Vec]:
    """Ends of the dimension line on the screen, and the unit vector along it."""
    a, b = view.to_screen(dimension.start), view.to_screen(dimension.end)
    long = math.dist(a, b) or 1.0
    along = ((b[0] - a[0]) / long, (b[1] - a[1]) / long)
    off = (along[1] * dimension.offset, -along[0] * dimension.offset)
    return (a[0] + off[0], a[1] + off[1]), (b[0] + off[0], b[1] + off[1]), along


def _paint_dimension(painter: QPainter, dimension: Dimension, view: View, theme: Theme) -> None:
    a, b, along = _dimension_ends(dimension, view)
    across = (along[1], -along[0])
    path = QPainterPath(QPointF(*a))
    path.lineTo(*b)
    for end in (a, b):
        path.moveTo(end[0] - 5.0 * across[0], end[1] - 5.0 * across[1])
        path.lineTo(end[0] + 5.0 * across[0], end[1] + 5.0 * across[1])
    if math.dist(a, b) > 22.0:
        for end, way in ((a, 1.0), (b, -1.0)):
            for side in (1.0, -1.0):
                path.moveTo(*end)
                path.lineTo(
                    end[0] + way * 8.0 * along[0] + side * 3.0 * across[0],
                    end[1] + way * 8.0 * along[1] + side * 3.0 * across[1],
                )
    _cased(painter, path, theme.role(dimension.role), 1.6, theme)
    if dimension.offset:
        witness = QPainterPath()
        for point, end in ((dimension.start, a), (dimension.end, b)):
            witness.moveTo(*view.to_screen(point))
            witness.lineTo(*end)
        _cased(painter, witness, theme.role(dimension.role), 0.8, theme)


def _paint_mark(painter: QPainter, mark: Mark, view: View, theme: Theme) -> None:
    shape = mark.shape or _SHAPES[mark.role]
    colour = QColor(theme.role(mark.role))
    path = mark_path(shape, 6.0).translated(*view.to_screen(mark.at))
    casing = QPen(_casing(theme), 5.0 if shape in ("ring", "slash", "cross") else 3.0)
    casing.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.strokePath(path, casing)
    if shape in ("ring", "slash", "cross"):
        pen = QPen(colour, 2.4)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.strokePath(path, pen)
    else:
        painter.fillPath(path, colour)


def _anchor(overlay: Overlay, view: View) -> Vec:
    if isinstance(overlay, Mark | Ring):
        return view.to_screen(overlay.at)
    if isinstance(overlay, Dimension):
        a, b, _ = _dimension_ends(overlay, view)
        return ((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0)
    points = [view.to_screen(point) for point in overlay.points]
    if isinstance(overlay, Line):
        if len(points) == 2:
            (ax, ay), (bx, by) = points
            return ((ax + bx) / 2.0, (ay + by) / 2.0)
        return points[len(points) // 2]
    return (
        sum(p[0] for p in points) / len(points),
        sum(p[1] for p in points) / len(points),
    )


@lru_cache(maxsize=8)
def placed_labels(
    overlays: tuple[Overlay, ...], view: View, theme: Theme, taken: tuple[Box, ...] = ()
) -> tuple[Label, ...]:
    """Return every label with a place of its own, in the order of the overlays.

    A label goes to the nearest place around its anchor that covers no other label, nothing that
    is `taken` (left, top, right, bottom; logical px), as little as can be of what the overlays
    draw, and lies within the view.
    """
    labelled = [(overlay, _anchor(overlay, view)) for overlay in overlays if overlay.label]
    if not labelled:
        return ()
    drawn = [point for overlay in overlays for point in _sampled(overlay, view)]
    blocked = [QRectF(QPointF(*box[:2]), QPointF(*box[2:])) for box in taken]
    placed: list[Label] = []
    leaders: list[Vec] = []
    for overlay, anchor in labelled:
        wide, high = chip_size(overlay.label, theme, marked=True)
        rect = min(
            _places(anchor, wide, high),
            key=lambda place: (
                _crowding(place, anchor, drawn, blocked, view)
                + _crossing(place, anchor, leaders, blocked)
            ),
        )
        leaders += _leader(rect, anchor)
        blocked.append(rect)
        placed.append(Label(overlay.label, overlay.role, anchor, rect))
    return tuple(placed)


def _sampled(overlay: Overlay, view: View) -> list[Vec]:
    """Points every few pixels along what an overlay draws, logical pixels."""
    if isinstance(overlay, Mark):
        return [view.to_screen(overlay.at)] * 3
    if isinstance(overlay, Ring):
        (x, y), radius = view.to_screen(overlay.at), overlay.radius * view.scale
        turns = [math.tau * index / 36.0 for index in range(36)]
        return [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]
    if isinstance(overlay, Dimension):
        ends = _dimension_ends(overlay, view)
        corners = [ends[0], ends[1]]
    else:
        corners = [view.to_screen(point) for point in overlay.points]
        if isinstance(overlay, Area):
            corners.append(corners[0])
    points: list[Vec] = []
    for (ax, ay), (bx, by) in pairwise(corners):
        count = max(1, round(math.hypot(bx - ax, by - ay) / 12.0))
        points += [
            (ax + (bx - ax) * i / count, ay + (by - ay) * i / count) for i in range(count + 1)
        ]
    return points


def _places(anchor: Vec, wide: float, high: float) -> list[QRectF]:
    x, y = anchor
    places = []
    for ring in range(9):
        out = 12.0 + ring * (high + 2.0)
        for turn in range(16):
            angle = math.tau * turn / 16.0
            cos, sin = math.cos(angle), math.sin(angle)
            # The chip's nearest edge, not its middle, keeps the distance.
            middle_x = x + cos * (out + wide / 2.0)
            middle_y = y + sin * (out + high / 2.0)
            places.append(QRectF(middle_x - wide / 2.0, middle_y - high / 2.0, wide, high))
    return places


def _crowding(
    place: QRectF, anchor: Vec, drawn: list[Vec], blocked: list[QRectF], view: View
) -> float:
    """How bad a place is; a pixel of distance counts 1."""
    left, top, right, bottom = place.left(), place.top(), place.right(), place.bottom()
    cost = math.dist((min(max(anchor[0], left), right), min(max(anchor[1], top), bottom)), anchor)
    frame = QRectF(_GAP, _GAP, view.size[0] - 2.0 * _GAP, view.size[1] - 2.0 * _GAP)
    if not frame.contains(place):
        cost += 5000.0
    roomy = place.adjusted(-4.0, -3.0, 4.0, 3.0)
    cost += 10000.0 * sum(roomy.intersects(other) for other in blocked)
    left, top, right, bottom = left - 4.0, top - 4.0, right + 4.0, bottom + 4.0
    cost += 22.0 * sum(left < x < right and top < y < bottom for x, y in drawn)
    return cost


def _leader(place: QRectF, anchor: Vec) -> list[Vec]:
    """Points every few pixels along the line from an anchor to its label, logical pixels."""
    x, y = anchor
    near_x = min(max(x, place.left()), place.right())
    near_y = min(max(y, place.top()), place.bottom())
    count = max(1, round(math.dist((near_x, near_y), anchor) / 6.0))
    return [(x + (near_x - x) * i / count, y + (near_y - y) * i / count) for i in range(count + 1)]


def _crossing(place: QRectF, anchor: Vec, leaders: list[Vec], blocked: list[QRectF]) -> float:
    """How bad it is that a leader would run through a label: this one's, or one to this place."""
    under = sum(place.contains(x, y) for x, y in leaders)
    through = sum(rect.contains(x, y) for x, y in _leader(place, anchor)[1:] for rect in blocked)
    return 1000.0 * (under + through)


def _paint_label(painter: QPainter, label: Label, theme: Theme) -> None:
    rect, (x, y) = label.rect, label.anchor
    near = (
        min(max(x, rect.left()), rect.right()),
        min(max(y, rect.top()), rect.bottom()),
    )
    colour = theme.role(label.role)
    if math.dist(near, label.anchor) > 16.0:
        leader = QPainterPath(QPointF(x, y))
        leader.lineTo(*near)
        _cased(painter, leader, colour, 1.0, theme)
    paint_chip(painter, rect, label.text, theme, colour=colour)
