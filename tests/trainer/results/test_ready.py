"""Who is ready: the evidence in sentences, in a table, and the way to the logbook."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from exercises.learner.outcome import Outcome
from tests.trainer.results.conftest import Teacher
from trainer.results.ready import ready_rows, see
from trainer.results.rows import ReadyRow
from trainer.school.reading import ClassMember, LearnerCall

BEGIN = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)


@pytest.fixture(autouse=True)
def _english() -> None:
    QLocale.setDefault(QLocale("en"))


def calls(
    caught: int, missed: int, passed: int, alarms: int, *, first: bool = True
) -> list[LearnerCall]:
    """So many calls on bad and good welds, half a millimetre from the limit and nearer."""
    made = []
    for count, bad, rejected in (
        (caught, True, True), (missed, True, False), (passed, False, False), (alarms, False, True),
    ):  # fmt: skip
        for n in range(count):
            distance = (-0.2 - 0.01 * n) if bad else (0.2 + 0.01 * n)
            outcome = Outcome(distance, rejected, bad, rejected, False, True)
            made.append((outcome, n))
    return [
        LearnerCall(BEGIN + timedelta(minutes=at), "sitting", outcome, f"{at}", first)
        for at, (outcome, _) in enumerate(made)
    ]


def row_of(found: list[LearnerCall]) -> ReadyRow:
    member = ClassMember("id", "K-07", "K-07", ("Tuesday",))
    (row,) = ready_rows(see([member], {"id": found}), "mm")
    return row


def test_29_of_29_with_a_good_line_is_ready_and_28_is_not_enough() -> None:
    ready = row_of(calls(29, 0, 20, 0))
    assert ready.verdict == "ready"
    assert ready.more == 0
    assert "29 of 29 bad welds caught: that shows, with 95 % confidence, that 90 %" in (
        ready.sentence
    )
    short = row_of(calls(28, 0, 20, 0))
    assert short.verdict == "not enough seen"
    assert short.more == 1
    assert "28 of 28 bad welds caught: 1 more without a miss would show 90 %" in short.sentence


def test_who_rejects_everything_is_not_ready() -> None:
    row = row_of(calls(40, 0, 0, 20))
    assert row.verdict == "not yet"
    assert "0 of 20 good welds let through" in row.sentence


def test_who_lets_bad_welds_go_is_not_yet_and_told_how_many_more_it_takes() -> None:
    row = row_of(calls(25, 6, 25, 0))
    assert row.verdict == "not yet"
    assert row.caught is not None
    assert (row.caught.count, row.caught.of) == (25, 31)
    assert f"{row.more} more without a miss would" in row.sentence
    assert row.bias is not None
    assert row.bias[1] < row.bias[0] < row.bias[2]


def test_calls_after_being_told_count_for_nothing_and_are_counted_as_that() -> None:
    told = calls(40, 0, 40, 0, first=False)
    row = row_of(told)
    assert row.verdict == "not enough seen"
    assert (row.counted, row.others) == (0, 80)
    assert "No bad weld called yet: 29 caught in a row would show 90 %." in row.sentence
    assert "80" in row.sentence
    assert row.last is None


def test_no_share_stands_without_its_count_or_its_range() -> None:
    for found in (calls(29, 0, 20, 0), calls(25, 6, 25, 0), calls(3, 1, 2, 0), []):
        row = row_of(found)
        for sentence in row.sentence.split(". "):
            if "%" in sentence:
                assert " of " in sentence or "in a row" in sentence or "95 %" in sentence, sentence


def test_learners_are_listed_sorted_sifted_and_their_logbook_opens(teacher: Teacher) -> None:
    logbook = QWidget()
    teacher.frame.add_screen("logbook", "Logbook", lambda: logbook)
    page = teacher.page.of_class
    page.show_view("ready")
    model = page.ready.table.rows
    assert model.rowCount() == 15, "the class, and whoever was at this bench before"
    page.ready.sieve.choosers["group"].setCurrentText("Tuesday")
    assert model.rowCount() == 7
    page.ready.table.sort("caught", descending=True)
    shares = [row.caught.value for row in map(model.row, range(7)) if row.caught]
    assert shares == sorted(shares, reverse=True)
    assert page.ready.table.choose(next(model.row(at).id for at in range(7)))
    row = page.ready.table.current
    assert row is not None
    assert page.evidence.text() == f"{row.code}: {row.sentence}"
    page.ready.table.setFocus()
    QTest.keyClick(page.ready.table, Qt.Key.Key_Return)
    assert teacher.frame.shown_screen == "logbook"
    assert teacher.keeping.learner is not None
    assert teacher.keeping.learner.id == row.id
    assert teacher.frame.settings.learner == row.id
