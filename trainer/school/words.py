"""What is wrong with a school's server, in the language that is spoken."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.school.trouble import SchoolError, Trouble

__all__ = ["school_words"]

_CONTEXT: Final = "School"

_TROUBLES: Final[dict[Trouble, tuple[str, str]]] = {
    "driver": (
        QT_TRANSLATE_NOOP("School", "What speaks to PostgreSQL isn't installed"),
        QT_TRANSLATE_NOOP("School", "Install it: pip install 'toe-and-throat[school]'"),
    ),
    "address": (
        QT_TRANSLATE_NOOP("School", "That is no address of a PostgreSQL server"),
        QT_TRANSLATE_NOOP("School", "Right would be: postgresql://station@host:5432/school"),
    ),
    "unreachable": (
        QT_TRANSLATE_NOOP("School", "The server can't be reached"),
        QT_TRANSLATE_NOOP("School", "See whether the network is there, and the server runs."),
    ),
    "timeout": (
        QT_TRANSLATE_NOOP("School", "The server took too long to answer"),
        QT_TRANSLATE_NOOP("School", "It may be busy, or the network slow."),
    ),
    "password": (
        QT_TRANSLATE_NOOP("School", "The server refuses the name or the password"),
        QT_TRANSLATE_NOOP("School", "Type the password that was given out, beside the address."),
    ),
    "database": (
        QT_TRANSLATE_NOOP("School", "The server has no such database"),
        QT_TRANSLATE_NOOP("School", "Its name stands at the end of the address."),
    ),
    "permission": (
        QT_TRANSLATE_NOOP("School", "The server doesn't let this user do that"),
        QT_TRANSLATE_NOOP(
            "School",
            "A station's login may send, an instructor's may read as well: the server's "
            "administrator puts each into its role.",
        ),
    ),
    "encryption": (
        QT_TRANSLATE_NOOP("School", "No encrypted connection came about"),
        QT_TRANSLATE_NOOP(
            "School",
            "Its administrator says which one it takes (sslmode), and by which certificate "
            "(sslrootcert).",
        ),
    ),
    "tables": (
        QT_TRANSLATE_NOOP("School", "The database has no tables of this program"),
        QT_TRANSLATE_NOOP("School", "Its administrator makes them: toe-and-throat school URL"),
    ),
    "older": (
        QT_TRANSLATE_NOOP("School", "The server's tables are of an older version"),
        QT_TRANSLATE_NOOP(
            "School", "Its administrator brings them up to date: toe-and-throat school URL"
        ),
    ),
    "newer": (
        QT_TRANSLATE_NOOP("School", "The server's tables are of a newer version"),
        QT_TRANSLATE_NOOP("School", "This program has to be brought up to date."),
    ),
    "busy": (
        QT_TRANSLATE_NOOP("School", "The server is too busy just now, or starting"),
        QT_TRANSLATE_NOOP("School", "Some moments later it may answer."),
    ),
    "full": (
        QT_TRANSLATE_NOOP("School", "The server has no room left"),
        QT_TRANSLATE_NOOP("School", "Tell its administrator. What is here waits."),
    ),
    "row": (
        QT_TRANSLATE_NOOP("School", "The server refuses some of what was to be sent"),
        QT_TRANSLATE_NOOP("School", "The rest was sent. Tell its administrator what it says."),
    ),
    "other": (
        QT_TRANSLATE_NOOP("School", "The server answers with an error"),
        QT_TRANSLATE_NOOP("School", "Tell its administrator what it says."),
    ),
}


def school_words(error: SchoolError) -> tuple[str, str]:
    """Return what a school's server can't do, and what to do; with what it said, if it did.

    Examples
    --------
    >>> school_words(SchoolError("newer"))[0]
    "The server's tables are of a newer version"
    """
    what, then = (translate(_CONTEXT, words) for words in _TROUBLES[error.trouble])
    if error.detail:
        said = translate("School", "It says: {words}")
        then = "\n".join((then, said.format(words=error.detail)))
    return what, then
