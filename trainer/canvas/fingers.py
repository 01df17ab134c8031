"""Touch: one finger carries or clicks, two pinch and pan."""

from __future__ import annotations

import math

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QEventPoint, QTouchEvent

from trainer.canvas.drawing import Vec

__all__ = ["Fingers"]


class Fingers(QObject):
    """Reads touch events. All places are logical pixels.

    Signals
    -------
    pressed(x, y), moved(x, y), lifted(x, y)
        One finger.
    dropped()
        What one finger held is let go: a second one came down, or the system took over.
    pinched(x, y, dx, dy, factor)
        Two fingers: the point between them now, how far that came, and how much they parted.
    """

    pressed = Signal(float, float)
    moved = Signal(float, float)
    lifted = Signal(float, float)
    dropped = Signal()
    pinched = Signal(float, float, float, float, float)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pinch: tuple[Vec, float] | None = None

    def take(self, event: QTouchEvent) -> None:
        """Read one event."""
        points = event.points()
        if event.type() == QEvent.Type.TouchCancel:
            self.dropped.emit()
        elif len(points) >= 2:
            self._pinch_with(points[0], points[1])
        elif points and self._pinch is None:
            self._follow(points[0])
        if event.type() in (QEvent.Type.TouchEnd, QEvent.Type.TouchCancel):
            self._pinch = None
        event.accept()

    def _follow(self, finger: QEventPoint) -> None:
        x, y = finger.position().x(), finger.position().y()
        if finger.state() == QEventPoint.State.Pressed:
            self.pressed.emit(x, y)
        elif finger.state() == QEventPoint.State.Released:
            self.lifted.emit(x, y)
        else:
            self.moved.emit(x, y)

    def _pinch_with(self, first: QEventPoint, second: QEventPoint) -> None:
        a, b = first.position(), second.position()
        middle = ((a.x() + b.x()) / 2.0, (a.y() + b.y()) / 2.0)
        apart = max(1.0, math.hypot(b.x() - a.x(), b.y() - a.y()))
        if self._pinch is None:
            self.dropped.emit()
        else:
            (x, y), before = self._pinch
            self.pinched.emit(*middle, middle[0] - x, middle[1] - y, apart / before)
        self._pinch = (middle, apart)
