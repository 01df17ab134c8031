"""The debrief, put together: what is shown once a call is on record."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from exercises.judging import judge
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import Section
from trainer.bench.controller import BenchController
from trainer.bench.debrief_panel import Debrief, DebriefPanel, NextBar
from trainer.bench.layout import BenchLayout
from trainer.bench.picture import unit_of
from trainer.bench.placed_debrief import spoken_findings
from trainer.bench.player import Player
from trainer.bench.replay import ReplayPanel
from trainer.bench.review_picture import review_scene, right_words
from trainer.bench.right import RightSeat, mistakes_of, right_seats
from trainer.bench.spoken import call_words, parts_of, shown_words
from trainer.bench.state import BenchState
from trainer.bench.truth import Told, Truth, tell, truth_of
from trainer.look.tokens import LIGHT, Theme
from trainer.settings import Settings

__all__ = ["Review"]


class Review(QObject):
    """Debrief panel, replay strip, and the picture with the truth over it.

    Signals
    -------
    next_asked, again_asked
        Where to go from here.
    """

    next_asked = Signal()
    again_asked = Signal()

    def __init__(self, bench: BenchLayout, controller: BenchController, parent: QObject) -> None:
        super().__init__(parent)
        self._canvas = bench.canvas
        self._controller = controller
        self.player = Player(self)
        self.player.changed.connect(self._show_moment)
        self.panel = DebriefPanel()
        self.panel.reading_asked.connect(self._look_at)
        self.replay = ReplayPanel(self.player)
        self.bar = NextBar()
        self.bar.next_asked.connect(self.next_asked)
        self.bar.again_asked.connect(self.again_asked)
        bench.side_box.insertWidget(0, self.panel)
        bench.foot_box.addWidget(self.replay)
        bench.pinned_box.addWidget(self.bar)
        self._settings, self._theme = Settings(), LIGHT
        self._truth: Truth | None = None
        self._told: tuple[Told, ...] = ()
        self._right: tuple[RightSeat, ...] = ()
        self._of: BenchState | None = None
        self._worded: tuple[BenchState, str] | None = None

    def stops(self) -> tuple[QWidget, ...]:
        """What Tab stops at in a debrief, in order."""
        return (
            *self.replay.stops(),
            *self.panel.look_ups,
            *self.panel.readings,
            self.bar.again,
            self.bar.next,
        )

    def do(self, name: str, *, shift: bool = False) -> bool:
        """Do what a key asks for in a debrief."""
        player = self.player
        keys: dict[str, Callable[[], object]] = {
            "press home": player.play,
            "move left": lambda: player.step(-1, single=shift),
            "move right": lambda: player.step(1, single=shift),
            "turn left": lambda: player.change_speed(-1),
            "turn right": lambda: player.change_speed(1),
            "sure": lambda: player.skip(not player.now.skips),
            "start": lambda: player.seek(0.0),
            "end": lambda: player.seek(float(player.log.duration)),
            "state touch": lambda: player.cover(not player.now.covered),
            "face flat": lambda: player.picture(not player.now.pictured),
            "state not seated": self.replay.next_mistake,
            "state held off": self.replay.next_right,
            "call refer": self.again_asked.emit,
            "coupon after": self.next_asked.emit,
        }
        if name not in keys:
            return False
        keys[name]()
        return True

    def _look_at(self, reading: int) -> None:
        """Look at a stated reading, at the moment when it was stated."""
        told = self._told[reading] if reading < len(self._told) else None
        moments = [
            float(entry.ms)
            for entry in self.player.log.entries
            if entry.event.startswith("state ")
            and told is not None
            and (entry.x, entry.y, entry.angle, entry.turned)
            == (told.pose.x, told.pose.y, told.pose.angle, told.pose.turned)
        ]
        self.player.look_at(reading, moments[-1] if moments else None)

    def show_state(
        self,
        state: BenchState,
        settings: Settings,
        theme: Theme,
        *,
        last: bool,
        drill: bool = False,
    ) -> None:
        """Show the debrief of a state that has one; else stand aside."""
        debrief = state.phase == "debrief"
        for widget in (self.panel, self.replay, self.bar):
            widget.setVisible(debrief)
        self._settings, self._theme = settings, theme
        self.player.reduced_motion = theme.reduced_motion
        if not debrief:
            self.player.stop()
            self._of = None
            return
        self.bar.show_last(last, drill=drill)
        if self._of is not state:
            self._of = state
            self.replay.picture.setVisible(state.coupon.backdrop is not None)
            self.replay.show_handled(state.coupon.task != "find the fault")
            self._truth, self._told = truth_of(state.coupon.section), tell(state)
            self._right = right_seats(state.coupon)
        unit = unit_of(state.coupon, settings)
        if self._truth is not None and self._worded != (state, unit):
            fresh = self._worded is None or self._worded[0] is not state
            self._worded = (state, unit)
            shown = Debrief(state, judge(state.coupon), self._truth, self._told, self._right)
            self.panel.fill(shown, unit)
            self.replay.show_right(tuple(right_words(seat) for seat in self._right))
            if fresh:
                self.player.load(state.handling)
        if state.grade is not None:
            mistakes = mistakes_of(state.grade, state.readings, state.handling)
            moments = tuple(mistake.ms for mistake in mistakes)
            self.replay.show_mistakes(moments, theme.role("fault"))
        self._show_moment()

    def _show_moment(self) -> None:
        """Show the moment, or the reading, that is looked at."""
        if self._of is None or self._truth is None:
            return
        section, leaf, pose = self._moment(self._of)
        self.panel.show_reading(self.player.now.reading)
        self.replay.show_playing()
        scene = review_scene(
            self._of,
            section,
            leaf,
            pose,
            self._truth,
            self._told,
            self._settings,
            self._theme,
            covered=self.player.now.covered,
            pictured=self.player.now.pictured,
            right=self._held_right,
        )
        told = self._looked_at
        shown = shown_words(told.shown, scene.unit) if told is not None else ""
        parts = parts_of(section, leaf, pose, None, scene.unit, shown)
        self._canvas.set_scene(replace(scene, parts=parts))

    @property
    def _held_right(self) -> RightSeat | None:
        """The seat of the right handling that lies over the picture, if one does."""
        at = self.player.now.right
        return self._right[at] if at is not None and at < len(self._right) else None

    @property
    def _looked_at(self) -> Told | None:
        """The stated reading that is looked at, if one is."""
        at = self.player.now.reading
        return self._told[at] if at is not None and at < len(self._told) else None

    def spoken(self) -> str:
        """What is said of the call on record: its marks, and what each leaf showed."""
        state = self._of
        if state is None or state.grade is None:
            return ""
        unit = unit_of(state.coupon, self._settings)
        said = call_words(state.grade, self._told, unit)
        if state.coupon.task == "find the fault":
            return f"{said} {spoken_findings(state.coupon, unit)}"
        return said

    def _moment(self, state: BenchState) -> tuple[Section, Leaf | None, Pose | None]:
        """Section, leaf and pose at the moment that is looked at."""
        log, told = self.player.log, self._looked_at
        if state.coupon.task == "find the fault":
            # It lies where somebody else has placed it, from first to last.
            return state.section, state.leaf, state.pose
        if told is not None:
            return state.section, told.leaf, told.pose
        if not log.entries:
            return state.section, None, None
        frame = self.player.frame
        whole = state.coupon.section
        section = state.section if frame.cleaned and not state.section.spatter else whole
        if frame.leaf is None:
            return section, None, None
        return section, frame.leaf.worn(state.coupon.leaf_wear), frame.pose
