"""Making the call: the face, what the leaf shows at this seat, the disposition, how sure."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from trainer.bench import words
from trainer.bench.asked_rows import FaultChoices, SizeChoices
from trainer.bench.choice import Choice, ChoiceRow
from trainer.bench.glyph import FACE_GLYPHS, STATE_GLYPHS
from trainer.bench.notes import Notes
from trainer.bench.seeker import SeekSlider
from trainer.bench.state import BenchState, Stated, asked_of
from trainer.bench.worded import toned

__all__ = ["CALL_KEYS", "FACE_KEYS", "STATE_KEYS", "CallPanel", "RecordBar"]

STATE_KEYS: Final = {"daylight": "D", "touch": "T", "held off": "H", "not seated": "N"}
FACE_KEYS: Final = {"convex": "X", "flat": "P", "concave": "O"}
CALL_KEYS: Final = {"accept": "A", "add weld metal": "W", "dress back": "B", "refer": "R"}
"""The key that states each state, each face, each disposition."""


class CallPanel(QFrame):
    """What the learner states.

    Signals
    -------
    face_named, state_stated, disposition_named
        The value that was chosen, as files spell it.
    fault_named, size_named
        What is wrong with a placed leaf; the mark of the largest leaf that the weld meets.
    sureness_named
        0 to 1.
    hint_asked
        The next bench note should be turned up.
    """

    face_named = Signal(str)
    state_stated = Signal(str)
    disposition_named = Signal(str)
    fault_named = Signal(str)
    size_named = Signal(str)
    sureness_named = Signal(float)
    hint_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setAccessibleName(self.tr("Make the call"))
        self._box = QVBoxLayout(self)
        box = self._box
        box.setSpacing(3)
        self._heading = toned(self.tr("Make the call"), "heading")
        box.addWidget(self._heading)
        self.faults = FaultChoices()
        self.faults.chosen.connect(self.fault_named)
        box.addWidget(self.faults)
        self._face = toned(self.tr("What is the face?"), "quiet")
        box.addWidget(self._face)
        self.faces = self._face_row()
        box.addWidget(self.faces)
        self._seat = toned(self.tr("What does the leaf show at this seat?"), "quiet")
        self._seat.setWordWrap(True)
        box.addWidget(self._seat)
        self.states = self._state_row()
        box.addWidget(self.states)
        self._disposition = toned(self.tr("Disposition of the weld"), "quiet")
        box.addWidget(self._disposition)
        self.dispositions = self._disposition_row()
        box.addWidget(self.dispositions)
        self.sizes = SizeChoices()
        self.sizes.chosen.connect(self.size_named)
        box.addWidget(self.sizes)
        self._asking: dict[Stated, tuple[QWidget, ...]] = {
            "face": (self._face, self.faces),
            "reading": (self._seat, self.states),
            "disposition": (self._disposition, self.dispositions),
            "size": (self.sizes,),
            "fault": (self.faults,),
        }
        self._add_sure(box)
        # At the end: whatever words come to stand here, nothing above moves away.
        self.notes = Notes()
        self.notes.asked.connect(self.hint_asked)
        box.addWidget(self.notes)

    def set_compact(self, compact: bool) -> None:
        """Stand closer where room is short."""
        side = 10 if compact else 18
        self._box.setContentsMargins(side, 7, side, 5)

    def fit(self, width: int) -> None:
        """Let every group find room in a column that is `width` logical pixels wide."""
        margins = self._box.contentsMargins()
        inner = width - margins.left() - margins.right() - 2
        for group in (self.faces, self.states, self.dispositions, self.faults.row, self.sizes):
            group.fit(inner)

    def set_short(self, short: bool) -> None:
        """Where height is short, leave out what can be done without."""
        self._heading.setVisible(not short)
        for button in self.dispositions.buttons.values():
            button.show_gloss(not short)
        self.faults.show_gloss(not short)

    def _add_sure(self, box: QVBoxLayout) -> None:
        row = QHBoxLayout()
        row.addWidget(toned(self.tr("How sure are you?"), "quiet"))
        self.sure = SeekSlider()
        self.sure.setRange(0, 100)
        self.sure.setSingleStep(5)
        self.sure.setPageStep(20)
        self.sure.setToolTip(self.tr("How sure are you?  S, with Shift less sure"))
        row.addWidget(self.sure, 1)
        self._sure_words = toned("", "quiet")
        self._sure_words.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        # As wide as its widest words: else the slider would shrink under the pointer.
        widest = self._sure_words.fontMetrics().horizontalAdvance(self.tr("not said"))
        self._sure_words.setMinimumWidth(widest + 4)
        row.addWidget(self._sure_words)
        box.addLayout(row)
        self.sure.setAccessibleName(self.tr("How sure are you?"))
        self.sure.valueChanged.connect(lambda value: self.sureness_named.emit(value / 100.0))

    def _face_row(self) -> ChoiceRow:
        choices = [
            (face, Choice(words.face_word(face), glyph=FACE_GLYPHS[face], key=FACE_KEYS[face]))
            for face in ("convex", "flat", "concave")
        ]
        return ChoiceRow(self.tr("Face"), choices, self.face_named.emit, columns=3)

    def _state_row(self) -> ChoiceRow:
        choices = [
            (
                state,
                Choice(words.state_word(state), glyph=glyph, key=STATE_KEYS[state], upright=True),
            )
            for state, glyph in STATE_GLYPHS.items()
        ]
        return ChoiceRow(self.tr("What the leaf shows"), choices, self.state_stated.emit, columns=4)

    def _disposition_row(self) -> ChoiceRow:
        glosses = {
            "accept": self.tr("meets the callout"),
            "add weld metal": self.tr("undersize or undercut"),
            "dress back": self.tr("overlap or excess"),
            "refer": self.tr("cannot be judged so"),
        }
        choices = [
            (value, Choice(words.disposition_word(value), gloss, key=CALL_KEYS[value]))
            for value, gloss in glosses.items()
        ]
        return ChoiceRow(self.tr("Disposition"), choices, self.disposition_named.emit, columns=2)

    def stops(self) -> tuple[QWidget, ...]:
        """What Tab stops at, from above."""
        groups = (
            self.faults.row, self.faces, self.states, self.dispositions, self.sizes.row,
        )  # fmt: skip
        return (*(button for group in groups for button in group.buttons.values()), self.sure)

    def start_afresh(self) -> None:
        """Forget where somebody was in the groups: another coupon is laid out."""
        for group in (self.faces, self.states, self.dispositions, self.faults.row, self.sizes.row):
            group.start_afresh()

    def show_state(self, state: BenchState, *, notes: bool = True) -> None:
        """Show what has been stated, and bench notes; nothing here depends on what is true."""
        hints = state.coupon.hints if notes else ()
        texts = [hint.in_language(words.language()) for hint in hints]
        self.notes.show_notes(texts, state.hints)
        self.faces.show_value(state.face)
        self.dispositions.show_value(state.disposition)
        seated = state.leaf is not None
        self.states.show_value(_stated_here(state))
        for button in self.states.buttons.values():
            button.setEnabled(seated)
        self.faults.row.show_value(state.fault)
        self.sizes.show_value(state.rack, state.size)
        asked = asked_of(state.coupon)
        for what, widgets in self._asking.items():
            for widget in widgets:
                widget.setVisible(what in asked)
        with QSignalBlocker(self.sure):
            self.sure.setValue(50 if state.sure is None else round(state.sure * 100))
        self._sure_words.setText(
            self.tr("not said")
            if state.sure is None
            else self.tr("{share} %").format(share=round(state.sure * 100))
        )


def _stated_here(state: BenchState) -> str | None:
    """What has been stated of the leaf exactly where it lies now."""
    for reading in state.readings:
        if (
            state.leaf is not None
            and (reading.leaf, reading.edge) == (state.leaf.mark, state.leaf.edge)
            and reading.pose == state.pose
        ):
            return reading.state
    return None


class RecordBar(QWidget):
    """The button that puts the call on record, and what is still to be stated.

    Signals
    -------
    recorded
        The button was pressed.
    """

    recorded = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(4)
        self._missing = toned("", "quiet")
        self._missing.setWordWrap(True)
        self._missing.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        box.addWidget(self._missing)
        self.button = QPushButton()
        self.button.setProperty("kind", "primary")
        self.ask_as_ever()
        self.button.setAccessibleDescription(self.tr("Enter"))
        self.button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.button.clicked.connect(self.recorded)
        box.addWidget(self.button)

    def ask(self, words: str) -> None:
        """Say something else on the button, and let it be pressed whatever has been stated."""
        self.button.setText(self.tr("{words}   Enter").format(words=words))
        self.button.setAccessibleName(words)
        self.button.setEnabled(True)

    def ask_as_ever(self) -> None:
        """Say what it says at the bench."""
        self.button.setText(self.tr("Put it on record   Enter"))
        self.button.setAccessibleName(self.tr("Put it on record"))

    def show_state(self, state: BenchState) -> None:
        """Say what is still to be stated."""
        self._missing.setText(self.missing(state))
        self.button.setEnabled(state.can_call)

    def missing(self, state: BenchState) -> str:
        """What must still be stated before the call can go on record; empty if nothing."""
        words_of: dict[Stated, str] = {
            "face": self.tr("the face"),
            "reading": self.tr("a reading"),
            "disposition": self.tr("the disposition"),
            "size": self.tr("the size"),
            "fault": self.tr("what is wrong"),
        }
        needs = [words_of[what] for what in state.missing]
        if not needs:
            return ""
        return self.tr("Still to state: {things}").format(things=", ".join(needs))
