"""The symbol on the job card: it has room for all of it, and the View menu chooses the standard."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QFont, QFontMetricsF
from pytestqt.qtbot import QtBot

from exercises.callout import Callout, Intermittent
from trainer.symbols.drawn import CONVENTIONS, TEXT, Convention, symbol_of
from trainer.symbols.menu import SymbolMenu
from trainer.symbols.view import SymbolView, scale_of
from trainer.symbols.words import symbol_words

FULL = Callout(
    12.0,
    "leg",
    "12 mm",
    upright_size=10.0,
    upright_text="10 mm",
    intermittent=Intermittent(40.0, 100.0, 12, staggered=True),
    side="both",
    all_around=True,
    site=True,
    tail="detail C",
)


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_all_of_it_has_room(qtbot: QtBot, convention: Convention) -> None:
    view = SymbolView()
    qtbot.addWidget(view)
    view.resize(300, 60)
    symbol = symbol_of(FULL, convention)
    view.show_symbol(symbol, symbol_words(FULL, convention, "mm"))
    view.show()
    scale = scale_of(symbol, QRectF(view.rect()))
    left, top, right, bottom = symbol.box
    assert (right - left) * scale <= view.width()
    assert (bottom - top) * scale <= view.height()
    font = QFont(view.font())
    font.setWeight(QFont.Weight.DemiBold)
    font.setPixelSize(max(1, round(TEXT * scale * 0.86)))
    for word in symbol.words:
        assert QFontMetricsF(font).horizontalAdvance(word.text) <= word.width * scale + 2.0
    assert not view.grab().isNull()


def test_who_can_t_see_it_hears_all_of_it() -> None:
    said = symbol_words(FULL, "a2.4", "mm")
    for part in ("12 mm leg on the base", "10 mm on the upright", "12 pieces 40 mm long",
                 "100 mm centre to centre", "60 mm clear", "staggered", "both sides", "all around",
                 "on site", "detail C", "AWS A2.4"):  # fmt: skip
        assert part in said


def test_a_standard_is_chosen_by_menu(qtbot: QtBot) -> None:
    menu = SymbolMenu()
    qtbot.addWidget(menu)
    chosen: list[object] = []
    menu.chosen.connect(chosen.append)
    menu.choices["iso-b"].trigger()
    menu.choices[None].trigger()
    assert chosen == ["iso-b", None]
    menu.show_choice("a2.4")
    assert [c for c, action in menu.choices.items() if action.isChecked()] == ["a2.4"]
