"""Learners erased from the school's server: by an instructor, by their codes.

A station notes what it has sent, so that what is erased here isn't sent again; what lies in the
stations' own logbooks is erased there, by the roster.
"""

from __future__ import annotations

from collections.abc import Iterable

import sqlalchemy as sa

from exercises.sitting.codes import learner_id
from trainer.logbook.schema import (
    AttemptRow,
    CouponRow,
    LearnerRow,
    SatRow,
    SittingRow,
    table_of,
)
from trainer.school.reading import ClassBook

__all__ = ["erase_there"]

_ATTEMPTS, _COUPONS, _LEARNERS = table_of(AttemptRow), table_of(CouponRow), table_of(LearnerRow)
_SAT, _SITTINGS = table_of(SatRow), table_of(SittingRow)


def erase_there(book: ClassBook, codes: Iterable[str]) -> int:
    """Erase learners wholly from where `book` reads; return how many of the codes were there.

    Coupons that nobody else judged, and sittings that nobody else sat, go with them.

    Raises
    ------
    trainer.school.trouble.SchoolError
        If it can't be done: it takes the instructor's role. Nothing is erased then.
    """
    ids = [learner_id(code) for code in codes]
    with book.writing() as connection:
        done = connection.execute(sa.delete(_LEARNERS).where(_LEARNERS.c.id.in_(ids)))
        judged = sa.exists().where(_ATTEMPTS.c.digest == _COUPONS.c.digest)
        connection.execute(sa.delete(_COUPONS).where(~judged))
        sat = sa.exists().where(_SAT.c.sitting_id == _SITTINGS.c.id)
        connection.execute(sa.delete(_SITTINGS).where(~sat))
    return done.rowcount
