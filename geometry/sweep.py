"""Proof that a straight move between two poses enters nothing on the way.

A move is straight in (x, y, turn). Along it the offset of a line pair bends by a known second
derivative, and a circle pair's centre runs along a chord, bowed a little by the turn. So each
pair's least offset on the way has a lower bound; where that is not below zero, nothing is entered.
Where it is, the features meet only if the place of meeting lies on both of them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from geometry.pairs import At, Pairs, Spot

Floats = NDArray[np.float64]

__all__ = ["dip", "free", "middle", "travel"]

_SPAN = 50.0
"""mm: about how far fixed features lie from the moving frame's origin while they matter."""

_MANY = 4
"""Doubtful pairs above which a test of all at once comes first."""

_MANY_CIRCLES = 12
"""The same of circle pairs that may face each other; one by one most are soon done with."""

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
    depth, guilty = 0.0, []
    for index, found in _dips(pairs, start, end, reach):
        depth = max(depth, found)
        guilty.append(index)
    return depth, guilty


def free(pairs: Pairs, start: At, end: At, reach: float) -> bool:
    """Whether the straight move between two free spots is proved free: `dip` finds nothing.

    Parameters
    ----------
    pairs, start, end, reach
        As for `dip`.
    """
    return next(_dips(pairs, start, end, reach), None) is None


def _dips(pairs: Pairs, start: At, end: At, reach: float) -> Iterator[tuple[int, float]]:
    """The pairs that may meet on the move, in rising order, and how deep at most (mm)."""
    a, b = start.spot, end.spot
    dturn = b.turn - a.turn
    shift = math.hypot(b.x - a.x, b.y - a.y)
    low, high = np.minimum(start.gap, end.gap), np.maximum(start.gap, end.gap)
    for crossing in _doubtful_lines(pairs, start, end, (low, high), shift):
        found = _line_dip(pairs, start, end, crossing)
        if found > 0.0:
            yield crossing.line, found
    # Widest bow of any circle pair's products: centripetal plus Coriolis, over eight.
    bow = ((reach + _SPAN) * dturn * dturn + 2.0 * shift * abs(dturn)) / 8.0
    move = shift + reach * abs(dturn)
    for index in _doubtful_circles(pairs, start, end, (low, high), bow, move):
        found = _circle_dip(pairs, start, end, index, dturn, bow)
        if found > 0.0:
            yield index + pairs.lines, found


class _Crossing(NamedTuple):
    """A line pair on a move: which, how offset and foot bend, and how far both may err (mm)."""

    line: int
    bend: float
    foot_bend: float
    error: float


def _doubtful_lines(
    pairs: Pairs, start: At, end: At, gaps: tuple[Floats, Floats], shift: float
) -> list[_Crossing]:
    """The line pairs whose offset may fall below zero on the way; `gaps` are least and most."""
    count = pairs.lines
    a, b = start.spot, end.spot
    dturn = b.turn - a.turn
    # The second derivative is taken at the middle; what the third makes of it, for every pair at
    # the distance of its own points (a flat crown's centre is metres away).
    off, cubed = math.hypot(a.x, a.y) + shift, abs(dturn) ** 3 / 48.0
    drift = 3.0 * shift * dturn * dturn / 48.0
    # No offset bends by more than this; most pairs are done with here. A line that is behind all
    # the way is never crossed.
    most = (pairs.widest_arm + off) * (dturn * dturn / 8.0 + cubed)
    most += shift * abs(dturn) / 4.0 + drift
    low, high = gaps
    doubtful = ((low[:count] < most) & (high[:count] > -most)).nonzero()[0]
    if not doubtful.size:
        return []
    errors = (pairs.disc_arm.take(doubtful) + off) * cubed + drift
    second = middle(a, b).bend(b.x - a.x, b.y - a.y, dturn)
    bends = np.dot(second, pairs.table.take(doubtful, axis=1))
    sag = np.abs(bends) * 0.125 + errors
    meets = (low.take(doubtful) < sag) & (high.take(doubtful) > -sag)
    foot_bends = np.dot(second, pairs.table.take(doubtful + count, axis=1))
    if doubtful.size > _MANY:
        meets &= _feet_meet(pairs, start, end, doubtful, sag, foot_bends)
    which = meets.nonzero()[0].tolist()
    return [
        _Crossing(doubtful.item(i), bends.item(i), foot_bends.item(i), errors.item(i))
        for i in which
    ]


def _feet_meet(
    pairs: Pairs, start: At, end: At, lines: NDArray[np.intp], sag: Floats, foot_bends: Floats
) -> NDArray[np.bool_]:
    """Which feet may be on their lines while the offset is near zero: a test for many at once."""
    foot, end_foot = start.foot.take(lines), end.foot.take(lines)
    play = sag + np.abs(foot_bends) / 8.0
    play += _EDGE
    last = pairs.length.take(lines) + play
    on = (np.maximum(foot, end_foot) >= -play) & (np.minimum(foot, end_foot) <= last)
    if np.count_nonzero(on) <= _MANY:
        return on
    first = start.gap.take(lines)
    # The offset stays within sag of a straight one, so it is zero within this part of the move.
    steep = first - end.gap.take(lines) + _LEAST
    one = np.minimum(np.maximum((first - sag) / steep, 0.0), 1.0)
    other = np.minimum(np.maximum((first + sag) / steep, 0.0), 1.0)
    gone = end_foot - foot
    one, other = foot + gone * one, foot + gone * other
    on &= (np.maximum(one, other) >= -play) & (np.minimum(one, other) <= last)
    return on


def _doubtful_circles(
    pairs: Pairs, start: At, end: At, gaps: tuple[Floats, Floats], bow: float, move: float
) -> list[int]:
    """The circle pairs that offsets at both ends and the length of the move do not clear."""
    low, high = gaps[0][pairs.lines :], gaps[1][pairs.lines :]
    # A disc that is entered is out at both ends, by less than the move; a hollow that is left is
    # not well within at both ends, nor outside all the way.
    near = low < bow
    near[: pairs.outside] = low[: pairs.outside] < bow + move / 2.0
    near &= high > -bow - move
    circles = near.nonzero()[0]
    if circles.size <= _MANY:
        few: list[int] = circles.tolist()
        return few
    # Where they meet, the contact direction must lie in both cones.
    most = np.maximum(start.dots, end.dots) - pairs.least_dots
    near &= most[0] > -2.0 * bow - _EDGE
    near &= most[1] > -2.0 * bow - _EDGE
    circles = near.nonzero()[0]
    if circles.size > _MANY_CIRCLES:
        circles = circles[_chords_meet(pairs, start, end, circles)]
    doubtful: list[int] = circles.tolist()
    return doubtful


def _chords_meet(pairs: Pairs, start: At, end: At, circles: NDArray[np.intp]) -> NDArray[np.bool_]:
    """Which chords, bowed as they are, come to their arc: the test of one pair, for many."""
    turn = end.spot.turn - start.spot.turn
    bow = pairs.arm.take(circles) * (turn * turn / 8.0)
    radius, off = pairs.radius.take(circles), start.off.take(circles, axis=1)
    way = end.off.take(circles, axis=1) - off
    along, square = off * way, way * way
    share = (along[0] + along[1]) / (square[0] + square[1] + _LEAST)
    off -= np.minimum(np.maximum(share, -1.0), 0.0) * way
    off *= off
    # Either is met if the chord comes near it, a disc from outside only. A hollow is left by a
    # chord that isn't wholly outside, from where an end isn't well inside.
    meet: NDArray[np.bool_] = np.sqrt(off[0] + off[1]) < radius + bow
    away, end_away = start.away.take(circles), end.away.take(circles)
    discs = int(circles.searchsorted(pairs.outside))
    meet[:discs] &= away[:discs] >= radius[:discs]
    meet[discs:] &= np.maximum(away, end_away)[discs:] > (radius - bow)[discs:]
    return meet


def _line_dip(pairs: Pairs, start: At, end: At, crossing: _Crossing) -> float:
    index, bend, foot_bend, error = crossing
    g0, g1 = start.gap.item(index), end.gap.item(index)
    # Offset along the move: g0 + slope t + bend / 2 t^2.
    slope = g1 - g0 - bend / 2.0
    share, least = _crossing(g0, slope, bend), _lowest(slope, bend)
    lowest = g0 + slope * least + bend / 2.0 * least * least
    if share is None:
        # Behind from the first and never before it, or before it all the way: nothing is crossed.
        if g0 < 0.0 or lowest >= error:
            return 0.0
        share = least
    s0, s1 = start.foot.item(index), end.foot.item(index)
    foot_slope = s1 - s0 - foot_bend / 2.0
    at = s0 + foot_slope * share + foot_bend / 2.0 * share * share
    # An offset that is out by the error is crossed so much earlier or later.
    steep = abs(slope + bend * share)
    late = min(1.0, error / steep) if steep > 0.0 else 1.0
    play = _EDGE + error + (abs(foot_slope) + abs(foot_bend)) * late
    if at + play < 0.0 or at - play > pairs.length.item(index):
        return 0.0
    if pairs.disc_radius.item(index) > 0.0 and not _in_cone(pairs, start, end, index):
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
    least = pairs.disc_cos.item(index)
    dots = (start.disc_dot.item(index), end.disc_dot.item(index))
    swing = abs(end.spot.turn - start.spot.turn)
    return max(dots) + swing >= least


def _circle_dip(pairs: Pairs, start: At, end: At, index: int, dturn: float, bow: float) -> float:
    x0, y0 = start.off.item(0, index), start.off.item(1, index)
    radius = pairs.radius.item(index)
    sag = pairs.arm.item(index) * dturn * dturn / 8.0
    ex, ey = end.off.item(0, index) - x0, end.off.item(1, index) - y0
    square = ex * ex + ey * ey
    far0, far1 = start.away.item(index), end.away.item(index)
    if index < pairs.outside:
        if far0 < radius:
            # Already within the full circle, so beside the arc itself: leaving is no entry.
            return 0.0
        share = 0.0 if square == 0.0 else min(1.0, max(0.0, -(x0 * ex + y0 * ey) / square))
        least = math.hypot(x0 + share * ex, y0 + share * ey) - radius
        if least >= sag:
            return 0.0
        # Where the chord itself stays out, its bow dips where the chord is nearest.
        entry = _entry(x0, y0, ex, ey, radius, leaving=False, default=share)
        share = entry if 0.0 <= entry <= 1.0 else share
        depth = sag - least
    else:
        farthest = max(far0, far1)
        if farthest <= radius - sag or (far1 <= radius - sag and far0 > radius):
            return 0.0
        share = 1.0 if far1 > far0 else 0.0
        if farthest > radius:
            share = _entry(x0, y0, ex, ey, radius, leaving=True, default=-1.0)
            if not 0.0 <= share <= 1.0:
                return 0.0
        depth = sag + farthest - radius
    change = abs(far1 - far0)
    late = min(1.0, sag / change) if change > 0.0 else 1.0
    play = _EDGE + bow + math.sqrt(square) * (late if sag > 0.0 else 0.0)
    away = math.hypot(x0 + share * ex, y0 + share * ey)
    return depth if _facing(pairs, start, end, index, away, share, (play, bow)) else 0.0


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
    away: float,
    share: float,
    plays: tuple[float, float],
) -> bool:
    """Whether both features face each other where their circles meet, `away` mm off.

    They may miss it by the first of `plays`; by the second a product may differ from what lies
    between those at the ends, which is quicker to reckon.
    """
    if away == 0.0:
        return True
    play, bow = plays
    fixed = pairs.cones.item(0, index) * away - play
    moving = pairs.cones.item(1, index) * away - play
    for side, least in ((0, fixed), (1, moving)):
        first, last = start.dots.item(side, index), end.dots.item(side, index)
        if first + share * (last - first) < least - bow:
            return False
    a, b = start.spot, end.spot
    where = Spot(
        a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), a.turn + share * (b.turn - a.turn)
    )
    in_fixed, in_moving = pairs.in_cones(where, index)
    return in_fixed >= fixed and in_moving >= moving
