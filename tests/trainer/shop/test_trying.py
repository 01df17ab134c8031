"""A coupon on trial at the bench: no call of it is kept, and what lay there comes back."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from trainer import late
from trainer.shop.screen import ShopScreen

Key = Qt.Key


@pytest.fixture
def opening(qtbot: QtBot, qapp: QApplication, home: Path) -> Iterator[late._Opening]:
    """The whole program, for somebody who has been here before."""
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
    shop = opening._screens.get("shop")
    if isinstance(shop, ShopScreen):
        shop.working.stop()
        shop.filing.leave()
    opening.finish()
    if opening._speech is not None:
        opening._speech.speak("en")
    QLocale.setDefault(locale)
    sys.excepthook = hook


def shop_of(opening: late._Opening) -> ShopScreen:
    assert opening.frame is not None
    opening.frame.show_screen("shop")
    shop = opening._screens["shop"]
    assert isinstance(shop, ShopScreen)
    return shop


def press(opening: late._Opening, *keys: Key) -> None:
    assert opening.screen is not None
    for key in keys:
        QTest.keyClick(opening.screen.canvas, key)


CALLED = (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_X, Key.Key_A, Key.Key_Return)


def records(home: Path) -> list[str]:
    file = home / "data" / "toe-and-throat" / "calls.jsonl"
    return file.read_text(encoding="utf-8").splitlines() if file.exists() else []


def test_no_call_on_trial_is_kept_and_the_bench_is_as_it_was(
    opening: late._Opening, home: Path
) -> None:
    bench, frame = opening.screen, opening.frame
    assert bench is not None
    assert frame is not None
    bench.go_to(3)
    press(opening, Key.Key_8, Key.Key_Space, Key.Key_D)
    before = bench.controller.state
    shop = shop_of(opening)
    shop.choose("id", "mine")
    shop.do("try")
    assert frame.shown_screen == "bench"
    assert bench.controller.state.coupon.id == "mine"
    press(opening, *CALLED)
    assert bench.controller.state.phase == "debrief"
    assert records(home) == []
    frame.show_screen("shop")
    frame.show_screen("bench")
    assert bench.course.index == 3
    assert bench.controller.state.readings == before.readings
    assert bench.controller.state.pose == before.pose
    press(opening, Key.Key_X, Key.Key_A, Key.Key_Return)
    assert len(records(home)) == 1


def test_a_tray_that_is_opened_meanwhile_is_called_on_record(
    opening: late._Opening, home: Path
) -> None:
    assert opening.frame is not None
    shop_of(opening).do("try")
    opening.frame.open_tray(late.shipped_tray())
    press(opening, *CALLED)
    assert len(records(home)) == 1


def test_while_the_shop_is_shown_a_tray_opens_there(opening: late._Opening) -> None:
    assert opening.frame is not None
    assert opening.screen is not None
    shop = shop_of(opening)
    before = opening.screen.course.tray
    opening.frame.open_tray(late.shipped_tray())
    assert len(shop.controller.shop.coupons) == 26
    assert opening.screen.course.tray is before


def test_the_shop_goes_on_in_another_language(opening: late._Opening, qtbot: QtBot) -> None:
    assert opening.frame is not None
    shop = shop_of(opening)
    shop.choose("leg_base", 9.0)
    before, count = opening.screen, len(list(shop.filing._folder.iterdir()))
    opening.frame.language_actions["es"].trigger()
    qtbot.waitUntil(lambda: opening.screen is not before)
    again = opening._screens["shop"]
    assert isinstance(again, ShopScreen)
    assert again is not shop
    assert again.controller.coupon.section.bead.leg_base == 9.0
    again.do("undo")
    assert again.controller.coupon.section.bead.leg_base == 8.0
    assert len(list(again.filing._folder.iterdir())) == count, "one journal, handed on"
    assert opening.frame.dialogs == ()
    assert again.tray.delete.text() == "Borrar"


def test_the_next_start_tells_of_what_waits(
    opening: late._Opening, qtbot: QtBot, qapp: QApplication
) -> None:
    shop_of(opening).choose("leg_base", 9.0)
    shop_of(opening).filing.leave()
    again = late._Opening(qapp, None)
    qtbot.addWidget(again.window)
    again.show()

    def told() -> bool:
        said = again.frame.band.said if again.frame is not None else ()
        return any("wait in the coupon shop" in saying.text for saying in said)

    qtbot.waitUntil(told, timeout=60000)
    again.finish()
