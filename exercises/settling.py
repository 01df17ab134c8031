"""Whether the leaves there are can settle a question of size."""

from __future__ import annotations

from typing import Final

from exercises.doubt import doubt
from exercises.gauging import leaf_of_size, leaves_between, leg_leaf_size, shows
from geometry.joint import Member
from geometry.leaf import RACKS, Edge, Leaf, rack
from geometry.reading import State
from geometry.section import Section

__all__ = ["answers", "leg_bounds", "leg_shown"]

_REACHED: Final[frozenset[State]] = frozenset(("touch", "held off"))


def leg_shown(section: Section, member: Member) -> float:
    """Return the size of the leaf that just meets the leg on `member`, mm."""
    return leg_leaf_size(section.bead.leg(member), section.joint)


def answers(
    section: Section, edge: Edge, on: Member, sizes: tuple[float, float], eye_limit: float
) -> bool:
    """Return whether some leaf shows that the first size, the weld's, reaches or misses the second.

    Where they are closer than the doubt, a leaf of just the limit that seats shows that they are.
    A crown that overhangs its toe can hold a leaf off that the leg would not: such a leaf tells
    nothing true, and is no answer.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(), Bead(8.5, 8.5))
    >>> answers(section, "leg", "base", (8.5, 8.0), 0.1)
    True
    >>> answers(section, "leg", "base", (8.5, 8.65), 0.1)
    False
    """
    found, limit = sizes
    states: frozenset[State] = _REACHED if found >= limit else frozenset(("daylight",))
    leaves = [leaf.with_edge(edge) for leaf in leaves_between(found, limit)]
    if abs(found - limit) <= doubt(edge, eye_limit):
        leaves.append(leaf_of_size(limit, edge))
        states = _REACHED | {"daylight"}
    return any(shows(section, leaf, on, eye_limit) in states for leaf in leaves)


def leg_bounds(
    section: Section, member: Member, eye_limit: float
) -> tuple[float | None, float | None]:
    """Return the leg sizes (mm) between which the nearest leaves of all racks show a leg to lie.

    None where the leaf on that side doesn't seat, or there is none.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> leg_bounds(Section.of(Joint(), Bead(8.1, 8.1)), "base", 0.1)
    (8.0, 8.485281374238571)
    """
    leg = section.bead.leg(member)
    shown = leg_shown(section, member)
    along = leg / shown
    leaves = [leaf.with_edge("leg") for name in RACKS for leaf in rack(name)]
    below = max((leaf for leaf in leaves if leaf.size <= shown), key=_size, default=None)
    above = min((leaf for leaf in leaves if leaf.size > shown), key=_size, default=None)
    low = high = None
    if below is not None and shows(section, below, member, eye_limit) in _REACHED:
        low = below.size * along
    if above is not None and shows(section, above, member, eye_limit) != "not seated":
        high = above.size * along
    return low, high


def _size(leaf: Leaf) -> float:
    return leaf.size
