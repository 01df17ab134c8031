"""A page of fields, one below the other: headings, entries, choices; it scrolls where it must."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from geometry.lengths import Unit
from trainer.shop.choices import Check, Choice
from trainer.shop.entry import Entry, Measure, Take

__all__ = ["Form", "grid_of"]

Field = Entry | Choice | Check

_HIGH: Final = 32
"""Logical px of a row."""


def grid_of(holder: QWidget | None) -> QGridLayout:
    """Return a grid for labels and fields, in a widget of its own or in none yet."""
    grid = QGridLayout(holder) if holder is not None else QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(8)
    grid.setVerticalSpacing(0)
    grid.setColumnStretch(0, 1)
    grid.setColumnStretch(1, 1)
    grid.setColumnMinimumWidth(1, 140)
    return grid


class Form(QScrollArea):
    """A scrolling page of fields.

    Parameters
    ----------
    take, choose
        Take what is typed in any of them, and what is chosen.

    Signals
    -------
    settled()
        The end of a gesture.
    """

    settled = Signal()

    def __init__(self, take: Take, choose: Take, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.take, self.choose = take, choose
        self.fields: dict[str, Field] = {}
        self._places: dict[str, tuple[QGridLayout, int]] = {}
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        self.column = QVBoxLayout(holder)
        # Room for the ring of the focus, which lies outside of what has it.
        self.column.setContentsMargins(6, 6, 6, 6)
        self.column.setSpacing(4)
        self.setWidget(holder)
        self._grid: QGridLayout | None = None
        self._row = 0

    def heading(self, words: str) -> QLabel:
        """Begin a group of fields."""
        label = QLabel(words)
        label.setProperty("tone", "heading")
        if self._grid is not None:
            self.column.addSpacing(6)
        self.column.addWidget(label)
        self.group()
        return label

    def group(self) -> QGridLayout:
        """Begin a grid of its own, and return it."""
        self._grid, self._row = grid_of(None), 0
        self.column.addLayout(self._grid)
        return self._grid

    def put(self, field: Field) -> None:
        """Lay a field below the others."""
        self.fields[field.key] = field
        if self._grid is None:
            self.group()
        assert self._grid is not None
        if not (isinstance(field, Entry) and field.measure == "text"):
            self._places[field.key] = self._grid, self._row
            self._grid.setRowMinimumHeight(self._row, _HIGH)
        self._row = field.put(self._grid, self._row)

    def show_field(self, key: str, *, visible: bool) -> None:
        """Show a field or not; one that isn't leaves no gap."""
        self.fields[key].set_visible(visible)
        if key in self._places:
            grid, row = self._places[key]
            grid.setRowMinimumHeight(row, _HIGH if visible else 0)

    def entry(self, key: str, name: str, measure: Measure, *, optional: bool = False) -> Entry:
        """Lay an entry below the others."""
        entry = Entry(key, name, measure, self.take, optional=optional)
        entry.setParent(self)
        entry.settled.connect(self.settled)
        self.put(entry)
        return entry

    def widget_row(self, widget: QWidget) -> None:
        """Lay something else below the others."""
        self.column.addWidget(widget)
        self._grid = None

    def finish(self) -> None:
        """Leave the rest of the room empty."""
        self.column.addStretch(1)

    def show_entry(self, key: str, of: str, value: object, unit: Unit) -> None:
        """Show what a field says of one coupon."""
        field = self.fields[key]
        if isinstance(field, Entry):
            field.show_value(of, value, unit)
        else:
            field.show_value(value)
