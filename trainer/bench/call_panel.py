"""Making the call: the face, what the leaf shows at this seat, the disposition, how sure."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSlider,
    QStyle,
    QStyleOptionSlider,
    QVBoxLayout,
    QWidget,
)

from trainer.bench import words
from trainer.bench.choice import Choice, ChoiceRow
from trainer.bench.glyph import FACE_GLYPHS, STATE_GLYPHS
from trainer.bench.state import BenchState

__all__ = ["STATE_KEYS", "CallPanel", "RecordBar", "SureSlider"]

STATE_KEYS = {"daylight": "D", "touch": "T", "held off": "H", "not seated": "N"}
"""The key that states each state."""


class SureSlider(QSlider):
    """A slider that goes where it is clicked."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setRange(0, 100)
        self.setSingleStep(5)
        self.setPageStep(20)
        self.setMinimumHeight(24)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Set the value under the pointer, then drag on as usual."""
        if event.button() == Qt.MouseButton.LeftButton:
            option = QStyleOptionSlider()
            self.initStyleOption(option)
            handle = self.style().subControlRect(
                QStyle.ComplexControl.CC_Slider, option, QStyle.SubControl.SC_SliderHandle, self
            )
            if not handle.contains(event.position().toPoint()):
                span = max(1, self.width() - handle.width())
                at = round(event.position().x() - handle.width() / 2)
                self.setValue(QStyle.sliderValueFromPosition(0, 100, at, span))
        super().mousePressEvent(event)


class CallPanel(QFrame):
    """What the learner states.

    Signals
    -------
    face_named, state_stated, disposition_named
        The value that was chosen, as files spell it.
    sureness_named
        0 to 1.
    hint_asked
        The next hint should be shown.
    """

    face_named = Signal(str)
    state_stated = Signal(str)
    disposition_named = Signal(str)
    sureness_named = Signal(float)
    hint_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setAccessibleName(self.tr("Make the call"))
        self._box = QVBoxLayout(self)
        box = self._box
        box.setSpacing(3)
        self._add_head(box)
        box.addWidget(_toned(self.tr("What is the face?"), "quiet"))
        self.faces = self._face_row()
        box.addWidget(self.faces)
        self._seat = _toned(self.tr("What does the leaf show at this seat?"), "quiet")
        box.addWidget(self._seat)
        self.states = self._state_row()
        box.addWidget(self.states)
        self._disposition = _toned(self.tr("Disposition of the weld"), "quiet")
        box.addWidget(self._disposition)
        self.dispositions = self._disposition_row()
        box.addWidget(self.dispositions)
        self._add_sure(box)

    def _add_head(self, box: QVBoxLayout) -> None:
        row = QHBoxLayout()
        row.addWidget(_toned(self.tr("Make the call"), "heading"))
        row.addStretch(1)
        self.hint = QPushButton()
        self.hint.setProperty("kind", "link")
        self.hint.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        policy = self.hint.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.hint.setSizePolicy(policy)
        self.hint.clicked.connect(self.hint_asked)
        row.addWidget(self.hint)
        box.addLayout(row)
        self._hints = QLabel()
        self._hints.setWordWrap(True)
        self._hints.setTextFormat(Qt.TextFormat.PlainText)
        self._hints.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._hints.setProperty("tone", "quiet")
        # The room is kept: what is below must not move away under the pointer.
        self._hints.setMinimumHeight(2 * self._hints.fontMetrics().lineSpacing() + 2)
        box.addWidget(self._hints)

    def _show_hints(self, state: BenchState) -> None:
        """Show the hints that were asked for, and whether there are more."""
        hints = state.coupon.hints
        shown = [hint.in_language(words.language()) for hint in hints[: state.hints]]
        self._hints.setText(shown[-1] if shown else "")
        self._hints.setToolTip("\n".join(shown))
        self._hints.setVisible(bool(hints))
        left = len(hints) - len(shown)
        self.hint.setVisible(left > 0)
        self.hint.setText(self.tr("Hint ({left} left)").format(left=left))

    def set_compact(self, compact: bool) -> None:
        """Stand closer where room is short."""
        side = 10 if compact else 18
        self._box.setContentsMargins(side, 8, side, 6)

    def _add_sure(self, box: QVBoxLayout) -> None:
        row = QHBoxLayout()
        row.addWidget(_toned(self.tr("How sure are you?"), "quiet"))
        self.sure = SureSlider()
        row.addWidget(self.sure, 1)
        self._sure_words = _toned("", "quiet")
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
            (face, Choice(words.face_word(face), glyph=FACE_GLYPHS[face]))
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
            (value, Choice(words.disposition_word(value), gloss))
            for value, gloss in glosses.items()
        ]
        return ChoiceRow(self.tr("Disposition"), choices, self.disposition_named.emit, columns=2)

    def start_afresh(self) -> None:
        """Forget where somebody was in the groups: another coupon is laid out."""
        for group in (self.faces, self.states, self.dispositions):
            group.start_afresh()

    def show_state(self, state: BenchState) -> None:
        """Show what has been stated; nothing here depends on what is true."""
        self._show_hints(state)
        self.faces.show_value(state.face)
        self.dispositions.show_value(state.disposition)
        seated = state.leaf is not None
        self.states.show_value(_stated_here(state))
        for button in self.states.buttons.values():
            button.setEnabled(seated)
        judged = state.coupon.task == "judge"
        self._disposition.setVisible(judged)
        self.dispositions.setVisible(judged)
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
        self._missing = _toned("", "quiet")
        self._missing.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        box.addWidget(self._missing)
        self.button = QPushButton(self.tr("Put it on record   Enter"))
        self.button.setProperty("kind", "primary")
        self.button.setAccessibleName(self.tr("Put it on record"))
        self.button.setAccessibleDescription(self.tr("Enter"))
        self.button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.button.clicked.connect(self.recorded)
        box.addWidget(self.button)

    def show_state(self, state: BenchState) -> None:
        """Say what is still to be stated."""
        self._missing.setText(self.missing(state))
        self.button.setEnabled(state.can_call)

    def missing(self, state: BenchState) -> str:
        """What must still be stated before the call can go on record; empty if nothing."""
        needs = [self.tr("the face")] if state.face is None else []
        if state.coupon.task == "judge":
            if state.disposition is None:
                needs.append(self.tr("the disposition"))
        elif not state.readings:
            needs.append(self.tr("a reading"))
        if not needs:
            return ""
        return self.tr("Still to state: {things}").format(things=", ".join(needs))


def _toned(text: str, tone: str) -> QLabel:
    label = QLabel(text)
    label.setProperty("tone", tone)
    return label
