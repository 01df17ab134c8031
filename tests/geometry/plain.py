"""What the reading tests share: a square joint, an 8 mm leaf by both ends, and home."""

from __future__ import annotations

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.reading import Reading
from geometry.section import Section

__all__ = ["BOTH", "EIGHT", "HOME", "ON_BASE", "SPUR", "T", "bead", "held_tip", "shown"]

T = Joint()
HOME = Pose(0.0, 0.0)
ON_BASE = Pose(0.0, 0.0, 90.0, turned=True)
EIGHT = leaf_of_mark("8 mm")
SPUR = EIGHT.swapped()
BOTH = ("long", "end")


def bead(base: float, upright: float, crown: float = 0.0) -> Section:
    """A section in a T with nothing beside its face."""
    return Section.of(T, Bead(base, upright, crown=crown))


def shown(reading: Reading) -> tuple[str, float | None]:
    """State and gap, the gap to a nanometre."""
    return reading.state, None if reading.gap is None else round(reading.gap, 6)


def held_tip(section: Section, size: float) -> float:
    """How far off the upright a flat bead holds the tip of a leaf that is flush on the base."""
    base, upright = section.bead.leg_base, section.bead.leg_upright
    return base * (1.0 - size / upright)
