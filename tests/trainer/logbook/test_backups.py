"""Copies of the logbook: sound, dated, thinned, put back, and free of who was erased."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from pathlib import Path

import pytest

from tests.trainer.logbook.entries import entry_of
from trainer.logbook.backups import (
    back_up,
    backups,
    erase_from,
    keep_backups,
    restore,
    thinned,
)
from trainer.logbook.erasing import Erasure
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.store import Learner, Logbook, LogbookError

NOW = datetime(2026, 6, 1, 8, 0, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "logbook.sqlite3"


@pytest.fixture
def ann(path: Path) -> Learner:
    with closing(Logbook.open(path, bring_up_to_date)) as logbook:
        learner = logbook.add_learner("Bench 1")
        logbook.add_all(learner.id, [entry_of(number) for number in range(50)])
    return learner


def count(path: Path) -> int:
    with closing(Logbook.open(path, bring_up_to_date)) as logbook:
        return logbook.count()


def test_a_copy_of_a_logbook_in_use_is_whole(path: Path, ann: Learner, tmp_path: Path) -> None:
    with closing(Logbook.open(path, bring_up_to_date)) as logbook:
        logbook.add(ann.id, entry_of(60))
        back_up(path, tmp_path / "carry" / "copy.sqlite3")
        logbook.add(ann.id, entry_of(61))
    assert count(tmp_path / "carry" / "copy.sqlite3") == 51
    assert not list((tmp_path / "carry").glob("*.new"))


def test_it_is_put_back_and_what_was_there_is_kept(
    path: Path, ann: Learner, tmp_path: Path
) -> None:
    copy = tmp_path / "copy.sqlite3"
    back_up(path, copy)
    path.write_bytes(b"damaged" * 1000)
    before = restore(copy, path, NOW)
    assert count(path) == 50
    assert before is not None
    assert before.read_bytes().startswith(b"damaged")
    before.unlink()
    path.unlink()
    assert restore(copy, path, NOW) is None
    assert count(path) == 50


def test_no_bad_copy_is_put_back(path: Path, ann: Learner, tmp_path: Path) -> None:
    good = path.read_bytes()
    bad = tmp_path / "bad.sqlite3"
    bad.write_bytes(b"nothing " * 900)
    with pytest.raises(LogbookError) as caught:
        restore(bad, path, NOW)
    assert caught.value.trouble == "damaged"
    newer = tmp_path / "newer.sqlite3"
    back_up(path, newer)
    with closing(sqlite3.connect(newer)) as plain, plain:
        plain.execute("UPDATE alembic_version SET version_num = '9001'")
    with pytest.raises(LogbookError) as caught:
        restore(newer, path, NOW)
    assert caught.value.trouble == "newer"
    stranger = tmp_path / "stranger.sqlite3"
    with closing(sqlite3.connect(stranger)) as plain:
        plain.execute("CREATE TABLE recipes (id)")
    with pytest.raises(LogbookError) as caught:
        restore(stranger, path, NOW)
    assert caught.value.trouble == "damaged"
    assert path.read_bytes() == good


def test_a_copy_that_cannot_be_written_leaves_the_older_one(
    path: Path, ann: Learner, tmp_path: Path
) -> None:
    target = tmp_path / "copy.sqlite3"
    target.mkdir()
    with pytest.raises(LogbookError):
        back_up(path, target)
    with pytest.raises(LogbookError):
        back_up(tmp_path / "none.sqlite3", tmp_path / "other.sqlite3")
    assert not (tmp_path / "other.sqlite3").exists()


def test_copies_come_by_themselves_once_a_day(path: Path, ann: Learner, tmp_path: Path) -> None:
    folder = tmp_path / "backups"
    assert keep_backups(path, folder, NOW) is not None
    assert keep_backups(path, folder, NOW + timedelta(hours=3)) is None
    assert keep_backups(path, folder, NOW + timedelta(hours=21)) is not None
    # A clock set back by a month.
    assert keep_backups(path, folder, NOW - timedelta(days=30)) is not None
    assert len(backups(folder)) == 3
    (folder / "logbook-of-mine.sqlite3").write_bytes(b"not ours")
    assert len(backups(folder)) == 3


def test_copies_are_thinned_as_they_age() -> None:
    kept: set[datetime] = set()
    for day in range(800):
        now = NOW + timedelta(days=day)
        kept = thinned(sorted({*kept, now}), now)
    ages = sorted((NOW + timedelta(days=799) - when).days for when in kept)
    assert ages[:7] == list(range(7))
    assert len([age for age in ages if age <= 56]) <= 8 + 9
    assert 25 <= len(ages) <= 45
    # Two years back there is still one within five weeks of any day.
    assert max(b - a for a, b in pairwise(ages)) <= 35
    assert ages[-1] >= 700


def test_who_is_erased_is_erased_from_copies_too(path: Path, ann: Learner, tmp_path: Path) -> None:
    folder = tmp_path / "backups"
    made = keep_backups(path, folder, NOW)
    assert made is not None
    assert b"Bench 1" in made.read_bytes()
    erase_from(folder, [Erasure(ann.id)])
    assert b"Bench 1" not in made.read_bytes()
    assert ann.id.encode() not in made.read_bytes()
    assert count(made) == 0
