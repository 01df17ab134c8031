"""Where the keys land: on what a person can see, and where they were when they come back."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QApplication, QPushButton, QToolButton, QWidget
from shiboken6 import isValid

__all__ = ["EnterPresses", "Landing"]

_ENTER: Final = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class Landing(QObject):
    """Hands the focus that a page is given on to something on it.

    A focus proxy would do that too, but then Tab, coming to the page, leaps over all that stands
    before the proxy and never stops there.

    Parameters
    ----------
    page
        Is given the focus when it is shown. Tab doesn't stop at the page itself.
    first
        What on it has the keys at first; afterwards it is whatever had them when it was left.
    """

    def __init__(self, page: QWidget, first: Callable[[], QWidget | None]) -> None:
        super().__init__(page)
        self._page, self._first = page, first
        self._left: QWidget | None = None
        page.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Note what has the keys as the page is left; hand them on when it gets them."""
        if event.type() == QEvent.Type.Hide:
            self._left = self._page.focusWidget()
        elif event.type() == QEvent.Type.FocusIn and isinstance(event, QFocusEvent):
            left, self._left = self._left, None
            to = left if left is not None and self._can(left) else self._first()
            if to is not None and to is not self._page:
                to.setFocus(event.reason())
        return False

    def _can(self, widget: QWidget) -> bool:
        """Whether a widget that had the keys may have them again."""
        return (
            isValid(widget)
            and widget is not self._page
            and widget.isVisible()
            and widget.isEnabled()
        )


class EnterPresses(QObject):
    """Lets Enter press the button that has the focus, as Space does.

    Parameters
    ----------
    heard
        Hears the key when neither the button nor anything between has a use for it.
    """

    def __init__(self, heard: QWidget) -> None:
        super().__init__(heard)
        heard.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Press it, once for a key that is held."""
        if event.type() != QEvent.Type.KeyPress or not isinstance(event, QKeyEvent):
            return False
        button = QApplication.focusWidget()
        if event.key() not in _ENTER or not isinstance(button, QPushButton | QToolButton):
            return False
        if not event.isAutoRepeat():
            button.click()
        return True
