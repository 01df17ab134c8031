"""One learner's paper, gone through: items, marks with their reasons, and the handling again."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMenu, QPushButton, QSplitter, QVBoxLayout, QWidget

from exercises.sitting.marking import Override
from exercises.sitting.result import Item
from trainer.bench.picture import unit_of
from trainer.bench.state import BenchState
from trainer.bench.worded import toned, wrapped
from trainer.landing import Landing
from trainer.results.figures_of import seconds
from trainer.results.handling_view import HandlingView, state_of
from trainer.results.marks_panel import MarksPanel
from trainer.results.override_dialog import OverrideDialog, Setting
from trainer.results.paper import (
    ItemRow,
    MarkRow,
    attempt_of,
    grade_of,
    handling_of,
    item_rows,
    mark_rows,
)
from trainer.results.paper_table import called_words, paper_columns, right_words, title_of
from trainer.results.rows_table import RowsTable
from trainer.window import WindowFrame

__all__ = ["Paper", "PaperPage"]

_LEFT: Final = (340, 470, 760)
"""Logical px: least, usual and greatest width of the column beside the picture."""


@dataclass(frozen=True)
class Paper:
    """What is gone through.

    Parameters
    ----------
    id
        Of what was handed in.
    title
        Whose it is, and of which sitting.
    verdict
        What it came to, in a sentence.
    items, overrides
        As handed in, and what was set by hand since.
    """

    id: str
    title: str
    verdict: str
    items: tuple[Item, ...]
    overrides: tuple[Override, ...]


class PaperPage(QWidget):
    """The page.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.

    Signals
    -------
    left()
        Back to the class.
    overridden(number, setting)
        A mark of an item (by its number) is to be set by hand.
    export_asked(kind)
        What the learner did is to be written to a file.
    """

    left = Signal()
    overridden = Signal(int, object)
    export_asked = Signal(str)

    def __init__(self, window: WindowFrame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._window = window
        self.paper: Paper | None = None
        self._by = ""
        self._dialog: OverrideDialog | None = None
        self._shown: Item | None = None
        self._state: BenchState | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._head())
        self.verdict = wrapped("", "quiet")
        column.addWidget(self.verdict)
        self._split = QSplitter(Qt.Orientation.Horizontal)
        self._split.setChildrenCollapsible(False)
        self._split.addWidget(self._left())
        self.handling = HandlingView()
        self._split.addWidget(self.handling)
        self._split.setStretchFactor(0, 0)
        self._split.setStretchFactor(1, 1)
        column.addWidget(self._split, 1)
        window.theme_changed.connect(self._dress)
        window.settings_changed.connect(self._show_item)
        self._dress()

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.back = QPushButton(self.tr("Back to the class  Esc"))
        self.back.setProperty("kind", "segment")
        self.back.setAccessibleName(self.tr("Back to the class"))
        self.back.clicked.connect(self.left)
        row.addWidget(self.back)
        self.title = toned("", "title")
        row.addWidget(self.title, 1)
        self.export = QPushButton(self.tr("Export"))
        self.export.setProperty("kind", "segment")
        menu = QMenu(self.export)
        for words, kind in (
            (self.tr("This paper as a table (CSV)..."), "paper csv"),
            (self.tr("Everything of this learner (CSV)..."), "csv"),
            (self.tr("Statements (xAPI)..."), "xapi"),
            (self.tr("Sheet to print (PDF)..."), "pdf"),
            (self.tr("Sheet for screen readers (HTML)..."), "html"),
        ):
            action = menu.addAction(words)
            action.triggered.connect(lambda _=False, kind=kind: self.export_asked.emit(kind))
        self.export.setMenu(menu)
        row.addWidget(self.export)
        return row

    def _left(self) -> QWidget:
        self.items: RowsTable[ItemRow] = RowsTable(paper_columns(), lambda row: row.id)
        self.items.setAccessibleName(self.tr("Coupons of this paper"))
        self.items.setMinimumHeight(110)
        self.items.moved.connect(self._show_item)
        self.items.opened.connect(lambda _: self.handling.canvas.setFocus())
        self.marks = MarksPanel()
        self.marks.asked.connect(self._ask)
        self._down = QSplitter(Qt.Orientation.Vertical)
        self._down.setChildrenCollapsible(False)
        self._down.addWidget(self.items)
        self._down.addWidget(self.marks)
        self._down.setMinimumWidth(_LEFT[0])
        Landing(self, lambda: self.items)
        return self._down

    def minimumSizeHint(self) -> QSize:
        """Not what its parts would like: no window could become narrow."""
        return QSize(700, 320)

    # --- what is shown --------------------------------------------------------------------------

    def show_paper(self, paper: Paper) -> None:
        """Show a paper; of the same one, stay at the item that was looked at."""
        same = self.paper is not None and self.paper.id == paper.id
        self.paper, self._shown = paper, None
        self.title.setText(paper.title)
        self.verdict.setText(paper.verdict)
        with QSignalBlocker(self.items):
            self.items.show_rows(item_rows(paper.items, paper.overrides))
        if self.items.current is None or not same:
            self.items.selectRow(0)
        self._show_item()

    @property
    def shown(self) -> Item | None:
        """The item that is looked at."""
        row = self.items.current
        return row.item if row is not None else None

    def _show_item(self) -> None:
        item, paper = self.shown, self.paper
        if item is None or paper is None:
            return
        unit = unit_of(item.coupon, self._window.settings)
        title = self.tr("{number}  {title}").format(number=item.number, title=title_of(item))
        self.marks.show_marks(title, self._summary(item), mark_rows(item, paper.overrides), unit)
        self._order_stops()
        if item is not self._shown:
            state = state_of(item.coupon, attempt_of(item), grade_of(item), handling_of(item))
            self._shown, self._state = item, state
        self.handling.show_state(self._state, self._window.settings, self._window.theme)

    def _order_stops(self) -> None:
        """Tab goes on from the items to their marks, and from there to the picture."""
        replay = self.handling.replay.stops()
        stops = (self.items, *self.marks.stops(), self.handling.canvas, *replay)
        for one, following in pairwise(stops):
            QWidget.setTabOrder(one, following)

    def _summary(self, item: Item) -> str:
        if not item.answered:
            text = self.tr("Not answered. Right call: {right}. Looked at for {seconds} s.")
        else:
            text = self.tr("Call: {called}. Right call: {right}. {seconds} s in %n visit(s).", "",
                           item.visits)  # fmt: skip
        return text.format(
            called=called_words(item), right=right_words(item), seconds=seconds(item.ms)
        )

    def _dress(self) -> None:
        self.items.wear(self._window.theme)
        self._show_item()

    # --- what is done ---------------------------------------------------------------------------

    def _ask(self, row: MarkRow, back: bool) -> None:
        item = self.shown
        if item is None:
            return
        dialog = OverrideDialog(
            row.mark, row.graded, row.value, self._by, back=back, parent=self.window()
        )
        dialog.stated.connect(lambda said, number=item.number: self._set(number, said))
        dialog.finished.connect(lambda _: self._forget(dialog))
        self._dialog = dialog
        self._window.show_dialog(dialog)

    def _forget(self, dialog: OverrideDialog) -> None:
        if self._dialog is dialog:
            self._dialog = None

    def _set(self, number: int, said: Setting) -> None:
        self._by = said.by
        self.overridden.emit(number, said)

    def end_asking(self, trouble: str = "") -> bool:
        """Have the dialog that asked close, or say why it is not so; return whether it is open."""
        dialog = self._dialog
        if dialog is None:
            return False
        if trouble:
            dialog.refuse(trouble)
        else:
            dialog.accept()
        return True

    def lines(self) -> list[list[str]]:
        """The table as text."""
        return self.items.rows.arranged.lines()

    def hide_handling(self) -> None:
        """Play no further: nobody looks."""
        self.handling.stop()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the column beside the picture its share."""
        super().resizeEvent(event)
        least, usual, most = _LEFT
        wide = min(most, max(least, round(0.4 * self.width()), min(usual, self.width() - 620)))
        self._split.setSizes([wide, max(1, self.width() - wide)])
        high = self._down.height()
        self._down.setSizes([round(0.5 * high), round(0.5 * high)])
