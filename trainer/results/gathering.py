"""A class in words: rows of papers, coupons and pairs, sentences about all of it, its pictures."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from exercises.sitting.marking import Shortfall, Standing
from trainer.bench import words
from trainer.bench.reasons import mark_word
from trainer.bench.translation import translate
from trainer.figures import figures
from trainer.results.figures_of import percent
from trainer.results.reckoning import Reckoned, Slot
from trainer.results.rows import CouponRow, LearnerRow, PairRow
from trainer.school.reading import Answer, ClassMember, Sat

__all__ = [
    "coupon_rows",
    "learner_rows",
    "pair_rows",
    "shortfall_words",
    "slot_words",
    "verdict_sentence",
]


def learner_rows(reckoned: Reckoned, known: Mapping[str, ClassMember]) -> list[LearnerRow]:
    """Return a row for each paper; `known` is who this machine knows, by their id."""
    return [
        _learner(paper, standing, known.get(paper.learner))
        for paper, standing in zip(reckoned.papers, reckoned.standings, strict=True)
    ]


def _learner(paper: Sat, standing: Standing, known: ClassMember | None) -> LearnerRow:
    name = known.name if known is not None else paper.name
    return LearnerRow(
        id=paper.id,
        code=paper.code,
        # Who is known by nothing but a code is called by it.
        name="" if name == paper.code else name,
        groups=known.groups if known is not None else (),
        score=standing.score,
        by_skill={str(name): value for name, value in standing.by_skill.items()},
        below=tuple(str(why.params["skill"]) for why in standing.why if "skill" in why.params),
        critical=standing.critical,
        unanswered=standing.unanswered,
        passed=standing.passed,
        why="; ".join(shortfall_words(why) for why in standing.why),
        used_ms=sum(item.ms for item in paper.items),
        extra=float(paper.plan.get("extra") or 0.0),
        interruptions=len(paper.interruptions),
        away_ms=sum(one.ms or 0 for one in paper.interruptions),
        station=paper.station,
        finished=paper.finished,
        ended=paper.ended,
        clash=paper.clash,
        overridden=len({(one.override.item, one.override.mark) for one in paper.overrides}),
    )


def shortfall_words(why: Shortfall) -> str:
    """Why a sitting isn't passed, in words."""
    known: Mapping[str, str] = {
        "score-short": translate("Results", "score {score}, {needed} needed"),
        "skill-short": translate("Results", "{skill} {score}, {needed} needed"),
        "skill-unseen": translate("Results", "{skill} not shown, {needed} needed"),
        "critical-call": translate("Results", "bad welds accepted: {count}"),
    }
    text = known.get(why.code)
    if text is None:
        return why.text
    params: Any = why.params
    needed = percent(params.get("needed"))
    score = percent(params.get("score"))
    if score == needed and "score" in params:
        # What is short by less than half a per cent must not read as if it were enough.
        score = figures(f"{math.floor(1000.0 * params['score']) / 10.0:.1f} %")
    skill = mark_word(str(params.get("skill", ""))).lower()
    return text.format(score=score, needed=needed, skill=skill, count=params.get("count", 0))


def verdict_sentence(standing: Standing) -> str:
    """What a paper came to, in one sentence."""
    if standing.passed:
        text = translate("Results", "Passed, with {score}.")
        return text.format(score=percent(standing.score))
    text = translate("Results", "Not passed, with {score}: {why}.")
    why = "; ".join(shortfall_words(one) for one in standing.why)
    return text.format(score=percent(standing.score), why=why)


def coupon_rows(reckoned: Reckoned) -> list[CouponRow]:
    """Return a row for each place of the plan."""
    return [_coupon(slot) for slot in reckoned.slots]


def _coupon(slot: Slot) -> CouponRow:
    told = slot.figures.discrimination
    return CouponRow(
        id=slot.slot,
        number=slot.number,
        title=slot_words(slot),
        kind=_kind(slot.given),
        papers=slot.figures.right.of,
        unanswered=slot.figures.unanswered,
        right=slot.figures.right,
        discrimination=(told.value, told.low, told.high) if told is not None else None,
        upper_lower=slot.figures.upper_lower,
        misses=slot.figures.misses,
        false_alarms=slot.figures.false_alarms,
        agreed=slot.agreed,
        ms=slot.figures.median_ms,
        overridden=slot.overridden,
    )


def slot_words(slot: Slot) -> str:
    """What a place of the plan is called."""
    if slot.made:
        # A title of the dice's says nothing, and each learner's is another.
        return translate("Results", "by dice, each their own")
    return slot.given.title.in_language(words.language()) or slot.given.coupon


def _kind(given: Answer) -> str:
    right = given.grade.get("right") if given.grade is not None else None
    if isinstance(right, str):
        said = words.disposition_word(right).lower()
        if given.outcome.in_doubt:
            return translate("Results", "{call}, in doubt").format(call=said)
        return said
    if given.grade is None:
        return translate("Results", "bad") if given.outcome.bad else translate("Results", "good")
    marks: Mapping[str, Any] = given.grade.get("marks", {})
    if "fault" in marks:
        return translate("Results", "what is wrong")
    if marks.get("size") is not None:
        return translate("Results", "a size")
    return translate("Results", "a reading")


def pair_rows(reckoned: Reckoned) -> list[PairRow]:
    """Return a row for each pair of places that the same learners got wrong."""
    named = {slot.slot: f"{slot.number}  {slot_words(slot)}" for slot in reckoned.slots}
    return [
        PairRow(
            id=" ".join(pair.slots),
            first=named[pair.slots[0]],
            second=named[pair.slots[1]],
            together=pair.both,
            of=len(reckoned.papers),
            expected=pair.expected,
            spread=pair.spread,
            phi=pair.phi,
            beyond=pair.beyond,
        )
        for pair in reckoned.pairs
    ]
