"""What the bench tells a screen reader: before a call contacts and places, after it the readings.

Places are whole millimetres (or sixteenths of an inch) and whole degrees. Finer figures would be a
measuring instrument of their own: by them a leaf that is held off by less than an eye can see
would tell so before the call.
"""

from __future__ import annotations

from collections.abc import Sequence

from exercises.grading import Grade
from geometry.contact import Touch
from geometry.leaf import Leaf
from geometry.lengths import Unit
from geometry.pose import Pose
from geometry.reading import Reading
from geometry.section import Section
from trainer.bench import words
from trainer.bench.state import seat_of
from trainer.bench.steps import STEPS
from trainer.bench.terms import FREE, Terms
from trainer.bench.translation import translate
from trainer.bench.truth import Told
from trainer.canvas.spoken import Action, Part
from trainer.figures import length_words

__all__ = [
    "call_words",
    "contact_words",
    "leaf_actions",
    "parts_of",
    "reading_words",
    "shown_words",
]

_SIXTEENTH = 25.4 / 16.0


def parts_of(
    section: Section,
    leaf: Leaf | None,
    pose: Pose | None,
    touches: Sequence[Touch] | None,
    unit: Unit,
    shown: str = "",
) -> tuple[Part, ...]:
    """Section, leaf and tip in words.

    Parameters
    ----------
    touches
        What touches what, as the last move left it; None where that isn't known.
    unit
        Of the places.
    shown
        What the leaf shows, in words: only ever once the call is on record.
    """
    parts = [Part("section", translate("Spoken", "Section"), _section_words(section))]
    if leaf is None or pose is None:
        return tuple(parts)
    name = translate("Spoken", "Leaf {mark}, {edge}").format(
        mark=leaf.mark, edge=words.edge_word(leaf.edge)
    )
    tip = translate("Spoken", "Tip") if leaf.edge == "leg" else translate("Spoken", "Spur")
    at = _place_words(pose.to_section(leaf.point), unit)
    held, reached = "", ""
    if touches is not None:
        held = words.contacts(touches, leaf.edge)
        reached = words.contacts(
            [touch for touch in touches if words.is_point(touch.moving, leaf.edge)], leaf.edge
        )
    return (
        *parts,
        Part("leaf", name, _joined(_pose_words(leaf, pose, unit), held)),
        Part("tip", tip, _joined(at, reached, shown)),
    )


def _joined(*parts: str) -> str:
    return "; ".join(part for part in parts if part)


def _section_words(section: Section) -> str:
    """Every body and groove that one sees, by name; spatter once, however much there is."""
    grooves = [name for name in section.outline.piece_names if name.startswith("undercut")]
    names = [
        translate("Spoken", "bead") if name == "weld" else words.piece_word(name)
        for name in (*(body.name for body in section.bodies), *grooves)
    ]
    return ", ".join(dict.fromkeys(names))


def _pose_words(leaf: Leaf, pose: Pose, unit: Unit) -> str:
    where = _place_words((pose.x, pose.y), unit)
    angle = translate("Spoken", "long edge at about {angle}\u00b0").format(
        angle=round(pose.angle) + 0
    )
    if leaf.edge == "throat":
        return translate("Spoken", "corner {where}, {angle}").format(where=where, angle=angle)
    side = (
        translate("Spoken", "turned over")
        if seat_of(leaf, pose) == "base"
        else translate("Spoken", "not turned over")
    )
    return translate("Spoken", "corner {where}, {angle}, {side}").format(
        where=where, angle=angle, side=side
    )


def _place_words(at: tuple[float, float], unit: Unit) -> str:
    """A place beside the root: ``about 3 mm right and 8 mm up from the root``."""
    step = 1.0 if unit == "mm" else _SIXTEENTH
    right, up = (step * round(part / step) for part in at)
    form = {
        (True, True): translate("Spoken", "about {across} right and {along} up from the root"),
        (True, False): translate("Spoken", "about {across} right and {along} down from the root"),
        (False, True): translate("Spoken", "about {across} left and {along} up from the root"),
        (False, False): translate("Spoken", "about {across} left and {along} down from the root"),
    }[right >= 0.0, up >= 0.0]
    return form.format(across=length_words(abs(right), unit), along=length_words(abs(up), unit))


def contact_words(leaf: Leaf | None, touches: Sequence[Touch]) -> str:
    """What is announced when the leaf comes to rest: which parts touch, and nothing more."""
    if leaf is None:
        return translate("Spoken", "No leaf in hand")
    return translate("Spoken", "{leaf}: {contacts}").format(
        leaf=f"{leaf.mark}, {words.edge_word(leaf.edge)}",
        contacts=words.contacts(touches, leaf.edge),
    )


def leaf_actions(terms: Terms = FREE) -> tuple[Action, ...]:
    """What a screen reader may do to the leaf: the steps that have a button, and their keys."""
    return tuple(
        Action(step.name, step.said, step.key) for step in STEPS if not terms.refuses(step.name)
    )


def shown_words(shown: Reading, unit: Unit) -> str:
    """What a leaf shows, in words: ``daylight, 0.42 mm``."""
    state = words.state_word(shown.state)
    if shown.gap is None:
        return state
    return f"{state}, {length_words(shown.gap, unit, decimals=2 if unit == 'mm' else 3)}"


def reading_words(told: Told, unit: Unit) -> str:
    """One reading of a call on record: leaf, edge, seat and what it truly showed."""
    leg = (
        translate("Spoken", "throat")
        if told.leaf.edge == "throat"
        else words.leg_word(seat_of(told.leaf, told.pose))
    )
    return translate("Spoken", "{mark}, {edge}, {leg}: {shown}").format(
        mark=told.leaf.mark,
        edge=words.edge_word(told.leaf.edge),
        leg=leg,
        shown=shown_words(told.shown, unit),
    )


def call_words(grade: Grade, told: Sequence[Told], unit: Unit) -> str:
    """What is announced once a call is on record: how it was marked, and what each leaf showed."""
    mark = translate("Spoken", "On record, {score} of 100.").format(score=round(100 * grade.score))
    return " ".join([mark, *(f"{reading_words(each, unit)}." for each in told)])
