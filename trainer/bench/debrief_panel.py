"""What came of a call: right and stated, what was judged, what to mend, readings, measures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
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
from exercises.judging import Judgement
from exercises.signposts import entry_of_check, entry_of_reason, entry_of_rules
from geometry.lengths import Unit
from trainer.bench import words
from trainer.bench.glyph import Glyph
from trainer.bench.grounds import Verdict, asked_words, grounds_of, held_right, rule_words, sureness
from trainer.bench.look_up import LookUp
from trainer.bench.placed_debrief import finding_lines, held_lines
from trainer.bench.reasons import measure_word, reason_text, what_it_shows
from trainer.bench.right import RightSeat
from trainer.bench.state import BenchState
from trainer.bench.truth import Told, Truth
from trainer.bench.worded import toned, wrapped
from trainer.figures import length_words

__all__ = ["Debrief", "DebriefPanel", "NextBar"]

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


_NEXT_EDGES: Final = 52
"""Logical pixels beside the words on the way to the next coupon: gap, padding, a little air."""

_VERDICTS: Final[dict[Verdict, str]] = {"meets": "disc", "fails": "ring", "near": "slash"}


@dataclass(frozen=True, slots=True)
class Debrief:
    """What a debrief speaks of.

    Parameters
    ----------
    state
        With its grade.
    judgement, truth
        The right call with every check behind it; the bead's true shape.
    told
        What each stated reading truly showed.
    right
        Where leaves should have been held.
    """

    state: BenchState
    judgement: Judgement
    truth: Truth
    told: tuple[Told, ...]
    right: tuple[RightSeat, ...] = ()


class DebriefPanel(QFrame):
    """The debrief in words.

    Signals
    -------
    reading_asked
        A stated reading to look at.
    entry_asked
        The entry of the reference with this key should be shown.
    """

    reading_asked = Signal(int)
    entry_asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setAccessibleName(self.tr("Debrief"))
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(18, 14, 18, 16)
        self._box.setSpacing(6)
        self._parts: list[QWidget] = []
        self.readings: list[QPushButton] = []
        self.look_ups: list[LookUp] = []

    def fill(self, shown: Debrief, unit: Unit) -> None:
        """Say what came of a call."""
        for part in self._parts:
            self._box.removeWidget(part)
            part.setParent(None)
            part.deleteLater()
        self._parts, self.readings, self.look_ups = [], [], []
        state, grade = shown.state, shown.state.grade
        if grade is None:
            return
        self._add(toned(self.tr("Debrief"), "title"))
        self._add_verdict(state, grade)
        self._add_findings(shown, unit)
        self._add_grounds(shown, unit)
        self._add_mends(shown, grade, unit)
        self._add_held(shown, grade, unit)
        teaches = state.coupon.teaches.in_language(words.language())
        if teaches:
            self._add_heading(self.tr("What this coupon teaches"))
            self._add(wrapped(teaches))
        self._add_heading(self.tr("How sure you were"))
        self._add(wrapped(sureness(state.sure, grade)))
        self._add_readings(state, shown.told, unit)
        self._add_measures(shown.truth, unit)

    def _add(self, widget: QWidget) -> None:
        self._parts.append(widget)
        self._box.addWidget(widget)

    def _add_heading(self, text: str) -> None:
        label = wrapped(text, "heading")
        label.setContentsMargins(0, 8, 0, 0)
        self._add(label)

    def _add_row(self, sign: QWidget, said: QWidget, look_up: LookUp | None = None) -> None:
        """A sign, what it stands for, and perhaps the way to what says more of it."""
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(8)
        line.addWidget(sign, alignment=Qt.AlignmentFlag.AlignTop)
        line.addWidget(said, 1)
        if look_up is not None:
            look_up.asked.connect(self.entry_asked)
            self.look_ups.append(look_up)
            line.addWidget(look_up, alignment=Qt.AlignmentFlag.AlignTop)
        self._add(row)

    def _add_verdict(self, state: BenchState, grade: Grade) -> None:
        """What was called, and whether that stands."""
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
            self._add(wrapped(text, "strong"))
        else:
            self._add(wrapped(asked_words(state, grade), "strong"))
        if grade.in_doubt and grade.right is not None:
            self._add(
                wrapped(
                    self.tr(
                        "The weld is closer to its limit than a leaf can tell: either verdict, or "
                        "refer, is right."
                    )
                )
            )
        if grade.critical:
            self._add(
                wrapped(
                    self.tr(
                        "Accepting what the rules reject fails the coupon, whatever else was right."
                    )
                )
            )

    def _add_findings(self, shown: Debrief, unit: Unit) -> None:
        """All that is wrong with a leaf that somebody has placed, and how it should be held."""
        coupon = shown.state.coupon
        if coupon.task != "find the fault":
            return
        self._add_heading(self.tr("What is wrong with how it is held"))
        for line in finding_lines(coupon, unit):
            self._add_row(Glyph(line.sign), wrapped(line.text))
        self._add_heading(self.tr("How this weld should be gauged"))
        for line in held_lines(shown.right, unit):
            self._add_row(Glyph(line.sign), wrapped(line.text))

    def _add_grounds(self, shown: Debrief, unit: Unit) -> None:
        """Each measure that was judged, beside its limit; rule and source."""
        coupon = shown.state.coupon
        if coupon.task != "judge":
            return
        self._add_heading(self.tr("What the weld measures, and must"))
        for ground in grounds_of(shown.state, shown.judgement, unit):
            said = f"{ground.name}: {ground.figures}" if ground.figures else ground.name
            label = wrapped(said)
            label.setAccessibleName(f"{said}. {self._verdict_word(ground.verdict)}")
            key = ground.key and entry_of_check(coupon, ground.key, shown.judgement.face)
            look_up = LookUp(ground.name, key) if key else None
            self._add_row(Glyph(_VERDICTS[ground.verdict]), label, look_up)
            if ground.source:
                self._add_row(Glyph(""), wrapped(ground.source, "gloss"))
        rules = LookUp(words.rules_word(coupon.rule_set), entry_of_rules(coupon.rule_set))
        self._add_row(Glyph(""), wrapped(rule_words(shown.state), "quiet"), rules)

    def _verdict_word(self, verdict: Verdict) -> str:
        return {
            "meets": self.tr("Meets it"),
            "fails": self.tr("Fails it"),
            "near": self.tr("Too near to tell"),
        }[verdict]

    def _add_mends(self, shown: Debrief, grade: Grade, unit: Unit) -> None:
        """What to do otherwise next time, numbered as in the picture."""
        if not grade.reasons:
            return
        placed = shown.state.coupon.task == "find the fault"
        self._add_heading(
            self.tr("To do otherwise")
            if placed
            else self.tr("To do otherwise, numbered as in the picture")
        )
        for number, reason in enumerate(grade.reasons, start=1):
            name = toned(str(number), "heading")
            name.setFixedWidth(18)
            name.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            said = reason_text(reason, unit)
            key = entry_of_reason(
                shown.state.coupon, reason.code, reason.params, shown.judgement.face
            )
            self._add_row(name, wrapped(said), LookUp(said, key))

    def _add_held(self, shown: Debrief, grade: Grade, unit: Unit) -> None:
        """What was held right, by name; the score comes second."""
        held = held_right(shown.state, grade, shown.judgement, unit)
        if held:
            self._add_heading(self.tr("Held right"))
        for line in held:
            self._add_row(Glyph("disc"), wrapped(line))
        asked = sum(mark is not None for mark in grade.marks.values())
        text = self.tr("{held} of {asked} held right; score {n} %").format(
            held=len(held), asked=asked, n=round(100 * grade.score)
        )
        self._add(wrapped(text, "quiet"))
        if (
            asked
            and not grade.critical
            and round(100 * len(held) / asked) != round(100 * grade.score)
        ):
            self._add(wrapped(self._score_words(shown.state), "gloss"))

    def _score_words(self, state: BenchState) -> str:
        """Why the score isn't the share of what was held right."""
        words = self.tr("The score is the mean of all of them, and some were held in part.")
        if state.hints:
            words = self.tr("The score is their mean, less 5 for each bench note turned up.")
        return words

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
        said.addWidget(wrapped(f"{index + 1}  {title}"))
        truth = wrapped(shown)
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

    def _add_measures(self, truth: Truth, unit: Unit) -> None:
        self._add_heading(self.tr("True measures"))
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(3)
        values = truth.measures.as_dict()
        for row, key in enumerate(_MEASURES):
            word = measure_word(key)
            grid.addWidget(toned(word[:1].upper() + word[1:], "quiet"), row, 0)
            text = length_words(float(values[key]), unit, decimals=2 if unit == "mm" else 3)
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
        self.again = QPushButton(self.tr("Lay it out again   R"))
        self.again.setProperty("kind", "tall")
        self.again.setAccessibleName(self.tr("The same coupon again"))
        self.again.clicked.connect(self.again_asked)
        row.addWidget(self.again)
        self.next = QPushButton()
        self._with_key = self._words = ""
        self.next.setProperty("kind", "primary")
        self.next.clicked.connect(self.next_asked)
        row.addWidget(self.next, 1)
        for button in (self.again, self.next):
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def show_last(self, last: bool, *, drill: bool = False) -> None:
        """Say where the next step leads."""
        words_of = self.tr("Back to the first") if last else self.tr("Next from the tray")
        if drill:
            words_of = self.tr("Next coupon")
        self.again.setVisible(not drill)
        key = self.tr("PgDn")
        self._with_key, self._words = f"{words_of}   {key}", words_of
        self.next.setAccessibleName(words_of)
        self.next.setAccessibleDescription(key)
        self.next.setToolTip(self._with_key)
        self._fit()

    def _fit(self) -> None:
        """Show the key where there is room for it; the tip has it anyway."""
        room = self.width() - self.again.sizeHint().width() - _NEXT_EDGES
        wide = self.next.fontMetrics().horizontalAdvance(self._with_key)
        self.next.setText(self._with_key if wide <= room else self._words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See anew what there is room for."""
        super().resizeEvent(event)
        self._fit()
