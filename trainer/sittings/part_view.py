"""In the middle: coupons of the open part, ticked where they are asked; or what the dice make."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.words import face_word
from trainer.hint import Hint
from trainer.look.tokens import Theme
from trainer.shop.tray_list import title_word
from trainer.sittings.draft import Draft, FromDice, FromTray
from trainer.sittings.tick_table import Row, TickTable
from trainer.sittings.truths import Truths
from trainer.sittings.words import callout_short, part_lines, recipe_lines, right_words

__all__ = ["PartView"]

_NUMBER: Final = 1
_FACE: Final = 4
"""Columns that a narrow window does without."""


class PartView(QWidget):
    """The open part; where there is none, what a sitting is made of.

    Signals
    -------
    ticked(places, on)
        These coupons of the tray are to be asked, or not.
    asked(name)
        ``all``, ``none``, ``recipe``, ``dice``.
    """

    ticked = Signal(object, bool)
    asked = Signal(str)

    def __init__(self, truths: Truths, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        self._truths = truths
        self.rooms = QStackedWidget()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 8, 0, 0)
        whole.addWidget(self.rooms)
        self.rooms.addWidget(self._nothing())
        self.rooms.addWidget(self._tray())
        self.rooms.addWidget(self._dice())

    def _nothing(self) -> QWidget:
        self.empty = Hint(
            420,
            self.tr(
                "A sitting is made of coupons. Take them from a tray: then everybody is asked the "
                "same. Or let the dice make them: then each learner has their own, equally hard."
            ),
        )
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setSpacing(12)
        column.addStretch(2)
        column.addWidget(self.empty, alignment=Qt.AlignmentFlag.AlignHCenter)
        self.from_tray = QPushButton(self.tr("From a tray"))
        self.from_dice = QPushButton(self.tr("From dice..."))
        self.from_dice.clicked.connect(lambda: self.asked.emit("dice"))
        row = QHBoxLayout()
        row.addStretch(1)
        for button in (self.from_tray, self.from_dice):
            button.setProperty("kind", "tall")
            row.addWidget(button)
        row.addStretch(1)
        column.addLayout(row)
        column.addStretch(3)
        return holder

    def _tray(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self.tray_name = QLabel()
        self.tray_name.setProperty("tone", "heading")
        self.tray_name.setWordWrap(True)
        self.tray_asked = QLabel()
        self.tray_asked.setProperty("tone", "quiet")
        self.all = self._button(self.tr("Tick all"), "all")
        self.none = self._button(self.tr("Untick all"), "none")
        column.addWidget(self.tray_name)
        row = QHBoxLayout()
        row.addWidget(self.tray_asked, 1)
        row.addWidget(self.all)
        row.addWidget(self.none)
        column.addLayout(row)
        self.table = TickTable(
            (
                self.tr("No."),
                self.tr("Coupon"),
                self.tr("Calls for"),
                self.tr("Face"),
                self.tr("Right call"),
            ),
            self.tr("Coupons of the tray"),
        )
        self.table.ticked.connect(self.ticked)
        column.addWidget(self.table, 1)
        return holder

    def _dice(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        name = QLabel(self.tr("From dice"))
        name.setProperty("tone", "heading")
        said = QLabel(
            self.tr(
                "Each learner is asked other welds, in another order: the same number of each "
                "right call, face and trap, each as far from its limit as everybody's. The same "
                "learner gets the same paper whenever this sitting is opened."
            )
        )
        said.setWordWrap(True)
        said.setProperty("tone", "quiet")
        column.addWidget(name)
        column.addWidget(said)
        self._lines = QGridLayout()
        self._lines.setHorizontalSpacing(16)
        self._lines.setVerticalSpacing(6)
        self._lines.setColumnStretch(1, 1)
        column.addLayout(self._lines)
        self._values: list[QLabel] = []
        row = QHBoxLayout()
        self.recipe = self._button(self.tr("Change the recipe..."), "recipe")
        row.addWidget(self.recipe)
        row.addStretch(1)
        column.addLayout(row)
        column.addStretch(1)
        return holder

    def _button(self, words: str, name: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def set_narrow(self, narrow: bool) -> None:
        """Say less where there is no room."""
        for column in (_NUMBER, _FACE):
            self.table.setColumnHidden(column, narrow)

    def show_draft(self, draft: Draft, theme: Theme) -> None:
        """Show the open part."""
        part = draft.part
        if isinstance(part, FromTray):
            name, asked = part_lines(part)
            self.tray_name.setText(name)
            self.tray_asked.setText(asked)
            self.all.setEnabled(part.count < len(part.coupons))
            self.none.setEnabled(part.count > 0)
            self.table.show_rows(self._rows(part), theme)
            self.rooms.setCurrentIndex(1)
        elif isinstance(part, FromDice):
            self._show_recipe(part)
            self.rooms.setCurrentIndex(2)
        else:
            self.rooms.setCurrentIndex(0)

    def _rows(self, part: FromTray) -> list[Row]:
        rows = []
        for at, coupon in enumerate(part.coupons):
            truth = self._truths.of(coupon)
            cells = (
                str(at + 1),
                title_word(coupon),
                callout_short(coupon),
                face_word(truth.face),
                right_words(coupon, truth),
            )
            on = at in part.picked
            rows.append(Row(at, cells, on, f"{title_word(coupon)}\n{coupon.id}", quiet=not on))
        return rows

    def _show_recipe(self, part: FromDice) -> None:
        lines = recipe_lines(part.recipe)
        if not self._values:
            for row, (name, _) in enumerate(lines):
                label, value = QLabel(name), QLabel()
                label.setProperty("tone", "quiet")
                label.setAlignment(Qt.AlignmentFlag.AlignTop)
                value.setWordWrap(True)
                self._lines.addWidget(label, row, 0)
                self._lines.addWidget(value, row, 1)
                self._values.append(value)
        for value, (_, words) in zip(self._values, lines, strict=True):
            value.setText(words)
