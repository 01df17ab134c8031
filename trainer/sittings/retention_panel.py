"""At the right of the class: how long what a group did is kept, and what is due to be erased."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from trainer.bench.translation import translate
from trainer.figures import number_words
from trainer.look.tokens import Theme
from trainer.school.roster import LONGEST_KEPT, Due, Group
from trainer.shop.entry import Entry
from trainer.shop.form import grid_of
from trainer.sittings.counts import SittingCounts
from trainer.sittings.tick_table import Row, TickTable
from trainer.sittings.words import learners_word

__all__ = ["RetentionPanel", "due_line"]


class RetentionPanel(QWidget):
    """The days of the group that is shown, and what is older.

    Signals
    -------
    days_given(days)
        What its members did is kept so long; None is for good.
    asked(name)
        ``due``: look for what is due; ``erase due``: erase it.
    """

    days_given = Signal(object)
    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        self.due: tuple[Due, ...] = ()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(8)
        self.group = QLabel()
        self.group.setProperty("tone", "heading")
        self.group.setWordWrap(True)
        column.addWidget(self.group)
        grid = grid_of(None)
        self.days = Entry(
            "days", self.tr("Kept for days"), "count", self._enter,
            optional=True, step=30.0, begin=365.0,
        )  # fmt: skip
        self.days.setParent(self)
        self.days.field.setPlaceholderText(self.tr("for good"))
        self.days.put(grid, 0)
        column.addLayout(grid)
        said = QLabel(
            self.tr(
                "What a learner did longer ago than that is due to be erased. Of several groups "
                "the longest holds; who is in none is kept for good. Nothing is erased by itself."
            )
        )
        said.setWordWrap(True)
        said.setProperty("tone", "gloss")
        column.addWidget(said)
        self.look = QPushButton(self.tr("See what is due"))
        self.look.setProperty("kind", "segment")
        self.look.setMinimumHeight(28)
        self.look.clicked.connect(lambda: self.asked.emit("due"))
        column.addWidget(self.look)
        self.found = QLabel()
        self.found.setWordWrap(True)
        self.found.setProperty("tone", "quiet")
        column.addWidget(self.found)
        self.table = TickTable(
            (self.tr("Name here"), self.tr("Calls"), self.tr("Papers"), self.tr("Stays")),
            self.tr("What is due to be erased"),
            boxes=False,
            stretch=0,
        )
        column.addWidget(self.table, 1)
        self.erase = QPushButton(self.tr("Erase what is due..."))
        self.erase.setProperty("kind", "segment")
        self.erase.setMinimumHeight(28)
        self.erase.clicked.connect(lambda: self.asked.emit("erase due"))
        column.addWidget(self.erase)
        column.addStretch(0)

    def show_group(self, group: Group | None) -> None:
        """Show how long a group's are kept; None is everybody, who have no time of their own."""
        self.group.setText(
            group.name if group is not None else self.tr("Choose a group to say how long.")
        )
        self.days.set_visible(group is not None)
        if group is not None:
            days = float(group.keep_days) if group.keep_days is not None else None
            self.days.show_value(group.id, days, "mm")

    def show_due(self, due: Sequence[Due] | None, theme: Theme) -> None:
        """Show what is due; None until it is looked for."""
        self.due = tuple(due or ())
        self.found.setVisible(due is not None)
        self.table.setVisible(bool(self.due))
        self.erase.setVisible(bool(self.due))
        if due is not None and not due:
            self.found.setText(self.tr("Nothing is due."))
        elif due:
            calls = sum(one.attempts for one in due)
            words = self.tr("Of {learners} something is due: %n call(s) in all.", "", calls)
            self.found.setText(words.format(learners=learners_word(len(due))))
        rows = [
            Row(
                one.person.id,
                (
                    one.person.name,
                    str(one.attempts),
                    str(one.sat),
                    self.tr("nothing") if one.wholly else self.tr("the rest"),
                ),
                tip=due_line(one),
            )
            for one in self.due
        ]
        self.table.show_rows(rows, theme)

    def _enter(self, _: str, value: object) -> str:
        days = None if value is None else float(value)  # type: ignore[arg-type]  # a count's
        if days is not None and not (1 <= days <= LONGEST_KEPT and days == int(days)):
            words = self.tr("Right would be: 1 to {most}, or nothing")
            return words.format(most=number_words(LONGEST_KEPT))
        self.days_given.emit(None if days is None else int(days))
        return ""


def due_line(one: Due) -> str:
    """What of one learner goes, in a line."""
    counts = SittingCounts()
    line = translate("RetentionPanel", "{name}: {calls} before {day}").format(
        name=one.person.name, calls=counts.calls(one.attempts), day=one.before
    )
    parts = [line, *([counts.papers(one.sat)] if one.sat else [])]
    said = ", ".join(parts)
    if one.wholly:
        said += "; " + translate("RetentionPanel", "nothing stays, and the learner goes too")
    return said
