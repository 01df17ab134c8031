"""A table with all that belongs to it: what it says, the sieve above, what a column means below."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final, Generic, TypeVar

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStackedLayout,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.worded import wrapped
from trainer.hint import Hint
from trainer.landing import Landing
from trainer.look.tokens import Theme
from trainer.results.arranging import Column
from trainer.results.rows_table import RowsTable
from trainer.results.sieve import Choice, SieveBar

__all__ = ["Tabled", "readable"]

Row = TypeVar("Row")

_LINE: Final = 880
"""Logical px that a line of words may be long: beyond some 120 letters an eye loses its line."""


def readable(label: QLabel) -> QHBoxLayout:
    """Return a row that holds words at its left, broken into lines that can be read."""
    label.setMaximumWidth(_LINE)
    row = QHBoxLayout()
    row.addWidget(label, 1)
    row.addStretch(0)
    return row


class Tabled(QWidget, Generic[Row]):
    """A table, its sieve, and words about both.

    Parameters
    ----------
    name
        Of the table, for a screen reader.
    find
        What stands in the empty field.
    columns, identity
        As of `RowsTable`.
    opens
        What the button says that opens the row that has the focus; none if it is empty.

    Signals
    -------
    opened(row)
        A row was asked for.
    """

    opened = Signal(object)

    def __init__(
        self, name: str, find: str, columns: Sequence[Column[Row]],
        identity: Callable[[Row], str], opens: str = "", parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.name, self._find, self._identity = name, find, identity
        self._theme: Theme | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self.said = wrapped("", "quiet")
        self.said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column.addLayout(readable(self.said))
        self._sieves = QVBoxLayout()
        column.addLayout(self._sieves)
        self._rooms = QStackedLayout()
        column.addLayout(self._rooms, 1)
        self.empty = Hint(420)
        self._rooms.addWidget(self._nothing())
        self._below = QVBoxLayout()
        column.addLayout(self._below)
        column.addLayout(self._foot(opens))
        self.table: RowsTable[Row]
        self.sieve: SieveBar[Row]
        self._made = False
        self.lay(columns)
        Landing(self, lambda: self.table)

    def _nothing(self) -> QFrame:
        """Where the table would be, what belongs there."""
        panel = QFrame()
        panel.setProperty("kind", "panel")
        column = QVBoxLayout(panel)
        column.addStretch(2)
        column.addWidget(self.empty, alignment=Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)
        self._void = panel
        return panel

    def _foot(self, opens: str) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.means = wrapped("", "gloss")
        self.means.setMinimumHeight(2 * self.means.fontMetrics().lineSpacing())
        row.addWidget(self.means, 1)
        self.copy = QPushButton(self.tr("Copy"))
        self.copy.setProperty("kind", "segment")
        self.copy.setToolTip(
            self.tr("Copy the chosen rows, or all that are shown, for a spreadsheet  Ctrl+C")
        )
        self.copy.clicked.connect(self._copy)
        row.addWidget(self.copy)
        self.open = QPushButton(opens)
        self.open.setVisible(bool(opens))
        self.open.setProperty("kind", "segment")
        self.open.clicked.connect(self._open)
        row.addWidget(self.open)
        return row

    def insert_below(self, label: QLabel) -> None:
        """Put words between the table and what its columns mean."""
        self._below.addLayout(readable(label))

    def lay(self, columns: Sequence[Column[Row]]) -> None:
        """Have these columns; another sitting asks for other skills."""
        if self._made:
            if [one.name for one in columns] == [one.name for one in self.table.rows.columns]:
                return
            for widget in (self.table, self.sieve):
                widget.setParent(None)
                widget.deleteLater()
        self._made = True
        self.table = RowsTable(columns, self._identity)
        self.table.setAccessibleName(self.name)
        self.sieve = SieveBar(self.table, self._find)
        self._sieves.addWidget(self.sieve)
        self._rooms.addWidget(self.table)
        self._rooms.setCurrentWidget(self.table)
        self.table.opened.connect(self.opened)
        self.table.moved.connect(self._explain)
        if self._theme is not None:
            self.table.wear(self._theme)
        self._explain()

    def show_rows(
        self, rows: Sequence[Row], choices: Sequence[Choice[Row]], said: str, empty: str
    ) -> None:
        """Show rows, what they can be sifted by, what is said of them; or why there are none."""
        self.said.setText(said)
        self.said.setVisible(bool(said))
        self.empty.setText(empty)
        self.table.show_rows(rows)
        self.sieve.offer(choices)
        for widget in (self.sieve, self.copy, self.means):
            widget.setVisible(bool(rows))
        self.open.setVisible(bool(rows and self.open.text()))
        self._rooms.setCurrentWidget(self.table if rows else self._void)
        if rows and self.table.current is None and self.table.rows.rowCount():
            self.table.setCurrentIndex(self.table.rows.index(0, 0))
        self._explain()

    def wear(self, theme: Theme) -> None:
        """Take the colours of a theme."""
        self._theme = theme
        self.table.wear(theme)

    def lines(self) -> list[list[str]]:
        """What is shown, as text with its titles."""
        return self.table.rows.arranged.lines()

    def _explain(self) -> None:
        """Say what the column means in which the focus is."""
        column, row = self.table.current_column, self.table.current
        self.open.setEnabled(row is not None)
        self.copy.setEnabled(bool(self.table.rows.arranged.order))
        if column is None:
            self.means.setText("")
            return
        text = self.tr("{title}: {means}").format(title=column.title, means=column.means)
        self.means.setText(text)

    def _copy(self) -> None:
        self.table.copy()

    def _open(self) -> None:
        row = self.table.current
        if row is not None:
            self.opened.emit(row)

    def minimumSizeHint(self) -> QSize:
        """Not what its parts would like: no window could become narrow."""
        return QSize(480, 220)
