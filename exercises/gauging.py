"""Which leaf answers a question of size, and whether any can.

A leaf only says smaller, same or larger. So a size is shown to reach its limit by a leaf between
the two, and shown to fall short likewise; and that leaf has to seat. Where a leaf seats is worked
out here by plane geometry, since it is asked of many leaves whenever a coupon is judged: the leaf
is laid flush and slid along its member until something stops it. What it shows there is read as
at the bench.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Final

import numpy as np

from geometry.joint import Joint, Member
from geometry.leaf import RACKS, Edge, Leaf, RackName, rack
from geometry.penetration import penetration
from geometry.pose import Pose
from geometry.reading import State, read
from geometry.seat import home_pose
from geometry.section import Section
from geometry.tolerances import LEGAL_DEPTH

__all__ = [
    "bisector_size",
    "dressed",
    "leaf_of_size",
    "leaves_between",
    "leg_leaf_size",
    "right_leaves",
    "seat_pose",
    "shows",
]

_SAME: Final = 1e-6
"""mm: sizes closer than this are the same size, stated in different units."""


def dressed(section: Section) -> Section:
    """Return the section with its spatter cleaned off and its lips dressed back."""
    bead = section.bead
    if not (section.spatter or bead.overlap_base or bead.overlap_upright):
        # The same object keeps its bodies, which cost more to build than all that follows.
        return section
    bead = replace(bead, overlap_base=None, overlap_upright=None)
    return replace(section, bead=bead, spatter=())


def leg_leaf_size(leg: float, joint: Joint) -> float:
    """Return the size of the leaf that a leg (mm, along its member) just meets.

    A leaf reads square to its flush member.

    Examples
    --------
    >>> leg_leaf_size(8.0, Joint()), round(leg_leaf_size(8.0, Joint(angle=100.0)), 3)
    (8.0, 7.878)
    """
    return leg if joint.angle == 90.0 else leg * math.sin(joint.radians)


def leaf_of_size(size: float, edge: Edge) -> Leaf:
    """Return a leaf of just this size (mm), whether or not a rack has one."""
    return Leaf(size, f"{size:g} mm", edge)


def seat_pose(section: Section, leaf: Leaf, on: Member) -> Pose:
    """Return where a leaf comes to rest that is slid home flush, whatever else it strikes.

    The leg edge is slid along its flush member until its end edge is stopped; the throat edge
    straight along the bisector until its spur is.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.leaf import leaf_of_mark
    >>> pose = seat_pose(Section.of(Joint(), Bead(9.0, 9.0)), leaf_of_mark("8 mm"), "upright")
    >>> round(pose.x, 3), pose.y
    (1.0, 0.0)
    """
    home = home_pose(section.joint, leaf, on)
    if leaf.edge == "throat":
        out = section.joint.bisector
        spur = math.hypot(*leaf.spur)
        off = max(0.0, _reach_on_bisector(section) - spur)
        return home.moved(off * out[0], off * out[1])
    off = _stop(section, leaf, home)
    along = home.direction((1.0, 0.0))
    return home.moved(off * along[0], off * along[1])


def shows(section: Section, leaf: Leaf, on: Member, eye_limit: float) -> State:
    """Return what a leaf shows that is slid home with its leg edge reading `on`.

    For the throat edge `on` means nothing. A leaf that would have to enter steel isn't seated.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.leaf import leaf_of_mark
    >>> closed = Section.of(Joint(angle=80.0), Bead(8.5, 8.5))
    >>> [shows(closed, leaf_of_mark(mark), "upright", 0.1) for mark in ("8 mm", "5 mm")]
    ['not seated', 'held off']
    """
    pose = seat_pose(section, leaf, on)
    state = read(section, leaf, pose, eye_limit).state
    if state != "not seated" and penetration(section.outline, leaf.body, pose) > LEGAL_DEPTH:
        return "not seated"
    return state


def _stop(section: Section, leaf: Leaf, home: Pose) -> float:
    """How far along its flush member the end edge is stopped, mm from home."""
    cos, sin = home.axes
    ring = section.outline.ring
    ahead = ring[:, 0] * cos + ring[:, 1] * sin
    above = -ring[:, 0] * sin + ring[:, 1] * cos
    if home.turned:
        above = -above
    low, top = leaf.end_edge[0][1], leaf.end_edge[1][1]
    found = [ahead[(above >= low) & (above <= top)]]
    before, after = above, np.roll(above, -1)
    for height in (low, top):
        crosses = np.flatnonzero((before - height) * (after - height) < 0.0)
        share = (height - before[crosses]) / (after[crosses] - before[crosses])
        found.append(ahead[crosses] + share * (np.roll(ahead, -1)[crosses] - ahead[crosses]))
    stops = np.concatenate(found)
    return float(stops.max()) if stops.size else 0.0


def bisector_size(section: Section) -> float:
    """Return the size (mm) of the leaf whose spur just meets the face, in a square joint.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> round(bisector_size(Section.of(Joint(), Bead(8.0, 8.0))), 6)
    8.0
    """
    return _reach_on_bisector(section) / math.cos(section.joint.radians / 2.0)


def _reach_on_bisector(section: Section) -> float:
    """Distance from the root at which the face first crosses the bisector, mm."""
    along = section.joint.bisector
    points = np.concatenate([curve.flatten() for curve in section.face])
    aside = points[:, 1] * along[0] - points[:, 0] * along[1]
    ahead = points[:, 0] * along[0] + points[:, 1] * along[1]
    crosses = np.flatnonzero((aside[:-1] * aside[1:] <= 0.0) & (aside[:-1] != aside[1:]))
    share = aside[crosses] / (aside[crosses] - aside[crosses + 1])
    return float((ahead[crosses] + share * (ahead[crosses + 1] - ahead[crosses])).min())


def leaves_between(first: float, second: float) -> list[Leaf]:
    """Return the leaves of all racks whose size lies between two sizes (mm), ends included.

    Examples
    --------
    >>> [leaf.mark for leaf in leaves_between(8.2, 7.9)]
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
