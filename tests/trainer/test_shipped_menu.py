"""Every tray that ships is in the menu, in the order that they build on each other."""

from __future__ import annotations

from pathlib import Path

from pytestqt.qtbot import QtBot

from exercises.tray import load_tray
from trainer.assets import asset
from trainer.shipped_menu import ShippedMenu, shipped


def test_all_are_there_with_title_and_count_in_order() -> None:
    found = shipped()
    assert {tray.file for tray in found} == set(asset("trays").glob("*.tray.json"))
    for tray in found:
        loaded = load_tray(tray.file)
        assert tray.coupons == len(loaded.coupons)
        for language in ("en", "es"):
            assert tray.title[language] == loaded.title.in_language(language)
    assert "first day" in found[0].title["en"]
    exams = [at for at, tray in enumerate(found) if "exam" in tray.title["en"]]
    assert exams == [len(found) - 1]


def test_the_menu_lists_them_when_it_is_opened(qtbot: QtBot) -> None:
    menu = ShippedMenu("Shipped trays")
    qtbot.addWidget(menu)
    assert not menu.actions()
    menu.aboutToShow.emit()
    menu.aboutToShow.emit()
    assert len(menu.actions()) == len(shipped())
    chosen: list[Path] = []
    menu.chosen.connect(chosen.append)
    menu.actions()[-1].trigger()
    assert chosen == [shipped()[-1].file]
