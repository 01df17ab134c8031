"""Words in the middle of room that is empty yet: what belongs there, and how it comes there."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QLabel, QWidget

__all__ = ["Hint"]


class Hint(QLabel):
    """A paragraph of a width of its own, and as high as it is then.

    Parameters
    ----------
    width
        Logical px.
    text
        The words.
    """

    def __init__(self, width: int, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self._width = width
        self.setWordWrap(True)
        self.setProperty("tone", "quiet")
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)

    def hasHeightForWidth(self) -> bool:
        """No: a layout would ask with the width of the whole room."""
        return False

    def sizeHint(self) -> QSize:
        """As high as its words are at its width: Qt by itself would make it wider."""
        return QSize(self._width, self.heightForWidth(self._width))

    def minimumSizeHint(self) -> QSize:
        """Never less."""
        return self.sizeHint()
