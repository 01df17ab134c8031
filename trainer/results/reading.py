"""Results read beside the window: one look at a logbook, all that the page shows of it. No Qt."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from exercises.sitting.codes import learner_id
from trainer.logbook.opening import LogbookError
from trainer.results.ready import NEWEST, Seen, see
from trainer.results.reckoning import Reckoned, reckon
from trainer.results.source import Source
from trainer.school.reading import ClassBook, ClassMember, Sitting
from trainer.school.shutting import Shut
from trainer.school.trouble import SchoolError

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
    known
        Who this machine knows, by their id: names and groups.
    seen
        What was seen of each learner, and what it comes to.
    trouble
        Why nothing could be read, if that is so.
    shut
        Papers that only a passphrase shows.
    """

    sittings: tuple[Sitting, ...] = ()
    chosen: str = ""
    reckoned: Reckoned | None = None
    known: dict[str, ClassMember] = field(default_factory=dict)
    seen: tuple[Seen, ...] = ()
    trouble: LogbookError | SchoolError | None = None
    shut: tuple[Shut, ...] = ()


def look(source: Source, wanted: str = "") -> Look:
    """Read a logbook's file, or a server.

    Parameters
    ----------
    wanted
        The id of the sitting to read; the latest if it isn't there.
    """
    try:
        with Source(source.path).book() as here:
            members = here.learners()
            known = {member.id: member for member in members}
            # A server knows them by the id that their code makes, and by no other.
            known |= {learner_id(member.code): member for member in members if member.code}
        with source.book() as book:
            return _look(book, wanted, known)
    except (LogbookError, SchoolError) as error:
        return Look(trouble=error)


def _look(book: ClassBook, wanted: str, known: dict[str, ClassMember]) -> Look:
    sittings = book.sittings()
    ids = [sitting.id for sitting in sittings]
    chosen = wanted if wanted in ids else next(iter(ids), "")
    # A server knows codes alone; names and groups are this machine's.
    members = [
        replace(member, name=known[member.id].name, groups=known[member.id].groups)
        if member.id in known
        else member
        for member in book.learners()
    ]
    papers = book.papers(chosen) if chosen else []
    return Look(
        sittings=tuple(sittings),
        chosen=chosen,
        reckoned=reckon(papers) if papers else None,
        shut=tuple(book.shut()),
        known=known,
        seen=tuple(see(members, book.calls(newest=NEWEST))),
    )
