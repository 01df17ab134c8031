"""Autosave: each finished gesture is a line on the disk before the next one begins.

A journal begins with a line that holds the whole tray; each line after it says what a gesture put
in place of what: coupons from one place to another, the tray's own keys, the coupon that is open.
So a line is short, and what was torn by a crash is the last line only. Reading it back gives the
tray with all its undo steps. No Qt here.
"""

from __future__ import annotations

import json
import os
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import BinaryIO, Final

from exercises.coupon import Coupon
from exercises.rules import RuleSet
from exercises.strict_json import Json
from exercises.text import NO_TEXT, Text
from exercises.tray import Tray, read_tray
from geometry.faults import GeometryError
from trainer.history import History, done, redone, undone
from trainer.shop.building import coupon_of, rules_of
from trainer.shop.history import ShopHistory
from trainer.shop.locking import hold
from trainer.shop.state import Shop, new_shop, shown

__all__ = [
    "FORMAT",
    "SUFFIX",
    "VERSION",
    "Journal",
    "JournalError",
    "Leftover",
    "held_by_others",
    "leftovers",
]

FORMAT: Final = "toe-and-throat/shop-journal"
VERSION: Final = 1
SUFFIX: Final = ".shop-journal"

_LARGEST: Final = 64 * 1024 * 1024
"""Bytes: a longer journal begins anew with the tray as it is; older steps are undone no more after
a crash."""

_LONGEST_LINE: Final = 32 * 1024 * 1024


class JournalError(Exception):
    """A gesture could not be put on the disk; it is kept in memory, and tried again with the next.

    Parameters
    ----------
    path
        Of the journal.
    reason
        What the system said.
    """

    def __init__(self, path: Path, reason: str) -> None:
        self.path, self.reason = path, reason
        super().__init__(f"{path}: {reason}")


class Journal:
    """Writes what is done to one tray.

    Parameters
    ----------
    folder
        Where journals are; it is made when the first line is written.

    Examples
    --------
    >>> import tempfile
    >>> from trainer.shop.state import duplicated, new_shop
    >>> with tempfile.TemporaryDirectory() as name:
    ...     journal = Journal(Path(name))
    ...     shop = new_shop()
    ...     journal.begin(shop, None)
    ...     journal.note("do", "duplicate", duplicated(shop))
    ...     journal.leave()
    ...     [len(left.history().now.coupons) for left in leftovers(Path(name))]
    [2]
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.path = folder / f"{uuid.uuid4().hex}{SUFFIX}"
        self._file: BinaryIO | None = None
        self._written: Shop | None = None
        self._begun, self._unsaved = new_shop(), False
        self._size = 0
        self._steps: list[tuple[str, str, Shop]] = []
        self._head: dict[str, Json] = {}

    def begin(
        self, shop: Shop, file: Path | None, *, digest: str = "", unsaved: bool = False
    ) -> None:
        """Note that a tray was opened or saved: what was before is done with.

        Nothing is written until the first gesture: a tray that is only looked at leaves nothing.

        Parameters
        ----------
        shop, file
            The tray as it is, and where it is on the disk, if anywhere.
        digest
            Of what that file holds.
        unsaved
            Whether the tray holds more than that already.
        """
        self._steps = []
        self._written = None
        self._head = {"file": str(file) if file is not None else None, "digest": digest}
        self._begun, self._unsaved = shop, unsaved
        if self._file is not None:
            self._discard()

    def take_up(self, left: Leftover) -> ShopHistory:
        """Go on with a journal that was left, and return its tray with all its steps.

        Raises
        ------
        ValueError
            If it can't be read.
        OSError
            If it can't be written to.
        """
        history, size = left.read()
        file = left.path.open("r+b", buffering=0)
        if not hold(file):
            file.close()
            raise OSError("another program has it")
        if self._file is not None:
            self._discard()
        self.path, self._file, self._size = left.path, file, size
        self._written, self._steps = history.now, []
        return history

    def note(self, kind: str, what: str, shop: Shop) -> None:
        """Put a finished gesture on the disk.

        Parameters
        ----------
        kind
            ``do``, ``undo`` or ``redo``.
        what
            The gesture.
        shop
            What is so now.

        Raises
        ------
        JournalError
            If that can't be. The gesture is written together with the next one.
        """
        self._steps.append((kind, what, shop))
        try:
            self._write()
        except OSError as error:
            raise JournalError(self.path, error.strerror or str(error)) from error

    def _write(self) -> None:
        if self._size > _LARGEST:
            # What follows may be undone, what came before it no more.
            self._begun, self._unsaved = self._steps[-1][2], True
            self._steps = []
            self._discard()
        if self._file is None:
            self._open()
        assert self._file is not None
        lines: list[bytes] = []
        before = self._written
        if before is None:
            before = self._begun
            lines.append(_line(self._first(before)))
        for kind, what, shop in self._steps:
            lines.append(_line({"kind": kind, "what": what, **_difference(before, shop)}))
            before = shop
        data = b"".join(lines)
        # From where it was last whole: a line torn by a full disk must not swallow the next one.
        self._file.seek(self._size)
        self._file.truncate()
        rest = memoryview(data)
        while rest:
            rest = rest[self._file.write(rest) :]
        os.fsync(self._file.fileno())
        self._size += len(data)
        self._written, self._steps = before, []

    def _open(self) -> None:
        self.folder.mkdir(parents=True, exist_ok=True)
        self.path = self.folder / f"{uuid.uuid4().hex}{SUFFIX}"
        # Unbuffered: what fails fails here, and not when it is closed.
        self._file = self.path.open("xb", buffering=0)
        hold(self._file)
        _sync(self.folder)
        self._size, self._written = 0, None

    def _first(self, shop: Shop) -> dict[str, Json]:
        document: Json = shop.tray.as_document()
        head = {"format": FORMAT, "version": VERSION, **self._head, "unsaved": self._unsaved}
        return {**head, "at": shop.at, "tray": document}

    def _discard(self) -> None:
        """Let go of the file and remove it."""
        file, self._file = self._file, None
        self._size, self._written = 0, None
        if file is not None:
            file.close()
        try:
            self.path.unlink(missing_ok=True)
        except OSError:
            # It is found as a leftover then, which can be thrown away by hand.
            return

    def leave(self) -> None:
        """Let go of the file, and leave it for another start."""
        if self._file is not None:
            self._file.close()
            self._file = None

    def finish(self) -> None:
        """Nothing is left to be saved: remove the file."""
        self._discard()
        self._steps = []


def _sync(folder: Path) -> None:
    """Put a folder's list of files on the disk; Windows does so by itself."""
    if os.name != "nt":
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def _line(value: dict[str, Json]) -> bytes:
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return text.encode("utf-8") + b"\n"


def _difference(before: Shop, after: Shop) -> dict[str, Json]:
    """What is put in place of what: the least run of coupons that differ, and the tray's keys."""
    one, other = before.coupons, after.coupons
    first, most = 0, min(len(one), len(other))
    while first < most and one[first] is other[first]:
        first += 1
    last = 0
    while last < most - first and one[-1 - last] is other[-1 - last]:
        last += 1
    told: dict[str, Json] = {"at": after.at}
    if first < len(one) - last or first < len(other) - last:
        put: list[Json] = [dict(coupon.source) for coupon in other[first : len(other) - last]]
        told |= {"from": first, "to": len(one) - last, "put": put}
    if before.tray.source is not after.tray.source:
        told["head"] = dict(after.tray.source)
    return told


# --- reading it back ----------------------------------------------------------------------------


@dataclass(frozen=True)
class Leftover:
    """A journal that nobody holds: what a start that ended badly, or unsaved, has left.

    Parameters
    ----------
    path
        Of the journal.
    file
        Of the tray that was worked on; None for one that was never saved.
    digest
        Of what that file held then; empty where it isn't known.
    title
        Of the tray.
    changed
        When the last gesture was written, seconds since 1970.
    gestures
        How many are in it.
    """

    path: Path
    file: Path | None
    digest: str
    title: Text
    changed: float
    gestures: int
    _lines: tuple[bytes, ...] = ()

    def history(self) -> ShopHistory:
        """Return the tray as it was last, with its undo steps.

        Raises
        ------
        ValueError
            If it can't be read.
        """
        return self.read()[0]

    def read(self) -> tuple[ShopHistory, int]:
        """Return the tray with its steps, and how many bytes of the journal are sound.

        Raises
        ------
        ValueError
            If it can't be read.
        """
        first = _read(self._lines[0])
        folder = self.file.parent if self.file is not None else None
        tray = read_tray(first.get("tray"), folder)
        at = first.get("at")
        shop = Shop(tray, 0, rules_of(tray.coupons))
        history = History(shown(shop, at if isinstance(at, int) else 0))
        size = len(self._lines[0]) + 1
        for line in self._lines[1:]:
            try:
                history = _again(history, _read(line))
            except (ValueError, GeometryError, KeyError, IndexError, TypeError):
                # From a line on that isn't sound, none can be relied on.
                break
            size += len(line) + 1
        return history, size

    def discard(self) -> None:
        """Throw it away."""
        self.path.unlink(missing_ok=True)


def _read(line: bytes) -> dict[str, Json]:
    value = json.loads(line.decode("utf-8"))
    if not isinstance(value, dict):
        raise ValueError("no object")
    return value


def _again(history: ShopHistory, told: dict[str, Json]) -> ShopHistory:
    """Do again what a line says."""
    kind = told["kind"]
    # A step that was done before the tray was last saved isn't in the journal: then what the line
    # says is done as it stands.
    if kind == "undo" and history.past is not None:
        return undone(history)
    if kind == "redo" and history.future is not None:
        return redone(history)
    shop = history.now
    at = told["at"]
    coupons = shop.coupons
    head: Mapping[str, Json] = shop.tray.source
    if "put" in told:
        first, last, put = told["from"], told["to"], told["put"]
        if not (isinstance(first, int) and isinstance(last, int) and isinstance(put, list)):
            raise ValueError("no places")
        new = [_coupon(each, shop.rules) for each in put]
        coupons = (*coupons[:first], *new, *coupons[last:])
    title = shop.tray.title
    if isinstance(told.get("head"), dict):
        head = told["head"]  # type: ignore[assignment]  # it is one
        title = _title(head)
    if not coupons or not isinstance(at, int):
        raise ValueError("no coupons")
    after = replace(shop, tray=Tray(title, coupons, head))
    return done(history, shown(after, at), str(told.get("what", "")))


def _coupon(document: Json, rules: Mapping[str, RuleSet]) -> Coupon:
    if not isinstance(document, dict):
        raise TypeError("no coupon")
    return coupon_of(document, rules)


def _title(head: Mapping[str, Json]) -> Text:
    stated = head.get("title")
    if isinstance(stated, str) and stated:
        return Text.of(stated)
    if isinstance(stated, dict):
        return Text.of({tag: str(words) for tag, words in stated.items()})
    return NO_TEXT


def leftovers(folder: Path) -> tuple[Leftover, ...]:
    """Return the journals in a folder that nobody holds, the last changed first.

    A journal with no gesture in it, or not one of ours, is none.
    """
    found: list[Leftover] = []
    for path in sorted(folder.glob(f"*{SUFFIX}")) if folder.is_dir() else []:
        try:
            with path.open("rb") as file:
                if not hold(file):
                    continue
                lines = file.read(_LARGEST + _LONGEST_LINE).split(b"\n")
            left = _leftover(path, lines)
        except (OSError, ValueError):
            continue
        if left is not None:
            found.append(left)
    return tuple(sorted(found, key=lambda left: -left.changed))


def _leftover(path: Path, lines: list[bytes]) -> Leftover | None:
    whole = tuple(lines[:-1])  # what follows the last line's end was torn
    first = _read(whole[0]) if whole else {}
    if (first.get("format"), first.get("version")) != (FORMAT, VERSION):
        return None
    if len(whole) < 2 and not first.get("unsaved"):
        return None
    tray, file, digest = first.get("tray"), first.get("file"), first.get("digest")
    title = _title(tray) if isinstance(tray, dict) else NO_TEXT
    return Leftover(
        path,
        Path(file) if isinstance(file, str) else None,
        digest if isinstance(digest, str) else "",
        title,
        path.stat().st_mtime,
        len(whole) - 1,
        whole,
    )


def held_by_others(folder: Path, file: Path) -> bool:
    """Whether another start has gestures on the tray in `file` that are not saved."""
    for path in sorted(folder.glob(f"*{SUFFIX}")) if folder.is_dir() else []:
        try:
            with path.open("rb") as journal:
                if hold(journal):
                    continue
                first = _read(journal.readline(_LONGEST_LINE))
        except (OSError, ValueError):
            continue
        if first.get("file") == str(file):
            return True
    return False
