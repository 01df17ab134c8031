"""A new coupon out of a section that was taken in from picture, scan or drawing. No Qt here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from exercises.callout import Callout
from exercises.coupon import Coupon
from exercises.intake.traced import Traced
from exercises.judging import judge
from exercises.rules import RuleSet
from exercises.strict_json import Json
from exercises.versions import Document
from geometry.leaf import Leaf, RackName, rack
from trainer.shop.building import coupon_of
from trainer.shop.documents import with_value

__all__ = ["coupon_from", "largest_met"]

_PLATE: Final = 60.0
"""mm: how long a member is unless the weld needs more."""


def largest_met(coupon: Coupon, name: RackName) -> Leaf:
    """Return the largest leaf of a rack whose size the weld meets by leg, as drawn.

    The smallest where it meets none.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES
    >>> from trainer.shop.state import PLAIN
    >>> largest_met(coupon_of(PLAIN, NO_RULES), "metric").mark
    '8 mm'
    """
    leaves = rack(name)
    low, high = 0, len(leaves)
    while high - low > 1:
        middle = (low + high) // 2
        leaf = leaves[middle]
        asked = replace(coupon, callout=Callout(leaf.size, "leg", leaf.mark), rules="as-drawn")
        sizes = [check for check in judge(asked).checks if check.required is not None]
        if all(check.passed for check in sizes):
            low = middle
        else:
            high = middle
    return leaves[low]


def coupon_from(traced: Traced, name: RackName, rules: Mapping[str, RuleSet]) -> Coupon:
    """Return a coupon of a section that was taken in: called for what it meets, judged as drawn.

    Raises
    ------
    GeometryError
        If no section can be so.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES
    >>> taken = Traced(90.0, ((8.2, 0.0), (4.4, 4.4), (0.0, 8.1)), 0.02, {"kind": "scan"})
    >>> coupon = coupon_from(taken, "metric", NO_RULES)
    >>> coupon.id, coupon.callout.text, coupon.source["x-source"]["uncertainty"]
    ('scan-1', '8 mm', 0.02)
    """
    trace: list[Json] = [[round(x, 4) + 0.0, round(y, 4) + 0.0] for x, y in traced.trace]
    legs = [max(abs(x), abs(y)) for x, y in traced.trace]
    long = max(_PLATE, round(3.0 * max(legs, default=0.0)))
    source: Document = {key: _plain(value) for key, value in traced.source.items()}
    if traced.uncertainty is not None:
        source["uncertainty"] = round(traced.uncertainty, 4)
    document: Document = {
        "id": f"{source.get('kind') or 'traced'}-1",
        "title": "",
        "task": "judge",
        "joint": {
            "angle": round(traced.angle, 2),
            "base_thickness": 12,
            "upright_thickness": 12,
            "base_length": long,
            "upright_length": long,
        },
        "bead": {"trace": trace},
        "callout": {"size": 1},
        "rules": "as-drawn",
        "x-source": source,
    }
    if traced.backdrop is not None:
        document["backdrop"] = traced.backdrop.as_document()
    met = largest_met(coupon_of(document, rules), name)
    size: Json = met.mark if name == "inch" else met.size
    return coupon_of(with_value(document, ("callout", "size"), size), rules)


def _plain(value: object) -> Json:
    """A value as a file can hold it; whatever it can't hold, as text."""
    if value is None or isinstance(value, (bool, int, float, str)):
        return value
    if isinstance(value, Mapping):
        return {str(key): _plain(inner) for key, inner in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(inner) for inner in value]
    return str(value)
