"""A leg edge slid home along its flush member: the rest that a press comes to, in fewer steps."""

from __future__ import annotations

import math
from typing import Final

from geometry.contact import Hand, drag
from geometry.joint import Member
from geometry.leaf import Leaf
from geometry.pose import Pose, wrap_degrees
from geometry.seat import home_pose
from geometry.section import Section
from geometry.tolerances import CONTACT
from trainer.corners.nearing import brought_near

__all__ = ["slid_home"]

_CLEAR: Final = 2.0 * CONTACT
"""mm by which the leaf begins off the member: one that could not move has not come to lie flat."""

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
    toe = section.toe(on)
    bead = section.body("weld").ring
    highest = (bead[:, 0] * normal[0] + bead[:, 1] * normal[1]).max()
    if highest > toe[0] * normal[0] + toe[1] * normal[1] + _LEVEL:
        return None
    lifted = root.moved(_CLEAR * normal[0], _CLEAR * normal[1])
    pose = brought_near(section, leaf, lifted, along)
    if pose is None or _is_out_of_hand(section, leaf, member, pose, root):
        return None
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


def _is_out_of_hand(section: Section, leaf: Leaf, member: Member, pose: Pose, root: Pose) -> bool:
    """Whether it stops so far out, at a leaning member, that a press would not lay it down there.

    A press backs off no farther than beyond the bead, and keeps the middle of the blade over steel.
    """
    room = section.joint.length(member) - leaf.handle[0] - 1.0
    reach = min(section.bead.reach(member) + 1.0, room)
    return math.hypot(pose.x - root.x, pose.y - root.y) > max(reach, 0.0) + _CLEAR
