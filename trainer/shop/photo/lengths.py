"""A field for a known length: sums in either unit; what is wrong stands under it."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from geometry.lengths import Unit
from trainer.bench.worded import wrapped
from trainer.figures import length_words, number_words
from trainer.shop.expressions import EntryError, parse_number, parse_value
from trainer.shop.words import entry_words

__all__ = ["KnownField"]

_LARGEST = 1000.0


class KnownField(QWidget):
    """Name and field of a length, or of one side of a ratio.

    Signals
    -------
    entered(value)
        A length above zero, mm, or a bare number.
    """

    entered = Signal(float)

    def __init__(self, name: str, *, bare: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bare = bare
        self._unit: Unit = "mm"
        self._shown = ""
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(2)
        row = QHBoxLayout()
        row.setSpacing(8)
        self.label = QLabel(name)
        self.label.setProperty("tone", "quiet")
        self.field = QLineEdit()
        self.field.setFixedWidth(130)
        self.field.setAccessibleName(name)
        self.label.setBuddy(self.field)
        row.addWidget(self.label, 1)
        row.addWidget(self.field)
        box.addLayout(row)
        self.message = wrapped("", "wrong")
        self.message.hide()
        box.addWidget(self.message)
        self.field.editingFinished.connect(self._enter)

    def show_value(self, value: float | None, unit: Unit) -> None:
        """Show what is known."""
        self._unit = unit
        said = "" if value is None else number_words(value) if self._bare else ""
        if value is not None and not self._bare:
            said = length_words(value, unit)
        if said != self._shown:
            self._shown = said
            with QSignalBlocker(self.field):
                self.field.setText(said)
            self._say("")

    def _enter(self) -> None:
        text = self.field.text().strip()
        if text == self._shown:
            self._say("")
            return
        measure = "count" if self._bare else "length"
        try:
            value = parse_number(text) if self._bare else parse_value(text, self._unit)
        except EntryError as error:
            self._say(entry_words(error, text, measure))
            return
        if not 0.0 < value <= _LARGEST:
            said = self.tr("This has to be more than 0, and at most 1000 mm")
            self._say(self.tr("This has to be more than 0") if self._bare else said)
            return
        self._shown = "?"
        self._say("")
        self.entered.emit(value)

    def _say(self, words: str) -> None:
        self.message.setText(words)
        self.message.setVisible(bool(words))
        self.field.setProperty("wrong", bool(words))
        self.field.style().unpolish(self.field)
        self.field.style().polish(self.field)
        self.field.setAccessibleDescription(words)
