"""The school's PostgreSQL server: how long it is waited for, and what it is asked first."""

from __future__ import annotations

import logging
import re
from dataclasses import dataclass
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.engine import Connection, Engine
from sqlalchemy.pool import NullPool

from trainer.logbook.opening import HEAD, KNOWN
from trainer.school.address import Address
from trainer.school.trouble import SchoolError, speaking_to

__all__ = ["PUSHED", "SAYS", "Rights", "check_version", "server_engine", "try_server"]

PUSHED: Final = ("learners", "coupons", "sittings", "sat", "attempts")
"""What a station adds rows to, each after what it refers to."""

SAYS: Final = "toe-and-throat"
"""What the comment begins with that names the version of a server's tables."""

_COMMENT: Final = re.compile(SAYS + r" (\d{4})")
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
    said = _COMMENT.fullmatch(connection.execute(asked).scalar() or "")
    if said is None:
        raise SchoolError("tables")
    if said[1] != HEAD:
        raise SchoolError("older" if said[1] in KNOWN else "newer", said[1])


@dataclass(frozen=True, slots=True)
class Rights:
    """What a login may do with a server's tables.

    Parameters
    ----------
    sends
        Whether it may add what a station sends.
    reads
        Whether it may read what others sent, as an instructor does and no station should.
    """

    sends: bool
    reads: bool


def try_server(address: Address) -> Rights:
    """Return what may be done at a server, which is reached and asked for it.

    Raises
    ------
    SchoolError
        If it can't be reached, has no tables of this version, or lets this login do nothing.
    """
    engine = server_engine(address)
    with speaking_to(), engine.connect() as connection:
        check_version(connection)
        # Anybody may ask this of themselves, who can read no table.
        asked = ", ".join(
            " AND ".join(f"has_table_privilege('{table}', '{right}')" for table in PUSHED)
            for right in ("INSERT", "SELECT")
        )
        sends, reads = connection.execute(sa.text(f"SELECT {asked}")).one()
    if not (sends or reads):
        raise SchoolError("permission")
    return Rights(sends, reads)
