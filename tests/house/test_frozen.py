"""Values of the core are frozen: what was judged, read or measured can't be changed afterwards."""

from __future__ import annotations

import dataclasses
import importlib
import pkgutil
from collections.abc import Iterator

import pytest

import exercises
import geometry


def values() -> Iterator[type]:
    for package in (geometry, exercises):
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            loaded = importlib.import_module(module.name)
            for found in vars(loaded).values():
                is_value = isinstance(found, type) and dataclasses.is_dataclass(found)
                if is_value and found.__module__ == module.name:
                    yield found


FOUND = sorted(set(values()), key=lambda each: f"{each.__module__}.{each.__qualname__}")

GROWING = {
    # Work in progress, which no caller is handed.
    "geometry.descent.Descent",
    "exercises.grading._Marking",
}


@pytest.mark.parametrize("value", FOUND, ids=lambda each: f"{each.__module__}.{each.__qualname__}")
def test_a_value_is_frozen(value: type) -> None:
    name = f"{value.__module__}.{value.__qualname__}"
    assert value.__dataclass_params__.frozen is (name not in GROWING)  # type: ignore[attr-defined]


def test_there_are_values_to_look_at() -> None:
    assert len(FOUND) > 40
