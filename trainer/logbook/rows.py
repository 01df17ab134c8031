"""An attempt as the row of a table, and back again."""

from __future__ import annotations

import json
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Final

import sqlalchemy as sa

from exercises.learner.outcome import Outcome
from trainer.logbook.tallies import Added, added_by
from trainer.records import Entry

__all__ = [
    "COUNTED",
    "Kept",
    "added_by_row",
    "at_of",
    "entry_of_row",
    "kept_of_row",
    "outcome_of_entry",
    "row_of",
    "sure_of",
]

_OUTCOME: Final = ("distance", "short", "bad", "called_bad", "in_doubt", "clean")

COUNTED: Final = ("day", "grade", "sure", "before_feedback", *_OUTCOME)
"""Columns of an attempt that its tallies are made of."""


@dataclass(frozen=True, slots=True)
class Kept:
    """An attempt as the logbook lists it."""

    id: str
    at: datetime
    coupon: str
    digest: str
    source: str
    score: float
    critical: bool
    distance: float | None
    attempt: Mapping[str, object]
    grade: Mapping[str, object]


def outcome_of_entry(entry: Entry) -> Outcome:
    """What statistics count an entry as."""
    said = entry.outcome
    right = entry.grade.get("right")
    stated = entry.attempt.get("disposition")
    if set(_OUTCOME) <= set(said):
        return Outcome(**said)  # type: ignore[arg-type]
    # A call kept before outcomes were: what it was about isn't known, only how it ended.
    return Outcome(
        None, None, right not in {None, "accept"},
        None if stated is None else stated != "accept", bool(entry.grade.get("in_doubt")), True,
    )  # fmt: skip


def sure_of(entry: Entry) -> float | None:
    """How sure whoever called it was, 0 to 1; None if they didn't say."""
    sure = entry.attempt.get("sure")
    return float(sure) if isinstance(sure, (int, float)) else None


def row_of(
    learner: str, entry: Entry, outcome: Outcome, *, at_ms: int, order: int
) -> dict[str, object]:
    """Return an entry as a row of attempts, less what a sitting adds."""
    score = entry.grade.get("score")
    rows = json.dumps([list(row) for row in entry.handling], separators=(",", ":"))
    return {
        "id": entry.id,
        "learner_id": learner,
        "digest": entry.digest,
        "at_ms": at_ms,
        "order_made": order,
        "day": entry.at.astimezone().date().isoformat(),
        "coupon": str(entry.coupon.get("id", "")),
        "source": entry.source,
        "rules": dict(entry.rules),
        "score": float(score) if isinstance(score, (int, float)) else 0.0,
        "critical": bool(entry.grade.get("critical")),
        "before_feedback": entry.before_feedback,
        "distance": outcome.distance,
        "short": outcome.short,
        "bad": outcome.bad,
        "clean": outcome.clean,
        "called_bad": outcome.called_bad,
        "in_doubt": outcome.in_doubt,
        "sure": sure_of(entry),
        "attempt": dict(entry.attempt),
        "grade": dict(entry.grade),
        "zoom": dict(entry.zoom),
        "handling": zlib.compress(rows.encode("utf-8")),
    }


def added_by_row(row: sa.Row[tuple[object, ...]]) -> list[Added]:
    """Return what the row of an attempt added to the tallies; `COUNTED` is all that it needs."""
    outcome = Outcome(*(getattr(row, name) for name in _OUTCOME))
    return added_by(outcome, row.grade, row.sure, before_feedback=row.before_feedback)


def at_of(ms: int) -> datetime:
    """Return the moment that milliseconds since 1970 stand for."""
    return datetime.fromtimestamp(ms / 1000, UTC)


def kept_of_row(row: sa.Row[tuple[object, ...]]) -> Kept:
    """Return a row of attempts as the logbook lists it."""
    return Kept(
        row.id, at_of(row.at_ms), row.coupon, row.digest, row.source, row.score, row.critical,
        row.distance, row.attempt, row.grade,
    )  # fmt: skip


def entry_of_row(row: sa.Row[tuple[object, ...]]) -> Entry:
    """Return a row of attempts, with its coupon's `body`, as the entry that it was."""
    return Entry(
        coupon=row.body,
        digest=row.digest,
        rules=row.rules,
        attempt=row.attempt,
        grade=row.grade,
        handling=json.loads(zlib.decompress(row.handling)),
        zoom=row.zoom,
        at=at_of(row.at_ms),
        outcome={key: getattr(row, key) for key in _OUTCOME},
        learner=row.learner_id,
        source=row.source,
        before_feedback=row.before_feedback,
        id=row.id,
    )
