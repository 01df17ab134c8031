"""The fields of a callout: what the drawing says, and what an entry makes of it. No Qt here."""

from __future__ import annotations

from exercises.coupon import Coupon
from exercises.strict_json import Json
from exercises.versions import Document
from geometry.lengths import Unit, format_length, parse_length
from trainer.shop.documents import object_at, value_at, with_value, without
from trainer.shop.expressions import EntryError, parse_value

__all__ = ["Value", "callout_document", "callout_value", "size_words"]

Value = float | str | bool | None


def callout_value(coupon: Coupon, key: str) -> Value:
    """Return what a field of the callout says."""
    callout, weld = coupon.callout, coupon.callout.intermittent
    known: dict[str, Value] = {
        "callout.size": callout.text,
        "callout.upright_size": callout.upright_text or None,
        "callout.measure": callout.measure,
        "callout.side": callout.side,
        "callout.all_around": callout.all_around,
        "callout.site": callout.site,
        "callout.built_out": callout.built_out,
        "callout.tail": callout.tail,
        "callout.length": weld.length if weld else None,
        "callout.count": float(weld.count) if weld and weld.count else None,
        "callout.staggered": bool(weld and weld.staggered),
    }
    if key in known:
        return known[key]
    by_gap = value_at(coupon.source, ("callout", "intermittent", "gap")) is not None
    if key == "callout.spacing":
        return "gap" if by_gap else "pitch"
    return (weld.gap if by_gap else weld.pitch) if weld else None


def callout_document(coupon: Coupon, key: str, value: Value) -> Document:
    """Return the coupon's document once a field of its callout says `value`.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> plain = coupon_of(PLAIN, NO_RULES)
    >>> callout_document(plain, "callout.length", 50.0)["callout"]
    {'size': 7, 'intermittent': {'length': 50.0, 'pitch': 100.0}}
    """
    name = key.removeprefix("callout.")
    path: tuple[str | int, ...] = ("callout", name)
    if name in ("length", "spacing", "distance", "count", "staggered"):
        return _pieces_document(coupon, name, value)
    if name == "measure" and value == "throat":
        # A throat has no second leg.
        source = without(coupon.source, ("callout", "upright_size"))
        return with_value(source, path, value)
    if value in ("", None) or value is False:
        return without(coupon.source, path)
    return with_value(coupon.source, path, value)


def _pieces_document(coupon: Coupon, name: str, value: Value) -> Document:
    """An intermittent weld: begun by its length, ended by taking that away."""
    path = ("callout", "intermittent")
    weld = object_at(coupon.source, path)
    if name == "length" and not value:
        return without(coupon.source, path)
    if not weld:
        length = float(value) if name == "length" and value else 50.0
        weld = {"length": length, "pitch": 2.0 * length}
        if name == "length":
            return with_value(coupon.source, path, weld)
    spacing = "gap" if "gap" in weld else "pitch"
    if name == "spacing":
        known = coupon.callout.intermittent
        if value == spacing or known is None:
            return dict(coupon.source)
        del weld[spacing]
        return with_value(
            coupon.source,
            path,
            {**weld, str(value): known.gap if value == "gap" else known.pitch},
        )
    key = spacing if name == "distance" else name
    weld.pop(key, None)
    if value:
        weld[key] = round(float(value)) if name == "count" else value
    return with_value(coupon.source, path, weld)


def size_words(text: str, unit: Unit) -> Json:
    """Return what a callout's size is written as, from an entry: as it was typed, where it can be.

    Raises
    ------
    EntryError
        If it is no length.

    Examples
    --------
    >>> size_words("5/16 in", "mm"), size_words("8", "mm"), size_words("5/16", "in")
    ('5/16 in', 8.0, '5/16 in')
    >>> size_words("2 * 4 mm", "mm")
    '8 mm'
    """
    words = " ".join(text.replace(",", ".").split())
    try:
        parse_length(words)
    except ValueError:
        length = parse_value(text, unit)
        if length <= 0.0:
            raise EntryError("large", 0, words) from None
        bare = words.replace(".", "", 1).replace("/", "", 1).replace(" ", "", 1).isdigit()
        if bare and unit == "mm":
            return length
        return f"{words} in" if bare else format_length(length, unit)
    return words
