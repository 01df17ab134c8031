"""Results taken into a logbook: once each, whole, and beside another of the same code."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from exercises.sitting.marking import Override, mark
from exercises.sitting.result import learner_id
from exercises.sitting.result_file import result_as_dict
from tests.trainer.logbook.entries import entry_of
from tests.trainer.school.papers import BEGIN, paper_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.store import Logbook, LogbookError
from trainer.logbook.tallies import calls_of
from trainer.school.merging import attempt_id, entries_of, merge
from trainer.school.overriding import override
from trainer.school.reading import ClassBook


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "logbook.sqlite3"


@pytest.fixture
def logbook(path: Path) -> Iterator[Logbook]:
    with closing(Logbook.open(path, bring_up_to_date)) as opened:
        yield opened


@pytest.fixture
def book(logbook: Logbook, path: Path) -> Iterator[ClassBook]:
    with closing(ClassBook.of_logbook(path)) as opened:
        yield opened


def test_a_paper_comes_back_whole(logbook: Logbook, book: ClassBook) -> None:
    result = paper_of("k-01")
    merged = merge(logbook, result)
    assert (merged.came, merged.sat, merged.attempts) == ("new", result.id, 5)
    assert result_as_dict(book.result(merged.sat)) == result_as_dict(result)
    (paper,) = book.papers()
    assert (paper.code, paper.station, paper.ended) == ("k-01", "bench-3", "finished")
    assert (paper.started, paper.finished) == (result.started, result.finished)
    assert paper.plan == result.plan
    assert paper.interruptions == result.interruptions
    assert not paper.clash
    for answer, item in zip(paper.items, result.items, strict=True):
        for name in ("number", "slot", "digest", "rules", "attempt", "grade", "ms", "visits",
                     "flagged", "hints", "answered"):  # fmt: skip
            assert getattr(answer, name) == getattr(item, name), name
        assert (answer.coupon, answer.title) == (item.coupon.id, item.coupon.title)
    # So it is marked the same from the list as from the whole.
    assert mark(paper.marks, paper.items) == mark(result.marks, result.items)
    with pytest.raises(KeyError):
        book.result("nobody's")


def test_answers_are_attempts_like_others_and_count_as_calls_before_feedback(
    logbook: Logbook, book: ClassBook
) -> None:
    result = paper_of("k-01")
    merged = merge(logbook, result)
    entries = list(logbook.every(merged.learner))
    assert [(e.source, e.before_feedback) for e in entries] == [("sitting", True)] * 5
    assert [e.grade for e in entries] == [i.grade for i in result.items if i.answered]
    assert [e.handling for e in entries] == [[list(r) for r in result.items[0].handling]] * 5
    assert [e.id for e in entries] == [attempt_id(result.id, n) for n in range(1, 6)]
    assert list(book.entries(sat=merged.sat)) == entries
    assert book.entry(entries[2].id) == entries[2]
    first = calls_of(logbook.tallies(merged.learner), before_feedback=True)
    assert len(first) == sum(e.outcome["distance"] is not None for e in entries) > 0
    calls = book.calls()[merged.learner]
    assert [(c.source, c.before_feedback) for c in calls] == [("sitting", True)] * 5
    assert [c.digest for c in calls] == [e.digest for e in entries]


def test_the_same_result_twice_changes_nothing_and_says_so(logbook: Logbook, path: Path) -> None:
    merge(logbook, paper_of("k-01"))
    tallies = logbook.tallies(learner_id("k-01"))
    for _ in range(2):
        again = merge(logbook, paper_of("k-01"))
        assert (again.came, again.attempts, again.others) == ("known", 0, ())
    assert logbook.count() == 5
    assert logbook.tallies(learner_id("k-01")) == tallies


def test_two_papers_of_one_code_are_both_kept_and_said(logbook: Logbook, book: ClassBook) -> None:
    first, second = paper_of("k-01", 1), paper_of("K-01", 2)
    merge(logbook, first)
    merged = merge(logbook, second)
    assert (merged.came, merged.others) == ("clash", (first.id,))
    papers = book.papers("s-1")
    assert [(paper.id, paper.clash) for paper in papers] == [(first.id, True), (second.id, True)]
    # Of another sitting it is no clash.
    assert merge(logbook, paper_of("k-01", 1, sitting="s-2")).came == "new"
    assert [paper.clash for paper in book.papers("s-2")] == [False]


def test_another_paper_under_the_same_id_is_no_repeat(logbook: Logbook, book: ClassBook) -> None:
    first = paper_of("k-01")
    changed = replace(first, finished=first.finished + timedelta(minutes=1))
    merge(logbook, first)
    merged = merge(logbook, changed)
    assert merged.came == "clash"
    assert merged.sat != first.id
    assert merge(logbook, changed).came == merge(logbook, first).came == "known"
    assert book.result(merged.sat).finished == changed.finished
    assert book.result(first.id).finished == first.finished
    assert logbook.count() == 10


def test_who_is_known_by_their_code_keeps_their_name_and_their_calls(logbook: Logbook) -> None:
    pia = logbook.add_learner("Pia")
    logbook.add(pia.id, entry_of(1))
    with logbook.writing() as connection:
        connection.exec_driver_sql("UPDATE learners SET code = 'K-01'")
    # Somebody is called by a code that isn't theirs.
    other = logbook.add_learner("k-02")
    assert merge(logbook, paper_of("k-01")).learner == pia.id
    assert logbook.count(pia.id) == 6
    merged = merge(logbook, paper_of("k-02"))
    assert merged.learner == learner_id("k-02") != other.id
    names = [one.name for one in logbook.learners()]
    assert len(names) == 3
    assert {"Pia", "k-02"} < set(names)


def test_a_paper_that_can_t_be_kept_leaves_nothing(
    logbook: Logbook, monkeypatch: pytest.MonkeyPatch
) -> None:
    done: list[str] = []

    def third(self: Logbook, *args: object) -> bool:
        done.append("one")
        if len(done) == 3:
            raise OSError("no space left on device")
        return real(self, *args)  # type: ignore[arg-type]

    real = Logbook.insert
    monkeypatch.setattr(Logbook, "insert", third)
    with pytest.raises(LogbookError) as caught:
        merge(logbook, paper_of("k-01"))
    assert caught.value.trouble == "full"
    monkeypatch.undo()
    assert (logbook.count(), logbook.learners()) == (0, [])
    assert merge(logbook, paper_of("k-01")).came == "new"


def test_nobody_else_s_code_is_kept_with_a_sitting(logbook: Logbook, book: ClassBook) -> None:
    merge(logbook, paper_of("k-01"))
    (sitting,) = book.sittings()
    assert (sitting.id, sitting.papers) == ("s-1", 1)
    assert (str(sitting.title), sitting.title.in_language("es")) == ("Yard", "Patio")
    assert "k-0" not in str(dict(sitting.plan))
    assert "extra" not in sitting.plan
    assert sitting.plan["minutes"] == 40.0


def test_overrides_stand_beside_what_was_graded(logbook: Logbook, book: ClassBook) -> None:
    result = paper_of("k-01")
    merge(logbook, result)
    before = list(logbook.every(learner_id("k-01")))
    said = Override(1, "disposition", 1.0, " the picture was cut ", "instructor 2", BEGIN)
    later = replace(said, value=0.25, reason="looked again", at=BEGIN + timedelta(days=1))
    # An item that was left unanswered can be given a mark too.
    lost = Override(6, "score", 1.0, "the power went", "instructor 2", BEGIN)
    for each in (later, said, lost):
        override(book, result.id, each)
    (paper,) = book.papers()
    assert [kept.override.value for kept in paper.overrides if kept.override.item == 1] == [
        1.0, 0.25,
    ]  # fmt: skip
    assert {kept.override.reason for kept in paper.overrides} == {
        "the picture was cut", "looked again", "the power went",
    }  # fmt: skip
    assert [kept.id for kept in book.overrides("s-1")] == [kept.id for kept in paper.overrides]
    assert book.overrides("s-2") == []
    standing = mark(paper.marks, paper.items, [kept.override for kept in paper.overrides])
    assert standing.score > mark(paper.marks, paper.items).score
    assert list(logbook.every(learner_id("k-01"))) == before
    with pytest.raises(KeyError):
        override(book, "nobody's", said)


def test_the_entries_of_a_result_are_its_answers() -> None:
    result = paper_of("k-01", unanswered=4)
    assert [(item.number, entry.at) for item, entry in entries_of(result)] == [
        (1, result.finished), (2, result.finished),
    ]  # fmt: skip
