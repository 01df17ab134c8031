"""Versions of the file formats: what is newer is refused, what is older is lifted step by step."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from exercises.strict_json import Json, quoted
from geometry.faults import Fault

__all__ = [
    "ATTEMPTS_HEAD",
    "ATTEMPTS_LATER_KEYS",
    "ATTEMPTS_MIGRATIONS",
    "HEAD",
    "LATER_KEYS",
    "MIGRATIONS",
    "RESULT_HEAD",
    "RULES_HEAD",
    "SITTING_HEAD",
    "Document",
    "check_version",
    "later_keys",
    "migrate",
    "migrate_attempt",
]

Document = dict[str, Json]

HEAD: Final = 4
"""The version of trays that this program writes."""

ATTEMPTS_HEAD: Final = 2
RULES_HEAD: Final = 1
SITTING_HEAD: Final = 1
RESULT_HEAD: Final = 1
"""The versions of attempts, rules, sittings and results."""

LATER_KEYS: Final[Mapping[int, tuple[tuple[str, ...], ...]]] = {
    2: (
        ("rule_files",),
        ("coupons", "*", "conditions"),
        ("coupons", "*", "callout", "upright_size"),
        ("coupons", "*", "callout", "intermittent"),
        ("coupons", "*", "callout", "side"),
        ("coupons", "*", "callout", "all_around"),
        ("coupons", "*", "callout", "site"),
        ("coupons", "*", "callout", "built_out"),
        ("coupons", "*", "callout", "tail"),
    ),
    3: (("coupons", "*", "backdrop"),),
    4: (("coupons", "*", "placed"),),
}
"""The keys that each version of trays brought; ``*`` is every member of a list."""

ATTEMPTS_LATER_KEYS: Final[Mapping[int, tuple[tuple[str, ...], ...]]] = {
    2: (("fault",), ("size",), ("hints",)),
}
"""The keys of one attempt that each version of attempts files brought."""


def _from_1(document: Document) -> Document:
    """Version 2 only added keys, and each one's default says what version 1 meant."""
    return dict(document)


def _from_2(document: Document) -> Document:
    """Version 3 only added a key: a coupon without a picture behind it says nothing of one."""
    return dict(document)


def _from_3(document: Document) -> Document:
    """Version 4 only added a key: before it no task had a leaf that lies there already."""
    return dict(document)


MIGRATIONS: Final[Mapping[int, Callable[[Document], Document]]] = {
    1: _from_1,
    2: _from_2,
    3: _from_3,
}
"""From each older version of trays to the next: a pure function from document to document.

A version rises whenever a key is added; each rise adds one function here and one golden file to
the tests.
"""


def _attempt_from_1(attempt: Document) -> Document:
    """Version 2 only added keys: what version 1 couldn't state was not stated."""
    return dict(attempt)


ATTEMPTS_MIGRATIONS: Final[Mapping[int, Callable[[Document], Document]]] = {1: _attempt_from_1}
"""From each older version of attempts files to the next, for one attempt."""


def later_keys(
    document: Document,
    stated: int | None = None,
    keys: Mapping[int, tuple[tuple[str, ...], ...]] = LATER_KEYS,
) -> list[Fault]:
    """Return a fault for each key of a document that its version doesn't have yet.

    Parameters
    ----------
    document
        A tray; or one attempt, with the version that its file's first line states.
    stated
        That version; without it, the document's own.
    keys
        What each version brought.

    Examples
    --------
    >>> [fault.at for fault in later_keys({"version": 1, "coupons": [{"conditions": {}}]})]
    ['/coupons/0/conditions']
    """
    own = document["version"] if stated is None else stated
    assert isinstance(own, int)
    found: list[Fault] = []
    for version, paths in keys.items():
        for path in paths if version > own else ():
            for at in _places(document, path, ""):
                text = f"{quoted(path[-1])} is a key of version {version}"
                right = f'"version": {version}'
                params: dict[str, float | str] = {"key": quoted(path[-1]), "version": version}
                found.append(Fault(at, "later-key", text, right, params))
    return found


def _places(value: Json, path: tuple[str, ...], at: str) -> list[str]:
    """Pointers to everything that a path leads to."""
    if not path:
        return [at]
    if path[0] == "*" and isinstance(value, list):
        members = enumerate(value)
        return [p for i, each in members for p in _places(each, path[1:], f"{at}/{i}")]
    if isinstance(value, dict) and path[0] in value:
        return _places(value[path[0]], path[1:], f"{at}/{path[0]}")
    return []


def check_version(document: Json, expected: str, head: int = HEAD) -> list[Fault]:
    """Return what keeps a document from being read as format `expected`, up to version `head`.

    Examples
    --------
    >>> for fault in check_version({"format": "toe-and-throat/tray", "version": 7}, \
"toe-and-throat/tray"):
    ...     print(fault)
    /version: version 7 is newer than this program reads; right would be: 4, or a newer program
    """
    if not isinstance(document, dict):
        what = quoted(document)
        text = f"the document is {what}"
        return [Fault("", "not-an-object", text, "an object", {"value": what})]
    found: list[Fault] = []
    stated = document.get("format")
    if stated != expected:
        text = f"the format is {quoted(stated)}" if "format" in document else "no format is stated"
        params: dict[str, float | str] = {"expected": quoted(expected)}
        if "format" in document:
            params["value"] = quoted(stated)
        found.append(Fault("/format", "format", text, quoted(expected), params))
    version = document.get("version")
    right = f"a whole number from 1 to {head}"
    if "version" not in document:
        found.append(Fault("/version", "version", "no version is stated", right, {"head": head}))
    elif not isinstance(version, int) or isinstance(version, bool) or version < 1:
        text, params = f"the version is {quoted(version)}", {"head": head, "value": quoted(version)}
        found.append(Fault("/version", "version", text, right, params))
    elif version > head:
        found.append(
            Fault(
                "/version",
                "newer-version",
                f"version {quoted(version)} is newer than this program reads",
                f"{head}, or a newer program",
                {"head": head, "version": version},
            )
        )
    return found


def migrate(
    document: Document,
    migrations: Mapping[int, Callable[[Document], Document]] = MIGRATIONS,
    head: int = HEAD,
) -> Document:
    """Return a document whose version was found sound, lifted to version `head`.

    Examples
    --------
    >>> def name_it(old: Document) -> Document:
    ...     return {**old, "title": "no name"}
    >>> migrate({"version": 1}, {1: name_it}, head=2)
    {'version': 2, 'title': 'no name'}
    """
    version = document["version"]
    assert isinstance(version, int)
    for step in range(version, head):
        document = {**migrations[step](document), "version": step + 1}
    return document


def migrate_attempt(attempt: Document, version: int) -> Document:
    """Return one attempt out of a file of `version`, lifted to `ATTEMPTS_HEAD`.

    Examples
    --------
    >>> migrate_attempt({"coupon": "a"}, 1)
    {'coupon': 'a'}
    """
    for step in range(version, ATTEMPTS_HEAD):
        attempt = ATTEMPTS_MIGRATIONS[step](attempt)
    return attempt
