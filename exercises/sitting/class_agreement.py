"""How far a class agrees: each learner with the truth, and all of them with each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from exercises.disposition import DISPOSITIONS
from exercises.learner.agreement import cohen_kappa, fleiss_kappa
from exercises.learner.demonstration import Share
from exercises.sitting.class_table import Answer, ClassTable

__all__ = ["ClassAgreement", "LearnerAgreement", "class_agreement"]

_CALLS: Final[tuple[str, ...]] = DISPOSITIONS


@dataclass(frozen=True, slots=True)
class LearnerAgreement:
    """One learner's calls against the truth, outside the doubt.

    Parameters
    ----------
    learner
        Whose.
    right
        Calls of the right disposition, of all that were made; None where none was.
    kappa
        Cohen's, over the four dispositions; None where chance alone would agree wholly.
    misses, false_alarms
        As of an item (`exercises.sitting.items.ItemFigures`).
    """

    learner: str
    right: Share | None
    kappa: float | None
    misses: Share | None
    false_alarms: Share | None


@dataclass(frozen=True, slots=True)
class ClassAgreement:
    """How far a class agrees.

    Parameters
    ----------
    learners
        Each against the truth, in the table's order.
    with_truth
        Cohen's kappa of all calls of the class together.
    with_each_other
        Fleiss' kappa over the places that every learner called; None where there is no such place,
        one learner alone, or one call alone.
    places
        How many such places there are, doubtful ones among them: there learners may differ, and
        how far they do is worth knowing.
    """

    learners: tuple[LearnerAgreement, ...]
    with_truth: float | None
    with_each_other: float | None
    places: int


def class_agreement(table: ClassTable) -> ClassAgreement:
    """Return how far a class agrees with the truth and with each other."""
    each = tuple(_of_one(learner, table.by(learner)) for learner in table.learners)
    every = [answer for learner in table.learners for answer in table.by(learner)]
    called = [_tally(table.at(slot)) for slot in table.slots]
    count = len(table.learners)
    whole = [tally for tally in called if sum(tally) == count]
    kappa = fleiss_kappa(whole) if whole and count > 1 else None
    return ClassAgreement(each, _kappa(every), kappa, len(whole))


def _of_one(learner: str, answers: Sequence[Answer]) -> LearnerAgreement:
    called = _called(answers)
    right = sum(answer.said == answer.truth for answer in called)
    return LearnerAgreement(
        learner=learner,
        right=Share(right, len(called)) if called else None,
        kappa=_kappa(answers),
        misses=_missed(called, bad=True),
        false_alarms=_missed(called, bad=False),
    )


def _called(answers: Sequence[Answer]) -> list[Answer]:
    return [a for a in answers if a.said is not None and a.truth is not None and not a.in_doubt]


def _missed(called: Sequence[Answer], *, bad: bool) -> Share | None:
    of = [answer for answer in called if answer.bad is bad]
    return Share(sum(a.called_bad is not bad for a in of), len(of)) if of else None


def _kappa(answers: Sequence[Answer]) -> float | None:
    counts = np.zeros((len(_CALLS), len(_CALLS)))
    for answer in _called(answers):
        counts[_CALLS.index(str(answer.said)), _CALLS.index(str(answer.truth))] += 1.0
    return cohen_kappa(counts)


def _tally(answers: Sequence[Answer]) -> list[int]:
    said = [answer.said for answer in answers]
    return [said.count(call) for call in _CALLS]
