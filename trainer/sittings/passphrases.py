"""Passphrases: how long is long enough, and one to take. No Qt here."""

from __future__ import annotations

import secrets
from collections.abc import Callable
from typing import Final, Literal

__all__ = ["LEAST", "Worth", "suggested", "worth_of"]

LEAST: Final = 8
"""Characters that a passphrase must have: fewer are found by trying in no time."""

_FAIR: Final = 12
_GOOD: Final = 20

_CONSONANTS: Final = "bdglmnrstvz"
_VOWELS: Final = "aeiou"
_GROUPS: Final = 5
_SYLLABLES: Final = 2

Worth = Literal["none", "short", "weak", "fair", "good"]


def worth_of(passphrase: str) -> Worth:
    """Return what a passphrase is worth, by its length alone; spaces around it don't count.

    Characters of all kinds count alike: rules about kinds make passphrases that are forgotten, and
    what is typed twelve times isn't better for an exclamation mark.

    Examples
    --------
    >>> worth_of(""), worth_of("heron"), worth_of("herons 2"), worth_of("weathered herons")
    ('none', 'short', 'weak', 'fair')
    >>> worth_of("a" * 40)
    'weak'
    """
    said = passphrase.strip()
    if not said:
        return "none"
    if len(said) < LEAST:
        return "short"
    # A few characters over and over are no longer than those few.
    if len(said) < _FAIR or len(set(said)) < _FAIR // 2:
        return "weak"
    return "fair" if len(said) < _GOOD else "good"


def suggested(draw: Callable[[str], str] = secrets.choice) -> str:
    """Return a passphrase of syllables that can be said, and drawn by nobody's taste.

    Ten syllables of 55 are 57 bits: with scrypt before each try, out of reach of whoever has the
    file and a room full of machines.

    Examples
    --------
    >>> suggested(lambda letters: letters[0])
    'baba baba baba baba baba'
    >>> suggested() == suggested()
    False
    """
    words = (
        "".join(draw(_CONSONANTS) + draw(_VOWELS) for _ in range(_SYLLABLES))
        for _ in range(_GROUPS)
    )
    return " ".join(words)
