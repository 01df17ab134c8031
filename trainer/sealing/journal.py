"""The journal of a sitting that runs: what was done, sealed, on the disk before anything goes on.

The first line says how the key is derived; each line after it is an event, packed (a handling
repeats much) and sealed by itself (ChaCha20-Poly1305) together with its number and the seal of the
line before. So a line that was changed, taken out, moved or repeated is refused. What a crash or a
power cut tore is the last line only: it is dropped, and that is said. That lines are missing at the
end can't be seen from the file itself: whoever owns the machine can put an older copy in its place.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import hmac
import json
import os
import re
import secrets
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO, Final, Literal

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305

from exercises.strict_json import Json
from trainer.sealing.held_files import (
    flush,
    hold_soon,
    is_at,
    new_file,
    replaced,
    sync_folder,
    write_out,
)
from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.seal import Opener
from trainer.shop.locking import is_free

__all__ = ["FORMAT", "SUFFIX", "VERSION", "Hindrance", "Journal", "JournalError", "Resumed", "left"]

FORMAT: Final = "toe-and-throat/sitting-journal"
VERSION: Final = 1
SUFFIX: Final = ".sitting-journal"

Hindrance = Literal["unwritable", "held", "gone"]

_BEGIN: Final = f"{FORMAT} ".encode()
_VERSION: Final = re.compile(rb"([1-9][0-9]{0,5}) ")
_HEADER: Final = re.compile(
    rb"(?P<head>[^ ]+ 1 (?P<log_n>[1-9][0-9]?) (?P<r>[1-9][0-9]?) (?P<p>[1-9][0-9]?)"
    rb" (?P<salt>[0-9a-f]{32}) (?P<check>[0-9a-f]{64}) (?P<id>[0-9a-f]{64})) (?P<sum>[0-9a-f]{64})"
)
_LARGEST: Final = 256 * 1024 * 1024
_LARGEST_EVENT: Final = 64 * 1024 * 1024
_NONCE: Final = 12
_TAG: Final = 16


class JournalError(Exception):
    """An event could not be put on the disk, or a journal not be taken.

    Parameters
    ----------
    hindrance
        ``unwritable``: a full or lost disk; ``held``: another program has it; ``gone``: another
        file lies in its place, or none.
    path
        Of the journal.
    reason
        What the system said.
    """

    def __init__(self, hindrance: Hindrance, path: Path, reason: str) -> None:
        self.hindrance: Hindrance = hindrance
        self.path, self.reason = path, reason
        super().__init__(f"{path}: {reason}")


@dataclass(frozen=True, slots=True)
class _Chain:
    """Seals lines, each after the one before; replaced by the next link with every line."""

    key: bytes
    head: bytes
    number: int = 0
    before: bytes = b"\0" * _TAG

    @classmethod
    def begun(cls, key: Key, head: bytes) -> _Chain:
        salt = bytes.fromhex(head.rsplit(b" ", 1)[1].decode())
        return cls(key.branch("journal", salt), hashlib.sha256(head).digest())

    @property
    def _place(self) -> bytes:
        return self.head + self.number.to_bytes(8, "big") + self.before

    def _after(self, sealed: bytes) -> _Chain:
        return _Chain(self.key, self.head, self.number + 1, sealed[-_TAG:])

    def closed(self, event: bytes) -> tuple[bytes, _Chain]:
        """Return the line of an event, and the next link.

        The nonce is drawn, not counted: after a torn line the same place is written again.
        """
        nonce = secrets.token_bytes(_NONCE)
        sealed = nonce + ChaCha20Poly1305(self.key).encrypt(nonce, event, self._place)
        return base64.b64encode(sealed) + b"\n", self._after(sealed)

    def opened(self, sealed: bytes) -> tuple[bytes, _Chain]:
        """Return the event that was sealed at this place, and the next link."""
        nonce, closed = sealed[:_NONCE], sealed[_NONCE:]
        try:
            event = ChaCha20Poly1305(self.key).decrypt(nonce, closed, self._place)
        except InvalidTag as error:
            raise SealError("changed", line=self.number + 2) from error
        return event, self._after(sealed)


class Journal:
    """A journal that is open and held, so that no other program writes to it.

    Examples
    --------
    >>> import tempfile
    >>> key = Key.made("three weathered herons", Cost(log_n=4))
    >>> with tempfile.TemporaryDirectory() as name:
    ...     path = Path(name) / f"a{SUFFIX}"
    ...     journal = Journal.create(path, key, {"title": "Friday"})
    ...     journal.append({"kind": "shown", "item": 0})
    ...     journal.close()
    ...     resumed = Journal.resume(path, "three weathered herons")
    ...     resumed.journal.discard()
    >>> resumed.head, resumed.events, resumed.torn
    ({'title': 'Friday'}, ({'kind': 'shown', 'item': 0},), False)
    """

    def __init__(self, path: Path, file: BinaryIO, whole: bytes, chain: _Chain, key: Key) -> None:
        self.path, self.key = path, key
        # All that it holds stays in memory: if somebody removes the file, it is written anew.
        self._file, self._whole, self._chain = file, bytearray(whole), chain
        # Whether the folder on the disk has its name for this file.
        self._named = True

    @classmethod
    def create(
        cls,
        path: Path,
        key: Key,
        head: Mapping[str, Json],
        first: Sequence[Mapping[str, Json]] = (),
    ) -> Journal:
        """Begin a journal; when this returns it is on the disk.

        Parameters
        ----------
        path
            A file that isn't there yet; its folder is made.
        key
            Of the sitting; whoever has its passphrase can resume.
        head
            What it takes to resume: the sitting itself.
        first
            Events that it begins with: there with it, or not at all.

        Raises
        ------
        JournalError
            If it can't be written; nothing is left then.
        """
        whole, chain = _written(key, (head, *first))
        try:
            file = new_file(path, whole)
        except OSError as error:
            raise JournalError("unwritable", path, error.strerror or str(error)) from error
        return cls(path, file, whole, chain, key)

    @classmethod
    def resume(cls, path: Path, secret: Key | str | Opener) -> Resumed:
        """Take up a journal that was left, and go on with it.

        Parameters
        ----------
        path
            Of the journal.
        secret
            The passphrase of its sitting, or the key.

        Raises
        ------
        JournalError
            If it can't be opened, or another program has it.
        SealError
            If it can't be unsealed. The file is left as it is.
        """
        try:
            file = path.open("r+b", buffering=0)
        except OSError as error:
            hindrance: Hindrance = "gone" if isinstance(error, FileNotFoundError) else "unwritable"
            raise JournalError(hindrance, path, error.strerror or str(error)) from error
        try:
            # Another program may have given the name to a newer file meanwhile, and let go of this.
            if not hold_soon(file) or not is_at(file, path):
                raise JournalError("held", path, "another program has it")
            data = _all_of(file)
            header = _header(data)
            key = _key_for(header, secret)
            read = _events(data, header, key)
            if read.size < len(data):
                file.truncate(read.size)
                flush(file)
        except OSError as error:
            file.close()
            raise JournalError("unwritable", path, error.strerror or str(error)) from error
        except BaseException:
            file.close()
            raise
        journal = cls(path, file, data[: read.size], read.chain, key)
        return Resumed(journal, read.events[0], read.events[1:], read.size < len(data))

    def append(self, event: Mapping[str, Json]) -> None:
        """Put an event on the disk; when this returns it is there.

        Raises
        ------
        JournalError
            If it can't be. What was there is untouched, and the next call tries the same place.
        """
        line, chain = self._chain.closed(_packed(event))
        try:
            self._stand_ready()
            self._file.seek(len(self._whole))
            write_out(self._file, line)
        except OSError as error:
            self._cut()
            raise JournalError("unwritable", self.path, error.strerror or str(error)) from error
        self._whole += line
        self._chain = chain

    @property
    def size(self) -> int:
        """How long it is, bytes."""
        return len(self._whole)

    def renew(self, head: Mapping[str, Json], events: Sequence[Mapping[str, Json]]) -> None:
        """Write it anew with other events: at every moment the old one is there whole, or the new.

        Raises
        ------
        JournalError
            If that can't be; the old one stays, and can be appended to.
        """
        whole, chain = _written(self.key, (head, *events))
        try:
            self._stand_ready()
            file = replaced(self.path, self._file, whole)
        except OSError as error:
            raise JournalError("unwritable", self.path, error.strerror or str(error)) from error
        self._file, self._whole, self._chain = file, bytearray(whole), chain
        self._named = False

    def _stand_ready(self) -> None:
        """See that the file is there, as long as it should be; make it anew if somebody took it."""
        size = len(self._whole)
        if self._file.closed or not self.path.exists():
            self._file.close()
            self._file = new_file(self.path, bytes(self._whole))
            self._named = True
            return
        if not is_at(self._file, self.path):
            raise JournalError("gone", self.path, "another file lies in its place")
        if not self._named:
            sync_folder(self.path.parent)
            self._named = True
        found = os.fstat(self._file.fileno()).st_size
        if found > size:
            self._file.truncate(size)
        elif found < size:
            self._file.seek(0)
            write_out(self._file, bytes(self._whole))

    def _cut(self) -> None:
        """Take a torn line off again, if that can be; else the next call does, or `resume`."""
        try:
            self._file.truncate(len(self._whole))
        except (OSError, ValueError):  # ValueError: it is closed, since none could be made anew
            return

    def close(self) -> None:
        """Let go of the file, and leave it to be resumed."""
        self._file.close()

    def discard(self) -> None:
        """Let go of the file and remove it: what it held is safe elsewhere.

        Raises
        ------
        OSError
            If it can't be removed.
        """
        self._file.close()
        self.path.unlink(missing_ok=True)


@dataclass(frozen=True, slots=True)
class Resumed:
    """A journal that was taken up.

    Parameters
    ----------
    journal
        To go on with.
    head, events
        What it began with, and what was done since, in order.
    torn
        Whether the end of it was torn, and dropped: nothing that was acknowledged.
    """

    journal: Journal
    head: dict[str, Json]
    events: tuple[dict[str, Json], ...]
    torn: bool


def left(folder: Path) -> tuple[Path, ...]:
    """Return the journals in a folder that no program holds, the last changed first.

    Examples
    --------
    >>> left(Path("nowhere"))
    ()
    """
    found = [path for path in folder.glob(f"*{SUFFIX}") if is_free(path)]
    return tuple(sorted(found, key=_changed, reverse=True))


def _changed(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:
        return 0.0


def _written(key: Key, events: Sequence[Mapping[str, Json]]) -> tuple[bytes, _Chain]:
    """A whole journal, and what seals its next line."""
    costs = f"{key.cost.log_n} {key.cost.r} {key.cost.p}"
    salts = f"{key.salt.hex()} {key.check.hex()} {secrets.token_hex(32)}"
    begin = f"{FORMAT} {VERSION} {costs} {salts}".encode()
    chain = _Chain.begun(key, begin)
    lines = [b"%s %s\n" % (begin, hashlib.sha256(begin).hexdigest().encode())]
    for event in events:
        line, chain = chain.closed(_packed(event))
        lines.append(line)
    return b"".join(lines), chain


def _packed(value: Mapping[str, Json]) -> bytes:
    text = json.dumps(dict(value), ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    # The quickest level: a learner waits for it.
    return zlib.compress(text.encode("utf-8", "surrogatepass"), 1)


def _unpacked(data: bytes, line: int) -> dict[str, Json]:
    """The event that was packed; only who has the key can have made it, so it is ours or a slip."""
    opening = zlib.decompressobj()
    try:
        text = opening.decompress(data, _LARGEST_EVENT)
        if opening.unconsumed_tail:
            raise SealError("too large", mib=_LARGEST_EVENT // 1024 // 1024)
        event = json.loads(text.decode("utf-8", "surrogatepass"))
    except (zlib.error, ValueError, RecursionError) as error:
        raise error if isinstance(error, SealError) else SealError("changed", line=line) from error
    if not isinstance(event, dict):
        raise SealError("changed", line=line)
    return event


# --- reading it back ------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Header:
    cost: Cost
    salt: bytes
    check: bytes
    head: bytes
    size: int


@dataclass(frozen=True, slots=True)
class _Read:
    events: tuple[dict[str, Json], ...]
    chain: _Chain
    size: int


def _all_of(file: BinaryIO) -> bytes:
    data = bytearray()
    while len(data) <= _LARGEST:
        more = file.read(1024 * 1024)
        if not more:
            return bytes(data)
        data += more
    raise SealError("too large", mib=_LARGEST // 1024 // 1024)


def _header(data: bytes) -> _Header:
    """What the first line says, which anybody may read."""
    if not data.startswith(_BEGIN):
        raise SealError("truncated" if _BEGIN.startswith(data) else "not sealed")
    version = _VERSION.match(data, len(_BEGIN))
    if version is not None and int(version[1]) > VERSION:
        raise SealError("newer", version=int(version[1]), known=VERSION)
    line, end, _ = data.partition(b"\n")
    if not end:
        raise SealError("truncated")
    found = _HEADER.fullmatch(line)
    if found is None or hashlib.sha256(found["head"]).hexdigest().encode() != found["sum"]:
        raise SealError("changed", line=1)
    cost = Cost(int(found["log_n"]), int(found["r"]), int(found["p"]))
    salt, check = bytes.fromhex(found["salt"].decode()), bytes.fromhex(found["check"].decode())
    return _Header(cost, salt, check, found["head"], len(line) + 1)


def _key_for(header: _Header, secret: Key | str | Opener) -> Key:
    if isinstance(secret, Key):
        key = secret
    elif isinstance(secret, Opener):
        key = secret.key(header.cost, header.salt)
    else:
        key = Key.derived(secret, header.cost, header.salt)
    if not hmac.compare_digest(key.check, header.check):
        raise SealError("passphrase")
    return key


def _events(data: bytes, header: _Header, key: Key) -> _Read:
    """All events, and how many bytes hold them; raises where something was changed."""
    chain, size = _Chain.begun(key, header.head), header.size
    events: list[dict[str, Json]] = []
    *lines, rest = data[size:].split(b"\n")
    for index, line in enumerate(lines):
        sealed = _decoded(line)
        if sealed is None:
            # Sectors of one line may reach the disk out of order: its end is there, its middle not.
            if index == len(lines) - 1 and not rest:
                break
            raise SealError("changed", line=index + 2)
        event, chain = chain.opened(sealed)
        events.append(_unpacked(event, index + 2))
        size += len(line) + 1
    if not events:
        raise SealError("truncated")
    return _Read(tuple(events), chain, size)


def _decoded(line: bytes) -> bytes | None:
    """What stands in a line; None if no line of ours looks so."""
    try:
        sealed = base64.b64decode(line, validate=True)
    except binascii.Error:
        return None
    # Several texts decode to the same bytes; only one is ours.
    return sealed if len(sealed) > _NONCE + _TAG and base64.b64encode(sealed) == line else None
