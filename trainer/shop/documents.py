"""Changes of a document: every one gives another document, and shares what it doesn't touch.

No Qt here. A path is what leads to a value: keys of objects, indices of lists.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, TypeGuard

from exercises.strict_json import Json
from exercises.versions import Document

__all__ = ["Path", "is_number", "object_at", "value_at", "with_value", "without"]

Path = tuple[str | int, ...]

_NOTHING: Final = object()


def is_number(value: Json) -> TypeGuard[int | float]:
    """Whether a value is a number; true and false are none.

    Examples
    --------
    >>> is_number(8.5), is_number(True), is_number("8.5")
    (True, False, False)
    """
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def value_at(document: Mapping[str, Json], path: Path, default: Json = None) -> Json:
    """Return what stands at `path`, or `default` where nothing does.

    Examples
    --------
    >>> value_at({"bead": {"trace": [[6, 0], [0, 6]]}}, ("bead", "trace", 1, 0))
    0
    >>> value_at({}, ("joint", "angle"), 90.0)
    90.0
    """
    found: object = document
    for key in path:
        if isinstance(found, Mapping):
            found = found.get(key, _NOTHING)
        elif isinstance(found, list) and isinstance(key, int) and 0 <= key < len(found):
            found = found[key]
        else:
            return default
        if found is _NOTHING:
            return default
    return found  # type: ignore[return-value]  # whatever stands in a document is Json


def object_at(document: Mapping[str, Json], path: Path) -> Document:
    """Return a copy of the object at `path`; an empty one where there is none.

    Examples
    --------
    >>> object_at({"joint": {"angle": 80}}, ("joint",)), object_at({}, ("joint",))
    ({'angle': 80}, {})
    """
    found = value_at(document, path)
    return dict(found) if isinstance(found, Mapping) else {}


def with_value(document: Mapping[str, Json], path: Path, value: Json) -> Document:
    """Return `document` with `value` at `path`; objects on the way are made where they lack.

    Raises
    ------
    IndexError
        If the path leads to a place that a list doesn't have.

    Examples
    --------
    >>> with_value({"id": "a"}, ("joint", "angle"), 80.0)
    {'id': 'a', 'joint': {'angle': 80.0}}
    >>> with_value({"spatter": [{"at": 9}]}, ("spatter", 0, "at"), 12)
    {'spatter': [{'at': 12}]}
    """
    changed = _changed(dict(document), path, value)
    assert isinstance(changed, dict)
    return changed


def _changed(found: Json, path: Path, value: Json) -> Json:
    if not path:
        return value
    key, rest = path[0], path[1:]
    if isinstance(key, int):
        listed = list(found) if isinstance(found, list) else []
        listed[key] = _changed(listed[key], rest, value)
        return listed
    inner = dict(found) if isinstance(found, dict) else {}
    inner[key] = _changed(inner.get(key), rest, value)
    return inner


def without(document: Mapping[str, Json], path: Path) -> Document:
    """Return `document` without what stands at `path`; an object left empty goes with it.

    Examples
    --------
    >>> without({"id": "a", "conditions": {"edge": "base"}}, ("conditions", "edge"))
    {'id': 'a'}
    >>> without({"spatter": [{"at": 9}, {"at": 12}]}, ("spatter", 0))
    {'spatter': [{'at': 12}]}
    """
    *way, last = path
    holder = value_at(document, tuple(way)) if way else dict(document)
    if isinstance(holder, list) and isinstance(last, int) and 0 <= last < len(holder):
        rest: Json = [each for index, each in enumerate(holder) if index != last]
    elif isinstance(holder, Mapping) and last in holder:
        rest = {key: each for key, each in holder.items() if key != last}
    else:
        return dict(document)
    if not way:
        assert isinstance(rest, dict)
        return rest
    return with_value(document, tuple(way), rest) if rest else without(document, tuple(way))
