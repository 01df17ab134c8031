"""The logbook opens beside the window when no hand is at work, and remembers who was there."""

from __future__ import annotations

import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from tests.trainer.test_kept import SEEN, opened
from trainer.logbook.keeping import Keeping
from trainer.logbook.screen import LogbookScreen
from trainer.logbook_opener import LogbookOpener
from trainer.places import places
from trainer.records import Records
from trainer.screens import load_logbook
from trainer.settings import load_settings

Mouse = Qt.MouseButton


@pytest.fixture(autouse=True)
def hooks() -> Iterator[None]:
    before = sys.excepthook, threading.excepthook
    yield
    sys.excepthook, threading.excepthook = before


@pytest.fixture
def loads() -> list[str]:
    """The threads that a logbook was opened in."""
    return []


@pytest.fixture
def opener(qapp: QApplication, tmp_path: Path, loads: list[str]) -> Iterator[LogbookOpener]:
    def load(aside: Records) -> Keeping:
        loads.append(threading.current_thread().name)
        return load_logbook(tmp_path / "logbook.sqlite", aside, None, "First")

    opener = LogbookOpener(Records(tmp_path / "calls.jsonl"), load)
    opener.findChildren(QTimer)[0].setInterval(20)
    yield opener
    opener.end()


def test_it_waits_while_a_button_is_held(
    opener: LogbookOpener, loads: list[str], qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    held = [Mouse.LeftButton]
    asked: list[Qt.MouseButton] = []

    def buttons() -> Qt.MouseButton:
        asked.append(held[-1])
        return held[-1]

    monkeypatch.setattr(QGuiApplication, "mouseButtons", buttons)
    opener.begin_soon()
    assert loads == []
    qtbot.waitUntil(lambda: len(asked) > 2)
    assert loads == []
    held.append(Mouse.NoButton)
    qtbot.waitUntil(lambda: isinstance(opener.relay.keeper, Keeping), timeout=20000)
    assert loads == ["loading"]


def test_who_asks_before_has_it_and_it_opens_once(
    opener: LogbookOpener, loads: list[str], qtbot: QtBot
) -> None:
    opener.begin_soon()
    assert opener.keeping.learner is not None
    assert opener.keeping.learner.name == "First"
    assert opener.relay.keeper is opener.keeping
    qtbot.wait(60)
    assert loads == ["loading"]


def test_one_that_ends_at_once_opens_nothing(
    opener: LogbookOpener, loads: list[str], qtbot: QtBot
) -> None:
    opener.begin_soon()
    opener.end()
    qtbot.wait(60)
    assert loads == []


def test_whoever_was_at_the_bench_is_there_again(qtbot: QtBot) -> None:
    opening, frame = opened(qtbot, SEEN)
    frame.show_screen("logbook")
    (screen,) = opening.window.findChildren(LogbookScreen)
    logbook = screen.keeping.logbook
    assert logbook is not None
    # Not the first by name, who would be there anyway.
    other = logbook.add_learner("Zoe's own")
    screen.dealing.choose(other.id)
    assert load_settings(places().settings).learner == other.id
    opening.finish()
    opening, frame = opened(qtbot)
    assert opening._keeping().learner == other
    opening.finish()


def test_it_goes_on_in_another_language_and_a_drill_ends(qtbot: QtBot) -> None:
    opening, frame = opened(qtbot, SEEN)
    frame.show_screen("logbook")
    (before,) = opening.window.findChildren(LogbookScreen)
    other = before.keeping.logbook.add_learner("Zoe's own") if before.keeping.logbook else None
    assert other is not None
    before.dealing.choose(other.id)
    opening._drill()
    (dialog,) = frame.dialogs
    dialog.reject()
    bench, drilling = opening.screen, opening._drilling
    assert bench is not None
    assert drilling is not None
    tray = bench.course.tray
    drilling.begin(drilling._recipe, seed=5)
    assert bench.course.tray is not tray
    frame.show_screen("logbook")
    frame.language_actions["es"].trigger()
    qtbot.waitUntil(lambda: opening.screen is not bench)
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    (after,) = opening.window.findChildren(LogbookScreen)
    assert after is not before
    qtbot.waitUntil(after.isVisible)
    assert after.keeping.learner == other
    assert opening.screen is not None
    assert opening.screen.course.tray is tray
    assert opening.frame is not None
    assert opening.frame.band.said == ()
    opening.frame.language_actions["en"].trigger()
    qtbot.waitUntil(lambda: opening._speech is not None and opening._speech.language == "en")
    opening.finish()
