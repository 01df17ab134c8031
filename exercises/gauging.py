"""Which leaf answers a question of size, and whether any leaf can.

A leaf only says smaller, same or larger. So a size is shown to reach its limit by a leaf between
the two, and shown to fall short likewise; and the leaf has to seat. What follows is the plane
geometry of that, without contact: it is asked of every leaf of every rack, whenever a coupon is
judged.

What keeps a leaf from seating, as it is reckoned here:

- Below 90 degrees the end edge strikes the leaning upright and holds the tip off.
- Above 90 degrees a leaf of size S shows a leg of S / sin(angle): it reads square to the member.
- The throat edge needs a joint so square that neither of its edges shows a gap.
- The long edge starts 1.5 S from the corner (1.4 S at the throat edge): a longer leg carries it.
- The leg edge's arc clears a crown up to 0.40 S; beyond, the leaf rides on the crown.

Lips and spatter don't count: they are dressed or cleaned off, and the leaf is seated again.
"""

from __future__ import annotations

import math
from typing import Final

from geometry.curves import Vec
from geometry.joint import Joint, Member, other_member
from geometry.leaf import RACKS, Edge, Leaf, RackName, rack
from geometry.measures import Measures
from geometry.section import Section

__all__ = [
    "bisector_size",
    "edge_fits",
    "leaf_between",
    "leg_leaf_size",
    "right_leaves",
    "seats_on_leg",
    "seats_on_throat",
]

CROWN_CLEARED: Final = 0.40
"""Crown over leaf size that the leg edge's arc clears (contract)."""

_LEG_END: Final = 1.2
"""Length of the leg edge's end edge, over the leaf's size."""

_THROAT_EDGE: Final = 1.6
"""Length of each straight part of the throat edge, over the leaf's size."""

_SAME: Final = 1e-6
"""mm: sizes closer than this are the same size, stated in different units."""


def leg_leaf_size(leg: float, joint: Joint) -> float:
    """Return the size of the leaf that a leg (mm, along its member) just meets.

    Examples
    --------
    >>> leg_leaf_size(8.0, Joint()), round(leg_leaf_size(8.0, Joint(angle=100.0)), 3)
    (8.0, 7.878)
    """
    return leg * math.sin(joint.radians) if joint.angle > 90.0 else leg


def edge_fits(edge: Edge, size: float, joint: Joint, eye_limit: float) -> bool:
    """Return whether a joint is square enough for this edge of a leaf of `size` mm.

    Examples
    --------
    >>> [edge_fits("leg", 8.0, Joint(angle=a), 0.1) for a in (80.0, 90.0, 100.0)]
    [False, True, True]
    >>> [edge_fits("throat", 8.0, Joint(angle=a), 0.1) for a in (80.0, 90.0, 100.0)]
    [False, True, False]
    """
    lean = math.radians(joint.angle - 90.0)
    if edge == "leg":
        return lean >= 0.0 or _LEG_END * size * math.sin(-lean) <= eye_limit
    return _THROAT_EDGE * size * math.sin(abs(lean) / 2.0) <= eye_limit


def seats_on_leg(size: float, member: Member, section: Section, measures: Measures) -> bool:
    """Return whether the leg edge of a leaf of `size` mm clears the bead, tip to `member`."""
    joint = section.joint
    # In an open joint the tip meets its member further back, and takes the long edge with it.
    shift = size / math.tan(joint.radians) if joint.angle > 90.0 else 0.0
    other = section.bead.leg(other_member(member))
    return other < 1.5 * size + shift and measures.convexity <= CROWN_CLEARED * size


def seats_on_throat(size: float, section: Section) -> bool:
    """Return whether the throat edge of a leaf of `size` mm clears the legs."""
    return max(section.bead.leg_base, section.bead.leg_upright) < 1.4 * size


def bisector_size(section: Section) -> float:
    """Return the size (mm) of the leaf whose spur just meets the face, in a square joint.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> round(bisector_size(Section.of(Joint(), Bead(8.0, 8.0))), 6)
    8.0
    """
    along = section.joint.bisector
    reach = min(_cuts(section, along), default=0.0)
    return reach / math.cos(section.joint.radians / 2.0)


def _cuts(section: Section, along: Vec) -> list[float]:
    """Distances from the root at which the face crosses the ray `along`, mm."""
    found: list[float] = []
    for curve in section.face:
        points = curve.flatten()
        aside = points[:, 1] * along[0] - points[:, 0] * along[1]
        ahead = points[:, 0] * along[0] + points[:, 1] * along[1]
        for i in range(len(points) - 1):
            before, after = float(aside[i]), float(aside[i + 1])
            if before <= 0.0 <= after or after <= 0.0 <= before:
                share = before / (before - after) if before != after else 0.0
                found.append(float(ahead[i] + share * (ahead[i + 1] - ahead[i])))
    return [distance for distance in found if distance > 0.0]


def leaf_between(first: float, second: float) -> list[Leaf]:
    """Return the leaves of all racks whose size lies between two sizes (mm), ends included.

    Examples
    --------
    >>> [leaf.mark for leaf in leaf_between(8.2, 7.9)]
    ['8 mm', '5/16 in']
    """
    low, high = min(first, second) - _SAME, max(first, second) + _SAME
    return [leaf for name in RACKS for leaf in rack(name) if low <= leaf.size <= high]


def right_leaves(size: float, name: RackName) -> tuple[Leaf, ...]:
    """Return the leaf of a rack that is of `size` mm or, if it has none, the two that bracket it.

    Outside the rack's range that is the one leaf at its end.

    Examples
    --------
    >>> [leaf.mark for leaf in right_leaves(8.0, "metric")]
    ['8 mm']
    >>> [leaf.mark for leaf in right_leaves(8.0, "inch")]
    ['5/16 in', '3/8 in']
    """
    leaves = rack(name)
    own = tuple(leaf for leaf in leaves if abs(leaf.size - size) <= _SAME)
    if own:
        return own
    below = [leaf for leaf in leaves if leaf.size < size]
    above = [leaf for leaf in leaves if leaf.size > size]
    return tuple(below[-1:] + above[:1])
