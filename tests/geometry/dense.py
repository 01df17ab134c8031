"""A second way to seat and read a leaf in a T: dense points, and no shapely.

A leaf is a quarter plane less one disc (leg edge) or two (throat edge). It slides along the base
towards the upright until the first point of the face stops it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.leaf import Leaf
from geometry.section import Section

__all__ = ["Slide", "face_points", "slide"]

Points = NDArray[np.float64]

SPACING = 2e-4
"""mm between neighbouring points of a face."""


@dataclass(frozen=True)
class Slide:
    """Where a leaf stops that slides along the base, and what a look at it measures, all mm.

    Parameters
    ----------
    off
        How far from home it stops.
    from_point
        Distance of the place where the face stops it from the tip or spur.
    slack
        How much farther it would go if only the rest of the face, over 0.25 mm from that place,
        stood in its way.
    to_face
        Distance of the tip or spur from the nearest point of the face.
    """

    off: float
    from_point: float
    slack: float
    to_face: float


def face_points(section: Section) -> Points:
    """Points of a traced or flat face, shape (n, 2) in mm, at most `SPACING` apart."""
    parts = []
    for curve in section.face:
        ends = np.array([curve.start, curve.end])
        count = math.ceil(math.dist(curve.start, curve.end) / SPACING) + 1
        parts.append(np.linspace(ends[0], ends[1], count))
    return np.concatenate(parts)


def left_side(leaf: Leaf, heights: Points) -> Points:
    """How far from the end edge's line the blade begins at each height over the long edge."""
    size = leaf.size
    if leaf.edge == "leg":
        # The centre follows from the tip, the long edge's end and the radius (design, section 3).
        radius, middle, half = 1.2 * size, (0.75 * size, 0.5 * size), math.hypot(1.5, 1.0) / 2.0
        back = math.sqrt(1.2**2 - half**2) / (2.0 * half) * size
        centre = (middle[0] - 1.0 * back, middle[1] - 1.5 * back)
        reach = np.sqrt(np.maximum(radius**2 - (heights - centre[1]) ** 2, 0.0))
        return np.where(heights < size, centre[0] + reach, 0.0)
    radius = 1.06 * size
    low = 0.5 * size + np.sqrt(np.maximum(radius**2 - (heights + 0.56 * size) ** 2, 0.0))
    high = -0.56 * size + np.sqrt(np.maximum(radius**2 - (heights - 0.5 * size) ** 2, 0.0))
    return np.where(heights < 0.5 * size, low, np.maximum(high, 0.0))


def slide(leaf: Leaf, face: Points) -> Slide:
    """Slide an unworn leaf along the base towards the upright."""
    top = leaf.end_edge[1][1]
    facing = face[face[:, 1] <= top]
    stops = facing[:, 0] - left_side(leaf, facing[:, 1])
    first = int(stops.argmax())
    off = max(0.0, float(stops[first]))
    at = (leaf.point[0] + off, leaf.point[1])
    away = np.hypot(*(facing - facing[first]).T) > 0.25
    rest = max(0.0, float(stops[away].max())) if away.any() else 0.0
    return Slide(
        off,
        float(math.dist(facing[first], at)),
        off - rest,
        float(np.hypot(*(face - at).T).min()),
    )
