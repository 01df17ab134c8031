"""What is kept over starts, in the whole program: trays, folders, the window, damaged settings."""

from __future__ import annotations

import json
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel
from pytestqt.qtbot import QtBot

from tests.trainer.test_tray_opener import tray_file
from trainer import late
from trainer.about import AboutDialog
from trainer.notices import Notice
from trainer.placement import Screen
from trainer.places import places
from trainer.settings import Settings, load_settings, save_settings
from trainer.standing import Standing
from trainer.window import WindowFrame

SEEN = Settings(first_start_seen=True, guide_done=True, language="en")


@pytest.fixture(autouse=True)
def hooks() -> Iterator[None]:
    before = sys.excepthook, threading.excepthook
    yield
    sys.excepthook, threading.excepthook = before


def opened(qtbot: QtBot, settings: Settings | None = None) -> tuple[late._Opening, WindowFrame]:
    """Open the program as somebody finds it who left those settings."""
    if settings is not None:
        save_settings(places().settings, settings)
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    opening = late._Opening(app, None)
    qtbot.addWidget(opening.window)
    opening.keep_on_screen()
    opening.show()
    qtbot.waitUntil(lambda: opening.settled, timeout=20000)
    assert opening.frame is not None
    return opening, opening.frame


def entries(frame: WindowFrame) -> list[str]:
    frame.recent_menu.fill()
    return [action.text() for action in frame.recent_menu.actions() if action.text()]


def test_trays_that_were_opened_are_offered_again(qtbot: QtBot, tmp_path: Path) -> None:
    opening, frame = opened(qtbot, SEEN)
    assert entries(frame) == ["None yet"]
    one, two = tray_file(tmp_path, 1), tray_file(tmp_path, 2)
    frame.tray_asked.emit(one)
    frame.tray_asked.emit(two)
    opening.finish()
    one.unlink()
    opening, frame = opened(qtbot)
    assert entries(frame) == ["&1  2", "&2  1 (not there)", "&Clear this list"]
    frame.recent_menu.actions()[0].trigger()
    assert opening.screen is not None
    assert len(opening.screen.course.tray.coupons) == 2
    opening.finish()


def test_one_that_is_gone_is_said_to_be_and_can_be_taken_off(qtbot: QtBot, tmp_path: Path) -> None:
    gone = tmp_path / "gone.tray.json"
    opening, frame = opened(qtbot, SEEN.with_recent(gone))
    entries(frame)
    frame.recent_menu.actions()[0].trigger()
    (notice,) = frame.dialogs
    assert isinstance(notice, Notice)
    assert any(str(gone) in label.text() for label in notice.findChildren(QLabel))
    assert entries(frame)[0].startswith("&1  gone"), "it may come back"
    button = next(b for b in notice.buttons.buttons() if b.text() == "Take it off the list")
    button.click()
    assert entries(frame) == ["None yet"]
    assert load_settings(places().settings).recent == ()
    opening.finish()


def test_the_list_is_cleared_on_demand(qtbot: QtBot, tmp_path: Path) -> None:
    opening, frame = opened(qtbot, SEEN.with_recent(tray_file(tmp_path, 1)))
    entries(frame)
    frame.recent_menu.actions()[-1].trigger()
    assert load_settings(places().settings).recent == ()
    opening.finish()


def test_two_of_one_name_are_told_apart(qtbot: QtBot, tmp_path: Path) -> None:
    for name in ("north", "south"):
        (tmp_path / name).mkdir()
    recent = SEEN.with_recent(tray_file(tmp_path / "north", 1))
    opening, frame = opened(qtbot, recent.with_recent(tray_file(tmp_path / "south", 1)))
    assert entries(frame)[:2] == ["&1  1  \u00b7  south", "&2  1  \u00b7  north"]
    opening.finish()


def test_the_dialog_begins_in_the_last_folder(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    began: list[str] = []
    tray = tray_file(tmp_path, 1)

    def choose(_parent: object, _title: str, folder: str, _kinds: str) -> tuple[str, str]:
        began.append(folder)
        return str(tray), ""

    monkeypatch.setattr(QFileDialog, "getOpenFileName", choose)
    opening, frame = opened(qtbot, SEEN)
    frame.open_action.trigger()
    frame.open_action.trigger()
    assert began == ["", str(tmp_path)]
    opening.finish()
    opening, frame = opened(qtbot)
    frame.open_action.trigger()
    assert began[-1] == str(tmp_path)
    opening.finish()


def test_the_window_comes_back_where_it_was(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    # The screen of the tests is smaller than the bench.
    monkeypatch.setattr(Standing, "_screens", lambda _: [Screen("one", 0, 0, 1600, 1000)])
    opening, _ = opened(qtbot, SEEN)
    opening.window.setGeometry(20, 40, 1100, 700)
    where = opening.window.geometry()
    opening.finish()
    opening.window.hide()
    opening, _ = opened(qtbot)
    assert opening.window.geometry() == where
    opening.window.showMaximized()
    opening.finish()
    kept = load_settings(places().settings).placement
    assert kept is not None
    assert kept.maximised
    opening.window.hide()
    opening, _ = opened(qtbot)
    assert opening.window.isMaximized()
    opening.finish()


def test_damaged_settings_are_said_and_kept_aside(qtbot: QtBot) -> None:
    file = places().settings
    file.parent.mkdir(parents=True)
    file.write_text("{half", encoding="utf-8")
    opening, frame = opened(qtbot)
    aside = file.with_name("settings.damaged.json")
    assert aside.read_text(encoding="utf-8") == "{half"
    qtbot.waitUntil(frame.band.isVisible)
    assert str(aside) in frame.band.words.text()
    frame.band.buttons[-1].click()
    assert not frame.band.isVisible()
    opening.finish()
    assert json.loads(file.read_text(encoding="utf-8"))["appearance"] == "system"


def test_about_says_where_everything_lies(qtbot: QtBot) -> None:
    opening, frame = opened(qtbot, SEEN)
    frame.about_action.trigger()
    (dialog,) = frame.dialogs
    assert isinstance(dialog, AboutDialog)
    words = "\n".join(label.text() for label in dialog.findChildren(QLabel))
    for place in (places().settings, places().calls, places().reports):
        assert str(place) in words
    assert "Python 3." in words
    dialog.reject()
    opening.finish()
