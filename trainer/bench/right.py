"""The handling that would have been right, and the moments at which a learner's went wrong. No Qt.

Poses are those of the leaves pressed home on the cleaned section: what a good hand would come to.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from exercises.attempt import StatedReading
from exercises.coupon import Coupon
from exercises.gauging import seat_pose
from exercises.grading import Grade
from exercises.handling import HandlingLog
from exercises.judging import right_handling
from geometry.curves import Vec
from geometry.joint import Member
from geometry.leaf import Leaf, leaf_of_mark
from geometry.pose import Pose
from geometry.reading import Reading, read
from geometry.seat import press_home, waiting_pose

__all__ = ["Mistake", "RightSeat", "mistakes_of", "right_seats"]


@dataclass(frozen=True, slots=True)
class RightSeat:
    """One leaf where it should have been held.

    Parameters
    ----------
    leaf, on, pose
        Which, on which member, and where: mm, degrees.
    shown
        What it shows there.
    """

    leaf: Leaf
    on: Member
    pose: Pose
    shown: Reading

    @property
    def outline(self) -> tuple[Vec, ...]:
        """The blade's outline in the section's frame, closed, mm."""
        ring = [self.pose.to_section((float(x), float(y))) for x, y in self.leaf.body.ring]
        return (*ring, ring[0])


def right_seats(coupon: Coupon) -> tuple[RightSeat, ...]:
    """Return every seat that the right handling of a coupon has, in the order of the rules' table.

    A leaf that can't be seated where it is needed stands where its push ends: that it can't is
    then the answer.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(9.0, 7.0, crown=0.5))
    >>> seats = right_seats(Coupon("a", section, Callout(8.0, "leg", "8 mm")))
    >>> [(seat.leaf.mark, seat.on, seat.shown.state) for seat in seats]
    [('8 mm', 'base', 'held off'), ('8 mm', 'upright', 'daylight')]
    """
    section = coupon.section.cleaned()
    right = right_handling(coupon)
    found: list[RightSeat] = []
    for (edge, on), marks in right.at.items():
        for mark in marks:
            leaf = leaf_of_mark(mark, edge, coupon.leaf_wear)
            pose = press_home(section, leaf, waiting_pose(section, leaf, on)).pose
            shown = read(section, leaf, pose, coupon.eye_limit)
            if shown.state == "not seated":
                # Slid home flush it may say what it is that keeps it off.
                flush = seat_pose(section, leaf, on)
                again = read(section, leaf, flush, coupon.eye_limit)
                if again.state != "not seated":
                    pose, shown = flush, again
            found.append(RightSeat(leaf, on, pose, shown))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Mistake:
    """A moment at which something went wrong.

    Parameters
    ----------
    ms
        Of the handling.
    reasons
        Which of the grade's reasons, by their number from 1.
    """

    ms: int
    reasons: tuple[int, ...]


def mistakes_of(
    grade: Grade, readings: Sequence[StatedReading], log: HandlingLog
) -> tuple[Mistake, ...]:
    """Return the moments that a grade's reasons speak of, oldest first.

    A reason about one reading belongs to the moment when that reading was stated; what was never
    done, and the call itself, to the moment of the call.

    Examples
    --------
    >>> from exercises.grading import Reason
    >>> from exercises.handling import Entry
    >>> told = [(500, "state daylight"), (1500, "call accept")]
    >>> log = HandlingLog(tuple(Entry(ms, 0, 0, 0, False, event) for ms, event in told))
    >>> readings = [StatedReading("8 mm", "leg", "base", Pose(0.0, 0.0), "daylight")]
    >>> reasons = (Reason("reading", "reading-other", {"reading": 0.0}, ""),
    ...            Reason("legs", "leg-not-gauged", {"member": "base"}, ""))
    >>> mistakes_of(Grade("a", 0.5, {}, None, False, False, reasons), readings, log)
    (Mistake(ms=500, reasons=(1,)), Mistake(ms=1500, reasons=(2,)))
    """
    if not log.entries:
        return ()
    calls = [entry.ms for entry in log.entries if entry.event.startswith("call")]
    end = calls[-1] if calls else log.entries[-1].ms
    at: dict[int, list[int]] = {}
    for number, reason in enumerate(grade.reasons, start=1):
        if reason.mark == "hints":
            # To have asked was no mistake.
            continue
        index = reason.params.get("reading")
        moment = end
        if isinstance(index, (int, float)) and 0 <= int(index) < len(readings):
            moment = _stated_at(readings[int(index)], log, end)
        at.setdefault(moment, []).append(number)
    return tuple(Mistake(ms, tuple(numbers)) for ms, numbers in sorted(at.items()))


def _stated_at(reading: StatedReading, log: HandlingLog, otherwise: int) -> int:
    """When a reading that stands was stated, ms: the last time that one was at its pose."""
    moments = [
        entry.ms
        for entry in log.entries
        if entry.event.startswith("state ") and entry.pose == reading.pose
    ]
    return moments[-1] if moments else otherwise
