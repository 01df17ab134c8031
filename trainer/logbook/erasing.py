"""Erasing what learners did: out of the file and its log, so that no tool finds it there again.

Plain SQLite, since dated copies of the file are erased by the same words, and these may be of an
older version.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Final

__all__ = ["Erasure", "erase_in"]

_WAIT_S: Final = 4.0
"""How long another program may hold the file."""


@dataclass(frozen=True, slots=True)
class Erasure:
    """What is to be erased of one learner.

    Parameters
    ----------
    learner
        Id.
    before
        The first day that stays, as 2026-03-01: what was done earlier goes, and the learner stays;
        None is the learner wholly.
    """

    learner: str
    before: str | None = None


def erase_in(path: Path, erasures: Sequence[Erasure], *, missing_ok: bool = False) -> str | None:
    """Erase in one file; return the id of a learner that isn't there, or None.

    What is erased is overwritten in the file, and the write-ahead log emptied.

    Parameters
    ----------
    path
        The file.
    erasures
        What goes.
    missing_ok
        Whether learners that aren't there are passed over; otherwise nothing is erased then.
    """
    with closing(sqlite3.connect(path, timeout=_WAIT_S, isolation_level=None)) as plain:
        plain.execute("PRAGMA foreign_keys=ON")
        plain.execute("PRAGMA secure_delete=ON")
        plain.execute("BEGIN IMMEDIATE")
        for erasure in erasures:
            there = plain.execute("SELECT 1 FROM learners WHERE id = ?", (erasure.learner,))
            if there.fetchone() is None and not missing_ok:
                plain.execute("ROLLBACK")
                return erasure.learner
        sittings = plain.execute("SELECT 1 FROM sqlite_master WHERE name = 'sat'").fetchone()
        for erasure in erasures:
            _erase(plain, erasure, sittings=sittings is not None)
        plain.execute("DELETE FROM coupons WHERE digest NOT IN (SELECT digest FROM attempts)")
        if sittings is not None:
            plain.execute("DELETE FROM sittings WHERE id NOT IN (SELECT sitting_id FROM sat)")
        plain.execute("COMMIT")
        plain.execute("VACUUM")
        # The compacted file is written to the log first; what was there lies behind it till now.
        plain.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    return None


def _erase(plain: sqlite3.Connection, erasure: Erasure, *, sittings: bool) -> None:
    done = handed_in = "learner_id = :learner"
    if erasure.before is not None:
        done += " AND day < :before"
        handed_in += " AND date(finished_ms / 1000, 'unixepoch', 'localtime') < :before"
    values = {"learner": erasure.learner, "before": erasure.before}
    if sittings:
        # Nor does a note stay that a server has it.
        plain.execute(
            f"DELETE FROM sent WHERE id IN (SELECT id FROM attempts WHERE {done}"
            f" UNION SELECT id FROM sat WHERE {handed_in})",
            values,
        )
    if erasure.before is None:
        if sittings:
            plain.execute("DELETE FROM sent WHERE id = :learner", values)
        plain.execute("DELETE FROM learners WHERE id = :learner", values)
        return
    plain.execute(f"DELETE FROM attempts WHERE {done}", values)
    plain.execute(f"DELETE FROM tallies WHERE {done}", values)
    if sittings:
        plain.execute(f"DELETE FROM sat WHERE {handed_in}", values)
