"""At the right: how long there is, in which order, what passes, and which helps stay."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QLabel, QWidget

from exercises.sitting.plan import HELPS, LONGEST_MINUTES, SKILLS, Plan
from trainer.figures import number_words
from trainer.shop.choices import Check, Choice
from trainer.shop.entry import Entry
from trainer.shop.form import Form
from trainer.sittings.words import help_gloss, help_word, skill_word

__all__ = ["TermsForm"]

_ORDERS: Final = ("shuffled", "as written")

_BOX: Final = 24
"""Logical px from the left of a box to its words."""


class TermsForm(Form):
    """The fields.

    Signals
    -------
    given(key, value)
        ``minutes``, ``pass`` and ``skill ...`` (shares, or None), ``order`` (whether it is
        shuffled), ``critical``, and ``help ...``.
    """

    given = Signal(str, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(self._enter, self._enter, parent)
        self.heading(self.tr("Time and order"))
        self._count("minutes", self.tr("Minutes for the whole"))
        self.put(
            Choice(
                "order",
                self.tr("Order, for each learner"),
                (
                    ("shuffled", self.tr("shuffled")),
                    ("as written", self.tr("as written")),
                ),
                self._enter,
            )
        )
        self.heading(self.tr("What passes"))
        self._count("pass", self.tr("Pass mark over all, %"))
        self.put(Check("critical", self.tr("One critical call fails the whole"), self._enter))
        self._note(self.tr("Critical: a weld is accepted that the rules reject beyond doubt."))
        self._note(self.tr("A mark that a skill has to reach as well, or nothing:"))
        self.group()
        for skill in SKILLS:
            name = self.tr("{skill}, %").format(skill=skill_word(skill))
            self._count(f"skill {skill}", name, optional=True)
        self.heading(self.tr("Helps that stay"))
        for name in HELPS:
            self.put(Check(f"help {name}", help_word(name), self._enter))
            self._note(help_gloss(name), under=True)
            self.group()
        self.finish()

    @property
    def needed_width(self) -> int:
        """As wide as its longest words and its scroll bar, logical px."""
        bar = self.verticalScrollBar().sizeHint().width()
        return self.column.minimumSize().width() + bar

    def _count(self, key: str, name: str, *, optional: bool = False) -> None:
        entry = Entry(key, name, "count", self._enter, optional=optional, step=5.0, begin=80.0)
        entry.setParent(self)
        self.put(entry)

    def _note(self, words: str, *, under: bool = False) -> None:
        """Say something of the fields; what is said of a box stands under its words."""
        label = QLabel(words)
        label.setWordWrap(True)
        label.setProperty("tone", "gloss")
        if under:
            label.setContentsMargins(_BOX, 0, 0, 0)
        self.widget_row(label)

    def _enter(self, key: str, value: object) -> str:
        """Take what was entered; return what is wrong with it, or nothing."""
        if isinstance(value, float) and key == "minutes":
            if not 1.0 <= value <= LONGEST_MINUTES:
                words = QCoreApplication.translate("TermsForm", "Right would be: 1 to {most}")
                return words.format(most=number_words(LONGEST_MINUTES))
        elif isinstance(value, float):
            if not 0.0 <= value <= 100.0:
                return QCoreApplication.translate("TermsForm", "Right would be: 0 to 100")
            value = value / 100.0
        elif key == "order":
            value = value == "shuffled"
        self.given.emit(key, value)
        return ""

    def show_plan(self, plan: Plan) -> None:
        """Show what a plan says."""
        self.show_entry("minutes", plan.id, plan.minutes, "mm")
        self.show_entry("order", plan.id, _ORDERS[0 if plan.shuffled else 1], "mm")
        self.show_entry("pass", plan.id, 100.0 * plan.pass_mark, "mm")
        self.show_entry("critical", plan.id, plan.critical_fails, "mm")
        for skill in SKILLS:
            mark = plan.skill_marks.get(skill)
            shown = None if mark is None else 100.0 * mark
            self.show_entry(f"skill {skill}", plan.id, shown, "mm")
        for name in HELPS:
            self.show_entry(f"help {name}", plan.id, name in plan.helps, "mm")
