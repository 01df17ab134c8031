"""The part of a picture that shows the weld, turned into the section frame and packed small."""

from __future__ import annotations

import io
import math
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from exercises.backdrop import LARGEST_PICTURE, LARGEST_SIDE, Backdrop
from exercises.intake.photo_file import Picture
from exercises.intake.photo_frame import Frame
from exercises.intake.photo_plane import stretch
from geometry.curves import Vec

__all__ = ["backdrop_of"]

_LEFT, _BELOW, _BEYOND = 1.0, 0.9, 2.3
"""What is kept about the root, in units of the longer leg."""

_QUALITIES: Final = (88, 80, 70, 60, 45)
_SHRINK: Final = 0.8
_NOTHING: Final = 235
"""Grey, where the picture ends."""


def backdrop_of(picture: Picture, frame: Frame, trace: tuple[Vec, ...]) -> Backdrop:
    """Return the picture about a traced weld as the canvas shows it behind the section.

    It has no more pixels than the picture itself has there, and is made smaller and coarser until
    it fits into `LARGEST_PICTURE`.
    """
    reach = max(math.hypot(*trace[0]), math.hypot(*trace[-1]))
    lean = math.cos(math.radians(frame.angle)) * _BEYOND
    low_x, high_x = (min(0.0, lean) - _LEFT) * reach, max(_BEYOND, lean) * reach
    box = _seen((low_x, -_BELOW * reach, high_x, _BEYOND * reach), picture, frame)
    wide, high = box[2] - box[0], box[3] - box[1]
    finest = stretch(frame.to_mm, _middle_of(frame, trace))
    pixel = max(finest, max(wide, high) / LARGEST_SIDE)
    while True:
        size = (max(16, int(wide / pixel)), max(16, int(high / pixel)))
        warped = _warped(picture, frame, (box[0], box[3]), pixel, size)
        for quality in _QUALITIES:
            packed = io.BytesIO()
            Image.fromarray(warped).save(packed, "JPEG", quality=quality, optimize=True)
            if packed.tell() <= LARGEST_PICTURE:
                return Backdrop.of(packed.getvalue(), box[0], box[3], pixel)
        pixel /= _SHRINK


def _middle_of(frame: Frame, trace: tuple[Vec, ...]) -> Vec:
    x, y = frame.pixels(np.array([trace[len(trace) // 2]]))[0]
    return float(x), float(y)


def _seen(
    wanted: tuple[float, float, float, float], picture: Picture, frame: Frame
) -> tuple[float, float, float, float]:
    """The part of a box (mm) that the picture shows, at a slant perhaps."""
    width, height = picture.size
    rim = np.array(
        [
            *((x, y) for x in np.linspace(0.0, width, 9) for y in (0.0, height)),
            *((x, y) for y in np.linspace(0.0, height, 9) for x in (0.0, width)),
        ]
    )
    shown = frame.mm(rim)
    (left, low), (right, high) = shown.min(axis=0), shown.max(axis=0)
    return (
        max(wanted[0], float(left)),
        max(wanted[1], float(low)),
        min(wanted[2], float(right)),
        min(wanted[3], float(high)),
    )


def _warped(
    picture: Picture, frame: Frame, corner: Vec, pixel: float, size: tuple[int, int]
) -> NDArray[np.uint8]:
    """The picture in the section frame: `corner` (mm) at its upper left, `pixel` mm a pixel."""
    columns, rows = size
    x = corner[0] + (np.arange(columns) + 0.5) * pixel
    y = corner[1] - (np.arange(rows) + 0.5) * pixel
    grid = np.stack([np.tile(x, rows), np.repeat(y, columns)], axis=1)
    seen = frame.pixels(grid)
    width, height = picture.size
    inside = (seen >= 0.0).all(axis=1) & (seen[:, 0] <= width) & (seen[:, 1] <= height)
    source = picture.pixels
    coarser = stretch(frame.to_pixels, (corner[0] + 1.0, corner[1] - 1.0)) * pixel
    if coarser > 1.5:
        # What is made smaller is made softer first, or its grain would turn to moiré.
        factor = round(coarser)
        source = np.asarray(Image.fromarray(source).reduce(factor))
        seen = seen / factor
    result = np.full((rows * columns, 3), _NOTHING, np.uint8)
    result[inside] = _blended(source, seen[inside])
    return result.reshape(rows, columns, 3)


def _blended(source: NDArray[np.uint8], points: NDArray[np.float64]) -> NDArray[np.uint8]:
    height, width, _ = source.shape
    column = np.clip(points[:, 0] - 0.5, 0.0, width - 1.0)
    row = np.clip(points[:, 1] - 0.5, 0.0, height - 1.0)
    left = np.minimum(column.astype(np.intp), width - 2)
    top = np.minimum(row.astype(np.intp), height - 2)
    right, low = (column - left)[:, None], (row - top)[:, None]
    upper = source[top, left] * (1.0 - right) + source[top, left + 1] * right
    lower = source[top + 1, left] * (1.0 - right) + source[top + 1, left + 1] * right
    return np.asarray(np.rint(upper * (1.0 - low) + lower * low), np.uint8)
