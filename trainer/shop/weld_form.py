"""The weld in figures: joint, bead, what spoils it, spatter."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from exercises.coupon import Coupon
from geometry.lengths import Unit
from trainer.shop.choices import Choice
from trainer.shop.entry import Entry, Measure, Take
from trainer.shop.fields import value_of
from trainer.shop.form import Form, grid_of
from trainer.shop.knobs import knobs_of
from trainer.shop.words import knob_word

__all__ = ["WeldForm"]

_JOINT: Final = ("angle", "root_opening")
_BEAD: Final = ("leg_base", "leg_upright", "crown")
_TOES: Final = (
    "undercut_base.depth",
    "undercut_base.width",
    "overlap_base",
    "undercut_upright.depth",
    "undercut_upright.width",
    "overlap_upright",
)
_PLATES: Final = ("base_thickness", "upright_thickness", "base_length", "upright_length")


class WeldForm(Form):
    """Figures of the weld.

    Signals
    -------
    asked(name)
        ``spatter``: one drop more; ``face``: the other kind of face.
    focused(key)
        A field is worked with.
    """

    asked = Signal(str)
    focused = Signal(str)

    def __init__(self, take: Take, choose: Take, parent: QWidget | None = None) -> None:
        super().__init__(take, choose, parent)
        self.heading(self.tr("Bead"))
        for key in _BEAD:
            self._entry(key)
        self._face = QLabel()
        self._face.setProperty("tone", "quiet")
        self.face = QPushButton()
        self.face.setProperty("kind", "segment")
        self.face.clicked.connect(lambda: self.asked.emit("face"))
        line = QWidget()
        line.setProperty("kind", "holder")
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 2, 0, 2)
        row.addWidget(self._face, 1)
        row.addWidget(self.face)
        self.widget_row(line)
        self.heading(self.tr("Joint"))
        for key in _JOINT:
            self._entry(key)
        self.heading(self.tr("At the toes"))
        for key in _TOES:
            self._entry(key, optional=True)
        self.heading(self.tr("Spatter"))
        self._drops = QVBoxLayout()
        self._drops.setSpacing(2)
        self.column.addLayout(self._drops)
        self._rows: list[tuple[QWidget, Choice, Entry, Entry]] = []
        self.more = QPushButton(self.tr("Add spatter"))
        self.more.setProperty("kind", "segment")
        self.more.clicked.connect(lambda: self.asked.emit("spatter"))
        line = QWidget()
        line.setProperty("kind", "holder")
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 2, 0, 2)
        row.addWidget(self.more)
        row.addStretch(1)
        self.widget_row(line)
        self.heading(self.tr("Plates"))
        for key in _PLATES:
            self._entry(key)
        self.finish()

    def _entry(self, key: str, *, optional: bool = False) -> None:
        measure: Measure = "angle" if key == "angle" else "length"
        entry = self.entry(key, knob_word(key), measure, optional=optional)
        entry.focused.connect(self.focused)

    def show_coupon(self, coupon: Coupon, of: str, unit: Unit) -> None:
        """Show a coupon's figures."""
        traced = coupon.section.bead.trace is not None
        values = {knob.key: knob.value for knob in knobs_of(coupon.section)}
        for key in (*_BEAD, *_JOINT, *_TOES):
            self.show_entry(key, of, values.get(key), unit)
        for key in _PLATES:
            self.show_entry(key, of, value_of(coupon, key), unit)
        self.show_field("crown", visible=not traced)
        if traced:
            points = len(coupon.section.bead.trace or ())
            self._face.setText(self.tr("Traced face, points: {n}").format(n=points))
            self.face.setText(self.tr("Make it an arc"))
        else:
            self._face.setText(self.tr("Face: an arc"))
            self.face.setText(self.tr("Trace it"))
        self._show_drops(coupon, of, unit)

    def _show_drops(self, coupon: Coupon, of: str, unit: Unit) -> None:
        drops = coupon.section.spatter
        while len(self._rows) > len(drops):
            holder, *_ = self._rows.pop()
            holder.hide()
            holder.deleteLater()
        while len(self._rows) < len(drops):
            self._rows.append(self._drop(len(self._rows)))
        for drop, (_, on, at, height) in zip(drops, self._rows, strict=True):
            on.show_value(drop.on)
            at.show_value(of, drop.at, unit)
            height.show_value(of, drop.height, unit)

    def _drop(self, index: int) -> tuple[QWidget, Choice, Entry, Entry]:
        """The fields of one drop: on which member, where, how high; and a way to be rid of it."""
        key = f"spatter.{index}"
        members = (("base", self.tr("base")), ("upright", self.tr("upright")))
        on = Choice(f"{key}.on", self.tr("Drop {n}").format(n=index + 1), members, self.choose)
        at = Entry(f"{key}.at", knob_word(f"{key}.at"), "length", self.take)
        height = Entry(f"{key}.height", knob_word(f"{key}.height"), "length", self.take)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        for entry in (at, height):
            entry.setParent(holder)
            entry.settled.connect(self.settled)
            entry.focused.connect(self.focused)
        grid = grid_of(holder)
        row = on.put(grid, 0)
        row = at.put(grid, row)
        row = height.put(grid, row)
        gone = QPushButton(self.tr("Take drop {n} away").format(n=index + 1))
        gone.setProperty("kind", "segment")
        gone.clicked.connect(lambda: self.choose(key + ".at", None))
        grid.addWidget(gone, row, 1)
        self._drops.addWidget(holder)
        return holder, on, at, height
