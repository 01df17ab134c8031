"""Pictures of a sitting that is taken: what is asked first, the window while it runs, its end."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from exercises.sitting.embedded import chosen_of
from exercises.sitting.plan import Entrant, Plan
from exercises.sitting.plan_file import plan_bytes
from exercises.text import Text
from exercises.tray import load_tray
from tests.measure.stage import Stage
from trainer.assets import asset
from trainer.places import places
from trainer.sealing.key import Cost, Key
from trainer.sealing.result_files import write_sealed
from trainer.sittings.screen import SittingsScreen
from trainer.taking.dialogs import HandInDialog
from trainer.taking.page import TakingPage
from trainer.taking.running import Running

__all__ = [
    "SHOTS",
    "end_sitting",
    "sitting_hand_in",
    "sitting_leave",
]

_PASSPHRASE: Final = "three weathered herons"
_PATIENCE: Final = 60.0
"""Seconds."""

_MORNING: Final = 1_772_440_200
"""When what was left unfinished was last at work, seconds since 1970."""

K = Qt.Key


def page_of(on: Stage) -> TakingPage:
    """The page, shown."""
    end_sitting(on)
    on.frame.show_screen("sittings")
    screen = on.frame.make_screen("sittings")
    assert isinstance(screen, SittingsScreen)
    screen.show_page("take")
    on.settle()
    page = screen.rooms.currentWidget()
    assert isinstance(page, TakingPage)
    return page


def until(there: Callable[[], bool]) -> None:
    """Let the program go on until something is there."""
    patience = time.monotonic() + _PATIENCE
    while not there():
        if time.monotonic() > patience:
            raise TimeoutError("it never came")
        QApplication.processEvents()


def sealed() -> Path:
    """A sitting of twelve coupons, with the loupe alone."""
    tray = load_tray(asset("trays", "heron-footbridge.tray.json"))
    chosen = chosen_of(tray, names={coupon.id for coupon in tray.coupons[:12]})
    plan = Plan(
        "friday",
        Text.of("Friday: railings"),
        (chosen,),
        minutes=40.0,
        helps=frozenset({"loupe"}),
        entrants=(Entrant("k-07", extra=0.25), Entrant("k-08")),
    )
    folder = places().data
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / "friday.sitting"
    write_sealed(path, "sitting", plan_bytes(plan), Key.made(_PASSPHRASE, Cost(log_n=4)))
    return path


def opened(on: Stage) -> TakingPage:
    """The page, at the learner's code."""
    page = page_of(on)
    for left in places().sittings.glob("*"):
        left.unlink()
    page.done_step.left.emit()
    page.open_path(sealed())
    page.passphrase_step.line.setText(_PASSPHRASE)
    on.click(page.passphrase_step.forward)
    until(lambda: page.state.step == "code")
    page.code_step.line.setText("k-07")
    return page


def taking_file(on: Stage) -> None:
    """What waits from before, and the choice of a file."""
    page = page_of(on)
    page.done_step.left.emit()
    folder = places().sittings
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.glob("*"):
        old.unlink()
    journal = folder / "a.sitting-journal"
    journal.write_bytes(b"")
    os.utime(journal, (_MORNING, _MORNING))
    on.frame.show_screen("bench")
    page_of(on)


def taking_passphrase(on: Stage) -> None:
    """A passphrase that isn't right."""
    page = page_of(on)
    page.open_path(sealed())
    page.passphrase_step.line.setText("heron")
    on.click(page.passphrase_step.forward)
    until(lambda: not page.state.busy)


def taking_code(on: Stage) -> None:
    """A code that is not on the list."""
    page = opened(on)
    page.code_step.line.setText("k-70")
    on.click(page.code_step.forward)


def taking_rules(on: Stage) -> None:
    """What holds, for one who has more time."""
    page = opened(on)
    on.click(page.code_step.forward)
    # Whoever sat in the theme before has unticked it, and has handed in under this code.
    page.rules_step.fill.setChecked(True)
    page.rules_step.say_trouble("")


def begun(on: Stage) -> Running:
    """The sitting, begun."""
    page = opened(on)
    on.click(page.code_step.forward)
    page.rules_step.fill.setChecked(False)
    on.click(page.rules_step.start)
    assert page.running is not None
    return page.running


def call(on: Stage, face: Qt.Key, disposition: Qt.Key) -> None:
    """State a call, without the help that this sitting doesn't allow."""
    on.key(K.Key_8, face, disposition)


def sitting_begun(on: Stage) -> None:
    """The first coupon."""
    begun(on)


def sitting_middle(on: Stage) -> Running:
    """Some answered, one begun, some marked, some not seen; a leaf in hand."""
    running = begun(on)
    for face in (K.Key_X, K.Key_P, K.Key_O):
        call(on, face, K.Key_A)
        on.key(K.Key_Return)
    on.key(K.Key_V, K.Key_X, K.Key_PageDown, K.Key_PageDown, K.Key_8)
    return running


def sitting_last_minutes(on: Stage) -> None:
    """The time is in its box."""
    running = sitting_middle(on)
    running._clock.stop()
    running.view.bar.time.show_left(272_000)
    on.settle()


def sitting_hand_in(on: Stage) -> None:
    """What is unanswered or marked."""
    sitting_middle(on).ask_hand_in()


def sitting_leave(on: Stage) -> None:
    """The proctor is asked."""
    begun(on).ask_leave()


def taking_done(on: Stage) -> None:
    """Handed in."""
    running = sitting_middle(on)
    page = page_now(on)
    running.ask_hand_in()
    on.settle()
    dialog = on.frame.dialogs[-1]
    assert isinstance(dialog, HandInDialog)
    on.click(dialog.hand_in)
    until(lambda: page.state.step == "handed in")
    # Where it lies is another folder each time.
    page.done_step.notes.setText("The sealed result lies at results/Friday-railings_k-07.result")


def page_now(on: Stage) -> TakingPage:
    """The page, whatever is shown."""
    screen = on.frame.make_screen("sittings")
    assert isinstance(screen, SittingsScreen)
    page = screen.page("take")
    assert isinstance(page, TakingPage)
    return page


def end_sitting(on: Stage) -> None:
    """Leave a sitting that runs, if one does."""
    screen: object = on.frame.make_screen("sittings") if on.frame.has_screen("sittings") else None
    if not isinstance(screen, SittingsScreen):
        return
    page = screen.page("take")
    if isinstance(page, TakingPage) and page.running is not None:
        page.running.suspend()
        on.settle()


SHOTS: Final[dict[str, Callable[[Stage], object]]] = {
    "taking-file": taking_file,
    "taking-passphrase": taking_passphrase,
    "taking-code": taking_code,
    "taking-rules": taking_rules,
    "sitting-begun": sitting_begun,
    "sitting-middle": sitting_middle,
    "sitting-last-minutes": sitting_last_minutes,
    "taking-done": taking_done,
}
"""By name; each ends what the one before has begun."""
