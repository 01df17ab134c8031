"""A rigid body moved by a hand among fixed steel, without friction and without ever entering it.

The hand holds the body at a point and pulls that point towards a pointer, and its wrist wants an
angle. It minimises ``|grab - pointer|^2 + (15 mm)^2 * turn^2``, a squared distance in the space of
(grab x, grab y, 15 mm * turn). So each step projects the hand's target onto the half-spaces that
the features nearby leave open, bent by the curvature of those that hold it, brings the result back
to where every pair is clear, and takes it only if the cost falls and the way there is proved free.

Motion is quasi-static and a pure function of both bodies, pose and hand. It knows bodies and named
pieces only, no gauge: another instrument can use it as it stands.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from geometry.bodies import Body
from geometry.curves import Vec
from geometry.descent import Descent
from geometry.nearby import near
from geometry.pairing import all_pairs
from geometry.pairs import At, Pairs, Spot
from geometry.pose import Pose, wrap_degrees
from geometry.tolerances import CONTACT

__all__ = ["HAND_REACH", "Hand", "Motion", "Touch", "drag", "touches", "turn"]

HAND_REACH: Final = 15.0
"""mm: how stiffly a wrist keeps an angle against a pull; a radian of turn costs as much as this
many millimetres of displacement (contract)."""


@dataclass(frozen=True, slots=True)
class Hand:
    """A hand that holds the moving body at a point and pulls it towards a pointer.

    Parameters
    ----------
    grab
        The held point in the moving body's own frame (unmirrored), mm.
    pointer
        Where the hand wants that point, mm in the section's frame.
    angle
        The angle that the wrist wants, degrees.
    """

    grab: Vec
    pointer: Vec
    angle: float

    def cost(self, pose: Pose) -> float:
        """What the hand minimises, mm squared.

        Examples
        --------
        >>> Hand((0.0, 0.0), (3.0, 4.0), 0.0).cost(Pose(0.0, 0.0))
        25.0
        """
        x, y = pose.to_section(self.grab)
        turned = HAND_REACH * math.radians(wrap_degrees(pose.angle - self.angle))
        return (x - self.pointer[0]) ** 2 + (y - self.pointer[1]) ** 2 + turned**2


@dataclass(frozen=True, slots=True)
class Touch:
    """A contact: piece of the moving body, piece of the fixed one, and where (mm).

    A corner is named by the two pieces that meet in it: ``end|arc`` is a leg edge's tip.
    """

    moving: str
    fixed: str
    at: Vec


@dataclass(frozen=True, slots=True)
class Motion:
    """What a hand's move came to: every sub-pose from start to end, and the contacts at the end.

    Between two sub-poses the body moves straight in x, y and angle, and enters nothing.
    """

    path: tuple[Pose, ...]
    touches: tuple[Touch, ...]

    @property
    def pose(self) -> Pose:
        """Where the body came to rest."""
        return self.path[-1]


@lru_cache(maxsize=32)
def _mirrored(body: Body) -> Body:
    return body.mirrored()


def _laid(moving: Body, pose: Pose) -> Body:
    """The moving body as it lies: mirrored if it is turned over."""
    return _mirrored(moving) if pose.turned else moving


def _spot(pose: Pose) -> Spot:
    return Spot(pose.x, pose.y, pose.radians)


def _pose(spot: Spot, like: Pose) -> Pose:
    return Pose(spot.x, spot.y, wrap_degrees(math.degrees(spot.turn)), like.turned)


def drag(fixed: Body, moving: Body, pose: Pose, hand: Hand) -> Motion:
    """Move `moving` from `pose` as `hand` pulls it, until no small step brings it closer.

    Parameters
    ----------
    fixed
        The steel, in the section's frame.
    moving
        The body in hand, in its own frame, not mirrored; `pose.turned` is honoured here.
    pose
        Where it lies: a free pose (`geometry.penetration.is_free`). From one that stands in steel
        by a hair (more than 1e-6 mm) nothing moves.
    hand
        Grab, pointer and wanted angle.

    Returns
    -------
    Motion
        Its path enters the steel nowhere, between its sub-poses as little as at them (1e-6 mm).

    Examples
    --------
    >>> floor = Body.of_points("floor", [(-50.0, -9.0), (50.0, -9.0), (50.0, 0.0), (-50.0, 0.0)])
    >>> block = Body.of_points("block", [(0.0, 0.0), (8.0, 0.0), (8.0, 4.0), (0.0, 4.0)])
    >>> motion = drag(floor, block, Pose(0.0, 3.0), Hand((4.0, 2.0), (9.0, -5.0), 0.0))
    >>> round(motion.pose.x, 3), round(motion.pose.y, 3), motion.pose.angle
    (5.0, 0.0, 0.0)
    >>> sorted({touch.fixed for touch in motion.touches})
    ['side']
    """
    laid = _laid(moving, pose)
    pairs = all_pairs(fixed, laid)
    grab = (hand.grab[0], -hand.grab[1] if pose.turned else hand.grab[1])
    # The wrist's angle is taken on the near side of the half turn.
    wanted = pose.radians + math.radians(wrap_degrees(hand.angle - pose.angle))
    descent = Descent(pairs, grab, (*hand.pointer, wanted), HAND_REACH)
    spots, near_rest, at_rest = descent.run(_spot(pose))
    path = tuple(_pose(spot, pose) for spot in spots[1:])
    return Motion((pose, *path), _touching(near_rest, at_rest, CONTACT))


def turn(fixed: Body, moving: Body, pose: Pose, about: Vec, degrees: float) -> Motion:
    """Turn `moving` by `degrees` about a point of the section's frame, stopped by steel.

    Unlike `drag`, nothing gives way: the body turns about that very point, as far as it can.

    Parameters
    ----------
    fixed, moving, pose
        As for `drag`.
    about
        mm, in the section's frame.
    degrees
        Counter-clockwise positive, at most a half turn either way.

    Examples
    --------
    >>> floor = Body.of_points("floor", [(-50.0, -9.0), (50.0, -9.0), (50.0, 0.0), (-50.0, 0.0)])
    >>> block = Body.of_points("block", [(0.0, 0.0), (8.0, 0.0), (8.0, 4.0), (0.0, 4.0)])
    >>> turn(floor, block, Pose(0.0, 1.0), (0.0, 1.0), -30.0).pose.angle > -7.19
    True
    """
    laid = _laid(moving, pose)
    pairs = all_pairs(fixed, laid)
    local = pose.to_leaf(about)
    grab = (local[0], -local[1] if pose.turned else local[1])
    descent = Descent(pairs, grab, (*about, pose.radians), HAND_REACH)
    spots = descent.turn(_spot(pose), math.radians(degrees))
    path = tuple(_pose(spot, pose) for spot in spots[1:])
    return Motion((pose, *path), touches(fixed, moving, path[-1] if path else pose))


def touches(fixed: Body, moving: Body, pose: Pose, within: float = CONTACT) -> tuple[Touch, ...]:
    """Return what touches what at `pose`.

    Parameters
    ----------
    fixed, moving, pose
        As for `drag`.
    within
        mm: the distance that counts as contact; less than half a millimetre.

    Examples
    --------
    >>> floor = Body.of_points("floor", [(-50.0, -9.0), (50.0, -9.0), (50.0, 0.0), (-50.0, 0.0)])
    >>> block = Body.of_points("block", [(0.0, 0.0), (8.0, 0.0), (8.0, 4.0), (0.0, 4.0)])
    >>> [touch.at for touch in touches(floor, block, Pose(0.0, 0.0))]
    [(0.0, 0.0), (8.0, 0.0)]
    """
    spot = _spot(pose)
    pairs = near(all_pairs(fixed, _laid(moving, pose)), spot, within).pairs
    at = pairs.at(spot)
    return _touching(pairs, at, within)


def _touching(pairs: Pairs, at: At, within: float) -> tuple[Touch, ...]:
    close = ((abs(at.gap) <= within) & at.facing).nonzero()[0].tolist()
    return tuple(Touch(*pairs.name(index), pairs.meeting(at, index)) for index in close)
