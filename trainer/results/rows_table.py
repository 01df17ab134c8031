"""A table of rows: sorted by a click or by keys, sifted, copied; the choice outlives both."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, Final, Generic, TypeVar

from PySide6.QtCore import (
    QAbstractTableModel,
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QBrush, QColor, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from trainer.look.tokens import Theme
from trainer.results.arranging import Arranged, Column

__all__ = ["RowsModel", "RowsTable", "as_tsv"]

Row = TypeVar("Row")
Index = QModelIndex | QPersistentModelIndex

_ROW: Final = 28
"""Logical px: how high a row is, so that a finger finds it."""

_AIR: Final = 28
"""Logical px beside a column's words: padding, and the sign of the order."""

_WIDEST: Final = 320
_MEASURED: Final = 200
"""Rows that a column's width is taken from."""

_BLANKS: Final = str.maketrans({"\t": " ", "\n": " ", "\r": " "})


def as_tsv(lines: Sequence[Sequence[str]]) -> str:
    r"""Return rows as text that a spreadsheet takes: tabs between cells, one row a line.

    Examples
    --------
    >>> as_tsv([["code", "why"], ["K-07", "a\tb"]])
    'code\twhy\nK-07\ta b\n'
    """
    return "".join("\t".join(cell.translate(_BLANKS) for cell in line) + "\n" for line in lines)


class RowsModel(QAbstractTableModel, Generic[Row]):
    """What `Arranged` shows, for a view of Qt's.

    Parameters
    ----------
    columns
        Of the table.
    identity
        What a row is called by, for good: a choice hangs on it.
    """

    def __init__(
        self,
        columns: Sequence[Column[Row]],
        identity: Callable[[Row], str],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.arranged: Arranged[Row] = Arranged(columns, [])
        self.identity = identity
        self._brushes: dict[str, QBrush] = {}

    @property
    def columns(self) -> Sequence[Column[Row]]:
        """Of the table."""
        return self.arranged.columns

    def row(self, place: int) -> Row:
        """The row that is shown at a place."""
        return self.arranged.rows[self.arranged.order[place]]

    def change(self, do: Callable[[Arranged[Row]], None]) -> None:
        """Change what is shown, or in which order."""
        self.beginResetModel()
        do(self.arranged)
        self.endResetModel()

    def wear(self, theme: Theme) -> None:
        """Take the colours of a theme."""
        self._brushes = {
            "bad": QBrush(QColor(theme.role("fault"))),
            "good": QBrush(QColor(theme.role("good"))),
            "quiet": QBrush(QColor(theme.muted)),
        }

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  # as Qt has it
        """How many are shown."""
        return 0 if parent.isValid() else len(self.arranged.order)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  # as Qt has it
        """How many columns there are."""
        return 0 if parent.isValid() else len(self.columns)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        """What a cell says, and how it looks."""
        column = self.columns[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return column.text(self.row(index.row()))
        if role == Qt.ItemDataRole.ToolTipRole:
            text = column.text(self.row(index.row()))
            return text if len(text) > 24 else None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.number else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        if role == Qt.ItemDataRole.ForegroundRole and column.tone is not None:
            return self._brushes.get(column.tone(self.row(index.row())))
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{column.title}: {column.text(self.row(index.row()))}"
        return None

    def headerData(  # noqa: D102
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> Any:  # noqa: ANN401  # as Qt has it
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self.columns):
            return None
        column = self.columns[section]
        if role == Qt.ItemDataRole.DisplayRole:
            return column.title
        if role == Qt.ItemDataRole.ToolTipRole:
            return column.means
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.number else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        return None


class RowsTable(QTableView, Generic[Row]):
    """The table.

    Sorting and sifting leave what is chosen chosen, and the focus where it was.

    Parameters
    ----------
    columns, identity
        As of `RowsModel`.

    Signals
    -------
    opened(row)
        A row was asked for, by Return or a double click.
    moved()
        Another row, or another column, has the focus.
    arranged()
        Other rows are shown than before, or in another order.
    """

    opened = Signal(object)
    moved = Signal()
    arranged = Signal()

    def __init__(
        self,
        columns: Sequence[Column[Row]],
        identity: Callable[[Row], str],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.rows: RowsModel[Row] = RowsModel(columns, identity)
        self._wanted: tuple[str, int] = ("", 0)
        self._chosen: frozenset[str] = frozenset()
        self._choosing = False
        self.setModel(self.rows)
        self.setProperty("kind", "rows")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(_ROW)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        header = self.horizontalHeader()
        header.setSectionsClickable(True)
        header.setHighlightSections(False)
        header.sectionClicked.connect(self._sort_at)
        self.doubleClicked.connect(lambda index: self.opened.emit(self.rows.row(index.row())))
        selection = self.selectionModel()
        selection.currentChanged.connect(self._note)
        selection.selectionChanged.connect(self._note)

    # --- what is shown --------------------------------------------------------------------------

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows; a choice that is still among them stays."""
        self._change(lambda arranged: arranged.take(rows))
        self.fit_columns()

    def sort(self, by: str, *, descending: bool = False) -> None:
        """Put the rows in the order of a column."""
        self._change(lambda arranged: arranged.arrange(by, descending=descending))
        self._show_order()

    def sift(self, words: str = "", keeps: Callable[[Row], bool] | None = None) -> None:
        """Show only rows that say all of these words, and that `keeps` keeps."""
        self._change(lambda arranged: arranged.sift(words, keeps))

    def wear(self, theme: Theme) -> None:
        """Take the colours of a theme."""
        self.rows.wear(theme)
        self.viewport().update()

    def _change(self, do: Callable[[Arranged[Row]], None]) -> None:
        wanted, chosen = self._wanted, self._chosen
        across = self.horizontalScrollBar().value()
        self.rows.change(do)
        self._wanted, self._chosen = wanted, chosen
        self._choose_again()
        self.horizontalScrollBar().setValue(across)
        self.arranged.emit()
        self.moved.emit()

    def _choose_again(self) -> None:
        """Choose what was chosen before, where it is still shown."""
        name, column = self._wanted
        arranged, identity = self.rows.arranged, self.rows.identity
        if not name and not self._chosen:
            return
        places = {identity(arranged.rows[at]): place for place, at in enumerate(arranged.order)}
        selection, last = QItemSelection(), max(0, len(self.rows.columns) - 1)
        for one in self._chosen:
            if one in places:
                at = places[one]
                selection.select(self.rows.index(at, 0), self.rows.index(at, last))
        model = self.selectionModel()
        self._choosing = True
        if name in places:
            current = self.rows.index(places[name], min(column, last))
            model.setCurrentIndex(current, QItemSelectionModel.SelectionFlag.NoUpdate)
            self.scrollTo(current)
        model.select(selection, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        self._choosing = False

    def _note(self) -> None:
        """Remember what is chosen: a choice that a sieve hides comes back with what it hid."""
        if self._choosing:
            return
        index = self.currentIndex()
        if index.isValid():
            self._wanted = (self.rows.identity(self.rows.row(index.row())), index.column())
        self._chosen = frozenset(
            self.rows.identity(self.rows.row(one.row()))
            for one in self.selectionModel().selectedRows()
        )
        self.moved.emit()

    def _show_order(self) -> None:
        arranged, header = self.rows.arranged, self.horizontalHeader()
        header.setSortIndicatorShown(bool(arranged.sorted_by))
        names = [column.name for column in self.rows.columns]
        if arranged.sorted_by in names:
            order = (
                Qt.SortOrder.DescendingOrder if arranged.descending else Qt.SortOrder.AscendingOrder
            )
            header.setSortIndicator(names.index(arranged.sorted_by), order)

    def _sort_at(self, section: int) -> None:
        """Sort by a column; by the same again, the other way up."""
        column, arranged = self.rows.columns[section], self.rows.arranged
        again = arranged.sorted_by == column.name
        self.sort(column.name, descending=again and not arranged.descending)

    def fit_columns(self) -> None:
        """Make each column as wide as what it says; words at the end may have all that is left."""
        columns = self.rows.columns
        # A figure stands at the right of its column: stretched, it would be far from its row.
        self.horizontalHeader().setStretchLastSection(bool(columns) and not columns[-1].number)
        arranged, wide = self.rows.arranged, self.fontMetrics().horizontalAdvance
        shown = [arranged.rows[at] for at in arranged.order[:_MEASURED]]
        for at, column in enumerate(arranged.columns):
            texts = [column.title, *(column.text(row) for row in shown)]
            self.setColumnWidth(at, min(_WIDEST, max(map(wide, texts)) + _AIR))

    # --- what is chosen -------------------------------------------------------------------------

    @property
    def current(self) -> Row | None:
        """The row that has the focus."""
        index = self.currentIndex()
        return self.rows.row(index.row()) if index.isValid() else None

    @property
    def current_column(self) -> Column[Row] | None:
        """The column that has the focus."""
        index = self.currentIndex()
        return self.rows.columns[index.column()] if index.isValid() else None

    @property
    def chosen(self) -> list[Row]:
        """The rows that are chosen, in the order that they stand in."""
        places = sorted(index.row() for index in self.selectionModel().selectedRows())
        return [self.rows.row(place) for place in places]

    def choose(self, name: str) -> bool:
        """Choose one row by its identity; return whether it is shown."""
        arranged, identity = self.rows.arranged, self.rows.identity
        for place, at in enumerate(arranged.order):
            if identity(arranged.rows[at]) == name:
                index = self.rows.index(place, max(0, self.currentIndex().column()))
                flags = QItemSelectionModel.SelectionFlag
                self.selectionModel().setCurrentIndex(index, flags.ClearAndSelect | flags.Rows)
                return True
        return False

    def lines(self) -> list[list[str]]:
        """The titles and the chosen rows as text; all that is shown if fewer than two are chosen.

        One row alone is chosen by merely having the focus.
        """
        places = sorted(index.row() for index in self.selectionModel().selectedRows())
        return self.rows.arranged.lines(places if len(places) > 1 else None)

    def copy(self) -> None:
        """Put the chosen rows, or all that are shown, on the clipboard for a spreadsheet."""
        QGuiApplication.clipboard().setText(as_tsv(self.lines()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return opens a row, Ctrl+C copies."""
        row = self.current
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and row is not None:
            self.opened.emit(row)
        else:
            super().keyPressEvent(event)
