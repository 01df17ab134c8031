"""The bar stands in the first paint as it will stand in the window, in either language and look."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from trainer.arrangement import BAR
from trainer.assets import asset
from trainer.bar_recorder import _NoBooks, told_of
from trainer.first_bar import FORMAT, FirstBar, file_name
from trainer.language import LANGUAGES, Speech
from trainer.screens import screens
from trainer.settings import Appearance, Settings
from trainer.window import WindowFrame


@pytest.mark.parametrize("look", ["light", "dark"])
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_recording_is_of_the_bar(qapp: QApplication, language: str, look: Appearance) -> None:
    """If this fails, record it anew: python -m trainer.bar_recorder."""
    speech = Speech(qapp)
    speech.speak(language)
    try:
        fresh = told_of(look)
    finally:
        speech.speak("en")
    stored = json.loads((asset("stills") / file_name(language, look)).read_text(encoding="utf-8"))
    assert stored["words"] == fresh["words"]
    # What is worn when the recording is made may make a pixel or two of difference.
    widths = [one["from"] for one in fresh["bars"]]
    assert [one["from"] for one in stored["bars"]] == pytest.approx(widths, abs=12)


@pytest.mark.parametrize("width", [1280, 1024, 900])
@pytest.mark.parametrize("look", ["light", "dark"])
def test_nothing_jumps_when_the_real_bar_comes(qtbot: QtBot, look: Appearance, width: int) -> None:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(appearance=look), QWidget())
    for key, title, _ in screens(_NoBooks()):
        frame.add_screen(key, title, QWidget)
    window.resize(width, 600)
    window.grab()
    real = frame.bar.grab().toImage()
    first = QImage(width, BAR, QImage.Format.Format_RGB32)
    first.fill(real.pixelColor(width // 2, 3))
    painter = QPainter(first)
    FirstBar(asset("stills"), look, "en").replay(painter, width)
    painter.end()
    last = frame.bar.menus.geometry().left()
    wrong = [
        (x, y)
        for x in range(0, last, 2)
        for y in range(4, BAR - 2, 2)
        if abs(real.pixelColor(x, y).lightness() - first.pixelColor(x, y).lightness()) > 90
    ]
    inked = [
        (x, y)
        for x in range(0, last, 2)
        for y in range(4, BAR - 2, 2)
        if real.pixelColor(x, y) != real.pixelColor(width // 2, 3)
    ]
    assert len(inked) > 100
    assert len(wrong) < len(inked) / 8


def test_no_recording_is_no_reason_not_to_start(tmp_path: Path) -> None:
    with pytest.raises(OSError, match=file_name("en", "light")):
        FirstBar(tmp_path, "light", "en")
    (tmp_path / file_name("en", "light")).write_text('{"format": "x"}', encoding="utf-8")
    with pytest.raises(ValueError, match=FORMAT):
        FirstBar(tmp_path, "light", "en")


@pytest.mark.parametrize("language", LANGUAGES)
def test_tabs_menus_and_coupons_have_room_in_the_smallest_window(
    qapp: QApplication, language: str
) -> None:
    speech = Speech(qapp)
    speech.speak(language)
    try:
        window = QMainWindow()
        frame = WindowFrame(window, Settings(), QWidget())
        for key, title, _ in screens(_NoBooks()):
            frame.add_screen(key, title, QWidget)
        window.grab()
        assert frame.bar.widths[-1] <= 1024
        assert list(frame.bar.widths) == sorted(frame.bar.widths, reverse=True)
        window.deleteLater()
    finally:
        speech.speak("en")
