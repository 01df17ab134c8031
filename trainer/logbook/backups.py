"""Dated copies of the logbook, thinned as they age; a whole copy to carry away, and back again.

Copies are made by SQLite's own online backup, so that one taken while attempts are written is
sound; each is examined before it counts, written beside its place and moved there in one step.
"""

from __future__ import annotations

import os
import re
import sqlite3
from collections.abc import Sequence
from contextlib import closing, suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Final

from trainer.logbook.erasing import Erasure, erase_in
from trainer.logbook.opening import HEAD, LogbookError, Trouble

__all__ = ["back_up", "backups", "erase_from", "keep_backups", "restore", "thinned"]

_NAME: Final = re.compile(r"logbook-(\d{8}T\d{6})Z\.sqlite3")
_EVERY: Final = timedelta(hours=20)
"""Between copies that are made by themselves: about one for each day of practice."""

_DAILY, _WEEKLY, _MONTHLY = 7, 8, 24


def back_up(path: Path, target: Path) -> None:
    """Copy the logbook at `path` to `target`, whole and examined, or leave `target` as it was.

    Raises
    ------
    LogbookError
        If the logbook is damaged, or the copy can't be written.
    """
    beside = target.with_name(target.name + ".new")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        with (
            closing(sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)) as source,
            closing(sqlite3.connect(beside)) as copy,
        ):
            source.backup(copy)
            copy.execute("PRAGMA journal_mode=DELETE")
        _examine(beside)
        with beside.open("rb+") as file:
            os.fsync(file.fileno())
        beside.replace(target)
    except (OSError, sqlite3.Error) as error:
        raise LogbookError(_trouble(error), target, str(error)) from error
    finally:
        with suppress(OSError):
            beside.unlink(missing_ok=True)


def restore(copy: Path, path: Path, now: datetime) -> Path | None:
    """Put the logbook back from a copy; return where what was there now lies, if it was there.

    The logbook must be shut. Nothing is deleted: a damaged file is put aside under a dated name.

    Raises
    ------
    LogbookError
        If the copy is damaged, newer or no logbook; the logbook is as it was then.
    """
    try:
        _examine(copy)
        fresh = path.with_name(path.name + ".new")
        fresh.write_bytes(copy.read_bytes())
        with fresh.open("rb+") as file:
            os.fsync(file.fileno())
        before: Path | None = None
        if path.exists():
            before = path.with_name(f"{path.stem}-before-{_stamp(now)}{path.suffix}")
            path.replace(before)
            for end in ("-wal", "-shm"):
                with suppress(FileNotFoundError):
                    path.with_name(path.name + end).replace(before.with_name(before.name + end))
        fresh.replace(path)
    except (OSError, sqlite3.Error) as error:
        raise LogbookError(_trouble(error), copy, str(error)) from error
    return before


def _examine(path: Path) -> None:
    """Raise unless the file is a sound logbook of this version or an older one."""
    with closing(sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)) as plain:
        found = plain.execute("PRAGMA quick_check(1)").fetchone()
        if found != ("ok",):
            raise LogbookError("damaged", path, str(found and found[0]))
        try:
            (revision,) = plain.execute("SELECT version_num FROM alembic_version").fetchone()
        except (sqlite3.OperationalError, TypeError) as error:
            raise LogbookError("damaged", path, "not a logbook") from error
        if str(revision) > HEAD:
            raise LogbookError("newer", path, str(revision))


def _trouble(error: Exception) -> Trouble:
    said = str(error).lower()
    if "full" in said or "no space" in said:
        return "full"
    if "malformed" in said or "not a database" in said:
        return "damaged"
    return "locked" if "locked" in said else "unwritable"


def _stamp(when: datetime) -> str:
    return when.astimezone(UTC).strftime("%Y%m%dT%H%M%S")


def backups(folder: Path) -> list[tuple[datetime, Path]]:
    """The dated copies in a folder, oldest first."""
    found = []
    for file in folder.glob("logbook-*.sqlite3"):
        named = _NAME.fullmatch(file.name)
        if named:
            with suppress(ValueError):
                made = datetime.strptime(named[1], "%Y%m%dT%H%M%S").replace(tzinfo=UTC)
                found.append((made, file))
    return sorted(found)


def keep_backups(path: Path, folder: Path, now: datetime) -> Path | None:
    """Make a dated copy if the newest is a day old, thin the older ones; return the new copy."""
    there = backups(folder)
    made: Path | None = None
    # A clock that was set back must not keep copies from being made.
    if not there or not timedelta(0) <= now - there[-1][0] < _EVERY:
        made = folder / f"logbook-{_stamp(now)}Z.sqlite3"
        back_up(path, made)
        there = backups(folder)
    keep = thinned([when for when, _ in there], now)
    for when, file in there:
        if when not in keep:
            with suppress(OSError):
                file.unlink()
    return made


def thinned(made: list[datetime], now: datetime) -> set[datetime]:
    """Return which copies stay: a week's days, two months' weeks, two years' months, the newest.

    Of each day, week and month the first copy stays, so that one that stays once goes on staying.

    Examples
    --------
    >>> day = datetime(2026, 3, 1, tzinfo=UTC)
    >>> made = [day + timedelta(days=n) for n in range(60)]
    >>> len(thinned(made, made[-1]))
    18
    """
    keep: set[datetime] = set(made[-1:])
    for reach, unit in ((timedelta(days=_DAILY), "%Y-%j"), (timedelta(weeks=_WEEKLY), "%G-%V"),
                        (timedelta(days=31 * _MONTHLY), "%Y-%m")):  # fmt: skip
        first: dict[str, datetime] = {}
        for when in made:
            # A date to come was made by a clock since set back: it counts as of now.
            if now - when <= reach:
                first.setdefault(when.strftime(unit), when)
        keep |= set(first.values())
    return keep


def erase_from(folder: Path, erasures: Sequence[Erasure]) -> None:
    """Erase learners, or what they did before a day, from every dated copy too."""
    for _, file in backups(folder):
        try:
            erase_in(file, erasures, missing_ok=True)
        except sqlite3.Error as error:
            raise LogbookError(_trouble(error), file, str(error)) from error
