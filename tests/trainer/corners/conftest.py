"""Four corners in a real window, driven by mouse and keys alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMainWindow, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from trainer.corners.pressing import Pressed
from trainer.corners.screen import CornersScreen
from trainer.corners.state import Corners
from trainer.settings import Settings
from trainer.window import WindowFrame


@dataclass
class Instructor:
    """Somebody before the four corners, with a mouse and a keyboard."""

    qtbot: QtBot
    window: QMainWindow
    frame: WindowFrame
    screen: CornersScreen

    @property
    def state(self) -> Corners:
        return self.screen.controller.state

    @property
    def corners(self) -> Pressed:
        self.screen.controller.flush()
        return self.screen.controller.corners

    def key(self, key: Qt.Key, *, control: bool = False) -> None:
        held = Qt.KeyboardModifier.ControlModifier if control else Qt.KeyboardModifier.NoModifier
        QTest.keyClick(self.window.windowHandle(), key, held)

    def click(self, widget: QWidget) -> None:
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)

    def drag(self, widget: QWidget, start: QPoint, *stops: QPoint) -> None:
        """Press on a widget, go to points of it, let go at the last; it may move meanwhile."""
        none, left = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.LeftButton
        far = [widget.mapToGlobal(stop) for stop in stops]
        QTest.mousePress(widget, left, none, start)
        for stop in far:
            QTest.mouseMove(widget, widget.mapFromGlobal(stop))
            self.qtbot.wait(25)
        QTest.mouseRelease(widget, left, none, widget.mapFromGlobal(far[-1]))

    def button(self, name: str) -> QPushButton:
        for button in self.window.findChildren(QPushButton):
            if name in (button.text(), button.accessibleName()) and button.isVisible():
                return button
        raise LookupError(f"no button {name!r} is to be seen")

    def arrive(self) -> None:
        """Wait until the talk has paused."""
        self.qtbot.waitUntil(lambda: not self.screen.talker.moving, timeout=20000)
        self.screen.controller.flush()


@pytest.fixture
def instructor(qtbot: QtBot) -> Iterator[Instructor]:
    window = QMainWindow()
    qtbot.addWidget(window)
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    frame = WindowFrame(window, Settings(first_start_seen=True, appearance="light"), holder)
    screen = CornersScreen(frame)
    column.addWidget(screen)
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    screen.setFocus()
    qtbot.wait(30)
    yield Instructor(qtbot, window, frame, screen)
    screen.talker.leave()
    window.close()
