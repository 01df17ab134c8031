"""Paints what was put into a picture: points, lines through them, the wire, the loupe."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from exercises.intake.photo import Outline, Wire
from exercises.intake.photo_frame import Spot
from geometry.curves import Vec
from trainer.canvas.furniture import chip_size, paint_chip
from trainer.look.tokens import Role, Theme
from trainer.shop.photo.sight import Pyramid, Sight
from trainer.shop.photo.state import GROUPS, Chosen, Group, PhotoState

__all__ = ["LOUPE", "Words", "paint_loupe", "paint_marks"]

_RADIUS: Final = 6.5
"""Logical pixels of a point's sign; what can be hit of it is larger."""

LOUPE: Final = 76.0
_LOUPE_ZOOM: Final = 10.0
"""Radius of the loupe, logical pixels, and how many of them one of the picture's spans at least."""

_COLOURS: Final[dict[Group, Role]] = {
    "corners": "limit",
    "scale": "shown",
    "base": "truth",
    "upright": "truth",
    "face": "fault",
}


@dataclass(frozen=True, slots=True)
class Words:
    """What is written beside lines, in the language that is spoken."""

    base: str
    upright: str
    length: str
    sides: tuple[str, str]
    legs: tuple[str, str]
    throat: str


def paint_marks(
    painter: QPainter,
    state: PhotoState,
    wire: Wire,
    outline: Outline | None,
    sight: Sight,
    theme: Theme,
    words: Words,
) -> None:
    """Paint all points and what is drawn through them; those of the step in hand stand out."""
    for group in _COLOURS if state.step != "check" else ():
        if state.spots(group):
            strong = group in GROUPS[state.step]
            _paint_group(painter, state, group, wire, sight, theme, strong=strong)
    if outline is not None and state.step in ("trace", "check", "members"):
        _paint_outline(painter, outline, sight, theme, words, whole=state.step == "check")
    elif state.step == "members":
        for group, said in (("base", words.base), ("upright", words.upright)):
            _label(painter, sight, state.spots(group), said, theme)
    if state.step == "scale" and len(state.marks.scale) == 2 and words.length:
        _label(painter, sight, state.marks.scale, words.length, theme)
    if state.step == "straighten" and len(state.marks.corners) == 4:
        corners = state.marks.ordered().corners
        _label(painter, sight, corners[:2], words.sides[0], theme)
        _label(painter, sight, (corners[3], corners[0]), words.sides[1], theme)


def _paint_group(
    painter: QPainter,
    state: PhotoState,
    group: Group,
    wire: Wire,
    sight: Sight,
    theme: Theme,
    *,
    strong: bool,
) -> None:
    spots, colour = state.spots(group), theme.role(_COLOURS[group])
    line = _line_of(state, group, wire)
    if len(line) > 1:
        _stroke(painter, [sight.to_screen(p) for p in line], colour, theme, strong=strong)
    if not strong:
        return
    for index, spot in enumerate(spots):
        _paint_spot(painter, sight.to_screen(spot.at), spot, colour, theme,
                    chosen=state.chosen == (group, index))  # fmt: skip


def _line_of(state: PhotoState, group: Group, wire: Wire) -> list[Vec]:
    """The line through a group's points: closed, along the edge, or straight and gone on with."""
    spots = state.spots(group)
    points = [spot.at for spot in spots]
    if group == "corners" and len(spots) == 4:
        points = [spot.at for spot in state.marks.ordered().corners]
        return [*points, points[0]]
    if group == "face" and len(spots) > 1:
        return [(float(x), float(y)) for x, y in wire.along(spots)]
    return points


def _stroke(painter: QPainter, line: list[Vec], colour: str, theme: Theme, *, strong: bool) -> None:
    """A line that shows on dark and on bright: a rim of the panel's colour beneath it."""
    polygon = QPolygonF([QPointF(x, y) for x, y in line])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    rim = QColor("#ffffff" if theme.name == "light" else "#101418")
    rim.setAlphaF(0.75 if strong else 0.4)
    ink = QColor(colour)
    ink.setAlphaF(1.0 if strong else 0.65)
    for tone, width in ((rim, 4.0), (ink, 2.0 if strong else 1.4)):
        pen = QPen(tone, width)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.drawPolyline(polygon)


def _paint_spot(
    painter: QPainter, at: Vec, spot: Spot, colour: str, theme: Theme, *, chosen: bool
) -> None:
    """A ring on an edge, a square by hand; the chosen one filled and ringed again."""
    x, y = at
    box = QRectF(x - _RADIUS, y - _RADIUS, 2.0 * _RADIUS, 2.0 * _RADIUS)
    rim = QColor("#ffffff" if theme.name == "light" else "#101418")
    draw = painter.drawRect if spot.by_hand else painter.drawEllipse
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if chosen:
        for tone, width in ((rim, 5.0), (QColor(theme.accent), 2.5)):
            painter.setPen(QPen(tone, width))
            draw(box.adjusted(-4.5, -4.5, 4.5, 4.5))
    for tone, width in ((rim, 4.5), (QColor(colour), 2.5)):
        painter.setPen(QPen(tone, width))
        draw(box)
    # Nothing over the place itself: a point is what it is put on.
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colour))
    painter.drawEllipse(QPointF(x, y), 1.25, 1.25)


def _paint_outline(
    painter: QPainter,
    outline: Outline,
    sight: Sight,
    theme: Theme,
    words: Words,
    *,
    whole: bool,
) -> None:
    """The members to their root, the face as it is taken, and what it measures."""
    frame, trace = outline.frame, np.array(outline.face.trace)
    root = np.zeros((1, 2))

    def shown(points: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> list[Vec]:
        return [sight.to_screen((float(x), float(y))) for x, y in frame.pixels(points)]

    for toe in (trace[0], trace[-1]):
        _stroke(
            painter, shown(np.vstack([root, toe * 1.6])), theme.role("truth"), theme, strong=whole
        )
    _stroke(painter, shown(trace), theme.role("fault"), theme, strong=True)
    nearest = trace[int(np.argmin(np.hypot(trace[:, 0], trace[:, 1])))]
    if whole:
        _stroke(painter, shown(np.vstack([root, nearest])), theme.role("shown"), theme, strong=True)
        # The legs' figures off the weld, in the plates.
        legs = (trace[0] * 0.5, trace[-1] * 0.5)
        off = [0.2 * (legs[at] - legs[1 - at]) for at in (0, 1)]
        places = (legs[0] + off[0], legs[1] + off[1], nearest * 0.55)
        for at, said in zip(places, (*words.legs, words.throat), strict=True):
            ((x, y),) = shown(at[None, :])
            wide, high = chip_size(said, theme)
            _chip(painter, (x - 10.0 - wide / 2.0, y + 8.0 + high / 2.0), said, theme)
    for toe in (trace[0], trace[-1]):
        ((x, y),) = shown(toe[None, :])
        painter.setBrush(QColor(theme.role("fault")))
        painter.setPen(QPen(QColor("#ffffff"), 1.5))
        painter.drawPolygon(
            QPolygonF([QPointF(x, y - 5), QPointF(x + 5, y), QPointF(x, y + 5), QPointF(x - 5, y)])
        )


def _label(
    painter: QPainter, sight: Sight, spots: tuple[Spot, ...], said: str, theme: Theme
) -> None:
    if not spots or not said:
        return
    x = sum(spot.x for spot in spots) / len(spots)
    y = sum(spot.y for spot in spots) / len(spots)
    _chip(painter, sight.to_screen((x, y)), said, theme)


def _chip(painter: QPainter, at: Vec, said: str, theme: Theme) -> None:
    wide, high = chip_size(said, theme)
    paint_chip(painter, QRectF(at[0] + 10.0, at[1] - high - 8.0, wide, high), said, theme)


def paint_loupe(
    painter: QPainter,
    pyramid: Pyramid,
    at: Vec,
    sight: Sight,
    theme: Theme,
    ratio: float,
    spots: tuple[tuple[Chosen, Spot], ...],
) -> None:
    """Paint what lies about a point of the picture, magnified, in the corner away from it."""
    x, y = sight.to_screen(at)
    right, low = x < sight.size[0] / 2.0, y < sight.size[1] / 2.0
    gap = LOUPE + 16.0
    middle = (
        sight.size[0] - gap if right else gap,
        sight.size[1] - gap if low and not right else gap,
    )
    zoom = max(_LOUPE_ZOOM, 2.5 * sight.scale)
    glass = Sight(at, zoom, (2.0 * LOUPE, 2.0 * LOUPE))
    painter.save()
    painter.translate(middle[0] - LOUPE, middle[1] - LOUPE)
    round_ = QPainterPath()
    round_.addEllipse(QRectF(0.0, 0.0, 2.0 * LOUPE, 2.0 * LOUPE))
    painter.setClipPath(round_)
    painter.fillPath(round_, QColor(theme.well))
    pyramid.paint(painter, glass, ratio)
    for _, spot in spots:
        if math.dist(glass.to_screen(spot.at), (LOUPE, LOUPE)) < 1.5 * LOUPE:
            sx, sy = glass.to_screen(spot.at)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(theme.accent), 1.5))
            painter.drawEllipse(QPointF(sx, sy), 5.0, 5.0)
    for colour, width in ((QColor("#ffffff"), 3.0), (QColor("#101418"), 1.0)):
        painter.setPen(QPen(colour, width))
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            painter.drawLine(
                QPointF(LOUPE + 8 * dx, LOUPE + 8 * dy), QPointF(LOUPE + 26 * dx, LOUPE + 26 * dy)
            )
    painter.setClipping(False)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((QColor(theme.panel), 6.0), (QColor(theme.outline), 1.5)):
        painter.setPen(QPen(colour, width))
        painter.drawEllipse(QRectF(0.0, 0.0, 2.0 * LOUPE, 2.0 * LOUPE))
    painter.restore()
