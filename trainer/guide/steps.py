"""The guide as a frozen value: its steps, and what has to be done before each is over. No Qt here.

A step is over once its thing has been done, by whatever means and in whatever order; nothing here
depends on what a leaf truly shows, nor on whether anything that was stated is right.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final, Literal

from geometry.contact import Touch
from trainer.bench.moves import lies_flush
from trainer.bench.state import BenchState, seat_of

__all__ = [
    "OFF",
    "OFFERED",
    "STEPS",
    "Guide",
    "Phase",
    "Seen",
    "Step",
    "StepName",
    "Target",
    "advanced",
    "rests",
    "shown_step",
    "skipped",
    "started",
    "target_of",
]

Phase = Literal["off", "offered", "on"]
StepName = Literal[
    "face",
    "pick",
    "turn over",
    "press home",
    "look",
    "state",
    "other leg",
    "disposition",
    "record",
    "debrief",
]
Target = Literal[
    "faces", "rack", "turn over", "swap ends", "press home", "loupe", "loupe switch", "states",
    "dispositions", "record", "replay",
]  # fmt: skip
"""What a step points at."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What the guide may know of the bench.

    Parameters
    ----------
    state
        The bench's state.
    looked
        Whether somebody has looked closer: zoomed, moved the picture, or switched the loupe.
    loupe
        Whether the loupe is on.
    reviewed
        Whether something of the debrief was looked at: the replay, or a reading.
    """

    state: BenchState
    looked: bool = False
    loupe: bool = True
    reviewed: bool = False


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do.

    Parameters
    ----------
    name
        What it is about.
    done
        Whether it has been done.
    with_leaf
        Whether a leaf must be off the rack for it.
    """

    name: StepName
    done: Callable[[Seen], bool]
    with_leaf: bool = False


@dataclass(frozen=True, slots=True)
class Guide:
    """Where somebody is in the guide.

    Parameters
    ----------
    phase
        Not there, offered, or on.
    at
        The step that is next, from 0; ``len(STEPS)`` once all are over.
    """

    phase: Phase = "off"
    at: int = 0

    @property
    def over(self) -> bool:
        """Whether the last step has been done or skipped."""
        return self.at >= len(STEPS)


OFF: Final = Guide()
OFFERED: Final = Guide("offered")


def _turned_over(seen: Seen) -> bool:
    events = (entry.event for entry in seen.state.handling.entries)
    return any(event.startswith("turn over") for event in events)


def rests(touches: tuple[Touch, ...], size: float) -> bool:
    """Whether a leaf of `size` (mm) lies flush on one member and touches something else as well.

    Contact alone: what it shows there is for the learner to say.

    Examples
    --------
    >>> flush = Touch("arc|long", "base", (12.0, 0.0)), Touch("long|back", "base", (24.0, 0.0))
    >>> tip = Touch("arc|end", "upright", (0.0, 8.0))
    >>> rests(flush, 8.0), rests((*flush, tip), 8.0)
    (False, True)
    """
    return lies_flush(touches, size) and len({touch.fixed for touch in touches}) > 1


def _pressed(seen: Seen) -> bool:
    state = seen.state
    if any(entry.event == "press home" for entry in state.handling.entries):
        return True
    leaf = state.leaf
    return leaf is not None and state.hand is None and rests(state.touches, leaf.size)


def _stated(seen: Seen) -> bool:
    return bool(seen.state.readings)


def _both_legs(seen: Seen) -> bool:
    read = {reading.on for reading in seen.state.readings if reading.edge == "leg"}
    return read >= {"base", "upright"}


STEPS: Final[tuple[Step, ...]] = (
    Step("face", lambda seen: seen.state.face is not None),
    Step("pick", lambda seen: seen.state.leaf is not None),
    Step("turn over", _turned_over, with_leaf=True),
    Step("press home", _pressed, with_leaf=True),
    Step("look", lambda seen: seen.looked or _stated(seen), with_leaf=True),
    Step("state", _stated, with_leaf=True),
    Step("other leg", _both_legs, with_leaf=True),
    Step(
        "disposition",
        lambda seen: seen.state.disposition is not None or seen.state.coupon.task != "judge",
    ),
    Step("record", lambda seen: seen.state.phase == "debrief"),
    Step("debrief", lambda seen: seen.reviewed),
)
"""In order; what has been done before its turn has been done."""


def advanced(guide: Guide, seen: Seen) -> Guide:
    """Go past every step that has been done; never back.

    A call on record ends the handling, so it is past all that belongs to it.

    Examples
    --------
    >>> advanced(OFF, Seen(None))
    Guide(phase='off', at=0)
    """
    if guide.phase != "on":
        return guide
    at = guide.at
    if seen.state.phase == "debrief":
        at = max(at, _place("debrief"))
    while at < len(STEPS) and STEPS[at].done(seen):
        at += 1
    return replace(guide, at=at)


def _place(name: StepName) -> int:
    return next(at for at, step in enumerate(STEPS) if step.name == name)


def started(seen: Seen) -> Guide:
    """Begin, at the first step that hasn't been done yet."""
    return advanced(Guide("on"), seen)


def skipped(guide: Guide, seen: Seen) -> Guide:
    """Go past the step that is next without doing it."""
    if guide.phase != "on" or guide.over:
        return guide
    return advanced(replace(guide, at=guide.at + 1), seen)


def shown_step(guide: Guide, state: BenchState) -> StepName | None:
    """Which step the card speaks of; None if of none.

    It is the next one, or ``pick`` again if that needs a leaf and all hang on the rack.
    """
    if guide.phase != "on" or guide.over:
        return None
    step = STEPS[guide.at]
    return "pick" if step.with_leaf and state.leaf is None else step.name


def target_of(name: StepName, seen: Seen) -> Target:
    """What a step points at as things stand."""
    if name == "other leg":
        return _target_of_other_leg(seen.state)
    if name == "turn over" and seen.state.leaf is not None and seen.state.leaf.edge == "throat":
        return "swap ends"
    if name == "look" and not seen.loupe:
        return "loupe switch"
    plain: dict[StepName, Target] = {
        "face": "faces",
        "pick": "rack",
        "turn over": "turn over",
        "press home": "press home",
        "look": "loupe",
        "state": "states",
        "disposition": "dispositions",
        "record": "record",
        "debrief": "replay",
    }
    return plain[name]


def _target_of_other_leg(state: BenchState) -> Target:
    """What comes next on the way to the other leg."""
    leaf, pose = state.leaf, state.pose
    if leaf is None or pose is None:
        return "rack"
    if leaf.edge == "throat":
        return "swap ends"
    read = {reading.on for reading in state.readings if reading.edge == "leg"}
    if seat_of(leaf, pose) in read:
        return "turn over"
    return "states" if rests(state.touches, leaf.size) else "press home"
