"""What is said of a leaf that somebody has placed: their claim, the answers, and what is true.

No widgets here. Before a call only the claim and the answers are said.
"""

from __future__ import annotations

from collections.abc import Sequence

from exercises.coupon import Coupon
from exercises.placed import PLACEMENT_FAULTS
from exercises.placement_faults import Finding, placed_leaf
from geometry.lengths import Unit
from geometry.reading import Reading, read
from trainer.bench import words
from trainer.bench.translation import translate
from trainer.figures import length_words, number_words

__all__ = [
    "claim_lines",
    "fault_gloss",
    "fault_list",
    "fault_word",
    "finding_words",
    "placed_shows",
]


def fault_word(fault: str) -> str:
    """One answer to what is wrong."""
    return {
        "wrong edge": translate("Placed", "Wrong edge"),
        "wrong leaf": translate("Placed", "Wrong leaf"),
        "tilted": translate("Placed", "Tilted"),
        "on spatter": translate("Placed", "On spatter"),
        "one leg only": translate("Placed", "One leg only"),
        "wrong member": translate("Placed", "Wrong member"),
        "nothing": translate("Placed", "Nothing is wrong"),
    }[fault]


def fault_gloss(fault: str) -> str:
    """What an answer means."""
    return {
        "wrong edge": translate("Placed", "the face needs the other"),
        "wrong leaf": translate("Placed", "not the size called for"),
        "tilted": translate("Placed", "not flush, it leans"),
        "on spatter": translate("Placed", "a drop holds it up"),
        "one leg only": translate("Placed", "the other is owed"),
        "wrong member": translate("Placed", "it reads the other leg"),
        "nothing": translate("Placed", "held as it should be"),
    }[fault]


def fault_list(faults: Sequence[str]) -> str:
    """Several answers in one line."""
    return ", ".join(fault_word(f).lower() for f in PLACEMENT_FAULTS if f in faults)


def claim_lines(coupon: Coupon) -> tuple[str, ...]:
    """What the person says who placed the leaf: what they go by, and what they have gauged."""
    placed = coupon.placed
    if placed is None:
        return ()
    if placed.edge == "throat":
        held = translate("Placed", "Goes by: {mark}, throat edge")
    else:
        held = {
            "base": translate("Placed", "Goes by: {mark}, leg edge, base leg"),
            "upright": translate("Placed", "Goes by: {mark}, leg edge, upright leg"),
        }[placed.on]
    gauged = {
        frozenset[str](): translate("Placed", "Legs gauged: none. They say they are done."),
        frozenset({"base"}): translate("Placed", "Legs gauged: base. They say they are done."),
        frozenset({"upright"}): translate(
            "Placed", "Legs gauged: upright. They say they are done."
        ),
        frozenset({"base", "upright"}): translate(
            "Placed", "Legs gauged: base and upright. They say they are done."
        ),
    }[frozenset(placed.gauged)]
    return held.format(mark=placed.leaf), gauged


def placed_shows(coupon: Coupon) -> Reading:
    """What the placed leaf truly shows: only ever once the call is on record."""
    if coupon.placed is None:
        raise ValueError(f"no leaf is placed on coupon {coupon.id!r}")
    return read(coupon.section, placed_leaf(coupon), coupon.placed.pose, coupon.eye_limit)


def finding_words(found: Finding, unit: Unit) -> str:
    """One thing that is wrong, and why it is."""
    params = found.params
    if found.fault == "wrong edge":
        return _edge_words(str(params["edge"]), str(params["face"]))
    if found.fault == "wrong leaf":
        text = translate("Placed", "Wrong leaf: {leaf}, where the limit needs {leaves}.")
        return text.format(leaf=params["leaf"], leaves=params["leaves"])
    if found.fault == "tilted":
        text = translate(
            "Placed",
            "Tilted: {degrees}\u00b0 off, so its edge gapes by {opening} and it tells nothing.",
        )
        return text.format(
            degrees=number_words(round(float(params["degrees"]), 1)),
            opening=length_words(float(params["opening"]), unit),
        )
    if found.fault == "on spatter":
        return translate(
            "Placed", "On spatter: a drop keeps it off the steel. Clean the toes, seat it again."
        )
    if found.fault == "one leg only":
        return _legs_words(str(params["missing"]).split(", "))
    text = translate(
        "Placed", "Wrong member: as it lies, the tip reads the {held_on} leg, not the {on} leg."
    )
    return text.format(
        held_on=words.piece_word(str(params["held_on"])), on=words.piece_word(str(params["on"]))
    )


def _edge_words(edge: str, face: str) -> str:
    if edge == "leg":
        return translate(
            "Placed", "Wrong edge: a hollow face is gone by at the throat, with the throat edge."
        )
    if face == "flat":
        return translate(
            "Placed", "Wrong edge: the two legs differ, and a spur on the bisector shows neither."
        )
    return translate(
        "Placed",
        "Wrong edge: the face is convex, and at the throat its crown flatters it. Its legs "
        "decide, with the leg edge.",
    )


def _legs_words(missing: Sequence[str]) -> str:
    if len(missing) > 1:
        return translate("Placed", "One leg only, or not even that: both count, neither is gauged.")
    text = translate("Placed", "One leg only: the leg on the {member} was not gauged.")
    return text.format(member=words.piece_word(missing[0]))
