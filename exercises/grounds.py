"""What makes the right disposition right: the check that decides, in words and as values."""

from __future__ import annotations

from exercises.checks import Check
from exercises.coupon import Coupon
from exercises.judging import Judgement
from geometry.lengths import format_length

__all__ = ["Params", "grounds", "named"]

Params = dict[str, float | str]


def grounds(coupon: Coupon, judgement: Judgement) -> tuple[str, Params]:
    """Return why the right disposition is right, and the values that the words speak of.

    Parameters hold ``key``, ``measured``, ``limit`` and ``unit`` of the check that decides; for a
    size also what its limit is made of, where it is more than the callout: ``called``, ``minimum``,
    ``opening``, ``allowed``, and ``withheld`` with ``share`` and ``extent`` where an allowance was
    for less of the length. A weld that no leaf settles has ``keys``.
    """
    failed = [check for check in judgement.checks if not check.passed]
    decisive = [check for check in failed if check.disposition == judgement.disposition]
    if not decisive and judgement.disposition == "refer":
        named_keys = " and ".join(named(key) for key in judgement.undecided)
        return f"no leaf can settle {named_keys} here", {"keys": ", ".join(judgement.undecided)}
    if not decisive:
        return "every measure meets its limit", {}
    worst = min(decisive, key=lambda check: check.margin)
    params: Params = {
        "key": worst.key,
        "measured": worst.measured,
        "limit": worst.limit,
        "unit": worst.unit,
        "source": worst.source.name,
    }
    if worst.required is None:
        return _limit_words(worst), params
    return _size_words(coupon, worst, params)


def named(key: str) -> str:
    """Return a measure or a limit as a sentence speaks of it.

    Examples
    --------
    >>> named("leg_base"), named("toe_angle_upright")
    ('the leg on the base', 'the toe angle at the upright toe')
    """
    what, _, member = key.rpartition("_")
    if what in ("leg", "overlap"):
        return f"the {what} on the {member}"
    if what in ("undercut", "toe_angle"):
        return f"the {what.replace('_', ' ')} at the {member} toe"
    known = {
        "maximum_size": "the size called for along the edge",
        "excess_throat": "the throat's excess",
        "asymmetry": "the difference of the legs",
        "joint_angle": "the joint's angle",
    }
    return known.get(key, f"the {key.replace('_', ' ')}")


def _amount(value: float, unit: str) -> str:
    return f"{value:.1f}\u00b0" if unit == "degrees" else format_length(value)


def _limit_words(check: Check) -> str:
    found, limit = _amount(check.measured, check.unit), _amount(check.limit, check.unit)
    needed = "is allowed" if check.bound == "at_most" else "is needed"
    return f"{named(check.key)} is {found}, and {limit} {needed}"


def _size_words(coupon: Coupon, check: Check, params: Params) -> tuple[str, Params]:
    asked = check.required
    assert asked is not None
    found, limit = format_length(check.measured), format_length(check.limit)
    # A throat is a throat throughout: what the rules add or allow is said as the key is measured.
    scale = check.limit / asked.size
    said = f"{named(check.key)} is {found}, and "
    raised = asked.minimum > asked.called
    nominal = format_length(asked.nominal * scale)
    first = f"{nominal} least size" if raised else f"{nominal} called for"
    if raised:
        params |= {"minimum": asked.minimum * scale}
    if raised or asked.opening or asked.allowed:
        params |= {"called": asked.called * scale}
    parts = first
    if asked.opening:
        params |= {"opening": asked.opening * scale}
        parts += f" + {format_length(asked.opening * scale)} root opening"
    if asked.allowed:
        params |= {"allowed": asked.allowed * scale}
        parts += f" \u2212 {format_length(asked.allowed * scale)} allowed under"
    if parts != first:
        said += f"{parts} = {limit} needed"
    else:
        said += f"{limit} is the least size here" if raised else f"{limit} is called for"
    return said + _withheld(coupon, check, scale, params), params


def _withheld(coupon: Coupon, check: Check, scale: float, params: Params) -> str:
    """The allowance that isn't for so much of the length, where it would have sufficed."""
    asked, undersize = check.required, coupon.rule_set.undersize
    if asked is None or undersize is None or undersize.within is None:
        return ""
    could = asked.withheld * scale
    if could <= 0.0 or check.measured < check.limit - could:
        return ""
    share, extent = undersize.within.share_in(coupon.callout.unit), coupon.extent
    params |= {"withheld": could, "share": share, "extent": extent}
    return (
        f"; {format_length(could)} under is allowed over {100 * share:.4g} % of the length at "
        f"most, and this section stands for {100 * extent:.4g} %"
    )
