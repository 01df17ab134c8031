"""One corner on the screen: its picture, handles on it, its heading and its card."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QEnterEvent, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget

from geometry.curves import Vec
from geometry.lengths import Unit
from geometry.pose import Pose
from trainer.bench.spoken import parts_of
from trainer.bench.words import state_word
from trainer.canvas.canvas import Canvas
from trainer.corners.card import Card, paint_heading, paint_panel, paint_words
from trainer.corners.drawing import face_middle
from trainer.corners.handles import Handle
from trainer.corners.placing import Placed, scene_of
from trainer.corners.pressing import Corner
from trainer.corners.state import Corners, Knob, true_value
from trainer.corners.words import knob_word, spoken, value_word
from trainer.look.tokens import Theme

__all__ = ["CornerCanvas", "Pane"]

_LEAST: Final = QSize(320, 190)

_PANELS: Final = 6
"""Cards of so many sizes are kept: what they say takes one line, or two, or three."""


class CornerCanvas(Canvas):
    """The one canvas, beside another that shows the same section from the same place."""

    def share_with(self, other: CornerCanvas) -> None:
        """Keep paths and still layers together with `other`: they are painted once for both."""
        self._shapes, self._still = other._shapes, other._still

    def zoom(self, factor: float, about: Vec | None = None) -> None:
        """Stay: all four pictures keep one view, and find it by themselves."""

    def pan(self, dx: float, dy: float) -> None:
        """Stay, as for `zoom`."""

    def minimumSizeHint(self) -> QSize:
        """Four have to find room."""
        return _LEAST


class _Words(QWidget):
    """Heading and card over the picture; no pointer meets them."""

    def __init__(self, over: QWidget) -> None:
        super().__init__(over)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._shown: tuple[Card, Theme] | None = None
        self._key: tuple[Card | str, Theme] | None = None
        self._drawn: QPixmap | None = None
        self._is_card = False
        self._panels: dict[tuple[int, int, float, Theme], QPixmap] = {}

    def show_words(self, card: Card, theme: Theme, rect: QRectF, *, is_card: bool) -> None:
        """Show a card, or its heading, at a place."""
        key = (card if is_card else card.heading, theme)
        if key != self._key:
            self._key, self._drawn = key, None
            self._shown, self._is_card = (card, theme), is_card
            self.update()
        place = rect.toAlignedRect()
        if place != self.geometry():
            self.setGeometry(place)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Show what was painted when the words last changed: the picture under it changes more."""
        ratio = self.devicePixelRatioF()
        if self._drawn is None or self._drawn.size() != self.size() * ratio:
            self._drawn = self._painted(ratio)
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._drawn)
        painter.end()

    def _painted(self, ratio: float) -> QPixmap:
        """Paint as every saved picture is painted."""
        if self._shown is None:
            return self._blank(ratio)
        card, theme = self._shown
        pixmap = self._bare_panel(ratio, theme) if self._is_card else self._blank(ratio)
        painter = QPainter(pixmap)
        if self._is_card:
            paint_words(painter, self._inside, card, theme)
        else:
            paint_heading(painter, QPointF(0.5, 0.5), card.heading, theme)
        painter.end()
        return pixmap

    @property
    def _inside(self) -> QRectF:
        return QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)

    def _blank(self, ratio: float) -> QPixmap:
        pixmap = QPixmap(self.size() * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        return pixmap

    def _bare_panel(self, ratio: float, theme: Theme) -> QPixmap:
        """A card without words: its edge takes longer to paint than all that is said on it."""
        key = (self.width(), self.height(), ratio, theme)
        if key not in self._panels:
            if len(self._panels) == _PANELS:
                self._panels.clear()
            pixmap = self._blank(ratio)
            painter = QPainter(pixmap)
            paint_panel(painter, self._inside, theme)
            painter.end()
            self._panels[key] = pixmap
        return self._panels[key].copy()


class Pane(QWidget):
    """One corner.

    Signals
    -------
    knob_moved(knob, value)
        A handle wants a value, mm.
    leaf_pulled(size)
        The blade is dragged: a leaf of this size (mm) would lie where the pointer is.
    leaf_stepped(step)
        The wheel over the picture: that many leaves up or down the rack.
    let_go()
        The end of a drag.
    """

    knob_moved = Signal(str, float)
    leaf_pulled = Signal(float)
    leaf_stepped = Signal(int)
    let_go = Signal()

    def __init__(self, knobs: tuple[Knob, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.canvas = CornerCanvas(self)
        self.handles = {knob: Handle(knob, self.canvas) for knob in knobs}
        self._heading = _Words(self.canvas)
        self._card = _Words(self.canvas)
        self._corner: Corner | None = None
        self._grab: tuple[Pose, float, float] | None = None
        self._turn = 0.0
        self._quiet, self._hands_off, self._pointed = False, False, False
        self.setMinimumSize(_LEAST)
        for handle in self.handles.values():
            handle.raise_()
        for knob, handle in self.handles.items():
            handle.moved.connect(lambda value, knob=knob: self.knob_moved.emit(knob, value))
            handle.let_go.connect(self.let_go)
        self.canvas.grabbed.connect(self._take)
        self.canvas.dragged.connect(self._pull)
        self.canvas.released.connect(self._release)
        self.canvas.wheel_turned.connect(self._wheel)

    @property
    def held(self) -> bool:
        """Whether something of it is being dragged."""
        return self._grab is not None or any(handle.held for handle in self.handles.values())

    @property
    def heading_rect(self) -> QRect:
        """Where the heading stands, logical px."""
        return self._heading.geometry()

    @property
    def card_rect(self) -> QRect:
        """Where the card stands, logical px."""
        return self._card.geometry()

    def set_quiet(self, quiet: bool, hands_off: bool) -> None:
        """Show handles only under a pointer, where the picture has other things to say; or not."""
        self._quiet, self._hands_off = quiet, hands_off
        self._show_handles()

    def _show_handles(self) -> None:
        wanted = not self._hands_off and (not self._quiet or self.held or self._pointed)
        for handle in self.handles.values():
            if handle.isHidden() == wanted:
                handle.setVisible(wanted)

    def enterEvent(self, event: QEnterEvent) -> None:
        """A pointer has come: there is something to take hold of."""
        super().enterEvent(event)
        self._pointed = True
        self._show_handles()

    def leaveEvent(self, event: QEvent) -> None:
        """And has gone."""
        super().leaveEvent(event)
        self._pointed = False
        self._show_handles()

    def resize_to(self, rect: QRectF) -> None:
        """Take a place; the canvas fills it at once."""
        self.setGeometry(rect.toRect())
        self.canvas.setGeometry(self.rect())

    def show_corner(
        self,
        corner: Corner,
        card: Card,
        state: Corners,
        placed: Placed,
        unit: Unit,
        theme: Theme,
    ) -> None:
        """Show a corner as it has come to rest, and what its card says."""
        self._corner = corner
        self.canvas.set_view(placed.view)
        scene = scene_of(corner, state, placed, unit, theme)
        shown = state_word(corner.reading.state)
        parts = parts_of(corner.section, corner.leaf, corner.reading.pose, None, unit, shown)
        self.canvas.set_scene(replace(scene, parts=parts))
        chip = placed.heading.adjusted(-0.5, -0.5, 1.5, 1.5)
        self._heading.show_words(card, theme, chip.adjusted(-0.5, -0.5, 1.5, 1.5), is_card=False)
        self._card.show_words(card, theme, placed.card, is_card=True)
        self._place_handles(corner, state, placed, unit, theme)
        self.canvas.setAccessibleName(card.heading)
        self.canvas.setAccessibleDescription(spoken(corner, unit))

    def _place_handles(
        self, corner: Corner, state: Corners, placed: Placed, unit: Unit, theme: Theme
    ) -> None:
        section, joint = corner.section, corner.section.joint
        (ax, ay), (bx, by) = section.toe("base"), section.toe("upright")
        chord = math.hypot(bx - ax, by - ay)
        out = ((by - ay) / chord, (ax - bx) / chord)
        places: dict[Knob, tuple[Vec, Vec, Vec]] = {
            "leg_base": ((ax, ay), joint.direction("base"), _back(joint.normal("base"))),
            "leg_upright": ((bx, by), joint.direction("upright"), _back(joint.normal("upright"))),
            corner.pair: (face_middle(section), out, _back(out)),
        }
        for knob, handle in self.handles.items():
            at, way, aside = places[knob]
            handle.place(at, way, aside, true_value(state, knob), placed.view, theme)
            name = f"{knob_word(knob)}, {value_word(state, knob, unit)}"
            handle.setAccessibleName(name)
            handle.setToolTip(name)

    def _take(self, x: float, y: float) -> None:
        """Remember where on the blade the hand is, in sizes of the leaf, and how the leaf lay."""
        if self._corner is None:
            return
        pose, size = self._corner.reading.pose, self._corner.leaf.size
        at = pose.to_leaf((x, y))
        self._grab = (pose, at[0] / size, at[1] / size)

    def _pull(self, points: list[Vec]) -> None:
        """Let the leaf be of such a size that the grabbed spot would be where the pointer is.

        Measured from where the leaf lay at first: where another one comes to rest must not pull.
        """
        if self._grab is None:
            return
        pose, u, v = self._grab
        x, y = pose.to_leaf(points[-1])
        self.leaf_pulled.emit((x * u + y * v) / max(u * u + v * v, 0.25))

    def _release(self) -> None:
        self._grab = None
        self.let_go.emit()

    def _wheel(self, degrees: float, _x: float, _y: float) -> None:
        """A notch is a leaf, whether it comes whole or in many small parts."""
        self._turn += degrees
        steps = int(self._turn / 5.0)
        if steps:
            self._turn -= 5.0 * steps
            self.leaf_stepped.emit(steps)


def _back(way: Vec) -> Vec:
    return (-way[0], -way[1])
