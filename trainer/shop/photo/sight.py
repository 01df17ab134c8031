"""Which part of a picture is seen, and how large; and the picture in sizes to paint it from."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter

from exercises.intake.photo_file import Picture
from geometry.curves import Vec

__all__ = ["LARGEST", "Pyramid", "Sight"]

LARGEST: Final = 40.0
"""Logical pixels that one of the picture's may span."""

_MARGIN: Final = 0.04


@dataclass(frozen=True, slots=True)
class Sight:
    """A window onto a picture.

    Parameters
    ----------
    centre
        The picture's point in the middle, pixels of the picture.
    scale
        Logical pixels that one of the picture's spans.
    size
        Width and height, logical pixels.

    Examples
    --------
    >>> sight = Sight((100.0, 50.0), 2.0, (400.0, 200.0))
    >>> sight.to_screen((110.0, 50.0)), sight.to_picture((220.0, 100.0))
    ((220.0, 100.0), (110.0, 50.0))
    """

    centre: Vec
    scale: float
    size: tuple[float, float]

    def to_screen(self, at: Vec) -> Vec:
        """Return a point of the picture in logical pixels."""
        return (
            self.size[0] / 2.0 + (at[0] - self.centre[0]) * self.scale,
            self.size[1] / 2.0 + (at[1] - self.centre[1]) * self.scale,
        )

    def to_picture(self, at: Vec) -> Vec:
        """Return a point of the screen (logical pixels) in the picture."""
        return (
            self.centre[0] + (at[0] - self.size[0] / 2.0) / self.scale,
            self.centre[1] + (at[1] - self.size[1] / 2.0) / self.scale,
        )

    def zoomed(self, factor: float, about: Vec) -> Sight:
        """Return the sight `factor` times larger, the point under `about` staying put."""
        held = self.to_picture(about)
        after = replace(self, scale=min(max(self.scale * factor, 0.01), LARGEST))
        now = after.to_picture(about)
        x, y = self.centre
        return replace(after, centre=(x + held[0] - now[0], y + held[1] - now[1]))

    def panned(self, dx: float, dy: float) -> Sight:
        """Return the sight whose picture is shifted by (dx, dy) logical pixels."""
        x, y = self.centre
        return replace(self, centre=(x - dx / self.scale, y - dy / self.scale))

    def fitted(self, picture: tuple[int, int]) -> Sight:
        """Return the sight that shows the whole of a picture of this size.

        Examples
        --------
        >>> Sight((0.0, 0.0), 1.0, (400.0, 200.0)).fitted((1000, 1000)).centre
        (500.0, 500.0)
        """
        wide, high = picture
        share = 1.0 - 2.0 * _MARGIN
        scale = share * min(self.size[0] / wide, self.size[1] / high)
        return Sight((wide / 2.0, high / 2.0), min(max(scale, 0.01), LARGEST), self.size)

    def holding(self, picture: tuple[int, int]) -> Sight:
        """Return the sight that doesn't lose the picture out of its edges."""
        x, y = (min(max(c, 0.0), float(s)) for c, s in zip(self.centre, picture, strict=True))
        return replace(self, centre=(x, y))


class Pyramid:
    """A picture in halves of halves: painting a large one small is quick, and it doesn't flicker.

    Parameters
    ----------
    picture
        What is shown; its array is kept, since the images share it.
    """

    def __init__(self, picture: Picture) -> None:
        self.size = picture.size
        self._levels: list[tuple[NDArray[np.uint8], QImage]] = []
        pixels = np.ascontiguousarray(picture.pixels)
        while True:
            height, width, _ = pixels.shape
            image = QImage(pixels.data, width, height, 3 * width, QImage.Format.Format_RGB888)
            self._levels.append((pixels, image))
            if max(width, height) < 1200:
                break
            pixels = _halved(pixels)

    def paint(self, painter: QPainter, sight: Sight, ratio: float) -> None:
        """Paint what is seen of the picture; single pixels stay sharp, so that one can be hit."""
        step = 0
        while step + 1 < len(self._levels) and sight.scale * ratio * 2.0 ** (step + 1) <= 1.0:
            step += 1
        image = self._levels[step][1]
        (left, top), (right, low) = sight.to_picture((0.0, 0.0)), sight.to_picture(sight.size)
        wide, high = self.size
        left, top = max(0.0, math.floor(left)), max(0.0, math.floor(top))
        right, low = min(float(wide), math.ceil(right)), min(float(high), math.ceil(low))
        if right <= left or low <= top:
            return
        x0, y0 = sight.to_screen((left, top))
        x1, y1 = sight.to_screen((right, low))
        across, down = image.width() / wide, image.height() / high
        source = QRectF(left * across, top * down, (right - left) * across, (low - top) * down)
        smooth = sight.scale * ratio < 3.0
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, smooth)
        painter.drawImage(QRectF(x0, y0, x1 - x0, y1 - y0), image, source)


def _halved(pixels: NDArray[np.uint8]) -> NDArray[np.uint8]:
    height, width = (side // 2 * 2 for side in pixels.shape[:2])
    blocks = pixels[:height, :width].reshape(height // 2, 2, width // 2, 2, 3)
    return np.ascontiguousarray(blocks.mean(axis=(1, 3), dtype=np.float32).astype(np.uint8))
