"""What a coupon is called, what it asks, what it hints at and what it teaches; English, Spanish."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from exercises.coupon import Coupon
from exercises.placement_faults import true_faults
from geometry.lengths import Unit
from trainer.bench.placed_words import claim_lines, fault_list
from trainer.shop.choices import Choice
from trainer.shop.entry import Entry, Take
from trainer.shop.fields import LANGUAGES, value_of
from trainer.shop.form import Form, grid_of

__all__ = ["WordsForm"]


class WordsForm(Form):
    """Id, task and texts.

    Signals
    -------
    asked(name)
        ``hint``: one more; ``no hint 2``: that one away; ``unplace``: the placed leaf away.
    """

    asked = Signal(str)

    def __init__(self, take: Take, choose: Take, parent: QWidget | None = None) -> None:
        super().__init__(take, choose, parent)
        self.heading(self.tr("Coupon"))
        self.entry("id", self.tr("Id, unique in the tray"), "text")
        self._task = Choice("task", self.tr("Task"), self._tasks(placed=False), choose)
        self.put(self._task)
        self._place()
        self.heading(self.tr("Title"))
        self._texts("title")
        self.heading(self.tr("What it teaches, shown in the debrief"))
        self._texts("teaches")
        self.heading(self.tr("Hints, one by one on asking"))
        self._hints = QWidget()
        self._hints.setProperty("kind", "holder")
        self._forms: list[tuple[QWidget, list[Entry]]] = []
        self.widget_row(self._hints)
        self.more = QPushButton(self.tr("Add a hint"))
        self.more.setProperty("kind", "segment")
        self.more.clicked.connect(lambda: self.asked.emit("hint"))
        line = QWidget()
        line.setProperty("kind", "holder")
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 2, 0, 2)
        row.addWidget(self.more)
        row.addStretch(1)
        self.widget_row(line)
        self.finish()

    def _tasks(self, *, placed: bool) -> tuple[tuple[str, str], ...]:
        """The tasks to choose from; a fault can be found only where a leaf is placed."""
        tasks = (
            ("judge", self.tr("judge the weld")),
            ("size", self.tr("find its size")),
            ("read", self.tr("state what a leaf shows")),
        )
        if not placed:
            return tasks
        return (*tasks, ("find the fault", self.tr("find the fault of the placed leaf")))

    def _place(self) -> None:
        """The fields of the leaf that somebody has placed."""
        heading = self.heading(self.tr("The placed leaf"))
        self._lies = QLabel()
        self._lies.setWordWrap(True)
        self._lies.setProperty("tone", "quiet")
        self.widget_row(self._lies)
        members = (("base", self.tr("base")), ("upright", self.tr("upright")))
        gauged = (
            ("", self.tr("none")),
            *members,
            ("both", self.tr("base and upright")),
        )
        self.put(Choice("placed.on", self.tr("Said to gauge the leg on"), members, self.choose))
        self.put(Choice("placed.gauged", self.tr("Legs said to be gauged"), gauged, self.choose))
        self.entry("placed.tilt", self.tr("Tilted by"), "angle")
        self.entry("placed.x", self.tr("Corner, along the base"), "length")
        self.entry("placed.y", self.tr("Corner, off the base"), "length")
        self.away = QPushButton(self.tr("Take the placed leaf away"))
        self.away.setProperty("kind", "segment")
        self.away.clicked.connect(lambda: self.asked.emit("unplace"))
        self.widget_row(self.away)
        self._of_placed = (heading, self._lies, self.away)

    def _show_placed(self, coupon: Coupon) -> None:
        there = coupon.placed is not None
        for widget in self._of_placed:
            widget.setVisible(there)
        for key in self.fields:
            if key.startswith("placed."):
                throat = coupon.placed is not None and coupon.placed.edge == "throat"
                self.show_field(key, visible=there and not (throat and key == "placed.on"))
        if there:
            right = self.tr("Right: {faults}").format(faults=fault_list(true_faults(coupon)))
            self._lies.setText("\n".join((*claim_lines(coupon), right)))

    def _texts(self, key: str) -> None:
        names = {"en": self.tr("English"), "es": self.tr("Spanish")}
        for tag in LANGUAGES:
            self.entry(f"{key}.{tag}", names[tag], "text", optional=True)

    def show_coupon(self, coupon: Coupon, of: str, unit: Unit) -> None:
        """Show a coupon's texts."""
        self._task.offer(self._tasks(placed=coupon.placed is not None))
        for key in self.fields:
            self.show_entry(key, of, value_of(coupon, key), unit)
        self._show_placed(coupon)
        count = len(coupon.hints)
        while len(self._forms) > count:
            holder, _ = self._forms.pop()
            holder.hide()
            holder.deleteLater()
        while len(self._forms) < count:
            self._forms.append(self._hint(len(self._forms)))
        for _, entries in self._forms:
            for entry in entries:
                entry.show_value(of, value_of(coupon, entry.key), unit)

    def _hint(self, index: int) -> tuple[QWidget, list[Entry]]:
        """The fields of one hint, and a button to take it away."""
        form = QWidget()
        form.setProperty("kind", "holder")
        grid = grid_of(form)
        names = {"en": self.tr("Hint {n}, English"), "es": self.tr("Hint {n}, Spanish")}
        entries: list[Entry] = []
        row = 0
        for tag in LANGUAGES:
            name = names[tag].format(n=index + 1)
            entry = Entry(f"hints.{index}.{tag}", name, "text", self.take, optional=True)
            entry.setParent(form)
            entry.settled.connect(self.settled)
            row = entry.put(grid, row)
            entries.append(entry)
        gone = QPushButton(self.tr("Take hint {n} away").format(n=index + 1))
        gone.setProperty("kind", "segment")
        gone.clicked.connect(lambda: self.asked.emit(f"no hint {index}"))
        grid.addWidget(gone, row, 1)
        place = self.column.indexOf(self._hints)
        self.column.insertWidget(place + index, form)
        return form, entries
