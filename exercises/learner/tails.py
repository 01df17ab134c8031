"""Tails and quantiles of the distributions that the statistics here need, without SciPy.

SciPy takes three quarters of a second to import, more behind Qt. What is needed of it is little:
the normal, binomial, chi-square and F distributions, each to about 1e-12.

References
----------
Incomplete beta by its continued fraction: NIST Digital Library of Mathematical Functions 8.17.22.
Chi-square with whole degrees of freedom in closed form: DLMF 8.4.7, 8.8.2.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from statistics import NormalDist
from typing import Final

import numpy as np
import numpy.typing as npt

__all__ = [
    "beta_quantile",
    "chi_square_tail",
    "f_tail",
    "incomplete_beta",
    "normal_cdf",
    "normal_quantile",
]

_TINY: Final = 1e-300
_STEPS: Final = 500
_CLOSE: Final = 1e-15
_STANDARD: Final = NormalDist()

Array = npt.NDArray[np.float64]

_erf: Final = np.frompyfunc(math.erf, 1, 1)


def normal_cdf(z: npt.ArrayLike) -> Array:
    """Return the standard normal distribution function of each `z`.

    Examples
    --------
    >>> normal_cdf([-1.0, 0.0, 1.0]).round(4).tolist()
    [0.1587, 0.5, 0.8413]
    """
    scaled = np.asarray(z, dtype=np.float64) / math.sqrt(2.0)
    return np.asarray(0.5 * (1.0 + np.asarray(_erf(scaled), dtype=np.float64)))


def normal_quantile(share: float) -> float:
    """Return the standard normal deviate below which `share` of all lies, 0 < share < 1.

    Examples
    --------
    >>> round(normal_quantile(0.95), 4)
    1.6449
    """
    return _STANDARD.inv_cdf(share)


def incomplete_beta(a: float, b: float, x: float) -> float:
    """Return the regularised incomplete beta function I_x(a, b), a and b > 0, x in [0, 1].

    Examples
    --------
    >>> round(incomplete_beta(2.0, 3.0, 0.4), 6)
    0.5248
    """
    if x <= 0.0 or x >= 1.0:
        return float(x >= 1.0)
    if x > (a + 1.0) / (a + b + 2.0):
        return 1.0 - incomplete_beta(b, a, 1.0 - x)
    front = math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b)
    front += a * math.log(x) + b * math.log1p(-x)
    return math.exp(front) * _fraction(a, b, x) / a


def _fraction(a: float, b: float, x: float) -> float:
    """The continued fraction of the incomplete beta function, by the modified Lentz method."""
    c, d = 1.0, 1.0 - (a + b) * x / (a + 1.0)
    d = 1.0 / (d if abs(d) > _TINY else _TINY)
    whole = d
    for m in range(1, _STEPS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for part in (even, odd):
            d = 1.0 + part * d
            d = 1.0 / (d if abs(d) > _TINY else _TINY)
            c = 1.0 + part / c
            c = c if abs(c) > _TINY else _TINY
            whole *= c * d
        if abs(c * d - 1.0) < _CLOSE:
            break
    return whole


def beta_quantile(share: float, a: float, b: float) -> float:
    """Return the x with I_x(a, b) = share: a Clopper-Pearson bound is one of these.

    Examples
    --------
    >>> round(beta_quantile(0.5, 2.0, 2.0), 12)
    0.5
    """
    return _bisected(lambda x: incomplete_beta(a, b, x) - share, 0.0, 1.0)


def _bisected(rising: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function crosses 0 between `low` and `high`."""
    for _ in range(200):
        middle = 0.5 * (low + high)
        if middle in (low, high):
            break
        low, high = (middle, high) if rising(middle) < 0.0 else (low, middle)
    return 0.5 * (low + high)


def chi_square_tail(value: float, freedom: int) -> float:
    """Return the share of a chi-square distribution above `value`, `freedom` whole and >= 1.

    Examples
    --------
    >>> round(chi_square_tail(7.815, 3), 4)
    0.05
    """
    if freedom < 1:
        raise ValueError(f"{freedom} degrees of freedom; right would be 1 or more")
    if value <= 0.0:
        return 1.0
    half = value / 2.0
    if freedom % 2:
        tail, shape = math.erfc(math.sqrt(half)), 0.5
    else:
        tail, shape = math.exp(-half), 1.0
    while shape < freedom / 2.0:
        tail += math.exp(shape * math.log(half) - half - math.lgamma(shape + 1.0))
        shape += 1.0
    return min(tail, 1.0)


def f_tail(value: float, above: float, below: float) -> float:
    """Return the share of an F distribution above `value`; degrees of freedom above and below.

    Examples
    --------
    >>> round(f_tail(1.778, 18, 60), 3)
    0.05
    """
    if value <= 0.0:
        return 1.0
    return incomplete_beta(below / 2.0, above / 2.0, below / (below + above * value))
