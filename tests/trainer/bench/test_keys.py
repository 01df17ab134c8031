"""The bench's one table of keys: each key works, each thing that can be done has one."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLabel

from tests.trainer.bench.conftest import Person
from trainer.bench.hands import _WAYS
from trainer.bench.keys import KEYS
from trainer.bench.steps import MOVES, STEPS
from trainer.key_table import KeyGroup, KeyRow, KeyTable
from trainer.notices import KeysDialog

Key = Qt.Key
CONTROL = Qt.KeyboardModifier.ControlModifier


def asked(person: Person, monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, bool]]:
    """What keys ask the screen for from now on, and whether it knew what to do."""
    heard: list[tuple[str, bool]] = []
    real = person.screen.do

    def do(name: str, shift: bool) -> bool:
        known = real(name, shift)
        heard.append((name, known))
        return known

    monkeypatch.setattr(person.screen._keys, "_do", do)
    return heard


def press_all(person: Person, rows: tuple[KeyRow, ...]) -> list[str]:
    """Press every key of some rows, one after another; the names that they stand for."""
    names = []
    for row in rows:
        for key, name in row.does:
            person.canvas.setFocus()
            held = CONTROL if row.control else Qt.KeyboardModifier.NoModifier
            QTest.keyClick(person.window.windowHandle(), key, held)
            names.append(name)
    return names


def rows_of(title: str) -> tuple[KeyRow, ...]:
    """The rows of a group of the sheet."""
    return next(rows for name, rows in KEYS.sheet if name == title)


@pytest.mark.parametrize("title", ["Handling the leaf", "The call", "The picture"])
def test_every_key_of_the_sheet_does_something(
    person: Person, monkeypatch: pytest.MonkeyPatch, title: str
) -> None:
    person.key(Key.Key_8)
    heard = asked(person, monkeypatch)
    names = press_all(person, rows_of(title))
    assert heard == [(name, True) for name in names]
    assert names


def test_every_key_after_a_call_does_something(
    person: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_X, Key.Key_A, Key.Key_Return):
        person.key(key)
    assert person.state.phase == "debrief"
    heard = asked(person, monkeypatch)
    names = press_all(person, rows_of("After a call"))
    assert heard == [(name, True) for name in names]


def test_everything_that_can_be_done_to_a_leaf_has_a_key_and_a_button(person: Person) -> None:
    buttons = set(person.screen.rack_panel.steps.buttons)
    assert buttons == {step.name for step in (*MOVES, *STEPS)}
    assert {*buttons, *person.screen.hands._steps, *_WAYS} <= set(KEYS.names)


def test_every_button_with_a_key_says_it_when_it_is_pointed_at(person: Person) -> None:
    """The tip that comes up over a button ends with the key that stands on it."""
    found = 0
    for button in person.window.findChildren(QAbstractButton):
        keys = [
            label.text()
            for label in button.findChildren(QLabel)
            if label.property("tone") == "key" and label.text()
        ]
        if button.isVisible() and keys:
            found += 1
            assert button.toolTip().endswith(keys[0]), button.accessibleName()
    assert found > 15


def test_two_meanings_of_one_key_are_refused() -> None:
    first, second = (KeyRow("F", what, ((Key.Key_F, what),)) for what in ("over", "swap"))
    with pytest.raises(ValueError, match="both over and swap"):
        KeyTable("Keys", (("Leaf", (first, second)),))
    held = KeyRow("Ctrl+F", "find", ((Key.Key_F, "find"),), control=True)
    assert KeyTable("Keys", (("Leaf", (first, held)),)).names == ("over", "find")


def test_the_sheet_shows_all_of_it_and_closes_by_its_key(person: Person) -> None:
    person.key(Key.Key_F1)
    (dialog,) = person.frame.dialogs
    assert isinstance(dialog, KeysDialog)
    shown = {label.text() for label in dialog.findChildren(QLabel)}
    for _, groups in person.frame.key_sheet():
        for group in groups:
            assert group.title in shown
            assert {words for row in group.rows for words in row} <= shown
    QTest.keyClick(dialog, Key.Key_Escape)
    assert person.frame.dialogs == ()


def test_what_holds_everywhere_is_told_as_the_menus_have_it(person: Person) -> None:
    (everywhere,) = person.frame.key_sheet()[-1][1]
    assert isinstance(everywhere, KeyGroup)
    rows = dict(everywhere.rows)
    assert rows["F1"] == "Keys"
    assert rows["Ctrl+O"] == "Open tray"


def test_enter_presses_the_button_that_has_the_focus(person: Person) -> None:
    for key in (Key.Key_X, Key.Key_A):
        person.key(key)
    refer = person.screen.call_panel.dispositions.buttons["refer"]
    refer.setFocus()
    person.key(Key.Key_Return)
    assert person.state.disposition == "refer"
    assert person.state.phase == "handling"
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"
