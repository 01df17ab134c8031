"""A handling of one coupon looked at again: the debrief's picture, and the strip that plays it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.grading import Grade
from exercises.handling import HandlingLog
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import Section
from trainer.bench.picture import unit_of
from trainer.bench.player import Player
from trainer.bench.replay import ReplayPanel
from trainer.bench.review_picture import review_scene, right_words
from trainer.bench.right import RightSeat, mistakes_of, right_seats
from trainer.bench.spoken import parts_of
from trainer.bench.state import BenchState, open_coupon
from trainer.bench.truth import Told, Truth, tell, truth_of
from trainer.canvas.canvas import Canvas
from trainer.look.tokens import LIGHT, Theme
from trainer.settings import Settings

__all__ = ["HandlingView", "state_of"]


def state_of(
    coupon: Coupon, attempt: Attempt, grade: Grade | None, handling: HandlingLog
) -> BenchState:
    """Return the bench as it stood once a call was on record.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 8.0)), Callout(8.0, "leg", "8 mm"))
    >>> state_of(coupon, Attempt("a", None, None, "accept", None), None, HandlingLog()).phase
    'debrief'
    """
    frames = tuple(handling.frames())
    cleaned = bool(frames) and frames[-1].cleaned
    began = open_coupon(coupon)
    return replace(
        began,
        section=coupon.section.cleaned() if cleaned else coupon.section,
        readings=attempt.readings or (),
        face=attempt.face,
        disposition=attempt.disposition,
        sure=attempt.sure,
        fault=attempt.fault,
        size=attempt.size,
        hints=attempt.hints or 0,
        handling=handling,
        phase="debrief",
        grade=grade,
    )


class HandlingView(QFrame):
    """The picture and the strip below it.

    Keys are the debrief's: Space plays, arrows step, T takes the truth off, N is the next mistake,
    H lays the right handling over it.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.player = Player(self)
        self.canvas = Canvas()
        self.canvas.setMinimumSize(220, 140)
        self.canvas.setAccessibleName(self.tr("The weld, and the leaf as it was held"))
        self.replay = ReplayPanel(self.player)
        column = QVBoxLayout(self)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        column.addWidget(self.canvas, 1)
        column.addWidget(self.replay)
        self.player.changed.connect(self._show_moment)
        self._state: BenchState | None = None
        self._truth: Truth | None = None
        self._told: tuple[Told, ...] = ()
        self._right: tuple[RightSeat, ...] = ()
        self._settings, self._theme = Settings(), LIGHT
        self.setFocusProxy(self.canvas)

    def show_state(self, state: BenchState | None, settings: Settings, theme: Theme) -> None:
        """Show a handling, at its end; or, with None, nothing."""
        self._settings, self._theme = settings, theme
        self.player.reduced_motion = theme.reduced_motion
        fresh = state is not self._state
        self._state = state
        self.canvas.setVisible(state is not None)
        self.replay.setVisible(state is not None)
        if state is None:
            self.player.stop()
            return
        if fresh:
            self._truth, self._told = truth_of(state.coupon.section), tell(state)
            self._right = right_seats(state.coupon)
            self.replay.picture.setVisible(state.coupon.backdrop is not None)
            placed = state.coupon.task == "find the fault"
            self.replay.show_handled(not placed, self.tr("The handling"))
            self.replay.show_right(tuple(right_words(seat) for seat in self._right))
            self.player.load(state.handling)
            self.canvas.fit()
        if state.grade is not None:
            mistakes = mistakes_of(state.grade, state.readings, state.handling)
            self.replay.show_mistakes(tuple(one.ms for one in mistakes), theme.role("fault"))
        self._show_moment()

    def look_at(self, reading: int | None) -> None:
        """Look at a stated reading."""
        self.player.look_at(reading)

    def stop(self) -> None:
        """Play no further."""
        self.player.stop()

    def _show_moment(self) -> None:
        state, truth = self._state, self._truth
        if state is None or truth is None:
            return
        now = self.player.now
        section, leaf, pose = self._moment(state)
        self.replay.show_playing()
        right = self._right[now.right] if now.right is not None else None
        scene = review_scene(
            state, section, leaf, pose, truth, self._told, self._settings, self._theme,
            covered=now.covered, pictured=now.pictured, right=right,
        )  # fmt: skip
        unit = unit_of(state.coupon, self._settings)
        self.canvas.set_scene(replace(scene, parts=parts_of(section, leaf, pose, None, unit)))

    def _moment(self, state: BenchState) -> tuple[Section, Leaf | None, Pose | None]:
        """Section, leaf and pose at the moment that is looked at."""
        reading = self.player.now.reading
        if state.coupon.task == "find the fault":
            return state.section, state.leaf, state.pose
        if reading is not None and reading < len(self._told):
            told = self._told[reading]
            return state.section, told.leaf, told.pose
        if not self.player.log.entries:
            return state.section, None, None
        frame = self.player.frame
        section = state.coupon.section.cleaned() if frame.cleaned else state.coupon.section
        if frame.leaf is None:
            return section, None, None
        return section, frame.leaf.worn(state.coupon.leaf_wear), frame.pose

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The keys of the debrief."""
        player = self.player
        single = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        acts = {
            Qt.Key.Key_Space: player.play,
            Qt.Key.Key_Left: lambda: player.step(-1, single=single),
            Qt.Key.Key_Right: lambda: player.step(1, single=single),
            Qt.Key.Key_Comma: lambda: player.change_speed(-1),
            Qt.Key.Key_Period: lambda: player.change_speed(1),
            Qt.Key.Key_S: lambda: player.skip(not player.now.skips),
            Qt.Key.Key_Home: lambda: player.seek(0.0),
            Qt.Key.Key_End: lambda: player.seek(float(player.log.duration)),
            Qt.Key.Key_T: lambda: player.cover(not player.now.covered),
            Qt.Key.Key_P: lambda: player.picture(not player.now.pictured),
            Qt.Key.Key_N: self.replay.next_mistake,
            Qt.Key.Key_H: self.replay.next_right,
        }
        act = acts.get(Qt.Key(event.key()))
        if act is None or self._state is None:
            super().keyPressEvent(event)
        else:
            act()
