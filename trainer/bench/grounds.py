"""Why a call is what it is, and what was held right: in words, with figures, rule and source."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from exercises.grading import Grade
from exercises.judging import Check, Judgement, called_size, right_handling
from exercises.rules import RULE_SETS
from geometry.lengths import Unit, format_length
from trainer.bench import words
from trainer.bench.reasons import measure_word
from trainer.bench.state import BenchState
from trainer.bench.translation import translate

__all__ = [
    "Ground",
    "Verdict",
    "called_right",
    "grounds_of",
    "held_right",
    "rule_words",
    "sureness",
]

Verdict = Literal["meets", "fails", "near"]

_SURE: Final = 0.8
"""From here on somebody who is wrong was misled rather than unsure."""

_EVEN: Final = 0.5


@dataclass(frozen=True, slots=True)
class Ground:
    """One check as the debrief tells it.

    Parameters
    ----------
    verdict
        Whether the measure meets its limit, fails it, or is too near to be told.
    name, figures
        Which measure; measured value, limit and margin.
    """

    verdict: Verdict
    name: str
    figures: str


def _said(length: float, unit: Unit) -> str:
    return format_length(length, unit, decimals=2 if unit == "mm" else 3)


def grounds_of(state: BenchState, judgement: Judgement, unit: Unit) -> tuple[Ground, ...]:
    """Return every check that was made, in words; what isn't there at all is told in one line."""
    told: list[Ground] = []
    absent: list[str] = []
    for check in judgement.checks:
        name = measure_word(check.key)
        if check.doubt == 0.0 and check.measured == 0.0 and check.passed:
            absent.append(name)
            continue
        told.append(Ground(_verdict(check), name[:1].upper() + name[1:], _figures(check, unit)))
    if absent:
        none = translate("Debrief", "No undercut, no overlap")
        if len(absent) < 4:
            none = translate("Debrief", "None of: {things}").format(things=", ".join(absent))
        told.append(Ground("meets", none, ""))
    opening = state.section.joint.root_opening
    added = RULE_SETS[state.coupon.rules].added_for_opening(opening)
    if added > 0.0:
        text = translate("Debrief", "{called} called for + {opening} root opening = {needed}")
        asked = called_size(state.coupon)
        told.append(
            Ground(
                "meets",
                translate("Debrief", "Leg needed"),
                text.format(
                    called=_said(asked - added, unit),
                    opening=_said(added, unit),
                    needed=_said(asked, unit),
                ),
            )
        )
    return tuple(told)


def _verdict(check: Check) -> Verdict:
    if check.near:
        return "near"
    return "meets" if check.passed else "fails"


def _figures(check: Check, unit: Unit) -> str:
    """Measured value, limit and margin of one check."""
    off = check.measured - check.limit
    if check.doubt > 0.0:
        text = (
            translate("Debrief", "{found}; {limit} needed: {off} over")
            if off >= 0.0
            else translate("Debrief", "{found}; {limit} needed: {off} short")
        )
        if check.near:
            near = translate("Debrief", "nearer than a leaf can tell (\u00b1{doubt})")
            text = f"{text}, {near}"
    else:
        text = (
            translate("Debrief", "{found}; at most {limit}: {off} too much")
            if off > 0.0
            else translate("Debrief", "{found}; at most {limit}: {off} to spare")
        )
    return text.format(
        found=_said(check.measured, unit),
        limit=_said(check.limit, unit),
        off=_said(abs(off), unit),
        doubt=_said(check.doubt, unit),
    )


def rule_words(state: BenchState) -> str:
    """Which rule set was judged by, and whose it is."""
    rules = RULE_SETS[state.coupon.rules]
    sources = dict.fromkeys((rules.source.text, *(limit.source.text for limit in rules.limits)))
    return translate("Debrief", "Judged by: {rules} ({sources}).").format(
        rules=words.rules_word(state.coupon.rules),
        sources="; ".join(_source_word(text) for text in sources),
    )


def _source_word(text: str) -> str:
    own = "own rule of this trainer"
    return translate("Debrief", "this trainer's own rule") if text == own else text


def held_right(
    state: BenchState, grade: Grade, judgement: Judgement, unit: Unit
) -> tuple[str, ...]:
    """Return a line on each thing that was held right, and why it was right here."""
    known = {
        "face": _face_line(judgement, unit),
        "leaf": _leaf_line(state),
        "edge": _edge_line(judgement),
        "seat": translate("Debrief", "Seat: home each time, with nothing in the way."),
        "legs": translate("Debrief", "Both legs: gauged, and the shorter one counts."),
        "reading": translate("Debrief", "Readings: each said as the leaf showed it."),
        "disposition": translate("Debrief", "Call: {call}, for the reasons above.").format(
            call=words.disposition_word(state.disposition or "accept").lower()
        ),
    }
    return tuple(known[name] for name, mark in grade.marks.items() if mark == 1.0 and name in known)


def _face_line(judgement: Judgement, unit: Unit) -> str:
    measures = judgement.measures
    text = {
        "convex": translate("Debrief", "Face: convex, {off} beyond the line from toe to toe."),
        "concave": translate("Debrief", "Face: hollow, {off} short of the line from toe to toe."),
        "flat": translate("Debrief", "Face: flat, within {off} of the line from toe to toe."),
    }[judgement.face]
    off = {
        "convex": measures.convexity,
        "concave": measures.concavity,
        "flat": max(measures.convexity, measures.concavity),
    }[judgement.face]
    return text.format(off=_said(off, unit))


def _leaf_line(state: BenchState) -> str:
    used = dict.fromkeys(reading.leaf for reading in state.readings if reading.leaf)
    marks = ", ".join(used)
    if state.coupon.task == "size":
        return translate("Debrief", "Leaves: {marks}, at the weld's own size.").format(marks=marks)
    bracket = any(len(leaves) > 1 for leaves in right_handling(state.coupon).leaves.values())
    if bracket and len(used) > 1:
        text = translate("Debrief", "Leaves: {marks}, one on either side of the limit.")
    else:
        text = translate("Debrief", "Leaf: {marks}, the size that is called for.")
    return text.format(marks=marks)


def _edge_line(judgement: Judgement) -> str:
    return {
        "convex": translate("Debrief", "Edge: the leg edge; a crown would flatter the throat."),
        "concave": translate("Debrief", "Edge: the throat edge; a hollow is thin in the middle."),
        "flat": translate("Debrief", "Edge: on a flat face either tells the same."),
    }[judgement.face]


def called_right(grade: Grade) -> bool:
    """Whether what was asked for was stated right: the call or, without one, the readings."""
    marks = grade.marks
    if grade.right is not None:
        return marks["disposition"] == 1.0 and not grade.critical
    return marks["reading"] == 1.0 and marks["leaf"] in (None, 1.0)


def sureness(sure: float | None, grade: Grade) -> str:
    """What a call says of how well somebody knows what they know."""
    if sure is None:
        return translate(
            "Debrief",
            "You did not say how sure you were. To be right is one skill, to know when you are "
            "is another: say it before the next call.",
        )
    if grade.in_doubt:
        text = translate(
            "Debrief",
            "You said {share} % sure. No leaf can settle this one, so nobody could be certain.",
        )
    elif called_right(grade):
        text = _sure_and_right(sure)
    else:
        text = _sure_and_wrong(sure)
    every = translate(
        "Debrief", "Of ten calls made this sure, about {n} should turn out right."
    ).format(n=round(10 * sure))
    return f"{text.format(share=round(100 * sure))} {every}"


def _sure_and_right(sure: float) -> str:
    if sure >= _SURE:
        return translate("Debrief", "You said {share} % sure, and were right: trust what you saw.")
    if sure >= _EVEN:
        return translate(
            "Debrief",
            "You said {share} % sure, and were right: look what made you doubt, and whether it "
            "should have.",
        )
    return translate(
        "Debrief",
        "You said {share} % sure, and were right all the same: what you saw was enough to go by.",
    )


def _sure_and_wrong(sure: float) -> str:
    if sure >= _SURE:
        return translate(
            "Debrief",
            "You said {share} % sure, and were wrong. That is the costly kind: find what misled "
            "you before you go on.",
        )
    if sure >= _EVEN:
        return translate(
            "Debrief",
            "You said {share} % sure, and were wrong: one more seat might have told you.",
        )
    return translate(
        "Debrief",
        "You said {share} % sure, and were wrong: your doubt was right. When that unsure, gauge "
        "again before you call.",
    )
