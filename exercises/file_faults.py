"""What is wrong with a file, named by file, line and place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from exercises.strict_json import LARGEST_FILE
from geometry.faults import Fault

__all__ = ["FileError", "TrayError", "TrayFault", "read_bytes"]


@dataclass(frozen=True, slots=True)
class TrayFault:
    """One thing that is wrong with a tray or an attempts file.

    Parameters
    ----------
    file
        The file's path, as it was given.
    pointer
        JSON Pointer of the value; ``""`` is the whole document.
    text, right
        What is wrong, and what would be right, in plain English.
    code, params
        A stable name for the kind of fault and the values it speaks of; translations hang on them.
    line
        Line of the file, from 1, where each line is a document of its own.

    Examples
    --------
    >>> fault = Fault("/bead/crown", "face-in-member", "the face enters a member", "less crown")
    >>> print(TrayFault.of("a.tray.json", fault, below="/coupons/3"))
    a.tray.json: /coupons/3/bead/crown: the face enters a member; right would be: less crown
    """

    file: str
    pointer: str
    text: str
    right: str
    code: str
    params: Mapping[str, float | str] = field(default_factory=dict)
    line: int | None = None

    @classmethod
    def of(cls, file: str, fault: Fault, *, below: str = "", line: int | None = None) -> TrayFault:
        """Return a fault found at `below` in `file`."""
        pointer = f"{below}{fault.at}"
        return cls(file, pointer, fault.text, fault.right, fault.code, fault.params, line)

    def __str__(self) -> str:
        file = self.file if self.line is None else f"{self.file}:{self.line}"
        place = self.pointer or "(whole document)"
        line = f"{file}: {place}: {self.text}; right would be: {self.right}"
        # One line a fault, whatever a key or a file's name holds; and no codes for the terminal.
        return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in line)


class FileError(ValueError):
    """A file that can't be used: carries every `TrayFault` that was found in it."""

    def __init__(self, faults: Sequence[TrayFault]) -> None:
        self.faults: tuple[TrayFault, ...] = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class TrayError(FileError):
    """A tray that can't be used."""


def read_bytes(path: Path, at_most: int = LARGEST_FILE) -> bytes:
    """Return what a file holds, one byte more than `at_most` at most.

    Raises
    ------
    FileError
        If it can't be read; the fault says why.
    """
    try:
        # Not Path.read_bytes: a device or a mistaken disk image would fill the memory first.
        with path.open("rb") as file:
            return file.read(at_most + 1)
    except (OSError, ValueError) as error:
        kind, reason, right = _why_unreadable(error)
        fault = Fault(
            "",
            "unreadable",
            f"the file can't be read: {reason}",
            right,
            {"reason": reason, "kind": kind},
        )
        raise FileError([TrayFault.of(str(path), fault)]) from error


def _why_unreadable(error: OSError | ValueError) -> tuple[str, str, str]:
    """Why a file can't be read, by a stable name and in words, and what would be right."""
    if isinstance(error, FileNotFoundError | NotADirectoryError):
        return "missing", "there is no such file", "the path of a file that exists"
    if isinstance(error, IsADirectoryError):
        return "folder", "it is a folder", "the path of a file in it"
    if isinstance(error, PermissionError):
        return "forbidden", "this user may not read it", "a file that this user may read"
    reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return "other", reason, "a file that can be read"
