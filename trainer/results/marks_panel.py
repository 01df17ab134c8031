"""The marks of one item, each with its reasons, what was set by hand, and how to set it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from exercises.sitting.marking import Override
from geometry.lengths import Unit
from trainer.bench.glyph import Glyph
from trainer.bench.reasons import reason_text
from trainer.bench.worded import toned, wrapped
from trainer.results.figures_of import percent, when
from trainer.results.override_dialog import overridable_word
from trainer.results.paper import MarkRow

__all__ = ["MarksPanel"]

_FULL: Final = 1.0

_BESIDE: Final = 5
"""Logical px by which a line of words begins below the top of a button beside it."""


class MarksPanel(QFrame):
    """A list of marks.

    Signals
    -------
    asked(mark, back)
        A mark (`MarkRow`) is to be overridden; or, with `back`, put back as it was graded.
    """

    asked = Signal(object, bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 4, 8)
        column.setSpacing(4)
        self.title = toned("", "heading")
        self.title.setWordWrap(True)
        column.addWidget(self.title)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        column.addWidget(self._scroll, 1)
        self.buttons: dict[str, QPushButton] = {}
        self.backs: dict[str, QPushButton] = {}

    def show_marks(self, title: str, summary: str, rows: Sequence[MarkRow], unit: Unit) -> None:
        """Show an item's marks; whoever was at one of them stays there."""
        held = self._focused()
        self.title.setText(title)
        self.buttons, self.backs = {}, {}
        holder = QWidget()
        holder.setProperty("kind", "holder")
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 8, 0)
        column.setSpacing(8)
        if summary:
            column.addWidget(wrapped(summary, "quiet"))
        for row in rows:
            column.addWidget(self._row(row, unit))
        column.addStretch(1)
        self._scroll.setWidget(holder)
        if held in self.buttons:
            self.buttons[held].setFocus()

    def stops(self) -> list[QWidget]:
        """What Tab stops at, in order."""
        found: list[QWidget] = []
        for name, button in self.buttons.items():
            found.append(button)
            if name in self.backs:
                found.append(self.backs[name])
        return found

    def _focused(self) -> str:
        for buttons in (self.buttons, self.backs):
            for name, button in buttons.items():
                if button.hasFocus():
                    return name
        return ""

    def _row(self, row: MarkRow, unit: Unit) -> QWidget:
        holder = QWidget()
        line = QHBoxLayout(holder)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(8)
        # The sign, the mark and its button stand at one height, whatever is said below.
        sign = QVBoxLayout()
        sign.addSpacing(_BESIDE)
        sign.addWidget(Glyph(self._sign(row)))
        sign.addStretch(1)
        line.addLayout(sign)
        said = QVBoxLayout()
        said.addSpacing(_BESIDE)
        said.setSpacing(1)
        said.addWidget(self._value(row))
        for reason in row.reasons:
            said.addWidget(wrapped(reason_text(reason, unit), "quiet"))
        for one in row.history:
            said.addWidget(wrapped(self._story(one), "gloss"))
        said.addStretch(1)
        line.addLayout(said, 1)
        line.addLayout(self._acts(row))
        return holder

    def _sign(self, row: MarkRow) -> str:
        good = row.value == (0.0 if row.mark == "critical" else _FULL)
        if good:
            return "disc"
        return "ring" if not row.value or row.mark == "critical" else "slash"

    def _value(self, row: MarkRow) -> QLabel:
        """The mark; what it was graded stands struck out beside what was set by hand."""
        name = overridable_word(row.mark)
        now = self._said(row.mark, row.value)
        follows = row.mark == "score" and row.value != row.graded
        if not row.overridden and not follows:
            label = wrapped(f"{name}: {now}")
            label.setAccessibleName(f"{name}: {now}")
            return label
        was = self._said(row.mark, row.graded)
        label = QLabel()
        label.setTextFormat(Qt.TextFormat.RichText)
        label.setWordWrap(True)
        if row.overridden:
            text = self.tr("{name}: <s>{was}</s> <b>{now}</b>, set by hand")
            spoken = self.tr("{name}: {now}, set by hand; graded {was}")
        else:
            text = self.tr("{name}: <s>{was}</s> <b>{now}</b>, by what was set by hand")
            spoken = self.tr("{name}: {now}, by what was set by hand; graded {was}")
        label.setText(text.format(name=name, was=was, now=now))
        label.setAccessibleName(spoken.format(name=name, was=was, now=now))
        return label

    def _said(self, mark: str, value: float | None) -> str:
        if mark == "critical":
            return self.tr("yes") if value else self.tr("no")
        return self.tr("not marked") if value is None else percent(value)

    def _story(self, one: Override) -> str:
        text = self.tr("{at}, {by}: set to {value}. \u201c{reason}\u201d")
        return text.format(
            at=when(one.at), by=one.by, value=self._said(one.mark, one.value), reason=one.reason
        )

    def _acts(self, row: MarkRow) -> QVBoxLayout:
        acts = QVBoxLayout()
        acts.setSpacing(4)
        name = overridable_word(row.mark)
        button = self._button(self.tr("Override..."), self.tr("Override {mark}").format(mark=name))
        button.clicked.connect(lambda: self.asked.emit(row, False))
        self.buttons[row.mark] = button
        acts.addWidget(button)
        if row.overridden and row.graded is not None and row.value != row.graded:
            back = self._button(
                self.tr("Put back..."), self.tr("Put {mark} back as graded").format(mark=name)
            )
            back.clicked.connect(lambda: self.asked.emit(row, True))
            self.backs[row.mark] = back
            acts.addWidget(back)
        acts.addStretch(1)
        return acts

    def _button(self, words: str, said: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setAccessibleName(said)
        button.setToolTip(said)
        button.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        return button
