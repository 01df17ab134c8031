"""An instructor on the screen of sittings, with a mouse and a keyboard."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TypeVar, cast

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QFileDialog,
    QLineEdit,
    QMainWindow,
    QMenu,
    QTableWidget,
    QWidget,
)
from pytestqt.qtbot import QtBot

from trainer.assets import asset
from trainer.language import Speech
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.notices import Notice
from trainer.records import Records
from trainer.settings import Settings
from trainer.sittings.class_page import ClassPage
from trainer.sittings.compose_page import ComposePage
from trainer.sittings.draft import Draft
from trainer.sittings.roll import candidates
from trainer.sittings.screen import SittingsScreen
from trainer.sittings.station import Station
from trainer.window import WindowFrame

PASSPHRASE = "three weathered herons"
HERON = asset("trays", "heron-footbridge.tray.json")

Dialog = TypeVar("Dialog")


@pytest.fixture(scope="session", autouse=True)
def english(qapp: QApplication) -> None:
    """One is told from several as in the program, whichever test comes first."""
    Speech(qapp).speak("en")


class Instructor:
    """Who composes sittings and has a class."""

    def __init__(
        self, qtbot: QtBot, frame: WindowFrame, screen: SittingsScreen, keeping: Keeping
    ) -> None:
        self.qtbot, self.frame, self.screen, self.keeping = qtbot, frame, screen, keeping
        self.window = frame.window

    @property
    def compose(self) -> ComposePage:
        return cast("ComposePage", self.screen.page("compose"))

    @property
    def room(self) -> ClassPage:
        """The page of the class, shown."""
        self.screen.show_page("class")
        return cast("ClassPage", self.screen.page("class"))

    @property
    def draft(self) -> Draft:
        return self.compose.controller.draft

    def click(self, widget: QWidget) -> None:
        assert widget.isVisible(), f"{widget} is not to be seen"
        assert widget.isEnabled(), f"{widget} is not to be used"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)

    def click_cell(self, table: QTableWidget, row: int, column: int, *, more: bool = False) -> None:
        """Click in the middle of a cell; with `more`, beside those that are chosen."""
        held = Qt.KeyboardModifier.ControlModifier if more else Qt.KeyboardModifier.NoModifier
        room = table.visualRect(table.model().index(row, column))
        assert table.viewport().rect().contains(room.center())
        QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, held, room.center())

    def key(self, key: Qt.Key, held: Qt.KeyboardModifier | None = None) -> None:
        """Press a key wherever the focus is."""
        QTest.keyClick(self.window.windowHandle(), key, held or Qt.KeyboardModifier.NoModifier)

    def control(self, key: Qt.Key) -> None:
        self.key(key, Qt.KeyboardModifier.ControlModifier)

    def fill(self, field: QLineEdit, text: str) -> None:
        """Type into a field, in place of what it had, and press Enter."""
        field.setFocus()
        field.selectAll()
        field.insert(text)
        QTest.keyClick(field, Qt.Key.Key_Return)

    def choose_in(self, menu: QMenu, *words: str) -> None:
        """Choose an entry of a menu, through its sub-menus."""
        for at, word in enumerate(words):
            menu.aboutToShow.emit()
            (action,) = [
                each for each in menu.actions()
                if each.text().replace("&", "").partition("\t")[0].startswith(word)
            ]  # fmt: skip
            if at == len(words) - 1:
                assert action.isEnabled()
                action.trigger()
                return
            found = action.menu()
            assert isinstance(found, QMenu)
            menu = found

    def dialog(self, kind: type[Dialog]) -> Dialog:
        """The dialog that is open."""
        shown = self.frame.dialogs[-1]
        assert isinstance(shown, kind), f"{shown.windowTitle()!r} is open"
        return shown

    def answer(self, words: str) -> None:
        """Press a button of the dialog that is open."""
        (button,) = [
            each
            for each in self.dialog(Notice).findChildren(QAbstractButton)
            if each.text() == words
        ]
        self.click(button)
        self.qtbot.wait(1)

    def wait_for_paper(self) -> None:
        self.qtbot.waitUntil(lambda: not self.compose.checking.busy, timeout=60_000)

    def seal_with(self, passphrase: str = PASSPHRASE) -> None:
        """Type a passphrase twice into the dialog that asks for it, and seal."""
        dialog = self.dialog(Notice)
        for field in dialog.findChildren(QLineEdit):
            field.setFocus()
            QTest.keyClicks(field, passphrase)
        self.answer("Seal and save...")
        self.qtbot.waitUntil(lambda: not self.compose.filing.busy, timeout=60_000)

    def add_heron(self) -> None:
        """The shipped tray's coupons, all of them, and a title."""
        self.compose.add_tray(HERON)
        self.fill(self.compose.parts.title, "Friday: railings")
        self.wait_for_paper()


def middle(widget: QWidget) -> QPoint:
    return widget.rect().center()


@pytest.fixture
def keeping(tmp_path: Path) -> Iterator[Keeping]:
    records = Records(tmp_path / "calls.jsonl")
    opened = Keeping(tmp_path / "logbook.sqlite3", records, bring_up_to_date, "Bench 1")
    assert opened.open()
    yield opened
    opened.close()


@pytest.fixture
def instructor(qtbot: QtBot, keeping: Keeping) -> Iterator[Instructor]:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True, appearance="light"), QWidget())
    station = Station(keeping.path)

    def make() -> QWidget:
        return SittingsScreen(
            frame,
            {
                "compose": lambda: ComposePage(frame, lambda: candidates(keeping)),
                "class": lambda: ClassPage(frame, keeping, station),
            },
        )

    frame.add_screen("sittings", "Sittings", make)
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    frame.show_screen("sittings")
    screen = frame.screens.currentWidget()
    assert isinstance(screen, SittingsScreen)
    made = Instructor(qtbot, frame, screen, keeping)
    qtbot.wait(30)
    yield made
    for dialog in frame.dialogs:
        dialog.reject()
    made.compose.checking.stop()
    made.compose.controller.mark_saved(made.draft)
    station.stop()
    window.close()


@pytest.fixture
def saves(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> list[Path]:
    """Where the dialog of a file to save leads: the last of these."""
    places = [tmp_path / "friday.sitting"]
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(places[-1]), ""))
    return places
