"""What a row of each table holds. No Qt: words come with the columns."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from exercises.learner.demonstration import Share

__all__ = ["CouponRow", "LearnerRow", "PairRow", "ReadyRow", "Verdict"]

Verdict = Literal["ready", "not yet", "not enough seen"]


@dataclass(frozen=True, slots=True)
class LearnerRow:
    """One paper that was handed in.

    Parameters
    ----------
    id
        Of the paper.
    code, name
        What the learner is called; the name is known on this machine alone, and may be empty.
    groups
        Names of the groups that they are in.
    score, by_skill
        0 to 1; None for a skill that nothing asked for.
    below
        Skills whose own pass mark isn't reached.
    critical, unanswered
        How many calls accepted what the rules reject; how many coupons have none.
    passed, why
        The verdict, and the reasons in words.
    used_ms, extra
        Time used; share of time more than others were given.
    interruptions, away_ms
        How often it was broken off, and for how long in all, as far as that is known.
    station, finished, ended
        Where, when, and how: ``finished`` or ``time up``.
    clash
        Whether there is another paper of this code in the sitting.
    overridden
        How many marks were overridden.
    """

    id: str
    code: str
    name: str
    groups: tuple[str, ...]
    score: float
    by_skill: Mapping[str, float | None]
    below: tuple[str, ...]
    critical: int
    unanswered: int
    passed: bool
    why: str
    used_ms: int
    extra: float
    interruptions: int
    away_ms: int
    station: str
    finished: datetime | None
    ended: str
    clash: bool = False
    overridden: int = 0


@dataclass(frozen=True, slots=True)
class CouponRow:
    """One coupon of a sitting, as the class called it.

    Parameters
    ----------
    id, number, title, kind
        Its place in the plan; what it is called; the right call.
    papers, unanswered
        How many papers have it, and how many of those say nothing of it.
    right
        How many are right, of all.
    discrimination
        How far it tells those who do well from those who don't, with its 95 %: value, low, high,
        -1 to 1; None where nothing can be said.
    upper_lower
        Share right among the best 27 % less that among the others at the end; None likewise.
    misses, false_alarms
        None where there was nothing to miss, or nothing to raise a false alarm about.
    agreed
        How many gave the commonest call, of all who gave one.
    ms
        Median time.
    overridden
        How many of its marks were set by hand.
    """

    id: str
    number: int
    title: str
    kind: str
    papers: int
    unanswered: int
    right: Share
    discrimination: tuple[float, float, float] | None
    upper_lower: float | None
    misses: Share | None
    false_alarms: Share | None
    agreed: Share | None
    ms: float | None
    overridden: int = 0


@dataclass(frozen=True, slots=True)
class PairRow:
    """Two coupons that the same learners got wrong.

    Parameters
    ----------
    id, first, second
        What the pair and its coupons are called.
    together, of
        How many had both wrong, of how many papers.
    expected, spread
        How many would by chance: mean and standard deviation.
    phi
        How strongly they go together, -1 to 1.
    beyond
        Whether that is more than chance, of all pairs looked at.
    """

    id: str
    first: str
    second: str
    together: int
    of: int
    expected: float
    spread: float
    phi: float | None
    beyond: bool


@dataclass(frozen=True, slots=True)
class ReadyRow:
    """Whether somebody is ready, and by which evidence.

    Parameters
    ----------
    id
        Of the learner.
    code, name, groups
        As in `LearnerRow`.
    verdict
        What the evidence comes to.
    caught, let_through
        Bad welds that were rejected, and good ones that were let through; None where none was
        called.
    more
        How many calls in a row would show what isn't shown of either; 0 where all is.
    bias, blur
        Of the line, mm, each (middle, low, high); None where it can't be told.
    counted, others
        How many calls count, and how many were made after something told how they went.
    last
        The latest call that counts.
    sentence
        All of it in words.
    """

    id: str
    code: str
    name: str
    groups: tuple[str, ...]
    verdict: Verdict
    caught: Share | None
    let_through: Share | None
    more: int
    bias: tuple[float, float, float] | None
    blur: tuple[float, float, float] | None
    counted: int
    others: int
    last: datetime | None
    sentence: str
