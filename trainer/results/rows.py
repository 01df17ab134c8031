"""What a row of each table holds. No Qt: words come with the columns."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
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
    id
        Its digest.
    number, title, kind
        Place in the paper; what it is called; the right call.
    answers
        How many papers have it.
    difficulty
        Share of the marks that it gave, 0 to 1, and its 95 %.
    discrimination
        How far it tells those who do well from those who don't, −1 to 1, and its 95 %; None where
        nothing can be said.
    misses, false_alarms
        None where there was nothing to miss, or nothing to raise a false alarm about.
    kappa_truth, kappa_others
        Agreement with the truth and with each other; None where nothing can be said.
    agreed
        How many gave the commonest call, of all who gave one.
    seconds
        Median time.
    overridden
        How many of its marks were overridden.
    """

    id: str
    number: int
    title: str
    kind: str
    answers: int
    difficulty: float | None
    difficulty_low: float | None
    difficulty_high: float | None
    discrimination: float | None
    discrimination_low: float | None
    discrimination_high: float | None
    misses: Share | None
    false_alarms: Share | None
    right: Share | None
    agreed: Share | None
    seconds: float | None
    overridden: int = 0


@dataclass(frozen=True, slots=True)
class PairRow:
    """Two coupons that the same learners got wrong.

    Parameters
    ----------
    id, first, second
        What the pair and its coupons are called.
    together, expected, of
        How many had both wrong; how many would if the one had nothing to do with the other; of
        how many papers.
    phi
        How strongly they go together, −1 to 1.
    chance
        How likely so many would be by chance; already made larger for how many pairs there are.
    """

    id: str
    first: str
    second: str
    together: int
    expected: float
    of: int
    phi: float
    chance: float


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
    hits, trials
        Bad welds outside the doubt that were rejected, of how many.
    more
        Rejections in a row that would show it; 0 where it is shown.
    bias, blur
        Of the line, mm, each (middle, low, high); None where it can't be told.
    calls
        How many calls the line rests on.
    last
        The latest call.
    sentence
        All of it in words.
    """

    id: str
    code: str
    name: str
    groups: tuple[str, ...]
    verdict: Verdict
    hits: int
    trials: int
    more: int
    bias: tuple[float, float, float] | None
    blur: tuple[float, float, float] | None
    calls: int
    last: datetime | None
    sentence: str = ""
    opens: str = field(default="")
