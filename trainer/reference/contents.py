"""The list of entries, grouped; what is searched for leaves only what was found."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QFont, QKeyEvent, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QAbstractItemView, QTreeView, QWidget

from trainer.reference.book import Line

__all__ = ["Contents"]

_KEY: Final = Qt.ItemDataRole.UserRole
_HIGH: Final = 30
"""Logical pixels of a line: more than the least that can be hit."""


class Contents(QTreeView):
    """The list.

    Signals
    -------
    browsed
        The list has come to the entry with this key.
    asked
        The entry with this key should be read.
    """

    browsed = Signal(str)
    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entries = QStandardItemModel(self)
        self.setModel(self.entries)
        self.setHeaderHidden(True)
        self.setAccessibleName(self.tr("Entries"))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.setUniformRowHeights(True)
        self.setIndentation(16)
        self.setTabKeyNavigation(False)
        self.setAnimated(False)
        self._items: dict[str, QStandardItem] = {}
        self._silent = False
        self.selectionModel().currentChanged.connect(self._come_to)
        self.clicked.connect(self._click)
        self.activated.connect(self._ask)

    def show_lines(self, lines: Sequence[Line], *, found: bool) -> None:
        """Show other lines; what was found is all open to be seen, else each rule set is shut."""
        self._silent = True
        self.entries.clear()
        self._items = {}
        for line in lines:
            self.entries.appendRow(self._item(line, heading=True))
        self._silent = False
        for row in range(self.entries.rowCount()):
            self.setExpanded(self.entries.index(row, 0), True)
        if found:
            self.expandAll()

    def _item(self, line: Line, *, heading: bool = False) -> QStandardItem:
        item = QStandardItem(line.title)
        item.setData(line.key, _KEY)
        item.setToolTip(line.title)
        item.setSizeHint(QSize(0, _HIGH))
        if heading:
            font = QFont(self.font())
            font.setWeight(QFont.Weight.DemiBold)
            item.setFont(font)
        if line.key:
            self._items[line.key] = item
        for under in line.under:
            item.appendRow(self._item(under))
        return item

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys of the entries that are listed, in order."""
        return tuple(self._items)

    @property
    def current(self) -> str:
        """The key of the entry that the list stands at; empty at a heading."""
        return self._key(self.currentIndex())

    def index_of(self, key: str) -> QModelIndex:
        """Where an entry is listed; `KeyError` if it isn't."""
        return self._items[key].index()

    def stand_at(self, key: str) -> None:
        """Stand at an entry, if it is listed, without asking for it; else nowhere."""
        item = self._items.get(key)
        if key == self.current:
            return
        if item is None:
            if self.current:
                self.setCurrentIndex(QModelIndex())
            return
        self._silent = True
        self.setCurrentIndex(item.index())
        self.setExpanded(item.index(), True)
        self.scrollTo(item.index())
        self._silent = False

    def _key(self, index: QModelIndex) -> str:
        return str(index.data(_KEY) or "") if index.isValid() else ""

    def _come_to(self, now: QModelIndex, _: QModelIndex) -> None:
        key = self._key(now)
        if key and not self._silent:
            self.browsed.emit(key)

    def _ask(self, index: QModelIndex) -> None:
        key = self._key(index)
        if key:
            self.asked.emit(key)

    def _click(self, index: QModelIndex) -> None:
        """A heading opens and shuts wherever it is clicked; a rule set opens as it is shown."""
        if not self._key(index):
            self.setExpanded(index, not self.isExpanded(index))
        else:
            self.setExpanded(index, True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter reads on every platform; at a heading it opens and shuts."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            index = self.currentIndex()
            if self._key(index):
                self._ask(index)
            else:
                self.setExpanded(index, not self.isExpanded(index))
            return
        super().keyPressEvent(event)
