"""The one place where the shop's state is replaced: widgets call it, and repaint from it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from PySide6.QtCore import QObject, Signal

from exercises.coupon import Coupon
from exercises.tray import Tray
from exercises.versions import Document
from geometry.curves import Vec
from trainer import history as steps
from trainer.history import History
from trainer.shop import state as changes
from trainer.shop.building import coupon_of
from trainer.shop.history import ShopHistory, browsed
from trainer.shop.state import Shop
from trainer.shop.turning import Turn, dragged_point, turned

__all__ = ["Kept", "ShopController"]

Kept = Literal["do", "undo", "redo", "open"]
"""What a finished gesture did: another value, one step back or on; or it is another tray."""


class ShopController(QObject):
    """Holds the tray that is being made, and what was before each gesture.

    Signals
    -------
    changed()
        The state was replaced.
    limited(limit)
        A knob was held: the `Limit` says where and why.
    finished(kind)
        A gesture is over and should be kept; ``do``, ``undo``, ``redo`` or ``open``.
    """

    changed = Signal()
    limited = Signal(object)
    finished = Signal(str)

    def __init__(self, shop: Shop, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._history = History(shop)
        self._saved: Tray | None = shop.tray

    @property
    def history(self) -> ShopHistory:
        """The value now, and the way here and back."""
        return self._history

    @property
    def shop(self) -> Shop:
        """The value now."""
        return self._history.now

    @property
    def coupon(self) -> Coupon:
        """The coupon that is open."""
        return self._history.now.coupon

    @property
    def dirty(self) -> bool:
        """Whether the tray is another than the one last saved."""
        return self.shop.tray is not self._saved

    @property
    def busy(self) -> bool:
        """Whether a gesture goes on."""
        return bool(self._history.gesture)

    def mark_saved(self, tray: Tray | None) -> None:
        """Take `tray` as the one that is on the disk; None if none is."""
        self._saved = tray
        self.changed.emit()

    def open(self, history: ShopHistory, *, saved: bool) -> None:
        """Begin with another tray."""
        self._history = history
        self._saved = history.now.tray if saved else None
        self.finished.emit("open")
        self.changed.emit()

    def go_on_from(self, other: ShopController) -> None:
        """Take over what another one holds, which is given up."""
        self._history, self._saved = other._history, other._saved  # one of the same kind
        self.changed.emit()

    def do(self, change: Callable[[Shop], Shop], what: str, *, going_on: bool = False) -> None:
        """Replace the state by what `change` makes of it.

        Parameters
        ----------
        what
            The gesture; changes of one that goes on are undone together, until `end_gesture`.
        going_on
            Whether more of it may follow.
        """
        if self.busy and not (going_on and self._history.gesture == what):
            self.end_gesture()
        before = self._history
        after = steps.done(before, change(before.now), what, going_on=going_on)
        if after is before:
            return
        self._history = after
        if not going_on:
            self.finished.emit("do")
        self.changed.emit()

    def end_gesture(self) -> None:
        """What comes now is another step."""
        if self.busy:
            self._history = steps.ended(self._history)
            self.finished.emit("do")
            self.changed.emit()

    def undo(self) -> None:
        """Go back one gesture."""
        self.end_gesture()
        self._step(steps.undone(self._history), "undo")

    def redo(self) -> None:
        """Do again what was undone last."""
        self.end_gesture()
        self._step(steps.redone(self._history), "redo")

    def _step(self, after: ShopHistory, kind: Kept) -> None:
        if after is not self._history:
            self._history = after
            self.finished.emit(kind)
            self.changed.emit()

    def show(self, at: int) -> None:
        """Open another coupon; this is no step that can be undone."""
        self.end_gesture()
        if at != self.shop.at:
            self._history = browsed(self._history, at)
            self.changed.emit()

    # The open coupon

    def turn(self, key: str, value: float, *, going_on: bool = False) -> None:
        """Turn a knob (mm or degrees), as far as geometry allows it."""
        self._take(turned(self.coupon, key, value, self.shop.rules), key, going_on=going_on)

    def drag_point(self, index: int, to: Vec, *, going_on: bool = False) -> None:
        """Bring a point of the traced face to a place (mm), as far as geometry allows it."""
        turn = dragged_point(self.coupon, index, to, self.shop.rules)
        self._take(turn, f"trace.{index}", going_on=going_on)

    def _take(self, turn: Turn, what: str, *, going_on: bool) -> None:
        self.do(lambda shop: changes.changed(shop, turn.coupon), what, going_on=going_on)
        if turn.limit is not None:
            self.limited.emit(turn.limit)

    def edit(self, document: Document, what: str, *, going_on: bool = False) -> None:
        """Replace the open coupon by what a document states.

        Raises
        ------
        GeometryError
            If no coupon can be so; nothing is changed then.
        """
        if document != self.coupon.source:
            coupon = coupon_of(document, self.shop.rules)
            self.do(lambda shop: changes.changed(shop, coupon), what, going_on=going_on)
