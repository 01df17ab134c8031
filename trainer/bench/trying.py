"""Trying a coupon on the bench: its calls go on no record, and what lay there comes back after."""

from __future__ import annotations

from dataclasses import dataclass, replace

from PySide6.QtCore import QObject

from exercises.text import Text
from exercises.tray import Tray
from trainer.bench.controller import BenchController
from trainer.bench.screen import BenchScreen, Course
from trainer.open_trays import OpenTray
from trainer.records import Keeper
from trainer.window import WindowFrame

__all__ = ["Trying"]


@dataclass(frozen=True)
class _Aside:
    """What lay on the bench: which coupon of which tray, how it was left, and its records."""

    course: Course
    left: BenchController
    records: Keeper | None


class Trying(QObject):
    """Lends the bench to a screen that makes coupons, or a sitting of them.

    Parameters
    ----------
    frame
        Shows the screens.
    bench
        Is lent.
    """

    def __init__(self, frame: WindowFrame, bench: BenchScreen) -> None:
        super().__init__(frame)
        self._frame, self._bench = frame, bench
        self._aside: _Aside | None = None
        self._borrower = ""
        frame.open_trays["bench"] = lambda: OpenTray(self._own.course.tray, None)
        frame.trial_asked.connect(self.begin)
        frame.screen_shown.connect(self._see)
        frame.tray_asked.connect(self._end)
        frame.bench_lent.connect(self.give_back)
        self._language = frame.settings.language
        frame.settings_changed.connect(self._see_settings)

    @property
    def _own(self) -> _Aside | BenchScreen:
        """What holds the tray that lies there when nothing is on trial."""
        return self._aside or self._bench

    def begin(self, tray: Tray, at: int) -> None:
        """Lay a coupon of another screen's tray out on the bench, and show that."""
        bench = self._bench
        # Asked for by the screen that is shown.
        self._borrower = self._frame.shown_screen
        if self._aside is None:
            left = BenchController(bench.controller.state.coupon)
            left.go_on_from(bench.controller)
            self._aside = _Aside(bench.course, left, bench.records)
        bench.records = None
        title, way = self._words()
        bench.open_tray(replace(tray, title=Text.of(title)))
        bench.go_to(at)
        self._frame.show_screen("bench")
        bench.saying.say(way)

    def _words(self) -> tuple[str, str]:
        """What the tray is called, and the way back."""
        if self._borrower == "sittings":
            return (
                self.tr("On trial, from the sittings"),
                self.tr("On trial: no call is kept. Ctrl+6 leads back to the sitting."),
            )
        return (
            self.tr("On trial, from the coupon shop"),
            self.tr("On trial: no call is kept. Ctrl+4 leads back to the shop."),
        )

    def give_back(self) -> None:
        """Lay out again what lay there, as it was left."""
        aside, self._aside = self._aside, None
        if aside is None:
            return
        bench = self._bench
        bench.records = aside.records
        bench.open_tray(aside.course.tray)
        bench.controller.go_on_from(aside.left)
        bench.go_to(aside.course.index)

    def _see(self, key: str) -> None:
        if key == self._borrower:
            self.give_back()

    def _see_settings(self) -> None:
        """In another language everything is made anew: a trial doesn't outlive that."""
        if self._frame.settings.language != self._language:
            self._language = self._frame.settings.language
            self.give_back()

    def _end(self) -> None:
        """Another tray was opened on the bench: what is called there is kept again."""
        aside, self._aside = self._aside, None
        if aside is not None:
            self._bench.records = aside.records
