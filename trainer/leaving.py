"""Closing the window over work that isn't saved: whoever made it is asked first."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QDialog, QMainWindow

__all__ = ["Leaving"]


class Leaving(QObject):
    """Keeps a window open until it has been asked whether it may close.

    When the system ends nobody is asked: the program is told to quit, and no window to close.

    Parameters
    ----------
    window
        Which window.
    unsaved
        Whether there is anything to ask about.
    ask
        Opens the question, and returns its dialog. It closes the window by `close`.
    """

    def __init__(
        self,
        window: QMainWindow,
        unsaved: Callable[[], bool],
        ask: Callable[[], QDialog],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._window, self._unsaved, self._ask = window, unsaved, ask
        self._asking = False
        self.going = False
        window.installEventFilter(self)

    def end(self) -> None:
        """Ask no more: another one does."""
        self._window.removeEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Hold the window, and ask."""
        if event.type() != QEvent.Type.Close or self.going or not self._unsaved():
            return False
        event.ignore()
        if not self._asking:
            self._asking = True
            # Once the event is over: whoever sent it must not wait for an answer.
            QTimer.singleShot(0, self, self._begin)
        return True

    def _begin(self) -> None:
        self._ask().finished.connect(self._asked)

    def _asked(self, _: int) -> None:
        self._asking = False

    def close(self) -> None:
        """Close the window whatever is unsaved here; somebody else may still hold it."""
        # Not from within the dialog that asked.
        QTimer.singleShot(0, self, self._close)

    def _close(self) -> None:
        self.going = True
        self.going = self._window.close()
