"""The picture to click in: zoomed, panned, its points moved by pointer and by keys."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from exercises.intake.photo_file import Picture
from geometry.curves import Vec
from trainer.look.fonts import font
from trainer.look.tokens import LIGHT, Theme
from trainer.shop.photo.controller import PhotoController
from trainer.shop.photo.painting import Words, paint_loupe, paint_marks
from trainer.shop.photo.sight import Pyramid, Sight
from trainer.shop.photo.state import (
    GROUPS,
    Chosen,
    choose,
    chosen_along,
    is_full,
    moved,
    nudged,
    put,
    removed,
    settled,
    within,
)

__all__ = ["PictureView"]

_HIT: Final = 13.0
"""Logical pixels about a point that count as on it: 26 across, as a target has to be."""

_CLICK: Final = 4.0
_NOTCH: Final = 120.0
_ZOOM: Final = 1.25
_NEAR_WIRE: Final = 8.0

_ARROWS: Final = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, -1.0),
    Qt.Key.Key_Down: (0.0, 1.0),
}
_FINE, _COARSE = 0.1, 10.0


class PictureView(QWidget):
    """The picture with everything that was put into it.

    Left: put a point, or drag one. Middle and right, or left beside all points: pan. Wheel: zoom.
    With the keyboard the arrows move the chosen point, or else a cross that Enter puts a point at.

    Parameters
    ----------
    controller
        Its state is shown and changed.

    Signals
    -------
    told(words)
        What is to be said of a key's effect.
    """

    told = Signal(str)

    def __init__(self, controller: PhotoController, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._controller = controller
        self._theme: Theme = LIGHT
        self._words = Words("", "", "", ("", ""), ("", ""), "")
        self._pyramid: Pyramid | None = None
        self._kept: tuple[Sight, float, QPixmap] | None = None
        self.sight = Sight((0.0, 0.0), 1.0, (640.0, 480.0))
        self._fits = True
        self._press: Vec | None = None
        self._wandered = False
        self._dragged: Chosen | None = None
        self._panning: Vec | None = None
        self._pointer: Vec | None = None
        self.cross: Vec | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)
        controller.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """A comfortable size."""
        return QSize(800, 600)

    def minimumSizeHint(self) -> QSize:
        """The least that a point can be put in."""
        return QSize(320, 240)

    def lay(self, picture: Picture) -> None:
        """Show another picture, the whole of it."""
        self._pyramid, self._kept, self.cross = Pyramid(picture), None, None
        self.fit()

    def dress(self, theme: Theme, words: Words) -> None:
        """Take on a theme, and the words that stand in the picture."""
        self._theme, self._words = theme, words
        self._kept = None
        self.update()

    # What is seen

    def fit(self) -> None:
        """Show the whole picture."""
        self._fits = True
        if self._pyramid is not None:
            self._see(self.sight.fitted(self._pyramid.size))

    def close_in(self, points: list[Vec], least: float) -> None:
        """Show points of the picture and some room about them, `least` pixels across at least."""
        xs, ys = ([point[axis] for point in points] for axis in (0, 1))
        span = max(max(xs) - min(xs), max(ys) - min(ys), least) * 1.5
        self._fits = False
        scale = min(self.width(), self.height()) / span
        middle = ((max(xs) + min(xs)) / 2.0, (max(ys) + min(ys)) / 2.0)
        self._see(Sight(middle, min(scale, 8.0), self.sight.size))

    def zoom(self, factor: float, about: Vec | None = None) -> None:
        """Zoom about a point (logical px), or about the one that keys move."""
        self._fits = False
        looked = self._looked_at
        middle = (self.width() / 2.0, self.height() / 2.0)
        point = about or (self.sight.to_screen(looked) if looked is not None else middle)
        self._see(self.sight.zoomed(factor, point))

    def _see(self, sight: Sight) -> None:
        self.sight = sight if self._pyramid is None else sight.holding(self._pyramid.size)
        self.update()

    def _show(self, at: Vec) -> None:
        """Bring a point of the picture into sight."""
        x, y = self.sight.to_screen(at)
        margin = 40.0
        dx = min(max(margin - x, 0.0), 1e9) or min(self.width() - margin - x, 0.0)
        dy = min(max(margin - y, 0.0), 1e9) or min(self.height() - margin - y, 0.0)
        if dx or dy:
            self._fits = False
            self._see(self.sight.panned(dx, dy))

    @property
    def _looked_at(self) -> Vec | None:
        """The point that the loupe stays on: dragged, under the pointer, or moved by keys."""
        state = self._controller.state
        if not GROUPS[state.step]:
            return None
        if self._dragged is not None or (self._pointer is None and state.chosen is not None):
            chosen = self._dragged or state.chosen
            if chosen is not None and chosen[1] < len(state.spots(chosen[0])):
                return state.spots(chosen[0])[chosen[1]].at
        if self._pointer is not None and self._panning is None:
            return self.sight.to_picture(self._pointer)
        return self.cross if self.hasFocus() else None

    # The pointer

    def _hit(self, at: Vec) -> Chosen | None:
        """The point of this step that lies under a place (logical px), or None."""
        state = self._controller.state
        best: tuple[float, Chosen] | None = None
        for group in GROUPS[state.step]:
            for index, spot in enumerate(state.spots(group)):
                far = math.dist(self.sight.to_screen(spot.at), at)
                if far <= _HIT and (best is None or far < best[0]):
                    best = (far, (group, index))
        return best[1] if best else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a point, or the picture."""
        at = _point(event.position())
        self._press, self._wandered = at, False
        if event.button() == Qt.MouseButton.LeftButton:
            self._dragged = self._hit(at)
            if self._dragged is not None:
                self._choose(self._dragged)
        else:
            self._panning = at
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry a point, or the picture; else the loupe goes along."""
        at = _point(event.position())
        self._pointer = at
        if self._press is not None and math.dist(at, self._press) > _CLICK:
            self._wandered = True
        picture = self._controller.picture
        if self._press is not None and self._wandered and picture is not None:
            if self._dragged is not None and self._panning is None:
                to, chosen = within(self.sight.to_picture(at), picture), self._dragged
                self._controller.do(lambda s: moved(s, chosen, to), f"drag {chosen}")
            else:
                last = self._panning or self._press
                self._fits = False
                self._see(self.sight.panned(at[0] - last[0], at[1] - last[1]))
                self._panning = at
        self._shape(at)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click puts a point; the end of a drag lets it go to its edge."""
        at = _point(event.position())
        clicked = self._press is not None and not self._wandered
        dragged, self._dragged = self._dragged, None
        self._press = None
        picture = self._controller.picture
        if self._panning is not None:
            if clicked and event.button() != Qt.MouseButton.LeftButton:
                x, y = self.width() / 2.0 - at[0], self.height() / 2.0 - at[1]
                self._see(self.sight.panned(x, y))
            self._panning = None
        elif dragged is not None:
            if self._wandered and picture is not None:
                self._controller.do(lambda s: settled(s, picture), f"drag {dragged}")
                self._controller.end_gesture()
        elif clicked and event.button() == Qt.MouseButton.LeftButton:
            self._put(self.sight.to_picture(at))
        self._shape(at)
        self.update()

    def _put(self, at: Vec) -> None:
        controller = self._controller
        picture, wire = controller.picture, controller.wire
        if picture is None or wire is None:
            return
        near = _NEAR_WIRE / self.sight.scale
        controller.do(lambda s: put(s, at, picture, wire, near))
        controller.end_gesture()

    def _choose(self, chosen: Chosen) -> None:
        self._controller.do(lambda s: choose(s, chosen))

    def _shape(self, at: Vec) -> None:
        state = self._controller.state
        if self._panning is not None:
            shape = Qt.CursorShape.SizeAllCursor
        elif self._dragged is not None:
            shape = Qt.CursorShape.ClosedHandCursor
        elif self._hit(at) is not None:
            shape = Qt.CursorShape.OpenHandCursor
        elif GROUPS[state.step] and not is_full(state, state.group):
            shape = Qt.CursorShape.CrossCursor
        else:
            shape = Qt.CursorShape.ArrowCursor
        if self.cursor().shape() != shape:
            self.setCursor(shape)

    def leaveEvent(self, event: QEvent) -> None:
        """No pointer: the loupe goes back to the chosen point."""
        super().leaveEvent(event)
        self._pointer = None
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom; two fingers on a touch pad pan, with Ctrl they zoom."""
        pixels, held = event.pixelDelta(), event.modifiers()
        fingers = event.phase() != Qt.ScrollPhase.NoScrollPhase and not pixels.isNull()
        if fingers and not held & Qt.KeyboardModifier.ControlModifier:
            self._fits = False
            self._see(self.sight.panned(pixels.x(), pixels.y()))
        else:
            notches = (event.angleDelta().y() or event.angleDelta().x()) / _NOTCH
            self.zoom(_ZOOM**notches, _point(event.position()))
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Two fingers that part or meet zoom."""
        if (
            isinstance(event, QNativeGestureEvent)
            and event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture
        ):
            self.zoom(1.0 + event.value(), _point(event.position()))
            return True
        return super().event(event)

    # The keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move; Enter and Space put; Delete takes out; brackets choose."""
        key, held = Qt.Key(event.key()), event.modifiers()
        control = bool(held & Qt.KeyboardModifier.ControlModifier)
        if key in _ARROWS:
            step = _FINE if control else 1.0
            if held & Qt.KeyboardModifier.ShiftModifier:
                step = _COARSE
            self.nudge(*(step * part for part in _ARROWS[key]))
        elif control:
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.put_at_cross()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.remove_chosen()
        elif key in (Qt.Key.Key_BracketLeft, Qt.Key.Key_BracketRight):
            self.choose_along(-1 if key == Qt.Key.Key_BracketLeft else 1)
        elif key == Qt.Key.Key_Escape and self._controller.state.chosen is not None:
            self.let_go()
        else:
            super().keyPressEvent(event)

    def nudge(self, dx: float, dy: float) -> None:
        """Move the chosen point, or else the cross, by pixels of the picture."""
        controller, picture = self._controller, self._controller.picture
        if picture is None or not GROUPS[controller.state.step]:
            return
        self._pointer = None
        if controller.state.chosen is not None:
            controller.do(lambda s: nudged(s, dx, dy, picture), f"nudge {controller.state.chosen}")
        else:
            # The cross moves as it is seen, the points as the picture has them.
            far = max(1.0, 1.0 / self.sight.scale) * (4.0 if abs(dx + dy) >= 1.0 else 1.0)
            start = self.cross or self.sight.centre
            self.cross = within((start[0] + far * dx, start[1] + far * dy), picture)
        looked = self._looked_at
        if looked is not None:
            self._show(looked)
        self.update()

    def put_at_cross(self) -> None:
        """Put a point where the cross is; one that is chosen is let go first."""
        controller = self._controller
        if not GROUPS[controller.state.step]:
            return
        if controller.state.chosen is not None and self.cross is None:
            chosen = controller.state.chosen
            self.cross = controller.state.spots(chosen[0])[chosen[1]].at
            self.let_go()
            return
        self._put(self.cross or self.sight.centre)
        self.cross = None

    def let_go(self) -> None:
        """Choose no point."""
        self._controller.do(lambda s: choose(s, None))
        self._controller.end_gesture()

    def remove_chosen(self) -> None:
        """Take the chosen point out."""
        self._controller.do(lambda s: removed(s, s.chosen))
        self._controller.end_gesture()

    def choose_along(self, way: int) -> None:
        """Choose the point before or after."""
        self._pointer = self.cross = None
        self._controller.do(lambda s: chosen_along(s, way))
        looked = self._looked_at
        if looked is not None:
            self._show(looked)

    # Painting

    def paintEvent(self, event: QPaintEvent) -> None:
        """The picture out of the cache, everything else over it."""
        painter = QPainter(self)
        controller, wire = self._controller, self._controller.wire
        ratio = self.devicePixelRatioF()
        painter.fillRect(self.rect(), QColor(self._theme.well))
        if self._pyramid is not None and wire is not None:
            painter.drawPixmap(QPointF(0.0, 0.0), self._still(self._pyramid, ratio))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            state = controller.state
            paint_marks(
                painter, state, wire, controller.outline, self.sight, self._theme, self._words
            )
            self._paint_cross(painter)
            looked = self._looked_at
            if looked is not None:
                spots = tuple(
                    ((group, index), spot)
                    for group in GROUPS[state.step]
                    for index, spot in enumerate(state.spots(group))
                )
                paint_loupe(painter, self._pyramid, looked, self.sight, self._theme, ratio, spots)
        else:
            painter.setFont(font(self._theme, "body"))
            painter.setPen(QColor(self._theme.muted))
            centre = int(Qt.AlignmentFlag.AlignCenter)
            painter.drawText(QRectF(self.rect()), centre, self.tr("A picture can be dropped here"))
        self._paint_frame(painter)
        painter.end()

    def _still(self, pyramid: Pyramid, ratio: float) -> QPixmap:
        if self._kept is None or self._kept[:2] != (self.sight, ratio):
            size = self.size() * ratio
            pixmap = QPixmap(size)
            pixmap.setDevicePixelRatio(ratio)
            pixmap.fill(QColor(self._theme.well))
            painter = QPainter(pixmap)
            pyramid.paint(painter, self.sight, ratio)
            painter.end()
            self._kept = (self.sight, ratio, pixmap)
        return self._kept[2]

    def _paint_cross(self, painter: QPainter) -> None:
        state = self._controller.state
        hidden = state.chosen is not None or not GROUPS[state.step]
        if self.cross is None or hidden or not self.hasFocus():
            return
        x, y = self.sight.to_screen(self.cross)
        for colour, width in ((QColor("#ffffff"), 4.0), (QColor(self._theme.accent), 2.0)):
            painter.setPen(QPen(colour, width))
            for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
                painter.drawLine(QPointF(x + 5 * dx, y + 5 * dy), QPointF(x + 18 * dx, y + 18 * dy))

    def _paint_frame(self, painter: QPainter) -> None:
        theme = self._theme
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect, radius = QRectF(self.rect()), float(theme.radius)
        outside = QPainterPath()
        outside.addRect(rect)
        outside.addRoundedRect(rect, radius, radius)
        painter.fillPath(outside, QColor(theme.window))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.line), 1.0))
        painter.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)
        if self.hasFocus():
            for colour, inset, width in ((theme.panel, 3.0, 2.0), (theme.accent, 1.25, 2.5)):
                painter.setPen(QPen(QColor(colour), width))
                painter.drawRoundedRect(
                    rect.adjusted(inset, inset, -inset, -inset), radius - 1.0, radius - 1.0
                )

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the fit, or the middle."""
        super().resizeEvent(event)
        size = (float(self.width()), float(self.height()))
        self.sight = Sight(self.sight.centre, self.sight.scale, size)
        if self._fits:
            self.fit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus, and the cross that keys move."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Hide the focus."""
        super().focusOutEvent(event)
        self.update()


def _point(position: QPointF) -> Vec:
    return position.x(), position.y()
