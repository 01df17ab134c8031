"""Coupons from dice: made beside the window, stopped on asking, put into the tray as one step."""

from __future__ import annotations

import threading
import time

import pytest

from exercises.judging import judge
from exercises.maker import Recipe
from tests.trainer.shop.conftest import Maker
from trainer.shop.dice import Cancelled, Throwing
from trainer.shop.dice_dialog import DiceDialog
from trainer.shop.recipe_dialog import trap_word


def asked(maker: Maker) -> DiceDialog:
    """The dialog, open."""
    maker.screen.do("add dice")
    dialog = maker.frame.dialogs[-1]
    assert isinstance(dialog, DiceDialog)
    return dialog


def enter(dialog: DiceDialog, key: str, text: str) -> None:
    field = dialog._entries[key].field
    field.setText(text)
    field.editingFinished.emit()


def test_coupons_are_made_as_asked_and_are_one_step(maker: Maker) -> None:
    dialog = asked(maker)
    enter(dialog, "count", "6")
    enter(dialog, "seed", "11")
    enter(dialog, "least", "1/4 in")
    dialog._choices["measure"].box.activated.emit(0)
    dialog._checks["trap spatter"].box.click()
    dialog._checks["face flat"].box.click()
    assert dialog.recipe.sizes[0] == pytest.approx(6.35)
    assert "spatter" not in dialog.recipe.traps
    assert dialog.recipe.faces == ("convex", "concave")
    maker.click(dialog.take)
    maker.qtbot.waitUntil(lambda: len(maker.shop.coupons) == 7, timeout=30000)
    assert maker.coupon.id == "made-11-001"
    assert not any(judge(coupon).in_doubt for coupon in maker.shop.coupons[1:])
    maker.screen.do("undo")
    assert len(maker.shop.coupons) == 1
    maker.screen.do("redo")
    assert len(maker.shop.coupons) == 7
    again = asked(maker)
    assert again.recipe.seed == 11, "the next throw begins with what was asked last"
    again.reject()


def test_the_window_goes_on_while_they_are_made(maker: Maker) -> None:
    dialog = asked(maker)
    enter(dialog, "count", "40")
    threads: set[str] = set()
    dialog._take()
    throwing = dialog._throwing
    assert throwing is not None
    hear = throwing._hear

    def note(count: int) -> None:
        threads.add(threading.current_thread().name)
        hear(count)

    throwing._hear = note  # type: ignore[method-assign]
    maker.screen.controller.turn("leg_base", 9.0)
    assert maker.coupon.section.bead.leg_base == 9.0
    assert dialog.busy
    assert not dialog.take.isEnabled()
    maker.qtbot.waitUntil(lambda: not dialog.busy, timeout=60000)
    assert threading.main_thread().name not in threads
    assert len(maker.shop.coupons) == 41


def test_they_are_stopped_on_asking_and_nothing_has_changed(maker: Maker) -> None:
    dialog = asked(maker)
    enter(dialog, "count", "400")
    before = maker.shop
    dialog._take()
    maker.qtbot.waitUntil(lambda: dialog._throwing is None or dialog._throwing.count > 2)
    maker.click(dialog.leave)
    maker.qtbot.waitUntil(lambda: maker.frame.dialogs == (), timeout=30000)
    assert maker.shop is before


def test_what_can_not_be_made_is_said_before_it_is_tried(maker: Maker) -> None:
    dialog = asked(maker)
    for trap in dialog._checks:
        if trap.startswith("trap "):
            dialog._checks[trap].box.click()
    assert not dialog.take.isEnabled()
    assert "with 2 kinds of answer are uneven" in dialog.message.text()
    enter(dialog, "nearest", "0.5")
    assert "0.5 doubts off its limit" in dialog.message.text()
    dialog.reject()


def test_difficulty_is_chosen_by_a_word_or_by_figures(maker: Maker) -> None:
    dialog = asked(maker)
    dialog._choices["difficulty"].box.activated.emit(2)
    assert (dialog.recipe.nearest, dialog.recipe.farthest) == (1.1, 2.5)
    enter(dialog, "farthest", "4")
    assert dialog._choices["difficulty"].box.currentIndex() == 3
    dialog.reject()


def test_a_throw_that_is_told_to_stop_stops_with_the_next_coupon() -> None:
    throwing = Throwing(Recipe(300, seed=3))
    caught: list[BaseException] = []

    def work() -> None:
        try:
            throwing.made()
        except Cancelled as error:
            caught.append(error)

    thread = threading.Thread(target=work)
    thread.start()
    while throwing.count < 1:
        time.sleep(0.001)
    throwing.cancel()
    thread.join(timeout=30)
    assert len(caught) == 1
    assert throwing.count < 300


def test_every_trap_has_its_word() -> None:
    recipe = Recipe(1)
    assert len({trap_word(trap) for trap in recipe.traps}) == len(recipe.traps)
