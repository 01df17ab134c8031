"""A key out of a passphrase, made so that guessing is dear: scrypt (RFC 7914).

A passphrase is taken as it is typed, letter by letter, after Unicode's NFC: an accent typed as one
character or as two gives the same key. Nothing is stripped, and case counts.
"""

from __future__ import annotations

import secrets
import unicodedata
from dataclasses import dataclass, field
from typing import Final, Literal

from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF
from cryptography.hazmat.primitives.kdf.scrypt import Scrypt

__all__ = ["USUAL", "Cost", "Key", "SealError", "Trouble"]

Trouble = Literal[
    "passphrase",  # or the key of another file
    "changed",
    "truncated",
    "newer",
    "not sealed",
    "kind",  # sealed, but something else than what was asked for
    "cost",  # asks for more work than any file of ours
    "too large",
    "memory",
]

_SALT: Final = 16
_LENGTH: Final = 32
_MOST_MEMORY: Final = 256 * 1024 * 1024
_MOST_PASSES: Final = 4


class SealError(ValueError):
    """A sealed file that can't be used.

    Parameters
    ----------
    trouble
        What is wrong with it.
    params
        What the words about it may speak of.
    """

    def __init__(self, trouble: Trouble, **params: float | str) -> None:
        self.trouble: Trouble = trouble
        self.params = params
        super().__init__(f"{trouble} {params}" if params else trouble)


@dataclass(frozen=True, slots=True)
class Cost:
    """What a guess costs: scrypt's parameters.

    Parameters
    ----------
    log_n
        Binary logarithm of scrypt's N; memory is 128 · r · N bytes, time grows alike.
    r, p
        Block size and passes.

    Examples
    --------
    >>> USUAL.memory // 1024 // 1024, USUAL.is_bearable
    (128, True)
    >>> Cost(log_n=40).is_bearable
    False
    """

    log_n: int = 17
    r: int = 8
    p: int = 1

    @property
    def memory(self) -> int:
        """Bytes that a guess needs."""
        return 128 * self.r << self.log_n

    @property
    def is_bearable(self) -> bool:
        """Whether scrypt allows it, and a file may ask for it: 256 MiB and four passes at most."""
        # By parts: a logarithm of a thousand digits must not be shifted by.
        if not (1 <= self.log_n <= 30 and 1 <= self.r <= 8 and 1 <= self.p <= _MOST_PASSES):
            return False
        # RFC 7914, section 2: N is less than 2^(128 · r / 8).
        return self.log_n < 16 * self.r and self.memory <= _MOST_MEMORY


USUAL: Final = Cost()
"""N = 2^17, r = 8, p = 1: the first that OWASP's cheat sheet on storing passwords names (2024)."""


@dataclass(frozen=True, slots=True)
class Key:
    """What a passphrase came to: derived once, and used for all files of one sitting.

    Parameters
    ----------
    cost, salt
        How it was derived; both stand in each file that it seals.
    secret
        What it is; 32 bytes.

    Examples
    --------
    >>> key = Key.made("three weathered herons", Cost(log_n=4))
    >>> Key.derived("three weathered herons", key.cost, key.salt) == key
    True
    >>> "secret" in repr(key)
    False
    """

    cost: Cost
    salt: bytes
    secret: bytes = field(repr=False)

    @classmethod
    def made(cls, passphrase: str, cost: Cost = USUAL) -> Key:
        """Return a new key for a passphrase.

        Raises
        ------
        ValueError
            If the passphrase is empty.
        """
        if not passphrase:
            raise ValueError("an empty passphrase seals nothing")
        return cls.derived(passphrase, cost, secrets.token_bytes(_SALT))

    @classmethod
    def derived(cls, passphrase: str, cost: Cost, salt: bytes) -> Key:
        """Return the key that a file was sealed with, if this is its passphrase.

        Raises
        ------
        SealError
            ``cost`` if that would take more than is bearable, before anything is allocated;
            ``memory`` if the machine hasn't that much.
        """
        if not cost.is_bearable:
            raise SealError("cost")
        # Half a character, as a window system may give one, is a secret like any other.
        said = unicodedata.normalize("NFC", passphrase).encode("utf-8", "surrogatepass")
        try:
            scrypt = Scrypt(salt=salt, length=_LENGTH, n=1 << cost.log_n, r=cost.r, p=cost.p)
            return cls(cost, salt, scrypt.derive(said))
        except MemoryError as error:
            raise SealError("memory", mib=cost.memory // 1024 // 1024) from error

    def branch(self, purpose: str, salt: bytes = b"") -> bytes:
        """Return the 32 bytes that this key comes to for one purpose (HKDF, RFC 5869)."""
        info = f"toe-and-throat/{purpose}".encode()
        return HKDF(SHA256(), _LENGTH, salt, info).derive(self.secret)

    @property
    def check(self) -> bytes:
        """What stands in a file so that another passphrase is known as one.

        An AEAD alone can't tell a wrong key from a changed byte, and some open under two keys.
        """
        return self.branch("check")
