"""The logbook's screen: what it says, draws, exports and does, and what it says when it can't."""

from __future__ import annotations

import csv
import json
import random
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QLocale, QSize
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from tests.trainer.logbook.test_findings import call_of
from trainer.logbook.dealing import AskDialog
from trainer.logbook.findings import findings_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.plot_view import image_of
from trainer.logbook.plots import PLOTS, style_of
from trainer.logbook.screen import LogbookScreen
from trainer.logbook.sheets import Sheet, html_sheet
from trainer.logbook.words import plot_words, sentences, trouble_words
from trainer.look.tokens import DARK, LIGHT
from trainer.notices import Notice
from trainer.records import Records
from trainer.settings import Settings
from trainer.window import WindowFrame


class Person:
    """Somebody at the logbook."""

    def __init__(self, folder: Path, qtbot: QtBot, calls: int) -> None:
        self.folder = folder
        self.qtbot = qtbot
        self.keeping = Keeping(
            folder / "logbook.sqlite3",
            Records(folder / "calls.jsonl"),
            bring_up_to_date,
            "Learner 1",
        )
        self.keeping.open()
        if calls:
            rng = random.Random(5)
            assert self.keeping.logbook is not None
            assert self.keeping.learner is not None
            entries = [call_of(number, 0.15, 0.15, rng) for number in range(calls)]
            self.keeping.logbook.add_all(self.keeping.learner.id, entries)
        self.window = QMainWindow()
        self.window.resize(1280, 800)
        qtbot.addWidget(self.window)
        self.frame = WindowFrame(self.window, replace(Settings(), appearance="light"), QWidget())
        self.screen = LogbookScreen(self.frame, self.keeping)
        self.frame.add_screen("logbook", "Logbook", lambda: self.screen)
        self.window.show()
        self.frame.show_screen("logbook")
        QApplication.processEvents()

    def texts(self) -> str:
        shown = (label for label in self.screen.findChildren(QLabel) if label.isVisible())
        return "\n".join(label.text() for label in shown)

    def dialog(self) -> Notice:
        (dialog,) = (d for d in self.screen.findChildren(Notice) if d.isVisible())
        return dialog

    def answer(self, name: str, text: str) -> None:
        self.screen.people.asked.emit(name)
        dialog = self.dialog()
        assert isinstance(dialog, AskDialog)
        dialog.field.setText(text)
        dialog.button.click()
        QApplication.processEvents()

    def ids(self) -> int:
        with closing(sqlite3.connect(self.keeping.path)) as plain:
            return int(plain.execute("SELECT count(*) FROM attempts").fetchone()[0])


@pytest.fixture
def open_with(tmp_path: Path, qtbot: QtBot) -> Iterator[Callable[[int], Person]]:
    made: list[Person] = []

    def opened(calls: int) -> Person:
        made.append(Person(tmp_path, qtbot, calls))
        return made[-1]

    QLocale.setDefault(QLocale("en"))
    yield opened
    for one in made:
        one.keeping.close()


def save_to(monkeypatch: pytest.MonkeyPatch, path: Path) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))


def test_it_says_what_the_calls_say(open_with: Callable[[int], Person]) -> None:
    one = open_with(200)
    text = one.texts()
    assert "You call welds short up to 0.1" in text
    assert "above the limit" in text
    assert "bad welds" in text
    assert one.screen.findings is not None
    for card in one.screen._cards:
        assert card.picture.accessibleDescription()


def test_a_new_learner_sees_what_will_come(open_with: Callable[[int], Person]) -> None:
    one = open_with(0)
    assert "Learner 1 has made no call yet" in one.texts()
    assert not any(card.frame.isVisible() for card in one.screen._cards)


def test_calls_made_meanwhile_are_there_when_it_is_shown_again(
    open_with: Callable[[int], Person],
) -> None:
    one = open_with(0)
    rng = random.Random(1)
    one.frame.show_screen("bench")
    for number in range(30):
        one.keeping.add(call_of(number, 0.0, 0.2, rng))
    one.frame.show_screen("logbook")
    assert "has made no call" not in one.texts()
    assert one.screen.findings is not None
    assert len(one.screen.findings.calls) == 30


def test_learners_are_added_renamed_chosen_and_erased(open_with: Callable[[int], Person]) -> None:
    one = open_with(40)
    one.answer("add", "Bench 2")
    assert one.keeping.learner is not None
    assert one.keeping.learner.name == "Bench 2"
    assert "Bench 2 has made no call" in one.texts()
    one.answer("rename", "Bench 7")
    names = [one.screen.people.list.item(row).text() for row in range(2)]
    assert names == ["Bench 7", "Learner 1"]
    one.screen.people.list.setCurrentRow(1)
    assert one.keeping.learner.name == "Learner 1"
    assert "You call welds" in one.texts()
    one.answer("erase", "Learner 1")
    assert one.ids() == 0
    assert one.keeping.learner.name == "Bench 7"


def test_nobody_is_erased_by_mistake(open_with: Callable[[int], Person]) -> None:
    one = open_with(5)
    one.answer("erase", "learner")
    assert one.ids() == 5
    dialog = one.dialog()
    assert isinstance(dialog, AskDialog)
    assert not dialog.button.isEnabled()


def test_a_name_that_is_taken_is_told(open_with: Callable[[int], Person]) -> None:
    one = open_with(0)
    one.answer("add", "Learner 1")
    assert "taken" in one.dialog().windowTitle()


def test_exports_are_what_independent_readers_read(
    open_with: Callable[[int], Person], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = open_with(60)
    out = tmp_path / "out"
    out.mkdir()
    for name, file in (("csv", "a.csv"), ("xapi", "a.jsonl"), ("pdf", "a.pdf"),
                       ("html", "a.html"), ("back up", "a.sqlite3")):  # fmt: skip
        save_to(monkeypatch, out / file)
        one.screen.people.asked.emit(name)
        one.dialog().close()
        QApplication.processEvents()
    rows = list(csv.reader((out / "a.csv").read_text("utf-8-sig").splitlines()))
    assert len(rows) == 61
    lines = (out / "a.jsonl").read_text("utf-8").splitlines()
    assert len({json.loads(line)["id"] for line in lines}) == 60
    pages = PdfReader(out / "a.pdf").pages
    text = "\n".join(page.extract_text() for page in pages).replace("\t", " ")
    assert "Logbook of Learner 1" in text
    assert "Where you draw the line" in text
    assert "not an instrument" in text
    assert sum(len(page.images) for page in pages) == sum(1 for _ in PLOTS)
    with closing(sqlite3.connect(out / "a.sqlite3")) as copy:
        assert copy.execute("SELECT count(*) FROM attempts").fetchone() == (60,)
    assert not list(out.glob("*.new")) + list(out.glob(".*.new"))


def test_a_folder_that_cannot_be_written_is_told_and_nothing_is_left(
    open_with: Callable[[int], Person], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = open_with(20)
    for name in ("csv", "xapi", "pdf", "html", "back up"):
        file = tmp_path / "none" / "here" / f"{name}.x"
        (tmp_path / "none").unlink(missing_ok=True)
        (tmp_path / "none").write_bytes(b"a file, no folder")
        save_to(monkeypatch, file)
        one.screen.people.asked.emit(name)
        dialog = one.dialog()
        assert "written" in dialog.windowTitle()
        dialog.close()
        QApplication.processEvents()
    assert (tmp_path / "none").read_bytes() == b"a file, no folder"


def test_a_backup_is_put_back_and_a_bad_one_is_not(
    open_with: Callable[[int], Person], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = open_with(30)
    copy = tmp_path / "copy.sqlite3"
    save_to(monkeypatch, copy)
    one.screen.people.asked.emit("back up")
    one.dialog().close()
    one.answer("erase", "Learner 1")
    assert one.ids() == 0
    one.screen.dealing.put_back(copy)
    one.dialog().close()
    assert one.ids() == 30
    assert "You call welds" in one.texts()
    copy.write_bytes(b"no logbook " * 500)
    one.screen.dealing.put_back(copy)
    assert "damaged" in one.dialog().windowTitle()
    assert one.ids() == 30


def test_a_damaged_logbook_is_told_and_can_be_tried_again(
    open_with: Callable[[int], Person],
) -> None:
    one = open_with(30)
    good = one.keeping.path
    one.keeping.close()
    sound = good.read_bytes()
    good.write_bytes(b"what is this " * 400)
    one.keeping.open()
    one.keeping.add(call_of(99, 0.0, 0.2, random.Random(1)))
    one.screen.show_all()
    text = one.texts()
    assert "damaged" in text
    assert "Practice goes on" in text
    assert "1 call(s) kept aside." in text or "1 call kept aside." in text
    assert one.screen.again.isVisible()
    good.write_bytes(sound)
    one.screen.again.click()
    assert "damaged" not in one.texts()
    assert one.ids() == 31


def test_a_clock_that_was_set_back_is_told(open_with: Callable[[int], Person]) -> None:
    one = open_with(0)
    rng = random.Random(1)
    one.keeping.add(call_of(900, 0.0, 0.2, rng))
    one.screen.show_all()
    assert "clock" not in one.texts()
    one.keeping.add(call_of(1, 0.0, 0.2, rng))
    one.screen.show_all()
    assert "The clock of this machine was set back" in one.texts()
    assert not one.screen.again.isVisible()


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
@pytest.mark.parametrize("calls", [0, 3, 200])
def test_every_picture_draws_in_both_themes_whatever_there_is(
    calls: int, theme: object, open_with: Callable[[int], Person]
) -> None:
    one = open_with(calls)
    assert one.keeping.logbook is not None
    assert one.keeping.learner is not None
    found = findings_of(one.keeping.logbook.tallies(one.keeping.learner.id))
    style = style_of(theme, plot_words())  # type: ignore[arg-type]
    for name in PLOTS:
        image = image_of(name, found, style, QSize(400, 240), 2.0)
        assert (image.width(), image.height()) == (800, 480)
        assert colours(image) >= (2 if calls == 0 else 4)
        assert sentences(name, found, "in")


def colours(image: QImage) -> int:
    return len({image.pixel(x, y) for x in range(0, 800, 3) for y in range(0, 480, 3)})


class Outline(HTMLParser):
    """The tags of a document, each closed by its own."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append(tag)
        if tag != "meta":
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_the_sheet_for_screen_readers_is_sound_and_says_what_the_pictures_show(
    open_with: Callable[[int], Person],
) -> None:
    one = open_with(80)
    assert one.screen.findings is not None
    sheet = Sheet("A <b>learner</b> & co", date(2026, 6, 1), one.screen.findings, "mm", "en")
    text = html_sheet(sheet)
    outline = Outline()
    outline.feed(text)
    assert outline.open == []
    assert outline.seen.count("h1") == 1
    assert outline.seen.count("h2") == len(PLOTS)
    assert outline.seen.count("table") >= 2
    assert "A &lt;b&gt;learner&lt;/b&gt; &amp; co" in text
    assert 'lang="en"' in text


@pytest.mark.parametrize(
    "trouble",
    ["newer", "damaged", "locked", "full", "unwritable", "no such learner", "name"],
)
def test_every_trouble_has_words(trouble: str) -> None:
    first, more = trouble_words(trouble, "the file")
    assert first.endswith(".")
    assert "the file" in more
