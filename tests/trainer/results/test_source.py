"""Results off the school's server: the same page on another book, and told when there is none.

That the book itself reads PostgreSQL is tested with `trainer.school`; here it stands for a server
that knows codes and no names.
"""

from __future__ import annotations

import shutil
import sqlite3
import threading
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QLabel

from exercises.sitting.result import Result
from tests.trainer.results.conftest import LEARNERS, Teacher
from trainer.results import source
from trainer.results.override_dialog import OverrideDialog, Setting
from trainer.results.page import ResultsPage
from trainer.school.address import Address
from trainer.school.reading import ClassBook
from trainer.school.trouble import SchoolError

SERVER = "postgresql://station@127.0.0.1:9/school"


@pytest.fixture(autouse=True)
def _english() -> None:
    QLocale.setDefault(QLocale("en"))


@pytest.fixture
def server(handed_in: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """What a server holds: papers of codes; names and groups it never gets."""
    there = tmp_path / "server" / "logbook.sqlite3"
    there.parent.mkdir()
    shutil.copy(handed_in / "logbook.sqlite3", there)
    with closing(sqlite3.connect(there)) as plain:
        plain.execute("UPDATE learners SET name = code WHERE code IS NOT NULL")
        plain.execute("DELETE FROM members")
        plain.commit()
    monkeypatch.setattr(source, "server_book", lambda _: ClassBook.of_logbook(there))
    return there


def test_the_server_is_offered_once_there_is_one_and_read_when_chosen(
    newcomer: Teacher, server: Path, results: list[Result]
) -> None:
    page = newcomer.page
    assert not page.of_class.sources.isVisible()
    newcomer.frame.change_settings(replace(newcomer.frame.settings, server=SERVER))
    assert page.of_class.sources.isVisible()
    assert page.of_class.learners.table.rows.rowCount() == 0
    page.of_class.sources.setFocus()
    QTest.keyClick(page.of_class.sources, Qt.Key.Key_Down)
    page.of_class.sources.activated.emit(1)
    newcomer.settle()
    model = page.of_class.learners.table.rows
    assert model.rowCount() == LEARNERS
    assert not any(model.row(at).name for at in range(LEARNERS))
    # A mark that is set by hand is kept where the paper is.
    page.open_paper(results[0].id)
    newcomer.settle()
    page.of_learner.overridden.emit(1, Setting("score", 0.5, "seen again", "Instructor 2"))
    newcomer.settle()
    with closing(sqlite3.connect(server)) as plain:
        assert plain.execute("SELECT reason FROM overrides").fetchall() == [("seen again",)]
    page.show_class()
    page.of_class.show_view("ready")
    assert page.of_class.ready.table.choose(results[0].learner)
    page.of_class.ready.open.click()
    assert "knows nothing of this learner" in newcomer.frame.dialogs[-1].windowTitle()


def test_names_and_groups_of_this_machine_stand_beside_codes_of_the_server(
    teacher: Teacher, server: Path
) -> None:
    assert server.exists()
    teacher.frame.change_settings(replace(teacher.frame.settings, server=SERVER))
    teacher.page.choose_source(server=True)
    teacher.settle()
    model = teacher.page.of_class.learners.table.rows
    named = {model.row(at).code: (model.row(at).name, model.row(at).groups) for at in range(5)}
    for code, (name, groups) in named.items():
        odd = int(code[2:]) % 2 == 1
        assert name == (f"Learner {int(code[2:])}" if odd else "")
        assert groups == (("Tuesday",) if odd else ())


def test_a_server_that_cannot_be_reached_is_told_and_the_logbook_is_a_click_away(
    teacher: Teacher,
) -> None:
    teacher.frame.change_settings(replace(teacher.frame.settings, server=SERVER))
    teacher.page.choose_source(server=True)
    teacher.settle()
    page = teacher.page.of_class
    assert page.trouble.isVisible()
    assert "can't be reached" in page.trouble.text()
    said = [label.text() for label in page.findChildren(QLabel) if label.isVisible()]
    assert not any("Nothing was handed in" in words for words in said), "nobody knows"
    assert page.learners.table.rows.rowCount() == 0
    teacher.page.choose_source(server=False)
    teacher.settle()
    assert not page.trouble.isVisible()
    assert page.learners.table.rows.rowCount() == LEARNERS


def test_a_password_that_was_typed_and_kept_nowhere_is_read_with(
    teacher: Teacher, server: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[Address] = []

    def book(address: Address) -> ClassBook:
        asked.append(address)
        return ClassBook.of_logbook(server)

    monkeypatch.setattr(source, "server_book", book)
    typed = Address(SERVER, "secret")
    page = ResultsPage(teacher.frame, teacher.keeping, lambda: typed)
    teacher.qtbot.addWidget(page)
    teacher.frame.change_settings(replace(teacher.frame.settings, server=SERVER))
    page.choose_source(server=True)
    page.wait()
    assert asked == [typed]
    # It is of that server, and of no other.
    other = SERVER.replace("station@", "ann@")
    teacher.frame.change_settings(replace(teacher.frame.settings, server=other))
    page.refresh()
    teacher.qtbot.waitUntil(lambda: not page.busy, timeout=60_000)
    assert asked[-1] == Address(other)
    assert "secret" not in repr(page._source(teacher.keeping.path))


def test_a_paper_of_a_server_is_fetched_and_marked_beside_the_window(
    newcomer: Teacher, server: Path, results: list[Result], monkeypatch: pytest.MonkeyPatch
) -> None:
    page, may = newcomer.page, threading.Event()
    refusing: list[SchoolError] = []

    def slow(_: Address) -> ClassBook:
        assert threading.current_thread() is not threading.main_thread()
        may.wait(30)
        if refusing:
            raise refusing[0]
        return ClassBook.of_logbook(server)

    monkeypatch.setattr(source, "server_book", slow)
    newcomer.frame.change_settings(replace(newcomer.frame.settings, server=SERVER))
    may.set()
    page.choose_source(server=True)
    newcomer.settle()
    may.clear()
    page.open_paper(results[0].id)
    assert page.of_learner.paper is None, "it is not there yet, and the window goes on"
    may.set()
    newcomer.settle()
    assert page.of_learner.paper is not None
    may.clear()
    QTest.mouseClick(page.of_learner.marks.buttons["score"], Qt.MouseButton.LeftButton)
    dialog = newcomer.frame.dialogs[-1]
    assert isinstance(dialog, OverrideDialog)
    dialog.reason.setPlainText("seen again")
    dialog.by.setText("Instructor 2")
    refusing.append(SchoolError("timeout", "no answer"))
    dialog.save.click()
    assert not dialog.reason.isEnabled(), "what is being kept isn't changed meanwhile"
    assert "Being kept" in dialog.wrong.text()
    may.set()
    newcomer.settle()
    # What was typed is still there, and can be tried again.
    assert dialog in newcomer.frame.dialogs
    assert "took too long" in dialog.wrong.text()
    assert (dialog.reason.toPlainText(), dialog.reason.isEnabled()) == ("seen again", True)
    refusing.clear()
    dialog.save.click()
    newcomer.settle()
    assert dialog not in newcomer.frame.dialogs
    with closing(sqlite3.connect(server)) as plain:
        assert plain.execute("SELECT reason FROM overrides").fetchall() == [("seen again",)]


def test_a_mark_that_was_refused_after_its_dialog_was_left_is_told(
    newcomer: Teacher, server: Path, results: list[Result], monkeypatch: pytest.MonkeyPatch
) -> None:
    page = newcomer.page
    newcomer.frame.change_settings(replace(newcomer.frame.settings, server=SERVER))
    page.choose_source(server=True)
    newcomer.settle()
    page.open_paper(results[0].id)
    newcomer.settle()

    def refuse(_: Address) -> ClassBook:
        raise SchoolError("permission", "no")

    monkeypatch.setattr(source, "server_book", refuse)
    QTest.mouseClick(page.of_learner.marks.buttons["score"], Qt.MouseButton.LeftButton)
    dialog = newcomer.frame.dialogs[-1]
    assert isinstance(dialog, OverrideDialog)
    dialog.reason.setPlainText("seen again")
    dialog.by.setText("Instructor 2")
    dialog.by.setFocus()
    QTest.keyClick(dialog.by, Qt.Key.Key_Return)
    dialog.reject()
    newcomer.settle()
    assert "doesn't let this user" in newcomer.frame.dialogs[-1].windowTitle()


@pytest.mark.parametrize("kind", ["csv", "xapi"])
def test_what_a_server_sends_is_written_beside_the_window(
    newcomer: Teacher, server: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str
) -> None:
    page, may = newcomer.page, threading.Event()
    newcomer.frame.change_settings(replace(newcomer.frame.settings, server=SERVER))
    page.choose_source(server=True)
    newcomer.settle()

    def slow(_: Address) -> ClassBook:
        assert threading.current_thread() is not threading.main_thread()
        may.wait(30)
        return ClassBook.of_logbook(server)

    monkeypatch.setattr(source, "server_book", slow)
    to = tmp_path / "answers.out"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(to), ""))
    page.of_class.export_asked.emit(kind)
    assert page.busy
    assert page.saying.isVisible()
    assert not newcomer.frame.dialogs
    may.set()
    newcomer.settle()
    assert "It is written" in newcomer.frame.dialogs[-1].windowTitle()
    (written,) = tmp_path.glob("answers.out*")
    assert written.stat().st_size > 100
    # A server that has gone meanwhile is told of.
    newcomer.frame.dialogs[-1].reject()

    def gone(_: Address) -> ClassBook:
        raise SchoolError("unreachable", "no")

    monkeypatch.setattr(source, "server_book", gone)
    page.of_class.export_asked.emit(kind)
    newcomer.settle()
    assert "can't be reached" in newcomer.frame.dialogs[-1].windowTitle()
