"""The logbook's file: what is kept, counted, refused and erased."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
import sqlalchemy as sa
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext

from exercises.learner.agreement import cohen_kappa
from tests.trainer.logbook.entries import BEGIN, entry_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.schema import Base
from trainer.logbook.store import HEAD, Learner, Logbook, LogbookError
from trainer.logbook.tallies import calls_of


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "data" / "logbook.sqlite3"


@pytest.fixture
def logbook(path: Path) -> Iterator[Logbook]:
    with closing(Logbook.open(path, bring_up_to_date)) as opened:
        yield opened


@pytest.fixture
def ann(logbook: Logbook) -> Learner:
    return logbook.add_learner("Bench 1")


def plain(path: Path, asked: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute(asked).fetchall()


def test_an_attempt_comes_back_as_it_was(logbook: Logbook, ann: Learner) -> None:
    entry = entry_of(7)
    assert logbook.add(ann.id, entry)
    (back,) = logbook.every(ann.id)
    assert back == replace(entry, learner=ann.id)
    (listed,) = logbook.attempts(ann.id)
    assert (listed.id, listed.at, listed.coupon) == (entry.id, entry.at, "c-007")


def test_the_same_attempt_twice_is_there_once_and_counts_once(
    logbook: Logbook, ann: Learner
) -> None:
    assert logbook.add_all(ann.id, [entry_of(1), entry_of(2), entry_of(1)]) == 2
    before = logbook.tallies(ann.id)
    assert not logbook.add(ann.id, entry_of(2))
    assert logbook.tallies(ann.id) == before
    assert logbook.count() == 2


def test_tallies_are_what_counting_the_attempts_gives(logbook: Logbook, ann: Learner) -> None:
    entries = [entry_of(number) for number in range(300)]
    logbook.add_all(ann.id, entries)
    tallies = logbook.tallies(ann.id)
    calls = calls_of(tallies)
    assert len(calls) == 300
    assert sum(c.short for c in calls) == sum(bool(e.outcome["short"]) for e in entries)
    mean = sum(c.distance for c in calls) / 300
    assert mean == pytest.approx(sum(e.outcome["distance"] for e in entries) / 300, abs=0.002)  # type: ignore[misc]
    first = calls_of(tallies, before_feedback=True)
    assert len(first) == sum(e.before_feedback for e in entries)
    assert len(first) + len(calls_of(tallies, before_feedback=False)) == 300

    def counted(key: str) -> int:
        return sum(t.count for t in tallies if (t.kind, t.key) == ("call", key))

    table = [[counted("bad rejected"), counted("bad let go")],
             [counted("good rejected"), counted("good let go")]]  # fmt: skip
    assert sum(map(sum, table)) == 300
    assert (cohen_kappa(table) or 0.0) > 0.5
    critical = sum(bool(e.grade["critical"]) for e in entries)
    assert counted("bad let go") == critical
    # Of the calls the day is the learner's own, in the zone that they sit in.
    assert {t.day for t in tallies} == {e.at.astimezone().date().isoformat() for e in entries}


def test_attempts_are_listed_newest_first_a_page_at_a_time(logbook: Logbook, ann: Learner) -> None:
    logbook.add_all(ann.id, [entry_of(number) for number in range(25)])
    page = logbook.attempts(ann.id, most=10)
    assert [kept.coupon for kept in page] == [f"c-{n:03}" for n in range(24, 14, -1)]
    assert logbook.attempts("nobody") == []


def test_several_learners_share_a_machine_and_not_their_calls(
    logbook: Logbook, ann: Learner
) -> None:
    bob = logbook.add_learner("  Bench 2 ")
    assert bob.name == "Bench 2"
    logbook.add(ann.id, entry_of(1))
    logbook.add_all(ann.id, [entry_of(2, learner=bob.id), entry_of(3)])
    assert (logbook.count(ann.id), logbook.count(bob.id)) == (2, 1)
    assert [one.name for one in logbook.learners()] == ["Bench 1", "Bench 2"]
    logbook.rename(bob.id, "Bench 9")
    assert [one.name for one in logbook.learners()] == ["Bench 1", "Bench 9"]
    for name in ("Bench 1", "", " ", "x" * 201):
        with pytest.raises(LogbookError) as caught:
            logbook.add_learner(name)
        assert caught.value.trouble == "name"
        with pytest.raises(LogbookError):
            logbook.rename(bob.id, name)


def test_who_is_erased_leaves_nothing_behind(logbook: Logbook, ann: Learner, path: Path) -> None:
    bob = logbook.add_learner("Bench 2 of the erased")
    marked = replace(entry_of(1), coupon={"id": "c-001", "title": "only the erased judged this"})
    logbook.add(bob.id, replace(marked, digest="e" * 64, id="0" * 36))
    logbook.add_all(ann.id, [entry_of(2), entry_of(3)])
    kept = list(logbook.every(ann.id))
    logbook.erase(bob.id)
    assert logbook.learners() == [ann]
    assert logbook.count() == 2
    assert list(logbook.every(ann.id)) == kept
    assert plain(path, "SELECT count(*) FROM coupons") == [(2,)]
    assert plain(path, f"SELECT count(*) FROM tallies WHERE learner_id = '{bob.id}'") == [(0,)]
    raw = b"".join(file.read_bytes() for file in path.parent.iterdir())
    assert b"of the erased" not in raw
    assert b"only the erased" not in raw
    with pytest.raises(LogbookError) as caught:
        logbook.erase(bob.id)
    assert caught.value.trouble == "no such learner"


def test_a_clock_that_was_set_back_is_told_and_keeps_the_order(
    logbook: Logbook, ann: Learner
) -> None:
    logbook.add(ann.id, entry_of(500))
    assert not logbook.clock_went_back
    logbook.add(ann.id, entry_of(0))
    assert logbook.clock_went_back
    assert [kept.coupon for kept in logbook.attempts(ann.id)] == ["c-000", "c-020"]
    assert logbook.attempts(ann.id)[0].at == BEGIN


def test_what_fails_midway_leaves_nothing(logbook: Logbook, ann: Learner) -> None:
    broken = replace(entry_of(2), grade={**entry_of(2).grade, "score": 7.0})
    with pytest.raises((LogbookError, sa.exc.IntegrityError)):
        logbook.add_all(ann.id, [entry_of(1), broken])
    assert logbook.count() == 0
    assert logbook.tallies(ann.id) == []


# --- the file ----------------------------------------------------------------------------------


def test_it_is_kept_as_durably_as_sqlite_can(logbook: Logbook, path: Path) -> None:
    with logbook._engine.connect() as connection:
        asked = {
            name: connection.exec_driver_sql(f"PRAGMA {name}").scalar()
            for name in ("journal_mode", "synchronous", "foreign_keys", "secure_delete")
        }
    assert asked == {
        "journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "secure_delete": 1
    }  # fmt: skip
    assert plain(path, "SELECT version_num FROM alembic_version") == [(HEAD,)]


def test_the_revisions_make_the_tables_that_the_program_speaks_of(logbook: Logbook) -> None:
    with logbook._engine.connect() as connection:
        context = MigrationContext.configure(connection)
        different = compare_metadata(context, Base.metadata)
    # What is stated beside a column SQLAlchemy reads without its name and its rule: this one key,
    # which `PRAGMA` reads whole.
    assert {(what, key.parent.name, *key.column_keys) for what, key in different} == {
        ("remove_fk", "attempts", "sat_id"), ("add_fk", "attempts", "sat_id")
    }  # fmt: skip
    keys = plain(logbook.path, "PRAGMA foreign_key_list(attempts)")
    assert {(table, column, to, rule) for _, _, table, column, to, _, rule, _ in keys} == {
        ("sat", "sat_id", "id", "CASCADE"),
        ("learners", "learner_id", "id", "CASCADE"),
        ("coupons", "digest", "digest", "NO ACTION"),
    }


def test_a_newer_file_is_refused_as_newer_and_left_alone(path: Path) -> None:
    Logbook.open(path, bring_up_to_date).close()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '9001'")
        connection.commit()
    before = path.read_bytes()
    with pytest.raises(LogbookError) as caught:
        Logbook.open(path, bring_up_to_date)
    assert (caught.value.trouble, caught.value.detail) == ("newer", "9001")
    assert path.read_bytes() == before


def test_a_damaged_file_and_a_stranger_s_are_refused(path: Path) -> None:
    path.parent.mkdir()
    path.write_bytes(b"SQLite format 3\0" + b"\7" * 4000)
    with pytest.raises(LogbookError) as caught:
        Logbook.open(path, bring_up_to_date)
    assert caught.value.trouble == "damaged"
    path.unlink()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE recipes (id)")
    with pytest.raises(LogbookError) as caught:
        Logbook.open(path, bring_up_to_date)
    assert caught.value.trouble == "damaged"
    path.unlink()
    path.mkdir()
    with pytest.raises(LogbookError) as caught:
        Logbook.open(path, bring_up_to_date)
    assert caught.value.trouble == "unwritable"


def test_a_page_torn_out_is_damage_and_not_a_traceback(path: Path) -> None:
    with closing(Logbook.open(path, bring_up_to_date)) as opened:
        ann = opened.add_learner("Bench 1")
        opened.add_all(ann.id, [entry_of(number) for number in range(200)])
    raw = bytearray(path.read_bytes())
    for at in range(4096, len(raw), 4096):
        raw[at : at + 200] = b"\xff" * 200
    path.write_bytes(raw)
    with (
        pytest.raises(LogbookError) as caught,
        closing(Logbook.open(path, bring_up_to_date)) as opened,
    ):
        opened.attempts(ann.id)
    assert caught.value.trouble == "damaged"


def test_a_file_that_another_program_holds_is_locked(
    path: Path, logbook: Logbook, ann: Learner, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("trainer.logbook.opening._WAIT_MS", 50)
    with closing(Logbook.open(path, bring_up_to_date)) as impatient:
        holder = sqlite3.connect(path)
        holder.execute("BEGIN IMMEDIATE")
        with pytest.raises(LogbookError) as caught:
            impatient.add(ann.id, entry_of(1))
        assert caught.value.trouble == "locked"
        holder.rollback()
        holder.close()
        assert impatient.add(ann.id, entry_of(1))
    assert logbook.count() == 1


def test_a_full_disk_is_told_and_nothing_half_is_kept(
    logbook: Logbook, ann: Learner, path: Path
) -> None:
    logbook.add(ann.id, entry_of(1))
    with logbook._engine.connect() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar()
        connection.exec_driver_sql(f"PRAGMA max_page_count={pages}")
    big = replace(entry_of(2), coupon={"id": "x" * 200_000}, digest="b" * 64)
    with pytest.raises(LogbookError) as caught:
        logbook.add(ann.id, big)
    assert caught.value.trouble == "full"
    assert logbook.count() == 1
    assert plain(path, "PRAGMA integrity_check") == [("ok",)]
    with logbook._engine.connect() as connection:
        connection.exec_driver_sql("PRAGMA max_page_count=1000000")
    assert logbook.add(ann.id, big)


def test_days_are_asked_from_one_on(logbook: Logbook, ann: Learner) -> None:
    logbook.add_all(ann.id, [replace(entry_of(n), at=BEGIN + timedelta(days=n)) for n in range(5)])
    since = (BEGIN + timedelta(days=3)).astimezone().date().isoformat()
    assert {tally.day for tally in logbook.tallies(ann.id, since)} == {
        (BEGIN + timedelta(days=n)).astimezone().date().isoformat() for n in (3, 4)
    }


def test_the_newest_lines_are_those_of_the_latest_days(logbook: Logbook, ann: Learner) -> None:
    logbook.add_all(
        ann.id, [replace(entry_of(n), at=BEGIN + timedelta(hours=8 * n)) for n in range(90)]
    )
    every = logbook.tallies(ann.id)
    some = logbook.tallies(ann.id, newest_lines=12)
    assert [t for t in some if t.kind != "line"] == [t for t in every if t.kind != "line"]
    assert set(some) < set(every)
    assert calls_of(some, newest=12) == calls_of(every, newest=12)
    first = calls_of(every, before_feedback=True, newest=12)
    assert calls_of(some, before_feedback=True, newest=12) == first
    assert len(first) == 12
