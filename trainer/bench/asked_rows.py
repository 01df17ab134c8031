"""Two groups of choices that only some tasks have: what is wrong, and the largest leaf met."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from exercises.placed import PLACEMENT_FAULTS
from geometry.leaf import RackName, rack
from trainer.bench.choice import Choice, ChoiceRow
from trainer.bench.placed_words import fault_gloss, fault_word
from trainer.bench.worded import wrapped

__all__ = ["FaultChoices", "SizeChoices"]

_COLUMNS: Final = 6


class FaultChoices(QWidget):
    """What is wrong with a placed leaf: one of seven.

    Signals
    -------
    chosen
        The fault, as files spell it.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(3)
        box.addWidget(wrapped(self.tr("What is wrong with how the leaf is held?"), "quiet"))
        choices = [
            (fault, Choice(fault_word(fault), fault_gloss(fault), key=str(place)))
            for place, fault in enumerate(PLACEMENT_FAULTS, start=1)
        ]
        self.row = ChoiceRow(self.tr("What is wrong"), choices, self.chosen.emit, columns=2)
        box.addWidget(self.row)

    def show_gloss(self, shown: bool) -> None:
        """Show what each answer means, or leave that to the tip."""
        for button in self.row.buttons.values():
            button.show_gloss(shown)


class SizeChoices(QWidget):
    """The largest leaf that the weld meets: one of the set on the rack.

    Signals
    -------
    chosen
        Its mark.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(3)
        asked = self.tr("Largest leaf met; M: the one in hand")
        self._box.addWidget(wrapped(asked, "quiet"))
        self._name: RackName | None = None
        self._width: int | None = None
        self.row = self._made("metric")

    def _made(self, name: RackName) -> ChoiceRow:
        marks = [leaf.mark for leaf in rack(name)]
        choices = [(mark, Choice(mark.removesuffix(" mm").removesuffix(" in"))) for mark in marks]
        for mark, button in choices:
            button.setAccessibleName(mark)
            button.setToolTip(mark)
        said = self.tr("Largest leaf that the weld meets")
        row = ChoiceRow(said, choices, self.chosen.emit, columns=_COLUMNS)
        self._box.addWidget(row)
        self._name = name
        return row

    def show_value(self, name: RackName, mark: str | None) -> None:
        """Offer the leaves of the set on the rack, and show which one is stated."""
        if name != self._name:
            self._box.removeWidget(self.row)
            self.row.setParent(None)
            self.row.deleteLater()
            self.row = self._made(name)
            if self._width is not None:
                self.row.fit(self._width)
        self.row.show_value(mark)

    def fit(self, width: int) -> None:
        """Find room in a column that is `width` logical pixels wide."""
        self._width = width
        self.row.fit(width)
