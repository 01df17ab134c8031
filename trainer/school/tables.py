"""The tables and roles of a school's PostgreSQL server.

Two roles are made for others to be put into. A station may add rows and nothing else: it can read
nothing, change nothing and delete nothing, so that whoever takes over a station's password learns
of nobody what they did. They can add false rows, and a row that is refused as there already tells
them that a code which they guessed is. An instructor reads, adds, and can erase; nobody changes a
row.
"""

from __future__ import annotations

from typing import Final

import sqlalchemy as sa
from sqlalchemy.engine import Engine

from trainer.logbook.migrating import upgrade, upgrade_as_sql
from trainer.logbook.opening import HEAD, KNOWN
from trainer.logbook.schema import Base
from trainer.school.server import PUSHED, SAYS
from trainer.school.trouble import SchoolError, speaking_to

__all__ = ["INSTRUCTORS", "PUSHED", "STATIONS", "make_tables", "tables_as_sql"]

STATIONS: Final = "toe_and_throat_stations"
INSTRUCTORS: Final = "toe_and_throat_instructors"
"""Roles that nobody can log in by: logins are put into them."""

_ADDED: Final = (*PUSHED, "overrides", "groups", "members")
_ERASED: Final = ("learners", "sat", "attempts", "coupons", "sittings", "groups", "members")


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
        f"COMMENT ON TABLE alembic_version IS '{SAYS} {HEAD}'",
        f"REVOKE ALL ON {every}, alembic_version FROM PUBLIC, {STATIONS}, {INSTRUCTORS}",
        f"GRANT INSERT ON {', '.join(PUSHED)} TO {STATIONS}",
        f"GRANT SELECT ON {every}, alembic_version TO {INSTRUCTORS}",
        f"GRANT INSERT ON {', '.join(_ADDED)} TO {INSTRUCTORS}",
        f"GRANT DELETE ON {', '.join(_ERASED)} TO {INSTRUCTORS}",
    ]
