"""Where the card lies: where it hides least of what the work is about. No Qt here."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from trainer.canvas.drawing import Vec

__all__ = ["Box", "Spot", "leader", "place_for", "rim", "spots_in"]

Box = tuple[float, float, float, float]
"""Left, top, width, height, logical pixels."""

_MARGIN: Final = 12.0
"""Logical pixels between the card and what it lies in."""

_STAY: Final = 0.4
"""How much less another place must hide before the card goes there."""


_ANY: Final = 0.4
"""Of what hiding a thing whole costs: hiding any part of it."""

_ALONG: Final = 6
_ROUND: Final = 24
"""How many places along a side, and about a circle, a line may begin or end at."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Something that the card should not hide.

    Parameters
    ----------
    box
        Where it is.
    weight
        What hiding it whole costs.
    """

    box: Box
    weight: float


def spots_in(room: Box, size: tuple[float, float]) -> list[Box]:
    """Return the places for a card of `size` in `room`: its corners, and along its edges.

    Examples
    --------
    >>> [box[:2] for box in spots_in((0.0, 0.0, 600.0, 400.0), (200.0, 100.0))][:2]
    [(12.0, 12.0), (106.0, 12.0)]
    """
    left, top, width, height = room
    wide, high = max(0.0, width - size[0] - 2 * _MARGIN), max(0.0, height - size[1] - 2 * _MARGIN)
    shares = (0.0, 0.25, 0.5, 0.75, 1.0)
    return [
        (left + _MARGIN + across * wide, top + _MARGIN + down * high, *size)
        for down in shares
        for across in shares
        if down in (0.0, 1.0) or across in (0.0, 1.0)
    ]


def place_for(
    places: Sequence[Box], avoid: Sequence[Spot], target: Box | None, previous: Box | None
) -> Box:
    """Return the place that hides least and is near what the card points at.

    Parameters
    ----------
    places
        To choose from; at least one.
    avoid
        What shouldn't be hidden.
    target
        What the card points at, if anything.
    previous
        Where it lies now: it stays there while that is nearly as good.

    Raises
    ------
    ValueError
        If there is no place to choose from.
    """
    reach = max((math.dist(_middle(one), _middle(places[0])) for one in places), default=0.0)

    def cost(place: Box) -> float:
        hidden = sum(spot.weight * _hidden(spot.box, place) for spot in avoid)
        if target is None:
            return hidden
        return hidden + 0.5 * math.dist(_middle(place), _middle(target)) / max(reach, 1.0)

    best = min(places, key=cost)
    if previous is not None and previous in places and cost(previous) <= cost(best) + _STAY:
        return previous
    return best


def rim(box: Box, *, round_one: bool = False) -> list[Vec]:
    """Return points about a box, or about the circle in it: where a line may begin or end.

    Examples
    --------
    >>> rim((0.0, 0.0, 8.0, 16.0))[:2]
    [(0.0, 0.0), (0.0, 16.0)]
    """
    left, top, width, height = box
    if round_one:
        x, y = _middle(box)
        turns = [math.tau * part / _ROUND for part in range(_ROUND)]
        radius = width / 2.0
        return [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]
    shares = [part / _ALONG for part in range(_ALONG + 1)]
    across = [(left + share * width, y) for share in shares for y in (top, top + height)]
    return across + [(x, top + share * height) for share in shares for x in (left, left + width)]


def leader(
    starts: Sequence[Vec], ends: Sequence[Vec], never: Sequence[Box], rather_not: Sequence[Box]
) -> tuple[Vec, Vec] | None:
    """Return the shortest line from one of `starts` to one of `ends`; None if there is none.

    Parameters
    ----------
    starts, ends
        Logical pixels.
    never
        What the line must not cross, as a thing that can be pressed.
    rather_not
        What it crosses only where there is no other way, as words.

    Examples
    --------
    >>> leader([(0.0, 0.0)], [(0.0, 9.0), (9.0, 9.0)], [(-1.0, 4.0, 3.0, 1.0)], [])
    ((0.0, 0.0), (9.0, 9.0))
    >>> leader([(0.0, 0.0)], [(0.0, 9.0)], [(-1.0, 4.0, 3.0, 1.0)], []) is None
    True
    """
    lines = sorted(((a, b) for a in starts for b in ends), key=lambda line: math.dist(*line))
    free = None
    for line in lines:
        if any(_meets(*line, box) for box in never):
            continue
        if not any(_meets(*line, box) for box in rather_not):
            return line
        free = free or line
    return free


def _meets(start: Vec, end: Vec, box: Box) -> bool:
    """Whether a straight line has any of itself within a box."""
    first, last = 0.0, 1.0
    for axis in (0, 1):
        low, high = box[axis] - start[axis], box[axis] + box[axis + 2] - start[axis]
        along = end[axis] - start[axis]
        if along == 0.0:
            if low > 0.0 or high < 0.0:
                return False
            continue
        enters, leaves = sorted((low / along, high / along))
        first, last = max(first, enters), min(last, leaves)
    return first <= last


def _hidden(box: Box, card: Box) -> float:
    """How badly the one hides the other, 0 to 1."""
    width = min(box[0] + box[2], card[0] + card[2]) - max(box[0], card[0])
    height = min(box[1] + box[3], card[1] + card[3]) - max(box[1], card[1])
    least = min(box[2] * box[3], card[2] * card[3])
    if width <= 0.0 or height <= 0.0 or least <= 0.0:
        return 0.0
    # A corner of it that is hidden is nearly as bad as all of it.
    return _ANY + (1.0 - _ANY) * width * height / least


def _middle(box: Box) -> tuple[float, float]:
    return box[0] + box[2] / 2.0, box[1] + box[3] / 2.0
