"""How far calls agree: with the truth, with themselves, and with other people's.

References
----------
Cohen, Educational and Psychological Measurement 20 (1960) 37; Fleiss, Psychological Bulletin 76
(1971) 378; Bowker, J. American Statistical Association 43 (1948) 572. Effectiveness, misses and
false alarms with their limits: the attribute study of the AIAG MSA manual, 3rd edition; ISO
22514-7, clause 12.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

from exercises.learner.demonstration import Share
from exercises.learner.tails import chi_square_tail

__all__ = [
    "Appraiser",
    "Standing",
    "Symmetry",
    "appraise",
    "bowker",
    "cohen_kappa",
    "fleiss_kappa",
    "grey_zones",
]

Standing = Literal["acceptable", "marginal", "unacceptable"]

_LIMITS: Final = {
    # Acceptable from or to, then marginal from or to: AIAG MSA, 3rd edition, attribute study.
    "effectiveness": (0.9, 0.8),
    "misses": (0.02, 0.05),
    "false alarms": (0.05, 0.1),
}

Counts = npt.ArrayLike


def _square(table: Counts) -> npt.NDArray[np.float64]:
    counts = np.asarray(table, dtype=np.float64)
    if counts.ndim != 2 or counts.shape[0] != counts.shape[1]:
        raise ValueError(f"a table of shape {counts.shape}; right would be a square one")
    if not np.all(np.isfinite(counts)) or np.any(counts < 0.0):
        raise ValueError("a count below 0 or not finite; right would be 0 or more")
    return counts


def cohen_kappa(table: Counts) -> float | None:
    """Return Cohen's kappa of two raters: agreement beyond what chance would give.

    Parameters
    ----------
    table
        Square, counts: rows one rater's categories, columns the other's.

    Returns
    -------
    float or None
        At most 1; None where chance alone would agree wholly (one category in use), so that there
        is nothing for kappa to compare with.

    Examples
    --------
    >>> round(cohen_kappa([[20, 5], [10, 15]]), 6)
    0.4
    >>> cohen_kappa([[7, 0], [0, 0]]) is None
    True
    """
    counts = _square(table)
    total = counts.sum()
    if total == 0.0:
        return None
    seen = np.trace(counts) / total
    chance = float(counts.sum(axis=0) @ counts.sum(axis=1)) / total**2
    return None if chance >= 1.0 else float((seen - chance) / (1.0 - chance))


def fleiss_kappa(counts: Counts) -> float | None:
    """Return Fleiss' kappa of many ratings of each subject.

    Parameters
    ----------
    counts
        A row a subject, a column a category: how many ratings put it there; rows sum alike.

    Returns
    -------
    float or None
        None where all ratings are of one category.

    Examples
    --------
    >>> round(fleiss_kappa([[3, 0], [0, 3], [2, 1]]), 4)
    0.55
    """
    table = np.asarray(counts, dtype=np.float64)
    if table.ndim != 2 or table.size == 0:
        raise ValueError(f"a table of shape {table.shape}; right would be subjects by categories")
    ratings = table.sum(axis=1)
    if np.any(ratings != ratings[0]) or ratings[0] < 2.0:
        raise ValueError("subjects rated unequally often; right would be 2 or more ratings of each")
    of_each = ((table**2).sum(axis=1) - ratings) / (ratings * (ratings - 1.0))
    shares = table.sum(axis=0) / table.sum()
    chance = float((shares**2).sum())
    return None if chance >= 1.0 else float((of_each.mean() - chance) / (1.0 - chance))


@dataclass(frozen=True, slots=True)
class Symmetry:
    """Bowker's test: whether two raters lean to different sides.

    Parameters
    ----------
    statistic, freedom
        Chi-square and its degrees of freedom.
    tail
        Share of symmetric tables that would look as lopsided.
    """

    statistic: float
    freedom: int
    tail: float

    @property
    def symmetric(self) -> bool:
        """Whether the table could be symmetric, at 5 %."""
        return self.tail > 0.05


def bowker(table: Counts) -> Symmetry:
    """Return Bowker's test of symmetry; pairs of cells that are both empty take no part.

    Examples
    --------
    >>> found = bowker([[7, 3, 1], [10, 4, 7], [2, 1, 5]])
    >>> round(found.statistic, 3), found.freedom, found.symmetric
    (8.603, 3, False)
    """
    counts = _square(table)
    upper = counts[np.triu_indices_from(counts, 1)]
    lower = counts.T[np.triu_indices_from(counts, 1)]
    used = upper + lower > 0.0
    freedom = int(used.sum())
    if freedom == 0:
        return Symmetry(0.0, 0, 1.0)
    apart = (upper - lower)[used] ** 2 / (upper + lower)[used]
    value = float(apart.sum())
    return Symmetry(value, freedom, chi_square_tail(value, freedom))


@dataclass(frozen=True, slots=True)
class Appraiser:
    """One appraiser against the truth, as an attribute study counts.

    Parameters
    ----------
    effective
        Parts whose repeats were all alike and right.
    repeated
        Parts whose repeats were all alike, right or wrong.
    misses
        Bad parts called good, of all decisions on bad ones; None where there was none.
    false_alarms
        Good parts called bad, of all decisions on good ones; None where there was none.
    kappa
        Cohen's, against the truth, over all decisions.
    """

    effective: Share
    repeated: Share
    misses: Share | None
    false_alarms: Share | None
    kappa: float | None

    def standing(self, of: Literal["effectiveness", "misses", "false alarms"]) -> Standing | None:
        """Where one of the three rates stands by the manual's limits; None if it isn't known."""
        good, fair = _LIMITS[of]
        if of == "effectiveness":
            value = self.effective.value
            return _named(value >= good, value >= fair)
        share = self.misses if of == "misses" else self.false_alarms
        return None if share is None else _named(share.value <= good, share.value <= fair)


def _named(good: bool, fair: bool) -> Standing:
    return "acceptable" if good else "marginal" if fair else "unacceptable"


def appraise(calls: Sequence[Sequence[bool]], truth: Sequence[bool]) -> Appraiser:
    """Return how one appraiser's repeated calls stand against the truth.

    Parameters
    ----------
    calls
        Of each part its calls, one or more, true for good.
    truth
        Of each part whether it is good.

    Examples
    --------
    >>> found = appraise([[True, True], [False, False], [True, False]], [True, False, False])
    >>> found.effective.count, found.misses.count, found.misses.of
    (2, 1, 4)
    >>> found.standing("misses"), found.standing("false alarms")
    ('unacceptable', 'acceptable')
    """
    if len(calls) != len(truth) or not calls or not all(calls):
        raise ValueError("right would be one or more calls for each part, and its truth")
    table = np.zeros((2, 2), dtype=np.int64)
    for made, good in zip(calls, truth, strict=True):
        for call in made:
            table[int(call), int(good)] += 1
    alike = [len(set(made)) == 1 for made in calls]
    right = [same and made[0] == good
             for same, made, good in zip(alike, calls, truth, strict=True)]  # fmt: skip
    bad, fine = int(table[:, 0].sum()), int(table[:, 1].sum())
    return Appraiser(
        effective=Share(sum(right), len(calls)),
        repeated=Share(sum(alike), len(calls)),
        misses=Share(int(table[1, 0]), bad) if bad else None,
        false_alarms=Share(int(table[0, 1]), fine) if fine else None,
        kappa=cohen_kappa(table),
    )


def grey_zones(
    values: Sequence[float], calls: Sequence[Sequence[bool]], lower: float, upper: float
) -> tuple[float | None, float | None]:
    """Return the width of the zone of mixed calls at a lower and at an upper limit.

    From the last part that all calls rejected to the first that all accepted, in the parts' own
    unit (ISO 22514-7, 12.3: the mean of both widths, over the tolerance, is the capability). None
    at a limit where parts that all calls rejected, or accepted, are missing.

    Examples
    --------
    >>> grey_zones([1.0, 2.0, 3.0], [[False], [True], [True]], 1.5, 9.0)
    (1.0, None)
    """
    parts = sorted(zip(values, calls, strict=True))
    sure = [value for value, made in parts if all(made)]
    if not sure:
        return None, None
    centre = 0.5 * (lower + upper)
    rejected = [value for value, made in parts if not any(made)]
    below = [value for value in rejected if value < centre and value <= min(sure)]
    above = [value for value in rejected if value > centre and value >= max(sure)]
    return (
        min(sure) - max(below) if below else None,
        min(above) - max(sure) if above else None,
    )
