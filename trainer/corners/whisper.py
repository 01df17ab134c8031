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
        self.setText(words)
        self._fit()
        super().say(words)

    def suit(self, size: float) -> None:
        """Be in type of `size` logical px, and stand beside the heading wherever that is now."""
        style = f"font-size: {size:g}px;"
        if self.styleSheet() != style:
            self.setStyleSheet(style)
        if self.isVisible():
            self._fit()
            self._place()

    def _fit(self) -> None:
        """Be no wider than the picture is beside its heading, and as high as that needs."""
        self.setMinimumWidth(0)
        self.setMaximumWidth(_LARGEST)
        self.setWordWrap(False)
        room = max(180, self._pane.width() - self._left - 12)
        self.setFixedWidth(min(self.sizeHint().width(), room))
        self.setWordWrap(True)
        self.adjustSize()

    @property
    def _left(self) -> int:
        """Where it begins, logical px: beside a heading that stands at the upper left."""
        heading = self._pane.heading_rect
        return heading.right() + 8 if heading.left() < 0.25 * self._pane.width() else 8

    def _place(self) -> None:
        self.move(self._left, 8)
