"""What is wrong with a file, in the language that is spoken: by the code of each fault.

A fault that no words of the tables fit keeps the core's English.
"""

from __future__ import annotations

import re
import string
from collections.abc import Mapping
from typing import Final

from exercises.file_faults import FileError, TrayFault
from trainer import (
    fault_table,
    intake_fault_table,
    picture_fault_table,
    rule_fault_table,
    school_fault_table,
    sitting_fault_table,
)
from trainer.bench.translation import translate
from trainer.figures import figures
from trainer.notices import FaultRow

__all__ = ["CODES", "fault_rows", "fault_words"]

_CONTEXT: Final = "Faults"

CODES: Final = {
    **fault_table.CODES,
    **rule_fault_table.CODES,
    **picture_fault_table.CODES,
    **intake_fault_table.CODES,
    **sitting_fault_table.CODES,
    **school_fault_table.CODES,
}
"""The words of every code."""

_CHOICE: Final = re.compile(r"(?<=') or (?=')|(?<=mm) or (?=\d)")
_VALUES: Final = {
    **fault_table.VALUES,
    **rule_fault_table.VALUES,
    **intake_fault_table.VALUES,
    **sitting_fault_table.VALUES,
}


def _names(template: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(template) if name}


def _value(value: float | str) -> str:
    if isinstance(value, str):
        if value in _VALUES:
            return translate(_CONTEXT, _VALUES[value])
        # Choices, quoted: 'read', 'size' or 'judge'.
        return _CHOICE.sub(translate("Faults", " or "), value)
    return figures(f"{round(value, 3):g}".replace("-", "\u2212"))


def fault_words(fault: TrayFault) -> tuple[str, str]:
    """Return what is wrong and what would be right, in the language that is spoken.

    Examples
    --------
    >>> params = {"angle": 30.5, "lowest": 60.0, "highest": 135.0}
    >>> fault_words(TrayFault("a", "/joint/angle", "", "", "joint-angle", params))
    ('the joint opens 30.5 degrees', '60 to 135 degrees')
    """
    given: Mapping[str, float | str] = {"sample": '{"en": "..."}', **fault.params}
    kind = f"{fault.code}/{given.get('kind', '')}"
    for wrong, right in CODES.get(kind, CODES.get(fault.code, ())):
        if _names(wrong) | _names(right) <= given.keys():
            said = {name: _value(value) for name, value in given.items()}
            return (
                translate(_CONTEXT, wrong).format(**said),
                translate(_CONTEXT, right).format(**said),
            )
    return fault.text, fault.right


def fault_rows(error: FileError) -> tuple[str, list[FaultRow]]:
    """Return the file that can't be used, and all that is wrong with it, for a dialog.

    Examples
    --------
    >>> fault = TrayFault("a.tray.json", "/title", "is 1", "text", "text", {"value": "1"})
    >>> fault_rows(FileError([fault]))[0]
    'a.tray.json'
    """
    rows = [FaultRow(fault.pointer, *fault_words(fault)) for fault in error.faults]
    return error.faults[0].file if error.faults else "", rows
