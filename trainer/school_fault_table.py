"""The words of what a roster can't take: codes, names, groups, and tables of learners."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.fault_table import Variant

__all__ = ["CODES"]

_CODES: Final[dict[str, tuple[Variant, ...]]] = {
    "code-none": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is no code"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} characters that can be seen"),
        ),
    ),
    "code-mistyped": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is mistyped"),
            QT_TRANSLATE_NOOP("Faults", "the code as it was given out"),
        ),
    ),
    "code-taken": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is another learner's code"),
            QT_TRANSLATE_NOOP("Faults", "a code of their own"),
        ),
    ),
    "code-twice": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is the code of line {line} too"),
            QT_TRANSLATE_NOOP("Faults", "a code of their own"),
        ),
    ),
    "code-used": (
        (
            QT_TRANSLATE_NOOP("Faults", "what was done as {value} was handed in or sent"),
            QT_TRANSLATE_NOOP("Faults", "the same code, or another learner"),
        ),
    ),
}

_ROSTER: Final[dict[str, tuple[Variant, ...]]] = {
    "learners-too-many": (
        (
            QT_TRANSLATE_NOOP("Faults", "{count} learners are named"),
            QT_TRANSLATE_NOOP("Faults", "at most {most} at once"),
        ),
    ),
    "learners-none": (
        (
            QT_TRANSLATE_NOOP("Faults", "no learner is named"),
            QT_TRANSLATE_NOOP("Faults", "a line for each"),
        ),
    ),
    "learner-name-long": (
        (
            QT_TRANSLATE_NOOP("Faults", "the name is too long"),
            QT_TRANSLATE_NOOP("Faults", "at most {most} characters"),
        ),
    ),
    "learner-name-twice": (
        (
            QT_TRANSLATE_NOOP("Faults", "line {line} is called {value} too"),
            QT_TRANSLATE_NOOP("Faults", "a name that tells them apart"),
        ),
    ),
    "learner-name-taken": (
        (
            QT_TRANSLATE_NOOP("Faults", "another learner is called {value}"),
            QT_TRANSLATE_NOOP("Faults", "a name that tells them apart"),
        ),
    ),
    "roster-shut": (
        (
            QT_TRANSLATE_NOOP("Faults", "the logbook is shut"),
            QT_TRANSLATE_NOOP("Faults", "a logbook that can be opened"),
        ),
    ),
    "roster-taken": (
        (
            QT_TRANSLATE_NOOP("Faults", "a code or a name is another learner's"),
            QT_TRANSLATE_NOOP("Faults", "others"),
        ),
    ),
    "group-name": (
        (
            QT_TRANSLATE_NOOP("Faults", "the group has no name that can be shown"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} characters"),
        ),
    ),
    "group-days": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} days are to be kept"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} days, or for good"),
        ),
    ),
    "group-taken": (
        (
            QT_TRANSLATE_NOOP("Faults", "there is a group {value} already"),
            QT_TRANSLATE_NOOP("Faults", "another name"),
        ),
    ),
}

CODES: Final = {**_CODES, **_ROSTER}
"""The words of every code."""
