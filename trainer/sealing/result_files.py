"""Sealed files on the disk: written whole or not at all, read with a limit."""

from __future__ import annotations

import re
import time
import unicodedata
from contextlib import suppress
from pathlib import Path
from typing import Final

from exercises.file_faults import read_bytes
from exercises.writing import replace_file
from trainer.sealing.key import Key
from trainer.sealing.seal import LARGEST, Kind, Opener, Unsealed, seal, unseal

__all__ = ["SUFFIXES", "name_part", "open_sealed", "result_name", "sweep", "write_sealed"]

SUFFIXES: Final[dict[Kind, str]] = {"sitting": ".sitting", "result": ".result"}

_UNSAFE: Final = re.compile(r"[^\w.-]+")
_LONGEST: Final = 60
_PART: Final = ".part"
"""How names end of what `exercises.writing.replace_file` has not finished."""


def result_name(title: str, code: str, mark: str) -> str:
    """Return what the file of a result is called: safe on every disk, one for each sitting.

    Parameters
    ----------
    title
        Of the sitting.
    code
        The learner's.
    mark
        What tells two files with one title and one code apart: the beginning of an id.

    Examples
    --------
    >>> result_name("Friday: railings", "K-07", "3fa9")
    'Friday-railings_K-07_3fa9.result'
    """
    parts = [name_part(title), name_part(code), name_part(mark)]
    return "_".join(part for part in parts if part) + SUFFIXES["result"]


def name_part(text: str) -> str:
    """Return a text as it can stand in a file's name on every disk.

    Examples
    --------
    >>> name_part("Friday: railings")
    'Friday-railings'
    """
    plain = _UNSAFE.sub("-", unicodedata.normalize("NFC", text)).strip("-.")
    # Bytes, not characters, are what a disk counts: 255 for a name.
    return plain.encode("utf-8")[:_LONGEST].decode("utf-8", "ignore").strip("-.")


def write_sealed(path: Path, kind: Kind, body: bytes, secret: Key | str) -> Key:
    """Seal `body` into a file, which is whole on the disk when this returns.

    Returns
    -------
    key
        That it was sealed with.

    Raises
    ------
    OSError
        If it can't be written; what was there before is untouched.
    SealError
        ``too large``.
    """
    key = secret if isinstance(secret, Key) else Key.made(secret)
    replace_file(path, seal(kind, body, key))
    return key


def sweep(folder: Path, older: float = 3600.0) -> None:
    """Remove what kills have left half written in a folder of results.

    Parameters
    ----------
    older
        Seconds: what was written since may be another program's that still writes.
    """
    for part in folder.glob(f".*{_PART}"):
        with suppress(OSError):
            if time.time() - part.stat().st_mtime > older:
                part.unlink()


def open_sealed(path: Path, secret: Key | str | Opener, kind: Kind | None = None) -> Unsealed:
    """Return what a sealed file holds.

    Raises
    ------
    FileError
        If it can't be read from the disk.
    SealError
        If it can't be unsealed.

    Examples
    --------
    >>> import tempfile
    >>> from trainer.sealing.key import Cost
    >>> with tempfile.TemporaryDirectory() as name:
    ...     path = Path(name) / result_name("Friday", "K-07", "3fa9")
    ...     key = write_sealed(path, "result", b"all right", Key.made("herons", Cost(log_n=4)))
    ...     open_sealed(path, "herons", "result").body
    b'all right'
    """
    data = read_bytes(path, LARGEST)
    if isinstance(secret, Opener):
        return secret.unseal(data, kind)
    return unseal(data, secret, kind)
