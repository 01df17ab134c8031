"""How far a sitting's score can be trusted: internal consistency, and the error of one score.

References
----------
Kuder and Richardson, Psychometrika 2 (1937) 151, formula 20; Cronbach, Psychometrika 16 (1951) 297.
Variances are those of the class itself (divided by its number), as Kuder and Richardson have them;
alpha is the same with either divisor.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from exercises.sitting.class_table import FEWEST, ClassTable

__all__ = ["Reliability", "alpha", "kr20", "reliability"]


def alpha(scores: npt.ArrayLike) -> float | None:
    """Return Cronbach's alpha of scores, shape (learners, items); at most 1, may be below 0.

    None with fewer than two items or learners, or where all learners' totals are the same.

    Examples
    --------
    >>> alpha([[1, 1], [0, 0], [1, 0], [1, 1]]).__round__(4)
    0.7273
    >>> alpha([[1, 1], [1, 1]]) is None
    True
    """
    table = np.asarray(scores, dtype=np.float64)
    if table.ndim != 2 or not np.all(np.isfinite(table)):
        raise ValueError("right would be finite scores of shape (learners, items)")
    learners, items = table.shape
    if learners < 2 or items < 2:
        return None
    total = float(table.sum(axis=1).var())
    if total <= 1e-12:
        return None
    return float(items / (items - 1) * (1.0 - table.var(axis=0).sum() / total))


def kr20(right: npt.ArrayLike) -> float | None:
    """Return Kuder and Richardson's formula 20: alpha of answers that are right (1) or wrong (0).

    Examples
    --------
    >>> kr20([[1, 1, 1], [0, 0, 0], [1, 1, 0], [1, 0, 0]])
    0.75
    """
    table = np.asarray(right, dtype=np.float64)
    if np.any((table != 0.0) & (table != 1.0)):
        raise ValueError("an answer that is neither 0 nor 1; right would be one of them")
    return alpha(table)


@dataclass(frozen=True, slots=True)
class Reliability:
    """How far scores of a class can be trusted.

    Parameters
    ----------
    kr20, alpha
        Of right and wrong, and of scores; None where they can't be known, or the class is too
        small.
    error
        Standard error of one learner's mean score, 0 to 1; None where alpha is, or is below 0.
    items, learners
        What it rests on: the places that every learner had.
    """

    kr20: float | None
    alpha: float | None
    error: float | None
    items: int
    learners: int


def reliability(table: ClassTable) -> Reliability:
    """Return how far the scores of a class can be trusted."""
    whole = table.whole
    items, learners = int(whole.sum()), len(table.learners)
    if learners < FEWEST or items < 2:
        return Reliability(None, None, None, items, learners)
    scores = table.scores[:, whole]
    found = alpha(scores)
    error = None
    if found is not None and found >= 0.0:
        error = float(scores.mean(axis=1).std(ddof=1)) * math.sqrt(1.0 - found)
    return Reliability(kr20(table.right[:, whole]), found, error, items, learners)
