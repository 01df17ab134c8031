"""Opening and saving: whatever the disk does, it is said, and nothing is lost."""

from __future__ import annotations

import errno
import json
import os
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from exercises.tray import load_tray
from tests.trainer.shop.conftest import Maker, open_shop
from trainer.assets import asset
from trainer.notices import FaultsDialog
from trainer.shop.files import SaveError

SHIPPED = asset("trays", "heron-footbridge.tray.json")


@pytest.fixture
def choose(monkeypatch: pytest.MonkeyPatch) -> Callable[[Path | None], None]:
    """Say which file is chosen the next time that one is asked for."""

    def chosen(path: Path | None) -> None:
        for name in ("getOpenFileName", "getSaveFileName"):
            answer = (str(path) if path is not None else "", "")
            monkeypatch.setattr(QFileDialog, name, lambda *_, answer=answer: answer)

    return chosen


@pytest.fixture
def tray(tmp_path: Path) -> Path:
    """A tray of one's own."""
    path = tmp_path / "mine.tray.json"
    path.write_bytes(SHIPPED.read_bytes())
    return path


def change(maker: Maker, by: float = 0.1) -> None:
    leg = maker.coupon.section.bead.leg_base
    maker.screen.choose("leg_base", round(leg + by, 3))


def test_a_tray_is_opened_changed_and_saved(maker: Maker, tray: Path) -> None:
    maker.screen.open_path(tray)
    assert len(maker.shop.coupons) == 26
    assert maker.screen.tools.state.accessibleName() == "mine.tray.json \u00b7 saved"
    change(maker)
    assert maker.screen.tools.state.accessibleName() == "mine.tray.json \u00b7 changed"
    maker.screen.do("save")
    assert maker.screen.tools.state.accessibleName() == "mine.tray.json \u00b7 saved"
    assert load_tray(tray).coupons[0].section.bead.leg_base == 8.5
    maker.screen.do("undo")
    assert maker.screen.controller.dirty
    maker.screen.do("redo")
    assert not maker.screen.controller.dirty, "it is again what is on the disk"


def test_what_is_saved_unchanged_is_the_same_file(
    maker: Maker, tmp_path: Path, choose: Callable[[Path | None], None]
) -> None:
    maker.screen.open_path(SHIPPED)
    choose(tmp_path / "copy")
    maker.screen.do("save as")
    copy = tmp_path / "copy.tray.json"
    assert load_tray(copy) == load_tray(SHIPPED)
    assert maker.screen.filing.path == copy


def test_a_new_tray_asks_where_to(
    maker: Maker, tmp_path: Path, choose: Callable[[Path | None], None]
) -> None:
    change(maker)
    choose(None)
    maker.screen.do("save")
    assert maker.screen.controller.dirty
    choose(tmp_path / "new.tray.json")
    maker.screen.do("save")
    assert load_tray(tmp_path / "new.tray.json").coupons[0].id == "coupon-1"


def test_a_changed_tray_is_not_given_up_unasked(maker: Maker, tray: Path) -> None:
    maker.screen.open_path(tray)
    change(maker)
    maker.screen.do("new")
    assert maker.question.windowTitle() == "Save the open tray first?"
    maker.answer("Cancel")
    assert len(maker.shop.coupons) == 26
    maker.screen.do("new")
    maker.answer("Save")
    assert len(maker.shop.coupons) == 1
    assert load_tray(tray).coupons[0].section.bead.leg_base == 8.5
    change(maker)
    maker.screen.open_path(tray)
    maker.answer("Give the changes up")
    assert len(maker.shop.coupons) == 26


def test_a_tray_from_a_newer_version_is_refused_in_words(maker: Maker, tmp_path: Path) -> None:
    newer = tmp_path / "newer.tray.json"
    document = json.loads(SHIPPED.read_text(encoding="utf-8"))
    newer.write_text(json.dumps({**document, "version": 99}), encoding="utf-8")
    change(maker)
    before = maker.shop
    maker.screen.open_path(newer)
    assert isinstance(maker.frame.dialogs[-1], FaultsDialog)
    assert maker.shop is before


def test_a_file_that_another_program_changed_is_not_overwritten_unasked(
    maker: Maker, tray: Path, tmp_path: Path, choose: Callable[[Path | None], None]
) -> None:
    maker.screen.open_path(tray)
    change(maker)
    theirs = tray.read_bytes().replace(b"Heron", b"Crane")
    tray.write_bytes(theirs)
    maker.screen.do("save")
    assert maker.question.windowTitle() == "The file has changed meanwhile"
    maker.answer("Cancel")
    assert tray.read_bytes() == theirs
    assert maker.screen.controller.dirty
    maker.screen.do("save")
    choose(tmp_path / "other.tray.json")
    maker.answer("Save under another name")
    assert tray.read_bytes() == theirs
    assert not maker.screen.controller.dirty
    maker.screen.open_path(tray)
    change(maker)
    tray.write_bytes(theirs.replace(b"Crane", b"Stork"))
    maker.screen.do("save")
    maker.answer("Save over it")
    assert load_tray(tray).coupons[0].section.bead.leg_base == 8.5


def test_a_file_that_was_only_touched_has_not_changed(maker: Maker, tray: Path) -> None:
    maker.screen.open_path(tray)
    change(maker)
    os.utime(tray, (1, 1))
    maker.screen.do("save")
    assert maker.frame.dialogs == ()
    assert not maker.screen.controller.dirty


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.EACCES, "Nobody may write there"),
        (errno.EROFS, "Nobody may write there"),
        (errno.ENOSPC, "The disk is full"),
        (errno.EDQUOT, "The disk is full"),
        (errno.EBUSY, "Another program holds the file"),
        (errno.ENOENT, "Its folder is not there any more"),
        (errno.EIO, "The system says"),
    ],
)
def test_what_can_not_be_saved_is_said_and_kept(
    maker: Maker,
    tray: Path,
    tmp_path: Path,
    choose: Callable[[Path | None], None],
    monkeypatch: pytest.MonkeyPatch,
    number: int,
    words: str,
) -> None:
    maker.screen.open_path(tray)
    change(maker)
    old = tray.read_bytes()

    def refused(path: Path, data: bytes) -> None:
        raise OSError(number, os.strerror(number), str(path))

    with monkeypatch.context() as patched:
        patched.setattr("exercises.tray.replace_file", refused)
        maker.screen.do("save")
        said = maker.question.findChildren(type(maker.screen.tray.count))
        assert any(words in label.text() for label in said)
        maker.answer("Try again")
    assert maker.question.windowTitle() == "The tray could not be saved"
    assert tray.read_bytes() == old
    assert maker.screen.controller.dirty
    choose(tmp_path / "elsewhere.tray.json")
    maker.answer("Save under another name")
    assert load_tray(tmp_path / "elsewhere.tray.json").coupons[0].section.bead.leg_base == 8.5
    assert not maker.screen.controller.dirty


def test_a_protected_file_is_not_replaced(maker: Maker, tray: Path) -> None:
    maker.screen.open_path(tray)
    change(maker)
    old = tray.read_bytes()
    tray.chmod(0o444)
    maker.screen.do("save")
    labels = maker.question.findChildren(type(maker.screen.tray.count))
    assert any("protected against changes" in label.text() for label in labels)
    maker.answer("Cancel")
    assert tray.read_bytes() == old


def test_a_full_disk_stops_no_work_and_is_said_where_one_works(
    maker: Maker, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr("trainer.shop.journal.os.fsync", full)
        change(maker)
        assert maker.screen.tray.trouble.isVisible()
        assert "No space left on device" in maker.screen.tray.trouble.text()
        change(maker)
    assert maker.coupon.section.bead.leg_base == 8.2
    change(maker)
    assert not maker.screen.tray.trouble.isVisible()


# --- after a bad end ----------------------------------------------------------------------------


def test_the_next_start_offers_what_was_not_saved(
    qtbot: QtBot, unsaved: Path, tray: Path, maker: Maker
) -> None:
    maker.screen.open_path(tray)
    change(maker)
    change(maker)
    maker.screen.do("duplicate")
    assert len(list(unsaved.iterdir())) == 1
    maker.screen.filing.leave()  # all that a process leaves whose end nobody heard of
    again = open_shop(qtbot, unsaved)
    try:
        assert again.question.windowTitle() == "Unsaved coupons from an earlier start"
        again.answer("Take it up again")
        assert again.screen.filing.path == tray
        assert again.coupon.id == "hf-27"
        assert again.screen.controller.dirty
        again.screen.do("undo")
        again.screen.do("undo")
        assert again.coupon.section.bead.leg_base == 8.5
        again.screen.do("save")
        assert again.frame.dialogs == (), "the file is what it was when it was opened"
        assert list(unsaved.iterdir()) == []
    finally:
        again.screen.working.stop()
        again.screen.filing.leave()
        again.window.close()


def test_what_is_left_can_be_thrown_away_or_wait(qtbot: QtBot, unsaved: Path, maker: Maker) -> None:
    change(maker)
    maker.screen.filing.leave()
    again = open_shop(qtbot, unsaved)
    again.answer("Later")
    assert len(list(unsaved.iterdir())) == 1
    again.screen.filing.offer_recovery()
    again.answer("Throw it away")
    assert list(unsaved.iterdir()) == []
    assert again.frame.dialogs == ()
    again.screen.working.stop()
    again.window.close()


def test_a_clean_end_leaves_nothing(maker: Maker, tray: Path, unsaved: Path) -> None:
    maker.screen.open_path(tray)
    change(maker)
    maker.screen.do("save")
    maker.screen.filing.leave()
    assert not unsaved.exists() or list(unsaved.iterdir()) == []


def test_another_window_at_the_same_tray_is_told_of(
    qtbot: QtBot, unsaved: Path, tray: Path, maker: Maker
) -> None:
    maker.screen.open_path(tray)
    change(maker)
    other = open_shop(qtbot, unsaved)
    other.screen.open_path(tray)
    assert other.frame.dialogs[-1].windowTitle() == "This tray is being worked on elsewhere"
    other.screen.working.stop()
    other.screen.filing.leave()
    other.window.close()


# --- two trays ----------------------------------------------------------------------------------


def test_a_tray_is_split_in_two_and_merged_again(
    maker: Maker, tray: Path, tmp_path: Path, choose: Callable[[Path | None], None]
) -> None:
    maker.screen.open_path(tray)
    maker.screen.do("split")
    assert len(maker.shop.coupons) == 26, "nothing would be left before the first"
    maker.screen._open(20)
    choose(tray)
    maker.screen.do("split")
    assert len(maker.shop.coupons) == 26, "not over the tray that is open"
    choose(tmp_path / "rest.tray.json")
    maker.screen.do("split")
    assert len(maker.shop.coupons) == 20
    assert len(load_tray(tmp_path / "rest.tray.json").coupons) == 6
    maker.screen.do("merge")
    assert len(maker.shop.coupons) == 26
    assert len(maker.shop.ids) == 26
    maker.screen.do("merge")
    assert len(maker.shop.ids) == 32
    assert "6" in maker.screen.saying.text()
    maker.screen.do("undo")
    maker.screen.do("undo")
    maker.screen.do("undo")
    assert len(maker.shop.coupons) == 26
    assert not maker.screen.controller.dirty


def test_a_broken_tray_is_not_merged(
    maker: Maker, tmp_path: Path, choose: Callable[[Path | None], None]
) -> None:
    broken = tmp_path / "broken.tray.json"
    broken.write_text('{"format": "toe-and-throat/tray", "version": 1}', encoding="utf-8")
    choose(broken)
    maker.screen.do("merge")
    assert isinstance(maker.frame.dialogs[-1], FaultsDialog)
    assert len(maker.shop.coupons) == 1


def test_a_save_error_names_the_file() -> None:
    assert "x.tray.json" in str(SaveError(Path("x.tray.json"), "full", "no space"))
