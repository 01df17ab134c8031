"""Where the body stands: in steel by a hair, or behind one side of a corner and before another.

At a sharp corner a point is often behind the line of one side and free all the same, since it lies
before the other. Only what is behind with nothing nearer before it is in the steel.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from geometry.curves import Vec
from geometry.pairs import HAIR, At, Pairs

__all__ = ["entered", "round_corners"]

_FEW = 64
"""Couples of pairs up to which one after the other is quicker than all at once."""


def entered(pairs: Pairs, at: At) -> bool:
    """Whether the spot stands in steel by a hair: more than rounding, less than a thousandth."""
    facing = at.facing
    behind = ((at.gap < -HAIR) & (at.gap > -1e-3) & facing).nonzero()[0]
    return behind.size > len(round_corners(pairs, at, behind, facing))


def round_corners(
    pairs: Pairs, at: At, low: NDArray[np.intp], facing: NDArray[np.bool_]
) -> list[int]:
    """Those of `low` with a point behind one side of a sharp corner, but nearer before another."""
    deepest = -float(at.gap.take(low).min()) if low.size else 0.0
    if deepest <= 0.0:
        return []
    before = (facing & (at.gap >= 0.0) & (at.gap < deepest)).nonzero()[0]
    if not before.size:
        return []
    if low.size * before.size > _FEW:
        return _many_round_corners(pairs, at, low, before)
    others = [(gap, *pairs.meeting(at, i)) for i, gap in _gaps(at, before)]
    return [i for i, gap in _gaps(at, low) if _rounds(others, -gap, pairs.meeting(at, i))]


def _gaps(at: At, which: NDArray[np.intp]) -> list[tuple[int, float]]:
    return list(zip(which.tolist(), at.gap[which].tolist(), strict=True))


def _rounds(others: list[tuple[float, float, float]], depth: float, place: Vec) -> bool:
    """Whether one of `others` (gap, x, y) is nearer than `depth`, and close by."""
    x, y = place
    return any(gap < depth and math.hypot(u - x, v - y) < 3.0 * depth for gap, u, v in others)


def _many_round_corners(
    pairs: Pairs, at: At, low: NDArray[np.intp], before: NDArray[np.intp]
) -> list[int]:
    """The same for many at once, as where a long step ends deep in a scanned face."""
    low = low[-at.gap[low] > at.gap[before].min()]
    depth = -at.gap[low][:, None]
    (x, y), (u, v) = pairs.meetings(at, low).T, pairs.meetings(at, before).T
    off, across = u - x[:, None], v - y[:, None]
    off *= off
    across *= across
    off += across
    near = (off < 9.0 * depth * depth) & (at.gap[before] < depth)
    rounds: list[int] = low[near.any(axis=1)].tolist()
    return rounds
