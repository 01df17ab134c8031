"""The page that a sitting is taken from: its file, the proctor, the learner, the rules; the end."""

from __future__ import annotations

import platform
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFileDialog, QStackedWidget, QVBoxLayout, QWidget

from exercises.file_faults import FileError
from exercises.sitting.plan import Plan
from trainer.bench import words as bench_words
from trainer.bench.screen import BenchScreen
from trainer.fault_words import fault_rows
from trainer.landing import Landing
from trainer.loading import Loading
from trainer.logbook.keeping import Keeping
from trainer.places import Places
from trainer.sealing.clocks import Clock
from trainer.sealing.journal import JournalError, left
from trainer.sealing.key import SealError
from trainer.sealing.result_files import SUFFIXES
from trainer.sealing.words import journal_words, seal_words
from trainer.taking.damaged import Damaged, damage_question, go_on, take_up
from trainer.taking.handing_in import (
    HandedIn,
    earlier_results,
    hand_in,
    let_go,
    save_copy,
    take_in,
)
from trainer.taking.keys import KEYS
from trainer.taking.opening import Opened, kind_of, open_sitting
from trainer.taking.running import Running
from trainer.taking.sitting import Sitting, journal_of
from trainer.taking.state import Taking, code_trouble, meant_code
from trainer.taking.steps import (
    DoneStep,
    FileStep,
    RulesStep,
    Step,
    centred,
    code_step,
    passphrase_step,
)
from trainer.taking.words import interruption_words, rule_words
from trainer.window import WindowFrame

__all__ = ["TakingPage"]


class TakingPage(QWidget):
    """Leads from a sealed file to a sitting that is handed in.

    Parameters
    ----------
    frame
        Its window is taken while a sitting runs.
    bench
        Gives the bench, which is lent then.
    keeping
        Gives the logbook that results are taken into.
    places
        Where sittings and results lie.
    clock
        What a sitting's time is read from; the system's unless given.

    Signals
    -------
    handed_in
        A result is in the logbook.
    """

    handed_in = Signal()

    def __init__(
        self,
        frame: WindowFrame,
        bench: Callable[[], BenchScreen],
        keeping: Callable[[], Keeping],
        places: Places,
        clock: Clock | None = None,
    ) -> None:
        super().__init__()
        self._frame, self._bench, self._keeping, self._places = frame, bench, keeping, places
        self._clock = clock
        self.state = Taking()
        self.running: Running | None = None
        self._sitting: Sitting | None = None
        self._opening: Loading[Opened | Sitting | Damaged] | None = None
        self._handing: Loading[HandedIn] | None = None
        self._copied = ""
        self.setAccessibleName(self.tr("Take a sitting"))
        self._fill()
        Landing(self, self._first)
        frame.add_keys(self.tr("A sitting"), KEYS.groups)
        self._show()

    def _fill(self) -> None:
        self.file_step = FileStep()
        self.passphrase_step = passphrase_step("", self.tr("The proctor's passphrase"), "")
        self.passphrase_step.forward.setText(self.tr("Open"))
        self.code_step = code_step("", self.tr("The learner's code"), self.tr("Go on"))
        self.rules_step, self.done_step = RulesStep(), DoneStep()
        self._steps: dict[str, Step] = {
            "file": self.file_step,
            "passphrase": self.passphrase_step,
            "code": self.code_step,
            "rules": self.rules_step,
            "handing in": self.done_step,
            "handed in": self.done_step,
        }
        self._pages = QStackedWidget()
        for step in dict.fromkeys(self._steps.values()):
            self._pages.addWidget(centred(step))
            step.went_back.connect(self._go_back)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._pages)
        self.file_step.choose_asked.connect(self._choose)
        self.file_step.unfinished_chosen.connect(self._take_up)
        self.passphrase_step.said.connect(self._open)
        self.code_step.said.connect(self._name)
        self.rules_step.begun.connect(self._begin)
        self.done_step.copy_asked.connect(self._save_copy)
        self.done_step.retried.connect(self._hand_in)
        self.done_step.left.connect(self._leave)

    # What others ask of it

    def open_path(self, path: Path) -> None:
        """Take a file as the sitting to be sat, or say what it is instead."""
        if self.state.busy or self.running is not None:
            return
        self._become(Taking())
        try:
            kind = kind_of(path)
        except FileError as error:
            self._refuse("; ".join(f"{path.name}: {row.wrong}" for row in fault_rows(error)[1]))
        except SealError as error:
            what, then = seal_words(error)
            self._refuse(f"{path.name}: {what}. {then}")
        else:
            if kind == "tray":
                self._refuse(
                    self.tr(
                        "{name} is a tray to practise with, not a sitting. A sitting is made of "
                        "trays on the page Compose."
                    ).format(name=path.name)
                )
                self._offer_tray(path)
            else:
                self._become(Taking().chosen(path))

    def go_on_from(self, other: TakingPage) -> None:
        """Go on with what another page had; a sitting that runs is never left for that."""
        self._become(replace(other.state, busy=False))

    def showEvent(self, event: QShowEvent) -> None:
        """Something may have been left unfinished meanwhile."""
        super().showEvent(event)
        if self.state.step == "file":
            self._list_unfinished()

    # The steps

    def _become(self, state: Taking) -> None:
        before, self.state = self.state, state
        self._show()
        if before.step != state.step and self.isVisible():
            self._steps[state.step].begin()

    def _show(self) -> None:
        state = self.state
        step = self._steps[state.step]
        at = list(dict.fromkeys(self._steps.values())).index(step)
        self._pages.setCurrentIndex(at)
        if state.step == "file":
            self.file_step.say_trouble("")
            self._list_unfinished()
        elif state.step == "passphrase":
            self._show_passphrase()
        elif state.step == "code" and state.opened is not None:
            self._head(self.code_step, self._title(state.opened.plan))
            self.code_step.say_trouble("")
            self.code_step.say(
                self.tr("Your instructor gave you a code. It stands in the result; no name does.")
            )
        elif state.step == "rules" and state.opened is not None:
            plan = state.opened.plan
            title = f"{self._title(plan)} \u00b7 {state.code}"
            self.rules_step.show_rules(title, rule_words(plan, state.code))
            self._warn_of_earlier(plan)
        elif state.step == "handing in":
            self.done_step.show_busy()
        elif state.handed is not None:
            self.done_step.show_handed(state.handed, self._copied)

    def _first(self) -> QWidget:
        """Where the keys are wanted, step by step."""
        return {
            "file": self.file_step.first,
            "passphrase": self.passphrase_step.line,
            "code": self.code_step.line,
            "rules": self.rules_step.start,
        }.get(self.state.step, self.done_step.copy)

    def _show_passphrase(self) -> None:
        step, state = self.passphrase_step, self.state
        if state.unfinished:
            self._head(step, self.tr("Go on with a sitting"))
            step.say(
                self.tr(
                    "The proctor's passphrase opens it again, at the coupon where it was. The "
                    "clock runs from then on; the time in between is not counted, and stands in "
                    "the result."
                )
            )
        elif state.file is not None:
            self._head(step, state.file.name)
            step.say(self.tr("The proctor types the passphrase that this sitting was sealed with."))
        step.show_busy(self.tr("Opening\u2026") if state.busy else "")

    def _head(self, step: Step, title: str) -> None:
        step.heading.setText(title)
        step.setAccessibleName(title)

    def _title(self, plan: Plan) -> str:
        return plan.title.in_language(bench_words.language())

    def _go_back(self) -> None:
        self.passphrase_step.line.clear()
        self._become(self.state.back())

    def _refuse(self, words: str) -> None:
        self.file_step.say_trouble(words)

    def _offer_tray(self, path: Path) -> None:
        button = self.file_step.other
        button.clicked.disconnect() if button.property("offers") else None
        button.setProperty("offers", True)
        button.clicked.connect(lambda: self._frame.tray_asked.emit(path))
        self.file_step.offer(self.tr("Open it on the bench"))

    # A file

    def _choose(self) -> None:
        settings = self._frame.settings
        name, _ = QFileDialog.getOpenFileName(
            self._frame.window,
            self.tr("Choose a sitting"),
            settings.folder("sittings"),
            self.tr("Sittings (*{suffix});;All files (*)").format(suffix=SUFFIXES["sitting"]),
        )
        if name:
            self._frame.change_settings(settings.with_folder("sittings", Path(name).parent))
            self.open_path(Path(name))

    def _list_unfinished(self) -> None:
        found = []
        for path in left(self._places.sittings):
            try:
                last = datetime.fromtimestamp(path.stat().st_mtime, UTC)
            except OSError:
                continue
            found.append((path, last))
        self.file_step.show_unfinished(found)

    def _take_up(self, path: Path) -> None:
        self._become(Taking().chosen(path, unfinished=True))

    # The passphrase

    def _open(self, passphrase: str) -> None:
        """Open the file, or the journal, beside the window: that takes a moment."""
        state = self.state
        if state.busy or state.file is None:
            return
        if not passphrase:
            self.passphrase_step.say_trouble(self.tr("Type the passphrase first."))
            return
        self.passphrase_step.line.clear()
        reads = partial(take_up, clock=self._clock) if state.unfinished else open_sitting
        self._load(partial(reads, state.file, passphrase))

    def _load(self, work: Callable[[], Opened | Sitting | Damaged]) -> None:
        self._become(replace(self.state, busy=True))
        self._opening = Loading(work)
        self._opening.over.connect(self._opened)
        self._opening.start()

    def _opened(self) -> None:
        opening, self._opening = self._opening, None
        if opening is None:
            return
        self._become(replace(self.state, busy=False))
        try:
            opened = opening.result
        except SealError as error:
            self._say_shut(". ".join(seal_words(error)))
        except JournalError as error:
            self._say_shut(". ".join(journal_words(error)))
        except FileError:
            # Not what is wrong with it: that would tell of its coupons.
            self._say_shut(
                self.tr(
                    "What was sealed is no sitting that can be sat. Its instructor sees why on the "
                    "page Compose."
                )
            )
        except ValueError:
            self._say_shut(
                self.tr(
                    "Another version of this program began it, and would lay out another paper. "
                    "Go on with that version."
                )
            )
        else:
            if isinstance(opened, Opened):
                self._become(self.state.unsealed(opened))
            else:
                self._resume(opened)

    def _resume(self, found: Sitting | Damaged) -> None:
        if isinstance(found, Sitting):
            self._run(found, resumed=True)
            return
        self.passphrase_step.say_trouble("")
        work = partial(self._load, partial(go_on, found, self._clock))
        self._frame.show_dialog(damage_question(found, work, self._frame.window))

    def _say_shut(self, words: str) -> None:
        step = self.code_step if self.state.step == "code" else self.passphrase_step
        step.say_trouble(words)
        step.begin()

    # The learner

    def _name(self, code: str) -> None:
        code = meant_code(self.state, code)
        trouble = code_trouble(self.state, code)
        if trouble is not None:
            words = {
                "empty": self.tr("Type your code first."),
                "no code": self.tr("That can't be a code: it has signs that can't be seen."),
                "mistyped": self.tr("A sign of it is wrong: see how it was given to you."),
                "not listed": self.tr("This code is not on the list of this sitting."),
            }
            self.code_step.say_trouble(words[trouble])
            self.code_step.begin()
            return
        opened = self.state.opened
        assert opened is not None
        journal = journal_of(self._places.sittings, opened.plan, code)
        if journal.exists():
            self._go_on_with(journal, opened)
            return
        self._become(self.state.named(code))

    def _go_on_with(self, journal: Path, opened: Opened) -> None:
        """Go on where this code has begun this sitting here already: none is begun twice."""
        try:
            found = take_up(journal, opened.key, self._clock)
        except JournalError as error:
            self.code_step.say_trouble(". ".join(journal_words(error)))
        except (SealError, ValueError):
            # Sealed anew meanwhile, with another passphrase or other coupons.
            self.code_step.say_trouble(
                self.tr(
                    "This code has begun this sitting here, from a file that was sealed "
                    "differently. Go on with that one from the first page, with its passphrase."
                )
            )
        else:
            self._resume(found)

    def _warn_of_earlier(self, plan: Plan) -> None:
        title = plan.title.in_language("en")
        if earlier_results(self._places.results, title, self.state.code):
            self.rules_step.say_trouble(
                self.tr(
                    "This code has handed in a sitting of this title at this machine before. If it "
                    "is sat again, both results are kept, and the instructor is told."
                )
            )

    def _begin(self) -> None:
        opened, code = self.state.opened, self.state.code
        if opened is None or self.running is not None:
            return
        try:
            folder, station = self._places.sittings, platform.node()
            sitting = Sitting.begin(
                folder, opened.key, opened.plan, code, station=station, clock=self._clock
            )
        except JournalError as error:
            self.rules_step.say_trouble(". ".join(journal_words(error)))
        else:
            self._run(sitting, resumed=False)

    # Running, and after

    def _run(self, sitting: Sitting, *, resumed: bool) -> None:
        self._sitting = sitting
        self._keeping().shut()
        running = Running(self._frame, self._bench(), sitting)
        running.over.connect(self._after)
        self.running = running
        running.begin()
        if self.running is running and self.rules_step.fill.isChecked():
            running.fill_screen()
        if resumed and self.running is running:
            running.welcome(interruption_words(sitting.progress))

    def _after(self, outcome: str) -> None:
        running, self.running = self.running, None
        if running is not None:
            running.deleteLater()
        if outcome == "suspended":
            self._sitting = None
            self._become(Taking())
            # Once the dialog that asked has given the keys back.
            QTimer.singleShot(0, self.file_step, self.file_step.begin)
        else:
            # Once the window has its frame again.
            self._become(Taking("handing in"))
            QTimer.singleShot(0, self, self._hand_in)

    def _hand_in(self) -> None:
        sitting, folder = self._sitting, self._places.results
        if sitting is None or self._handing is not None:
            return
        self.done_step.show_busy()
        self._handing = Loading(lambda: hand_in(sitting, folder))
        self._handing.over.connect(self._handed)
        self._handing.start()

    def _handed(self) -> None:
        handing, self._handing = self._handing, None
        if handing is None:
            return
        try:
            written = handing.result
        except (OSError, FileError, SealError) as error:
            told = error.strerror if isinstance(error, OSError) else None
            self.done_step.show_failed(told or self.tr("It could not be read back."))
            self.done_step.begin()
            return
        keeping = self._keeping()
        handed = take_in(written, keeping.logbook, str(keeping.trouble or ""))
        if self._sitting is not None:
            let_go(self._sitting)
        self._sitting, self._copied = None, ""
        self._become(Taking("handed in", handed=handed))
        self.done_step.begin()
        if handed.merged is not None:
            self.handed_in.emit()

    def _save_copy(self) -> None:
        handed, settings = self.state.handed, self._frame.settings
        if handed is None:
            return
        start = Path(settings.folder("sittings")) / handed.file.name
        name, _ = QFileDialog.getSaveFileName(
            self._frame.window,
            self.tr("Save a copy of the sealed result"),
            str(start),
            self.tr("Results (*{suffix})").format(suffix=SUFFIXES["result"]),
        )
        if not name:
            return
        self._frame.change_settings(settings.with_folder("sittings", Path(name).parent))
        try:
            save_copy(handed.file, Path(name))
        except OSError as error:
            self._frame.show_notice(
                self.tr("The copy could not be saved"),
                self.tr("{file}: {reason}\n\nThe result itself is safe.").format(
                    file=name, reason=error.strerror or str(error)
                ),
            )
            return
        self._copied = self.tr("A copy was saved as {file}").format(file=name)
        self.done_step.show_handed(handed, self._copied)

    def _leave(self) -> None:
        if self._sitting is not None:
            # Not written yet: it waits as what it is, a sitting that is not handed in.
            self._sitting.keeper.journal.close()
            self._sitting = None
        self._become(Taking())
