"""The sealed results and journals of learners in this machine's folders, to be erased with them.

They lie beside the logbook. What was saved or carried elsewhere isn't found.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Final

import sqlalchemy as sa

from exercises.sitting.codes import code_key
from trainer.logbook.erasing import Erasure
from trainer.logbook.schema import LearnerRow, SatRow, SittingRow, table_of
from trainer.logbook.store import Logbook
from trainer.places import Places
from trainer.sealing.journal import DAMAGED, SUFFIX
from trainer.sealing.result_files import SUFFIXES
from trainer.sealing.whose import journal_name, owner_of
from trainer.shop.locking import is_free

__all__ = ["SealedFiles", "remove", "sealed_files"]

_LEARNERS: Final = table_of(LearnerRow)
_SAT: Final = table_of(SatRow)
_SITTINGS: Final = table_of(SittingRow)


@dataclass(frozen=True, slots=True)
class SealedFiles:
    """What lies sealed in this machine's folders.

    Parameters
    ----------
    goes
        What is to be erased.
    unknown
        Sittings that were begun and not handed in, and may be anybody's: their names don't tell.
    """

    goes: tuple[Path, ...] = ()
    unknown: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class _Known:
    """What the logbook tells of whose a file may be."""

    codes: dict[str, str]
    papers: dict[str, str]
    finished: dict[str, int]
    sittings: list[str]

    @classmethod
    def read(cls, logbook: Logbook) -> _Known:
        with logbook.reading() as connection:
            asked = sa.select(_LEARNERS.c.id, _LEARNERS.c.code).where(_LEARNERS.c.code.is_not(None))
            codes = {row.id: row.code for row in connection.execute(asked)}
            sat = connection.execute(sa.select(_SAT.c.id, _SAT.c.learner_id, _SAT.c.finished_ms))
            rows = sat.all()
            sittings = list(connection.execute(sa.select(_SITTINGS.c.id)).scalars())
        papers = {row.id: codes[row.learner_id] for row in rows if row.learner_id in codes}
        return cls(codes, papers, {row.id: row.finished_ms for row in rows}, sittings)

    def day(self, path: Path) -> str:
        """When what a file holds was done: as the logbook has it, or else when it was written."""
        mark = path.stem.rpartition("_")[2]
        done = [ms for paper, ms in self.finished.items() if mark and paper.startswith(mark)]
        seconds = min(done) / 1000 if done else path.stat().st_mtime
        return datetime.fromtimestamp(seconds).astimezone().date().isoformat()


def sealed_files(logbook: Logbook, erasures: Sequence[Erasure]) -> SealedFiles:
    """Return the files that go with what is erased, by their names.

    Parameters
    ----------
    logbook
        That the learners are in still; its folder has the files.
    erasures
        Of learners wholly, or of what they did before a day.

    Raises
    ------
    LogbookError
        If the logbook can't be read.
    """
    folders = Places(logbook.path, logbook.path.parent)
    known = _Known.read(logbook)
    before = {
        code_key(known.codes[one.learner]): one.before
        for one in erasures if one.learner in known.codes
    }  # fmt: skip
    if not before:
        return SealedFiles()

    def due(path: Path, code: str) -> bool:
        if code_key(code) not in before:
            return False
        first = before[code_key(code)]
        try:
            return first is None or known.day(path) < first
        except OSError:
            return False

    goes = []
    for path in sorted(folders.results.glob(f"*{SUFFIXES['result']}")):
        owner = owner_of(path.name, known.codes.values(), known.papers)
        if owner is not None and due(path, owner):
            goes.append(path)
    owners = {
        journal_name(sitting, code): code
        for sitting in known.sittings for code in known.codes.values()
    }  # fmt: skip
    # Those too that were kept because they were damaged.
    journals = {
        path: owners.get(path.name.partition(DAMAGED)[0])
        for path in sorted(folders.sittings.glob(f"*{SUFFIX}*"))
        if path.name.endswith(SUFFIX) or DAMAGED in path.name
    }
    # One that is held is being sat.
    goes += [j for j, code in journals.items() if code and due(j, code) and is_free(j)]
    return SealedFiles(tuple(goes), tuple(j for j, code in journals.items() if code is None))


def remove(paths: Sequence[Path]) -> list[OSError]:
    """Remove files; return what the system said of those that it couldn't."""
    troubles = []
    for path in paths:
        try:
            path.unlink(missing_ok=True)
        except OSError as error:
            troubles.append(error)
    return troubles
