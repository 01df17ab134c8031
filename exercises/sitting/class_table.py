"""A class's answers laid side by side: a row for each learner, a column for each place of the plan.

Made parts give every learner their own weld, but each place is as hard for all of them
(`exercises.sitting.hardness`), so a place is what classical test theory calls an item.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

from exercises.learner.outcome import Outcome
from exercises.sitting.marking import Markable, Override, marked
from exercises.sitting.result import Result

__all__ = [
    "ENOUGH",
    "FEWEST",
    "Answer",
    "ClassTable",
    "Size",
    "answer_of",
    "answers_of",
    "class_table",
]

Array = npt.NDArray[np.float64]

FEWEST: Final = 5
"""Learners, below which nothing is said of an item but its counts (ours)."""

ENOUGH: Final = 30
"""Learners, below which what is said of an item is rough (common practice, no source)."""

Size = Literal["too small", "rough", "enough"]


@dataclass(frozen=True, slots=True)
class Answer:
    """One learner's answer at one place of a plan.

    Parameters
    ----------
    learner, slot
        Whose, and where.
    answered
        Whether anything was stated.
    right
        Whether what the task asks for is right: the disposition, the size, the fault, the
        readings; false where nothing was stated.
    score
        0 to 1, overrides included.
    bad, called_bad
        Whether the rules reject the weld, and whether the learner did; None where none was stated.
    in_doubt
        Whether either verdict was right.
    said, truth
        The disposition that was stated, and the right one; None where none is asked, or was stated.
    ms
        Milliseconds that the coupon was before the learner.
    """

    learner: str
    slot: str
    answered: bool
    right: bool
    score: float
    bad: bool
    called_bad: bool | None
    in_doubt: bool
    said: str | None
    truth: str | None
    ms: int


_FINAL: Final = ("disposition", "size", "fault", "reading")
"""The mark that says whether an answer is right: the first of these that applies."""


def answers_of(result: Result, overrides: Sequence[Override] = ()) -> tuple[Answer, ...]:
    """Return a result's answers, overrides of its marks included."""
    return tuple(
        answer_of(result.learner, item.slot, item, item.counted, item.ms, overrides)
        for item in result.items
    )


def answer_of(
    learner: str,
    slot: str,
    item: Markable,
    outcome: Outcome,
    ms: int,
    overrides: Sequence[Override] = (),
) -> Answer:
    """Return one answer, overrides of its marks included.

    Parameters
    ----------
    learner, slot, ms
        As of `Answer`.
    item
        What was stated, and what it came to.
    outcome
        What statistics count it as.
    overrides
        Of the sitting that it is of.
    """
    worth = marked(item, overrides)
    grade, attempt = item.grade or {}, item.attempt or {}
    return Answer(
        learner=learner,
        slot=slot,
        answered=item.answered,
        right=_is_right(worth.marks),
        score=worth.score,
        bad=outcome.bad,
        called_bad=outcome.called_bad,
        in_doubt=outcome.in_doubt,
        said=attempt.get("disposition"),
        truth=grade.get("right"),
        ms=ms,
    )


def _is_right(marks: Mapping[str, float | None]) -> bool:
    given = (marks.get(name) for name in _FINAL)
    return next((value for value in given if value is not None), 0.0) >= 1.0


@dataclass(frozen=True)
class ClassTable:
    """What a class made of one plan.

    Parameters
    ----------
    learners, slots
        What rows and columns are.
    right, scores
        Shape (learners, slots): 1 or 0, and 0 to 1; NaN where a learner never had that place.
    answers
        By learner and slot.
    """

    learners: tuple[str, ...]
    slots: tuple[str, ...]
    right: Array
    scores: Array
    answers: Mapping[tuple[str, str], Answer]

    @property
    def size(self) -> Size:
        """Whether there are learners enough to say anything of items."""
        count = len(self.learners)
        return "too small" if count < FEWEST else "rough" if count < ENOUGH else "enough"

    @property
    def whole(self) -> npt.NDArray[np.bool_]:
        """Which columns every learner has."""
        return np.asarray(~np.isnan(self.right).any(axis=0))

    def at(self, slot: str) -> list[Answer]:
        """The answers at one place, in the order of learners."""
        keys = ((learner, slot) for learner in self.learners)
        return [self.answers[key] for key in keys if key in self.answers]

    def by(self, learner: str) -> list[Answer]:
        """One learner's answers, in the order of places."""
        keys = ((learner, slot) for slot in self.slots)
        return [self.answers[key] for key in keys if key in self.answers]


def class_table(answers: Iterable[Answer]) -> ClassTable:
    """Lay answers side by side, learners and places in order of their names.

    Raises
    ------
    ValueError
        If a learner has two answers at one place: two sittings of theirs were mixed.

    Examples
    --------
    >>> one = Answer("k-07", "1-001", True, True, 1.0, False, False, False, "accept", "accept", 9)
    >>> table = class_table([one])
    >>> table.learners, table.slots, table.right.tolist(), table.size
    (('k-07',), ('1-001',), [[1.0]], 'too small')
    """
    known: dict[tuple[str, str], Answer] = {}
    for each in answers:
        key = (each.learner, each.slot)
        if key in known:
            text = f"{each.learner} has two answers at {each.slot}"
            raise ValueError(f"{text}; right would be one sitting of each learner")
        known[key] = each
    learners = tuple(sorted({learner for learner, _ in known}))
    slots = tuple(sorted({slot for _, slot in known}))
    right = np.full((len(learners), len(slots)), np.nan)
    scores = np.full_like(right, np.nan)
    rows = {learner: at for at, learner in enumerate(learners)}
    columns = {slot: at for at, slot in enumerate(slots)}
    for (learner, slot), each in known.items():
        right[rows[learner], columns[slot]] = float(each.right)
        scores[rows[learner], columns[slot]] = each.score
    return ClassTable(learners, slots, right, scores, known)
