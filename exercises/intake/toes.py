"""Where the face leaves a member: fitted beside the toe, and carried on to the member's line."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["Toe", "find_toe"]

FloatArray = NDArray[np.float64]

_FEWEST: Final = 10
_LARGEST_SHARE: Final = 0.35
_GROWTH: Final = 1.35
_UNSURE: Final = 2
"""Of so few narrow fits it is not known whether they err, or the curve does."""

_SHALLOW: Final = 21.0
"""How much farther out than it seems a toe may be, in the scatter: at 8 degrees to the member."""

_LONE: Final = 3.5
"""Of the scatter: a point farther off the curve than this isn't of it."""


@dataclass(frozen=True, slots=True)
class Toe:
    """A toe: how far along its member from the root, mm, and the standard uncertainty of that."""

    at: float
    uncertainty: float


@dataclass(frozen=True, slots=True)
class _Fit:
    at: float
    uncertainty: float
    scatter: float
    count: int


def find_toe(along: FloatArray, off: FloatArray, beyond: int, noise: float, *, reach: float) -> Toe:
    """Return the toe of a face that runs towards its member.

    Parameters
    ----------
    along, off
        The points beside the toe, mm along the member from the root and off it in the air, from
        the member inwards; the first `beyond` lie on the member.
    noise
        Scatter of the points square to the profile, mm.
    reach
        How long the face is, mm.

    Examples
    --------
    >>> along = np.linspace(8.4, 4.0, 45)
    >>> toe = find_toe(along, np.maximum(0.0, 8.0 - along), 4, 0.0, reach=11.3)
    >>> round(toe.at, 6)
    8.0
    """
    points = np.column_stack([along, off])
    toe = np.array([along[min(beyond, len(along) - 1)], 0.0])
    away = np.hypot(*(points - toe).T)
    window = max(float(np.sort(away[beyond:])[min(_FEWEST + 2, len(away) - beyond) - 1]), 1e-6)
    largest = max(_LARGEST_SHARE * reach, window * 1.01)
    farthest = _bare_from(along, off, beyond, noise) + _SHALLOW * noise + 0.05
    found: list[_Fit] = []
    # Steeply worked out at first: the least curve, and the least that can be wrong.
    while window <= largest:
        fit = _fitted(points, toe, window, beyond, noise)
        if fit is not None and fit.at <= farthest:
            # Wider as long as the curve still fits, and says the same as the narrower ones.
            same = all(
                abs(fit.at - other.at) <= 2.5 * math.hypot(other.uncertainty, 1e-4)
                for other in found
            )
            if found and (not same or fit.scatter > 1.25 * noise + 5e-4):
                if len(found) > _UNSURE:
                    break
                # Of a dozen points two or three may lead astray; twice as many do so less.
                found.clear()
            found.append(fit)
            if noise == 0.0:
                # As drawn: nothing is gained by looking farther, and the next corner may be near.
                break
        window *= _GROWTH
    if not found:
        return Toe(float(toe[0]), max(2.0 * noise, 0.05))
    best = min(found, key=lambda fit: fit.uncertainty)
    # That the one was chosen out of several, which don't agree wholly, is part of the doubt.
    weights = np.array([fit.uncertainty**-2 if fit.uncertainty > 0.0 else 1e12 for fit in found])
    apart = np.array([fit.at - best.at for fit in found])
    spread = math.sqrt(float(weights @ apart**2) / float(weights.sum()))
    return Toe(best.at, math.hypot(1.25 * best.uncertainty, spread, 1e-4))


def _bare_from(along: FloatArray, off: FloatArray, beyond: int, noise: float) -> float:
    """From where outwards the member is bare: five points on it in a row; no toe lies beyond."""
    bare = np.abs(off[:beyond][::-1]) <= 3.0 * max(noise, 1e-3)
    rows = np.convolve(bare, np.ones(5), "valid") >= 5.0 if beyond >= 5 else np.zeros(0, bool)
    first = int(rows.argmax()) if rows.any() else None
    return float(along[:beyond][::-1][first]) if first is not None else math.inf


def _fitted(
    points: FloatArray, toe: FloatArray, window: float, beyond: int, noise: float
) -> _Fit | None:
    """A parabola in its own frame through what lies within `window` of the toe, on the face."""
    at = toe.copy()
    fit: _Fit | None = None
    for _ in range(6):
        near = np.hypot(*(points - at).T) <= window
        # Before the face there is a bare member, or a lip, a groove or spatter: none is the face.
        # Drawn points are where they are; scanned ones may be early by their scatter.
        face = np.arange(len(points)) >= beyond
        if noise > 0.0:
            face |= points[:, 0] < at[0]
        chosen = points[near & face]
        if len(chosen) < _FEWEST:
            return fit
        inner = chosen[-max(4, len(chosen) // 2) :].mean(axis=0) - at
        way = inner / max(float(np.hypot(*inner)), 1e-12)
        if way[1] < 0.02:
            return fit
        local = chosen - at
        forward = local @ way
        square = way[0] * local[:, 1] - way[1] * local[:, 0]
        use = forward > 0.0
        if use.sum() < _FEWEST:
            return fit
        made = _crossed(forward[use], square[use], way, noise)
        if made is None:
            return fit
        shift, fit = made[0], _Fit(float(at[0] + made[0]), *made[1:])
        at = np.array([at[0] + shift, 0.0])
        if abs(shift) < 1e-7:
            break
        if abs(shift) > 2.0 * window:
            return None
    return fit


def _crossed(
    forward: FloatArray, square: FloatArray, way: FloatArray, noise: float
) -> tuple[float, float, float, int] | None:
    """Where a parabola through points meets the member: shift, its uncertainty, scatter, count."""
    scale = max(float(forward.max()), 1e-9)
    degree = 2 if len(forward) >= 14 else 1
    basis = np.vander(forward / scale, degree + 1, increasing=True)
    weights, *_ = np.linalg.lstsq(basis, square, rcond=None)
    for _ in range(2):
        rest = square - basis @ weights
        fits = np.abs(rest) <= _LONE * noise + 5e-4
        if fits.all() or fits.sum() < max(_FEWEST - 2, 0.6 * len(fits)):
            break
        basis, square = basis[fits], square[fits]
        weights, *_ = np.linalg.lstsq(basis, square, rcond=None)
    rest = square - basis @ weights
    count = len(square)
    scatter = float(np.sqrt(rest @ rest / max(count - degree - 1, 1)))
    inverse = np.linalg.pinv(basis.T @ basis)
    # A point of the member at shift s is s · way_x forward and -s · way_y square of the frame.
    shift = 0.0
    for _ in range(20):
        here = np.array([(shift * way[0] / scale) ** power for power in range(degree + 1)])
        slope = sum(
            power * weights[power] * (shift * way[0] / scale) ** (power - 1)
            for power in range(1, degree + 1)
        ) * (way[0] / scale)
        lean = -way[1] - slope
        if abs(lean) < 1e-3:
            return None
        step = (-way[1] * shift - float(here @ weights)) / lean
        shift -= step
        if abs(step) < 1e-10:
            break
        if abs(shift) > 10.0 * scale:
            return None
    here = np.array([(shift * way[0] / scale) ** power for power in range(degree + 1)])
    doubt = scatter * math.sqrt(max(float(here @ inverse @ here), 0.0)) / abs(lean)
    return shift, doubt, scatter, count
