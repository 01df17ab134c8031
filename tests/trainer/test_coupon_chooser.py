"""The chooser of coupons: titles that the bar has to cut stand whole in its list. No source."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent, QPoint
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QApplication, QMainWindow
from pytestqt.qtbot import QtBot

from trainer.look.theme import LIGHT, apply
from trainer.top_bar import CouponChooser

_LONG = "12 of 26  Bracket under the landing beam, seen from the river side, second pass"


@pytest.fixture
def chooser(qtbot: QtBot) -> Iterator[CouponChooser]:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    apply(app, LIGHT)
    window = QMainWindow()
    qtbot.addWidget(window)
    made = CouponChooser(window)
    made.addItems(["1 of 26  Post", _LONG])
    made.setGeometry(10, 10, 200, 30)
    window.resize(1024, 300)
    window.show()
    qtbot.waitExposed(window)
    yield made
    # The window lives as long as somebody here holds it.
    window.close()


def test_the_list_is_as_wide_as_its_longest_title(chooser: CouponChooser) -> None:
    chooser.showPopup()
    view = chooser.view()
    assert view.viewport().width() >= chooser.fontMetrics().horizontalAdvance(_LONG)
    assert view.horizontalScrollBar().maximum() == 0
    chooser.hidePopup()


@pytest.mark.parametrize(("index", "tip"), [(0, ""), (1, _LONG)])
def test_a_cut_title_stands_whole_in_the_tip(chooser: CouponChooser, index: int, tip: str) -> None:
    chooser.setCurrentIndex(index)
    asked = QHelpEvent(QEvent.Type.ToolTip, QPoint(5, 5), chooser.mapToGlobal(QPoint(5, 5)))
    QApplication.sendEvent(chooser, asked)
    assert chooser.toolTip() == tip


def test_a_long_title_is_painted_shorter(chooser: CouponChooser) -> None:
    chooser.setCurrentIndex(1)
    before = chooser.grab().toImage()
    chooser.setItemText(1, _LONG + " and more of it, out of sight")
    assert chooser.grab().toImage() == before
