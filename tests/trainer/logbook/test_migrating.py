"""Logbooks of earlier versions, kept as files, brought to this one."""

from __future__ import annotations

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from tests.trainer.logbook.entries import entry_of
from trainer.logbook.backups import back_up, restore
from trainer.logbook.erasing import Erasure, erase_in
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.opening import HEAD, KNOWN
from trainer.logbook.store import Logbook, LogbookError
from trainer.records import Entry

GOLDEN = Path(__file__).parent / "golden"
ONE = "11111111-0000-4000-8000-000000000001"
TWO = "11111111-0000-4000-8000-000000000002"
TABLES = ("learners", "coupons", "attempts", "tallies")


def rows_of(path: Path, table: str, columns: str = "*") -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as plain:
        return sorted(plain.execute(f"SELECT {columns} FROM {table}").fetchall(), key=repr)


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """A logbook that version 0001 of the program wrote: two learners, twenty attempts."""
    return Path(shutil.copyfile(GOLDEN / "0001.sqlite3", tmp_path / "logbook.sqlite3"))


def test_every_version_before_this_one_has_its_file() -> None:
    assert KNOWN[-1] == HEAD
    assert {file.stem for file in GOLDEN.glob("*.sqlite3")} == set(KNOWN[:-1])
    for file in GOLDEN.glob("*.sqlite3"):
        assert rows_of(file, "alembic_version") == [(file.stem,)]


def test_nothing_of_an_old_logbook_is_lost_or_changed(old: Path) -> None:
    with closing(sqlite3.connect(old)) as plain:
        had = {
            table: ", ".join(row[1] for row in plain.execute(f"PRAGMA table_info({table})"))
            for table in TABLES
        }
    before = {table: rows_of(old, table, columns) for table, columns in had.items()}
    assert len(before["attempts"]) == 20
    with closing(Logbook.open(old, bring_up_to_date)) as logbook:
        entries: list[Entry] = [*logbook.every(ONE), *logbook.every(TWO)]
        assert [one.name for one in logbook.learners()] == ["Bench 1", "Ñandú"]
    assert {table: rows_of(old, table, columns) for table, columns in had.items()} == before
    # The file's own reader agrees that they are the calls that were kept then.
    numbers = [*range(12), *range(20, 28)]
    assert [entry.id for entry in entries] == [entry_of(n).id for n in numbers]
    assert [entry.grade for entry in entries] == [entry_of(n, coupons=6).grade for n in numbers]
    new = rows_of(old, "attempts", "sat_id, item, spent_ms")
    assert set(new) == {(None, None, None)}
    assert set(rows_of(old, "learners", "code")) == {(None,)}
    assert rows_of(old, "alembic_version") == [(HEAD,)]


def test_an_old_logbook_is_the_same_as_a_new_one_from_then_on(old: Path, tmp_path: Path) -> None:
    Logbook.open(old, bring_up_to_date).close()
    fresh = tmp_path / "fresh.sqlite3"
    Logbook.open(fresh, bring_up_to_date).close()
    asked = "SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY name"
    with closing(sqlite3.connect(old)) as one, closing(sqlite3.connect(fresh)) as other:
        assert one.execute(asked).fetchall() == other.execute(asked).fetchall()
        assert one.execute("PRAGMA foreign_key_check").fetchall() == []
        assert one.execute("PRAGMA integrity_check").fetchall() == [("ok",)]


def test_what_hangs_on_a_learner_still_goes_with_them(old: Path) -> None:
    with closing(Logbook.open(old, bring_up_to_date)) as logbook:
        logbook.erase(ONE)
        assert (logbook.count(ONE), logbook.count(TWO)) == (0, 8)


def test_a_migration_that_fails_leaves_the_old_logbook_as_it_was(
    old: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = {table: rows_of(old, table) for table in TABLES}

    def halfway(*_: object) -> None:
        raise sqlite3.OperationalError("database or disk is full")

    monkeypatch.setattr("alembic.op.create_table", halfway)
    with pytest.raises(LogbookError) as caught:
        Logbook.open(old, bring_up_to_date)
    assert caught.value.trouble == "full"
    # The column that came first is gone again with the rest.
    assert {table: rows_of(old, table) for table in TABLES} == before
    assert rows_of(old, "alembic_version") == [("0001",)]
    monkeypatch.undo()
    with closing(Logbook.open(old, bring_up_to_date)) as logbook:
        assert logbook.count() == 20


def test_an_old_copy_is_put_back_and_an_old_copy_is_erased_from(old: Path, tmp_path: Path) -> None:
    copy = tmp_path / "copy.sqlite3"
    back_up(old, copy)
    erase_in(copy, [Erasure(TWO), Erasure("nobody")], missing_ok=True)
    assert len(rows_of(copy, "attempts")) == 12
    Logbook.open(old, bring_up_to_date).close()
    when = entry_of(1).at
    restore(copy, old, when)
    with closing(Logbook.open(old, bring_up_to_date)) as logbook:
        assert (logbook.count(ONE), logbook.count(TWO)) == (12, 0)
