"""Classes whose answers are known: tables of right and wrong, as answers."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from exercises.sitting.class_table import Answer, ClassTable, class_table

__all__ = ["answered", "table_of"]


def answered(learner: str, slot: str, *, right: bool, bad: bool = True, ms: int = 1000) -> Answer:
    """One answer; a wrong one is the other verdict."""
    called_bad = bad if right else not bad
    said = "add weld metal" if called_bad else "accept"
    truth = "add weld metal" if bad else "accept"
    return Answer(
        learner=learner,
        slot=slot,
        answered=True,
        right=right,
        score=float(right),
        bad=bad,
        called_bad=called_bad,
        in_doubt=False,
        said=said,
        truth=truth,
        ms=ms,
    )


def table_of(right: npt.ArrayLike) -> ClassTable:
    """A class by its answers, shape (learners, items); every other weld is bad."""
    given = np.asarray(right)
    return class_table(
        answered(f"k-{row:03}", f"1-{column:03}", right=bool(value), bad=column % 2 == 0)
        for row, line in enumerate(given)
        for column, value in enumerate(line)
    )
