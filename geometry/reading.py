"""What a leaf shows at a pose: touch, daylight, held off, or not seated."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import Section

__all__ = ["EYE_LIMIT", "STATES", "Reading", "State", "read"]

State = Literal["touch", "daylight", "held off", "not seated"]
STATES: Final[tuple[State, ...]] = ("touch", "daylight", "held off", "not seated")

EYE_LIMIT: Final = 0.1
"""mm: the smallest gap an unaided eye is asked to see, unless a coupon says otherwise."""


@dataclass(frozen=True, slots=True)
class Reading:
    """State of a leaf at a pose.

    Parameters
    ----------
    state
        One of `STATES`.
    gap
        mm, for daylight and held off; else None.
    flush
        Which edges are flush: of ``long``, ``end``.
    in_the_way
        Names of the section's pieces that keep the leaf off.
    pose
        Where it was read.
    """

    state: State
    gap: float | None
    flush: tuple[str, ...]
    in_the_way: tuple[str, ...]
    pose: Pose


def read(section: Section, leaf: Leaf, pose: Pose, eye_limit: float = EYE_LIMIT) -> Reading:
    """Return what `leaf` shows at `pose`."""
    return Reading("not seated", None, (), (), pose)
