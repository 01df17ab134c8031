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
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from exercises.checks import Check, limit_checks, plain_size_checks, size_checks
from exercises.coupon import DISPOSITIONS, Coupon, Disposition
from exercises.doubt import doubt
from exercises.gauging import right_leaves
from exercises.required import called_size, limit_for
from exercises.rules import SizeRow
from geometry.joint import Member
from geometry.leaf import RACKS, Edge, RackName, rack
from geometry.measures import FaceShape, Measures, measure

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
    "sizes_of",
]

_SAME: Final = 1e-6
"""mm: sizes closer than this are the same size, stated in different units."""


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
    at
        The marks for each seat: where two legs are called for, each has its own.
    """

    leaves: Mapping[Edge, tuple[str, ...]]
    edges: tuple[Edge, ...]
    seats: tuple[tuple[Edge, Member], ...]
    at: Mapping[tuple[Edge, Member], tuple[str, ...]]


def judge(coupon: Coupon) -> Judgement:
    """Return the right call on `coupon`.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))
    >>> call = judge(Coupon("hb-04", section, Callout(8.0, "leg", "8 mm")))
    >>> call.disposition, call.face, [(c.key, c.passed) for c in call.checks[:2]]
    ('add weld metal', 'convex', [('leg_base', True), ('leg_upright', False)])
    """
    measures = measure(coupon.section)
    row = _row(coupon, measures.face)
    sizes = size_checks(coupon, measures, row.compared)
    checks = (*sizes, *limit_checks(coupon, measures))
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


def sizes_of(coupon: Coupon) -> tuple[Check, ...]:
    """Return the checks of the sizes of `coupon` as `judge` does, but for what leaves decide.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 6.7))
    >>> found = sizes_of(Coupon("hb-04", section, Callout(8.0, "leg", "8 mm")))
    >>> [(check.key, round(check.margin, 2)) for check in found]
    [('leg_base', 0.0), ('leg_upright', -1.3)]
    """
    measures = measure(coupon.section)
    return plain_size_checks(coupon, measures, _row(coupon, measures.face).compared)


def right_handling(coupon: Coupon) -> RightHandling:
    """Return how a leaf is held on `coupon`, whether or not any leaf can settle it.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 8.0, crown=-1.0))
    >>> right = right_handling(Coupon("a", section, Callout(4.0, "throat", "4 mm")))
    >>> right.leaves, right.edges, right.seats
    ({'throat': ('a 4 mm',)}, ('throat',), (('throat', 'base'),))
    """
    row = size_row(coupon)
    name = preferred_rack(coupon)
    at = {
        (edge, member): limit_leaves(coupon, edge, name, member if edge == "leg" else None)
        for edge, member in row.seats
    }
    leaves: dict[Edge, tuple[str, ...]] = {}
    for (edge, _), marks in at.items():
        leaves[edge] = tuple(dict.fromkeys((*leaves.get(edge, ()), *marks)))
    return RightHandling(leaves, row.edges, row.seats, at)


def limit_leaves(
    coupon: Coupon, edge: Edge, name: RackName | None = None, member: Member | None = None
) -> tuple[str, ...]:
    """Return the marks of a rack's leaves that show whether the limit is reached.

    That is the limit's own leaf or, where the rack has none, the two that bracket it. A leaf of
    the very size called for is the limit's own as long as the two are within the doubt: in a
    skewed joint they differ. `name` is the rack; without it, the one that suits the callout.
    `member` tells two legs apart that are called for.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(angle=100.0), Bead(9.0, 8.8))
    >>> limit_leaves(Coupon("a", section, Callout(8.0, "leg", "8 mm")), "leg")
    ('8 mm',)
    >>> limit_leaves(Coupon("a", section, Callout(10.0, "leg", "10 mm")), "leg")
    ('8 mm', '10 mm')
    """
    limit = limit_for(coupon, edge, member)
    called = called_size(coupon, member) if edge == "leg" else limit
    within = abs(called - limit) <= doubt(edge, coupon.eye_limit)
    rack_name = name or preferred_rack(coupon)
    own = [leaf for leaf in rack(rack_name) if within and abs(leaf.size - called) <= _SAME]
    return tuple(leaf.mark for leaf in own or right_leaves(limit, rack_name))


def size_row(coupon: Coupon) -> SizeRow:
    """Return the row of the rule set that judges the size of `coupon`."""
    return _row(coupon, measure(coupon.section).face)


def _row(coupon: Coupon, face: FaceShape) -> SizeRow:
    callout = coupon.callout
    return coupon.rule_set.row(callout.measure, face, unequal=callout.unequal)


def preferred_rack(coupon: Coupon) -> RackName:
    """Return the rack that has the size called for; else the one in the callout's own unit.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> preferred_rack(Coupon("a", section, Callout(7.9375, "leg", "5/16 in")))
    'inch'
    """
    size = called_size(coupon)
    in_inches = coupon.callout.unit == "in"
    throat = coupon.callout.measure == "throat"
    usual: RackName = "inch" if in_inches else "throat" if throat else "metric"
    for name in (usual, *RACKS):
        if any(abs(leaf.size - size) <= _SAME for leaf in rack(name)):
            return name
    return usual


def _undecided(sizes: Iterable[Check]) -> tuple[str, ...]:
    """Keys of size checks that no leaf settles, unless a settled one has failed already."""
    listed = list(sizes)
    if any(check.decided_by_leaf and not check.passed and not check.near for check in listed):
        return ()
    return tuple(check.key for check in listed if not check.decided_by_leaf)


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
