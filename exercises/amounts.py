"""What is wrong with an amount in a rules file: every fault of it, each at its place."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from exercises.rules.formula import FACTS, QUANTITIES
from exercises.strict_json import Json, extend_pointer, quoted
from geometry.faults import Fault
from geometry.lengths import parse_length

__all__ = ["amount_faults", "columns", "length_faults"]

_LARGEST: Final = 10_000.0
"""mm, or times a quantity."""

_LENGTH: Final = 'mm, "1/16 in", or both columns as {"mm": 2, "in": "1/16 in"}'
_AMOUNT: Final = f'{_LENGTH}; or an object with "share", "rows", "where", "least_of", "greatest_of"'

_KEYS: Final[dict[str, tuple[str, ...]]] = {
    "share": ("share", "base", "less", "cap"),
    "rows": ("rows", "by"),
    "where": ("where", "then", "else"),
    "least_of": ("least_of",),
    "greatest_of": ("greatest_of",),
}
"""The keys of each kind of amount, by the one that tells it."""


def amount_faults(value: Json, at: str, quantities: Collection[str] = QUANTITIES) -> list[Fault]:
    """Return every fault of an amount.

    Parameters
    ----------
    value
        A plain JSON value, private keys left out.
    at
        Its JSON Pointer.
    quantities
        What it may go by where it stands.

    Examples
    --------
    >>> for fault in amount_faults({"share": {"of": "weight", "by": 0.1}, "cap": "3"}, "/at_most"):
    ...     print(fault.at, fault.code)
    /at_most/cap amount
    /at_most/share/of quantity
    """
    if not isinstance(value, dict) or "mm" in value or "in" in value:
        return length_faults(value, at)
    kind = next((key for key in _KEYS if key in value), None)
    if kind is None:
        return [_wrong(at, value, _AMOUNT)]
    found = [
        Fault(
            extend_pointer(at, key),
            "unknown-key",
            f"{quoted(key)} is no key here",
            "one of " + ", ".join(quoted(name) for name in _KEYS[kind]),
            {"key": key},
        )
        for key in value
        if key not in _KEYS[kind]
    ]
    if kind == "share":
        return found + _linear_faults(value, at, quantities)
    if kind == "rows":
        return found + _table_faults(value, at, quantities)
    if kind == "where":
        return found + _where_faults(value, at, quantities)
    return found + _list_faults(value[kind], extend_pointer(at, kind), quantities)


def length_faults(value: Json, at: str) -> list[Fault]:
    """Return every fault of a length: a number, a string with its unit, or two columns.

    Examples
    --------
    >>> length_faults({"mm": 2, "in": "1/16 in"}, ""), length_faults("2", "")[0].code
    ([], 'amount')
    """
    if isinstance(value, dict):
        if set(value) != {"mm", "in"}:
            return [_wrong(at, value, _LENGTH)]
        found = [] if isinstance(value["in"], str) else [_wrong(f"{at}/in", value["in"], _LENGTH)]
        each = (_plain(value[key], f"{at}/{key}") for key in ("mm", "in"))
        return found or [fault for faults in each for fault in faults]
    return _plain(value, at)


def _plain(value: Json, at: str) -> list[Fault]:
    length = None
    if isinstance(value, str):
        try:
            length = parse_length(value) if len(value) <= 40 else None
        except ValueError:
            length = None
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        length = float(value) if abs(value) <= _LARGEST else None
    if length is None or not 0.0 <= length <= _LARGEST:
        return [_wrong(at, value, _LENGTH)]
    return []


def _wrong(at: str, value: Json, right: str) -> Fault:
    params = {"value": quoted(value), "wanted": right}
    return Fault(at, "amount", f"is {quoted(value)}", right, params)


def _choice(value: Json, at: str, known: Collection[str], code: str) -> list[Fault]:
    if isinstance(value, str) and value in known:
        return []
    listed = ", ".join(quoted(name) for name in known)
    params = {"value": quoted(value), "known": listed}
    return [Fault(at, code, f"is {quoted(value)}", f"one of {listed}", params)]


def _linear_faults(value: dict[str, Json], at: str, quantities: Collection[str]) -> list[Fault]:
    found = [
        fault
        for key in ("base", "less", "cap")
        if key in value
        for fault in length_faults(value[key], f"{at}/{key}")
    ]
    share = value["share"]
    if not isinstance(share, dict) or set(share) != {"of", "by"}:
        return [*found, _wrong(f"{at}/share", share, '{"of": "throat", "by": 0.1}')]
    found += _choice(share["of"], f"{at}/share/of", quantities, "quantity")
    by = share["by"]
    if isinstance(by, bool) or not isinstance(by, (int, float)) or not 0.0 < by <= _LARGEST:
        found.append(_wrong(f"{at}/share/by", by, "a number above 0"))
    return found


def _table_faults(value: dict[str, Json], at: str, quantities: Collection[str]) -> list[Fault]:
    found = _choice(value.get("by"), f"{at}/by", quantities, "quantity")
    rows = value["rows"]
    if not isinstance(rows, list) or not rows:
        return [*found, _wrong(f"{at}/rows", rows, "a list of rows")]
    before = (-1.0, -1.0)
    for index, row in enumerate(rows):
        place = f"{at}/rows/{index}"
        if not isinstance(row, dict) or "amount" not in row:
            found.append(_wrong(place, row, 'an object with "amount"'))
            continue
        found += amount_faults(row["amount"], f"{place}/amount", quantities)
        bounds = [key for key in row if key != "amount"]
        last = index == len(rows) - 1
        if bounds not in ([[]] if last else [["up_to"], ["below"]]):
            right = '"amount" alone, for all the rest' if last else 'either "up_to" or "below"'
            keys = ", ".join(row)
            params = {"keys": keys, "wanted": right}
            found.append(Fault(place, "row", f"has {keys}", right, params))
        elif bounds:
            faults = length_faults(row[bounds[0]], f"{place}/{bounds[0]}")
            found += faults
            bound = before if faults else columns(row[bounds[0]])
            if not all(this > last for this, last in zip(bound, before, strict=True)):
                right = "more than in the row above"
                found += [] if faults else [_wrong(f"{place}/{bounds[0]}", row[bounds[0]], right)]
            before = bound
    return found


def columns(value: Json) -> tuple[float, float]:
    """Return both columns of a sound length, mm.

    Examples
    --------
    >>> columns({"mm": 2, "in": "1/16 in"}), columns("3 mm")
    ((2.0, 1.5875), (3.0, 3.0))
    """
    if isinstance(value, dict):
        return columns(value["mm"])[0], columns(value["in"])[0]
    length = parse_length(value) if isinstance(value, str) else float(str(value))
    return length, length


def _where_faults(value: dict[str, Json], at: str, quantities: Collection[str]) -> list[Fault]:
    found = _choice(value["where"], f"{at}/where", FACTS, "fact")
    for key in ("then", "else"):
        if key in value:
            found += amount_faults(value[key], f"{at}/{key}", quantities)
        else:
            text = f"{quoted(key)} is missing"
            right = f"an object with the key {quoted(key)}"
            found.append(Fault(f"{at}/{key}", "missing-key", text, right, {"key": key}))
    return found


def _list_faults(value: Json, at: str, quantities: Collection[str]) -> list[Fault]:
    if not isinstance(value, list) or not value:
        return [_wrong(at, value, "a list of amounts")]
    return [
        fault
        for index, each in enumerate(value)
        for fault in amount_faults(each, f"{at}/{index}", quantities)
    ]
