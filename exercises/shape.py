"""Checking a document against a strict model, with every complaint in words of our own.

The validator's errors say what its types are called; a person who wrote a tray needs to hear what
is wrong at which place, and what would be right there.
"""

from __future__ import annotations

import difflib
from collections.abc import Mapping, Sequence
from typing import Final, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from exercises.models import (
    PRIVATE_PREFIX,
    CalloutModel,
    ConditionsModel,
    CouponModel,
    DrawnBeadModel,
    IntermittentModel,
    JointModel,
    PlacedModel,
    PoseModel,
    ReadingModel,
    SpatterModel,
    TracedBeadModel,
    UndercutModel,
)
from exercises.rule_models import (
    LimitModel,
    MinimumSizeModel,
    OpeningModel,
    SourceModel,
    UndersizeModel,
    WithinModel,
)
from exercises.strict_json import Json, extend_pointer, quoted
from geometry.faults import Fault

__all__ = ["check_shape", "without_private_keys"]

_Model = TypeVar("_Model", bound=BaseModel)
_Path = tuple[int | str, ...]

_MOST_FAULTS: Final = 1000
"""More are counted, not listed: whoever feeds in a wrong file won't mend it line by line."""

_TAGS: Final = ("drawn", "traced")

_BELOW: Final[dict[str, type[BaseModel]]] = {
    "coupons": CouponModel,
    "joint": JointModel,
    "drawn": DrawnBeadModel,
    "traced": TracedBeadModel,
    "undercut_base": UndercutModel,
    "undercut_upright": UndercutModel,
    "spatter": SpatterModel,
    "callout": CalloutModel,
    "intermittent": IntermittentModel,
    "conditions": ConditionsModel,
    "readings": ReadingModel,
    "placed": PlacedModel,
    "pose": PoseModel,
    "limits": LimitModel,
    "undersize": UndersizeModel,
    "opening": OpeningModel,
    "minimum_size": MinimumSizeModel,
    "within": WithinModel,
    "source": SourceModel,
}
"""The model that stands below each key; a bead's two shapes by their tags."""

_WANTED: Final = {
    "float_type": "a number",
    "float_parsing": "a number",
    "int_type": "a whole number",
    "bool_type": "true or false",
    "string_type": "text",
    "list_type": "a list",
    "dict_type": "an object",
    "model_type": "an object",
    "model_attributes_type": "an object",
    "finite_number": "a finite number",
}

_LIMITS: Final = {
    "greater_than": ("gt", "more than {:g}", "more_than"),
    "greater_than_equal": ("ge", "{:g} or more", "at_least"),
    "less_than": ("lt", "less than {:g}", "less_than"),
    "less_than_equal": ("le", "{:g} or less", "at_most"),
}

_LENGTHS: Final = {
    "too_short": ("min_length", "at least {}", "at_least"),
    "too_long": ("max_length", "at most {}", "at_most"),
    "string_too_short": ("min_length", "at least {} character", "at_least"),
    "string_too_long": ("max_length", "at most {} characters", "at_most"),
}


def without_private_keys(value: Json) -> Json:
    """Return a copy of a document without the keys that begin ``x-``, at any level.

    Examples
    --------
    >>> without_private_keys({"id": "a", "x-seen": 1, "joint": {"x-by": "me"}})
    {'id': 'a', 'joint': {}}
    """
    if isinstance(value, dict):
        return {
            key: without_private_keys(inner)
            for key, inner in value.items()
            if not key.startswith(PRIVATE_PREFIX)
        }
    if isinstance(value, list):
        return [without_private_keys(inner) for inner in value]
    return value


def check_shape(
    model: type[_Model],
    document: Json,
    at: str = "",
    below: Mapping[str, type[BaseModel]] = _BELOW,
) -> tuple[_Model | None, list[Fault]]:
    """Return `document` as `model`, or every fault of its shape.

    Parameters
    ----------
    model
        One of `exercises.models`.
    document
        Plain JSON values, private keys left out.
    at
        JSON Pointer of the document.
    below
        The model that stands below each key, where what is unknown is told what is known there;
        without it, those of trays, attempts and rules.

    Examples
    --------
    >>> for fault in check_shape(JointModel, {"angel": 90, "root_opening": "2"})[1]:
    ...     print(fault)
    /root_opening: is "2"; right would be: a number
    /angel: "angel" is no key here; right would be: "angle"
    """
    try:
        return model.model_validate(document), []
    except ValidationError as error:
        found = error.errors(include_url=False)
    faults = [_fault(model, details, at, below) for details in found[:_MOST_FAULTS]]
    if len(found) > _MOST_FAULTS:
        more = len(found) - _MOST_FAULTS
        faults.append(
            Fault(
                at,
                "more-faults",
                f"there are {more} faults more",
                "a file of another kind",
                {"more": more},
            )
        )
    return None, faults


def _pointer(path: Sequence[int | str], at: str) -> str:
    for key in path:
        at = extend_pointer(at, key)
    return at


def _without_tags(path: _Path) -> _Path:
    """The path as the document has it: the tag that a bead's shape adds is no key of it."""
    return tuple(
        key for i, key in enumerate(path) if not (key in _TAGS and i and path[i - 1] == "bead")
    )


def _fault(
    model: type[BaseModel],
    details: ErrorDetails,
    at: str,
    below: Mapping[str, type[BaseModel]],
) -> Fault:
    path, kind = details["loc"], details["type"]
    params: dict[str, float | str]
    where = _pointer(_without_tags(path), at)
    value, context = details["input"], details.get("ctx", {})
    if kind == "stated":
        code, params = context["code"], context["params"]
        return Fault(where, code, context["text"], context["right"], params)
    if kind == "extra_forbidden":
        return _unknown_key(path, where, _keys(model, path[:-1], below))
    if kind == "missing":
        key = str(path[-1])
        return Fault(
            where,
            "missing-key",
            f"{quoted(key)} is missing",
            f"an object with the key {quoted(key)}",
            {"key": key, "named": quoted(key)},
        )
    if kind == "literal_error":
        expected = f"{context['expected']}"
        params = {"value": quoted(value), "expected": expected}
        return Fault(where, "not-a-choice", f"is {quoted(value)}", expected, params)
    if kind in _LIMITS:
        key, words, name = _LIMITS[kind]
        limit = float(context[key])
        params = {"value": quoted(value), name: limit}
        return Fault(where, "out-of-range", f"is {quoted(value)}", words.format(limit), params)
    if kind in _LENGTHS:
        key, words, name = _LENGTHS[kind]
        count = len(value) if isinstance(value, (str, list)) else 0
        parts = "characters" if isinstance(value, str) else "values"
        return Fault(
            where,
            "wrong-count",
            f"has {count} {parts}",
            words.format(context[key]),
            {parts: count, name: context[key]},
        )
    return Fault(
        where,
        kind.replace("_", "-"),
        f"is {quoted(value)}",
        _WANTED.get(kind, "a value of another kind"),
        {"value": quoted(value)},
    )


def _unknown_key(path: _Path, where: str, known: Sequence[str]) -> Fault:
    key = str(path[-1])
    near = difflib.get_close_matches(key, known, n=1, cutoff=0.75)
    right = quoted(near[0]) if near else "one of " + ", ".join(quoted(name) for name in known)
    return Fault(
        where,
        "unknown-key",
        f"{quoted(key)} is no key here",
        right if near else f"{right}, or a key that begins {quoted(PRIVATE_PREFIX)}",
        {
            "key": key,
            "named": quoted(key),
            "near" if near else "known": right.removeprefix("one of "),
            "prefix": quoted(PRIVATE_PREFIX),
        },
    )


def _keys(model: type[BaseModel], path: _Path, below: Mapping[str, type[BaseModel]]) -> list[str]:
    for key in reversed(path):
        if isinstance(key, str) and key in below:
            return list(below[key].model_fields)
    return list(model.model_fields)
