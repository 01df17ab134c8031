"""A rigid body moved by a hand among fixed steel, without friction and without ever entering it."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.bodies import Body
from geometry.curves import Vec
from geometry.pose import Pose

__all__ = ["HAND_REACH", "Hand", "Motion", "Touch", "drag", "is_free", "penetration", "turn"]

HAND_REACH = 15.0
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


@dataclass(frozen=True, slots=True)
class Touch:
    """A contact: piece of the moving body, piece of the fixed one, and where (mm)."""

    moving: str
    fixed: str
    at: Vec


@dataclass(frozen=True, slots=True)
class Motion:
    """What a hand's move came to: every sub-pose from start to end, and the contacts at the end."""

    path: tuple[Pose, ...]
    touches: tuple[Touch, ...]

    @property
    def pose(self) -> Pose:
        """Where the body came to rest."""
        return self.path[-1]


def drag(fixed: Body, moving: Body, pose: Pose, hand: Hand) -> Motion:
    """Move `moving` from `pose` as `hand` pulls it, until no small step brings it closer."""
    at = pose.to_section(hand.grab)
    end = pose.moved(hand.pointer[0] - at[0], hand.pointer[1] - at[1])
    return Motion((pose, end), ())


def turn(fixed: Body, moving: Body, pose: Pose, about: Vec, degrees: float) -> Motion:
    """Turn `moving` by `degrees` about a point of the section's frame, stopped by steel."""
    return Motion((pose, pose.rotated(degrees, about)), ())


def is_free(fixed: Body, moving: Body, pose: Pose) -> bool:
    """Whether the moving body at `pose` enters nothing (deeper than 1e-6 mm)."""
    return penetration(fixed, moving, pose) <= 1e-6


def penetration(fixed: Body, moving: Body, pose: Pose) -> float:
    """How deep the moving body stands in the fixed one at `pose`, mm; 0.0 if not at all."""
    return 0.0
