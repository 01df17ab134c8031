"""Which entry of the reference says more: of a callout, of a check, of a reason for a mark."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from exercises.callout import Callout
from exercises.coupon import Coupon
from exercises.rules import RuleSet
from geometry.measures import FaceShape

__all__ = ["entry_of_callout", "entry_of_check", "entry_of_reason", "entry_of_rules"]

_OF_REASONS: Final[Mapping[str, str]] = {
    "face-convex": "word.face",
    "face-concave": "word.face",
    "face-flat": "word.face",
    "no-reading": "gauge.holding",
    "edge-throat": "gauge.holding",
    "edge-leg": "gauge.holding",
    "seat-in-steel": "gauge.states",
    "seat-open": "gauge.states",
    "reading-other": "gauge.states",
    "fault-other": "gauge.holding",
    "size-other": "gauge.states",
    "size-none": "gauge.states",
    "hints-asked": "gauge.holding",
}


def entry_of_rules(rules: RuleSet) -> str:
    """Return the key of a rule set's entry.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> entry_of_rules(RULE_SETS["as-drawn"])
    'rules.as-drawn'
    """
    return f"rules.{rules.id}"


def entry_of_callout(callout: Callout) -> str:
    """Return the key of the entry on what a callout says that is least usual.

    Examples
    --------
    >>> entry_of_callout(Callout(8.0, "leg", "8 mm")), entry_of_callout(
    ...     Callout(4.0, "throat", "4 mm", all_around=True))
    ('callout.leg', 'callout.marks')
    """
    if callout.intermittent is not None:
        return "callout.pitch"
    if callout.all_around or callout.site or callout.tail or callout.side != "arrow":
        return "callout.marks"
    if callout.unequal:
        return "callout.unequal"
    return f"callout.{callout.measure}"


def entry_of_check(coupon: Coupon, key: str, face: FaceShape) -> str:
    """Return the key of the entry on the limit of a check.

    Parameters
    ----------
    coupon
        What was judged.
    key
        Of the check: ``leg_base``, ``undercut_upright``, ``convexity``.
    face
        The weld's true face: it says which row of the sizes holds.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> coupon = Coupon("a", section, Callout(8.0, "leg", "8 mm"), rules="iso-5817-c")
    >>> entry_of_check(coupon, "undercut_base", "flat"), entry_of_check(coupon, "leg_base", "flat")
    ('rules.iso-5817-c.undercut', 'rules.iso-5817-c.size.leg-flat')
    """
    rules, callout = coupon.rule_set, coupon.callout
    whole = key.removesuffix("_base").removesuffix("_upright")
    limited = {limit.measure for limit in rules.limits}
    if whole in limited:
        return f"{entry_of_rules(rules)}.{whole}"
    row = rules.row(callout.measure, face, unequal=callout.unequal)
    return f"{entry_of_rules(rules)}.size.{row.name}"


def entry_of_reason(
    coupon: Coupon, code: str, params: Mapping[str, object], face: FaceShape
) -> str:
    """Return the key of the entry on a reason for a mark, by its code.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> section = Section.of(Joint(), Bead(8.0, 8.0))
    >>> coupon = Coupon("a", section, Callout(8.0, "leg", "8 mm"))
    >>> entry_of_reason(coupon, "right-accept", {"key": "overlap_base"}, "flat")
    'rules.as-drawn.overlap'
    >>> entry_of_reason(coupon, "reading-other", {}, "flat")
    'gauge.states'
    """
    if code in _OF_REASONS:
        return _OF_REASONS[code]
    if "key" in params:
        return entry_of_check(coupon, str(params["key"]), face)
    if code.startswith("right-"):
        return "word.disposition"
    return entry_of_check(coupon, "leg_base", face)
