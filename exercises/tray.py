"""Trays: files of coupons, read whole or not at all."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from exercises.building import build_coupon
from exercises.coupon import Coupon
from exercises.file_faults import FileError, TrayError, TrayFault, read_bytes
from exercises.models import MOST_COUPONS, TRAY_FORMAT, CouponModel, TrayModel
from exercises.rules import RULE_SETS
from exercises.shape import check_shape, without_private_keys
from exercises.strict_json import Json, parse_json, quoted
from exercises.text import NO_TEXT, Text
from exercises.versions import HEAD, Document, check_version, migrate
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
    tray, faults = _examine(data)
    if tray is None or faults:
        raise TrayError([TrayFault.of(str(path), fault) for fault in faults])
    return tray


def check_tray(path: Path | str) -> list[TrayFault]:
    """Return every fault of the tray at `path`; none if it is sound."""
    try:
        load_tray(path)
    except TrayError as error:
        return list(error.faults)
    return []


def read_tray(document: Json) -> Tray:
    """Return the tray that a document states.

    Raises
    ------
    TrayError
        With every fault of the document; the faults name no file.
    """
    tray, faults = _read(document)
    if tray is None or faults:
        raise TrayError([TrayFault.of("", fault) for fault in sorted(faults, key=_coupon_of)])
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
    faults = _examine(data)[1]
    if faults:
        raise TrayError([TrayFault.of(str(path), fault) for fault in faults])
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


def _examine(data: bytes) -> tuple[Tray | None, list[Fault]]:
    parsed = parse_json(data)
    if parsed.value is None and parsed.faults:
        return None, parsed.faults
    tray, faults = _read(parsed.value)
    # A NaN is a fault of the text and of the shape: said once, in the words nearer the text.
    known = {fault.at for fault in parsed.faults}
    faults = parsed.faults + [fault for fault in faults if fault.at not in known]
    return tray, sorted(faults, key=_coupon_of)


def _coupon_of(fault: Fault) -> int:
    """The index of the coupon that a fault is in; -1 for the document's own keys."""
    parts = fault.at.split("/")
    index = parts[2] if parts[1:2] == ["coupons"] and len(parts) > 2 else ""
    return int(index) if index.isdecimal() else -1


def _read(document: Json) -> tuple[Tray | None, list[Fault]]:
    faults = check_version(document, TRAY_FORMAT)
    if faults or not isinstance(document, dict):
        return None, faults
    document = migrate(document)
    bare = without_private_keys(document)
    model, faults = check_shape(TrayModel, bare)
    assert isinstance(bare, dict)
    listed, sources = bare.get("coupons"), document.get("coupons")
    if not isinstance(listed, list) or not isinstance(sources, list):
        return None, faults
    if len(listed) > MOST_COUPONS:
        return None, faults
    coupons: list[Coupon] = []
    for index, (stated, source) in enumerate(zip(listed, sources, strict=True)):
        # A coupon of sound shape is built even where another's shape is not: all faults at once.
        shaped = model.coupons[index] if model else check_shape(CouponModel, stated)[0]
        if shaped is not None and isinstance(source, dict):
            coupon, found = _build(shaped, source, f"/coupons/{index}")
            faults += found
            coupons += [coupon] if coupon else []
    faults += _repeated_ids(listed)
    if model is None or faults:
        return None, faults
    head = {key: value for key, value in document.items() if key != "coupons"}
    return Tray(Text.of(model.title) if model.title else NO_TEXT, tuple(coupons), head), []


def _build(model: CouponModel, source: Document, at: str) -> tuple[Coupon | None, list[Fault]]:
    faults: list[Fault] = []
    if model.rules not in RULE_SETS:
        known = ", ".join(quoted(name) for name in RULE_SETS)
        text = f"no rule set is called {quoted(model.rules)}"
        params = {"rules": quoted(model.rules), "known": known}
        faults.append(Fault(f"{at}/rules", "unknown-rules", text, f"one of: {known}", params))
    coupon = None
    try:
        coupon = build_coupon(model, source)
    except GeometryError as error:
        faults += [
            Fault(at + fault.at, fault.code, fault.text, fault.right, fault.params)
            for fault in error.faults
        ]
    return coupon, faults


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
