"""At the left: the sitting's title, and the parts that its coupons come from."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidgetItem,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from trainer.shipped_menu import ShippedMenu
from trainer.sittings.draft import Draft
from trainer.sittings.plain_list import PlainList
from trainer.sittings.words import coupons_word, part_lines, title_of

__all__ = ["PartsPanel"]

_ROW: Final = 52
"""Logical px: a name and, below it, how much of it is asked."""


class PartsPanel(QFrame):
    """Title, parts, and what is done with them.

    Signals
    -------
    asked(name)
        ``tray``, ``dice``, ``remove``, ``up``, ``down``; ``from bench`` and ``from shop``: the
        tray that is open there.
    tray_chosen(path)
        A tray that ships.
    titled(words)
        The sitting is to be called so.
    opened(at)
        A part is to be seen.
    """

    asked = Signal(str)
    tray_chosen = Signal(Path)
    titled = Signal(str)
    opened = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self._shown_title = ""
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 10, 10, 10)
        column.setSpacing(8)
        label = QLabel(self.tr("Title of the sitting"))
        label.setProperty("tone", "heading")
        self.title = QLineEdit()
        self.title.setMaxLength(200)
        self.title.setAccessibleName(label.text())
        self.title.setPlaceholderText(self.tr("seen by the learners"))
        self.title.editingFinished.connect(self._name)
        label.setBuddy(self.title)
        column.addWidget(label)
        column.addWidget(self.title)
        head = QHBoxLayout()
        coupons = QLabel(self.tr("Coupons"))
        coupons.setProperty("tone", "heading")
        self.count = QLabel()
        self.count.setProperty("tone", "quiet")
        head.addWidget(coupons)
        head.addStretch(1)
        head.addWidget(self.count)
        column.addLayout(head)
        self.list = PlainList()
        self.list.setProperty("kind", "tray")
        self.list.setAccessibleName(self.tr("Where the coupons come from"))
        self.list.setSpacing(1)
        self.list.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.currentRowChanged.connect(self._open)
        column.addWidget(self.list, 1)
        self._add_buttons(column)

    def _add_buttons(self, column: QVBoxLayout) -> None:
        self.from_tray = QPushButton(self.tr("From a tray"))
        self.from_tray.setProperty("kind", "segment")
        self.from_tray.setMinimumHeight(28)
        self.from_tray.setToolTip(self.tr("The same coupons for everybody"))
        self.from_tray.setMenu(self.tray_menu(self))
        self.from_dice = self._button(
            self.tr("From dice..."), "dice", self.tr("Each learner their own, equally hard")
        )
        self.remove = self._button(self.tr("Take out"), "remove", self.tr("Take this part out"))
        self.up = self._button("\u2191", "up", self.tr("This part earlier"))
        self.down = self._button("\u2193", "down", self.tr("This part later"))
        column.addWidget(self.from_tray)
        column.addWidget(self.from_dice)
        line = QHBoxLayout()
        line.setSpacing(6)
        for button in (self.remove, self.up, self.down):
            line.addWidget(button, 2 if button is self.remove else 1)
        column.addLayout(line)

    def _button(self, words: str, name: str, tip: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.setToolTip(tip)
        if len(words) == 1:
            button.setAccessibleName(tip)
        else:
            button.setAccessibleDescription(tip)
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def tray_menu(self, parent: QWidget) -> QMenu:
        """Return a menu of all places that a tray can come from."""
        menu = QMenu(parent)
        for words, name in (
            (self.tr("&Open a tray..."), "tray"),
            (self.tr("The tray on the &bench"), "from bench"),
            (self.tr("The tray in the &coupon shop"), "from shop"),
        ):
            action = menu.addAction(words)
            action.triggered.connect(lambda _=False, name=name: self.asked.emit(name))
        shipped = ShippedMenu(self.tr("&Shipped trays"), menu)
        shipped.chosen.connect(self.tray_chosen)
        menu.insertMenu(menu.actions()[1], shipped)
        return menu

    def _name(self) -> None:
        words = " ".join(self.title.text().split())
        if words != self._shown_title:
            self.titled.emit(words)

    def _open(self, at: int) -> None:
        if at >= 0:
            self.opened.emit(at)

    def show_draft(self, draft: Draft) -> None:
        """Show the title and the parts."""
        title = title_of(draft)
        if title != self._shown_title or not self.title.hasFocus():
            self._shown_title = title
            if self.title.text() != title:
                self.title.setText(title)
                self.title.setCursorPosition(0)
        self.count.setText(coupons_word(draft.count))
        lines = [part_lines(part) for part in draft.parts]
        texts = [f"{at}. {name}\n{asked}" for at, (name, asked) in enumerate(lines, start=1)]
        with QSignalBlocker(self.list):
            while self.list.count() > len(texts):
                self.list.takeItem(self.list.count() - 1)
            for at, text in enumerate(texts):
                if at == self.list.count():
                    new = QListWidgetItem()
                    new.setSizeHint(QSize(0, _ROW))
                    self.list.addItem(new)
                item = self.list.item(at)
                item.setText(text)
                item.setToolTip(text)
                item.setData(Qt.ItemDataRole.AccessibleTextRole, text.replace("\n", ", "))
            self.list.setCurrentRow(draft.at)
        there = draft.part is not None
        self.remove.setEnabled(there)
        self.up.setEnabled(there and draft.at > 0)
        self.down.setEnabled(there and draft.at < len(draft.parts) - 1)
