"""Why a scan or a drawing can't be taken in, or what was left out of it."""

from __future__ import annotations

from exercises.file_faults import FileError, TrayFault
from geometry.faults import Fault

__all__ = ["IntakeError", "Note", "note", "refused"]

Note = TrayFault
"""What was left out of a file that is taken in all the same, placed as a fault is."""


class IntakeError(FileError):
    """A scan or a drawing that no section can be taken from."""


def note(file: str, fault: Fault, *, line: int | None = None) -> Note:
    """Return `fault` as found in `file`, at a line of it where it has lines.

    Examples
    --------
    >>> print(note("a.csv", Fault("column 2", "scan-text", "'x' is no number", "a number"), line=7))
    a.csv:7: column 2: 'x' is no number; right would be: a number
    """
    return TrayFault.of(file, fault, line=line)


def refused(file: str, fault: Fault, *, line: int | None = None) -> IntakeError:
    """Return the error that refuses `file` for one fault.

    Examples
    --------
    >>> error = refused("a.csv", Fault("", "scan-empty", "there is nothing in it", "points"))
    >>> error.faults[0].code
    'scan-empty'
    """
    return IntakeError([note(file, fault, line=line)])
