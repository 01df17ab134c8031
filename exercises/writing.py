"""Writing files so that the old one stays whole until the new one is on the disk."""

from __future__ import annotations

import json
import os
import stat
import tempfile
from pathlib import Path
from typing import Final

from exercises.strict_json import Json

__all__ = ["document_bytes", "replace_file"]

_WIDTH: Final = 96


def replace_file(path: Path, data: bytes) -> None:
    """Put `data` in place of the file at `path`, or leave that file as it was.

    The data goes to a temporary file in the same folder, to the disk, and only then takes the old
    file's name; then the folder goes to the disk too. A link is followed, and a file keeps its
    permissions.

    Raises
    ------
    OSError
        If any of that fails; the temporary file is removed.
    """
    target = Path(os.path.realpath(path))
    # A name as long as names may be leaves no room for more, so only its beginning is taken.
    prefix = f".{target.name[:24]}."
    descriptor, name = tempfile.mkstemp(prefix=prefix, suffix=".part", dir=target.parent)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(_mode(target))
        os.replace(name, target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
    _sync_folder(target.parent)


def _mode(target: Path) -> int:
    """The permissions for the new file: the old one's, else what the user's mask leaves."""
    if target.exists():
        return stat.S_IMODE(target.stat().st_mode)
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _sync_folder(folder: Path) -> None:
    # Windows opens no folders and needs no such step: its rename is on record at once.
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def document_bytes(document: Json) -> bytes:
    """Return a document as people read it: UTF-8, what fits on a line stays on one.

    Examples
    --------
    >>> print(document_bytes({"id": "a", "bead": {"leg_base": 8, "leg_upright": 6.7}}).decode())
    {"id": "a", "bead": {"leg_base": 8, "leg_upright": 6.7}}
    <BLANKLINE>
    """
    return (_laid_out(document, "") + "\n").encode("utf-8")


def _compact(value: Json) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def _laid_out(value: Json, indent: str) -> str:
    short = _compact(value)
    if len(indent) + len(short) <= _WIDTH or not isinstance(value, (dict, list)):
        return short
    deeper = indent + " "
    if isinstance(value, dict):
        parts = [f"{_compact(key)}: {_laid_out(inner, deeper)}" for key, inner in value.items()]
        return "{\n" + ",\n".join(f"{deeper}{part}" for part in parts) + f"\n{indent}}}"
    parts = [_laid_out(inner, deeper) for inner in value]
    return "[\n" + "\n".join(_filled(parts, deeper)) + f"\n{indent}]"


def _filled(parts: list[str], indent: str) -> list[str]:
    """Lines that hold as many short parts as fit: a trace's points fill a block, not a column."""
    lines = [indent]
    for index, part in enumerate(parts):
        text = part if index == len(parts) - 1 else f"{part},"
        if lines[-1] == indent:
            lines[-1] += text
        elif part.startswith("[") and len(lines[-1]) + 1 + len(text) <= _WIDTH:
            lines[-1] += f" {text}"
        else:
            lines.append(indent + text)
    return lines
