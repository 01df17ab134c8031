"""A small way from what is said on the bench into the entry of the reference that says more."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QPushButton, QWidget

__all__ = ["LookUp"]

_SIDE: Final = 24
"""Logical pixels: the least that can be hit."""


class LookUp(QPushButton):
    """A question mark that leads to an entry.

    Parameters
    ----------
    what
        What it is about, for a screen reader.
    key
        Of the entry.

    Signals
    -------
    asked
        It was pressed: the entry with this key should be shown.
    """

    asked = Signal(str)

    def __init__(self, what: str, key: str = "", parent: QWidget | None = None) -> None:
        super().__init__("?", parent)
        self.key = key
        self.setProperty("kind", "link")
        self.setFixedSize(_SIDE, _SIDE)
        self.setAutoDefault(False)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName(self.tr("Look up: {what}").format(what=what))
        self.setToolTip(self.tr("Look it up in the reference"))
        self.clicked.connect(lambda: self.asked.emit(self.key))
