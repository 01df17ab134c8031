"""An instructor in the coupon shop, with a mouse and a keyboard."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMainWindow, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from exercises.coupon import Coupon
from trainer.settings import Settings
from trainer.shop.entry import Entry
from trainer.shop.handles import Grip
from trainer.shop.question import Question
from trainer.shop.screen import ShopScreen
from trainer.shop.state import Shop
from trainer.window import WindowFrame


class Maker:
    """Who makes coupons."""

    def __init__(
        self, qtbot: QtBot, window: QMainWindow, frame: WindowFrame, screen: ShopScreen
    ) -> None:
        self.qtbot, self.window, self.frame, self.screen = qtbot, window, frame, screen

    @property
    def shop(self) -> Shop:
        return self.screen.controller.shop

    @property
    def coupon(self) -> Coupon:
        return self.screen.controller.coupon

    def grip(self, key: str) -> Grip:
        return self.screen.view.grips[key]

    def field(self, key: str) -> Entry:
        for form in (self.screen.side.weld, self.screen.side.drawing, self.screen.side.words):
            field = form.fields.get(key)
            if isinstance(field, Entry):
                self.screen.side.forms.setCurrentWidget(form)
                return field
        raise LookupError(key)

    def drag(self, widget: QWidget, way: QPoint, stops: int = 4) -> None:
        """Press in a widget's middle, go that way in some stops, let go."""
        left = Qt.MouseButton.LeftButton
        start = widget.mapToGlobal(widget.rect().center())
        QTest.mousePress(widget, left, pos=widget.rect().center())
        for stop in range(1, stops + 1):
            QTest.mouseMove(widget, widget.mapFromGlobal(start + way * stop / stops))
            self.qtbot.wait(2)
        QTest.mouseRelease(widget, left, pos=widget.mapFromGlobal(start + way))

    def key(self, key: Qt.Key, held: Qt.KeyboardModifier | None = None) -> None:
        """Press a key wherever the focus is."""
        QTest.keyClick(self.window.windowHandle(), key, held or Qt.KeyboardModifier.NoModifier)

    def type(self, key: str, text: str) -> Entry:
        """Type into a field, and press Enter."""
        entry = self.field(key)
        entry.field.setFocus()
        entry.field.selectAll()
        # Not key by key: the test library knows no keys but those of ASCII.
        entry.field.insert(text)
        QTest.keyClick(entry.field, Qt.Key.Key_Return)
        return entry

    def click(self, widget: QWidget) -> None:
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)

    @property
    def question(self) -> Question:
        """The dialog that asks something now."""
        dialog = self.frame.dialogs[-1]
        assert isinstance(dialog, Question)
        return dialog

    def answer(self, words: str) -> None:
        """Press one of its buttons."""
        (button,) = [button for button in self.question.answers if button.text() == words]
        self.click(button)
        self.qtbot.wait(1)

    def button(self, name: str) -> QPushButton:
        self.qtbot.wait(1)
        for button in self.window.findChildren(QPushButton):
            if name in (button.text(), button.accessibleName()) and button.isVisible():
                return button
        raise LookupError(f"no button {name!r} is to be seen")


def open_shop(qtbot: QtBot, folder: Path) -> Maker:
    """Open a window with the shop alone in it; unsaved work is kept in `folder`."""
    window = QMainWindow()
    qtbot.addWidget(window)
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    frame = WindowFrame(window, Settings(first_start_seen=True, appearance="light"), holder)
    screen = ShopScreen(frame, {}, folder)
    column.addWidget(screen)
    window.resize(1280, 760)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    screen.view.canvas.setFocus()
    qtbot.wait(30)
    return Maker(qtbot, window, frame, screen)


@pytest.fixture
def unsaved(tmp_path: Path) -> Path:
    """Where unsaved work is kept."""
    return tmp_path / "unsaved"


@pytest.fixture
def maker(qtbot: QtBot, unsaved: Path) -> Iterator[Maker]:
    maker = open_shop(qtbot, unsaved)
    yield maker
    maker.screen.working.stop()
    maker.screen.filing.leave()
    maker.frame.ending.emit()  # nobody is there to be asked
    maker.window.close()
