"""What a class handed in, gathered into rows: papers first, coupons, pairs and pictures beside."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from exercises.sitting.marking import Override, Shortfall, Standing, mark
from exercises.sitting.plan import SKILLS
from exercises.sitting.result import Result
from trainer.bench.reasons import mark_word
from trainer.bench.translation import translate
from trainer.figures import figures
from trainer.results.figures_of import percent
from trainer.results.rows import LearnerRow

__all__ = [
    "HandedIn",
    "clashing",
    "learner_rows",
    "shortfall_words",
    "skills_asked",
    "verdict_sentence",
]


@dataclass(frozen=True)
class HandedIn:
    """One paper, and what this machine knows beside it.

    Parameters
    ----------
    result
        As it was handed in.
    overrides
        Marks set by hand since, oldest first.
    name, groups
        Of the learner, where this machine knows them.
    clash
        Whether another paper of this code is in the sitting.
    """

    result: Result
    overrides: tuple[Override, ...] = ()
    name: str = ""
    groups: tuple[str, ...] = ()
    clash: bool = False

    @cached_property
    def standing(self) -> Standing:
        """What it came to, overrides included."""
        return mark(self.result.marks, self.result.items, self.overrides)


def skills_asked(papers: Iterable[HandedIn]) -> list[str]:
    """Return the skills that any paper was marked on, in the order of the contract."""
    seen = {
        name
        for paper in papers
        for name, value in paper.standing.by_skill.items()
        if value is not None
    }
    return [name for name in SKILLS if name in seen]


def learner_rows(papers: Sequence[HandedIn]) -> list[LearnerRow]:
    """Return a row for each paper."""
    return [_row(paper) for paper in papers]


def _row(paper: HandedIn) -> LearnerRow:
    result, standing = paper.result, paper.standing
    plan: Any = result.plan
    return LearnerRow(
        id=result.id,
        code=result.code,
        name=paper.name,
        groups=paper.groups,
        score=standing.score,
        by_skill={str(name): value for name, value in standing.by_skill.items()},
        below=_below(standing),
        critical=standing.critical,
        unanswered=standing.unanswered,
        passed=standing.passed,
        why="; ".join(shortfall_words(why) for why in standing.why),
        used_ms=sum(item.ms for item in result.items),
        extra=float(plan.get("extra") or 0.0),
        interruptions=len(result.interruptions),
        away_ms=sum(one.ms or 0 for one in result.interruptions),
        station=result.station,
        finished=result.finished,
        ended=result.ended,
        clash=paper.clash,
        overridden=len({(one.item, one.mark) for one in paper.overrides}),
    )


def _below(standing: Standing) -> tuple[str, ...]:
    found = [str(why.params.get("skill", "")) for why in standing.why]
    return tuple(name for name in found if name)


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
        text = translate("Results", "Passed with {score}.")
        return text.format(score=percent(standing.score))
    text = translate("Results", "Not passed, with {score}: {why}.")
    why = "; ".join(shortfall_words(one) for one in standing.why)
    return text.format(score=percent(standing.score), why=why)


def clashing(papers: Iterable[tuple[str, str]]) -> set[str]:
    """Return the ids of papers whose code another one has; takes (id, code) of one sitting."""
    listed = list(papers)
    counts = Counter(code.casefold().strip() for _, code in listed)
    return {paper for paper, code in listed if counts[code.casefold().strip()] > 1}
