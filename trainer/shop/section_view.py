"""The section on the one canvas, with a handle on everything that can be turned."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QMouseEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from exercises.coupon import Coupon
from geometry.curves import Vec
from geometry.leaf import Leaf
from geometry.lengths import Unit
from geometry.pose import Pose
from geometry.section import Section
from trainer.bench.review_picture import backing_of
from trainer.canvas.canvas import Canvas
from trainer.canvas.scene import Overlay, Scene
from trainer.canvas.spoken import Part
from trainer.canvas.view import Box, View
from trainer.look.tokens import Theme
from trainer.shop.handles import Grip, PointGrip, ValueGrip
from trainer.shop.knobs import Knob, knobs_of
from trainer.shop.tracing import point_at
from trainer.shop.words import knob_word, value_words

__all__ = ["SectionView", "ShopCanvas", "Shown"]

_APART: Final = 16.0
"""Logical px: points of a trace closer than this share a handle until one looks closer."""

_MOST_POINTS: Final = 60
_NOTCH: Final = 120.0
_ZOOM: Final = 1.2
_NEAR_FACE: Final = 8.0
"""Logical px from the face within which a double click puts a point in."""

_EDGE: Final = 20.0
"""Logical px that a handle is kept from the picture's edge."""
_SHARES: Final = (1.0, 0.8, 0.6, 0.4, 0.25)
"""Of the way from the root, where the joint's handle may stand."""


def box_of(section: Section) -> Box:
    """Return what the picture shows of a section by itself, mm: bead, plates beside it, handles."""
    bead, joint = section.bead, section.joint
    reach = max(bead.leg_base, bead.leg_upright, 4.0)
    far = max([bead.reach("base"), *(drop.far for drop in section.spatter if drop.on == "base")])
    top = max([bead.reach("upright"), *(d.far for d in section.spatter if d.on == "upright")])
    lean = min(0.0, math.cos(joint.radians)) * 2.0 * reach
    right = max(2.1 * reach, far + 0.3 * reach, math.cos(joint.radians) * 2.2 * reach)
    high = max(2.15 * reach, (top + 0.3 * reach) * math.sin(joint.radians))
    return (-0.8 * reach + lean, -0.7 * reach, right, high)


def in_sight(knob: Knob, view: View) -> Knob:
    """Return the joint's knob nearer to the root, as far as it takes to be seen; others as is.

    Anywhere along the upright it turns the joint as well.

    Examples
    --------
    >>> knob = Knob("angle", "angle", 90.0, (0.0, 20.0), (-1.0, 0.0), 2.0, (-1.0, 0.0), "triangle")
    >>> near = in_sight(knob, View((0.0, 0.0), 10.0, (200.0, 200.0)))
    >>> near.at, near.per_mm
    ((0.0, 8.0), 5.0)
    """
    if knob.key != "angle":
        return knob
    left, low, right, high = view.box
    edge = _EDGE / view.scale
    for share in _SHARES:
        x, y = share * knob.at[0], share * knob.at[1]
        if left + edge <= x <= right - edge and low + edge <= y <= high - edge:
            return replace(knob, at=(x, y), per_mm=knob.per_mm / share)
    return knob


class ShopCanvas(Canvas):
    """The one canvas; the wheel zooms, since there is no leaf to turn.

    Signals
    -------
    face_asked(x, y)
        A double click, mm.
    """

    face_asked = Signal(float, float)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.box: Box | None = None

    def fit(self) -> None:
        """Show the bead with all that lies beside it."""
        if self.box is None:
            super().fit()
            return
        size = (float(max(1, self.width())), float(max(1, self.height())))
        view = self.view.resized(size, self.devicePixelRatioF())
        self.set_view(view.showing(self.box, largest=self.largest_scale))
        self._fits = True

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom about the pointer."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier or not event.angleDelta().y():
            super().wheelEvent(event)
            return
        at = event.position()
        self.zoom(_ZOOM ** (event.angleDelta().y() / _NOTCH), (at.x(), at.y()))
        event.accept()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Ask for a point where the face is."""
        self.face_asked.emit(*self.view.to_mm((event.position().x(), event.position().y())))


@dataclass(frozen=True, slots=True)
class Shown:
    """What the picture is to show beside the section: a leaf at rest, lines over it, and how."""

    theme: Theme
    unit: Unit
    leaf: Leaf | None = None
    pose: Pose | None = None
    overlays: tuple[Overlay, ...] = ()
    parts: tuple[Part, ...] = ()
    pictured: bool = True


class SectionView(QWidget):
    """Picture and handles.

    Signals
    -------
    turned(key, value)
        A handle wants a value, mm or degrees.
    dragged(index, x, y)
        A point of the trace is wanted elsewhere, mm.
    put_in(index, x, y), taken_out(index)
        A point is wanted after another one, at a place; or is to go.
    let_go()
        The end of a gesture.
    chosen(key)
        Another handle is worked with.
    """

    turned = Signal(str, float)
    dragged = Signal(int, float, float)
    put_in = Signal(int, float, float)
    taken_out = Signal(int)
    let_go = Signal()
    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.canvas = ShopCanvas(self)
        self.grips: dict[str, Grip] = {}
        self.key = ""
        self._coupon: Coupon | None = None
        self._shown: Shown | None = None
        self.canvas.view_changed.connect(self._look_anew)
        self.canvas.face_asked.connect(self._ask_for_point)
        self.setMinimumSize(280, 200)

    @property
    def held(self) -> bool:
        """Whether a handle is being dragged."""
        return any(grip.held for grip in self.grips.values())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The picture fills all of it."""
        super().resizeEvent(event)
        self.canvas.setGeometry(self.rect())

    def show_coupon(self, coupon: Coupon, shown: Shown, *, afresh: bool) -> None:
        """Show a coupon's section; `afresh` looks at it from where all of it is seen."""
        self._coupon, self._shown = coupon, shown
        scene = Scene(
            section=coupon.section,
            leaf=shown.leaf,
            pose=shown.pose,
            overlays=shown.overlays,
            theme=shown.theme,
            unit=shown.unit,
            eye_limit=coupon.eye_limit,
            parts=shown.parts,
            backing=backing_of(coupon.backdrop) if shown.pictured else None,
        )
        self.canvas.box = box_of(coupon.section)
        self.canvas.set_scene(scene)
        if afresh:
            self.canvas.fit()
        self._match_grips()
        self._place()

    def choose(self, key: str) -> None:
        """Work with a handle; the keys go to it."""
        self.key = key
        self._match_grips()
        self._place()
        grip = self.grips.get(key)
        if grip is not None:
            grip.setFocus(Qt.FocusReason.TabFocusReason)

    def mark(self, key: str) -> None:
        """Show which handle is worked with, wherever the keys are."""
        if key in self.grips and key != self.key:
            self.key = key
            self._place()

    # The handles

    def _match_grips(self) -> None:
        """Have a handle for each knob and each point that has room, and no other."""
        if self._coupon is None:
            return
        section = self._coupon.section
        wanted = [knob.key for knob in knobs_of(section)]
        wanted += [f"trace.{index}" for index in self._points()]
        for key in [key for key in self.grips if key not in wanted]:
            grip = self.grips.pop(key)
            if grip.hasFocus():
                self.canvas.setFocus()
            grip.hide()
            grip.deleteLater()
        for key in wanted:
            if key not in self.grips:
                self.grips[key] = self._made(key)
        if self.key not in wanted:
            self.key = wanted[0] if wanted else ""
        order = [self.canvas, *(self.grips[key] for key in wanted)]
        for before, after in pairwise(order):
            QWidget.setTabOrder(before, after)

    def _points(self) -> list[int]:
        """The inner points of the trace that have room for a handle: the chosen one in any case."""
        trace = self._coupon.section.bead.trace if self._coupon is not None else None
        if trace is None or len(trace) < 3:
            return []
        if self.held:
            return [grip.index for grip in self.grips.values() if isinstance(grip, PointGrip)]
        view = self.canvas.view
        chosen = int(self.key[6:]) if self.key.startswith("trace.") else -1
        kept: list[Vec] = [view.to_screen(trace[0]), view.to_screen(trace[-1])]
        points: list[int] = []
        inner = range(1, len(trace) - 1)
        if chosen in inner:
            kept.append(view.to_screen(trace[chosen]))
            points.append(chosen)
        size = view.size
        for index in inner:
            at = view.to_screen(trace[index])
            inside = -20.0 < at[0] < size[0] + 20.0 and -20.0 < at[1] < size[1] + 20.0
            if inside and all(math.dist(at, other) >= _APART for other in kept):
                kept.append(at)
                points.append(index)
            if len(points) >= _MOST_POINTS:
                break
        return sorted(points)

    def _made(self, key: str) -> Grip:
        if key.startswith("trace."):
            grip = PointGrip(int(key[6:]), self.canvas)
            grip.dragged.connect(self.dragged)
            grip.put_in.connect(self._put_in_after)
            grip.taken_out.connect(self.taken_out)
            grip.passed.connect(self._pass)
            made: Grip = grip
        else:
            along = ValueGrip(key, self.canvas)
            along.moved.connect(self.turned)
            made = along
        made.let_go.connect(self.let_go)
        made.let_go.connect(self._place)
        made.chosen.connect(self._choose)
        made.show()
        return made

    def _choose(self, key: str) -> None:
        if key != self.key:
            self.key = key
            self._place()
            self.chosen.emit(key)

    def _place(self) -> None:
        """Put every handle beside its point."""
        if self._coupon is None or self._shown is None:
            return
        view, theme, unit = self.canvas.view, self._shown.theme, self._shown.unit
        for knob in knobs_of(self._coupon.section):
            grip = self.grips.get(knob.key)
            if isinstance(grip, ValueGrip):
                held = knob if grip.held else in_sight(knob, view)
                grip.place(held, view, theme, chosen=knob.key == self.key)
                self._name(grip, f"{knob_word(knob.key)}, {value_words(knob, unit)}")
        trace = self._coupon.section.bead.trace or ()
        for grip in self.grips.values():
            if isinstance(grip, PointGrip) and grip.index < len(trace):
                grip.place(trace[grip.index], view, theme, chosen=grip.key == self.key)
                self._name(grip, knob_word(grip.key))
        if self._shown.overlays and not self.held:
            self._keep_clear()

    def _keep_clear(self) -> None:
        """Have what is drawn say its lengths beside the handles, not under them."""
        boxes = tuple(
            (float(rect.left()), float(rect.top()), float(rect.right()), float(rect.bottom()))
            for rect in (grip.geometry() for grip in self.grips.values())
        )
        if self.canvas.scene.covered != boxes:
            self.canvas.set_scene(replace(self.canvas.scene, covered=boxes))

    @staticmethod
    def _name(grip: Grip, name: str) -> None:
        if grip.accessibleName() != name:
            grip.setAccessibleName(name)
            grip.setToolTip(name)

    # Points of a trace

    def _pass(self, index: int, step: int) -> None:
        trace = self._coupon.section.bead.trace if self._coupon is not None else None
        if trace is not None:
            self.choose(f"trace.{min(max(index + step, 1), len(trace) - 2)}")
            self.chosen.emit(self.key)

    def _put_in_after(self, index: int) -> None:
        trace = self._coupon.section.bead.trace if self._coupon is not None else None
        if trace is not None and index + 1 < len(trace):
            (ax, ay), (bx, by) = trace[index], trace[index + 1]
            self.put_in.emit(index, (ax + bx) / 2.0, (ay + by) / 2.0)

    def _ask_for_point(self, x: float, y: float) -> None:
        trace = self._coupon.section.bead.trace if self._coupon is not None else None
        if trace is not None:
            index, at, off = point_at(trace, (x, y))
            if off * self.canvas.view.scale <= _NEAR_FACE:
                self.put_in.emit(index, *at)

    def _look_anew(self) -> None:
        """From elsewhere other points have room."""
        self._match_grips()
        self._place()
