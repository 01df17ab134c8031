"""The strip below the picture: the rack and its sets, what a hand can do, how one looks."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPoint, QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from geometry.lengths import Unit
from trainer.bench.rack import Rack
from trainer.bench.state import BenchState
from trainer.bench.steps import StepPanel
from trainer.bench.terms import Terms
from trainer.look.tokens import Theme

__all__ = ["RackPanel"]

_STEPS: Final = 380
"""Logical pixels that the steps have beside the rack, whatever language they speak: the leaves hang
where the first paint showed them, before any word was known."""


class RackPanel(QWidget):
    """Rack, sets, steps, unit and looking aids.

    Signals
    -------
    picked, pulled, let_go
        As the rack's.
    rack_asked, unit_asked
        The set to hang there; the unit to show lengths in.
    stepped
        A step's name: as the step panel's, or ``zoom in``, ``zoom out``, ``fit``, ``loupe``.
    """

    picked = Signal(str)
    pulled = Signal(str, QPoint)
    let_go = Signal(str, QPoint)
    rack_asked = Signal(str)
    unit_asked = Signal(str)
    stepped = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(14, 8, 14, 10)
        self._box.setSpacing(6)
        self._box.addLayout(self._head())
        self.rack = Rack()
        self.rack.picked.connect(self.picked)
        self.rack.pulled.connect(self.pulled)
        self.rack.let_go.connect(self.let_go)
        self.steps = StepPanel()
        self.steps.stepped.connect(self.stepped)
        self._body = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._body.setSpacing(14)
        self._body.addWidget(self.rack, 1)
        self._body.addWidget(self.steps)
        self._box.addLayout(self._body, 1)

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(4)
        title = QLabel(self.tr("Rack"))
        title.setProperty("tone", "heading")
        row.addWidget(title)
        row.addSpacing(8)
        sets = (
            ("metric", self.tr("Metric"), self.tr("Metric leaves, marked by leg")),
            ("inch", self.tr("Inch"), self.tr("Inch leaves, marked by leg")),
            ("throat", self.tr("Throat-marked"), self.tr("Metric leaves, marked by throat")),
        )
        self.sets = {name: self._segment(word, said) for name, word, said in sets}
        for name, button in self.sets.items():
            button.clicked.connect(lambda _=False, name=name: self.rack_asked.emit(name))
            row.addWidget(button)
        self._hint = QLabel()
        self._hint.setProperty("tone", "gloss")
        row.addSpacing(8)
        row.addWidget(self._hint)
        row.addStretch(1)
        units = (("mm", self.tr("Millimetres")), ("in", self.tr("Inches")))
        self.units = {unit: self._segment(self.unit_word(unit), said) for unit, said in units}
        for unit, button in self.units.items():
            button.clicked.connect(lambda _=False, unit=unit: self.unit_asked.emit(unit))
            row.addWidget(button)
        row.addSpacing(8)
        self._add_looking(row)
        return row

    def unit_word(self, unit: str) -> str:
        """A unit as the switch says it."""
        return self.tr("mm") if unit == "mm" else self.tr("inch")

    def _add_looking(self, row: QHBoxLayout) -> None:
        aids = (
            ("zoom out", "\u2212", self.tr("Zoom out"), "-"),
            ("fit", self.tr("Fit"), self.tr("Fit the picture"), "0"),
            ("zoom in", "+", self.tr("Zoom in"), "+"),
            ("loupe", self.tr("Loupe"), self.tr("Loupe on or off"), "L"),
        )
        self.looking: dict[str, QPushButton] = {}
        for name, word, said, key in aids:
            button = self._segment(f"{word}  {key}" if len(word) > 1 else word, said)
            button.setAccessibleDescription(key)
            button.setToolTip(f"{said}  {key}")
            button.setCheckable(name == "loupe")
            button.clicked.connect(lambda _=False, name=name: self.stepped.emit(name))
            self.looking[name] = button
            row.addWidget(button)

    def _segment(self, word: str, said: str) -> QPushButton:
        button = QPushButton(word)
        button.setProperty("kind", "segment")
        button.setCheckable(True)
        button.setAccessibleName(said)
        button.setToolTip(said)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        return button

    def set_narrow(self, narrow: bool) -> None:
        """Where width is short, put the steps below the rack and leave the hint out."""
        below = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._body.setDirection(below)
        self._body.setSpacing(6 if narrow else 14)
        self.steps.arrange(columns=3 if narrow else 2)
        self.steps.setMinimumWidth(0 if narrow else _STEPS)
        self._hint.setVisible(not narrow)
        self.sets["throat"].setText(self.tr("Throat") if narrow else self.tr("Throat-marked"))
        side = 10 if narrow else 14
        self._box.setContentsMargins(side, 6 if narrow else 8, side, 8)

    def _keys_of(self, rack: str) -> str:
        """Which keys take a leaf of this set."""
        return {
            "metric": self.tr("click or drag; keys 3 to 8, [ ]"),
            "inch": self.tr("keys 1 to 9 by place, [ ]"),
            "throat": self.tr("keys 3 to 8: a 3 to a 8, [ ]"),
        }[rack]

    def show_state(self, state: BenchState, theme: Theme, unit: Unit, *, loupe: bool) -> None:
        """Show the set that hangs there, the leaf that is out, the unit, and the loupe."""
        self.rack.show_state(state, theme)
        self.steps.show_state(state)
        hint = self._keys_of(state.rack) if state.can_move else self.tr("to look at only")
        self._hint.setText(hint)
        for name, button in self.sets.items():
            _check(button, name == state.rack)
        for each, button in self.units.items():
            _check(button, each == unit)
        _check(self.looking["loupe"], loupe)

    def show_terms(self, terms: Terms) -> None:
        """Leave out what is not to be had."""
        for button in self.units.values():
            button.setVisible(terms.unit_switch)
        self.looking["loupe"].setVisible(terms.loupe)
        self.steps.leave_out([name for name in self.steps.buttons if terms.refuses(name)])


def _check(button: QPushButton, checked: bool) -> None:
    with QSignalBlocker(button):
        button.setChecked(checked)
