"""A bench in a real window, driven by mouse and keys alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMainWindow, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from exercises.tray import Tray, load_tray
from geometry.curves import Vec
from trainer.assets import asset
from trainer.bench.layout import BenchLayout
from trainer.bench.screen import BenchScreen
from trainer.bench.state import BenchState
from trainer.canvas.canvas import Canvas
from trainer.records import Records
from trainer.settings import Settings
from trainer.window import WindowFrame


@dataclass
class Person:
    """Somebody at the bench: sees the window, has a mouse and a keyboard."""

    qtbot: QtBot
    window: QMainWindow
    frame: WindowFrame
    screen: BenchScreen
    records: Records

    @property
    def state(self) -> BenchState:
        return self.screen.controller.state

    @property
    def canvas(self) -> Canvas:
        return self.screen.canvas

    def key(self, key: Qt.Key, *, shift: bool = False) -> None:
        held = Qt.KeyboardModifier.ShiftModifier if shift else Qt.KeyboardModifier.NoModifier
        QTest.keyClick(self.window.windowHandle(), key, held)

    def click(self, widget: QWidget) -> None:
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)

    def spot(self, at: Vec) -> QPoint:
        x, y = self.canvas.view.to_screen(at)
        return QPoint(round(x), round(y))

    def click_at(self, at: Vec) -> None:
        QTest.mouseClick(
            self.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, self.spot(at)
        )

    def drag(self, start: Vec, *stops: Vec) -> None:
        """Press at `start`, go through `stops` (mm), let go at the last."""
        self.press(self.canvas, self.spot(start))
        for stop in stops:
            QTest.mouseMove(self.canvas, self.spot(stop))
            self.qtbot.wait(12)
        self.let_go(self.canvas, self.spot(stops[-1]))

    def press(self, widget: QWidget, at: QPoint) -> None:
        none = Qt.KeyboardModifier.NoModifier
        QTest.mousePress(widget, Qt.MouseButton.LeftButton, none, at)

    def let_go(self, widget: QWidget, at: QPoint) -> None:
        none = Qt.KeyboardModifier.NoModifier
        QTest.mouseRelease(widget, Qt.MouseButton.LeftButton, none, at)

    def button(self, name: str) -> QPushButton:
        """The button that a screen reader calls `name`."""
        for button in self.window.findChildren(QPushButton):
            if button.accessibleName() == name and button.isVisible():
                return button
        raise LookupError(f"no button {name!r} is to be seen")

    def settle(self) -> None:
        """Wait until nothing moves by itself any more."""
        self.qtbot.waitUntil(lambda: not self.screen.controller.moving)


@pytest.fixture
def tray() -> Tray:
    return load_tray(asset("trays", "heron-footbridge.tray.json"))


@pytest.fixture
def person(qtbot: QtBot, tray: Tray, tmp_path: Path) -> Iterator[Person]:
    # The windows of tests before are gone for good: a change of theme would go through them all.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    window = QMainWindow()
    qtbot.addWidget(window)
    bench = BenchLayout(Canvas())
    frame = WindowFrame(window, Settings(first_start_seen=True), bench)
    records = Records(tmp_path / "calls.jsonl")
    screen = BenchScreen(frame, bench, tray, records)
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    bench.canvas.setFocus()
    yield Person(qtbot, window, frame, screen, records)
    window.close()
