"""Touch: one finger carries or clicks; two hold the leaf or the picture between them."""

from __future__ import annotations

import math
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QEventPoint, QTouchEvent

from trainer.canvas.drawing import Vec

__all__ = ["Fingers", "Twist", "twist_of"]

Pair = tuple[Vec, Vec]


@dataclass(frozen=True, slots=True)
class Twist:
    """How two fingers moved since the last look, logical pixels.

    Parameters
    ----------
    before, now
        The point between them.
    factor
        By how much they parted.
    degrees
        How far they turned, counter-clockwise positive, in (-180, 180].
    """

    before: Vec
    now: Vec
    factor: float
    degrees: float


def twist_of(before: Pair, now: Pair) -> Twist:
    """Return the twist from one pair of places to the next (logical px, which run down).

    Examples
    --------
    >>> twist = twist_of(((0.0, 0.0), (2.0, 0.0)), ((1.0, 2.0), (1.0, -2.0)))
    >>> twist.now, twist.factor, twist.degrees
    ((1.0, 0.0), 2.0, 90.0)
    """
    (ax, ay), (bx, by) = _across(before), _across(now)
    turned = math.degrees(math.atan2(ay, ax) - math.atan2(by, bx))
    return Twist(
        _between(before),
        _between(now),
        max(1.0, math.hypot(bx, by)) / max(1.0, math.hypot(ax, ay)),
        -((180.0 - turned) % 360.0 - 180.0),
    )


def _across(pair: Pair) -> Vec:
    (ax, ay), (bx, by) = pair
    return (bx - ax, by - ay)


def _between(pair: Pair) -> Vec:
    (ax, ay), (bx, by) = pair
    return ((ax + bx) / 2.0, (ay + by) / 2.0)


class Fingers(QObject):
    """Reads touch events. All places are logical pixels.

    Signals
    -------
    pressed(x, y), moved(x, y), lifted(x, y)
        One finger.
    joined(first, second)
        A second finger came down beside the first.
    twisted(twist)
        How the two moved.
    dropped()
        The last of two fingers is lifted, or the system took over: let go, and no click.
    """

    pressed = Signal(float, float)
    moved = Signal(float, float)
    lifted = Signal(float, float)
    joined = Signal(tuple, tuple)
    twisted = Signal(Twist)
    dropped = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._ids: tuple[int, int] | None = None
        self._pair: Pair = ((0.0, 0.0), (0.0, 0.0))

    def take(self, event: QTouchEvent) -> None:
        """Read one event.

        Once there were two fingers, the one that is lifted last means nothing by itself: it would
        jerk the leaf aside as the hand leaves.
        """
        points = event.points()
        if event.type() == QEvent.Type.TouchCancel:
            self.dropped.emit()
        elif len(points) >= 2:
            self._follow_two(points[0], points[1])
        elif points and self._ids is None:
            self._follow(points[0])
        elif event.type() == QEvent.Type.TouchEnd:
            self.dropped.emit()
        if event.type() == QEvent.Type.TouchEnd and len(points) >= 2:
            self.dropped.emit()
        if event.type() in (QEvent.Type.TouchEnd, QEvent.Type.TouchCancel):
            self._ids = None
        event.accept()

    def _follow(self, finger: QEventPoint) -> None:
        x, y = _place(finger)
        if finger.state() == QEventPoint.State.Pressed:
            self.pressed.emit(x, y)
        elif finger.state() == QEventPoint.State.Released:
            self.lifted.emit(x, y)
        else:
            self.moved.emit(x, y)

    def _follow_two(self, first: QEventPoint, second: QEventPoint) -> None:
        ids, pair = (first.id(), second.id()), (_place(first), _place(second))
        if self._ids is None:
            self.joined.emit(*pair)
        elif self._ids == ids:
            self.twisted.emit(twist_of(self._pair, pair))
        self._ids, self._pair = ids, pair


def _place(finger: QEventPoint) -> Vec:
    return (finger.position().x(), finger.position().y())
