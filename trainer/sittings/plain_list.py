"""A list that leaves letters and figures to the page around it, where they are keys."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListWidget

__all__ = ["PlainList", "is_typed"]


def is_typed(event: QKeyEvent) -> bool:
    """Whether a key is a letter, a figure or another character, with nothing held but Shift."""
    held = event.modifiers() & ~(
        Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier
    )
    return (
        held == Qt.KeyboardModifier.NoModifier
        and event.text().strip().isprintable()
        and bool(event.text().strip())
    )


class PlainList(QListWidget):
    """The list."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Qt would look for an entry that begins so, and the page would never hear the key."""
        if is_typed(event):
            event.ignore()
        else:
            super().keyPressEvent(event)
