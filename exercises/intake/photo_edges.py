"""Edges of a picture, to a fraction of a pixel: where brightness changes most along a normal."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
from numpy.typing import NDArray

from geometry.curves import Vec

__all__ = [
    "Grey",
    "direction_near",
    "edge_along",
    "edges_across",
    "sample",
    "smoothed",
    "snap",
]

Grey = NDArray[np.float32]
"""Brightness, 0 to 255, shape (height, width)."""

Floats = NDArray[np.float64]

REACH: Final = 8.0
"""Pixels: how far from a click an edge is looked for, twice what a hand is off by."""

_STEP: Final = 0.25
_BLUR: Final = 1.2
"""Pixels: the step of a profile, and how far its derivative is smoothed."""

_SWATH: Final = 3.0
"""Pixels to either side, along the edge, over which a profile is a mean."""

_FAINTEST: Final = 1.5
"""Levels a pixel: what changes less is taken for noise."""

_ABOVE_NOISE: Final = 3.5
"""Times the profile's own restlessness that an edge must stand out."""


def sample(grey: Grey, x: Floats, y: Floats) -> Floats:
    """Return brightness at points of the picture, between pixels by both neighbours' shares.

    Outside the picture its border goes on.

    Examples
    --------
    >>> step = np.array([[0.0, 100.0], [0.0, 100.0]], np.float32)
    >>> sample(step, np.array([0.5, 1.0, 1.5, 9.0]), np.array([0.5, 1.0, 1.0, 0.5])).tolist()
    [0.0, 50.0, 100.0, 100.0]
    """
    height, width = grey.shape
    column = np.clip(x - 0.5, 0.0, width - 1.0)
    row = np.clip(y - 0.5, 0.0, height - 1.0)
    left = np.minimum(column.astype(np.intp), width - 2)
    top = np.minimum(row.astype(np.intp), height - 2)
    right_share, low_share = column - left, row - top
    upper = grey[top, left] * (1.0 - right_share) + grey[top, left + 1] * right_share
    lower = grey[top + 1, left] * (1.0 - right_share) + grey[top + 1, left + 1] * right_share
    return np.asarray(upper * (1.0 - low_share) + lower * low_share, np.float64)


def smoothed(values: Floats, width: float, axis: int = -1) -> Floats:
    """Return values, smoothed by a bell of this width (in samples) along an axis; ends go on.

    Examples
    --------
    >>> smoothed(np.array([0.0, 0.0, 3.0, 0.0, 0.0]), 0.3).argmax()
    np.int64(2)
    """
    reach = max(1, math.ceil(3.0 * width))
    offsets = np.arange(-reach, reach + 1)
    bell = np.exp(-0.5 * (offsets / width) ** 2)
    bell /= bell.sum()
    line = np.moveaxis(values, axis, -1)
    ends = [(0, 0)] * (line.ndim - 1) + [(reach, reach)]
    padded = np.pad(line, ends, mode="edge")
    count = line.shape[-1]
    total = np.zeros_like(line)
    for index, weight in enumerate(bell):
        total += weight * padded[..., index : index + count]
    return np.moveaxis(total, -1, axis)


def direction_near(grey: Grey, at: Vec, reach: float = REACH) -> Vec | None:
    """Return the direction (unit) in which brightness changes most about a point, or None."""
    half = math.ceil(reach) + 2
    offsets = np.arange(-half, half + 1, dtype=np.float64)
    x, y = np.meshgrid(at[0] + offsets, at[1] + offsets)
    patch = smoothed(smoothed(sample(grey, x, y), 1.5, 0), 1.5, 1)
    by_row, by_column = np.gradient(patch)
    far = np.hypot(x - at[0], y - at[1])
    strength = np.hypot(by_row, by_column)
    weight = np.exp(-0.5 * (far / (0.6 * reach)) ** 2) * (strength >= _FAINTEST)
    if float((weight * strength).sum()) == 0.0:
        return None
    xx, xy, yy = (
        float((weight * first * second).sum())
        for first, second in ((by_column, by_column), (by_column, by_row), (by_row, by_row))
    )
    turn = 0.5 * math.atan2(2.0 * xy, xx - yy)
    return math.cos(turn), math.sin(turn)


def edge_along(
    grey: Grey, at: Vec, normal: Vec, *, reach: float = REACH, swath: float = _SWATH
) -> float | None:
    """Return how far along `normal` (unit) from a point the strongest edge nearby lies, pixels.

    Of edges as strong the nearer one counts. None where nothing stands out of the noise.
    """
    slope, steps = _slopes(grey, np.array([at]), np.array([normal]), reach, swath)
    strength = np.abs(slope[0])
    noise = float(np.median(strength))
    near = strength * np.exp(-0.5 * (steps / (1.2 * reach)) ** 2)
    inner = np.abs(steps) <= reach
    best = int(np.argmax(np.where(inner, near, -1.0)))
    if strength[best] < max(_FAINTEST, _ABOVE_NOISE * noise):
        return None
    return float(steps[best] + _STEP * _peak(strength, best))


def snap(
    grey: Grey, at: Vec, normal: Vec | None = None, *, reach: float = REACH, swath: float = _SWATH
) -> Vec | None:
    """Return the point of the strongest edge near a click, or None if there is none.

    Parameters
    ----------
    grey
        The picture.
    at
        The click, pixels.
    normal
        The way to look, unit; without it, the way in which brightness changes most about there.
    """
    way = normal or direction_near(grey, at, reach)
    if way is None:
        return None
    off = edge_along(grey, at, way, reach=reach, swath=swath)
    if off is None:
        return None
    return at[0] + off * way[0], at[1] + off * way[1]


def edges_across(
    grey: Grey,
    points: Floats,
    normals: Floats,
    *,
    reach: float,
    sign: float = 0.0,
    swath: float = _SWATH,
) -> tuple[Floats, Floats]:
    """Return how far the strongest edge lies along each normal, pixels, and how strong it is.

    Of edges as strong the nearer one counts.

    Parameters
    ----------
    grey
        The picture.
    points, normals
        Shape (n, 2), pixels and unit.
    reach
        How far to look, pixels.
    sign
        1 where it must get brighter along the normal, -1 darker, 0 either.
    swath
        Pixels to either side, along the edge, over which brightness is a mean.
    """
    slope, steps = _slopes(grey, points, normals, reach, swath)
    strength = np.abs(slope) if sign == 0.0 else np.maximum(sign * slope, 0.0)
    near = np.where(np.abs(steps) <= reach, np.exp(-0.5 * (steps / (1.2 * reach)) ** 2), 0.0)
    best = (strength * near).argmax(axis=1)
    rows = np.arange(len(points))
    offs = np.array([_peak(strength[row], int(best[row])) for row in rows])
    return steps[best] + _STEP * offs, strength[rows, best]


def _slopes(
    grey: Grey, points: Floats, normals: Floats, reach: float, swath: float
) -> tuple[Floats, Floats]:
    """Brightness's slope along each normal, levels a pixel, shape (n, m), and the m steps."""
    count = math.ceil((reach + 2.0) / _STEP)
    steps: Floats = _STEP * np.arange(-count, count + 1, dtype=np.float64)
    beside = np.arange(-swath, swath + 0.5)
    nx, ny = normals[:, 0, None, None], normals[:, 1, None, None]
    x = points[:, 0, None, None] + steps[None, :, None] * nx - beside[None, None, :] * ny
    y = points[:, 1, None, None] + steps[None, :, None] * ny + beside[None, None, :] * nx
    profile = smoothed(sample(grey, x, y).mean(axis=2), _BLUR / _STEP, 1)
    slope: Floats = np.gradient(profile, _STEP, axis=1)
    return slope, steps


def _peak(strength: Floats, best: int) -> float:
    """How far, in samples, the top of the parabola through three of them is off the middle one."""
    if not 0 < best < len(strength) - 1:
        return 0.0
    before, here, after = strength[best - 1 : best + 2]
    bend = before - 2.0 * here + after
    return float(0.5 * (before - after) / bend) if bend < 0.0 and before >= 0.0 <= after else 0.0
