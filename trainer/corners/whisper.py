"""A quiet line over the plate at the lower left, where it hides neither leaf nor words."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from trainer.bench.saying import Saying

__all__ = ["Whisper"]


class Whisper(Saying):
    """Says in a line or two what was held or done, and goes again."""

    def __init__(self, over: QWidget) -> None:
        super().__init__(over)
        self._beneath = over
        self.setWordWrap(True)

    def say(self, words: str) -> None:
        """Show `words`, no wider than the room left of a card."""
        room = max(200, round(0.28 * self._beneath.width()))
        self.setWordWrap(False)
        self.setFixedWidth(16777215)
        self.setMinimumWidth(0)
        self.setText(words)
        wide = min(self.sizeHint().width(), room)
        self.setWordWrap(True)
        self.setFixedWidth(wide)
        super().say(words)

    def _place(self) -> None:
        self.move(10, max(0, self._beneath.height() - self.height() - 10))
