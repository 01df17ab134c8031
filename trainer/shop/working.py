"""Judging and pressing beside the hands: a little at a time, so that a drag never waits for it."""

from __future__ import annotations

import time
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal

from exercises.coupon import Coupon
from exercises.judging import Judgement, judge
from geometry.leaf import RackName
from trainer.shop.answers import Answers

__all__ = ["Working"]

_TURN: Final = 8.0
"""ms of presses between two looks at what the hands do."""

_SWIFT: Final = 14.0
_PAUSE: Final = 120
"""ms: a judgement that takes longer than the first, as that of a scan's thousand points does, is
made once the hands have kept still for the second."""


class Working(QObject):
    """Judges the open coupon, then presses a rack's leaves home on it.

    Signals
    -------
    judged()
        `judgement` is that of `coupon` as it is now.
    answered()
        Leaves have been pressed.
    """

    judged = Signal()
    answered = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.answers = Answers()
        self.judgement: Judgement | None = None
        self.coupon: Coupon | None = None
        self._rack: RackName = "metric"
        self._pressing = False
        self._due = False
        self._took = 0.0
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._go_on)

    def ask(self, coupon: Coupon, name: RackName, *, leaves: bool) -> None:
        """Ask for the judgement of a coupon and, with `leaves`, what those of a rack would show."""
        if coupon is not self.coupon:
            self.coupon, self._due = coupon, True
        self._rack, self._pressing = name, leaves
        if leaves:
            self.answers.ask(coupon, name)
        # What takes long waits for a hand that keeps still; a hand that moves on puts it off.
        self._timer.start(0 if self._took < _SWIFT else _PAUSE)

    def finish(self) -> None:
        """Do all of it now."""
        while self._due or (self._pressing and not self.answers.done):
            self._go_on()
        self._timer.stop()

    def stop(self) -> None:
        """Leave the rest undone."""
        self._timer.stop()

    def _go_on(self) -> None:
        if self._due and self.coupon is not None:
            self._due = False
            began = time.perf_counter() * 1000.0
            self.judgement = judge(self.coupon)
            self._took = time.perf_counter() * 1000.0 - began
            self.judged.emit()
        elif self._pressing and not self.answers.done:
            until = time.perf_counter() * 1000.0 + _TURN
            while self.answers.step() and time.perf_counter() * 1000.0 < until:
                pass
            self.answered.emit()
        else:
            return
        self._timer.start(0)
