"""Reports of trouble: what an error or a crash leaves behind, and what the next start finds. No Qt.

Each running program keeps a file, locked as long as it lives, which Python's fault handler fills if
the process dies of a fault. Closed as it should be, the program takes the file away. So a file that
nobody holds tells how its program ended: of a fault, or from outside.
"""

from __future__ import annotations

import faulthandler
import os
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final, TextIO

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

__all__ = ["Aftermath", "Repeats", "Session", "aftermath", "shortened", "write_report"]

MOST_REPORTS: Final = 30
"""Reports that are kept; the oldest go."""

_FATAL: Final = ("Fatal Python error: ", "Windows fatal exception: ")
_LOCKED_AT: Final = 1 << 30
"""Where Windows locks a byte: what lies before it stays writable."""


class Session:
    """The file of a program that runs.

    Parameters
    ----------
    folder
        Of the files of all that run.
    told
        Versions, for the report that the file may become.
    """

    def __init__(self, folder: Path, told: str) -> None:
        self._path = folder / f"{os.getpid()}-{time.time_ns()}.txt"
        self._told = told
        self._file: TextIO | None = None

    def begin(self) -> bool:
        """Make the file and have faults written there; return whether that can be."""
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            file = self._path.open("x", encoding="utf-8", errors="backslashreplace")
        except OSError:
            return False
        if not _locked(file):
            file.close()
            self._path.unlink(missing_ok=True)
            return False
        self._file = file
        self.note(self._told)
        faulthandler.enable(file)
        return True

    def note(self, line: str) -> None:
        """Write a line for the report that may have to be made."""
        if self._file is not None:
            self._file.write(line + "\n")
            self._file.flush()

    def end(self) -> None:
        """The program closes as it should: nothing is left behind."""
        if self._file is None:
            return
        faulthandler.disable()
        self._file.close()
        self._file = None
        try:
            self._path.unlink(missing_ok=True)
        except OSError:
            return


def _locked(file: TextIO) -> bool:
    """Lock a file for as long as this process lives; return whether nobody else has it."""
    try:
        if sys.platform == "win32":
            file.seek(_LOCKED_AT)
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
            file.seek(0)
        else:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


@dataclass(frozen=True, slots=True)
class Aftermath:
    """How a program ended that didn't close as it should.

    Parameters
    ----------
    crashed
        Whether it died of a fault that says so; else it was ended from outside, or the power went.
    report
        The report that was made of it, if there is one.
    """

    crashed: bool
    report: Path | None


def aftermath(running: Path, reports: Path) -> Aftermath | None:
    """Return how the last program ended, unless it closed as it should; what it left is cleared up.

    Parameters
    ----------
    running
        The folder of the files of all that run, of this program too.
    reports
        Where the report of a crash goes.
    """
    found: list[Aftermath] = []
    try:
        left = sorted(running.glob("*.txt"), key=lambda path: path.stat().st_mtime)
    except OSError:
        return None
    for path in left:
        text = _left_behind(path)
        if text is None:
            continue
        crashed = any(sign in text for sign in _FATAL)
        report = write_report(reports, text) if crashed else None
        found.append(Aftermath(crashed, report))
    # Of several the one that tells most.
    return max(found, key=lambda one: one.crashed, default=None)


def _left_behind(path: Path) -> str | None:
    """Take away a file that no program holds, and return what it says; None if one holds it."""
    try:
        with path.open("r+", encoding="utf-8", errors="replace") as file:
            if not _locked(file):
                return None
            text = file.read()
        path.unlink()
    except OSError:
        return None
    return text


def write_report(folder: Path, text: str) -> Path | None:
    r"""Write a report without this person's paths; return where it lies, None if it can't be.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     report = write_report(Path(folder), f"lost {Path.home()}/a.json")
    ...     report.read_text(encoding="utf-8")
    'lost ~/a.json\n'
    """
    stamp = time.strftime("%Y-%m-%d %H.%M.%S")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        olds = sorted(folder.glob("report *.txt"), key=lambda path: path.stat().st_mtime)
        for old in olds[: max(0, len(olds) - MOST_REPORTS + 1)]:
            old.unlink()
        path = folder / f"report {stamp}.txt"
        number = 1
        while path.exists():
            number += 1
            path = folder / f"report {stamp} {number}.txt"
        path.write_text(
            shortened(text).rstrip() + "\n", encoding="utf-8", errors="backslashreplace"
        )
    except OSError:
        return None
    return path


def shortened(text: str) -> str:
    """Return `text` with the places of this program, of Python and of the home left out.

    Who gets a report needn't learn where somebody's files lie; the line in the code is enough.
    """
    own = Path(__file__).resolve().parents[1]
    places = {str(own): "", sys.base_prefix: "python", sys.prefix: "python"}
    # The longest first: an environment may lie in the folder of the program, or the other way.
    for place, short in sorted(places.items(), key=lambda one: -len(one[0])):
        text = text.replace(f"{place}{os.sep}", f"{short}{os.sep}" if short else "")
    home = str(Path.home())
    return text.replace(home, "~") if len(home) > 1 else text


class Repeats:
    """Keeps one trouble that comes again and again from being said again and again.

    Parameters
    ----------
    clock
        Seconds.

    Examples
    --------
    >>> now = iter([0.0, 1.0, 61.0])
    >>> repeats = Repeats(lambda: next(now))
    >>> [repeats.says("x"), repeats.says("x"), repeats.says("x")]
    [True, False, True]
    """

    PAUSE: Final = 60.0
    """Seconds until the same is said again."""
    MOST: Final = 3
    """Times that the same is said in all."""
    ALTOGETHER: Final = 12
    """Times that anything is said."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._said: dict[str, tuple[int, float]] = {}

    def says(self, sign: str) -> bool:
        """Return whether to say now what has that sign."""
        now = self._clock()
        times, last = self._said.get(sign, (0, now - self.PAUSE))
        altogether = sum(count for count, _ in self._said.values())
        if times >= self.MOST or now - last < self.PAUSE or altogether >= self.ALTOGETHER:
            return False
        self._said[sign] = (times + 1, now)
        return True
