"""Below the picture: the handle that is worked with, its value, and a step by a click."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QAction, QResizeEvent
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QWidget,
)

from geometry.lengths import Unit
from geometry.section import Section
from trainer.corners.state import Drawn
from trainer.corners.words import drawn_word
from trainer.cut_words import CutChoice
from trainer.shop.handles import step_of
from trainer.shop.knobs import knob_of, knobs_of
from trainer.shop.words import knob_word, short_word, value_words

__all__ = ["DRAWN", "KnobBar"]

_STEPS: Final = (-1.0, 1.0)

_AIR: Final = 60
"""Logical px of margins and gaps, where the bar is narrow."""

DRAWN: Final[tuple[Drawn, ...]] = ("legs", "triangle", "throats")
"""What can be drawn over the section."""


class KnobBar(QFrame):
    """Which handle, what it stands at, steps.

    Signals
    -------
    stepped(key, value)
        A step to another value is wanted, mm or degrees.
    nudged(dx, dy)
        The chosen point of a trace is wanted so far off, mm.
    settled()
        The end of a gesture.
    chosen(key)
        Another handle is to be worked with.
    asked(name)
        ``point in``, ``point out``, ``fit``, ``closer``, ``back``, ``draw legs`` and so on.
    """

    stepped = Signal(str, float)
    nudged = Signal(float, float)
    settled = Signal()
    chosen = Signal(str)
    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 6, 10, 6)
        row.setSpacing(6)
        self.label = QLabel(self.tr("Handle"))
        self.label.setProperty("tone", "quiet")
        self.choice = CutChoice()
        self.choice.setAccessibleName(self.tr("Handle to work with"))
        self.choice.activated.connect(self._pick)
        self.less = self._button("\u2212", self.tr("Less (with Shift ten times, Ctrl a tenth)"))
        self.more = self._button("+", self.tr("More (with Shift ten times, Ctrl a tenth)"))
        self.value = QLabel()
        self.value.setMinimumWidth(64)
        self.value.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.arrows = {
            way: self._button(sign, name)
            for way, sign, name in (
                ((-1, 0), "\u2190", self.tr("Point to the left")),
                ((1, 0), "\u2192", self.tr("Point to the right")),
                ((0, 1), "\u2191", self.tr("Point up")),
                ((0, -1), "\u2193", self.tr("Point down")),
            )
        }
        self.point_in = self._button(self.tr("Insert"), self.tr("Insert a point after it"))
        self.point_out = self._button(self.tr("Delete"), self.tr("Delete the point"))
        for button in (self.point_in, self.point_out):
            button.setMaximumWidth(16777215)
            button.setProperty("kind", "segment")
            button.setAutoRepeat(False)
        row.addWidget(self.label)
        row.addWidget(self.choice)
        for widget in (self.less, self.value, self.more, *self.arrows.values()):
            row.addWidget(widget)
        row.addWidget(self.point_in)
        row.addWidget(self.point_out)
        row.addStretch(1)
        self.draw = self._draw_menu()
        row.addWidget(self.draw)
        self._add_looks(row)
        self._listen()
        self._narrow, self._point = False, False
        self._keys: list[str] = []
        self._section: Section | None = None
        self._key = ""

    def _add_looks(self, row: QHBoxLayout) -> None:
        """How near the section is looked at."""
        self.looks: dict[str, QPushButton] = {}
        for words, sign, name in (
            (self.tr("Closer"), "+", "closer"),
            (self.tr("Farther"), "\u2212", "back"),
            (self.tr("All of it"), self.tr("Fit"), "fit"),
        ):
            button = self._button(sign, words)
            button.setMaximumWidth(16777215 if name == "fit" else 28)
            if name == "fit":
                button.setProperty("kind", "segment")
                button.setAutoRepeat(False)
            button.clicked.connect(lambda _=False, name=name: self.asked.emit(name))
            row.addWidget(button)
            self.looks[name] = button

    def _listen(self) -> None:
        for way_on, button in zip(_STEPS, (self.less, self.more), strict=True):
            button.clicked.connect(lambda _=False, way_on=way_on: self._step(way_on))
            button.released.connect(self._settle)
        for way, button in self.arrows.items():
            button.clicked.connect(lambda _=False, way=way: self._nudge(way))
            button.released.connect(self._settle)
        self.point_in.clicked.connect(lambda: self.asked.emit("point in"))
        self.point_out.clicked.connect(lambda: self.asked.emit("point out"))

    def _draw_menu(self) -> QPushButton:
        """What can be drawn over the section on demand."""
        button = QPushButton(self.tr("Draw"))
        button.setProperty("kind", "segment")
        button.setToolTip(
            self.tr(
                "Draw legs, triangle or throats over the section, or show its photo (1, 2, 3, 4)"
            )
        )
        menu = QMenu(self)
        self.drawn: dict[Drawn, QAction] = {}
        for drawn in DRAWN:
            action = self._action(menu, drawn_word(drawn))
            action.triggered.connect(lambda _=False, name=drawn: self.asked.emit(f"draw {name}"))
            self.drawn[drawn] = action
        menu.addSeparator()
        self.photo = self._action(menu, self.tr("The photo behind it"))
        self.photo.triggered.connect(lambda: self.asked.emit("draw photo"))
        button.setMenu(menu)
        return button

    def _action(self, menu: QMenu, words: str) -> QAction:
        """Return an entry to tick, made here: Python may lose sight of one that Qt has made."""
        action = QAction(words, self)
        action.setCheckable(True)
        menu.addAction(action)
        return action

    def _button(self, sign: str, name: str) -> QPushButton:
        button = QPushButton(sign)
        button.setProperty("kind", "small")
        button.setMinimumSize(28, 28)
        button.setMaximumWidth(28)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.setAutoRepeat(True)
        return button

    def show_drawn(self, drawn: frozenset[Drawn], *, photo: bool, pictured: bool) -> None:
        """Show what is drawn over the section; whether it has a `photo`, and that is shown."""
        self.photo.setEnabled(photo)
        self.photo.setChecked(photo and pictured)
        for name, action in self.drawn.items():
            action.setChecked(name in drawn)

    def show_section(self, section: Section, key: str, unit: Unit) -> None:
        """Show the handles there are, and the one that is worked with."""
        self._section, self._key = section, key
        keys = [knob.key for knob in knobs_of(section)]
        point = key.startswith("trace.")
        if section.bead.trace is not None and len(section.bead.trace) > 2:
            keys.append(key if point else "trace.1")
        with QSignalBlocker(self.choice):
            if keys != self._keys:
                self._keys = keys
                self.choice.clear()
                self.choice.addItems([short_word(each) for each in keys])
            self.choice.setCurrentIndex(keys.index(key) if key in keys else -1)
        knob = knob_of(section, key)
        self._point = point
        self._arrange()
        if knob is not None:
            self.value.setText(value_words(knob, unit))
            self.value.setAccessibleName(f"{knob_word(key)}, {value_words(knob, unit)}")

    def set_narrow(self, narrow: bool) -> None:
        """Leave out what there is another way to, where there is no room."""
        self._narrow = narrow
        self._arrange()

    def _arrange(self) -> None:
        point, narrow = self._point, self._narrow
        self.choice.setFixedWidth(self._choice_width())
        self.label.setVisible(not point and not narrow)
        for widget in (self.less, self.value, self.more):
            widget.setVisible(not point)
        for widget in (*self.arrows.values(), self.point_in, self.point_out):
            widget.setVisible(point)
        for name, button in self.looks.items():
            button.setVisible(not narrow or (name == "fit" and not point))
        self.draw.setVisible(not (narrow and point))

    def _choice_width(self) -> int:
        """Room for the longest handle's name; where there is none, what the rest leaves."""
        wanted = max(148, self.choice.sizeHint().width())
        if not self._narrow:
            return wanted
        parts = (self.value, self.less, self.more, self.draw, self.looks["fit"])
        others = sum(max(part.minimumWidth(), part.sizeHint().width()) for part in parts)
        return min(wanted, max(96, self.width() - others - _AIR))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the room anew."""
        super().resizeEvent(event)
        self._arrange()

    def _pick(self, at: int) -> None:
        if 0 <= at < len(self._keys):
            self.chosen.emit(self._keys[at])

    def _step(self, sign: float) -> None:
        knob = knob_of(self._section, self._key) if self._section is not None else None
        if knob is not None:
            step = step_of(QApplication.keyboardModifiers(), knob.kind)
            value = knob.value + sign * step
            grain = min(step, 1.0 if knob.kind == "angle" else 0.1)
            self.stepped.emit(self._key, round(value / grain) * grain)

    def _nudge(self, way: tuple[int, int]) -> None:
        step = step_of(QApplication.keyboardModifiers(), "length")
        self.nudged.emit(step * way[0], step * way[1])

    def _settle(self) -> None:
        button = self.sender()
        # A button that repeats is released with each repeat; only the last one is a hand's.
        if isinstance(button, QPushButton) and not button.isDown():
            self.settled.emit()
