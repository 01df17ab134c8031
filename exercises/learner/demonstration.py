"""How sure a count of right calls makes us: exact binomial bounds, as '29 of 29' uses them.

References
----------
Clopper and Pearson, Biometrika 26 (1934) 404. The demonstration of 90 % at 95 % confidence by 29
hits of 29 is common in non-destructive testing (MIL-HDBK-1823A speaks of it).
"""

from __future__ import annotations

from dataclasses import dataclass

from exercises.learner.tails import beta_quantile

__all__ = ["Demonstration", "Share", "demonstrate", "trials_needed"]


@dataclass(frozen=True, slots=True)
class Share:
    """A count of a whole, with the two-sided exact interval for the share behind it.

    Parameters
    ----------
    count, of
        How many of how many; `of` 1 or more.
    confidence
        Of the interval.

    Examples
    --------
    >>> share = Share(42, 50)
    >>> share.value, round(share.low, 3), round(share.high, 3)
    (0.84, 0.709, 0.928)
    """

    count: int
    of: int
    confidence: float = 0.95

    def __post_init__(self) -> None:
        if not 0 <= self.count <= self.of or self.of < 1:
            raise ValueError(f"{self.count} of {self.of}; right would be 0 to n of n, n at least 1")

    @property
    def value(self) -> float:
        """The share seen."""
        return self.count / self.of

    @property
    def low(self) -> float:
        """The least share that the count agrees with."""
        return _low(self.count, self.of, (1.0 - self.confidence) / 2.0)

    @property
    def high(self) -> float:
        """The greatest share that the count agrees with."""
        return 1.0 - _low(self.of - self.count, self.of, (1.0 - self.confidence) / 2.0)


def _low(count: int, of: int, tail: float) -> float:
    return beta_quantile(tail, count, of - count + 1) if count else 0.0


@dataclass(frozen=True, slots=True)
class Demonstration:
    """Whether hits in trials show a share with a confidence.

    Parameters
    ----------
    hits, trials
        The count.
    bound
        One-sided lower bound for the share behind it.
    shown
        Whether the bound reaches the share asked for.
    still_needed
        How many hits in a row would show it, were none missed from now on.
    """

    hits: int
    trials: int
    bound: float
    shown: bool
    still_needed: int


def demonstrate(
    hits: int, trials: int, share: float = 0.9, confidence: float = 0.95
) -> Demonstration:
    """Return what `hits` of `trials` show of a learner who should catch `share` of all.

    Examples
    --------
    >>> demonstrate(29, 29).shown, demonstrate(28, 28).shown, demonstrate(20, 20).still_needed
    (True, False, 9)
    """
    if not 0 <= hits <= trials:
        raise ValueError(f"{hits} of {trials}; right would be no more hits than trials")
    bound = _low(hits, trials, 1.0 - confidence)
    misses = trials - hits
    more = 0 if bound >= share else trials_needed(misses, share, confidence) - trials
    return Demonstration(hits, trials, bound, bound >= share, max(more, 0))


def trials_needed(misses: int, share: float = 0.9, confidence: float = 0.95) -> int:
    """Return the fewest trials that show `share` with `confidence` although `misses` were missed.

    Examples
    --------
    >>> [trials_needed(misses) for misses in range(4)]
    [29, 46, 61, 76]
    """
    if misses < 0:
        raise ValueError(f"{misses} misses; right would be 0 or more")
    low, high = misses, misses + 1
    while _low(high - misses, high, 1.0 - confidence) < share:
        low, high = high, high * 2
    while high - low > 1:
        middle = (low + high) // 2
        reached = _low(middle - misses, middle, 1.0 - confidence) >= share
        low, high = (low, middle) if reached else (middle, high)
    return high
