"""Where a leaf lies: the frame of its virtual corner in the section's frame."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from geometry.curves import Vec
from geometry.faults import Fault, GeometryError, number_faults

__all__ = ["Pose", "wrap_degrees"]

_FARTHEST = 1e6
"""mm: farther off nothing lies."""

_MOST_TURN = 1e9
"""Degrees: wound up further, an angle has no digits left for what it is."""


def wrap_degrees(angle: float) -> float:
    """Return `angle` (degrees) in (-180, 180].

    Raises
    ------
    GeometryError
        If it is no finite number.

    Examples
    --------
    >>> wrap_degrees(270.0), wrap_degrees(-180.0), wrap_degrees(90.0)
    (-90.0, 180.0, 90.0)
    """
    if not math.isfinite(angle):
        raise GeometryError(number_faults("", {"angle": angle}, "degrees"))
    wrapped = math.fmod(angle, 360.0)
    if wrapped > 180.0:
        return wrapped - 360.0
    return wrapped + 360.0 if wrapped <= -180.0 else wrapped


@dataclass(frozen=True, slots=True)
class Pose:
    """The place of a rigid leaf.

    Parameters
    ----------
    x, y
        The virtual corner, mm.
    angle
        Of the long edge from +x, degrees, counter-clockwise positive, in (-180, 180].
    turned
        Whether the leaf is turned over: the blade lies on the other side of the long edge.

    Raises
    ------
    GeometryError
        If a value is no finite number, or the place is more than a kilometre off.

    Examples
    --------
    >>> Pose(1.0, 2.0, 90.0).to_section((3.0, 0.0))
    (1.0, 5.0)
    >>> Pose(0.0, 0.0, 90.0, turned=True).to_section((0.0, 8.0))
    (8.0, 0.0)
    """

    x: float
    y: float
    angle: float = 0.0
    turned: bool = False

    def __post_init__(self) -> None:
        # This runs at every step of a drag; no comparison holds for what is no number.
        if not (abs(self.x) <= _FARTHEST >= abs(self.y) and abs(self.angle) <= _MOST_TURN):
            raise GeometryError(self._faults())

    def _faults(self) -> list[Fault]:
        values = {"x": self.x, "y": self.y, "angle": self.angle}
        found = number_faults("/pose", values, "mm and degrees")
        if not found:
            text = f"({self.x:g}, {self.y:g}) at {self.angle:g} degrees is no place"
            right = f"within {_FARTHEST:g} mm and {_MOST_TURN:g} degrees"
            found.append(Fault("/pose", "pose-far", text, right, {"x": self.x, "y": self.y}))
        return found

    @property
    def radians(self) -> float:
        """The angle in radians."""
        return math.radians(self.angle)

    @property
    def axes(self) -> tuple[float, float]:
        """Cosine and sine of the angle; exact at quarter turns, where members usually lie."""
        quarter = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), -90.0: (0.0, -1.0)}
        return quarter.get(self.angle) or (math.cos(self.radians), math.sin(self.radians))

    def to_section(self, point: Vec) -> Vec:
        """Return a point of the leaf's frame in the section's frame (mm)."""
        cos, sin = self.axes
        u, v = point[0], -point[1] if self.turned else point[1]
        return (self.x + cos * u - sin * v, self.y + sin * u + cos * v)

    def direction(self, vector: Vec) -> Vec:
        """Return a direction of the leaf's frame in the section's frame."""
        cos, sin = self.axes
        u, v = vector[0], -vector[1] if self.turned else vector[1]
        return (cos * u - sin * v, sin * u + cos * v)

    def to_leaf(self, point: Vec) -> Vec:
        """Return a point of the section's frame in the leaf's frame (mm).

        Examples
        --------
        >>> pose = Pose(1.0, 2.0, 90.0, turned=True)
        >>> pose.to_leaf(pose.to_section((3.0, 4.0)))
        (3.0, 4.0)
        """
        cos, sin = self.axes
        dx, dy = point[0] - self.x, point[1] - self.y
        u, v = cos * dx + sin * dy, -sin * dx + cos * dy
        return (u, -v if self.turned else v)

    def moved(self, dx: float, dy: float) -> Pose:
        """The pose shifted by (dx, dy) mm."""
        return replace(self, x=self.x + dx, y=self.y + dy)

    def rotated(self, degrees: float, about: Vec) -> Pose:
        """The pose rotated by `degrees` about a point of the section's frame (mm).

        Examples
        --------
        >>> Pose(1.0, 0.0).rotated(90.0, (0.0, 0.0)).angle
        90.0
        """
        turn = math.radians(degrees)
        cos, sin = math.cos(turn), math.sin(turn)
        dx, dy = self.x - about[0], self.y - about[1]
        return Pose(
            about[0] + cos * dx - sin * dy,
            about[1] + sin * dx + cos * dy,
            wrap_degrees(self.angle + degrees),
            self.turned,
        )
