"""What the rules ask of a size, and of what figures that is made."""

from __future__ import annotations

import math
from dataclasses import dataclass

from exercises.coupon import Coupon
from exercises.gauging import leg_leaf_size
from exercises.rules.formula import Fact, Given, Quantity
from exercises.rules.limits import Undersize
from geometry.joint import MEMBERS, Member
from geometry.leaf import Edge
from geometry.measures import Measures

__all__ = [
    "Required",
    "asked_throat",
    "called_size",
    "given",
    "limit_for",
    "required",
    "thickness",
    "throat_of",
    "throat_over_leg",
]


@dataclass(frozen=True, slots=True)
class Required:
    """The leg size that a coupon must reach, and what it is made of. All mm of leg size.

    Parameters
    ----------
    called
        By the drawing; a throat as the leg of its equal-legged triangle.
    minimum
        What a smaller callout is raised to; 0 where the rules raise none.
    opening
        What a root opening adds.
    allowed
        By how much the size may be short, here.
    withheld
        By how much it could be short, were the extent within the share of the length.

    Examples
    --------
    >>> Required(6.0, minimum=8.0, opening=2.0, allowed=3.0).size
    7.0
    """

    called: float
    minimum: float = 0.0
    opening: float = 0.0
    allowed: float = 0.0
    withheld: float = 0.0

    @property
    def nominal(self) -> float:
        """The size called for, raised to the least size, mm."""
        return max(self.called, self.minimum)

    @property
    def size(self) -> float:
        """The size that must be reached, mm."""
        return self.nominal + self.opening - self.allowed


def thickness(coupon: Coupon, member: Member) -> float:
    """Return the thickness of a member, mm; where the weld runs along its edge, of that edge."""
    joint = coupon.section.joint
    edge = coupon.conditions.edge == member
    return joint.length(member) if edge else joint.thickness(member)


def given(coupon: Coupon, measures: Measures | None = None, member: Member | None = None) -> Given:
    """Return what the amounts of a rule set are worked out from.

    Parameters
    ----------
    coupon
        What is judged.
    measures
        Its measures; without them no amount may go by the face's width.
    member
        Where the measure lies; None for what lies on both.
    """
    conditions, joint = coupon.conditions, coupon.section.joint
    thicknesses = [thickness(coupon, each) for each in MEMBERS]
    thinner, thicker = min(thicknesses), max(thicknesses)
    legs = [coupon.callout.leg(each, joint) for each in MEMBERS]
    quantities: dict[Quantity, float] = {
        "size": coupon.callout.leg(member, joint) if member else min(legs),
        "throat": coupon.callout.throat(joint),
        "thickness": thickness(coupon, member) if member else thinner,
        "thinner": thinner,
        "thicker": thicker,
        "deciding": thinner if conditions.low_hydrogen else thicker,
        "edge": joint.length(conditions.edge) if conditions.edge else thinner,
    }
    if measures is not None:
        quantities["face_width"] = measures.face_width
    stated: dict[Fact, bool] = {
        "transverse_tension": conditions.transverse_tension,
        "girder_end": conditions.girder_end,
    }
    return Given(
        coupon.callout.unit, quantities, frozenset(fact for fact in stated if stated[fact])
    )


def required(coupon: Coupon, member: Member | None = None) -> Required:
    """Return what the rules ask of the leg on `member`; without one, of the smaller leg.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(root_opening=2.5), Bead(8.0, 8.0))
    >>> drawn = Callout(8.0, "leg", "8 mm")
    >>> required(Coupon("a", section, drawn, rules="aws-d1.1-static", extent=0.1)).size
    7.5
    """
    rules, joint, callout = coupon.rule_set, coupon.section.joint, coupon.callout
    known = given(coupon, member=member)
    called = known.quantities["size"]
    minimum = 0.0
    if rules.minimum_size is not None:
        minimum = rules.minimum_size.amount.value(known)
        if rules.minimum_size.measured_as == "throat":
            minimum /= throat_over_leg(coupon)
    could = 0.0
    if rules.undersize is not None:
        could = _allowed_under(rules.undersize, known, max(called, minimum))
    within = rules.undersize.within if rules.undersize else None
    here = within is None or within.admits(
        coupon.extent, coupon.conditions.weld_length, callout.unit
    )
    return Required(
        called,
        minimum,
        rules.added_for_opening(joint.root_opening, callout.unit),
        could if here else 0.0,
        0.0 if here else could,
    )


def _allowed_under(undersize: Undersize, known: Given, nominal: float) -> float:
    """By how much a leg of `nominal` mm may be short, mm of leg."""
    throat = known.quantities["throat"] * nominal / known.quantities["size"]
    raised = Given(known.unit, {**known.quantities, "size": nominal, "throat": throat}, known.facts)
    amount = undersize.amount.value(raised)
    # Legs that both shrink by the same share take the throat down by that share.
    return amount if undersize.measured_as == "leg" else nominal * amount / throat


def asked_throat(coupon: Coupon) -> float:
    """Return the throat that a flat weld has which is just as asked, nothing allowed under, mm.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(root_opening=2.0), Bead(9.0, 9.0))
    >>> round(asked_throat(Coupon("a", section, Callout(6.0, "leg", "6 mm"))), 3)
    5.657
    """
    base, upright = (required(coupon, member) for member in MEMBERS)
    return throat_of(coupon, base.nominal + base.opening, upright.nominal + upright.opening)


def throat_of(coupon: Coupon, base: float, upright: float) -> float:
    """Return the height of the triangle with these legs in the coupon's joint, mm."""
    if base == upright:
        return base * throat_over_leg(coupon)
    angle = coupon.section.joint.radians
    chord = math.sqrt(base**2 + upright**2 - 2.0 * base * upright * math.cos(angle))
    return base * upright * math.sin(angle) / chord


def throat_over_leg(coupon: Coupon) -> float:
    """Return the throat of a flat weld of equal legs over its leg."""
    return math.cos(coupon.section.joint.radians / 2.0)


def called_size(coupon: Coupon, member: Member | None = None) -> float:
    """Return the leg size (mm, along the members) that the rules ask of `coupon`.

    A throat callout asks for the leg of its equal-legged triangle; a root opening is added, less
    what the rules allow. `member` tells the legs apart where they differ; without it the smaller.

    Examples
    --------
    >>> from exercises.coupon import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(root_opening=2.0), Bead(8.0, 8.0))
    >>> called_size(Coupon("a", section, Callout(6.0, "leg", "6 mm")))
    8.0
    """
    return required(coupon, member).size


def limit_for(coupon: Coupon, edge: Edge, member: Member | None = None) -> float:
    """Return the leaf size (mm) at which `edge` shows whether the size called for is reached.

    On two different legs a flat face of just those legs stands on the bisector as far out as that
    of one size between them.
    """
    if edge == "leg":
        return leg_leaf_size(called_size(coupon, member), coupon.section.joint)
    base, upright = (called_size(coupon, each) for each in MEMBERS)
    return base if base == upright else 2.0 * base * upright / (base + upright)
