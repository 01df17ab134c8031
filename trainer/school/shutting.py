"""Which papers are shut on this machine, and the passphrase that opens them. No Qt."""

from __future__ import annotations

import hmac
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from trainer.sealing.key import Cost, Key

__all__ = ["Shut", "opened_by", "seal_of"]


@dataclass(frozen=True, slots=True)
class Shut:
    """Papers that one passphrase opens.

    Parameters
    ----------
    cost, salt, check
        How its key is derived, and what tells that it is the one.
    papers
        How many papers.
    """

    cost: Cost
    salt: bytes
    check: str
    papers: int

    @classmethod
    def of(cls, seal: Mapping[str, object], papers: int) -> Shut:
        """Return what a paper's body says; see `seal_of`."""
        log_n, r, p = (int(str(seal[name])) for name in ("log_n", "r", "p"))
        salt = bytes.fromhex(str(seal["salt"]))
        return cls(Cost(log_n, r, p), salt, str(seal["check"]), papers)


def seal_of(key: Key) -> dict[str, object]:
    """Return how a key's passphrase is known, for the body of a paper: what any sealed file shows.

    Examples
    --------
    >>> key = Key.made("three weathered herons", Cost(log_n=4))
    >>> shut = Shut.of(seal_of(key), papers=1)
    >>> opened_by("three weathered herons", [shut]) == {shut.check}, opened_by("herons", [shut])
    (True, set())
    """
    cost = key.cost
    return {
        "log_n": cost.log_n, "r": cost.r, "p": cost.p, "salt": key.salt.hex(),
        "check": key.check.hex(),
    }  # fmt: skip


def opened_by(passphrase: str, shut: Iterable[Shut]) -> set[str]:
    """Return the `Shut.check` of those that a passphrase opens.

    Raises
    ------
    SealError
        If one would take more work or memory than any of ours, or than there is.
    """
    return {
        one.check
        for one in shut
        if hmac.compare_digest(Key.derived(passphrase, one.cost, one.salt).check.hex(), one.check)
    }
