"""Calls go on being kept whatever becomes of the logbook, and come into it afterwards."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from tests.measure.kills import kill_often
from tests.trainer.logbook.entries import entry_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.store import Logbook
from trainer.records import Records, RecordsError


@pytest.fixture
def keeping(tmp_path: Path) -> Keeping:
    return made(tmp_path)


def made(folder: Path) -> Keeping:
    return Keeping(
        folder / "logbook.sqlite3", Records(folder / "calls.jsonl"), bring_up_to_date, "Learner 1"
    )


def ids(folder: Path) -> set[str]:
    with closing(sqlite3.connect(folder / "logbook.sqlite3")) as plain:
        return {row[0] for row in plain.execute("SELECT id FROM attempts")}


def test_the_first_learner_is_made_and_calls_are_theirs(keeping: Keeping, tmp_path: Path) -> None:
    assert keeping.open()
    keeping.add(entry_of(1))
    assert keeping.learner is not None
    assert keeping.learner.name == "Learner 1"
    assert keeping.logbook is not None
    assert keeping.logbook.count(keeping.learner.id) == 1
    assert not (tmp_path / "calls.jsonl").exists()
    keeping.close()
    again = made(tmp_path)
    assert again.open(keeping.learner.id)
    assert again.learner == keeping.learner


def test_calls_of_an_unopened_logbook_are_kept_aside_and_taken_in(
    keeping: Keeping, tmp_path: Path
) -> None:
    """As all calls were before there was a logbook: version 1 lines among them."""
    keeping.add(entry_of(1))
    keeping.add(entry_of(2))
    assert keeping.kept_aside == 2
    assert keeping.open()
    assert keeping.kept_aside == 0
    assert not (tmp_path / "calls.jsonl").exists()
    assert ids(tmp_path) == {entry_of(1).id, entry_of(2).id}


def test_a_line_that_cannot_be_read_stays_where_it_is(keeping: Keeping, tmp_path: Path) -> None:
    aside = tmp_path / "calls.jsonl"
    Records(aside).add(entry_of(1))
    with aside.open("ab") as file:
        file.write(b'{"torn')
    assert keeping.open()
    assert aside.read_bytes() == b'{"torn\n'
    assert ids(tmp_path) == {entry_of(1).id}
    assert keeping.open()
    assert aside.read_bytes() == b'{"torn\n'


@pytest.mark.parametrize("what", ["newer", "damaged"])
def test_practice_goes_on_beside_a_logbook_that_is(
    what: str, keeping: Keeping, tmp_path: Path
) -> None:
    keeping.open()
    keeping.add(entry_of(1))
    keeping.close()
    path = tmp_path / "logbook.sqlite3"
    good = path.read_bytes()
    if what == "newer":
        with closing(sqlite3.connect(path)) as plain, plain:
            plain.execute("UPDATE alembic_version SET version_num = '9001'")
    else:
        path.write_bytes(b"no database at all, whatever it is called " * 200)
    bad = path.read_bytes()
    later = made(tmp_path)
    assert not later.open()
    assert later.trouble is not None
    assert later.trouble.trouble == what
    later.add(entry_of(2))
    assert later.kept_aside == 1
    assert path.read_bytes() == bad
    path.write_bytes(good)
    assert later.open()
    assert ids(tmp_path) == {entry_of(1).id, entry_of(2).id}


def test_a_lock_in_the_midst_keeps_the_call_aside(
    keeping: Keeping, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("trainer.logbook.opening._WAIT_MS", 50)
    keeping.open()
    keeping.add(entry_of(1))
    with closing(sqlite3.connect(tmp_path / "logbook.sqlite3")) as holder:
        holder.execute("BEGIN IMMEDIATE")
        keeping.add(entry_of(2))
        assert keeping.kept_aside == 1
        assert keeping.trouble is not None
        assert keeping.trouble.trouble == "locked"
        holder.rollback()
    keeping.add(entry_of(3))
    assert ids(tmp_path) == {entry_of(1).id, entry_of(3).id}
    assert keeping.open()
    assert keeping.trouble is None
    assert ids(tmp_path) == {entry_of(number).id for number in (1, 2, 3)}


def test_what_can_be_kept_nowhere_is_told(keeping: Keeping, tmp_path: Path) -> None:
    (tmp_path / "calls.jsonl").mkdir()
    with pytest.raises(RecordsError):
        keeping.add(entry_of(1))


def test_calls_of_someone_unknown_here_are_taken_as_whoever_is_at_the_bench(
    keeping: Keeping, tmp_path: Path
) -> None:
    Records(tmp_path / "calls.jsonl").add(replace(entry_of(1), learner="elsewhere"))
    assert keeping.open()
    assert keeping.logbook is not None
    assert keeping.learner is not None
    assert keeping.logbook.count(keeping.learner.id) == 1


def test_nothing_acknowledged_is_lost_to_a_kill(tmp_path: Path) -> None:
    """Ten kills here; tests.measure.kills does two hundred."""
    found = kill_often(tmp_path, 10)
    assert (found.lost, found.broken) == (0, 0)
    assert found.acknowledged > 10
    with closing(Logbook.open(tmp_path / "logbook.sqlite3", bring_up_to_date)) as logbook:
        (learner,) = logbook.learners()
        # Tallies were written with their attempts: they never come apart.
        lines = sum(t.count for t in logbook.tallies(learner.id) if t.kind == "line")
        assert lines == logbook.count(learner.id)
