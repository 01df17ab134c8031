"""What each leaf of a rack would show on the open coupon, by either edge and on either member."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QColor
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from geometry.leaf import RACKS, RackName, rack
from geometry.lengths import Unit
from trainer.bench.words import piece_word, state_word
from trainer.figures import length_words
from trainer.look.tokens import Role, Theme
from trainer.shop.answers import SEATS, Answer, Answers, Seat
from trainer.shop.judged_panel import dress

__all__ = ["LeavesTable"]

_ROLES: Final[dict[str, Role]] = {
    "touch": "touch",
    "daylight": "daylight",
    "held off": "held off",
    "not seated": "not seated",
}


def _gap(answer: Answer, unit: Unit) -> str:
    gap = answer.reading.gap
    return "" if gap is None else length_words(gap, unit, decimals=2 if unit == "mm" else 3)


class LeavesTable(QWidget):
    """Rack, table, and whether a leaf is laid onto the picture.

    Signals
    -------
    rack_asked(name)
        Another rack is wanted.
    laid(mark, seat)
        A leaf is to be seen on the picture; an empty mark: none.
    placed()
        The leaf on the picture is to stay there, for learners to find what is wrong with it.
    """

    rack_asked = Signal(str)
    laid = Signal(str, int)
    placed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 6, 0, 0)
        column.setSpacing(6)
        row = QHBoxLayout()
        label = QLabel(self.tr("Rack"))
        label.setProperty("tone", "quiet")
        self.racks = QComboBox()
        self.racks.setAccessibleName(self.tr("Rack"))
        self.racks.addItems([self.tr("mm"), self.tr("inch"), self.tr("throat")])
        self.racks.activated.connect(lambda at: self.rack_asked.emit(RACKS[at]))
        self.off = QPushButton(self.tr("Take the leaf off"))
        self.off.clicked.connect(self._take_off)
        self.place = QPushButton(self.tr("Place it"))
        self.place.setToolTip(
            self.tr("Leave it there: learners are to find what is wrong with how it lies")
        )
        self.place.clicked.connect(self.placed)
        self.hint = QLabel()
        self.hint.setProperty("tone", "gloss")
        row.addWidget(label)
        row.addWidget(self.racks)
        row.addStretch(1)
        row.addWidget(self.hint)
        for button in (self.place, self.off):
            button.setProperty("kind", "segment")
            row.addWidget(button)
            button.hide()
        column.addLayout(row)
        self.table = QTableWidget(0, 4)
        heads = (self.tr("Leaf"), self.tr("Base leg"), self.tr("Upright leg"), self.tr("Throat"))
        self.table.setHorizontalHeaderLabels(heads)
        self.table.setAccessibleName(self.tr("What each leaf would show"))
        dress(self.table)
        # Whole rows: the head of the table never cuts one.
        self.table.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerItem)
        self.table.setProperty("kind", "close")
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.table.itemSelectionChanged.connect(self._lay)
        column.addWidget(self.table, 1)
        self._rack: RackName | None = None
        self._marks: list[str] = []
        self._shown: dict[tuple[str, Seat], tuple[Answer, bool, Unit, str]] = {}

    def show_rack(self, name: RackName) -> None:
        """Show which leaves there are."""
        if name == self._rack:
            return
        self._rack, self._shown = name, {}
        self._marks = [leaf.mark for leaf in rack(name)]
        with QSignalBlocker(self.racks), QSignalBlocker(self.table):
            self.racks.setCurrentIndex(RACKS.index(name))
            self.table.setRowCount(len(self._marks))
            for at, mark in enumerate(self._marks):
                for place in range(1 + len(SEATS)):
                    item = QTableWidgetItem(mark if place == 0 else "")
                    if place == 0:
                        item.setFlags(Qt.ItemFlag.ItemIsEnabled)
                    self.table.setItem(at, place, item)

    def show_laid(self, laid: tuple[str, int] | None) -> None:
        """Show which leaf lies on the picture, if any does."""
        there = laid is not None and laid[0] in self._marks
        with QSignalBlocker(self.table):
            if laid is None or not there:
                self.table.clearSelection()
            else:
                row, place = self._marks.index(laid[0]), 1 + laid[1]
                item = self.table.item(row, place)
                if item is not None and not item.isSelected():
                    item.setSelected(True)
        self.off.setVisible(there)
        self.place.setVisible(there)
        self.hint.setVisible(not there)

    def show_answers(self, answers: Answers, unit: Unit, theme: Theme) -> None:
        """Show what has been found so far; what is stale is pale."""
        self.hint.setText(self.tr("Gaps in {unit}; choose one to see it").format(unit=unit))
        for (mark, seat), answer in answers.found.items():
            stale = (mark, seat) in answers.stale
            shown = (answer, stale, unit, theme.name)
            if mark not in self._marks or self._shown.get((mark, seat)) == shown:
                continue
            self._shown[mark, seat] = shown
            item = self.table.item(self._marks.index(mark), 1 + SEATS.index(seat))
            if item is None:
                continue
            state = answer.reading.state
            colour = theme.disabled if stale else theme.role(_ROLES[state])
            gap = _gap(answer, unit)
            item.setText(f"{state_word(state)} {gap.removesuffix(f' {unit}')}".rstrip())
            item.setForeground(QColor(colour))
            said = f"{mark}: {state_word(state)} {gap}".rstrip()
            way = ", ".join(piece_word(piece) for piece in answer.reading.in_the_way)
            item.setToolTip(f"{said} ({way})" if way else said)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, item.toolTip())

    def _lay(self) -> None:
        row, place = self.table.currentRow(), self.table.currentColumn()
        if place >= 1 and 0 <= row < len(self._marks) and self.table.selectedItems():
            self.laid.emit(self._marks[row], place - 1)

    def _take_off(self) -> None:
        self.laid.emit("", 0)
