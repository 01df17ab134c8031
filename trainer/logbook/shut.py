"""Papers that are shut: handed in at this machine, and opened by their sitting's passphrase alone.

Where several learners sit at one machine the next one could look up the right calls. So what was
handed in here carries how its passphrase is known, and is shown by nothing until somebody has typed
that; `Logbook.opened` holds what was typed, until the program ends or another sitting begins. It
keeps the program from telling, not a person who reads the file with other means.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

import sqlalchemy as sa

from trainer.logbook.schema import AttemptRow, SatRow, table_of

__all__ = ["SHUT", "attempt_shown", "shown", "shut_by", "shut_papers"]

SHUT: Final = "shut"
"""Where the body of a paper says how its passphrase is known."""

_ATTEMPTS, _SAT = table_of(AttemptRow), table_of(SatRow)


def shut_by(body: dict[str, object]) -> dict[str, object] | None:
    """Return what tells the passphrase of a paper with this body; None if it isn't shut.

    Examples
    --------
    >>> shut_by({"items": []}) is None
    True
    """
    found = body.get(SHUT)
    return found if isinstance(found, dict) else None


def shown(opened: Collection[str]) -> sa.ColumnElement[bool]:
    """Whether a row of ``sat`` in a logbook's file may be shown.

    Parameters
    ----------
    opened
        The ``check`` of each key whose passphrase was typed.
    """
    check = sa.func.json_extract(_SAT.c.body, f"$.{SHUT}.check")
    return check.is_(None) | check.in_(sorted(opened))


def attempt_shown(opened: Collection[str]) -> sa.ColumnElement[bool]:
    """Whether a row of ``attempts`` in a logbook's file may be shown; see `shown`."""
    papers = sa.select(_SAT.c.id).where(shown(opened))
    return _ATTEMPTS.c.sat_id.is_(None) | _ATTEMPTS.c.sat_id.in_(papers)


def shut_papers(learner: str, opened: Collection[str]) -> sa.Select[tuple[str]]:
    """Return the query for the ids of a learner's papers that may not be shown; see `shown`."""
    return sa.select(_SAT.c.id).where(_SAT.c.learner_id == learner, ~shown(opened))
