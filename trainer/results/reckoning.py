"""What a sitting's papers come to as a class: figures alone, so it can go on beside the window."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from exercises.learner.demonstration import Share
from exercises.sitting.class_agreement import ClassAgreement, class_agreement
from exercises.sitting.class_table import Answer, ClassTable, answer_of, class_table
from exercises.sitting.items import ItemFigures, item_figures
from exercises.sitting.marking import Standing, mark
from exercises.sitting.plan import SKILLS
from exercises.sitting.reliability import Reliability, reliability
from exercises.sitting.together import Pair, wrong_together
from trainer.results.plots import Step
from trainer.school.reading import Answer as Given
from trainer.school.reading import Sat

__all__ = ["Reckoned", "Slot", "reckon"]

_STEP: Final = 0.1
"""mm: how finely distances to the limit are told apart."""


@dataclass(frozen=True, slots=True)
class Slot:
    """One place of the plan.

    Parameters
    ----------
    number
        From 1, in the order that it was composed in.
    slot
        What the plan calls it.
    made
        Whether each learner had a coupon of their own there.
    given
        One of the answers: its coupon is what the place is like.
    figures
        What the class made of it.
    agreed
        How many gave the commonest call, of those who gave one.
    overridden
        How many marks were set by hand.
    """

    number: int
    slot: str
    made: bool
    given: Given
    figures: ItemFigures
    agreed: Share | None
    overridden: int


@dataclass(frozen=True)
class Reckoned:
    """A sitting as its class sat it.

    Parameters
    ----------
    papers
        As they were handed in.
    standings
        What each came to, overrides included.
    table
        All answers side by side; a paper is a row, so two of one code are two.
    slots, pairs, steps
        Coupons, those that were got wrong together, and wrong calls by distance to the limit.
    reliability, agreement
        How far the scores can be trusted, and how far the class agrees.
    """

    papers: tuple[Sat, ...]
    standings: tuple[Standing, ...]
    table: ClassTable
    slots: tuple[Slot, ...]
    pairs: tuple[Pair, ...]
    steps: tuple[Step, ...]
    reliability: Reliability
    agreement: ClassAgreement

    @cached_property
    def skills(self) -> list[str]:
        """The skills that any paper was marked on, in the order of the contract."""
        return [
            name for name in SKILLS if any(one.by_skill[name] is not None for one in self.standings)
        ]

    @property
    def clashes(self) -> int:
        """How many papers share their code with another."""
        return sum(paper.clash for paper in self.papers)


def reckon(papers: Sequence[Sat]) -> Reckoned:
    """Return what the papers of one sitting come to."""
    answers = [answer for paper in papers for answer in _answers(paper)]
    table = class_table(answers)
    return Reckoned(
        papers=tuple(papers),
        standings=tuple(
            mark(paper.marks, paper.items, [one.override for one in paper.overrides])
            for paper in papers
        ),
        table=table,
        slots=_slots(papers, table),
        pairs=wrong_together(table),
        steps=_steps(papers),
        reliability=reliability(table),
        agreement=class_agreement(table),
    )


def _answers(paper: Sat) -> list[Answer]:
    overrides = [one.override for one in paper.overrides]
    # A paper is a row: two papers of one code are two, until somebody has seen whose they are.
    return [
        answer_of(paper.id, item.slot, item, item.outcome, item.ms, overrides)
        for item in paper.items
    ]


def _slots(papers: Sequence[Sat], table: ClassTable) -> tuple[Slot, ...]:
    given: dict[str, Given] = {}
    digests: dict[str, set[str]] = {}
    overridden: Counter[str] = Counter()
    for paper in papers:
        by_number = {item.number: item.slot for item in paper.items}
        set_by_hand = {(one.override.item, one.override.mark) for one in paper.overrides}
        overridden.update(by_number[item] for item, _ in set_by_hand if item in by_number)
        for item in paper.items:
            digests.setdefault(item.slot, set()).add(item.digest)
            if item.slot not in given or (not given[item.slot].answered and item.answered):
                given[item.slot] = item
    return tuple(
        Slot(
            number=number,
            slot=figures.slot,
            made=len(digests[figures.slot]) > 1,
            given=given[figures.slot],
            figures=figures,
            agreed=_agreed(table.at(figures.slot)),
            overridden=overridden[figures.slot],
        )
        for number, figures in enumerate(item_figures(table), start=1)
    )


def _agreed(answers: Sequence[Answer]) -> Share | None:
    said = Counter(answer.said for answer in answers if answer.said is not None)
    return Share(said.most_common(1)[0][1], said.total()) if said else None


def _steps(papers: Sequence[Sat]) -> tuple[Step, ...]:
    """Calls on welds that hang on a size, by distance to the limit, and how many were wrong."""
    wrong: Counter[int] = Counter()
    every: Counter[int] = Counter()
    for paper in papers:
        for item in paper.items:
            call = item.outcome.call
            if call is not None and item.answered:
                at = round(call.distance / _STEP - 0.5)
                every[at] += 1
                wrong[at] += call.short != (call.distance < 0.0)
    return tuple(Step((at + 0.5) * _STEP, Share(wrong[at], every[at])) for at in sorted(every))
