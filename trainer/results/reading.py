"""Results read beside the window: one look at a logbook, all that the page shows of it. No Qt."""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

from trainer.logbook.opening import LogbookError
from trainer.results.ready import NEWEST, Seen, see
from trainer.results.reckoning import Reckoned, reckon
from trainer.school.reading import ClassBook, Sitting

__all__ = ["Look", "look"]


@dataclass(frozen=True)
class Look:
    """What a look found.

    Parameters
    ----------
    sittings
        Of which something was handed in, the latest first.
    chosen
        The id of the one that was read; empty where there is none.
    reckoned
        What its papers come to; None where there is none.
    groups
        Names of the groups of each learner, by their id.
    seen
        What was seen of each learner, and what it comes to.
    trouble
        Why nothing could be read, if that is so.
    """

    sittings: tuple[Sitting, ...] = ()
    chosen: str = ""
    reckoned: Reckoned | None = None
    groups: dict[str, tuple[str, ...]] = field(default_factory=dict)
    seen: tuple[Seen, ...] = ()
    trouble: LogbookError | None = None


def look(path: Path, wanted: str = "") -> Look:
    """Read a logbook's file.

    Parameters
    ----------
    wanted
        The id of the sitting to read; the latest if it isn't there.
    """
    try:
        with closing(ClassBook.of_logbook(path)) as book:
            return _look(book, wanted)
    except LogbookError as error:
        return Look(trouble=error)


def _look(book: ClassBook, wanted: str) -> Look:
    sittings = book.sittings()
    known = [sitting.id for sitting in sittings]
    chosen = wanted if wanted in known else next(iter(known), "")
    members = book.learners()
    reckoned = reckon(book.papers(chosen)) if chosen else None
    return Look(
        sittings=tuple(sittings),
        chosen=chosen,
        reckoned=reckoned,
        groups={member.id: member.groups for member in members},
        seen=tuple(see(members, book.calls(newest=NEWEST))),
    )
