"""What a sitting came to: the score, the skills, whether that passes, and why not.

Each coupon is graded as at the bench (`exercises.grading`); a critical call fails its coupon. What
was left unanswered scores 0 and, since nothing was stated, counts for no skill. Marks can be
overridden with a reason; nothing of what was graded is changed by that.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from statistics import fmean
from typing import Any, Final, Protocol

from exercises.grading import HINT_COST, MARKS
from exercises.sitting.plan import SKILLS, PassMarks, Plan, Skill
from exercises.strict_json import quoted
from geometry.faults import Fault

__all__ = [
    "LONGEST_REASON",
    "OVERRIDABLE",
    "Markable",
    "Marked",
    "Override",
    "Shortfall",
    "Standing",
    "mark",
    "marked",
    "override_faults",
]

OVERRIDABLE: Final = (*MARKS, "fault", "size", "critical", "score")
"""What may be overridden: the marks of a grade, whether it is critical (1 or 0), or its score."""

LONGEST_REASON: Final = 2000

_EVEN: Final = 1e-9
"""A mean that is its pass mark but for rounding reaches it."""


class Markable(Protocol):
    """What can be marked: an `exercises.sitting.result.Item`, or as much of one as a list holds."""

    @property
    def number(self) -> int:
        """Its place in the paper."""

    @property
    def attempt(self) -> Mapping[str, Any] | None:
        """What was stated."""

    @property
    def grade(self) -> Mapping[str, Any] | None:
        """What it came to."""

    @property
    def answered(self) -> bool:
        """Whether anything was stated."""

    @property
    def hints(self) -> int:
        """How many hints the coupon has."""


@dataclass(frozen=True, slots=True)
class Override:
    """A mark set by hand.

    Parameters
    ----------
    item
        Number of the item.
    mark
        One of `OVERRIDABLE`.
    value
        0 to 1.
    reason
        Why; never empty.
    by
        Who says so.
    at
        When, with its zone: of several for one mark the latest holds.

    Raises
    ------
    ValueError
        If that is no override; `override_faults` says what is wrong with it.
    """

    item: int
    mark: str
    value: float
    reason: str
    by: str
    at: datetime

    def __post_init__(self) -> None:
        faults = override_faults(self.mark, self.value, self.reason, self.by)
        if faults:
            raise ValueError("; ".join(str(fault) for fault in faults))
        if self.at.tzinfo is None:
            raise ValueError(f"{self.at} has no zone; right would be a time with its zone")


def override_faults(mark: str, value: float, reason: str, by: str) -> list[Fault]:
    """Return what keeps a mark from being overridden so.

    Examples
    --------
    >>> override_faults("seat", 1.0, "the picture was cut off", "instructor 2")
    []
    >>> [fault.code for fault in override_faults("seats", 2.0, "  ", "")]
    ['override-mark', 'override-value', 'override-reason', 'override-by']
    """
    found: list[Fault] = []
    if mark not in OVERRIDABLE:
        known = ", ".join(OVERRIDABLE)
        params: dict[str, float | str] = {"value": quoted(mark), "known": known}
        text = f"{quoted(mark)} is no mark"
        found.append(Fault("/mark", "override-mark", text, f"one of: {known}", params))
    whole = mark != "critical" or value in {0.0, 1.0}
    if not (math.isfinite(value) and 0.0 <= value <= 1.0 and whole):
        right = "0 or 1" if mark == "critical" else "0 to 1"
        params = {"value": f"{value:g}", "range": right}
        found.append(Fault("/value", "override-value", f"the mark is {value:g}", right, params))
    if not reason.strip() or len(reason) > LONGEST_REASON:
        text = "no reason is given" if not reason.strip() else "the reason is too long"
        right = f"1 to {LONGEST_REASON} characters"
        params = {"kind": "none" if not reason.strip() else "long", "most": LONGEST_REASON}
        found.append(Fault("/reason", "override-reason", text, right, params))
    if not by.strip():
        text, right = "nobody is named", "who overrides the mark"
        found.append(Fault("/by", "override-by", text, right))
    return found


@dataclass(frozen=True, slots=True)
class Marked:
    """What one item is worth, overrides included.

    Parameters
    ----------
    score
        0 to 1.
    marks
        0 to 1 by name; None where a mark doesn't apply or can't be known.
    critical
        Whether it accepts what the rules reject.
    overridden
        Names of what was overridden.
    """

    score: float
    marks: Mapping[str, float | None]
    critical: bool
    overridden: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Shortfall:
    """Why a sitting isn't passed.

    Parameters
    ----------
    code, params
        A stable name for the reason and what it speaks of; translations hang on them.
    text
        Plain English.
    """

    code: str
    params: Mapping[str, float | str]
    text: str

    def as_dict(self) -> dict[str, object]:
        """The reason as plain values."""
        return {"code": self.code, "params": dict(self.params), "text": self.text}


@dataclass(frozen=True, slots=True)
class Standing:
    """What a sitting came to.

    Parameters
    ----------
    score
        Mean over all coupons of the paper, 0 to 1.
    by_skill
        Mean mark over the coupons where it applies; None where none was marked on it.
    critical, unanswered
        How many items.
    passed
        Whether every pass mark is reached.
    why
        One for each thing that it isn't passed for.
    """

    score: float
    by_skill: Mapping[Skill, float | None]
    critical: int
    unanswered: int
    passed: bool
    why: tuple[Shortfall, ...]


def marked(item: Markable, overrides: Iterable[Override] = ()) -> Marked:
    """Return what an item is worth; overrides of other items are passed over.

    An overridden mark takes the place of the graded one and the score follows from it; an
    overridden score holds whatever the marks are.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> from exercises.attempt import Attempt
    >>> from exercises.coupon import Callout, Coupon
    >>> from exercises.sitting.result import item_of
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 6.7)), Callout(8.0, "leg", "8 mm"))
    >>> attempt = Attempt("a", face="flat", disposition="accept")
    >>> item = item_of(1, "1-001", coupon, attempt)
    >>> marked(item).score, marked(item).critical
    (0.0, True)
    >>> at = datetime(2026, 3, 2, tzinfo=UTC)
    >>> said = Override(1, "critical", 0.0, "the section was cut off", "instructor 2", at)
    >>> marked(item, [said]).score, marked(item, [said]).overridden
    (0.5, frozenset({'critical'}))
    """
    given: Any = item.grade
    if given is None:
        before = Marked(0.0, dict.fromkeys(MARKS), critical=False)
    else:
        marks = {name: None if m is None else float(m) for name, m in given["marks"].items()}
        before = Marked(float(given["score"]), marks, bool(given["critical"]))
    latest: dict[str, float] = {}
    for each in sorted((o for o in overrides if o.item == item.number), key=lambda o: o.at):
        latest[each.mark] = each.value
    return _overridden(item, before, latest) if latest else before


def _overridden(item: Markable, before: Marked, latest: Mapping[str, float]) -> Marked:
    critical = latest["critical"] == 1.0 if "critical" in latest else before.critical
    marks = dict(before.marks)
    marks.update({name: v for name, v in latest.items() if name not in {"critical", "score"}})
    known = [value for value in marks.values() if value is not None]
    score = latest.get("score")
    if score is None:
        off = HINT_COST * _hints(item)
        score = 0.0 if critical or not known else max(0.0, fmean(known) - off)
    return Marked(score, marks, critical, frozenset(latest))


def _hints(item: Markable) -> int:
    asked = item.attempt.get("hints") if item.attempt is not None else None
    return min(asked, item.hints) if isinstance(asked, int) else 0


def mark(
    passing: PassMarks | Plan, items: Sequence[Markable], overrides: Sequence[Override] = ()
) -> Standing:
    """Return what the items of a paper came to.

    Parameters
    ----------
    passing
        What passes, or the plan that says so.
    items
        Every coupon of the paper.
    overrides
        Marks set by hand; the items keep their own.

    Examples
    --------
    >>> from exercises.attempt import Attempt
    >>> from exercises.coupon import Callout, Coupon
    >>> from exercises.sitting.result import item_of
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 6.7)), Callout(8.0, "leg", "8 mm"))
    >>> attempts = (Attempt("a", disposition="accept"), None)
    >>> items = [item_of(n, f"1-00{n}", coupon, given) for n, given in enumerate(attempts, 1)]
    >>> found = mark(PassMarks(0.8), items)
    >>> found.score, found.critical, found.unanswered, [why.code for why in found.why]
    (0.0, 1, 1, ['score-short', 'critical-call'])
    """
    marks = passing.marks if isinstance(passing, Plan) else passing
    each = [marked(item, overrides) for item in items]
    score = fmean([one.score for one in each]) if each else 0.0
    by_skill = {skill: _mean(skill, each) for skill in SKILLS}
    critical = sum(one.critical for one in each)
    unanswered = sum(not item.answered for item in items)
    why = tuple(_shortfalls(marks, score, by_skill, critical))
    return Standing(score, by_skill, critical, unanswered, not why, why)


def _mean(skill: Skill, each: Sequence[Marked]) -> float | None:
    found = [value for one in each if (value := one.marks.get(skill)) is not None]
    return fmean(found) if found else None


def _shortfalls(
    marks: PassMarks, score: float, by_skill: Mapping[Skill, float | None], critical: int
) -> list[Shortfall]:
    found: list[Shortfall] = []
    if score < marks.overall - _EVEN:
        text = f"the score is {score:.3f}; {marks.overall:g} passes"
        params: dict[str, float | str] = {"score": score, "needed": marks.overall}
        found.append(Shortfall("score-short", params, text))
    for skill, needed in marks.skills.items():
        reached = by_skill[skill]
        if reached is None:
            text = f"nothing stated could be marked on {skill}; {needed:g} passes"
            params = {"skill": skill, "needed": needed}
            found.append(Shortfall("skill-unseen", params, text))
        elif reached < needed - _EVEN:
            text = f"{skill} is at {reached:.3f}; {needed:g} passes"
            params = {"skill": skill, "score": reached, "needed": needed}
            found.append(Shortfall("skill-short", params, text))
    if critical and marks.critical_fails:
        calls = "1 bad weld was" if critical == 1 else f"{critical} bad welds were"
        text = f"{calls} accepted outside the doubt"
        found.append(Shortfall("critical-call", {"count": critical}, text))
    return found
