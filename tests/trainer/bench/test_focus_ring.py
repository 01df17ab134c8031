"""The ring about what has the focus, while what it is about goes."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import delete

from trainer.bench.focus_ring import Ring


def test_a_window_is_taken_down_beneath_it(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    panel = QWidget(window)
    button = QPushButton(panel)
    ring = Ring(button, window, "#000000")
    window.show()
    assert ring.isVisible()
    delete(button)
    with qtbot.captureExceptions() as errors:
        panel.hide()
        panel.resize(300, 200)
    assert errors == []
