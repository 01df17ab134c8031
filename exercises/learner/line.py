"""The line that a learner draws between short and sound: a belief, sharpened call by call.

A weld lies `distance` mm from its limit, below 0 short of it. The learner calls it short with the
probability ::

    lapse / 2 + (1 - lapse) · Φ((bias - distance) / spread)

where `bias` is where their line lies (above 0: welds that are sound are called short), `spread` how
blurred it is, and `lapse` how often the call has nothing to do with the weld. What is known of the
three is a probability over a grid, by Bayes' rule from a broad prior.

References
----------
Watson, Journal of Vision 17 (2017) 3:10 (QUEST+), for the method; the prior and grid are ours.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np
import numpy.typing as npt

from exercises.learner.tails import normal_cdf

__all__ = ["Belief", "Call", "Estimate", "Known", "believe", "called_short"]

Array = npt.NDArray[np.float64]

_BIASES: Final = np.linspace(-0.9, 0.9, 73)
_SPREADS: Final = np.geomspace(0.03, 0.9, 31)
_LAPSES: Final = np.array([0.0, 0.02, 0.05, 0.1])

_BIAS_SPREAD: Final = 0.35
"""mm, of the prior of the bias about 0: welds are rarely called short by more than twice this."""

_SPREAD_MIDDLE, _SPREAD_WIDTH = math.log(0.2), 0.8
_LAPSE_PRIOR: Final = np.array([0.3, 0.35, 0.25, 0.1])


@dataclass(frozen=True, slots=True)
class Call:
    """One call.

    Parameters
    ----------
    distance
        From the limit, mm of size; below 0 short.
    short
        Whether the learner called it short.
    """

    distance: float
    short: bool

    def __post_init__(self) -> None:
        if not math.isfinite(self.distance):
            raise ValueError(f"a distance of {self.distance}; right would be finite mm")


@dataclass(frozen=True, slots=True)
class Known:
    """A number as far as it is known: its middle, and the 95 % that it lies in."""

    middle: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Estimate:
    """What is known of a learner after some calls.

    Parameters
    ----------
    bias, spread
        mm.
    lapse
        Share of calls.
    bias_deviation
        Standard deviation of what is believed of the bias, mm.
    spread_deviation
        Of the natural logarithm of the spread: about the relative error.
    calls
        How many there were.
    """

    bias: Known
    spread: Known
    lapse: Known
    bias_deviation: float
    spread_deviation: float
    calls: int

    @property
    def sharp(self) -> bool:
        """Whether more calls would tell little.

        As likely as not the bias is then right to a fifth of the spread, and the spread to a
        quarter: of a normal distribution half lies within 0.67 deviations.
        """
        return self.bias_deviation <= 0.3 * self.spread.middle and self.spread_deviation <= 0.37


@cache
def _prior() -> Array:
    bias = np.exp(-0.5 * (_BIASES / _BIAS_SPREAD) ** 2)
    spread = np.exp(-0.5 * ((np.log(_SPREADS) - _SPREAD_MIDDLE) / _SPREAD_WIDTH) ** 2)
    joint = bias[:, None, None] * spread[None, :, None] * _LAPSE_PRIOR[None, None, :]
    return np.asarray(joint / joint.sum())


def called_short(
    distance: npt.ArrayLike, bias: npt.ArrayLike, spread: npt.ArrayLike, lapse: npt.ArrayLike
) -> Array:
    """Return how likely a weld is called short; arguments broadcast, mm and shares.

    Examples
    --------
    >>> called_short([-0.2, 0.0, 0.2], 0.0, 0.1, 0.02).round(3).tolist()
    [0.968, 0.5, 0.032]
    """
    d, b, s, lost = (np.asarray(part, dtype=np.float64) for part in (distance, bias, spread, lapse))
    return np.asarray(0.5 * lost + (1.0 - lost) * normal_cdf((b - d) / s))


def _short_given(distance: float) -> Array:
    """How likely a call of short is, at each point of the grid."""
    plain = normal_cdf((_BIASES[:, None] - distance) / _SPREADS[None, :])
    return np.asarray(0.5 * _LAPSES + (1.0 - _LAPSES) * plain[:, :, None])


@dataclass(frozen=True)
class Belief:
    """What is believed of a learner: a probability over bias, spread and lapse.

    Parameters
    ----------
    weights
        Shape (biases, spreads, lapses), sums to 1.
    calls
        How many calls it rests on.

    Examples
    --------
    >>> belief = Belief.broad()
    >>> for distance, short in [(-0.5, True), (0.5, False), (-0.1, True), (0.1, True)] * 6:
    ...     belief = belief.after(Call(distance, short))
    >>> found = belief.estimate()
    >>> 0.0 < found.bias.low < found.bias.middle < 0.5
    True
    """

    weights: Array
    calls: int

    @classmethod
    def broad(cls) -> Belief:
        """What is believed of anybody before the first call."""
        return cls(_prior(), 0)

    def after(self, call: Call) -> Belief:
        """The belief once a call was seen."""
        short = _short_given(call.distance)
        weights = self.weights * (short if call.short else 1.0 - short)
        return Belief(weights / weights.sum(), self.calls + 1)

    def short_likely(self, distances: npt.ArrayLike) -> Array:
        """How likely the next call is short at each distance, all that is believed weighed in."""
        return np.array(
            [float((self.weights * _short_given(float(d))).sum()) for d in np.atleast_1d(distances)]
        )

    def curves(self, distances: npt.ArrayLike, shares: Sequence[float]) -> tuple[Array, ...]:
        """Return, at each distance, what the share called short is believed to be at most.

        Parameters
        ----------
        distances
            mm.
        shares
            How much of the belief lies below: 0.5 for the median, 0.025 and 0.975 for 95 %.
        """
        at = np.atleast_1d(np.asarray(distances, dtype=np.float64))
        # Grid points that together weigh next to nothing would only take time.
        flat = self.weights.ravel()
        heavy = np.argsort(flat)[::-1]
        heavy = heavy[: int(np.searchsorted(np.cumsum(flat[heavy]), 0.999)) + 1]
        b, s, lost = np.unravel_index(heavy, self.weights.shape)
        short = called_short(at[:, None], _BIASES[b], _SPREADS[s], _LAPSES[lost])
        order = np.argsort(short, axis=1)
        below = np.cumsum(flat[heavy][order], axis=1)
        rows = np.arange(len(at))
        found = []
        for share in shares:
            first = np.minimum((below < share).sum(axis=1), short.shape[1] - 1)
            found.append(short[rows, order[rows, first]])
        return tuple(found)

    def estimate(self) -> Estimate:
        """What is known now."""
        bias = self.weights.sum(axis=(1, 2))
        spread = self.weights.sum(axis=(0, 2))
        lapse = self.weights.sum(axis=(0, 1))
        logs = np.log(_SPREADS)
        known = _known(logs, spread)
        return Estimate(
            bias=_known(_BIASES, bias),
            spread=Known(math.exp(known.middle), math.exp(known.low), math.exp(known.high)),
            lapse=_known(_LAPSES, lapse),
            bias_deviation=_deviation(_BIASES, bias),
            spread_deviation=_deviation(logs, spread),
            calls=self.calls,
        )

    def gains(self, distances: npt.ArrayLike) -> Array:
        """Return what a call at each distance is expected to tell of bias and spread, nats.

        The lapse is summed out first: knowing it better is worth nothing by itself.
        """
        plain = _plain_short(tuple(float(d) for d in np.atleast_1d(distances)))
        # With the lapse summed out, what is believed and a call of short is lost + kept · plain.
        whole = self.weights.sum(axis=2)
        lost = self.weights @ (0.5 * _LAPSES)
        short = lost + (whole - 2.0 * lost) * plain
        after = _unsure(short) + _unsure(np.maximum(whole - short, 0.0))
        return np.asarray(_unsure(whole[None]) - after)


@cache
def _plain_short(distances: tuple[float, ...]) -> Array:
    """How likely a call of short is without lapse; shape (distances, biases, spreads)."""
    return normal_cdf(
        (_BIASES[:, None] - np.array(distances)[:, None, None]) / _SPREADS[None, None, :]
    )


def _unsure(parts: Array) -> Array:
    """The entropy that is left in each part, nats, times what the part weighs."""
    total = parts.sum(axis=(1, 2))
    inside = -(parts * np.log(np.maximum(parts, 1e-300))).sum(axis=(1, 2))
    return np.asarray(inside + total * np.log(np.maximum(total, 1e-300)))


def _deviation(values: Array, shares: Array) -> float:
    mean = float((values * shares).sum())
    return math.sqrt(max(float((values**2 * shares).sum()) - mean**2, 0.0))


def _known(values: Array, shares: Array) -> Known:
    """Median and 95 % of a distribution on points, each spread halfway to its neighbours."""
    edges = np.concatenate([values[:1], 0.5 * (values[1:] + values[:-1]), values[-1:]])
    below = np.concatenate([[0.0], np.cumsum(shares)])
    low, middle, high = np.interp([0.025, 0.5, 0.975], below, edges)
    return Known(float(middle), float(low), float(high))


def believe(calls: Iterable[Call]) -> Belief:
    """Return what is believed after calls, in any order.

    Examples
    --------
    >>> believe([Call(0.3, False), Call(-0.3, True)]).calls
    2
    """
    counts = Counter(calls)
    logs = np.log(_prior())
    for call, count in counts.items():
        short = _short_given(call.distance)
        logs = logs + count * np.log(np.maximum(short if call.short else 1.0 - short, 1e-300))
    weights = np.exp(logs - logs.max())
    return Belief(weights / weights.sum(), counts.total())
