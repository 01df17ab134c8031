"""Handles on the shop's picture: each moves one value along its way, or a point of a trace.

A handle is dragged, or reached by Tab and moved with the arrow keys.
"""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QEnterEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QWidget

from geometry.curves import Vec
from trainer.canvas.overlay import mark_path
from trainer.canvas.scene import Shape
from trainer.canvas.view import View
from trainer.look.tokens import LIGHT, Theme
from trainer.shop.knobs import Knob

__all__ = ["Grip", "PointGrip", "ValueGrip"]

_TARGET: Final = 28
"""Logical px: what a pointer can hit. What is drawn of it is smaller."""

_OFF: Final = 13.0
"""Logical px by which a value's handle stands off the point that it moves."""

_STEP: Final = 0.1
_FINE: Final = 0.01
_COARSE: Final = 1.0
"""mm (for an angle: the same share of ten degrees) that an arrow key moves it; with Ctrl; with
Shift."""

_ARROWS: Final = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0),
    Qt.Key.Key_Down: (0.0, -1.0),
}


def step_of(modifiers: Qt.KeyboardModifier, kind: str) -> float:
    """What a step is, mm or degrees: small with Ctrl, large with Shift."""
    step = _STEP
    if modifiers & Qt.KeyboardModifier.ShiftModifier:
        step = _COARSE
    elif modifiers & Qt.KeyboardModifier.ControlModifier:
        step = _FINE
    return 10.0 * step if kind == "angle" else step


class Grip(QWidget):
    """What all handles have in common: where they lie, how they look, who has hold of them.

    Signals
    -------
    chosen(key)
        It is the one that is worked with.
    let_go()
        The end of a drag, or of a key.
    """

    chosen = Signal(str)
    let_go = Signal()

    def __init__(self, key: str, over: QWidget) -> None:
        super().__init__(over)
        self.key = key
        self._over = over
        self._theme: Theme = LIGHT
        self._form: Shape = "disc"
        self._aside: Vec = (0.0, 0.0)
        self._scale = 1.0
        self._held = False
        self._is_chosen = False
        self.setFixedSize(_TARGET, _TARGET)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    @property
    def held(self) -> bool:
        """Whether a pointer drags it."""
        return self._held

    def _put(self, at: Vec, view: View, theme: Theme, *, chosen: bool) -> None:
        self._scale = view.scale
        looks = (theme, chosen)
        if looks != (self._theme, self._is_chosen):
            self._theme, self._is_chosen = looks
            self.update()
        x, y = view.to_screen(at)
        x, y = x + _OFF * self._aside[0], y - _OFF * self._aside[1]
        spot = QPointF(x - _TARGET / 2.0, y - _TARGET / 2.0).toPoint()
        if spot != self.pos():
            self.move(spot)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._held = True
            self.setFocus(Qt.FocusReason.MouseFocusReason)
            self.chosen.emit(self.key)
            self._begin(event.globalPosition())
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go where the pointer is."""
        if self._held:
            self._follow(event.globalPosition(), event.modifiers())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go."""
        if event.button() == Qt.MouseButton.LeftButton and self._held:
            self._held = False
            self.update()
            self.let_go.emit()

    def _begin(self, at: QPointF) -> None:
        """A hand has taken hold at a place of the screen."""

    def _follow(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """The hand is at another place of the screen."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move it; Escape gives the keys back to the picture."""
        arrow = _ARROWS.get(Qt.Key(event.key()))
        if arrow is not None:
            self._nudge(arrow, event.modifiers())
        elif event.key() == Qt.Key.Key_Escape:
            self._over.setFocus()
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """A key that is held down is one gesture, however often it repeats."""
        if Qt.Key(event.key()) in _ARROWS:
            if not event.isAutoRepeat():
                self.let_go.emit()
        else:
            super().keyReleaseEvent(event)

    def _nudge(self, arrow: Vec, modifiers: Qt.KeyboardModifier) -> None:
        """An arrow key asks for a step that way."""

    def focusInEvent(self, event: QFocusEvent) -> None:
        """It is the one that is worked with."""
        super().focusInEvent(event)
        self.chosen.emit(self.key)
        self.raise_()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """A step that a key began ends here."""
        super().focusOutEvent(event)
        self.let_go.emit()
        self.update()

    def enterEvent(self, event: QEnterEvent) -> None:
        """Light up."""
        super().enterEvent(event)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Go quiet."""
        super().leaveEvent(event)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """A shape by what it moves; larger under a pointer, full when chosen, ringed in focus."""
        theme = self._theme
        lit = self.underMouse() or self._held
        radius = 7.0 if lit else 5.5
        middle = QPointF(_TARGET / 2.0, _TARGET / 2.0)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._aside != (0.0, 0.0):
            foot = middle - QPointF(self._aside[0], -self._aside[1]) * (_OFF - 1.5)
            for colour, wide in ((theme.raised, 3.5), (theme.accent, 1.5)):
                painter.setPen(QPen(QColor(colour), wide))
                painter.drawLine(middle, foot)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(theme.panel), 4.0))
            painter.drawEllipse(middle, 11.5, 11.5)
            painter.setPen(QPen(QColor(theme.accent), 2.0))
            painter.drawEllipse(middle, 11.5, 11.5)
        path = mark_path(self._form, radius).translated(middle)
        painter.strokePath(path, QPen(QColor(theme.raised), 4.5))
        painter.fillPath(
            path, QColor(theme.accent if self._held or self._is_chosen else theme.raised)
        )
        painter.strokePath(path, QPen(QColor(theme.accent), 2.0))
        painter.end()


class ValueGrip(Grip):
    """A handle that goes along a line, or about the root.

    Signals
    -------
    moved(key, value)
        The value that is wanted, mm or degrees.
    """

    moved = Signal(str, float)

    def __init__(self, key: str, over: QWidget) -> None:
        super().__init__(key, over)
        self._knob: Knob | None = None
        self._from: tuple[QPointF, float] | None = None

    def place(self, knob: Knob, view: View, theme: Theme, *, chosen: bool) -> None:
        """Put it beside the point that its knob stands at."""
        self._knob, self._form = knob, knob.form
        if knob.aside != self._aside:
            self._aside = knob.aside
            self.update()
        self._put(knob.at, view, theme, chosen=chosen)
        shape = _cursor(knob.way)
        if self.cursor().shape() != shape:
            self.setCursor(shape)

    def _begin(self, at: QPointF) -> None:
        if self._knob is not None:
            self._from = (at, self._knob.value)

    def _follow(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        knob = self._knob
        if knob is None or self._from is None:
            return
        start, value = self._from
        off = at - start
        along = (off.x() * knob.way[0] - off.y() * knob.way[1]) / self._scale
        fine = modifiers & Qt.KeyboardModifier.ShiftModifier
        step = (_FINE if fine else _STEP) * (10.0 if knob.kind == "angle" else 1.0)
        self.moved.emit(self.key, round((value + along * knob.per_mm) / step) * step)

    def _nudge(self, arrow: Vec, modifiers: Qt.KeyboardModifier) -> None:
        knob = self._knob
        if knob is None:
            return
        along = arrow[0] * knob.way[0] + arrow[1] * knob.way[1]
        if abs(along) < 0.3:
            return
        step = step_of(modifiers, knob.kind)
        value = knob.value + math.copysign(step, along)
        grain = min(step, _STEP * (10.0 if knob.kind == "angle" else 1.0))
        self.moved.emit(self.key, round(value / grain) * grain)


class PointGrip(Grip):
    """A handle on a point of a traced face, which goes anywhere.

    Signals
    -------
    dragged(index, x, y)
        Where the point is wanted, mm.
    put_in(index), taken_out(index)
        A point more after it is wanted; or it is to go.
    passed(index, step)
        The keys are to go on to the next point, or the one before.
    """

    dragged = Signal(int, float, float)
    put_in = Signal(int)
    taken_out = Signal(int)
    passed = Signal(int, int)

    def __init__(self, index: int, over: QWidget) -> None:
        super().__init__(f"trace.{index}", over)
        self.index = index
        self._at: Vec = (0.0, 0.0)
        self._from: tuple[QPointF, Vec] | None = None
        self.setCursor(Qt.CursorShape.SizeAllCursor)

    def place(self, at: Vec, view: View, theme: Theme, *, chosen: bool) -> None:
        """Put it on its point (mm); only the chosen one is a stop of Tab."""
        self._at = at
        self._put(at, view, theme, chosen=chosen)
        policy = Qt.FocusPolicy.StrongFocus if chosen else Qt.FocusPolicy.ClickFocus
        if self.focusPolicy() != policy:
            self.setFocusPolicy(policy)

    def _begin(self, at: QPointF) -> None:
        self._from = (at, self._at)

    def _follow(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        if self._from is None:
            return
        start, (x, y) = self._from
        off = (at - start) / self._scale
        step = _FINE if modifiers & Qt.KeyboardModifier.ShiftModifier else _STEP / 2.0
        to = (round((x + off.x()) / step) * step, round((y - off.y()) / step) * step)
        self.dragged.emit(self.index, *to)

    def _nudge(self, arrow: Vec, modifiers: Qt.KeyboardModifier) -> None:
        step = step_of(modifiers, "length")
        x, y = self._at
        self.dragged.emit(self.index, x + step * arrow[0], y + step * arrow[1])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Insert and Delete put a point in and take this one out; Page keys go on to the next."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Insert:
            self.put_in.emit(self.index)
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.taken_out.emit(self.index)
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self.passed.emit(self.index, 1 if key == Qt.Key.Key_PageDown else -1)
        else:
            super().keyPressEvent(event)


def _cursor(way: Vec) -> Qt.CursorShape:
    """The arrows along a way."""
    if abs(way[0]) > 2.0 * abs(way[1]):
        return Qt.CursorShape.SizeHorCursor
    if abs(way[1]) > 2.0 * abs(way[0]):
        return Qt.CursorShape.SizeVerCursor
    rising = way[0] * way[1] > 0.0
    return Qt.CursorShape.SizeBDiagCursor if rising else Qt.CursorShape.SizeFDiagCursor
