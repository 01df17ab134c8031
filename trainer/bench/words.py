"""What the bench says: names of members, edges, states, pieces and tasks, in the user's language.

Every text is looked up when it is asked for, so that a change of language needs no restart.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QLocale

from exercises.attempt import StatedReading
from exercises.coupon import Coupon
from exercises.rules import RuleSet
from geometry.contact import Touch
from geometry.lengths import Unit
from geometry.section import Section
from trainer.bench.translation import translate
from trainer.figures import length_words, number_words

__all__ = [
    "contacts",
    "disposition_word",
    "edge_word",
    "face_word",
    "is_point",
    "joint_words",
    "language",
    "leg_word",
    "length_word",
    "piece_word",
    "reading_seat",
    "reading_tool",
    "rules_lines",
    "rules_word",
    "state_word",
    "task_words",
]


def language() -> str:
    """The tag of the language that the program speaks."""
    return QLocale().name()


def length_word(length: float, unit: Unit) -> str:
    """A length to the precision that a person can use: two places of mm, three of an inch."""
    return length_words(length, unit)


def joint_words(section: Section, unit: Unit) -> str:
    """The joint: ``T, 90°, plates 12 mm, tight fit``."""
    joint = section.joint
    kind = (
        translate("Bench", "T")
        if abs(joint.angle - 90.0) < 1e-9
        else translate("Bench", "skewed T")
    )
    base, upright = (length_word(joint.thickness(member), unit) for member in ("base", "upright"))
    plates = (
        translate("Bench", "plates {size}").format(size=base)
        if base == upright
        else translate("Bench", "base {base}, upright {upright}").format(base=base, upright=upright)
    )
    fit = (
        translate("Bench", "root opening {size}").format(size=length_word(joint.root_opening, unit))
        if joint.root_opening > 0.0
        else translate("Bench", "tight fit")
    )
    return f"{kind}, {number_words(joint.angle)}\u00b0, {plates}, {fit}"


def rules_word(rules: RuleSet) -> str:
    """A rule set's title."""
    return rules.title.in_language(language())


def rules_lines(coupon: Coupon) -> str:
    """All that a coupon's rules say, each apart, in the column that its callout is in."""
    tag = language()
    lines = coupon.rule_set.lines_in(coupon.callout.unit)
    return "\n\n".join(line.in_language(tag) for line in lines)


def task_words(task: str) -> str:
    """What the coupon asks of the learner."""
    return {
        "read": translate("Bench", "Seat the leaf and state what it shows."),
        "size": translate(
            "Bench", "State the largest leaf that this weld meets, and the next, which it doesn't."
        ),
        "judge": translate("Bench", "Judge this weld against its callout."),
        "find the fault": translate(
            "Bench", "Say what is wrong with how this leaf was placed, if anything is."
        ),
    }[task]


def face_word(face: str) -> str:
    """``convex``, ``flat``, ``concave`` as the bench says them."""
    return {
        "convex": translate("Bench", "Convex"),
        "flat": translate("Bench", "Flat"),
        "concave": translate("Bench", "Hollow"),
    }[face]


def state_word(state: str) -> str:
    """A leaf's state."""
    return {
        "touch": translate("Bench", "Touch"),
        "daylight": translate("Bench", "Daylight"),
        "held off": translate("Bench", "Held off"),
        "not seated": translate("Bench", "Not seated"),
    }[state]


def disposition_word(disposition: str) -> str:
    """What should happen to the weld."""
    return {
        "accept": translate("Bench", "Accept"),
        "add weld metal": translate("Bench", "Add weld metal"),
        "dress back": translate("Bench", "Dress back"),
        "refer": translate("Bench", "Refer"),
    }[disposition]


def edge_word(edge: str) -> str:
    """Which end of the leaf works."""
    return {"leg": translate("Bench", "leg edge"), "throat": translate("Bench", "throat edge")}[
        edge
    ]


def leg_word(member: str) -> str:
    """The leg that a tip on `member` reads."""
    return {"base": translate("Bench", "Base leg"), "upright": translate("Bench", "Upright leg")}[
        member
    ]


def reading_seat(reading: StatedReading) -> str:
    """What a stated reading is of: a leg or the throat."""
    return (
        translate("Bench", "Throat")
        if reading.edge == "throat"
        else leg_word(reading.on or "upright")
    )


def reading_tool(reading: StatedReading) -> str:
    """The leaf and edge of a stated reading: ``8 mm, leg edge``."""
    return translate("Bench", "{mark}, {edge}").format(
        mark=reading.leaf or "", edge=edge_word(reading.edge or "leg")
    )


def piece_word(piece: str) -> str:
    """A piece of the leaf or of the section, as a person calls it."""
    if piece.startswith("spatter"):
        return translate("Bench", "spatter")
    known = {
        "long": translate("Bench", "long edge"),
        "end": translate("Bench", "end edge"),
        "arc": translate("Bench", "arc"),
        "back": translate("Bench", "back"),
        "base": translate("Bench", "base"),
        "upright": translate("Bench", "upright"),
        "face": translate("Bench", "weld face"),
        "overlap_base": translate("Bench", "lip on the base"),
        "overlap_upright": translate("Bench", "lip on the upright"),
        "undercut_base": translate("Bench", "groove in the base"),
        "undercut_upright": translate("Bench", "groove in the upright"),
    }
    return known.get(piece, translate("Bench", "plate"))


def is_point(name: str, edge: str) -> bool:
    """Whether a touching part is the leaf's tip, or the spur of its throat edge.

    Examples
    --------
    >>> is_point("arc|end", "leg"), is_point("arc|end", "throat"), is_point("arc|arc", "throat")
    (True, False, True)
    """
    return sorted(name.split("|")) == (["arc", "end"] if edge == "leg" else ["arc", "arc"])


def _leaf_part(name: str, edge: str) -> str:
    """A touching part of the leaf; a corner by what a person would call it."""
    if is_point(name, edge):
        return translate("Bench", "tip") if edge == "leg" else translate("Bench", "spur")
    pieces = name.split("|")
    straight = [piece for piece in pieces if piece in ("long", "end")]
    return piece_word((straight or pieces)[0])


def contacts(touches: Sequence[Touch], edge: str) -> str:
    """Which parts of a leaf's edge touch what, and nothing more.

    Examples
    --------
    >>> contacts([Touch("long|back", "base", (9.0, 0.0))], "leg")
    'long edge on base'
    """
    pairs = dict.fromkeys(
        translate("Bench", "{leaf} on {steel}").format(
            leaf=_leaf_part(touch.moving, edge),
            steel=translate("Bench", " and ").join(
                dict.fromkeys(piece_word(piece) for piece in touch.fixed.split("|"))
            ),
        )
        for touch in touches
    )
    return "; ".join(pairs) if pairs else translate("Bench", "in the air")
