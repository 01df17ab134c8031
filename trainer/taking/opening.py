"""A sealed sitting opened with the proctor's passphrase, and what else a file may be. No Qt."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from exercises.file_faults import read_bytes
from exercises.models import TRAY_FORMAT
from exercises.sitting.plan import Plan
from exercises.sitting.plan_file import read_plan
from trainer.sealing.key import USUAL, Key, SealError
from trainer.sealing.result_files import open_sealed
from trainer.sealing.seal import LARGEST, unseal

__all__ = ["FileKind", "Opened", "kind_of", "open_sitting"]

FileKind = Literal["sitting", "tray"]

_ANY: Final = Key(USUAL, b"", b"")
"""A key of nothing: with it a file shows all that it shows without its passphrase."""

_HEAD: Final = 4096


@dataclass(frozen=True, slots=True)
class Opened:
    """A sitting that was opened.

    Parameters
    ----------
    path
        Of its file.
    plan
        What it asks.
    key
        Seals what belongs to it.
    """

    path: Path
    plan: Plan
    key: Key


def kind_of(path: Path) -> FileKind:
    """Return what lies at `path`, as far as that shows without a passphrase.

    Raises
    ------
    FileError
        If it can't be read.
    SealError
        If it is neither a tray nor a sealed sitting that is whole; says what is wrong with it.
    """
    data = read_bytes(path, LARGEST)
    if TRAY_FORMAT.encode() in data[:_HEAD] and data.lstrip()[:1] == b"{":
        return "tray"
    try:
        unseal(data, _ANY, "sitting")
    except SealError as error:
        if error.trouble != "passphrase":
            raise
    return "sitting"


def open_sitting(path: Path, passphrase: str) -> Opened:
    """Open a sealed sitting; that takes a moment.

    Raises
    ------
    FileError
        If it can't be read from the disk, or what was sealed is no sitting that can be sat.
    SealError
        If it can't be unsealed.
    """
    unsealed = open_sealed(path, passphrase, "sitting")
    return Opened(path, read_plan(unsealed.body, path.name), unsealed.key)
