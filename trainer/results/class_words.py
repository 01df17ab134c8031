"""What a class comes to in sentences, and the pictures that say the same."""

from __future__ import annotations

from statistics import median
from typing import Final

from exercises.sitting.class_table import ENOUGH, FEWEST
from trainer.bench.reasons import mark_word
from trainer.bench.translation import translate
from trainer.results.figures_of import minutes, number, percent
from trainer.results.plots import Picture, Spot, Spread, Step
from trainer.results.reckoning import Reckoned

__all__ = ["class_sentences", "coupon_sentences", "pair_sentences", "picture_of",
           "picture_sentences", "size_words"]  # fmt: skip

_TOLD: Final = 3
"""Coupons that a sentence names."""


def size_words(reckoned: Reckoned) -> str:
    """What the size of the class allows to be said; empty where it is large enough."""
    count = len(reckoned.papers)
    if count < FEWEST:
        text = translate(
            "Results",
            "Only {count} of {few} papers: nothing can be said of coupons but counts.",
        )
        return text.format(count=count, few=FEWEST)
    if count < ENOUGH:
        text = translate(
            "Results",
            "{count} papers are few: figures of coupons are rough below {enough}, as their "
            "ranges show.",
        )
        return text.format(count=count, enough=ENOUGH)
    return ""


def class_sentences(reckoned: Reckoned) -> str:
    """What the papers of a sitting come to."""
    count = len(reckoned.papers)
    passed = sum(standing.passed for standing in reckoned.standings)
    said = [
        translate("Results", "{passed} of {count} papers passed.").format(
            passed=passed, count=count
        )
    ]
    if count:
        middle = median(standing.score for standing in reckoned.standings)
        text = translate("Results", "Half of the scores are at {middle} or above.")
        said.append(text.format(middle=percent(middle)))
    said.append(_error_words(reckoned))
    if reckoned.clashes:
        text = translate("Results", "Papers with the code of another: {count}. See whose they are.")
        said.append(text.format(count=reckoned.clashes))
    return " ".join(one for one in said if one)


def _error_words(reckoned: Reckoned) -> str:
    """How far one score may be off by the luck of which coupons were asked."""
    error = reckoned.reliability.error
    if error is None:
        return ""
    text = translate(
        "Results",
        "One learner's score is good to about \u00b1{reach} (95 %, standard error of measurement).",
    )
    return text.format(reach=percent(1.96 * error))


def coupon_sentences(reckoned: Reckoned) -> str:
    """What the coupons of a sitting say together."""
    said = [size_words(reckoned)]
    told = reckoned.reliability
    if told.kr20 is not None and told.alpha is not None:
        text = translate(
            "Results",
            "How well the coupons measure one thing: KR-20 {kr20}, alpha {alpha}, over {items} "
            "coupons and {papers} papers.",
        )
        said.append(
            text.format(
                kr20=number(told.kr20), alpha=number(told.alpha), items=told.items,
                papers=told.learners,
            )
        )  # fmt: skip
    agreement = reckoned.agreement
    if agreement.with_truth is not None:
        text = translate("Results", "Agreement with the truth beyond chance: kappa {kappa}.")
        said.append(text.format(kappa=number(agreement.with_truth)))
    if agreement.with_each_other is not None:
        text = translate(
            "Results", "With each other: Fleiss' kappa {kappa}, over {places} coupons."
        )
        said.append(text.format(kappa=number(agreement.with_each_other), places=agreement.places))
    return " ".join(one for one in said if one)


def pair_sentences(reckoned: Reckoned) -> str:
    """What was got wrong together, in a sentence or two."""
    if len(reckoned.papers) < FEWEST:
        return size_words(reckoned)
    beyond = sum(pair.beyond for pair in reckoned.pairs)
    if not beyond:
        return translate(
            "Results",
            "No two coupons were got wrong by the same learners more often than chance would "
            "have it, given how weak each learner and how hard each coupon is.",
        )
    text = translate(
        "Results",
        "Pairs got wrong by the same learners more often than chance would have it, given how weak "
        "each learner and how hard each coupon is: {count}. One thing may be behind both.",
    )
    return text.format(count=beyond)


# --- pictures -----------------------------------------------------------------------------------


def picture_of(reckoned: Reckoned) -> Picture:
    """Return what the pictures of a class show."""
    marks = reckoned.papers[0].marks if reckoned.papers else None
    skills = [
        Spread(
            translate("Results", "All"),
            tuple(standing.score for standing in reckoned.standings),
            marks.overall if marks is not None else None,
        )
    ]
    for name in reckoned.skills:
        values = (standing.by_skill[name] for standing in reckoned.standings)  # type: ignore[index]
        limit = marks.skills.get(name) if marks is not None else None  # type: ignore[call-overload]
        skills.append(
            Spread(mark_word(name), tuple(one for one in values if one is not None), limit)
        )
    return Picture(
        skills=tuple(skills) if reckoned.papers else (),
        spots=_spots(reckoned),
        steps=reckoned.steps,
        times=_times(reckoned),
    )


def _spots(reckoned: Reckoned) -> tuple[Spot, ...]:
    found = []
    for slot in reckoned.slots:
        told = slot.figures.discrimination
        if told is not None:
            right = slot.figures.right.value
            found.append(Spot(str(slot.number), right, told.value, told.low, told.high))
    return tuple(found)


def _times(reckoned: Reckoned) -> tuple[Spread, ...]:
    return tuple(
        Spread(
            str(slot.number),
            tuple(one.ms / 60_000.0 for one in reckoned.table.at(slot.slot) if one.answered),
        )
        for slot in reckoned.slots
    )


def picture_sentences(reckoned: Reckoned, picture: Picture) -> dict[str, list[str]]:
    """Return what each picture says, in sentences: for reading instead of it."""
    return {
        "skills": _skill_sentences(picture),
        "items": _item_sentences(reckoned, picture),
        "distance": _distance_sentences(picture.steps),
        "times": _time_sentences(picture),
    }


def _skill_sentences(picture: Picture) -> list[str]:
    if len(picture.skills) < 2:
        return [translate("Results", "Nothing was handed in yet.")]
    ranked = sorted(picture.skills[1:], key=lambda row: median(row.values))
    weakest, best = ranked[0], ranked[-1]
    text = translate(
        "Results", "Weakest: {weak} (half of the class at {low} or above). Best: {best} ({high})."
    )
    said = [
        text.format(
            weak=weakest.name.lower(), low=percent(median(weakest.values)),
            best=best.name.lower(), high=percent(median(best.values)),
        )
    ]  # fmt: skip
    limits = [row for row in picture.skills if row.limit is not None]
    for row in limits:
        below = sum(value < (row.limit or 0.0) for value in row.values)
        text = translate("Results", "{name}: {below} of {of} below the pass mark of {mark}.")
        said.append(
            text.format(name=row.name, below=below, of=len(row.values), mark=percent(row.limit))
        )
    return said


def _item_sentences(reckoned: Reckoned, picture: Picture) -> list[str]:
    if not picture.spots:
        few = size_words(reckoned)
        return [few or translate("Results", "All answers are alike: nothing tells learners apart.")]
    hardest = sorted(picture.spots, key=lambda spot: spot.difficulty)[:_TOLD]
    named = ", ".join(f"{spot.name} ({percent(spot.difficulty)})" for spot in hardest)
    said = [translate("Results", "Hardest: {coupons}.").format(coupons=named)]
    below = [spot for spot in picture.spots if spot.discrimination < 0.0]
    if below:
        text = translate(
            "Results",
            "Below 0, where the better do worse: {coupons}. Look at these first; with few papers "
            "it may be luck, as the ranges show.",
        )
        said.append(text.format(coupons=", ".join(spot.name for spot in below)))
    return said


def _distance_sentences(steps: tuple[Step, ...]) -> list[str]:
    if not steps:
        return [translate("Results", "No call yet hangs on a size.")]
    short = [step for step in steps if step.distance < 0.0]
    sound = [step for step in steps if step.distance > 0.0]
    said = []
    for side, text in (
        (short, translate("Results", "Short welds: {wrong} of {of} let go.")),
        (sound, translate("Results", "Sound welds: {wrong} of {of} rejected.")),
    ):
        of = sum(step.wrong.of for step in side)
        if of:
            said.append(text.format(wrong=sum(step.wrong.count for step in side), of=of))
    said.append(
        translate("Results", "Near the limit nobody can be sure; far from it each one counts.")
    )
    return said


def _time_sentences(picture: Picture) -> list[str]:
    rows = [row for row in picture.times if row.values]
    if not rows:
        return [translate("Results", "No time was kept.")]
    longest = sorted(rows, key=lambda row: -median(row.values))[:_TOLD]
    named = ", ".join(
        translate("Results", "{coupon} ({minutes} min)").format(
            coupon=row.name, minutes=minutes(60_000.0 * median(row.values))
        )
        for row in longest
    )
    return [translate("Results", "Slowest, by the middle of the class: {coupons}.").format(
        coupons=named
    )]  # fmt: skip
