"""The shop by keyboard alone: every stop of Tab shown and reached, panels, Enter, closing."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from tests.trainer.shop.conftest import Maker, open_shop
from tests.trainer.test_focus import LOOKS, check, names, round_of_tab
from trainer.bench.focus_ring import FocusRing
from trainer.settings import Appearance, Settings
from trainer.shop.dice_dialog import DiceDialog
from trainer.shop.photo.page import PhotoPage
from trainer.shop.scan.page import ScanPage
from trainer.shop.screen import ShopScreen
from trainer.shop.state import duplicated
from trainer.window import WindowFrame

Key = Qt.Key
SHIFT = Qt.KeyboardModifier.ShiftModifier
CONTROL = Qt.KeyboardModifier.ControlModifier


def wanting(window: QWidget) -> set[QWidget]:
    """All that is seen and would have Tab stop at it."""
    return {
        each
        for each in window.findChildren(QWidget)
        if each.isVisible()
        and each.isEnabled()
        and each.focusPolicy() & Qt.FocusPolicy.TabFocus
        and each.focusProxy() is None
    }


@pytest.fixture
def tabbed(qtbot: QtBot, unsaved: Path) -> Iterator[tuple[WindowFrame, ShopScreen]]:
    """The shop as a screen of the window, with its pages."""
    window = QMainWindow()
    qtbot.addWidget(window)
    frame = WindowFrame(window, Settings(first_start_seen=True, appearance="light"), QWidget())
    pages = {"photo": lambda: PhotoPage(frame), "scan": lambda: ScanPage(frame)}
    frame.add_screen("shop", "Coupon shop", lambda: ShopScreen(frame, pages, unsaved))
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    frame.show_screen("shop")
    qtbot.wait(30)
    screen = frame.make_screen("shop")
    assert isinstance(screen, ShopScreen)
    yield frame, screen
    screen.working.stop()
    screen.filing.leave()


@LOOKS
@pytest.mark.parametrize("tab", [0, 1, 2])
def test_every_stop_of_the_shop_shows(maker: Maker, look: Appearance, tab: int) -> None:
    maker.frame.change_settings(Settings(first_start_seen=True, appearance=look))
    FocusRing(maker.window).theme = maker.frame.theme  # the bench's, in the program
    maker.screen.side.forms.setCurrentIndex(tab)
    maker.screen.side.results.setCurrentIndex(tab)
    maker.qtbot.wait(20)
    stops = check(maker.window)
    assert wanting(maker.window) - set(stops) == set(), names(stops)


@pytest.mark.parametrize("name", ["photo", "scan"])
def test_every_stop_of_a_page_is_reached(tabbed: tuple[WindowFrame, ShopScreen], name: str) -> None:
    frame, screen = tabbed
    screen.show_page(name)
    QApplication.processEvents()
    page = screen.rooms.currentWidget()
    assert isinstance(page, (PhotoPage, ScanPage))
    panel = page.panel
    assert QApplication.focusWidget() is panel.open, "the usual thing has the keys at once"
    stops = round_of_tab(frame.window)
    assert panel.leave in stops, names(stops)
    assert wanting(frame.window) - set(stops) == set(), names(stops)
    assert [stop for stop in stops if stop in frame.bar.tabs] == [frame.bar.tabs[1]]


def test_a_screen_has_the_keys_where_they_are_seen_and_were(
    tabbed: tuple[WindowFrame, ShopScreen],
) -> None:
    frame, screen = tabbed
    assert QApplication.focusWidget() is screen.tray.list
    screen.tray.add.setFocus()
    frame.show_screen("bench")
    frame.show_screen("shop")
    assert QApplication.focusWidget() is screen.tray.add


def test_enter_presses_what_has_the_focus(maker: Maker) -> None:
    maker.screen.tray.duplicate.setFocus()
    maker.key(Key.Key_Return)
    assert len(maker.shop.tray.coupons) == 2
    maker.screen.tools.undo.setFocus()
    maker.key(Key.Key_Enter)
    assert len(maker.shop.tray.coupons) == 1


def test_f6_goes_through_the_panels_and_back(maker: Maker) -> None:
    screen = maker.screen
    screen.tray.list.setFocus()
    way = []
    for _ in range(6):
        maker.key(Key.Key_F6)
        way.append(QApplication.focusWidget())
    assert way == [
        screen.tools.file,
        screen.view.canvas,
        screen.knobs.choice,
        screen.side.forms.tabBar(),
        screen.side.results.tabBar(),
        screen.tray.list,
    ]
    maker.key(Key.Key_Tab)
    maker.key(Key.Key_F6, SHIFT)
    assert QApplication.focusWidget() is screen.side.results.tabBar()


def test_f6_goes_on_from_a_handle_and_from_a_field(maker: Maker) -> None:
    maker.grip("crown").setFocus()
    maker.key(Key.Key_F6)
    assert QApplication.focusWidget() is maker.screen.knobs.choice
    maker.field("leg_base").field.setFocus()
    maker.key(Key.Key_F6, SHIFT)
    assert QApplication.focusWidget() is maker.screen.knobs.choice


def test_enter_in_a_field_of_the_dice_throws_them(maker: Maker) -> None:
    maker.screen.do("add dice")
    (dialog,) = maker.frame.dialogs
    assert isinstance(dialog, DiceDialog)
    dialog.activateWindow()
    maker.qtbot.waitUntil(dialog.isActiveWindow)
    count = QApplication.focusWidget()
    assert count is not None
    QTest.keyClicks(count, "3")
    QTest.keyClick(count, Key.Key_Return)
    QTest.keyClick(count, Key.Key_Return)
    assert dialog.busy, "and not: one more than was asked for"
    maker.qtbot.waitUntil(lambda: not maker.frame.dialogs, timeout=30_000)
    assert len(maker.shop.tray.coupons) == 4


def test_escape_in_a_field_leaves_what_was_there_to_be_typed_over(maker: Maker) -> None:
    entry = maker.type("leg_base", "99")
    assert entry.wrong
    QTest.keyClick(entry.field, Key.Key_Escape)
    assert not entry.wrong
    assert entry.field.selectedText() == entry.field.text() == "8 mm"


def test_what_is_typed_is_saved_before_enter(maker: Maker, tmp_path: Path) -> None:
    maker.screen.filing.path = tmp_path / "mine.tray.json"
    entry = maker.field("leg_base")
    entry.field.setFocus()
    entry.field.selectAll()
    QTest.keyClicks(entry.field, "9")
    maker.key(Key.Key_S, CONTROL)
    assert maker.coupon.section.bead.leg_base == 9.0
    assert '"leg_base": 9' in (tmp_path / "mine.tray.json").read_text()


# A leaf on the picture, and its place in the table


def lay(maker: Maker, mark: str, place: int) -> None:
    """Choose a leaf of the table with the keys."""
    side = maker.screen.side
    side.results.setCurrentWidget(side.leaves)
    maker.screen.working.finish()
    table = side.leaves.table
    (item,) = table.findItems(mark, Qt.MatchFlag.MatchExactly)
    table.setCurrentCell(item.row(), place)


def test_a_laid_leaf_follows_undo(maker: Maker) -> None:
    lay(maker, "8 mm", 2)
    poses = [maker.screen.view.canvas.scene.pose]
    maker.type("leg_upright", "11")
    poses.append(maker.screen.view.canvas.scene.pose)
    maker.screen.controller.undo()
    poses.append(maker.screen.view.canvas.scene.pose)
    assert poses[0] is not None
    assert poses[1] != poses[0]
    assert poses[2] == poses[0]


def test_no_leaf_is_chosen_that_lies_nowhere(maker: Maker) -> None:
    leaves = maker.screen.side.leaves
    maker.screen.do("duplicate")
    maker.type("leg_base", "9")
    lay(maker, "8 mm", 1)
    assert leaves.off.isVisible()
    maker.screen.do("before")
    assert maker.screen.view.canvas.scene.leaf is None
    assert not leaves.off.isVisible()
    assert leaves.table.selectedItems() == []


def test_undo_that_opens_another_coupon_looks_at_it_afresh(maker: Maker) -> None:
    maker.type("leg_base", "12")
    maker.screen.do("add plain")
    lay(maker, "8 mm", 1)
    assert maker.screen.view.canvas.scene.leaf is not None
    maker.screen.controller.undo()
    assert maker.coupon.section.bead.leg_base == 12.0
    assert maker.screen.view.canvas.scene.leaf is None
    assert maker.screen.side.leaves.table.selectedItems() == []


def test_a_renamed_coupon_keeps_its_leaf(maker: Maker) -> None:
    lay(maker, "8 mm", 1)
    maker.type("id", "post-1")
    assert maker.coupon.id == "post-1"
    assert maker.screen.view.canvas.scene.leaf is not None


# Closing the window


def close(maker: Maker) -> bool:
    """Close the window, as Ctrl+Q does; whether it went."""
    maker.frame.quit_action.trigger()
    maker.qtbot.wait(5)
    return not maker.window.isVisible()


def test_nothing_is_asked_when_all_is_saved(maker: Maker) -> None:
    assert close(maker)


def test_closing_asks_and_stays(maker: Maker) -> None:
    maker.type("leg_base", "9")
    assert not close(maker)
    assert not close(maker), "nor by asking twice"
    assert len(maker.frame.dialogs) == 1
    QTest.keyClick(maker.question, Key.Key_Escape)
    assert maker.window.isVisible()
    assert not close(maker), "it asks again"


def test_who_stays_is_where_they_were(tabbed: tuple[WindowFrame, ShopScreen]) -> None:
    frame, screen = tabbed
    screen.do("duplicate")
    screen.knobs.choice.setFocus()
    frame.window.close()
    QTest.qWait(5)
    (dialog,) = frame.dialogs
    dialog.reject()
    frame.window.activateWindow()
    QTest.qWait(5)
    assert QApplication.focusWidget() is screen.knobs.choice
    frame.show_screen("bench")
    frame.window.close()
    QTest.qWait(5)
    assert frame.shown_screen == "shop", "one sees what is asked about"


def test_closing_asks_for_what_is_typed_and_not_entered(maker: Maker) -> None:
    field = maker.field("leg_base").field
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, "9")
    assert not close(maker)
    assert maker.coupon.section.bead.leg_base == 9.0


def test_closing_saves_first(maker: Maker, tmp_path: Path) -> None:
    maker.screen.filing.path = tmp_path / "mine.tray.json"
    maker.type("leg_base", "9")
    close(maker)
    maker.answer("Save and close")
    maker.qtbot.waitUntil(lambda: not maker.window.isVisible())
    assert '"leg_base": 9' in (tmp_path / "mine.tray.json").read_text()


def test_what_is_given_up_is_not_offered_again(maker: Maker, qtbot: QtBot, unsaved: Path) -> None:
    maker.type("leg_base", "9")
    close(maker)
    maker.answer("Close without saving")
    maker.qtbot.waitUntil(lambda: not maker.window.isVisible())
    maker.screen.filing.leave()
    again = open_shop(qtbot, unsaved)
    assert again.frame.dialogs == ()


def test_when_the_system_ends_nobody_is_asked_and_all_is_kept(
    maker: Maker, qtbot: QtBot, unsaved: Path
) -> None:
    maker.type("leg_base", "9")
    maker.frame.ending.emit()
    assert close(maker)
    maker.screen.filing.leave()
    again = open_shop(qtbot, unsaved)
    assert again.question.answers[0].text() == "Take it up again"


def test_a_shop_in_another_language_goes_on_asking_nothing_anew(
    maker: Maker, qtbot: QtBot, unsaved: Path
) -> None:
    maker.type("leg_base", "9")
    maker.screen.filing.leave()
    again = open_shop(qtbot, unsaved)
    again.answer("Later")
    other = ShopScreen(again.frame, {}, unsaved)
    qtbot.addWidget(other)
    other.go_on_from(again.screen)
    qtbot.wait(10)
    assert again.frame.dialogs == (), "it was said: later"
    other.controller.do(duplicated, "duplicate")
    assert not again.window.close()
    qtbot.wait(5)
    assert len(again.frame.dialogs) == 1, "one of the two shops asks"
    again.answer("Close without saving")
    qtbot.waitUntil(lambda: not again.window.isVisible())
    for shop in (again.screen, other):
        shop.working.stop()
    other.filing.leave()
