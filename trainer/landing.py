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
        What on it has the keys at first, if it is seen, and else the first that Tab would stop
        at; afterwards it is whatever had them when the page was left.
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
            for to in (left, self._first(), self._stop()):
                if to is not None and self._can(to):
                    to.setFocus(event.reason())
                    break
        return False

    def _can(self, widget: QWidget) -> bool:
        """Whether a widget may have the keys; one that had them may be gone."""
        return (
            isValid(widget)
            and widget is not self._page
            and widget.isVisible()
            and widget.isEnabled()
        )

    def _stop(self) -> QWidget | None:
        """The first stop of Tab on the page, if there is any."""
        at = self._page.nextInFocusChain()
        while at is not None and at is not self._page:
            stops = at.focusPolicy() & Qt.FocusPolicy.TabFocus
            if stops and self._page.isAncestorOf(at) and self._can(at):
                return at
            at = at.nextInFocusChain()
        return None


class EnterPresses(QObject):
    """Lets Enter press the button that has the focus, as Space does.

    Parameters
    ----------
    heard
        Hears the key when neither the button nor anything between has a use for it.
    """

    def __init__(self, heard: QWidget) -> None:
        super().__init__(heard)
        self._at: QWidget | None = None
        heard.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Press it, once for a key that is held."""
        if not isinstance(event, QKeyEvent) or event.key() not in _ENTER:
            return False
        if event.type() == QEvent.Type.ShortcutOverride:
            # Comes before the key itself: an Enter that ends a field and so brings a button the
            # focus was not meant for that button.
            self._at = QApplication.focusWidget()
        if event.type() != QEvent.Type.KeyPress:
            return False
        button, at, self._at = QApplication.focusWidget(), self._at, None
        if button is not at or not isinstance(button, QPushButton | QToolButton):
            return False
        if not event.isAutoRepeat():
            button.click()
        return True
