"""The journal of a sitting that runs: what was done, sealed, on the disk before anything goes on.

A line that was changed, taken out, moved or repeated is refused; what stands before it can be gone
on with, if somebody decides so. What a crash or a power cut tore is the last line only: it is
dropped, and that is said. That lines are missing at the end can't be seen from the file itself:
whoever owns the machine can put an older copy in its place.
"""

from __future__ import annotations

import itertools
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO, Final, Literal

from exercises.strict_json import Json
from trainer.sealing.held_files import (
    flush,
    hold_soon,
    is_at,
    new_file,
    replaced,
    sync_folder,
    write_out,
)
from trainer.sealing.journal_lines import (
    Chain,
    all_of,
    events_in,
    header_of,
    key_for,
    packed,
    written,
)
from trainer.sealing.key import Key
from trainer.sealing.seal import Opener
from trainer.shop.locking import is_free

__all__ = [
    "DAMAGED",
    "SUFFIX",
    "Hindrance",
    "Journal",
    "JournalError",
    "Resumed",
    "SoundPart",
    "left",
]

SUFFIX: Final = ".sitting-journal"
DAMAGED: Final = ".damaged"
"""Ends the name of a journal that was damaged, kept beside the one that its sound part became."""

Hindrance = Literal["unwritable", "held", "gone"]


class JournalError(Exception):
    """An event could not be put on the disk, or a journal not be taken.

    Parameters
    ----------
    hindrance
        ``unwritable``: a full or lost disk; ``held``: another program has it; ``gone``: another
        file lies in its place, or none.
    path
        Of the journal.
    reason
        What the system said.
    """

    def __init__(self, hindrance: Hindrance, path: Path, reason: str) -> None:
        self.hindrance: Hindrance = hindrance
        self.path, self.reason = path, reason
        super().__init__(f"{path}: {reason}")


class Journal:
    """A journal that is open and held, so that no other program writes to it.

    Examples
    --------
    >>> import tempfile
    >>> from trainer.sealing.key import Cost
    >>> key = Key.made("three weathered herons", Cost(log_n=4))
    >>> with tempfile.TemporaryDirectory() as name:
    ...     path = Path(name) / f"a{SUFFIX}"
    ...     journal = Journal.create(path, key, {"title": "Friday"})
    ...     journal.append({"kind": "shown", "item": 0})
    ...     journal.close()
    ...     resumed = Journal.resume(path, "three weathered herons")
    ...     resumed.journal.discard()
    >>> resumed.head, resumed.events, resumed.torn
    ({'title': 'Friday'}, ({'kind': 'shown', 'item': 0},), False)
    """

    def __init__(self, path: Path, file: BinaryIO, whole: bytes, chain: Chain, key: Key) -> None:
        self.path, self.key = path, key
        # All that it holds stays in memory: if somebody removes the file, it is written anew.
        self._file, self._whole, self._chain = file, bytearray(whole), chain
        # Whether the folder on the disk has its name for this file.
        self._named = True

    @classmethod
    def create(
        cls,
        path: Path,
        key: Key,
        head: Mapping[str, Json],
        first: Sequence[Mapping[str, Json]] = (),
    ) -> Journal:
        """Begin a journal; when this returns it is on the disk.

        Parameters
        ----------
        path
            A file that isn't there yet; its folder is made.
        key
            Of the sitting; whoever has its passphrase can resume.
        head
            What it takes to resume: the sitting itself.
        first
            Events that it begins with: there with it, or not at all.

        Raises
        ------
        JournalError
            If it can't be written; nothing is left then.
        """
        whole, chain = written(key, (head, *first))
        try:
            file = new_file(path, whole)
        except OSError as error:
            raise JournalError("unwritable", path, error.strerror or str(error)) from error
        return cls(path, file, whole, chain, key)

    @classmethod
    def resume(cls, path: Path, secret: Key | str | Opener) -> Resumed:
        """Take up a journal that was left, and go on with it.

        Parameters
        ----------
        path
            Of the journal.
        secret
            The passphrase of its sitting, or the key.

        Raises
        ------
        JournalError
            If it can't be opened, or another program has it.
        SealError
            If it can't be unsealed. The file is left as it is.
        """
        file = _held(path)
        try:
            data = all_of(file)
            header = header_of(data)
            key = key_for(header, secret)
            read = events_in(data, header, key)
            if read.size < len(data):
                file.truncate(read.size)
                flush(file)
        except OSError as error:
            file.close()
            raise JournalError("unwritable", path, error.strerror or str(error)) from error
        except BaseException:
            file.close()
            raise
        journal = cls(path, file, data[: read.size], read.chain, key)
        return Resumed(journal, read.events[0], read.events[1:], read.size < len(data))

    @classmethod
    def sound_part(cls, path: Path, secret: Key | str | Opener) -> SoundPart:
        """Return what is whole of a journal that was changed or damaged: all before that place.

        Nothing is written.

        Raises
        ------
        JournalError, SealError
            As `resume` does; ``changed`` only if not even its beginning is whole.
        """
        with _held(path) as file:
            try:
                data = all_of(file)
            except OSError as error:
                raise JournalError("unwritable", path, error.strerror or str(error)) from error
        header = header_of(data)
        key = key_for(header, secret)
        read = events_in(data, header, key, sound=True)
        return SoundPart(key, read.events[0], read.events[1:], len(data) - read.size)

    @classmethod
    def cut_to_sound_part(cls, path: Path, key: Key) -> Path:
        """Cut a damaged journal where it stops being whole, so that it can be resumed.

        What it was is on the disk beside it before that. Returns where.

        Raises
        ------
        JournalError, SealError
            As `sound_part` does; the journal is as it was then.
        """
        with _held(path) as file:
            try:
                data = all_of(file)
                header = header_of(data)
                read = events_in(data, header, key_for(header, key), sound=True)
                kept = _free_name(path)
                new_file(kept, data).close()
                file.truncate(read.size)
                flush(file)
            except OSError as error:
                raise JournalError("unwritable", path, error.strerror or str(error)) from error
        return kept

    def append(self, event: Mapping[str, Json]) -> None:
        """Put an event on the disk; when this returns it is there.

        Raises
        ------
        JournalError
            If it can't be. What was there is untouched, and the next call tries the same place.
        """
        line, chain = self._chain.closed(packed(event))
        try:
            self._stand_ready()
            self._file.seek(len(self._whole))
            write_out(self._file, line)
        except OSError as error:
            self._cut()
            raise JournalError("unwritable", self.path, error.strerror or str(error)) from error
        self._whole += line
        self._chain = chain

    @property
    def size(self) -> int:
        """How long it is, bytes."""
        return len(self._whole)

    def renew(self, head: Mapping[str, Json], events: Sequence[Mapping[str, Json]]) -> None:
        """Write it anew with other events: at every moment the old one is there whole, or the new.

        Raises
        ------
        JournalError
            If that can't be; the old one stays, and can be appended to.
        """
        whole, chain = written(self.key, (head, *events))
        try:
            self._stand_ready()
            file = replaced(self.path, self._file, whole)
        except OSError as error:
            raise JournalError("unwritable", self.path, error.strerror or str(error)) from error
        self._file, self._whole, self._chain = file, bytearray(whole), chain
        self._named = False

    def _stand_ready(self) -> None:
        """See that the file is there, as long as it should be; make it anew if somebody took it."""
        size = len(self._whole)
        if self._file.closed or not self.path.exists():
            self._file.close()
            self._file = new_file(self.path, bytes(self._whole))
            self._named = True
            return
        if not is_at(self._file, self.path):
            raise JournalError("gone", self.path, "another file lies in its place")
        if not self._named:
            sync_folder(self.path.parent)
            self._named = True
        found = os.fstat(self._file.fileno()).st_size
        if found > size:
            self._file.truncate(size)
        elif found < size:
            self._file.seek(0)
            write_out(self._file, bytes(self._whole))

    def _cut(self) -> None:
        """Take a torn line off again, if that can be; else the next call does, or `resume`."""
        try:
            self._file.truncate(len(self._whole))
        except (OSError, ValueError):  # ValueError: it is closed, since none could be made anew
            return

    def close(self) -> None:
        """Let go of the file, and leave it to be resumed."""
        self._file.close()

    def discard(self) -> None:
        """Let go of the file and remove it: what it held is safe elsewhere.

        Raises
        ------
        OSError
            If it can't be removed.
        """
        self._file.close()
        self.path.unlink(missing_ok=True)


@dataclass(frozen=True, slots=True)
class Resumed:
    """A journal that was taken up.

    Parameters
    ----------
    journal
        To go on with.
    head, events
        What it began with, and what was done since, in order.
    torn
        Whether the end of it was torn, and dropped: nothing that was acknowledged.
    """

    journal: Journal
    head: dict[str, Json]
    events: tuple[dict[str, Json], ...]
    torn: bool


@dataclass(frozen=True, slots=True)
class SoundPart:
    """What is whole of a journal that was damaged.

    Parameters
    ----------
    key
        Of its sitting.
    head, events
        What it began with, and what was done until the damage, in order.
    lost
        How much stands after that, bytes.
    """

    key: Key
    head: dict[str, Json]
    events: tuple[dict[str, Json], ...]
    lost: int


def left(folder: Path) -> tuple[Path, ...]:
    """Return the journals in a folder that no program holds, the last changed first.

    Examples
    --------
    >>> left(Path("nowhere"))
    ()
    """
    found = [path for path in folder.glob(f"*{SUFFIX}") if is_free(path)]
    return tuple(sorted(found, key=_changed, reverse=True))


def _changed(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:
        return 0.0


def _held(path: Path) -> BinaryIO:
    """Open a journal, so that no other program has it."""
    try:
        file = path.open("r+b", buffering=0)
    except OSError as error:
        hindrance: Hindrance = "gone" if isinstance(error, FileNotFoundError) else "unwritable"
        raise JournalError(hindrance, path, error.strerror or str(error)) from error
    try:
        # Another program may have given the name to a newer file meanwhile, and let go of this.
        free = hold_soon(file) and is_at(file, path)
    except OSError as error:
        file.close()
        raise JournalError("unwritable", path, error.strerror or str(error)) from error
    if not free:
        file.close()
        raise JournalError("held", path, "another program has it")
    return file


def _free_name(path: Path) -> Path:
    names = (path.with_name(f"{path.name}{DAMAGED}{n or ''}") for n in itertools.count())
    return next(name for name in names if not name.exists())
