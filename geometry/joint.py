"""The two members of a joint, in the section frame.

The origin is the root, where the two face lines meet. The base's face runs along +x; the
upright's face leaves the origin at the joint's angle. Air lies between them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from geometry.curves import Vec
from geometry.faults import Fault, GeometryError

__all__ = ["LARGEST_ANGLE", "MEMBERS", "SMALLEST_ANGLE", "Joint", "Member", "other_member"]

Member = Literal["base", "upright"]
MEMBERS: Final[tuple[Member, Member]] = ("base", "upright")

SMALLEST_ANGLE: Final = 60.0
LARGEST_ANGLE: Final = 135.0
"""Degrees: the range in which a T-joint's weld is drawn as a fillet (AWS D1.1:2010, 2.4.2.6)."""

_LONGEST: Final = 1000.0
_QUARTER_TURNS: Final = {90.0: (0.0, 1.0)}

_LEAST_OPENING: Final = 1e-6
"""mm: a gap of less is none. Distances across it divide by zero."""


def other_member(member: Member) -> Member:
    """Return the member that is not this one.

    Raises
    ------
    GeometryError
        If this is no member.

    Examples
    --------
    >>> other_member("base")
    'upright'
    """
    if member not in MEMBERS:
        text = f"there is no member {member!r}"
        raise GeometryError([Fault("", "no-such-member", text, "base or upright")])
    return "upright" if member == "base" else "base"


@dataclass(frozen=True, slots=True)
class Joint:
    """Two plates that meet at a root.

    Parameters
    ----------
    angle
        Between the two faces, through the air, degrees: 60 to 135; 90 for a T.
    root_opening
        mm by which the upright's end stands off the base, along the upright's own face: 0, or a
        millionth and more.
    base_thickness, upright_thickness
        mm.
    base_length, upright_length
        Length of each face from the root, mm.

    Examples
    --------
    >>> Joint().direction("upright"), Joint().normal("upright")
    ((0.0, 1.0), (1.0, -0.0))
    """

    angle: float = 90.0
    root_opening: float = 0.0
    base_thickness: float = 12.0
    upright_thickness: float = 12.0
    base_length: float = 60.0
    upright_length: float = 60.0

    @property
    def radians(self) -> float:
        """The joint's angle in radians."""
        return math.radians(self.angle)

    def direction(self, member: Member) -> Vec:
        """Unit vector along the member's face, away from the root."""
        if member == "base":
            return (1.0, 0.0)
        return _QUARTER_TURNS.get(self.angle) or (math.cos(self.radians), math.sin(self.radians))

    def normal(self, member: Member) -> Vec:
        """Unit vector out of the member's face, into the air."""
        if member == "base":
            return (0.0, 1.0)
        along = self.direction("upright")
        return (along[1], -along[0])

    def point(self, member: Member, distance: float) -> Vec:
        """The point of the member's face line at `distance` mm from the root."""
        along = self.direction(member)
        return (along[0] * distance, along[1] * distance)

    def length(self, member: Member) -> float:
        """Length of the member's face from the root, mm."""
        return self.base_length if member == "base" else self.upright_length

    def thickness(self, member: Member) -> float:
        """Thickness of the member, mm."""
        return self.base_thickness if member == "base" else self.upright_thickness

    @property
    def bisector(self) -> Vec:
        """Unit vector from the root along the bisector of the two faces."""
        half = self.radians / 2.0
        return (math.cos(half), math.sin(half))

    def faults(self) -> list[Fault]:
        """Everything about these members that can't be; empty if they are sound.

        Examples
        --------
        >>> [str(fault) for fault in Joint(angle=40.0).faults()]
        ['/joint/angle: the joint opens 40 degrees; right would be: 60 to 135 degrees']
        """
        found: list[Fault] = []
        if not SMALLEST_ANGLE <= self.angle <= LARGEST_ANGLE:
            found.append(
                Fault(
                    "/joint/angle",
                    "joint-angle",
                    f"the joint opens {self.angle:g} degrees",
                    f"{SMALLEST_ANGLE:g} to {LARGEST_ANGLE:g} degrees",
                    {
                        "angle": self.angle,
                        "lowest": SMALLEST_ANGLE,
                        "highest": LARGEST_ANGLE,
                    },
                )
            )
        for key in ("base_thickness", "upright_thickness", "base_length", "upright_length"):
            value = getattr(self, key)
            if not 0.5 <= value <= _LONGEST:
                found.append(
                    Fault(
                        f"/joint/{key}",
                        "member-size",
                        f"{key} is {value:g} mm",
                        f"0.5 to {_LONGEST:g} mm",
                        {"key": key, "value": value, "lowest": 0.5, "highest": _LONGEST},
                    )
                )
        if self.root_opening and not _LEAST_OPENING <= self.root_opening <= _LONGEST:
            found.append(
                Fault(
                    "/joint/root_opening",
                    "root-opening",
                    f"root_opening is {self.root_opening:g} mm",
                    "0 mm, or a nanometre (0.000001 mm) or more",
                    {"value": self.root_opening},
                )
            )
        return found
