"""The face between the toes: its scatter taken out, then as few points as a tolerance allows."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["simplified", "smoothed"]

FloatArray = NDArray[np.float64]

_WIDTHS: Final = (0.004, 0.008, 0.016, 0.03, 0.055, 0.09, 0.14, 0.2)
"""Half widths that are tried, as shares of the whole angle."""


def simplified(points: FloatArray, tolerance: float) -> FloatArray:
    """Return some of `points` (N, 2), from which none of the others lies farther than `tolerance`.

    By Douglas and Peucker's way (1973); distances are to the stretches between, not to their lines.

    Examples
    --------
    >>> arc = np.array([[np.cos(a), np.sin(a)] for a in np.linspace(0.0, 1.5, 400)])
    >>> len(simplified(arc, 0.01))
    9
    """
    kept = np.zeros(len(points), bool)
    kept[[0, -1]] = True
    stretches = [(0, len(points) - 1)]
    while stretches:
        first, last = stretches.pop()
        if last - first < 2:
            continue
        off = _from_stretch(points[first + 1 : last], points[first], points[last])
        worst = int(off.argmax())
        if off[worst] > tolerance:
            middle = first + 1 + worst
            kept[middle] = True
            stretches += [(first, middle), (middle, last)]
    return points[kept]


def _from_stretch(points: FloatArray, start: FloatArray, end: FloatArray) -> FloatArray:
    way = end - start
    square = float(way @ way)
    away = points - start
    if square == 0.0:
        return np.asarray(np.hypot(*away.T), float)
    share = np.clip(away @ way / square, 0.0, 1.0)
    return np.asarray(np.hypot(*(away - np.outer(share, way)).T), float)


def smoothed(turn: FloatArray, reach: FloatArray, noise: float) -> tuple[FloatArray, FloatArray]:
    """Return the distances from the root with their scatter taken out, and their uncertainties.

    Parameters
    ----------
    turn, reach
        Points of a face as seen from the root: angle in radians, rising, and distance in mm.
    noise
        Their scatter, mm, standard.

    Each is taken from a parabola through its neighbours, over the widest stretch whose answer
    agrees with all the narrower ones' (Lepski's rule): wide where the face is even, narrow at a
    ripple. So a smooth face is known better than a point is, and a ripple larger than the scatter
    stays.

    Examples
    --------
    >>> turn = np.linspace(0.1, 1.4, 400)
    >>> true = 5.0 / np.cos(turn - 0.75)
    >>> noisy = true + np.random.default_rng(1).normal(0.0, 0.05, 400)
    >>> even, _ = smoothed(turn, noisy, 0.05)
    >>> bool(np.sqrt(np.mean((even - true) ** 2)) < 0.015)
    True
    """
    count = len(turn)
    if noise <= 0.0 or count < 12:
        return reach, np.full(count, noise)
    span = float(turn[-1] - turn[0])
    best, doubt = reach.copy(), np.full(count, noise)
    low, high = reach - 2.5 * noise, reach + 2.5 * noise
    going = np.ones(count, bool)
    for share in _WIDTHS:
        fit, factor = _local_parabolas(turn, reach, share * span)
        error = noise * factor
        agrees = (fit - 2.5 * error <= high) & (fit + 2.5 * error >= low) & np.isfinite(fit)
        narrow = ~np.isfinite(fit)
        going &= agrees | narrow
        take = going & ~narrow & (error < doubt)
        best[take], doubt[take] = fit[take], error[take]
        low = np.where(going & ~narrow, np.maximum(low, fit - 2.5 * error), low)
        high = np.where(going & ~narrow, np.minimum(high, fit + 2.5 * error), high)
    return best, doubt


def _local_parabolas(
    turn: FloatArray, reach: FloatArray, half: float
) -> tuple[FloatArray, FloatArray]:
    """A parabola around each point, at that point, and by how much it shrinks the scatter."""
    count = len(turn)
    fit, factor = np.full(count, math.nan), np.full(count, math.nan)
    first = np.searchsorted(turn, turn - half, "left")
    last = np.searchsorted(turn, turn + half, "right")
    for at in range(count):
        start, end = int(first[at]), int(last[at])
        if end - start < 7:
            continue
        away = (turn[start:end] - turn[at]) / half
        basis = np.column_stack([np.ones(end - start), away, away * away])
        weight = (1.0 - np.abs(away) ** 3).clip(1e-3) ** 3
        square = basis.T @ (basis * weight[:, None])
        try:
            solved = np.linalg.solve(square, (basis * weight[:, None]).T)[0]
        except np.linalg.LinAlgError:
            continue
        fit[at] = solved @ reach[start:end]
        factor[at] = math.sqrt(float(solved @ solved))
    return fit, factor
