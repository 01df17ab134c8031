"""Measures and readings agree with a second opinion, and the comparison can fail.

`python -m tests.measure.oracle` does the same over 5,000 sections.
"""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

import pytest

from geometry import measures, reading
from tests.geometry.drags import random_section
from tests.measure.oracle import Tally, compare


def compared(count: int) -> Tally:
    rng, tally = random.Random(2), Tally()
    for _ in range(count):
        compare(random_section(rng), rng, tally)
    return tally


def test_a_second_opinion_agrees() -> None:
    tally = compared(150)
    assert not tally.against
    # So that it can't agree by saying nothing.
    assert tally.agreed["measures"] == 150 * 11
    for edge in ("leg", "throat"):
        for state in ("touch", "daylight", "held off", "not seated"):
            assert tally.agreed[f"{edge} {state}"], (edge, state)


@pytest.mark.parametrize(
    ("key", "by"),
    [("effective_size", 3e-4), ("theoretical_throat", 3e-4), ("toe_angle_base", 0.03),
     ("concavity", 3e-4), ("face_width", -3e-4)],
)  # fmt: skip
def test_a_measure_that_is_off_is_found(
    monkeypatch: pytest.MonkeyPatch, key: str, by: float
) -> None:
    sound = measures.measure

    def off(section: Any) -> Any:
        found = sound(section)
        return replace(found, **{key: getattr(found, key) + by})

    monkeypatch.setattr(measures, "measure", off)
    assert any(line.startswith(key) for line in compared(3).against)


def test_a_reading_that_is_off_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    sound = reading.read

    def sharp(section: Any, leaf: Any, pose: Any) -> Any:
        return sound(section, leaf, pose, 0.08)

    monkeypatch.setattr(reading, "read", sharp)
    assert any("leg" in line for line in compared(60).against)
