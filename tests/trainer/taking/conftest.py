"""Somebody who sits a sitting in the real window, by mouse and keys; with a clock of the test's."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QMainWindow, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from exercises.sitting.embedded import chosen_of
from exercises.sitting.plan import Plan
from exercises.sitting.plan_file import plan_bytes
from exercises.text import Text
from exercises.tray import Tray, load_tray
from trainer.assets import asset
from trainer.bench.layout import BenchLayout
from trainer.bench.screen import BenchScreen
from trainer.bench.state import BenchState
from trainer.bench.trying import Trying
from trainer.canvas.canvas import Canvas
from trainer.drill.drilling import Drilling
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.notices import Notice
from trainer.places import Places
from trainer.records import Records
from trainer.sealing.key import Cost, Key
from trainer.sealing.result_files import write_sealed
from trainer.settings import Settings
from trainer.sittings.screen import SittingsScreen
from trainer.taking.page import TakingPage
from trainer.taking.running import Running
from trainer.taking.view import SittingView
from trainer.window import WindowFrame

PASSPHRASE = "three weathered herons"
MINUTE = 60_000


@dataclass
class TestClock:
    """Both clocks of a machine, set by hand."""

    __test__ = False

    now: int = 1_764_000_000_000
    ran: int = 5_000

    def wall(self) -> int:
        return self.now

    def awake(self) -> int:
        return self.ran

    def run(self, ms: int) -> None:
        """The machine works for so long."""
        self.now += ms
        self.ran += ms

    def sleep(self, ms: int) -> None:
        """The lid is closed for so long, or the program doesn't run."""
        self.now += ms


def heron() -> Tray:
    return load_tray(asset("trays", "heron-footbridge.tray.json"))


def plan_of(count: int = 4, **changes: object) -> Plan:
    """A sitting of the first coupons of the shipped tray."""
    tray = heron()
    chosen = chosen_of(tray, names={coupon.id for coupon in tray.coupons[:count]})
    plan = Plan("s-1", Text.of("Friday: railings"), (chosen,), minutes=40.0, pass_mark=0.8)
    return replace(plan, **changes)  # type: ignore[arg-type]


def sealed(folder: Path, plan: Plan) -> Path:
    path = folder / "friday.sitting"
    write_sealed(path, "sitting", plan_bytes(plan), Key.made(PASSPHRASE, Cost(log_n=4)))
    return path


@dataclass
class Program:
    """The window with its bench and the page that sittings are taken from."""

    qtbot: QtBot
    folder: Path
    clock: TestClock = field(default_factory=TestClock)

    def start(self) -> None:
        """Start it; what lies in its folder is as it was left."""
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        self.window = QMainWindow()
        self.qtbot.addWidget(self.window)
        bench = BenchLayout(Canvas())
        self.frame = WindowFrame(self.window, Settings(first_start_seen=True), bench)
        self.places = Places(self.folder / "settings.json", self.folder / "data")
        aside = Records(self.folder / "aside.jsonl")
        self.keeping = Keeping(self.folder / "logbook.sqlite3", aside, bring_up_to_date, "Anna")
        self.keeping.open()
        self.bench = BenchScreen(self.frame, bench, heron(), self.keeping)
        Trying(self.frame, self.bench)
        self.drilling = Drilling(self.frame, self.bench, lambda: self.keeping)
        self.frame.add_screen("sittings", "Sittings", self._sittings)
        self.frame.make_screen("sittings")
        self.window.resize(1280, 800)
        self.window.show()
        self.qtbot.waitExposed(self.window)
        self.window.activateWindow()

    def _sittings(self) -> QWidget:
        self.page = TakingPage(
            self.frame, lambda: self.bench, lambda: self.keeping, self.places, self.clock
        )
        # The screen of a test is smaller than its window.
        self.page.rules_step.fill.setChecked(False)
        return SittingsScreen(self.frame, {"take": lambda: self.page})

    def kill(self) -> None:
        """End it as a kill does: nothing is told, the system closes its files."""
        running = self.page.running
        if running is not None:
            running._clock.stop()
            running._soon.stop()
            running.sitting.keeper.journal._file.close()
            self.window.removeEventFilter(running)
        self.keeping.close()
        self.window.hide()

    # Hands

    def key(self, *keys: Qt.Key, ctrl: bool = False, shift: bool = False) -> None:
        none, control = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier
        held = control if ctrl else Qt.KeyboardModifier.ShiftModifier if shift else none
        for key in keys:
            open_dialogs = [d for d in self.frame.dialogs if d.isVisible()]
            window: QWidget = open_dialogs[-1] if open_dialogs else self.window
            QTest.keyClick(window.windowHandle(), key, held)
        self.qtbot.waitUntil(lambda: not self.bench.controller.moving)

    def click(self, widget: QWidget) -> None:
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)

    def button(self, name: str) -> QPushButton:
        """The button that says `name`, or that a screen reader calls so."""
        QCoreApplication.processEvents()
        dialogs = [d for d in self.window.findChildren(Notice) if d.isVisible()]
        for holder in (*reversed(dialogs), self.window):
            for button in holder.findChildren(QPushButton):
                if name in (button.text(), button.accessibleName()) and button.isVisible():
                    return button
        raise LookupError(f"no button {name!r} is to be seen")

    def words(self, holder: QWidget | None = None) -> str:
        """All that can be read, once it has its place."""
        QCoreApplication.processEvents()
        labels = (holder or self.window).findChildren(QLabel)
        return "\n".join(label.text() for label in labels if label.isVisible())

    def dialog(self) -> Notice:
        (found,) = (d for d in self.window.findChildren(Notice) if d.isVisible())
        return found

    # A sitting

    @property
    def running(self) -> Running:
        assert self.page.running is not None
        return self.page.running

    @property
    def view(self) -> SittingView:
        return self.running.view

    @property
    def state(self) -> BenchState:
        return self.bench.controller.state

    def open(self, path: Path, code: str = "k-07") -> None:
        """Lead the page to the rules of a sitting."""
        self.frame.open_tray(path)
        self.say_passphrase()
        self.qtbot.waitUntil(lambda: self.page.state.step == "code")
        QTest.keyClicks(self.page.code_step.line, code)
        self.click(self.button("Go on"))

    def say_passphrase(self, words: str = PASSPHRASE) -> None:
        line = self.page.passphrase_step.line
        line.clear()
        QTest.keyClicks(line, words)
        self.click(self.button("Open"))

    def begin(self, plan: Plan | None = None, code: str = "k-07") -> None:
        """Begin a sitting."""
        self.open(sealed(self.folder, plan or plan_of()), code)
        self.click(self.button("Begin: the clock starts"))
        assert self.page.running is not None

    def call(self, face: Qt.Key = Qt.Key.Key_X, disposition: Qt.Key = Qt.Key.Key_W) -> None:
        """State a whole call of the coupon that lies there."""
        self.bench.canvas.setFocus()
        self.key(Qt.Key.Key_8, Qt.Key.Key_Space, Qt.Key.Key_D, face, disposition)

    def go_on_with_it(self) -> None:
        """After a start: go on with what was left."""
        self.frame.show_screen("sittings")
        self.click(self.button("Go on with it..."))
        self.say_passphrase()
        self.qtbot.waitUntil(lambda: self.page.running is not None)

    def hand_in(self) -> None:
        self.click(self.view.bar.hand_in)
        self.click(self.button("Hand in now"))
        self.wait_for_the_end()

    def wait_for_the_end(self) -> None:
        self.qtbot.waitUntil(lambda: self.page.state.step == "handed in")


@pytest.fixture
def program(qtbot: QtBot, tmp_path: Path) -> Iterator[Program]:
    made = Program(qtbot, tmp_path)
    made.start()
    yield made
    if made.page.running is not None:
        made.kill()
    else:
        made.keeping.close()
        made.window.close()
