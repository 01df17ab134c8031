"""A line over the picture that says why nothing happened, and goes again by itself."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QLabel, QWidget

__all__ = ["Saying"]

_LASTS: Final = 5000
"""ms that a line stays."""


class Saying(QLabel):
    """One line at the upper edge of a widget, there as long as it takes to read.

    Parameters
    ----------
    over
        What it lies on. It takes no click away from that.
    """

    def __init__(self, over: QWidget) -> None:
        super().__init__(over)
        self._over = over
        self.setProperty("tone", "saying")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._gone = QTimer(self)
        self._gone.setSingleShot(True)
        self._gone.timeout.connect(self.hide)
        over.installEventFilter(self)
        self.hide()

    def say(self, words: str) -> None:
        """Show `words`, and speak them to a screen reader."""
        self.setText(words)
        self.adjustSize()
        self._place()
        self.show()
        self.raise_()
        self._gone.start(_LASTS)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._over, words))

    def _place(self) -> None:
        self.move(max(0, (self._over.width() - self.width()) // 2), 12)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay in the middle when what it lies on is resized."""
        if event.type() == QEvent.Type.Resize and self.isVisible():
            self._place()
        return False
