"""The school's PostgreSQL server: reached, given its tables and its roles.

Two roles are made for others to be put into. A station may add rows and nothing else: it can read
nothing, change nothing and delete nothing, so that whoever takes over a station's password learns
nothing of anybody. An instructor reads, adds, and can erase; nobody changes a row.
"""

from __future__ import annotations

import logging
import re
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.engine import Connection, Engine
from sqlalchemy.pool import NullPool

from trainer.logbook.migrating import upgrade, upgrade_as_sql
from trainer.logbook.opening import HEAD, KNOWN
from trainer.logbook.schema import Base
from trainer.school.address import Address
from trainer.school.trouble import SchoolError, speaking_to

__all__ = [
    "INSTRUCTORS",
    "PUSHED",
    "STATIONS",
    "check_version",
    "make_tables",
    "server_engine",
    "tables_as_sql",
    "try_server",
]

STATIONS: Final = "toe_and_throat_stations"
INSTRUCTORS: Final = "toe_and_throat_instructors"
"""Roles that nobody can log in by: logins are put into them."""

PUSHED: Final = ("learners", "coupons", "sittings", "sat", "attempts")
"""What a station adds rows to, each after what it refers to."""

_ADDED: Final = (*PUSHED, "overrides", "groups", "members")
_ERASED: Final = ("learners", "sat", "attempts", "coupons", "sittings", "groups", "members")

_SAYS: Final = re.compile(r"toe-and-throat (\d{4})")
# What it logs of a line that broke stands in the exception that it raises, and a program with a
# window has nobody to read it on standard error.
logging.getLogger("psycopg").addHandler(logging.NullHandler())

_WAIT_S: Final = 5
_STATEMENT_MS: Final = 60_000
_LOCK_MS: Final = 20_000


def server_engine(address: Address) -> Engine:
    """Return an engine for a server; nothing is connected yet.

    Raises
    ------
    SchoolError
        If what speaks to PostgreSQL isn't installed, or the address can't be used.
    """
    waits: dict[str, Any] = {
        "connect_timeout": _WAIT_S,
        # A line that went dead is noticed within some seconds, where the system can.
        "tcp_user_timeout": 1000 * _WAIT_S,
        "application_name": "toe-and-throat",
    }
    stated = address.to.query
    arguments = {key: value for key, value in waits.items() if key not in stated}
    with speaking_to():
        engine = sa.create_engine(
            address.to,
            poolclass=NullPool,
            # Statements kept on the server get lost behind a pooler such as PgBouncer.
            connect_args={**arguments, "prepare_threshold": None},
        )

    @event.listens_for(engine, "connect")
    def _(connection: Any, _record: object) -> None:  # noqa: ANN401 - the driver's own
        with connection.cursor() as cursor:
            cursor.execute(f"SET statement_timeout = {_STATEMENT_MS}")
            cursor.execute(f"SET lock_timeout = {_LOCK_MS}")
        connection.commit()

    return engine


def check_version(connection: Connection) -> None:
    """Raise unless the server's tables are of this program's version.

    The version stands as a comment on a table: a station can read no table at all.
    """
    asked = sa.text("SELECT obj_description(to_regclass('alembic_version'), 'pg_class')")
    said = _SAYS.fullmatch(connection.execute(asked).scalar() or "")
    if said is None:
        raise SchoolError("tables")
    if said[1] != HEAD:
        raise SchoolError("older" if said[1] in KNOWN else "newer", said[1])


def try_server(address: Address) -> None:
    """Raise a `SchoolError` unless the server can be reached and has its tables."""
    engine = server_engine(address)
    with speaking_to(), engine.connect() as connection:
        check_version(connection)


def make_tables(engine: Engine) -> str | None:
    """Make the tables and the roles, or bring them up to date: all of it or nothing.

    Parameters
    ----------
    engine
        By somebody who may make tables and roles.

    Returns
    -------
    str or None
        The version of the tables before; None if there were none.

    Raises
    ------
    SchoolError
        If the tables are of a newer version, or it can't be done.
    """
    with speaking_to(), engine.begin() as connection:
        before: str | None = None
        if connection.execute(sa.text("SELECT to_regclass('alembic_version')")).scalar():
            asked = sa.text("SELECT version_num FROM alembic_version")
            before = connection.execute(asked).scalar()
        if before is not None and before not in KNOWN:
            raise SchoolError("newer", before)
        upgrade(connection)
        for statement in _rights():
            connection.execute(sa.text(statement))
    return before


def tables_as_sql() -> str:
    """Return what `make_tables` does in an empty database, as SQL for psql."""
    made = upgrade_as_sql().rstrip().removesuffix("COMMIT;").rstrip()
    rights = "\n\n".join(f"{statement};" for statement in _rights())
    return f"{made}\n\n{rights}\n\nCOMMIT;\n"


def _rights() -> list[str]:
    """What makes the roles and gives them what they may do; can be run again."""
    every = ", ".join(sorted(Base.metadata.tables))
    made = [
        f"DO $do$ BEGIN IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = '{role}')"
        f" THEN CREATE ROLE {role} NOLOGIN; END IF; END $do$"
        for role in (STATIONS, INSTRUCTORS)
    ]
    return [
        *made,
        f"COMMENT ON TABLE alembic_version IS 'toe-and-throat {HEAD}'",
        f"REVOKE ALL ON {every}, alembic_version FROM PUBLIC, {STATIONS}, {INSTRUCTORS}",
        f"GRANT INSERT ON {', '.join(PUSHED)} TO {STATIONS}",
        f"GRANT SELECT ON {every}, alembic_version TO {INSTRUCTORS}",
        f"GRANT INSERT ON {', '.join(_ADDED)} TO {INSTRUCTORS}",
        f"GRANT DELETE ON {', '.join(_ERASED)} TO {INSTRUCTORS}",
    ]
