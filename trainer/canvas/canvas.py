"""The canvas: a picture that takes gestures and tells them in mm; knows no coupon, no screen."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import (
    QEnterEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainterPath,
    QTouchEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from trainer.canvas.blade import blade_transform
from trainer.canvas.drawing import Vec
from trainer.canvas.fingers import Fingers, Twist
from trainer.canvas.picture import Picture
from trainer.canvas.scene import Scene
from trainer.canvas.shapes import mapped
from trainer.canvas.trail import Trail

__all__ = ["Canvas"]

_MARGIN_MOUSE: Final = 3.0
_MARGIN_TOUCH: Final = 14.0
"""Logical pixels outside the blade that still count as on it."""

_CLICK: Final = 4.0
"""Logical pixels that a press may wander and still be a click."""

_NOTCH: Final = 120.0
_TURN: Final = 5.0
_FINE_TURN: Final = 0.5
"""Degrees that one notch of the wheel turns, and with Shift."""

_ZOOM_NOTCH: Final = 1.2


class Canvas(Picture):
    """The one canvas of every screen.

    One finger does what the left button does. Two fingers on the leaf carry and turn it about the
    point between them; elsewhere they zoom and pan.

    Signals
    -------
    grabbed(x, y)
        A press on the blade, mm.
    dragged(points)
        The pointer's path since the last report, a list of (x, y) in mm, once a frame.
    released()
        The end of a drag that `grabbed` began.
    clicked(x, y)
        A press and release in one place, on the blade or off it, mm; after `released`.
    wheel_turned(degrees, x, y)
        The wheel or two fingers, counter-clockwise positive, and where the pointer is, mm.
    hovered(over)
        The pointer came over the blade, or left it.
    """

    grabbed = Signal(float, float)
    dragged = Signal(list)
    released = Signal()
    clicked = Signal(float, float)
    wheel_turned = Signal(float, float, float)
    hovered = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._trail = Trail(self)
        self._trail.moved.connect(self._on_trail)
        self._press: Vec | None = None
        self._wandered = False
        self._panning: Vec | None = None
        self._pan_began: Vec = (0.0, 0.0)
        self._pull: Vec = (0.0, 0.0)
        self._turn_due = 0.0
        self._fingers = Fingers(self)
        self._fingers.pressed.connect(lambda x, y: self._begin((x, y), _MARGIN_TOUCH))
        self._fingers.moved.connect(lambda x, y: self._go_on((x, y)))
        self._fingers.lifted.connect(lambda x, y: self._finish((x, y)))
        self._fingers.dropped.connect(self._drop)
        self._fingers.joined.connect(self._on_joined)
        self._fingers.twisted.connect(self._on_twist)
        self.setMouseTracking(True)
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)

    def set_scene(self, scene: Scene) -> None:
        """Show `scene` from now on; repaints only what differs."""
        super().set_scene(scene)
        self._look_under_pointer()

    def is_on_leaf(self, at: Vec, margin: float = _MARGIN_MOUSE) -> bool:
        """Whether a point (logical px) is on a blade to be taken, or within `margin` px of it."""
        scene = self._scene
        if scene.leaf is None or scene.pose is None or not scene.loose:
            return False
        inverse: tuple[QTransform, bool] = blade_transform(scene.pose, self._view).inverted()
        to_leaf, possible = inverse
        x, y = mapped(to_leaf, at)
        near = margin / self._view.scale
        outline = self._shapes.blade(scene.leaf).outline
        spot = QPainterPath()
        spot.addEllipse(QPointF(x, y), near, near)
        return possible and outline.intersects(spot)

    def _begin(self, at: Vec, margin: float) -> None:
        self._press, self._wandered = at, False
        if self.is_on_leaf(at, margin):
            self._holding = True
            self._pull = self._view.to_mm(at)
            self._look_under_pointer(at)
            self._update_leaf()
            self.grabbed.emit(*self._view.to_mm(at))

    def _go_on(self, at: Vec) -> None:
        if self._press is None:
            return
        if math.dist(at, self._press) > _CLICK:
            self._wandered = True
        if self._holding:
            self._pull = self._view.to_mm(at)
            self._trail.add(self._pull)
        elif self._wandered:
            last = self._panning or self._press
            self.pan(at[0] - last[0], at[1] - last[1])
            self._panning = at

    def _finish(self, at: Vec) -> None:
        if self._press is None:
            return
        was_click = not self._wandered
        self._press = None
        self._let_go()
        if was_click:
            self.clicked.emit(*self._view.to_mm(at))
        self._look_under_pointer(at)

    def _let_go(self) -> None:
        self._panning = None
        if self._holding:
            self._trail.flush()
            self._holding = False
            self._update_leaf()
            self.tell_changes()
            self.released.emit()

    def _on_trail(self, points: list[Vec]) -> None:
        degrees, self._turn_due = self._turn_due, 0.0
        if degrees:
            self.wheel_turned.emit(degrees, *points[0])
        self.dragged.emit(points)

    def _look_under_pointer(self, at: Vec | None = None) -> None:
        """Light the leaf and shape the cursor for what is under the pointer."""
        if at is None:
            if not self.underMouse():
                return
            local = self.mapFromGlobal(self.cursor().pos())
            at = (float(local.x()), float(local.y()))
        self._set_over(self._holding or self.is_on_leaf(at))
        if self._holding:
            shape = Qt.CursorShape.ClosedHandCursor
        elif self._panning is not None:
            shape = Qt.CursorShape.SizeAllCursor
        else:
            shape = Qt.CursorShape.OpenHandCursor if self._over else Qt.CursorShape.ArrowCursor
        if self.cursor().shape() != shape:
            self.setCursor(shape)

    def _set_over(self, over: bool) -> None:
        if over != self._over:
            self._over = over
            self._update_leaf()
            self.hovered.emit(over)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Left: the leaf, or a click. Middle and right: pan; a click of theirs centres."""
        at = _point(event.position())
        if event.button() == Qt.MouseButton.LeftButton:
            self._begin(at, _MARGIN_MOUSE)
        elif event.button() in (Qt.MouseButton.MiddleButton, Qt.MouseButton.RightButton):
            self._panning, self._pan_began, self._wandered = at, at, False
            self._look_under_pointer(at)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry the leaf, pan, or look for the leaf."""
        at = _point(event.position())
        if self._press is not None:
            self._go_on(at)
        elif self._panning is not None:
            if math.dist(at, self._pan_began) > _CLICK:
                self._wandered = True
            if self._wandered:
                self.pan(at[0] - self._panning[0], at[1] - self._panning[1])
                self._panning = at
        self._look_under_pointer(at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End what the button began."""
        at = _point(event.position())
        if event.button() == Qt.MouseButton.LeftButton:
            self._finish(at)
        elif self._press is None:
            if self._panning is not None and not self._wandered:
                self.centre_on(at)
            self._panning = None
            self._look_under_pointer(at)

    def leaveEvent(self, event: QEvent) -> None:
        """No pointer, no light."""
        super().leaveEvent(event)
        if not self._holding:
            self._set_over(False)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Look for the leaf under the pointer that came in."""
        super().enterEvent(event)
        self._look_under_pointer(_point(event.position()))

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turn the leaf; with Ctrl zoom; two fingers on a touch pad pan."""
        at = _point(event.position())
        delta = event.angleDelta()
        # Some systems turn a wheel with Shift or Alt into a sideways one.
        notches = (delta.y() or delta.x()) / _NOTCH
        modifiers = event.modifiers()
        if modifiers & Qt.KeyboardModifier.ControlModifier:
            self.zoom(_ZOOM_NOTCH**notches, at)
        elif event.phase() != Qt.ScrollPhase.NoScrollPhase and not event.pixelDelta().isNull():
            self.pan(event.pixelDelta().x(), event.pixelDelta().y())
        elif notches:
            fine = modifiers & Qt.KeyboardModifier.ShiftModifier
            degrees = notches * (_FINE_TURN if fine else _TURN)
            self.wheel_turned.emit(degrees, *self._view.to_mm(at))
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Fingers: one carries or clicks, two turn the leaf, or pinch and pan the picture."""
        if isinstance(event, QTouchEvent):
            self._fingers.take(event)
            return True
        if (
            isinstance(event, QNativeGestureEvent)
            and event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture
        ):
            self.zoom(1.0 + event.value(), _point(event.position()))
            return True
        return super().event(event)

    def _on_joined(self, first: Vec, second: Vec) -> None:
        """Two fingers are down: on the leaf they hold it, elsewhere they hold the picture."""
        self._press, self._panning = None, None
        if not self._holding:
            between = ((first[0] + second[0]) / 2.0, (first[1] + second[1]) / 2.0)
            on = [spot for spot in (first, second) if self.is_on_leaf(spot, _MARGIN_TOUCH)]
            if on:
                self._begin(between if self.is_on_leaf(between) else on[0], _MARGIN_TOUCH)
                self._press = None

    def _on_twist(self, twist: Twist) -> None:
        (x0, y0), (x1, y1) = twist.before, twist.now
        if not self._holding:
            self.pan(x1 - x0, y1 - y0)
            self.zoom(twist.factor, twist.now)
            return
        # The hand goes where the point that it holds would go, were the leaf free.
        (ax, ay), (bx, by) = self._view.to_mm(twist.before), self._view.to_mm(twist.now)
        cos, sin = math.cos(math.radians(twist.degrees)), math.sin(math.radians(twist.degrees))
        dx, dy = self._pull[0] - ax, self._pull[1] - ay
        self._pull = (bx + cos * dx - sin * dy, by + sin * dx + cos * dy)
        self._turn_due += twist.degrees
        self._trail.add(self._pull)

    def _drop(self) -> None:
        """Let go without a click."""
        self._press = None
        self._let_go()


def _point(position: QPointF) -> Vec:
    return (position.x(), position.y())
