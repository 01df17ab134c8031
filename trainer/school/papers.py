"""Papers, answers and learners as lists hold them, and how they are read from rows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

import sqlalchemy as sa
from sqlalchemy.engine import Connection

from exercises.learner.outcome import Outcome
from exercises.sitting.marking import Override
from exercises.sitting.plan import SKILLS, PassMarks
from exercises.sitting.result import Interruption
from exercises.text import Text
from trainer.logbook.rows import at_of
from trainer.logbook.schema import OverrideRow, SatRow, table_of

__all__ = [
    "Answer",
    "ClassMember",
    "KeptOverride",
    "LearnerCall",
    "Object",
    "Sat",
    "Sitting",
    "overrides_in",
    "sat_of_row",
]

_OVERRIDES, _SAT = table_of(OverrideRow), table_of(SatRow)

Object = Mapping[str, Any]


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


def overrides_in(
    connection: Connection, sitting: str | None, shown: sa.ColumnElement[bool] | None = None
) -> list[KeptOverride]:
    """Return marks set by hand, of a sitting or of all, of papers that are shown, oldest first."""
    asked = sa.select(_OVERRIDES).order_by(_OVERRIDES.c.at_ms, _OVERRIDES.c.id)
    if sitting is not None:
        of = sa.select(_SAT.c.id).where(_SAT.c.sitting_id == sitting)
        asked = asked.where(_OVERRIDES.c.sat_id.in_(of))
    if shown is not None:
        asked = asked.where(_OVERRIDES.c.sat_id.in_(sa.select(_SAT.c.id).where(shown)))
    return [
        KeptOverride(
            row.id, row.sat_id,
            Override(row.item, row.mark, row.value, row.reason, row.by_whom, at_of(row.at_ms)),
        )
        for row in connection.execute(asked)
    ]  # fmt: skip


def sat_of_row(
    row: sa.Row[Any],
    said: Mapping[str, tuple[Object, Object]],
    overrides: Sequence[KeptOverride],
    clash: bool,
) -> Sat:
    """Return a paper as its row and its answers' say; `said` has attempt and grade by their id."""
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
