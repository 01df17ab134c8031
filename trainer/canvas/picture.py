"""The picture: shows a frozen scene from a view, and tells a screen reader what is in it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from trainer.canvas.accessible import SpokenPicture
from trainer.canvas.blade import blade_rect, blade_transform
from trainer.canvas.drawing import Vec
from trainer.canvas.loupe import Corner, Lens, lens_of
from trainer.canvas.painter import label_boxes, paint_leaf, paint_loupe, paint_over
from trainer.canvas.scene import Scene
from trainer.canvas.shake import Shake
from trainer.canvas.shapes import Shapes, mapped, pose_transform
from trainer.canvas.spoken import Action, Part, PartKey
from trainer.canvas.stills import GlassStill, Still, same_still
from trainer.canvas.view import LARGEST_SCALE, Box, View, capped_scale, fitted

__all__ = ["Picture"]

_ZOOM_STEP: Final = 1.25

_PAN_STEP: Final = 0.125
"""Of the picture's smaller side: how far one step shifts it."""

_TIP: Final = 12.0
"""Logical pixels about the tip that a screen reader is told it takes up."""


class Picture(SpokenPicture):
    """Shows a scene; what can be done with it is the canvas's.

    Signals
    -------
    view_changed()
        Zoomed, panned, fitted or resized.
    painted()
        A frame is done.
    """

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
        self._holding = False
        self._over = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

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

    @property
    def labels(self) -> list[QRectF]:
        """Where what is drawn over the section has its labels, logical pixels."""
        return label_boxes(self._scene, self._view, self.lens)

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
        if not (scene.held or self._holding):
            # Where a leaf in a moving hand is this very moment is not worth a word.
            self.tell_changes()

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

    @property
    def chosen_view(self) -> View | None:
        """The view that somebody chose; None while the picture keeps to the fit."""
        return None if self._fits else self._view

    def choose_view(self, view: View) -> None:
        """Look from `view`, and keep to that when resized."""
        self._fits = False
        self.set_view(view)

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

    def step_view(self, right: int, up: int) -> None:
        """Look a step further to the right and up, or with negative steps to the left and down."""
        step = _PAN_STEP * min(self.width(), self.height())
        self.pan(-right * step, up * step)

    def centre_on(self, at: Vec) -> None:
        """Bring a place (logical px) to the middle."""
        middle = self._middle
        self.pan(middle[0] - at[0], middle[1] - at[1])

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
        # At a scale of one and a quarter the still layers end a part of a pixel further out.
        outside.addRect(rect.adjusted(-1.0, -1.0, 1.0, 1.0))
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

    # -- what is spoken --------------------------------------------------------------------------

    @property
    def parts(self) -> tuple[Part, ...]:
        """What a screen reader is told of the scene, as far as it is there."""
        scene = self._scene
        there = {
            "section": scene.section is not None,
            "leaf": scene.leaf is not None and scene.pose is not None,
        }
        there["tip"] = there["leaf"]
        return tuple(part for part in scene.parts if there[part.key])

    @property
    def offered(self) -> tuple[Action, ...]:
        """What a screen reader is offered to do."""
        return self._scene.actions

    def part_rect(self, key: PartKey) -> QRectF:
        """Where a part is, logical pixels; empty if it isn't there."""
        scene, view = self._scene, self._view
        if key == "section":
            if scene.section is None:
                return QRectF()
            drawing = self._shapes.section(scene.section).drawing
            left, low, right, high = drawing.steel.bounds
            corners = (view.to_screen((left, high)), view.to_screen((right, low)))
            return QRectF(QPointF(*corners[0]), QPointF(*corners[1]))
        if scene.leaf is None or scene.pose is None:
            return QRectF()
        paths = self._shapes.blade(scene.leaf)
        to_screen = blade_transform(scene.pose, view)
        if key == "leaf":
            return to_screen.mapRect(paths.outline.boundingRect())
        x, y = mapped(to_screen, paths.blade.point)
        return QRectF(x - _TIP, y - _TIP, 2.0 * _TIP, 2.0 * _TIP)
