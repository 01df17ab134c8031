"""What the shop says: names of knobs, why one was held, what a gesture was; in the user's language.

Every text is looked up when it is asked for, so that a change of language needs no restart.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from exercises.file_faults import TrayFault
from geometry.faults import Fault
from geometry.lengths import Unit
from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.fault_words import fault_words
from trainer.figures import length_words, number_words
from trainer.shop.expressions import EntryError
from trainer.shop.knobs import Knob
from trainer.shop.turning import Limit

__all__ = [
    "entry_words",
    "fault_sentence",
    "gesture_word",
    "knob_word",
    "limit_words",
    "said_value",
    "short_word",
    "value_words",
]


_KNOBS: Final[Mapping[str, str]] = {
    "leg_base": QT_TRANSLATE_NOOP("Shop", "Base leg"),
    "leg_upright": QT_TRANSLATE_NOOP("Shop", "Upright leg"),
    "crown": QT_TRANSLATE_NOOP("Shop", "Crown"),
    "angle": QT_TRANSLATE_NOOP("Shop", "Joint angle"),
    "root_opening": QT_TRANSLATE_NOOP("Shop", "Root opening"),
    "undercut_base.depth": QT_TRANSLATE_NOOP("Shop", "Base undercut: depth"),
    "undercut_base.width": QT_TRANSLATE_NOOP("Shop", "Base undercut: width"),
    "undercut_upright.depth": QT_TRANSLATE_NOOP("Shop", "Upright undercut: depth"),
    "undercut_upright.width": QT_TRANSLATE_NOOP("Shop", "Upright undercut: width"),
    "overlap_base": QT_TRANSLATE_NOOP("Shop", "Base overlap"),
    "overlap_upright": QT_TRANSLATE_NOOP("Shop", "Upright overlap"),
    "base_thickness": QT_TRANSLATE_NOOP("Shop", "Base thickness"),
    "upright_thickness": QT_TRANSLATE_NOOP("Shop", "Upright thickness"),
    "base_length": QT_TRANSLATE_NOOP("Shop", "Base length"),
    "upright_length": QT_TRANSLATE_NOOP("Shop", "Upright length"),
}
"""What each knob sets, in English: looked up one by one, since it is asked for at every move."""


def knob_word(key: str) -> str:
    """What a knob sets."""
    if key.startswith("trace."):
        return translate("Shop", "Point {n} of the trace").format(n=int(key[6:]) + 1)
    if key.startswith("spatter."):
        _, index, what = key.split(".")
        words = {
            "at": translate("Shop", "Spatter {n}: place"),
            "height": translate("Shop", "Spatter {n}: height"),
        }[what]
        return words.format(n=int(index) + 1)
    return translate("Shop", _KNOBS[key])


def short_word(key: str) -> str:
    """A knob by a name that has room among the buttons."""
    if key.startswith("trace."):
        return translate("Shop", "Point {n}").format(n=int(key[6:]) + 1)
    return knob_word(key)


def said_value(value: float, kind: str, unit: Unit) -> str:
    """A value as one reads it: a length in `unit`, or an angle."""
    sign = "\u2212" if value < 0.0 else ""
    if kind == "angle":
        return f"{sign}{number_words(round(abs(value), 2))}\u00b0"
    return f"{sign}{length_words(abs(value), unit)}"


def value_words(knob: Knob, unit: Unit) -> str:
    """What a knob stands at."""
    return said_value(knob.value, knob.kind, unit)


def fault_sentence(fault: Fault) -> str:
    """What is wrong, and what would be right."""
    wrong, right = fault_words(TrayFault.of("", fault))
    said = translate("Shop", "{wrong}; right would be: {right}").format(wrong=wrong, right=right)
    return said[:1].upper() + said[1:]


def limit_words(limit: Limit, unit: Unit) -> str:
    """Why a knob was held."""
    wrong, right = fault_words(TrayFault.of("", limit.fault))
    if limit.value is None:
        return translate("Shop", "{knob} stays there: {wrong}.").format(
            knob=knob_word(limit.key), wrong=wrong
        )
    kind = "angle" if limit.key == "angle" else "length"
    return translate("Shop", "{knob} stays at {value}: beyond, {wrong} (right: {right}).").format(
        knob=knob_word(limit.key),
        value=said_value(limit.value, kind, unit),
        wrong=wrong,
        right=right,
    )


def gesture_word(what: str) -> str:
    """What a gesture was, for undo and redo."""
    known = {
        "add": translate("Shop", "add a coupon"),
        "delete": translate("Shop", "delete a coupon"),
        "duplicate": translate("Shop", "duplicate a coupon"),
        "move": translate("Shop", "move a coupon"),
        "split": translate("Shop", "split the tray"),
        "merge": translate("Shop", "merge a tray in"),
        "dice": translate("Shop", "coupons from dice"),
        "title": translate("Shop", "title of the tray"),
        "place": translate("Shop", "the placed leaf"),
    }
    if what in known or what.startswith("placed."):
        return known.get(what, known["place"])
    if what.startswith("field "):
        return translate("Shop", "an entry")
    try:
        word = knob_word(what)
    except KeyError:
        return translate("Shop", "a change")
    return word[:1].lower() + word[1:]


def entry_words(error: EntryError, text: str, measure: str) -> str:
    """Why an entry is no value, and what would be one."""
    wrong = {
        "empty": translate("Shop", "Something has to stand here"),
        "long": translate("Shop", "This is longer than an entry can be"),
        "deep": translate("Shop", "These brackets are deeper than anyone needs"),
        "end": translate("Shop", "Something is missing at the end"),
        "sign": translate("Shop", "\u201c{found}\u201d can\u2019t stand there"),
        "unit": translate("Shop", "\u201c{found}\u201d is no unit of this"),
        "closing": translate("Shop", "A bracket lacks its other half"),
        "zero": translate("Shop", "This divides by zero"),
        "large": translate("Shop", "This is beyond all measure"),
        "kind": translate("Shop", "A length and a bare number don\u2019t go together so"),
        "square": translate("Shop", "A length times a length is an area"),
    }[error.code].format(found=error.found.strip() or text[error.at : error.at + 8])
    right = {
        "angle": translate("Shop", "82.5\u00b0 or 90 \u2212 7.5"),
        "share": translate("Shop", "0.25 or 25 %"),
        "count": translate("Shop", "3"),
    }.get(measure, translate("Shop", "8 mm, 5/16 in or 5/16 in \u2212 0.3 mm"))
    return translate("Shop", "{wrong}; right would be: {right}").format(wrong=wrong, right=right)
