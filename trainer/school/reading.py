"""What a class did, read out of a logbook or out of the school's server: one class for both.

Lists hold what can be read fast: a paper's marks, its items, what they came to. A paper whole, with
its coupons and every handling, is read by its id.
"""

from __future__ import annotations

import zlib
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.engine import Connection, Engine

from exercises.learner.outcome import Outcome
from exercises.sitting.marking import Override
from exercises.sitting.plan import SKILLS, PassMarks
from exercises.sitting.result import Interruption, Result
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
    OverrideRow,
    SatRow,
    SittingRow,
    table_of,
)
from trainer.records import Entry
from trainer.school.address import Address
from trainer.school.server import check_version, server_engine
from trainer.school.trouble import speaking_to

__all__ = ["Answer", "ClassBook", "ClassMember", "KeptOverride", "LearnerCall", "Sat", "Sitting"]

_ATTEMPTS, _COUPONS, _GROUPS = table_of(AttemptRow), table_of(CouponRow), table_of(GroupRow)
_LEARNERS, _MEMBERS, _OVERRIDES = table_of(LearnerRow), table_of(MemberRow), table_of(OverrideRow)
_SAT, _SITTINGS = table_of(SatRow), table_of(SittingRow)

Object = Mapping[str, Any]

_OUTCOME: Final = ("distance", "short", "bad", "called_bad", "in_doubt", "clean")


@dataclass(frozen=True, slots=True)
class Sitting:
    """A sitting of which something was handed in.

    Parameters
    ----------
    id, title
        The plan's.
    plan
        Its head: parts, minutes, pass marks, helps; neither coupons nor who was to sit it.
    papers
        How many were handed in.
    first, last
        When the first was begun and the last handed in.
    """

    id: str
    title: Text
    plan: Object
    papers: int
    first: datetime
    last: datetime


@dataclass(frozen=True, slots=True)
class Answer:
    """An item of a paper as lists hold it; it can be marked as an item can.

    Parameters
    ----------
    attempt_id
        Of the attempt; None where nothing was stated.
    number, slot
        Its place in the learner's order, and in the plan.
    coupon, title, digest, rules
        What the coupon is called, and what names it as it was judged.
    attempt, grade
        What was stated, and what it came to then; None where nothing was stated.
    outcome
        What statistics count it as.
    ms, visits, flagged, hints
        As in `exercises.sitting.result.Item`.
    """

    attempt_id: str | None
    number: int
    slot: str
    coupon: str
    title: Text
    digest: str
    rules: Object
    attempt: Object | None
    grade: Object | None
    outcome: Outcome
    ms: int
    visits: int
    flagged: bool
    hints: int

    @property
    def answered(self) -> bool:
        """Whether anything was stated."""
        return self.grade is not None


@dataclass(frozen=True, slots=True)
class KeptOverride:
    """A mark set by hand.

    Parameters
    ----------
    id, sat
        Its own, and the paper's.
    override
        What it says, and of which item.
    """

    id: str
    sat: str
    override: Override


@dataclass(frozen=True, slots=True)
class Sat:
    """A paper that was handed in.

    Parameters
    ----------
    id, sitting
        Its own and the sitting's.
    learner, code, name
        Whose: id in this book, pseudonymous code, and name, which only their own machine knows.
    station, started, finished, ended
        Where, when, and how it ended.
    plan
        What `exercises.sitting.result.plan_head` said of the plan, this learner's time included.
    items
        In the learner's order.
    interruptions
        In order.
    clash
        Whether there is another paper of this learner in this sitting.
    overrides
        Marks set by hand, oldest first.
    """

    id: str
    sitting: str
    learner: str
    code: str
    name: str
    station: str
    started: datetime
    finished: datetime
    ended: str
    plan: Object
    items: tuple[Answer, ...]
    interruptions: tuple[Interruption, ...]
    clash: bool
    overrides: tuple[KeptOverride, ...] = ()

    @property
    def marks(self) -> PassMarks:
        """What passes, by the plan as it was sat."""
        stated = self.plan["skill_marks"]
        skills = {name: float(stated[name]) for name in SKILLS if name in stated}
        return PassMarks(float(self.plan["pass_mark"]), skills, bool(self.plan["critical_fails"]))


@dataclass(frozen=True, slots=True)
class ClassMember:
    """A learner as a class book lists them.

    Parameters
    ----------
    id, code, name
        As in `Sat`; the code is empty if they have none.
    groups
        Names of the groups that they are in, known on the machine of the roster alone.
    """

    id: str
    code: str
    name: str
    groups: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LearnerCall:
    """One call of a learner, as what they can is judged by it.

    Parameters
    ----------
    at
        When.
    source
        ``bench``, ``drill`` or ``sitting``.
    outcome
        What it counts as.
    digest
        Of the coupon.
    before_feedback
        Whether nothing had told how such calls went.
    """

    at: datetime
    source: str
    outcome: Outcome
    digest: str
    before_feedback: bool


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
    """

    def __init__(self, engine: Engine, path: Path | None = None) -> None:
        self.engine = engine
        self.path = path
        self._known = engine.dialect.name != "postgresql"

    @classmethod
    def of_logbook(cls, path: Path) -> ClassBook:
        """Return the book of a logbook's file, which must be of this version."""
        return cls(engine_of(path, reading=True, pooled=False), path)

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
            .order_by(_SAT.c.finished_ms, _SAT.c.id)
        )  # fmt: skip
        stated = sa.select(_ATTEMPTS.c.id, _ATTEMPTS.c.attempt, _ATTEMPTS.c.grade).where(
            _ATTEMPTS.c.sat_id.is_not(None)
        )
        if sitting is not None:
            asked = asked.where(_SAT.c.sitting_id == sitting)
            of = sa.select(_SAT.c.id).where(_SAT.c.sitting_id == sitting)
            stated = stated.where(_ATTEMPTS.c.sat_id.in_(of))
        with self.reading() as connection:
            rows: list[Any] = list(connection.execute(asked))
            said = {row.id: (row.attempt, row.grade) for row in connection.execute(stated)}
            overrides = _overrides(connection, sitting)
        of_paper: dict[str, list[KeptOverride]] = defaultdict(list)
        for one in overrides:
            of_paper[one.sat].append(one)
        sat_by: dict[tuple[str, str], int] = defaultdict(int)
        for row in rows:
            sat_by[row.sitting_id, row.learner_id] += 1
        return [
            _sat(row, said, of_paper.get(row.id, ()), sat_by[row.sitting_id, row.learner_id] > 1)
            for row in rows
        ]

    def result(self, sat: str) -> Result:
        """Return a paper whole, as it was handed in: coupons, handlings and all.

        Raises
        ------
        KeyError
            If there is none of this id.
        exercises.sitting.result_file.ResultError
            If a newer version of the program wrote it.
        """
        asked = sa.select(_SAT.c.handed_in).where(_SAT.c.id == sat)
        with self.reading() as connection:
            found = connection.execute(asked).scalar()
        if found is None:
            raise KeyError(sat)
        return read_result(zlib.decompress(found))

    def overrides(self, sitting: str | None = None) -> list[KeptOverride]:
        """Every mark set by hand, of a sitting or of all, oldest first."""
        with self.reading() as connection:
            return _overrides(connection, sitting)

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
            row = connection.execute(asked.where(_ATTEMPTS.c.id == attempt)).first()
        if row is None:
            raise KeyError(attempt)
        return entry_of_row(row)


def _overrides(connection: Connection, sitting: str | None) -> list[KeptOverride]:
    asked = sa.select(_OVERRIDES).order_by(_OVERRIDES.c.at_ms, _OVERRIDES.c.id)
    if sitting is not None:
        of = sa.select(_SAT.c.id).where(_SAT.c.sitting_id == sitting)
        asked = asked.where(_OVERRIDES.c.sat_id.in_(of))
    return [
        KeptOverride(
            row.id, row.sat_id,
            Override(row.item, row.mark, row.value, row.reason, row.by_whom, at_of(row.at_ms)),
        )
        for row in connection.execute(asked)
    ]  # fmt: skip


def _sat(
    row: sa.Row[Any],
    said: Mapping[str, tuple[Object, Object]],
    overrides: Sequence[KeptOverride],
    clash: bool,
) -> Sat:
    body: Object = row.body
    return Sat(
        row.id, row.sitting_id, row.learner_id, row.code or row.name, row.name, row.station,
        at_of(row.started_ms), at_of(row.finished_ms), row.ended, body["plan"],
        tuple(_answer(each, said) for each in body["items"]),
        tuple(
            Interruption(datetime.fromisoformat(each["at"]), each["ms"], each["kind"])
            for each in body["interruptions"]
        ),
        clash, tuple(overrides),
    )  # fmt: skip


def _answer(light: Object, said: Mapping[str, tuple[Object, Object]]) -> Answer:
    attempt, grade = said.get(light["attempt"] or "", (None, None))
    return Answer(
        light["attempt"], light["number"], light["slot"], light["coupon"],
        Text.of(light["title"]), light["digest"], light["rules"], attempt, grade,
        Outcome(**light["outcome"]), light["ms"], light["visits"], light["flagged"],
        light["hints"],
    )  # fmt: skip
