"""How deep one body stands in another, from signed distances to true segments and arcs.

This shares nothing with the kernel that moves bodies: it knows no pairs, cones or constraints,
only which point of a boundary is nearest to another point. It judges poses that people state, and
it checks the kernel.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from geometry.bodies import Body
from geometry.curves import Segment, Vec
from geometry.pose import Pose

__all__ = ["is_free", "penetration", "signed_distance"]

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
Bools = NDArray[np.bool_]

_SAMPLING = 1e-6
"""mm: how far a chord between two samples may stand off a bulging arc, so also how far the deepest
sample may fall short of the deepest point. Where a body is hollow or straight the other body's
corners and bulges go deepest, so there it is sampled only against deep crossings, by `_COARSE`."""
_COARSE = 1e-2

_STRETCH = 16
"""Samples that are looked at together: where their middle one is farther from the steel than from
the others, none of them is in it."""

_TIE = 1e-9
"""mm: distances that differ by less than this are equal."""

_FREE = 1e-6
"""mm: standing in steel by less than this is standing on it."""


@dataclass(frozen=True, eq=False)
class _Boundary:
    """Pieces in arrays: lines (start, unit along, length), arcs, and which corners are convex."""

    line_start: Floats
    line_along: Floats
    line_length: Floats
    arc_centre: Floats
    arc_radius: Floats
    arc_middle: Floats
    arc_half: Floats
    arc_turn: Floats
    corners: Floats
    corner_convex: Floats


@lru_cache(maxsize=64)
def _boundary(body: Body) -> _Boundary:
    lines = [piece.curve for piece in body.pieces if isinstance(piece.curve, Segment)]
    arcs = [piece.curve for piece in body.pieces if not isinstance(piece.curve, Segment)]
    corners, convex = [], []
    for before, after in zip((body.pieces[-1], *body.pieces[:-1]), body.pieces, strict=True):
        u, v = before.curve.end_direction, after.curve.start_direction
        corners.append(after.curve.start)
        convex.append(1.0 if u[0] * v[1] - u[1] * v[0] >= 0.0 else -1.0)
    middles = [arc.first + arc.sweep / 2.0 for arc in arcs]
    return _Boundary(
        np.array([line.start for line in lines]).reshape(-1, 2),
        np.array([line.start_direction for line in lines]).reshape(-1, 2),
        np.array([line.length for line in lines]),
        np.array([arc.centre for arc in arcs]).reshape(-1, 2),
        np.array([arc.radius for arc in arcs]),
        np.array([(math.cos(m), math.sin(m)) for m in middles]).reshape(-1, 2),
        np.array([math.cos(abs(arc.sweep) / 2.0) for arc in arcs]),
        np.array([1.0 if arc.convex else -1.0 for arc in arcs]),
        np.array(corners).reshape(-1, 2),
        np.array(convex),
    )


def signed_distance(body: Body, points: Floats) -> Floats:
    """Return how far `points` lie outside `body`; negative inside.

    Parameters
    ----------
    body
        In its own frame.
    points
        Shape (n, 2), mm, in that frame.

    Returns
    -------
    ndarray
        Shape (n,), mm.

    Examples
    --------
    >>> box = Body.of_points("box", [(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0)])
    >>> signed_distance(box, np.array([[1.0, 0.5], [5.0, 1.0], [7.0, 6.0]])).tolist()
    [-0.5, 1.0, 5.0]
    """
    edges = _boundary(body)
    best = np.full(len(points), np.inf)
    sign = np.ones(len(points))
    rows = np.arange(len(points))
    x, y = points[:, 0, None], points[:, 1, None]

    def corners(which: Bools, side: float, margin: float) -> None:
        if not which.any():
            return
        dx, dy = x - edges.corners[which, 0], y - edges.corners[which, 1]
        nearest = (dx * dx + dy * dy).argmin(axis=1)
        found = np.hypot(dx[rows, nearest], dy[rows, nearest])
        closer = found < best - margin
        best[closer], sign[closer] = found[closer], side

    def sides(height: Floats, beside: Bools) -> None:
        if not height.shape[1]:
            return
        away = np.abs(height)
        away[~beside] = np.inf
        nearest = away.argmin(axis=1)
        found = away[rows, nearest]
        closer = found < best
        best[closer] = found[closer]
        sign[closer] = np.where(height[rows, nearest] >= 0.0, 1.0, -1.0)[closer]

    # Of two equal distances the one that is considered first decides the side: outward corners
    # before the sides that meet in them, inward ones only where no side is as near.
    outward = edges.corner_convex > 0.0
    corners(outward, 1.0, 0.0)
    dx, dy = x - edges.line_start[:, 0], y - edges.line_start[:, 1]
    tx, ty = edges.line_along.T
    foot = dx * tx + dy * ty
    sides(dx * ty - dy * tx, (foot > -_TIE) & (foot < edges.line_length + _TIE))
    dx, dy = x - edges.arc_centre[:, 0], y - edges.arc_centre[:, 1]
    far = np.hypot(dx, dy)
    inside = dx * edges.arc_middle[:, 0] + dy * edges.arc_middle[:, 1] > edges.arc_half * far
    sides((far - edges.arc_radius) * edges.arc_turn, inside)
    corners(~outward, -1.0, _TIE)
    signed: Floats = best * sign
    return signed


@lru_cache(maxsize=64)
def _samples(body: Body) -> Floats:
    parts = []
    for piece in body.pieces:
        curve = piece.curve
        if isinstance(curve, Segment):
            parts.append(_along(curve))
        else:
            # No wider apart than a millimetre either, and on the arc: the chord of a hollow one
            # lies in air, however flat it is.
            widest = 1.0 / (8.0 * curve.radius)
            parts.append(curve.flatten(min(_SAMPLING if curve.convex else _COARSE, widest))[:-1])
    return np.concatenate(parts)


@dataclass(frozen=True, eq=False)
class _Stretches:
    """Neighbouring samples: which stretch each belongs to, its middle one, and how far it goes.

    `low` and `high` are the corners of the box that holds them all, mm.
    """

    of: Ints
    middle: Ints
    radius: Floats
    low: Vec
    high: Vec

    def in_box(self, points: Floats, room: Floats | float = 0.0) -> Bools:
        """Which of `points`, in the same frame, lie in the box or within `room` mm of it."""
        x, y = points[:, 0], points[:, 1]
        inside: Bools = (x >= self.low[0] - room) & (x <= self.high[0] + room)
        inside &= (y >= self.low[1] - room) & (y <= self.high[1] + room)
        return inside


@lru_cache(maxsize=64)
def _stretches(body: Body) -> _Stretches:
    points = _samples(body)
    of = np.arange(len(points)) // _STRETCH
    starts = np.arange(0, len(points), _STRETCH)
    middle = np.minimum(starts + _STRETCH // 2, len(points) - 1)
    away = np.hypot(*(points - points[middle][of]).T)
    # A hair more than the farthest, for the rounding of a frame that is turned.
    radius = np.maximum.reduceat(away, starts) + _TIE
    (low_x, low_y), (high_x, high_y) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return _Stretches(of, middle, radius, (low_x, low_y), (high_x, high_y))


def _along(line: Segment) -> Floats:
    """Points from the start on, with none of the gaps between them wider than a millimetre."""
    points = line.flatten()
    count = max(1, math.ceil(line.length))
    shares = np.arange(count)[:, None] / count
    dense: Floats = points[0] + shares * (points[1] - points[0])
    return dense


def penetration(fixed: Body, moving: Body, pose: Pose) -> float:
    """Return how deep (mm) the moving body stands in the fixed one; 0.0 if not at all.

    Parameters
    ----------
    fixed
        In the section's frame.
    moving
        In its own frame, not mirrored; `pose.turned` is honoured.
    pose
        Where it lies.

    Raises
    ------
    ValueError
        If the pose has a value that is not finite.

    Examples
    --------
    >>> box = Body.of_points("box", [(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0)])
    >>> penetration(box, box, Pose(1.0, 1.75)), penetration(box, box, Pose(1.0, 2.5))
    (0.25, 0.0)
    """
    if not all(math.isfinite(value) for value in (pose.x, pose.y, pose.angle)):
        raise ValueError("a pose needs finite x, y (mm) and angle (degrees)")
    cos, sin = pose.axes
    flip = -1.0 if pose.turned else 1.0
    outline = _samples(moving)
    u, v = outline[:, 0], outline[:, 1] * flip
    laid = np.column_stack((pose.x + cos * u - sin * v, pose.y + sin * u + cos * v))
    depth = _deepest(fixed, laid, _stretches(moving))
    still = _samples(fixed)
    dx, dy = still[:, 0] - pose.x, still[:, 1] - pose.y
    local = np.column_stack((cos * dx + sin * dy, flip * (cos * dy - sin * dx)))
    return max(depth, _deepest(moving, local, _stretches(fixed)))


def _deepest(body: Body, points: Floats, stretches: _Stretches) -> float:
    """Depth in `body` of the deepest of `points`, another's samples, which lie in `stretches`."""
    box = _stretches(body)
    middles = points[stretches.middle]
    doubtful = np.flatnonzero(box.in_box(middles, stretches.radius))
    if not doubtful.size:
        return 0.0
    # No distance changes by more than the way gone.
    away = signed_distance(body, middles[doubtful])
    met = np.zeros(len(middles), dtype=bool)
    met[doubtful[away <= stretches.radius[doubtful]]] = True
    among = points[met[stretches.of]]
    near = among[box.in_box(among)]
    if not len(near):
        return 0.0
    deepest = 0.0
    # In slices, so that a trace of thousands of points needs no matrix of millions.
    for start in range(0, len(near), 512):
        deepest = min(deepest, float(signed_distance(body, near[start : start + 512]).min()))
    return max(0.0, -deepest)


def is_free(fixed: Body, moving: Body, pose: Pose) -> bool:
    """Whether the moving body at `pose` enters nothing deeper than a millionth of a millimetre.

    Examples
    --------
    >>> box = Body.of_points("box", [(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0)])
    >>> is_free(box, box, Pose(4.0, 0.0)), is_free(box, box, Pose(3.9, 0.0))
    (True, False)
    """
    return penetration(fixed, moving, pose) <= _FREE
