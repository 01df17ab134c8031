"""Who is in a class: learners with their codes, groups, and how long what they did is kept.

Names stay on this machine. A learner with a code is known by it in sittings and on the school's
server; who has none is nobody's business but this machine's.
"""

from __future__ import annotations

import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Final
from uuid import uuid4

import sqlalchemy as sa
from sqlalchemy.dialects import sqlite
from sqlalchemy.exc import IntegrityError

from exercises.sitting.codes import code_key, learner_id
from exercises.strict_json import quoted
from geometry.faults import Fault
from trainer.logbook.erasing import Erasure
from trainer.logbook.keeping import Keeping
from trainer.logbook.rows import at_of
from trainer.logbook.schema import (
    AttemptRow,
    GroupRow,
    LearnerRow,
    MemberRow,
    SatRow,
    SentRow,
    table_of,
)
from trainer.logbook.store import Logbook
from trainer.school.codes import made_code, tidy_code
from trainer.school.people import LONGEST_NAME, Newcomer, code_faults
from trainer.school.sealed_files import SealedFiles, remove, sealed_files

__all__ = ["LONGEST_KEPT", "Due", "Group", "Person", "Roster", "RosterError", "due_erasures"]

LONGEST_KEPT: Final = 36_500
"""Days."""

_LEARNERS, _GROUPS, _MEMBERS = table_of(LearnerRow), table_of(GroupRow), table_of(MemberRow)
_ATTEMPTS, _SAT, _SENT = table_of(AttemptRow), table_of(SatRow), table_of(SentRow)


class RosterError(ValueError):
    """What a roster can't take: carries every `Fault` that was found."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults: tuple[Fault, ...] = tuple(faults)
        super().__init__("; ".join(str(fault) for fault in self.faults))


@dataclass(frozen=True, slots=True)
class Group:
    """A class, a shift.

    Parameters
    ----------
    id, name
        Its own.
    keep_days
        How long what its members did is kept; None is for good.
    members
        How many.
    """

    id: str
    name: str
    keep_days: int | None
    members: int = 0


@dataclass(frozen=True, slots=True)
class Person:
    """A learner as a roster lists them.

    Parameters
    ----------
    id, name
        Of the logbook; the name stays on this machine.
    code
        None if they have none.
    groups
        Ids.
    attempts
        How many are kept.
    last
        When the latest was made; None if there is none.
    """

    id: str
    name: str
    code: str | None
    groups: tuple[str, ...] = ()
    attempts: int = 0
    last: datetime | None = None


@dataclass(frozen=True, slots=True)
class Due:
    """What is kept of a learner for longer than their groups say.

    Parameters
    ----------
    person
        Whose it is.
    before
        The first day that stays, as 2026-03-01.
    attempts, sat
        How many are older.
    wholly
        Whether nothing stays, and so the learner goes too.
    """

    person: Person
    before: str
    attempts: int
    sat: int
    wholly: bool


class Roster:
    """The people of an open logbook.

    Parameters
    ----------
    keeping
        Whose logbook it is; what is erased here goes from its dated copies too.

    Examples
    --------
    >>> import tempfile
    >>> from pathlib import Path
    >>> from trainer.logbook.migrating import bring_up_to_date
    >>> from trainer.records import Records
    >>> with tempfile.TemporaryDirectory() as name:
    ...     at = Path(name)
    ...     records = Records(at / "calls.jsonl")
    ...     keeping = Keeping(at / "logbook.sqlite3", records, bring_up_to_date, "Bench 1")
    ...     opened = keeping.open()
    ...     roster = Roster(keeping)
    ...     group = roster.add_group("Tuesday", keep_days=365)
    ...     added = roster.add([Newcomer("Pia", "AAA-AAN", 1)], group.id)
    ...     print([(p.name, p.code, len(p.groups)) for p in roster.people(group.id)])
    ...     keeping.close()
    [('Pia', 'AAA-AAN', 1)]
    """

    def __init__(self, keeping: Keeping) -> None:
        self._keeping = keeping

    @property
    def logbook(self) -> Logbook:
        """The open logbook; `RosterError` while it is shut."""
        if self._keeping.logbook is None:
            text, right = "the logbook is shut", "a logbook that can be opened"
            raise RosterError([Fault("", "roster-shut", text, right)])
        return self._keeping.logbook

    # --- people -------------------------------------------------------------------------------

    def people(self, group: str | None = None) -> list[Person]:
        """Everybody, by name; of one group if it is given."""
        done = (
            sa.select(
                _ATTEMPTS.c.learner_id,
                sa.func.count().label("attempts"),
                sa.func.max(_ATTEMPTS.c.at_ms).label("last"),
            )
            .group_by(_ATTEMPTS.c.learner_id)
            .subquery()
        )
        asked = (
            sa.select(_LEARNERS, done.c.attempts, done.c.last)
            .join(done, done.c.learner_id == _LEARNERS.c.id, isouter=True)
            .order_by(_LEARNERS.c.name)
        )
        with self.logbook.reading() as connection:
            groups: dict[str, list[str]] = {}
            for row in connection.execute(sa.select(_MEMBERS)):
                groups.setdefault(row.learner_id, []).append(row.group_id)
            found = [
                Person(
                    row.id, row.name, row.code, tuple(sorted(groups.get(row.id, ()))),
                    row.attempts or 0, None if row.last is None else at_of(row.last),
                )
                for row in connection.execute(asked)
            ]  # fmt: skip
        return [one for one in found if group is None or group in one.groups]

    def add(self, newcomers: Sequence[Newcomer], group: str | None = None) -> list[Person]:
        """Add people, all or none, to a group if it is given.

        Raises
        ------
        RosterError
            If a code or a name is another's: `trainer.school.people.newcomers` tells beforehand.
        """
        made = time.time_ns() // 1_000_000
        rows = [
            {"id": learner_id(one.code), "name": one.name, "code": one.code, "made_ms": made}
            for one in newcomers
        ]
        try:
            with self.logbook.writing() as connection:
                connection.execute(sa.insert(_LEARNERS), rows) if rows else None
                if group is not None and rows:
                    connection.execute(
                        sa.insert(_MEMBERS),
                        [{"group_id": group, "learner_id": row["id"]} for row in rows],
                    )
        except IntegrityError as error:
            text, right = "a code or a name is another learner's", "others"
            raise RosterError([Fault("", "roster-taken", text, right)]) from error
        return [
            Person(str(row["id"]), str(row["name"]), str(row["code"]), (group,) if group else ())
            for row in rows
        ]

    def new_code(self) -> str:
        """Return a code that nobody has."""
        return made_code([one.code for one in self.people() if one.code])

    def set_code(self, learner: str, code: str | None) -> None:
        """Give a learner a code, another, or none.

        Raises
        ------
        RosterError
            If it is no code, mistyped or another's; or if something that they did was sent to the
            server, or handed in, under the one that they have.
        """
        others = [one.code for one in self.people() if one.code and one.id != learner]
        code = None if code is None else tidy_code(code)
        faults = [] if code is None else code_faults(code, others)
        if faults:
            raise RosterError(faults)
        of = _ATTEMPTS.c.learner_id == learner
        sent = sa.select(sa.literal(1)).where(
            _SENT.c.id.in_(sa.select(_ATTEMPTS.c.id).where(of)) | (_SENT.c.id == learner)
        )
        sat = sa.select(sa.literal(1)).where(_SAT.c.learner_id == learner)
        with self.logbook.writing() as connection:
            had = connection.execute(
                sa.select(_LEARNERS.c.code).where(_LEARNERS.c.id == learner)
            ).scalar()
            if had is not None and (code is None or code_key(had) != code_key(code)):
                used = connection.execute(sent.limit(1)).first()
                if used or connection.execute(sat.limit(1)).first():
                    text = f"what was done as {quoted(had)} was handed in or sent"
                    right = "the same code, or another learner"
                    params: dict[str, float | str] = {"value": quoted(had)}
                    raise RosterError([Fault("", "code-used", text, right, params)])
            connection.execute(
                sa.update(_LEARNERS).where(_LEARNERS.c.id == learner).values(code=code)
            )

    # --- groups -------------------------------------------------------------------------------

    def groups(self) -> list[Group]:
        """Every group, by name."""
        members = sa.func.count(_MEMBERS.c.learner_id)
        asked = (
            sa.select(_GROUPS, members.label("members"))
            .join(_MEMBERS, _MEMBERS.c.group_id == _GROUPS.c.id, isouter=True)
            .group_by(_GROUPS.c.id)
            .order_by(_GROUPS.c.name)
        )
        with self.logbook.reading() as connection:
            return [
                Group(row.id, row.name, row.keep_days, row.members)
                for row in connection.execute(asked)
            ]

    def add_group(self, name: str, keep_days: int | None = None) -> Group:
        """Add a group; `RosterError` if there is one of that name, or it has none."""
        group = _checked(Group(str(uuid4()), name.strip(), keep_days))
        row = {"id": group.id, "name": group.name, "keep_days": keep_days}
        try:
            with self.logbook.writing() as connection:
                connection.execute(sa.insert(_GROUPS), row)
        except IntegrityError as error:
            raise RosterError([_group_taken(group.name)]) from error
        return group

    def change_group(self, group: str, name: str, keep_days: int | None) -> None:
        """Give a group another name, or another time to keep."""
        new = _checked(Group(group, name.strip(), keep_days))
        change = sa.update(_GROUPS).where(_GROUPS.c.id == group)
        try:
            with self.logbook.writing() as connection:
                connection.execute(change.values(name=new.name, keep_days=keep_days))
        except IntegrityError as error:
            raise RosterError([_group_taken(new.name)]) from error

    def remove_group(self, group: str) -> None:
        """Take a group away; its members stay, as learners of no group or of their others."""
        with self.logbook.writing() as connection:
            connection.execute(sa.delete(_GROUPS).where(_GROUPS.c.id == group))

    def join(self, group: str, learners: Iterable[str]) -> None:
        """Put learners into a group; who is in it stays."""
        rows = [{"group_id": group, "learner_id": learner} for learner in learners]
        with self.logbook.writing() as connection:
            if rows:
                connection.execute(sqlite.insert(_MEMBERS).on_conflict_do_nothing(), rows)

    def leave(self, group: str, learners: Iterable[str]) -> None:
        """Take learners out of a group; they and what they did stay."""
        with self.logbook.writing() as connection:
            connection.execute(
                sa.delete(_MEMBERS).where(
                    _MEMBERS.c.group_id == group, _MEMBERS.c.learner_id.in_(list(learners))
                )
            )

    # --- retention ----------------------------------------------------------------------------

    def due(self, today: date) -> list[Due]:
        """Return what is kept for longer than the groups say, to be shown before it goes.

        Of a learner in several groups the longest holds: each needs what it asked for. Who is in
        none, or in one that keeps for good, is kept.
        """
        keep = {group.id: group.keep_days for group in self.groups()}
        found = [
            self._due(person, (today - timedelta(days=longest)).isoformat())
            for person in self.people()
            if (longest := _longest([keep[group] for group in person.groups])) is not None
        ]
        return [one for one in found if one.attempts or one.sat or one.wholly]

    def _due(self, person: Person, before: str) -> Due:
        handed_in = sa.func.date(_SAT.c.finished_ms / 1000, "unixepoch", "localtime")
        made_on = sa.func.date(_LEARNERS.c.made_ms / 1000, "unixepoch", "localtime")
        attempts = (_ATTEMPTS.c.learner_id == person.id, _ATTEMPTS.c.day < before)
        sat = (_SAT.c.learner_id == person.id, handed_in < before)
        count = sa.func.count()
        with self.logbook.reading() as connection:
            old = connection.execute(
                sa.select(count).select_from(_ATTEMPTS).where(*attempts)
            ).scalar_one()
            papers = connection.execute(sa.select(count).select_from(_SAT).where(*sat)).scalar_one()
            stays = connection.execute(
                sa.select(count).select_from(_SAT).where(sat[0], handed_in >= before)
            ).scalar_one()
            long_here = connection.execute(
                sa.select(made_on < before).where(_LEARNERS.c.id == person.id)
            ).scalar_one()
        wholly = bool(long_here) and old == person.attempts and not stays
        return Due(person, before, old, papers, wholly)

    def sealed(self, erasures: Sequence[Erasure]) -> SealedFiles:
        """Return the sealed files that go along, to be shown before they do."""
        return sealed_files(self.logbook, erasures)

    def erase(self, erasures: Sequence[Erasure], files: Sequence[Path] = ()) -> list[OSError]:
        """Erase here, in the write-ahead log, in the dated copies, and sealed files along with it.

        Parameters
        ----------
        erasures
            What goes; `due_erasures` are those of what is due.
        files
            Those of `sealed` that were shown.

        Returns
        -------
        list of OSError
            What the system said of files that it couldn't remove; they stay.
        """
        if not erasures:
            return []
        # First the files: whose they are only the logbook tells, if this has to be done again.
        troubles = remove(files)
        self._keeping.erase_all(erasures)
        return troubles


def due_erasures(due: Iterable[Due]) -> list[Erasure]:
    """Return what is to be erased of what is due."""
    return [Erasure(one.person.id, None if one.wholly else one.before) for one in due]


def _longest(kept: Sequence[int | None]) -> int | None:
    """The longest time of several; None is for good, and so are none."""
    days = [each for each in kept if each is not None]
    return max(days) if days and len(days) == len(kept) else None


def _checked(group: Group) -> Group:
    faults: list[Fault] = []
    if not 0 < len(group.name) <= LONGEST_NAME or not group.name.isprintable():
        params: dict[str, float | str] = {"most": LONGEST_NAME}
        text, right = "the group has no name that can be shown", f"1 to {LONGEST_NAME} characters"
        faults.append(Fault("/name", "group-name", text, right, params))
    if group.keep_days is not None and not 1 <= group.keep_days <= LONGEST_KEPT:
        params = {"value": group.keep_days, "most": LONGEST_KEPT}
        text = f"{group.keep_days} days are to be kept"
        right = f"1 to {LONGEST_KEPT} days, or for good"
        faults.append(Fault("/keep_days", "group-days", text, right, params))
    if faults:
        raise RosterError(faults)
    return group


def _group_taken(name: str) -> Fault:
    text = f"there is a group {quoted(name)} already"
    return Fault("/name", "group-taken", text, "another name", {"value": quoted(name)})
