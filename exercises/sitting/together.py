"""Which items a class got wrong together, beyond what their hardness and the class explain.

A weak learner gets much wrong, and a hard item is missed by many; both alone make two items wrong
together. So what is seen is set beside tables drawn at random in which each learner has as many
wrong, and each item is missed by as many, as here.

References
----------
Random tables with both margins fixed: Strona and others, Nature Communications 5 (2014) 4114.
Of many pairs some stand out by chance: Benjamini and Hochberg, J. Royal Statistical Society B 57
(1995) 289.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from exercises.learner.tails import normal_cdf
from exercises.sitting.class_table import FEWEST, ClassTable

__all__ = ["DRAWS", "Pair", "phi", "wrong_together"]

DRAWS: Final = 200
"""Random tables that a class is set beside."""

_TRADES: Final = 5
"""Trades a learner, of each random table (Strona: 5 are enough)."""

_LEVEL: Final = 0.05

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Pair:
    """Two places of a plan.

    Parameters
    ----------
    slots
        The two, in order.
    both
        Learners who got both wrong.
    expected, spread
        The same in random tables: mean and standard deviation.
    phi
        Correlation of right and wrong, -1 to 1; None where an item is all right or all wrong.
    tail
        Share of chance at `both` or more, by a normal curve; rough where few got it wrong.
    beyond
        Whether that is beyond chance at 5 %, of all pairs looked at.
    """

    slots: tuple[str, str]
    both: int
    expected: float
    spread: float
    phi: float | None
    tail: float
    beyond: bool


def phi(one: npt.ArrayLike, other: npt.ArrayLike) -> float | None:
    """Return the correlation of two lists of 0 and 1; None where either doesn't vary.

    Examples
    --------
    >>> round(phi([1, 1, 0, 0, 1], [1, 1, 0, 1, 0]), 4)
    0.1667
    """
    x, y = (np.asarray(part, dtype=np.float64) for part in (one, other))
    if x.shape != y.shape or x.ndim != 1:
        raise ValueError("right would be two lists of one length")
    if not x.size or float(x.std()) == 0.0 or float(y.std()) == 0.0:
        return None
    return float(np.corrcoef(x, y)[0, 1])


def wrong_together(table: ClassTable, draws: int = DRAWS, seed: int = 1) -> tuple[Pair, ...]:
    """Return the pairs of places that a class got wrong together, what is farthest beyond first.

    Pairs that nobody got both wrong are left out. Nothing is said of a class that is too small.

    Parameters
    ----------
    table
        A class's answers; places that not every learner had take no part.
    draws
        Random tables.
    seed
        The same seed draws the same.
    """
    whole = table.whole
    wrong = 1.0 - table.right[:, whole]
    slots = [slot for slot, used in zip(table.slots, whole, strict=True) if used]
    if len(table.learners) < FEWEST or len(slots) < 2:
        return ()
    both = wrong.T @ wrong
    mean, spread = _by_chance(wrong, draws, random.Random(seed))
    rows, columns = np.triu_indices(len(slots), 1)
    seen = [(int(i), int(j)) for i, j in zip(rows, columns, strict=True) if both[i, j] > 0.0]
    tails = [_tail(float(both[i, j]), float(mean[i, j]), float(spread[i, j])) for i, j in seen]
    beyond = _beyond(tails, len(rows))
    pairs = [
        Pair(
            slots=(slots[i], slots[j]),
            both=int(both[i, j]),
            expected=float(mean[i, j]),
            spread=float(spread[i, j]),
            phi=phi(wrong[:, i], wrong[:, j]),
            tail=tail,
            beyond=tail <= beyond,
        )
        for (i, j), tail in zip(seen, tails, strict=True)
    ]
    return tuple(sorted(pairs, key=lambda pair: (pair.tail, -pair.both, pair.slots)))


def _tail(both: float, mean: float, spread: float) -> float:
    if spread <= 1e-9:
        return 1.0
    # A count: half a learner less is where the curve is cut.
    return 1.0 - float(normal_cdf((both - 0.5 - mean) / spread))


def _beyond(tails: list[float], count: int) -> float:
    """The largest tail that is beyond chance, of `count` pairs looked at; below 0 if none is."""
    ranked = sorted(tails)
    kept = [tail for rank, tail in enumerate(ranked, 1) if tail <= _LEVEL * rank / count]
    return kept[-1] if kept else -1.0


def _by_chance(wrong: Array, draws: int, rng: random.Random) -> tuple[Array, Array]:
    """Mean and standard deviation of how many got each pair wrong, over random tables."""
    rows = [set(np.flatnonzero(row).tolist()) for row in wrong]
    learners, items = wrong.shape
    total, squares = np.zeros((items, items)), np.zeros((items, items))
    for _ in range(draws):
        for _ in range(_TRADES * learners):
            _trade(rows, rng)
        drawn = np.zeros_like(wrong)
        for at, row in enumerate(rows):
            drawn[at, list(row)] = 1.0
        both = drawn.T @ drawn
        total += both
        squares += both**2
    mean = total / draws
    return mean, np.sqrt(np.maximum(squares / draws - mean**2, 0.0)) * math.sqrt(
        draws / max(draws - 1, 1)
    )


def _trade(rows: list[set[int]], rng: random.Random) -> None:
    """Let two learners trade at random what only one of them got wrong: both margins stay."""
    one, other = rng.sample(range(len(rows)), 2)
    first, second = rows[one] - rows[other], rows[other] - rows[one]
    if not first or not second:
        return
    pool = sorted(first | second)
    rng.shuffle(pool)
    shared = rows[one] & rows[other]
    rows[one] = shared | set(pool[: len(first)])
    rows[other] = shared | set(pool[len(first) :])
