"""Every check of a weld: a measure, its limit, by how much it meets it, and whose limit it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

from exercises.coupon import Coupon, Disposition
from exercises.doubt import doubt, propagated
from exercises.gauging import bisector_size, dressed
from exercises.required import (
    Required,
    asked_throat,
    called_size,
    given,
    limit_for,
    required,
    throat_of,
    throat_over_leg,
)
from exercises.rules import Comparison, Limit, Source
from exercises.rules.limits import PER_MEMBER
from exercises.settling import answers, leg_bounds, leg_shown
from geometry.joint import MEMBERS, Member
from geometry.leaf import Edge
from geometry.measures import Measures

__all__ = ["Check", "limit_checks", "plain_size_checks", "size_checks"]

_ROUNDING: Final = 1e-9
"""mm, degrees: a measure that is its limit but for rounding meets it."""


@dataclass(frozen=True, slots=True)
class Check:
    """One measure against its limit.

    Parameters
    ----------
    key
        Key of the measure, or of the rule set's limit.
    measured, limit
        mm or degrees, as the key is measured (a throat as a throat).
    margin
        How far on the right side of its limit it is: mm of size where a leaf is asked, else in the
        unit of the measure; below zero it fails.
    doubt
        U of what leaves answer, mm of size; 0 where no leaf is asked.
    passed
        Whether the measure meets its limit.
    decided_by_leaf
        Whether a leaf can show it, to within the doubt.
    disposition
        What is needed where it fails.
    source
        Whose limit it is, and how surely it is known.
    bound, unit
        Which side of the limit is right, and what measure and limit are in.
    required
        Of what figures the size that must be reached is made; None for other limits.
    short
        Whether the limit is the one for a share of the weld's length.
    """

    key: str
    measured: float
    limit: float
    margin: float
    doubt: float
    passed: bool
    decided_by_leaf: bool
    disposition: Disposition
    source: Source
    bound: Literal["at_least", "at_most"] = "at_most"
    unit: Literal["mm", "degrees"] = "mm"
    required: Required | None = None
    short: bool = False

    @property
    def near(self) -> bool:
        """Whether the margin is within the doubt."""
        return self.doubt > 0.0 and abs(self.margin) <= self.doubt


# --- sizes --------------------------------------------------------------------------------------


def size_checks(
    coupon: Coupon, measures: Measures, compared: Sequence[Comparison]
) -> tuple[Check, ...]:
    """Return the checks of a row's comparisons, in its order."""
    checks = plain_size_checks(coupon, measures, compared)
    return tuple(
        replace(check, decided_by_leaf=_settled(coupon, comparison, check))
        for check, comparison in zip(checks, compared, strict=True)
    )


def plain_size_checks(
    coupon: Coupon, measures: Measures, compared: Sequence[Comparison]
) -> tuple[Check, ...]:
    """Return the checks of a row's comparisons, none of them said to be decided by a leaf.

    What a leaf decides takes most of the time, and where a size lies doesn't hang on it.
    """
    return tuple(_size_check(coupon, measures, comparison) for comparison in compared)


def _size_check(coupon: Coupon, measures: Measures, comparison: Comparison) -> Check:
    measured = float(getattr(measures, comparison.key))
    member = comparison.legs[0] if len(comparison.legs) == 1 else None
    asked = required(coupon, member)
    limit, per_size = _size_limit(coupon, comparison.key, asked.size)
    margin = (measured - limit) / per_size
    return Check(
        key=comparison.key,
        measured=measured,
        limit=limit,
        margin=margin,
        doubt=_size_doubt(coupon, measures, comparison),
        passed=margin >= -_ROUNDING,
        decided_by_leaf=False,
        disposition="add weld metal",
        source=_size_source(coupon, asked),
        bound="at_least",
        required=asked,
        short=asked.allowed > 0.0 and _in_part(coupon),
    )


def _in_part(coupon: Coupon) -> bool:
    """Whether what is allowed under a size is for a share of the length only."""
    undersize = coupon.rule_set.undersize
    return undersize is not None and undersize.within is not None


def _size_source(coupon: Coupon, asked: Required) -> Source:
    """Whose figure decides: the one that raised the size, else the one that allows less, else."""
    rules = coupon.rule_set
    if rules.minimum_size is not None and asked.minimum > asked.called + _ROUNDING:
        return rules.minimum_size.source
    if rules.undersize is not None:
        return rules.undersize.source
    return rules.source


def _size_limit(coupon: Coupon, key: str, size: float) -> tuple[float, float]:
    """What a measure must reach, mm, and how much of it a mm of size is."""
    per_size = throat_over_leg(coupon)
    if key == "effective_throat":
        return size * per_size, per_size
    if key == "theoretical_throat":
        base, upright = (called_size(coupon, member) for member in MEMBERS)
        return throat_of(coupon, base, upright), per_size
    return size, 1.0


def _size_doubt(coupon: Coupon, measures: Measures, comparison: Comparison) -> float:
    one = doubt(comparison.edge, coupon.eye_limit)
    if comparison.key != "theoretical_throat" or comparison.edge == "throat":
        return one
    # By how much each leg moves the throat: a long leg hardly does.
    legs, step = (measures.leg_base, measures.leg_upright), 1e-4
    level, per_size = throat_of(coupon, *legs), throat_over_leg(coupon)
    by_base = throat_of(coupon, legs[0] + step, legs[1]) - level
    by_upright = throat_of(coupon, legs[0], legs[1] + step) - level
    return propagated(one, (by_base / step / per_size, by_upright / step / per_size))


def _settled(coupon: Coupon, comparison: Comparison, check: Check) -> bool:
    """Whether some leaf seats and tells the measure's side of its limit."""
    section = dressed(coupon.section)
    if comparison.edge == "throat":
        # The spur reads on the bisector, and there a lopsided hollow can look larger than it is.
        shown, limit = bisector_size(section), limit_for(coupon, "throat")
        if (shown >= limit) != check.passed and not check.near:
            return False
        return answers(section, "throat", "base", (shown, limit), coupon.eye_limit)
    if comparison.key == "theoretical_throat":
        return _settled_by_both(coupon, check)
    told: dict[Member, bool] = {}
    falls_short: dict[Member, bool] = {}
    for member in comparison.legs:
        shown, limit = leg_shown(section, member), limit_for(coupon, "leg", member)
        told[member] = answers(section, "leg", member, (shown, limit), coupon.eye_limit)
        falls_short[member] = shown < limit
    if check.passed:
        return all(told.values())
    # One leg shown short is enough.
    return any(told[member] and falls_short[member] for member in told)


def _settled_by_both(coupon: Coupon, check: Check) -> bool:
    """Whether the leaves about both legs tell the side of a throat of two different legs."""
    section = dressed(coupon.section)
    bounds = [leg_bounds(section, member, coupon.eye_limit) for member in MEMBERS]
    if any(low is None or high is None for low, high in bounds):
        return False
    lows, highs = [low or 0.0 for low, _ in bounds], [high or 0.0 for _, high in bounds]
    if check.near:
        return True
    if check.passed:
        return throat_of(coupon, *lows) >= check.limit - _ROUNDING
    return throat_of(coupon, *highs) < check.limit


# --- everything else ----------------------------------------------------------------------------


def limit_checks(coupon: Coupon, measures: Measures) -> tuple[Check, ...]:
    """Return the checks of the rule set's other limits, as far as they apply, in its order."""
    checks: list[Check] = []
    for limit in coupon.rule_set.limits:
        members: tuple[Member | None, ...] = MEMBERS if limit.measure in PER_MEMBER else (None,)
        for member in members:
            measured = _measured(coupon, measures, limit, member)
            if measured is not None:
                checks.append(_limit_check(coupon, measures, limit, member, measured))
    return tuple(checks)


def _limit_check(
    coupon: Coupon, measures: Measures, limit: Limit, member: Member | None, measured: float
) -> Check:
    known = given(coupon, measures, member)
    short = (
        limit.short is not None
        and limit.within is not None
        and limit.within.admits(coupon.extent, coupon.conditions.weld_length, known.unit)
    )
    amount = limit.short if short and limit.short is not None else limit.amount
    allowed = amount.value(known)
    margin = allowed - measured if limit.bound == "at_most" else measured - allowed
    check = Check(
        key=f"{limit.measure}_{member}" if member else limit.measure,
        measured=measured,
        limit=allowed,
        margin=margin,
        doubt=0.0,
        passed=margin >= -_ROUNDING,
        decided_by_leaf=False,
        disposition=limit.needs,
        source=limit.source,
        bound=limit.bound,
        unit=limit.unit,
        short=short,
    )
    return _as_leaves_tell(coupon, check)


def _measured(
    coupon: Coupon, measures: Measures, limit: Limit, member: Member | None
) -> float | None:
    """What a limit judges, mm or degrees; None where it doesn't apply."""
    section, callout = coupon.section, coupon.callout
    if member is not None:
        groove, lip = section.bead.undercut(member), section.bead.overlap(member)
        angle = measures.toe_angle_base if member == "base" else measures.toe_angle_upright
        found = {
            "undercut": groove.depth if groove else 0.0,
            "overlap": lip.length if lip else 0.0,
            "toe_angle": angle,
        }
        return found[limit.measure]
    if limit.measure == "asymmetry":
        return None if callout.unequal else abs(measures.leg_base - measures.leg_upright)
    if limit.measure == "maximum_size":
        edge = coupon.conditions.edge
        return None if edge is None or callout.built_out else callout.leg(edge, section.joint)
    return {
        "convexity": measures.convexity,
        "excess_throat": max(0.0, measures.actual_throat - asked_throat(coupon)),
        "root_opening": section.joint.root_opening,
        "joint_angle": section.joint.angle,
    }[limit.measure]


def _as_leaves_tell(coupon: Coupon, check: Check) -> Check:
    """The check with its doubt, where leaves can decide it at all."""
    section = dressed(coupon.section)
    if check.key == "asymmetry":
        one = doubt("leg", coupon.eye_limit)
        check = replace(check, doubt=propagated(one, (1.0, -1.0)))
        return replace(check, decided_by_leaf=_difference_told(coupon, check))
    if check.key == "excess_throat":
        per_size = throat_over_leg(coupon)
        edge: Edge = "throat"
        check = replace(check, margin=check.margin / per_size, doubt=doubt(edge, coupon.eye_limit))
        limit = (asked_throat(coupon) + check.limit) / per_size
        shown = bisector_size(section)
        same_side = (shown <= limit + _ROUNDING) == check.passed or check.near
        told = same_side and answers(section, edge, "base", (shown, limit), coupon.eye_limit)
        return replace(check, decided_by_leaf=told)
    return check


def _difference_told(coupon: Coupon, check: Check) -> bool:
    """Whether the leaves about both legs tell the side of their difference."""
    section = dressed(coupon.section)
    (low, high), (other_low, other_high) = (
        leg_bounds(section, member, coupon.eye_limit) for member in MEMBERS
    )
    if low is None or high is None or other_low is None or other_high is None:
        return False
    if check.near:
        return True
    most = max(high - other_low, other_high - low)
    least = max(low - other_high, other_low - high)
    return most <= check.limit if check.passed else least > check.limit
