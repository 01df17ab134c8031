"""What can be wrong with a school's server, told apart: a stable name for each, and plain English.

The words in other languages are in `trainer.school.words`. The server's own words go along as they
came, since an administrator will ask for them.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final, Literal, get_args

from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError, SQLAlchemyError

__all__ = ["SENTENCES", "TROUBLES", "SchoolError", "Trouble", "explained", "speaking_to"]

Trouble = Literal[
    "driver", "address", "unreachable", "timeout", "password", "database", "permission",
    "encryption", "tables", "older", "newer", "busy", "full", "row", "other",
]  # fmt: skip
TROUBLES: Final[tuple[Trouble, ...]] = get_args(Trouble)

SENTENCES: Final[dict[Trouble, str]] = {
    "driver": "what speaks to PostgreSQL isn't installed: pip install 'toe-and-throat[school]'",
    "address": "that is no address of a PostgreSQL server;"
    " right would be: postgresql://station@host:5432/school",
    "unreachable": "the server can't be reached",
    "timeout": "the server took too long to answer",
    "password": "the server refuses the name or the password",
    "database": "the server has no such database",
    "permission": "the server doesn't let this user do that",
    "encryption": "no encrypted connection came about",
    "tables": "the database has no tables of this program;"
    " its administrator makes them: toe-and-throat school URL",
    "older": "the server's tables are of an older version;"
    " its administrator brings them up to date: toe-and-throat school URL",
    "newer": "the server's tables are of a newer version; this program is to be brought up to date",
    "busy": "the server is too busy just now, or starting",
    "full": "the server has no room left",
    "row": "the server refuses some of what was to be sent; the rest was sent",
    "other": "the server answers with an error",
}
"""What each trouble is, in English."""


class SchoolError(Exception):
    """What a school's server can't do, and why.

    Parameters
    ----------
    trouble
        A stable name for it; translations hang on it.
    detail
        What the server, or the system, said.
    """

    def __init__(self, trouble: Trouble, detail: str = "") -> None:
        self.trouble: Trouble = trouble
        self.detail = " ".join(detail.split())
        super().__init__(f"{SENTENCES[trouble]}{f' ({self.detail})' if self.detail else ''}")


_STATES: Final[tuple[tuple[str, Trouble], ...]] = (
    ("42501", "permission"),
    ("28P01", "password"), ("28", "password"),
    ("3D000", "database"),
    ("3F000", "tables"), ("42P01", "tables"),
    ("42703", "older"),
    ("53100", "full"), ("53200", "full"),
    ("53", "busy"), ("57014", "timeout"), ("55P03", "timeout"),
    ("40", "busy"), ("57P", "busy"),
    ("08", "unreachable"),
    ("22", "row"), ("23", "row"),
)  # fmt: skip
"""Beginnings of SQLSTATEs, by PostgreSQL's appendix A; the first that fits holds."""

_SAID: Final[tuple[tuple[str, Trouble], ...]] = (
    ("invalid connection option", "address"), ("invalid uri", "address"),
    ("invalid integer value", "address"), ("invalid port", "address"),
    ("invalid sslmode", "address"),
    ("no password supplied", "password"), ("password authentication failed", "password"),
    ("autentificación password falló", "password"), ("authentication failed", "password"),
    ("wrong password", "password"), ("no existe el rol", "password"),
    ("pg_hba.conf", "permission"), ("not permitted to log in", "permission"),
    ("permission denied for database", "permission"), ("no tiene permitido", "permission"),
    ("role", "password"),
    ("does not support ssl", "encryption"), ("ssl", "encryption"), ("certificate", "encryption"),
    ("starting up", "busy"), ("shutting down", "busy"), ("in recovery", "busy"),
    ("too many", "busy"), ("remaining connection slots", "busy"),
    ("database", "database"), ("base de datos", "database"),
    ("timeout", "timeout"), ("timed out", "timeout"), ("timeout expired", "timeout"),
    ("could not translate", "unreachable"), ("resolve", "unreachable"),
)  # fmt: skip
"""What stands in words of a connection that didn't come about, which has no SQLSTATE.

The first that fits holds. A server may say them in its own language: then the address is to blame
for nothing, and its words go along.
"""


@contextmanager
def speaking_to() -> Iterator[None]:
    """Turn what SQLAlchemy, the driver and the server say into a `SchoolError`."""
    try:
        yield
    except (SQLAlchemyError, ImportError, OSError, UnicodeError) as error:
        raise explained(error) from error


def explained(error: Exception) -> SchoolError:
    """Return what an error of the driver's or of SQLAlchemy's comes to.

    Examples
    --------
    >>> explained(OSError("connection refused")).trouble
    'unreachable'
    >>> explained(ImportError("No module named 'psycopg'")).trouble
    'driver'
    """
    if isinstance(error, ImportError):
        return SchoolError("driver", str(error))
    if isinstance(error, (ArgumentError, NoSuchModuleError, UnicodeError)):
        return SchoolError("address", str(error))
    if isinstance(error, OSError):
        return SchoolError("unreachable", str(error))
    if isinstance(error, DBAPIError):
        return _of_the_driver(error.orig if error.orig is not None else error)
    return SchoolError("other", str(error))


def _of_the_driver(said: BaseException) -> SchoolError:
    state = getattr(said, "sqlstate", None)
    text = str(said)
    if isinstance(state, str):
        fitting = (trouble for start, trouble in _STATES if state.startswith(start))
        return SchoolError(next(fitting, "other"), text)
    low = text.lower()
    for words, trouble in _SAID:
        if words in low:
            return SchoolError(trouble, text)
    # Without a SQLSTATE nothing reached the server, or nothing came back.
    return SchoolError("unreachable", text)
