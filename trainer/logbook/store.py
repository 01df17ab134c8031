"""The logbook's file: SQLite through SQLAlchemy, each attempt on disk before it counts as kept.

Write-ahead log with synchronous FULL, so that neither a kill nor a power cut takes back what was
acknowledged; foreign keys on; the schema's version in Alembic's table. A file of a newer version,
one that is damaged and one that another program holds are refused with words of their own, and
`trainer.logbook.keeping` then keeps attempts aside until the file is well again.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final
from uuid import uuid4

import sqlalchemy as sa
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine import Connection, Engine
from sqlalchemy.exc import IntegrityError

from trainer.logbook.erasing import Erasure, erase_in
from trainer.logbook.opening import (
    HEAD,
    KNOWN,
    LogbookError,
    Trouble,
    engine_of,
    revision_of,
    told,
)
from trainer.logbook.rows import (
    COUNTED,
    Kept,
    added_by_row,
    entry_of_row,
    kept_of_row,
    outcome_of_entry,
    row_of,
    sure_of,
)
from trainer.logbook.schema import AttemptRow, CouponRow, LearnerRow, TallyRow, table_of
from trainer.logbook.shut import attempt_shown, shut_papers
from trainer.logbook.tallies import Added, Tally, added_by
from trainer.records import Entry

__all__ = ["HEAD", "Kept", "Learner", "Logbook", "LogbookError", "Migrate", "Trouble"]

_BACK_MS: Final = 3_600_000
"""A clock that reads this much less than it did was set back."""

_ATTEMPTS: Final = table_of(AttemptRow)
_TALLIES: Final = table_of(TallyRow)
_COUPONS: Final = table_of(CouponRow)
_LEARNERS: Final = table_of(LearnerRow)

Migrate = Callable[[Engine], None]
"""Brings a file's tables to `HEAD`: `trainer.logbook.migrating`, loaded where it is needed."""


@dataclass(frozen=True, slots=True)
class Learner:
    """Somebody who makes calls here."""

    id: str
    name: str


class Logbook:
    """An open logbook.

    Examples
    --------
    >>> import tempfile
    >>> from contextlib import closing
    >>> from trainer.logbook.migrating import bring_up_to_date
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder) / "logbook.sqlite3"
    ...     with closing(Logbook.open(path, bring_up_to_date)) as logbook:
    ...         logbook.add_learner("Bench 3").name, logbook.count()
    ('Bench 3', 0)
    """

    def __init__(self, path: Path, engine: Engine) -> None:
        self.path = path
        self._engine = engine
        self._last = 0
        self.clock_went_back = False
        self.opened: set[str] = set()

    @classmethod
    def open(cls, path: Path, migrate: Migrate) -> Logbook:
        """Open the logbook at `path`; make it, or bring it to this version, if need be.

        Raises
        ------
        LogbookError
            If it is newer, damaged, locked, or can't be written.
        """
        with told(path):
            path.parent.mkdir(parents=True, exist_ok=True)
            found = revision_of(path)
            if found is not None and found not in KNOWN:
                raise LogbookError("newer", path, found)
            engine = engine_of(path)
            if found != HEAD:
                migrate(engine)
            logbook = cls(path, engine)
            with engine.connect() as connection:
                last = sa.select(sa.func.max(_ATTEMPTS.c.order_made))
                logbook._last = connection.execute(last).scalar() or 0
        return logbook

    def close(self) -> None:
        """Let go of the file."""
        self._engine.dispose()

    # --- learners -----------------------------------------------------------------------------

    def learners(self) -> list[Learner]:
        """Everybody, by name."""
        with self.reading() as connection:
            rows = connection.execute(
                sa.select(_LEARNERS.c.id, _LEARNERS.c.name).order_by(_LEARNERS.c.name)
            )
            return [Learner(row.id, row.name) for row in rows]

    def add_learner(self, name: str, known_as: str | None = None) -> Learner:
        """Add somebody; the name must be new and not empty, the id is made unless stated."""
        name = name.strip()
        if not name or len(name) > 200:
            raise LogbookError("name", self.path, name)
        learner = Learner(known_as or str(uuid4()), name)
        row = {"id": learner.id, "name": learner.name, "made_ms": time.time_ns() // 1_000_000}
        try:
            with self.writing() as connection:
                connection.execute(sa.insert(_LEARNERS), row)
        except IntegrityError as error:
            raise LogbookError("name", self.path, name) from error
        return learner

    def rename(self, learner: str, name: str) -> None:
        """Give a learner another name."""
        name = name.strip()
        if not name or len(name) > 200:
            raise LogbookError("name", self.path, name)
        try:
            with self.writing() as connection:
                done = connection.execute(
                    sa.update(_LEARNERS).where(_LEARNERS.c.id == learner).values(name=name)
                )
        except IntegrityError as error:
            raise LogbookError("name", self.path, name) from error
        if done.rowcount == 0:
            raise LogbookError("no such learner", self.path, learner)

    def erase(self, learner: str) -> None:
        """Erase a learner wholly: attempts, tallies, sittings, and coupons nobody else judged.

        What is erased is overwritten in the file, and the write-ahead log emptied.
        """
        self.erase_all([Erasure(learner)])

    def erase_all(self, erasures: Sequence[Erasure]) -> None:
        """Erase learners, or what they did before a day, all or none.

        Raises
        ------
        LogbookError
            If there is no such learner; nothing is erased then.
        """
        with told(self.path):
            unknown = erase_in(self.path, erasures)
        if unknown is not None:
            raise LogbookError("no such learner", self.path, unknown)

    # --- attempts -----------------------------------------------------------------------------

    def add(self, learner: str, entry: Entry) -> bool:
        """Keep an attempt; return whether it is new. It is on the disk when this returns.

        Raises
        ------
        LogbookError
            If it can't be kept; nothing of it is there then.
        """
        return self.add_all(learner, [entry]) == 1

    def add_all(self, learner: str, entries: Sequence[Entry]) -> int:
        """Keep attempts, all or none; return how many are new. Each may name its own learner."""
        with self.writing() as connection:
            return sum(
                self.insert(connection, entry.learner or learner, entry) for entry in entries
            )

    def insert(
        self,
        connection: Connection,
        learner: str,
        entry: Entry,
        within: Mapping[str, object] | None = None,
    ) -> bool:
        """Put an attempt into a transaction that is under way; return whether it is new.

        Parameters
        ----------
        connection
            Of `writing`.
        learner
            Id of whose it is.
        within
            What a sitting adds to the row: ``sat_id``, ``item``, ``spent_ms``.
        """
        at = int(entry.at.timestamp() * 1000)
        self.clock_went_back |= at + _BACK_MS < self._last
        self._last = max(at, self._last + 1)
        connection.execute(
            sqlite.insert(_COUPONS).on_conflict_do_nothing(),
            {"digest": entry.digest, "body": dict(entry.coupon)},
        )
        outcome = outcome_of_entry(entry)
        row = row_of(learner, entry, outcome, at_ms=at, order=self._last) | dict(within or {})
        done = connection.execute(sqlite.insert(_ATTEMPTS).on_conflict_do_nothing(), row)
        if done.rowcount == 0:
            return False
        first = entry.before_feedback
        for one in added_by(outcome, entry.grade, sure_of(entry), before_feedback=first):
            tally = {"learner_id": learner, "day": row["day"], "kind": one.kind, "key": one.key}
            upsert = sqlite.insert(_TALLIES).values(**tally, counted=1, summed=one.total)
            connection.execute(
                upsert.on_conflict_do_update(
                    index_elements=list(tally),
                    set_={
                        "counted": _TALLIES.c.counted + 1,
                        "summed": _TALLIES.c.summed + one.total,
                    },
                )
            )
        return True

    def count(self, learner: str | None = None) -> int:
        """How many attempts there are, of one learner or of all."""
        asked = sa.select(sa.func.count()).select_from(_ATTEMPTS)
        if learner is not None:
            asked = asked.where(_ATTEMPTS.c.learner_id == learner)
        with self.reading() as connection:
            return int(connection.execute(asked).scalar_one())

    def attempts(self, learner: str, most: int = 200, before: int | None = None) -> list[Kept]:
        """The newest attempts of a learner, at most `most`; older ones than order `before`."""
        asked = sa.select(_ATTEMPTS).where(
            _ATTEMPTS.c.learner_id == learner, attempt_shown(self.opened)
        )
        if before is not None:
            asked = asked.where(_ATTEMPTS.c.order_made < before)
        with self.reading() as connection:
            rows = connection.execute(asked.order_by(_ATTEMPTS.c.order_made.desc()).limit(most))
            return [kept_of_row(row) for row in rows]

    def every(self, learner: str) -> Iterator[Entry]:
        """Yield a learner's attempts, oldest first, a few at a time: for exports."""
        asked = (
            sa.select(_ATTEMPTS, _COUPONS.c.body)
            .join(_COUPONS, _COUPONS.c.digest == _ATTEMPTS.c.digest)
            .where(_ATTEMPTS.c.learner_id == learner, attempt_shown(self.opened))
            .order_by(_ATTEMPTS.c.order_made)
        )
        with self.reading() as connection:
            for row in connection.execution_options(yield_per=200).execute(asked):
                yield entry_of_row(row)

    def tallies(
        self, learner: str, since: str = "", newest_lines: int | None = None
    ) -> list[Tally]:
        """What a learner's attempts come to, by day.

        Parameters
        ----------
        learner
            Id.
        since
            Of days from this one on, as 2026-03-01.
        newest_lines
            How many rows of the kind ``line`` at most, the latest, and as many again of the calls
            before feedback; all if None. Where there are years of them a line is made of few.
        """
        of = sa.select(_TALLIES).where(_TALLIES.c.learner_id == learner, _TALLIES.c.day >= since)
        line = _TALLIES.c.kind == "line"
        if newest_lines is None:
            asked = [of]
        else:
            latest = of.where(line).order_by(_TALLIES.c.day.desc()).limit(newest_lines)
            first = of.where(line, _TALLIES.c.key.endswith(" first"))
            first = first.order_by(_TALLIES.c.day.desc()).limit(newest_lines)
            asked = [of.where(~line), latest, first]
        hidden = sa.select(*(_ATTEMPTS.c[name] for name in COUNTED)).where(
            # By their papers alone: there are few, and of the attempts there may be a million.
            _ATTEMPTS.c.sat_id.in_(shut_papers(learner, self.opened)),
            _ATTEMPTS.c.day >= since,
        )
        with self.reading() as connection:
            rows = {
                (r.day, r.kind, r.key): Tally(r.day, r.kind, r.key, r.counted, r.summed)
                for query in asked
                for r in connection.execute(query)
            }
            # Papers that are shut are counted in the file, since that is never rewritten.
            for row in connection.execute(hidden):
                _take_off(rows, row.day, added_by_row(row))
        return [rows[key] for key in sorted(rows)]

    def repeats(self, learner: str, most: int = 2000) -> list[tuple[bool, ...]]:
        """What was called of each coupon that was called more than once, oldest call first.

        Parameters
        ----------
        learner
            Id.
        most
            Attempts looked at, the newest.

        Returns
        -------
        list
            Of each such coupon, whether each call rejected it; calls within the doubt left out.
        """
        newest = (
            sa.select(_ATTEMPTS.c.digest, _ATTEMPTS.c.called_bad, _ATTEMPTS.c.order_made)
            .where(
                _ATTEMPTS.c.learner_id == learner,
                _ATTEMPTS.c.called_bad.is_not(None),
                ~_ATTEMPTS.c.in_doubt,
                attempt_shown(self.opened),
            )
            .order_by(_ATTEMPTS.c.order_made.desc())
            .limit(most)
        )
        found: dict[str, list[bool]] = {}
        with self.reading() as connection:
            for digest, rejected, _ in reversed(connection.execute(newest).all()):
                found.setdefault(digest, []).append(bool(rejected))
        return [tuple(calls) for calls in found.values() if len(calls) > 1]

    # --- the file -----------------------------------------------------------------------------

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """Open a transaction that writes, all of it or nothing; it is on the disk at its end."""
        with told(self.path), self._engine.begin() as connection:
            yield connection

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Open a connection to read by."""
        with told(self.path), self._engine.connect() as connection:
            yield connection


def _take_off(tallies: dict[tuple[str, str, str], Tally], day: str, added: Sequence[Added]) -> None:
    """Take what one attempt added off again."""
    for one in added:
        key = (day, one.kind, one.key)
        # Of lines only the newest days may have been read.
        if key in tallies:
            tally = tallies[key]
            tallies[key] = replace(tally, count=tally.count - 1, total=tally.total - one.total)
            if tallies[key].count == 0:
                del tallies[key]
