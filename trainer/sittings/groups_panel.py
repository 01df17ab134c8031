"""At the left of the class: its groups, and what is done with them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from trainer.school.roster import Group
from trainer.sittings.plain_list import PlainList

__all__ = ["GroupsPanel"]

_ROW: Final = 30


class GroupsPanel(QFrame):
    """Everybody, and each group.

    Signals
    -------
    chosen(id)
        Of a group, or an empty one for everybody.
    asked(name)
        ``group new``, ``group rename``, ``group remove``.
    """

    chosen = Signal(str)
    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 10, 10, 10)
        column.setSpacing(8)
        title = QLabel(self.tr("Groups"))
        title.setProperty("tone", "heading")
        column.addWidget(title)
        self.list = PlainList()
        self.list.setProperty("kind", "tray")
        self.list.setAccessibleName(self.tr("Groups"))
        self.list.setSpacing(1)
        # How many are in it stays in sight.
        self.list.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.currentRowChanged.connect(self._choose)
        column.addWidget(self.list, 1)
        self.new = self._button(self.tr("New group..."), "group new")
        self.rename = self._button(self.tr("Rename..."), "group rename")
        self.remove = self._button(self.tr("Remove..."), "group remove")
        for button in (self.new, self.rename, self.remove):
            column.addWidget(button)

    def _button(self, words: str, name: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def _choose(self, at: int) -> None:
        item = self.list.item(at)
        if item is not None:
            self.chosen.emit(str(item.data(Qt.ItemDataRole.UserRole)))

    def show_groups(self, groups: Sequence[Group], everybody: int, chosen: str) -> None:
        """Show the groups, how many are in each, and which is chosen."""
        lines = [(self.tr("Everybody"), "", everybody)]
        lines += [(group.name, group.id, group.members) for group in groups]
        with QSignalBlocker(self.list):
            self.list.clear()
            for name, key, count in lines:
                item = QListWidgetItem(self.tr("{name} ({n})").format(name=name, n=count))
                item.setData(Qt.ItemDataRole.UserRole, key)
                item.setSizeHint(QSize(0, _ROW))
                item.setToolTip(name)
                self.list.addItem(item)
                if key == chosen:
                    self.list.setCurrentItem(item)
        for button in (self.rename, self.remove):
            button.setEnabled(bool(chosen))
