"""The table of one learner's items, and what was stated and right in words."""

from __future__ import annotations

from exercises.judging import judge
from exercises.largest_leaf import largest_leaf, rack_of
from exercises.placement_faults import true_faults
from exercises.sitting.result import Item
from trainer.bench import words
from trainer.bench.placed_words import fault_list, fault_word
from trainer.bench.translation import translate
from trainer.results.arranging import Column
from trainer.results.figures_of import percent, seconds
from trainer.results.paper import ItemRow, attempt_of

__all__ = ["called_words", "paper_columns", "right_words", "title_of"]


def title_of(item: Item) -> str:
    """What a coupon is called."""
    return item.coupon.title.in_language(words.language()) or item.coupon.id


def called_words(item: Item) -> str:
    """What was stated, by the coupon's task, in a word or two."""
    if not item.answered:
        return translate("Results", "unanswered")
    said, task = attempt_of(item), item.coupon.task
    if task == "judge":
        return words.disposition_word(said.disposition).lower() if said.disposition else "\u2013"
    if task == "size":
        return said.size or "\u2013"
    if task == "find the fault":
        return fault_word(said.fault).lower() if said.fault else "\u2013"
    states = [words.state_word(one.state).lower() for one in said.readings or () if one.state]
    return ", ".join(states) or "\u2013"


def right_words(item: Item) -> str:
    """What would have been right, in a word or two."""
    coupon, grade = item.coupon, item.grade
    if coupon.task == "size":
        said = attempt_of(item).size
        return largest_leaf(coupon, rack_of(said) if said else "metric") or "\u2013"
    if coupon.task == "find the fault":
        return fault_list(true_faults(coupon)).lower()
    # Without an answer nothing was graded, but there was something right to say.
    right = grade.get("right") if grade is not None else judge(coupon).disposition
    if coupon.task == "judge" and isinstance(right, str):
        return words.disposition_word(right).lower()
    return "\u2013"


def paper_columns() -> list[Column[ItemRow]]:
    """Return the columns."""
    return [
        Column(
            "number", translate("Results", "No."),
            translate("Results", "Place in this learner's own order."),
            lambda row: str(row.item.number), lambda row: float(row.item.number), number=True,
        ),
        Column(
            "called", translate("Results", "Call"), translate("Results", "What was stated."),
            lambda row: called_words(row.item),
            tone=_call_tone,
        ),
        Column(
            "right", translate("Results", "Right call"),
            translate("Results", "What the rules say of it (the key)."),
            lambda row: right_words(row.item),
        ),
        Column(
            "score", translate("Results", "Score"),
            translate("Results", "Mean of its marks; 0 if critical or unanswered (item score)."),
            _score, lambda row: row.score, lambda row: "bad" if row.critical else "plain",
            number=True,
        ),
        Column(
            "time", translate("Results", "Time, s"),
            translate("Results", "How long it lay before the learner, all visits together."),
            lambda row: seconds(row.item.ms), lambda row: float(row.item.ms), number=True,
        ),
        Column(
            "visits", translate("Results", "Visits"),
            translate("Results", "How often the learner came to it."),
            lambda row: str(row.item.visits), lambda row: float(row.item.visits), number=True,
        ),
        Column(
            "note", translate("Results", "Note"),
            translate("Results", "Critical, in doubt, marked for review, or overridden."), _note,
            tone=lambda row: "bad" if row.critical else "plain",
        ),
        Column(
            "title", translate("Results", "Coupon"), translate("Results", "What it is called."),
            lambda row: title_of(row.item),
        ),
    ]  # fmt: skip


def _call_tone(row: ItemRow) -> str:
    if not row.item.answered:
        return "quiet"
    return "plain" if row.right else "bad"


def _score(row: ItemRow) -> str:
    if row.was is None:
        return percent(row.score)
    text = translate("Results", "{now}, was {was}")
    return text.format(now=percent(row.score), was=percent(row.was))


def _note(row: ItemRow) -> str:
    grade = row.item.grade or {}
    said = []
    if row.critical:
        said.append(translate("Results", "critical"))
    if grade.get("in_doubt"):
        said.append(translate("Results", "in doubt"))
    if row.item.flagged:
        said.append(translate("Results", "marked for review"))
    if row.overridden:
        said.append(translate("Results", "overridden"))
    return ", ".join(said)
