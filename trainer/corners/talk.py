"""The talk: a short sequence of passages that stops wherever a verdict flips. No Qt here.

Where that is, is found on the true state, by bisection: nothing of it is written down.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Final, Literal

from geometry.reading import State
from trainer.corners.pressing import Pressed
from trainer.corners.state import Corners
from trainer.corners.verdict import Trust

__all__ = [
    "STRIDE",
    "Flip",
    "Passage",
    "Sign",
    "Signs",
    "Stop",
    "Topic",
    "flips_between",
    "passages",
    "seek",
    "signs",
    "stop_between",
]

Topic = Literal["size", "crown", "legs", "opens", "closes"]

Look = Callable[[Corners], Pressed]
"""Presses the four corners of a state home."""

Worth = Literal["sound", "false comfort", "false alarm", "silent"]
Sign = tuple[State, Worth]
Signs = tuple[Sign, ...]
"""State and worth of each corner: a verdict flips when one of them changes."""

STRIDE: Final = 1.0 / 40.0
"""The longest step, as a share of a passage, over which flips are looked for."""

_SHARP: Final = 1e-4
"""The share of a passage within which a flip is found: 0.6 micrometres of a 6 mm growth."""

_SAME: Final = 0.015
"""Flips this near each other, as a share of a passage, are one stop."""


@dataclass(frozen=True, slots=True)
class Passage:
    """One change of the four sections, from start to end.

    Parameters
    ----------
    topic
        What it is about.
    start, end
        The states at either end; what differs goes from one to the other evenly.

    Examples
    --------
    >>> Passage("crown", Corners(crown=2.0), Corners(crown=-2.0)).at(0.75).crown
    -1.0
    """

    topic: Topic
    start: Corners
    end: Corners

    def at(self, share: float) -> Corners:
        """The state at a share of the way, 0 to 1."""
        start, end = self.start, self.end

        def between(a: float, b: float) -> float:
            return b if share >= 1.0 else a + (b - a) * share

        return replace(
            start,
            leg_base=between(start.leg_base, end.leg_base),
            leg_upright=between(start.leg_upright, end.leg_upright),
            crown=between(start.crown, end.crown),
            hollow=between(start.hollow, end.hollow),
            angle=between(start.angle, end.angle),
        )


@dataclass(frozen=True, slots=True)
class Flip:
    """A corner, by its place, whose verdict became another one."""

    place: int
    before: Sign
    after: Sign


@dataclass(frozen=True, slots=True)
class Stop:
    """Where the talk pauses.

    Parameters
    ----------
    passage
        Its place in the talk.
    share
        How far along it, 0 to 1.
    flips
        What flipped there; nothing at a passage's own ends.
    """

    passage: int
    share: float
    flips: tuple[Flip, ...] = ()


def passages(state: Corners) -> tuple[Passage, ...]:
    """Return the talk for the leaf that `state` has, everything to that leaf's size.

    Examples
    --------
    >>> [passage.topic for passage in passages(Corners())]
    ['size', 'crown', 'legs', 'opens', 'closes']
    """
    size = state.leaf("leg").size
    part = size / 8.0
    whole = replace(
        state,
        leg_base=size,
        leg_upright=size,
        crown=1.0 * part,
        hollow=-1.3 * part,
        angle=90.0,
        on="upright",
        equal=True,
    )
    small = replace(whole, leg_base=0.75 * size, leg_upright=0.75 * size)
    large = replace(whole, leg_base=1.45 * size, leg_upright=1.45 * size)
    round_ = replace(whole, crown=2.0 * part, hollow=-2.0 * part)
    swapped = replace(whole, crown=-2.0 * part, hollow=2.0 * part)
    even = replace(whole, crown=0.6 * part, hollow=-0.6 * part, equal=False)
    parted = replace(even, leg_base=1.35 * size, leg_upright=0.8 * size)
    return (
        Passage("size", small, large),
        Passage("crown", round_, swapped),
        Passage("legs", even, parted),
        Passage("opens", whole, replace(whole, angle=115.0)),
        Passage("closes", whole, replace(whole, angle=70.0)),
    )


def signs(corners: Pressed) -> Signs:
    """Return state and worth of each corner; what is no falsehood is sound, whole or half."""
    return tuple((corner.reading.state, _worth(corner.verdict.trust)) for corner in corners)


def _worth(trust: Trust) -> Worth:
    return "sound" if trust == "honest" or trust == "half" else trust  # noqa: PLR1714 narrows


def flips_between(before: Signs, after: Signs) -> tuple[Flip, ...]:
    """Return what differs."""
    return tuple(
        Flip(place, old, new)
        for place, (old, new) in enumerate(zip(before, after, strict=True))
        if old != new
    )


def stop_between(look: Look, at: int, passage: Passage, near: float, far: float) -> Stop | None:
    """Return the first stop in a short part of a passage, or None if nothing flips in it.

    Parameters
    ----------
    look
        Presses a state home.
    at, passage
        The passage, and its place in the talk.
    near, far
        The part, as shares of the passage; `near` may be after `far` on the way back. No longer
        than `STRIDE`, or a flip there and back may be passed over.

    Examples
    --------
    A flat bead's legs grow: 8 mm shows daylight until they are within an eye's tenth.

    >>> from trainer.corners.pressing import Pressing
    >>> grows = Passage("size", Corners(7.5, 7.5, 0.0, -1.0), Corners(8.0, 8.0, 0.0, -1.0))
    >>> stop = stop_between(Pressing().corners, 0, grows, 0.79, 0.81)
    >>> round(grows.at(stop.share).leg_upright, 3)
    7.9
    """
    before = signs(look(passage.at(near)))
    if signs(look(passage.at(far))) == before:
        return None
    low, high = near, far
    while abs(high - low) > _SHARP:
        mid = (low + high) / 2.0
        if signs(look(passage.at(mid))) == before:
            low = mid
        else:
            high = mid
    # What flips only just after is the same event: legs that grow together pass a leaf together.
    beyond = high + (_SAME if far > near else -_SAME)
    share = min(max(beyond, 0.0), 1.0)
    together = signs(look(passage.at(share)))
    if together == signs(look(passage.at(high))) or together == before:
        share, together = high, signs(look(passage.at(high)))
    return Stop(at, share, flips_between(before, together))


def seek(look: Look, at: int, passage: Passage, share: float) -> Iterator[Stop | None]:
    """Look for the first stop after `share`: yields None for every stride without one, then it.

    The end of the passage is a stop at the latest. A stride takes a few presses, so that whoever
    waits can do something else in between.
    """
    near = share
    while near < 1.0:
        far = min(near + STRIDE, 1.0)
        stop = stop_between(look, at, passage, near, far)
        if stop is not None:
            yield stop
            return
        yield None
        near = far
    yield Stop(at, 1.0)
