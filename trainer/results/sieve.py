"""The row above a table: words to look for, choices to sift by, and the order."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final, Generic, TypeVar

from PySide6.QtCore import QSignalBlocker, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QLineEdit, QPushButton, QWidget

from trainer.cut_words import CutChoice
from trainer.results.rows_table import RowsTable

__all__ = ["Choice", "Option", "SieveBar"]

Row = TypeVar("Row")

_TYPING: Final = 120
"""ms after the last letter before it is looked for."""

_LONGEST: Final = 20
_NARROWER: Final = 0.85
"""Letters that a choice may ask room for, and how wide one is beside the letter Qt counts by."""

_NARROW: Final = 900
"""Logical px of the row below which how many are shown is left out."""


@dataclass(frozen=True)
class Option(Generic[Row]):
    """One thing to sift by; None keeps everything."""

    title: str
    keeps: Callable[[Row], bool] | None


@dataclass(frozen=True)
class Choice(Generic[Row]):
    """A chooser above a table: its name, and what it offers, the first of which is all."""

    name: str
    said: str
    options: Sequence[Option[Row]]


class SieveBar(QWidget, Generic[Row]):
    """Sifts and sorts a table.

    Parameters
    ----------
    table
        Which.
    find
        What stands in the empty field.

    Signals
    -------
    sifted()
        Something else is shown.
    """

    sifted = Signal()

    def __init__(self, table: RowsTable[Row], find: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._table = table
        self._choices: list[Choice[Row]] = []
        self.choosers: dict[str, QComboBox] = {}
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        self.field = QLineEdit()
        self.field.setPlaceholderText(find)
        self.field.setAccessibleName(find)
        self.field.setClearButtonEnabled(True)
        self.field.setMinimumWidth(110)
        self.field.setMaximumWidth(260)
        row.addWidget(self.field, 2)
        self._room = QHBoxLayout()
        self._room.setSpacing(8)
        row.addLayout(self._room)
        row.addStretch(1)
        self.count = QLabel()
        self.count.setProperty("tone", "quiet")
        row.addWidget(self.count)
        self.order = QComboBox()
        self.order.setAccessibleName(self.tr("Sort by"))
        self.order.setToolTip(self.tr("Sort by; a click on a column's title does the same"))
        self.order.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.order.setMinimumContentsLength(13)
        row.addWidget(self.order)
        self.down = QPushButton()
        self.down.setProperty("kind", "segment")
        self.down.setCheckable(True)
        row.addWidget(self.down)
        self._typing = QTimer(self, singleShot=True, interval=_TYPING)
        self._typing.timeout.connect(self.sift)
        self.field.textChanged.connect(lambda _: self._typing.start())
        self.field.returnPressed.connect(self.sift)
        self.order.activated.connect(lambda _: self._sort())
        self.down.clicked.connect(lambda _: self._sort())
        table.arranged.connect(self._show)
        self._fill_orders()
        self._show()

    def _fill_orders(self) -> None:
        self.order.addItem(self.tr("As they came"), "")
        for column in self._table.rows.columns:
            self.order.addItem(column.title, column.name)

    def offer(self, choices: Sequence[Choice[Row]]) -> None:
        """Offer these to sift by; what is chosen stays chosen where it is still there."""
        before = {name: chooser.currentText() for name, chooser in self.choosers.items()}
        self._choices = list(choices)
        for choice in choices:
            chooser = self.choosers.get(choice.name)
            if chooser is None:
                chooser = CutChoice()
                chooser.setAccessibleName(choice.said)
                chooser.setToolTip(choice.said)
                chooser.setSizeAdjustPolicy(
                    QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
                )
                chooser.setMinimumContentsLength(11)
                chooser.currentIndexChanged.connect(lambda _: self.sift())
                self.choosers[choice.name] = chooser
                self._room.addWidget(chooser)
            with QSignalBlocker(chooser):
                chooser.clear()
                titles = [option.title for option in choice.options]
                chooser.addItems(titles)
                # What is chosen at first is to be read whole; the others may be longer.
                chooser.setMinimumContentsLength(
                    min(_LONGEST, max(11, round(_NARROWER * len(titles[0]))))
                )
                chooser.setCurrentIndex(max(0, chooser.findText(before.get(choice.name, ""))))
        self.sift()

    def sift(self) -> None:
        """Show what the field and the choosers ask for."""
        self._typing.stop()
        asked = [
            choice.options[max(0, self.choosers[choice.name].currentIndex())].keeps
            for choice in self._choices
            if choice.options
        ]
        keeps = [one for one in asked if one is not None]
        self._table.sift(
            self.field.text(), (lambda row: all(one(row) for one in keeps)) if keeps else None
        )
        self.sifted.emit()

    def clear(self) -> None:
        """Show all."""
        self.field.clear()
        for chooser in self.choosers.values():
            with QSignalBlocker(chooser):
                chooser.setCurrentIndex(0)
        self.sift()

    def _sort(self) -> None:
        self._table.sort(str(self.order.currentData()), descending=self.down.isChecked())

    def _show(self) -> None:
        """Say how many are shown, and in which order."""
        arranged = self._table.rows.arranged
        shown, of = len(arranged.order), len(arranged.rows)
        text = self.tr("{shown} of {of}") if shown != of else self.tr("all {of}")
        self.count.setText(text.format(shown=shown, of=of) if of else "")
        with QSignalBlocker(self.order), QSignalBlocker(self.down):
            self.order.setCurrentIndex(max(0, self.order.findData(arranged.sorted_by)))
            self.down.setChecked(arranged.descending)
        up = self.tr("Smallest first"), "\N{UPWARDS ARROW}"
        down = self.tr("Largest first"), "\N{DOWNWARDS ARROW}"
        said, sign = down if arranged.descending else up
        self.down.setText(sign)
        self.down.setAccessibleName(said)
        self.down.setToolTip(said)
        self.down.setEnabled(bool(arranged.sorted_by))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave how many there are out where the room is short: the table says it by its length."""
        super().resizeEvent(event)
        self.count.setVisible(self.width() >= _NARROW)
