"""What a class's answers say of each place of a plan: how hard it is, and whom it tells apart.

References
----------
Classical test theory. Difficulty is the share that is right; discrimination the correlation of
right and wrong with the rest of the score, the item itself left out (Henrysson, Psychometrika 28
(1963) 211); upper and lower 27 %: Kelley, Journal of Educational Psychology 30 (1939) 17. The
interval of a correlation is Fisher's (Metron 1 (1921) 3), rough for a variable of two values.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median
from typing import Final

import numpy as np
import numpy.typing as npt

from exercises.learner.demonstration import Share
from exercises.learner.tails import normal_quantile
from exercises.sitting.class_table import FEWEST, Answer, ClassTable

__all__ = ["TAIL", "Discrimination", "ItemFigures", "discrimination", "item_figures", "upper_lower"]

TAIL: Final = 0.27
"""Share of a class at either end (Kelley)."""

_SAME: Final = 1e-9
"""Totals closer than this are one."""

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Discrimination:
    """How far an item tells strong from weak: a correlation with its 95 % interval, -1 to 1."""

    value: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class ItemFigures:
    """What a class's answers say of one place of a plan.

    Parameters
    ----------
    slot
        The place.
    right
        How many answers are right, of all; those not given are wrong. The greater the easier.
    unanswered
        How many weren't given.
    discrimination, upper_lower
        Correlation with the rest of the score; share right among the upper 27 % less that among
        the lower. None where the class is too small, or all answers or all scores are alike.
    misses, false_alarms
        Bad welds let go, of calls on bad ones; good ones rejected, of calls on good ones; outside
        the doubt. None where there was no such call.
    median_ms
        Milliseconds before those who answered; None where none did.
    """

    slot: str
    right: Share
    unanswered: int
    discrimination: Discrimination | None
    upper_lower: float | None
    misses: Share | None
    false_alarms: Share | None
    median_ms: float | None


def item_figures(table: ClassTable) -> tuple[ItemFigures, ...]:
    """Return what is to be said of each place, in the table's order."""
    whole = table.whole
    found: list[ItemFigures] = []
    for at, slot in enumerate(table.slots):
        answers = table.at(slot)
        told = upper = None
        if len(table.learners) >= FEWEST and whole[at]:
            right = table.right[:, at]
            rest = table.right[:, whole].sum(axis=1) - right
            told, upper = discrimination(right, rest), upper_lower(right, rest)
        times = [float(each.ms) for each in answers if each.answered]
        found.append(
            ItemFigures(
                slot=slot,
                right=Share(sum(each.right for each in answers), len(answers)),
                unanswered=sum(not each.answered for each in answers),
                discrimination=told,
                upper_lower=upper,
                misses=_share(answers, bad=True),
                false_alarms=_share(answers, bad=False),
                median_ms=median(times) if times else None,
            )
        )
    return tuple(found)


def _share(answers: Sequence[Answer], *, bad: bool) -> Share | None:
    """Of calls on bad welds those that let them go, or of calls on good ones those that don't."""
    called = [each.called_bad for each in answers
              if each.bad is bad and not each.in_doubt and each.called_bad is not None]  # fmt: skip
    return Share(sum(call is not bad for call in called), len(called)) if called else None


def discrimination(right: npt.ArrayLike, rest: npt.ArrayLike) -> Discrimination | None:
    """Return the correlation of right answers (1 or 0) with the rest of each learner's score.

    None with fewer than four learners, or where either doesn't vary.

    Examples
    --------
    >>> found = discrimination([1, 1, 1, 0, 0], [9, 8, 6, 7, 3])
    >>> round(found.value, 4), found.low < 0.0 < found.high
    (0.6344, True)
    """
    x, y = (np.asarray(part, dtype=np.float64) for part in (right, rest))
    if x.ndim != 1 or x.shape != y.shape:
        raise ValueError("right would be as many answers as scores")
    if x.size < 4 or x.std() <= _SAME or y.std() <= _SAME:
        return None
    value = float(np.clip(np.corrcoef(x, y)[0, 1], -1.0, 1.0))
    if 1.0 - abs(value) < _SAME:
        return Discrimination(value, value, value)
    reach = normal_quantile(0.975) / math.sqrt(max(x.size - 3, 1))
    middle = math.atanh(value)
    return Discrimination(value, math.tanh(middle - reach), math.tanh(middle + reach))


def upper_lower(right: npt.ArrayLike, rest: npt.ArrayLike, tail: float = TAIL) -> float | None:
    """Return the share right at the upper end of a class less that at the lower, -1 to 1.

    Learners with equal scores at a cut share the places that are left, so that the order of a
    class makes no difference. None with no learner, or where all scores are alike.

    Examples
    --------
    >>> upper_lower([1, 1, 0, 0], [4, 3, 2, 1]), upper_lower([1, 0, 1, 0], [2, 2, 1, 1], 0.5)
    (1.0, 0.0)
    """
    x, y = (np.asarray(part, dtype=np.float64) for part in (right, rest))
    if not x.size or float(np.ptp(y)) <= _SAME:
        return None
    count = max(1.0, float(round(tail * x.size)))
    return float((_weights(y, count) - _weights(-y, count)) @ x / count)


def _weights(scores: Array, count: float) -> Array:
    """How much of each learner is among the `count` highest."""
    order = np.sort(scores)[::-1]
    cut = order[int(count) - 1]
    above, at = scores > cut + _SAME, np.abs(scores - cut) <= _SAME
    return np.asarray(above + at * (count - above.sum()) / at.sum())
