"""What was handed in at this machine is shown by nothing until the passphrase was typed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from exercises.sitting.marking import Override
from exercises.sitting.result import Result
from tests.trainer.logbook.entries import entry_of
from tests.trainer.school.papers import paper_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.shut import SHUT
from trainer.logbook.store import Logbook
from trainer.school.merging import attempt_id, merge
from trainer.school.outbox import Outbox
from trainer.school.overriding import override
from trainer.school.reading import ClassBook
from trainer.school.shutting import opened_by
from trainer.sealing.key import Cost, Key

PASSPHRASE = "three weathered herons"
KEY, OTHER = Key.made(PASSPHRASE, Cost(log_n=4)), Key.made("a plum ladder", Cost(log_n=4))
HERE, BROUGHT = paper_of("k-01", 1), paper_of("k-01", 2, sitting="s-2")


@pytest.fixture
def logbook(tmp_path: Path) -> Iterator[Logbook]:
    """One paper sat here, one that was brought in, and a call at the bench."""
    path = tmp_path / "logbook.sqlite3"
    with closing(Logbook.open(path, bring_up_to_date)) as made:
        learner = merge(made, HERE, KEY).learner
        merge(made, BROUGHT)
        made.add(learner, entry_of(1, learner=learner))
        with closing(ClassBook.of_logbook(path)) as book:
            set_by_hand = Override(1, "face", 1.0, "seen", "Fay", datetime(2026, 3, 4, tzinfo=UTC))
            override(book, HERE.id, set_by_hand)
        yield made


def book_of(logbook: Logbook) -> ClassBook:
    return ClassBook.of_logbook(logbook.path, logbook.opened)


def key_error(act: Callable[[], object]) -> bool:
    try:
        act()
    except KeyError:
        return True
    return False


def seen(logbook: Logbook) -> dict[str, object]:
    """What each door shows."""
    (learner,) = (one.id for one in logbook.learners() if one.name == "k-01")
    first = attempt_id(HERE.id, 1)
    with closing(book_of(logbook)) as book:
        return {
            "papers": {paper.id for paper in book.papers()},
            "of the sitting": len(book.papers("s-1")),
            "whole": not key_error(lambda: book.result(HERE.id)),
            "entries of the paper": len(list(book.entries(sat=HERE.id))),
            "entries of the learner": len(list(book.entries(learner=learner))),
            "one": not key_error(lambda: book.entry(first)),
            "overrides": len(book.overrides()),
            "calls": len(book.calls()[learner]),
            "exported": len(list(logbook.every(learner))),
            "newest": len(logbook.attempts(learner)),
            "sums": {(one.kind, one.key): one.count for one in logbook.tallies(learner)},
        }


def sums_of(folder: Path, *papers: Result) -> dict[tuple[str, str], int]:
    """What a logbook sums up that has these papers, and the call at the bench, alone."""
    path = folder / f"{len(papers)}.sqlite3"
    with closing(Logbook.open(path, bring_up_to_date)) as other:
        learner = {merge(other, paper).learner for paper in papers}.pop()
        other.add(learner, entry_of(1, learner=learner))
        return {(one.kind, one.key): one.count for one in other.tallies(learner)}


def test_every_door_is_shut_until_the_passphrase_was_typed(
    logbook: Logbook, tmp_path: Path
) -> None:
    answered = sum(item.answered for item in HERE.items)
    others = sum(item.answered for item in BROUGHT.items) + 1
    shut: dict[str, object] = {
        "papers": {BROUGHT.id}, "of the sitting": 0, "whole": False, "entries of the paper": 0,
        "entries of the learner": others, "one": False, "overrides": 0, "calls": others,
        "exported": others, "newest": others, "sums": sums_of(tmp_path, BROUGHT),
    }  # fmt: skip
    whole = answered + others
    opened: dict[str, object] = {
        "papers": {HERE.id, BROUGHT.id}, "of the sitting": 1, "whole": True,
        "entries of the paper": answered, "entries of the learner": whole, "one": True,
        "overrides": 1, "calls": whole, "exported": whole, "newest": whole,
        "sums": sums_of(tmp_path, HERE, BROUGHT),
    }  # fmt: skip
    assert seen(logbook) == shut
    with closing(book_of(logbook)) as book:
        (papers,) = book.shut()
        assert papers.papers == 1
        # That something was handed in may be known.
        assert {sitting.id for sitting in book.sittings()} == {"s-1", "s-2"}
    assert opened_by("three weathered heron", [papers]) == set()
    logbook.opened |= opened_by(PASSPHRASE, [papers])
    assert seen(logbook) == opened
    with closing(book_of(logbook)) as book:
        assert book.shut() == []
    logbook.opened.clear()
    assert seen(logbook) == shut


def test_a_passphrase_opens_the_papers_of_its_own_sittings_alone(logbook: Logbook) -> None:
    merge(logbook, paper_of("k-02", 3, sitting="s-3"), OTHER)
    merge(logbook, paper_of("k-03", 4), KEY)
    with closing(book_of(logbook)) as book:
        shut = {one.check: one.papers for one in book.shut()}
        assert shut == {KEY.check.hex(): 2, OTHER.check.hex(): 1}
        logbook.opened |= opened_by("a plum ladder", book.shut())
    with closing(book_of(logbook)) as book:
        assert {paper.code for paper in book.papers()} == {"k-01", "k-02"}
        assert [one.check for one in book.shut()] == [KEY.check.hex()]


def test_what_was_shut_is_sent_all_the_same_and_not_how_its_passphrase_is_known(
    logbook: Logbook,
) -> None:
    with closing(Outbox(logbook.path)) as outbox:
        rows = [row for parcel in outbox.papers(10) for _, row in parcel.rows]
    bodies = [row["body"] for row in rows if row.get("id") == HERE.id]
    assert len(bodies) == 1
    assert SHUT not in bodies[0]
    assert len([row for row in rows if row.get("sat_id") == HERE.id]) == 5


def test_the_same_result_brought_in_does_not_open_it(logbook: Logbook) -> None:
    assert merge(logbook, HERE).came == "known"
    assert seen(logbook)["whole"] is False
