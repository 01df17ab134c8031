"""Why a call is what it is, and what was held right: in words, with figures, rule and source."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from exercises.checks import Check
from exercises.grading import Grade
from exercises.judging import Judgement, right_handling
from exercises.largest_leaf import largest_leaf, rack_of
from exercises.placement_faults import true_faults
from exercises.rules import Source
from exercises.source_words import source_words
from geometry.lengths import Unit
from trainer.bench import words
from trainer.bench.placed_words import fault_list, fault_word
from trainer.bench.reasons import measure_word
from trainer.bench.state import BenchState
from trainer.bench.translation import translate
from trainer.figures import figures, length_words

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

_ORDER: Final[dict[Verdict, int]] = {"fails": 0, "near": 1, "meets": 2}


@dataclass(frozen=True, slots=True)
class Ground:
    """One check as the debrief tells it.

    Parameters
    ----------
    verdict
        Whether the measure meets its limit, fails it, or is too near to be told.
    name, figures
        Which measure; measured value, limit and margin.
    source
        Whose limit it is and how surely that is known; empty where that is said of all of them.
    key
        Of the check; empty where a line speaks of several.
    """

    verdict: Verdict
    name: str
    figures: str
    source: str = ""
    key: str = ""


def _said(value: float, unit: Unit, kind: str = "mm") -> str:
    """A measured value: a length in `unit`, or an angle."""
    if kind == "degrees":
        return figures(f"{value:.1f}\u00b0")
    return length_words(value, unit, decimals=2 if unit == "mm" else 3)


def grounds_of(state: BenchState, judgement: Judgement, unit: Unit) -> tuple[Ground, ...]:
    """Return every check that was made, in words, what decides the call first.

    What isn't there at all is told in one line.
    """
    told: list[Ground] = []
    absent: list[str] = []
    common = state.coupon.rule_set.source
    for check in judgement.checks:
        name = measure_word(check.key)
        if check.doubt == 0.0 and check.measured == 0.0 and check.passed:
            absent.append(check.key)
            continue
        source = "" if check.source == common else source_word(check.source)
        figures = _figures(check, unit)
        told.append(
            Ground(_verdict(check), name[:1].upper() + name[1:], figures, source, check.key)
        )
    told.sort(key=lambda ground: _ORDER[ground.verdict])
    if absent:
        none = translate("Debrief", "None at all: {things}")
        told.append(Ground("meets", none.format(things=", ".join(_things(absent))), ""))
    return tuple(told)


def _things(keys: list[str]) -> list[str]:
    """What is not there, once where neither toe has it."""
    both = {
        "undercut": translate("Debrief", "undercut"),
        "overlap": translate("Debrief", "overlap"),
    }
    kinds = [key.removesuffix("_base").removesuffix("_upright") for key in keys]
    named = [
        both[kind] if kind in both and kinds.count(kind) == 2 else measure_word(key)
        for key, kind in zip(keys, kinds, strict=True)
    ]
    return list(dict.fromkeys(named))


def _verdict(check: Check) -> Verdict:
    if check.near:
        return "near"
    return "meets" if check.passed else "fails"


def _figures(check: Check, unit: Unit) -> str:
    """Measured value, limit and margin of one check."""
    off = check.measured - check.limit
    if check.bound == "at_least":
        text = (
            translate("Debrief", "{found}; {limit} needed: {off} over")
            if off >= 0.0
            else translate("Debrief", "{found}; {limit} needed: {off} short")
        )
    else:
        text = (
            translate("Debrief", "{found}; at most {limit}: {off} too much")
            if off > 0.0
            else translate("Debrief", "{found}; at most {limit}: {off} to spare")
        )
    if check.near:
        near = translate("Debrief", "nearer than a leaf can tell (\u00b1{doubt})")
        text = f"{text}, {near}"
    made = needed_words(check, unit)
    if made:
        text = f"{text}. {made}"
    return text.format(
        found=_said(check.measured, unit, check.unit),
        limit=_said(check.limit, unit, check.unit),
        off=_said(abs(off), unit, check.unit),
        doubt=_said(check.doubt, unit),
    )


def needed_words(check: Check, unit: Unit) -> str:
    """Return what the limit of a size is made of, where it isn't just the callout; else nothing."""
    asked = check.required
    if asked is None or asked.size == asked.called:
        return ""
    scale = check.limit / asked.size
    raised = asked.minimum > asked.called
    text = (
        translate("Debrief", "Needed: {size} least size here")
        if raised
        else translate("Debrief", "Needed: {size} called for")
    ).format(size=_said(asked.nominal * scale, unit))
    if asked.opening:
        more = translate("Debrief", "{size} root opening")
        text += f" + {more.format(size=_said(asked.opening * scale, unit))}"
    if asked.allowed:
        less = translate("Debrief", "{size} allowed under")
        text += f" \u2212 {less.format(size=_said(asked.allowed * scale, unit))}"
    return text


def rule_words(state: BenchState) -> str:
    """Which rule set was judged by, and whose it is."""
    return translate("Debrief", "Judged by: {rules} ({source}).").format(
        rules=words.rules_word(state.coupon.rule_set),
        source=source_word(state.coupon.rule_set.source),
    )


def source_word(source: Source) -> str:
    """A source by its name, and how surely what it says is known."""
    if source.sureness == "own":
        return translate("Debrief", "this trainer's own rule")
    sure = {
        "seen": translate("Debrief", "seen in its text"),
        "second-hand": translate("Debrief", "second-hand"),
        "from memory": translate("Debrief", "from memory"),
    }[source.sureness]
    return f"{source_words(source.name).in_language(words.language())}, {sure}"


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
        "size": translate("Debrief", "Size: {mark}, as far as a leaf can tell.").format(
            mark=state.size or ""
        ),
        "fault": translate("Debrief", "What is wrong: {fault}.").format(
            fault=fault_word(state.fault or "nothing").lower()
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


def asked_words(state: BenchState, grade: Grade) -> str:
    """Return how a coupon came out that asks for readings, not for a call."""
    if state.coupon.task == "find the fault":
        return _found_words(state, grade)
    if state.coupon.task != "size":
        if grade.marks["reading"] == 1.0:
            return translate("Debrief", "What you said of the leaf is what it showed.")
        return translate("Debrief", "Not all that you said of the leaf is what it showed.")
    largest = largest_leaf(state.coupon, rack_of(state.size) if state.size else state.rack)
    if largest is None:
        return translate("Debrief", "No leaf of this set is met by the weld.")
    text = (
        translate("Debrief", "The largest leaf that the weld meets: {mark}. You have it.")
        if called_right(grade)
        else translate("Debrief", "The largest leaf that the weld meets: {mark}.")
    )
    return text.format(mark=largest)


def _found_words(state: BenchState, grade: Grade) -> str:
    """What was said to be wrong with a placed leaf, and whether it is."""
    true = true_faults(state.coupon)
    stated = fault_word(state.fault or "nothing")
    if grade.marks["fault"] != 1.0:
        text = translate("Debrief", "You said: {stated}. Right would be: {faults}.")
        return text.format(stated=stated, faults=fault_list(true))
    more = [fault for fault in true if fault != state.fault]
    if more:
        text = translate("Debrief", "You said: {stated}. That is right; so is: {faults}.")
        return text.format(stated=stated, faults=fault_list(more))
    return translate("Debrief", "You said: {stated}. That is right.").format(stated=stated)


def called_right(grade: Grade) -> bool:
    """Whether what was asked for was stated right: the call or, without one, the readings."""
    marks = grade.marks
    if grade.right is not None:
        return marks["disposition"] == 1.0 and not grade.critical
    if "fault" in marks:
        return marks["fault"] == 1.0
    # A stated size says it by itself; without one the readings have to.
    if marks.get("size") is not None:
        return marks["size"] == 1.0
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
