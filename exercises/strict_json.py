"""JSON read strictly: everything that a lenient reader would let pass is a fault with a place.

Python's reader takes duplicate keys (the last wins), NaN, numbers beyond a float, lone surrogates
and any depth. A file for people's work should hold none of them, and whoever wrote it should hear
of all at once.
"""

from __future__ import annotations

import json
import math
import re
from dataclasses import dataclass, field
from typing import Final

from geometry.faults import Fault

__all__ = ["LARGEST_FILE", "Json", "Parsed", "extend_pointer", "parse_json", "quoted"]

Json = None | bool | int | float | str | list["Json"] | dict[str, "Json"]
"""A plain value of a JSON text."""

LARGEST_FILE: Final = 8 * 1024 * 1024
"""Bytes. Some three hundred traced faces of a thousand points fit; a mistaken file seldom does."""

_DEEPEST: Final = 40
_LONGEST_INTEGER: Final = 300
_LONE: Final = re.compile("[\ud800-\udfff]")
_NESTING: Final = re.compile(r'"(?:[^"\\]|\\.)*"|[\[{]|[\]}]', re.DOTALL)


@dataclass(frozen=True, slots=True)
class Parsed:
    """What a text held, and its faults. With faults, `value` is only fit for finding more.

    `value` is None where no value could be made out at all.
    """

    value: Json
    faults: list[Fault] = field(default_factory=list)


class _Object(dict[str, Json]):
    """An object that remembers which of its keys were stated twice."""

    repeated: tuple[str, ...] = ()


class _Unreal(float):
    """A number that isn't one (NaN) or is none that a float can hold (1e999), and its text."""

    text: str = ""

    @classmethod
    def of(cls, text: str) -> _Unreal:
        unreal = cls(math.nan)
        unreal.text = text
        return unreal


def extend_pointer(pointer: str, key: str | int) -> str:
    """Return the JSON Pointer (RFC 6901) of `key` below `pointer`.

    Examples
    --------
    >>> extend_pointer("/coupons/3", "a/b~c")
    '/coupons/3/a~1b~0c'
    """
    return f"{pointer}/{str(key).replace('~', '~0').replace('/', '~1')}"


def quoted(value: object, longest: int = 48) -> str:
    """Return a value of a file as a fault speaks of it, shortened.

    Examples
    --------
    >>> quoted("5/16 in"), quoted([1, 2]), quoted({"a": 1}), quoted(True)
    ('"5/16 in"', 'a list', 'an object', 'true')
    """
    if isinstance(value, dict):
        return "an object"
    if isinstance(value, (list, tuple)):
        return "a list"
    if isinstance(value, float) and not math.isfinite(value):
        return "no finite number"
    text = json.dumps(value, ensure_ascii=True)
    return text if len(text) <= longest else f"{text[: longest - 3]}..."


def parse_json(data: bytes, at_most: int = LARGEST_FILE) -> Parsed:
    """Return what `data` holds, with every fault of its text; more than `at_most` bytes is one.

    Examples
    --------
    >>> parse_json(b'{"legs": [8, 6.7]}').value
    {'legs': [8, 6.7]}
    >>> for fault in parse_json(b'{"a": NaN, "b": [1e999], "a": 1}').faults:
    ...     print(fault)
    /a: the key "a" is stated more than once; right would be: each key once
    /b/0: 1e999 is no number that can be used; right would be: a finite number
    """
    if len(data) > at_most:
        return _refused(
            "too-large",
            f"the file is larger than {at_most // 1024 // 1024} MiB",
            "a smaller one",
            {"largest": float(at_most), "mib": at_most // 1024 // 1024},
        )
    try:
        text = data.decode("utf-8", errors="strict")
    except UnicodeDecodeError as error:
        return _refused(
            "not-utf-8",
            f"byte {error.start + 1} (0x{data[error.start]:02x}) is not UTF-8",
            "text in UTF-8",
            {"byte": float(error.start + 1), "hex": f"{data[error.start]:02x}"},
        )
    if text.startswith("\ufeff"):
        return _refused(
            "byte-order-mark", "the file begins with a byte order mark", "UTF-8 without one", {}
        )
    if _too_deep(text):
        return _refused(
            "too-deep",
            f"lists and objects are nested more than {_DEEPEST} deep",
            f"at most {_DEEPEST}",
            {"deepest": float(_DEEPEST)},
        )
    try:
        raw = json.loads(
            text,
            object_pairs_hook=_object,
            parse_constant=_Unreal.of,
            parse_float=_real,
            parse_int=_whole,
        )
    except json.JSONDecodeError as error:
        what, met = _stumble(error)
        return _refused(
            "not-json",
            f"line {error.lineno}, column {error.colno} can't be read as JSON: {what}{met}",
            "JSON: keys and texts in double quotes, commas between values and none after the last",
            {
                "line": float(error.lineno),
                "column": float(error.colno),
                "what": what,
                **({"met": met.removeprefix(", at ")} if met else {}),
            },
        )
    faults: list[Fault] = []
    return Parsed(_plain(raw, [], faults), faults)


def _refused(code: str, text: str, right: str, params: dict[str, float | str]) -> Parsed:
    return Parsed(None, [Fault("", code, text, right, params)])


def _stumble(error: json.JSONDecodeError) -> tuple[str, str]:
    """What the parser was looking for, and what it met."""
    if not error.doc.strip():
        return "there is nothing here", ""
    wanted = f"{error.msg[:1].lower()}{error.msg[1:]}"
    rest = error.doc[error.pos :].split("\n", 1)[0].strip()
    met = f"at {quoted(rest if len(rest) <= 24 else f'{rest[:21]}...')}" if rest else "at its end"
    return wanted, f", {met}"


def _too_deep(text: str) -> bool:
    # Counted before parsing: the parser itself would run into the interpreter's own limit, which
    # depends on who calls.
    depth = 0
    for match in _NESTING.finditer(text):
        mark = match.group()
        if mark in "[{":
            depth += 1
            if depth > _DEEPEST:
                return True
        elif mark in "]}":
            depth -= 1
    return False


def _object(pairs: list[tuple[str, Json]]) -> _Object:
    made = _Object(pairs)
    if len(made) < len(pairs):
        seen: set[str] = set()
        twice: dict[str, None] = {}
        for key, _ in pairs:
            if key in seen:
                twice[key] = None
            seen.add(key)
        made.repeated = tuple(twice)
    return made


def _real(text: str) -> float:
    value = float(text)
    return value if math.isfinite(value) else _Unreal.of(text)


def _whole(text: str) -> int | float:
    return int(text) if len(text) <= _LONGEST_INTEGER else _Unreal.of(text)


def _plain(value: Json, path: list[str | int], faults: list[Fault]) -> Json:
    """The value in plain lists and dicts; its faults are added to `faults` in file order.

    `path` leads to it, and is the same again afterwards.
    """
    if isinstance(value, _Object):
        faults += [_repeated(key, _pointer([*path, key])) for key in value.repeated]
        plain: dict[str, Json] = {}
        for key, inner in value.items():
            path.append(key)
            _check_text(key, path, faults)
            plain[key] = _plain(inner, path, faults)
            path.pop()
        return plain
    if isinstance(value, list):
        listed: list[Json] = []
        for index, inner in enumerate(value):
            path.append(index)
            listed.append(_plain(inner, path, faults))
            path.pop()
        return listed
    if isinstance(value, _Unreal):
        short = value.text if len(value.text) <= 24 else f"{value.text[:21]}..."
        text = f"{short} is no number that can be used"
        faults.append(
            Fault(_pointer(path), "not-finite", text, "a finite number", {"value": short})
        )
        return math.nan
    if isinstance(value, str):
        _check_text(value, path, faults)
    return value


def _pointer(path: list[str | int]) -> str:
    pointer = ""
    for key in path:
        pointer = extend_pointer(pointer, key)
    return pointer


def _repeated(key: str, at: str) -> Fault:
    text = f"the key {quoted(key)} is stated more than once"
    return Fault(at, "repeated-key", text, "each key once", {"key": key, "named": quoted(key)})


def _check_text(text: str, path: list[str | int], faults: list[Fault]) -> None:
    if _LONE.search(text):
        faults.append(
            Fault(
                _pointer(path),
                "lone-surrogate",
                f"{quoted(text)} holds half of a character",
                "whole characters",
                {"value": quoted(text)},
            )
        )
