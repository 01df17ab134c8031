"""Where the bench's calls go: into the logbook, or, while that can't be, into a file kept aside.

A logbook that is locked, full, damaged or newer must not stop practice: calls are then added as
lines to a file beside it, and taken in when the logbook opens again. A line is taken away from
that file only once the logbook has it on disk; a line that can't be read stays.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from trainer.logbook.backups import erase_from, keep_backups
from trainer.logbook.erasing import Erasure
from trainer.logbook.store import Learner, Logbook, LogbookError, Migrate
from trainer.records import Entry, Records, read_entries

__all__ = ["Keeping"]

_AT_ONCE: Final = 500
"""Entries taken in by one transaction: a kill in between loses none, and repeats few."""


class Keeping:
    """A keeper of calls that writes to a logbook while it can.

    Parameters
    ----------
    path
        The logbook's file.
    aside
        The file of lines beside it.
    migrate
        Brings an older file's tables up to date.
    first
        What the first learner is called where there is none yet.

    `trouble` is what keeps the logbook shut, or None; `logbook` is the open one, or None.
    """

    def __init__(self, path: Path, aside: Records, migrate: Migrate, first: str) -> None:
        self.path = path
        self.backups = path.with_name("backups")
        self._aside = aside
        self._migrate = migrate
        self._first = first
        self._lock = threading.RLock()
        self.logbook: Logbook | None = None
        self.trouble: LogbookError | None = None
        self.learner: Learner | None = None
        self.kept_aside = 0

    def open(self, learner: str | None = None) -> bool:
        """Open the logbook and take in what was kept aside; return whether it is open.

        Parameters
        ----------
        learner
            Id of whose calls come next; the first by name if nobody has that id.
        """
        with self._lock:
            if self.logbook is not None:
                self.logbook.close()
            self.logbook, self.trouble = None, None
            try:
                logbook = Logbook.open(self.path, self._migrate)
                everybody = logbook.learners() or [logbook.add_learner(self._first)]
                self.learner = next((one for one in everybody if one.id == learner), everybody[0])
                self.logbook = logbook
                self._take_in(logbook, {one.id for one in everybody})
            except LogbookError as error:
                self.trouble = error
            return self.logbook is not None

    @property
    def waiting(self) -> bool:
        """Whether anything lies aside."""
        return self._aside.path.exists()

    def choose(self, learner: Learner) -> None:
        """Whose the calls are from now on."""
        with self._lock:
            self.learner = learner

    def add(self, entry: Entry) -> None:
        """Keep a call: in the logbook, or aside if that can't be.

        Raises
        ------
        RecordsError
            If it could be kept in neither.
        """
        with self._lock:
            if self.learner is not None and entry.learner is None:
                entry = _of(entry, self.learner.id)
            if self.logbook is not None and self.learner is not None:
                try:
                    self.logbook.add(self.learner.id, entry)
                except LogbookError as error:
                    self.trouble = error
                else:
                    return
            self._aside.add(entry)
            self.kept_aside += 1

    def erase(self, learner: Learner) -> None:
        """Erase a learner wholly: from the logbook, its dated copies, and what is kept aside.

        Whoever is first by name is at the bench then; if nobody is left, a new learner.
        """
        self.erase_all([Erasure(learner.id)])

    def erase_all(self, erasures: Sequence[Erasure]) -> None:
        """Erase learners, or what they did before a day: here, and from the dated copies."""
        with self._lock:
            if self.logbook is None:
                return
            self.logbook.erase_all(erasures)
            erase_from(self.backups, erasures)
            everybody = self.logbook.learners() or [self.logbook.add_learner(self._first)]
            if self.learner is not None and self.learner.id not in {one.id for one in everybody}:
                self.learner = everybody[0]

    def back_up(self) -> None:
        """Make a dated copy if one is due, and thin older ones; `trouble` says if it can't be."""
        if self.logbook is not None:
            try:
                keep_backups(self.path, self.backups, datetime.now(UTC))
            except LogbookError as error:
                self.trouble = error

    def shut(self) -> None:
        """Show no paper that was opened: whoever comes now has not typed its passphrase."""
        if self.logbook is not None:
            self.logbook.opened.clear()

    def close(self) -> None:
        """Let go of the logbook."""
        with self._lock:
            if self.logbook is not None:
                self.logbook.close()
                self.logbook = None

    def _take_in(self, logbook: Logbook, known: set[str]) -> None:
        """Take in what was kept aside; leave only lines that can't be read."""
        path = self._aside.path
        try:
            lines = [line for line in path.read_bytes().split(b"\n") if line.strip()]
        except FileNotFoundError:
            return
        except OSError as error:
            raise LogbookError("unwritable", path, error.strerror or str(error)) from error
        assert self.learner is not None
        read = list(zip(read_entries(lines), lines, strict=True))
        entries = [entry for entry, _ in read if entry is not None]
        for start in range(0, len(entries), _AT_ONCE):
            some = entries[start : start + _AT_ONCE]
            # Whoever was erased since, or made on another machine, isn't brought back by name.
            logbook.add_all(
                self.learner.id,
                [e if e.learner is None or e.learner in known else _of(e, self.learner.id)
                 for e in some],
            )  # fmt: skip
        _leave(path, [line for entry, line in read if entry is None])
        self.kept_aside = 0


def _of(entry: Entry, learner: str) -> Entry:
    return replace(entry, learner=learner)


def _leave(path: Path, lines: list[bytes]) -> None:
    """Leave only `lines` in the file, all or nothing; remove it if there are none."""
    try:
        if not lines:
            path.unlink()
            return
        beside = path.with_name(path.name + ".new")
        with beside.open("wb") as file:
            file.write(b"".join(line + b"\n" for line in lines))
            file.flush()
            os.fsync(file.fileno())
        beside.replace(path)
    except OSError as error:
        # The logbook has them all: taking them in again next time changes nothing.
        raise LogbookError("unwritable", path, error.strerror or str(error)) from error
