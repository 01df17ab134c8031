"""Fields that are a choice, or on or off: label and box, laid into a grid like the others."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QCheckBox, QComboBox, QGridLayout, QLabel

from trainer.shop.entry import Take, message_label

__all__ = ["Check", "Choice"]


class Choice:
    """A list to choose from.

    Parameters
    ----------
    key, name
        Which value, and what it is called.
    entries
        Pairs of value and words.
    take
        Takes what was chosen.
    """

    def __init__(self, key: str, name: str, entries: Sequence[tuple[str, str]], take: Take) -> None:
        self.key, self._take = key, take
        self._values: list[str] = []
        self.label = QLabel(name)
        self.label.setProperty("tone", "quiet")
        self.label.setWordWrap(True)
        self.box = QComboBox()
        self.box.setAccessibleName(name)
        self.box.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.box.setMinimumContentsLength(8)
        self.label.setBuddy(self.box)
        self.message = message_label()
        self.offer(entries)
        self.box.activated.connect(self._choose)

    def offer(self, entries: Sequence[tuple[str, str]]) -> None:
        """Offer other entries."""
        values = [value for value, _ in entries]
        if values != self._values:
            self._values = values
            with QSignalBlocker(self.box):
                self.box.clear()
                self.box.addItems([words for _, words in entries])

    def put(self, grid: QGridLayout, row: int, column: int = 0) -> int:
        """Lay it into a grid; return the row after it."""
        grid.addWidget(self.label, row, column)
        grid.addWidget(self.box, row, column + 1)
        grid.addWidget(self.message, row + 1, column, 1, 2)
        return row + 2

    def set_visible(self, visible: bool) -> None:
        """Show it or not."""
        for widget in (self.label, self.box):
            widget.setVisible(visible)
        self.message.setVisible(visible and bool(self.message.text()))

    def show_value(self, value: object) -> None:
        """Show what is chosen."""
        at = self._values.index(str(value)) if str(value) in self._values else -1
        with QSignalBlocker(self.box):
            self.box.setCurrentIndex(at)
        self._say("")

    def _say(self, wrong: str) -> None:
        self.message.setText(wrong)
        self.message.setVisible(bool(wrong) and not self.box.isHidden())
        self.box.setAccessibleDescription(wrong)

    def _choose(self, at: int) -> None:
        if 0 <= at < len(self._values):
            self._say(self._take(self.key, self._values[at]))


class Check:
    """A box to tick."""

    def __init__(self, key: str, name: str, take: Take) -> None:
        self.key, self._take = key, take
        self.box = QCheckBox(name)
        self.message = message_label()
        self.box.clicked.connect(self._tick)

    def put(self, grid: QGridLayout, row: int, column: int = 0) -> int:
        """Lay it into a grid, across both columns; return the row after it."""
        grid.addWidget(self.box, row, column, 1, 2)
        grid.addWidget(self.message, row + 1, column, 1, 2)
        return row + 2

    def set_visible(self, visible: bool) -> None:
        """Show it or not."""
        self.box.setVisible(visible)
        self.message.setVisible(visible and bool(self.message.text()))

    def show_value(self, value: object) -> None:
        """Show whether it is ticked."""
        with QSignalBlocker(self.box):
            self.box.setChecked(bool(value))
        self.message.setText("")
        self.message.hide()

    def _tick(self, on: bool) -> None:
        wrong = self._take(self.key, on)
        self.message.setText(wrong)
        self.message.setVisible(bool(wrong))
