"""What of a boundary can touch: lines, hollow arcs and discs.

Two bodies first meet where one is convex. Every convex place of a boundary is therefore a **disc**:
a corner is one of radius zero, a bulging arc one of its own radius; its cone holds the outward
normals with which it can touch. What a disc can land on is a **line**, a **hollow** (an arc that
curves into the metal) or another disc. Reentrant corners never touch first and are left out; what
meets in one is carried on a little way into the metal beyond it, so that a point that slides
towards the corner along one side sees the other side before it gets there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from geometry.bodies import Body, Piece
from geometry.curves import Arc, Segment, Vec

__all__ = ["Discs", "Features", "Hollows", "Lines", "features_of"]

Floats = NDArray[np.float64]

_SMOOTH = 1e-9
"""Sine of a corner below which two pieces run smoothly into each other."""


@dataclass(frozen=True, eq=False)
class Lines:
    """Straight pieces: `start`, unit `along` and outward unit `normal` (n, 2); `length` (n,)."""

    names: tuple[str, ...]
    start: Floats
    along: Floats
    normal: Floats
    length: Floats


@dataclass(frozen=True, eq=False)
class Hollows:
    """Hollow arcs, in arrays.

    `centre` (n, 2), `radius` (n,), `middle` direction (n, 2) from the centre and `cos_half` (n,),
    the cosine of half the span.
    """

    names: tuple[str, ...]
    centre: Floats
    radius: Floats
    middle: Floats
    cos_half: Floats


@dataclass(frozen=True, eq=False)
class Discs:
    """Corners and bulging arcs: as `Hollows`, with `middle` and `cos_half` the normal cone."""

    names: tuple[str, ...]
    centre: Floats
    radius: Floats
    middle: Floats
    cos_half: Floats


@dataclass(frozen=True, eq=False)
class Features:
    """All that can touch of one body."""

    lines: Lines
    hollows: Hollows
    discs: Discs

    @property
    def reach(self) -> float:
        """Largest distance of a feature from the frame's origin, mm."""
        ends = self.lines.start + self.lines.along * self.lines.length[:, None]
        far = [np.hypot(*points.T) for points in (self.lines.start, ends, self.discs.centre)]
        return float(max(distances.max(initial=0.0) for distances in far))


_CARRY = 1.0
"""mm: how far at most a side is carried on past a reentrant corner, and no farther than the
neighbour, over which alone it counts, is long."""

_Round = tuple[str, Vec, float, Vec, float]


def _unit(x: float, y: float) -> Vec:
    length = math.hypot(x, y)
    return (x / length, y / length)


def _corner(before: Piece, after: Piece) -> _Round | None:
    """The disc at the joint of two pieces, if it is a convex corner."""
    u, v = before.curve.end_direction, after.curve.start_direction
    turn = u[0] * v[1] - u[1] * v[0]
    straight_on = u[0] * v[0] + u[1] * v[1]
    if turn <= _SMOOTH and not (straight_on < 0.0 and turn > -_SMOOTH):
        return None
    # Outward is to the right of the direction of travel.
    normals = (u[1], -u[0]), (v[1], -v[0])
    if straight_on > -1.0 + 1e-12:
        middle = _unit(normals[0][0] + normals[1][0], normals[0][1] + normals[1][1])
    else:
        middle = u
    half = math.acos(max(-1.0, min(1.0, straight_on))) / 2.0
    name = before.name if before.name == after.name else f"{before.name}|{after.name}"
    return (name, before.curve.end, 0.0, middle, half)


def _carry(before: Piece, after: Piece) -> tuple[float, float]:
    """How far `before` goes on past its end, and `after` before its start, in their corner, mm."""
    u, v = before.curve.end_direction, after.curve.start_direction
    straight_on = u[0] * v[0] + u[1] * v[1]
    turn = v[0] * u[1] - v[1] * u[0]
    if turn <= _SMOOTH or straight_on <= 0.0:
        return 0.0, 0.0
    # A round side, carried on or passed by, leaves the corner's wedge sooner the rounder it is.
    rounds = [side.curve.radius for side in (before, after) if isinstance(side.curve, Arc)]
    most = min([_CARRY, *(radius * turn / 4.0 for radius in rounds)])
    return (
        min(after.curve.length, most) * straight_on,
        min(before.curve.length, most) * straight_on,
    )


def _arrays(rounds: list[_Round]) -> tuple[tuple[str, ...], Floats, Floats, Floats, Floats]:
    return (
        tuple(item[0] for item in rounds),
        np.array([item[1] for item in rounds], dtype=np.float64).reshape(-1, 2),
        np.array([item[2] for item in rounds], dtype=np.float64),
        np.array([item[3] for item in rounds], dtype=np.float64).reshape(-1, 2),
        np.cos(np.array([item[4] for item in rounds], dtype=np.float64)),
    )


@lru_cache(maxsize=64)
def features_of(body: Body) -> Features:
    """Return what of `body` can touch.

    Examples
    --------
    >>> from geometry.leaf import leaf_of_mark
    >>> features = features_of(leaf_of_mark("8 mm").body)
    >>> features.discs.names
    ('arc|long', 'long|back', 'back', 'back|end', 'end|arc')
    >>> features.hollows.names, features.lines.names
    (('arc',), ('long', 'back', 'back', 'end'))
    """
    lines: list[tuple[str, Segment, float, float]] = []
    hollows: list[_Round] = []
    discs: list[_Round] = []
    pieces = body.pieces
    carries = [_carry(a, b) for a, b in zip(pieces, pieces[1:] + pieces[:1], strict=True)]
    for index, piece in enumerate(pieces):
        corner = _corner(pieces[index - 1], piece)
        if corner is not None:
            discs.append(corner)
        early, late = carries[index - 1][1], carries[index][0]
        curve = piece.curve
        if isinstance(curve, Segment):
            lines.append((piece.name, curve, early, late))
        else:
            (discs if curve.convex else hollows).append(_arc(piece.name, curve, early, late))
    start = np.array([line.start for _, line, _, _ in lines], dtype=np.float64).reshape(-1, 2)
    end = np.array([line.end for _, line, _, _ in lines], dtype=np.float64).reshape(-1, 2)
    early_late = np.array([line[2:] for line in lines], dtype=np.float64).reshape(-1, 2)
    length = np.hypot(*(end - start).T)
    along = (end - start) / length[:, None]
    normal = np.column_stack((along[:, 1], -along[:, 0]))
    return Features(
        Lines(
            tuple(line[0] for line in lines),
            start - along * early_late[:, :1],
            along,
            normal,
            length + early_late.sum(axis=1),
        ),
        Hollows(*_arrays(hollows)),
        Discs(*_arrays(discs)),
    )


def _arc(name: str, arc: Arc, early: float, late: float) -> _Round:
    """An arc's entry, its span widened by what it is carried on at either end."""
    turn = math.copysign(1.0, arc.sweep)
    first = arc.first - turn * early / arc.radius
    sweep = arc.sweep + turn * (early + late) / arc.radius
    middle = first + sweep / 2.0
    half = min(abs(sweep) / 2.0, math.pi)
    return (name, arc.centre, arc.radius, (math.cos(middle), math.sin(middle)), half)
