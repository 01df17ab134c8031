"""The window's bar and what is below it by keyboard: one stop for all tabs, Enter for buttons."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QHBoxLayout,
    QLineEdit,
    QMainWindow,
    QPushButton,
    QWidget,
)
from pytestqt.qtbot import QtBot

from trainer.landing import Landing
from trainer.settings import Settings
from trainer.window import WindowFrame

Key = Qt.Key


class Page(QWidget):
    """Two buttons, a box and a field; the second button has the keys at first."""

    def __init__(self) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        self.before, self.usual = QPushButton("Before"), QPushButton("Usual")
        self.box, self.field = QCheckBox("Box"), QLineEdit()
        self.pressed: list[str] = []
        for button in (self.before, self.usual):
            button.clicked.connect(lambda _=False, made=button: self.pressed.append(made.text()))
        for widget in (self.before, self.usual, self.box, self.field):
            row.addWidget(widget)
        Landing(self, lambda: self.usual)


@pytest.fixture
def frame(qtbot: QtBot) -> WindowFrame:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True), Page())
    for key, title in (("one", "One"), ("two", "Two")):
        frame.add_screen(key, title, Page)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    frame.show_screen("one")
    qtbot.wait(10)
    return frame


def page(frame: WindowFrame, key: str) -> Page:
    found = frame.make_screen(key)
    assert isinstance(found, Page)
    return found


def press(frame: WindowFrame, key: Qt.Key) -> QWidget:
    """Press a key, and return what has the focus then."""
    QTest.keyClick(frame.window.windowHandle(), key)
    now = QApplication.focusWidget()
    assert now is not None
    return now


def test_a_page_hands_the_keys_on(frame: WindowFrame) -> None:
    assert QApplication.focusWidget() is page(frame, "one").usual


def test_tab_comes_to_what_stands_before_it(frame: WindowFrame) -> None:
    one = page(frame, "one")
    stops = [press(frame, Key.Key_Tab) for _ in range(5)]
    assert stops == [one.box, one.field, frame.bar.tabs[1], one.before, one.usual]


def test_the_keys_are_where_they_were(frame: WindowFrame) -> None:
    page(frame, "one").field.setFocus()
    frame.show_screen("two")
    assert QApplication.focusWidget() is page(frame, "two").usual
    frame.show_screen("one")
    assert QApplication.focusWidget() is page(frame, "one").field


def test_they_are_not_where_they_can_be_no_more(frame: WindowFrame) -> None:
    one = page(frame, "one")
    one.field.setFocus()
    frame.show_screen("two")
    one.field.setEnabled(False)
    frame.show_screen("one")
    assert QApplication.focusWidget() is one.usual


@pytest.mark.parametrize("key", ["bench", "one", "two"])
def test_tab_stops_at_the_tab_of_the_screen_that_is_shown(frame: WindowFrame, key: str) -> None:
    frame.show_screen(key)
    stops = {press(frame, Key.Key_Tab) for _ in range(8)}
    assert [tab for tab in frame.bar.tabs if tab in stops] == [
        tab for tab in frame.bar.tabs if tab.isChecked()
    ]


def test_arrows_go_on_to_the_other_tabs(frame: WindowFrame) -> None:
    frame.bar.tabs[1].setFocus(Qt.FocusReason.TabFocusReason)
    press(frame, Key.Key_Right)
    assert frame.shown_screen == "two"


@pytest.mark.parametrize("key", [Key.Key_Return, Key.Key_Enter])
def test_enter_presses_a_button_and_nothing_else(frame: WindowFrame, key: Qt.Key) -> None:
    one = page(frame, "one")
    for widget in (one.usual, one.box, one.field):
        widget.setFocus()
        press(frame, key)
    assert one.pressed == ["Usual"]
    assert not one.box.isChecked()


def test_enter_that_is_held_presses_once(frame: WindowFrame) -> None:
    one = page(frame, "one")
    one.usual.setFocus()
    none = Qt.KeyboardModifier.NoModifier
    for again in (False, True, True):
        for kind in (QEvent.Type.ShortcutOverride, QEvent.Type.KeyPress):
            event = QKeyEvent(kind, Key.Key_Return, none, "\r", again)
            QApplication.sendEvent(one.usual, event)
    assert one.pressed == ["Usual"]


def test_enter_that_ends_a_field_presses_nothing_after_it(frame: WindowFrame) -> None:
    one = page(frame, "one")
    one.field.returnPressed.connect(one.usual.setFocus)
    one.field.setFocus()
    assert press(frame, Key.Key_Return) is one.usual
    assert one.pressed == []
    press(frame, Key.Key_Return)
    assert one.pressed == ["Usual"]
