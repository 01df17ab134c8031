"""Large trays: the window lives while one is read, a cue says so, and it can be called off."""

from __future__ import annotations

import json
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QLabel, QMainWindow
from pytestqt.qtbot import QtBot

from exercises.tray import Tray, load_tray
from trainer.notices import FaultsDialog
from trainer.settings import Settings
from trainer.tray_opener import LARGE, TrayOpener
from trainer.window import WindowFrame


class Slow:
    """Reads a tray when it is told to go on."""

    def __init__(self) -> None:
        self.goes_on = threading.Event()

    def __call__(self, path: Path) -> Tray:
        self.goes_on.wait(20)
        return load_tray(path)


@pytest.fixture
def frame(qtbot: QtBot) -> Iterator[WindowFrame]:
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True), QLabel("bench"))
    window.show()
    yield frame
    window.close()


def tray_file(folder: Path, count: int) -> Path:
    bead = {"leg_base": 8, "leg_upright": 6.7}
    coupons = [
        {"id": f"c-{n}", "title": "A title that takes room " * 3, "bead": bead,
         "callout": {"size": 8}}
        for n in range(count)
    ]  # fmt: skip
    head = {"format": "toe-and-throat/tray", "version": 1, "title": "Many"}
    path = folder / f"{count}.tray.json"
    path.write_text(json.dumps({**head, "coupons": coupons}), encoding="utf-8")
    return path


def test_a_small_tray_is_there_at_once(frame: WindowFrame, tmp_path: Path) -> None:
    opener = TrayOpener(frame)
    seen: list[Tray] = []
    opener.opened.connect(lambda tray, _: seen.append(tray))
    opener.open(tray_file(tmp_path, 2))
    assert len(seen[0].coupons) == 2
    assert not opener.busy


def test_the_window_lives_while_a_large_one_is_read(
    frame: WindowFrame, tmp_path: Path, qtbot: QtBot
) -> None:
    path = tray_file(tmp_path, 700)
    assert path.stat().st_size > LARGE
    slow, turns = Slow(), []
    opener = TrayOpener(frame, slow)
    timer = QTimer(frame)
    timer.timeout.connect(lambda: turns.append(1))
    timer.start(1)
    opener.open(path)
    qtbot.waitUntil(frame.band.isVisible)
    assert frame.band.words.text() == "Opening 700\u2026"
    assert len(turns) > 10
    with qtbot.waitSignal(opener.opened) as told:
        slow.goes_on.set()
    assert told.args is not None
    assert len(told.args[0].coupons) == 700
    assert not frame.band.isVisible()


def test_it_can_be_called_off(frame: WindowFrame, tmp_path: Path, qtbot: QtBot) -> None:
    slow = Slow()
    opener = TrayOpener(frame, slow)
    seen: list[Tray] = []
    opener.opened.connect(lambda tray, _: seen.append(tray))
    opener.open(tray_file(tmp_path, 700))
    qtbot.waitUntil(frame.band.isVisible)
    frame.band.buttons[0].click()
    assert not frame.band.isVisible()
    slow.goes_on.set()
    qtbot.waitUntil(lambda: not opener.busy)
    assert seen == []


def test_the_last_that_was_asked_for_counts(
    frame: WindowFrame, tmp_path: Path, qtbot: QtBot
) -> None:
    slow = Slow()
    opener = TrayOpener(frame, slow)
    opener.open(tray_file(tmp_path, 700))
    opener.open(tray_file(tmp_path, 701))
    with qtbot.waitSignal(opener.opened) as told:
        slow.goes_on.set()
    assert told.args is not None
    assert len(told.args[0].coupons) == 701
    assert not opener.busy


def test_a_broken_large_one_says_why(frame: WindowFrame, tmp_path: Path, qtbot: QtBot) -> None:
    path = tmp_path / "large.tray.json"
    path.write_text("{" + " " * LARGE, encoding="utf-8")
    opener = TrayOpener(frame)
    opener.open(path)
    qtbot.waitUntil(lambda: bool(frame.dialogs))
    assert isinstance(frame.dialogs[0], FaultsDialog)


def test_one_without_coupons_says_what_would_be_right(frame: WindowFrame, tmp_path: Path) -> None:
    opener = TrayOpener(frame)
    opener.open(tray_file(tmp_path, 0))
    (dialog,) = frame.dialogs
    words = [label.text() for label in dialog.findChildren(QLabel)]
    assert "/coupons" in words
    assert any("1" in word for word in words[words.index("/coupons") :])


def test_the_end_of_the_program_waits_for_what_is_read(frame: WindowFrame, tmp_path: Path) -> None:
    slow = Slow()
    opener = TrayOpener(frame, slow)
    opener.open(tray_file(tmp_path, 700))
    slow.goes_on.set()
    opener.wait()
    assert not any(thread.name == "loading" for thread in threading.enumerate())
