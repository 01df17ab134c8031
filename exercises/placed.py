"""A leaf that somebody has placed on a coupon, and what they say of it; what can be wrong with it.

What is true of it is derived (`exercises.placement_faults`) and stands in no file.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from geometry.joint import Member
from geometry.leaf import Edge
from geometry.pose import Pose

__all__ = ["PLACEMENT_FAULTS", "Placed", "PlacementFault"]

PlacementFault = Literal[
    "wrong edge",
    "wrong leaf",
    "tilted",
    "on spatter",
    "one leg only",
    "wrong member",
    "nothing",
]
PLACEMENT_FAULTS: Final[tuple[PlacementFault, ...]] = (
    "wrong edge",
    "wrong leaf",
    "tilted",
    "on spatter",
    "one leg only",
    "wrong member",
    "nothing",
)
"""What can be wrong with how a leaf was placed; ``nothing`` where nothing is."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A leaf as somebody has placed it.

    Parameters
    ----------
    leaf
        Its mark.
    edge
        The end that faces the joint.
    on
        The member whose leg they say that they gauge.
    pose
        Where it lies, mm and degrees.
    gauged
        The members whose legs they say to have gauged, this one included if they count it.

    Examples
    --------
    >>> Placed("8 mm", "leg", "base", Pose(0.0, 0.0)).held_on
    'upright'
    """

    leaf: str
    edge: Edge
    on: Member
    pose: Pose
    gauged: tuple[Member, ...] = ()

    @property
    def held_on(self) -> Member:
        """The member whose leg the leaf truly gauges as it lies, if it is its leg edge."""
        return "base" if self.pose.turned else "upright"
