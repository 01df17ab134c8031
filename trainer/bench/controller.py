"""The one place where the bench's state is replaced: widgets call it, and repaint when it changed.

It owns what the pure functions must not: the clock, the animation of a press, the waiting wrist,
and where calls are recorded.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import replace

from PySide6.QtCore import QObject, QTimer, Signal

from exercises.coupon import Coupon
from geometry.curves import Vec
from geometry.pose import Pose
from trainer.bench import moves
from trainer.bench.state import BenchState, call, open_coupon, resumed, undone

__all__ = ["BenchController"]

_PRESS_LASTS = 280
"""ms that a press home is shown for (at most 300)."""

_FRAME = 16
"""ms between two frames of an animation."""

Change = Callable[[BenchState, float], BenchState]


class BenchController(QObject):
    """Holds the bench's state.

    Signals
    -------
    changed
        The state was replaced, or the pose shown moved on.
    refused
        A move was refused; the leaf should shake.
    """

    changed = Signal()
    refused = Signal()

    def __init__(self, coupon: Coupon, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.reduced_motion = False
        self._state = open_coupon(coupon)
        self._left: dict[str, tuple[BenchState, float]] = {}
        self._shown: Pose | None = None
        self._way: tuple[Pose, ...] = ()
        self._way_began = 0.0
        self._frames = QTimer(self)
        self._frames.setInterval(_FRAME)
        self._frames.timeout.connect(self._next_frame)
        self._wrist = QTimer(self)
        self._wrist.setSingleShot(True)
        self._wrist.timeout.connect(self._settle)

    @property
    def state(self) -> BenchState:
        """The state that now holds."""
        return self._state

    @property
    def shown_pose(self) -> Pose | None:
        """Where to draw the leaf: on its way while a press is shown, else where it lies."""
        return self._shown if self._shown is not None else self._state.pose

    @property
    def moving(self) -> bool:
        """Whether an animation runs."""
        return self._frames.isActive()

    def now(self) -> float:
        """Milliseconds of a monotonic clock."""
        return time.perf_counter() * 1000.0

    def lay_out(self, coupon: Coupon) -> None:
        """Take up `coupon` where it was left, or begin with it; the rack's set stays."""
        self._finish_way()
        now, rack = self.now(), self._state.rack
        self._wrist.stop()
        self._left[self._state.coupon.id] = (self._state, now)
        state, left = self._left.get(coupon.id) or (open_coupon(coupon, rack), now)
        if state.rack != rack:
            state = replace(state, rack=rack)
        self._replace(resumed(state, left, now))

    def take_up(self, state: BenchState) -> None:
        """Lay `state` out, which somebody else has kept; the rack's set stays."""
        self._finish_way()
        self._wrist.stop()
        self._replace(replace(state, rack=self._state.rack))

    def go_on_from(self, other: BenchController) -> None:
        """Take over what lies on another bench, and what was left of its other coupons."""
        self._left = dict(other._left)  # one of the same kind
        self._replace(replace(other.state, hand=None, way=()))

    def begin(self, coupon: Coupon) -> None:
        """Begin with the first coupon of another tray: nothing of the last one is kept."""
        self._finish_way()
        self._left = {}
        self._replace(open_coupon(coupon, self._state.rack))

    def again(self) -> None:
        """Begin anew with the same coupon, everything back on the rack."""
        self._finish_way()
        self._replace(open_coupon(self._state.coupon, self._state.rack))

    @property
    def judged(self) -> frozenset[str]:
        """The ids of the coupons whose call is on record, as they were left or as they lie here."""
        states = [self._state, *(state for state, _ in self._left.values())]
        current = {state.coupon.id: state for state in reversed(states)}
        return frozenset(name for name, state in current.items() if state.phase == "debrief")

    def do(self, change: Change) -> None:
        """Replace the state by what `change` makes of it at this moment."""
        self._finish_way()
        before = self._state
        self._replace(change(before, self.now()))
        if self._state.refused > before.refused:
            self.refused.emit()

    def undo(self) -> None:
        """Go back one gesture."""
        self.do(undone)

    def press_home(self) -> None:
        """Press the leaf home and show its way there."""
        self.do(moves.press_home)
        way = self._state.way
        if len(way) > 2 and not self.reduced_motion:
            self._way, self._way_began, self._shown = way, self.now(), way[0]
            self._frames.start()
            self.changed.emit()

    def grab(self, at: Vec) -> None:
        """A hand on the blade at `at` (mm)."""
        self.do(lambda state, now: moves.grab(state, at, now))

    def drag(self, points: Sequence[Vec]) -> None:
        """The hand went through `points` (mm)."""
        self.do(lambda state, now: moves.drag_to(state, points, now))
        self._wait_for_wrist()

    def release(self) -> None:
        """The hand let go."""
        self._wrist.stop()
        self.do(moves.release)

    def record(self) -> bool:
        """Put the call on record, if enough has been stated; return whether it was."""
        before = self._state.phase
        self.do(call)
        return self._state.phase != before

    def _replace(self, state: BenchState) -> None:
        if state is not self._state:
            self._state = state
            self.changed.emit()

    def _wait_for_wrist(self) -> None:
        """Feel again once the hand has been flush for long enough, even if it keeps still."""
        hand = self._state.hand
        if hand is None or hand.flush_since is None:
            self._wrist.stop()
        elif not self._wrist.isActive() and hand.angle != self._angle:
            left = hand.flush_since + moves.ADOPT_AFTER - self.now()
            self._wrist.start(max(1, round(left)))

    @property
    def _angle(self) -> float | None:
        return None if self._state.pose is None else self._state.pose.angle

    def _settle(self) -> None:
        self.do(moves.settle)

    def _next_frame(self) -> None:
        share = min(1.0, (self.now() - self._way_began) / _PRESS_LASTS)
        if share >= 1.0 or not self._way:
            self._finish_way()
            self.changed.emit()
            return
        eased = 1.0 - (1.0 - share) ** 2
        self._shown = self._way[round(eased * (len(self._way) - 1))]
        self.changed.emit()

    def _finish_way(self) -> None:
        """Show the leaf where it lies, at once."""
        self._frames.stop()
        self._way = ()
        self._shown = None
        if self._state.way:
            self._state = replace(self._state, way=())
