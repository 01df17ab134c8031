"""The plot to work in: zoomed, panned, its handles moved by pointer, by clicks and by keys."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from geometry.curves import Vec
from geometry.lengths import Unit
from trainer.canvas.view import View
from trainer.look.tokens import LIGHT, Theme
from trainer.shop.scan.plot import Plot, paint_plot
from trainer.shop.scan.state import Handle

__all__ = ["ScanView"]

_HIT: Final = 14.0
_FURNITURE: Final = 48.0
_CLICK: Final = 4.0
_LARGEST: Final = 2000.0
_NOTHING: Final = Plot(np.zeros((0, 2)), np.zeros((0, 2)), np.zeros(0))
_ARROWS: Final = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0),
    Qt.Key.Key_Down: (0.0, -1.0),
}


class ScanView(QWidget):
    """The points with what was found in them, true to scale.

    Left on a handle: drag it. Left elsewhere: pan; a click puts the chosen handle there. Wheel:
    zoom. Arrows move the chosen handle.

    Signals
    -------
    chosen(handle)
        A handle was taken.
    put(handle, at)
        A handle is to be elsewhere: mm in the plot's frame; goes on until `settled`.
    nudged(dx, dy)
        The chosen handle is to move, mm.
    settled()
        The end of a gesture.
    """

    chosen = Signal(str)
    put = Signal(str, object)
    nudged = Signal(float, float)
    settled = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.plot = _NOTHING
        self._theme: Theme = LIGHT
        self._unit: Unit = "mm"
        self.view = View((0.0, 0.0), 10.0, (640.0, 480.0))
        self._fits = True
        self._press: Vec | None = None
        self._last: Vec | None = None
        self._wandered = False
        self._dragged: Handle | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        """A comfortable size."""
        return QSize(800, 600)

    def minimumSizeHint(self) -> QSize:
        """The least that something can be seen in."""
        return QSize(320, 240)

    @property
    def dragging(self) -> bool:
        """Whether a hand is on a handle."""
        return self._dragged is not None

    def lay(self, plot: Plot, theme: Theme, unit: Unit) -> None:
        """Show another plot."""
        self.plot, self._theme, self._unit = plot, theme, unit
        if self._fits:
            self.fit()
        self.update()

    # What is seen

    def fit(self) -> None:
        """Show all points that are kept, or all outlines."""
        self._fits = True
        every = [run for run in (self.plot.kept, *self.plot.faint) if len(run)]
        if not every:
            return
        points = np.vstack(every)
        low, high = points.min(axis=0), points.max(axis=0)
        room = 0.08 * max(float((high - low).max()), 1e-3)
        wide, tall = high - low + 2.0 * room
        # Legend and scale bar lie above and below.
        tallest = max(self.view.size[1] - 2.0 * _FURNITURE, 40.0)
        scale = min(self.view.size[0] / wide, tallest / tall, _LARGEST)
        middle = (float(low[0] + high[0]) / 2.0, float(low[1] + high[1]) / 2.0)
        self.view = View(middle, float(scale), self.view.size, self.devicePixelRatioF())
        self.update()

    def zoom(self, factor: float, about: Vec | None = None) -> None:
        """Zoom about a point (logical px), or about the chosen handle."""
        self._fits = False
        handles: Mapping[Handle, Vec] = self.plot.handles or {}
        if about is None and self.plot.chosen in handles:
            about = self.view.to_screen(handles[self.plot.chosen])  # type: ignore[index]
        middle = (self.width() / 2.0, self.height() / 2.0)
        self.view = self.view.zoomed(factor, about or middle)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show the same in more or less room."""
        size = (float(self.width()), float(self.height()))
        self.view = self.view.resized(size, self.devicePixelRatioF())
        if self._fits:
            self.fit()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the plot; a ring shows where the keys go."""
        painter = QPainter(self)
        paint_plot(painter, self.plot, self.view, self._theme, self._unit)
        colour = self._theme.accent if self.hasFocus() else self._theme.line
        painter.setPen(QPen(QColor(colour), 2.0 if self.hasFocus() else 1.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show that keys go here."""
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show that they no longer do."""
        self.update()

    # The pointer

    def handle_at(self, at: Vec) -> Handle | None:
        """The handle under a place (logical px); the chosen one before its neighbours."""
        best: tuple[float, Handle] | None = None
        for handle, place in (self.plot.handles or {}).items():
            far = math.dist(self.view.to_screen(place), at)
            far -= 3.0 if handle == self.plot.chosen else 0.0
            if far <= _HIT and (best is None or far < best[0]):
                best = (far, handle)
        return best[1] if best else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a handle, or the plot."""
        self._press = self._last = _point(event.position())
        self._wandered = False
        left = event.button() == Qt.MouseButton.LeftButton
        self._dragged = self.handle_at(self._press) if left else None
        if self._dragged is not None:
            self.chosen.emit(self._dragged)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry a handle, or the plot."""
        at = _point(event.position())
        if self._press is None or self._last is None:
            over = self.handle_at(at) is not None
            shape = Qt.CursorShape.OpenHandCursor if over else Qt.CursorShape.ArrowCursor
            self.setCursor(shape)
            return
        self._wandered = self._wandered or math.dist(at, self._press) > _CLICK
        if not self._wandered:
            return
        if self._dragged is not None:
            self.put.emit(self._dragged, self.view.to_mm(at))
        else:
            self._fits = False
            self.view = self.view.panned(at[0] - self._last[0], at[1] - self._last[1])
            self.update()
        self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self._last = at

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go; a click beside all handles puts the chosen one there."""
        at, dragged = _point(event.position()), self._dragged
        clicked = self._press is not None and not self._wandered
        self._press = self._last = self._dragged = None
        self.setCursor(Qt.CursorShape.ArrowCursor)
        if dragged is None and clicked and event.button() == Qt.MouseButton.LeftButton:
            if self.plot.handles and self.plot.chosen is not None:
                self.put.emit(self.plot.chosen, self.view.to_mm(at))
                self.settled.emit()
        elif dragged is not None and self._wandered:
            self.settled.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom about the pointer."""
        turned = event.angleDelta().y() or event.angleDelta().x()
        self.zoom(1.25 ** (turned / 120.0), _point(event.position()))
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the chosen handle; other keys are the page's."""
        way = _ARROWS.get(Qt.Key(event.key()))
        if way is None or not self.plot.handles:
            super().keyPressEvent(event)
            return
        step = 0.1
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            step = 1.0
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            step = 0.01
        self.nudged.emit(way[0] * step, way[1] * step)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """A held arrow is one gesture."""
        if Qt.Key(event.key()) in _ARROWS and not event.isAutoRepeat():
            self.settled.emit()
        super().keyReleaseEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Repaint with what the system changed."""
        super().changeEvent(event)
        self.update()


def _point(position: QPointF) -> Vec:
    return (position.x(), position.y())
