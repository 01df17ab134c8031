"""A shop's own rules: files that are read whole or not at all, hardened as trays are."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path
from typing import Final

from exercises.amounts import amount_faults, columns, length_faults
from exercises.file_faults import FileError, TrayFault, read_bytes
from exercises.rule_models import (
    AMOUNT_SCHEMAS,
    REFERENCE,
    RULES_FORMAT,
    LimitModel,
    RulesModel,
    UndersizeModel,
    WithinModel,
)
from exercises.rules import SHIPPED, RuleSet
from exercises.rules.formula import QUANTITIES
from exercises.rules.limits import AT_LEAST
from exercises.rules.reading import read_rules
from exercises.shape import check_shape, without_private_keys
from exercises.strict_json import Json, parse_json, quoted
from exercises.versions import RULES_HEAD, check_version
from geometry.faults import Fault

__all__ = [
    "SUFFIX",
    "RulesError",
    "check_rules",
    "load_rules",
    "rules_document",
    "rules_faults",
    "rules_of",
    "rules_schema",
]

SUFFIX: Final = ".rules.json"

_BEFORE_WELDING: Final = tuple(name for name in QUANTITIES if name != "face_width")
"""What the size that is asked for may go by: it is known before there is a weld."""

_ANGLES: Final = ("toe_angle", "joint_angle")


class RulesError(FileError):
    """A rules file that can't be used."""


def load_rules(path: Path | str) -> RuleSet:
    """Return the rule set in the file at `path`.

    Raises
    ------
    RulesError
        With every fault of the file; nothing is half-loaded.
    """
    return rules_of(rules_document(path), str(path))


def rules_document(path: Path | str) -> Json:
    """Return what the rules file at `path` states, private keys left out.

    Raises
    ------
    RulesError
        With every fault of the file.
    """
    try:
        data = read_bytes(Path(path))
    except FileError as error:
        raise RulesError(error.faults) from error
    parsed = parse_json(data)
    bare = without_private_keys(parsed.value)
    if parsed.faults:
        found = [] if parsed.value is None else rules_faults(bare)
        known = {fault.at for fault in parsed.faults}
        faults = parsed.faults + [fault for fault in found if fault.at not in known]
        raise RulesError([TrayFault.of(str(path), fault) for fault in faults])
    return bare


def rules_of(document: Json, name: str = "") -> RuleSet:
    """Return the rule set that a document states, its digest included.

    Parameters
    ----------
    document
        Plain JSON values, private keys left out.
    name
        What faults call its file.

    Raises
    ------
    RulesError
        With every fault of the document.

    Examples
    --------
    >>> source = {"document": "a shop", "sureness": "own"}
    >>> head = {"format": "toe-and-throat/rules", "version": 1, "id": "shop", "title": "Shop"}
    >>> rules = rules_of({**head, "source": source})
    >>> rules.id, len(rules.digest)
    ('shop', 64)
    """
    faults = rules_faults(document)
    if faults or not isinstance(document, dict):
        raise RulesError([TrayFault.of(name, fault) for fault in faults])
    text = json.dumps(document, sort_keys=True, separators=(",", ":"), allow_nan=False)
    return read_rules(document, hashlib.sha256(text.encode("ascii")).hexdigest())


def check_rules(path: Path | str) -> list[TrayFault]:
    """Return every fault of the rules file at `path`; none if it is sound."""
    try:
        load_rules(path)
    except RulesError as error:
        return list(error.faults)
    return []


def rules_schema() -> dict[str, object]:
    """Return the JSON Schema (2020-12) of a rules file.

    Examples
    --------
    >>> sorted(rules_schema()["required"])
    ['format', 'id', 'source', 'title', 'version']
    """
    text = json.dumps(RulesModel.model_json_schema())
    schema = json.loads(text.replace(f'"{REFERENCE}":', '"$ref":'))
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **schema,
        "$defs": {**schema["$defs"], **AMOUNT_SCHEMAS},
        "title": "Toe & Throat rules",
    }


def rules_faults(document: Json, *, shipped: bool = False) -> list[Fault]:
    """Return every fault of a rules document, private keys left out.

    Parameters
    ----------
    document
        Plain JSON values.
    shipped
        Whether it may have the id of a set that ships.

    Examples
    --------
    >>> [fault.code for fault in rules_faults({"format": "toe-and-throat/rules", "version": 9})]
    ['newer-version']
    """
    faults = check_version(document, RULES_FORMAT, RULES_HEAD)
    if faults:
        return faults
    model, faults = check_shape(RulesModel, document)
    if model is None:
        return faults
    if model.id in SHIPPED and not shipped:
        text = f"{quoted(model.id)} is the id of a rule set that ships"
        faults.append(Fault("/id", "shipped-id", text, "an id of your own", {"id": model.id}))
    if model.undersize is not None:
        faults += _undersize_faults(model.undersize)
    if model.opening is not None:
        faults += length_faults(model.opening.free, "/opening/free")
    if model.minimum_size is not None:
        at = "/minimum_size/at_least"
        faults += amount_faults(model.minimum_size.at_least, at, _BEFORE_WELDING)
    seen: set[str] = set()
    for index, limit in enumerate(model.limits):
        faults += _limit_faults(limit, f"/limits/{index}")
        if limit.measure in seen:
            text = f"{quoted(limit.measure)} is limited twice"
            params = {"measure": limit.measure}
            at = f"/limits/{index}/measure"
            faults.append(Fault(at, "repeated-limit", text, "one limit for each", params))
        seen.add(limit.measure)
    return faults


def _undersize_faults(model: UndersizeModel) -> list[Fault]:
    found = amount_faults(model.at_most, "/undersize/at_most", _BEFORE_WELDING)
    return found + _within_faults(model.within, "/undersize/within")


def _limit_faults(model: LimitModel, at: str) -> list[Fault]:
    stated: dict[str, Json] = {"at_most": model.at_most, "at_least": model.at_least}
    right = "at_least" if model.measure in AT_LEAST else "at_most"
    wrong = "at_most" if right == "at_least" else "at_least"
    found: list[Fault] = []
    if stated[wrong] is not None:
        text = f"{quoted(wrong)} says nothing of {quoted(model.measure)}"
        params = {"key": wrong, "measure": model.measure, "other": right}
        found.append(Fault(f"{at}/{wrong}", "wrong-bound", text, quoted(right), params))
    if stated[right] is None:
        text = f"{quoted(right)} is missing"
        wanted = f"an object with the key {quoted(right)}"
        named = {"key": right, "named": quoted(right)}
        found.append(Fault(f"{at}/{right}", "missing-key", text, wanted, named))
    else:
        found += _amount_or_angle(model, stated[right], f"{at}/{right}")
    if (model.short is None) != (model.within is None):
        text = '"short" and "within" belong together'
        found.append(Fault(at, "short-within", text, "both, or neither"))
    if model.short is not None:
        found += _amount_or_angle(model, model.short, f"{at}/short")
    return found + _within_faults(model.within, f"{at}/within")


def _amount_or_angle(model: LimitModel, value: Json, at: str) -> list[Fault]:
    if model.measure not in _ANGLES:
        return amount_faults(value, at)
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    if number and 0.0 <= float(str(value)) <= 180.0:
        return []
    params = {"value": quoted(value)}
    return [Fault(at, "angle", f"is {quoted(value)}", "degrees from 0 to 180", params)]


def _within_faults(model: WithinModel | None, at: str) -> list[Fault]:
    if model is None:
        return []
    by_length = model.length is not None and model.each is not None
    either = model.length is not None or model.each is not None
    if (model.share is None) != by_length or (model.share is not None and either):
        right = '"share"; or "length" and "each"'
        text = "says the share in no way, or in two"
        return [Fault(at, "within", text, right, {"kind": "unsaid"})]
    if not by_length:
        return []
    found = length_faults(model.length, f"{at}/length") + length_faults(model.each, f"{at}/each")
    if found:
        return found
    pairs = zip(columns(model.length), columns(model.each), strict=True)
    if any(not 0.0 < length <= each for length, each in pairs):
        text = "the length is none, or more than what it is in"
        return [Fault(at, "within", text, 'a "length" above 0, and no more than "each"')]
    return []
