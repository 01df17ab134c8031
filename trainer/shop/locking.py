"""Holding a file for oneself: the system lets go of it when the process ends, however it ends.

No Qt here. The two systems' calls differ; both hold a file that is open against other processes.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import BinaryIO

__all__ = ["hold", "is_free"]

if sys.platform == "win32":
    import msvcrt

    _FAR = 0x7FFF0000
    """A byte that no journal reaches: what is held there keeps nobody from reading."""

    def hold(file: BinaryIO) -> bool:
        """Hold an open file; return whether nobody else holds it."""
        at = file.tell()
        try:
            file.seek(_FAR)
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        finally:
            file.seek(at)
        return True

else:
    import fcntl

    def hold(file: BinaryIO) -> bool:
        """Hold an open file; return whether nobody else holds it."""
        try:
            fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            return False
        return True


def is_free(path: Path) -> bool:
    """Whether there is such a file and nobody holds it.

    Examples
    --------
    >>> is_free(Path("nowhere"))
    False
    """
    try:
        with path.open("rb") as file:
            return hold(file)
    except OSError:
        return False
