"""The canvas: shows a frozen scene, tells gestures in millimetres; knows no coupon, no screen."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QEnterEvent,
    QFocusEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QTouchEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from trainer.canvas.blade import blade_rect, blade_transform
from trainer.canvas.drawing import Vec
from trainer.canvas.fingers import Fingers
from trainer.canvas.loupe import Corner, Lens, lens_of
from trainer.canvas.painter import paint_leaf, paint_loupe, paint_over
from trainer.canvas.scene import Scene
from trainer.canvas.shake import Shake
from trainer.canvas.shapes import Shapes, mapped, pose_transform
from trainer.canvas.stills import GlassStill, Still, same_still
from trainer.canvas.trail import Trail
from trainer.canvas.view import LARGEST_SCALE, Box, View, capped_scale, fitted

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
_ZOOM_STEP: Final = 1.25


class Canvas(QWidget):
    """The one canvas of every screen.

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
        The wheel, counter-clockwise positive, and where the pointer is, mm.
    hovered(over)
        The pointer came over the blade, or left it.
    view_changed()
        Zoomed, panned, fitted or resized.
    painted()
        A frame is done.
    """

    grabbed = Signal(float, float)
    dragged = Signal(list)
    released = Signal()
    clicked = Signal(float, float)
    wheel_turned = Signal(float, float, float)
    hovered = Signal(bool)
    view_changed = Signal()
    painted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._scene = Scene()
        self._view = View((0.0, 0.0), 30.0, (640.0, 480.0))
        self._fits = True
        self._shapes = Shapes()
        self._still = Still()
        self._glass = GlassStill()
        self._corner: Corner | None = None
        self._shake = Shake(self)
        self._shake.moved.connect(self._update_leaf)
        self._trail = Trail(self)
        self._trail.moved.connect(self._on_trail)
        self._press: Vec | None = None
        self._wandered = False
        self._holding = False
        self._over = False
        self._panning: Vec | None = None
        self._fingers = Fingers(self)
        self._fingers.pressed.connect(lambda x, y: self._begin((x, y), _MARGIN_TOUCH))
        self._fingers.moved.connect(lambda x, y: self._go_on((x, y)))
        self._fingers.lifted.connect(lambda x, y: self._finish((x, y)))
        self._fingers.dropped.connect(self._drop)
        self._fingers.pinched.connect(
            lambda x, y, dx, dy, factor: self._on_pinch((x, y), dx, dy, factor)
        )
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)

    # -- what is shown ---------------------------------------------------------------------------

    @property
    def scene(self) -> Scene:
        """What is shown."""
        return self._scene

    @property
    def view(self) -> View:
        """From where it is shown."""
        return self._view

    @property
    def lens(self) -> Lens | None:
        """Where the loupe is and what it shows, if there is one."""
        return lens_of(self._scene, self._view, self._shapes, self._corner)

    def set_scene(self, scene: Scene) -> None:
        """Show `scene` from now on; repaints only what differs."""
        old, old_lens = self._scene, self.lens
        first = old.section is None and scene.section is not None
        self._scene = scene
        if first and self._fits:
            self.fit()
        elif self._view.scale > self.largest_scale:
            self.set_view(self._view.zoomed(1.0, self._middle, largest=self.largest_scale))
        self._refresh(old, old_lens)
        self._look_under_pointer()

    def set_view(self, view: View) -> None:
        """Look from `view`; its size and pixel ratio are the canvas's own."""
        size = (float(max(1, self.width())), float(max(1, self.height())))
        view = view.resized(size, self.devicePixelRatioF())
        if view != self._view:
            self._view = view
            self.update()
            self.view_changed.emit()

    @property
    def largest_scale(self) -> float:
        """The closest that this scene may be looked at, logical px per mm."""
        if not self._scene.capped:
            return LARGEST_SCALE
        return capped_scale(self._scene.eye_limit, self.devicePixelRatioF())

    def fit(self) -> None:
        """Show the bead and the leaf at home on it, and keep to that when resized."""
        scene = self._scene
        drawing = self._shapes.section(scene.section).drawing if scene.section else None
        blade = self._shapes.blade(scene.leaf).blade if scene.leaf else None
        size = (float(max(1, self.width())), float(max(1, self.height())))
        view = self._view.resized(size, self.devicePixelRatioF())
        lies = self._leaf_box()
        self.set_view(fitted(view, drawing, blade, largest=self.largest_scale, lies=lies))
        self._fits = True

    def _leaf_box(self) -> Box | None:
        """Where the leaf lies, mm."""
        scene = self._scene
        if scene.leaf is None or scene.pose is None:
            return None
        outline = self._shapes.blade(scene.leaf).outline.boundingRect()
        rect = pose_transform(scene.pose).mapRect(outline)
        return rect.left(), rect.top(), rect.right(), rect.bottom()

    def zoom_in(self, about: Vec | None = None) -> None:
        """One step closer, about a point (logical px; the middle by default)."""
        self.zoom(_ZOOM_STEP, about)

    def zoom_out(self, about: Vec | None = None) -> None:
        """One step back, about a point (logical px; the middle by default)."""
        self.zoom(1.0 / _ZOOM_STEP, about)

    def zoom(self, factor: float, about: Vec | None = None) -> None:
        """Zoom by `factor` about a point (logical px; the middle by default)."""
        about = about if about is not None else self._middle
        self._fits = False
        self.set_view(self._view.zoomed(factor, about, largest=self.largest_scale))

    def pan(self, dx: float, dy: float) -> None:
        """Shift the picture by (dx, dy) logical pixels."""
        self._fits = False
        self.set_view(self._view.panned(dx, dy))

    def shake(self) -> None:
        """Show that the leaf can't do what was asked: a small shake, or a nod of its light."""
        self._shake.start(still=self._scene.theme.reduced_motion)

    @property
    def _middle(self) -> Vec:
        return (self.width() / 2.0, self.height() / 2.0)

    # -- painting --------------------------------------------------------------------------------

    def sizeHint(self) -> QSize:
        """A comfortable size."""
        return QSize(960, 640)

    def minimumSizeHint(self) -> QSize:
        """The least that a leaf can be handled in."""
        return QSize(320, 240)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Blit the still layers; paint what moves over them."""
        self._match_ratio()
        scene, view = self._shown_scene(), self._view
        painter = QPainter(self)
        painter.drawPixmap(QPointF(0.0, 0.0), self._still.pixmap(scene, view, self._shapes))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.save()
        painter.translate(self._shake.offset, 0.0)
        paint_leaf(painter, scene, view, self._shapes)
        painter.restore()
        lens = self.lens
        paint_over(painter, scene, view, lens)
        if lens is not None:
            self._corner = lens.corner
            paint_loupe(painter, scene, lens, self._shapes, self._paint_glass)
        self._paint_frame(painter)
        painter.end()
        self.painted.emit()

    def _paint_glass(self, painter: QPainter, view: View) -> None:
        self._glass.draw(painter, self._scene, view, self._shapes)

    def _match_ratio(self) -> None:
        # A window moved to another monitor changes its ratio without a resize.
        ratio = self.devicePixelRatioF()
        if ratio != self._view.ratio:
            self._view = self._view.resized(self._view.size, ratio)

    def _shown_scene(self) -> Scene:
        """The scene, lit by what only the canvas knows: the pointer over the leaf."""
        scene = self._scene
        lit = scene.hover or self._over or self._shake.lit
        held = scene.held or self._holding
        if (lit, held) == (scene.hover, scene.held):
            return scene
        return replace(scene, hover=lit, held=held)

    def _paint_frame(self, painter: QPainter) -> None:
        """Round the corners into the window behind, and show the keyboard's focus."""
        theme = self._scene.theme
        rect = QRectF(self.rect())
        radius = float(theme.radius)
        outside = QPainterPath()
        outside.addRect(rect)
        outside.addRoundedRect(rect, radius, radius)
        painter.fillPath(outside, QColor(theme.window))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.line), 1.0))
        painter.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)
        if self.hasFocus():
            for colour, inset, width in (
                (theme.panel, 3.0, 2.0),
                (theme.accent, 1.25, 2.5),
            ):
                painter.setPen(QPen(QColor(colour), width))
                painter.drawRoundedRect(
                    rect.adjusted(inset, inset, -inset, -inset), radius - 1.0, radius - 1.0
                )

    def _refresh(self, old: Scene, old_lens: Lens | None) -> None:
        new = self._scene
        if (
            not same_still(old, new)
            or old.overlays != new.overlays
            or old.scale_bar != new.scale_bar
        ):
            self.update()
            return
        # One rectangle: painting through a clip of several takes longer than a few more pixels.
        dirty = QRectF()
        for scene, lens in ((old, old_lens), (new, self.lens)):
            for rect in self._moving_rects(scene):
                dirty = dirty.united(rect)
            if lens is not None:
                dirty = dirty.united(lens.reach)
        self.update(dirty.toAlignedRect())

    def _moving_rects(self, scene: Scene) -> list[QRectF]:
        rects = []
        if scene.leaf is not None and scene.pose is not None:
            paths = self._shapes.blade(scene.leaf)
            rects.append(blade_rect(paths, scene.pose, self._view))
        if scene.tether is not None:
            ends = [
                QPointF(*self._view.to_screen(p)) for p in (scene.tether.grab, scene.tether.pointer)
            ]
            rects.append(QRectF(*ends).normalized().adjusted(-8.0, -8.0, 8.0, 8.0))
        return rects

    def _update_leaf(self) -> None:
        self._refresh(self._scene, self.lens)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the fit, or the middle."""
        super().resizeEvent(event)
        if self._fits:
            self.fit()
        else:
            self.set_view(self._view)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Hide the focus."""
        super().focusOutEvent(event)
        self.update()

    # -- gestures --------------------------------------------------------------------------------

    def is_on_leaf(self, at: Vec, margin: float = _MARGIN_MOUSE) -> bool:
        """Whether a point (logical px) is on the blade, or within `margin` px of it."""
        scene = self._scene
        if scene.leaf is None or scene.pose is None:
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
            self._look_under_pointer(at)
            self._update_leaf()
            self.grabbed.emit(*self._view.to_mm(at))

    def _go_on(self, at: Vec) -> None:
        if self._press is None:
            return
        if math.dist(at, self._press) > _CLICK:
            self._wandered = True
        if self._holding:
            self._trail.add(self._view.to_mm(at))
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
            self.released.emit()

    def _on_trail(self, points: list[Vec]) -> None:
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
        """Left: the leaf, or a click. Middle and right: pan."""
        at = _point(event.position())
        if event.button() == Qt.MouseButton.LeftButton:
            self._begin(at, _MARGIN_MOUSE)
        elif event.button() in (Qt.MouseButton.MiddleButton, Qt.MouseButton.RightButton):
            self._panning = at
            self._look_under_pointer(at)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry the leaf, pan, or look for the leaf."""
        at = _point(event.position())
        if self._press is not None:
            self._go_on(at)
        elif self._panning is not None:
            self.pan(at[0] - self._panning[0], at[1] - self._panning[1])
            self._panning = at
        self._look_under_pointer(at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End what the button began."""
        at = _point(event.position())
        if event.button() == Qt.MouseButton.LeftButton:
            self._finish(at)
        elif self._press is None:
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
        """Fingers: one carries or clicks, two pinch and pan."""
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

    def _on_pinch(self, middle: Vec, dx: float, dy: float, factor: float) -> None:
        self.pan(dx, dy)
        self.zoom(factor, middle)

    def _drop(self) -> None:
        """Let go without a click."""
        self._press = None
        self._let_go()


def _point(position: QPointF) -> Vec:
    return (position.x(), position.y())
