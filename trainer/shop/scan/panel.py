"""Beside the plot: what was opened, what has to be said of it, handles, what was found."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from exercises.intake.outline import Drawing
from exercises.intake.table import Table
from exercises.intake.units import MM_PER, UNITS
from geometry.lengths import Unit
from trainer.bench.worded import wrapped
from trainer.shop.intake_panel import IntakePanel
from trainer.shop.photo.lengths import KnownField
from trainer.shop.photo.point_tools import Rows
from trainer.shop.scan.controller import ScanController
from trainer.shop.scan.state import HANDLES, Handle
from trainer.shop.scan.words import (
    cleaned_words,
    fault_line,
    handle_word,
    note_lines,
    outline_word,
    results,
    source_words,
    unit_asked,
    unit_word,
)

__all__ = ["MOST_LISTED", "ScanPanel"]

MOST_LISTED: Final = 40
"""Outlines that can be ticked: the longest."""

_ARROWS: Final = (
    ("\u2190", -1.0, 0.0), ("\u2191", 0.0, 1.0), ("\u2193", 0.0, -1.0), ("\u2192", 1.0, 0.0),
)  # fmt: skip


class ScanPanel(IntakePanel):
    """Everything that is said and asked beside the plot.

    Signals
    -------
    asked(name)
        ``open``, ``paste``, ``leave``, ``make``, ``undo``, ``redo``, ``closer``, ``back``,
        ``fit``, ``swap``, ``put back``, ``all``.
    unit_told(unit), columns_told(across, up), outline_told(index, chosen)
        What was chosen of the file.
    handle_chosen(handle), nudged(dx, dy), settled()
        A handle, moved by single clicks, mm.
    tolerance_told(mm), smoothing(smooth)
        How the face is made.
    """

    unit_told = Signal(str)
    columns_told = Signal(int, int)
    outline_told = Signal(int, bool)
    handle_chosen = Signal(str)
    nudged = Signal(float, float)
    settled = Signal()
    tolerance_told = Signal(float)
    smoothing = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(self.tr("From a scan or drawing"), self.tr("Show all points (0)"), parent)
        inner = QVBoxLayout()
        self._fill(inner)
        below = QVBoxLayout()
        self.make = self.button(self.tr("Make a coupon of it"), "make", "primary")
        below.addWidget(self.make)
        self._put_together(None, inner, below)

    # Parts

    def _fill(self, box: QVBoxLayout) -> None:
        row = QHBoxLayout()
        row.setSpacing(6)
        self.open = self.button(self.tr("Choose a file..."), "open", "tall")
        self.paste = self.button(self.tr("Paste points"), "paste", "tall")
        self.paste.setToolTip(self.tr("Two columns, x and z, as copied elsewhere (Ctrl+V)"))
        row.addWidget(self.open, 1)
        row.addWidget(self.paste, 1)
        box.addLayout(row)
        self.file = wrapped("", "quiet")
        self.notes = wrapped("", "quiet")
        self.cleaned = wrapped("", "quiet")
        self.fault = wrapped("", "warning")
        box.addWidget(self.file)
        box.addWidget(self._about_file())
        # Below what is ticked, which would else move away under the pointer.
        box.addWidget(self.fault)
        self.rows = Rows(6)
        box.addWidget(self.rows)
        self.sure = wrapped(
            self.tr(
                "\u00b1 is twice the standard uncertainty, from how the points scatter; what a "
                "scanner gets wrong everywhere isn\u2019t in it."
            ),
            "gloss",
        )
        box.addWidget(self.sure)
        box.addWidget(self._handles())
        box.addWidget(self._making())
        box.addWidget(self.cleaned)
        box.addWidget(self.notes)

    def _about_file(self) -> QWidget:
        self.about = QWidget()
        column = QVBoxLayout(self.about)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        row = QHBoxLayout()
        self.unit_name = QLabel(self.tr("Unit of the file"))
        self.unit = QComboBox()
        self.unit_name.setBuddy(self.unit)
        self.unit.setMinimumHeight(28)
        self.unit.activated.connect(self._tell_unit)
        row.addWidget(self.unit_name, 1)
        row.addWidget(self.unit)
        column.addLayout(row)
        self.columns = QWidget()
        pair = QHBoxLayout(self.columns)
        pair.setContentsMargins(0, 0, 0, 0)
        self.across, self.up = QComboBox(), QComboBox()
        for words, combo in ((self.tr("x from"), self.across), (self.tr("z from"), self.up)):
            label = QLabel(words)
            label.setBuddy(combo)
            combo.setMinimumHeight(28)
            combo.activated.connect(self._tell_columns)
            pair.addWidget(label)
            pair.addWidget(combo, 1)
        column.addWidget(self.columns)
        self.outlines = QWidget()
        self.outline_box = QVBoxLayout(self.outlines)
        self.outline_box.setContentsMargins(0, 0, 0, 0)
        self.outline_box.setSpacing(2)
        self.outline_boxes: list[QCheckBox] = []
        column.addWidget(self.outlines)
        return self.about

    def _handles(self) -> QWidget:
        self.handle_box = QWidget()
        column = QVBoxLayout(self.handle_box)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(
            wrapped(
                self.tr("Drag a handle, or choose one here and click where it belongs."), "quiet"
            )
        )
        grid = QGridLayout()
        grid.setSpacing(4)
        self.handles: dict[Handle, QPushButton] = {}
        for index, handle in enumerate(HANDLES):
            button = QPushButton(handle_word(handle))
            button.setProperty("kind", "segment")
            button.setCheckable(True)
            button.setMinimumHeight(28)
            button.clicked.connect(lambda _=False, handle=handle: self.handle_chosen.emit(handle))
            grid.addWidget(button, index // 2, index % 2)
            self.handles[handle] = button
        self.swap = self.button(self.tr("Swap members"), "swap", "segment")
        self.swap.setToolTip(self.tr("Base and upright change places (X)"))
        grid.addWidget(self.swap, 3, 1)
        column.addLayout(grid)
        row = QHBoxLayout()
        row.setSpacing(4)
        names = (
            self.tr("Move the handle left"),
            self.tr("Move the handle up"),
            self.tr("Move the handle down"),
            self.tr("Move the handle right"),
        )
        for (sign, dx, dy), name in zip(_ARROWS, names, strict=True):
            button = QPushButton(sign)
            button.setProperty("kind", "small")
            button.setFixedSize(28, 28)
            button.setAutoRepeat(True)
            button.setAccessibleName(name)
            button.setToolTip(name)
            button.clicked.connect(
                lambda _=False, dx=dx, dy=dy: self.nudged.emit(0.1 * dx, 0.1 * dy)
            )
            button.released.connect(self._let_go)
            row.addWidget(button)
        self.put_back = self.button(self.tr("Put back"), "put back", "segment")
        self.put_back.setToolTip(self.tr("Where it was proposed (Delete)"))
        row.addWidget(self.put_back, 1)
        column.addLayout(row)
        return self.handle_box

    def _let_go(self) -> None:
        button = self.sender()
        if not (isinstance(button, QPushButton) and button.isDown()):
            self.settled.emit()

    def _making(self) -> QWidget:
        self.making = QWidget()
        column = QVBoxLayout(self.making)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self.tolerance = KnownField(self.tr("Tolerance of the face"))
        self.tolerance.entered.connect(self.tolerance_told)
        self.smooth = QCheckBox(self.tr("Take the scatter out of the face"))
        self.smooth.toggled.connect(self.smoothing)
        column.addWidget(self.tolerance)
        column.addWidget(self.smooth)
        return self.making

    # What is told

    def _tell_unit(self) -> None:
        unit = self.unit.currentData()
        if unit:
            self.unit_told.emit(unit)

    def _tell_columns(self) -> None:
        across, up = self.across.currentIndex(), self.up.currentIndex()
        if across != up:
            self.columns_told.emit(across, up)

    # What is shown

    def show_state(self, controller: ScanController, unit: Unit) -> None:
        """Show what is known."""
        source, found = controller.source, controller.found
        there = source is not None
        self.open.setEnabled(not controller.reading)
        self.paste.setEnabled(not controller.reading)
        self._show_texts(controller)
        self.about.setVisible(there)
        if source is not None:
            self._show_unit(controller)
            self._show_columns(source.held)
            self._show_outlines(controller, unit)
        rows = results(found, unit)
        self.rows.show_rows(rows)
        self.rows.setVisible(bool(rows))
        self.sure.setVisible(bool(rows) and found.cloud is not None and not found.cloud.exact)
        fitted = found.fitted is not None
        rough = controller.last is None
        self.handle_box.setVisible(found.cloud is not None)
        self.swap.setEnabled(not rough)
        for handle, button in self.handles.items():
            # Without a section there are only the members to be laid by hand.
            button.setEnabled(not rough or handle.startswith(("base", "upright")))
            with QSignalBlocker(button):
                button.setChecked(handle == controller.state.chosen)
        self.making.setVisible(fitted)
        self.tolerance.show_value(controller.state.wishes.tolerance, unit)
        with QSignalBlocker(self.smooth):
            self.smooth.setChecked(controller.state.wishes.smooth)
        self.smooth.setVisible(found.cloud is not None and not found.cloud.exact)
        self.show_tools(can_undo=controller.can_undo, can_redo=controller.can_redo, there=there)
        self.make.setEnabled(fitted and not controller.busy)

    def _show_texts(self, controller: ScanController) -> None:
        source, found = controller.source, controller.found
        said = "" if source is None else source_words(source)
        if controller.reading:
            said = self.tr("Reading...")
        self.file.setText(said)
        self.file.setVisible(bool(said))
        faults = controller.refusal or found.faults
        lines = [fault_line(fault) for fault in faults[:3]]
        if controller.refusal:
            lines[0] = f"{faults[0].file}: {lines[0]}" if faults[0].file else lines[0]
        if not faults and controller.needs_unit:
            lines.append("" if source is None else unit_asked(source))
        if not faults and controller.needs_outline:
            lines.append(self.tr("Tick the outlines that make the section."))
        self.fault.setText("\n".join(lines))
        self.fault.setVisible(bool(lines))
        cleaned = "" if found.cloud is None else cleaned_words(found.cloud, found.fitted)
        self.cleaned.setText(cleaned)
        self.cleaned.setVisible(bool(cleaned))
        notes = (() if source is None else source.held.notes) + (
            () if found.fitted is None else found.fitted.notes
        )
        self.notes.setText(note_lines(notes))
        self.notes.setVisible(bool(notes))

    def _show_unit(self, controller: ScanController) -> None:
        source = controller.source
        chosen = controller.state.choice.unit or (source.unit if source is not None else None)
        with QSignalBlocker(self.unit):
            self.unit.clear()
            if chosen is None:
                mixed = source is not None and source.states_units
                self.unit.addItem(self.tr("as stated") if mixed else self.tr("choose..."), "")
            for unit in UNITS:
                self.unit.addItem(unit_word(unit), unit)
            self.unit.setCurrentIndex(max(0, self.unit.findData(chosen or "")))
        # A drawing that states its unit is in it.
        drawn = source is not None and isinstance(source.held, Drawing) and bool(source.unit)
        self.unit.setEnabled(not drawn)

    def _show_columns(self, held: Table | Drawing) -> None:
        several = isinstance(held, Table) and held.columns[2] > 2
        self.columns.setVisible(several)
        if not isinstance(held, Table) or not several:
            return
        for combo, at in ((self.across, held.columns[0]), (self.up, held.columns[1])):
            with QSignalBlocker(combo):
                combo.clear()
                for index in range(held.columns[2]):
                    name = held.names[index][:24] if held.names else ""
                    combo.addItem(f"{index + 1} {name}".strip())
                combo.setCurrentIndex(at)

    def _show_outlines(self, controller: ScanController, unit: Unit) -> None:
        source = controller.source
        drawing = source.held if source is not None else None
        several = isinstance(drawing, Drawing) and len(drawing.outlines) > 1
        self.outlines.setVisible(several)
        if not isinstance(drawing, Drawing) or not several:
            return
        count = min(len(drawing.outlines), MOST_LISTED)
        while len(self.outline_boxes) < count:
            at = len(self.outline_boxes)
            made = QCheckBox()
            made.toggled.connect(lambda on, at=at: self.outline_told.emit(at, on))
            self.outline_box.addWidget(made)
            self.outline_boxes.append(made)
        scale = MM_PER[controller.state.choice.unit or drawing.unit or "mm"]
        for at, box in enumerate(self.outline_boxes):
            box.setVisible(at < count)
            if at < count:
                with QSignalBlocker(box):
                    box.setText(outline_word(at + 1, drawing.outlines[at], scale, unit))
                    box.setChecked(at in controller.state.choice.outlines)
