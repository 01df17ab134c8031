"""Mutants that are known to survive, each with its reason, from the file beside this one."""

from __future__ import annotations

import enum
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from tests.measure.mutations import Mutant

__all__ = ["Known", "Reason", "known_survivors"]

_FILE: Final = Path(__file__).with_suffix(".toml")


class Reason(enum.Enum):
    """What kind of reason a mutant has to survive."""

    EQUIVALENT = "equivalent: nothing that can be given to it tells the two apart"
    TOLERANCE = "within a tolerance: only figures closer than one does the same work tell"
    UNASKED = "unasked: the contract doesn't say what would be right where the two differ"


@dataclass(frozen=True)
class Known:
    """An entry of the file: the line that a mutant changes, how, and why that goes unnoticed.

    `which` numbers the mutants alike in such a line, from 1; 0 stands for all of them.
    """

    module: str
    line: str
    change: str
    which: int
    reason: Reason
    why: str


def known_survivors(mutants: Iterable[Mutant]) -> dict[Mutant, Known]:
    """Return those of the mutants that are listed, with their entries.

    Raises
    ------
    KeyError, ValueError
        If the file isn't as it should be.
    """
    listed: dict[tuple[str, str, str], list[Known]] = {}
    for entry in tomllib.loads(_FILE.read_text(encoding="utf-8"))["mutant"]:
        known = Known(
            entry["module"],
            entry["line"],
            entry["change"],
            entry.get("which", 0),
            Reason[entry["reason"].upper()],
            entry["why"],
        )
        listed.setdefault((known.module, known.line, known.change), []).append(known)
    found: dict[Mutant, Known] = {}
    for mutant in mutants:
        for known in listed.get((mutant.module, mutant.within, mutant.change), ()):
            if known.which in (0, mutant.ordinal):
                found[mutant] = known
    return found
