"""Codes made for learners: readable, with no look-alike characters, and a check on what is typed.

Seven characters as ``HK4-7TK``. The last of the six is a check over the others, so that one
mistyped character, or two that changed places, is never another learner's code. The alphabet has
23 characters, a prime: sums weighted by place tell every such mistake (as ISBN-10 does with 11).
A school's own codes are taken as they are.
"""

from __future__ import annotations

import re
import secrets
from collections.abc import Callable, Collection
from typing import Final

from exercises.sitting.codes import code_key

__all__ = ["ALPHABET", "made_code", "mistyped", "spelt", "tidy_code"]

ALPHABET: Final = "34679ACDEFGHJKMNPQRTWXY"
"""Without 0 O, 1 I L, 2 Z, 5 S, 8 B, U V, which are taken for each other."""

_SHAPE: Final = re.compile(r"([0-9A-Z]{3})-([0-9A-Z]{3})")
_DRAWN: Final = 5


def _check(drawn: str) -> str:
    places = range(2, 2 + len(drawn))
    total = sum(place * ALPHABET.index(c) for place, c in zip(places, drawn, strict=True))
    # The check's own place weighs 1.
    return ALPHABET[-total % len(ALPHABET)]


def made_code(taken: Collection[str] = (), draw: Callable[[str], str] = secrets.choice) -> str:
    """Return a new code that none of `taken` is.

    Examples
    --------
    >>> made_code(draw=lambda alphabet: alphabet[5])
    'AAA-AAN'
    >>> mistyped(made_code())
    False
    """
    keys = {code_key(code) for code in taken}
    while True:
        drawn = "".join(draw(ALPHABET) for _ in range(_DRAWN))
        code = f"{drawn[:3]}-{drawn[3:]}{_check(drawn)}"
        if code_key(code) not in keys:
            return code


def tidy_code(code: str) -> str:
    """Return a code as it is kept: one of ours in capitals, another as it came.

    Examples
    --------
    >>> tidy_code(" aaa-aan "), tidy_code(" Kestrel 7 ")
    ('AAA-AAN', 'Kestrel 7')
    """
    code = code.strip()
    return code.upper() if _SHAPE.fullmatch(code.upper()) else code


def spelt(code: str) -> str:
    """Return the code of ours that was typed without its hyphen, or with blanks; another as it is.

    A school's own may look so too: it is for where it is known which codes there are.

    Examples
    --------
    >>> spelt("aaa aan"), spelt("AAAAAN"), spelt("Kestrel 7")
    ('AAA-AAN', 'AAA-AAN', 'Kestrel 7')
    """
    letters = re.sub(r"[\s-]", "", code).upper()
    ours = f"{letters[:3]}-{letters[3:]}"
    return ours if _SHAPE.fullmatch(ours) else code.strip()


def mistyped(code: str) -> bool:
    """Return whether a code has the shape of ours, and its check is wrong.

    Examples
    --------
    >>> mistyped("AAA-AAN"), mistyped("AAA-ACN"), mistyped("AAA-ANA"), mistyped("AAA-AON")
    (False, True, True, True)
    >>> mistyped("Kestrel 7"), mistyped("BUS-012")
    (False, False)
    """
    found = _SHAPE.fullmatch(code.strip().upper())
    if found is None:
        return False
    letters = found[1] + found[2]
    strangers = sum(c not in ALPHABET for c in letters)
    if strangers:
        # One that our alphabet lacks is a slip; several are a school's own way to count.
        return strangers == 1
    return _check(letters[:_DRAWN]) != letters[_DRAWN]
