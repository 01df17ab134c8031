"""A quiet line beside the first heading, where it hides neither card nor bead."""

from __future__ import annotations

from trainer.bench.saying import Saying
from trainer.corners.pane import Pane

__all__ = ["Whisper"]

_LARGEST = 16777215
"""Qt's own greatest width."""


class Whisper(Saying):
    """Says in a line or two what was held or done, and goes again.

    Parameters
    ----------
    pane
        Whose heading it stands beside.
    """

    def __init__(self, pane: Pane) -> None:
        super().__init__(pane)
        self._pane = pane

    def say(self, words: str) -> None:
        """Show `words`, no wider than the picture is beside its heading."""
        self.setMinimumWidth(0)
        self.setMaximumWidth(_LARGEST)
        self.setWordWrap(False)
        self.setText(words)
        room = max(180, self._pane.width() - self._pane.heading_rect.right() - 20)
        self.setFixedWidth(min(self.sizeHint().width(), room))
        self.setWordWrap(True)
        super().say(words)

    def _place(self) -> None:
        self.move(self._pane.heading_rect.right() + 8, 8)
