"""The strip that shows the handling again: what was done, when, how fast it plays."""

from __future__ import annotations

from PySide6.QtCore import QLocale, QPointF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from trainer.bench.player import SPEEDS, Player
from trainer.bench.seeker import SeekSlider
from trainer.bench.translation import translate
from trainer.bench.worded import toned

__all__ = ["ReplayPanel", "Scrubber", "event_word"]


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
        ("guided", translate("Replay", "follows the guide")),
        ("call", translate("Replay", "puts the call on record")),
    )
    return next((word for start, word in known if event.startswith(start)), event)


class Scrubber(SeekSlider):
    """A slider over time; its arrow keys go from one gesture to the next, as ticks show them.

    Signals
    -------
    stepped
        How many gestures on or back; and whether single pictures are meant instead.
    """

    stepped = Signal(int, bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ticks: tuple[tuple[int, bool], ...] = ()
        self._mistakes: tuple[int, ...] = ()
        self._fault = QColor()

    def show_mistakes(self, moments: tuple[int, ...], colour: str) -> None:
        """Mark the moments (ms) at which something went wrong, with a wedge above the slider."""
        if (moments, QColor(colour)) != (self._mistakes, self._fault):
            self._mistakes, self._fault = moments, QColor(colour)
            self.update()

    def show_ticks(self, ticks: tuple[tuple[int, bool], ...]) -> None:
        """Mark moments (ms); those of readings more than others."""
        if ticks != self._ticks:
            self._ticks = ticks
            self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and Right, and Down and Up, are one step back and one on."""
        key = Qt.Key(event.key())
        single = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if key in (Qt.Key.Key_Left, Qt.Key.Key_Down):
            self.stepped.emit(-1, single)
        elif key in (Qt.Key.Key_Right, Qt.Key.Key_Up):
            self.stepped.emit(1, single)
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            # They turn to another coupon, here as everywhere.
            event.ignore()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The slider, and a tick below it for every gesture."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = self.palette().color(QPalette.ColorRole.WindowText)
        foot = float(self.height())
        for ms, reading in self._ticks:
            x = self.place_of(ms)
            painter.setPen(QPen(ink, 2.0 if reading else 1.0))
            painter.drawLine(QPointF(x, foot - (8.0 if reading else 4.0)), QPointF(x, foot))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._fault)
        for ms in self._mistakes:
            x = self.place_of(ms)
            painter.drawPolygon([QPointF(x - 5.0, 0.0), QPointF(x + 5.0, 0.0), QPointF(x, 9.0)])
        painter.end()


class ReplayPanel(QWidget):
    """Play, scrub, and lay the truth over the picture or take it off."""

    def __init__(self, player: Player, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._player = player
        self.right: list[QPushButton] = []
        self._mistakes: tuple[int, ...] = ()
        box = QVBoxLayout(self)
        box.setContentsMargins(18, 10, 18, 10)
        box.setSpacing(8)
        box.addStretch(1)
        box.addLayout(self._head())
        box.addLayout(self._line())
        box.addLayout(self._pace())
        box.addLayout(self._held_right())
        box.addStretch(1)

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        self._title = toned(self.tr("Your handling"), "heading")
        head.addWidget(self._title)
        self._event = toned("", "quiet")
        head.addSpacing(8)
        head.addWidget(self._event)
        head.addStretch(1)
        self.picture = self._switch(
            self.tr("Photo  P"), self.tr("Show the picture that the section was taken from")
        )
        self.picture.clicked.connect(self._player.picture)
        head.addWidget(self.picture)
        self.cover = self._switch(
            self.tr("Truth and reasons  T"), self.tr("Show truth and reasons over the picture")
        )
        self.cover.clicked.connect(self._player.cover)
        head.addWidget(self.cover)
        return head

    def _line(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(12)
        self.play = self._switch("", self.tr("Play"))
        self.play.setCheckable(False)
        self.play.setMinimumSize(120, 36)
        self.play.clicked.connect(self._player.play)
        row.addWidget(self.play)
        self.scrubber = Scrubber()
        self.scrubber.stepped.connect(lambda steps, single: self._player.step(steps, single=single))
        self.scrubber.setMinimumHeight(36)
        self.scrubber.setAccessibleName(self.tr("Moment of the handling"))
        self.scrubber.setToolTip(
            self.tr("Click or drag to a moment; arrow keys go step by step, with Shift by pictures")
        )
        self.scrubber.valueChanged.connect(lambda value: self._player.seek(float(value)))
        row.addWidget(self.scrubber, 1)
        self._time = QLabel()
        self._time.setMinimumWidth(96)
        self._time.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self._time)
        return row

    def _pace(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(4)
        pace = toned(self.tr("Pace"), "quiet")
        row.addWidget(pace)
        row.addSpacing(4)
        self.speeds: dict[float, QPushButton] = {}
        for speed in SPEEDS:
            said = QLocale().toString(speed, "g", 2)
            button = self._switch(f"{said}\u00d7", self.tr("Pace {n} times").format(n=said))
            button.setToolTip(self.tr("Slower  ,   faster  ."))
            button.clicked.connect(lambda _=False, speed=speed: self._player.go_at(speed))
            self.speeds[speed] = button
            row.addWidget(button)
        row.addSpacing(12)
        self.skips = self._switch(self.tr("Skip pauses  S"), self.tr("Skip the pauses"))
        self.skips.clicked.connect(self._player.skip)
        row.addWidget(self.skips)
        row.addSpacing(12)
        self.mistake = self._switch(self.tr("Mistake  N"), self.tr("Go to the next mistake"))
        self.mistake.setCheckable(False)
        self.mistake.setToolTip(self.tr("Wedges over the line mark where something went wrong"))
        self.mistake.clicked.connect(self.next_mistake)
        row.addWidget(self.mistake)
        row.addStretch(1)
        happened = toned(self.tr("As it happened"), "gloss")
        row.addWidget(happened)
        self._transport: tuple[QWidget, ...] = (
            self.play, self.scrubber, self._time, pace, *self.speeds.values(), self.skips,
            self.mistake, happened, self._event,
        )  # fmt: skip
        return row

    def _held_right(self) -> QHBoxLayout:
        """A line of its own: a coupon can have five seats."""
        row = QHBoxLayout()
        row.setSpacing(4)
        self._right_title = toned(self.tr("Held right  H"), "quiet")
        row.addWidget(self._right_title)
        row.addSpacing(4)
        self._right_row = QHBoxLayout()
        self._right_row.setSpacing(4)
        row.addLayout(self._right_row)
        row.addStretch(1)
        return row

    def show_handled(self, handled: bool, title: str = "") -> None:
        """Offer the replay of a handling; or not, where somebody else had placed the leaf.

        Parameters
        ----------
        handled
            Whether there is a handling.
        title
            What it is called; the looker's own if this is empty.
        """
        yours = title or self.tr("Your handling")
        self._title.setText(yours if handled else self.tr("Somebody else's leaf, as it lay"))
        for widget in self._transport:
            widget.setVisible(handled)

    def show_right(self, seats: tuple[str, ...]) -> None:
        """Name the seats of the right handling, each to be laid over the picture."""
        for button in self.right:
            self._right_row.removeWidget(button)
            button.deleteLater()
        self.right = []
        for at, words in enumerate(seats):
            said = self.tr("Lay the right handling over the picture: {seat}").format(seat=words)
            button = self._switch(words, said)
            button.setToolTip(said)
            button.clicked.connect(
                lambda checked=False, at=at: self._player.hold_right(at if checked else None)
            )
            self._right_row.addWidget(button)
            self.right.append(button)
        self._right_title.setVisible(bool(seats))

    def next_right(self) -> None:
        """Lay the next seat of the right handling over the picture; after the last, none."""
        now = self._player.now.right
        following = 0 if now is None else now + 1
        self._player.hold_right(following if following < len(self.right) else None)

    def show_mistakes(self, moments: tuple[int, ...], colour: str) -> None:
        """Mark where something went wrong."""
        self._mistakes = moments
        self.scrubber.show_mistakes(moments, colour)
        self.mistake.setEnabled(bool(moments))

    def next_mistake(self) -> None:
        """Go to the next moment at which something went wrong; after the last, to the first."""
        if self._mistakes:
            at = self._player.now.at
            later = [ms for ms in self._mistakes if ms > at + 0.5]
            self._player.go_to(float(later[0] if later else self._mistakes[0]))

    def _switch(self, words: str, said: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setCheckable(True)
        button.setAccessibleName(said)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        return button

    def stops(self) -> tuple[QWidget, ...]:
        """What Tab stops at, in order."""
        return (
            self.play,
            self.scrubber,
            *self.speeds.values(),
            self.skips,
            self.mistake,
            *self.right,
            self.picture,
            self.cover,
        )

    def show_playing(self) -> None:
        """Show the moment that is looked at."""
        now, log = self._player.now, self._player.log
        some = bool(log.entries)
        for widget in (self.play, self.scrubber, self.skips, *self.speeds.values()):
            widget.setEnabled(some)
        self.play.setText(self.tr("Pause  Space") if now.runs else self.tr("Play  Space"))
        self.play.setAccessibleName(self.tr("Pause") if now.runs else self.tr("Play"))
        with QSignalBlocker(self.scrubber):
            self.scrubber.setRange(0, max(1, log.duration))
            self.scrubber.setValue(round(now.at))
        self.scrubber.show_ticks(self._ticks())
        for button, checked in (
            (self.cover, now.covered),
            (self.picture, now.pictured),
            (self.skips, now.skips),
            *((button, at == now.right) for at, button in enumerate(self.right)),
            *((button, speed == now.speed) for speed, button in self.speeds.items()),
        ):
            with QSignalBlocker(button):
                button.setChecked(checked)
        seconds = QLocale()
        self._time.setText(
            self.tr("{at} of {all} s").format(
                at=seconds.toString(now.at / 1000.0, "f", 1),
                all=seconds.toString(log.duration / 1000.0, "f", 1),
            )
        )
        if now.reading is not None:
            self._event.setText(self.tr("at reading {n}").format(n=now.reading + 1))
        else:
            self._event.setText(event_word(self._player.frame.event) if some else "")

    def _ticks(self) -> tuple[tuple[int, bool], ...]:
        stated = {e.ms for e in self._player.log.entries if e.event.startswith("state ")}
        return tuple((round(ms), round(ms) in stated) for ms in self._player.stations)
