"""What is truly wrong with a leaf that somebody has placed, worked out from where it lies.

Someone who stands by their placement is taken at their word: they go by this leaf, held by this
edge to this leg, and have gauged no more legs than they say. Several things may be wrong at once: a
drop of spatter under the long edge tilts the leaf as well.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from exercises.coupon import Coupon
from exercises.faces import right_faces
from exercises.judging import judge, limit_leaves, preferred_rack
from exercises.placed import PLACEMENT_FAULTS, Placed, PlacementFault
from exercises.rules import RULE_SETS, SizeRow
from geometry.contact import touches
from geometry.faults import Fault
from geometry.joint import MEMBERS, Member
from geometry.leaf import RACKS, Leaf, leaf_of_mark
from geometry.measures import measure
from geometry.penetration import penetration
from geometry.pose import wrap_degrees
from geometry.reading import Reading, read
from geometry.seat import home_pose
from geometry.tolerances import LEGAL_DEPTH

__all__ = ["Finding", "findings", "placed_leaf", "placement_faults", "stated_faults", "true_faults"]

_TOUCHING: Final = 0.05
"""mm: a leaf that is nowhere nearer to steel than this touches nothing."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that is wrong with how a leaf was placed.

    Parameters
    ----------
    fault
        Which.
    params
        What its words speak of: marks, members, degrees, mm.
    """

    fault: PlacementFault
    params: Mapping[str, float | str] = field(default_factory=dict)


def placed_leaf(coupon: Coupon) -> Leaf:
    """Return the leaf that lies on a coupon, worn as its leaves are.

    Raises
    ------
    ValueError
        If no leaf lies there.
    """
    placed = _placed(coupon)
    return leaf_of_mark(placed.leaf, placed.edge, coupon.leaf_wear)


def _placed(coupon: Coupon) -> Placed:
    if coupon.placed is None:
        raise ValueError(f"no leaf is placed on coupon {coupon.id!r}")
    return coupon.placed


def findings(coupon: Coupon) -> tuple[Finding, ...]:
    """Return everything that is wrong with the placed leaf, in the order of the choices.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.pose import Pose
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))
    >>> placed = Placed("7 mm", "leg", "upright", Pose(0.0, 0.0), ("upright",))
    >>> coupon = Coupon("a", section, Callout(8.0, "leg", "8 mm"),
    ...                 task="find the fault", placed=placed)
    >>> [found.fault for found in findings(coupon)]
    ['wrong leaf', 'one leg only']
    """
    placed, leaf = _placed(coupon), placed_leaf(coupon)
    shown = read(coupon.section, leaf, placed.pose, coupon.eye_limit)
    rows = _rows(coupon)
    found = (
        _of_edge(coupon, placed, rows),
        _of_leaf(coupon, placed),
        _of_tilt(coupon, placed, leaf, shown),
        _of_spatter(shown),
        _of_legs(placed, rows),
        _of_member(placed),
    )
    return tuple(each for each in found if each is not None)


def placement_faults(coupon: Coupon) -> frozenset[PlacementFault]:
    """Return every answer that is right of the placed leaf: ``nothing`` alone where all is well.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.pose import Pose
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))
    >>> placed = Placed("8 mm", "leg", "upright", Pose(0.0, 0.0), ("base", "upright"))
    >>> set(placement_faults(Coupon("a", section, Callout(8.0, "leg", "8 mm"),
    ...                             task="find the fault", placed=placed)))
    {'nothing'}
    """
    return frozenset(found.fault for found in findings(coupon)) or frozenset({"nothing"})


def true_faults(coupon: Coupon) -> tuple[PlacementFault, ...]:
    """Return the right answers in the order of the choices."""
    true = placement_faults(coupon)
    return tuple(fault for fault in PLACEMENT_FAULTS if fault in true)


def _rows(coupon: Coupon) -> list[SizeRow]:
    """The row of the sizes for each name that is right for the face."""
    callout, rules = coupon.callout, coupon.rule_set
    faces = right_faces(measure(coupon.section))
    return [rules.row(callout.measure, face, unequal=callout.unequal) for face in faces]


def _of_edge(coupon: Coupon, placed: Placed, rows: list[SizeRow]) -> Finding | None:
    """The edge, as grades count it: on a hollow face it is the throat that is gone by."""
    right = {edge for row in rows for edge in (("throat",) if row.throat else row.edges)}
    if placed.edge in right:
        return None
    face = measure(coupon.section).face
    return Finding("wrong edge", {"edge": placed.edge, "face": face})


def _of_leaf(coupon: Coupon, placed: Placed) -> Finding | None:
    """The leaf: any rack's leaf of the limit, or of the two about it, will do."""
    # Told for one leg and held to the other, a leaf for either is no second mistake.
    members: set[Member | None] = {None}
    if placed.edge == "leg" and coupon.callout.unequal:
        members = {placed.on, placed.held_on}
    right = {
        mark
        for name in RACKS
        for member in members
        for mark in limit_leaves(coupon, placed.edge, name, member)
    }
    if placed.leaf in right:
        return None
    name = preferred_rack(coupon)
    at = placed.on if placed.edge == "leg" and coupon.callout.unequal else None
    needed = ", ".join(limit_leaves(coupon, placed.edge, name, at))
    return Finding("wrong leaf", {"leaf": placed.leaf, "leaves": needed})


def _of_tilt(coupon: Coupon, placed: Placed, leaf: Leaf, shown: Reading) -> Finding | None:
    """The angle: over its long edge it opens more than an eye can miss."""
    home = home_pose(coupon.section.joint, leaf, placed.held_on)
    off = wrap_degrees(placed.pose.angle - home.angle)
    near, far = leaf.long_edge
    opening = math.dist(near, far) * abs(math.sin(math.radians(off)))
    if shown.state != "not seated" or opening <= coupon.eye_limit:
        return None
    return Finding("tilted", {"degrees": abs(off), "opening": opening})


def _of_spatter(shown: Reading) -> Finding | None:
    under = [piece for piece in shown.in_the_way if piece.startswith("spatter")]
    return Finding("on spatter", {"pieces": ", ".join(under)}) if under else None


def _of_legs(placed: Placed, rows: list[SizeRow]) -> Finding | None:
    missing = [
        member
        for member in MEMBERS
        if member not in placed.gauged and all(member in row.legs for row in rows)
    ]
    return Finding("one leg only", {"missing": ", ".join(missing)}) if missing else None


def _of_member(placed: Placed) -> Finding | None:
    if placed.edge == "throat" or placed.on == placed.held_on:
        return None
    return Finding("wrong member", {"on": placed.on, "held_on": placed.held_on})


# --- what a file may not state ------------------------------------------------------------------


def stated_faults(coupon: Coupon) -> list[Fault]:
    """Return what keeps a placed leaf from being one that can be looked at, placed below a coupon.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> coupon = Coupon("a", section, Callout(8.0, "leg", "8 mm"), task="find the fault")
    >>> [(fault.at, fault.code) for fault in stated_faults(coupon)]
    [('', 'placed-missing')]
    """
    if coupon.task != "find the fault":
        return []
    placed = coupon.placed
    if placed is None:
        text, right = "no leaf is placed that could be judged", 'a key "placed"'
        return [Fault("", "placed-missing", text, right)]
    if placed.edge == "throat" and placed.pose.turned:
        text, right = "the throat edge is turned over", "false: it lies the same on either member"
        return [Fault("/placed/pose/turned", "placed-turned", text, right)]
    known = coupon.shop_rules is not None or coupon.rules in RULE_SETS
    return _lying_faults(coupon, placed) or (_told_faults(coupon) if known else [])


def _lying_faults(coupon: Coupon, placed: Placed) -> list[Fault]:
    leaf, outline = placed_leaf(coupon), coupon.section.outline
    depth = penetration(outline, leaf.body, placed.pose)
    if depth > LEGAL_DEPTH:
        text = f"the leaf stands {depth:.2f} mm inside steel"
        right = "a pose that enters no steel"
        return [Fault("/placed/pose", "placed-in-steel", text, right, {"depth": round(depth, 2)})]
    if not touches(outline, leaf.body, placed.pose, _TOUCHING):
        text = "the leaf touches nothing"
        return [Fault("/placed/pose", "placed-aloft", text, "a pose in which it touches steel")]
    return []


def _told_faults(coupon: Coupon) -> list[Fault]:
    """Whether what is seen of the leaf can be told by one of the answers at all."""
    if judge(coupon).undecided:
        text, right = "no leaf can settle the size of this weld", "a weld that a leaf can settle"
        return [Fault("/placed", "placed-unsettled", text, right)]
    placed, leaf = _placed(coupon), placed_leaf(coupon)
    shown = read(coupon.section, leaf, placed.pose, coupon.eye_limit)
    explained = {"tilted", "on spatter", "wrong leaf", "wrong edge"}
    if shown.state == "not seated" and not explained & placement_faults(coupon):
        text = "the leaf isn't home, and no answer says so"
        right = "a leaf that is home, tilted, or on spatter"
        return [Fault("/placed/pose", "placed-adrift", text, right)]
    return []
