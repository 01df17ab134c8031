"""The reference in a real window, driven by mouse and keys alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from trainer.reference.screen import ReferenceScreen
from trainer.settings import Settings
from trainer.window import WindowFrame


@dataclass
class Reader:
    """Somebody who looks something up."""

    qtbot: QtBot
    window: QMainWindow
    frame: WindowFrame
    screen: ReferenceScreen

    @property
    def shown(self) -> str:
        """The key of the entry that is read."""
        return self.screen.state.shown

    def key(self, key: Qt.Key, held: Qt.KeyboardModifier | None = None) -> None:
        QTest.keyClick(self.window.windowHandle(), key, held or Qt.KeyboardModifier.NoModifier)

    def type(self, words: str) -> None:
        for letter in words:
            QTest.keyClick(self.window.windowHandle(), Qt.Key(ord(letter.upper())))

    def click(self, widget: QWidget, at: QPoint | None = None) -> None:
        none = Qt.KeyboardModifier.NoModifier
        where = at or widget.rect().center()
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton, none, where)

    def click_entry(self, key: str) -> None:
        """Click a line of the list."""
        contents = self.screen.contents
        index = contents.index_of(key)
        contents.scrollTo(index)
        self.click(contents.viewport(), contents.visualRect(index).center())


@pytest.fixture
def reader(qtbot: QtBot) -> Iterator[Reader]:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(
        window, Settings(first_start_seen=True, appearance="light"), QLabel("bench")
    )
    frame.add_screen("reference", "Reference", lambda: ReferenceScreen(frame))
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    frame.show_screen("reference")
    screen = frame.make_screen("reference")
    assert isinstance(screen, ReferenceScreen)
    qtbot.wait(30)
    yield Reader(qtbot, window, frame, screen)
    window.close()
