"""Where a press may begin: the leaf a hair off the steel, on the way that it will come.

On the way in through the air nothing happens, so none of it has to be gone.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from geometry.curves import Vec
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import Section
from geometry.tolerances import FLATTENING

__all__ = ["brought_near"]

_OFF: Final = 0.02
"""mm between leaf and steel, along the way in. Far more than chords stand off their arcs."""

_COARSE: Final = 20.0 * FLATTENING
"""mm: how finely the arcs are looked at here."""

Chain = NDArray[np.float64]


def brought_near(section: Section, leaf: Leaf, pose: Pose, way: Vec) -> Pose | None:
    """Return the pose nearest to the steel that is reached by shifting `pose` against `way`.

    Seen along the way, steel and leaf are two lines that face each other; where the steel's doubles
    back there is no telling, and None is returned.

    Parameters
    ----------
    section
        The steel, its face an arc.
    leaf, pose
        How it lies: any place on the way in, free or not.
    way
        A direction out of the joint, of length one.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.leaf import leaf_of_mark
    >>> section = Section.of(Joint(), Bead(9.0, 9.0))
    >>> near = brought_near(section, leaf_of_mark("8 mm"), Pose(0.0, 0.001), (1.0, 0.0))
    >>> 1.015 < near.x < 1.025
    True
    """
    blade = _laid(_blade(leaf), pose)
    across = np.array((-way[1], way[0]))
    if (blade[-1] - blade[0]) @ across < 0.0:
        across = -across
    turn = np.stack((across, way), axis=1)
    blade, steel = blade @ turn, _steel(section) @ turn
    if steel[0, 0] > steel[-1, 0]:
        steel = steel[::-1]
    if np.any(np.diff(steel[:, 0]) < -1e-9):
        return None
    # Where it doubles back, under a rising tip, the blade counts as filled.
    filled = np.minimum.accumulate(blade[::-1, 0])[::-1]
    out = max(
        _beyond(steel[:, 0], steel[:, 1], filled, blade[:, 1], 1.0),
        _beyond(filled, blade[:, 1], steel[:, 0], steel[:, 1], -1.0),
    )
    return pose.moved((out + _OFF) * way[0], (out + _OFF) * way[1])


def _steel(section: Section) -> Chain:
    """What of the steel faces a leaf: base, face and upright."""
    joint = section.joint
    ends = [joint.point(member, joint.length(member)) for member in ("base", "upright")]
    face = [curve.flatten(_COARSE) for curve in section.face]
    return np.vstack((ends[:1], *face, ends[1:]))


def _blade(leaf: Leaf) -> Chain:
    """What of the blade faces the steel: long edge, arcs and end edge."""
    pieces = [piece.curve.flatten(_COARSE) for piece in leaf.body.pieces if piece.name != "back"]
    # The boundary runs on from the long edge, away from the corner, and comes back to it.
    return np.vstack((*pieces[1:], pieces[0]))[::-1]


def _laid(points: Chain, pose: Pose) -> Chain:
    cos, sin = pose.axes
    flip = -1.0 if pose.turned else 1.0
    laid: Chain = points @ np.array(((cos, sin), (-sin * flip, cos * flip))) + (pose.x, pose.y)
    return laid


def _beyond(at: Chain, height: Chain, where: Chain, other: Chain, sign: float) -> float:
    """How far the line (at, height) lies beyond another's corners, where they face each other."""
    facing = (where >= at[0]) & (where <= at[-1])
    if not facing.any():
        return -np.inf
    return float((sign * (np.interp(where[facing], at, height) - other[facing])).max())
