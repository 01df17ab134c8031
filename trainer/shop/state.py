"""What the shop works on: one frozen value, and every change of a tray that can be made of it.

No Qt here. A change gives another value; what it doesn't touch is the same object in both.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from exercises.coupon import Coupon
from exercises.models import MOST_COUPONS, TRAY_FORMAT
from exercises.rules import RuleSet
from exercises.strict_json import Json
from exercises.text import NO_TEXT, Text
from exercises.tray import Tray
from exercises.versions import HEAD, Document
from trainer.shop.building import NO_RULES, coupon_of, rules_of
from trainer.shop.documents import with_value, without

__all__ = [
    "PLAIN",
    "RulesClashError",
    "Shop",
    "TooManyError",
    "added",
    "changed",
    "deleted",
    "duplicated",
    "free_id",
    "merged",
    "moved",
    "named",
    "new_shop",
    "shop_of",
    "shown",
    "split",
    "titled",
]

PLAIN: Final[Mapping[str, Json]] = {
    "id": "coupon-1",
    "title": "",
    "task": "judge",
    "joint": {"base_thickness": 12, "upright_thickness": 12},
    "bead": {"leg_base": 8.0, "leg_upright": 8.0, "crown": 0.8},
    "callout": {"size": 7},
    "rules": "as-drawn",
}
"""What a new coupon is before anything has been changed of it."""

_NUMBERED: Final = re.compile(r"(.*?)[-_ ]?(\d+)")


class TooManyError(ValueError):
    """A tray would hold more coupons than one may."""


class RulesClashError(ValueError):
    """Two trays have a rule set of one id that isn't the same: `name`."""

    def __init__(self, name: str) -> None:
        self.name = name
        super().__init__(f"both trays have rules {name!r}, and they differ")


@dataclass(frozen=True)
class Shop:
    """A tray being made, and the coupon of it that is open.

    Parameters
    ----------
    tray
        As it would be saved.
    at
        Place of the open coupon.
    rules
        Rule sets of the tray's own, by id.

    Examples
    --------
    >>> new_shop().coupon.callout.text
    '7 mm'
    """

    tray: Tray
    at: int = 0
    rules: Mapping[str, RuleSet] = field(default_factory=dict, compare=False, repr=False)

    @property
    def coupons(self) -> tuple[Coupon, ...]:
        """All coupons, in order."""
        return self.tray.coupons

    @property
    def coupon(self) -> Coupon:
        """The coupon that is open."""
        return self.tray.coupons[self.at]

    @property
    def ids(self) -> frozenset[str]:
        """The ids that are taken."""
        return frozenset(coupon.id for coupon in self.coupons)


def new_shop() -> Shop:
    """Return a tray with one plain coupon.

    Examples
    --------
    >>> [coupon.id for coupon in new_shop().coupons]
    ['coupon-1']
    """
    head: Document = {"format": TRAY_FORMAT, "version": HEAD}
    return Shop(Tray(NO_TEXT, (coupon_of(PLAIN, NO_RULES),), head))


def shop_of(tray: Tray) -> Shop:
    """Return the shop with a tray that was opened, its first coupon open."""
    return Shop(tray, 0, rules_of(tray.coupons))


def shown(shop: Shop, at: int) -> Shop:
    """Return the shop with another coupon open; the nearest there is."""
    return replace(shop, at=min(max(at, 0), len(shop.coupons) - 1))


def _with(shop: Shop, coupons: Iterable[Coupon], at: int) -> Shop:
    return shown(replace(shop, tray=replace(shop.tray, coupons=tuple(coupons))), at)


def changed(shop: Shop, coupon: Coupon) -> Shop:
    """Return the shop with the open coupon replaced.

    Examples
    --------
    >>> shop = new_shop()
    >>> other = coupon_of({**PLAIN, "id": "b"}, NO_RULES)
    >>> changed(shop, other).coupon.id, changed(shop, shop.coupon) is shop
    ('b', True)
    """
    if coupon is shop.coupon:
        return shop
    listed = list(shop.coupons)
    listed[shop.at] = coupon
    return _with(shop, listed, shop.at)


def free_id(wanted: str, taken: Iterable[str]) -> str:
    """Return `wanted`, or where that is taken the next number that isn't.

    Examples
    --------
    >>> free_id("hb-04", {"hb-04", "hb-05"}), free_id("weld", {"weld"}), free_id("x", ())
    ('hb-06', 'weld-2', 'x')
    """
    known = set(taken)
    if wanted not in known:
        return wanted
    match = _NUMBERED.fullmatch(wanted)
    stem = wanted[: match.start(2)] if match else f"{wanted}-"
    digits = match[2] if match else "1"
    # A number of hundreds of digits is a name, not a count.
    number = int(digits) if len(digits) <= 9 else 1
    while True:
        number += 1
        found = f"{stem}{number:0{min(len(digits), 9)}}"
        if found not in known:
            return found


def added(shop: Shop, coupons: Iterable[Coupon]) -> Shop:
    """Return the shop with coupons put in after the open one; ids that are taken are changed.

    Raises
    ------
    TooManyError
        If the tray would hold more coupons than a tray may.

    Examples
    --------
    >>> shop = added(new_shop(), [coupon_of(PLAIN, NO_RULES)])
    >>> [coupon.id for coupon in shop.coupons], shop.at
    (['coupon-1', 'coupon-2'], 1)
    """
    return _put_in(shop, coupons, shop.at + 1)


def _put_in(shop: Shop, coupons: Iterable[Coupon], at: int) -> Shop:
    taken = set(shop.ids)
    new: list[Coupon] = []
    for coupon in coupons:
        name = free_id(coupon.id, taken)
        taken.add(name)
        new.append(coupon if name == coupon.id else named(coupon, name))
    if len(shop.coupons) + len(new) > MOST_COUPONS:
        raise TooManyError(f"a tray holds at most {MOST_COUPONS} coupons")
    if not new:
        return shop
    return _with(shop, (*shop.coupons[:at], *new, *shop.coupons[at:]), at)


def named(coupon: Coupon, name: str) -> Coupon:
    """Return a coupon under another id; where it has no title of its own it stays without one."""
    own = coupon.source.get("title")
    title = coupon.title if own else Text.of(name)
    return replace(coupon, id=name, title=title, source=with_value(coupon.source, ("id",), name))


def duplicated(shop: Shop) -> Shop:
    """Return the shop with a copy of the open coupon after it, and that open.

    Examples
    --------
    >>> [coupon.id for coupon in duplicated(new_shop()).coupons]
    ['coupon-1', 'coupon-2']
    """
    return added(shop, [shop.coupon])


def deleted(shop: Shop) -> Shop:
    """Return the shop without the open coupon; the last one stays: a tray holds at least one.

    Examples
    --------
    >>> shop = duplicated(new_shop())
    >>> [coupon.id for coupon in deleted(shop).coupons], deleted(deleted(shop)) == deleted(shop)
    (['coupon-1'], True)
    """
    if len(shop.coupons) == 1:
        return shop
    return _with(shop, (*shop.coupons[: shop.at], *shop.coupons[shop.at + 1 :]), shop.at)


def moved(shop: Shop, start: int, to: int) -> Shop:
    """Return the shop with the coupon at place `start` moved to place `to`, and that open.

    Examples
    --------
    >>> shop = duplicated(duplicated(new_shop()))
    >>> [coupon.id for coupon in moved(shop, 2, 0).coupons]
    ['coupon-3', 'coupon-1', 'coupon-2']
    """
    to = min(max(to, 0), len(shop.coupons) - 1)
    if start == to or not 0 <= start < len(shop.coupons):
        return shop
    listed = list(shop.coupons)
    listed.insert(to, listed.pop(start))
    return _with(shop, listed, to)


def split(shop: Shop) -> tuple[Shop, Tray] | None:
    """Return the shop with the coupons before the open one, and a tray of it and all after it.

    None where nothing would be left before it.

    Examples
    --------
    >>> kept, taken = split(duplicated(new_shop()))
    >>> [c.id for c in kept.coupons], [c.id for c in taken.coupons]
    (['coupon-1'], ['coupon-2'])
    >>> split(new_shop()) is None
    True
    """
    if shop.at == 0:
        return None
    rest = replace(shop.tray, coupons=shop.coupons[shop.at :])
    return _with(shop, shop.coupons[: shop.at], shop.at - 1), rest


def merged(shop: Shop, tray: Tray) -> Shop:
    """Return the shop with another tray's coupons after its own; ids that clash are changed.

    Raises
    ------
    TooManyError
        If the tray would hold more coupons than a tray may.
    RulesClashError
        If both have a rule set of one id that isn't the same.

    Examples
    --------
    >>> both = merged(new_shop(), new_shop().tray)
    >>> [coupon.id for coupon in both.coupons], both.at
    (['coupon-1', 'coupon-2'], 1)
    """
    rules = rules_of(tray.coupons)
    for name, known in shop.rules.items():
        if name in rules and rules[name].digest != known.digest:
            raise RulesClashError(name)
    head = dict(shop.tray.source)
    files = [*_files(head), *(f for f in _files(tray.source) if f not in _files(head))]
    if files:
        head["rule_files"] = list(files)
    both = replace(shop, tray=replace(shop.tray, source=head), rules={**rules, **shop.rules})
    return _put_in(both, tray.coupons, len(shop.coupons))


def _files(head: Mapping[str, Json]) -> list[str]:
    listed = head.get("rule_files")
    return [name for name in listed if isinstance(name, str)] if isinstance(listed, list) else []


def titled(shop: Shop, title: Json) -> Shop:
    """Return the shop with another title: text, or texts by language.

    Examples
    --------
    >>> str(titled(new_shop(), "Handrail brackets").tray.title)
    'Handrail brackets'
    """
    text = Text.of(title) if isinstance(title, str) else NO_TEXT
    if isinstance(title, dict):
        text = Text.of({tag: str(words) for tag, words in title.items()})
    head = dict(shop.tray.source)
    head = with_value(head, ("title",), title) if text else without(head, ("title",))
    return replace(shop, tray=replace(shop.tray, title=text or NO_TEXT, source=head))
