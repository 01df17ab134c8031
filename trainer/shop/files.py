"""Trays on the disk: what they were when they were opened, and why one can't be written.

No Qt here.
"""

from __future__ import annotations

import errno
import hashlib
import stat
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from exercises.tray import Tray, save_tray

__all__ = ["SaveError", "Stamp", "Trouble", "changed_since", "stamp_of", "write_tray"]

Trouble = Literal["forbidden", "read-only", "full", "locked", "gone", "other"]
"""Why a file can't be written: nobody may in that folder; the file itself is protected; the disk is
full; another program holds it; its folder isn't there; anything else."""

_CODES: Final[dict[int, Trouble]] = {
    errno.EACCES: "forbidden",
    errno.EPERM: "forbidden",
    errno.EROFS: "forbidden",
    errno.ENOSPC: "full",
    errno.EDQUOT: "full",
    errno.EFBIG: "full",
    errno.EBUSY: "locked",
    errno.ETXTBSY: "locked",
    errno.ENOENT: "gone",
    errno.ENOTDIR: "gone",
    errno.EISDIR: "gone",
}

_HELD: Final = (32, 33)
"""What Windows says where another program holds a file, or a part of it."""


class SaveError(Exception):
    """A tray could not be written; whatever was there is as it was.

    Parameters
    ----------
    path
        Of the tray.
    trouble
        Why.
    reason
        What the system said.
    """

    def __init__(self, path: Path, trouble: Trouble, reason: str) -> None:
        self.path, self.trouble, self.reason = path, trouble, reason
        super().__init__(f"{path}: {trouble}: {reason}")


@dataclass(frozen=True, slots=True)
class Stamp:
    """What a file was when it was last read or written: size, time, and the digest of what it held.

    A program that only touches a file changes nothing of it, so the digest has the last word.
    """

    size: int
    time: int
    digest: str


def stamp_of(path: Path) -> Stamp | None:
    """Return what a file is now; None if it can't be read.

    Examples
    --------
    >>> stamp_of(Path("nowhere.tray.json")) is None
    True
    """
    try:
        known = path.stat()
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
    except (OSError, ValueError):
        return None
    return Stamp(known.st_size, known.st_mtime_ns, digest)


def changed_since(path: Path, stamp: Stamp | None) -> bool:
    """Whether a file holds something else than when it was stamped; one that is gone doesn't.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     file = Path(folder) / "a"
    ...     _ = file.write_bytes(b"1")
    ...     stamp = stamp_of(file)
    ...     same = changed_since(file, stamp)
    ...     _ = file.write_bytes(b"2")
    ...     same, changed_since(file, stamp)
    (False, True)
    """
    now = stamp_of(path)
    if now is None or stamp is None:
        return now is not None
    return now.digest != stamp.digest


def write_tray(path: Path, tray: Tray) -> Stamp | None:
    """Write a tray, whole or not at all, and return what the file is now.

    Raises
    ------
    SaveError
        If it can't be written.
    TrayError
        If it could not be opened again, as where a rules file isn't beside it.
    """
    try:
        # A new file takes the old one's name: what is protected has to be asked for.
        if path.exists() and not path.stat().st_mode & stat.S_IWUSR:
            raise SaveError(path, "read-only", "the file is protected against changes")
        save_tray(path, tray)
    except OSError as error:
        held = getattr(error, "winerror", None) in _HELD
        trouble = "locked" if held else _CODES.get(error.errno or 0, "other")
        raise SaveError(path, trouble, error.strerror or str(error)) from error
    return stamp_of(path)
