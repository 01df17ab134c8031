"""Tab comes to all that can be done on the screens beside the bench, and each screen is entered.

Source: WCAG 2.2, 2.1.1 (all by keyboard), 2.4.3 (in an order that makes sense).
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMainWindow, QScrollArea, QWidget
from pytestqt.qtbot import QtBot

from tests.trainer.test_focus import names
from trainer.logbook.keeping import Keeping
from trainer.records import Records
from trainer.reference.article import Article
from trainer.screen_kinds import ShowsPages
from trainer.screens import load_logbook, load_station, screens
from trainer.settings import Settings
from trainer.sittings.station import Station
from trainer.window import WindowFrame

_MOST = 150


class Kept:
    """A logbook and a station in a folder."""

    def __init__(self, folder: Path) -> None:
        path = folder / "logbook.sqlite3"
        self._keeping = load_logbook(path, Records(folder / "calls"), None, "Learner 1")
        self._station = load_station(path)

    @property
    def keeping(self) -> Keeping:
        return self._keeping

    @property
    def station(self) -> Station:
        return self._station


@pytest.fixture
def frame(qtbot: QtBot, tmp_path: Path) -> Iterator[WindowFrame]:
    """A window with all screens but the bench."""
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True, appearance="light"), QWidget())
    kept = Kept(tmp_path)
    for key, title, make in screens(kept):
        frame.add_screen(key, title, partial(make, frame))
    window.resize(1280, 720)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    yield frame
    if kept.keeping.logbook is not None:
        kept.keeping.logbook.close()


def stops_of(frame: WindowFrame) -> list[QWidget]:
    """What Tab stops at; a page of words has a stop for each of its links."""
    QTest.qWait(30)
    frame.window.activateWindow()
    QTest.qWait(10)
    stops: list[QWidget] = []
    for _ in range(_MOST):
        QTest.keyClick(frame.window.windowHandle(), Qt.Key.Key_Tab)
        now = QApplication.focusWidget()
        assert now is not None, f"Tab led nowhere after {names(stops)[-1:]}"
        if now in stops and not isinstance(now, Article):
            return stops
        stops.append(now)
    raise AssertionError(f"Tab never comes round: {names(stops)}")


def missed(frame: WindowFrame, stops: list[QWidget]) -> list[str]:
    """What is seen and would have Tab stop at it, and is never come to."""
    return [
        name
        for each in frame.window.findChildren(QWidget)
        if each.isVisible()
        and each.isEnabled()
        and each.focusPolicy() & Qt.FocusPolicy.TabFocus
        and each.focusProxy() is None
        and each not in stops
        for name in names([each])
    ]


@pytest.mark.parametrize("key", ["corners", "reference", "shop", "logbook"])
def test_tab_comes_to_all_of_a_screen(frame: WindowFrame, key: str) -> None:
    frame.show_screen(key)
    screen, entered = frame.make_screen(key), QApplication.focusWidget()
    assert screen is not None
    assert entered is not None
    assert key == "corners" or screen is not entered, "something on it shows that it has the keys"
    assert missed(frame, stops_of(frame)) == []


@pytest.mark.parametrize("name", ["compose", "take", "class", "results"])
def test_tab_comes_to_all_of_a_page_of_the_sittings(frame: WindowFrame, name: str) -> None:
    frame.show_screen("sittings")
    screen: object = frame.make_screen("sittings")
    assert isinstance(screen, ShowsPages)
    screen.show_page(name)
    assert missed(frame, stops_of(frame)) == []


def test_an_empty_logbook_has_no_stop_that_does_nothing(frame: WindowFrame) -> None:
    frame.show_screen("logbook")
    assert QScrollArea not in {type(stop) for stop in stops_of(frame)}
