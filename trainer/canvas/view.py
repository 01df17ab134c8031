"""The view: which part of the section's plane the canvas shows, and how large.

Millimetres run up, logical pixels run down.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Final

from trainer.canvas.drawing import Blade, Drawing, Vec

__all__ = [
    "LARGEST_GAP",
    "LARGEST_SCALE",
    "SMALLEST_GAP",
    "SMALLEST_SCALE",
    "Box",
    "View",
    "capped_scale",
    "fitted",
    "home_box",
    "loupe_scale",
]

SMALLEST_SCALE: Final = 2.0
LARGEST_SCALE: Final = 2000.0
"""Logical pixels per mm: a 300 mm plate in a window, and half a micrometre to a pixel."""

SMALLEST_GAP: Final = 3.0
LARGEST_GAP: Final = 6.0
"""Device pixels that a gap of the eye limit spans in the loupe in marked work (contract)."""

Box = tuple[float, float, float, float]
"""Least x, least y, greatest x, greatest y, mm."""


@dataclass(frozen=True, slots=True)
class View:
    """A window onto the section's plane.

    Parameters
    ----------
    centre
        The point in the middle, mm.
    scale
        Logical pixels per mm.
    size
        Width and height, logical pixels.
    ratio
        Device pixels per logical pixel.

    Examples
    --------
    >>> view = View((0.0, 0.0), 10.0, (200.0, 100.0))
    >>> view.to_screen((1.0, 2.0)), view.to_mm((110.0, 30.0))
    ((110.0, 30.0), (1.0, 2.0))
    """

    centre: Vec
    scale: float
    size: tuple[float, float]
    ratio: float = 1.0

    @property
    def device_scale(self) -> float:
        """Device pixels per mm."""
        return self.scale * self.ratio

    @property
    def box(self) -> Box:
        """What is seen, mm."""
        half_x, half_y = self.size[0] / 2.0 / self.scale, self.size[1] / 2.0 / self.scale
        x, y = self.centre
        return x - half_x, y - half_y, x + half_x, y + half_y

    def to_screen(self, point: Vec) -> Vec:
        """Return a point of the section (mm) in logical pixels."""
        return (
            self.size[0] / 2.0 + (point[0] - self.centre[0]) * self.scale,
            self.size[1] / 2.0 - (point[1] - self.centre[1]) * self.scale,
        )

    def to_mm(self, point: Vec) -> Vec:
        """Return a point in logical pixels in the section's frame (mm)."""
        return (
            self.centre[0] + (point[0] - self.size[0] / 2.0) / self.scale,
            self.centre[1] - (point[1] - self.size[1] / 2.0) / self.scale,
        )

    def zoomed(self, factor: float, about: Vec, *, largest: float = LARGEST_SCALE) -> View:
        """Return the view `factor` times larger, the point under `about` (pixels) staying put.

        Examples
        --------
        >>> view = View((0.0, 0.0), 10.0, (200.0, 100.0))
        >>> closer = view.zoomed(2.0, (110.0, 30.0))
        >>> closer.scale, closer.to_mm((110.0, 30.0))
        (20.0, (1.0, 2.0))
        """
        scale = min(max(self.scale * factor, min(SMALLEST_SCALE, largest)), largest)
        held = self.to_mm(about)
        moved = replace(self, scale=scale)
        now = moved.to_mm(about)
        return moved.shifted(held[0] - now[0], held[1] - now[1])

    def panned(self, dx: float, dy: float) -> View:
        """Return the view whose picture is shifted by (dx, dy) logical pixels.

        Examples
        --------
        >>> View((0.0, 0.0), 10.0, (200.0, 100.0)).panned(10.0, 20.0).centre
        (-1.0, 2.0)
        """
        return self.shifted(-dx / self.scale, dy / self.scale)

    def shifted(self, dx: float, dy: float) -> View:
        """Return the view whose centre is shifted by (dx, dy) mm."""
        return replace(self, centre=(self.centre[0] + dx, self.centre[1] + dy))

    def resized(self, size: tuple[float, float], ratio: float) -> View:
        """Return the view about the same centre at another size (logical px) and pixel ratio."""
        return replace(self, size=size, ratio=ratio)

    def showing(self, box: Box, *, largest: float = LARGEST_SCALE) -> View:
        """Return the view of this size that shows the whole of `box` (mm).

        Examples
        --------
        >>> View((0.0, 0.0), 10.0, (200.0, 100.0)).showing((0.0, 0.0, 10.0, 10.0)).centre
        (5.0, 5.0)
        """
        wide, high = box[2] - box[0], box[3] - box[1]
        scale = min(self.size[0] / max(wide, 1e-6), self.size[1] / max(high, 1e-6))
        return replace(
            self,
            scale=min(max(scale, min(SMALLEST_SCALE, largest)), largest),
            centre=((box[0] + box[2]) / 2.0, (box[1] + box[3]) / 2.0),
        )


def capped_scale(eye_limit: float, ratio: float) -> float:
    """Return the largest scale (logical px per mm) of marked work.

    Examples
    --------
    >>> capped_scale(0.1, 2.0)
    30.0
    """
    return LARGEST_GAP / eye_limit / ratio


def loupe_scale(view: View, zoom: float, eye_limit: float, *, capped: bool) -> float:
    """Return the loupe's scale, logical px per mm, for a wanted `zoom` over `view`.

    Examples
    --------
    >>> view = View((0.0, 0.0), 20.0, (200.0, 100.0))
    >>> loupe_scale(view, 4.0, 0.1, capped=True), loupe_scale(view, 4.0, 0.1, capped=False)
    (60.0, 80.0)
    """
    wanted = view.scale * zoom
    if not capped:
        return min(wanted, LARGEST_SCALE * 4.0)
    largest = capped_scale(eye_limit, view.ratio)
    return min(max(wanted, largest * SMALLEST_GAP / LARGEST_GAP), largest)


def home_box(drawing: Drawing | None, blade: Blade | None) -> Box:
    """Return what a hand works in, mm: the bead, a leaf at home on it, some of the plates."""
    reach = max(drawing.legs) if drawing is not None else 8.0
    size = max(reach, blade.size if blade is not None else 0.0)
    lean = math.cos(math.radians(drawing.angle)) if drawing is not None else 0.0
    left = min(0.0, lean) * size - 0.95 * size
    return left, -0.80 * size, 3.25 * size, 2.75 * size


def fitted(
    view: View,
    drawing: Drawing | None,
    blade: Blade | None,
    *,
    largest: float,
    lies: Box | None = None,
) -> View:
    """Return `view` showing what a hand works in, no larger than `largest` (px per mm).

    Where the leaf lies (mm) is shown too, whole unless it is far from the work.
    """
    home = home_box(drawing, blade)
    if lies is None:
        return view.showing(home, largest=largest)
    wide, high = home[2] - home[0], home[3] - home[1]
    both = (
        min(home[0], max(lies[0], home[0] - wide)),
        min(home[1], max(lies[1], home[1] - high)),
        max(home[2], min(lies[2], home[2] + wide)),
        max(home[3], min(lies[3], home[3] + high)),
    )
    return view.showing(both, largest=largest)
