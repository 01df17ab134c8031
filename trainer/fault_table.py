"""The words of the core's faults, by code, in English: marked, so that they can be translated.

Each code has its words in one or more variants, wrong and right: the first whose values are all
among the fault's params is the one.
"""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP

__all__ = ["CODES", "VALUES", "Variant"]

Variant = tuple[str, str]

_GEOMETRY: Final[dict[str, tuple[Variant, ...]]] = {
    "toe-off-member": (
        (
            QT_TRANSLATE_NOOP(
                "Faults", "{key} is {leg} mm, so the toe does not lie on the {member}"
            ),
            QT_TRANSLATE_NOOP("Faults", "more than {lowest} and less than {highest} mm"),
        ),
    ),
    "face-in-member": (
        (
            QT_TRANSLATE_NOOP("Faults", "with crown {crown} mm the face enters a member"),
            QT_TRANSLATE_NOOP("Faults", "more than {lowest} and less than {highest} mm"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "point {index} of the trace, ({x}, {y}), lies in a member"),
            QT_TRANSLATE_NOOP(
                "Faults", "every point but the first and last in the air between the members"
            ),
        ),
    ),
    "lip-over-groove": (
        (
            QT_TRANSLATE_NOOP(
                "Faults", "the toe on the {member} has both an overlap and an undercut"
            ),
            QT_TRANSLATE_NOOP("Faults", "one of the two"),
        ),
    ),
    "lip-under-face": (
        (
            QT_TRANSLATE_NOOP(
                "Faults", "the face already hangs over the {member} where the lip would lie"
            ),
            QT_TRANSLATE_NOOP("Faults", "no overlap here, or a flatter face"),
        ),
    ),
    "size-out-of-range": (
        (
            QT_TRANSLATE_NOOP("Faults", "{key} is {value} mm"),
            QT_TRANSLATE_NOOP("Faults", "more than {lowest} and less than {highest} mm"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "{key} is {value} mm"),
            QT_TRANSLATE_NOOP("Faults", "more than 0 and at most {most} mm"),
        ),
    ),
    "trace-short": (
        (
            QT_TRANSLATE_NOOP("Faults", "the trace has {count} point(s)"),
            QT_TRANSLATE_NOOP("Faults", "two points or more"),
        ),
    ),
    "trace-end": (
        (
            QT_TRANSLATE_NOOP("Faults", "the trace ends {off} mm off the {member}'s face"),
            QT_TRANSLATE_NOOP("Faults", "within {limit} mm of it"),
        ),
    ),
    "joint-angle": (
        (
            QT_TRANSLATE_NOOP("Faults", "the joint opens {angle} degrees"),
            QT_TRANSLATE_NOOP("Faults", "{lowest} to {highest} degrees"),
        ),
    ),
    "member-size": (
        (
            QT_TRANSLATE_NOOP("Faults", "{key} is {value} mm"),
            QT_TRANSLATE_NOOP("Faults", "{lowest} to {highest} mm"),
        ),
    ),
    "root-opening": (
        (
            QT_TRANSLATE_NOOP("Faults", "the root opening is {value} mm"),
            QT_TRANSLATE_NOOP("Faults", "0 mm, or a nanometre (0.000001 mm) or more"),
        ),
    ),
    "upright-short": (
        (
            QT_TRANSLATE_NOOP(
                "Faults",
                "an upright {thickness} mm thick, leaning at {angle} degrees, has no back left at "
                "{length} mm",
            ),
            QT_TRANSLATE_NOOP("Faults", "more than {rear} mm"),
        ),
    ),
    "spatter-off-member": (
        (
            QT_TRANSLATE_NOOP("Faults", "the cap reaches from {near} to {far} mm"),
            QT_TRANSLATE_NOOP(
                "Faults", "its middle between {lowest} and {highest} mm, on bare {member}"
            ),
        ),
    ),
    "spatter-overlaps": (
        (
            QT_TRANSLATE_NOOP("Faults", "the cap lies over another one"),
            QT_TRANSLATE_NOOP("Faults", "caps that stand apart"),
        ),
    ),
    "empty": (
        (
            QT_TRANSLATE_NOOP("Faults", "{body} has no area"),
            QT_TRANSLATE_NOOP("Faults", "a closed boundary"),
        ),
    ),
    "open": (
        (
            QT_TRANSLATE_NOOP("Faults", "{body} is open"),
            QT_TRANSLATE_NOOP("Faults", "pieces that meet"),
        ),
    ),
    "crossed": (
        (
            QT_TRANSLATE_NOOP("Faults", "{body} is no simple outline"),
            QT_TRANSLATE_NOOP("Faults", "an outline that does not meet itself"),
        ),
    ),
}

_TEXT: Final[dict[str, tuple[Variant, ...]]] = {
    "too-large": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file is larger than {mib} MiB"),
            QT_TRANSLATE_NOOP("Faults", "a smaller one"),
        ),
    ),
    "not-utf-8": (
        (
            QT_TRANSLATE_NOOP("Faults", "byte {byte} (0x{hex}) is not UTF-8"),
            QT_TRANSLATE_NOOP("Faults", "text in UTF-8"),
        ),
    ),
    "byte-order-mark": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file begins with a byte order mark"),
            QT_TRANSLATE_NOOP("Faults", "UTF-8 without one"),
        ),
    ),
    "too-deep": (
        (
            QT_TRANSLATE_NOOP("Faults", "lists and objects are nested more than {deepest} deep"),
            QT_TRANSLATE_NOOP("Faults", "at most {deepest}"),
        ),
    ),
    "not-json": (
        (
            QT_TRANSLATE_NOOP(
                "Faults", "line {line}, column {column} can't be read as JSON: {what}, at {met}"
            ),
            QT_TRANSLATE_NOOP(
                "Faults",
                "JSON: keys and texts in double quotes, commas between values and none after the "
                "last",
            ),
        ),
        (
            QT_TRANSLATE_NOOP(
                "Faults", "line {line}, column {column} can't be read as JSON: {what}"
            ),
            QT_TRANSLATE_NOOP(
                "Faults",
                "JSON: keys and texts in double quotes, commas between values and none after the "
                "last",
            ),
        ),
    ),
    "not-finite": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is no number that can be used"),
            QT_TRANSLATE_NOOP("Faults", "a finite number"),
        ),
        (QT_TRANSLATE_NOOP("Faults", "{body} has a value that is no number"), "mm"),
        (
            QT_TRANSLATE_NOOP("Faults", "is no number"),
            QT_TRANSLATE_NOOP("Faults", "a finite number"),
        ),
    ),
    "repeated-key": (
        (
            QT_TRANSLATE_NOOP("Faults", "the key {named} is stated more than once"),
            QT_TRANSLATE_NOOP("Faults", "each key once"),
        ),
    ),
    "lone-surrogate": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} holds half of a character"),
            QT_TRANSLATE_NOOP("Faults", "whole characters"),
        ),
    ),
    "not-an-object": (
        (
            QT_TRANSLATE_NOOP("Faults", "the document is {value}"),
            QT_TRANSLATE_NOOP("Faults", "an object"),
        ),
    ),
    "format": (
        (QT_TRANSLATE_NOOP("Faults", "the format is {value}"), "{expected}"),
        (QT_TRANSLATE_NOOP("Faults", "no format is stated"), "{expected}"),
    ),
    "version": (
        (
            QT_TRANSLATE_NOOP("Faults", "the version is {value}"),
            QT_TRANSLATE_NOOP("Faults", "a whole number from 1 to {head}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "no version is stated"),
            QT_TRANSLATE_NOOP("Faults", "a whole number from 1 to {head}"),
        ),
    ),
    "newer-version": (
        (
            QT_TRANSLATE_NOOP("Faults", "version {version} is newer than this program reads"),
            QT_TRANSLATE_NOOP("Faults", "{head}, or a newer program"),
        ),
    ),
    "unreadable": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file can't be read: {reason}"),
            QT_TRANSLATE_NOOP("Faults", "a file that can be read"),
        ),
    ),
    "unreadable/missing": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file can't be read: there is no such file"),
            QT_TRANSLATE_NOOP("Faults", "the path of a file that exists"),
        ),
    ),
    "unreadable/folder": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file can't be read: it is a folder"),
            QT_TRANSLATE_NOOP("Faults", "the path of a file in it"),
        ),
    ),
    "unreadable/forbidden": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file can't be read: this user may not read it"),
            QT_TRANSLATE_NOOP("Faults", "a file that this user may read"),
        ),
    ),
}

_SHAPE: Final[dict[str, tuple[Variant, ...]]] = {
    "more-faults": (
        (
            QT_TRANSLATE_NOOP("Faults", "there are {more} faults more"),
            QT_TRANSLATE_NOOP("Faults", "a file of another kind"),
        ),
    ),
    "missing-key": (
        (
            QT_TRANSLATE_NOOP("Faults", "{named} is missing"),
            QT_TRANSLATE_NOOP("Faults", "an object with the key {named}"),
        ),
    ),
    "unknown-key": (
        (QT_TRANSLATE_NOOP("Faults", "{named} is no key here"), "{near}"),
        (
            QT_TRANSLATE_NOOP("Faults", "{named} is no key here"),
            QT_TRANSLATE_NOOP("Faults", "one of {known}, or a key that begins {prefix}"),
        ),
    ),
    "not-a-choice": ((QT_TRANSLATE_NOOP("Faults", "is {value}"), "{expected}"),),
    "out-of-range": (
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "more than {more_than}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "{at_least} or more"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "less than {less_than}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "{at_most} or less"),
        ),
    ),
    "wrong-count": (
        (
            QT_TRANSLATE_NOOP("Faults", "has {values} values"),
            QT_TRANSLATE_NOOP("Faults", "at least {at_least}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "has {values} values"),
            QT_TRANSLATE_NOOP("Faults", "at most {at_most}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "has {characters} characters"),
            QT_TRANSLATE_NOOP("Faults", "at least {at_least} character"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "has {characters} characters"),
            QT_TRANSLATE_NOOP("Faults", "at most {at_most} characters"),
        ),
    ),
    "finite-number": (
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "a finite number"),
        ),
    ),
}

_KINDS: Final = {
    "float-type": QT_TRANSLATE_NOOP("Faults", "a number"),
    "float-parsing": QT_TRANSLATE_NOOP("Faults", "a number"),
    "int-type": QT_TRANSLATE_NOOP("Faults", "a whole number"),
    "bool-type": QT_TRANSLATE_NOOP("Faults", "true or false"),
    "string-type": QT_TRANSLATE_NOOP("Faults", "text"),
    "list-type": QT_TRANSLATE_NOOP("Faults", "a list"),
    "dict-type": QT_TRANSLATE_NOOP("Faults", "an object"),
    "model-type": QT_TRANSLATE_NOOP("Faults", "an object"),
    "model-attributes-type": QT_TRANSLATE_NOOP("Faults", "an object"),
}

_STATED: Final[dict[str, tuple[Variant, ...]]] = {
    "text": (
        (
            QT_TRANSLATE_NOOP("Faults", "the text in {tag} is {value}"),
            QT_TRANSLATE_NOOP("Faults", "text"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "text, or an object of texts by language such as {sample}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is an empty object"),
            QT_TRANSLATE_NOOP("Faults", "text, or an object of texts by language such as {sample}"),
        ),
    ),
    "language": ((QT_TRANSLATE_NOOP("Faults", "{tag} is no language tag"), '"en", "es-MX"'),),
    "text-long": (
        (
            QT_TRANSLATE_NOOP("Faults", "has {count} characters"),
            QT_TRANSLATE_NOOP("Faults", "at most {at_most}"),
        ),
    ),
    "size": (
        (
            QT_TRANSLATE_NOOP("Faults", "{stated} is no length with its unit"),
            QT_TRANSLATE_NOOP(
                "Faults", 'a length above 0 and at most {largest} mm, as 8, "8 mm" or "5/16 in"'
            ),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP(
                "Faults", 'a length above 0 and at most {largest} mm, as 8, "8 mm" or "5/16 in"'
            ),
        ),
    ),
    "leaf": (
        (QT_TRANSLATE_NOOP("Faults", "{mark} has no unit"), "{meant}"),
        (
            QT_TRANSLATE_NOOP("Faults", "no rack has a leaf {mark}"),
            QT_TRANSLATE_NOOP("Faults", "one of: {known}"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", 'a mark such as "8 mm", "5/16 in", "a 4 mm"'),
        ),
    ),
    "empty-file": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file is empty"),
            QT_TRANSLATE_NOOP("Faults", 'a first line with "format": "{expected}" and "version"'),
        ),
    ),
    "unknown-coupon": ((QT_TRANSLATE_NOOP("Faults", "the tray has no coupon {named}"), "{known}"),),
    "unknown-rules": (
        (
            QT_TRANSLATE_NOOP("Faults", "no rule set is called {rules}"),
            QT_TRANSLATE_NOOP("Faults", "one of: {known}"),
        ),
    ),
    "repeated-id": (
        (
            QT_TRANSLATE_NOOP("Faults", "{named} is the id of coupon {other} too"),
            QT_TRANSLATE_NOOP("Faults", "an id of its own"),
        ),
    ),
}

VALUES: Final = {
    "a list": QT_TRANSLATE_NOOP("Faults", "a list"),
    "an object": QT_TRANSLATE_NOOP("Faults", "an object"),
    "no finite number": QT_TRANSLATE_NOOP("Faults", "no finite number"),
    "base": QT_TRANSLATE_NOOP("Faults", "base"),
    "upright": QT_TRANSLATE_NOOP("Faults", "upright"),
    "there is nothing here": QT_TRANSLATE_NOOP("Faults", "there is nothing here"),
    "expecting value": QT_TRANSLATE_NOOP("Faults", "expecting value"),
    "expecting property name enclosed in double quotes": QT_TRANSLATE_NOOP(
        "Faults", "expecting property name enclosed in double quotes"
    ),
    "expecting ':' delimiter": QT_TRANSLATE_NOOP("Faults", "expecting ':' delimiter"),
    "expecting ',' delimiter": QT_TRANSLATE_NOOP("Faults", "expecting ',' delimiter"),
    "extra data": QT_TRANSLATE_NOOP("Faults", "extra data"),
    "its end": QT_TRANSLATE_NOOP("Faults", "its end"),
    "leg_base": QT_TRANSLATE_NOOP("Faults", "the base leg"),
    "leg_upright": QT_TRANSLATE_NOOP("Faults", "the upright leg"),
    "width": QT_TRANSLATE_NOOP("Faults", "the width"),
    "depth": QT_TRANSLATE_NOOP("Faults", "the depth"),
    "length": QT_TRANSLATE_NOOP("Faults", "the length"),
    "height": QT_TRANSLATE_NOOP("Faults", "the height"),
    "wear": QT_TRANSLATE_NOOP("Faults", "the leaf's wear"),
    "base_thickness": QT_TRANSLATE_NOOP("Faults", "the base's thickness"),
    "upright_thickness": QT_TRANSLATE_NOOP("Faults", "the upright's thickness"),
    "base_length": QT_TRANSLATE_NOOP("Faults", "the base's length"),
    "upright_length": QT_TRANSLATE_NOOP("Faults", "the upright's length"),
    "left": QT_TRANSLATE_NOOP("Faults", "the photo's left edge"),
    "top": QT_TRANSLATE_NOOP("Faults", "the photo's upper edge"),
    "mm_per_pixel": QT_TRANSLATE_NOOP("Faults", "a pixel of the photo, in mm,"),
}
"""Values that are words; what isn't here is shown as the file has it."""

_PLACED: Final[dict[str, tuple[Variant, ...]]] = {
    "placed-missing": (
        (
            QT_TRANSLATE_NOOP("Faults", "no leaf is placed that could be judged"),
            QT_TRANSLATE_NOOP("Faults", 'a key "placed"'),
        ),
    ),
    "placed-turned": (
        (
            QT_TRANSLATE_NOOP("Faults", "the throat edge is turned over"),
            QT_TRANSLATE_NOOP("Faults", "false: it lies the same on either member"),
        ),
    ),
    "placed-in-steel": (
        (
            QT_TRANSLATE_NOOP("Faults", "the leaf stands {depth} mm inside steel"),
            QT_TRANSLATE_NOOP("Faults", "a pose that enters no steel"),
        ),
    ),
    "placed-aloft": (
        (
            QT_TRANSLATE_NOOP("Faults", "the leaf touches nothing"),
            QT_TRANSLATE_NOOP("Faults", "a pose in which it touches steel"),
        ),
    ),
    "placed-unsettled": (
        (
            QT_TRANSLATE_NOOP("Faults", "no leaf can settle the size of this weld"),
            QT_TRANSLATE_NOOP("Faults", "a weld that a leaf can settle"),
        ),
    ),
    "placed-adrift": (
        (
            QT_TRANSLATE_NOOP("Faults", "the leaf isn't home, and no answer says so"),
            QT_TRANSLATE_NOOP("Faults", "a leaf that is home, tilted, or on spatter"),
        ),
    ),
}

CODES: Final[dict[str, tuple[Variant, ...]]] = {
    **_GEOMETRY,
    **_PLACED,
    **_TEXT,
    **_SHAPE,
    **_STATED,
    **{
        kind: ((QT_TRANSLATE_NOOP("Faults", "is {value}"), wanted),)
        for kind, wanted in _KINDS.items()
    },
}
"""The words of every code, wrong and right, in English; each is translated when it is said."""
