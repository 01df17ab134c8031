"""What the pages of results look like: their pictures, for `tests.measure.shots`."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Final

from PySide6.QtCore import QCoreApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from exercises.sitting.marking import Override
from tests.measure.stage import Stage
from tests.trainer.results.invented import plan_of, results_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.records import Records
from trainer.results.bringing import Brought, BroughtDialog
from trainer.results.override_dialog import OverrideDialog
from trainer.results.page import ResultsPage
from trainer.school.merging import merge
from trainer.school.overriding import override
from trainer.school.people import Newcomer
from trainer.school.reading import ClassBook
from trainer.school.roster import Roster
from trainer.sittings.screen import SittingsScreen

__all__ = ["RESULTS_SHOTS", "results_brought", "results_override"]

_LEARNERS: Final = 16


@cache
def _folder() -> tempfile.TemporaryDirectory[str]:
    """Where the class's logbook lies: apart, so that the logbook's own pictures know nobody of it.

    It lasts as long as the process.
    """
    return tempfile.TemporaryDirectory(prefix="results-")


@cache
def _keeping(name: str) -> Keeping:
    folder = Path(_folder().name) / name
    folder.mkdir()
    keeping = Keeping(
        folder / "logbook.sqlite3", Records(folder / "calls.jsonl"), bring_up_to_date, "Bench 1"
    )
    keeping.open()
    logbook = keeping.logbook
    assert logbook is not None
    if name == "class":
        roster = Roster(keeping)
        group = roster.add_group("Tuesday")
        people = [Newcomer(f"Learner {n}", f"K-{n:02d}", n) for n in range(1, _LEARNERS, 2)]
        roster.add(people, group.id)
        results = results_of(plan_of(8, 4), _LEARNERS)
        for result in results:
            merge(logbook, result)
        book = ClassBook.of_logbook(logbook.path)
        at = datetime(2026, 3, 3, 10, 0, tzinfo=UTC)
        said = "The picture was cut off at the upright toe."
        override(book, results[3].id, Override(5, "reading", 1.0, said, "Instructor 2", at))
        book.close()
    return keeping


def _page(on: Stage, name: str = "class") -> ResultsPage:
    """The page of results, on the logbook of that name."""
    on.frame.show_screen("sittings")
    screen = on.frame.make_screen("sittings")
    assert isinstance(screen, SittingsScreen)
    before = screen._pages.pop("results", None)

    def make() -> QWidget:
        return ResultsPage(on.frame, _keeping(name))

    screen._makers["results"] = make
    if before is not None:
        screen.rooms.removeWidget(before)
        before.deleteLater()
    screen.show_page("results")
    page = screen.page("results")
    assert isinstance(page, ResultsPage)
    _settle(on, page)
    return page


def _settle(on: Stage, page: ResultsPage) -> None:
    while page.busy:
        QCoreApplication.processEvents()
        QTest.qWait(5)
    on.settle()
    # Pictures wait until the size has settled.
    QTest.qWait(120)
    on.settle()


def _view(name: str) -> Callable[[Stage], None]:
    def show(on: Stage) -> None:
        page = _page(on)
        page.of_class.show_view(name)
        page.of_class.setFocus()
        _settle(on, page)

    return show


def results_empty(on: Stage) -> None:
    """Nothing was handed in yet."""
    _page(on, "nobody")


def results_paper(on: Stage) -> None:
    """One learner's paper, at an item with a mark that was set by hand."""
    page = _page(on)
    paper = next(row.id for row in page.look.reckoned.papers if row.code == "K-04")  # type: ignore[union-attr]
    page.open_paper(paper)
    page.of_learner.items.selectRow(4)
    _settle(on, page)


def results_override(on: Stage) -> None:
    """A mark is to be set by hand."""
    page = _page(on)
    on.frame.show_dialog(OverrideDialog("reading", 0.5, 0.5, "", parent=page.window()))


def results_brought(on: Stage) -> None:
    """What came in, and what didn't."""
    page = _page(on)
    came = (
        ("new", "20 answers."), ("known", "The same paper came in before; nothing was changed."),
        ("not", "It has been changed since it was sealed. Take another copy."),
    )  # fmt: skip
    rows = [
        Brought(Path(f"Spring-sitting_K-{n:02d}.result"), kind, f"K-{n:02d}", "Spring sitting", why)
        for n, (kind, why) in enumerate(came, start=1)
    ]
    on.frame.show_dialog(BroughtDialog(rows, page.window()))


RESULTS_SHOTS: Final[dict[str, Callable[[Stage], object]]] = {
    "results-empty": results_empty,
    "results-learners": _view("learners"),
    "results-coupons": _view("coupons"),
    "results-pairs": _view("pairs"),
    "results-pictures": _view("pictures"),
    "results-ready": _view("ready"),
    "results-paper": results_paper,
}
