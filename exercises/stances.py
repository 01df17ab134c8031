"""How a leaf truly stood at each stated reading: legal or not, seated or not, showing what."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from exercises.attempt import StatedReading
from exercises.coupon import Coupon
from exercises.gauging import shows
from geometry.joint import Member
from geometry.leaf import Leaf, leaf_of_mark
from geometry.penetration import penetration
from geometry.pose import Pose
from geometry.reading import Reading, State, read
from geometry.section import Section
from geometry.tolerances import LEGAL_DEPTH

__all__ = ["EDGE_OF_SIGHT", "Stance", "Stances", "member_of"]

EDGE_OF_SIGHT = 0.02
"""mm: a gap this close to the eye limit may be called either way (contract)."""


def member_of(stated: StatedReading) -> Member | None:
    """Return the member whose leg a reading truly gauged, where its pose tells; else as stated.

    Examples
    --------
    >>> member_of(StatedReading("8 mm", "leg", "base", Pose(0.0, 0.0)))
    'upright'
    """
    if stated.pose is None or stated.edge != "leg":
        return stated.on
    return "base" if stated.pose.turned else "upright"


@dataclass(frozen=True, slots=True)
class Stance:
    """A leaf at a stated pose.

    Parameters
    ----------
    stated
        The reading as stated.
    depth
        How far it stands inside steel, mm.
    shown
        What it shows there.
    states
        What may rightly be said of it: more than one state where a gap is at the edge of sight.
    seatable
        Whether this leaf can be seated there at all.
    """

    stated: StatedReading
    depth: float
    shown: Reading
    states: frozenset[State]
    seatable: bool

    @property
    def legal(self) -> bool:
        """Whether the pose enters no steel."""
        return self.depth <= LEGAL_DEPTH

    @property
    def seated(self) -> bool:
        """Whether the leaf was seated."""
        return self.shown.state != "not seated"


@dataclass(frozen=True)
class Stances:
    """Finds the stance of any reading on one coupon, whose leaves are worn as it says."""

    coupon: Coupon

    @cached_property
    def _cleaned(self) -> Section:
        return self.coupon.section.cleaned()

    def of(self, stated: StatedReading) -> Stance | None:
        """Return how the leaf stood, or None if leaf, edge or pose weren't stated."""
        if stated.leaf is None or stated.edge is None or stated.pose is None:
            return None
        leaf = leaf_of_mark(stated.leaf, stated.edge, self.coupon.leaf_wear)
        found = self._at(self.coupon.section, leaf, stated, stated.pose)
        if (found.legal and found.seated) or not self.coupon.section.spatter:
            return found
        # An attempt doesn't say when the toes were cleaned. A pose that is only possible, or only
        # seated, without the spatter was taken after cleaning.
        cleaned = self._at(self._cleaned, leaf, stated, stated.pose)
        if cleaned.legal and (cleaned.seated or not found.legal):
            return cleaned
        return found

    def _at(self, section: Section, leaf: Leaf, stated: StatedReading, pose: Pose) -> Stance:
        limit = self.coupon.eye_limit
        shown = read(section, leaf, pose, limit)
        margin = min(EDGE_OF_SIGHT, limit / 2.0)
        nearby = (read(section, leaf, pose, limit + side).state for side in (margin, -margin))
        return Stance(
            stated,
            penetration(section.outline, leaf.body, pose),
            shown,
            frozenset((shown.state, *nearby)),
            shown.state != "not seated" or self._seats(leaf, pose),
        )

    def _seats(self, leaf: Leaf, pose: Pose) -> bool:
        """Whether this leaf can be seated there, toes cleaned."""
        on: Member = "base" if pose.turned else "upright"
        return shows(self._cleaned, leaf, on, self.coupon.eye_limit) != "not seated"
