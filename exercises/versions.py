"""Versions of the file formats: what is newer is refused, what is older is lifted step by step."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from exercises.strict_json import Json, quoted
from geometry.faults import Fault

__all__ = ["HEAD", "MIGRATIONS", "Document", "check_version", "migrate"]

Document = dict[str, Json]

HEAD: Final = 1
"""The version that this program writes."""

MIGRATIONS: Final[Mapping[int, Callable[[Document], Document]]] = {}
"""From each older version to the next: a pure function from document to document.

Version 1 is the first, so there is nothing to lift yet. A version rises whenever a key is added;
each rise adds one function here and one golden file to the tests.
"""


def check_version(document: Json, expected: str, head: int = HEAD) -> list[Fault]:
    """Return what keeps a document from being read as format `expected`, up to version `head`.

    Examples
    --------
    >>> for fault in check_version({"format": "toe-and-throat/tray", "version": 7}, \
"toe-and-throat/tray"):
    ...     print(fault)
    /version: version 7 is newer than this program reads; right would be: 1, or a newer program
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
