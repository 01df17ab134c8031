"""The logbook's file: SQLite through SQLAlchemy, each attempt on disk before it counts as kept.

Write-ahead log with synchronous FULL, so that neither a kill nor a power cut takes back what was
acknowledged; foreign keys on; the schema's version in Alembic's table. A file of a newer version,
one that is damaged and one that another program holds are refused with words of their own, and
`trainer.logbook.keeping` then keeps attempts aside until the file is well again.
"""

from __future__ import annotations

import json
import sqlite3
import time
import zlib
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Final, Literal, cast
from uuid import uuid4

import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine import Connection, Engine
from sqlalchemy.exc import DBAPIError, IntegrityError

from exercises.learner.outcome import Outcome
from trainer.logbook.schema import AttemptRow, CouponRow, LearnerRow, TallyRow
from trainer.logbook.tallies import Tally, added_by
from trainer.records import Entry

__all__ = ["HEAD", "Kept", "Learner", "Logbook", "LogbookError", "Migrate", "Trouble"]

HEAD: Final = "0001"
"""Revision of the tables that this program knows."""

_KNOWN: Final = ("0001",)
_WAIT_MS: Final = 4000
"""How long another program may hold the file before it counts as locked."""

_BACK_MS: Final = 3_600_000
"""A clock that reads this much less than it did was set back."""

_OUTCOME: Final = ("distance", "short", "bad", "called_bad", "in_doubt", "clean")

Trouble = Literal["newer", "damaged", "locked", "full", "unwritable", "no such learner", "name"]

_ATTEMPTS: Final = cast("sa.Table", AttemptRow.__table__)
_TALLIES: Final = cast("sa.Table", TallyRow.__table__)
_COUPONS: Final = cast("sa.Table", CouponRow.__table__)
_LEARNERS: Final = cast("sa.Table", LearnerRow.__table__)

Migrate = Callable[[Engine], None]
"""Brings a file's tables to `HEAD`: `trainer.logbook.migrating`, loaded where it is needed."""


class LogbookError(Exception):
    """What a logbook can't do, and why.

    Parameters
    ----------
    trouble
        A stable name for it; translations hang on it.
    path
        The file.
    detail
        What the system said.
    """

    def __init__(self, trouble: Trouble, path: Path, detail: str = "") -> None:
        self.trouble: Trouble = trouble
        self.path = path
        self.detail = detail
        super().__init__(f"{path}: {trouble}{': ' if detail else ''}{detail}")


@dataclass(frozen=True, slots=True)
class Learner:
    """Somebody who makes calls here."""

    id: str
    name: str


@dataclass(frozen=True, slots=True)
class Kept:
    """An attempt as the logbook lists it."""

    id: str
    at: datetime
    coupon: str
    digest: str
    source: str
    score: float
    critical: bool
    distance: float | None
    attempt: Mapping[str, object]
    grade: Mapping[str, object]


class Logbook:
    """An open logbook.

    Examples
    --------
    >>> import tempfile
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

    @classmethod
    def open(cls, path: Path, migrate: Migrate) -> Logbook:
        """Open the logbook at `path`; make it, or bring it to this version, if need be.

        Raises
        ------
        LogbookError
            If it is newer, damaged, locked, or can't be written.
        """
        with _told(path):
            path.parent.mkdir(parents=True, exist_ok=True)
            found = _revision(path)
            if found is not None and found not in _KNOWN:
                raise LogbookError("newer", path, found)
            engine = _engine(path)
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
        with self._reading() as connection:
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
            with self._writing() as connection:
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
            with self._writing() as connection:
                done = connection.execute(
                    sa.update(_LEARNERS).where(_LEARNERS.c.id == learner).values(name=name)
                )
        except IntegrityError as error:
            raise LogbookError("name", self.path, name) from error
        if done.rowcount == 0:
            raise LogbookError("no such learner", self.path, learner)

    def erase(self, learner: str) -> None:
        """Erase a learner wholly: attempts, tallies, and coupons that nobody else judged.

        What is erased is overwritten in the file, and the write-ahead log emptied.
        """
        with self._writing() as connection:
            done = connection.execute(sa.delete(_LEARNERS).where(_LEARNERS.c.id == learner))
            used = sa.select(_ATTEMPTS.c.digest)
            connection.execute(sa.delete(_COUPONS).where(_COUPONS.c.digest.not_in(used)))
        if done.rowcount == 0:
            raise LogbookError("no such learner", self.path, learner)
        with _told(self.path), closing(sqlite3.connect(self.path)) as plain:
            plain.execute("PRAGMA wal_checkpoint(TRUNCATE)")
            plain.execute("VACUUM")

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
        with self._writing() as connection:
            return sum(
                self._insert(connection, entry.learner or learner, entry) for entry in entries
            )

    def _insert(self, connection: Connection, learner: str, entry: Entry) -> bool:
        at = int(entry.at.timestamp() * 1000)
        self.clock_went_back |= at + _BACK_MS < self._last
        self._last = max(at, self._last + 1)
        connection.execute(
            sqlite.insert(_COUPONS).on_conflict_do_nothing(),
            {"digest": entry.digest, "body": dict(entry.coupon)},
        )
        outcome = _outcome(entry)
        row = _row(learner, entry, outcome, at_ms=at, order=self._last)
        done = connection.execute(sqlite.insert(_ATTEMPTS).on_conflict_do_nothing(), row)
        if done.rowcount == 0:
            return False
        added = added_by(outcome, entry.grade, _sure(entry), before_feedback=entry.before_feedback)
        for one in added:
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
        with self._reading() as connection:
            return int(connection.execute(asked).scalar_one())

    def attempts(self, learner: str, most: int = 200, before: int | None = None) -> list[Kept]:
        """The newest attempts of a learner, at most `most`; older ones than order `before`."""
        asked = sa.select(_ATTEMPTS).where(_ATTEMPTS.c.learner_id == learner)
        if before is not None:
            asked = asked.where(_ATTEMPTS.c.order_made < before)
        with self._reading() as connection:
            rows = connection.execute(asked.order_by(_ATTEMPTS.c.order_made.desc()).limit(most))
            return [_kept(row) for row in rows]

    def every(self, learner: str) -> Iterator[Entry]:
        """Yield a learner's attempts, oldest first, a few at a time: for exports."""
        asked = (
            sa.select(_ATTEMPTS, _COUPONS.c.body)
            .join(_COUPONS, _COUPONS.c.digest == _ATTEMPTS.c.digest)
            .where(_ATTEMPTS.c.learner_id == learner)
            .order_by(_ATTEMPTS.c.order_made)
        )
        with self._reading() as connection:
            for row in connection.execution_options(yield_per=200).execute(asked):
                yield _entry(row)

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
        with self._reading() as connection:
            rows = {
                (r.day, r.kind, r.key): Tally(r.day, r.kind, r.key, r.counted, r.summed)
                for query in asked
                for r in connection.execute(query)
            }
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
            )
            .order_by(_ATTEMPTS.c.order_made.desc())
            .limit(most)
        )
        found: dict[str, list[bool]] = {}
        with self._reading() as connection:
            for digest, rejected, _ in reversed(connection.execute(newest).all()):
                found.setdefault(digest, []).append(bool(rejected))
        return [tuple(calls) for calls in found.values() if len(calls) > 1]

    # --- the file -----------------------------------------------------------------------------

    @contextmanager
    def _writing(self) -> Iterator[Connection]:
        with _told(self.path), self._engine.begin() as connection:
            yield connection

    @contextmanager
    def _reading(self) -> Iterator[Connection]:
        with _told(self.path), self._engine.connect() as connection:
            yield connection


def _revision(path: Path) -> str | None:
    """The revision of the file's tables, read without SQLAlchemy; None if there is no file yet."""
    if not path.exists() or path.stat().st_size == 0:
        return None
    with closing(sqlite3.connect(path, timeout=_WAIT_MS / 1000)) as plain:
        named = plain.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall()
        if ("alembic_version",) not in named:
            if named:
                raise LogbookError("damaged", path, "not a logbook")
            return None
        row = plain.execute("SELECT version_num FROM alembic_version").fetchone()
    return str(row[0]) if row else None


def _engine(path: Path) -> Engine:
    engine = sa.create_engine(f"sqlite:///{path}", connect_args={"timeout": _WAIT_MS / 1000})

    @event.listens_for(engine, "connect")
    def _(connection: sqlite3.Connection, _record: object) -> None:
        # The driver would begin a transaction by itself, and only before a change.
        connection.isolation_level = None
        for pragma in (
            "foreign_keys=ON", "journal_mode=WAL", "synchronous=FULL", "fullfsync=1",
            "secure_delete=ON", "cache_size=-4000",
        ):  # fmt: skip
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _(connection: Connection) -> None:
        # A transaction that reads first and writes later could find the file locked by then.
        connection.exec_driver_sql("BEGIN IMMEDIATE")

    return engine


@contextmanager
def _told(path: Path) -> Iterator[None]:
    """Turn what SQLite and the system say into words of our own."""
    try:
        yield
    except (sqlite3.Error, DBAPIError, OSError) as error:
        if isinstance(error, IntegrityError):
            raise
        raise LogbookError(_trouble(error), path, str(getattr(error, "orig", error))) from error


def _trouble(error: Exception) -> Trouble:
    said = str(getattr(error, "orig", None) or error).lower()
    if "locked" in said or "busy" in said:
        return "locked"
    if "full" in said or "no space" in said:
        return "full"
    if "malformed" in said or "not a database" in said or "corrupt" in said:
        return "damaged"
    return "unwritable"


def _outcome(entry: Entry) -> Outcome:
    said = entry.outcome
    right = entry.grade.get("right")
    stated = entry.attempt.get("disposition")
    if set(_OUTCOME) <= set(said):
        return Outcome(**said)  # type: ignore[arg-type]
    # A call kept before outcomes were: what it was about isn't known, only how it ended.
    return Outcome(
        None, None, right not in {None, "accept"},
        None if stated is None else stated != "accept", bool(entry.grade.get("in_doubt")), True,
    )  # fmt: skip


def _sure(entry: Entry) -> float | None:
    sure = entry.attempt.get("sure")
    return float(sure) if isinstance(sure, (int, float)) else None


def _row(
    learner: str, entry: Entry, outcome: Outcome, *, at_ms: int, order: int
) -> dict[str, object]:
    score = entry.grade.get("score")
    rows = json.dumps([list(row) for row in entry.handling], separators=(",", ":"))
    return {
        "id": entry.id,
        "learner_id": learner,
        "digest": entry.digest,
        "at_ms": at_ms,
        "order_made": order,
        "day": entry.at.astimezone().date().isoformat(),
        "coupon": str(entry.coupon.get("id", "")),
        "source": entry.source,
        "rules": dict(entry.rules),
        "score": float(score) if isinstance(score, (int, float)) else 0.0,
        "critical": bool(entry.grade.get("critical")),
        "before_feedback": entry.before_feedback,
        "distance": outcome.distance,
        "short": outcome.short,
        "bad": outcome.bad,
        "clean": outcome.clean,
        "called_bad": outcome.called_bad,
        "in_doubt": outcome.in_doubt,
        "sure": _sure(entry),
        "attempt": dict(entry.attempt),
        "grade": dict(entry.grade),
        "zoom": dict(entry.zoom),
        "handling": zlib.compress(rows.encode("utf-8")),
    }


def _at(ms: int) -> datetime:
    return datetime.fromtimestamp(ms / 1000, UTC)


def _kept(row: sa.Row[tuple[object, ...]]) -> Kept:
    return Kept(
        row.id, _at(row.at_ms), row.coupon, row.digest, row.source, row.score, row.critical,
        row.distance, row.attempt, row.grade,
    )  # fmt: skip


def _entry(row: sa.Row[tuple[object, ...]]) -> Entry:
    return Entry(
        coupon=row.body,
        digest=row.digest,
        rules=row.rules,
        attempt=row.attempt,
        grade=row.grade,
        handling=json.loads(zlib.decompress(row.handling)),
        zoom=row.zoom,
        at=_at(row.at_ms),
        outcome={key: getattr(row, key) for key in _OUTCOME},
        learner=row.learner_id,
        source=row.source,
        before_feedback=row.before_feedback,
        id=row.id,
    )
