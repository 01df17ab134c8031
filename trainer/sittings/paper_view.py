"""In the middle: what one learner is asked, with the right calls; for the instructor's eyes."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from exercises.coupon import Coupon
from trainer.bench.words import face_word
from trainer.look.tokens import Theme
from trainer.shop.tray_list import title_word
from trainer.sittings.checking import Checked
from trainer.sittings.tick_table import Row, TickTable
from trainer.sittings.truths import Truths
from trainer.sittings.words import callout_short, outline_words, right_words

__all__ = ["PaperView"]


class PaperView(QWidget):
    """Whose paper, how much it is, and its coupons.

    Signals
    -------
    code_asked(code)
        Somebody else's paper; an empty code is anybody's.
    others_asked()
        The papers are to be drawn anew.
    """

    code_asked = Signal(str)
    others_asked = Signal()

    def __init__(self, truths: Truths, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        self._truths = truths
        self._codes: list[str] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(6)
        row = QHBoxLayout()
        label = QLabel(self.tr("Paper of"))
        label.setProperty("tone", "quiet")
        self.whose = QComboBox()
        self.whose.setAccessibleName(self.tr("Whose paper is shown"))
        self.whose.setMinimumContentsLength(14)
        self.whose.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.whose.activated.connect(lambda at: self.code_asked.emit(self._codes[at]))
        label.setBuddy(self.whose)
        self.others = QPushButton(self.tr("Draw other papers"))
        self.others.setProperty("kind", "segment")
        self.others.setMinimumHeight(28)
        self.others.setToolTip(
            self.tr("Another order, and other welds from the dice, for every learner")
        )
        self.others.clicked.connect(self.others_asked)
        row.addWidget(label)
        row.addWidget(self.whose)
        row.addStretch(1)
        row.addWidget(self.others)
        column.addLayout(row)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.said.setProperty("tone", "quiet")
        column.addWidget(self.said)
        self.eyes = QLabel(
            self.tr("With the right calls: for your eyes, not for those who will sit it.")
        )
        self.eyes.setWordWrap(True)
        self.eyes.setProperty("tone", "warning")
        column.addWidget(self.eyes)
        self.table = TickTable(
            (
                self.tr("No."),
                self.tr("Coupon"),
                self.tr("Calls for"),
                self.tr("Face"),
                self.tr("Right call"),
            ),
            self.tr("The paper"),
            boxes=False,
        )
        column.addWidget(self.table, 1)
        self.nothing = QLabel()
        self.nothing.setWordWrap(True)
        self.nothing.setProperty("tone", "quiet")
        self.nothing.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column.addWidget(self.nothing, 1)

    def set_narrow(self, narrow: bool) -> None:
        """Say less where there is no room."""
        self.table.setColumnHidden(0, narrow)

    def show_codes(self, codes: Sequence[str], names: Sequence[str], code: str) -> None:
        """Offer whose paper can be looked at, and say whose is shown."""
        self._codes = ["", *codes]
        entries = [self.tr("Somebody without a code")] if not codes else [self.tr("Anybody")]
        entries += [
            f"{one} \u00b7 {name}" if name else one for one, name in zip(codes, names, strict=True)
        ]
        with QSignalBlocker(self.whose):
            now = [self.whose.itemText(at) for at in range(self.whose.count())]
            if now != entries:
                self.whose.clear()
                self.whose.addItems(entries)
            self.whose.setCurrentIndex(self._codes.index(code) if code in self._codes else 0)

    def show_checked(self, checked: Checked | None, minutes: float, theme: Theme) -> None:
        """Show a paper; None while it is being drawn."""
        paper = checked.paper if checked is not None else None
        there = bool(paper)
        for widget in (self.said, self.eyes, self.table, self.others):
            widget.setVisible(there)
        self.nothing.setVisible(not there)
        if checked is None:
            self.nothing.setText(self.tr("Drawing the paper..."))
        elif not there:
            self.nothing.setText(
                self.tr("There is no paper yet: choose coupons that can be asked first.")
            )
        elif checked.outline is not None and paper is not None:
            self.said.setText("\n".join(outline_words(checked.outline, minutes)))
            self.table.show_rows(self._rows(paper), theme)

    def _rows(self, paper: Sequence[Coupon]) -> list[Row]:
        rows = []
        for at, coupon in enumerate(paper):
            truth = self._truths.of(coupon)
            cells = (
                str(at + 1),
                title_word(coupon),
                callout_short(coupon),
                face_word(truth.face),
                right_words(coupon, truth),
            )
            rows.append(Row(at, cells, tip=f"{title_word(coupon)}\n{coupon.id}"))
        return rows
