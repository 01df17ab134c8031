"""What stands on the bench: one frozen value, replaced whole by every gesture.

No Qt here: widgets call these functions through the controller and repaint from what they return.
Times are milliseconds of any monotonic clock and always come from the caller.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Final, Literal

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon, Disposition, Task
from exercises.grading import Grade, grade
from exercises.handling import Entry, HandlingLog
from exercises.placed import PlacementFault
from exercises.placement_faults import placed_leaf
from geometry.contact import Touch, touches
from geometry.curves import Vec
from geometry.joint import Member
from geometry.leaf import Leaf, RackName, leaf_of_mark
from geometry.measures import FaceShape
from geometry.pose import Pose
from geometry.reading import State
from geometry.section import Section

__all__ = [
    "MERGE_WITHIN",
    "BenchState",
    "Hold",
    "Phase",
    "Stated",
    "also_seated",
    "asked_of",
    "attempt_of",
    "call",
    "cleaned",
    "hinted",
    "lies_in_the_air",
    "logged",
    "name_disposition",
    "name_face",
    "name_fault",
    "name_size",
    "name_sureness",
    "open_coupon",
    "resumed",
    "seat_of",
    "show_rack",
    "state_reading",
    "stepped",
    "surer",
    "undone",
    "with_leaf",
    "without_reading",
]

Phase = Literal["handling", "debrief"]

Stated = Literal["face", "reading", "disposition", "size", "fault"]

_ASKED: Final[dict[Task, tuple[Stated, ...]]] = {
    "read": ("face", "reading"),
    "size": ("face", "reading", "size"),
    "judge": ("face", "reading", "disposition"),
    "find the fault": ("fault",),
}

_REQUIRED: Final[dict[Task, tuple[Stated, ...]]] = {
    **_ASKED,
    # Somebody may call a weld by looking alone: that no leaf was held costs marks.
    "judge": ("face", "disposition"),
}

_SMALL: Final = frozenset({"nudge", "turn", "sure"})

_IN_THE_AIR: Final = 0.05
"""mm: a leaf that is nowhere nearer to steel than this touches nothing, however it was set down."""

MERGE_WITHIN: Final = 400.0
"""ms: steps of one kind that follow each other faster than this are one gesture, so one undo."""


@dataclass(frozen=True, slots=True)
class Hold:
    """A hand on the blade.

    Parameters
    ----------
    grab
        The held point in the leaf's frame, mm.
    pointer
        Where the hand wants it, mm in the section's frame.
    angle
        What the wrist wants, degrees.
    flush_since
        ms, when the leaf last fell flush under this hand; None while it isn't.
    """

    grab: Vec
    pointer: Vec
    angle: float
    flush_since: float | None = None


@dataclass(frozen=True, slots=True, eq=False)
class BenchState:
    """One moment at the bench.

    Parameters
    ----------
    coupon
        What is to be judged, as the tray has it.
    section
        The coupon's section as it stands: maybe with its toes cleaned.
    rack
        Which set of leaves hangs on the rack.
    leaf, pose
        The leaf in the hand's reach and where it lies; both None while it hangs on the rack.
    hand
        The hand on it, if any.
    touches
        Where the leaf touched steel after its last move.
    way
        The poses of the last move, first to last: for showing it, never for reading it.
    readings, face, disposition, sure, fault, size
        What has been stated so far; which of it, `asked_of` says.
    hints
        How many of the coupon's hints have been asked for.
    handling, began
        The recorded path, and the ms of the clock at which it began.
    refused
        How many moves were refused so far; a view that sees it rise shakes the leaf.
    phase, grade
        `debrief` with a grade once the call is on record.
    before
        The value to go back to; one for each gesture.
    step
        Kind and ms of the last gesture, for merging quick repeats.
    """

    coupon: Coupon
    section: Section
    rack: RackName
    leaf: Leaf | None = None
    pose: Pose | None = None
    hand: Hold | None = None
    touches: tuple[Touch, ...] = ()
    way: tuple[Pose, ...] = ()
    readings: tuple[StatedReading, ...] = ()
    face: FaceShape | None = None
    disposition: Disposition | None = None
    sure: float | None = None
    fault: PlacementFault | None = None
    size: str | None = None
    hints: int = 0
    handling: HandlingLog = field(default_factory=HandlingLog)
    began: float | None = None
    refused: int = 0
    phase: Phase = "handling"
    grade: Grade | None = None
    before: BenchState | None = field(default=None, repr=False)
    step: tuple[str, float] = ("", 0.0)

    @property
    def cleaned(self) -> bool:
        """Whether the toes are clean: nothing left to chip off."""
        return not self.section.spatter

    @property
    def can_call(self) -> bool:
        """Whether enough has been stated to put it on record."""
        return self.phase == "handling" and not self.missing

    @property
    def missing(self) -> tuple[Stated, ...]:
        """What must still be stated."""
        stated: dict[Stated, object] = {
            "face": self.face,
            "reading": self.readings,
            "disposition": self.disposition,
            "size": self.size,
            "fault": self.fault,
        }
        return tuple(what for what in _REQUIRED[self.coupon.task] if not stated[what])

    @property
    def can_move(self) -> bool:
        """Whether leaves may be taken and moved: not one that is to be judged as it lies."""
        return self.phase == "handling" and self.coupon.task != "find the fault"


def asked_of(coupon: Coupon) -> tuple[Stated, ...]:
    """Return what can be stated of a coupon, by its task."""
    return _ASKED[coupon.task]


def open_coupon(coupon: Coupon, rack: RackName = "metric") -> BenchState:
    """Lay `coupon` out: nothing stated, all leaves on the rack but one that is placed already.

    Which set hangs there is the learner's choice: one that came by itself would say how to gauge.
    """
    state = BenchState(coupon, coupon.section, rack)
    placed = coupon.placed
    if placed is None or coupon.task != "find the fault":
        return state
    leaf = placed_leaf(coupon)
    met = touches(coupon.section.outline, leaf.body, placed.pose, _IN_THE_AIR)
    return replace(state, leaf=leaf, pose=placed.pose, touches=met)


def resumed(state: BenchState, left: float, now: float) -> BenchState:
    """Take a coupon up again that was left at `left`: the time away is no part of the handling.

    Parameters
    ----------
    left, now
        ms of the one clock.
    """
    if state.phase != "handling":
        return state
    began = None if state.began is None else state.began + now - left
    return replace(state, began=began, hand=None, way=())


def stepped(state: BenchState, kind: str, now: float) -> BenchState:
    """Begin a gesture: what is now becomes the value that undo goes back to.

    A small step of the same kind within `MERGE_WITHIN` ms of the last one belongs to it.
    """
    last, at = state.step
    merges = kind in _SMALL and kind == last and 0.0 <= now - at <= MERGE_WITHIN
    if merges and state.before is not None:
        return replace(state, step=(kind, now))
    return replace(state, before=state, step=(kind, now))


def logged(state: BenchState, event: str, now: float) -> BenchState:
    """Add the leaf's pose and `event` to the handling; the first entry starts its clock."""
    began = now if state.began is None else state.began
    pose = state.pose or Pose(0.0, 0.0)
    entry = Entry(round(now - began), pose.x, pose.y, pose.angle, pose.turned, event)
    return replace(state, began=began, handling=state.handling.added(entry))


def with_leaf(event: str, state: BenchState) -> str:
    """An event that says which leaf, by which end, lies on the bench after it.

    Examples
    --------
    >>> from geometry.leaf import leaf_of_mark
    >>> from types import SimpleNamespace
    >>> with_leaf("pick", SimpleNamespace(leaf=leaf_of_mark("8 mm")))
    'pick 8 mm leg'
    """
    return event if state.leaf is None else f"{event} {state.leaf.mark} {state.leaf.edge}"


def undone(state: BenchState, now: float) -> BenchState:
    """Go back one gesture. The handling keeps what was done and gains an ``undo``."""
    if state.before is None or state.phase != "handling":
        return state
    back = replace(
        state.before,
        handling=state.handling,
        began=state.began,
        hints=state.hints,
        rack=state.rack,
        hand=None,
        way=(),
        refused=state.refused,
    )
    soiled = " spattered" if back.section.spatter else ""
    return logged(back, with_leaf("undo", back) + soiled, now)


def show_rack(state: BenchState, rack: RackName) -> BenchState:
    """Hang another set on the rack. The leaf in use stays."""
    return replace(state, rack=rack)


def hinted(state: BenchState) -> BenchState:
    """Show one hint more."""
    return replace(state, hints=min(state.hints + 1, len(state.coupon.hints)))


def cleaned(state: BenchState, now: float) -> BenchState:
    """Chip the spatter off both toes. The leaf stays where it is: nothing pulls it down."""
    if state.cleaned or not state.can_move:
        return state
    began = stepped(state, "clean", now)
    return logged(replace(began, section=state.section.cleaned(), way=()), "clean", now)


def seat_of(leaf: Leaf, pose: Pose) -> Member:
    """Which member a leaf is `on` as it lies: the one that its tip reads.

    The throat edge is never turned and lies the same on either; rules count it on the base.
    """
    return "base" if leaf.edge == "throat" or pose.turned else "upright"


def state_reading(state: BenchState, shown: State, now: float) -> BenchState:
    """State what the leaf shows at this seat; a second word on the same seat replaces the first.

    Except that what is said of a leaf in mid-air replaces nothing that was said of one in contact:
    both stand, and either can be taken back.
    """
    if state.leaf is None or state.pose is None or not _asks(state, "reading"):
        return state
    stated = StatedReading(
        leaf=state.leaf.mark,
        edge=state.leaf.edge,
        on=seat_of(state.leaf, state.pose),
        pose=state.pose,
        state=shown,
    )
    aloft = lies_in_the_air(state, stated)
    others = tuple(
        reading
        for reading in state.readings
        if not _same_seat(reading, stated) or (aloft and not lies_in_the_air(state, reading))
    )
    began = stepped(state, "state", now)
    return logged(replace(began, readings=(*others, stated)), f"state {shown}", now)


def _same_seat(one: StatedReading, other: StatedReading) -> bool:
    return (one.leaf, one.edge, one.on) == (other.leaf, other.edge, other.on)


def lies_in_the_air(state: BenchState, reading: StatedReading) -> bool:
    """Whether the leaf of a stated reading touched nothing at all, toes cleaned or not.

    This asks about contact alone, never what the leaf shows.
    """
    if reading.leaf is None or reading.edge is None or reading.pose is None:
        return False
    body = leaf_of_mark(reading.leaf, reading.edge, state.coupon.leaf_wear).body
    sections = (state.section, state.coupon.section)
    return not any(
        touches(section.outline, body, reading.pose, _IN_THE_AIR) for section in sections
    )


def without_reading(state: BenchState, index: int, now: float) -> BenchState:
    """Take back the stated reading at `index`."""
    if state.phase != "handling" or not 0 <= index < len(state.readings):
        return state
    kept = state.readings[:index] + state.readings[index + 1 :]
    return logged(replace(stepped(state, "unstate", now), readings=kept), "take back", now)


def name_face(state: BenchState, face: FaceShape, now: float) -> BenchState:
    """Name the face."""
    if not _asks(state, "face"):
        return state
    return replace(stepped(state, "face", now), face=face)


def name_disposition(state: BenchState, disposition: Disposition, now: float) -> BenchState:
    """Choose what should happen to the weld."""
    if not _asks(state, "disposition"):
        return state
    return replace(stepped(state, "disposition", now), disposition=disposition)


def name_fault(state: BenchState, fault: PlacementFault, now: float) -> BenchState:
    """Say what is wrong with the leaf that somebody has placed."""
    if not _asks(state, "fault"):
        return state
    return replace(stepped(state, "fault", now), fault=fault)


def name_size(state: BenchState, mark: str, now: float) -> BenchState:
    """State the largest leaf that the weld meets, by its mark."""
    if not _asks(state, "size"):
        return state
    return replace(stepped(state, "size", now), size=mark)


def _asks(state: BenchState, what: Stated) -> bool:
    """Whether this can be stated now."""
    return state.phase == "handling" and what in asked_of(state.coupon)


def name_sureness(state: BenchState, sure: float, now: float) -> BenchState:
    """Say how sure the call is, 0 to 1."""
    if state.phase != "handling":
        return state
    return replace(stepped(state, "sure", now), sure=min(1.0, max(0.0, sure)))


def surer(state: BenchState, by: float, now: float) -> BenchState:
    """Say that the call is surer than said so far, or less sure; unsaid counts as even.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> surer(SimpleNamespace(phase="debrief", sure=0.5), 0.1, 0.0).sure
    0.5
    """
    said = 0.5 if state.sure is None else state.sure
    return name_sureness(state, round(said + by, 6), now)


def attempt_of(state: BenchState) -> Attempt:
    """What has been stated, as an attempts file holds it."""
    asked = asked_of(state.coupon)
    return Attempt(
        coupon=state.coupon.id,
        face=state.face,
        readings=state.readings if "reading" in asked else None,
        disposition=state.disposition,
        sure=state.sure,
        fault=state.fault,
        size=state.size,
        hints=state.hints if state.coupon.hints else None,
    )


def call(state: BenchState, now: float) -> BenchState:
    """Put the call on record and grade it, by the same code as the command."""
    if not state.can_call:
        return state
    ended = logged(replace(state, hand=None, way=()), "call", now)
    return replace(ended, phase="debrief", grade=grade(state.coupon, attempt_of(state)))


def also_seated(state: BenchState) -> bool:
    """Whether the last reading stands beside an earlier one of the same leaf at the same seat."""
    *earlier, last = state.readings
    return any((one.leaf, one.edge, one.on) == (last.leaf, last.edge, last.on) for one in earlier)
