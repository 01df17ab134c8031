"""The keyboard's focus as a ring outside of what has it, whatever that looks like when chosen."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QDialog,
    QScrollArea,
    QSlider,
    QWidget,
)
from shiboken6 import isValid

from trainer.look.tokens import LIGHT, Theme

__all__ = ["FocusRing", "Ring"]

_OUT: Final = 4
"""Logical pixels that the ring reaches beyond what it is about."""

_WIDE: Final = 2.0


class Ring(QWidget):
    """The ring about one widget, lying in what scrolls with it."""

    def __init__(self, about: QWidget, beside: QWidget, colour: str) -> None:
        super().__init__(beside)
        self._about, self._beside, self._colour = about, beside, colour
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inner: QWidget | None = about
        while inner is not None and inner is not beside:
            inner.installEventFilter(self)
            inner = inner.parentWidget()
        self.follow()

    def follow(self) -> None:
        """Lie about the widget where it is now."""
        place = QRect(self._about.mapTo(self._beside, QPoint(0, 0)), self._about.size())
        self.setGeometry(place.adjusted(-_OUT, -_OUT, _OUT, _OUT))
        self.setVisible(self._about.isVisibleTo(self._beside))
        self.raise_()

    def wear(self, colour: str) -> None:
        """Be of another colour from now on."""
        if colour != self._colour:
            self._colour = colour
            self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Go along when it moves."""
        kinds = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Show, QEvent.Type.Hide)
        # When a window is taken down, what is about to go hides after what the ring is about.
        if event.type() in kinds and isValid(self._about) and isValid(self._beside):
            self.follow()
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        """A rounded ring with nothing in it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(self._colour), _WIDE))
        inset = _WIDE / 2.0
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(inset, inset, -inset, -inset), 8, 8)
        painter.end()


class FocusRing(QObject):
    """Keeps a ring about the control of one window that has the focus.

    Parameters
    ----------
    window
        Only what lies in it or in its dialogs gets one; the picture shows its focus itself.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._theme: Theme = LIGHT
        self.ring: Ring | None = None
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.focusChanged.connect(self._move)

    @property
    def theme(self) -> Theme:
        """Whose ink it is drawn in; one that is there takes a new one on at once."""
        return self._theme

    @theme.setter
    def theme(self, theme: Theme) -> None:
        self._theme = theme
        if self.ring is not None:
            self.ring.wear(theme.ink)

    def _move(self, _: QWidget | None, now: QWidget | None) -> None:
        ring, self.ring = self.ring, None
        if ring is not None:
            ring.destroyed.disconnect(self._forget)
            ring.hide()
            ring.deleteLater()
        if not isinstance(now, (QAbstractButton, QSlider, QComboBox, QScrollArea)):
            return
        beside = _room_of(now)
        if self._is_ours(now.window()) and beside is not None:
            self.ring = Ring(now, beside, self.theme.ink)
            self.ring.destroyed.connect(self._forget)

    def _is_ours(self, window: QWidget) -> bool:
        """Whether it is the window, or a dialog over it."""
        over = isinstance(window, QDialog) and window.parentWidget() is self._window
        return over or window is self._window

    def _forget(self) -> None:
        """The ring went with the panel that it lay in."""
        self.ring = None


def _room_of(widget: QWidget) -> QWidget | None:
    """The outermost widget that scrolls as one with `widget`, with room for a ring."""
    room = widget.parentWidget()
    while room is not None and not room.isWindow():
        outer = room.parentWidget()
        if isinstance(outer, QDialog):
            return outer
        if outer is None or outer.isWindow() or isinstance(outer.parentWidget(), QScrollArea):
            return room
        room = outer
    return room
