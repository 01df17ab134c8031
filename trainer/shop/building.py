"""A coupon out of its document, as a tray file's own: the shop makes nothing that can't be opened.

No Qt here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from exercises.building import build_coupon
from exercises.coupon import Coupon
from exercises.models import CouponModel
from exercises.placement_faults import stated_faults
from exercises.rules import RULE_SETS, RuleSet
from exercises.shape import check_shape, without_private_keys
from exercises.strict_json import Json, quoted
from geometry.faults import Fault, GeometryError

__all__ = ["NO_RULES", "coupon_of", "rules_of"]

NO_RULES: Mapping[str, RuleSet] = {}
"""No rule sets of a shop's own."""


def coupon_of(document: Mapping[str, Json], shop_rules: Mapping[str, RuleSet]) -> Coupon:
    """Return the coupon that a document states, hardened as a file is.

    Parameters
    ----------
    document
        As a tray holds it; it is kept as the coupon's `source`, so it must not be changed later.
    shop_rules
        Rule sets of the tray's own, by id.

    Raises
    ------
    GeometryError
        With every fault of it, placed below the coupon.

    Examples
    --------
    >>> stated = {"id": "a", "bead": {"leg_base": 8, "leg_upright": 7}, "callout": {"size": 8}}
    >>> coupon_of(stated, NO_RULES).section.bead.leg_upright
    7.0
    >>> coupon_of({**stated, "rules": "none"}, NO_RULES)
    Traceback (most recent call last):
    geometry.faults.GeometryError: /rules: no rule set is called "none"; right would be: ...
    """
    model, faults = check_shape(CouponModel, without_private_keys(dict(document)))
    if model is None:
        raise GeometryError(faults)
    if model.rules not in shop_rules and model.rules not in RULE_SETS:
        known = ", ".join(quoted(name) for name in (*RULE_SETS, *shop_rules))
        text = f"no rule set is called {quoted(model.rules)}"
        params = {"rules": quoted(model.rules), "known": known}
        raise GeometryError([Fault("/rules", "unknown-rules", text, f"one of: {known}", params)])
    coupon = replace(build_coupon(model, document), shop_rules=shop_rules.get(model.rules))
    found = stated_faults(coupon)
    if found:
        raise GeometryError(found)
    return coupon


def rules_of(coupons: tuple[Coupon, ...]) -> dict[str, RuleSet]:
    """Return the rule sets of a shop's own that coupons are judged by, by id."""
    return {c.rules: c.shop_rules for c in coupons if c.shop_rules is not None}
