"""A coupon: one weld to be judged, with its callout, its rules and its task."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, fields
from typing import Final, Literal

from exercises.backdrop import Backdrop
from exercises.callout import Callout, CalloutMeasure
from exercises.conditions import USUAL, Conditions
from exercises.disposition import DISPOSITIONS, Disposition
from exercises.placed import Placed
from exercises.rules import RULE_SETS, RuleSet
from exercises.strict_json import Json
from exercises.text import NO_TEXT, Text
from geometry.reading import EYE_LIMIT
from geometry.section import Section

__all__ = [
    "DISPOSITIONS",
    "TASKS",
    "Callout",
    "CalloutMeasure",
    "Conditions",
    "Coupon",
    "Disposition",
    "Task",
]

Task = Literal["read", "size", "judge", "find the fault"]
TASKS: Final[tuple[Task, ...]] = ("read", "size", "judge", "find the fault")


@dataclass(frozen=True)
class Coupon:
    """One weld to be judged.

    Parameters
    ----------
    id
        Unique within its tray.
    title, teaches
        What it is called, and the one thing that it teaches (shown in the debrief).
    task
        ``read``, ``size``, ``judge`` or ``find the fault``.
    section
        The weld, cut across, with its spatter as found.
    callout
        What the drawing calls for.
    rules
        Id of a rule set.
    shop_rules
        The rule set of that id where it comes from a file beside the tray; None where it ships.
    extent
        Share of the weld's length that this section stands for, above 0 and at most 1.
    eye_limit, leaf_wear
        mm.
    hints
        Shown one by one on asking.
    conditions
        What a rule may ask beside the section.
    backdrop
        The picture that the section was taken from, to be looked at after the call. Nothing is
        judged by it, so it is no part of the digest.
    placed
        The leaf that somebody has placed, for the task ``find the fault``; no other looks at it.
    source
        The coupon as its file states it, keys that begin ``x-`` included. Not to be changed.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))
    >>> coupon = Coupon("hb-04", section, Callout(8.0, "leg", "8 mm"))
    >>> coupon.rules, coupon.digest == Coupon("hb-05", section, coupon.callout).digest
    ('as-drawn', False)
    """

    id: str
    section: Section
    callout: Callout
    title: Text = NO_TEXT
    task: Task = "judge"
    rules: str = "as-drawn"
    extent: float = 1.0
    eye_limit: float = EYE_LIMIT
    leaf_wear: float = 0.0
    hints: tuple[Text, ...] = ()
    teaches: Text = NO_TEXT
    conditions: Conditions = USUAL
    shop_rules: RuleSet | None = field(default=None, repr=False)
    backdrop: Backdrop | None = field(default=None, repr=False)
    placed: Placed | None = None
    source: Mapping[str, Json] = field(default_factory=dict, compare=False, repr=False)

    @property
    def rule_set(self) -> RuleSet:
        """The rules that this coupon is judged by."""
        return RULE_SETS[self.rules] if self.shop_rules is None else self.shop_rules

    def canonical(self) -> dict[str, object]:
        """What the coupon says, defaults filled in, lengths as mm; keys ``x-`` left out.

        The backdrop is left out too: it changes no call, and a record would keep it with each.
        Two files that mean the same give the same document, however they are written.
        """
        section = self.section
        said: dict[str, object] = {
            "id": self.id,
            "title": self.title.as_document(),
            "task": self.task,
            "joint": asdict(section.joint),
            "bead": asdict(section.bead),
            "spatter": [asdict(drop) for drop in section.spatter],
            "callout": _canonical_callout(self.callout),
            "rules": self.rules,
            "extent": self.extent,
            "eye_limit": self.eye_limit,
            "leaf_wear": self.leaf_wear,
            "hints": [hint.as_document() for hint in self.hints],
            "teaches": self.teaches.as_document(),
        }
        if self.conditions != USUAL:
            said["conditions"] = asdict(self.conditions)
        if self.placed is not None and self.task == "find the fault":
            said["placed"] = asdict(self.placed)
        if self.shop_rules is not None:
            said["rules_digest"] = self.shop_rules.digest
        return said

    @property
    def digest(self) -> str:
        """SHA-256 of the canonical JSON, in hexadecimal: names the coupon as judged."""
        text = json.dumps(
            _even(self.canonical()), sort_keys=True, separators=(",", ":"), allow_nan=False
        )
        return hashlib.sha256(text.encode("ascii")).hexdigest()


def _canonical_callout(callout: Callout) -> dict[str, object]:
    """The callout; what version 1 had no key for only where it says something.

    So a coupon keeps the digest that it had before those keys came.
    """
    later = {field.name: field.default for field in fields(Callout)[3:]}
    stated = asdict(callout)
    return {key: value for key, value in stated.items() if key not in later or value != later[key]}


def _even(value: object) -> object:
    """The value with every number a float and no minus zero, so that 8, 8.0 and -0.0 agree."""
    if isinstance(value, dict):
        return {key: _even(inner) for key, inner in value.items()}
    if isinstance(value, (list, tuple)):
        return [_even(inner) for inner in value]
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return float(value) + 0.0
    return value
