"""At the right: who sits it, and how much time more each of them has."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from exercises.sitting.codes import code_key
from exercises.sitting.plan import Entrant
from trainer.hint import Hint
from trainer.look.tokens import Theme
from trainer.shop.entry import Entry
from trainer.shop.form import grid_of
from trainer.sittings.roll import Candidate
from trainer.sittings.tick_table import Row, TickTable
from trainer.sittings.words import mark_words

__all__ = ["EntrantsPanel"]

_EXTRAS: Final = (0.0, 0.25, 0.5, 1.0)
_MOST: Final = 300.0
"""Per cent of the time that can be given more."""


class EntrantsPanel(QWidget):
    """Who could sit it, those ticked who do.

    Signals
    -------
    ticked(codes, on)
        These sit it, or don't.
    extra_given(codes, share)
        These have that share of time more.
    class_asked()
        The class is to be seen, to put learners into it.
    """

    ticked = Signal(object, bool)
    extra_given = Signal(object, float)
    class_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        self._candidates: tuple[Candidate, ...] = ()
        self._entrants: tuple[Entrant, ...] = ()
        self._theme: Theme | None = None
        self.rooms = QStackedWidget()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 6, 0, 0)
        whole.addWidget(self.rooms)
        self.rooms.addWidget(self._nobody())
        self.rooms.addWidget(self._somebody())

    def _nobody(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.addStretch(2)
        self.empty = Hint(
            240,
            self.tr(
                "No learner has a code yet. Put them into the class first; or seal it without: "
                "then anybody may sit it, with a code that they type."
            ),
        )
        column.addWidget(self.empty, alignment=Qt.AlignmentFlag.AlignHCenter)
        self.to_class = QPushButton(self.tr("To the class"))
        self.to_class.setProperty("kind", "tall")
        self.to_class.clicked.connect(self.class_asked)
        column.addWidget(self.to_class, alignment=Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)
        return holder

    def _somebody(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self.groups = QComboBox()
        self.groups.setAccessibleName(self.tr("Which learners are listed"))
        # A group's name gives way to the buttons.
        self.groups.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.groups.activated.connect(lambda _: self._show())
        self.all = self._button(self.tr("Tick all"), lambda: self._tick_all(on=True))
        self.none = self._button(self.tr("Untick all"), lambda: self._tick_all(on=False))
        row = QHBoxLayout()
        row.addWidget(self.groups, 1)
        row.addWidget(self.all)
        row.addWidget(self.none)
        column.addLayout(row)
        self.table = TickTable(
            (self.tr("Code"), self.tr("Name"), self.tr("Extra")),
            self.tr("Learners; those ticked sit it"),
        )
        self.table.ticked.connect(self.ticked)
        self.table.chosen.connect(self._show_extra)
        column.addWidget(self.table, 1)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.said.setProperty("tone", "gloss")
        column.addWidget(self.said)
        self._add_extras(column)
        return holder

    def _add_extras(self, column: QVBoxLayout) -> None:
        heading = QLabel(self.tr("Time more for those chosen above"))
        heading.setProperty("tone", "quiet")
        column.addWidget(heading)
        row = QHBoxLayout()
        row.setSpacing(6)
        self.extras: list[QPushButton] = []
        for share in _EXTRAS:
            words = f"+{mark_words(share)}" if share else self.tr("none")
            button = self._button(words, lambda _=False, share=share: self._give(share))
            button.setAccessibleName(self.tr("Time more: {share}").format(share=words))
            self.extras.append(button)
            row.addWidget(button)
        column.addLayout(row)
        grid = grid_of(None)
        self.other = Entry("extra", self.tr("Another share, %"), "count", self._enter, step=5.0)
        self.other.setParent(self)
        self.other.put(grid, 0)
        column.addLayout(grid)

    def _button(self, words: str, do: object) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.clicked.connect(do)
        return button

    # What it shows

    def show_entrants(
        self, candidates: Sequence[Candidate], entrants: Sequence[Entrant], theme: Theme
    ) -> None:
        """Show who could sit it, and who does."""
        known = {code_key(one.code) for one in candidates}
        strangers = [Candidate(one.code, "") for one in entrants if code_key(one.code) not in known]
        self._candidates = (*candidates, *strangers)
        self._entrants, self._theme = tuple(entrants), theme
        names = sorted({name for one in candidates for name in one.groups})
        entries = [self.tr("Everybody"), *names]
        with QSignalBlocker(self.groups):
            now = self.groups.currentText()
            if [self.groups.itemText(at) for at in range(self.groups.count())] != entries:
                self.groups.clear()
                self.groups.addItems(entries)
                self.groups.setCurrentIndex(max(0, entries.index(now) if now in entries else 0))
        self.rooms.setCurrentIndex(1 if self._candidates else 0)
        self._show()

    def _listed(self) -> list[Candidate]:
        at = self.groups.currentIndex()
        name = self.groups.currentText()
        return [one for one in self._candidates if at <= 0 or name in one.groups]

    def _show(self) -> None:
        if self._theme is None:
            return
        sits = {code_key(one.code): one.extra for one in self._entrants}
        rows = []
        for one in self._listed():
            extra = sits.get(code_key(one.code))
            more = f"+{mark_words(extra)}" if extra else ""
            name = one.name or self.tr("unknown here")
            cells = (one.code, name, more)
            rows.append(Row(one.code, cells, extra is not None, quiet=extra is None))
        self.table.show_rows(rows, self._theme)
        count = len(self._entrants)
        self.said.setText(
            self.tr("%n learner(s) sit it; nobody else may.", "", count)
            if count
            else self.tr("Nobody is ticked: anybody may sit it, with a code that they type.")
        )
        listed = [code_key(one.code) in sits for one in self._listed()]
        self.all.setEnabled(not all(listed))
        self.none.setEnabled(any(listed))
        self._show_extra()

    def _chosen(self) -> list[str]:
        """The codes that are chosen and sit it."""
        sits = {code_key(one.code) for one in self._entrants}
        return [str(key) for key in self.table.chosen_keys if code_key(str(key)) in sits]

    def _show_extra(self) -> None:
        chosen = self._chosen()
        keys = {code_key(code) for code in chosen}
        found = {one.extra for one in self._entrants if code_key(one.code) in keys}
        for button in self.extras:
            button.setEnabled(bool(chosen))
        self.other.field.setEnabled(bool(chosen))
        for step in self.other.steps:
            step.setEnabled(bool(chosen))
        share = 100.0 * found.pop() if len(found) == 1 else None
        self.other.show_value(" ".join(chosen), share, "mm")

    # What is done

    def _tick_all(self, *, on: bool) -> None:
        self.ticked.emit([one.code for one in self._listed()], on)

    def _give(self, share: float) -> None:
        chosen = self._chosen()
        if chosen:
            self.extra_given.emit(chosen, share)

    def _enter(self, key: str, value: object) -> str:
        percent = float(value) if isinstance(value, (int, float)) else -1.0
        if not 0.0 <= percent <= _MOST:
            return self.tr("Right would be: 0 to 300")
        self._give(percent / 100.0)
        return ""
