"""What size of shortfall is caught how often: a curve through calls that were hits or misses.

A logistic (or probit) curve by maximum likelihood, with the size that is caught nine times in ten
and the bound that holds for it with 95 % confidence. Calls that a single size divides, all misses
below and all hits above, have no finite curve: that is said, and nothing is fitted.

References
----------
MIL-HDBK-1823A, Appendix G, for the method; the bound is of the profile likelihood (one-sided 95 %:
a deviance of 2.706), which the handbook prefers to Wald's.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

from exercises.learner.tails import normal_cdf, normal_quantile

__all__ = ["FEWEST", "Curve", "Link", "NoCurve", "fit_curve"]

Link = Literal["logit", "probit"]
Reason = Literal["too few", "all hits", "all misses", "separated", "not rising", "not settled"]

FEWEST: Final = 8
"""Of hits and of misses each, before a curve is claimed."""

_STEPS: Final = 100
_SETTLED: Final = 1e-10

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class NoCurve:
    """Why there is no curve; `between`: where calls divide, the sizes on both sides of it."""

    reason: Reason
    hits: int
    misses: int
    between: tuple[float, float] | None = None


@dataclass(frozen=True)
class Curve:
    """A fitted curve: P(hit) = link(intercept + slope · size).

    Parameters
    ----------
    intercept, slope
        Of the link; slope in 1 / unit of size.
    link
        ``logit`` or ``probit``.
    deviance
        −2 log-likelihood.
    sizes, hits
        What it was fitted to.
    """

    intercept: float
    slope: float
    link: Link
    deviance: float
    sizes: Array
    hits: Array

    def caught(self, size: npt.ArrayLike) -> Array:
        """Return the share of shortfalls of each `size` that is caught."""
        return _share(self.intercept + self.slope * np.asarray(size, dtype=np.float64), self.link)

    def size_caught(self, share: float) -> float:
        """Return the size that is caught in `share` of all cases, 0 < share < 1."""
        return (_link(share, self.link) - self.intercept) / self.slope

    def size_surely_caught(self, share: float = 0.9, confidence: float = 0.95) -> float | None:
        """Return the size that is caught in `share` of cases, with one-sided `confidence`.

        None where the calls bound it at no size (too few of them to tell).
        """
        allowed = self.deviance + normal_quantile(confidence) ** 2
        fitted = self.size_caught(share)
        reach = (self.sizes.max() - self.sizes.min()) or 1.0
        low, high = fitted, fitted + 0.1 * reach
        for _ in range(40):
            if self._held_deviance(high, share) > allowed:
                break
            low, high = high, high + (high - fitted)
        else:
            return None
        for _ in range(40):
            middle = 0.5 * (low + high)
            within = self._held_deviance(middle, share) <= allowed
            low, high = (middle, high) if within else (low, middle)
        return 0.5 * (low + high)

    def _held_deviance(self, at: float, share: float) -> float:
        """The least deviance of a curve that catches `share` just at size `at`."""
        target, around = _link(share, self.link), self.sizes - at

        def deviance(log_slope: float) -> float:
            return _deviance(target + math.exp(log_slope) * around, self.hits, self.link)

        start = math.log(self.slope)
        return _least(deviance, start - 8.0, start + 4.0)


def _least(of: Callable[[float], float], low: float, high: float) -> float:
    """The least value of a function with one minimum, by golden section."""
    ratio = (math.sqrt(5.0) - 1.0) / 2.0
    left, right = high - ratio * (high - low), low + ratio * (high - low)
    at_left, at_right = of(left), of(right)
    for _ in range(45):
        if at_left <= at_right:
            high, right, at_right = right, left, at_left
            left = high - ratio * (high - low)
            at_left = of(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + ratio * (high - low)
            at_right = of(right)
    return min(at_left, at_right)


def _link(share: float, link: Link) -> float:
    if not 0.0 < share < 1.0:
        raise ValueError(f"a share of {share}; right would be between 0 and 1")
    return normal_quantile(share) if link == "probit" else math.log(share / (1.0 - share))


def _share(at: Array, link: Link) -> Array:
    if link == "probit":
        return normal_cdf(at)
    return np.asarray(0.5 * (1.0 + np.tanh(0.5 * at)))


def _deviance(at: Array, hits: Array, link: Link) -> float:
    right = np.where(hits > 0.5, at, -at)
    if link == "logit":
        return float(2.0 * np.logaddexp(0.0, -right).sum())
    return float(-2.0 * np.log(np.maximum(_share(right, link), 1e-300)).sum())


def fit_curve(
    sizes: Sequence[float], hits: Sequence[bool], link: Link = "logit", fewest: int = FEWEST
) -> Curve | NoCurve:
    """Fit the share of hits against size.

    Parameters
    ----------
    sizes
        Of each shortfall, in any one unit (or its logarithm), finite.
    hits
        Whether each was caught.
    link
        ``logit`` or ``probit``.
    fewest
        Hits and misses that there must be, each.

    Returns
    -------
    Curve or NoCurve
        What the calls allow to be said.

    Examples
    --------
    >>> sizes = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6]
    >>> fit_curve(sizes, [False, False, False, True, True, True], fewest=2)
    NoCurve(reason='separated', hits=3, misses=3, between=(0.3, 0.4))
    >>> found = fit_curve(sizes, [False, True, False, True, False, True], fewest=2)
    >>> round(found.size_caught(0.5), 3)
    0.35
    """
    x = np.asarray(sizes, dtype=np.float64)
    y = np.asarray(hits, dtype=np.float64)
    if x.ndim != 1 or x.shape != y.shape or not np.all(np.isfinite(x)):
        raise ValueError("right would be as many finite sizes as calls")
    caught, missed = x[y > 0.5], x[y <= 0.5]
    counts = caught.size, missed.size
    if counts[0] + counts[1] < 2 * fewest:
        return NoCurve("too few", *counts)
    if not counts[1]:
        return NoCurve("all hits", *counts)
    if not counts[0]:
        return NoCurve("all misses", *counts)
    if missed.min() >= caught.max():
        return NoCurve("not rising", *counts)
    # Also where one size has both: a curve that is a step there is the likeliest of all.
    if missed.max() <= caught.min():
        return NoCurve("separated", *counts, (float(missed.max()), float(caught.min())))
    if min(counts) < fewest:
        return NoCurve("too few", *counts)
    return _fitted(x, y, link, counts)


def _fitted(x: Array, y: Array, link: Link, counts: tuple[int, int]) -> Curve | NoCurve:
    """By scoring: weighted least squares upon weighted least squares."""
    middle, scale = float(x.mean()), float(x.std()) or 1.0
    z = (x - middle) / scale
    design = np.column_stack([np.ones_like(z), z])
    beta = np.array([_link(float(y.mean()), link), 0.0])
    before = _deviance(design @ beta, y, link)
    for _ in range(_STEPS):
        at = design @ beta
        share = np.clip(_share(at, link), 1e-12, 1.0 - 1e-12)
        slope = share * (1.0 - share) if link == "logit" else _density(at)
        weight = slope**2 / (share * (1.0 - share))
        score = design.T @ (slope / (share * (1.0 - share)) * (y - share))
        step = np.linalg.solve(design.T @ (design * weight[:, None]), score)
        now = _deviance(design @ (beta + step), y, link)
        while now > before + 1e-12 and float(np.abs(step).max()) > _SETTLED:
            step = step / 2.0
            now = _deviance(design @ (beta + step), y, link)
        beta, before = beta + step, now
        if float(np.abs(step).max()) < _SETTLED:
            break
    else:
        return NoCurve("not settled", *counts)
    incline = float(beta[1]) / scale
    if incline <= 0.0:
        return NoCurve("not rising", *counts)
    return Curve(float(beta[0]) - incline * middle, incline, link, before, x, y)


def _density(at: Array) -> Array:
    return np.asarray(np.exp(-0.5 * at**2) / math.sqrt(2.0 * math.pi))
