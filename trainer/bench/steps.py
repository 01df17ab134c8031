"""A button for everything that a hand can do, each with its key beside it."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QWidget

from trainer.bench.glyph import Glyph
from trainer.bench.state import BenchState
from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.bench.worded import WordedButton

__all__ = ["MOVES", "STEPS", "Step", "StepButton", "StepPanel"]

_CONTEXT: Final = "Steps"


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do.

    Parameters
    ----------
    name
        What the screen calls it.
    word
        What the button says (English; translated when shown).
    key
        The key beside it; for a sign that shows its own key (an arrow), how it is spoken.
    sign
        The icon beside the word, or in place of it.
    small
        Whether the sign stands alone, and holding the button repeats the step.
    """

    name: str
    word: str
    key: str
    sign: str
    small: bool = False

    @property
    def said(self) -> str:
        """The word in the user's language."""
        return translate(_CONTEXT, self.word)


MOVES: Final = (
    Step("turn left", QT_TRANSLATE_NOOP("Steps", "Turn left"), ",", "turn-left", small=True),
    Step("move up", QT_TRANSLATE_NOOP("Steps", "Move up"), "", "arrow-up", small=True),
    Step("turn right", QT_TRANSLATE_NOOP("Steps", "Turn right"), ".", "turn-right", small=True),
    Step("move left", QT_TRANSLATE_NOOP("Steps", "Move left"), "", "arrow-left", small=True),
    Step("move down", QT_TRANSLATE_NOOP("Steps", "Move down"), "", "arrow-down", small=True),
    Step("move right", QT_TRANSLATE_NOOP("Steps", "Move right"), "", "arrow-right", small=True),
)

STEPS: Final = (
    Step(
        "press home",
        QT_TRANSLATE_NOOP("Steps", "Press home"),
        QT_TRANSLATE_NOOP("Steps", "Space"),
        "press-home",
    ),
    Step("turn over", QT_TRANSLATE_NOOP("Steps", "Turn over"), "F", "turn-over"),
    Step("swap ends", QT_TRANSLATE_NOOP("Steps", "Swap ends"), "E", "swap-ends"),
    Step("clean toes", QT_TRANSLATE_NOOP("Steps", "Clean toes"), "C", "clean"),
    Step(
        "put back",
        QT_TRANSLATE_NOOP("Steps", "Put back"),
        QT_TRANSLATE_NOOP("Steps", "Esc"),
        "put-back",
    ),
    Step("undo", QT_TRANSLATE_NOOP("Steps", "Undo"), "Z", "undo"),
)


class StepButton(WordedButton):
    """A button with a word or a sign, and its key."""

    def __init__(self, step: Step, parent: QWidget | None = None) -> None:
        key = translate(_CONTEXT, step.key) if step.key else ""
        super().__init__("step", step.said, key, (34, 28), parent)
        self.step = step
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        row = QHBoxLayout(self)
        row.setContentsMargins(5, 2, 5, 2)
        row.setSpacing(3)
        if step.small:
            row.setContentsMargins(2, 2, 2, 2)
            self.setAutoRepeat(True)
            self.setAutoRepeatDelay(350)
            self.setAutoRepeatInterval(60)
            row.addStretch(1)
        row.addWidget(Glyph(step.sign, self))
        self._word = self.label(step.said, "step")
        if not step.small:
            row.addWidget(self._word)
            row.addStretch(1)
        if key:
            row.addWidget(self.label(key, "key"))
        if step.small:
            row.addStretch(1)


class StepPanel(QWidget):
    """All step buttons: a pad for moving and turning, and the named steps.

    Signals
    -------
    stepped
        The name of a step whose button was pressed.
    """

    stepped = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.tr("Move the leaf"))
        self.buttons = {step.name: StepButton(step, self) for step in (*MOVES, *STEPS)}
        for name, button in self.buttons.items():
            button.clicked.connect(lambda _=False, name=name: self.stepped.emit(name))
        self._left_out: frozenset[str] = frozenset()
        self._columns = 2
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(4)
        self.arrange(columns=2)

    def arrange(self, *, columns: int) -> None:
        """Lay the named steps out in `columns` columns beside the pad."""
        self._columns = columns
        for button in self.buttons.values():
            self._grid.removeWidget(button)
        for index, step in enumerate(MOVES):
            self._grid.addWidget(self.buttons[step.name], index // 3, index % 3)
        shown = [step for step in STEPS if step.name not in self._left_out]
        rows = -(-len(shown) // columns)
        for index, step in enumerate(shown):
            self._grid.addWidget(self.buttons[step.name], index % rows, 4 + index // rows)
        self._grid.setColumnMinimumWidth(3, 6)

    def leave_out(self, names: Collection[str]) -> None:
        """Show every button but these; the others close up."""
        self._left_out = frozenset(names)
        for name, button in self.buttons.items():
            button.setVisible(name not in names)
        self.arrange(columns=self._columns)

    def show_state(self, state: BenchState) -> None:
        """Grey what can't be done now, for reasons that a glance at the bench shows too."""
        handling, loose = state.phase == "handling", state.can_move
        leaf_out = loose and state.leaf is not None
        for name, button in self.buttons.items():
            if name == "undo":
                enabled = handling and state.before is not None
            elif name == "clean toes":
                # Always offered: greying it on clean toes would say whether there is spatter.
                enabled = loose
            else:
                enabled = leaf_out
            button.setEnabled(enabled)
