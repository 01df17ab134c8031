"""A run in pseudo-English: whatever is to be seen or heard outside brackets was left out.

Pseudo-English is a third longer than English, as the longest translations are; so what is cut off
or hidden by it is looked for as well.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import pytest
from PySide6.QtCore import QLocale, QObject, Qt
from PySide6.QtWidgets import QApplication, QWidget

from exercises.file_faults import TrayFault
from exercises.tray import Tray, load_tray
from tests.trainer.bench.conftest import Person, person, tray
from tests.trainer.corners.conftest import Instructor, instructor
from tests.trainer.said import left_out, said_by, tray_words
from trainer.assets import asset
from trainer.fault_words import fault_words
from trainer.guide.guiding import Guiding
from trainer.language import PSEUDO, Speech
from trainer.notices import FaultRow
from trainer.unforeseen import Trouble

__all__ = ["instructor", "person", "tray"]

Key = Qt.Key


@pytest.fixture(autouse=True)
def pseudo_spoken(qapp: QApplication) -> Iterator[None]:
    """Before any widget: so it is the first of the fixtures."""
    before = QLocale()
    speech = Speech(qapp)
    speech.speak(PSEUDO)
    yield
    speech.speak("en")
    QLocale.setDefault(before)


def missing(window: QWidget, given: list[str], *more: str) -> list[str]:
    """What is said and was left out, in this window and in every dialog of it."""
    return left_out([*said_by(window), *more], given)


def test_there_is_something_to_hear(person: Person, tray: Tray) -> None:
    texts = said_by(person.window)
    assert len(texts) > 100
    assert left_out(["Gauge both legs", *texts], tray_words(tray)) == ["Gauge both legs"]


def test_the_bench_before_and_after_a_call(person: Person, tray: Tray) -> None:
    words = tray_words(tray)
    heard: list[str] = []
    person.screen.announced.connect(heard.append)
    assert missing(person.window, words) == []
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_F, Key.Key_Space, Key.Key_T):
        person.key(key)
        person.settle()
        assert missing(person.window, words) == []
    for key in (Key.Key_E, Key.Key_Space, Key.Key_N, Key.Key_U, Key.Key_X, Key.Key_A):
        person.key(key)
        person.settle()
    assert missing(person.window, words) == []
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"
    assert missing(person.window, words, *heard) == []
    assert heard
    for button in person.screen.review.panel.readings:
        button.click()
        assert missing(person.window, words) == []


def test_the_debrief_of_every_shipped_coupon_called_all_wrong(person: Person, tray: Tray) -> None:
    words = tray_words(tray)
    for index, coupon in enumerate(tray.coupons):
        person.screen.go_to(index)
        keys = (Key.Key_3, Key.Key_Space, Key.Key_T, Key.Key_P, Key.Key_A, Key.Key_M, Key.Key_S)
        for key in keys:
            person.key(key)
            person.settle()
        person.key(Key.Key_Return)
        assert person.state.phase == "debrief"
        assert (coupon.id, missing(person.window, words)) == (coupon.id, [])


def test_a_leaf_that_somebody_else_has_placed(person: Person) -> None:
    placed = load_tray(asset("trays", "seal-slipway.tray.json"))
    words = tray_words(placed)
    person.screen.open_tray(placed)
    for index, coupon in enumerate(placed.coupons):
        person.screen.go_to(index)
        for key in (Key.Key_F, Key.Key_U, Key.Key_3):
            person.key(key)
            assert (coupon.id, missing(person.window, words)) == (coupon.id, [])
        person.key(Key.Key_Return)
        assert person.state.phase == "debrief"
        assert (coupon.id, missing(person.window, words)) == (coupon.id, [])


def test_what_is_said_when_nothing_comes_of_a_step(person: Person, tray: Tray) -> None:
    for key in (
        Key.Key_F,
        Key.Key_C,
        Key.Key_Z,
        Key.Key_Return,
        Key.Key_9,
        Key.Key_8,
        Key.Key_Down,
    ):
        person.key(key)
        person.settle()
        assert missing(person.window, tray_words(tray)) == []


def test_the_dialogs(person: Person, tray: Tray) -> None:
    frame, words = person.frame, tray_words(tray)
    fault = TrayFault("a", "/joint/angle", "x", "y", "joint-angle", {"angle": 30.0, "lowest": 60.0,
        "highest": 135.0})  # fmt: skip
    frame.show_first_start()
    frame.show_keys()
    frame.show_faults("1", [FaultRow("/", *fault_words(fault))])
    frame.show_unforeseen(Trouble("", "", None))
    person.click(person.screen.job_card.rules)
    assert len(frame.dialogs) == 5
    for dialog in frame.dialogs:
        assert missing(dialog, words) == []


def test_the_guide(person: Person, tray: Tray, qtbot: QObject) -> None:
    guiding = Guiding(person.frame, person.screen)
    guiding.show_again()
    for _ in range(12):
        assert missing(person.window, tray_words(tray)) == []
        guiding.card.skip_asked.emit()


def test_the_four_corners_and_their_talk(instructor: Instructor) -> None:
    screen = instructor.screen
    heard: list[str] = []
    screen.announced.connect(heard.append)
    assert missing(instructor.window, []) == []
    for _ in range(6):
        instructor.key(Key.Key_Right)
        instructor.arrive()
        assert missing(instructor.window, [], *heard) == []


def cut_off(parent: QWidget) -> list[str]:
    """Buttons that are too narrow for what they say, and neighbours that overlap."""
    found = []
    for widget in parent.findChildren(QWidget):
        layout = widget.layout()
        if layout is None or not widget.isVisible():
            continue
        inner = [
            item.widget()
            for index in range(layout.count())
            if (item := layout.itemAt(index)) is not None and item.widget() is not None
        ]
        for one, other in pairwise(
            [each for each in inner if each is not None and each.isVisible()]
        ):
            if one.geometry().intersects(other.geometry()):
                found.append(f"{type(one).__name__} lies over {type(other).__name__}")
    return found


@pytest.mark.parametrize("size", [(1280, 720), (1024, 700), (1920, 1080)])
def test_nothing_overlaps(person: Person, size: tuple[int, int]) -> None:
    person.window.resize(*size)
    person.key(Key.Key_8)
    person.settle()
    QApplication.processEvents()
    assert cut_off(person.window) == []
