"""Sealed files and journals for the fuzzer, and what no forger may come to.

A changed byte stops at the sum, which has no key; so each input is tried a second time with its sum
made to fit, as somebody who knows the format would. What opens must be one of the bodies that were
sealed here: anything else is a forgery.
"""

from __future__ import annotations

import hashlib
import tempfile
from pathlib import Path
from typing import Final

from exercises.strict_json import Json
from trainer.sealing.journal import Journal
from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.seal import seal, unseal

__all__ = ["JOURNALS", "SEALED", "SealError", "open_forged", "resume_forged"]

_CHEAP: Final = Cost(log_n=2, r=1)
_PASSPHRASE: Final = "three weathered herons"
_KEY: Final = Key.derived(_PASSPHRASE, _CHEAP, b"0123456789abcdef")
_BODIES: Final = {b"twelve coupons", b'{"score": 0.75}', b""}
_EVENTS: Final[tuple[dict[str, Json], ...]] = tuple(
    {"kind": "answered", "item": number} for number in range(3)
)
_FOLDER: Final = tempfile.TemporaryDirectory()
_PATH: Final = Path(_FOLDER.name) / "a.sitting-journal"

SEALED: Final = [seal(kind, body, _KEY) for kind in ("sitting", "result") for body in _BODIES]


def _journals() -> list[bytes]:
    made = []
    for count in range(len(_EVENTS) + 1):
        journal = Journal.create(_PATH, _KEY, {"title": "Friday"})
        for event in _EVENTS[:count]:
            journal.append(event)
        made.append(_PATH.read_bytes())
        journal.discard()
    return made


JOURNALS: Final = _journals()


def _summed(data: bytes, *, whole: bool) -> bytes:
    """The input with its sum made to fit: over the first line, and over all if `whole`."""
    line, end, rest = data.partition(b"\n")
    head = line.rpartition(b" ")[0]
    digest = hashlib.sha256(head + rest if whole else head).hexdigest().encode()
    return head + b" " + digest + end + rest


def open_forged(data: bytes) -> None:
    """Try to open an input as a sealed file, as it is and with its sum made to fit."""
    for each in (data, _summed(data, whole=True)):
        for secret in (_KEY, _PASSPHRASE):
            try:
                body = unseal(each, secret).body
            except SealError:
                continue
            assert body in _BODIES, "forged"
    unseal(data, _KEY)


def resume_forged(data: bytes) -> None:
    """Try to resume an input as a journal, as it is and with the first line's sum made to fit."""
    for each in (_summed(data, whole=False), data):
        _PATH.write_bytes(each)
        try:
            resumed = Journal.resume(_PATH, _KEY)
        except SealError:
            if each is data:
                raise
            continue
        resumed.journal.close()
        assert resumed.events == _EVENTS[: len(resumed.events)], "forged"
        assert resumed.head == {"title": "Friday"}, "forged"
