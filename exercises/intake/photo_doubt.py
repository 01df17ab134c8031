"""How far what a picture tells may be off: standard uncertainties, carried through to the legs.

After JCGM 100:2008 (GUM), 5.1.2: a measure is a function of what was located in the picture and of
the lengths that were stated; its variance is the sum of the squared sensitivities times the squared
standard uncertainties of these. Sensitivities are differences of the function itself.

- A point that lies on an edge is known to a pixel: a rectangular distribution, 1/√12 (GUM F.2.2.1,
  a digital indication), both ways.
- A point that was put by hand is off by 2 pixels at most: rectangular, 2/√3 (GUM 4.3.7). That a
  hand does so well under the loupe is our assumption.
- A stated length is known to 0.1 mm, or to 0.1 % where that is more: rectangular as well.
- A toe is where the face's edge crosses a member's: along the member its edge counts 1/sin of the
  angle between the two.

Not in it: a lens that bends straight lines, a cut that isn't square to the weld's axis, a rule that
lies in another plane than the cut.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from exercises.intake.photo_edges import Floats
from exercises.intake.photo_follow import Face
from exercises.intake.photo_frame import Frame, Marks, Spot, array_of, framed, straightened
from exercises.intake.photo_plane import Matrix, mapped
from geometry.faults import GeometryError

__all__ = ["BY_HAND", "ON_EDGE", "Doubts", "Located", "doubts_of", "located"]

ON_EDGE: Final = 1.0 / math.sqrt(12.0)
BY_HAND: Final = 2.0 / math.sqrt(3.0)
"""Standard uncertainty of a point, pixels, each way."""

_LENGTH: Final = 0.1 / math.sqrt(12.0)
_LENGTH_SHARE: Final = 1e-3 / math.sqrt(3.0)
"""Standard uncertainty of a stated length: mm, and as a share of it."""

_LEAST_ANGLE: Final = 5.0
"""Degrees: flatter, a toe is told by nothing, and its uncertainty is as at this angle."""


@dataclass(frozen=True, slots=True)
class Doubts:
    """Standard uncertainties (one sigma) of what was traced.

    Parameters
    ----------
    leg_base, leg_upright, actual_throat
        mm.
    angle
        Degrees.
    """

    leg_base: float
    leg_upright: float
    actual_throat: float
    angle: float

    @property
    def leg(self) -> float:
        """Of the leg that is known worse, mm."""
        return max(self.leg_base, self.leg_upright)


@dataclass(frozen=True, slots=True, eq=False)
class Located:
    """What was located, as one list of numbers, how surely each, and what they say.

    Parameters
    ----------
    values, doubts
        Shape (n,): pixels, mm.
    """

    values: Floats
    doubts: Floats
    _marks: Marks
    _feet: Matrix
    _ways: Matrix

    def measures(self, values: Floats) -> Floats:
        """Return legs, throat (mm) and angle (degrees) for other values of what was located.

        Shape (4,). With `values` as they are, it is what was traced.
        """
        marks, at = self._marks, 0

        def take(count: int) -> Floats:
            nonlocal at
            at += count
            return values[at - count : at]

        corners = take(8).reshape(4, 2) if marks.corners else None
        sides = take(2) if marks.corners else np.ones(2)
        scale = take(4).reshape(2, 2) if marks.tells_scale else None
        length = float(take(1)[0]) if marks.tells_scale else 1.0
        base = take(2 * len(marks.base)).reshape(-1, 2)
        upright = take(2 * len(marks.upright)).reshape(-1, 2)
        offs = take(3)
        plane = straightened(corners, (float(sides[0]), float(sides[1])))
        to_mm, angle = framed(plane, scale, length, base, upright)
        feet = mapped(to_mm, self._feet + offs[:, None] * self._ways)
        lean = math.radians(angle)
        return np.array(
            [
                feet[0, 0],
                feet[1] @ np.array([math.cos(lean), math.sin(lean)]),
                math.hypot(*feet[2]),
                angle,
            ]
        )


def located(marks: Marks, frame: Frame, face: Face) -> Located:
    """Return what the measures of a traced face hang on."""
    marks = marks.ordered()
    values: list[float] = []
    doubts: list[float] = []

    def points(spots: tuple[Spot, ...]) -> None:
        values.extend(array_of(spots).ravel().tolist())
        for spot in spots:
            doubts.extend([BY_HAND if spot.by_hand else ON_EDGE] * 2)

    def lengths(*stated: float) -> None:
        values.extend(stated)
        doubts.extend(max(_LENGTH, _LENGTH_SHARE * length) for length in stated)

    if marks.corners:
        points(marks.corners)
        lengths(*(marks.sides or (1.0, 1.0)))
        if not marks.sides_known:
            # A ratio is exact: a square is one by its making.
            doubts[-2:] = [0.0, 0.0]
    if marks.tells_scale:
        points(marks.scale)
        lengths(marks.length or 0.0)
    points(marks.base)
    points(marks.upright)
    feet, ways = _feet(frame, face)
    values.extend([0.0, 0.0, 0.0])
    for angle, by_hand in zip(face.toe_angles, face.by_hand, strict=True):
        sharp = math.sin(math.radians(max(min(angle, 90.0), _LEAST_ANGLE)))
        doubts.append(BY_HAND if by_hand else ON_EDGE / sharp)
    doubts.append(BY_HAND if all(spot.by_hand for spot in marks.face) else ON_EDGE)
    return Located(np.array(values), np.array(doubts), marks, feet, ways)


def _feet(frame: Frame, face: Face) -> tuple[Matrix, Matrix]:
    """The toes and the face's nearest point, pixels, and the way (unit) that each may be off."""
    trace = np.array(face.trace)
    nearest = trace[int(np.argmin(np.hypot(trace[:, 0], trace[:, 1])))]
    ends = np.array([trace[0], trace[-1], nearest])
    feet = frame.pixels(ends)
    beyond = frame.pixels(ends * 1.001)
    ways = beyond - feet
    return feet, ways / np.hypot(ways[:, 0], ways[:, 1])[:, None]


def doubts_of(found: Located) -> Doubts:
    """Return the standard uncertainties of legs, throat and angle, carried through linearly.

    Each sensitivity is a difference over one standard uncertainty to either side.
    """
    variance = np.zeros(4)
    for index, doubt in enumerate(found.doubts):
        if doubt == 0.0:
            continue
        sides = []
        for step in (doubt, -doubt):
            values = found.values.copy()
            values[index] += step
            try:
                sides.append(found.measures(values))
            except (GeometryError, np.linalg.LinAlgError):
                return Doubts(math.inf, math.inf, math.inf, math.inf)
        variance += ((sides[0] - sides[1]) / 2.0) ** 2
    return Doubts(*(float(value) for value in np.sqrt(variance)))
