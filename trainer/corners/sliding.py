"""A leg edge slid home along its flush member: the rest that a press comes to, in fewer steps."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.contact import Hand, drag
from geometry.joint import Member
from geometry.leaf import Leaf
from geometry.pose import Pose, wrap_degrees
from geometry.seat import home_pose
from geometry.section import Section
from geometry.tolerances import CONTACT

__all__ = ["slid_home"]

_CLEAR: Final = 0.5
"""mm by which the leaf begins off the member and beyond all that stands on it."""

_LEAN: Final = 60.0
"""mm by which it is leaned on its flush member: no metal under the tip lifts the long edge."""

_PAST: Final = 2.0
"""mm by which the hand aims past home."""

_STILL: Final = 1e-6
"""mm and degrees: what moves less is at rest."""

_LEVEL: Final = 1e-3
"""mm: no higher than the toe that is read."""

_MOST: Final = 8
"""Leans in a row; two are the rule, the second of which moves nothing."""


def slid_home(section: Section, leaf: Leaf, on: Member) -> Pose | None:
    """Lay a leg edge flat beyond the bead and slide it home; None where only a press can tell.

    Flat on its member a leaf can only slide. Where no metal stands farther off that member than
    the toe that is read, steel lies on one side of the leaf at every height, so there is one place
    where a flat leaf stops. A press from the air ends there too, since it leans on the long edge
    until that lies flat and nothing moves; only it has to climb off the bead first.

    Parameters
    ----------
    section
        The steel, its face an arc.
    leaf
        By its leg edge.
    on
        The member that its tip is to read.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.leaf import leaf_of_mark
    >>> section = Section.of(Joint(), Bead(9.0, 9.0))
    >>> pose = slid_home(section, leaf_of_mark("8 mm"), "upright")
    >>> round(pose.x, 5), abs(round(pose.y, 5)), abs(round(pose.angle, 5))
    (1.0, 0.0, 0.0)
    """
    joint = section.joint
    root = home_pose(joint, leaf, on)
    member: Member = "upright" if root.turned else "base"
    normal, along = joint.normal(member), joint.direction(member)
    # In an open joint the tip meets its member further back.
    back = min(0.0, leaf.tip[1] / math.tan(joint.radians)) if joint.angle > 90.0 else 0.0
    home = root.moved(back * along[0], back * along[1]).to_section(leaf.handle)
    bead = _bead(section) @ np.array((along, normal)).T
    toe = section.toe(on)
    if bead[:, 1].max() > toe[0] * normal[0] + toe[1] * normal[1] + _LEVEL:
        return None
    off = max(float(bead[:, 0].max()), _leans_over(section, leaf)) + _CLEAR
    pose = root.moved(
        off * along[0] + _CLEAR * normal[0],
        off * along[1] + _CLEAR * normal[1],
    )
    for _ in range(_MOST):
        at = pose.to_section(leaf.handle)
        short = (home[0] - at[0]) * along[0] + (home[1] - at[1]) * along[1] - _PAST
        pointer = (
            at[0] - _LEAN * normal[0] + short * along[0],
            at[1] - _LEAN * normal[1] + short * along[1],
        )
        hand = Hand(leaf.handle, pointer, root.angle)
        before, pose = pose, drag(section.outline, leaf.body, pose, hand).pose
        turned = wrap_degrees(pose.angle - before.angle)
        if math.hypot(pose.x - before.x, pose.y - before.y) < _STILL and abs(turned) < _STILL:
            break
    height = pose.x * normal[0] + pose.y * normal[1]
    flat = abs(height) < CONTACT and abs(wrap_degrees(pose.angle - root.angle)) < 1e-3
    return pose if flat else None


def _bead(section: Section) -> NDArray[np.float64]:
    """Points along the bead's outline, mm."""
    weld = next(body for body in section.bodies if body.name == "weld")
    return shapely.get_coordinates(weld.polygon)


def _leans_over(section: Section, leaf: Leaf) -> float:
    """How far, mm, the other member leans over the flush one at the height of the blade's top."""
    if section.joint.angle >= 90.0:
        return 0.0
    return float(leaf.body.polygon.bounds[3]) / math.tan(section.joint.radians)
