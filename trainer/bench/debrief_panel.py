"""What came of a call: score, right and stated, marks, reasons, readings, true measures."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from exercises.grading import Grade
from geometry.lengths import Unit, format_length
from trainer.bench import words
from trainer.bench.glyph import Glyph
from trainer.bench.reasons import mark_word, measure_word, reason_text, what_it_shows
from trainer.bench.state import BenchState
from trainer.bench.truth import Told, Truth

__all__ = ["DebriefPanel", "NextBar"]

_MEASURES = (
    "leg_base",
    "leg_upright",
    "actual_throat",
    "theoretical_throat",
    "effective_throat",
    "effective_size",
    "convexity",
    "concavity",
)


class DebriefPanel(QFrame):
    """The debrief in words.

    Signals
    -------
    reading_asked
        A stated reading to look at.
    """

    reading_asked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setAccessibleName(self.tr("Debrief"))
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(18, 14, 18, 16)
        self._box.setSpacing(6)
        self._parts: list[QWidget] = []
        self.readings: list[QPushButton] = []

    def fill(self, state: BenchState, truth: Truth, told: tuple[Told, ...], unit: Unit) -> None:
        """Say what came of the state's call."""
        for part in self._parts:
            self._box.removeWidget(part)
            part.setParent(None)
            part.deleteLater()
        self._parts, self.readings = [], []
        if state.grade is None:
            return
        self._add_score(state, state.grade)
        self._add_reasons(state.grade, unit)
        teaches = state.coupon.teaches.in_language(words.language())
        if teaches:
            self._add_heading(self.tr("What this coupon teaches"))
            self._add(_wrapped(teaches))
        self._add_readings(state, told, unit)
        self._add_marks(state.grade)
        self._add_measures(truth, unit)

    def _add(self, widget: QWidget) -> None:
        self._parts.append(widget)
        self._box.addWidget(widget)

    def _add_heading(self, text: str) -> None:
        label = _toned(text, "heading")
        label.setContentsMargins(0, 8, 0, 0)
        self._add(label)

    def _add_score(self, state: BenchState, grade: Grade) -> None:
        head = QWidget()
        row = QHBoxLayout(head)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(_toned(self.tr("Debrief"), "heading"))
        row.addStretch(1)
        score = _toned(self.tr("{n} %").format(n=round(100 * grade.score)), "score")
        score.setAccessibleName(self.tr("Score {n} percent").format(n=round(100 * grade.score)))
        row.addWidget(score)
        self._add(head)
        if grade.right is not None and state.disposition is not None:
            stated = words.disposition_word(state.disposition)
            if state.disposition == grade.right:
                text = self.tr("You said: {stated}. That is right.").format(stated=stated)
            elif grade.in_doubt and grade.marks["disposition"] == 1.0:
                text = self.tr("You said: {stated}. That is accepted.").format(stated=stated)
            else:
                text = self.tr("You said: {stated}. Right call: {right}.").format(
                    stated=stated, right=words.disposition_word(grade.right)
                )
            self._add(_wrapped(text))
        if grade.in_doubt:
            self._add(
                _wrapped(
                    self.tr(
                        "The weld is closer to its limit than a leaf can tell: either verdict, or "
                        "refer, is right."
                    )
                )
            )
        if grade.critical:
            self._add(
                _wrapped(
                    self.tr(
                        "Accepting what the rules reject fails the coupon, whatever else was right."
                    )
                )
            )

    def _add_reasons(self, grade: Grade, unit: Unit) -> None:
        self._add_heading(self.tr("Reasons, numbered as in the picture"))
        if not grade.reasons:
            self._add(_wrapped(self.tr("Nothing to add: handled and called right.")))
        for number, reason in enumerate(grade.reasons, start=1):
            row = QWidget()
            line = QHBoxLayout(row)
            line.setContentsMargins(0, 0, 0, 0)
            line.setSpacing(8)
            name = _toned(str(number), "heading")
            name.setAlignment(Qt.AlignmentFlag.AlignTop)
            name.setFixedWidth(14)
            line.addWidget(name)
            line.addWidget(_wrapped(reason_text(reason, unit)), 1)
            self._add(row)

    def _add_readings(self, state: BenchState, told: tuple[Told, ...], unit: Unit) -> None:
        if not told:
            return
        self._add_heading(self.tr("Your readings"))
        for index, (stated, truly) in enumerate(zip(state.readings, told, strict=True)):
            title = self.tr("{seat}, {tool}: you said {state}").format(
                seat=words.reading_seat(stated),
                tool=words.reading_tool(stated),
                state=words.state_word(stated.state).lower() if stated.state else "",
            )
            shown = what_it_shows(truly.shown, truly.leaf.edge, unit)
            self._add(self._reading(index, title, shown, right=truly.right))

    def _reading(self, index: int, title: str, shown: str, *, right: bool) -> QWidget:
        """A stated reading, what the leaf showed, and a button to look at it again."""
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 2)
        line.setSpacing(8)
        line.addWidget(Glyph("disc" if right else "ring"), alignment=Qt.AlignmentFlag.AlignTop)
        said = QVBoxLayout()
        said.setSpacing(0)
        said.addWidget(_wrapped(f"{index + 1}  {title}"))
        truth = _wrapped(shown)
        truth.setProperty("tone", "quiet")
        said.addWidget(truth)
        line.addLayout(said, 1)
        button = QPushButton(self.tr("Look"))
        button.setProperty("kind", "segment")
        button.setCheckable(True)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setAccessibleName(self.tr("Look at reading {n}").format(n=index + 1))
        verdict = self.tr("Right") if right else self.tr("Not right")
        button.setAccessibleDescription(f"{title}. {shown} {verdict}")
        button.clicked.connect(lambda: self.reading_asked.emit(index))
        self.readings.append(button)
        line.addWidget(button, alignment=Qt.AlignmentFlag.AlignTop)
        return row

    def _add_marks(self, grade: Grade) -> None:
        self._add_heading(self.tr("Marks"))
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(3)
        grid.setHorizontalSpacing(8)
        for row, (name, mark) in enumerate(grade.marks.items()):
            shape = "slash" if mark is None else "disc" if mark >= 1.0 else "ring"
            grid.addWidget(Glyph(shape), row, 0)
            grid.addWidget(QLabel(mark_word(name)), row, 1)
            text = (
                self.tr("does not apply")
                if mark is None
                else self.tr("{n} %").format(n=round(100 * mark))
            )
            value = _toned(text, "quiet" if mark is None else "plain")
            value.setAlignment(Qt.AlignmentFlag.AlignRight)
            grid.addWidget(value, row, 2)
        grid.setColumnStretch(1, 1)
        self._add(holder)

    def _add_measures(self, truth: Truth, unit: Unit) -> None:
        self._add_heading(self.tr("True measures"))
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(3)
        values = truth.measures.as_dict()
        for row, key in enumerate(_MEASURES):
            word = measure_word(key)
            grid.addWidget(_toned(word[:1].upper() + word[1:], "quiet"), row, 0)
            text = format_length(float(values[key]), unit, decimals=2 if unit == "mm" else 3)
            value = QLabel(text)
            value.setAlignment(Qt.AlignmentFlag.AlignRight)
            grid.addWidget(value, row, 1)
        self._add(holder)

    def show_reading(self, reading: int | None) -> None:
        """Show which reading is being looked at."""
        for index, button in enumerate(self.readings):
            button.setChecked(index == reading)


class NextBar(QWidget):
    """Where to go from a debrief.

    Signals
    -------
    next_asked, again_asked
        Which button was pressed.
    """

    next_asked = Signal()
    again_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        self.again = QPushButton(self.tr("Again   R"))
        self.again.setProperty("kind", "tall")
        self.again.setAccessibleName(self.tr("The same coupon again"))
        self.again.clicked.connect(self.again_asked)
        row.addWidget(self.again, 1)
        self.next = QPushButton()
        self.next.setProperty("kind", "primary")
        self.next.clicked.connect(self.next_asked)
        row.addWidget(self.next, 2)
        for button in (self.again, self.next):
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def show_last(self, last: bool) -> None:
        """Say where the next step leads."""
        words_of = self.tr("First coupon") if last else self.tr("Next coupon")
        self.next.setText(f"{words_of}   {self.tr('Enter')}")
        self.next.setAccessibleName(words_of)


def _toned(text: str, tone: str) -> QLabel:
    label = QLabel(text)
    label.setProperty("tone", tone)
    return label


def _wrapped(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    return label
