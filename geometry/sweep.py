"""Proof that a straight move between two poses enters nothing on the way.

A move is straight in (x, y, turn). Along it the offset of a line pair bends by a known second
derivative, and a circle pair's centre runs along a chord, bowed a little by the turn. So each
pair's least offset on the way has a lower bound; where that is not below zero, nothing is entered.
Where it is, the features meet only if the place of meeting lies on both of them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.pairs import At, Pairs, Spot

Floats = NDArray[np.float64]

__all__ = ["dip", "middle", "travel"]

_SPAN = 50.0
"""mm: about how far fixed features lie from the moving frame's origin while they matter."""

_MANY = 4
"""Doubtful pairs above which a test of all at once comes first."""

_LEAST = 1e-30
"""What keeps a quotient from being by nothing."""

_EDGE = 1e-9
"""mm by which a feature's ends are stretched, so that nothing slips between two of them."""


def travel(start: Spot, end: Spot, reach: float) -> float:
    """The most (mm) that any point within `reach` of the moving frame's origin moves."""
    return math.hypot(end.x - start.x, end.y - start.y) + reach * abs(end.turn - start.turn)


def middle(start: Spot, end: Spot) -> Spot:
    """The spot half-way along a straight move.

    Examples
    --------
    >>> middle(Spot(0.0, 0.0, 0.0), Spot(2.0, 1.0, 0.5))
    Spot(x=1.0, y=0.5, turn=0.25)
    """
    return Spot((start.x + end.x) / 2.0, (start.y + end.y) / 2.0, (start.turn + end.turn) / 2.0)


def dip(pairs: Pairs, start: At, end: At, reach: float) -> tuple[float, list[int]]:
    """How deep (mm) the straight move between two free spots may enter, at most.

    Parameters
    ----------
    pairs
        The pairs that `start` and `end` were evaluated on; all that the move could bring together.
    start, end
        Both ends of the move.
    reach
        Distance of the farthest feature from the moving frame's origin, mm.

    Returns
    -------
    depth, guilty
        0.0 and nothing if the move is proved free; else a bound of the depth and the pairs that
        may meet.
    """
    a, b = start.spot, end.spot
    dturn = b.turn - a.turn
    shift = math.hypot(b.x - a.x, b.y - a.y)
    depth, guilty = 0.0, []
    for index, line in _doubtful_lines(pairs, start, end, shift):
        found = _line_dip(pairs, start, end, line)
        if found > 0.0:
            depth = max(depth, found)
            guilty.append(index)
    # Widest bow of any circle pair's products: centripetal plus Coriolis, over eight.
    bow = ((reach + _SPAN) * dturn * dturn + 2.0 * shift * abs(dturn)) / 8.0
    for index in _doubtful_circles(pairs, start, end, bow, shift + reach * abs(dturn)):
        found = _circle_dip(pairs, start, end, index, dturn, bow)
        if found > 0.0:
            depth = max(depth, found)
            guilty.append(index + pairs.lines)
    return depth, guilty


@dataclass(frozen=True, slots=True)
class _Crossing:
    """A line pair on a move: which, how offset and foot bend, and how far both may err (mm)."""

    index: int
    bend: float
    foot_bend: float
    error: float


def _doubtful_lines(pairs: Pairs, start: At, end: At, shift: float) -> list[tuple[int, _Crossing]]:
    """The line pairs whose offset may fall below zero on the way."""
    count = pairs.lines
    a, b = start.spot, end.spot
    dturn = b.turn - a.turn
    gap, later = start.gap[:count], end.gap[:count]
    low, high = np.minimum(gap, later), np.maximum(gap, later)
    # The second derivative is taken at the middle; what the third makes of it, for every pair at
    # the distance of its own points (a flat crown's centre is metres away).
    off, cubed = math.hypot(a.x, a.y) + shift, abs(dturn) ** 3 / 48.0
    drift = 3.0 * shift * dturn * dturn / 48.0
    # No offset bends by more than this; most pairs are done with here. A line that is behind all
    # the way is never crossed.
    most = (pairs.widest_arm + off) * (dturn * dturn / 8.0 + cubed)
    most += shift * abs(dturn) / 4.0 + drift
    doubtful = ((low < most) & (high > -most)).nonzero()[0]
    if not doubtful.size:
        return []
    errors = (pairs.disc_arm[doubtful] + off) * cubed + drift
    second = middle(a, b).bend(b.x - a.x, b.y - a.y, dturn)
    bends = (pairs.line_rows[doubtful, :2].reshape(-1, 7) @ second).reshape(-1, 2)
    sag = np.abs(bends[:, 0]) / 8.0 + errors
    meets = (low[doubtful] < sag) & (high[doubtful] > -sag)
    if doubtful.size > _MANY:
        meets &= _feet_meet(pairs, start, end, doubtful, sag, bends[:, 1])
    return [
        (i, _Crossing(i, bend, foot_bend, error))
        for i, (bend, foot_bend), error in zip(
            doubtful[meets].tolist(), bends[meets].tolist(), errors[meets].tolist(), strict=True
        )
    ]


def _feet_meet(
    pairs: Pairs, start: At, end: At, lines: NDArray[np.intp], sag: Floats, foot_bends: Floats
) -> NDArray[np.bool_]:
    """Which feet may be on their lines while the offset is near zero: a test for many at once."""
    foot, end_foot = start.foot[lines], end.foot[lines]
    play = sag + np.abs(foot_bends) / 8.0
    play += _EDGE
    length = pairs.length[lines]
    on = (np.maximum(foot, end_foot) + play >= 0.0) & (np.minimum(foot, end_foot) - play <= length)
    if np.count_nonzero(on) <= _MANY:
        return on
    first = start.gap[lines]
    # The offset stays within sag of a straight one, so it is zero within this part of the move.
    steep = first - end.gap[lines] + _LEAST
    one = np.minimum(np.maximum((first - sag) / steep, 0.0), 1.0)
    other = np.minimum(np.maximum((first + sag) / steep, 0.0), 1.0)
    gone = end_foot - foot
    one, other = foot + gone * one, foot + gone * other
    on &= (np.maximum(one, other) + play >= 0.0) & (np.minimum(one, other) - play <= length)
    return on


def _doubtful_circles(pairs: Pairs, start: At, end: At, bow: float, move: float) -> list[int]:
    """The circle pairs that offsets at both ends and the length of the move do not clear."""
    apart = pairs.lines + pairs.outside
    first, last = start.gap[pairs.lines : apart], end.gap[pairs.lines : apart]
    # A disc is entered on a chord from outside; a hollow is left on one from inside, so not by what
    # comes from behind it and ends well within.
    entered = (first >= 0.0) & (first + last < 2.0 * bow + move)
    first, last = start.gap[apart:], end.gap[apart:]
    left = (last < bow) | ((first >= 0.0) & (first < bow))
    left &= np.maximum(first, last) > -bow - move
    circles = np.concatenate((entered, left)).nonzero()[0]
    if circles.size > _MANY:
        circles = circles[_chords_meet(pairs, start, end, circles, bow)]
    return [int(i) for i in circles.tolist()]


def _chords_meet(
    pairs: Pairs, start: At, end: At, circles: NDArray[np.intp], widest: float
) -> NDArray[np.bool_]:
    """Which chords, bowed as they are, come to their arc: the test of one pair, for many."""
    turn = end.spot.turn - start.spot.turn
    bow = pairs.arm[circles] * turn * turn / 8.0
    x, y, radius = start.dx[circles], start.dy[circles], pairs.radius[circles]
    ex, ey = end.dx[circles] - x, end.dy[circles] - y
    along = x * ex + y * ey
    share = np.minimum(np.maximum(-along / (ex * ex + ey * ey + _LEAST), 0.0), 1.0)
    nearest = np.hypot(x + share * ex, y + share * ey)
    # A disc is met if the chord comes near it. A hollow is left if an end is not well inside and
    # the chord is not wholly outside.
    meet = np.maximum(start.away[circles], end.away[circles]) > radius - bow
    meet |= circles < pairs.outside
    meet &= nearest < radius + bow
    # Where they meet, the contact direction must lie in both cones.
    bow += _EDGE + widest
    in_fixed = np.maximum(start.fixed_dot[circles], end.fixed_dot[circles]) + bow
    in_moving = np.maximum(start.moving_dot[circles], end.moving_dot[circles]) + bow
    meet &= in_fixed >= pairs.fixed_cos[circles] * radius
    meet &= in_moving >= pairs.moving_cos[circles] * radius
    return meet


def _line_dip(pairs: Pairs, start: At, end: At, line: _Crossing) -> float:
    index, error = line.index, line.error
    g0, g1 = float(start.gap[index]), float(end.gap[index])
    # Offset along the move: g0 + slope t + bend / 2 t^2.
    slope = g1 - g0 - line.bend / 2.0
    share, least = _crossing(g0, slope, line.bend), _lowest(slope, line.bend)
    lowest = g0 + slope * least + line.bend / 2.0 * least * least
    if share is None:
        # Behind from the first and never before it, or before it all the way: nothing is crossed.
        if g0 < 0.0 or lowest >= error:
            return 0.0
        share = least
    s0, s1 = float(start.foot[index]), float(end.foot[index])
    foot_slope = s1 - s0 - line.foot_bend / 2.0
    at = s0 + foot_slope * share + line.foot_bend / 2.0 * share * share
    # An offset that is out by the error is crossed so much earlier or later.
    steep = abs(slope + line.bend * share)
    late = min(1.0, error / steep) if steep > 0.0 else 1.0
    play = _EDGE + error + (abs(foot_slope) + abs(line.foot_bend)) * late
    if at + play < 0.0 or at - play > float(pairs.length[index]):
        return 0.0
    if float(pairs.disc_radius[index]) > 0.0 and not _in_cone(pairs, start, end, index):
        return 0.0
    return error - lowest


def _crossing(g0: float, slope: float, bend: float) -> float | None:
    """Where on the move (0 to 1) an offset falls through zero; None if nowhere."""
    inner = slope * slope - 2.0 * bend * g0
    if inner < 0.0 or (slope >= 0.0 and bend >= 0.0):
        return None
    # Of the two roots the one where the offset falls, in the form that loses no digits.
    root = math.sqrt(inner)
    fall = 2.0 * g0 / (root - slope) if slope < 0.0 else -(slope + root) / bend
    return fall if 0.0 <= fall <= 1.0 else None


def _lowest(slope: float, bend: float) -> float:
    """Where on the move (0 to 1) an offset is least."""
    if bend > 0.0 and 0.0 < -slope < bend:
        return -slope / bend
    return 0.0 if slope + bend / 2.0 >= 0.0 else 1.0


def _in_cone(pairs: Pairs, start: At, end: At, index: int) -> bool:
    """Whether a bulging arc can face the line anywhere on the move."""
    least = float(pairs.disc_cos[index])
    dots = (float(start.disc_dot[index]), float(end.disc_dot[index]))
    swing = abs(end.spot.turn - start.spot.turn)
    return max(dots) + swing >= least


def _circle_dip(pairs: Pairs, start: At, end: At, index: int, dturn: float, bow: float) -> float:
    x0, y0 = float(start.dx[index]), float(start.dy[index])
    x1, y1 = float(end.dx[index]), float(end.dy[index])
    radius, outside = float(pairs.radius[index]), float(pairs.sign[index]) > 0.0
    ex, ey = x1 - x0, y1 - y0
    square = ex * ex + ey * ey
    sag = float(pairs.arm[index]) * dturn * dturn / 8.0
    if outside:
        share = 0.0 if square == 0.0 else min(1.0, max(0.0, -(x0 * ex + y0 * ey) / square))
        least = math.hypot(x0 + share * ex, y0 + share * ey) - radius
        if least >= sag:
            return 0.0
        if float(start.gap[index + pairs.lines]) < 0.0:
            # Already within the full circle, so beside the arc itself: leaving is no entry.
            return 0.0
        # Where the chord itself stays out, its bow dips where the chord is nearest.
        entry = _entry(x0, y0, ex, ey, radius, leaving=False, default=share)
        share = entry if 0.0 <= entry <= 1.0 else share
        depth = sag - least
    else:
        far0, far1 = math.hypot(x0, y0), math.hypot(x1, y1)
        if max(far0, far1) <= radius - sag:
            return 0.0
        if far1 <= radius - sag and far0 > radius:
            return 0.0
        share = 1.0 if far1 > far0 else 0.0
        if max(far0, far1) > radius:
            share = _entry(x0, y0, ex, ey, radius, leaving=True, default=-1.0)
            if not 0.0 <= share <= 1.0:
                return 0.0
        depth = sag + max(far0, far1) - radius
    x, y = x0 + share * ex, y0 + share * ey
    change = abs(float(end.gap[index + pairs.lines] - start.gap[index + pairs.lines]))
    late = min(1.0, sag / change) if change > 0.0 else 1.0
    play = _EDGE + bow + math.sqrt(square) * (late if sag > 0.0 else 0.0)
    return depth if _facing(pairs, start, end, index, (x, y), share, play) else 0.0


def _entry(
    x: float, y: float, ex: float, ey: float, radius: float, *, leaving: bool, default: float
) -> float:
    """Where on the chord (0 to 1) the circle is entered, or left; `default` if it never is."""
    a, b = ex * ex + ey * ey, x * ex + y * ey
    c = x * x + y * y - radius * radius
    root = b * b - a * c
    if a == 0.0 or root < 0.0:
        return default
    return (-b + math.sqrt(root)) / a if leaving else (-b - math.sqrt(root)) / a


def _facing(
    pairs: Pairs,
    start: At,
    end: At,
    index: int,
    offset: tuple[float, float],
    share: float,
    play: float,
) -> bool:
    """Whether both features face each other where their circles meet, within `play` mm."""
    away = math.hypot(*offset)
    if away == 0.0:
        return True
    a, b = start.spot, end.spot
    where = Spot(
        a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), a.turn + share * (b.turn - a.turn)
    )
    dots = pairs.circle_rows[index, 2:] @ where.vector
    return (
        float(dots[0]) >= float(pairs.fixed_cos[index]) * away - play
        and float(dots[1]) >= float(pairs.moving_cos[index]) * away - play
    )
