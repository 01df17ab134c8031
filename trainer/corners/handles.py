"""Handles on the picture: a toe or the crown, to be dragged, or moved with the arrow keys."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QEnterEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from geometry.curves import Vec
from trainer.canvas.view import View
from trainer.corners.state import Knob
from trainer.look.tokens import LIGHT, Theme

__all__ = ["Handle"]

_TARGET: Final = 28
"""Logical px: what a pointer can hit. What is drawn of it is smaller."""

_OFF: Final = 12.0
"""Logical px by which it stands off the point that it moves."""

_STEP: Final = 0.1
_FINE: Final = 0.01
_COARSE: Final = 1.0
"""mm that an arrow key moves it; with Ctrl or Alt; with Shift."""

_ARROWS: Final = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0),
    Qt.Key.Key_Down: (0.0, -1.0),
}


class Handle(QWidget):
    """A point of a section that moves along a line.

    Parameters
    ----------
    knob
        The value that it is.
    over
        The picture that it lies on.

    Signals
    -------
    moved(value)
        Where it wants to be: the knob's new value, mm.
    let_go()
        The end of a drag, or of a key.
    """

    moved = Signal(float)
    let_go = Signal()

    def __init__(self, knob: Knob, over: QWidget) -> None:
        super().__init__(over)
        self.knob = knob
        self._over = over
        self._theme: Theme = LIGHT
        self._value = 0.0
        self._way: Vec = (1.0, 0.0)
        self._aside: Vec = (0.0, -1.0)
        self._scale = 1.0
        self._from: tuple[QPointF, float] | None = None
        self.setFixedSize(_TARGET, _TARGET)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setCursor(Qt.CursorShape.SizeAllCursor)

    @property
    def held(self) -> bool:
        """Whether a pointer drags it."""
        return self._from is not None

    def place(self, at: Vec, way: Vec, aside: Vec, value: float, view: View, theme: Theme) -> None:
        """Put it beside a point (mm) that moves along `way`, as `value` (mm) says.

        It stands off the point towards `aside`, into the metal: what touches there stays in sight.
        Both are unit vectors.
        """
        self._way, self._value, self._scale = way, value, view.scale
        if theme is not self._theme or aside != self._aside:
            self._theme, self._aside = theme, aside
            self.update()
        x, y = view.to_screen(at)
        x, y = x + _OFF * aside[0], y - _OFF * aside[1]
        spot = QPointF(x - _TARGET / 2.0, y - _TARGET / 2.0).toPoint()
        if spot != self.pos():
            self.move(spot)
        sideways = abs(way[0]) > 2.0 * abs(way[1])
        upright = abs(way[1]) > 2.0 * abs(way[0])
        rising = (
            Qt.CursorShape.SizeBDiagCursor
            if way[0] * way[1] > 0.0
            else (Qt.CursorShape.SizeFDiagCursor)
        )
        shape = (
            Qt.CursorShape.SizeHorCursor
            if sideways
            else Qt.CursorShape.SizeVerCursor
            if upright
            else rising
        )
        if self.cursor().shape() != shape:
            self.setCursor(shape)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._from = (event.globalPosition(), self._value)
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go where the pointer is, as far as that lies along the way."""
        if self._from is None:
            return
        start, value = self._from
        off = event.globalPosition() - start
        along = (off.x() * self._way[0] - off.y() * self._way[1]) / self._scale
        fine = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        step = _FINE if fine else _STEP
        self.moved.emit(round((value + along) / step) * step)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go."""
        if event.button() == Qt.MouseButton.LeftButton and self._from is not None:
            self._from = None
            self.update()
            self.let_go.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move it; Escape gives the keys back to the picture."""
        arrow = _ARROWS.get(Qt.Key(event.key()))
        if arrow is None:
            if event.key() == Qt.Key.Key_Escape:
                self._over.setFocus()
                return
            super().keyPressEvent(event)
            return
        along = arrow[0] * self._way[0] + arrow[1] * self._way[1]
        if abs(along) < 0.3:
            return
        step = _COARSE if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else _STEP
        value = self._value + math.copysign(step, along)
        self.moved.emit(round(value / _STEP) * _STEP)
        if not event.isAutoRepeat():
            self.let_go.emit()

    def enterEvent(self, event: QEnterEvent) -> None:
        """Light up."""
        super().enterEvent(event)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Go quiet."""
        super().leaveEvent(event)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """A dot for a toe, a diamond for the crown; larger under a pointer, ringed in focus."""
        theme = self._theme
        lit = self.underMouse() or self.held
        radius = 7.5 if lit else 5.5
        middle = QPointF(_TARGET / 2.0, _TARGET / 2.0)
        foot = middle - QPointF(self._aside[0], -self._aside[1]) * (_OFF - 1.5)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for colour, wide in ((theme.raised, 3.5), (theme.accent, 1.5)):
            painter.setPen(QPen(QColor(colour), wide))
            painter.drawLine(middle, foot)
        if self.hasFocus():
            painter.setPen(QPen(QColor(theme.panel), 4.0))
            painter.drawEllipse(middle, 11.5, 11.5)
            painter.setPen(QPen(QColor(theme.accent), 2.0))
            painter.drawEllipse(middle, 11.5, 11.5)
        painter.setPen(QPen(QColor(theme.accent), 2.0))
        painter.setBrush(QColor(theme.accent if self.held else theme.raised))
        if self.knob in ("crown", "hollow"):
            painter.translate(middle)
            painter.rotate(45.0)
            side = 1.6 * radius
            painter.drawRoundedRect(QRectF(-side / 2.0, -side / 2.0, side, side), 1.5, 1.5)
        else:
            painter.drawEllipse(middle, radius, radius)
        painter.end()
