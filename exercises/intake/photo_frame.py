"""From a picture's pixels to the section frame: perspective, scale, the members and their root."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from exercises.intake.photo_plane import SAME, Matrix, homography, in_order, is_askew, mapped
from geometry.curves import Vec
from geometry.faults import Fault, GeometryError
from geometry.joint import LARGEST_ANGLE, SMALLEST_ANGLE

__all__ = [
    "Frame",
    "Marks",
    "Spot",
    "array_of",
    "frame_of",
    "framed",
    "missing_in",
    "scale_of",
    "straightened",
]

_SHORTEST: Final = 4.0
"""Pixels: what is closer together gives no direction and no scale."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A point that was put into the picture, pixels; by hand, or on an edge."""

    x: float
    y: float
    by_hand: bool = False

    @property
    def at(self) -> Vec:
        """The point."""
        return self.x, self.y


@dataclass(frozen=True, slots=True)
class Marks:
    """All that was put into a picture.

    Parameters
    ----------
    corners
        Four corners of a rectangle in the plane of the cut, in any order; none if the picture was
        taken straight on.
    sides
        The rectangle's upper and left side: mm, or their ratio; None while that isn't known.
    sides_known
        Whether the sides are lengths.
    scale, length
        Two points a known length (mm) apart; they overrule the rectangle's sides.
    base, upright
        Two points or more on each member's face.
    face
        From base toe to upright toe.

    Examples
    --------
    >>> Marks().corners
    ()
    """

    corners: tuple[Spot, ...] = ()
    sides: tuple[float, float] | None = None
    sides_known: bool = False
    scale: tuple[Spot, ...] = ()
    length: float | None = None
    base: tuple[Spot, ...] = ()
    upright: tuple[Spot, ...] = ()
    face: tuple[Spot, ...] = ()

    @property
    def tells_scale(self) -> bool:
        """Whether two points and their length are known."""
        return len(self.scale) == 2 and self.length is not None

    def ordered(self) -> Marks:
        """The same with its four corners as a clock's hand meets them, the upper left one first."""
        if len(self.corners) != 4:
            return self
        found = {spot.at: spot for spot in self.corners}
        return replace(self, corners=tuple(found[at] for at in in_order(tuple(found))))


@dataclass(frozen=True, slots=True, eq=False)
class Frame:
    """How the picture lies in the section frame.

    Parameters
    ----------
    to_mm, to_pixels
        Homographies, shape (3, 3).
    angle
        Between the members, degrees.
    """

    to_mm: Matrix = field(repr=False)
    to_pixels: Matrix = field(repr=False)
    angle: float

    def mm(self, points: Matrix) -> Matrix:
        """Return points of the picture in the section frame, shape (n, 2)."""
        return mapped(self.to_mm, points)

    def pixels(self, points: Matrix) -> Matrix:
        """Return points of the section (mm) in the picture, shape (n, 2)."""
        return mapped(self.to_pixels, points)


def straightened(corners: Matrix | None, sides: tuple[float, float]) -> Matrix:
    """Return the homography from the picture to the plane of the cut.

    Parameters
    ----------
    corners
        Four corners in order, shape (4, 2); None for a picture taken straight on.
    sides
        The upper and the left side.
    """
    if corners is None:
        return SAME
    wide, high = sides
    wanted = np.array([(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)])
    return homography(corners, wanted)


def framed(
    plane: Matrix, scale: Matrix | None, length: float, base: Matrix, upright: Matrix
) -> tuple[Matrix, float]:
    """Return the homography from the picture to the section frame (mm), and the joint's angle.

    Parameters
    ----------
    plane
        The homography to the plane of the cut.
    scale, length
        Two points, shape (2, 2), a length (mm) apart; None where the plane is in mm already.
    base, upright
        Points on the members, shape (n, 2).

    Raises
    ------
    GeometryError
        If the members meet nowhere.

    Examples
    --------
    >>> to_mm, angle = framed(
    ...     SAME,
    ...     np.array([[0.0, 0.0], [20.0, 0.0]]),
    ...     2.0,
    ...     np.array([[60.0, 100.0], [90.0, 100.0]]),
    ...     np.array([[10.0, 60.0], [10.0, 20.0]]),
    ... )
    >>> round(angle, 9), mapped(to_mm, np.array([[10.0, 100.0], [30.0, 60.0]])).round(9).tolist()
    (90.0, [[0.0, 0.0], [2.0, 4.0]])
    """
    unit = 1.0
    if scale is not None:
        ends = mapped(plane, scale)
        unit = length / float(np.hypot(*(ends[1] - ends[0])))
    (at_base, along_base), (at_upright, along_upright) = (
        _line(mapped(plane, points)) for points in (base, upright)
    )
    crossed = _cross(along_base, along_upright)
    if abs(crossed) < 1e-6:
        raise _refused("photo-parallel", "the members are parallel", "two that meet at a root")
    root = at_base + along_base * (_cross(at_upright - at_base, along_upright) / crossed)
    right = along_base * math.copysign(1.0, float((at_base - root) @ along_base))
    leaning = along_upright * math.copysign(1.0, float((at_upright - root) @ along_upright))
    # The picture may show the upright on either side: up is where the upright goes.
    up = np.array([-right[1], right[0]])
    up *= math.copysign(1.0, float(leaning @ up))
    angle = math.degrees(math.atan2(float(leaning @ up), float(leaning @ right)))
    turn = np.eye(3)
    turn[0, :2], turn[1, :2] = right * unit, up * unit
    turn[0, 2], turn[1, 2] = -unit * float(right @ root), -unit * float(up @ root)
    return turn @ plane, angle


def frame_of(marks: Marks) -> Frame:
    """Return how the picture lies in the section frame.

    Raises
    ------
    GeometryError
        With a `Fault` for what is missing, or can't be: too few points, points that give no line,
        no scale, members that meet at no angle from 60 to 135 degrees.
    """
    found = missing_in(marks)
    if found:
        raise GeometryError(found)
    plane = _plane(marks)
    known = marks.tells_scale
    to_mm, angle = framed(
        plane,
        array_of(marks.scale) if known else None,
        marks.length or 1.0,
        array_of(marks.base),
        array_of(marks.upright),
    )
    if not SMALLEST_ANGLE <= angle <= LARGEST_ANGLE:
        words = f"the members meet at {angle:.1f} degrees"
        right = f"{SMALLEST_ANGLE:g} to {LARGEST_ANGLE:g} degrees"
        limits = {"lowest": SMALLEST_ANGLE, "highest": LARGEST_ANGLE}
        raise _refused("photo-angle", words, right, angle=round(angle, 1), **limits)
    return Frame(to_mm, np.asarray(np.linalg.inv(to_mm), np.float64), angle)


def array_of(spots: tuple[Spot, ...]) -> Matrix:
    """Return points as an array, shape (n, 2)."""
    return np.array([spot.at for spot in spots], np.float64).reshape(-1, 2)


def scale_of(marks: Marks) -> float | None:
    """Return mm a unit of the plane of the cut, or None while that isn't known.

    Examples
    --------
    >>> scale_of(Marks(scale=(Spot(0.0, 0.0), Spot(0.0, 50.0)), length=10.0))
    0.2
    """
    if not marks.tells_scale:
        known = len(marks.corners) == 4 and marks.sides is not None and marks.sides_known
        return 1.0 if known else None
    if marks.corners and marks.sides is None:
        return None
    ends = mapped(_plane(marks), array_of(marks.scale))
    apart = float(np.hypot(*(ends[1] - ends[0])))
    return (marks.length or 0.0) / apart if apart > 0.0 else None


def _plane(marks: Marks) -> Matrix:
    corners = array_of(marks.ordered().corners) if len(marks.corners) == 4 else None
    return straightened(corners, marks.sides or (1.0, 1.0))


def missing_in(marks: Marks) -> list[Fault]:
    """Return what is missing, or can't be, before the members can be laid through their points.

    Examples
    --------
    >>> [fault.at for fault in missing_in(Marks())]
    ['/scale', '/base', '/upright']
    """
    found: list[Fault] = []
    if marks.corners and (
        len({spot.at for spot in marks.corners}) != 4
        or not is_askew(tuple(spot.at for spot in marks.ordered().corners))
    ):
        words, right = "the four points are no rectangle seen askew", "the corners of one"
        found.append(Fault("/corners", "photo-corners", words, right))
    if marks.corners and marks.sides is None:
        words, right = "the rectangle's sides are not known", "their lengths, or their ratio"
        found.append(Fault("/corners", "photo-rectangle", words, right))
    if not marks.tells_scale and not (marks.corners and marks.sides_known):
        words, right = "no length is known", "two points and the length between them"
        found.append(Fault("/scale", "photo-scale", words, right))
    if marks.tells_scale and _spread(marks.scale) < _SHORTEST:
        words, right = "the two points of the length lie together", "two that are apart"
        found.append(Fault("/scale", "photo-together", words, right))
    for member, spots in (("base", marks.base), ("upright", marks.upright)):
        if len(spots) < 2 or _spread(spots) < _SHORTEST:
            words, right = f"the {member}'s face is not marked", "two points on it, or more"
            params = {"member": member}
            found.append(Fault(f"/{member}", "photo-member", words, right, params))
    return found


def _spread(spots: tuple[Spot, ...]) -> float:
    first = spots[0]
    return max(math.hypot(spot.x - first.x, spot.y - first.y) for spot in spots)


def _line(points: Matrix) -> tuple[Matrix, Matrix]:
    """The middle and direction of the line that is nearest to points, by least squares."""
    middle = points.mean(axis=0)
    dx, dy = (points - middle).T
    turn = 0.5 * math.atan2(2.0 * float(dx @ dy), float(dx @ dx - dy @ dy))
    return middle, np.array([math.cos(turn), math.sin(turn)])


def _cross(first: Matrix, second: Matrix) -> float:
    return float(first[0] * second[1] - first[1] * second[0])


def _refused(code: str, words: str, right: str, **params: float | str) -> GeometryError:
    return GeometryError([Fault("", code, words, right, params)])
