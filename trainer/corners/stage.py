"""The four panes, two by two, all alike in size and view."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QRectF, QSize, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from geometry.lengths import Unit
from trainer.corners.card import card_of
from trainer.corners.pane import Pane
from trainer.corners.placing import box_of, needed_reach, place
from trainer.corners.pressing import PLACES, Pressed
from trainer.corners.state import Corners
from trainer.look.tokens import Theme

__all__ = ["Stage"]

_GAP: Final = 10
_ROOMIER: Final = 1.3
_EMPTY: Final = 0.66
"""Of the reach shown: below this a picture is brought closer, once nobody moves anything."""

_QUIET: Final = 700
"""ms without a change, after which the pictures may be brought closer."""


@dataclass(frozen=True, slots=True)
class _Shown:
    corners: Pressed
    state: Corners
    unit: Unit
    theme: Theme


class Stage(QWidget):
    """The pictures.

    Signals
    -------
    knob_moved(knob, value), leaf_pulled(size), leaf_stepped(step), let_go()
        As a pane's, from whichever it was.
    """

    knob_moved = Signal(str, float)
    leaf_pulled = Signal(float)
    leaf_stepped = Signal(int)
    let_go = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.panes = tuple(Pane(("leg_base", "leg_upright", pair), self) for pair, _ in PLACES)
        for left, right in ((0, 1), (2, 3)):
            self.panes[right].canvas.share_with(self.panes[left].canvas)
        for pane in self.panes:
            pane.knob_moved.connect(self.knob_moved)
            pane.leaf_pulled.connect(self.leaf_pulled)
            pane.leaf_stepped.connect(self.leaf_stepped)
            pane.let_go.connect(self._end_drag)
        self._shown: _Shown | None = None
        self._reach = 0.0
        self.kept_reach: float | None = None
        self.quiet, self.hands_off = False, False
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(_QUIET)
        self._quiet.timeout.connect(self._come_closer)

    def minimumSizeHint(self) -> QSize:
        """Two panes beside and below each other."""
        least = self.panes[0].minimumSize()
        return QSize(2 * least.width() + _GAP, 2 * least.height() + _GAP)

    def show_corners(self, corners: Pressed, state: Corners, unit: Unit, theme: Theme) -> None:
        """Show all four, from one view."""
        self._shown = _Shown(corners, state, unit, theme)
        need = needed_reach(state)
        # Under a hand the picture stands still.
        held = self.held and self._reach > 0.0
        if held:
            need = self._reach
        if self.kept_reach is not None:
            self._reach = self._reach if held else max(self.kept_reach, need / 1.25)
        elif self._reach == 0.0:
            self._reach = need
        elif need > 1.12 * self._reach:
            self._reach = _ROOMIER * need / 1.12
        self._quiet.start()
        self._lay_out()

    def fit(self) -> None:
        """Bring the pictures as close as they may be."""
        if self._shown is not None and self.kept_reach is None:
            self._reach = needed_reach(self._shown.state)
            self._lay_out()

    @property
    def held(self) -> bool:
        """Whether something is being dragged."""
        return any(pane.held for pane in self.panes)

    def _end_drag(self) -> None:
        self.let_go.emit()
        self._quiet.start()

    def _come_closer(self) -> None:
        if self._shown is None or self.held or self.kept_reach is not None:
            return
        need = needed_reach(self._shown.state)
        if need < _EMPTY * self._reach or need > self._reach:
            self._reach = need
            self._lay_out()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Divide the room anew."""
        super().resizeEvent(event)
        wide = (self.width() - _GAP) // 2
        high = (self.height() - _GAP) // 2
        for index, pane in enumerate(self.panes):
            row, column = divmod(index, 2)
            left, top = column * (wide + _GAP), row * (high + _GAP)
            pane.resize_to(QRectF(left, top, wide, high))
        self._lay_out()

    def _lay_out(self) -> None:
        shown = self._shown
        if shown is None:
            return
        cards = tuple(card_of(corner, shown.unit) for corner in shown.corners)
        first = self.panes[0]
        size = (float(first.width()), float(first.height()))
        box = box_of(self._reach, shown.state.angle)
        places = place(size, self.devicePixelRatioF(), cards, box, shown.theme)
        for pane in self.panes:
            pane.set_quiet(self.quiet, self.hands_off)
        for pane, corner, card, placed in zip(
            self.panes, shown.corners, cards, places, strict=True
        ):
            pane.show_corner(corner, card, shown.state, placed, shown.unit, shown.theme)
