"""The definitions that hold under any rules: gauging, leaves, measures, doubt, callouts, words.

Their words lie in a file beside this one. The figures in them are put in from the modules that work
by them, so that none is written twice.
"""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Final

from exercises.doubt import COVERAGE, GAIN, LEAF_TOLERANCE, doubt, propagated
from exercises.gauging_tables import TABLES
from exercises.reference import Entry, of_rules
from exercises.rules import RULE_SETS, RuleSet
from exercises.text import NO_TEXT, Text
from geometry.joint import LARGEST_ANGLE, SMALLEST_ANGLE
from geometry.leaf import RACKS, rack
from geometry.lengths import MM_PER_INCH
from geometry.reading import EYE_LIMIT
from geometry.tolerances import FLAT_FACE

__all__ = ["definitions", "reference"]

_MINUTE: Final = math.radians(1.0 / 60.0)
"""One minute of arc, in radians: what an unaided eye parts."""


def reference(*shop: RuleSet) -> tuple[Entry, ...]:
    """Return every entry: the definitions, every rule set that ships, then a shop's own.

    Examples
    --------
    >>> entries = reference()
    >>> len({entry.key for entry in entries}) == len(entries) > 100
    True
    """
    sets = (*RULE_SETS.values(), *shop)
    return (*definitions(), *(entry for rules in sets for entry in of_rules(rules)))


def definitions() -> tuple[Entry, ...]:
    """Return the entries that hold under any rules.

    Examples
    --------
    >>> eye = next(entry for entry in definitions() if entry.key == "doubt.eye")
    >>> str(eye.formula)
    '0.1 mm / tan(1′) = 344 mm'
    """
    text = Path(__file__).with_name("definitions.json").read_text(encoding="utf-8")
    put = _figures()
    return tuple(
        Entry(
            stated["key"],
            Text.of(stated["title"]),
            _filled(stated["text"], put),
            _filled(stated["formula"], put) if "formula" in stated else NO_TEXT,
            stated["source"],
            stated["sureness"],
            tuple(stated.get("related", ())),
            tuple(TABLES[name] for name in stated.get("tables", ())),
        )
        for stated in json.loads(text)
    )


def _filled(words: str | dict[str, str], put: dict[str, str]) -> Text:
    """The words with their figures, in Spanish with a comma; what is engraved stays so."""
    comma = {key: said if key.startswith("rack_") else said.replace(".", ",")
             for key, said in put.items()}  # fmt: skip
    stated = {"en": words, "es": words} if isinstance(words, str) else words
    return Text.of(
        {tag: said.format(**(comma if tag == "es" else put)) for tag, said in stated.items()}
    )


def _figures() -> dict[str, str]:
    """The figures that the definitions speak of, each as the module that uses it has it."""
    return {
        "doubt_leg": f"{doubt('leg'):.2f}",
        "doubt_throat": f"{doubt('throat'):.2f}",
        "leaf_tolerance": f"{LEAF_TOLERANCE:g}",
        "coverage": f"{COVERAGE:g}",
        "difference": f"{propagated(GAIN['leg'], (1.0, -1.0)):.3f}",
        "eye_limit": f"{EYE_LIMIT:g}",
        "distance": f"{EYE_LIMIT / math.tan(_MINUTE):.0f}",
        "flat": f"{FLAT_FACE:g}",
        "smallest_angle": f"{SMALLEST_ANGLE:g}",
        "largest_angle": f"{LARGEST_ANGLE:g}",
        "mm_per_inch": f"{MM_PER_INCH:g}",
        "half_root_two": f"{math.sqrt(0.5):.4f}",
        **{f"rack_{name}": ", ".join(leaf.mark for leaf in rack(name)) for name in RACKS},
    }
