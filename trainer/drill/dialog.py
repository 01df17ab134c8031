"""What a drill is to be about: asked before it begins."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QDialogButtonBox, QFormLayout, QWidget

from exercises.maker import Recipe
from exercises.rules import RULE_SETS
from trainer.bench.translation import translate
from trainer.bench.words import rules_word
from trainer.notices import Notice

__all__ = ["DrillDialog"]


class DrillDialog(Notice):
    """Asks for unit, measure and rules.

    Signals
    -------
    chosen
        The recipe; the dialog is closed.
    """

    chosen = Signal(object)

    def __init__(self, recipe: Recipe, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("DrillDialog", "Drill at your own edge"),
            translate(
                "DrillDialog",
                "One coupon after another, each where your call tells most of where you draw the "
                "line. It ends by itself when that is known, mostly after thirty to sixty calls. "
                "The first calls of a day come without any feedback: they are the honest measure.",
            ),
            parent,
        )
        self._recipe = recipe
        form = QFormLayout()
        units = ((self.tr("millimetres"), "mm"), (self.tr("inches"), "in"))
        self.unit = self._choice(form, self.tr("Drawn in"), units, recipe.unit)
        measures = ((self.tr("leg (z)"), "leg"), (self.tr("throat (a)"), "throat"))
        self.measure = self._choice(form, self.tr("Sized by"), measures, recipe.measure)
        rules = tuple((rules_word(found), name) for name, found in RULE_SETS.items())
        self.rules = self._choice(form, self.tr("Rules"), rules, recipe.rules)
        self.body.addLayout(form)
        self.begin = self.buttons.addButton(
            self.tr("Begin"), QDialogButtonBox.ButtonRole.AcceptRole
        )
        self.begin.setDefault(True)
        self.buttons.accepted.connect(self._choose)
        self.finish()
        self.begin.setFocus()

    def _choice(
        self, form: QFormLayout, label: str, entries: tuple[tuple[str, str], ...], now: str
    ) -> QComboBox:
        box = QComboBox()
        for words, value in entries:
            box.addItem(words, value)
        box.setCurrentIndex(max(0, box.findData(now)))
        box.setAccessibleName(label)
        form.addRow(label, box)
        return box

    def _choose(self) -> None:
        wanted = Recipe(
            1,
            unit=self.unit.currentData(),
            measure=self.measure.currentData(),
            rules=self.rules.currentData(),
            faces=self._recipe.faces,
        )
        self.accept()
        self.chosen.emit(wanted)
