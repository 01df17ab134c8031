"""A drill on the bench: coupons laid out one by one, calls taken in, the bench given back after."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import cast

from PySide6.QtCore import QObject

from exercises import drill as drills
from exercises.coupon import Coupon, Disposition
from exercises.learner.line import Belief, believe
from exercises.maker import Recipe, RecipeError
from exercises.text import Text
from exercises.tray import Tray
from trainer.band import Saying
from trainer.bench.controller import BenchController
from trainer.bench.screen import BenchScreen, Course
from trainer.drill.dialog import DrillDialog
from trainer.drill.words import ending_words, progress_words
from trainer.logbook.findings import NEWEST
from trainer.logbook.keeping import Keeping
from trainer.logbook.store import LogbookError
from trainer.logbook.tallies import calls_of
from trainer.notices import Notice
from trainer.records import Entry, Keeper
from trainer.window import WindowFrame

__all__ = ["Drilling", "known_of"]


@dataclass(frozen=True)
class _Aside:
    """What lay on the bench before the drill."""

    course: Course
    left: BenchController
    records: Keeper | None


def known_of(keeping: Keeping, day: str) -> tuple[Belief, int]:
    """Return what a learner's logbook says of them, and how many calls they have made on `day`."""
    if keeping.logbook is None or keeping.learner is None:
        return Belief.broad(), 0
    try:
        tallies = keeping.logbook.tallies(keeping.learner.id, newest_lines=NEWEST)
    except LogbookError:
        return Belief.broad(), 0
    today = sum(t.count for t in tallies if t.kind == "line" and t.day == day)
    # Only sharp enough to begin near the edge: a learner isn't what they were a month ago.
    return believe(calls_of(tallies, newest=24)), today


class Drilling(QObject):
    """Lends the bench to a drill.

    Parameters
    ----------
    frame
        Shows what a drill says.
    bench
        Is lent.
    keeping
        Where calls are kept, and what is known of the learner; asked when a drill begins.
    """

    def __init__(
        self, frame: WindowFrame, bench: BenchScreen, keeping: Callable[[], Keeping]
    ) -> None:
        super().__init__(frame)
        self._frame, self._bench, self._keeping = frame, bench, keeping
        self._aside: _Aside | None = None
        self._saying: Saying | None = None
        self.drill: drills.Drill | None = None
        self._recipe = Recipe(1)
        self._language = frame.settings.language
        frame.tray_asked.connect(lambda _: self._forget())
        frame.trial_asked.connect(lambda *_: self.end(quiet=True))
        frame.bench_lent.connect(lambda: self.end(quiet=True))
        frame.settings_changed.connect(self._see_settings)

    def ask(self) -> None:
        """Ask what the drill is to be about, and begin it."""
        dialog = DrillDialog(self._recipe, self._frame.window)
        dialog.chosen.connect(self.begin)
        self._frame.show_dialog(dialog)

    def begin(self, recipe: Recipe, seed: int | None = None) -> None:
        """Lay the first coupon of a drill out."""
        self.end(quiet=True)
        self._recipe = recipe
        day = datetime.now(UTC).astimezone().date().isoformat()
        known, today = known_of(self._keeping(), day)
        chosen = random.SystemRandom().randrange(1, 1_000_000) if seed is None else seed
        try:
            drill = drills.begin(recipe, chosen, known, today)
        except RecipeError as error:
            self._refuse(error)
            return
        bench = self._bench
        left = BenchController(bench.controller.state.coupon)
        left.go_on_from(bench.controller)
        self._aside = _Aside(bench.course, left, bench.records)
        bench.records = _Counting(bench.records, self)
        self._frame.show_screen("bench")
        self._lay_out(drill)

    def take(self, entry: Entry) -> Entry:
        """Take a call in, and return it as it is to be kept."""
        drill = self.drill
        if drill is None or drill.coupon is None:
            return entry
        first = drill.before_feedback
        stated = entry.attempt.get("disposition")
        self.drill = drills.go_on(drill, cast("Disposition | None", stated))
        return replace(entry, source="drill", before_feedback=first)

    def taken(self, *, first: bool) -> None:
        """A call was taken in and is kept: before any feedback the next coupon comes at once."""
        if first:
            self.go_on()
        else:
            self._say()

    def go_on(self) -> None:
        """Lay the next coupon out, or say what was found if there is enough."""
        drill = self.drill
        if drill is None:
            return
        if drill.coupon is not None:
            self._bench.saying.say(self.tr("Make the call first: the next coupon depends on it."))
            return
        if drills.ended(drill) is not None:
            self.end()
            return
        try:
            self._lay_out(drills.next_coupon(drill))
        except RecipeError as error:
            self._refuse(error)
            self.end()

    def end(self, *, quiet: bool = False) -> None:
        """Give the bench back as it was, and say what was found."""
        drill, aside = self.drill, self._aside
        self._forget()
        if drill is None or aside is None:
            return
        bench = self._bench
        bench.open_tray(aside.course.tray)
        bench.controller.go_on_from(aside.left)
        bench.go_to(aside.course.index)
        if not quiet:
            heading, text = ending_words(
                drill, drills.ended(drill), self._frame.settings.unit or drill.recipe.unit
            )
            notice = Notice(heading, text, self._frame.window)
            notice.finish()
            self._frame.show_dialog(notice)

    def _forget(self) -> None:
        """The drill is over; what lies on the bench stays there."""
        aside, self._aside = self._aside, None
        self.drill = None
        if aside is not None:
            self._bench.records = aside.records
            self._bench.onward = None
        self._unsay()

    def _lay_out(self, drill: drills.Drill) -> None:
        assert drill.coupon is not None
        self.drill = drill
        bench = self._bench
        bench.onward = None
        bench.open_tray(self._tray(drill.coupon))
        bench.onward = self.go_on
        bench.show_state()
        self._say()

    def _tray(self, coupon: Coupon) -> Tray:
        return Tray(Text.of(self.tr("Drill")), (coupon,))

    def _say(self) -> None:
        self._unsay()
        if self.drill is not None:
            end = (self.tr("End the drill"), self.end)
            self._saying = Saying(progress_words(self.drill), (end,), closable=False)
            self._frame.band.say(self._saying, first=True)

    def _unsay(self) -> None:
        if self._saying is not None:
            self._frame.band.end(self._saying)
            self._saying = None

    def _refuse(self, error: RecipeError) -> None:
        notice = Notice(
            self.tr("No such coupon could be made"),
            "\n".join(str(fault) for fault in error.faults), self._frame.window,
        )  # fmt: skip
        notice.finish()
        self._frame.show_dialog(notice)

    def _see_settings(self) -> None:
        """In another language everything is made anew: a drill doesn't outlive that."""
        if self._frame.settings.language != self._language:
            self._language = self._frame.settings.language
            self.end(quiet=True)


class _Counting:
    """Keeps a drill's calls, once the drill has seen them."""

    def __init__(self, keeper: Keeper | None, drilling: Drilling) -> None:
        self._keeper = keeper
        self._drilling = drilling

    def add(self, entry: Entry) -> None:
        """Keep `entry`, or raise `RecordsError`."""
        counted = self._drilling.take(entry)
        try:
            if self._keeper is not None:
                self._keeper.add(counted)
        finally:
            self._drilling.taken(first=counted.before_feedback)
