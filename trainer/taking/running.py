"""A sitting that runs: the bench is lent to it, every call is kept, the time is counted.

A call is put into the sitting's journal soon after it is stated, and in any case before another
coupon is laid out. Nothing is graded here: until all is handed in nothing depends on the truth.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Final, Literal

from PySide6.QtCore import QEvent, QObject, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

from exercises.sitting.plan import Plan
from exercises.sitting.progress import Ended
from exercises.tray import Tray
from trainer.band import Saying
from trainer.bench import words as bench_words
from trainer.bench.controller import BenchController
from trainer.bench.keys import KEYS_UNJUDGED
from trainer.bench.screen import BenchScreen, Course
from trainer.bench.state import BenchState, open_coupon, resumed
from trainer.bench.terms import Terms
from trainer.notices import KeysDialog
from trainer.records import Keeper
from trainer.sealing.journal import JournalError
from trainer.sealing.words import journal_words
from trainer.taking.dialogs import HandInDialog, ProctorDialog
from trainer.taking.drafts import Draft, draft_of, stated_of
from trainer.taking.keys import KEYS
from trainer.taking.sitting import Sitting
from trainer.taking.view import FullWindow, SittingView
from trainer.taking.words import place_words, stop_words
from trainer.window import WindowFrame

__all__ = ["Outcome", "Running", "terms_of"]

Outcome = Literal["ended", "suspended"]

_TICK: Final = 1000
"""ms between two looks at the clocks."""

_SOON: Final = 600
"""ms after which what was stated is kept: a second thought within them is one with the first."""

_OFTEN: Final = 30
"""Looks at the clocks after which the handling is kept too, if there is more of it."""


def terms_of(plan: Plan) -> Terms:
    """Return on what terms coupons lie on the bench in a sitting.

    Examples
    --------
    >>> from exercises.text import Text
    >>> plan = Plan("s-1", Text.of("Yard"), (), helps=frozenset({"loupe"}))
    >>> terms_of(plan)
    Terms(loupe=True, press_home=False, unit_switch=False, notes=False, reference=False)
    """
    return Terms(
        loupe="loupe" in plan.helps,
        press_home="press home" in plan.helps,
        unit_switch="unit switch" in plan.helps,
        notes=False,
        reference=False,
    )


@dataclass(frozen=True)
class _Aside:
    """What lay on the bench before."""

    course: Course
    left: BenchController
    records: Keeper | None
    onward: Callable[[], None] | None


class Running(QObject):
    """Runs one sitting in the whole window.

    Parameters
    ----------
    frame
        Whose window it is.
    bench
        Is lent.
    sitting
        Is run; it goes on where it was left.

    Signals
    -------
    over
        How it came to an end: ``ended`` by handing in or by the time, or ``suspended``. The window
        is as it was before.
    announced
        What a screen reader was told of coupons; never of what a leaf shows.
    """

    over = Signal(str)
    announced = Signal(str)

    def __init__(self, frame: WindowFrame, bench: BenchScreen, sitting: Sitting) -> None:
        super().__init__(frame)
        self._frame, self._bench, self.sitting = frame, bench, sitting
        self._terms = terms_of(sitting.plan)
        tag = bench_words.language()
        self._title = sitting.plan.title.in_language(tag)
        coupons = tuple(question.coupon for question in sitting.questions)
        self._course = Course(Tray(sitting.plan.title, coupons), sitting.at)
        self.view = SittingView(sitting, self._title, frame)
        self._full = FullWindow(frame, self.view, bench.bench)
        self._states: dict[int, tuple[BenchState, float]] = {}
        self._at: int | None = None
        self._aside: _Aside | None = None
        self._ending: Ended | None = None
        self._said: Saying | None = None
        self._dialog: HandInDialog | ProctorDialog | None = None
        self._stated: tuple[object, ...] = ()
        self._ticks = 0
        self._clock = QTimer(self)
        self._clock.setInterval(_TICK)
        self._clock.timeout.connect(self.tick)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_SOON)
        self._soon.timeout.connect(self._keep_here)
        self.view.asked.connect(self.do)
        self.view.map.chosen.connect(self.go_to)

    # What the bench asks of its host

    @property
    def terms(self) -> Terms:
        """On what terms the coupons lie there."""
        return self._terms

    @property
    def record_word(self) -> str:
        """What the button says that goes on."""
        last = self._at == self.sitting.count - 1
        return self.tr("Look over, and hand in...") if last else self.tr("Next coupon")

    def record(self) -> None:
        """Keep the call and go on to the next coupon; after the last look over all of them."""
        if self._at is not None and self._at + 1 < self.sitting.count:
            self.go_to(self._at + 1)
        else:
            self.ask_hand_in()

    def go_to(self, index: int) -> None:
        """Lay another coupon out, once all of this one is on the disk."""
        if self._ending is not None or index == self._at:
            self._bench.canvas.setFocus()
            return
        if not 0 <= index < self.sitting.count:
            self._bench.saying.say(self.tr("There is no other coupon that way."))
            return
        if self._keep_here():
            self._lay_out(index)

    # Beginning and end

    def begin(self) -> None:
        """Take the window, and lay out the coupon where the sitting is."""
        bench = self._bench
        self._frame.bench_lent.emit()
        left = BenchController(bench.controller.state.coupon)
        left.go_on_from(bench.controller)
        self._aside = _Aside(bench.course, left, bench.records, bench.onward)
        bench.records, bench.onward, bench.host = None, None, self
        self._full.take(self._title)
        self._frame.discreet = True
        self._frame.window.installEventFilter(self)
        self._frame.ending.connect(self.suspend)
        bench.controller.changed.connect(self._see_change)
        if self.sitting.progress.ended is not None:
            # It had ended, and only its result was not written.
            self._leave("ended")
            return
        self._clock.start()
        self._lay_out(self.sitting.at)
        self.tick()

    def fill_screen(self) -> None:
        """Leave nothing of the desktop to be seen; the window is as it was before at the end."""
        self._full.fill_screen()

    def welcome(self, words: str) -> None:
        """Say what the sitting was interrupted by, quietly."""
        if words and self._aside is not None:
            self.view.band.say(Saying(words))

    def _leave(self, outcome: Outcome) -> None:
        """Give bench and window back as they were."""
        aside, self._aside = self._aside, None
        if aside is None:
            return
        self._clock.stop()
        self._soon.stop()
        self._close_dialog()
        bench = self._bench
        bench.controller.changed.disconnect(self._see_change)
        self._frame.window.removeEventFilter(self)
        self._frame.ending.disconnect(self.suspend)
        self._full.give_back()
        self._frame.discreet = False
        bench.bench.setEnabled(True)
        bench.host, bench.records = None, aside.records
        bench.open_tray(aside.course.tray)
        bench.controller.go_on_from(aside.left)
        bench.go_to(aside.course.index)
        bench.onward = aside.onward
        self.over.emit(outcome)

    def _lay_out(self, index: int) -> None:
        try:
            self.sitting.show(index)
        except JournalError as error:
            self._say_trouble(error)
            return
        controller = self._bench.controller
        now = controller.now()
        if self._at is not None:
            self._states[self._at] = (controller.state, now)
        kept, left = self._states.get(index, (None, now))
        if kept is None:
            kept = self.sitting.state(index, now)
        state = kept or open_coupon(self.sitting.questions[index].coupon)
        self._at = index
        self._course = self._course.moved(index)
        self._stated = stated_of(state)
        self._bench.lay_out(self._course, resumed(state, left, now))
        self._show_places()
        self._announce()

    def _announce(self) -> None:
        if self._at is None:
            return
        words = place_words(self.sitting.places[self._at])
        self.announced.emit(words)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._bench.canvas, words))

    # What is done in it

    def do(self, name: str) -> None:
        """Do what a key or a button of the sitting asks for."""
        if self._ending is not None or self._at is None:
            return
        at = self._at
        asked: dict[str, Callable[[], object]] = {
            "before": lambda: self.go_to(at - 1),
            "after": lambda: self.go_to(at + 1),
            "flag": self._flag,
            "map": self.view.map.take_focus,
            "time": self.view.bar.time.hide_or_show,
            "hand in": self.ask_hand_in,
            "leave": self.ask_leave,
            "full screen": self._full.switch_full_screen,
            "keys": self._show_keys,
        }
        asked[name]()

    def _show_keys(self) -> None:
        """Show the keys of a sitting, and of the bench those that there are in this one."""
        bench = self.tr("Bench"), KEYS_UNJUDGED.groups(self._terms.refuses)
        sheet = (self.tr("This sitting"), KEYS.groups()), bench
        self._frame.show_dialog(KeysDialog(sheet, self._frame.window))

    def _flag(self) -> None:
        if self._at is None:
            return
        try:
            self.sitting.flag(self._at, on=self._at not in self.sitting.progress.flagged)
        except JournalError as error:
            self._say_trouble(error)
        self._show_places()

    def ask_hand_in(self) -> None:
        """Show what is unanswered or marked, and ask whether all is to be handed in."""
        if self._ending is not None or not self._keep_here():
            return
        dialog = HandInDialog(self.sitting.places, self._frame.window)
        dialog.place_asked.connect(self.go_to)
        dialog.handed_in.connect(lambda: self._end("finished"))
        self._show_dialog(dialog)

    def ask_leave(self) -> None:
        """Ask the proctor whether the sitting may be left, and how."""
        if self._ending is not None or not self._keep_here():
            return
        dialog = ProctorDialog(self.sitting.keeper.journal.key, self._frame.window)
        dialog.suspended.connect(self.suspend)
        dialog.ended.connect(lambda: self._end("finished"))
        self._show_dialog(dialog)

    def _show_dialog(self, dialog: HandInDialog | ProctorDialog) -> None:
        self._close_dialog()
        self._dialog = dialog
        dialog.finished.connect(lambda _: self._forget(dialog))
        self._frame.show_dialog(dialog)

    def _forget(self, dialog: HandInDialog | ProctorDialog) -> None:
        if self._dialog is dialog:
            self._dialog = None
            self._bench.canvas.setFocus()

    def _close_dialog(self) -> None:
        if self._dialog is not None:
            self._dialog.reject()

    def suspend(self) -> bool:
        """Let the sitting be gone on with later; return whether all of it is on the disk."""
        if not self._keep_here():
            return False
        # If not even this goes in, all but the last seconds of time is there, and every call.
        with suppress(JournalError):
            self.sitting.keeper.leave()
        self._leave("suspended")
        return True

    # Keeping

    def _see_change(self) -> None:
        """What was stated is kept soon; the handling alone waits until the coupon is left."""
        if self._at is None or self._ending is not None:
            return
        stated = stated_of(self._bench.controller.state)
        if stated != self._stated:
            self._stated = stated
            self._soon.start()

    def _draft(self) -> Draft:
        controller = self._bench.controller
        return draft_of(controller.state, self._bench.zoom, controller.now())

    def _keep_here(self) -> bool:
        """Have all that was done with this coupon on the disk; say so if that can't be."""
        self._soon.stop()
        if self._at is None or self._aside is None:
            return True
        try:
            self.sitting.keep(self._at, self._draft())
        except JournalError as error:
            self._say_trouble(error)
            return False
        self._unsay_trouble()
        self._show_places()
        return True

    def tick(self) -> None:
        """Look at the clocks; the time that is up ends it."""
        if self._ending is not None:
            self._end(self._ending)
            return
        stops = len(self.sitting.progress.interruptions)
        try:
            left = self.sitting.keeper.tick()
        except JournalError as error:
            left = self.sitting.left_ms
            self._say_trouble(error)
        else:
            self._ticks += 1
            if self._said is not None or self._ticks % _OFTEN == 0:
                self._keep_here()
        for stop in self.sitting.progress.interruptions[stops:]:
            self.view.band.say(Saying(stop_words(stop)))
        self.view.bar.time.show_left(left)
        if left <= 0:
            self._end("time up")

    def _end(self, ended: Ended) -> None:
        """End it; a disk that takes nothing is asked again until it does."""
        first = self._ending is None
        self._ending = ended
        if first:
            self._close_dialog()
            self._bench.bench.setEnabled(False)
            self._at_end()
        try:
            self.sitting.finish(ended)
        except JournalError as error:
            self._say_trouble(error)
            return
        self._unsay_trouble()
        self._leave("ended")

    def _at_end(self) -> None:
        """Keep the last call: it was stated in time, even if the disk won't have it."""
        if self._at is None:
            return
        self._bench.controller.release()
        draft = self._draft()
        try:
            self.sitting.keep(self._at, draft)
        except JournalError:
            self.sitting.hold(self._at, draft)

    # What is shown

    def _show_places(self) -> None:
        if self._at is None:
            return
        places = self.sitting.places
        self.view.map.show_places(places)
        self.view.bar.show_place(places[self._at], self.sitting.count)

    def _say_trouble(self, error: JournalError) -> None:
        """Say that the disk takes nothing; what was stated is still on the bench."""
        if self._said is not None:
            return
        what, then = journal_words(error)
        words = self.tr(
            "{what}. {then} Your call is still on the bench; the next coupon waits until it is "
            "kept."
        ).format(what=what, then=then)
        retry = (self.tr("Try again"), self._try_again)
        self._said = Saying(words, (retry,), closable=False)
        self.view.band.say(self._said, first=True)

    def _try_again(self) -> None:
        self._said = None
        self.tick() if self._ending is not None else self._keep_here()

    def _unsay_trouble(self) -> None:
        if self._said is not None:
            self.view.band.end(self._said)
            self._said = None

    # The window

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Whoever closes the window needs the proctor; when the system ends, nobody is asked."""
        if event.type() != QEvent.Type.Close or self._aside is None:
            return False
        event.ignore()
        self.ask_leave()
        return True
