"""How the window's room is shared out, in logical pixels: the same before and after it is filled.

No Qt here: the first paint uses it before anything but Qt's barest is loaded.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Final, NamedTuple

__all__ = ["BAR", "LEAF", "LEAF_GAP", "SMALLEST_LEAF", "Box", "Room", "Rooms"]
__all__ += ["leaf_places", "room_for", "rooms_in"]

Box = tuple[int, int, int, int]
"""x, y, width, height."""

BAR: Final = 52
"""Height of the bar over every screen."""

LEAF: Final = (78, 88)
SMALLEST_LEAF: Final = (31, 44)
"""Width and height that a leaf on the rack has where there is room, and that it needs."""

LEAF_GAP: Final = 4
"""Between two leaves."""

COMPACT_WIDTH: Final = 1120
COMPACT_HEIGHT: Final = 584


class Room(NamedTuple):
    """What a screen of some size leaves for its parts.

    Parameters
    ----------
    margin
        Between the parts, and around them.
    foot
        Height of the strip below the picture.
    side
        Width of the column beside it.
    narrow, compact
        Whether width is short; whether width or height is.
    """

    margin: int
    foot: int
    side: int
    narrow: bool
    compact: bool


class Rooms(NamedTuple):
    """Picture, strip and column as (x, y, width, height) in the window."""

    picture: Box
    foot: Box
    side: Box


def room_for(width: int, height: int) -> Room:
    """Return what a screen of `width` by `height` below the bar leaves for its parts.

    Examples
    --------
    >>> room_for(1280, 708).side, room_for(960, 488).compact
    (372, True)
    """
    narrow = width < COMPACT_WIDTH
    compact = narrow or height < COMPACT_HEIGHT
    side = 408 if width >= 1500 else 328 if narrow else 372
    return Room(8 if compact else 16, 176 if narrow else 166, side, narrow, compact)


def rooms_in(width: int, height: int) -> Rooms:
    """Return where the parts stand in a window of `width` by `height`.

    Examples
    --------
    >>> rooms_in(1280, 760).picture
    (16, 68, 860, 494)
    """
    room = room_for(width, height - BAR)
    left = width - room.side - 3 * room.margin
    tall = height - BAR - 2 * room.margin
    upper = tall - room.foot - room.margin
    top = BAR + room.margin
    return Rooms(
        (room.margin, top, left, upper),
        (room.margin, top + upper + room.margin, left, room.foot),
        (left + 2 * room.margin, top, room.side, tall),
    )


def leaf_places(width: int, height: int, count: int) -> list[Box]:
    """Return where `count` leaves hang in a rack of that size: side by side, from the left.

    Examples
    --------
    >>> leaf_places(500, 80, 12)[:2]
    [(0, 0, 38, 80), (42, 0, 38, 80)]
    >>> leaf_places(1200, 100, 12)[1]
    (82, 6, 78, 88)
    """
    each = min(LEAF[0] + LEAF_GAP, (width + LEAF_GAP) / count)
    tall = min(LEAF[1], height)
    lefts = [round(index * each) for index in range(count + 1)]
    return [
        (left, (height - tall) // 2, after - left - LEAF_GAP, tall)
        for left, after in pairwise(lefts)
    ]
