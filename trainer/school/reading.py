"""What a class did, read out of a logbook or out of the school's server: one class for both.

Lists hold what can be read fast: a paper's marks, its items, what they came to. A paper whole, with
its coupons and every handling, is read by its id.
"""

from __future__ import annotations

import zlib
from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.engine import Connection, Engine

from exercises.learner.outcome import Outcome
from exercises.sitting.result import Result
from exercises.sitting.result_file import read_result
from exercises.text import Text
from trainer.logbook.opening import engine_of, told
from trainer.logbook.rows import at_of, entry_of_row
from trainer.logbook.schema import (
    AttemptRow,
    CouponRow,
    GroupRow,
    LearnerRow,
    MemberRow,
    SatRow,
    SittingRow,
    table_of,
)
from trainer.logbook.shut import attempt_shown, shown, shut_by
from trainer.records import Entry
from trainer.school.address import Address
from trainer.school.papers import (
    Answer,
    ClassMember,
    KeptOverride,
    LearnerCall,
    Object,
    Sat,
    Sitting,
    overrides_in,
    sat_of_row,
)
from trainer.school.server import check_version, server_engine
from trainer.school.shutting import Shut
from trainer.school.trouble import speaking_to

__all__ = ["Answer", "ClassBook", "ClassMember", "KeptOverride", "LearnerCall", "Sat", "Sitting"]

_ATTEMPTS, _COUPONS, _GROUPS = table_of(AttemptRow), table_of(CouponRow), table_of(GroupRow)
_LEARNERS, _MEMBERS = table_of(LearnerRow), table_of(MemberRow)
_SAT, _SITTINGS = table_of(SatRow), table_of(SittingRow)

_OUTCOME: Final = ("distance", "short", "bad", "called_bad", "in_doubt", "clean")


class ClassBook:
    """What learners did, out of a logbook's file or a school's server.

    Each call opens a transaction that reads, and holds up nobody who writes. All of them raise
    `trainer.logbook.opening.LogbookError` where a file, and `trainer.school.trouble.SchoolError`
    where a server, can't be read.

    Parameters
    ----------
    engine
        Of either.
    path
        The file, if it is one.
    opened
        Whose papers of those that are shut in the file are shown: see `trainer.logbook.shut`.
    """

    def __init__(
        self, engine: Engine, path: Path | None = None, opened: Collection[str] = ()
    ) -> None:
        self.engine, self.path = engine, path
        # A server is read by instructors alone.
        self._shown = shown(opened) if path is not None else sa.true()
        self._attempt_shown = attempt_shown(opened) if path is not None else sa.true()
        self._known = engine.dialect.name != "postgresql"

    @classmethod
    def of_logbook(cls, path: Path, opened: Collection[str] = ()) -> ClassBook:
        """Return the book of a logbook's file, which must be of this version."""
        return cls(engine_of(path, reading=True, pooled=False), path, opened)

    @classmethod
    def of_server(cls, address: Address) -> ClassBook:
        """Return the book of a school's server, to be read by an instructor.

        Nothing is connected yet; the first use raises where the server's tables are of another
        version.
        """
        return cls(server_engine(address))

    def close(self) -> None:
        """Let go of the file or the server."""
        self.engine.dispose()

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Open a transaction that reads."""
        with self._told(), self.engine.connect() as connection:
            self._check(connection)
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """Open a transaction that writes, all of it or nothing."""
        with self._told(), self.engine.begin() as connection:
            self._check(connection)
            yield connection

    def _told(self) -> AbstractContextManager[None]:
        return speaking_to() if self.path is None else told(self.path)

    def _check(self, connection: Connection) -> None:
        if not self._known:
            check_version(connection)
            self._known = True

    # --- sittings -----------------------------------------------------------------------------

    def sittings(self) -> list[Sitting]:
        """Every sitting, the latest first."""
        counted = (
            sa.select(
                _SAT.c.sitting_id.label("id"),
                sa.func.count().label("papers"),
                sa.func.min(_SAT.c.started_ms).label("first"),
                sa.func.max(_SAT.c.finished_ms).label("last"),
            )
            .group_by(_SAT.c.sitting_id)
            .subquery()
        )
        whole = sa.select(_SITTINGS, counted.c.papers, counted.c.first, counted.c.last).join(
            counted, counted.c.id == _SITTINGS.c.id
        )
        with self.reading() as connection:
            return [
                Sitting(
                    row.id, Text.of(row.title), row.body, row.papers, at_of(row.first),
                    at_of(row.last),
                )
                for row in connection.execute(whole.order_by(counted.c.last.desc()))
            ]  # fmt: skip

    def papers(self, sitting: str | None = None) -> list[Sat]:
        """Every paper of a sitting, or of all, in the order that they were handed in."""
        asked = (
            sa.select(
                *(_SAT.c[key] for key in (
                    "id", "sitting_id", "learner_id", "station", "started_ms", "finished_ms",
                    "ended", "body",
                )),
                _LEARNERS.c.code, _LEARNERS.c.name,
            )
            .join(_LEARNERS, _LEARNERS.c.id == _SAT.c.learner_id)
            .where(self._shown)
            .order_by(_SAT.c.finished_ms, _SAT.c.id)
        )  # fmt: skip
        stated = sa.select(_ATTEMPTS.c.id, _ATTEMPTS.c.attempt, _ATTEMPTS.c.grade).where(
            _ATTEMPTS.c.sat_id.is_not(None), self._attempt_shown
        )
        if sitting is not None:
            asked = asked.where(_SAT.c.sitting_id == sitting)
            of = sa.select(_SAT.c.id).where(_SAT.c.sitting_id == sitting)
            stated = stated.where(_ATTEMPTS.c.sat_id.in_(of))
        with self.reading() as connection:
            rows: list[Any] = list(connection.execute(asked))
            said = {row.id: (row.attempt, row.grade) for row in connection.execute(stated)}
            overrides = overrides_in(connection, sitting)
        of_paper: dict[str, list[KeptOverride]] = defaultdict(list)
        for one in overrides:
            of_paper[one.sat].append(one)
        sat_by: dict[tuple[str, str], int] = defaultdict(int)
        for row in rows:
            sat_by[row.sitting_id, row.learner_id] += 1
        twice = {key for key, count in sat_by.items() if count > 1}
        return [
            sat_of_row(row, said, of_paper[row.id], (row.sitting_id, row.learner_id) in twice)
            for row in rows
        ]

    def result(self, sat: str) -> Result:
        """Return a paper whole, as it was handed in: coupons, handlings and all.

        Raises
        ------
        KeyError
            If there is none of this id, or it is shut.
        exercises.sitting.result_file.ResultError
            If a newer version of the program wrote it.
        """
        asked = sa.select(_SAT.c.handed_in).where(_SAT.c.id == sat, self._shown)
        with self.reading() as connection:
            found = connection.execute(asked).scalar()
        if found is None:
            raise KeyError(sat)
        return read_result(zlib.decompress(found))

    def overrides(self, sitting: str | None = None) -> list[KeptOverride]:
        """Every mark set by hand, of a sitting or of all, oldest first."""
        with self.reading() as connection:
            return overrides_in(connection, sitting, self._shown)

    def shut(self) -> list[Shut]:
        """Papers in this file that their sitting's passphrase would show, by that passphrase."""
        found: dict[str, list[Object]] = defaultdict(list)
        if self.path is not None:
            asked = sa.select(_SAT.c.body).where(~self._shown)
            with self.reading() as connection:
                for body in connection.execute(asked).scalars():
                    seal = shut_by(body) or {}
                    found[str(seal["check"])].append(seal)
        return [Shut.of(seals[0], len(seals)) for seals in found.values()]

    # --- learners -----------------------------------------------------------------------------

    def learners(self) -> list[ClassMember]:
        """Everybody, by name."""
        groups: dict[str, list[str]] = defaultdict(list)
        of = sa.select(_MEMBERS.c.learner_id, _GROUPS.c.name).join(
            _GROUPS, _GROUPS.c.id == _MEMBERS.c.group_id
        )
        with self.reading() as connection:
            for row in connection.execute(of.order_by(_GROUPS.c.name)):
                groups[row.learner_id].append(row.name)
            return [
                ClassMember(row.id, row.code or "", row.name, tuple(groups.get(row.id, ())))
                for row in connection.execute(sa.select(_LEARNERS).order_by(_LEARNERS.c.name))
            ]

    def calls(
        self, learners: Iterable[str] | None = None, newest: int = 2000
    ) -> dict[str, list[LearnerCall]]:
        """Return each learner's calls, oldest first, at most the `newest` of each."""
        rank = sa.func.row_number().over(
            partition_by=_ATTEMPTS.c.learner_id, order_by=_ATTEMPTS.c.order_made.desc()
        )
        asked = sa.select(
            *(_ATTEMPTS.c[key] for key in (
                "learner_id", "at_ms", "order_made", "source", "digest", "before_feedback",
                *_OUTCOME,
            )),
            rank.label("rank"),
        )  # fmt: skip
        asked = asked.where(self._attempt_shown)
        if learners is not None:
            asked = asked.where(_ATTEMPTS.c.learner_id.in_(list(learners)))
        ranked = asked.subquery()
        newest_of_each = sa.select(ranked).where(ranked.c.rank <= newest)
        found: dict[str, list[LearnerCall]] = defaultdict(list)
        with self.reading() as connection:
            for row in connection.execute(
                newest_of_each.order_by(ranked.c.learner_id, ranked.c.rank.desc())
            ):
                found[row.learner_id].append(
                    LearnerCall(
                        at_of(row.at_ms), row.source,
                        Outcome(*(getattr(row, key) for key in _OUTCOME)),
                        row.digest, row.before_feedback,
                    )
                )  # fmt: skip
        return dict(found)

    def entries(self, *, sat: str | None = None, learner: str | None = None) -> Iterator[Entry]:
        """Yield entries of a paper or of a learner, in their order: for exports, and for replay."""
        asked = sa.select(_ATTEMPTS, _COUPONS.c.body).join(
            _COUPONS, _COUPONS.c.digest == _ATTEMPTS.c.digest
        )
        asked = asked.where(self._attempt_shown)
        if sat is not None:
            asked = asked.where(_ATTEMPTS.c.sat_id == sat).order_by(_ATTEMPTS.c.item)
        if learner is not None:
            asked = asked.where(_ATTEMPTS.c.learner_id == learner)
        with self.reading() as connection:
            for row in connection.execution_options(yield_per=200).execute(
                asked.order_by(_ATTEMPTS.c.order_made)
            ):
                yield entry_of_row(row)

    def entry(self, attempt: str) -> Entry:
        """Return one attempt as it was kept; `KeyError` if there is none of this id."""
        asked = sa.select(_ATTEMPTS, _COUPONS.c.body).join(
            _COUPONS, _COUPONS.c.digest == _ATTEMPTS.c.digest
        )
        with self.reading() as connection:
            asked = asked.where(_ATTEMPTS.c.id == attempt, self._attempt_shown)
            row = connection.execute(asked).first()
        if row is None:
            raise KeyError(attempt)
        return entry_of_row(row)
