"""Codes: what a learner is called in sittings and results, where names don't belong."""

from __future__ import annotations

import unicodedata
from typing import Final
from uuid import UUID, uuid5

__all__ = ["LONGEST_CODE", "code_key", "is_code", "learner_id"]

LONGEST_CODE: Final = 64
"""Characters."""

_LEARNERS: Final = UUID("6f1c2d1e-8a55-5c0b-9d5e-0a4b7f3e9c21")


def code_key(code: str) -> str:
    """Return what two spellings of one code have in common.

    Examples
    --------
    >>> code_key(" Kestrel-7 ") == code_key("KESTREL-7")
    True
    """
    # Folding can take a letter apart again, so it is put together before and after.
    folded = unicodedata.normalize("NFC", code.strip()).casefold()
    return unicodedata.normalize("NFC", folded)


def is_code(code: str) -> bool:
    """Return whether `code` can be one: 1 to 64 characters that can be seen, none around them.

    Examples
    --------
    >>> is_code("k-07"), is_code(" k-07"), is_code("")
    (True, False, False)
    """
    return 0 < len(code) <= LONGEST_CODE and code == code.strip() and code.isprintable()


def learner_id(code: str) -> str:
    """Return the id of the learner with this code: the same on every machine.

    Examples
    --------
    >>> learner_id("k-07") == learner_id(" K-07 "), learner_id("k-07") == learner_id("k-08")
    (True, False)
    """
    return str(uuid5(_LEARNERS, code_key(code)))
