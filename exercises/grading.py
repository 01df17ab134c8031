"""Grades: seven marks on how a weld was handled and called, each below 1 with its reason."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from statistics import fmean
from typing import Final

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon, Disposition
from exercises.faces import right_faces
from exercises.gauging import right_leaves
from exercises.grounds import grounds
from exercises.judging import Judgement, judge, limit_leaves, preferred_rack, size_row
from exercises.largest_leaf import largest_leaf, rack_of, right_sizes
from exercises.placement_faults import true_faults
from exercises.required import called_size, limit_for
from exercises.rules import SizeRow
from exercises.stances import Stance, Stances, member_of
from geometry.joint import MEMBERS, Member
from geometry.leaf import RACKS, Edge, RackName

__all__ = ["HINT_COST", "MARKS", "Grade", "Params", "Reason", "grade", "leaf_name"]

MARKS: Final = ("face", "leaf", "edge", "seat", "legs", "reading", "disposition")
"""The marks of every grade. Beside them stands ``fault`` where a leaf was placed whose fault is to
be found, and ``size`` where a size was asked for and stated."""

HINT_COST: Final = 0.05
"""What each hint that was asked for takes off the score, which never falls below 0."""

Params = Mapping[str, float | str]


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a mark is below 1.

    Parameters
    ----------
    mark
        One of `MARKS`, ``fault`` or ``size``; ``hints`` for what hints took off the score.
    code
        A stable name for the reason; translations hang on it.
    params
        What the text speaks of: lengths in mm; ``reading`` is an index from 0, ``member`` the
        place.
    text
        Plain English.
    """

    mark: str
    code: str
    params: Params
    text: str

    def as_dict(self) -> dict[str, object]:
        """The reason as the `grade` command prints it."""
        return {"code": self.code, "text": self.text}


@dataclass(frozen=True, slots=True)
class Grade:
    """What an attempt is worth.

    Parameters
    ----------
    coupon
        Id of the coupon.
    score
        Mean of the marks that apply, less `HINT_COST` for each hint, 0 to 1; 0 if it is critical,
        or if nothing was stated.
    marks
        0 to 1 by name; None where a mark doesn't apply or can't be known.
    right
        The right disposition; None where the task asks for none.
    in_doubt
        Whether either verdict is right.
    critical
        Whether the attempt accepts what the rules reject.
    reasons
        One or more for each mark below 1.
    """

    coupon: str
    score: float
    marks: Mapping[str, float | None]
    right: Disposition | None
    in_doubt: bool
    critical: bool
    reasons: tuple[Reason, ...]

    def as_dict(self) -> dict[str, object]:
        """The grade as the `grade` command prints it."""
        return {
            "coupon": self.coupon,
            "score": self.score,
            "marks": dict(self.marks),
            "right": self.right,
            "in_doubt": self.in_doubt,
            "critical": self.critical,
            "reasons": [reason.as_dict() for reason in self.reasons],
        }


@dataclass
class _Marking:
    """One attempt being marked: what is known of it, and the reasons found so far."""

    coupon: Coupon
    attempt: Attempt
    judgement: Judgement
    row: SizeRow
    stances: tuple[Stance | None, ...]
    reasons: list[Reason] = field(default_factory=list)

    @property
    def readings(self) -> tuple[StatedReading, ...]:
        return self.attempt.readings or ()

    @property
    def leaf_settles(self) -> bool:
        """Whether there is a right way to hold a leaf here: not where the weld is referred."""
        return self.attempt.readings is not None and not self.judgement.undecided

    def because(self, mark: str, code: str, text: str, **params: float | str) -> None:
        self.reasons.append(Reason(mark, code, params, text))


def grade(coupon: Coupon, attempt: Attempt) -> Grade:
    """Return the grade of an attempt at `coupon`.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))
    >>> coupon = Coupon("hb-04", section, Callout(8.0, "leg", "8 mm"))
    >>> given = grade(coupon, Attempt("hb-04", face="flat", disposition="add weld metal"))
    >>> given.score, given.marks["face"], given.reasons[0].text
    (0.5, 0.0, 'the face is convex: 0.90 mm beyond the line from toe to toe')
    """
    if coupon.task == "find the fault":
        return _grade_fault(coupon, attempt)
    stances = Stances(coupon)
    marking = _Marking(
        coupon,
        attempt,
        judge(coupon),
        size_row(coupon),
        tuple(stances.of(stated) for stated in attempt.readings or ()),
    )
    marks = {name: _MARKERS[name](marking) for name in MARKS}
    if coupon.task == "size" and attempt.size is not None:
        marks["size"] = _mark_size(marking, attempt.size)
    critical = _is_critical(marking)
    return Grade(
        coupon=coupon.id,
        score=0.0 if critical else _score(marks, coupon, attempt, marking.reasons),
        marks=marks,
        right=marking.judgement.disposition if coupon.task == "judge" else None,
        in_doubt=marking.judgement.in_doubt,
        critical=critical,
        reasons=tuple(marking.reasons),
    )


def _score(
    marks: Mapping[str, float | None], coupon: Coupon, attempt: Attempt, reasons: list[Reason]
) -> float:
    """The mean of the marks that apply, less what hints cost; that gets a reason of its own."""
    given = [mark for mark in marks.values() if mark is not None]
    score = fmean(given) if given else 0.0
    # Only a hint that the coupon has can have been shown.
    count = min(attempt.hints or 0, len(coupon.hints))
    if not count:
        return score
    off = HINT_COST * count
    hints = "1 hint was" if count == 1 else f"{count} hints were"
    text = f"{hints} asked for: {off:.2f} off the score"
    reasons.append(Reason("hints", "hints-asked", {"count": count, "off": off}, text))
    return max(0.0, score - off)


def _grade_fault(coupon: Coupon, attempt: Attempt) -> Grade:
    """The grade of what was said of a leaf that somebody else has placed; no more is asked."""
    marks: dict[str, float | None] = dict.fromkeys(MARKS)
    reasons: list[Reason] = []
    marks["fault"] = None
    if attempt.fault is not None:
        true = true_faults(coupon)
        marks["fault"] = 1.0 if attempt.fault in true else 0.0
        if attempt.fault not in true:
            told = "nothing is wrong" if true == ("nothing",) else f"wrong is: {', '.join(true)}"
            params = {"stated": attempt.fault, "faults": ", ".join(true)}
            reasons.append(Reason("fault", "fault-other", params, told))
    score = _score(marks, coupon, attempt, reasons)
    return Grade(coupon.id, score, marks, None, False, False, tuple(reasons))


def _mark_size(marking: _Marking, stated: str) -> float | None:
    """The stated size, by the rack that its leaf hangs on."""
    if marking.judgement.undecided:
        return None
    name = rack_of(stated)
    if stated in right_sizes(marking.coupon, name):
        return 1.0
    largest = largest_leaf(marking.coupon, name)
    if largest is None:
        marking.because("size", "size-none", "the weld meets no leaf of this set", stated=stated)
    else:
        text = f"the largest leaf that the weld meets is {leaf_name(largest)}"
        marking.because("size", "size-other", text, stated=stated, leaf=largest)
    return 0.0


def _is_critical(marking: _Marking) -> bool:
    judgement = marking.judgement
    return (
        marking.coupon.task == "judge"
        and marking.attempt.disposition == "accept"
        and "accept" not in judgement.acceptable
        and judgement.rejected
    )


def _mark_face(marking: _Marking) -> float | None:
    stated, measures = marking.attempt.face, marking.judgement.measures
    if stated is None:
        return None
    if stated in right_faces(measures):
        return 1.0
    off = measures.concavity if measures.face == "concave" else measures.convexity
    shape = "hollow" if measures.face == "concave" else measures.face
    side = {"convex": "beyond", "concave": "short of", "flat": "off"}[measures.face]
    marking.because(
        "face",
        f"face-{measures.face}",
        f"the face is {shape}: {off:.2f} mm {side} the line from toe to toe",
        stated=stated,
        face=measures.face,
        off=off,
    )
    return 0.0


def _mark_leaf(marking: _Marking) -> float | None:
    if marking.coupon.task == "read" or not marking.leaf_settles:
        return None
    seats: dict[tuple[Edge, Member | None], set[str]] = {}
    for stated in marking.readings:
        if stated.edge is not None and stated.leaf is not None:
            seat = (stated.edge, member_of(stated) if stated.edge == "leg" else None)
            seats.setdefault(seat, set()).add(stated.leaf)
    if not seats and marking.readings:
        return None
    shares = [_leaf_share(marking, edge, on, used) for (edge, on), used in seats.items()]
    mark = fmean(shares) if shares else 0.0
    if mark < 1.0:
        _say_which_leaf(marking)
    return mark


def _say_which_leaf(marking: _Marking) -> None:
    """The reason names marks: a leaf is found by what is engraved, not by a converted limit."""
    edge: Edge = "throat" if marking.row.edges == ("throat",) else "leg"
    asked, angle = marking.coupon, marking.coupon.section.joint.angle
    name = preferred_rack(asked)
    members: tuple[Member | None, ...] = MEMBERS if asked.callout.unequal else (None,)
    found = [_leaves_asked(marking, edge, on, name) for on in members]
    marks = tuple(dict.fromkeys(mark for each in found for mark in each))
    text = f"use {' and '.join(leaf_name(mark) for mark in marks)}"
    params: dict[str, float | str] = {"leaves": ", ".join(marks), "task": asked.task}
    if len(marks) > 1:
        text += f", one on either side of the {'weld' if asked.task == 'size' else 'limit'}"
    if len(marks) > 1 and edge == "leg" and angle != 90.0:
        params["angle"] = angle
        text += (
            "; a leaf reads a leg square to the member that its long edge lies on: "
            f"leg x sin({angle:g}\u00b0)"
        )
    marking.because("leaf", "leaf-other", text, **params)


def leaf_name(mark: str) -> str:
    """Return what a leaf of this mark is called.

    Examples
    --------
    >>> leaf_name("5/16 in"), leaf_name("a 5 mm")
    ('the 5/16 in leaf', 'the leaf a 5')
    """
    return f"the leaf {mark.removesuffix(' mm')}" if mark.startswith("a") else f"the {mark} leaf"


def _leaves_asked(
    marking: _Marking, edge: Edge, on: Member | None, name: RackName
) -> tuple[str, ...]:
    """Marks of a rack's leaves for the limit or, where the size is asked, for the weld's own."""
    coupon = marking.coupon
    if coupon.task == "judge":
        return limit_leaves(coupon, edge, name, on)
    worst = min(check.margin for check in marking.judgement.checks if check.required)
    size = limit_for(coupon, edge, on) * (1.0 + worst / called_size(coupon, on))
    return tuple(leaf.mark for leaf in right_leaves(size, name))


def _leaf_share(marking: _Marking, edge: Edge, on: Member | None, used: set[str]) -> float:
    """How much of what one rack needs was used at a seat: the best of the racks."""
    needed = [set(_leaves_asked(marking, edge, on, name)) for name in RACKS]
    return max(len(used & marks) / len(marks) for marks in needed)


def _mark_edge(marking: _Marking) -> float | None:
    edges = [stated.edge for stated in marking.readings if stated.edge is not None]
    if marking.coupon.task == "read" or not marking.leaf_settles:
        return None
    if not edges and marking.readings:
        return None
    if not edges:
        marking.because("edge", "no-reading", "no leaf was held to the weld")
        return 0.0
    if "flat" in right_faces(marking.judgement.measures):
        return 1.0
    if marking.row.throat:
        # Legs are gauged with the leg edge on a hollow weld too; what counts here is the throat.
        if "throat" in edges:
            return 1.0
        marking.because(
            "edge", "edge-throat", "a hollow face is read at the throat, with the throat edge"
        )
        return 0.0
    mark = edges.count("leg") / len(edges)
    if mark < 1.0:
        marking.because(
            "edge",
            "edge-leg",
            "a convex face is gauged at its legs, with the leg edge: at the throat its crown "
            "flatters it",
        )
    return mark


def _mark_seat(marking: _Marking) -> float | None:
    good: list[bool] = []
    for index, stance in enumerate(marking.stances):
        # Where no leaf of that size can be seated, an honest try is neither good nor bad.
        if stance is None or (stance.legal and not stance.seatable):
            continue
        good.append(stance.legal and stance.seated)
        if not stance.legal:
            marking.because(
                "seat",
                "seat-in-steel",
                f"reading {index + 1}: the leaf stands {stance.depth:.2f} mm inside steel",
                reading=index,
                depth=stance.depth,
            )
        elif not stance.seated:
            way = ", ".join(stance.shown.in_the_way)
            marking.because(
                "seat",
                "seat-open",
                f"reading {index + 1}: the leaf is not seated"
                + (f"; in the way: {way}" if way else ""),
                reading=index,
                in_the_way=way,
            )
    return sum(good) / len(good) if good else None


def _mark_legs(marking: _Marking) -> float | None:
    if marking.coupon.task == "read" or not marking.leaf_settles or not marking.row.legs:
        return None
    gauged = {member_of(stated) for stated in marking.readings if stated.edge == "leg"}
    missing = [member for member in MEMBERS if member not in gauged]
    for member in missing:
        marking.because(
            "legs",
            "leg-not-gauged",
            f"the leg on the {member} was not gauged with the leg edge",
            member=member,
        )
    return 1.0 - len(missing) / len(MEMBERS)


def _mark_reading(marking: _Marking) -> float | None:
    good: list[bool] = []
    for index, stance in enumerate(marking.stances):
        if stance is None or stance.stated.state is None:
            continue
        good.append(stance.stated.state in stance.states)
        if not good[-1]:
            shown = stance.shown
            gap = f" ({shown.gap:.2f} mm)" if shown.gap is not None else ""
            marking.because(
                "reading",
                "reading-other",
                f"reading {index + 1}: the leaf shows {shown.state}{gap}, not "
                f"{stance.stated.state}",
                reading=index,
                stated=stance.stated.state,
                state=shown.state,
                gap=shown.gap if shown.gap is not None else 0.0,
            )
    return sum(good) / len(good) if good else None


def _mark_disposition(marking: _Marking) -> float | None:
    stated, judgement = marking.attempt.disposition, marking.judgement
    if stated is None or marking.coupon.task != "judge":
        return None
    if stated in judgement.acceptable:
        return 1.0
    right = judgement.disposition
    why, params = grounds(marking.coupon, judgement)
    marking.because(
        "disposition",
        f"right-{right.replace(' ', '-')}",
        f"the right call is {right}: {why}",
        stated=stated,
        right=right,
        **params,
    )
    return 0.0


_MARKERS: Final[Mapping[str, Callable[[_Marking], float | None]]] = {
    "face": _mark_face,
    "leaf": _mark_leaf,
    "edge": _mark_edge,
    "seat": _mark_seat,
    "legs": _mark_legs,
    "reading": _mark_reading,
    "disposition": _mark_disposition,
}
