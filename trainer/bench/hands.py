"""What buttons, keys and the pointer ask of the leaf, turned into calls on the controller."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QWidget

from geometry.curves import Vec
from geometry.leaf import rack
from geometry.pose import wrap_degrees
from trainer.bench import moves, words
from trainer.bench.controller import BenchController
from trainer.bench.state import BenchState, cleaned
from trainer.canvas.canvas import Canvas
from trainer.ghost import LeafGhost

__all__ = ["FINE_MOVE", "FINE_TURN", "Hands"]

FINE_MOVE: Final = 0.1
"""mm that a key or a button moves the leaf."""

FINE_TURN: Final = 0.1
"""Degrees that a key or a button turns it. With Shift ten times as much, as for moves."""

_COARSE: Final = 10.0

_SHORT: Final = 1e-3
"""mm or degrees: a step that falls short by less has gone all its way but for rounding."""

_WAYS: Final[dict[str, Vec]] = {
    "move left": (-1.0, 0.0),
    "move right": (1.0, 0.0),
    "move up": (0.0, 1.0),
    "move down": (0.0, -1.0),
}


class Hands(QObject):
    """Wires the canvas's gestures, and does what is asked by name.

    Signals
    -------
    said
        Why something that was asked for did nothing.
    """

    said = Signal(str)

    def __init__(self, controller: BenchController, canvas: Canvas, window: QWidget) -> None:
        super().__init__(window)
        self._controller = controller
        self._canvas = canvas
        self._ghost = LeafGhost(window)
        canvas.grabbed.connect(lambda x, y: controller.grab((x, y)))
        canvas.dragged.connect(controller.drag)
        canvas.released.connect(controller.release)
        canvas.clicked.connect(self._click)
        canvas.wheel_turned.connect(self._wheel)
        controller.refused.connect(canvas.shake)
        self._steps: dict[str, Callable[[], None]] = {
            "press home": controller.press_home,
            "turn over": lambda: controller.do(moves.turn_over),
            "swap ends": lambda: controller.do(moves.swap_ends),
            "clean toes": lambda: controller.do(cleaned),
            "put back": lambda: controller.do(moves.put_back),
            "undo": controller.undo,
            "leaf before": lambda: self.step_leaf(-1),
            "leaf after": lambda: self.step_leaf(1),
        }

    def do(self, name: str, *, coarse: bool = False) -> bool:
        """Do what is called `name`, or say why nothing came of it; whether it is known."""
        before = self._controller.state
        if self._leaves_it(name):
            return True
        known = self._do(name, coarse=coarse)
        if known and not self._say_stopped(name, before, times=_COARSE if coarse else 1.0):
            self._say_why_not(name, before)
        return known

    def _leaves_it(self, name: str = "leaf 1") -> bool:
        """Say that a leaf which is to be judged as it lies is not moved; whether that is so."""
        state = self._controller.state
        moves_it = name in self._steps or name in _WAYS or name.startswith(("turn ", "leaf "))
        if state.can_move or state.phase != "handling" or name == "undo" or not moves_it:
            return False
        self.said.emit(
            self.tr("Somebody else placed this leaf: look at it, with the loupe too, as it lies.")
        )
        return True

    def _say_stopped(self, name: str, before: BenchState, times: float) -> bool:
        """Say which piece stopped a step that went part of its way only; whether it did.

        Contacts only, never what the leaf shows.
        """
        now = self._controller.state
        if before.leaf is None or before.pose is None or now.pose is None:
            return False
        if name in _WAYS:
            wanted = times * FINE_MOVE
            handle = before.leaf.handle
            (ax, ay), (bx, by) = before.pose.to_section(handle), now.pose.to_section(handle)
            dx, dy = _WAYS[name]
            went = (bx - ax) * dx + (by - ay) * dy
        elif name in ("turn left", "turn right"):
            wanted = times * FINE_TURN
            went = abs(wrap_degrees(now.pose.angle - before.pose.angle))
        else:
            return False
        if went > wanted - _SHORT:
            return False
        where = words.contacts(now.touches, before.leaf.edge) if now.touches else ""
        if before.pose == now.pose:
            text = self.tr("Steel stops the leaf that way: {where}.")
        else:
            text = self.tr("Stopped short by steel: {where}.")
        if not where:
            return False
        self.said.emit(text.format(where=where))
        return True

    def _say_why_not(self, name: str, before: BenchState) -> None:
        """Say why a step did nothing, if it did nothing: contacts only, never what a leaf shows."""
        now = self._controller.state
        same = (before.leaf, before.pose, before.section) == (now.leaf, now.pose, now.section)
        if not same or now.phase != "handling" or name.startswith("leaf "):
            return
        if name == "clean toes":
            self.said.emit(self.tr("Nothing to clean: the toes are clean."))
        elif name == "undo":
            if before.before is None:
                self.said.emit(self.tr("Nothing to undo."))
        elif before.leaf is None:
            if name != "put back":
                self.said.emit(self.tr("Take a leaf off the rack first."))
        elif name in ("turn over", "swap ends"):
            self.said.emit(self.tr("No room for that here: move the leaf off the steel first."))
        elif name == "press home":
            self.said.emit(self.tr("The leaf is home as far as steel lets it."))
        else:
            self.said.emit(self.tr("Steel stops the leaf that way."))

    def _do(self, name: str, *, coarse: bool) -> bool:
        times = _COARSE if coarse else 1.0
        if name in _WAYS:
            dx, dy = (times * FINE_MOVE * part for part in _WAYS[name])
            self._controller.do(lambda state, now: moves.nudge(state, dx, dy, now))
        elif name in ("turn left", "turn right"):
            degrees = times * FINE_TURN * (1.0 if name == "turn left" else -1.0)
            self._controller.do(lambda state, now: moves.turn_by(state, degrees, now))
        elif name.startswith("leaf ") and name[5:].isdigit():
            self.pick_digit(int(name[5:]))
        elif name in self._steps:
            self._steps[name]()
        else:
            return False
        return True

    def pick(self, mark: str) -> None:
        """Take a leaf off the rack; the hands are then at the picture."""
        if self._leaves_it():
            return
        self._controller.do(lambda state, now: moves.pick(state, mark, now))
        self._canvas.setFocus()

    def pick_at(self, place: int) -> None:
        """Take the leaf at a place of the rack, from 0, if one hangs there."""
        leaves = rack(self._controller.state.rack)
        if 0 <= place < len(leaves):
            self.pick(leaves[place].mark)

    def pick_digit(self, digit: int) -> None:
        """Take the leaf with `digit` for its mark; of the inch set the one at that place."""
        name = self._controller.state.rack
        marks = [leaf.mark for leaf in rack(name)]
        wanted = {"metric": f"{digit} mm", "throat": f"a {digit} mm"}.get(name)
        if wanted is None:
            self.pick_at(digit - 1)
        elif wanted in marks:
            self.pick(wanted)
        else:
            self.said.emit(
                self.tr("No leaf here is marked {digit}; the keys [ and ] go along.").format(
                    digit=digit
                )
            )

    def step_leaf(self, step: int) -> None:
        """Take the next larger or smaller leaf; the first or last if none is out."""
        state = self._controller.state
        marks = [leaf.mark for leaf in rack(state.rack)]
        if state.leaf is not None and state.leaf.mark in marks:
            self.pick_at(marks.index(state.leaf.mark) + step)
        else:
            self.pick_at(0 if step > 0 else len(marks) - 1)

    def pull(self, mark: str, at: QPoint, picture: QPixmap) -> None:
        """Carry a leaf from the rack to a point of the screen: over the picture it is in hand."""
        if not self._controller.state.can_move:
            return
        spot = self._spot(at)
        if self._in_hand():
            self._controller.drag([self._canvas.view.to_mm((spot.x(), spot.y()))])
            return
        if self._canvas.rect().contains(spot):
            to = self._canvas.view.to_mm((spot.x(), spot.y()))
            self._controller.do(lambda state, now: moves.grab_new(state, mark, to, now))
        if self._in_hand():
            self._ghost.hide()
        else:
            self._ghost.carry(picture, at)

    def follow(self, mark: str, way: Sequence[QPoint], picture: QPixmap) -> None:
        """Carry a leaf from the rack along points of the screen that lie behind the hand already.

        It comes in at the first of them where it can lie; the rest is one drag.
        """
        for done, at in enumerate(way, start=1):
            self.pull(mark, at, picture)
            if self._in_hand():
                spots = [self._spot(later) for later in way[done:]]
                self._controller.drag(
                    [self._canvas.view.to_mm((spot.x(), spot.y())) for spot in spots]
                )
                return

    def let_go(self, mark: str, at: QPoint) -> None:
        """End a pull: the leaf stays; dropped on the picture where it can't lie, it comes ready."""
        self._ghost.hide()
        if self._in_hand():
            self._controller.release()
        elif self._canvas.rect().contains(self._spot(at)):
            self.pick(mark)
        self._canvas.setFocus()

    def _in_hand(self) -> bool:
        return self._controller.state.hand is not None

    def _spot(self, at: QPoint) -> QPoint:
        return self._canvas.mapFromGlobal(at)

    def _click(self, x: float, y: float) -> None:
        if self._leaves_it():
            return
        spot = self._canvas.view.to_screen((x, y))
        if not self._canvas.is_on_leaf(spot):
            self._controller.do(lambda state, now: moves.place(state, (x, y), now))

    def _wheel(self, degrees: float, x: float, y: float) -> None:
        self._controller.do(lambda state, now: moves.turn_by(state, degrees, now))
