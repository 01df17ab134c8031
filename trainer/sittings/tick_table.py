"""A table whose rows are ticked: by a click on the box, by Space for all rows that are chosen."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import (
    QAbstractItemModel,
    QEvent,
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QSignalBlocker,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPainterPath, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from trainer.look.tokens import LIGHT, Theme
from trainer.shop.judged_panel import dress
from trainer.sittings.plain_list import is_typed

__all__ = ["Row", "TickTable"]

_Index = QModelIndex | QPersistentModelIndex
_ROW: Final = 28
_BOX: Final = 16
_TICKS: Final = 40
_WIDEST: Final = 420
_NARROWEST: Final = 104
"""Logical px: how high a row is, a box, how wide the column of boxes, and one that stretches."""


@dataclass(frozen=True, slots=True)
class Row:
    """A row.

    Parameters
    ----------
    key
        Which one; what stays chosen when the rows are shown anew goes by it.
    cells
        What it says, after the box.
    ticked
        Whether its box is ticked; None where it has none.
    tip
        More of it.
    quiet
        Whether it is of less weight than others.
    """

    key: object
    cells: tuple[str, ...]
    ticked: bool | None = None
    tip: str = ""
    quiet: bool = False


class _Box(QStyledItemDelegate):
    """The column of boxes: all of a cell is the target."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme: Theme = LIGHT

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        bare = QStyleOptionViewItem(option)
        self.initStyleOption(bare, index)
        bare.features &= ~QStyleOptionViewItem.ViewItemFeature.HasCheckIndicator
        bare.text = ""
        view = bare.widget
        view.style().drawControl(QStyle.ControlElement.CE_ItemViewItem, bare, painter, view)
        state = index.data(Qt.ItemDataRole.CheckStateRole)
        if state is None:
            return
        t, room = self.theme, bare.rect
        box = QRect(0, 0, _BOX, _BOX)
        box.moveCenter(room.center())
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        on = Qt.CheckState(state) == Qt.CheckState.Checked
        painter.setPen(QPen(QColor(t.accent if on else t.outline), 1.0))
        painter.setBrush(QColor(t.accent if on else t.raised))
        painter.drawRoundedRect(box.toRectF().adjusted(0.5, 0.5, -0.5, -0.5), 4.0, 4.0)
        if on:
            mark = QPainterPath()
            mark.moveTo(box.left() + 4.0, box.top() + 8.4)
            mark.lineTo(box.left() + 7.0, box.top() + 11.4)
            mark.lineTo(box.left() + 12.2, box.top() + 4.8)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(t.accent_ink), 2.0))
            painter.drawPath(mark)
        painter.restore()

    def editorEvent(
        self,
        event: QEvent,
        model: QAbstractItemModel,
        option: QStyleOptionViewItem,
        index: _Index,
    ) -> bool:
        """A click anywhere in the cell turns the box over; keys are the table's."""
        if event.type() != QEvent.Type.MouseButtonRelease or not isinstance(event, QMouseEvent):
            return False
        state = index.data(Qt.ItemDataRole.CheckStateRole)
        if state is None or event.button() != Qt.MouseButton.LeftButton:
            return False
        on = Qt.CheckState(state) != Qt.CheckState.Checked
        model.setData(
            index,
            Qt.CheckState.Checked if on else Qt.CheckState.Unchecked,
            Qt.ItemDataRole.CheckStateRole,
        )
        return True


class TickTable(QTableWidget):
    """The table.

    Parameters
    ----------
    heads
        What stands over the columns; that of the boxes has none.
    name
        What it is called for a screen reader.
    boxes
        Whether there is a column of boxes.
    stretch
        Place among `heads` of the column that takes what room is left, so far as it is of use:
        what stands in one row is to be read as one.

    Signals
    -------
    ticked(keys, on)
        Boxes of these rows are to be ticked, or not: what it shows is shown anew by whoever knows.
    chosen()
        Other rows are chosen.
    """

    ticked = Signal(object, bool)
    chosen = Signal()

    def __init__(
        self,
        heads: Sequence[str],
        name: str,
        *,
        boxes: bool = True,
        stretch: int = 1,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(0, len(heads) + boxes, parent)
        self._boxes = boxes
        self._rows: tuple[Row, ...] = ()
        self.setHorizontalHeaderLabels([""] * boxes + list(heads))
        self.setAccessibleName(name)
        dress(self)
        self.verticalHeader().setDefaultSectionSize(_ROW)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        header = self.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self._wide = stretch + boxes
        header.setSectionResizeMode(self._wide, QHeaderView.ResizeMode.Stretch)
        self._box = _Box(self)
        if boxes:
            header.setSectionResizeMode(0, QHeaderView.ResizeMode.Fixed)
            self.setColumnWidth(0, _TICKS)
            self.setItemDelegateForColumn(0, self._box)
        self.itemChanged.connect(self._hear)
        self.itemSelectionChanged.connect(self.chosen)

    def show_rows(self, rows: Sequence[Row], theme: Theme) -> None:
        """Show rows; what was chosen stays so, by its key."""
        before = set(self.chosen_keys)
        at = self.currentRow()
        here = self._rows[at].key if 0 <= at < len(self._rows) else None
        again = theme is not self._box.theme
        self._box.theme = theme
        if tuple(rows) == self._rows and not again:
            return
        with QSignalBlocker(self):
            old, self._rows = self._rows, tuple(rows)
            same = [row.key for row in old] == [row.key for row in self._rows]
            if len(old) != len(self._rows):
                self.setRowCount(len(self._rows))
            for place, row in enumerate(self._rows):
                if again or not same or row != old[place]:
                    self._write(place, row, theme)
            if not same:
                self._choose_again(before, here)
        self._share_room()
        if not same:
            self.chosen.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The column that stretches does so only while the next stays in sight of it."""
        super().resizeEvent(event)
        self._share_room()

    def _share_room(self) -> None:
        header, wide = self.horizontalHeader(), self._wide
        others = sum(
            max(header.sectionSizeHint(column), self.sizeHintForColumn(column))
            for column in range(self.columnCount())
            if column != wide and not self.isColumnHidden(column)
        )
        own = max(header.sectionSizeHint(wide), self.sizeHintForColumn(wide))
        most, least = max(_WIDEST, own), min(_NARROWEST, own)
        left = self.viewport().width() - others
        ample, fixed = left > most, not least <= left <= most
        mode = QHeaderView.ResizeMode.Fixed if fixed else QHeaderView.ResizeMode.Stretch
        if header.sectionResizeMode(wide) != mode:
            header.setSectionResizeMode(wide, mode)
        header.setStretchLastSection(ample)
        if fixed:
            # Where there is no room for it the table is moved sideways: a name can be read.
            self.setColumnWidth(wide, most if ample else least)

    def _write(self, place: int, row: Row, theme: Theme) -> None:
        cells = ("", *row.cells) if self._boxes else row.cells
        for column, text in enumerate(cells):
            item = self.item(place, column)
            if item is None:
                item = QTableWidgetItem()
                self.setItem(place, column, item)
            item.setText(text)
            item.setToolTip(row.tip or text)
            item.setForeground(QColor(theme.muted if row.quiet else theme.ink))
            flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
            if column == 0 and self._boxes and row.ticked is not None:
                flags |= Qt.ItemFlag.ItemIsUserCheckable
                on = Qt.CheckState.Checked if row.ticked else Qt.CheckState.Unchecked
                item.setCheckState(on)
                item.setData(Qt.ItemDataRole.AccessibleTextRole, " ".join(row.cells))
            item.setFlags(flags)

    def _choose_again(self, keys: set[object], here: object) -> None:
        self.clearSelection()
        mode = self.selectionMode()
        self.setSelectionMode(QAbstractItemView.SelectionMode.MultiSelection)
        for place, row in enumerate(self._rows):
            if row.key in keys:
                self.selectRow(place)
        self.setSelectionMode(mode)
        found = next((place for place, row in enumerate(self._rows) if row.key == here), -1)
        if found >= 0:
            model = self.selectionModel()
            model.setCurrentIndex(self.model().index(found, 0), model.SelectionFlag.NoUpdate)

    @property
    def rows(self) -> tuple[Row, ...]:
        """What it shows."""
        return self._rows

    @property
    def chosen_keys(self) -> list[object]:
        """The keys of the rows that are chosen, in order."""
        places = sorted({index.row() for index in self.selectionModel().selectedRows()})
        return [self._rows[place].key for place in places if place < len(self._rows)]

    def choose(self, key: object) -> None:
        """Choose one row, if it is there."""
        for place, row in enumerate(self._rows):
            if row.key == key:
                self.setCurrentCell(place, 0)
                self.selectRow(place)

    def _hear(self, item: QTableWidgetItem) -> None:
        place = item.row()
        if item.column() != 0 or not self._boxes or place >= len(self._rows):
            return
        on = item.checkState() == Qt.CheckState.Checked
        row = self._rows[place]
        if row.ticked is not None and row.ticked != on:
            # Until whoever knows shows it so, it isn't.
            with QSignalBlocker(self):
                before = Qt.CheckState.Checked if row.ticked else Qt.CheckState.Unchecked
                item.setCheckState(before)
            self.ticked.emit([row.key], on)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space ticks all rows that are chosen, or unticks them if all of them are."""
        chosen = set(map(id, self.chosen_keys)) if self._boxes else set()
        rows = [row for row in self._rows if id(row.key) in chosen and row.ticked is not None]
        if event.key() == Qt.Key.Key_Space and not event.modifiers() and rows:
            self.ticked.emit([row.key for row in rows], not all(row.ticked for row in rows))
            return
        turns = event.key() in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown)
        if is_typed(event) or (turns and event.modifiers() & Qt.KeyboardModifier.ControlModifier):
            # Keys of the page around it, and those that lead to another page.
            event.ignore()
            return
        super().keyPressEvent(event)
