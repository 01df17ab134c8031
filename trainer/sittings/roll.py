"""Who could sit: learners of the class that have a code. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.logbook.keeping import Keeping
from trainer.logbook.store import LogbookError
from trainer.school.roster import Roster, RosterError

__all__ = ["Candidate", "candidates"]


@dataclass(frozen=True, slots=True)
class Candidate:
    """Somebody who could sit.

    Parameters
    ----------
    code, name
        The name stays on this machine; it is empty where only the code is known.
    groups
        Names of the groups they are in.
    """

    code: str
    name: str
    groups: tuple[str, ...] = ()


def candidates(keeping: Keeping) -> tuple[Candidate, ...]:
    """Return everybody with a code, by name; nobody while the logbook can't be read.

    Parameters
    ----------
    keeping
        Whose logbook it is.
    """
    roster = Roster(keeping)
    try:
        names = {group.id: group.name for group in roster.groups()}
        people = roster.people()
    except (RosterError, LogbookError):
        # The page of the class says so, and what to do.
        return ()
    return tuple(
        Candidate(one.code, one.name, tuple(names[each] for each in one.groups if each in names))
        for one in people
        if one.code
    )
