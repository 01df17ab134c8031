"""One learner's paper as it is gone through: items, what was stated, what was right, marks. No Qt.

What was stored is what is shown: a grade is made anew only to say its reasons in the language that
is spoken, and only where it comes to the same again.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final, cast

from exercises.attempt import Attempt, StatedReading
from exercises.grading import Grade, Reason, grade
from exercises.handling import HandlingLog
from exercises.sitting.marking import Override, marked
from exercises.sitting.result import Item
from exercises.strict_json import Json
from geometry.pose import Pose

__all__ = ["ItemRow", "MarkRow", "attempt_of", "grade_of", "handling_of", "item_rows", "mark_rows"]

_FINAL: Final = ("disposition", "size", "fault", "reading")
"""The mark that says whether an answer is right: the first of these that applies."""

_WHOLE: Final = ("critical", "score")
"""What is overridden beside single marks."""


@dataclass(frozen=True, slots=True)
class ItemRow:
    """An item of a paper.

    Parameters
    ----------
    item
        As it was handed in.
    score
        What it is worth now.
    was
        What it was worth as graded; None where that is the same.
    critical, right
        Whether it accepts what the rules reject, and whether what is asked for is right, overrides
        included.
    overridden
        How many of its marks were set by hand.
    """

    item: Item
    score: float
    was: float | None
    critical: bool
    right: bool
    overridden: int

    @property
    def id(self) -> str:
        """What the row is called."""
        return str(self.item.number)


@dataclass(frozen=True, slots=True)
class MarkRow:
    """A mark of an item: what it was graded, what it is now, and all that was done to it.

    Parameters
    ----------
    mark
        One of `exercises.sitting.marking.OVERRIDABLE`.
    graded
        0 to 1; None where it didn't apply.
    value
        What holds.
    reasons
        Why it was marked down.
    history
        Overrides of it, oldest first.
    """

    mark: str
    graded: float | None
    value: float | None
    reasons: tuple[Reason, ...]
    history: tuple[Override, ...]

    @property
    def overridden(self) -> bool:
        """Whether what holds was set by hand."""
        return bool(self.history)


def item_rows(items: Iterable[Item], overrides: Sequence[Override]) -> list[ItemRow]:
    """Return a paper's rows, in the learner's order."""
    rows = []
    for item in items:
        now, graded = marked(item, overrides), marked(item)
        was = graded.score if now.score != graded.score else None
        asked = (now.marks.get(name) for name in _FINAL)
        right = next((mark for mark in asked if mark is not None), 0.0) >= 1.0
        rows.append(ItemRow(item, now.score, was, now.critical, right, len(now.overridden)))
    return rows


def mark_rows(item: Item, overrides: Sequence[Override]) -> list[MarkRow]:
    """Return all that can be said of an item's marks, the score last.

    A mark that doesn't apply is left out, unless it was set by hand.
    """
    now, graded = marked(item, overrides), marked(item)
    told = grade_of(item)
    mine = sorted((one for one in overrides if one.item == item.number), key=lambda one: one.at)
    rows: list[MarkRow] = []
    for name in now.marks:
        history = tuple(one for one in mine if one.mark == name)
        if graded.marks.get(name) is None and not history:
            continue
        reasons = tuple(why for why in told.reasons if why.mark == name) if told else ()
        rows.append(MarkRow(name, graded.marks.get(name), now.marks[name], reasons, history))
    # Where the reasons were stored without saying which mark they are for, they stand at the end.
    loose = (
        tuple(why for why in told.reasons if not why.mark or why.mark == "hints") if told else ()
    )
    ends: dict[str, tuple[float, float]] = {
        "critical": (float(graded.critical), float(now.critical)),
        "score": (graded.score, now.score),
    }
    for name in _WHOLE:
        history = tuple(one for one in mine if one.mark == name)
        was, value = ends[name]
        if name == "critical" and not was and not history:
            continue
        rows.append(MarkRow(name, was, value, loose if name == "score" else (), history))
    return rows


def attempt_of(item: Item) -> Attempt:
    """Return what was stated of an item; an attempt that states nothing if nothing was."""
    said: Any = item.attempt
    if said is None:
        return Attempt(item.coupon.id, readings=())
    listed = said.get("readings")
    readings = None if listed is None else tuple(_reading(one) for one in listed)
    return Attempt(
        coupon=item.coupon.id,
        face=said.get("face"),
        readings=readings,
        disposition=said.get("disposition"),
        sure=said.get("sure"),
        fault=said.get("fault"),
        size=said.get("size"),
        hints=said.get("hints"),
    )


def _reading(said: Mapping[str, Any]) -> StatedReading:
    pose = said.get("pose")
    return StatedReading(
        leaf=said.get("leaf"),
        edge=said.get("edge"),
        on=said.get("on"),
        pose=Pose(**pose) if pose is not None else None,
        state=said.get("state"),
    )


def grade_of(item: Item) -> Grade | None:
    """Return an item's grade as it was stored; None where nothing was stated.

    Its reasons have what they speak of where grading comes to the same today; else they are told
    as they were.
    """
    stored: Any = item.grade
    if stored is None:
        return None
    fresh = grade(item.coupon, attempt_of(item))
    if _same(fresh, stored):
        return fresh
    reasons = tuple(
        Reason("", "stored", {}, str(one.get("text", one.get("code", ""))))
        for one in stored.get("reasons", ())
    )
    return replace(
        fresh,
        score=float(stored["score"]),
        marks=dict(stored["marks"]),
        right=stored.get("right"),
        in_doubt=bool(stored.get("in_doubt")),
        critical=bool(stored.get("critical")),
        reasons=reasons,
    )


def _same(fresh: Grade, stored: Mapping[str, Any]) -> bool:
    said = fresh.as_dict()
    marks = {name: value for name, value in dict(stored["marks"]).items() if value is not None}
    ours = {name: value for name, value in fresh.marks.items() if value is not None}
    return (
        marks == ours
        and said["reasons"] == list(stored.get("reasons", ()))
        and (fresh.score, fresh.right, fresh.in_doubt, fresh.critical)
        == (stored["score"], stored.get("right"), stored.get("in_doubt"), stored.get("critical"))
    )


def handling_of(item: Item) -> HandlingLog:
    """Return the recorded path of the leaf."""
    rows = [list(row) for row in item.handling]
    return HandlingLog.from_json(cast("Json", rows))
