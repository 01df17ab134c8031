"""Result files opened: each whole or not at all, with one passphrase for all that share it. No Qt.

Opening is all that takes long, so it goes on beside the window; it reads files and nothing else.
"""

from __future__ import annotations

import threading
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from exercises.file_faults import FileError, TrayFault
from exercises.sitting.result import Result
from exercises.sitting.result_file import read_result
from trainer.sealing.key import SealError
from trainer.sealing.result_files import SUFFIXES, open_sealed
from trainer.sealing.seal import Opener

__all__ = ["Opened", "Opening", "open_results", "result_files"]


@dataclass(frozen=True)
class Opened:
    """What came of opening one file.

    Parameters
    ----------
    path
        The file.
    result
        What it holds; None if it couldn't be opened.
    seal
        What is wrong with its seal, if that is it.
    faults
        What is wrong with what it holds, or with reading it, if that is it.
    """

    path: Path
    result: Result | None = None
    seal: SealError | None = None
    faults: tuple[TrayFault, ...] = ()

    @property
    def wants_passphrase(self) -> bool:
        """Whether another passphrase might open it."""
        return self.seal is not None and self.seal.trouble == "passphrase"


@dataclass(slots=True)
class Opening:
    """How far the opening of several files is; asked and stopped from another thread.

    Parameters
    ----------
    of
        How many there are.
    """

    of: int
    _done: int = 0
    _stop: threading.Event = field(default_factory=threading.Event)

    @property
    def done(self) -> int:
        """How many have been seen to."""
        return self._done

    def went_on(self) -> None:
        """One more has been."""
        self._done += 1

    def stop(self) -> None:
        """Open no more."""
        self._stop.set()

    @property
    def stopped(self) -> bool:
        """Whether no more are to be opened."""
        return self._stop.is_set()


def result_files(paths: Iterable[Path]) -> list[Path]:
    """Return the files that are meant: of a folder, the results that lie in it; each once."""
    found: dict[Path, None] = {}
    for path in paths:
        inside = sorted(path.glob(f"*{SUFFIXES['result']}")) if path.is_dir() else [path]
        found.update(dict.fromkeys(inside))
    return list(found)


def open_results(
    paths: Sequence[Path], passphrase: str, opening: Opening | None = None
) -> list[Opened]:
    """Return what came of opening each file, in their order; none after it was stopped.

    Parameters
    ----------
    passphrase
        Tried on each; the key of a sitting is derived once for all its results.
    opening
        Is told how far it is.
    """
    opener, told = Opener(passphrase), opening or Opening(len(paths))
    found: list[Opened] = []
    for path in paths:
        if told.stopped:
            break
        found.append(_open(path, opener))
        told.went_on()
    return found


def _open(path: Path, opener: Opener) -> Opened:
    try:
        body = open_sealed(path, opener, "result").body
        return Opened(path, read_result(body, path.name))
    except SealError as error:
        return Opened(path, seal=error)
    except FileError as error:
        return Opened(path, faults=error.faults)
