"""Which pairs are near enough to matter, remembered by cells of the space of poses.

A cell's pairs depend on the cell alone, not on how the body came there, so motion stays a pure
function however many cells are remembered. Fine cells are picked out of coarse ones, so that the
thousands of pairs of a traced face are looked at only when the body has gone some millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from geometry.pairs import Pairs, Spot

__all__ = ["COARSEST", "Near", "near"]

_SIDE: Final = 0.4
"""mm: side of the finest cells; each level up is twice as wide."""

_BAND: Final = 3.5
"""Width of the band that is looked at, in sides of a cell; a cell's corner lies 1.21 sides off its
middle, so that at least 2.2 sides are left for a step."""

COARSEST: Final = 6
"""The coarsest level: cells of 25.6 mm."""


@dataclass(frozen=True, eq=False)
class Near:
    """The pairs that could meet while no point of the body is far from where it is at `middle`.

    Far is more than `width` mm.
    """

    pairs: Pairs
    middle: Spot
    width: float


def near(pairs: Pairs, spot: Spot, need: float) -> Near:
    """Return the pairs near `spot`, for a step of about `need` mm if cells go that far.

    Examples
    --------
    >>> from geometry.bodies import Body
    >>> from geometry.pairing import all_pairs
    >>> box = Body.of_points("box", [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)])
    >>> pairs = all_pairs(box, box)
    >>> len(near(pairs, Spot(0.5, 1.1, 0.0), 0.5).pairs) < len(pairs)
    True
    """
    level = 0
    while level < COARSEST and 2.0 * _SIDE * 2**level < need:
        level += 1
    side = _SIDE * 2**level
    turn = side / max(pairs.reach, 1.0)
    return _cell(pairs, level, round(spot.x / side), round(spot.y / side), round(spot.turn / turn))


@lru_cache(maxsize=512)
def _cell(pairs: Pairs, level: int, x: int, y: int, turn: int) -> Near:
    side = _SIDE * 2**level
    middle = Spot(x * side, y * side, turn * side / max(pairs.reach, 1.0))
    width = _BAND * side
    among = pairs
    if level < COARSEST:
        # Twice as wide from a middle at most 1.21 coarse sides away: 7 sides hold 3.5 + 2.42.
        among = near(pairs, middle, 2.0 * side * 1.999).pairs
    return Near(among.subset(among.within(middle, width)), middle, width)
