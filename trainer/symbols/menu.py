"""Choosing the standard that weld symbols are drawn by."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMenu, QWidget

from trainer.symbols.drawn import CONVENTIONS, Convention
from trainer.symbols.words import convention_word

__all__ = ["SymbolMenu"]


class SymbolMenu(QMenu):
    """A menu with the standards, and one entry that leaves it to the drawing.

    Signals
    -------
    chosen
        A convention, or None.
    """

    chosen = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTitle(self.tr("&Weld symbols"))
        group = QActionGroup(self)
        self.choices: dict[Convention | None, QAction] = {}
        for convention in (None, *CONVENTIONS):
            words = (
                self.tr("As the drawing's unit suggests")
                if convention is None
                else convention_word(convention)
            )
            action = QAction(words, self)
            action.setCheckable(True)
            action.triggered.connect(
                lambda _=False, convention=convention: self.chosen.emit(convention)
            )
            group.addAction(action)
            self.addAction(action)
            self.choices[convention] = action

    def show_choice(self, convention: Convention | None) -> None:
        """Tick the one that holds."""
        self.choices[convention].setChecked(True)
