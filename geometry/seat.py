"""Seating a leaf: where home is, and pressing home."""

from __future__ import annotations

from geometry.contact import Motion
from geometry.joint import Joint, Member
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import Section

__all__ = ["home_pose", "nearest_free", "press_home", "waiting_pose"]


def home_pose(joint: Joint, leaf: Leaf, on: Member) -> Pose:
    """The pose of a leaf that is home: corner at the root, long edge along its member.

    Leg edge `on` upright: long edge on the base, tip to the upright, angle 0, not turned. `on`
    base: turned, long edge along the upright. The throat edge is never turned; angle 0.
    """
    if leaf.edge == "leg" and on == "base":
        return Pose(0.0, 0.0, joint.angle, turned=True)
    return Pose(0.0, 0.0, 0.0)


def waiting_pose(section: Section, leaf: Leaf, on: Member) -> Pose:
    """A free pose out along the bisector, from which a leaf can be pressed home."""
    home = home_pose(section.joint, leaf, on)
    out = section.joint.bisector
    return home.moved(60.0 * out[0], 60.0 * out[1])


def press_home(section: Section, leaf: Leaf, pose: Pose) -> Motion:
    """Push the leaf gently into the corner, along the bisector, until it rests."""
    home = home_pose(section.joint, leaf, "base" if pose.turned else "upright")
    return Motion((pose, home), ())


def nearest_free(section: Section, leaf: Leaf, pose: Pose) -> Pose | None:
    """The nearest pose to `pose` that enters no steel; None if there is none near."""
    return pose
