"""A result taken into the logbook, in one transaction: the same twice is there once.

Its answers become attempts like others, with the coupon as it was judged and the grade that it got
when it was handed in; nothing is graded again. They count for the learner's own logbook, as calls
before feedback: nobody is told anything in a sitting until it is over. The result itself is kept
beside them, whole.
"""

from __future__ import annotations

import json
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal
from uuid import UUID, uuid5

import sqlalchemy as sa
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine import Connection
from sqlalchemy.exc import IntegrityError

from exercises.sitting.codes import code_key, learner_id
from exercises.sitting.result import Item, Result
from exercises.sitting.result_file import result_bytes
from trainer.logbook.schema import LearnerRow, SatRow, SittingRow, table_of
from trainer.logbook.shut import SHUT
from trainer.logbook.store import Logbook
from trainer.records import Entry
from trainer.school.shutting import seal_of
from trainer.sealing.key import Key

__all__ = ["Merged", "attempt_id", "entries_of", "merge"]

Came = Literal["new", "known", "clash"]

_LEARNERS: Final = table_of(LearnerRow)
_SITTINGS: Final = table_of(SittingRow)
_SAT: Final = table_of(SatRow)

_OF_LEARNER: Final = ("extra", "seed")
"""What a plan's head says of one learner, or would tell how papers were laid out."""


@dataclass(frozen=True, slots=True)
class Merged:
    """What came of taking a result in.

    Parameters
    ----------
    came
        ``new``; ``known``, it was there already and nothing changed; ``clash``, it is new, and
        there is another of this code in this sitting. Both are kept.
    sat
        Id of the paper.
    code
        Whose it is.
    learner
        Id of the learner in this logbook.
    attempts
        How many answers came with it.
    others
        Ids of the papers that it clashes with.
    """

    came: Came
    sat: str
    code: str
    learner: str
    attempts: int = 0
    others: tuple[str, ...] = ()


def attempt_id(sat: str, number: int) -> str:
    """Return the id of the attempt at an item of a paper: the same wherever it is merged.

    Examples
    --------
    >>> attempt_id("6f0f2d5e-0000-4000-8000-000000000001", 1)
    '626c6dcc-0aeb-506b-b31f-8f8e4bd95814'
    """
    return str(uuid5(UUID(sat), str(number)))


def merge(logbook: Logbook, result: Result, key: Key | None = None) -> Merged:
    """Take a result into the logbook, wholly or not at all.

    Who isn't known here by their code is added, named by it.

    Parameters
    ----------
    key
        Of the sitting, where it was sat at this machine: its paper is shut then, until the
        passphrase is typed. One that was brought in was opened by that already.

    Raises
    ------
    LogbookError
        If it can't be kept; nothing of it is there then.
    """
    whole = result_bytes(result)
    with logbook.writing() as connection:
        learner = _learner(connection, result)
        sat = result.id
        there = connection.execute(sa.select(_SAT.c.handed_in).where(_SAT.c.id == sat)).scalar()
        if there is not None and zlib.decompress(there) != whole:
            # Another paper under the same id: it is kept too, by an id made of what it says.
            sat = str(uuid5(UUID(result.id), whole.decode("utf-8")))
            there = connection.execute(sa.select(_SAT.c.handed_in).where(_SAT.c.id == sat)).scalar()
        if there is not None:
            return Merged("known", sat, result.code, learner)
        plan: Mapping[str, Any] = result.plan
        others = connection.execute(
            sa.select(_SAT.c.id)
            .where(_SAT.c.sitting_id == plan["id"], _SAT.c.learner_id == learner)
            .order_by(_SAT.c.finished_ms)
        )
        clashes = tuple(row.id for row in others)
        row = {"id": sat, "learner_id": learner, "handed_in": zlib.compress(whole)}
        _add_sat(connection, result, row | {"body": _body(result, sat, key)})
        entries = entries_of(result, sat, learner)
        for item, entry in entries:
            within = {"sat_id": sat, "item": item.number, "spent_ms": item.ms}
            logbook.insert(connection, learner, entry, within)
    return Merged("clash" if clashes else "new", sat, result.code, learner, len(entries), clashes)


def entries_of(
    result: Result, sat: str | None = None, learner: str | None = None
) -> list[tuple[Item, Entry]]:
    """Return a result's answered items, each with the entry that it makes in a logbook.

    Parameters
    ----------
    result
        As it was read.
    sat
        Id of the paper; the result's own unless given.
    learner
        Id of the learner in the logbook; the one made of the code unless given.
    """
    return [
        (
            item,
            Entry(
                coupon=item.coupon.canonical(),
                digest=item.digest,
                rules=item.rules,
                attempt=item.attempt,
                grade=item.grade,
                handling=item.handling,
                zoom=item.zoom,
                # When they were handed in: calls stay open to change until then.
                at=result.finished,
                outcome=item.outcome,
                learner=learner or result.learner,
                source="sitting",
                before_feedback=True,
                id=attempt_id(sat or result.id, item.number),
            ),
        )
        for item in result.items
        if item.attempt is not None and item.grade is not None
    ]


def _learner(connection: Connection, result: Result) -> str:
    """The id of whoever has the result's code; they are added if nobody has."""
    key = code_key(result.code)
    coded = sa.select(_LEARNERS.c.id, _LEARNERS.c.code).where(_LEARNERS.c.code.is_not(None))
    for known in connection.execute(coded):
        if code_key(known.code) == key:
            return str(known.id)
    made = int(result.started.timestamp() * 1000)
    learner = learner_id(result.code)
    # A learner of this name may be there without a code: theirs stays.
    for name in (result.code, f"{result.code} ({learner[:8]})", learner):
        row = {"id": learner, "name": name, "code": result.code, "made_ms": made}
        try:
            with connection.begin_nested():
                connection.execute(sa.insert(_LEARNERS), row)
        except IntegrityError:
            continue
        break
    return learner


def _add_sat(connection: Connection, result: Result, row: dict[str, object]) -> None:
    plan: Mapping[str, Any] = result.plan
    head = {key: value for key, value in plan.items() if key not in _OF_LEARNER}
    connection.execute(
        sqlite.insert(_SITTINGS).on_conflict_do_nothing(),
        {"id": plan["id"], "title": plan["title"], "body": head},
    )
    connection.execute(
        sa.insert(_SAT),
        {
            "sitting_id": plan["id"],
            "station": result.station,
            "started_ms": int(result.started.timestamp() * 1000),
            "finished_ms": int(result.finished.timestamp() * 1000),
            "ended": result.ended,
            **row,
        },
    )


def _body(result: Result, sat: str, key: Key | None) -> dict[str, object]:
    """What lists show of a paper beside its attempts; and whether they do."""
    shut = {SHUT: seal_of(key)} if key is not None else {}
    return shut | {
        "plan": dict(result.plan),
        "items": [_light(item, sat) for item in result.items],
        "interruptions": [
            {"at": each.at.isoformat(timespec="milliseconds"), "ms": each.ms, "kind": each.kind}
            for each in result.interruptions
        ],
    }


def _light(item: Item, sat: str) -> dict[str, object]:
    return {
        "number": item.number,
        "slot": item.slot,
        "attempt": attempt_id(sat, item.number) if item.answered else None,
        "coupon": item.coupon.id,
        "title": json.loads(json.dumps(item.coupon.title.as_document())),
        "digest": item.digest,
        "rules": dict(item.rules),
        "outcome": dict(item.outcome),
        "hints": item.hints,
        "ms": item.ms,
        "visits": item.visits,
        "flagged": item.flagged,
    }
