"""Playing the handling back: a moment in it, whether it runs, and the strip that shows both."""

from __future__ import annotations

import time
from bisect import bisect_right
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, QSignalBlocker, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSlider, QVBoxLayout, QWidget

from exercises.handling import Frame, HandlingLog
from trainer.bench.translation import translate

__all__ = ["Player", "Playing", "ReplayPanel", "event_word"]

_FRAME = 16
"""ms between two pictures of a replay."""


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
    """

    at: float = 0.0
    runs: bool = False
    reading: int | None = None
    covered: bool = True


class Player(QObject):
    """Holds what is being looked at; replaced whole, told by `changed`."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.log = HandlingLog()
        self._frames: tuple[Frame, ...] = ()
        self._now = Playing()
        self._began = 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(_FRAME)
        self._timer.timeout.connect(self._go_on)

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
        """Take a handling, and look at its last moment."""
        self.log = log
        self._frames = tuple(log.frames())
        self._show(Playing(at=float(log.duration)))

    def _show(self, playing: Playing) -> None:
        self._now = playing
        if playing.runs and not self._timer.isActive():
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
        at = 0.0 if self._now.at >= self.log.duration else self._now.at
        self._began = time.perf_counter() * 1000.0 - at
        self._show(replace(self._now, at=at, runs=True, reading=None))

    def seek(self, at: float) -> None:
        """Look at a moment, ms."""
        at = min(max(0.0, at), float(self.log.duration))
        self._show(replace(self._now, at=at, runs=False, reading=None))

    def step(self, steps: int) -> None:
        """Go some entries on or back."""
        times = sorted({entry.ms for entry in self.log.entries})
        if not times:
            return
        place = sum(1 for ms in times if ms <= self._now.at) - 1
        self.seek(float(times[min(max(0, place + steps), len(times) - 1)]))

    def look_at(self, reading: int | None, at: float | None = None) -> None:
        """Look at a stated reading, at the moment (ms) when it was stated if that is known."""
        moment = self._now.at if at is None else at
        self._show(replace(self._now, at=moment, reading=reading, runs=False))

    def cover(self, covered: bool) -> None:
        """Lay truth and reasons over the picture, or take them off."""
        self._show(replace(self._now, covered=covered))

    def _go_on(self) -> None:
        at = time.perf_counter() * 1000.0 - self._began
        ended = at >= self.log.duration
        self._show(replace(self._now, at=min(at, float(self.log.duration)), runs=not ended))


def event_word(event: str) -> str:
    """What a hand did, as a word."""
    known = (
        ("pick", translate("Replay", "takes a leaf")),
        ("place", translate("Replay", "sets it down")),
        ("grab", translate("Replay", "lays a hand on it")),
        ("drag", translate("Replay", "drags")),
        ("release", translate("Replay", "lets go")),
        ("nudge", translate("Replay", "moves it a little")),
        ("turn over", translate("Replay", "turns it over")),
        ("turn", translate("Replay", "turns it")),
        ("press home", translate("Replay", "presses home")),
        ("swap ends", translate("Replay", "swaps ends")),
        ("put back", translate("Replay", "puts it back")),
        ("clean", translate("Replay", "cleans the toes")),
        ("undo", translate("Replay", "takes a step back")),
        ("state", translate("Replay", "states a reading")),
        ("take back", translate("Replay", "takes a reading back")),
        ("call", translate("Replay", "puts the call on record")),
    )
    return next((word for start, word in known if event.startswith(start)), event)


class Scrubber(QSlider):
    """A slider over time; its arrow keys go from one event to the next."""

    stepped = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and Right, and Down and Up, are one event back and one on."""
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Left, Qt.Key.Key_Down):
            self.stepped.emit(-1)
        elif key in (Qt.Key.Key_Right, Qt.Key.Key_Up):
            self.stepped.emit(1)
        else:
            super().keyPressEvent(event)


class ReplayPanel(QWidget):
    """Play, scrub, and lay the truth over the picture or take it off."""

    def __init__(self, player: Player, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._player = player
        box = QVBoxLayout(self)
        box.setContentsMargins(18, 12, 18, 14)
        box.setSpacing(10)
        box.addStretch(1)
        head = QHBoxLayout()
        title = QLabel(self.tr("Your handling"))
        title.setProperty("tone", "heading")
        head.addWidget(title)
        self._event = QLabel()
        self._event.setProperty("tone", "quiet")
        head.addSpacing(8)
        head.addWidget(self._event)
        head.addStretch(1)
        self.cover = QPushButton(self.tr("Truth and reasons  T"))
        self.cover.setProperty("kind", "segment")
        self.cover.setCheckable(True)
        self.cover.setAccessibleName(self.tr("Show truth and reasons over the picture"))
        self.cover.clicked.connect(player.cover)
        head.addWidget(self.cover)
        box.addLayout(head)
        row = QHBoxLayout()
        row.setSpacing(12)
        self.play = QPushButton()
        self.play.setProperty("kind", "segment")
        self.play.setMinimumSize(120, 36)
        self.play.clicked.connect(player.play)
        row.addWidget(self.play)
        self.scrubber = Scrubber(Qt.Orientation.Horizontal)
        self.scrubber.stepped.connect(player.step)
        self.scrubber.setMinimumHeight(28)
        self.scrubber.setAccessibleName(self.tr("Moment of the handling"))
        self.scrubber.valueChanged.connect(lambda value: player.seek(float(value)))
        row.addWidget(self.scrubber, 1)
        self._time = QLabel()
        self._time.setMinimumWidth(96)
        self._time.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self._time)
        box.addLayout(row)
        hint = QLabel(
            self.tr("Recorded as it happened; nothing is smoothed. Arrow keys go step by step.")
        )
        hint.setProperty("tone", "gloss")
        box.addWidget(hint)
        box.addStretch(1)
        for button in (self.play, self.cover):
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def show_playing(self) -> None:
        """Show the moment that is looked at."""
        now, log = self._player.now, self._player.log
        some = bool(log.entries)
        self.play.setEnabled(some)
        self.scrubber.setEnabled(some)
        self.play.setText(self.tr("Pause  Space") if now.runs else self.tr("Play  Space"))
        self.play.setAccessibleName(self.tr("Pause") if now.runs else self.tr("Play"))
        with QSignalBlocker(self.scrubber):
            self.scrubber.setRange(0, max(1, log.duration))
            self.scrubber.setSingleStep(max(1, log.duration // 100))
            self.scrubber.setPageStep(max(1, log.duration // 10))
            self.scrubber.setValue(round(now.at))
        with QSignalBlocker(self.cover):
            self.cover.setChecked(now.covered)
        self._time.setText(
            self.tr("{at} of {all} s").format(
                at=f"{now.at / 1000.0:.1f}", all=f"{log.duration / 1000.0:.1f}"
            )
        )
        if now.reading is not None:
            self._event.setText(self.tr("at reading {n}").format(n=now.reading + 1))
        else:
            self._event.setText(event_word(self._player.frame.event) if some else "")
