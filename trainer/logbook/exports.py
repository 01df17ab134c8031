"""A learner's attempts for other programs: a table (CSV) and statements (xAPI 1.0.3). No Qt.

References
----------
RFC 4180 for CSV. Experience API, version 1.0.3, part two (data): a statement's id is the attempt's
own, so the same attempt sent twice is the same statement; durations to 0.01 s; no null outside
extensions.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Mapping
from datetime import UTC, datetime
from typing import Final

from trainer.logbook.store import Learner
from trainer.records import Entry

__all__ = ["COLUMNS", "csv_lines", "statement_of", "statements"]

COLUMNS: Final = (
    "attempt", "at", "coupon", "digest", "rules", "source", "before_feedback", "face",
    "disposition", "right", "in_doubt", "critical", "score", "distance_mm", "sure", "reasons",
    "seconds",
)  # fmt: skip

_AUTHORITY: Final = "tag:toe-and-throat.invalid,2026"
"""Names things that nobody is to look up: .invalid is reserved for that (RFC 2606, RFC 4151)."""

_ANSWERED: Final = {
    "id": "http://adlnet.gov/expapi/verbs/answered",
    "display": {"en": "answered", "es": "respondió"},
}
_ASSESSMENT: Final = "http://adlnet.gov/expapi/activities/question"

# What a spreadsheet would take for a formula when it opens the file.
_FORMULA: Final = ("=", "+", "-", "@", "\t", "\r")


def csv_lines(entries: Iterable[Entry]) -> Iterator[str]:
    r"""Yield a learner's attempts as lines of CSV, a header first; lines end in CR LF.

    Text that a spreadsheet would take for a formula begins with an apostrophe.

    Examples
    --------
    >>> next(iter(csv_lines([])))[:20]
    'attempt,at,coupon,di'
    """
    yield _line(COLUMNS)
    for entry in entries:
        grade, outcome = entry.grade, entry.outcome
        yield _line(
            (
                entry.id, entry.at.astimezone(UTC).isoformat(timespec="milliseconds"),
                _plain(entry.coupon.get("id")), entry.digest, _plain(entry.rules.get("id")),
                entry.source, _yes(entry.before_feedback), entry.attempt.get("face"),
                entry.attempt.get("disposition"), grade.get("right"), _yes(grade.get("in_doubt")),
                _yes(grade.get("critical")), grade.get("score"), outcome.get("distance"),
                entry.attempt.get("sure"), " ".join(_codes(grade)), round(_seconds(entry), 2),
            )
        )  # fmt: skip


def _line(values: Iterable[object]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\r\n").writerow(["" if v is None else v for v in values])
    return text.getvalue()


def _plain(value: object) -> str:
    text = "" if value is None else str(value)
    return f"'{text}" if text.startswith(_FORMULA) else text


def _yes(value: object) -> str:
    return "yes" if value else "no"


def _codes(grade: Mapping[str, object]) -> list[str]:
    reasons = grade.get("reasons")
    listed = reasons if isinstance(reasons, (list, tuple)) else ()
    return [str(reason["code"]) for reason in listed if isinstance(reason, dict)]


def _seconds(entry: Entry) -> float:
    """How long the leaf was in hand, seconds."""
    last = entry.handling[-1][0] if entry.handling else 0
    return float(last) / 1000.0 if isinstance(last, (int, float)) else 0.0


def statements(learner: Learner, entries: Iterable[Entry], *, named: bool = False) -> Iterator[str]:
    """Yield each attempt as one xAPI statement, JSON in one line.

    Parameters
    ----------
    named
        Whether the learner's name goes along; their id does in any case.
    """
    for entry in entries:
        yield json.dumps(statement_of(learner, entry, named=named), ensure_ascii=False)


def statement_of(learner: Learner, entry: Entry, *, named: bool = False) -> dict[str, object]:
    """Return an attempt as an xAPI 1.0.3 statement.

    Examples
    --------
    >>> at = datetime(2026, 3, 1, 12, tzinfo=UTC)
    >>> entry = Entry({"id": "hf-01"}, "0f", {}, {}, {"score": 1.0}, [], {}, at)
    >>> statement_of(Learner("b7", "Bench 1"), entry)["timestamp"]
    '2026-03-01T12:00:00.000Z'
    """
    account = {"homePage": f"{_AUTHORITY}:learners", "name": learner.id}
    actor: dict[str, object] = {"objectType": "Agent", "account": account}
    if named:
        actor["name"] = learner.name
    return {
        "id": entry.id,
        "actor": actor,
        "verb": _ANSWERED,
        "object": {
            "objectType": "Activity",
            "id": f"{_AUTHORITY}:coupons/{entry.digest}",
            "definition": {
                "type": _ASSESSMENT,
                "name": {"en": _name_of(entry)},
            },
        },
        "result": _result(entry),
        "context": {
            "platform": "Toe & Throat",
            "extensions": {
                f"{_AUTHORITY}:{key}": value
                for key, value in (
                    ("rules", dict(entry.rules)),
                    ("source", entry.source),
                    ("before-feedback", entry.before_feedback),
                )
            },
        },
        "timestamp": _instant(entry.at),
    }


def _name_of(entry: Entry) -> str:
    title = entry.coupon.get("title")
    if isinstance(title, dict):
        title = title.get("en") or next(iter(title.values()), "")
    return str(title or entry.coupon.get("id") or entry.digest)


def _instant(at: datetime) -> str:
    text = at.astimezone(UTC).isoformat(timespec="milliseconds")
    return text.replace("+00:00", "Z")


def _result(entry: Entry) -> dict[str, object]:
    score = entry.grade.get("score")
    marks = entry.grade.get("marks")
    right = marks.get("disposition") if isinstance(marks, Mapping) else None
    found: dict[str, object] = {
        "duration": f"PT{_seconds(entry):.2f}S",
        "extensions": {
            f"{_AUTHORITY}:{key}": value
            for key, value in (
                ("distance-mm", entry.outcome.get("distance")),
                ("in-doubt", bool(entry.grade.get("in_doubt"))),
                ("critical", bool(entry.grade.get("critical"))),
                ("sure", entry.attempt.get("sure")),
                ("reasons", _codes(entry.grade)),
            )
            if value is not None
        },
    }
    if isinstance(score, (int, float)):
        found["score"] = {"scaled": float(score), "raw": float(score), "min": 0.0, "max": 1.0}
    if isinstance(right, (int, float)):
        found["success"] = right >= 1.0
    stated = entry.attempt.get("disposition")
    if stated is not None:
        found["response"] = str(stated)
    return found
