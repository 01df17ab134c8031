"""What the four corners say, in the user's language: headings, verdicts, limits, names.

Every text is looked up when it is asked for, so that a change of language needs no restart.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from geometry.lengths import Unit
from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.bench.words import edge_word, state_word
from trainer.corners.pressing import Corner
from trainer.corners.state import PAIRS, Corners, Drawn, Knob, Limit, Pair, crown_of
from trainer.corners.verdict import Trust, Verdict
from trainer.figures import length_words, number_words

__all__ = [
    "angle_word",
    "bead_word",
    "crown_word",
    "drawn_word",
    "gap_word",
    "heading",
    "knob_word",
    "length_word",
    "limit_words",
    "pair_word",
    "sentence",
    "spoken",
    "trust_word",
    "value_word",
]

_SENTENCES: Final[Mapping[str, str]] = {
    "leg-touch-convex": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg meets {leaf}, and on a convex bead the legs set the size; turn the leaf "
        "over for the other leg.",
    ),
    "leg-touch-flat": QT_TRANSLATE_NOOP(
        "Corners", "The {member} leg meets {leaf}; on a flat face both edges give this answer."
    ),
    "leg-touch-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg meets {leaf}, but only the throat edge shows that so slight a hollow "
        "costs nothing.",
    ),
    "leg-touch-other-short": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg meets {leaf}, but the {other} leg is only {other_leg}: turn the leaf "
        "over.",
    ),
    "leg-touch-false-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The toe stands at {leg}, but the hollow leaves a size of only {size}: ask the throat "
        "edge.",
    ),
    "leg-touch-false": QT_TRANSLATE_NOOP(
        "Corners", "The face bulges up to the tip, yet the size is only {size}: look at the toe."
    ),
    "leg-off": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg is larger than {leaf}; how much larger only a larger leaf can tell.",
    ),
    "leg-off-bulge": QT_TRANSLATE_NOOP(
        "Corners",
        "The face bulges past its toe and holds the tip off; the {member} leg is {leg}, no "
        "larger than the leaf.",
    ),
    "leg-off-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg is larger than {leaf}; what the hollow takes from it, this edge doesn't "
        "show.",
    ),
    "leg-off-other-short": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg is larger than {leaf}, but the {other} leg is only {other_leg}: turn "
        "the leaf over.",
    ),
    "leg-off-false-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg is larger than {leaf}, but the hollow leaves a size of only {size}: ask "
        "the throat edge.",
    ),
    "leg-off-false": QT_TRANSLATE_NOOP(
        "Corners",
        "The face bulges past its toe and holds the tip off, yet the size is only {size}.",
    ),
    "leg-daylight": QT_TRANSLATE_NOOP(
        "Corners", "The {member} leg is {gap} short of {leaf}; no crown makes up for a short leg."
    ),
    "leg-daylight-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The {member} leg is {gap} short; the hollow takes the size down to {size}, which this "
        "edge doesn't show.",
    ),
    "leg-daylight-skewed": QT_TRANSLATE_NOOP(
        "Corners",
        "At {angle} the tip sees only {square} of the {leg} leg, so it shows daylight on a weld of "
        "full size.",
    ),
    "leg-daylight-skewed-short": QT_TRANSLATE_NOOP(
        "Corners",
        "At {angle} the tip sees only {square} of the {leg} leg; the size is {size}, and the gap "
        "tells neither.",
    ),
    "leg-leaning": QT_TRANSLATE_NOOP(
        "Corners",
        "At {angle} the end edge strikes the leaning plate before the tip can: here this leaf "
        "can't read a leg.",
    ),
    "leg-carried-leg": QT_TRANSLATE_NOOP(
        "Corners",
        "The {other} leg, {other_leg}, reaches under the edge and lifts the leaf: take a larger "
        "one.",
    ),
    "leg-carried-crown": QT_TRANSLATE_NOOP(
        "Corners",
        "The crown, {crown}, fills the leaf's relief and carries it: nothing is read of the leg.",
    ),
    "leg-carried": QT_TRANSLATE_NOOP(
        "Corners",
        "Weld metal carries the leaf before it comes home: nothing is read.",
    ),
    "leg-not-home": QT_TRANSLATE_NOOP(
        "Corners", "The leaf doesn't come home in this joint: nothing is read."
    ),
    "throat-touch-convex": QT_TRANSLATE_NOOP(
        "Corners",
        "The face stands as high as a flat {leaf} weld's; it is the legs that decide, and this "
        "edge doesn't show them.",
    ),
    "throat-touch-flat": QT_TRANSLATE_NOOP(
        "Corners", "The throat is that of {leaf}; on a flat face both edges give this answer."
    ),
    "throat-touch-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The throat is that of {leaf}, which decides on a hollow bead; gauge both legs as well.",
    ),
    "throat-touch-false-legs": QT_TRANSLATE_NOOP(
        "Corners",
        "The crown fills the throat, but the legs are only {short_leg}: this edge flatters a "
        "convex bead.",
    ),
    "throat-touch-false-parted": QT_TRANSLATE_NOOP(
        "Corners",
        "It looks at the middle alone: with legs of {leg} and {other_leg} the size is only {size}.",
    ),
    "throat-touch-false": QT_TRANSLATE_NOOP(
        "Corners", "In the middle there is enough, yet the size is only {size}: gauge both legs."
    ),
    "throat-off-convex": QT_TRANSLATE_NOOP(
        "Corners", "The spur rides the crown: enough throat, but it tells nothing of the legs."
    ),
    "throat-off-flat": QT_TRANSLATE_NOOP(
        "Corners",
        "The throat is more than that of {leaf}; how much more only a larger leaf can tell.",
    ),
    "throat-off-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "Even in its hollow the throat is more than that of {leaf}; gauge both legs as well.",
    ),
    "throat-off-false-legs": QT_TRANSLATE_NOOP(
        "Corners",
        "The spur rides the crown, which hides that the legs are only {short_leg}.",
    ),
    "throat-off-false-parted": QT_TRANSLATE_NOOP(
        "Corners",
        "The spur rides the middle: with legs of {leg} and {other_leg} the size is only {size}.",
    ),
    "throat-off-false": QT_TRANSLATE_NOOP(
        "Corners", "The spur rides the middle, yet the size is only {size}: gauge both legs."
    ),
    "throat-daylight-convex": QT_TRANSLATE_NOOP(
        "Corners",
        "Even with its crown the throat is {gap} short; the legs decide, and this edge doesn't "
        "show them.",
    ),
    "throat-daylight-flat": QT_TRANSLATE_NOOP(
        "Corners", "The throat is {gap} short, a size of {size}: the leg edge would say the same."
    ),
    "throat-daylight-hollow": QT_TRANSLATE_NOOP(
        "Corners",
        "The throat is {gap} short: the hollow leaves a size of {size}, whatever the legs show.",
    ),
    "throat-skewed": QT_TRANSLATE_NOOP(
        "Corners",
        "At {angle} the two edges can't both lie flush, so the spur has no place to read from.",
    ),
    "throat-carried-legs": QT_TRANSLATE_NOOP(
        "Corners", "The legs reach under the edges and lift the leaf: take a larger one."
    ),
    "throat-carried": QT_TRANSLATE_NOOP(
        "Corners", "The crown carries the leaf beside its spur: nothing is read."
    ),
    "throat-not-home": QT_TRANSLATE_NOOP(
        "Corners", "The edges don't both come to lie flush in this joint: nothing is read."
    ),
}
"""By code: what it tells, and what it hides."""


def length_word(length: float, unit: Unit) -> str:
    """A length as precisely as one speaks of it: a tenth of a millimetre, a hundredth of an inch.

    Examples
    --------
    >>> length_word(6.1612, "mm"), length_word(7.9375, "in"), length_word(6.1612, "in")
    ('6.2 mm', '5/16 in', '0.24 in')
    """
    if unit == "mm":
        return length_words(round(length, 1) + 0.0, "mm", decimals=1)
    exact = length_words(length, "in")
    return exact if "/" in exact else length_words(length, "in", decimals=2)


def angle_word(angle: float) -> str:
    """An angle in degrees, a tenth where there is one."""
    return f"{number_words(round(angle, 1))}\u00b0"


def crown_word(crown: float, unit: Unit) -> str:
    """A crown with its sign: above zero it bulges."""
    word = length_word(abs(crown), unit)
    if round(crown, 2) == 0.0:
        return word
    return f"{'+' if crown > 0.0 else chr(0x2212)}{word}"


def _member_word(member: str) -> str:
    return {"base": translate("Corners", "base"), "upright": translate("Corners", "upright")}[
        member
    ]


def sentence(verdict: Verdict, unit: Unit) -> str:
    """What a state tells and what it hides, in one sentence."""
    lengths = {"leg", "other_leg", "short_leg", "square", "size", "crown"}
    words: dict[str, str] = {}
    for key, value in verdict.params.items():
        if key in ("member", "other"):
            words[key] = _member_word(str(value))
        elif key == "angle":
            words[key] = angle_word(float(value))
        elif key == "gap":
            words[key] = _gap_length(float(value), unit)
        elif key in lengths:
            words[key] = length_word(float(value), unit)
        else:
            words[key] = str(value)
    return translate("Corners", _SENTENCES[verdict.code]).format_map(words)


def trust_word(trust: Trust) -> str:
    """What a state is worth, in a word or two."""
    return {
        "honest": translate("Corners", "Honest"),
        "half": translate("Corners", "Half the story"),
        "false comfort": translate("Corners", "False comfort"),
        "false alarm": translate("Corners", "False alarm"),
        "silent": translate("Corners", "Says nothing"),
    }[trust]


def bead_word(face: str) -> str:
    """The bead by its true face."""
    return {
        "convex": translate("Corners", "Convex bead"),
        "flat": translate("Corners", "Flat bead"),
        "concave": translate("Corners", "Hollow bead"),
    }[face]


def heading(corner: Corner) -> str:
    """What a corner shows: ``Convex bead \u00b7 leg edge``."""
    return f"{bead_word(corner.measures.face)} \u00b7 {edge_word(corner.edge)}"


def gap_word(corner: Corner, unit: Unit) -> str:
    """The gap beside the state; nothing where there is none."""
    gap = corner.reading.gap
    return "" if gap is None else _gap_length(gap, unit)


def _gap_length(gap: float, unit: Unit) -> str:
    """A gap, as finely as it can matter beside the eye limit."""
    return length_words(gap, unit, decimals=2 if unit == "mm" else 3)


def spoken(corner: Corner, unit: Unit) -> str:
    """A whole corner for who can't see it."""
    return translate("Corners", "{heading}: {state}. {trust}. {sentence}").format(
        heading=heading(corner),
        state=" ".join(filter(None, (state_word(corner.reading.state), gap_word(corner, unit)))),
        trust=trust_word(corner.verdict.trust),
        sentence=sentence(corner.verdict, unit),
    )


def knob_word(knob: Knob) -> str:
    """What a knob sets."""
    return {
        "leg_base": translate("Corners", "Base leg"),
        "leg_upright": translate("Corners", "Upright leg"),
        "crown": translate("Corners", "Upper crown"),
        "hollow": translate("Corners", "Lower crown"),
        "angle": translate("Corners", "Joint angle"),
    }[knob]


def pair_word(pair: Pair) -> str:
    """The two corners above, or the two below."""
    return {
        "crown": translate("Corners", "upper bead"),
        "hollow": translate("Corners", "lower bead"),
    }[pair]


def value_word(state: Corners, knob: Knob, unit: Unit) -> str:
    """What a knob stands at, as one reads it."""
    if knob == "angle":
        return angle_word(state.angle)
    if knob in PAIRS:
        return crown_word(crown_of(state, knob), unit)
    return length_word(state.value(knob), unit)


def drawn_word(drawn: Drawn) -> str:
    """What can be drawn over the sections."""
    return {
        "legs": translate("Corners", "Legs"),
        "triangle": translate("Corners", "Triangle"),
        "throats": translate("Corners", "Throats"),
    }[drawn]


def limit_words(limit: Limit, unit: Unit) -> str:
    """Why a value was held, in a quiet line."""
    if limit.code == "face":
        crown = crown_word(limit.value, unit)
        if limit.value < 0.0:
            return translate(
                "Corners", "The hollow stays at {crown}: any deeper and the face enters a plate."
            ).format(crown=crown)
        return translate(
            "Corners", "The crown stays at {crown}: any rounder and the face enters a plate."
        ).format(crown=crown)
    if limit.knob == "angle":
        return translate("Corners", "A fillet's joint opens 60\u00b0 to 135\u00b0.")
    if limit.knob in ("crown", "hollow"):
        return translate("Corners", "A crown goes to {value} here.").format(
            value=crown_word(limit.value, unit)
        )
    return translate("Corners", "A leg goes to {value} here.").format(
        value=length_word(limit.value, unit)
    )
