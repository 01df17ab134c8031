"""Which moment of a handling is looked at, and how it plays on."""

from __future__ import annotations

import time
from bisect import bisect_right
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal

from exercises.handling import Frame, HandlingLog

__all__ = ["PAUSE", "SPEEDS", "Player", "Playing", "stations"]

SPEEDS: Final = (0.5, 1.0, 2.0, 4.0)
"""How many ms of the handling pass in one of a replay."""

PAUSE: Final = 700.0
"""ms: where nothing was done for longer, a replay may skip."""

_LEAD: Final = 250.0
"""ms of a skipped pause that are shown before the hand moves again."""

_SAME_STEP: Final = 400
"""ms between two small moves that still are one."""

_FRAME: Final = 16
"""ms between two pictures of a replay."""


def stations(log: HandlingLog) -> tuple[float, ...]:
    """Return the moments (ms) at which something had just been done: its gestures' ends.

    A drag is one gesture from the grab to the release, a row of small steps is one.

    Examples
    --------
    >>> from exercises.handling import Entry
    >>> told = [(0, "pick 8 mm leg"), (900, "grab"), (916, "drag"), (932, "release")]
    >>> stations(HandlingLog(tuple(Entry(ms, 0, 0, 0, False, event) for ms, event in told)))
    (0.0, 932.0)
    """
    entries = log.entries
    ends: list[float] = []
    for entry, after in zip(entries, (*entries[1:], None), strict=True):
        within = entry.event in ("grab", "drag") or (
            after is not None
            and entry.event in ("nudge", "turn")
            and after.event == entry.event
            and after.ms - entry.ms <= _SAME_STEP
        )
        if not within or after is None:
            ends.append(float(entry.ms))
    return tuple(sorted({float(entries[0].ms), *ends})) if entries else ()


@dataclass(frozen=True, slots=True)
class Playing:
    """What of the debrief is being looked at.

    Parameters
    ----------
    at
        Moment of the handling, ms.
    runs
        Whether it plays on.
    reading
        The stated reading that is looked at instead, or None.
    covered
        Whether truth and reasons lie over the picture.
    right
        Which seat of the right handling lies over the picture, or None.
    pictured
        Whether the section is drawn over the picture that it was taken from.
    speed
        One of `SPEEDS`.
    skips
        Whether it goes past the pauses.
    """

    at: float = 0.0
    runs: bool = False
    reading: int | None = None
    covered: bool = True
    right: int | None = None
    pictured: bool = False
    speed: float = 1.0
    skips: bool = True


class Player(QObject):
    """Holds what is being looked at; replaced whole, told by `changed`."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.log = HandlingLog()
        self.reduced_motion = False
        self.stations: tuple[float, ...] = ()
        self._frames: tuple[Frame, ...] = ()
        self._now = Playing()
        self._clock, self._ticked = 0.0, 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(_FRAME)
        self._timer.timeout.connect(self._tick)

    @property
    def now(self) -> Playing:
        """What is being looked at."""
        return self._now

    @property
    def frame(self) -> Frame:
        """The picture at the moment that is looked at; `IndexError` if nothing was recorded."""
        past = bisect_right(self._frames, self._now.at, key=lambda frame: frame.ms)
        return self._frames[max(0, past - 1)]

    def load(self, log: HandlingLog) -> None:
        """Take a handling, and look at its last moment; speed and skipping stay as chosen."""
        self.log = log
        self._frames = tuple(log.frames())
        self.stations = stations(log)
        kept = Playing(speed=self._now.speed, skips=self._now.skips)
        self._show(replace(kept, at=float(log.duration)))

    def _show(self, playing: Playing) -> None:
        self._now = playing
        if playing.runs and not self._timer.isActive():
            self._ticked = time.perf_counter() * 1000.0
            self._timer.start()
        elif not playing.runs:
            self._timer.stop()
        self.changed.emit()

    def stop(self) -> None:
        """Play no further; the bench is being laid out anew."""
        self._timer.stop()
        self._now = replace(self._now, runs=False)

    def play(self) -> None:
        """Play, from the start if the end has been reached; or pause."""
        if self._now.runs:
            self._show(replace(self._now, runs=False))
            return
        self._clock = 0.0 if self._now.at >= self.log.duration else self._now.at
        self._show(replace(self._now, at=self._clock, runs=True, reading=None))

    def seek(self, at: float) -> None:
        """Look at a moment, ms; what plays goes on from there."""
        self._clock = min(max(0.0, at), float(self.log.duration))
        self._show(replace(self._now, at=self._clock, reading=None))

    def go_to(self, at: float) -> None:
        """Stop, and look at a moment, ms."""
        self._now = replace(self._now, runs=False)
        self.seek(at)

    def step(self, steps: int, *, single: bool = False) -> None:
        """Stop, and go some gestures on or back; or single pictures."""
        times = tuple(sorted({float(frame.ms) for frame in self._frames}))
        if not single:
            times = self.stations
        if not times:
            return
        place = bisect_right(times, self._now.at) - 1
        between = place >= 0 and times[place] < self._now.at
        to = place + steps + (1 if between and steps < 0 else 0)
        self._now = replace(self._now, runs=False)
        self.seek(times[min(max(0, to), len(times) - 1)])

    def go_at(self, speed: float) -> None:
        """Play at one of `SPEEDS` from now on."""
        self._show(replace(self._now, speed=speed))

    def change_speed(self, steps: int) -> None:
        """Play faster or slower by some steps."""
        place = SPEEDS.index(self._now.speed) + steps
        self.go_at(SPEEDS[min(max(0, place), len(SPEEDS) - 1)])

    def skip(self, skips: bool) -> None:
        """Go past the pauses, or sit them out."""
        self._show(replace(self._now, skips=skips))

    def look_at(self, reading: int | None, at: float | None = None) -> None:
        """Look at a stated reading, at the moment (ms) when it was stated if that is known."""
        moment = self._now.at if at is None else at
        self._show(replace(self._now, at=moment, reading=reading, runs=False))

    def cover(self, covered: bool) -> None:
        """Lay truth and reasons over the picture, or take them off."""
        self._show(replace(self._now, covered=covered))

    def hold_right(self, seat: int | None) -> None:
        """Lay a seat of the right handling over the picture, or take it off."""
        self._show(replace(self._now, right=seat))

    def picture(self, pictured: bool) -> None:
        """Show the picture that the section was taken from behind it, or take it away."""
        self._show(replace(self._now, pictured=pictured))

    def _tick(self) -> None:
        now = time.perf_counter() * 1000.0
        passed, self._ticked = now - self._ticked, now
        self.go_on(passed)

    def go_on(self, passed: float) -> None:
        """Let `passed` ms go by.

        Where motion is to be reduced, nothing glides: each gesture's end is shown in its turn.
        """
        clock = self._clock + passed * self._now.speed
        if self._now.skips:
            clock = self._past_pause(clock)
        ended = clock >= self.log.duration
        self._clock = min(clock, float(self.log.duration))
        at = self._clock
        if self.reduced_motion and not ended:
            past = bisect_right(self.stations, at)
            at = self.stations[max(0, past - 1)]
        if at != self._now.at or ended:
            self._show(replace(self._now, at=at, runs=not ended))

    def _past_pause(self, clock: float) -> float:
        """The moment itself or, well inside a pause, one shortly before its end."""
        after = bisect_right(self._frames, clock, key=lambda frame: frame.ms)
        if not 0 < after < len(self._frames):
            return clock
        began, ends = self._frames[after - 1].ms, self._frames[after].ms
        if ends - began > PAUSE and clock - began >= _LEAD:
            return max(clock, ends - _LEAD)
        return clock
