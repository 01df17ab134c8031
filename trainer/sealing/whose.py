"""Whose a sealed file is, as far as its name tells: nothing is unsealed for that. No Qt.

A result's name ends with a code and the beginning of its id; a journal's is made of its sitting and
its learner. Anybody may have renamed one: then it is nobody's.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from typing import Final
from uuid import NAMESPACE_OID, uuid5

from exercises.sitting.codes import code_key, learner_id
from trainer.sealing.journal import SUFFIX
from trainer.sealing.result_files import SUFFIXES, name_part

__all__ = ["MARK", "journal_name", "owner_of"]

MARK: Final = 8
"""How many characters of a result's id stand in the name of its file."""

_RESULT: Final = re.compile(rf"(.+)_([0-9a-f]{{{MARK}}}){re.escape(SUFFIXES['result'])}")


def journal_name(sitting: str, code: str) -> str:
    """Return what the journal of a code in a sitting (its id) is called: one, however often begun.

    Examples
    --------
    >>> journal_name("s-1", "K-07") == journal_name("s-1", " k-07")
    True
    """
    return f"{uuid5(NAMESPACE_OID, f'{sitting}/{learner_id(code)}')}{SUFFIX}"


def owner_of(
    name: str, codes: Collection[str], papers: Mapping[str, str] | None = None
) -> str | None:
    """Return whose the result's file of this name is, out of `codes`; None if it is nobody's here.

    Parameters
    ----------
    name
        Of the file.
    codes
        Of everybody who is known.
    papers
        The code of each paper that is known, by its id.

    Examples
    --------
    >>> owner_of("Friday_K-07_3fa90000.result", ["K-07", "7", "K-08"])
    'K-07'
    >>> owner_of("Friday_A_7_3fa90000.result", ["7", "A 7", "A_7"])
    'A_7'
    >>> owner_of("mine.result", ["mine"]) is None
    True
    """
    found = _RESULT.fullmatch(name)
    if found is None:
        return None
    front = "_" + found[1].casefold()
    # Of several that it could end with the longest is meant: "Friday_A_7" is no paper of "7".
    fitting = [code for code in codes if front.endswith("_" + name_part(code).casefold())]
    owner = max(fitting, key=lambda code: len(name_part(code)), default=None)
    known = {code for paper, code in (papers or {}).items() if paper.startswith(found[2])}
    if owner is None or not known:
        return owner
    return owner if code_key(owner) in map(code_key, known) else None
