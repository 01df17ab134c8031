"""From a rules document whose shape is known to be sound to the rule set that it states."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from exercises.rules.formula import (
    NOTHING,
    Amount,
    Extreme,
    Length,
    Linear,
    Row,
    Share,
    Table,
    Where,
)
from exercises.rules.limits import (
    AT_LEAST,
    DEFAULT_NEEDS,
    Limit,
    MinimumSize,
    Opening,
    Source,
    Undersize,
    Within,
)
from exercises.rules.ruleset import RuleSet
from exercises.text import NO_TEXT, Text
from geometry.lengths import parse_length

__all__ = ["read_rules"]

_Plain = Any
"""A JSON value; what may stand where was checked before, and no type can say it."""

_Document = Mapping[str, _Plain]


def read_rules(document: _Document, digest: str = "") -> RuleSet:
    """Return the rule set that a sound document states.

    `exercises.rule_files` finds out whether one is; what isn't may raise anything here.

    Examples
    --------
    >>> source = {"document": "a shop", "sureness": "own"}
    >>> limit = {"measure": "convexity", "at_most": "1/8 in", "source": source}
    >>> rules = read_rules({"id": "shop", "title": "Shop", "source": source, "limits": [limit]})
    >>> rules.limits[0].amount
    Length(mm=3.175, inch=3.175)
    """
    undersize, opening = document.get("undersize"), document.get("opening")
    minimum = document.get("minimum_size")
    return RuleSet(
        id=document["id"],
        version=document.get("revision", 1),
        title=Text.of(document["title"]),
        source=_source(document["source"]),
        throat_is=document.get("throat_is", "effective_throat"),
        undersize=_undersize(undersize) if undersize else None,
        opening=Opening(_length(opening["free"]), _source(opening["source"])) if opening else None,
        minimum_size=_minimum(minimum) if minimum else None,
        limits=tuple(_limit(stated) for stated in document.get("limits", ())),
        stated_lines=tuple(Text.of(line) for line in document.get("lines", ())),
        notes=tuple(Text.of(note) for note in document.get("notes", ())),
        digest=digest,
    )


def _source(stated: _Document) -> Source:
    return Source(
        stated["document"],
        stated.get("edition", ""),
        stated.get("clause", ""),
        stated["sureness"],
        Text.of(stated["note"]) if stated.get("note") else NO_TEXT,
    )


def _one(stated: _Plain) -> float:
    return parse_length(stated) if isinstance(stated, str) else float(stated)


def _length(stated: _Plain) -> Length:
    if isinstance(stated, Mapping):
        return Length(_one(stated["mm"]), _one(stated["in"]))
    return Length.plain(_one(stated))


def _amount(stated: _Plain) -> Amount:
    if not isinstance(stated, Mapping) or "mm" in stated:
        return _length(stated)
    if "share" in stated:
        return Linear(
            _length(stated.get("base", 0.0)),
            Share(stated["share"]["of"], float(stated["share"]["by"])),
            _length(stated["less"]) if "less" in stated else NOTHING,
            _length(stated["cap"]) if "cap" in stated else None,
        )
    if "rows" in stated:
        return Table(stated["by"], tuple(_row(row) for row in stated["rows"]))
    if "where" in stated:
        return Where(stated["where"], _amount(stated["then"]), _amount(stated["else"]))
    which = "least" if "least_of" in stated else "greatest"
    return Extreme(
        "least" if which == "least" else "greatest",
        tuple(_amount(each) for each in stated[f"{which}_of"]),
    )


def _row(stated: _Document) -> Row:
    amount = _amount(stated["amount"])
    if "up_to" in stated:
        return Row(amount, _length(stated["up_to"]))
    if "below" in stated:
        return Row(amount, _length(stated["below"]), inclusive=False)
    return Row(amount)


def _within(stated: _Document | None) -> Within | None:
    if stated is None:
        return None
    if "share" in stated:
        return Within(share=float(stated["share"]))
    return Within(
        length=_length(stated["length"]),
        each=_length(stated["each"]),
        prorate=stated.get("prorate", False),
    )


def _limit(stated: _Document) -> Limit:
    measure = stated["measure"]
    return Limit(
        measure,
        _amount(stated["at_least" if measure in AT_LEAST else "at_most"]),
        stated.get("needs") or DEFAULT_NEEDS[measure],
        _source(stated["source"]),
        _amount(stated["short"]) if stated.get("short") is not None else None,
        _within(stated.get("within")),
    )


def _undersize(stated: _Document) -> Undersize:
    return Undersize(
        stated["measured_as"],
        _amount(stated["at_most"]),
        _source(stated["source"]),
        _within(stated.get("within")),
    )


def _minimum(stated: _Document) -> MinimumSize:
    return MinimumSize(
        stated["measured_as"], _amount(stated["at_least"]), _source(stated["source"])
    )
