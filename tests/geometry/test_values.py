"""What is measured and read comes in values: nobody can change one, or hang something on it."""

from __future__ import annotations

from dataclasses import is_dataclass

import pytest

from geometry import measures, reading

WITHOUT_SLOTS = {"_Lie"}
"""How a leaf lies keeps what it has worked out once."""


def values() -> list[type]:
    return [
        found
        for module in (measures, reading)
        for found in vars(module).values()
        if isinstance(found, type) and is_dataclass(found) and found.__module__ == module.__name__
    ]


@pytest.mark.parametrize("value", values(), ids=lambda value: value.__name__)
def test_a_value_stays_as_it_is(value: type) -> None:
    assert value.__dataclass_params__.frozen  # type: ignore[attr-defined]
    assert ("__slots__" in vars(value)) is (value.__name__ not in WITHOUT_SLOTS)


def test_both_kinds_of_values_are_looked_at() -> None:
    assert {value.__name__ for value in values()} >= {"Measures", "Reading"}
