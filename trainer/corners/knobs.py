"""The knobs below the pictures: slider, steps and exact value for each; the leaf and its rack."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QSizePolicy,
    QSlider,
    QWidget,
)

from geometry.leaf import RACKS, RackName, rack
from geometry.lengths import Unit, parse_length
from trainer.bench.translation import translate
from trainer.corners.state import RANGES, Corners, Knob, rack_of, true_value
from trainer.corners.words import knob_word, value_word

__all__ = ["KnobRow", "LeafRow"]

_PART: Final[dict[Knob, float]] = {
    "leg_base": 0.1,
    "leg_upright": 0.1,
    "crown": 0.1,
    "hollow": 0.1,
    "angle": 1.0,
}
"""What one step of a slider is, mm or degrees."""


def _step_button(sign: str, name: str) -> QPushButton:
    button = QPushButton(sign)
    button.setProperty("kind", "small")
    button.setFixedSize(26, 26)
    button.setAccessibleName(name)
    button.setToolTip(name)
    button.setAutoRepeat(True)
    return button


def _slider(least: int, most: int, page: int) -> QSlider:
    slider = QSlider(Qt.Orientation.Horizontal)
    slider.setRange(least, most)
    slider.setPageStep(page)
    slider.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
    slider.setMinimumWidth(40)
    return slider


def _grid(widget: QWidget) -> QGridLayout:
    grid = QGridLayout(widget)
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(4)
    grid.setVerticalSpacing(2)
    grid.setColumnStretch(1, 1)
    return grid


class KnobRow(QWidget):
    """One value: its name, what it stands at, and a slider between two steps.

    Signals
    -------
    turned(knob, value)
        A value is wanted, mm or degrees.
    settled()
        The end of a drag of the slider.
    refused(words)
        What was typed is no value.
    """

    turned = Signal(str, float)
    settled = Signal()
    refused = Signal(str)

    def __init__(self, knob: Knob, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.knob = knob
        self._value = 0.0
        self._unit: Unit = "mm"
        self._shown = ""
        part = _PART[knob]
        lowest, highest = RANGES[knob]
        self._grid = _grid(self)
        self.label = QLabel(knob_word(knob))
        self.label.setProperty("tone", "quiet")
        self.field = QLineEdit()
        self.field.setFixedWidth(76)
        self.field.setStyleSheet("padding: 2px 5px;")
        self.field.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.field.setAccessibleName(knob_word(knob))
        self.label.setBuddy(self.field)
        self.less = _step_button("\u2212", self.tr("{knob}: less").format(knob=knob_word(knob)))
        self.more = _step_button("+", self.tr("{knob}: more").format(knob=knob_word(knob)))
        self.slider = _slider(round(lowest / part), round(highest / part), 10)
        self.slider.setAccessibleName(knob_word(knob))
        self.stack(stacked=False)
        self.slider.valueChanged.connect(lambda at: self.turned.emit(knob, at * part))
        self.slider.sliderReleased.connect(self.settled)
        self.less.clicked.connect(lambda: self._step(-1))
        self.more.clicked.connect(lambda: self._step(1))
        self.field.editingFinished.connect(self._enter)
        self.field.installEventFilter(self)

    @property
    def wanted(self) -> int:
        """Logical px of width that name and value need beside each other."""
        return self.label.sizeHint().width() + self.field.width() + 8

    def stack(self, *, stacked: bool) -> None:
        """Put the name over the value and that over the slider, or the first two in one line."""
        grid = self._grid
        if stacked:
            grid.addWidget(self.label, 0, 0, 1, 4)
            grid.addWidget(self.less, 1, 0)
            grid.addWidget(self.field, 1, 1, 1, 2, Qt.AlignmentFlag.AlignCenter)
            grid.addWidget(self.more, 1, 3)
            grid.addWidget(self.slider, 2, 0, 1, 4)
        else:
            grid.addWidget(self.label, 0, 0, 1, 2)
            grid.addWidget(self.field, 0, 2, 1, 2, Qt.AlignmentFlag.AlignRight)
            grid.addWidget(self.less, 1, 0)
            grid.addWidget(self.slider, 1, 1, 1, 2)
            grid.addWidget(self.more, 1, 3)
        grid.setRowMinimumHeight(0, 0 if stacked else 32)

    def show_state(self, state: Corners, unit: Unit) -> None:
        """Show where the knob stands."""
        knob = self.knob
        self._value = true_value(state, knob)
        self._unit = unit
        words = value_word(state, knob, unit)
        with QSignalBlocker(self.slider):
            self.slider.setValue(round(self._value / _PART[knob]))
        self.slider.setAccessibleDescription(words)
        if words != self._shown:
            self._shown = words
            with QSignalBlocker(self.field):
                self.field.setText(words)

    def _step(self, way: int) -> None:
        part = _PART[self.knob]
        self.turned.emit(self.knob, (round(self._value / part) + way) * part)

    def _enter(self) -> None:
        """Take what was typed, if it is another value."""
        text = self.field.text().strip()
        if text == self._shown:
            return
        try:
            value = self._parsed(text)
        except ValueError:
            self.refused.emit(self._right(text))
            self.field.setText(self._shown)
            return
        # Shown anew even if nothing changes by it.
        self._shown = ""
        self.turned.emit(self.knob, value)

    def _parsed(self, text: str) -> float:
        if self.knob == "angle":
            angle = float(text.rstrip("\u00b0 ").replace(",", "."))
            if not math.isfinite(angle):
                raise ValueError(text)
            return angle
        sign = -1.0 if text[:1] in ("-", "\u2212") else 1.0
        return sign * parse_length(text.lstrip("+-\u2212 "), default_unit=self._unit)

    def _right(self, text: str) -> str:
        if self.knob == "angle":
            return translate("Corners", "\u201c{text}\u201d is no angle; 90 would be one.").format(
                text=text
            )
        return translate(
            "Corners", "\u201c{text}\u201d is no length; 8 mm or 5/16 in would be one."
        ).format(text=text)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Escape in the field puts back what it said; Enter goes no further."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() == Qt.Key.Key_Escape and self.field.text() != self._shown:
                self.field.setText(self._shown)
                return True
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self._enter()
                self.field.selectAll()
                return True
        return False


class LeafRow(QWidget):
    """The leaf: which rack, which mark, and a slider along the rack.

    Signals
    -------
    picked(mark)
        A leaf by its mark.
    rack_asked(name)
        Another rack.
    """

    picked = Signal(str)
    rack_asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rack: RackName | None = None
        self._grid = _grid(self)
        self._label = QLabel(self.tr("Leaf"))
        self._label.setProperty("tone", "quiet")
        self.racks = QComboBox()
        self.racks.setAccessibleName(self.tr("Rack"))
        self.racks.addItems([self.tr("mm"), self.tr("inch"), self.tr("throat")])
        self.marks = QComboBox()
        self.marks.setAccessibleName(self.tr("Leaf"))
        self.marks.setMinimumWidth(70)
        self.less = _step_button("\u2212", self.tr("Leaf: smaller"))
        self.more = _step_button("+", self.tr("Leaf: larger"))
        self.slider = _slider(0, 11, 1)
        self.slider.setAccessibleName(self.tr("Leaf"))
        self._choices = QWidget()
        choices = QHBoxLayout(self._choices)
        choices.setContentsMargins(0, 0, 0, 0)
        choices.setSpacing(6)
        choices.addWidget(self.racks)
        choices.addWidget(self.marks)
        self.stack(stacked=False)
        self.slider.valueChanged.connect(self._pick)
        self.marks.activated.connect(self._pick)
        self.racks.activated.connect(lambda at: self.rack_asked.emit(RACKS[at]))
        self.less.clicked.connect(lambda: self._pick(self.slider.value() - 1))
        self.more.clicked.connect(lambda: self._pick(self.slider.value() + 1))

    def stack(self, *, stacked: bool) -> None:
        """Put the name over the choices, as the other knobs have it, or before them."""
        grid = self._grid
        if stacked:
            grid.addWidget(self._label, 0, 0, 1, 4)
            grid.addWidget(self._choices, 1, 0, 1, 4)
            row = 2
        else:
            grid.addWidget(self._label, 0, 0)
            grid.addWidget(self._choices, 0, 1, 1, 3, Qt.AlignmentFlag.AlignRight)
            row = 1
        grid.addWidget(self.less, row, 0)
        grid.addWidget(self.slider, row, 1, 1, 2)
        grid.addWidget(self.more, row, 3)
        grid.setRowMinimumHeight(0, 0 if stacked else 32)

    def _pick(self, at: int) -> None:
        self.picked.emit(self.marks.itemText(min(max(at, 0), self.marks.count() - 1)))

    def show_state(self, state: Corners) -> None:
        """Show which leaf is in use."""
        name = rack_of(state)
        with QSignalBlocker(self.slider), QSignalBlocker(self.marks), QSignalBlocker(self.racks):
            if name != self._rack:
                self._rack = name
                self.marks.clear()
                self.marks.addItems([leaf.mark for leaf in rack(name)])
                self.slider.setRange(0, self.marks.count() - 1)
                self.racks.setCurrentIndex(RACKS.index(name))
            at = self.marks.findText(state.mark)
            self.marks.setCurrentIndex(at)
            self.slider.setValue(at)
        self.slider.setAccessibleDescription(state.mark)
