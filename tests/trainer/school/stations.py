"""Stations of a class, and a server that is none: another file with the same tables."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.engine import Engine

from tests.trainer.logbook.entries import entry_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.opening import HEAD, engine_of
from trainer.logbook.store import Logbook
from trainer.school.address import Address
from trainer.school.people import Newcomer

__all__ = ["ADDRESS", "Pretender", "rows_of", "station_of"]

ADDRESS = Address("postgresql://station@nowhere/school")


class Pretender:
    """A server of SQLite that says of itself what PostgreSQL would.

    `before` is called before each statement with its text; what it raises, the server says.
    """

    def __init__(self, path: Path, version: str | None = f"toe-and-throat {HEAD}") -> None:
        self.path = path
        self.version = version
        self.before: Callable[[str], None] = lambda _: None
        self.connected = 0
        bring_up_to_date(engine_of(path, pooled=False))

    def connect(self, _: Address) -> Engine:
        """Take the place of `trainer.school.server.server_engine`."""
        engine = engine_of(self.path, pooled=False)

        @event.listens_for(engine, "connect")
        def _named(connection: sqlite3.Connection, _record: object) -> None:
            self.connected += 1
            connection.create_function("to_regclass", 1, lambda name: name)
            connection.create_function("obj_description", 2, lambda _table, _kind: self.version)

        @event.listens_for(engine, "before_cursor_execute")
        def _heard(_c: object, _cursor: object, statement: str, *_rest: object) -> None:
            self.before(statement)

        @event.listens_for(engine, "commit")
        def _committing(_connection: object) -> None:
            self.before("COMMIT")

        return engine


def station_of(path: Path, code: str, numbers: range) -> Logbook:
    """A station's logbook with attempts of one learner with this code, and of one without."""
    logbook = Logbook.open(path, bring_up_to_date)
    coded = logbook.add_learner(f"Name of {code}")
    with logbook.writing() as connection:
        connection.execute(
            sa.text("UPDATE learners SET code = :code WHERE id = :id"),
            {"code": Newcomer("", code, 1).code, "id": coded.id},
        )
    private = logbook.add_learner(f"Nobody at {code}")
    logbook.add_all(coded.id, [entry_of(number) for number in numbers])
    logbook.add(private.id, entry_of(900_000 + numbers.start))
    return logbook


def rows_of(path: Path, asked: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as plain:
        return plain.execute(asked).fetchall()
