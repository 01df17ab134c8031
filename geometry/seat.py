"""Seating a leaf: where home is, pressing it home, and making room for it."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import shapely
from shapely.affinity import affine_transform
from shapely.geometry import Polygon

from geometry.contact import Hand, Motion, drag, touches
from geometry.curves import Vec
from geometry.joint import Joint, Member
from geometry.leaf import Leaf
from geometry.penetration import is_free
from geometry.pose import Pose, wrap_degrees
from geometry.section import Section
from geometry.tolerances import CONTACT

__all__ = ["home_pose", "nearest_free", "press_home", "waiting_pose"]

_GENTLE: Final = 2.0
"""mm by which a press aims past home. So small a pull keeps a spur that rides a crown straight on
the bisector: the wrist's stiffness outweighs the pull that would tip it to one side."""

_LEAN: Final = 60.0
"""mm by which a leg edge is then leaned on its flush member. Metal under the tip, however steep,
must not lift the long edge: the push lies within two degrees of square to the member."""

_BACK_OFF: Final = 6.0
"""mm: how high a leaf is lifted to be laid flat anew."""

_MOST_LEANS: Final = 8
_FARTHEST: Final = 40.0
"""mm: farther away than this no room is looked for."""

_ROOM: Final = 0.02
"""mm of room that a leaf is given beyond the nearest free pose."""


def home_pose(joint: Joint, leaf: Leaf, on: Member) -> Pose:
    """Return the pose of a leaf that is home: corner at the root, long edge along its member.

    Parameters
    ----------
    joint
        The members.
    leaf
        With the edge that is to work.
    on
        The member that the tip is to read. `on` upright: long edge on the base, angle 0, not
        turned. `on` base: turned, long edge along the upright. The throat edge is never turned.

    Examples
    --------
    >>> from geometry.leaf import leaf_of_mark
    >>> home_pose(Joint(), leaf_of_mark("8 mm"), "base")
    Pose(x=0.0, y=0.0, angle=90.0, turned=True)
    """
    if leaf.edge == "leg" and on == "base":
        return Pose(0.0, 0.0, joint.angle, turned=True)
    return Pose(0.0, 0.0, 0.0)


def waiting_pose(section: Section, leaf: Leaf, on: Member) -> Pose:
    """Return a free pose straight out along the bisector, from which to press home.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.leaf import leaf_of_mark
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> waiting_pose(section, leaf_of_mark("8 mm"), "upright").angle
    0.0
    """
    home = home_pose(section.joint, leaf, on)
    out = section.joint.bisector
    away = 0.0
    # A leaf is farther from the steel the farther out it is; stop where it is well free.
    while away < 100.0 * _FARTHEST:
        pose = home.moved(away * out[0], away * out[1])
        if _gap(section, leaf, pose) > 1.0:
            return pose
        away += 2.0 if away < 8.0 * _FARTHEST else away / 4.0
    return home.moved(away * out[0], away * out[1])


def press_home(section: Section, leaf: Leaf, pose: Pose) -> Motion:
    """Push the leaf gently into the corner, along the bisector, until it rests.

    The wrist wants the leaf's own seat: square to the members, on the bisector. A throat edge is
    pushed no further: a spur that rides a crown stays straight on the bisector, so that a reading
    repeats. A leg edge is then leaned on its long edge; if that does not come to lie flush, or if a
    rough face stops it, the leaf is backed off, laid flat on bare metal and slid home, as a hand
    would: so it comes to the same rest from everywhere.

    Parameters
    ----------
    section
        The steel.
    leaf
        With the edge that works.
    pose
        Where it lies; `turned` decides which member the long edge is for.

    Returns
    -------
    Motion
        The way and the contacts at rest.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.leaf import leaf_of_mark
    >>> section = Section.of(Joint(), Bead(9.0, 9.0))
    >>> home = press_home(section, leaf_of_mark("8 mm"), Pose(20.0, 25.0, 4.0)).pose
    >>> round(home.x, 5), round(home.y, 5), abs(round(home.angle, 5))
    (1.0, 0.0, 0.0)
    """
    home = home_pose(section.joint, leaf, "base" if pose.turned else "upright")
    if leaf.edge == "throat":
        home = Pose(0.0, 0.0, section.joint.angle if pose.turned else 0.0, pose.turned)
    elif section.joint.angle > 90.0:
        # In an open joint the tip meets its member further back: home is where it does.
        back = leaf.tip[1] / math.tan(section.joint.radians)
        along = section.joint.direction("upright" if pose.turned else "base")
        home = home.moved(back * along[0], back * along[1])
    out = section.joint.bisector
    at = home.to_section(leaf.handle)
    aim = (at[0] - _GENTLE * out[0], at[1] - _GENTLE * out[1])
    motion = drag(section.outline, leaf.body, pose, Hand(leaf.handle, aim, home.angle))
    if leaf.edge == "throat":
        return motion
    pressed = _leaned(section, leaf, home, motion)
    short = math.hypot(pressed.pose.x - home.x, pressed.pose.y - home.y) > CONTACT
    rough = section.bead.trace is not None and short
    if _lies_flat(section.joint, home, pressed.pose) and not rough:
        return pressed
    # Tip or arc caught on the weld before the long edge was down, or slipped past a tooth of a
    # rough face on its way down: back off, lay it flat, slide.
    slid = _leaned(section, leaf, home, _laid_flat(section, leaf, home, pressed))
    return slid if _lies_flat(section.joint, home, slid.pose) else pressed


def _leaned(section: Section, leaf: Leaf, home: Pose, before: Motion) -> Motion:
    """Lean on the long edge and draw the leaf along its flush member until nothing moves."""
    outline, body = section.outline, leaf.body
    path = list(before.path)
    for _ in range(_MOST_LEANS):
        leaned = drag(outline, body, path[-1], _leaning(section.joint, leaf, home, path[-1]))
        path += leaned.path[1:]
        if _near_enough(leaned.path[0], leaned.pose):
            break
    return Motion(tuple(path), touches(outline, body, path[-1]))


def _laid_flat(section: Section, leaf: Leaf, home: Pose, before: Motion) -> Motion:
    """Back the leaf off the weld and lay its long edge down on bare metal, if there is room."""
    joint, outline, body = section.joint, section.outline, leaf.body
    member: Member = "upright" if home.turned else "base"
    normal, along = joint.normal(member), joint.direction(member)
    room = joint.length(member) - leaf.handle[0] - 1.0
    off = max(0.0, min(section.bead.reach(member) + 1.0, room))
    way: list[Pose] = list(before.path)
    for lift in (_BACK_OFF, -_LEAN):
        at = home.moved(off * along[0], off * along[1]).to_section(leaf.handle)
        pointer = (at[0] + lift * normal[0], at[1] + lift * normal[1])
        way += drag(outline, body, way[-1], Hand(leaf.handle, pointer, home.angle)).path[1:]
    return Motion(tuple(way), ())


def _lies_flat(joint: Joint, home: Pose, pose: Pose) -> bool:
    """Whether the long edge lies on its member's face line, all along."""
    normal = joint.normal("upright" if home.turned else "base")
    height = pose.x * normal[0] + pose.y * normal[1]
    return abs(height) < CONTACT and abs(wrap_degrees(pose.angle - home.angle)) < 1e-3


def _leaning(joint: Joint, leaf: Leaf, home: Pose, pose: Pose) -> Hand:
    """A hand that leans square on the flush member, and draws the leaf along it to its home."""
    member: Member = "upright" if pose.turned else "base"
    normal, along = joint.normal(member), joint.direction(member)
    now, then = pose.to_section(leaf.handle), home.to_section(leaf.handle)
    short = (then[0] - now[0]) * along[0] + (then[1] - now[1]) * along[1] - _GENTLE
    short = max(short, -3.0 * _GENTLE)
    pointer = (
        now[0] - _LEAN * normal[0] + short * along[0],
        now[1] - _LEAN * normal[1] + short * along[1],
    )
    return Hand(leaf.handle, pointer, home.angle)


def _near_enough(before: Pose, after: Pose) -> bool:
    return (
        math.hypot(after.x - before.x, after.y - before.y) < 1e-6
        and abs(after.angle - before.angle) < 1e-6
    )


def nearest_free(section: Section, leaf: Leaf, pose: Pose) -> Pose | None:
    """Return the nearest pose to `pose`, at the same angle, that enters no steel.

    Parameters
    ----------
    section
        The steel.
    leaf
        With the edge that works.
    pose
        Where it is wanted; `pose` itself is returned if it is free.

    Returns
    -------
    Pose or None
        None if there is no room within 40 mm.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.leaf import leaf_of_mark
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> moved = nearest_free(section, leaf_of_mark("8 mm"), Pose(1.0, -2.0))
    >>> round(moved.x, 2), round(moved.y, 2)
    (1.0, 0.02)
    """
    if is_free(section.outline, leaf.body, pose):
        return pose
    middle = math.atan2(section.joint.bisector[1], section.joint.bisector[0])
    best: tuple[float, Vec] | None = None
    # The way out of the joint first: what it finds cuts the search along all others short.
    for turn in sorted(np.linspace(-math.pi, math.pi, 72, endpoint=False).tolist(), key=abs):
        way = (math.cos(middle + turn), math.sin(middle + turn))
        farthest = best[0] if best is not None else _FARTHEST
        away = _way_out(section, leaf, pose, way, farthest)
        if away is not None and (best is None or away < best[0]):
            best = away, way
    if best is None:
        return None
    away, way = best[0] + _ROOM, best[1]
    free = pose.moved(away * way[0], away * way[1])
    return free if is_free(section.outline, leaf.body, free) else None


def _way_out(section: Section, leaf: Leaf, pose: Pose, way: Vec, farthest: float) -> float | None:
    """How far along `way` the leaf first is free, mm; None if not within `farthest`."""
    away, step = 0.0, 0.25
    while away < farthest:
        away += step
        if _gap(section, leaf, pose.moved(away * way[0], away * way[1])) > 0.0:
            break
        step *= 1.25
    else:
        return None
    low, high = away - step, away
    while high - low > 1e-3:
        mid = (low + high) / 2.0
        if _gap(section, leaf, pose.moved(mid * way[0], mid * way[1])) > 0.0:
            high = mid
        else:
            low = mid
    return high if high < farthest else None


def _gap(section: Section, leaf: Leaf, pose: Pose) -> float:
    """Distance between the polygons of leaf and steel, mm; 0.0 if they meet."""
    return float(shapely.distance(section.outline.polygon, _laid_polygon(leaf, pose)))


def _laid_polygon(leaf: Leaf, pose: Pose) -> Polygon:
    cos, sin = pose.axes
    flip = -1.0 if pose.turned else 1.0
    laid = affine_transform(leaf.body.polygon, [cos, -sin * flip, sin, cos * flip, pose.x, pose.y])
    if not isinstance(laid, Polygon):
        raise TypeError("a leaf stays one polygon")
    return laid
