"""The job card: what the coupon asks, and the readings taken so far."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from exercises.attempt import StatedReading
from exercises.callout import Callout
from exercises.signposts import entry_of_callout, entry_of_rules
from geometry.lengths import Unit
from trainer.bench import words
from trainer.bench.claim import ClaimView
from trainer.bench.glyph import STATE_GLYPHS, Glyph
from trainer.bench.look_up import LookUp
from trainer.bench.state import BenchState, asked_of, lies_in_the_air
from trainer.bench.worded import toned
from trainer.cut_words import CutLabel
from trainer.symbols.drawn import Convention, convention_for, symbol_of
from trainer.symbols.view import SymbolView
from trainer.symbols.words import called_for, marks_word, symbol_words

__all__ = ["JobCard", "ReadingRow"]

_ROW: Final = 26
"""Logical pixels: height of a reading's line."""


class ReadingRow(QWidget):
    """One stated reading, with a button that takes it back.

    Signals
    -------
    taken_back
        The button was pressed.
    """

    taken_back = Signal()

    def __init__(
        self, reading: StatedReading, *, aloft: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.reading = reading
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        seat = CutLabel(words.reading_seat(reading))
        row.addWidget(seat)
        # The seat says which edge it was, so the mark is enough.
        held, mark = words.reading_tool(reading), reading.leaf or ""
        if aloft:
            held = self.tr("{tool}, in mid-air").format(tool=held)
            mark = self.tr("{tool}, in mid-air").format(tool=mark)
        tool = QLabel(mark)
        tool.setToolTip(held)
        tool.setProperty("tone", "quiet")
        tool.setWordWrap(aloft)
        row.addWidget(tool, 1)
        shown = words.state_word(reading.state) if reading.state else ""
        if reading.state:
            row.addWidget(Glyph(STATE_GLYPHS[reading.state], self))
        row.addWidget(QLabel(shown))
        self.remove = QPushButton("\u00d7")
        self.remove.setProperty("kind", "small")
        self.remove.setFixedSize(26, _ROW)
        self.remove.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        words_of = f"{words.reading_seat(reading)}, {held}, {shown}"
        self.remove.setAccessibleName(self.tr("Take back: {reading}").format(reading=words_of))
        self.remove.setToolTip(self.tr("Take this reading back"))
        self.remove.clicked.connect(self.taken_back)
        row.addWidget(self.remove)


class JobCard(QFrame):
    """What is asked, and what has been read.

    Signals
    -------
    taken_back
        The place in the list of a reading to take back.
    rules_asked
        All the rules should be shown.
    entry_asked
        The entry of the reference with this key should be shown.
    """

    taken_back = Signal(int)
    rules_asked = Signal()
    entry_asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setAccessibleName(self.tr("Job card"))
        self._box = QVBoxLayout(self)
        box = self._box
        box.setSpacing(3)
        head = QHBoxLayout()
        head.addWidget(toned(self.tr("Job card"), "heading"))
        self._title = toned("", "quiet")
        self._title.setWordWrap(True)
        self._title.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        head.addWidget(self._title, 1)
        box.addLayout(head)
        self.symbol = SymbolView()
        box.addWidget(self.symbol)
        self._facts = QGridLayout()
        self._facts.setHorizontalSpacing(12)
        # Two rows are as high as their buttons: all of them stand the closer for it.
        self._facts.setVerticalSpacing(1)
        self._facts.setColumnStretch(1, 1)
        self._keys: list[QLabel] = []
        self._values = [self._fact(row, name) for row, name in enumerate(self._names())]
        box.addLayout(self._facts)
        self.rules = QPushButton(self.tr("all of them"))
        self.rules.setProperty("kind", "link")
        self.rules.setAccessibleName(self.tr("Read all the rules"))
        self.rules.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.rules.clicked.connect(self.rules_asked)
        last = len(self._values) - 1
        self._facts.addWidget(self.rules, last, 2)
        _, callout, _, rules = self._names()
        self.look_ups = (LookUp(callout), LookUp(rules))
        for row, button in zip((1, last), self.look_ups, strict=True):
            button.asked.connect(self.entry_asked)
            self._facts.addWidget(button, row, 3)
        self._line = QFrame()
        self._line.setProperty("kind", "line")
        self._line.setFixedHeight(1)
        box.addSpacing(2)
        box.addWidget(self._line)
        self.claim = ClaimView()
        box.addWidget(self.claim)
        self._add_readings(box)
        self._shown: tuple[StatedReading, ...] = ()
        self._short, self._sized, self._lines = False, False, 2
        self.rows: list[ReadingRow] = []

    def _add_readings(self, box: QVBoxLayout) -> None:
        self._taken = toned(self.tr("Readings taken"), "heading")
        box.addWidget(self._taken)
        self._none = toned(self.tr("None yet: seat a leaf and say what it shows."), "quiet")
        self._none.setWordWrap(True)
        # Some lines always have their room, more are scrolled to: nothing below moves away.
        self._readings = QScrollArea()
        self._readings.setWidgetResizable(True)
        self._readings.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._readings.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._readings.setFixedHeight(2 * _ROW + 2)
        inner = QWidget()
        inner.setProperty("kind", "holder")
        self._rows = QVBoxLayout(inner)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(2)
        self._rows.addWidget(self._none)
        self._rows.addStretch(1)
        self._readings.setWidget(inner)
        bar = self._readings.verticalScrollBar()
        bar.rangeChanged.connect(lambda _, last: bar.setValue(last))
        box.addWidget(self._readings)

    def set_compact(self, compact: bool) -> None:
        """Stand closer where room is short."""
        side = 10 if compact else 18
        self._box.setContentsMargins(side, 7, side, 7)

    def set_short(self, short: bool) -> None:
        """Draw the symbol lower where height is short, and show fewer readings at once."""
        self.symbol.setFixedHeight(50 if short else 60)
        self._short = short
        self._fit_readings()

    def _names(self) -> tuple[str, str, str, str]:
        return self.tr("Task"), self.tr("Called for"), self.tr("Joint"), self.tr("Rules")

    def _fact(self, row: int, name: str) -> QLabel:
        key = toned(name, "quiet")
        key.setAlignment(Qt.AlignmentFlag.AlignVCenter)
        value = QLabel()
        value.setWordWrap(True)
        value.setAlignment(Qt.AlignmentFlag.AlignVCenter)
        self._keys.append(key)
        self._facts.addWidget(key, row, 0)
        # Two rows leave room for their buttons.
        columns = {1: 2, len(self._names()) - 1: 1}.get(row, 3)
        self._facts.addWidget(value, row, 1, 1, columns)
        return value

    def show_state(self, state: BenchState, unit: Unit, symbols: Convention | None) -> None:
        """Show the state's coupon and readings, lengths in `unit`, the symbol as `symbols` has it.

        None draws it by the standard that the drawing's unit suggests.
        """
        coupon = state.coupon
        title = coupon.title.in_language(words.language())
        self._title.setText(" \u00b7 ".join(part for part in (coupon.id, title) if part))
        convention = convention_for(coupon.callout, symbols)
        self.symbol.show_symbol(
            symbol_of(coupon.callout, convention),
            symbol_words(coupon.callout, convention, unit),
        )
        facts = (
            words.task_words(coupon.task),
            self._asked(coupon.callout, unit),
            words.joint_words(coupon.section, unit),
            words.rules_word(coupon.rule_set),
        )
        for label, text in zip(self._values, facts, strict=True):
            label.setText(text)
        # Judging is what every coupon asks unless it says otherwise.
        for label in (self._keys[0], self._values[0]):
            label.setVisible(coupon.task != "judge")
        self.rules.setToolTip(words.rules_lines(coupon))
        of_callout, of_rules = self.look_ups
        of_callout.key = entry_of_callout(coupon.callout)
        of_rules.key = entry_of_rules(coupon.rule_set)
        self.claim.show_coupon(coupon)
        reads = "reading" in asked_of(coupon)
        for part in (self._taken, self._readings):
            part.setVisible(reads)
        self._sized = "size" in asked_of(coupon)
        # Judging takes two readings, mostly; a size or an exercise in reading takes more.
        self._lines = 2 if coupon.task == "judge" else 4
        self._fit_readings()
        if state.readings != self._shown:
            self._show_readings(state)
        for row in self.rows:
            row.remove.setVisible(state.phase == "handling")

    def _fit_readings(self) -> None:
        """Give the readings their lines; where height is short a size needs the room below."""
        lines = 2 if self._short and self._sized else self._lines
        self._readings.setFixedHeight(lines * _ROW + 2)

    def _asked(self, callout: Callout, unit: Unit) -> str:
        """What is called for; sides and marks only where they aren't the usual."""
        asked = called_for(callout, unit)
        usual = (callout.side, callout.all_around, callout.site, callout.tail)
        if usual == ("arrow", False, False, ""):
            return asked
        return f"{asked}; {marks_word(callout)}"

    def _show_readings(self, state: BenchState) -> None:
        self._shown = readings = state.readings
        for row in self.rows:
            self._rows.removeWidget(row)
            row.setParent(None)
            row.deleteLater()
        self.rows = [
            ReadingRow(reading, aloft=lies_in_the_air(state, reading)) for reading in readings
        ]
        for index, row in enumerate(self.rows):
            row.taken_back.connect(lambda index=index: self.taken_back.emit(index))
            self._rows.insertWidget(self._rows.count() - 1, row)
        self._none.setVisible(not readings)
