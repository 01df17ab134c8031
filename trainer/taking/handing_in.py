"""What was sat, handed in: graded, sealed, on the disk; then into the logbook. No Qt.

The sitting's journal goes only once its result lies sealed on the disk, has been read back, and
has been offered to the logbook: a kill before that hands the same result in again.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

from exercises.sitting.result import Result
from exercises.sitting.result_file import read_result, result_bytes
from exercises.writing import replace_file
from trainer.logbook.store import Logbook, LogbookError
from trainer.school.merging import Merged, merge
from trainer.sealing.key import Key
from trainer.sealing.result_files import SUFFIXES, open_sealed, result_name, sweep, write_sealed
from trainer.sealing.whose import MARK
from trainer.taking.sitting import Place, Sitting, counts

__all__ = ["HandedIn", "earlier_results", "hand_in", "let_go", "save_copy", "take_in"]


@dataclass(frozen=True, slots=True)
class HandedIn:
    """What became of a sitting. Nothing here says how it went.

    Parameters
    ----------
    result
        What was handed in.
    file
        Where it lies, sealed.
    places
        How each coupon stood at the end.
    merged
        What came of taking it into the logbook; None if that could not be.
    trouble
        Why it could not, in the system's words.
    key
        Of the sitting, by which its paper is shut in the logbook.
    """

    result: Result
    file: Path
    places: tuple[Place, ...]
    merged: Merged | None = None
    trouble: str = ""
    key: Key | None = field(default=None, repr=False)

    @property
    def counts(self) -> dict[str, int]:
        """How many coupons were of each standing."""
        return counts(self.places)


def hand_in(sitting: Sitting, folder: Path) -> HandedIn:
    """Grade what was sat, and seal it into a file below `folder`.

    Raises
    ------
    OSError
        If it can't be written: the journal still holds all of it.
    """
    result = sitting.result()
    key = sitting.keeper.journal.key
    title = sitting.plan.title.in_language("en")
    file = folder / result_name(title, sitting.code, result.id[:MARK])
    folder.mkdir(parents=True, exist_ok=True)
    write_sealed(file, "result", result_bytes(result), key)
    read_result(open_sealed(file, key, "result").body, file.name)
    sweep(folder)
    return HandedIn(result, file, sitting.places, key=key)


def let_go(sitting: Sitting) -> None:
    """Remove a sitting's journal, now that its result is safe elsewhere.

    One that stays is handed in again at the next start: the same result, so it changes nothing.
    """
    with suppress(OSError):
        sitting.keeper.discard()


def take_in(handed: HandedIn, logbook: Logbook | None, trouble: str = "") -> HandedIn:
    """Take the result into the logbook; a result that can't be waits in its file.

    Parameters
    ----------
    logbook
        None if it can't be opened.
    trouble
        Why it can't.
    """
    merged: Merged | None = None
    if logbook is not None:
        try:
            merged = merge(logbook, handed.result, handed.key)
        except LogbookError as error:
            trouble = str(error)
    return HandedIn(handed.result, handed.file, handed.places, merged, "" if merged else trouble)


def earlier_results(folder: Path, title: str, code: str) -> tuple[Path, ...]:
    """Return the results that this code has handed in at this machine, by their files' names."""
    pattern = result_name(title, code, "x").removesuffix(f"x{SUFFIXES['result']}")
    if not folder.is_dir():
        return ()
    found = (p for p in folder.iterdir() if p.name.casefold().startswith(pattern.casefold()))
    return tuple(sorted(found))


def save_copy(file: Path, to: Path) -> None:
    """Save a copy of a sealed result, whole or not at all; raises OSError."""
    replace_file(to, file.read_bytes())
