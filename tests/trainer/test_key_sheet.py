"""The sheet of keys scrolls up and down, never sideways. No source."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from trainer.key_sheet import KeySheet
from trainer.key_table import KeyGroup
from trainer.notices import KeysDialog
from trainer.settings import Settings
from trainer.window import WindowFrame

_GROUPS = tuple(
    KeyGroup(
        f"Group {index}", (("Shift+F5", "do what is said in a few words, and more of it"),) * 6
    )
    for index in range(4)
)
_SCREENS = (("Bench", _GROUPS), ("Four corners", _GROUPS), ("", _GROUPS[:1]))


@pytest.fixture
def sheet(qtbot: QtBot) -> KeySheet:
    made = KeySheet(_SCREENS)
    qtbot.addWidget(made)
    return made


@pytest.mark.parametrize(("wide", "columns"), [(1200, 2), (880, 2), (700, 1), (430, 1)])
def test_it_never_scrolls_sideways(sheet: KeySheet, qtbot: QtBot, wide: int, columns: int) -> None:
    sheet.resize(wide, 400)
    sheet.show()
    qtbot.waitExposed(sheet)
    assert sheet.columns == columns
    assert sheet.horizontalScrollBar().maximum() == 0


def test_it_unfolds_again(sheet: KeySheet, qtbot: QtBot) -> None:
    sheet.show()
    for wide, columns in ((430, 1), (1200, 2), (430, 1)):
        sheet.resize(wide, 400)
        qtbot.wait(1)
        assert sheet.columns == columns


def test_the_dialog_begins_with_two_and_can_be_made_narrow(qtbot: QtBot) -> None:
    dialog = KeysDialog(_SCREENS)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitExposed(dialog)
    assert dialog.sheet.columns == 2 or dialog.width() < dialog.sheet.wanted().width()
    dialog.resize(480, 500)
    qtbot.wait(1)
    assert dialog.width() <= 560
    assert dialog.sheet.columns == 1
    assert dialog.sheet.horizontalScrollBar().maximum() == 0


def test_a_group_that_stands_alone_is_parted_in_two(qtbot: QtBot) -> None:
    rows = tuple((f"F{index}", f"thing {index}") for index in range(1, 8))
    sheet = KeySheet([("", (KeyGroup("Everywhere", rows),))])
    qtbot.addWidget(sheet)
    sheet.resize(1000, 400)
    sheet.show()
    qtbot.waitExposed(sheet)
    left = {label.text(): label.x() for label in sheet.findChildren(QLabel)}
    assert {words for row in rows for words in row} <= set(left)
    assert left["F4"] == left["F1"] < left["F5"] == left["F7"]


def test_home_and_end_go_to_either_end(sheet: KeySheet, qtbot: QtBot) -> None:
    sheet.resize(900, 300)
    sheet.show()
    qtbot.waitExposed(sheet)
    bar = sheet.verticalScrollBar()
    QTest.keyClick(sheet, Qt.Key.Key_End)
    assert bar.value() == bar.maximum() > 0
    QTest.keyClick(sheet, Qt.Key.Key_Home)
    assert bar.value() == 0


def test_the_keys_of_the_screen_that_is_shown_come_first(qtbot: QtBot) -> None:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True), QWidget())
    frame.add_screen("shop", "Shop", QWidget)
    for title in ("Bench", "From a photo", "Shop", "Shop: photo"):
        frame.add_keys(title, lambda: ())
    window.show()
    assert next(title for title, _ in frame.key_sheet()) == "Bench"
    frame.show_screen("shop")
    assert [title for title, _ in frame.key_sheet()] == [
        "Shop", "Shop: photo", "Bench", "From a photo", "",
    ]  # fmt: skip
