"""Trays: files of coupons, read whole or not at all."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from exercises.building import build_coupon
from exercises.coupon import Coupon
from exercises.file_faults import FileError, TrayError, TrayFault, read_bytes
from exercises.models import MOST_COUPONS, MOST_RULE_FILES, TRAY_FORMAT, CouponModel, TrayModel
from exercises.placement_faults import stated_faults
from exercises.rules import RULE_SETS, RuleSet
from exercises.shape import check_shape, without_private_keys
from exercises.shop_rules import ShopRules, rules_beside
from exercises.strict_json import Json, parse_json, quoted
from exercises.text import NO_TEXT, Text
from exercises.versions import HEAD, Document, check_version, later_keys, migrate
from exercises.writing import document_bytes, replace_file
from geometry.faults import Fault, GeometryError

__all__ = [
    "Tray",
    "TrayError",
    "TrayFault",
    "check_tray",
    "load_tray",
    "read_tray",
    "save_tray",
    "tray_schema",
]


@dataclass(frozen=True)
class Tray:
    """A file of coupons.

    Parameters
    ----------
    title
        What the tray is called.
    coupons
        In file order.
    source
        The document's own keys apart from ``coupons``, those that begin ``x-`` included.

    Examples
    --------
    >>> bead = {"leg_base": 8, "leg_upright": 6.7}
    >>> coupon = {"id": "hb-04", "bead": bead, "callout": {"size": 8}}
    >>> tray = read_tray({"format": "toe-and-throat/tray", "version": 1, "coupons": [coupon]})
    >>> tray.coupon("hb-04").section.bead.leg_upright
    6.7
    """

    title: Text
    coupons: tuple[Coupon, ...]
    source: Mapping[str, Json] = field(default_factory=dict, compare=False, repr=False)

    def coupon(self, name: str) -> Coupon:
        """The coupon with this id; `KeyError` if the tray has none."""
        for coupon in self.coupons:
            if coupon.id == name:
                return coupon
        raise KeyError(name)

    def as_document(self) -> Document:
        """The tray as its file states it."""
        head: Document = dict(self.source) or {"format": TRAY_FORMAT, "version": HEAD}
        if self.title:
            head.setdefault("title", self.title.as_document())  # type: ignore[arg-type]
        return {**head, "coupons": [dict(coupon.source) for coupon in self.coupons]}


def load_tray(path: Path | str) -> Tray:
    """Return the tray in the file at `path`.

    Raises
    ------
    TrayError
        With every fault of the file; nothing is half-loaded.
    """
    file = Path(path)
    try:
        data = read_bytes(file)
    except FileError as error:
        raise TrayError(error.faults) from error
    tray, faults = _examine(data, file)
    if tray is None or faults:
        raise TrayError(faults)
    return tray


def check_tray(path: Path | str) -> list[TrayFault]:
    """Return every fault of the tray at `path`; none if it is sound."""
    try:
        load_tray(path)
    except TrayError as error:
        return list(error.faults)
    return []


def read_tray(
    document: Json, folder: Path | None = None, rules: Mapping[str, RuleSet] | None = None
) -> Tray:
    """Return the tray that a document states.

    Parameters
    ----------
    document
        As a file states it.
    folder
        Where the rules files that it names are looked for.
    rules
        A shop's rule sets by id that it may speak of although it names no file of theirs.

    Raises
    ------
    TrayError
        With every fault of the document; the faults name no file.
    """
    tray, faults, in_files = _read(document, folder, rules)
    if tray is None or faults or in_files:
        named = [TrayFault.of("", fault) for fault in sorted(faults, key=_coupon_of)]
        raise TrayError([*named, *in_files])
    return tray


def save_tray(path: Path | str, tray: Tray) -> None:
    """Write `tray` to the file at `path`, or leave that file as it was.

    Raises
    ------
    TrayError
        If the tray could not be loaded again; nothing is written then.
    OSError
        If it can't be written.
    """
    data = document_bytes(tray.as_document())
    faults = _examine(data, Path(path))[1]
    if faults:
        raise TrayError(faults)
    replace_file(Path(path), data)


def tray_schema() -> dict[str, object]:
    """Return the JSON Schema (2020-12) of a tray file.

    It knows shapes and plain ranges. What geometry can't allow, ids that repeat and unknown rules
    are found by `check_tray` only.

    Examples
    --------
    >>> sorted(tray_schema()["required"])
    ['coupons', 'format', 'version']
    """
    schema = TrayModel.model_json_schema()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **schema,
        "title": "Toe & Throat tray",
    }


def _examine(data: bytes, file: Path) -> tuple[Tray | None, list[TrayFault]]:
    """The tray in a file that holds `data`, and every fault of it and of its rules files."""
    parsed = parse_json(data)
    if parsed.value is None and parsed.faults:
        return None, [TrayFault.of(str(file), fault) for fault in parsed.faults]
    tray, faults, in_files = _read(parsed.value, file.parent)
    # A NaN is a fault of the text and of the shape: said once, in the words nearer the text.
    known = {fault.at for fault in parsed.faults}
    faults = parsed.faults + [fault for fault in faults if fault.at not in known]
    named = [TrayFault.of(str(file), fault) for fault in sorted(faults, key=_coupon_of)]
    return tray, [*named, *in_files]


def _coupon_of(fault: Fault) -> int:
    """The index of the coupon that a fault is in; -1 for the document's own keys."""
    parts = fault.at.split("/")
    index = parts[2] if parts[1:2] == ["coupons"] and len(parts) > 2 else ""
    return int(index) if index.isdecimal() else -1


def _read(
    document: Json, folder: Path | None, rules: Mapping[str, RuleSet] | None = None
) -> tuple[Tray | None, list[Fault], list[TrayFault]]:
    """The tray, its own faults, and those of its rules files."""
    faults = check_version(document, TRAY_FORMAT)
    if faults or not isinstance(document, dict):
        return None, faults, []
    faults = later_keys(document)
    document = migrate(document)
    bare = without_private_keys(document)
    model, found = check_shape(TrayModel, bare)
    faults += found
    assert isinstance(bare, dict)
    listed, sources = bare.get("coupons"), document.get("coupons")
    if not isinstance(listed, list) or not isinstance(sources, list):
        return None, faults, []
    if len(listed) > MOST_COUPONS:
        return None, faults, []
    shop = rules_beside(_rule_files(bare), folder)
    faults += shop.faults
    shop = replace(shop, sets={**(rules or {}), **shop.sets})
    coupons: list[Coupon] = []
    for index, (stated, source) in enumerate(zip(listed, sources, strict=True)):
        # A coupon of sound shape is built even where another's shape is not: all faults at once.
        shaped = model.coupons[index] if model else check_shape(CouponModel, stated)[0]
        if shaped is not None and isinstance(source, dict):
            at = f"/coupons/{index}"
            # Without their files no one can say which ids are known.
            faults += _rules_faults(shaped, shop, at) if shop.sound else []
            coupon, found = _build(shaped, source, at, shop)
            faults += found
            coupons += [coupon] if coupon else []
    faults += _repeated_ids(listed)
    if model is None or faults or shop.in_files:
        return None, faults, shop.in_files
    head = {key: value for key, value in document.items() if key != "coupons"}
    return Tray(Text.of(model.title) if model.title else NO_TEXT, tuple(coupons), head), [], []


def _rule_files(document: Document) -> list[str]:
    """The names of rules files, as far as they are names at all."""
    names = document.get("rule_files")
    listed = names if isinstance(names, list) else []
    return [name for name in listed[:MOST_RULE_FILES] if isinstance(name, str)]


def _rules_faults(model: CouponModel, shop: ShopRules, at: str) -> list[Fault]:
    if model.rules in RULE_SETS or model.rules in shop.sets:
        return []
    known = ", ".join(quoted(name) for name in (*RULE_SETS, *shop.sets))
    text = f"no rule set is called {quoted(model.rules)}"
    params = {"rules": quoted(model.rules), "known": known}
    return [Fault(f"{at}/rules", "unknown-rules", text, f"one of: {known}", params)]


def _build(
    model: CouponModel, source: Document, at: str, shop: ShopRules
) -> tuple[Coupon | None, list[Fault]]:
    try:
        coupon = build_coupon(model, source)
    except GeometryError as error:
        return None, [replace(fault, at=at + fault.at) for fault in error.faults]
    coupon = replace(coupon, shop_rules=shop.sets.get(model.rules))
    found = stated_faults(coupon)
    return coupon, [replace(fault, at=at + fault.at) for fault in found]


def _repeated_ids(listed: list[Json]) -> list[Fault]:
    faults: list[Fault] = []
    first: dict[str, int] = {}
    for index, stated in enumerate(listed):
        name = stated.get("id") if isinstance(stated, dict) else None
        if not isinstance(name, str):
            continue
        if name in first:
            faults.append(
                Fault(
                    f"/coupons/{index}/id",
                    "repeated-id",
                    f"{quoted(name)} is the id of coupon {first[name] + 1} too",
                    "an id of its own",
                    {"id": name, "named": quoted(name), "other": first[name] + 1},
                )
            )
        first.setdefault(name, index)
    return faults
