"""Sealing: a file that only its passphrase opens, and in which no byte can be changed unnoticed.

A sealed file is one line of text, and then what was sealed. The line says what it is, how the key
is derived, a check of the key, a nonce, the length, and a sum of all that. The body is sealed with
ChaCha20-Poly1305 (RFC 8439); the line before the sum is authenticated with it. The sum has no key:
it tells damage before anybody types a passphrase, and protects against nothing else.
"""

from __future__ import annotations

import hashlib
import hmac
import re
import secrets
from dataclasses import dataclass
from typing import Final, Literal

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305

from trainer.sealing.key import USUAL, Cost, Key, SealError

__all__ = ["FORMAT", "KINDS", "LARGEST", "VERSION", "Kind", "Opener", "Unsealed", "seal", "unseal"]

FORMAT: Final = "toe-and-throat/sealed"
VERSION: Final = 1

Kind = Literal["sitting", "result"]
KINDS: Final[tuple[Kind, ...]] = ("sitting", "result")

LARGEST: Final = 64 * 1024 * 1024
"""Bytes of a sealed file at most."""

_BEGIN: Final = f"{FORMAT} ".encode()
_VERSION: Final = re.compile(rb"([1-9][0-9]{0,5}) ")
_HEADER: Final = re.compile(
    rb"(?P<head>[^ ]+ 1 (?P<kind>[a-z]+) (?P<log_n>[1-9][0-9]?) (?P<r>[1-9][0-9]?)"
    rb" (?P<p>[1-9][0-9]?) (?P<salt>[0-9a-f]{32}) (?P<check>[0-9a-f]{64})"
    rb" (?P<nonce>[0-9a-f]{24}) (?P<length>[1-9][0-9]{0,8})) (?P<sum>[0-9a-f]{64})\n"
)
_LONGEST_HEADER: Final = 320
_TAG: Final = 16


@dataclass(frozen=True, slots=True)
class Unsealed:
    """What a sealed file held.

    Parameters
    ----------
    kind
        What it is.
    body
        What was sealed.
    key
        Opens it, and seals what belongs to it.
    """

    kind: Kind
    body: bytes
    key: Key


@dataclass(frozen=True, slots=True)
class _Parts:
    """A sealed file, whole but still closed."""

    kind: Kind
    cost: Cost
    salt: bytes
    check: bytes
    nonce: bytes
    head: bytes
    sealed: bytes


def seal(kind: Kind, body: bytes, secret: Key | str, cost: Cost = USUAL) -> bytes:
    """Return `body` sealed.

    Parameters
    ----------
    kind
        What it is; a file of one kind can't be presented as one of another.
    body
        What to seal.
    secret
        A key, or a passphrase, for which one is derived; that takes a moment.
    cost
        Of guessing, if a key is derived.

    Raises
    ------
    ValueError
        If the passphrase is empty.
    SealError
        ``too large`` if nobody could read it back.

    Examples
    --------
    >>> sealed = seal("sitting", b"twelve coupons", "three weathered herons", Cost(log_n=4))
    >>> unseal(sealed, "three weathered herons").body
    b'twelve coupons'
    >>> unseal(sealed, "three weathered heroes")
    Traceback (most recent call last):
    trainer.sealing.key.SealError: passphrase
    """
    if len(body) > LARGEST - _LONGEST_HEADER - _TAG:
        raise SealError("too large", mib=LARGEST // 1024 // 1024)
    key = secret if isinstance(secret, Key) else Key.made(secret, cost)
    nonce = secrets.token_bytes(12)
    costs = f"{key.cost.log_n} {key.cost.r} {key.cost.p}"
    head = (
        f"{FORMAT} {VERSION} {kind} {costs} {key.salt.hex()} {key.check.hex()} {nonce.hex()}"
        f" {len(body) + _TAG}"
    ).encode()
    sealed = ChaCha20Poly1305(key.branch("file")).encrypt(nonce, body, head)
    return b"%s %s\n%s" % (head, _sum(head, sealed), sealed)


def unseal(data: bytes, secret: Key | str, kind: Kind | None = None) -> Unsealed:
    """Return what was sealed.

    Parameters
    ----------
    data
        The whole file.
    secret
        The passphrase, or the key if it is known already; then no time is spent on deriving it.
    kind
        What it has to be; None if anything will do.

    Raises
    ------
    SealError
        If it can't be opened; says what for. Without the passphrase it is known whether a file is
        sealed, whole, undamaged and of the right kind; with it, that nobody changed it.
    """
    parts = _parts(data, kind)
    if isinstance(secret, Key):
        key = secret
        if (key.cost, key.salt) != (parts.cost, parts.salt):
            raise SealError("passphrase")
    else:
        key = Key.derived(secret, parts.cost, parts.salt)
    return _opened(parts, key)


class Opener:
    """Opens many files with one passphrase; files of one sitting have one key, derived once.

    Examples
    --------
    >>> key = Key.made("three weathered herons", Cost(log_n=4))
    >>> opener = Opener("three weathered herons")
    >>> [opener.unseal(seal("result", body, key)).body.decode() for body in (b"a", b"b")]
    ['a', 'b']
    """

    def __init__(self, passphrase: str) -> None:
        self._passphrase = passphrase
        self._keys: dict[tuple[Cost, bytes], Key] = {}

    def unseal(self, data: bytes, kind: Kind | None = None) -> Unsealed:
        """Return what was sealed, or raise as `unseal` does."""
        parts = _parts(data, kind)
        return _opened(parts, self.key(parts.cost, parts.salt))

    def key(self, cost: Cost, salt: bytes) -> Key:
        """Return the key for a file; raises as `Key.derived` does."""
        if (cost, salt) not in self._keys:
            self._keys[cost, salt] = Key.derived(self._passphrase, cost, salt)
        return self._keys[cost, salt]


def _sum(head: bytes, sealed: bytes) -> bytes:
    digest = hashlib.sha256(head)
    digest.update(sealed)
    return digest.hexdigest().encode()


def _parts(data: bytes, kind: Kind | None) -> _Parts:
    """Take a file apart; what is wrong with it as far as that shows without a key."""
    if not data.startswith(_BEGIN):
        raise SealError("truncated" if _BEGIN.startswith(data) else "not sealed")
    if len(data) > LARGEST:
        raise SealError("too large", mib=LARGEST // 1024 // 1024)
    version = _VERSION.match(data, len(_BEGIN))
    if version is not None and int(version[1]) > VERSION:
        raise SealError("newer", version=int(version[1]), known=VERSION)
    found = _HEADER.match(data)
    if found is None:
        cut = b"\n" not in data and len(data) < _LONGEST_HEADER
        raise SealError("truncated" if cut else "changed")
    sealed = data[found.end() :]
    if len(sealed) < int(found["length"]):
        raise SealError("truncated")
    if not hmac.compare_digest(found["sum"], _sum(found["head"], sealed)):
        raise SealError("changed")
    said = found["kind"].decode()
    known = next((each for each in KINDS if each == said), None)
    if known is None or len(sealed) != int(found["length"]) or len(sealed) < _TAG:
        raise SealError("changed")
    if kind is not None and kind != known:
        raise SealError("kind", kind=known, asked=kind)
    salt, check, nonce = (bytes.fromhex(found[key].decode()) for key in ("salt", "check", "nonce"))
    cost = Cost(int(found["log_n"]), int(found["r"]), int(found["p"]))
    return _Parts(known, cost, salt, check, nonce, found["head"], sealed)


def _opened(parts: _Parts, key: Key) -> Unsealed:
    """Open it with a key that was derived as it says."""
    if not hmac.compare_digest(key.check, parts.check):
        raise SealError("passphrase")
    cipher = ChaCha20Poly1305(key.branch("file"))
    try:
        body = cipher.decrypt(parts.nonce, parts.sealed, parts.head)
    except InvalidTag as error:
        raise SealError("changed") from error
    return Unsealed(parts.kind, body, key)
