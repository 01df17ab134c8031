"""A band below the bar that says something quietly: it takes no focus and stops no work."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

__all__ = ["Band", "Saying"]


@dataclass(frozen=True, slots=True)
class Saying:
    """What a band says, and what can be done about it.

    Parameters
    ----------
    text
        A sentence or two.
    actions
        Words of each button, and what it does; the band then goes away.
    closable
        Whether it can be sent away; what lasts, such as work that goes on, ends by itself.
    """

    text: str
    actions: tuple[tuple[str, Callable[[], object]], ...] = ()
    closable: bool = True


class Band(QFrame):
    """Hidden while there is nothing to say; one thing at a time, in the order they came."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "band")
        row = QHBoxLayout(self)
        row.setContentsMargins(20, 6, 12, 6)
        row.setSpacing(10)
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.words.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        row.addWidget(self.words, 1)
        self._buttons = QHBoxLayout()
        self._buttons.setSpacing(8)
        row.addLayout(self._buttons)
        self.buttons: list[QPushButton] = []
        self._said: list[Saying] = []
        self.hide()

    @property
    def said(self) -> Sequence[Saying]:
        """What is said now, and what waits behind it."""
        return tuple(self._said)

    def say(self, saying: Saying, *, first: bool = False) -> None:
        """Say it, once what is said already has been sent away, or before all that."""
        self._said.insert(0 if first else len(self._said), saying)
        if first or len(self._said) == 1:
            self._show()

    def end(self, saying: Saying) -> None:
        """Say that no longer."""
        if saying not in self._said:
            return
        first = self._said[0] is saying
        self._said.remove(saying)
        if first:
            self._show()

    def _show(self) -> None:
        for button in self.buttons:
            button.hide()
            button.deleteLater()
        self.buttons = []
        if not self._said:
            self.hide()
            return
        saying = self._said[0]
        self.words.setText(saying.text)
        for words, do in saying.actions:
            self._add(words, "", partial(self._do, saying, do))
        if saying.closable:
            self._add("\u00d7", self.tr("Send this message away"), lambda: self.end(saying))
        self.show()
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, saying.text))

    def _do(self, saying: Saying, do: Callable[[], object]) -> None:
        self.end(saying)
        do()

    def _add(self, words: str, name: str, do: Callable[[], object]) -> None:
        button = QPushButton(words)
        button.setProperty("kind", "small" if name else "segment")
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        if name:
            button.setAccessibleName(name)
            button.setToolTip(name)
            button.setFixedSize(28, 28)
        button.clicked.connect(lambda _=False: do())
        self.buttons.append(button)
        self._buttons.addWidget(button)
