"""A run in pseudo-English: whatever is to be seen or heard outside brackets was left out."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from exercises.tray import load_tray
from tests.trainer.said import left_out, said_by, tray_words
from tests.trainer.sittings.conftest import HERON, Instructor
from trainer.language import PSEUDO, Speech
from trainer.school.people import Newcomer
from trainer.school.roster import Roster

GIVEN = [*tray_words(load_tray(HERON)), "Friday", "Tuesday", "Pia", "Odo", "Bench", "Sittings",
         "Fay", "AAA", "ACN", "Pia; HK4-7TK"]  # fmt: skip
"""What was typed, or came with a tray or a class."""


@pytest.fixture(autouse=True)
def pseudo_spoken(qapp: QApplication) -> Iterator[None]:
    """Before any widget: so it is asked for before the instructor is."""
    before = QLocale()
    speech = Speech(qapp)
    speech.speak(PSEUDO)
    yield
    speech.speak("en")
    QLocale.setDefault(before)


def missing(instructor: Instructor) -> list[str]:
    return left_out(said_by(instructor.window), GIVEN)


def test_the_composer(instructor: Instructor) -> None:
    instructor.wait_for_paper()
    assert missing(instructor) == []
    instructor.compose.add_tray(HERON)
    instructor.fill(instructor.compose.parts.title, "Friday")
    instructor.compose.do("paper")
    instructor.wait_for_paper()
    assert missing(instructor) == []
    for row in instructor.compose.paper.table.rows:
        assert left_out([row.cells[2], row.cells[3]], GIVEN) == []
    instructor.compose.filing.seal()
    assert missing(instructor) == []


def test_the_class(instructor: Instructor) -> None:
    room = instructor.room
    assert missing(instructor) == []
    roster = Roster(instructor.keeping)
    group = roster.add_group("Tuesday", keep_days=30)
    roster.add([Newcomer("Pia", "K-07", 1), Newcomer("Odo", "K-08", 2)], group.id)
    room.show_all()
    for asked in ("add", "paste", "group new", "due"):
        room.do(asked)
        assert missing(instructor) == []
    room.people.table.choose(roster.people()[-1].id)
    for asked in ("change", "erase"):
        room.do(asked)
        assert missing(instructor) == []
    room.side.setCurrentIndex(1)
    room.server.address.setText("nowhere")
    room.server.keep()
    assert missing(instructor) == []
