"""How unlike two pictures of one screen look: one figure, in steps that an eye can see.

Both are brought to the size of the reference, a seventh of the screen or less, so that a pixel is
the mean of a patch as high as a letter; turned into CIELAB, where a distance of about 2.3 is the
least that people notice side by side (Mahy and others, 1994); and what differs is softened by a
pixel. Letters that another machine smooths otherwise, or half a pixel away, keep a patch's mean. A
word that is gone, a panel that has moved or a colour of another hue changes it, wherever it is and
whatever the rest looks like. Limits lie between what was measured of the two kinds; the tests make
such pictures of the program's own.

Pictures are arrays of sRGB, (height, width, 3), 0 to 255.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["ALL_OVER", "WORST", "Unlikeness", "lab", "reduced", "unlikeness"]

Picture = NDArray[np.uint8]
Field = NDArray[np.float64]

WORST: Final = 6.0
"""CIELAB: the most that any place may differ by. Other smoothing gave up to 4.1, half a pixel's
shift of everything included; a missing word 8 and more."""

ALL_OVER: Final = 0.5
"""CIELAB: the most that the whole may differ by on average: a surface of another shade."""

_TO_XYZ: Final = np.array(
    [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750],
     [0.0193339, 0.1191920, 0.9503041]]
)  # fmt: skip
"""sRGB to XYZ, IEC 61966-2-1."""

_WHITE: Final = np.array([0.95047, 1.0, 1.08883])
"""D65."""


@dataclass(frozen=True, slots=True)
class Unlikeness:
    """What two pictures differ by.

    Parameters
    ----------
    worst, at
        The figure of the place that differs most, and where that is as shares of width and height.
    mean
        The mean over all of it.
    """

    worst: float
    at: tuple[float, float]
    mean: float

    @property
    def alike(self) -> bool:
        """Whether nobody would call them two pictures."""
        return self.worst <= WORST and self.mean <= ALL_OVER


def lab(picture: Picture) -> Field:
    """Return CIELAB values (D65) of sRGB ones.

    Examples
    --------
    >>> white = np.full((1, 1, 3), 255, dtype=np.uint8)
    >>> [round(float(value), 1) + 0.0 for value in lab(white)[0, 0]]
    [100.0, 0.0, 0.0]
    """
    share = picture / 255.0
    linear = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    ratio = linear @ _TO_XYZ.T / _WHITE
    bent = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    x, y, z = bent[..., 0], bent[..., 1], bent[..., 2]
    values: Field = np.stack([116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)], axis=-1)
    return values


def reduced(picture: Picture, width: int) -> Picture:
    """Return the picture in `width` pixels, each the mean of what it covers.

    Examples
    --------
    >>> reduced(np.arange(24, dtype=np.uint8).reshape(2, 4, 3), 2)[0, :, 0].tolist()
    [8, 14]
    """
    height = max(1, round(picture.shape[0] * width / picture.shape[1]))
    means = _means(_means(picture.astype(np.float64), height, 0), width, 1)
    return np.clip(np.rint(means), 0, 255).astype(np.uint8)


def _means(field: Field, count: int, axis: int) -> Field:
    """Cut an axis into `count` parts of the same length and return each part's mean."""
    length = field.shape[axis]
    edges = np.linspace(0.0, length, count + 1)
    places = np.arange(length)
    # How much of each pixel lies in each part: a matrix, since that is quickest.
    inside = np.minimum(edges[1:, None], places + 1) - np.maximum(edges[:-1, None], places)
    shares = np.maximum(inside, 0.0) / (length / count)
    return np.moveaxis(np.tensordot(shares, field, axes=(1, axis)), 0, axis)


def _softened(field: Field) -> Field:
    """Each pixel mixed with its neighbours, 1 2 1 both ways, twice."""
    for _ in range(2):
        for axis in (0, 1):
            ends = ((1, 1) if axis == 0 else (0, 0), (1, 1) if axis == 1 else (0, 0), (0, 0))
            wide = np.pad(field, ends, mode="edge")
            low, high = np.take(wide, range(field.shape[axis]), axis), field
            last = np.take(wide, range(2, field.shape[axis] + 2), axis)
            field = 0.25 * low + 0.5 * high + 0.25 * last
    return field


def unlikeness(now: Picture, reference: Picture) -> Unlikeness:
    """Return what a picture differs from its reference by.

    Parameters
    ----------
    now
        At least as large as the reference, with the same proportions.
    reference
        The smaller one that is kept.

    Raises
    ------
    ValueError
        If the proportions are others: then it is another screen, or one of another size.

    Examples
    --------
    >>> grey = np.full((48, 48, 3), 120, dtype=np.uint8)
    >>> unlikeness(np.full((96, 96, 3), 120, dtype=np.uint8), grey).alike
    True
    >>> unlikeness(np.full((96, 96, 3), 140, dtype=np.uint8), grey).alike
    False
    """
    small = reduced(now, reference.shape[1])
    if abs(small.shape[0] - reference.shape[0]) > 1:
        raise ValueError(f"{now.shape[:2]} against {reference.shape[:2]}: other proportions")
    height = min(small.shape[0], reference.shape[0])
    apart = _softened(lab(small[:height]) - lab(reference[:height]))
    distance = np.sqrt(np.sum(apart**2, axis=-1))
    row, column = (int(part) for part in np.unravel_index(int(np.argmax(distance)), distance.shape))
    at = ((column + 0.5) / distance.shape[1], (row + 0.5) / height)
    return Unlikeness(float(distance.max()), at, float(distance.mean()))
