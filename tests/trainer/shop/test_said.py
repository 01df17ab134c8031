"""The shop in pseudo-English, and by the keyboard: nothing is left out, nothing is out of reach."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from tests.trainer.said import left_out, said_by, tray_words
from tests.trainer.shop.conftest import Maker, open_shop
from tests.trainer.test_focus import check
from trainer.language import PSEUDO, Speech
from trainer.settings import Appearance
from trainer.shop.state import new_shop

OURS = ["coupon-1", "coupon", *tray_words(new_shop().tray)]
"""The id of a plain coupon, and what the rule sets say."""


@pytest.fixture
def pseudo(qapp: QApplication, qtbot: QtBot, unsaved: Path) -> Iterator[Maker]:
    """The shop in pseudo-English, which is spoken before any widget is made."""
    before, speech = QLocale(), Speech(qapp)
    speech.speak(PSEUDO)
    maker = open_shop(qtbot, unsaved)
    yield maker
    maker.screen.working.stop()
    maker.screen.filing.leave()
    maker.window.close()
    speech.speak("en")
    QLocale.setDefault(before)


def test_nothing_is_left_untranslated(pseudo: Maker) -> None:
    screen = pseudo.screen
    for key, value in (("undercut_base.depth", 0.5), ("overlap_upright", 1.0), ("crown", -9.0)):
        screen.choose(key, value)
    screen.do("spatter")
    screen.do("hint")
    screen.choose("callout.length", 50.0)
    for form in range(3):
        for results in range(3):
            screen.side.forms.setCurrentIndex(form)
            screen.side.results.setCurrentIndex(results)
            screen.working.finish()
            pseudo.qtbot.wait(1)
            assert left_out(said_by(pseudo.window), OURS) == []
    screen.controller.turn("crown", 90.0)
    screen.do("face")
    screen.view.choose("trace.8")
    screen.show_state()
    assert left_out(said_by(pseudo.window), OURS) == []


def test_the_dialogs_are_translated(pseudo: Maker) -> None:
    pseudo.screen.do("add dice")
    assert left_out(said_by(pseudo.frame.dialogs[-1]), OURS) == []
    pseudo.frame.dialogs[-1].reject()
    pseudo.screen.choose("leg_base", 9.0)
    pseudo.screen.do("new")
    assert left_out(said_by(pseudo.frame.dialogs[-1]), OURS) == []


@pytest.mark.parametrize("look", ["light", "dark"])
def test_every_stop_of_tab_shows(maker: Maker, look: Appearance) -> None:
    maker.frame.change_settings(replace(maker.frame.settings, appearance=look))
    maker.screen.do("duplicate")
    maker.screen.working.finish()
    maker.frame.bar.hide()  # what stands over every screen has tests of its own
    maker.screen.view.canvas.setFocus()
    stops = check(maker.window)
    assert len(stops) > 40
    assert maker.screen.view.canvas in stops
    assert set(maker.screen.view.grips.values()) <= set(stops)
