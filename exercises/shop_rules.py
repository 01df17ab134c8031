"""The rules files that a tray names: plain names of files that lie beside it, and nothing else."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from exercises.file_faults import TrayFault
from exercises.rule_files import SUFFIX, RulesError, load_rules
from exercises.rules import RuleSet
from exercises.strict_json import quoted
from geometry.faults import Fault

__all__ = ["ShopRules", "rules_beside"]

_NAME: Final = re.compile(r"[^./\\:\x00-\x1f][^/\\:\x00-\x1f]*")
"""No folder, no drive, no hidden file: a tray from a stranger must reach nothing but its folder."""


@dataclass(frozen=True)
class ShopRules:
    """What came of a tray's rules files.

    Parameters
    ----------
    sets
        Rule sets by id.
    faults
        Of the tray: names that can't be, ids that repeat.
    in_files
        Of the files themselves, each named.
    """

    sets: dict[str, RuleSet] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)
    in_files: list[TrayFault] = field(default_factory=list)

    @property
    def sound(self) -> bool:
        """Whether every file could be used."""
        return not self.faults and not self.in_files


def rules_beside(names: Sequence[str], folder: Path | None) -> ShopRules:
    """Return the rule sets in the files of these names in `folder`, or what is wrong with them.

    Examples
    --------
    >>> found = rules_beside(["../shop.rules.json"], Path("."))
    >>> [(fault.at, fault.code) for fault in found.faults]
    [('/rule_files/0', 'rules-file-name')]
    """
    found = ShopRules()
    for index, name in enumerate(names):
        at = f"/rule_files/{index}"
        if not (_NAME.fullmatch(name) and name.endswith(SUFFIX)):
            text = f"{quoted(name)} is no plain name of a rules file"
            right = f"the name of a file beside the tray, as {quoted('shop' + SUFFIX)}"
            found.faults.append(Fault(at, "rules-file-name", text, right, {"name": quoted(name)}))
        elif folder is None:
            text = f"{quoted(name)} can't be looked for: the tray has no folder"
            right = "a tray that is read from a file"
            found.faults.append(Fault(at, "rules-no-folder", text, right, {"name": quoted(name)}))
        else:
            _add(found, folder / name, at)
    return found


def _add(found: ShopRules, path: Path, at: str) -> None:
    try:
        rules = load_rules(path)
    except RulesError as error:
        found.in_files.extend(error.faults)
        return
    if rules.id in found.sets:
        text = f"{quoted(rules.id)} is the id of another of these files too"
        fault = Fault(at, "repeated-rules", text, "an id of its own", {"rules": quoted(rules.id)})
        found.faults.append(fault)
    found.sets[rules.id] = rules
