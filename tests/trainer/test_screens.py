"""Screens beside the bench: tabs, keys, made when first shown."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from trainer.corners.screen import CornersScreen
from trainer.settings import Settings
from trainer.window import WindowFrame

Key = Qt.Key


@pytest.fixture
def frame(qtbot: QtBot) -> Iterator[WindowFrame]:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True), QLabel("bench"))
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    yield frame
    window.close()


def press(frame: WindowFrame, key: Key) -> None:
    QTest.keyClick(frame.window.windowHandle(), key, Qt.KeyboardModifier.ControlModifier)


def test_a_screen_is_made_when_it_is_first_shown_and_kept(frame: WindowFrame) -> None:
    made: list[QWidget] = []

    def make() -> QWidget:
        made.append(QLabel("other"))
        return made[-1]

    frame.add_screen("other", "Other", make)
    assert made == []
    press(frame, Key.Key_2)
    assert frame.shown_screen == "other"
    press(frame, Key.Key_1)
    assert frame.shown_screen == "bench"
    press(frame, Key.Key_2)
    assert len(made) == 1


def test_tabs_show_and_say_where_one_is(frame: WindowFrame) -> None:
    seen: list[str] = []
    frame.screen_shown.connect(seen.append)
    frame.add_screen("other", "Other", lambda: QLabel("other"))
    bench, other = frame.bar.tabs
    assert [tab.isChecked() for tab in (bench, other)] == [True, False]
    QTest.mouseClick(other, Qt.MouseButton.LeftButton)
    assert seen == ["other"]
    assert [tab.isChecked() for tab in (bench, other)] == [False, True]
    assert not frame.bar.chooser.isVisible(), "coupons are the bench's"
    QTest.mouseClick(bench, Qt.MouseButton.LeftButton)
    assert frame.bar.chooser.isVisible()
    assert "Ctrl+2" in other.toolTip()


def test_leaving_a_screen_that_fills_all_brings_the_bar_back(
    frame: WindowFrame, qtbot: QtBot
) -> None:
    frame.add_screen("corners", "Four corners", lambda: CornersScreen(frame))
    press(frame, Key.Key_2)
    QTest.keyClick(frame.window.windowHandle(), Key.Key_F11)
    qtbot.waitUntil(frame.window.isFullScreen)
    assert not frame.bar.isVisible()
    press(frame, Key.Key_1)
    qtbot.waitUntil(frame.bar.isVisible)
    qtbot.waitUntil(lambda: not frame.window.isFullScreen())
