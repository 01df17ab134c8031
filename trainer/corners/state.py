"""What the four corners share: one frozen value, and the changes that can be made of it.

No Qt here. Lengths are mm, angles degrees.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final, Literal

from geometry.bead import Bead
from geometry.joint import LARGEST_ANGLE, SMALLEST_ANGLE, Joint, Member, other_member
from geometry.leaf import RACKS, Leaf, RackName, leaf_of_mark, rack

__all__ = [
    "KNOBS",
    "PAIRS",
    "RANGES",
    "Change",
    "Corners",
    "Drawn",
    "Knob",
    "Limit",
    "Pair",
    "changed",
    "crown_of",
    "crown_range",
    "leaf_beside",
    "rack_of",
    "true_value",
    "turned_over",
    "with_equal_legs",
    "with_leaf",
    "with_leaf_near",
    "with_rack",
    "without_or_with",
]

Knob = Literal["leg_base", "leg_upright", "crown", "hollow", "angle"]
KNOBS: Final[tuple[Knob, ...]] = ("leg_base", "leg_upright", "crown", "hollow", "angle")

RANGES: Final[dict[Knob, tuple[float, float]]] = {
    "leg_base": (3.0, 25.0),
    "leg_upright": (3.0, 25.0),
    "crown": (-4.0, 4.0),
    "hollow": (-4.0, 4.0),
    "angle": (SMALLEST_ANGLE, LARGEST_ANGLE),
}
"""The range of each knob, mm or degrees; a face may allow less of a crown."""

PLATE: Final = 300.0
"""mm: length of the plates. The largest leaf's edge lies on them whole, and no end is seen."""

THICKNESS: Final = 40.0
"""mm: of the plates, so that neither back nor underside is seen beside the smallest bead."""

_INSIDE: Final = 0.02
"""mm by which a crown keeps from the limit where its face would enter a member."""

Drawn = Literal["legs", "triangle", "throats"]
"""What can be drawn over the sections on demand."""

Pair = Literal["crown", "hollow"]
"""The two beads, by the knob that shapes their face: the upper pair and the lower pair."""
PAIRS: Final[tuple[Pair, Pair]] = ("crown", "hollow")


@dataclass(frozen=True, slots=True)
class Corners:
    """Everything that the four sections are made of.

    Parameters
    ----------
    leg_base, leg_upright
        Legs of both beads, mm.
    crown, hollow
        Wanted crown of the upper and of the lower bead, mm; `crown_of` says what their joint
        allows of it.
    angle
        Of the joint, degrees.
    mark
        The leaf that all four are gauged with.
    on
        The member that a leg edge's tip reads.
    equal
        Whether a change of one leg changes the other as well.
    drawn
        What is drawn over the sections.

    Examples
    --------
    >>> Corners().leg_base, Corners().leaf("throat").edge
    (8.0, 'throat')
    """

    leg_base: float = 8.0
    leg_upright: float = 8.0
    crown: float = 1.0
    hollow: float = -1.3
    angle: float = 90.0
    mark: str = "8 mm"
    on: Member = "upright"
    equal: bool = True
    drawn: frozenset[Drawn] = frozenset()

    @property
    def joint(self) -> Joint:
        """The members of all four."""
        return _joint(self.angle)

    def leaf(self, edge: Literal["leg", "throat"]) -> Leaf:
        """The leaf by one of its edges; the same object whenever it is asked for."""
        return _leaf(self.mark, edge)

    def value(self, knob: Knob) -> float:
        """The value that a knob stands at, mm or degrees."""
        return float(getattr(self, knob))


@dataclass(frozen=True, slots=True)
class Limit:
    """Why a wanted value was not taken as it is.

    Parameters
    ----------
    code
        ``range``: the knob ends here. ``face``: a rounder or deeper face would enter a member.
    knob
        Which value.
    value
        What it was held at, mm or degrees.
    """

    code: Literal["range", "face"]
    knob: Knob
    value: float


@dataclass(frozen=True, slots=True)
class Change:
    """The state after a change, and what held the change back, if anything did."""

    state: Corners
    limit: Limit | None = None


def _joint(angle: float) -> Joint:
    return Joint(
        angle=angle,
        base_thickness=THICKNESS,
        upright_thickness=THICKNESS,
        base_length=PLATE,
        upright_length=PLATE,
    )


@lru_cache(maxsize=64)
def _leaf(mark: str, edge: Literal["leg", "throat"]) -> Leaf:
    return leaf_of_mark(mark, edge)


@lru_cache(maxsize=64)
def crown_range(leg_base: float, leg_upright: float, angle: float) -> tuple[float, float]:
    """Return the least and greatest crown (mm) whose face stays out of the members.

    Examples
    --------
    >>> least, greatest = crown_range(8.0, 8.0, 90.0)
    >>> round(least, 2), round(greatest, 2)
    (-2.32, 13.64)
    """
    joint = _joint(angle)
    # No face has such a crown, so the fault that names the range is always there.
    (fault,) = Bead(leg_base, leg_upright, crown=1e9).faults(joint)
    return float(fault.params["lowest"]) + _INSIDE, float(fault.params["highest"]) - _INSIDE


def crown_of(state: Corners, pair: Pair) -> float:
    """Return the crown (mm) that a bead truly gets: the wanted one, as far as its joint allows.

    Examples
    --------
    >>> round(crown_of(Corners(hollow=-3.5), "hollow"), 2)
    -2.32
    """
    least, greatest = crown_range(state.leg_base, state.leg_upright, state.angle)
    return min(max(state.value(pair), least), greatest)


def true_value(state: Corners, knob: Knob) -> float:
    """Return what a knob truly stands at, mm or degrees: a crown as far as its joint allows it.

    Examples
    --------
    >>> true_value(Corners(), "angle"), round(true_value(Corners(hollow=-3.5), "hollow"), 2)
    (90.0, -2.32)
    """
    return crown_of(state, knob) if knob in PAIRS else state.value(knob)


def changed(state: Corners, knob: Knob, value: float) -> Change:
    """Return the state with a knob at `value`, held to what can be.

    Examples
    --------
    >>> changed(Corners(), "leg_base", 9.0).state.leg_upright
    9.0
    >>> changed(Corners(), "hollow", -3.0).limit.code, changed(Corners(), "angle", 30.0).state.angle
    ('face', 60.0)
    """
    lowest, highest = RANGES[knob]
    kept = min(max(value, lowest), highest)
    limit = Limit("range", knob, kept) if kept != value else None
    if knob in ("leg_base", "leg_upright") and state.equal:
        after = replace(state, leg_base=kept, leg_upright=kept)
    else:
        after = _with(state, knob, kept)
    if knob in PAIRS:
        true = crown_of(after, knob)
        if true != kept:
            return Change(_with(after, knob, true), Limit("face", knob, true))
        return Change(after, limit)
    return Change(after, limit or _newly_held(state, after))


def _with(state: Corners, knob: Knob, value: float) -> Corners:
    match knob:
        case "leg_base":
            return replace(state, leg_base=value)
        case "leg_upright":
            return replace(state, leg_upright=value)
        case "crown":
            return replace(state, crown=value)
        case "hollow":
            return replace(state, hollow=value)
        case "angle":
            return replace(state, angle=value)


def _newly_held(before: Corners, after: Corners) -> Limit | None:
    """What a change of legs or angle takes from a wanted crown that was whole before."""
    for pair in PAIRS:
        true = crown_of(after, pair)
        if true != after.value(pair) and crown_of(before, pair) == before.value(pair):
            return Limit("face", pair, true)
    return None


def with_equal_legs(state: Corners, *, equal: bool) -> Corners:
    """Return the state with its legs locked to each other, or free; locked, the base's leg rules.

    Examples
    --------
    >>> with_equal_legs(Corners(leg_upright=6.0, equal=False), equal=True).leg_upright
    8.0
    """
    if equal:
        return replace(state, equal=True, leg_upright=state.leg_base)
    return replace(state, equal=False)


def rack_of(state: Corners) -> RackName:
    """Return the rack that the state's leaf hangs on.

    Examples
    --------
    >>> rack_of(Corners(mark="5/16 in"))
    'inch'
    """
    return next(name for name in RACKS if any(leaf.mark == state.mark for leaf in rack(name)))


def with_leaf(state: Corners, mark: str) -> Corners:
    """Return the state with another leaf, by its mark.

    Raises
    ------
    ValueError
        If no rack has such a leaf.
    """
    return replace(state, mark=leaf_of_mark(mark).mark)


def with_leaf_near(state: Corners, size: float) -> Corners:
    """Return the state with the leaf of its rack whose size is nearest to `size` (mm).

    Examples
    --------
    >>> with_leaf_near(Corners(), 9.2).mark
    '10 mm'
    """
    nearest = min(rack(rack_of(state)), key=lambda leaf: abs(leaf.size - size))
    return replace(state, mark=nearest.mark)


def with_rack(state: Corners, name: RackName) -> Corners:
    """Return the state with the nearest leaf of another rack.

    Examples
    --------
    >>> with_rack(Corners(), "inch").mark
    '5/16 in'
    """
    size = state.leaf("leg").size
    nearest = min(rack(name), key=lambda leaf: abs(leaf.size - size))
    return replace(state, mark=nearest.mark)


def leaf_beside(state: Corners, step: int) -> Corners:
    """Return the state with the leaf `step` places along its rack; the last stays the last.

    Examples
    --------
    >>> leaf_beside(Corners(), 1).mark, leaf_beside(Corners(mark="25 mm"), 1).mark
    ('10 mm', '25 mm')
    """
    marks = [leaf.mark for leaf in rack(rack_of(state))]
    at = min(max(marks.index(state.mark) + step, 0), len(marks) - 1)
    return replace(state, mark=marks[at])


def turned_over(state: Corners) -> Corners:
    """Return the state with the leg edge's tip on the other member.

    Examples
    --------
    >>> turned_over(Corners()).on
    'base'
    """
    return replace(state, on=other_member(state.on))


def without_or_with(state: Corners, drawn: Drawn) -> Corners:
    """Return the state with one of the drawings over the sections switched.

    Examples
    --------
    >>> sorted(without_or_with(Corners(), "legs").drawn)
    ['legs']
    """
    return replace(state, drawn=state.drawn ^ {drawn})
