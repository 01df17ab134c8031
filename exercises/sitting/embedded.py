"""Coupons and shop's rules inside the files of sittings: whole, read as hard as trays are."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from exercises.coupon import Coupon
from exercises.file_faults import FileError, TrayFault
from exercises.models import TRAY_FORMAT
from exercises.rule_files import rules_document, rules_of
from exercises.rules import RuleSet
from exercises.sitting.plan import Chosen
from exercises.strict_json import Json, quoted
from exercises.tray import Tray, load_tray, read_tray
from exercises.versions import HEAD
from geometry.faults import Fault

__all__ = [
    "chosen_of",
    "coupon_document",
    "fault_below",
    "load_chosen",
    "read_chosen",
    "read_coupon",
    "read_rule_sets",
    "tray_document",
]

Document = dict[str, Json]


def load_chosen(path: Path | str, names: Collection[str] | None = None) -> Chosen:
    """Return coupons out of the tray file at `path`, with the shop's rules that they need.

    Parameters
    ----------
    path
        Of the tray.
    names
        Ids of the coupons; all of them without it.

    Raises
    ------
    FileError
        With every fault of the tray, or of its rules files.
    """
    return chosen_of(load_tray(path), Path(path).parent, names)


def chosen_of(
    tray: Tray, folder: Path | None = None, names: Collection[str] | None = None
) -> Chosen:
    """Return coupons out of a tray, with the shop's rules that they need.

    Parameters
    ----------
    tray
        As read.
    folder
        Where the rules files lie that it names.
    names
        Ids of the coupons; all of them without it.

    Raises
    ------
    FileError
        If a rules file isn't there any more, or isn't sound.

    Examples
    --------
    >>> from exercises.maker import Recipe, make_tray
    >>> chosen = chosen_of(make_tray(Recipe(4)), names={"made-1-002"})
    >>> [coupon.id for coupon in chosen.coupons], dict(chosen.rules)
    (['made-1-002'], {})
    """
    taken = tuple(c for c in tray.coupons if names is None or c.id in names)
    needed = {coupon.rules for coupon in taken if coupon.shop_rules is not None}
    rules: dict[str, Json] = {}
    files = tray.source.get("rule_files")
    if not isinstance(files, list) or folder is None or not needed:
        return Chosen(tray.title, taken)
    for file in files:
        document = rules_document(folder / str(file))
        name = rules_of(document, str(file)).id
        if name in needed:
            rules[name] = document
    return Chosen(tray.title, taken, rules)


def coupon_document(coupon: Coupon) -> Document:
    """Return a coupon as its tray states it.

    Raises
    ------
    ValueError
        If it was made by no tray, and so no document states it.
    """
    if not coupon.source:
        raise ValueError(f"coupon {coupon.id!r} is of no tray; right would be one that was read")
    return dict(coupon.source)


def tray_document(chosen: Chosen) -> Document:
    """Return the tray that chosen coupons make; its rules stand beside it, not in files."""
    head: Document = {"format": TRAY_FORMAT, "version": HEAD}
    if chosen.title:
        title = chosen.title.as_document()
        head["title"] = title if isinstance(title, str) else {**title}
    return {**head, "coupons": [coupon_document(coupon) for coupon in chosen.coupons]}


def read_chosen(tray: Json, rules: Sequence[Json], at: str) -> tuple[Chosen | None, list[Fault]]:
    """Return the coupons of an embedded tray, or every fault of it and of its rules.

    Parameters
    ----------
    tray
        The tray's document.
    rules
        Documents of the rule sets that it may speak of.
    at
        JSON Pointer of what holds both, as ``tray`` and ``rules``.
    """
    sets, faults = read_rule_sets(rules, f"{at}/rules")
    by_id: dict[str, RuleSet] = {}
    for index, each in enumerate(sets):
        if each.id in by_id and not faults:
            text = f"{quoted(each.id)} is the id of another of these rule sets too"
            place, params = f"{at}/rules/{index}/id", {"rules": quoted(each.id)}
            fault = Fault(place, "repeated-rule-set", text, "an id of its own", params)
            return None, [fault]
        by_id[each.id] = each
    if faults:
        return None, faults
    try:
        found = read_tray(tray, rules=by_id)
    except FileError as error:
        return None, [fault_below(fault, f"{at}/tray") for fault in error.faults]
    return Chosen(found.title, found.coupons, dict(zip(by_id, rules, strict=True))), []


def read_rule_sets(documents: Sequence[Json], at: str) -> tuple[list[RuleSet], list[Fault]]:
    """Return the rule sets of documents, and every fault of those that are none."""
    sets: list[RuleSet] = []
    faults: list[Fault] = []
    for index, document in enumerate(documents):
        try:
            sets.append(rules_of(document))
        except FileError as error:
            faults += [fault_below(fault, f"{at}/{index}") for fault in error.faults]
    return sets, faults


def read_coupon(
    document: Json, version: int, rules: Mapping[str, RuleSet], at: str
) -> tuple[Coupon | None, list[Fault]]:
    """Return one coupon as a tray of `version` states it, or every fault of it.

    Parameters
    ----------
    document
        The coupon's.
    version
        Of trays, that it is written in.
    rules
        A shop's rule sets, by id.
    at
        JSON Pointer of the coupon.
    """
    tray: Document = {"format": TRAY_FORMAT, "version": version, "coupons": [document]}
    try:
        return read_tray(tray, rules=rules).coupons[0], []
    except FileError as error:
        inside = [replace(f, pointer=f.pointer.removeprefix("/coupons/0")) for f in error.faults]
        return None, [fault_below(fault, at) for fault in inside]


def fault_below(fault: TrayFault, at: str) -> Fault:
    """Return a fault of an embedded document, with the place that it has in the whole."""
    return Fault(f"{at}{fault.pointer}", fault.code, fault.text, fault.right, fault.params)
