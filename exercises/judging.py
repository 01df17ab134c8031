"""The right call on a coupon, and every check behind it.

How `refer` comes about
-----------------------
A weld is referred when the leaf is the wrong instrument for it: a check on its size can't be
settled by any leaf of any rack, and no check that can be settled has failed already. A leaf
settles a check if its size lies between measure and limit, it seats on the weld (cleaned and
dressed), and what it shows there is true. So referred are

- an 80 degree joint: whatever would answer strikes the leaning upright;
- a hollow weld at 100 degrees, where no throat edge lies flush, unless the leg edge, which still
  seats there, shows a leg short;
- a leg so long that it carries the leaf that would answer for the other leg;
- a dip beside the bisector, or a crown that overhangs its toe, behind which a weld that is short
  shows as large enough;
- a size that lies between the same two leaves of every rack as its limit does.

A size too near its limit to be told is not referred for that: it is in doubt, and then either
verdict, or refer, is right.

Spatter never counts: it is cleaned off and the leaf seated again.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from exercises.coupon import DISPOSITIONS, Coupon, Disposition
from exercises.doubt import doubt
from exercises.gauging import (
    bisector_size,
    dressed,
    leaf_of_size,
    leaves_between,
    leg_leaf_size,
    right_leaves,
    shows,
)
from exercises.rules import RULE_SETS, Comparison, RuleSet, SizeRow
from geometry.joint import MEMBERS, Member
from geometry.leaf import RACKS, Edge, RackName, rack
from geometry.measures import FaceShape, Measures, measure
from geometry.reading import State
from geometry.section import Section

__all__ = [
    "Check",
    "Judgement",
    "RightHandling",
    "called_size",
    "judge",
    "limit_for",
    "limit_leaves",
    "preferred_rack",
    "right_handling",
    "size_row",
]

_ROUNDING: Final = 1e-9
"""mm: a size that is its limit but for rounding reaches it."""

_SAME: Final = 1e-6
"""mm: sizes closer than this are the same size, stated in different units."""


@dataclass(frozen=True, slots=True)
class Check:
    """One measure against its limit.

    Parameters
    ----------
    key
        Key of the measure, or of the rule set's limit.
    measured, limit
        mm, as the key is measured (a throat as a throat).
    margin
        How far on the right side of its limit it is, mm of size; below zero it fails.
    doubt
        U of the leaf's answer, mm of size; 0 where no leaf is asked.
    passed
        Whether the measure meets its limit.
    decided_by_leaf
        Whether a leaf can show it, to within the doubt.
    disposition
        What is needed where it fails.
    """

    key: str
    measured: float
    limit: float
    margin: float
    doubt: float
    passed: bool
    decided_by_leaf: bool
    disposition: Disposition

    @property
    def near(self) -> bool:
        """Whether the margin is within the doubt."""
        return self.doubt > 0.0 and abs(self.margin) <= self.doubt


@dataclass(frozen=True, slots=True)
class Judgement:
    """The right call.

    Parameters
    ----------
    disposition
        What is right by the true measures.
    checks
        Every check that was made; sizes first.
    in_doubt
        Whether checks near their limits could change the verdict.
    acceptable
        The dispositions that are marked right.
    undecided
        Keys of size checks for which no leaf seats, or none lies between measure and limit, where
        that is why the weld is referred; else empty.
    face
        The face's true shape.
    measures
        The true measures.
    """

    disposition: Disposition
    checks: tuple[Check, ...]
    in_doubt: bool
    acceptable: frozenset[Disposition]
    undecided: tuple[str, ...]
    face: FaceShape
    measures: Measures

    @property
    def rejected(self) -> bool:
        """Whether a check fails by more than its doubt."""
        return any(not check.passed and not check.near for check in self.checks)


@dataclass(frozen=True, slots=True)
class RightHandling:
    """How a leaf is held to find the right call.

    Parameters
    ----------
    leaves
        Marks of the limit's own leaf or, where its rack has none, of the two that bracket it; one
        entry for each edge that is held.
    edges
        The edges that are right for the face.
    seats
        Pairs of edge and member: what has to be gauged. The throat edge lies the same on either.
    """

    leaves: Mapping[Edge, tuple[str, ...]]
    edges: tuple[Edge, ...]
    seats: tuple[tuple[Edge, Member], ...]


def judge(coupon: Coupon) -> Judgement:
    """Return the right call on `coupon`.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))
    >>> call = judge(Coupon("hb-04", section, Callout(8.0, "leg", "8 mm")))
    >>> call.disposition, call.face, [(c.key, c.passed) for c in call.checks[:2]]
    ('add weld metal', 'convex', [('leg_base', True), ('leg_upright', False)])
    """
    rules = RULE_SETS[coupon.rules]
    measures = measure(coupon.section)
    row = rules.row(coupon.callout.measure, measures.face)
    sizes = [_size_check(coupon, measures, comparison) for comparison in row.compared]
    checks = (*sizes, *_limit_checks(coupon.section, rules))
    undecided = _undecided(sizes)
    verdicts = _verdicts(checks, referred=bool(undecided))
    return Judgement(
        disposition=_verdict(checks, referred=bool(undecided)),
        checks=checks,
        in_doubt=len(verdicts) > 1,
        acceptable=verdicts | {"refer"} if len(verdicts) > 1 else verdicts,
        undecided=undecided,
        face=measures.face,
        measures=measures,
    )


def called_size(coupon: Coupon) -> float:
    """Return the leg size (mm, along the members) that the rules ask of `coupon`.

    A throat callout asks for the leg of its equal-legged triangle; a root opening is added, less
    what the rules allow.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(root_opening=2.0), Bead(8.0, 8.0))
    >>> called_size(Coupon("a", section, Callout(6.0, "leg", "6 mm")))
    8.0
    """
    rules, callout = RULE_SETS[coupon.rules], coupon.callout
    size = callout.size / _throat_over_leg(coupon.section) ** (callout.measure == "throat")
    opening = rules.added_for_opening(coupon.section.joint.root_opening)
    return size - rules.allowed_under + opening


def limit_for(coupon: Coupon, edge: Edge) -> float:
    """Return the leaf size (mm) at which `edge` shows whether the size called for is reached."""
    size = called_size(coupon)
    return leg_leaf_size(size, coupon.section.joint) if edge == "leg" else size


def right_handling(coupon: Coupon) -> RightHandling:
    """Return how a leaf is held on `coupon`, whether or not any leaf can settle it.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(), Bead(8.0, 8.0, crown=-1.0))
    >>> right_handling(Coupon("a", section, Callout(4.0, "throat", "4 mm")))
    RightHandling(leaves={'throat': ('a 4 mm',)}, edges=('throat',), seats=(('throat', 'base'),))
    """
    row = size_row(coupon)
    seats: list[tuple[Edge, Member]] = [("leg", member) for member in row.legs]
    if row.throat:
        seats.append(("throat", "base"))
    held = dict.fromkeys(edge for edge, _ in seats)
    name = preferred_rack(coupon)
    leaves = {edge: limit_leaves(coupon, edge, name) for edge in held}
    return RightHandling(leaves, row.edges, tuple(seats))


def limit_leaves(coupon: Coupon, edge: Edge, name: RackName | None = None) -> tuple[str, ...]:
    """Return the marks of a rack's leaves that show whether the limit is reached.

    That is the limit's own leaf or, where the rack has none, the two that bracket it. A leaf of
    the very size called for is the limit's own as long as the two are within the doubt: in a
    skewed joint they differ. `name` is the rack; without it, the one that suits the callout.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(angle=100.0), Bead(9.0, 8.8))
    >>> limit_leaves(Coupon("a", section, Callout(8.0, "leg", "8 mm")), "leg")
    ('8 mm',)
    >>> limit_leaves(Coupon("a", section, Callout(10.0, "leg", "10 mm")), "leg")
    ('8 mm', '10 mm')
    """
    called, limit = called_size(coupon), limit_for(coupon, edge)
    within = abs(called - limit) <= doubt(edge, coupon.eye_limit)
    rack_name = name or preferred_rack(coupon)
    own = [leaf for leaf in rack(rack_name) if within and abs(leaf.size - called) <= _SAME]
    return tuple(leaf.mark for leaf in own or right_leaves(limit, rack_name))


def size_row(coupon: Coupon) -> SizeRow:
    """Return the row of the rule set that judges the size of `coupon`."""
    return RULE_SETS[coupon.rules].row(coupon.callout.measure, measure(coupon.section).face)


def preferred_rack(coupon: Coupon) -> RackName:
    """Return the rack that has the size called for; else the one in the callout's own unit.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> preferred_rack(Coupon("a", section, Callout(7.9375, "leg", "5/16 in")))
    'inch'
    """
    size = called_size(coupon)
    in_inches = "mm" not in coupon.callout.text
    throat = coupon.callout.measure == "throat"
    usual: RackName = "inch" if in_inches else "throat" if throat else "metric"
    for name in (usual, *RACKS):
        if any(abs(leaf.size - size) <= _SAME for leaf in rack(name)):
            return name
    return usual


def _throat_over_leg(section: Section) -> float:
    return math.cos(section.joint.radians / 2.0)


def _size_check(coupon: Coupon, measures: Measures, comparison: Comparison) -> Check:
    per_size = _throat_over_leg(coupon.section) if comparison.key == "effective_throat" else 1.0
    measured = float(getattr(measures, comparison.key))
    called = called_size(coupon)
    margin = measured / per_size - called
    check = Check(
        key=comparison.key,
        measured=measured,
        limit=called * per_size,
        margin=margin,
        doubt=doubt(comparison.edge, coupon.eye_limit),
        passed=margin >= -_ROUNDING,
        decided_by_leaf=False,
        disposition="add weld metal",
    )
    return replace(check, decided_by_leaf=_decides(coupon, comparison, check))


def _decides(coupon: Coupon, comparison: Comparison, check: Check) -> bool:
    """Whether some leaf seats and tells the measure's side of its limit."""
    section, limit = dressed(coupon.section), limit_for(coupon, comparison.edge)
    if comparison.edge == "throat":
        # The spur reads on the bisector, and there a lopsided hollow can look larger than it is.
        shown = bisector_size(section)
        if (shown >= limit) != check.passed and not check.near:
            return False
        return _answers(coupon, section, comparison.edge, "base", (shown, limit))
    told = {
        member: _answers(coupon, section, "leg", member, (_leg_shown(section, member), limit))
        for member in comparison.legs
    }
    if check.passed:
        return all(told.values())
    # One leg shown short is enough.
    return any(told[member] and _leg_shown(section, member) < limit for member in told)


def _leg_shown(section: Section, member: Member) -> float:
    """The size of the leaf that just meets the leg on `member`, mm."""
    return leg_leaf_size(section.bead.leg(member), section.joint)


def _answers(
    coupon: Coupon, section: Section, edge: Edge, on: Member, sizes: tuple[float, float]
) -> bool:
    """Whether some leaf shows that the first size, the weld's, reaches or misses the second.

    Where they are closer than the doubt, a leaf of just the limit that seats shows that they are.
    A crown that overhangs its toe can hold a leaf off that the leg would not: such a leaf tells
    nothing true, and is no answer.
    """
    found, limit = sizes
    states: set[State] = {"touch", "held off"} if found >= limit else {"daylight"}
    leaves = [leaf.with_edge(edge) for leaf in leaves_between(found, limit)]
    if abs(found - limit) <= doubt(edge, coupon.eye_limit):
        leaves.append(leaf_of_size(limit, edge))
        states = {"touch", "held off", "daylight"}
    return any(shows(section, leaf, on, coupon.eye_limit) in states for leaf in leaves)


def _undecided(sizes: Iterable[Check]) -> tuple[str, ...]:
    """Keys of size checks that no leaf settles, unless a settled one has failed already."""
    listed = list(sizes)
    if any(check.decided_by_leaf and not check.passed and not check.near for check in listed):
        return ()
    return tuple(check.key for check in listed if not check.decided_by_leaf)


def _limit_checks(section: Section, rules: RuleSet) -> list[Check]:
    measured = _imperfections(section)
    return [
        Check(
            key=limit.key,
            measured=measured[limit.key],
            limit=limit.at_most,
            margin=limit.at_most - measured[limit.key],
            doubt=0.0,
            passed=measured[limit.key] <= limit.at_most + _ROUNDING,
            decided_by_leaf=False,
            disposition=limit.disposition,
        )
        for limit in rules.limits
    ]


def _imperfections(section: Section) -> dict[str, float]:
    """What rules may limit beside the size, by key, mm."""
    found = {"root_opening": section.joint.root_opening}
    for member in MEMBERS:
        groove, lip = section.bead.undercut(member), section.bead.overlap(member)
        found[f"undercut_{member}"] = groove.depth if groove else 0.0
        found[f"overlap_{member}"] = lip.length if lip else 0.0
    return found


def _verdict(checks: Iterable[Check], *, referred: bool) -> Disposition:
    needed = {check.disposition for check in checks if not check.passed}
    if referred:
        needed.add("refer")
    return next((wanted for wanted in DISPOSITIONS if wanted in needed), "accept")


def _verdicts(checks: tuple[Check, ...], *, referred: bool) -> frozenset[Disposition]:
    """Every verdict that the checks near their limits could lead to."""
    near = [index for index, check in enumerate(checks) if check.near]
    verdicts: set[Disposition] = set()
    for passes in itertools.product((True, False), repeat=len(near)):
        could = list(checks)
        for index, passed in zip(near, passes, strict=True):
            could[index] = replace(checks[index], passed=passed)
        verdicts.add(_verdict(could, referred=referred))
    return frozenset(verdicts)
