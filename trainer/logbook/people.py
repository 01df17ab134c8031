"""Whose logbook it is, and what is done with it: the panel beside the pictures."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from trainer.logbook.store import Learner

__all__ = ["PeoplePanel"]

_TARGET: Final = 28
"""Logical px: how high a name is, so that a finger finds it."""


class PeoplePanel(QFrame):
    """Learners on this machine, and the buttons for their logbooks.

    Signals
    -------
    chosen(id)
        Somebody else is at the bench.
    asked(name)
        ``add``, ``rename``, ``erase``, ``csv``, ``xapi``, ``pdf``, ``html``, ``back up``,
        ``restore``.
    """

    chosen = Signal(str)
    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 12, 12, 12)
        column.setSpacing(8)
        title = QLabel(self.tr("Learners here"))
        title.setProperty("tone", "heading")
        column.addWidget(title)
        self.list = QListWidget()
        self.list.setProperty("kind", "tray")
        self.list.setSpacing(1)
        self.list.setAccessibleName(self.tr("Learners here"))
        self.list.currentItemChanged.connect(self._choose)
        column.addWidget(self.list, 1)
        hint = QLabel(self.tr("Whoever is chosen here is at the bench: calls are kept as theirs."))
        hint.setWordWrap(True)
        hint.setProperty("tone", "gloss")
        column.addWidget(hint)
        self.add = self._button(self.tr("Add learner..."), "add")
        self.rename = self._button(self.tr("Rename..."), "rename")
        self.erase = self._button(self.tr("Erase..."), "erase")
        self.export = self._menu_button(
            self.tr("Export"),
            (
                (self.tr("Sheet to print (PDF)..."), "pdf"),
                (self.tr("Sheet for screen readers (HTML)..."), "html"),
                (self.tr("Table of attempts (CSV)..."), "csv"),
                (self.tr("Statements (xAPI)..."), "xapi"),
            ),
        )
        self.copies = self._menu_button(
            self.tr("Backup"),
            (
                (self.tr("Back up all of it..."), "back up"),
                (self.tr("Put a backup back..."), "restore"),
            ),
        )
        for button in (self.add, self.rename, self.erase, self.export, self.copies):
            column.addWidget(button)

    def _button(self, words: str, name: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def _menu_button(self, words: str, entries: Sequence[tuple[str, str]]) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        menu = QMenu(button)
        for text, name in entries:
            action = menu.addAction(text)
            action.triggered.connect(lambda _=False, asked=name: self.asked.emit(asked))
        button.setMenu(menu)
        return button

    def show_learners(self, learners: Sequence[Learner], chosen: Learner | None) -> None:
        """Show who there is, and who is at the bench."""
        blocker = QSignalBlocker(self.list)
        self.list.clear()
        for learner in learners:
            item = QListWidgetItem(learner.name)
            item.setData(Qt.ItemDataRole.UserRole, learner.id)
            item.setSizeHint(QSize(0, _TARGET))
            self.list.addItem(item)
            if chosen is not None and learner.id == chosen.id:
                self.list.setCurrentItem(item)
        blocker.unblock()
        there = chosen is not None
        for button in (self.rename, self.erase, self.export, self.copies, self.add):
            button.setEnabled(there)

    def _choose(self, now: QListWidgetItem | None) -> None:
        if now is not None:
            self.chosen.emit(now.data(Qt.ItemDataRole.UserRole))
