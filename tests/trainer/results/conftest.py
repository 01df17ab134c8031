"""A logbook into which an invented class handed in, made once; the page on it, in a window."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from exercises.sitting.plan import Plan
from exercises.sitting.result import Result
from tests.trainer.results.invented import plan_of, results_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.records import Records
from trainer.results.page import ResultsPage
from trainer.school.merging import merge
from trainer.school.people import Newcomer
from trainer.school.roster import Roster
from trainer.settings import Settings
from trainer.window import WindowFrame

LEARNERS = 14


class Teacher:
    """Somebody who goes through results."""

    def __init__(self, folder: Path, qtbot: QtBot) -> None:
        self.folder, self.qtbot = folder, qtbot
        self.keeping = keeping_in(folder)
        self.window = QMainWindow()
        self.window.resize(1280, 800)
        self.frame = WindowFrame(self.window, Settings(appearance="light"), QWidget())
        self.page = ResultsPage(self.frame, self.keeping)
        self.frame.add_screen("sittings", "Sittings", lambda: self.page)
        qtbot.addWidget(self.window)

    def come(self) -> None:
        """Open the page, and wait until all is there."""
        self.window.show()
        self.frame.show_screen("sittings")
        self.settle()

    def settle(self) -> None:
        """Wait until nothing is being read or brought in."""
        self.qtbot.waitUntil(lambda: not self.page.busy, timeout=60_000)

    def go(self) -> None:
        """Leave."""
        self.page.wait()
        for dialog in self.frame.dialogs:
            dialog.reject()
        self.window.close()
        self.keeping.close()


def keeping_in(folder: Path) -> Keeping:
    """A logbook in a folder, open."""
    keeping = Keeping(
        folder / "logbook.sqlite3", Records(folder / "calls.jsonl"), bring_up_to_date, "Bench 1"
    )
    keeping.open()
    return keeping


@pytest.fixture(scope="session")
def plan() -> Plan:
    """The sitting that the class sat."""
    return plan_of(6, 3)


@pytest.fixture(scope="session")
def results(plan: Plan) -> list[Result]:
    """What they handed in."""
    return results_of(plan, LEARNERS)


@pytest.fixture(scope="session")
def handed_in(results: list[Result], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a logbook that has it all; to be copied."""
    folder = tmp_path_factory.mktemp("class")
    keeping = keeping_in(folder)
    assert keeping.logbook is not None
    roster = Roster(keeping)
    group = roster.add_group("Tuesday")
    roster.add([Newcomer(f"Learner {n}", f"K-{n:02d}", n) for n in range(1, LEARNERS, 2)], group.id)
    for result in results:
        merge(keeping.logbook, result)
    keeping.close()
    return folder


@pytest.fixture
def teacher(handed_in: Path, tmp_path: Path, qtbot: QtBot) -> Iterator[Teacher]:
    """Somebody before the results of that class."""
    for file in handed_in.iterdir():
        if file.is_file():
            shutil.copy(file, tmp_path / file.name)
    person = Teacher(tmp_path, qtbot)
    person.come()
    yield person
    person.go()


@pytest.fixture
def newcomer(tmp_path: Path, qtbot: QtBot) -> Iterator[Teacher]:
    """Somebody to whom nothing was handed in yet."""
    person = Teacher(tmp_path, qtbot)
    person.come()
    yield person
    person.go()
