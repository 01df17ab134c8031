"""A button that says one thing and, smaller, what it means: for everything that is stated."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLayout,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.glyph import Glyph
from trainer.bench.worded import WordedButton

__all__ = ["Choice", "ChoiceRow"]

_GAP: Final = 4
"""Logical px between buttons."""


class Choice(WordedButton):
    """One of several things that can be stated.

    Parameters
    ----------
    title
        The word.
    gloss
        What it means, in a few words; may be empty.
    glyph
        A sign beside or above the word.
    key
        The key that does the same, shown beside the word; may be empty.
    upright
        Sign above the word instead of beside it.
    """

    def __init__(
        self,
        title: str,
        gloss: str = "",
        glyph: str = "",
        key: str = "",
        *,
        upright: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__("choice", title, key, (24, 32), parent)
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleDescription(", ".join(part for part in (gloss, key) if part))
        if gloss:
            self.setToolTip(f"{title}: {gloss}  {key}")
        self._gloss: QLabel | None = None
        self._key: QLabel | None = None
        box = QVBoxLayout(self)
        box.setContentsMargins(7, 4, 7, 4)
        box.setSpacing(1)
        word = QHBoxLayout()
        word.setSpacing(5)
        if upright:
            self._stack(box, title, glyph, key)
            return
        if glyph:
            word.addWidget(Glyph(glyph, self))
        word.addWidget(self.label(title, "choice"))
        word.addStretch(1)
        if key:
            self._key = self.label(key, "key")
            word.addWidget(self._key)
        box.addLayout(word)
        if gloss:
            self._gloss = self.label(gloss, "gloss")
            box.addWidget(self._gloss)

    def show_gloss(self, shown: bool) -> None:
        """Show what the word means, or leave that to the tip that hovering brings."""
        if self._gloss is not None:
            self._gloss.setVisible(shown)

    def settled_width(self) -> int:
        """The width that it needs in the style that it is shown in, logical pixels."""
        for label in self.findChildren(QLabel):
            label.ensurePolished()
        self.ensurePolished()
        # A layout within another keeps what it took before a word in it was hidden.
        for layout in self.findChildren(QLayout):
            layout.invalidate()
        return self.sizeHint().width()

    def show_key(self, shown: bool) -> None:
        """Show the key beside the word, or leave it to the tip."""
        if self._key is not None:
            self._key.setVisible(shown)

    def _stack(self, box: QVBoxLayout, title: str, glyph: str, key: str) -> None:
        """Sign and key above, the word below."""
        box.setContentsMargins(3, 3, 3, 4)
        above = QHBoxLayout()
        above.setSpacing(4)
        above.addStretch(1)
        above.addWidget(Glyph(glyph, self))
        above.addWidget(self.label(key, "key"))
        above.addStretch(1)
        box.addLayout(above)
        box.addWidget(self.label(title, "word"), alignment=Qt.AlignmentFlag.AlignHCenter)


class ChoiceRow(QWidget):
    """Choices of which one at most holds: one stop for Tab, arrows within.

    Parameters
    ----------
    name
        What a screen reader calls the group.
    choices
        Value and button, in order.
    chosen
        Called with the value of the button that was clicked.
    columns
        Buttons in a row.
    """

    def __init__(
        self,
        name: str,
        choices: Sequence[tuple[str, Choice]],
        chosen: Callable[[str], None],
        *,
        columns: int,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._choices = tuple(choices)
        self._most = columns
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(_GAP)
        self._lay_out(columns, [1] * columns)
        for value, button in self._choices:
            button.clicked.connect(lambda _=False, value=value: chosen(value))
            button.installEventFilter(self)
        self._rove(0)

    def _lay_out(self, columns: int, shares: Sequence[int]) -> None:
        self._columns = columns
        for index, (_, button) in enumerate(self._choices):
            self._grid.addWidget(button, index // columns, index % columns)
        for column in range(self._most):
            self._grid.setColumnStretch(column, shares[column] if column < columns else 0)

    def fit(self, width: int) -> None:
        """Find room in `width` logical pixels: first without keys, then in more rows."""
        fewer = (self._most + 1) // 2
        for columns, keys in (
            (self._most, True),
            (self._most, False),
            (fewer, True),
            (fewer, False),
            (1, True),
        ):
            needed = [0] * columns
            for index, (_, button) in enumerate(self._choices):
                button.show_key(keys)
                needed[index % columns] = max(needed[index % columns], button.settled_width())
            if sum(needed) + (columns - 1) * _GAP <= width:
                break
        # All alike, unless the longest word would touch the rim of its button.
        alike = (width - (columns - 1) * _GAP) // columns >= max(needed)
        self._lay_out(columns, [1] * columns if alike else needed)

    @property
    def buttons(self) -> dict[str, Choice]:
        """The buttons by value."""
        return dict(self._choices)

    def show_value(self, value: str | None) -> None:
        """Show which one holds, without telling anyone that it was chosen."""
        for index, (each, button) in enumerate(self._choices):
            with QSignalBlocker(button):
                button.setChecked(each == value)
            if each == value:
                self._rove(index)

    def start_afresh(self) -> None:
        """Forget where somebody was: Tab stops at the first again."""
        self._rove(0)

    def _rove(self, index: int) -> None:
        """Make `index` the one that Tab stops at."""
        for at, (_, button) in enumerate(self._choices):
            policy = Qt.FocusPolicy.TabFocus if at == index else Qt.FocusPolicy.NoFocus
            button.setFocusPolicy(policy)

    def step_focus(self, button: QPushButton, key: int) -> bool:
        """Move the focus from `button` as an arrow `key` says; whether there was anywhere to go."""
        steps = {
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Up: -self._columns,
            Qt.Key.Key_Down: self._columns,
        }
        step = steps.get(Qt.Key(key))
        if step is None:
            return False
        buttons = [each for _, each in self._choices]
        to = next(at for at, each in enumerate(buttons) if each is button) + step
        if 0 <= to < len(buttons):
            self._rove(to)
            buttons[to].setFocus(Qt.FocusReason.TabFocusReason)
        return True

    def eventFilter(self, watched: object, event: object) -> bool:
        """Arrow keys move within the group."""
        return (
            isinstance(event, QKeyEvent)
            and event.type() == QKeyEvent.Type.KeyPress
            and isinstance(watched, QPushButton)
            and self.step_focus(watched, event.key())
        )
