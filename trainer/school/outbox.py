"""What a station has for the school's server and doesn't know to be there, taken from its logbook.

Only learners with a code go, under that code: their names stay. Tallies don't go, since who may
only add rows can't add to one; whoever reads makes them anew. What the server has for certain is
noted in the station's own table ``sent`` once the server has acknowledged it, so that a note is
lost at worst and the same row sent again, which changes nothing.
"""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine import Connection

from exercises.sitting.codes import learner_id
from trainer.logbook.opening import engine_of, told
from trainer.logbook.schema import (
    AttemptRow,
    CouponRow,
    LearnerRow,
    OverrideRow,
    SatRow,
    SentRow,
    SittingRow,
    table_of,
)
from trainer.logbook.shut import SHUT

__all__ = ["Outbox", "Parcel", "Row", "Waiting"]

_ATTEMPTS, _COUPONS, _LEARNERS = table_of(AttemptRow), table_of(CouponRow), table_of(LearnerRow)
_OVERRIDES, _SAT, _SENT = table_of(OverrideRow), table_of(SatRow), table_of(SentRow)
_SITTINGS = table_of(SittingRow)

Row = tuple[sa.Table, dict[str, Any]]

_WHOLE_LOOK: Final = 30
"""Every so many times all attempts are looked through, and not the newest alone."""

_MANY: Final = 500
"""Ids that one statement asks for."""


@dataclass(frozen=True, slots=True)
class Parcel:
    """Rows that the server is to have together, or not at all.

    Parameters
    ----------
    marks
        Ids that are noted as sent afterwards.
    rows
        In the order that they refer to each other.
    """

    marks: tuple[str, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Waiting:
    """How much waits.

    Parameters
    ----------
    attempts
        Of practice and of papers.
    papers, overrides
        How many.
    """

    attempts: int = 0
    papers: int = 0
    overrides: int = 0

    def __bool__(self) -> bool:
        return bool(self.attempts or self.papers or self.overrides)


class Outbox:
    """What waits in one logbook's file. Reading holds up nobody who writes.

    Each call raises `trainer.logbook.opening.LogbookError` where the file can't be read.

    Parameters
    ----------
    path
        The logbook's file, of this version.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        # Nothing holds the file in between: it may be put back from a copy, or moved.
        self._engine = engine_of(path, reading=True, pooled=False)
        self._marking = engine_of(path, pooled=False)
        self._settled: tuple[dict[str, str], int] | None = None
        self._looks = 0

    def close(self) -> None:
        """Let go of the file."""
        self._engine.dispose()
        self._marking.dispose()

    @contextmanager
    def _reading(self) -> Iterator[Connection]:
        with told(self.path), self._engine.connect() as connection:
            yield connection

    def waiting(self) -> Waiting:
        """How much waits."""
        count = sa.func.count()
        self._looks += 1
        if self._looks % _WHOLE_LOOK == 0:
            self._settled = None
        with self._reading() as connection:
            since = self._since(connection)
            return Waiting(
                connection.execute(
                    _unsent(sa.select(count), _ATTEMPTS).where(_ATTEMPTS.c.order_made > since)
                ).scalar_one(),
                connection.execute(_unsent(sa.select(count), _SAT)).scalar_one(),
                connection.execute(_unsent_overrides(sa.select(count))).scalar_one(),
            )

    def newest(self) -> int:
        """The order of the newest attempt: what `settle` is told once all up to it is sent."""
        with self._reading() as connection:
            return int(connection.execute(sa.func.max(_ATTEMPTS.c.order_made)).scalar() or 0)

    def settle(self, order: int) -> None:
        """All attempts up to this order are sent: they needn't be looked through each time.

        It holds until somebody gets a code, or another; now and then all are looked through anyway,
        since another program may keep attempts in an order of its own.
        """
        with self._reading() as connection:
            self._settled = _codes(connection), order

    def _since(self, connection: Connection) -> int:
        if self._settled is None or self._settled[0] != _codes(connection):
            return -1
        return self._settled[1]

    def shared(self, parcels: Iterable[Parcel]) -> list[Parcel]:
        """What parcels refer to and the server may lack: learners, coupons, sittings, in order.

        Each table's are in the order of their ids: where two stations add the same ones at once,
        neither then waits for the other in a circle.
        """
        named: dict[str, set[str]] = defaultdict(set)
        for parcel in parcels:
            for table, row in parcel.rows:
                for key in ("learner_id", "digest", "sitting_id"):
                    if key in table.c:
                        named[key].add(row[key])
        with self._reading() as connection:
            coded = _codes(connection)
            here = {learner_id(code): (own, code) for own, code in coded.items()}
            wanted = [here[one][0] for one in named["learner_id"] if one in here]
            learners = [
                Parcel((row.id,), ((_LEARNERS, _learner(row)),))
                for row in _found(connection, _LEARNERS, "id", wanted)
            ]
            others = [
                Parcel((getattr(row, key),), ((table, row._asdict()),))
                for table, key, of in (
                    (_COUPONS, "digest", "digest"), (_SITTINGS, "id", "sitting_id"),
                )
                for row in _found(connection, table, key, sorted(named[of]))
            ]  # fmt: skip
        return sorted(learners, key=lambda one: str(one.rows[0][1]["id"])) + others

    def papers(self, most: int, after: str = "") -> list[Parcel]:
        """Return papers that wait, each with its answers, in the order of their ids."""
        asked = _unsent(sa.select(_SAT, _LEARNERS.c.code), _SAT).where(_SAT.c.id > after)
        with self._reading() as connection:
            found: list[Parcel] = []
            for row in connection.execute(asked.order_by(_SAT.c.id).limit(most)):
                answers = connection.execute(
                    sa.select(_ATTEMPTS).where(_ATTEMPTS.c.sat_id == row.id)
                )
                rows = [
                    (_SAT, _outgoing(_SAT, row, row.code)),
                    *((_ATTEMPTS, _outgoing(_ATTEMPTS, one, row.code)) for one in answers),
                ]
                found.append(Parcel(tuple(str(each["id"]) for _, each in rows), tuple(rows)))
        return found

    def attempts(self, most: int, after: tuple[int, str] | None = None) -> list[Parcel]:
        """Return attempts at the bench that wait, in the order that they were kept.

        Parameters
        ----------
        most
            How many at most.
        after
            Order and id of the last one that was asked for; None to begin with.
        """
        with self._reading() as connection:
            order, identity = after or (self._since(connection), "")
        asked = _unsent(sa.select(_ATTEMPTS, _LEARNERS.c.code), _ATTEMPTS).where(
            _ATTEMPTS.c.sat_id.is_(None),
            (_ATTEMPTS.c.order_made > order)
            | ((_ATTEMPTS.c.order_made == order) & (_ATTEMPTS.c.id > identity)),
        )
        asked = asked.order_by(_ATTEMPTS.c.order_made, _ATTEMPTS.c.id).limit(most)
        with self._reading() as connection:
            return [
                Parcel((row.id,), ((_ATTEMPTS, _outgoing(_ATTEMPTS, row, row.code)),))
                for row in connection.execute(asked)
            ]

    def overrides(self, most: int, after: str = "") -> list[Parcel]:
        """Return overrides that wait and whose papers the server has, in the order of their ids."""
        asked = _unsent_overrides(sa.select(_OVERRIDES)).where(_OVERRIDES.c.id > after)
        there = sa.exists().where(_SENT.c.id == _OVERRIDES.c.sat_id)
        asked = asked.where(there).order_by(_OVERRIDES.c.id).limit(most)
        with self._reading() as connection:
            return [
                Parcel((row.id,), ((_OVERRIDES, _outgoing(_OVERRIDES, row, "")),))
                for row in connection.execute(asked)
            ]

    def unsent(self, parcels: Sequence[Parcel]) -> list[Parcel]:
        """Those of parcels of one mark each that aren't noted as sent."""
        marks = [parcel.marks[0] for parcel in parcels]
        with self._reading() as connection:
            sent = {row.id for row in _found(connection, _SENT, "id", marks)}
        return [parcel for parcel in parcels if parcel.marks[0] not in sent]

    def note(self, parcels: Iterable[Parcel]) -> None:
        """Note parcels as sent: only once the server has acknowledged them."""
        now = time.time_ns() // 1_000_000
        rows = [{"id": mark, "at_ms": now} for parcel in parcels for mark in parcel.marks]
        if rows:
            with told(self.path), self._marking.begin() as connection:
                connection.execute(sqlite.insert(_SENT).on_conflict_do_nothing(), rows)


def _unsent(asked: sa.Select[Any], table: sa.Table) -> sa.Select[Any]:
    """Of a table's rows those of learners with a code that aren't noted as sent."""
    return (
        asked.select_from(table)
        .join(_LEARNERS, _LEARNERS.c.id == table.c.learner_id)
        .where(_LEARNERS.c.code.is_not(None), ~sa.exists().where(_SENT.c.id == table.c.id))
    )


def _unsent_overrides(asked: sa.Select[Any]) -> sa.Select[Any]:
    return (
        asked.select_from(_OVERRIDES)
        .join(_SAT, _SAT.c.id == _OVERRIDES.c.sat_id)
        .join(_LEARNERS, _LEARNERS.c.id == _SAT.c.learner_id)
        .where(_LEARNERS.c.code.is_not(None), ~sa.exists().where(_SENT.c.id == _OVERRIDES.c.id))
    )


def _codes(connection: Connection) -> dict[str, str]:
    """The code of each learner who has one, by their id here."""
    asked = sa.select(_LEARNERS.c.id, _LEARNERS.c.code).where(_LEARNERS.c.code.is_not(None))
    return {row.id: row.code for row in connection.execute(asked)}


def _found(
    connection: Connection, table: sa.Table, key: str, ids: Sequence[str]
) -> list[sa.Row[Any]]:
    """The rows with these ids, in the order of the ids."""
    found: list[sa.Row[Any]] = []
    for start in range(0, len(ids), _MANY):
        asked = sa.select(table).where(table.c[key].in_(ids[start : start + _MANY]))
        found += connection.execute(asked).all()
    return sorted(found, key=lambda row: str(getattr(row, key)))


def _learner(row: sa.Row[Any]) -> dict[str, Any]:
    """A learner as the server has them: by their code, and nothing else."""
    return {
        "id": learner_id(row.code), "name": row.code, "code": row.code, "made_ms": row.made_ms
    }  # fmt: skip


def _outgoing(table: sa.Table, row: sa.Row[Any], code: str) -> dict[str, Any]:
    """A row as the server has it: its learner by the id that their code makes anywhere."""
    said = row._asdict()
    found = {column.name: said[column.name] for column in table.columns}
    if "learner_id" in found:
        found["learner_id"] = learner_id(code)
    if table is _SAT:
        # How its passphrase is known is this machine's.
        found["body"] = {key: value for key, value in found["body"].items() if key != SHUT}
    return found
