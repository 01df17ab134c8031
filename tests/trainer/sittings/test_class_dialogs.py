"""The dialogs of the class by the keyboard alone, and as they grow while they are used."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from tests.trainer.sittings.conftest import Instructor
from trainer.look.theme import LIGHT, apply
from trainer.school.people import Newcomer
from trainer.school.roster import Roster
from trainer.shop.question import Answer, Question
from trainer.sittings.class_dialogs import EraseDialog, GroupDialog, PasteDialog, PersonDialog

ENTER = Qt.Key.Key_Return


def press(instructor: Instructor, button: QPushButton) -> None:
    """Go to a button and press Enter."""
    button.setFocus()
    QTest.keyClick(button, ENTER)
    instructor.qtbot.wait(1)


def people(instructor: Instructor) -> list[str]:
    return [one.name for one in Roster(instructor.keeping).people()]


def test_enter_on_cancel_cancels(instructor: Instructor) -> None:
    before = people(instructor)
    instructor.room.do("add")
    person = instructor.dialog(PersonDialog)
    person.name.setText("Pia")
    press(instructor, person.leave)
    assert not instructor.frame.dialogs
    assert people(instructor) == before
    instructor.room.do("group new")
    group = instructor.dialog(GroupDialog)
    group.name.setText("Tuesday")
    press(instructor, group.leave)
    assert not instructor.frame.dialogs
    assert Roster(instructor.keeping).groups() == []


def test_enter_on_new_code_makes_a_code_and_adds_nobody(instructor: Instructor) -> None:
    before = people(instructor)
    instructor.room.do("add")
    person = instructor.dialog(PersonDialog)
    person.name.setText("Pia")
    code = person.code.text()
    press(instructor, person.new)
    assert person.code.text() != code
    assert people(instructor) == before
    person.name.setFocus()
    QTest.keyClick(person.name, ENTER)
    assert "Pia" in people(instructor), "from a field Enter goes on adding"


def test_enter_on_add_adds_many(instructor: Instructor) -> None:
    instructor.room.do("paste")
    dialog = instructor.dialog(PasteDialog)
    dialog.text.setPlainText("Pia\nOdo")
    dialog.look_through()
    press(instructor, dialog.take)
    assert {"Pia", "Odo"} <= set(people(instructor))


def test_enter_erases_only_from_the_button_that_says_so(instructor: Instructor) -> None:
    roster = Roster(instructor.keeping)
    (pia,) = roster.add([Newcomer("Pia", "K-07", 1)])
    for button, stays in (("leave", True), ("take", False)):
        instructor.room.show_all()
        instructor.room.people.table.choose(pia.id)
        instructor.room.do("erase")
        dialog = instructor.dialog(EraseDialog)
        dialog.sure.click()
        press(instructor, getattr(dialog, button))
        assert ("Pia" in people(instructor)) is stays


def test_tab_stops_at_the_button_that_erases(instructor: Instructor, qapp: QApplication) -> None:
    (pia,) = Roster(instructor.keeping).add([Newcomer("Pia", "K-07", 1)])
    instructor.room.show_all()
    instructor.room.people.table.choose(pia.id)
    before = qapp.styleSheet()
    apply(qapp, LIGHT)
    try:
        instructor.room.do("erase")
        dialog = instructor.dialog(EraseDialog)
        instructor.qtbot.waitActive(dialog)
        dialog.sure.setFocus()
        dialog.sure.click()
        stops = []
        for _ in range(4):
            QTest.keyClick(dialog.focusWidget(), Qt.Key.Key_Tab)
            stops.append(dialog.focusWidget())
    finally:
        qapp.setStyleSheet(before)
    assert stops == [dialog.take, dialog.leave, dialog.list, dialog.sure]


def test_enter_gives_the_answer_that_has_the_focus(instructor: Instructor) -> None:
    given: list[str] = []
    for at in (0, 1):
        answers = (
            Answer("Keep", lambda: given.append("keep")),
            Answer("Leave", lambda: given.append("leave")),
        )
        question = Question("Keep it?", "", answers, instructor.window)
        instructor.frame.show_dialog(question)
        press(instructor, question.answers[at])
    assert given == ["keep", "leave"]


@pytest.mark.parametrize("name", ["Pia", "Pia of the yard behind the old pattern shop, by the sea"])
def test_what_is_said_of_a_field_covers_none(instructor: Instructor, name: str) -> None:
    Roster(instructor.keeping).add([Newcomer(name, "K-07", 1)])
    instructor.room.do("add")
    person = instructor.dialog(PersonDialog)
    instructor.qtbot.waitExposed(person)
    person.name.setText(name)
    person.code.setText("K-07")
    instructor.qtbot.waitUntil(lambda: person.message.height() > 0)
    instructor.qtbot.wait(10)
    parts = [person.name, person.code, person.message, person.take]
    for above, below in pairwise(parts):
        end = above.mapTo(person, above.rect().bottomLeft()).y()
        assert end < below.mapTo(person, below.rect().topLeft()).y()


def test_faults_of_a_table_take_no_room_from_it(instructor: Instructor) -> None:
    Roster(instructor.keeping).add([Newcomer("Pia", "K-07", 1)])
    instructor.room.do("paste")
    dialog = instructor.dialog(PasteDialog)
    dialog.text.setPlainText("Ben; K-07")
    dialog.look_through()
    instructor.qtbot.wait(10)
    assert dialog.faults.isVisible()
    assert dialog.text.height() >= dialog.text.minimumHeight()
    assert dialog.faults.height() >= dialog.faults.minimumHeight()


def test_who_is_here_already_is_passed_over_and_counted(instructor: Instructor) -> None:
    Roster(instructor.keeping).add([Newcomer("Pia", "K-07", 1)])
    instructor.room.do("paste")
    dialog = instructor.dialog(PasteDialog)
    dialog.text.setPlainText("Pia; K-07\nOdo; K-08")
    dialog.look_through()
    assert "1 learner to be added" in dialog.said.text()
    assert "passed over: 1" in dialog.said.text()
    press(instructor, dialog.take)
    assert people(instructor).count("Pia") == 1
    assert "Odo" in people(instructor)


def test_the_lines_shown_as_an_example_are_taken_as_they_stand(instructor: Instructor) -> None:
    instructor.room.do("paste")
    dialog = instructor.dialog(PasteDialog)
    dialog.text.setPlainText(dialog.text.placeholderText())
    dialog.look_through()
    assert dialog.faults.isHidden()
    assert dialog.take.isEnabled()
