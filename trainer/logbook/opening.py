"""The logbook's file and what can be wrong with it: opened by SQLAlchemy, its version read without.

A file of a newer version, one that is damaged and one that another program holds are refused with
words of their own.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final, Literal

import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.engine import Connection, Engine
from sqlalchemy.exc import DBAPIError, IntegrityError
from sqlalchemy.pool import NullPool

__all__ = ["HEAD", "KNOWN", "LogbookError", "Trouble", "engine_of", "revision_of", "told"]

HEAD: Final = "0002"
"""Revision of the tables that this program knows."""

KNOWN: Final = ("0001", "0002")
_WAIT_MS: Final = 4000
"""How long another program may hold the file before it counts as locked."""

Trouble = Literal["newer", "damaged", "locked", "full", "unwritable", "no such learner", "name"]


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


def revision_of(path: Path) -> str | None:
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


def engine_of(path: Path, *, reading: bool = False, pooled: bool = True) -> Engine:
    """Return an engine for the file, each of its connections set up to lose nothing.

    Parameters
    ----------
    path
        The file.
    reading
        Whether its transactions read before they write, if they write at all: then they hold up
        nobody who writes.
    pooled
        Whether connections are kept; else each use opens the file anew, and none holds it.
    """
    engine = sa.create_engine(
        f"sqlite:///{path}",
        connect_args={"timeout": _WAIT_MS / 1000},
        poolclass=None if pooled else NullPool,
    )

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
        connection.exec_driver_sql("BEGIN" if reading else "BEGIN IMMEDIATE")

    return engine


@contextmanager
def told(path: Path) -> Iterator[None]:
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
