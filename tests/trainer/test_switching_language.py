"""Another language is spoken at once, and nothing that lay on the bench is lost."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QLocale, Qt
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QMenu
from pytestqt.qtbot import QtBot

from trainer import late
from trainer.corners.screen import CornersScreen
from trainer.language import Speech

Key = Qt.Key


@pytest.fixture
def opening(qtbot: QtBot, qapp: QApplication, home: Path) -> Iterator[late._Opening]:
    """The program as it opens in English, for somebody who has been here before."""
    hook, locale = sys.excepthook, QLocale()
    file = home / "config" / "toe-and-throat" / "settings.json"
    file.parent.mkdir(parents=True)
    kept = {"first_start_seen": True, "guide_done": True, "language": "en"}
    file.write_text(json.dumps(kept), encoding="utf-8")
    opening = late._Opening(qapp, None)
    qtbot.addWidget(opening.window)
    opening.show()
    qtbot.waitUntil(lambda: opening.settled, timeout=20000)
    yield opening
    opening.finish()
    Speech(qapp).speak("en")
    if opening._speech is not None:
        opening._speech.speak("en")
    QLocale.setDefault(locale)
    sys.excepthook = hook


def speak(opening: late._Opening, qtbot: QtBot, tag: str) -> None:
    before, frame = opening.screen, opening.frame
    assert frame is not None
    frame.language_actions[tag].trigger()
    qtbot.waitUntil(lambda: opening.screen is not before)
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def texts(opening: late._Opening) -> set[str]:
    return {label.text() for label in opening.window.findChildren(QLabel)}


def test_everything_is_said_anew_and_what_lies_there_stays(
    opening: late._Opening, qtbot: QtBot
) -> None:
    assert opening.screen is not None
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_X):
        QTest.keyClick(opening.screen.canvas, key)
    opening.screen.go_to(2)
    opening.screen.go_to(0)
    state = opening.screen.controller.state
    assert state.readings
    assert "Job card" in texts(opening)
    speak(opening, qtbot, "es")
    assert opening.screen.controller.state.readings == state.readings
    assert opening.screen.controller.state.pose == state.pose
    assert opening.screen.controller.state.face == "convex"
    said = texts(opening)
    assert "Ficha de trabajo" in said
    assert "Job card" not in said
    speak(opening, qtbot, "en")
    assert "Job card" in texts(opening)


def test_the_view_and_the_way_back_stay(opening: late._Opening, qtbot: QtBot) -> None:
    assert opening.screen is not None
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D):
        QTest.keyClick(opening.screen.canvas, key)
    opening.screen.do("zoom in", shift=False)
    view, readings = opening.screen.canvas.view, opening.screen.controller.state.readings
    assert readings
    speak(opening, qtbot, "es")
    canvas = opening.screen.canvas
    qtbot.waitUntil(lambda: canvas.view.scale == pytest.approx(view.scale))
    assert canvas.view.centre == pytest.approx(view.centre)
    for _ in range(3):
        QTest.keyClick(canvas, Key.Key_Z)
    assert opening.screen.controller.state.readings == ()
    assert opening.screen.controller.state.leaf is None


def test_every_screen_that_was_made_goes_on_even_unseen(
    opening: late._Opening, qtbot: QtBot
) -> None:
    assert opening.frame is not None
    opening.frame.show_screen("corners")
    corners = opening.window.findChildren(CornersScreen)[0]
    corners.controller.set_value("leg_base", 9.0, "test")
    opening.frame.show_screen("bench")
    speak(opening, qtbot, "es")
    assert opening.frame.shown_screen == "bench"
    (again,) = opening.window.findChildren(CornersScreen)
    assert again is not corners
    again.controller.undo()
    assert again.controller.state.leg_base != 9.0


def test_only_the_new_actions_have_the_shortcuts(opening: late._Opening, qtbot: QtBot) -> None:
    def shortcuts() -> list[str]:
        actions = opening.window.findChildren(QAction)
        return sorted(action.shortcut().toString() for action in actions)

    before = shortcuts()
    assert any(before)
    speak(opening, qtbot, "es")
    assert shortcuts() == before


def test_each_menu_letter_leads_to_one_thing(opening: late._Opening, qtbot: QtBot) -> None:
    speak(opening, qtbot, "es")
    menus = opening.window.findChildren(QMenu)
    assert len(menus) >= 4
    for menu in menus:
        words = [action.text() for action in menu.actions()]
        letters = [letter.lower() for text in words for letter in re.findall(r"&(\w)", text)]
        assert len(letters) == len(set(letters)), words


def test_the_choice_is_kept(opening: late._Opening, qtbot: QtBot, home: Path) -> None:
    speak(opening, qtbot, "es")
    file = home / "config" / "toe-and-throat" / "settings.json"
    assert json.loads(file.read_text(encoding="utf-8"))["language"] == "es"


def test_the_four_corners_go_on_as_they_were(opening: late._Opening, qtbot: QtBot) -> None:
    assert opening.frame is not None
    opening.frame.show_screen("corners")
    corners = opening.window.findChildren(CornersScreen)[0]
    corners.controller.set_value("leg_base", 9.0, "test")
    speak(opening, qtbot, "es")
    assert opening.frame.shown_screen == "corners"
    (again,) = opening.window.findChildren(CornersScreen)
    assert again.controller.state.leg_base == 9.0


def test_a_coupon_can_be_called_in_the_other_language(opening: late._Opening, qtbot: QtBot) -> None:
    speak(opening, qtbot, "es")
    assert opening.screen is not None
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_X, Key.Key_A, Key.Key_Return):
        QTest.keyClick(opening.screen.canvas, key)
    assert opening.screen.controller.state.phase == "debrief"
    assert any("Lo correcto: Aportar metal" in text for text in texts(opening))
