"""Beside the picture: the steps, what to do now, what is known, what was found."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from exercises.backdrop import LARGEST_PICTURE
from geometry.lengths import Unit
from trainer.bench.worded import wrapped
from trainer.shop.intake_panel import IntakePanel
from trainer.shop.photo.controller import PhotoController
from trainer.shop.photo.lengths import KnownField
from trainer.shop.photo.point_tools import PointTools, Rows
from trainer.shop.photo.state import STEPS, PhotoState, Sides, Step
from trainer.shop.photo.words import fault_line, results, step_help, step_word

__all__ = ["PhotoPanel"]

_DONE: Final = "\u2713 "
_CLEAR: Final = frozenset({"photo-member", "photo-scale", "photo-face", "photo-rectangle"})
"""What is only missing: said at the last step, and not while it is being put in."""


class PhotoPanel(IntakePanel):
    """The steps and everything that belongs to them.

    Signals
    -------
    step_asked(step)
        Another step.
    asked(name)
        Also ``open``, ``make``, ``base``, ``upright``, ``before``, ``after``, ``remove``,
        ``edge``, ``hand``.
    nudged(dx, dy), settled()
        Move the chosen point, pixels; the end of that.
    sides_told(known, wide, high), length_told(length)
        What is known of the rectangle, and of the scale: mm, or a ratio.
    keeping(keeps)
        Whether the picture goes into the tray.
    """

    step_asked = Signal(str)
    nudged = Signal(float, float)
    settled = Signal()
    sides_told = Signal(str, float, float)
    length_told = Signal(float)
    keeping = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(self.tr("From a photo"), self.tr("Show the whole picture (0)"), parent)
        self._step: Step = "open"
        inner = QVBoxLayout()
        self.help = wrapped("")
        inner.addWidget(self.help)
        self._fill(inner)
        self._put_together(self._steps(), inner, self._way())

    # Parts

    def _steps(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setSpacing(4)
        self.steps: dict[Step, QPushButton] = {}
        for index, step in enumerate(STEPS):
            button = QPushButton()
            button.setProperty("kind", "segment")
            button.setCheckable(True)
            button.setMinimumHeight(28)
            button.clicked.connect(lambda _=False, step=step: self.step_asked.emit(step))
            grid.addWidget(button, index // 3, index % 3)
            self.steps[step] = button
        return grid

    def _fill(self, box: QVBoxLayout) -> None:
        self.open = self.button(self.tr("Choose a picture..."), "open", "primary")
        box.addWidget(self.open)
        self.file = wrapped("", "quiet")
        box.addWidget(self.file)
        box.addWidget(self._known())
        self.length = KnownField(self.tr("Known length"))
        self.length.entered.connect(self.length_told)
        box.addWidget(self.length)
        box.addWidget(self._members())
        self.tools = PointTools()
        self.tools.asked.connect(self.asked)
        self.tools.nudged.connect(self.nudged)
        self.tools.settled.connect(self.settled)
        box.addWidget(self.tools)
        self.fault = wrapped("", "warning")
        box.addWidget(self.fault)
        box.addWidget(self._results())
        self.keep = QCheckBox(self.tr("Keep the picture in the tray"))
        self.keep.toggled.connect(self.keeping)
        self.kept = wrapped(
            self.tr(
                "Cut to the weld and made small, {n} KiB at most. It is shown behind the section "
                "in the shop and in the debrief; never before a call."
            ).format(n=LARGEST_PICTURE // 1024),
            "gloss",
        )
        box.addWidget(self.keep)
        box.addWidget(self.kept)

    def _known(self) -> QWidget:
        self.known_box = QWidget()
        column = QVBoxLayout(self.known_box)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        row = QHBoxLayout()
        row.setSpacing(4)
        self.known: dict[Sides, QPushButton] = {}
        for kind, words in (
            ("lengths", self.tr("Two lengths")),
            ("square", self.tr("A square")),
            ("ratio", self.tr("A ratio")),
        ):
            button = QPushButton(words)
            button.setProperty("kind", "segment")
            button.setCheckable(True)
            button.setMinimumHeight(28)
            button.clicked.connect(lambda _=False, kind=kind: self._tell_sides(kind))
            row.addWidget(button, 1)
            self.known[kind] = button  # type: ignore[index]
        column.addLayout(row)
        self.wide = KnownField(self.tr("Upper side"))
        self.high = KnownField(self.tr("Left side"))
        self.ratio_wide = KnownField(self.tr("Upper side, parts"), bare=True)
        self.ratio_high = KnownField(self.tr("Left side, parts"), bare=True)
        for field in (self.wide, self.high, self.ratio_wide, self.ratio_high):
            column.addWidget(field)
        self._sides: dict[str, list[float | None]] = {"lengths": [None, None], "ratio": [1.0, 1.0]}
        for kind, at, field in (
            ("lengths", 0, self.wide),
            ("lengths", 1, self.high),
            ("ratio", 0, self.ratio_wide),
            ("ratio", 1, self.ratio_high),
        ):
            field.entered.connect(lambda value, kind=kind, at=at: self._enter_side(kind, at, value))
        return self.known_box

    def _enter_side(self, kind: str, at: int, value: float) -> None:
        self._sides[kind][at] = value
        self._tell_sides(kind)

    def _tell_sides(self, kind: str) -> None:
        wide, high = self._sides.get(kind, [1.0, 1.0])
        # Zero is a side that isn't known yet.
        self.sides_told.emit(kind, wide or 0.0, high or 0.0)

    def _members(self) -> QWidget:
        self.member_box = QWidget()
        row = QHBoxLayout(self.member_box)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        self.members: dict[str, QPushButton] = {}
        for name, words, key in (
            ("base", self.tr("Base"), "B"),
            ("upright", self.tr("Upright"), "U"),
        ):
            button = self.button(f"{words}  {key}", name, "segment")
            button.setCheckable(True)
            button.setAccessibleName(words)
            row.addWidget(button, 1)
            self.members[name] = button
        return self.member_box

    def _results(self) -> QWidget:
        self.found = QWidget()
        column = QVBoxLayout(self.found)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self.rows = Rows(5)
        column.addWidget(self.rows)
        self.sure = wrapped(
            self.tr(
                "\u00b1 is twice the standard uncertainty, from pixels, points and lengths; what "
                "a lens bends isn\u2019t in it."
            ),
            "gloss",
        )
        column.addWidget(self.sure)
        return self.found

    def _way(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(6)
        self.back = QPushButton(self.tr("Back"))
        self.back.setProperty("kind", "tall")
        self.back.clicked.connect(lambda: self._step_by(-1))
        self.next = QPushButton(self.tr("Next"))
        self.next.setProperty("kind", "primary")
        self.next.clicked.connect(lambda: self._step_by(1))
        row.addWidget(self.back, 1)
        row.addWidget(self.next, 2)
        return row

    def _step_by(self, way: int) -> None:
        at = STEPS.index(self._step) + way
        if at < len(STEPS):
            self.step_asked.emit(STEPS[at])
        else:
            self.asked.emit("make")

    # What is shown

    def show_state(self, controller: PhotoController, unit: Unit, *, busy: bool) -> None:
        """Show how far it is."""
        state = controller.state
        step = self._step = state.step
        there = controller.picture is not None
        for index, (name, button) in enumerate(self.steps.items(), start=1):
            done = controller.is_done(name) and name != "check"
            said = f"{index} {step_word(name)}"
            button.setText(f"{_DONE if done else ''}{said}")
            words = self.tr("{step}, done") if done else "{step}"
            button.setAccessibleName(words.format(step=said))
            button.setEnabled(there or name == "open")
            with QSignalBlocker(button):
                button.setChecked(name == step)
        scaled = bool(state.marks.corners) and state.marks.sides_known
        self.help.setText(step_help(step, scaled=scaled))
        self.open.setVisible(step == "open")
        self.open.setEnabled(not busy)
        self.known_box.setVisible(step == "straighten")
        self.length.setVisible(step == "scale")
        self.length.show_value(state.marks.length, unit)
        self.member_box.setVisible(step == "members")
        for group, member in self.members.items():
            member.setChecked(state.group == group)
        self.tools.show_state(state)
        self.show_tools(can_undo=controller.can_undo, can_redo=controller.can_redo, there=there)
        self._show_sides(state, unit)
        self._show_found(controller, unit)
        self._show_way(controller, busy=busy)

    def _show_sides(self, state: PhotoState, unit: Unit) -> None:
        marks = state.marks
        for kind, button in self.known.items():
            with QSignalBlocker(button):
                button.setChecked(state.known == kind)
        if marks.sides is not None and state.known in self._sides:
            self._sides[state.known] = [*marks.sides]
        for kind, at, field in (
            ("lengths", 0, self.wide),
            ("lengths", 1, self.high),
            ("ratio", 0, self.ratio_wide),
            ("ratio", 1, self.ratio_high),
        ):
            field.setVisible(state.known == kind)
            field.show_value(self._sides[kind][at], unit)

    def _show_found(self, controller: PhotoController, unit: Unit) -> None:
        state, outline = controller.state, controller.outline
        rows = results(state, outline, unit)
        self.rows.show_rows(rows)
        self.found.setVisible(bool(rows) and state.step != "open")
        self.sure.setVisible(outline is not None)
        shown = [
            fault
            for fault in controller.faults
            if state.step == "check" or fault.code not in _CLEAR
        ]
        self.fault.setVisible(bool(shown) and state.step != "open")
        self.fault.setText("\n".join(fault_line(fault) for fault in shown))
        self.keep.setVisible(state.step == "check")
        self.kept.setVisible(state.step == "check")
        with QSignalBlocker(self.keep):
            self.keep.setChecked(state.keeps)

    def _show_way(self, controller: PhotoController, *, busy: bool) -> None:
        step = controller.state.step
        self.back.setEnabled(step != "open" and not busy)
        last = step == "check"
        self.next.setText(self.tr("Make a coupon of it") if last else self.tr("Next"))
        optional = step == "straighten" and not controller.state.marks.corners
        if optional:
            self.next.setText(self.tr("It stands square on: next"))
        done = controller.is_done(step) or optional
        self.next.setEnabled(done and not busy)
