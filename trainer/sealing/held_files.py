"""Files that one program holds while it writes them: made whole or not at all, on the disk."""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path
from typing import BinaryIO, Final

from trainer.shop.locking import hold

__all__ = ["flush", "hold_soon", "is_at", "new_file", "replaced", "sync_folder", "write_out"]

_BINARY: Final[int] = getattr(os, "O_BINARY", 0)
"""Windows would turn line ends."""

if sys.platform == "darwin":
    import fcntl

    def flush(file: BinaryIO) -> None:
        """Have the disk keep what was written, a power cut or not."""
        try:
            # There fsync gives it to the drive, which may keep it to itself for a while.
            fcntl.fcntl(file.fileno(), fcntl.F_FULLFSYNC)
        except OSError:
            os.fsync(file.fileno())

else:

    def flush(file: BinaryIO) -> None:
        """Have the disk keep what was written, a power cut or not."""
        os.fsync(file.fileno())


def hold_soon(file: BinaryIO) -> bool:
    """Hold it, trying for a moment: who looks whether it is free holds it for an instant."""
    for _ in range(10):
        if hold(file):
            return True
        time.sleep(0.02)
    return False


def new_file(path: Path, data: bytes) -> BinaryIO:
    """Make a file that holds `data`, on the disk, and hold it; or leave none.

    It takes its name once it is whole: a kill in between leaves no journal that can't be resumed.

    Raises
    ------
    OSError
        If it can't be made, is there already, or another program is making it.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as name:
    ...     path = Path(name) / "a"
    ...     file = new_file(path, b"one")
    ...     path.read_bytes(), is_at(file, path), file.close()
    (b'one', True, None)
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(f"{path.name}.part")
    file = _held_part(part)
    made = part
    try:
        if path.exists():
            raise FileExistsError("there is one already")
        file.truncate(0)
        write_out(file, data)
        if os.name == "nt":
            # There what is open can't be renamed.
            file.close()
            made = part.rename(path)
            file = path.open("r+b", buffering=0)
            hold(file)
        else:
            made = part.rename(path)
        sync_folder(path.parent)
    except BaseException:
        file.close()
        made.unlink(missing_ok=True)
        raise
    return file


def _held_part(part: Path) -> BinaryIO:
    # Not emptied by opening it: another program may be writing it. Unbuffered: what fails, fails
    # here and not when it is closed.
    file = os.fdopen(os.open(part, os.O_RDWR | os.O_CREAT | _BINARY, 0o666), "r+b", buffering=0)
    try:
        if not hold_soon(file) or not is_at(file, part):
            raise BlockingIOError("another program has it")
    except OSError:
        file.close()
        raise
    return file


def replaced(path: Path, old: BinaryIO, data: bytes) -> BinaryIO:
    """Put a file that holds `data` in place of one that is held, and hold it; `old` is closed.

    The folder isn't synced: after a power cut either may be there, and each is whole.

    Raises
    ------
    OSError
        If that can't be; `old` lies there still, but on Windows it may have been closed.
    """
    part = path.with_name(f"{path.name}.part")
    file = _held_part(part)
    try:
        file.truncate(0)
        write_out(file, data)
        if os.name == "nt":
            # There neither what is open can be renamed nor what is open be replaced.
            file.close()
            old.close()
            os.replace(part, path)
            file = path.open("r+b", buffering=0)
            hold(file)
        else:
            os.replace(part, path)
            old.close()
    except BaseException:
        file.close()
        part.unlink(missing_ok=True)
        raise
    return file


def is_at(file: BinaryIO, path: Path) -> bool:
    """Whether an open file is the one that lies at `path`."""
    there, here = path.stat(), os.fstat(file.fileno())
    return (there.st_dev, there.st_ino) == (here.st_dev, here.st_ino)


def write_out(file: BinaryIO, data: bytes) -> None:
    """Write all of it where the file stands; when this returns it is on the disk."""
    rest = memoryview(data)
    while rest:
        rest = rest[file.write(rest) :]
    flush(file)


def sync_folder(folder: Path) -> None:
    """Put a folder's list of files on the disk; Windows does so by itself."""
    if os.name != "nt":
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
