"""What an attempt adds to the tallies, and what they come to again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from exercises.learner.line import Call
from exercises.learner.outcome import Outcome
from trainer.logbook.schema import BIN

__all__ = ["Added", "Tally", "added_by", "calls_of"]

_SURE_STEPS: Final = 10


@dataclass(frozen=True, slots=True)
class Added:
    """One count that an attempt adds to."""

    kind: str
    key: str
    total: float = 0.0


@dataclass(frozen=True, slots=True)
class Tally:
    """A count as it stands, of a learner's day."""

    day: str
    kind: str
    key: str
    count: int
    total: float


def added_by(
    outcome: Outcome, grade: Mapping[str, object], sure: float | None, *, before_feedback: bool
) -> list[Added]:
    """Return all that an attempt counts for.

    ``line``: bin of the distance, short or not, before feedback or not. ``call``: bad or good,
    rejected or let go, outside the doubt; its total is the score. ``fault``: each reason's code.
    ``sure``: how sure, in tenths; its total is how many of them were right.

    Examples
    --------
    >>> outcome = Outcome(-0.31, False, True, False, False, True)
    >>> grade = {"score": 0.0, "marks": {"disposition": 0.0}, "reasons": [{"code": "disposition"}]}
    >>> for added in added_by(outcome, grade, 0.8, before_feedback=True):
    ...     print(added.kind, added.key, added.total)
    line -16 sound first 0.0
    call bad let go 0.0
    fault disposition 0.0
    sure 8 0.0
    """
    found: list[Added] = []
    if outcome.call is not None:
        at = round(outcome.call.distance / BIN)
        said = "short" if outcome.call.short else "sound"
        found.append(Added("line", f"{at} {said} {'first' if before_feedback else 'later'}"))
    if outcome.called_bad is not None and not outcome.in_doubt:
        weld = "bad" if outcome.bad else "good"
        said = "rejected" if outcome.called_bad else "let go"
        found.append(Added("call", f"{weld} {said}", _number(grade.get("score")) or 0.0))
    reasons = grade.get("reasons")
    listed = reasons if isinstance(reasons, (list, tuple)) else ()
    codes = {str(reason["code"]) for reason in listed if "code" in reason}
    found += [Added("fault", code) for code in sorted(codes)]
    if sure is not None:
        marks = grade.get("marks")
        right = _number(marks.get("disposition") if isinstance(marks, Mapping) else None)
        if right is not None:
            found.append(Added("sure", str(round(sure * _SURE_STEPS)), right))
    return found


def _number(value: object) -> float | None:
    return float(value) if isinstance(value, (int, float)) else None


def calls_of(
    tallies: Sequence[Tally], *, before_feedback: bool | None = None, newest: int | None = None
) -> list[Call]:
    """Return the calls that show a learner's line, each at the middle of its bin, by days.

    Parameters
    ----------
    tallies
        In the order of their days.
    newest
        How many at most, the latest days' ones.
    before_feedback
        Only those before any feedback of their day (true), after it, or all (None).

    Examples
    --------
    >>> calls_of([Tally("2026-03-01", "line", "-16 sound first", 2, 0.0)])[0]
    Call(distance=-0.32, short=False)
    """
    found: list[Call] = []
    for tally in reversed(tallies):
        if newest is not None and len(found) >= newest:
            break
        if tally.kind != "line":
            continue
        at, said, when = tally.key.split(" ")
        if before_feedback is None or before_feedback == (when == "first"):
            found += [Call(round(int(at) * BIN, 9), said == "short")] * tally.count
    return found[:newest][::-1]
