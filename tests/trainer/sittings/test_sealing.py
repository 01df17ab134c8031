"""Sealing what is composed, opening it again, and never losing it without a word."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from exercises.sitting.plan_file import plan_as_dict
from tests.trainer.sittings.conftest import HERON, PASSPHRASE, Instructor
from trainer.notices import FaultsDialog, Notice
from trainer.sealing.key import Cost, Key
from trainer.sealing.result_files import write_sealed
from trainer.shop.question import Question
from trainer.sittings.compose_page import ComposePage
from trainer.sittings.files import open_sitting
from trainer.sittings.seal_dialog import SealDialog, UnsealDialog

Keys = Qt.Key


def ready(instructor: Instructor) -> None:
    """Two coupons of the shipped tray, so that little is written."""
    instructor.add_heron()
    instructor.click(instructor.compose.part.none)
    for row in (0, 2):
        instructor.click_cell(instructor.compose.part.table, row, 0)
    instructor.wait_for_paper()


def test_a_passphrase_is_typed_twice_and_long_enough(instructor: Instructor) -> None:
    ready(instructor)
    instructor.click(instructor.compose.seal)
    dialog = instructor.dialog(SealDialog)
    assert not dialog.seal.isEnabled()
    QTest.keyClicks(dialog.first, "herons")
    assert "at least 8" in dialog.hint.text()
    QTest.keyClicks(dialog.again, "herons")
    assert not dialog.seal.isEnabled(), "too short, however often"
    QTest.keyClicks(dialog.first, " 22")
    assert "Weak" in dialog.hint.text()
    assert "not the same" in dialog.hint.text()
    assert not dialog.seal.isEnabled()
    QTest.keyClicks(dialog.again, " 22")
    assert dialog.seal.isEnabled()
    assert dialog.first.echoMode() == dialog.first.EchoMode.Password
    dialog.seen.click()
    assert dialog.first.echoMode() == dialog.first.EchoMode.Normal


def test_one_is_suggested_that_can_be_read_and_taken(instructor: Instructor) -> None:
    ready(instructor)
    instructor.click(instructor.compose.seal)
    dialog = instructor.dialog(SealDialog)
    instructor.click(dialog.suggest)
    assert dialog.seal.isEnabled()
    assert dialog.again.text() == dialog.first.text()
    assert dialog.again.echoMode() == dialog.again.EchoMode.Normal


def test_the_dialog_says_what_the_seal_does_not_do(instructor: Instructor) -> None:
    ready(instructor)
    instructor.click(instructor.compose.seal)
    dialog = instructor.dialog(SealDialog)
    said = " ".join(label.text() for label in dialog.findChildren(type(dialog.hint)))
    for words in ("learner's own machine", "photographed", "forgotten", "older copy"):
        assert words in said
    shown = [label for label in dialog.findChildren(type(dialog.hint)) if label.isVisible()]
    assert all(label.height() >= label.heightForWidth(label.width()) for label in shown)


def test_it_is_sealed_opened_and_sealed_again(instructor: Instructor, saves: list[Path]) -> None:
    ready(instructor)
    page = instructor.compose
    instructor.click(page.seal)
    instructor.seal_with()
    sealed = open_sitting(saves[0], PASSPHRASE)
    assert sealed.plan == instructor.draft.plan
    assert not page.controller.dirty
    assert "sealed" in page.bar.state.accessibleName()
    assert instructor.frame.settings.sittings == (str(saves[0]),)
    # One learner more is the same sitting still, under the same passphrase.
    page.entrants.ticked.emit(["K-07"], True)
    assert "changed since" in page.bar.state.accessibleName()
    page.part.table.setFocus()
    instructor.control(Keys.Key_S)
    instructor.qtbot.waitUntil(lambda: not page.filing.busy, timeout=60_000)
    again = open_sitting(saves[0], PASSPHRASE)
    assert [one.code for one in again.plan.entrants] == ["K-07"]
    assert again.plan.id == sealed.plan.id
    # Other coupons are another one, and that is said first.
    instructor.click_cell(page.part.table, 4, 0)
    instructor.wait_for_paper()
    saves.append(saves[0].with_name("other.sitting"))
    page.part.table.setFocus()
    instructor.control(Keys.Key_S)
    dialog = instructor.dialog(SealDialog)
    said = [label.text() for label in dialog.findChildren(type(dialog.hint))]
    assert any("another sitting" in words for words in said)
    instructor.seal_with()
    other = open_sitting(saves[1], PASSPHRASE)
    assert other.plan.id != sealed.plan.id
    assert other.plan.count == 3
    assert not page.controller.dirty


def test_a_sealed_one_is_opened_by_its_passphrase_alone(
    instructor: Instructor, saves: list[Path]
) -> None:
    ready(instructor)
    instructor.click(instructor.compose.seal)
    instructor.seal_with()
    plan = instructor.draft.plan
    page = instructor.compose
    page.do("new")
    assert instructor.draft.count == 0
    instructor.choose_in(page.bar.file.menu(), "Recent sittings", "1  friday")
    dialog = instructor.dialog(UnsealDialog)
    QTest.keyClicks(dialog.field, "three weathered heroes")
    instructor.click(dialog.open_button)
    instructor.qtbot.waitUntil(dialog.message.isVisible, timeout=60_000)
    assert instructor.draft.count == 0
    dialog.field.selectAll()
    QTest.keyClicks(dialog.field, PASSPHRASE)
    QTest.keyClick(dialog.field, Keys.Key_Return)
    instructor.qtbot.waitUntil(lambda: instructor.draft.count == 2, timeout=60_000)
    assert instructor.draft.plan == plan
    assert not page.controller.dirty
    assert instructor.frame.dialogs == ()


@pytest.mark.parametrize(
    ("damage", "words"),
    [
        (lambda data: data[:-9], "Its end is missing"),
        (lambda data: data[:-9] + b"x" + data[-8:], "It has been changed since it was sealed"),
        (lambda _: b"not ours", "It is no sealed file of this program"),
    ],
)
def test_a_damaged_one_is_refused_and_nothing_is_lost(
    instructor: Instructor, saves: list[Path], damage: object, words: str
) -> None:
    ready(instructor)
    instructor.click(instructor.compose.seal)
    instructor.seal_with()
    saves[0].write_bytes(damage(saves[0].read_bytes()))  # type: ignore[operator]
    plan = instructor.draft.plan
    instructor.screen.open_path(saves[0])
    dialog = instructor.dialog(UnsealDialog)
    QTest.keyClicks(dialog.field, PASSPHRASE)
    instructor.click(dialog.open_button)
    instructor.qtbot.waitUntil(lambda: dialog not in instructor.frame.dialogs, timeout=60_000)
    assert instructor.dialog(Notice).windowTitle() == words
    assert instructor.draft.plan == plan


def test_one_whose_content_is_none_says_all_that_is_wrong(
    instructor: Instructor, tmp_path: Path
) -> None:
    ready(instructor)
    stated = plan_as_dict(instructor.draft.plan)
    stated["minutes"] = 0
    stated["pass_mark"] = 7
    path = tmp_path / "odd.sitting"
    body = json.dumps(stated).encode()
    write_sealed(path, "sitting", body, Key.made(PASSPHRASE, Cost(log_n=4)))
    instructor.compose.controller.mark_saved(instructor.draft)
    instructor.screen.open_path(path)
    dialog = instructor.dialog(UnsealDialog)
    QTest.keyClicks(dialog.field, PASSPHRASE)
    instructor.click(dialog.open_button)
    instructor.qtbot.waitUntil(lambda: dialog not in instructor.frame.dialogs, timeout=60_000)
    assert instructor.dialog(FaultsDialog).windowTitle() == "This sitting can't be opened"
    assert instructor.draft.count == 2


def test_a_place_that_cannot_be_written_is_said_and_nothing_is_lost(
    instructor: Instructor, saves: list[Path], tmp_path: Path
) -> None:
    ready(instructor)
    saves.append(tmp_path / "nowhere" / "friday.sitting")
    instructor.click(instructor.compose.seal)
    instructor.seal_with()
    assert instructor.dialog(Question).windowTitle() == "The sitting could not be saved"
    assert instructor.compose.controller.dirty
    saves.append(tmp_path / "friday.sitting")
    instructor.answer("Save it elsewhere...")
    assert not instructor.frame.dialogs, "the passphrase isn't asked for again"
    instructor.qtbot.waitUntil(lambda: not instructor.compose.controller.dirty, timeout=60_000)
    assert open_sitting(saves[-1], PASSPHRASE).plan.count == 2


def test_closing_the_window_asks_first(instructor: Instructor) -> None:
    ready(instructor)
    instructor.frame.show_screen("bench")
    assert not instructor.window.close()
    instructor.qtbot.waitUntil(lambda: bool(instructor.frame.dialogs))
    assert instructor.frame.shown_screen == "sittings", "one sees what it is about"
    assert not instructor.window.close(), "it isn't asked twice at once"
    instructor.qtbot.wait(20)
    assert len(instructor.frame.dialogs) == 1
    instructor.answer("Go on composing")
    assert instructor.window.isVisible()
    assert instructor.draft.count == 2
    assert not instructor.window.close()
    instructor.qtbot.waitUntil(lambda: bool(instructor.frame.dialogs))
    instructor.answer("Close without it")
    instructor.qtbot.waitUntil(lambda: not instructor.window.isVisible())


def test_closing_can_seal_first(instructor: Instructor, saves: list[Path]) -> None:
    ready(instructor)
    assert not instructor.window.close()
    instructor.qtbot.waitUntil(lambda: bool(instructor.frame.dialogs))
    instructor.answer("Seal and save...")
    instructor.seal_with()
    instructor.qtbot.waitUntil(lambda: not instructor.window.isVisible())
    assert open_sitting(saves[0], PASSPHRASE).plan.count == 2


def test_when_the_system_ends_nobody_is_asked(instructor: Instructor) -> None:
    ready(instructor)
    instructor.frame.ending.emit()
    assert instructor.window.close()
    assert instructor.frame.dialogs == ()


def test_a_window_closes_at_once_where_nothing_would_be_lost(instructor: Instructor) -> None:
    assert instructor.window.close()


def test_a_new_one_asks_what_becomes_of_the_other(instructor: Instructor) -> None:
    ready(instructor)
    instructor.compose.part.table.setFocus()
    instructor.control(Keys.Key_N)
    instructor.answer("Cancel")
    assert instructor.draft.count == 2
    instructor.control(Keys.Key_N)
    instructor.answer("Give it up")
    assert instructor.draft.count == 0
    assert instructor.compose.bar.state.accessibleName() == "Not sealed yet"


def test_nothing_of_it_is_written_before_it_is_sealed(
    instructor: Instructor, tmp_path: Path, home: Path
) -> None:
    ready(instructor)
    (coupon, *_) = instructor.draft.plan.parts[0].coupons  # type: ignore[union-attr]
    name = str(coupon.title).encode()
    assert name in HERON.read_bytes()
    for folder in (tmp_path, home):
        for path in folder.rglob("*"):
            assert not path.is_file() or name not in path.read_bytes(), path


def test_another_page_goes_on_with_it_in_another_language(
    instructor: Instructor, saves: list[Path]
) -> None:
    ready(instructor)
    instructor.click(instructor.compose.seal)
    instructor.seal_with()
    page = instructor.compose
    page.controller.do(lambda d: replace(d, parts=d.parts[:0], at=-1), "remove")
    other = ComposePage(instructor.frame, lambda: ())
    instructor.qtbot.addWidget(other)
    other.go_on_from(page)
    assert other.controller.draft is instructor.draft
    assert other.controller.dirty
    assert other.filing.sealed is page.filing.sealed
    other.controller.undo()
    assert other.controller.draft.count == 2
    # The one that is given up asks nobody any more.
    other.controller.mark_saved(other.controller.draft)
    assert instructor.window.close()
