"""Buttons that stay down, pressed by a screen reader."""

from __future__ import annotations

from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from trainer.spoken_buttons import speak_buttons


def heard(button: QPushButton) -> QAccessibleInterface:
    """What a screen reader gets."""
    speak_buttons()
    found = QAccessible.queryAccessibleInterface(button)
    assert found is not None
    return found


def test_its_first_action_is_a_click(qtbot: QtBot) -> None:
    button = QPushButton("&Flat")
    qtbot.addWidget(button)
    button.setCheckable(True)
    clicks: list[bool] = []
    button.clicked.connect(lambda: clicks.append(button.isChecked()))
    actions = heard(button).actionInterface()
    actions.doAction(actions.actionNames()[0])
    assert clicks == [True]
    assert heard(button).state().checked
    assert heard(button).text(QAccessible.Text.Name) == "Flat"


def test_a_grey_one_offers_nothing(qtbot: QtBot) -> None:
    button = QPushButton("Flat")
    qtbot.addWidget(button)
    button.setCheckable(True)
    button.setEnabled(False)
    assert heard(button).actionInterface().actionNames() == []
    assert heard(button).state().disabled


def test_one_that_comes_to_stay_down_later_is_clicked_as_well(qtbot: QtBot) -> None:
    button = QPushButton()
    qtbot.addWidget(button)
    button.setAccessibleName("Record")
    assert not heard(button).state().checkable
    button.setCheckable(True)
    assert heard(button).state().checkable
    with qtbot.waitSignal(button.clicked):
        heard(button).actionInterface().doAction("Press")
    assert heard(button).text(QAccessible.Text.Name) == "Record"
