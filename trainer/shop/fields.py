"""The exact fields beside the picture: what each says of a coupon, and what an entry makes of it.

No Qt here. A field is named by its key; those of handles have the handle's. Lengths are mm, angles
degrees; None is what isn't there.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from exercises.coupon import Coupon
from exercises.strict_json import Json
from exercises.versions import Document
from geometry.joint import MEMBERS
from trainer.shop.callouts import Value, callout_document, callout_value
from trainer.shop.documents import object_at, value_at, with_value, without
from trainer.shop.knobs import document_with, knob_of
from trainer.shop.placing import placed_document, placed_value
from trainer.shop.tracing import arc_document, traced_document

__all__ = [
    "CHECKS",
    "CHOICES",
    "LANGUAGES",
    "Value",
    "begin_value",
    "document_of",
    "value_of",
    "with_drop",
    "with_hint",
    "without_hint",
]

LANGUAGES: Final = ("en", "es")
"""The languages that the shop's own fields are for; texts in others are kept."""

CHOICES: Final[Mapping[str, tuple[str, ...]]] = {
    "task": ("judge", "size", "read", "find the fault"),
    "callout.measure": ("leg", "throat"),
    "callout.side": ("arrow", "other", "both"),
    "callout.spacing": ("pitch", "gap"),
    "conditions.edge": ("", "base", "upright"),
}
"""The fields that are a choice, and what there is to choose."""

CHECKS: Final[Mapping[str, bool]] = {
    "callout.all_around": False,
    "callout.site": False,
    "callout.built_out": False,
    "callout.staggered": False,
    "conditions.low_hydrogen": True,
    "conditions.transverse_tension": False,
    "conditions.girder_end": False,
}
"""The fields that are on or off, and which they are where nothing is said."""

_WIDTH: Final = 2.0
_DEPTH: Final = 0.5
_LIP: Final = 1.5
_HEIGHT: Final = 0.8
"""mm: what a groove, a lip or a cap begins with."""

_BEGIN: Final[Mapping[str, float]] = {
    "undercut_base.depth": _DEPTH,
    "undercut_base.width": _WIDTH,
    "undercut_upright.depth": _DEPTH,
    "undercut_upright.width": _WIDTH,
    "overlap_base": _LIP,
    "overlap_upright": _LIP,
}


def value_of(coupon: Coupon, key: str) -> Value:
    """Return what a field says.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> plain = coupon_of(PLAIN, NO_RULES)
    >>> [value_of(plain, key) for key in ("crown", "overlap_base", "callout.size", "task")]
    [0.8, None, '7 mm', 'judge']
    """
    knob = knob_of(coupon.section, key)
    if knob is not None:
        return knob.value
    if key.endswith(("_thickness", "_length")) and "." not in key:
        return float(getattr(coupon.section.joint, key))
    if key.startswith("spatter."):
        drop = coupon.section.spatter[int(key.split(".")[1])]
        return drop.on if key.endswith(".on") else None
    if key == "face":
        return "traced" if coupon.section.bead.trace is not None else "arc"
    if key.startswith("callout."):
        return callout_value(coupon, key)
    if key.startswith("placed."):
        return placed_value(coupon, key)
    if key.startswith("conditions."):
        found: Value = getattr(coupon.conditions, key.removeprefix("conditions."))
        return "" if found is None and key == "conditions.edge" else found
    if key.startswith(("title.", "teaches.", "hints.")):
        *path, tag = key.split(".")
        return _text_at(coupon.source, tuple(path), tag)
    if key in ("id", "task", "rules", "extent", "eye_limit", "leaf_wear"):
        value: Value = getattr(coupon, key)
        return value
    return None


def _text_at(source: Mapping[str, Json], path: tuple[str, ...], tag: str) -> str:
    """The words of a text in one language; a text of no language counts as English."""
    found = value_at(source, tuple(int(p) if p.isdecimal() else p for p in path))
    if isinstance(found, str):
        return found if tag == LANGUAGES[0] else ""
    said = found.get(tag, "") if isinstance(found, dict) else ""
    return said if isinstance(said, str) else ""


def document_of(coupon: Coupon, key: str, value: Value) -> Document:
    """Return the coupon's document once a field says `value`.

    Whether a coupon can be so is for whoever builds it.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> plain = coupon_of(PLAIN, NO_RULES)
    >>> document_of(plain, "undercut_base.depth", 0.4)["bead"]["undercut_base"]
    {'depth': 0.4, 'width': 2.0}
    >>> document_of(plain, "title.es", "Ménsula")["title"]
    {'es': 'Ménsula'}
    """
    if key == "face":
        return _face_document(coupon, traced=value == "traced")
    if key.startswith(("undercut_", "overlap_")):
        return _toe_document(coupon, key, value)
    if key.startswith("callout."):
        return callout_document(coupon, key, value)
    if key.startswith("placed."):
        return placed_document(coupon, key, value)
    if key.startswith(("title.", "teaches.", "hints.")):
        *path, tag = key.split(".")
        where = tuple(int(part) if part.isdecimal() else part for part in path)
        return _text_document(coupon.source, where, tag, str(value or ""))
    if key.startswith("conditions."):
        fact = ("conditions", key.removeprefix("conditions."))
        usual = value in ("", None) or CHECKS.get(key) is value
        return without(coupon.source, fact) if usual else with_value(coupon.source, fact, value)
    if key.startswith("spatter.") and (value is None or key.endswith(".on")):
        drop = ("spatter", int(key.split(".")[1]))
        gone = value is None
        return (
            without(coupon.source, drop)
            if gone
            else with_value(coupon.source, (*drop, "on"), value)
        )
    if key in ("id", "task", "rules", "extent", "eye_limit", "leaf_wear"):
        return with_value(coupon.source, (key,), value)
    return document_with(coupon, key, float(value or 0.0))


def _face_document(coupon: Coupon, *, traced: bool) -> Document:
    """The face as a trace or as an arc, whichever it isn't yet."""
    if traced == (coupon.section.bead.trace is not None):
        return dict(coupon.source)
    return traced_document(coupon) if traced else arc_document(coupon)


def _toe_document(coupon: Coupon, key: str, value: Value) -> Document:
    """A groove or a lip: made when a value is given, gone when it is taken away."""
    name, _, part = key.partition(".")
    if not value:
        return without(coupon.source, ("bead", name))
    if part:
        groove = object_at(coupon.source, ("bead", name)) or {
            each: _BEGIN[f"{name}.{each}"] for each in ("depth", "width")
        }
        return with_value(coupon.source, ("bead", name), {**groove, part: value})
    return with_value(coupon.source, ("bead", name), value)


def begin_value(key: str) -> float:
    """Return what a groove, a lip or a cap begins with, mm."""
    return _BEGIN.get(key, _HEIGHT)


def _text_document(
    source: Mapping[str, Json], path: tuple[str | int, ...], tag: str, words: str
) -> Document:
    found = value_at(source, path)
    said: dict[str, Json] = {}
    if isinstance(found, str) and found:
        said = {LANGUAGES[0]: found}
    elif isinstance(found, dict):
        said = dict(found)
    said.pop(tag, None)
    if words:
        said[tag] = words
    ordered = {each: said[each] for each in sorted(said, key=_language_order)}
    if not ordered:
        return without(source, path) if path[0] != "hints" else with_value(source, path, "")
    alone = ordered.get(LANGUAGES[0]) if len(ordered) == 1 else None
    return with_value(source, path, alone if alone is not None else ordered)


def _language_order(tag: str) -> tuple[int, str]:
    return (LANGUAGES.index(tag) if tag in LANGUAGES else len(LANGUAGES), tag)


def with_drop(coupon: Coupon) -> Document:
    """Return the coupon's document with a cap of spatter more, where there is room for it.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> with_drop(coupon_of(PLAIN, NO_RULES))["spatter"]
    [{'on': 'base', 'at': 11.2, 'height': 0.8}]
    """
    listed = value_at(coupon.source, ("spatter",))
    drops = list(listed) if isinstance(listed, list) else []
    section = coupon.section
    for member in MEMBERS:
        on = [drop.far for drop in section.spatter if drop.on == member]
        free = max([section.bead.reach(member), *on]) + 2.0 + 1.5 * _HEIGHT
        if free + 1.5 * _HEIGHT < section.joint.length(member):
            new: Json = {"on": member, "at": round(free, 1), "height": _HEIGHT}
            return with_value(coupon.source, ("spatter",), [*drops, new])
    return dict(coupon.source)


def with_hint(coupon: Coupon) -> Document:
    """Return the coupon's document with a hint more, of no words yet."""
    listed = value_at(coupon.source, ("hints",))
    return with_value(
        coupon.source, ("hints",), [*(listed if isinstance(listed, list) else []), ""]
    )


def without_hint(coupon: Coupon, index: int) -> Document:
    """Return the coupon's document without one of its hints."""
    return without(coupon.source, ("hints", index))
