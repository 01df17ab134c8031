"""Marks set by hand, kept beside what was graded: nothing of an attempt is ever changed.

Of several for one mark the latest holds; all of them are kept, with who set it, when and why.
"""

from __future__ import annotations

from uuid import uuid4

import sqlalchemy as sa

from exercises.sitting.marking import Override
from trainer.logbook.schema import OverrideRow, SatRow, table_of
from trainer.school.reading import ClassBook, KeptOverride

__all__ = ["override"]

_SAT = table_of(SatRow)


def override(book: ClassBook, sat: str, said: Override) -> KeptOverride:
    """Keep an override of an item of a paper, where the paper is kept.

    Raises
    ------
    KeyError
        If there is no such paper.
    trainer.logbook.opening.LogbookError, trainer.school.trouble.SchoolError
        If it can't be kept; on a server that takes the instructor's role.
    """
    kept = KeptOverride(str(uuid4()), sat, said)
    row = {
        "id": kept.id,
        "sat_id": sat,
        "item": said.item,
        "mark": said.mark,
        "value": said.value,
        "reason": said.reason.strip(),
        "by_whom": said.by.strip(),
        "at_ms": int(said.at.timestamp() * 1000),
    }
    with book.writing() as connection:
        paper = sa.select(_SAT.c.id).where(_SAT.c.id == sat)
        if connection.execute(paper).first() is None:
            raise KeyError(sat)
        connection.execute(sa.insert(table_of(OverrideRow)), row)
    return kept
