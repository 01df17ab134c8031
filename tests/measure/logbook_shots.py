"""What the logbook looks like: its pictures, for `tests.measure.shots`."""

from __future__ import annotations

import random
from dataclasses import replace
from datetime import timedelta
from typing import cast

from PySide6.QtTest import QTest

from exercises.learner.line import called_short
from tests.measure.stage import Stage
from tests.trainer.logbook.entries import BEGIN, entry_of
from trainer.logbook.screen import LogbookScreen
from trainer.records import Entry

__all__ = ["leave_logbook", "logbook", "logbook_empty"]

_BUSY, _NEW = "Bench 3", "Bench 7"
_CODES = ("edge-throat", "seat-open", "leg-not-gauged", "reading-other", "right-add-weld-metal")


def _call(number: int, rng: random.Random) -> Entry:
    """A call of somebody whose line lies 0.12 mm high and is blurred by 0.17."""
    distance = rng.uniform(-0.95, 0.95)
    short = rng.random() < float(called_short(distance, 0.12, 0.17, 0.01))
    right = short == (distance < 0.0)
    call, other = ("add weld metal", "accept") if distance < 0.0 else ("accept", "add weld metal")
    reasons = [{"code": rng.choice(_CODES)}] if rng.random() < 0.3 else []
    return replace(
        entry_of(number),
        at=BEGIN + timedelta(hours=5 * number),
        attempt={"disposition": call if right else other, "sure": rng.choice((0.5, 0.7, 0.8, 1.0))},
        grade={"score": float(right), "marks": {"disposition": float(right)}, "right": call,
               "in_doubt": False, "critical": False, "reasons": reasons},
        outcome={"distance": distance, "short": short, "bad": distance < 0.0, "called_bad": short,
                 "in_doubt": False, "clean": True},
    )  # fmt: skip


def _show(on: Stage, name: str) -> LogbookScreen:
    """Somebody's logbook: made, unless it is there."""
    screen = cast("LogbookScreen", on.frame.make_screen("logbook"))
    logbook = screen.keeping.logbook
    assert logbook is not None
    known = {learner.name: learner for learner in logbook.learners()}
    learner = known.get(name) or logbook.add_learner(name)
    screen.keeping.choose(learner)
    # The bench's own calls are of today, these are of a day long ago.
    logbook.clock_went_back = False
    on.frame.show_screen("logbook")
    screen.show_all()
    screen.people.list.setFocus()
    return screen


def _drawn(on: Stage) -> None:
    on.settle()
    # The pictures wait until the size has settled.
    QTest.qWait(120)
    on.settle()


def logbook_empty(on: Stage) -> None:
    """Of somebody who has made no call yet."""
    _show(on, _NEW)
    _drawn(on)


def logbook(on: Stage) -> None:
    """Of somebody who has made 260 calls."""
    screen = _show(on, _BUSY)
    book, learner = screen.keeping.logbook, screen.keeping.learner
    assert book is not None
    assert learner is not None
    if book.count(learner.id) == 0:
        rng = random.Random(3)
        book.add_all(learner.id, [_call(number, rng) for number in range(260)])
        book.clock_went_back = False
        screen.show_all()
    _drawn(on)


def leave_logbook(on: Stage) -> None:
    """Have whoever was there at first at the bench again: what is called there is of today.

    A picture of the logbook would otherwise look another way every week.
    """
    if not on.frame.has_screen("logbook"):
        return
    screen = cast("LogbookScreen", on.frame.make_screen("logbook"))
    book = screen.keeping.logbook
    assert book is not None
    others = [one for one in book.learners() if one.name not in (_BUSY, _NEW)]
    screen.keeping.choose(others[0])
