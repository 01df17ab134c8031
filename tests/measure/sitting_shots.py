"""What composing a sitting and the class look like: pictures, for `tests.measure.shots`."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Final, cast

from PySide6.QtTest import QTest

from exercises.maker import Recipe
from exercises.text import Text
from tests.measure.stage import Stage
from trainer.late import shipped_tray
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.places import places
from trainer.records import Records
from trainer.school.people import Newcomer
from trainer.school.roster import Roster
from trainer.sittings import draft as changes
from trainer.sittings.class_page import ClassPage
from trainer.sittings.compose_page import ComposePage
from trainer.sittings.draft import FromDice, new_draft
from trainer.sittings.roll import Candidate
from trainer.sittings.screen import SittingsScreen
from trainer.sittings.seal_dialog import SealDialog

__all__ = ["SHOTS", "seal"]

_CLASS: Final = tuple(
    Candidate(f"K-{number:02}", name, ("Tuesday, second shift",))
    for number, name in enumerate(("Ana", "Ben", "Cai", "Dot", "Eli", "Fay", "Gus", "Pia"), 1)
)


def _page(on: Stage) -> ComposePage:
    """The composer, as it is first seen, with a class of this module's."""
    on.frame.show_screen("sittings")
    screen = cast("SittingsScreen", on.frame.screens.currentWidget())
    page = cast("ComposePage", screen.page("compose"))
    page._ask_candidates = lambda: _CLASS
    page.filing._begin()
    draft = new_draft()
    page.controller.open(replace(draft, base=replace(draft.base, id="s-1", seed=7)))
    for tabs in (page.middle, page.side):
        tabs.setCurrentIndex(0)
    screen.show_page("compose")
    page.look_who_could_sit()
    page.setFocus()
    return page


def _still(on: Stage, page: ComposePage) -> None:
    """Let the paper be drawn; what is composed is given up without a question."""
    while page.checking.busy:
        QTest.qWait(10)
    page.saying.hide()
    page.controller.mark_saved(page.controller.draft)
    on.settle()


def _composed(on: Stage) -> ComposePage:
    """Some of a tray, and dice."""
    page = _page(on)
    page.add_tray(shipped_tray())
    dice = FromDice(Recipe(12, seed=7, nearest=2.0, farthest=6.0))
    page.controller.do(lambda d: changes.with_part(d, dice), "add dice")
    page.controller.do(
        lambda d: changes.with_plan(d, replace(d.base, title=Text.of("Friday: railings"))), "title"
    )
    codes = [one.code for one in _CLASS[1:6]]
    page.controller.do(lambda d: changes.with_entrants(d, codes, sits=True), "entrants")
    page.controller.do(lambda d: changes.with_extra(d, ["K-03"], 0.25), "extra")
    return page


def compose_empty(on: Stage) -> None:
    """Nothing is asked yet."""
    _still(on, _page(on))


def compose_tray(on: Stage) -> None:
    """Coupons of a tray, some of them ticked."""
    page = _composed(on)
    page.controller.show(0)
    page.do("none")
    page.part.ticked.emit([0, 2, 3, 5, 8, 9, 11], True)
    _still(on, page)


def compose_dice(on: Stage) -> None:
    """What the dice are asked for."""
    _still(on, _composed(on))


def compose_learners(on: Stage) -> None:
    """One learner's paper, and who sits it."""
    page = _composed(on)
    page.paper.code_asked.emit("K-03")
    page.do("paper")
    page.do("entrants")
    page.entrants.table.choose("K-03")
    _still(on, page)


def seal(on: Stage) -> None:
    """The passphrase, typed once."""
    dialog = SealDialog("", on.window)
    dialog.first.setText("three weathered herons")
    on.frame.show_dialog(dialog)


def _room(on: Stage) -> ClassPage:
    """The class, in a logbook of its own: what other pictures keep isn't in it."""
    on.frame.show_screen("sittings")
    screen = cast("SittingsScreen", on.frame.screens.currentWidget())
    page = cast("ClassPage", screen.page("class"))
    places().data.mkdir(parents=True, exist_ok=True)
    folder = Path(tempfile.mkdtemp(dir=places().data))
    records = Records(folder / "calls.jsonl")
    keeping = Keeping(folder / "logbook.sqlite3", records, bring_up_to_date, "Bench 1")
    keeping.open()
    page.keeping = page.dealing.keeping = keeping
    page.dealing.roster = roster = Roster(keeping)
    group = roster.add_group("Tuesday, second shift", 365)
    roster.add_group("Renewals")
    people = [Newcomer(one.name, one.code, 1) for one in _CLASS]
    roster.add(people, group.id)
    screen.show_page("class")
    page.side.setCurrentIndex(0)
    page.people.search.clear()
    page._show_group("")
    page.people.table.clearSelection()
    return page


def class_room(on: Stage) -> None:
    """A group, one of it chosen."""
    page = _room(on)
    page.groups.list.setCurrentRow(2)
    page.people.table.choose(page.people._people[2].id)
    page.people.table.setFocus()
    on.settle()


def class_server(on: Stage) -> None:
    """Everybody, and no server yet."""
    page = _room(on)
    page.side.setCurrentIndex(1)
    page.people.table.setFocus()
    on.settle()


SHOTS: Final[dict[str, Callable[[Stage], object]]] = {
    "compose-empty": compose_empty,
    "compose-tray": compose_tray,
    "compose-dice": compose_dice,
    "compose-learners": compose_learners,
    "class-room": class_room,
    "class-server": class_server,
}
"""By name, what is played before the window is photographed."""
