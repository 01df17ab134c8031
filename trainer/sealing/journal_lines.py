"""The lines of a sitting's journal: each sealed after the one before, and read back. No file here.

The first line says how the key is derived; each line after it is an event, packed (a handling
repeats much) and sealed by itself (ChaCha20-Poly1305) together with its number and the seal of the
line before. So a line that was changed, taken out, moved or repeated is refused.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import hmac
import json
import re
import secrets
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import BinaryIO, Final

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305

from exercises.strict_json import Json
from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.seal import Opener

__all__ = [
    "FORMAT",
    "VERSION",
    "Chain",
    "Header",
    "Read",
    "all_of",
    "events_in",
    "header_of",
    "key_for",
    "packed",
    "written",
]

FORMAT: Final = "toe-and-throat/sitting-journal"
VERSION: Final = 1

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


@dataclass(frozen=True, slots=True)
class Chain:
    """Seals lines, each after the one before; replaced by the next link with every line."""

    key: bytes
    head: bytes
    number: int = 0
    before: bytes = b"\0" * _TAG

    @classmethod
    def begun(cls, key: Key, head: bytes) -> Chain:
        """Return the link before the first event of a journal with this first line."""
        salt = bytes.fromhex(head.rsplit(b" ", 1)[1].decode())
        return cls(key.branch("journal", salt), hashlib.sha256(head).digest())

    @property
    def _place(self) -> bytes:
        return self.head + self.number.to_bytes(8, "big") + self.before

    def _after(self, sealed: bytes) -> Chain:
        return Chain(self.key, self.head, self.number + 1, sealed[-_TAG:])

    def closed(self, event: bytes) -> tuple[bytes, Chain]:
        """Return the line of an event, and the next link.

        The nonce is drawn, not counted: after a torn line the same place is written again.
        """
        nonce = secrets.token_bytes(_NONCE)
        sealed = nonce + ChaCha20Poly1305(self.key).encrypt(nonce, event, self._place)
        return base64.b64encode(sealed) + b"\n", self._after(sealed)

    def opened(self, sealed: bytes) -> tuple[bytes, Chain]:
        """Return the event that was sealed at this place, and the next link."""
        nonce, closed = sealed[:_NONCE], sealed[_NONCE:]
        try:
            event = ChaCha20Poly1305(self.key).decrypt(nonce, closed, self._place)
        except InvalidTag as error:
            raise SealError("changed", line=self.number + 2) from error
        return event, self._after(sealed)


def written(key: Key, events: Sequence[Mapping[str, Json]]) -> tuple[bytes, Chain]:
    """A whole journal, and what seals its next line."""
    costs = f"{key.cost.log_n} {key.cost.r} {key.cost.p}"
    salts = f"{key.salt.hex()} {key.check.hex()} {secrets.token_hex(32)}"
    begin = f"{FORMAT} {VERSION} {costs} {salts}".encode()
    chain = Chain.begun(key, begin)
    lines = [b"%s %s\n" % (begin, hashlib.sha256(begin).hexdigest().encode())]
    for event in events:
        line, chain = chain.closed(packed(event))
        lines.append(line)
    return b"".join(lines), chain


def packed(value: Mapping[str, Json]) -> bytes:
    """Return an event as it is sealed: JSON, deflated."""
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
class Header:
    """What the first line says: how the key is derived, and how many bytes it takes."""

    cost: Cost
    salt: bytes
    check: bytes
    head: bytes
    size: int


@dataclass(frozen=True, slots=True)
class Read:
    """What was read: events in order, what seals the next line, and how many bytes are whole."""

    events: tuple[dict[str, Json], ...]
    chain: Chain
    size: int


def all_of(file: BinaryIO) -> bytes:
    """Return all that a file holds; raises `SealError` where that is more than any journal."""
    data = bytearray()
    while len(data) <= _LARGEST:
        more = file.read(1024 * 1024)
        if not more:
            return bytes(data)
        data += more
    raise SealError("too large", mib=_LARGEST // 1024 // 1024)


def header_of(data: bytes) -> Header:
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
    return Header(cost, salt, check, found["head"], len(line) + 1)


def key_for(header: Header, secret: Key | str | Opener) -> Key:
    """Return the key that opens a journal; raises `SealError` where the secret is another's."""
    if isinstance(secret, Key):
        key = secret
    elif isinstance(secret, Opener):
        key = secret.key(header.cost, header.salt)
    else:
        key = Key.derived(secret, header.cost, header.salt)
    if not hmac.compare_digest(key.check, header.check):
        raise SealError("passphrase")
    return key


def events_in(data: bytes, header: Header, key: Key, *, sound: bool = False) -> Read:
    """All events, and how many bytes hold them; raises where something was changed, or stops."""
    chain, size = Chain.begun(key, header.head), header.size
    events: list[dict[str, Json]] = []
    *lines, rest = data[size:].split(b"\n")
    for index, line in enumerate(lines):
        sealed = _decoded(line)
        # Sectors of one line may reach the disk out of order: its end is there, its middle not.
        if sealed is None and index == len(lines) - 1 and not rest:
            break
        try:
            if sealed is None:
                raise SealError("changed", line=index + 2)
            event, after = chain.opened(sealed)
            events.append(_unpacked(event, index + 2))
        except SealError:
            if sound and events:
                break
            raise
        chain = after
        size += len(line) + 1
    if not events:
        raise SealError("truncated")
    return Read(tuple(events), chain, size)


def _decoded(line: bytes) -> bytes | None:
    """What stands in a line; None if no line of ours looks so."""
    try:
        sealed = base64.b64decode(line, validate=True)
    except binascii.Error:
        return None
    # Several texts decode to the same bytes; only one is ours.
    return sealed if len(sealed) > _NONCE + _TAG and base64.b64encode(sealed) == line else None
