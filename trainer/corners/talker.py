"""Gives the talk: goes from stop to stop when asked, and looks for the next one meanwhile."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, QTimer, Signal

from trainer.corners.controller import CornersController
from trainer.corners.pressing import Pressing
from trainer.corners.state import Corners, Drawn, without_or_with
from trainer.corners.talk import Passage, Stop, passages, seek

__all__ = ["Talker"]

_FRAME = 16
_WHOLE = 7000.0
"""ms that a whole passage would take."""
_LEAST, _MOST = 500.0, 4000.0
"""ms that the way to a stop takes."""


@dataclass(frozen=True, slots=True)
class _Way:
    """What is being gone through: from a share of a passage to a stop, since a time (ms)."""

    start: float
    stop: Stop
    began: float
    lasts: float


class Talker(QObject):
    """Steps a controller through the talk.

    Signals
    -------
    changed
        The talk began, moved, stopped somewhere, or ended.
    """

    changed = Signal()

    def __init__(self, controller: CornersController, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.reduced_motion = False
        self._controller = controller
        self._before: Corners | None = None
        self._passages: tuple[Passage, ...] = ()
        self._stops: list[Stop] = []
        self._at = -1
        self._way: _Way | None = None
        self._asked = False
        self._pressing = Pressing()
        self._seeking: Iterator[Stop | None] | None = None
        self._seeker = QTimer(self)
        self._seeker.timeout.connect(self._seek)
        self._frames = QTimer(self)
        self._frames.setInterval(_FRAME)
        self._frames.timeout.connect(self._next_frame)
        controller.touched.connect(self.leave)

    @property
    def on(self) -> bool:
        """Whether the talk is being given."""
        return bool(self._passages)

    @property
    def moving(self) -> bool:
        """Whether the sections are on their way to a stop, or one is still looked for."""
        return self._way is not None or self._asked

    @property
    def on_the_way(self) -> bool:
        """Whether the sections are being moved to a stop."""
        return self._way is not None

    @property
    def stop(self) -> Stop | None:
        """Where the talk has paused, or is going to."""
        return self._stops[self._at] if self.on and self._at >= 0 else None

    @property
    def passage(self) -> Passage | None:
        """The passage of that stop."""
        return self._passages[self.stop.passage] if self.stop is not None else None

    @property
    def count(self) -> int:
        """How many passages the talk has."""
        return len(self._passages)

    def begin(self) -> None:
        """Begin with the first passage, for the leaf that is in use."""
        self._before = self._controller.state
        self._passages = passages(self._controller.state)
        self._stops, self._at = [Stop(0, 0.0)], 0
        self._arrive()

    def leave(self) -> None:
        """End the talk; the sections stay as they are."""
        if self.on:
            self._halt()
            self._passages, self._stops, self._at = (), [], -1
            self._asked = False
            self.changed.emit()

    def end(self) -> None:
        """End the talk, and show what was there before it."""
        before = self._before
        self.leave()
        if before is not None:
            self._controller.show(before)

    def forward(self) -> None:
        """Go on to the next stop; asked again on the way there, arrive at once."""
        if not self.on:
            self.begin()
        elif self._way is not None:
            self._arrive()
        elif self._at + 1 < len(self._stops):
            self._asked = False
            self._go(self._at + 1)
        elif self._seeking is not None:
            self._asked = True
            self.changed.emit()

    def back(self) -> None:
        """Go back to the stop before."""
        self._asked = False
        if self.on and self._at > 0:
            self._go(self._at - 1)

    def draw(self, drawn: Drawn) -> None:
        """Switch a drawing over the sections; the talk, if it is on, goes on with it."""
        if not self.on:
            self._controller.do(lambda state: without_or_with(state, drawn))
            return
        self._passages = tuple(
            replace(
                passage,
                start=without_or_with(passage.start, drawn),
                end=without_or_with(passage.end, drawn),
            )
            for passage in self._passages
        )
        self._controller.show(without_or_with(self._controller.state, drawn))

    def _go(self, to: int) -> None:
        """Set out for a stop that is known."""
        old, new = self._stops[self._at], self._stops[to]
        self._at = to
        if self.reduced_motion or old.passage != new.passage:
            self._arrive()
            return
        far = abs(new.share - old.share)
        lasts = min(max(far * _WHOLE, _LEAST), _MOST)
        self._way = _Way(old.share, new, time.perf_counter() * 1000.0, lasts)
        self._seeker.stop()
        self._frames.start()
        self.changed.emit()

    def _next_frame(self) -> None:
        way = self._way
        if way is None:
            return
        part = (time.perf_counter() * 1000.0 - way.began) / way.lasts
        if part >= 1.0:
            self._arrive()
            return
        # Slow at both ends.
        eased = part * part * (3.0 - 2.0 * part)
        share = way.start + (way.stop.share - way.start) * eased
        self._controller.show(self._passages[way.stop.passage].at(share))

    def _arrive(self) -> None:
        self._halt()
        stop = self._stops[self._at]
        self._controller.show(self._passages[stop.passage].at(stop.share))
        if self._at + 1 == len(self._stops):
            self._look_ahead(stop)
        self.changed.emit()

    def _halt(self) -> None:
        self._frames.stop()
        self._seeker.stop()
        self._seeking = None
        self._way = None

    def _look_ahead(self, stop: Stop) -> None:
        """Look for the stop after the last one, a stride at a time, while nothing else is asked."""
        if stop.share < 1.0:
            passage = self._passages[stop.passage]
            self._seeking = seek(self._pressing.corners, stop.passage, passage, stop.share)
            self._seeker.start(0)
        elif stop.passage + 1 < len(self._passages):
            self._stops.append(Stop(stop.passage + 1, 0.0))

    def _seek(self) -> None:
        found = next(self._seeking) if self._seeking is not None else None
        if found is None:
            return
        self._seeker.stop()
        self._seeking = None
        self._stops.append(found)
        if self._asked:
            self.forward()
