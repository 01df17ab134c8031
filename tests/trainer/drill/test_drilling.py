"""A drill on the real bench, by keys: no feedback first, then debriefs, then what was found."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton

from exercises.drill import BEFORE_FEEDBACK
from exercises.judging import judge
from exercises.maker import Recipe
from tests.trainer.bench.conftest import Person, person, tray
from trainer.drill.dialog import DrillDialog
from trainer.drill.drilling import Drilling, known_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.notices import Notice
from trainer.records import Records

__all__ = ["person", "tray"]

Key = Qt.Key


class Driller:
    """Somebody in a drill."""

    def __init__(self, one: Person, folder: Path) -> None:
        self.one = one
        self.keeping = Keeping(
            folder / "logbook.sqlite3", Records(folder / "aside.jsonl"), bring_up_to_date, "Anna"
        )
        self.keeping.open()
        one.screen.records = self.keeping
        self.drilling = Drilling(one.frame, one.screen, lambda: self.keeping)

    def begin(self) -> None:
        self.drilling.begin(Recipe(1, faces=("convex",)), seed=5)

    def call(self) -> None:
        """Call the coupon that lies there as it truly is."""
        state = self.one.state
        truth = judge(state.coupon)
        self.one.key(Key.Key_X)
        self.one.key(Key.Key_A if truth.disposition == "accept" else Key.Key_W)
        self.one.key(Key.Key_Return)
        self.one.settle()

    @property
    def band(self) -> str:
        band = self.one.frame.band
        return band.words.text() if band.isVisible() else ""

    def dialog(self) -> Notice:
        (found,) = (d for d in self.one.frame.window.findChildren(Notice) if d.isVisible())
        return found


@pytest.fixture
def driller(person: Person, tmp_path: Path) -> Iterator[Driller]:
    made = Driller(person, tmp_path)
    yield made
    made.keeping.close()


def test_the_first_calls_come_without_feedback_and_the_later_ones_with_it(
    driller: Driller,
) -> None:
    spoken: list[str] = []
    driller.one.screen.announced.connect(spoken.append)
    driller.begin()
    seen = [driller.one.state.coupon.id]
    for left in range(BEFORE_FEEDBACK, 0, -1):
        assert f"{left} more" in driller.band
        driller.call()
        assert driller.one.state.phase == "handling"
        seen.append(driller.one.state.coupon.id)
    assert len(set(seen)) == BEFORE_FEEDBACK + 1
    # Nothing that a screen reader was told says how a call went.
    assert not [text for text in spoken if "mark" in text.lower() or "%" in text]
    driller.call()
    assert driller.one.state.phase == "debrief"
    assert "only one answer" in driller.band
    driller.one.key(Key.Key_PageDown)
    driller.one.settle()
    assert driller.one.state.phase == "handling"
    assert driller.one.state.coupon.id not in seen


def test_calls_are_kept_as_a_drill_s(driller: Driller) -> None:
    driller.begin()
    for _ in range(BEFORE_FEEDBACK + 1):
        driller.call()
    assert driller.keeping.logbook is not None
    assert driller.keeping.learner is not None
    entries = list(driller.keeping.logbook.every(driller.keeping.learner.id))
    assert {entry.source for entry in entries} == {"drill"}
    assert [entry.before_feedback for entry in entries] == [True] * BEFORE_FEEDBACK + [False]
    day = entries[0].at.astimezone().date().isoformat()
    belief, today = known_of(driller.keeping, day)
    assert belief.calls == len([e for e in entries if e.outcome["short"] is not None])
    assert today == belief.calls


def test_a_coupon_of_a_drill_is_called_once(driller: Driller) -> None:
    driller.begin()
    for _ in range(BEFORE_FEEDBACK + 1):
        driller.call()
    drill = driller.drilling.drill
    driller.one.key(Key.Key_R)
    assert driller.one.state.phase == "debrief"
    assert driller.drilling.drill is drill


def test_the_next_coupon_waits_for_the_call(driller: Driller) -> None:
    driller.begin()
    first = driller.one.state.coupon
    driller.one.screen.go_to(1)
    assert driller.one.state.coupon is first
    driller.one.key(Key.Key_PageDown)
    assert driller.one.state.coupon is first


def test_at_its_end_the_bench_is_as_it_was_and_it_says_what_was_found(driller: Driller) -> None:
    driller.one.key(Key.Key_8)
    driller.one.settle()
    before = driller.one.state
    driller.begin()
    for _ in range(3):
        driller.call()
    (end,) = (b for b in driller.one.frame.band.findChildren(QPushButton) if b.isVisible())
    driller.one.click(end)
    driller.one.settle()
    assert driller.one.state.coupon.id == before.coupon.id
    assert driller.one.state.leaf == before.leaf
    assert driller.band == ""
    text = "\n".join(label.text() for label in driller.dialog().findChildren(QLabel))
    assert "The drill so far" in text
    # Three calls say nothing of a line.
    assert "Too few calls" in text
    assert "blurred" not in text
    assert driller.one.screen.records is driller.keeping


def test_another_tray_ends_it(driller: Driller, tmp_path: Path) -> None:
    driller.begin()
    driller.one.frame.tray_asked.emit(tmp_path / "other.tray.json")
    assert driller.drilling.drill is None
    assert driller.one.screen.onward is None
    assert driller.one.screen.records is driller.keeping


def test_it_is_asked_what_it_is_to_be_about(driller: Driller) -> None:
    driller.drilling.ask()
    dialog = driller.dialog()
    assert isinstance(dialog, DrillDialog)
    dialog.unit.setCurrentIndex(1)
    dialog.begin.click()
    driller.one.settle()
    assert driller.drilling.drill is not None
    assert driller.drilling.drill.recipe.unit == "in"
    assert driller.one.state.coupon.callout.unit == "in"
