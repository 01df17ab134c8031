"""The rule sets that ship with the program, each read from its file when it is first asked for."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Final

from exercises.rules.reading import read_rules
from exercises.rules.ruleset import RuleSet

__all__ = ["RULE_SETS", "SHIPPED", "rules_text"]

# Not importlib.resources: to import that takes longer than to read a set.
_SETS: Final = Path(__file__).resolve().parent / "sets"

SHIPPED: Final = (
    "as-drawn",
    "iso-5817-b",
    "iso-5817-c",
    "iso-5817-d",
    "aws-d1.1-static",
    "aws-d1.1-cyclic",
    "en-1993-1-8",
)


def rules_text(name: str) -> bytes:
    """Return the file of the shipped rule set `name`, as it is: what a shop can begin from.

    Examples
    --------
    >>> rules_text("as-drawn").startswith(b"{")
    True
    """
    return (_SETS / f"{name}.rules.json").read_bytes()


class _Shipped(Mapping[str, RuleSet]):
    """The sets by id. A start that judges by one reads no other."""

    def __init__(self) -> None:
        self._read: dict[str, RuleSet] = {}

    def __getitem__(self, name: str) -> RuleSet:
        if name not in self:
            raise KeyError(name)
        if name not in self._read:
            self._read[name] = read_rules(json.loads(rules_text(name)))
        return self._read[name]

    def __contains__(self, name: object) -> bool:
        return name in SHIPPED

    def __iter__(self) -> Iterator[str]:
        return iter(SHIPPED)

    def __len__(self) -> int:
        return len(SHIPPED)


RULE_SETS: Final[Mapping[str, RuleSet]] = _Shipped()
"""The rule sets that ship, by id."""
