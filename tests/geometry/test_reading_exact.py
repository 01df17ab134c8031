"""Readings at exact figures, on both sides of every limit that the contract states."""

from __future__ import annotations

import math

import pytest

from geometry.faults import GeometryError
from geometry.pose import Pose
from geometry.reading import STATES, read
from tests.geometry.plain import EIGHT, HOME, bead


def test_the_states_and_their_order() -> None:
    assert STATES == ("touch", "daylight", "held off", "not seated")


@pytest.mark.parametrize(
    ("leg", "state"), [(7.9001, "touch"), (7.9, "touch"), (7.8998, "daylight"), (7.0, "daylight")]
)
def test_a_gap_of_just_the_eye_limit_is_not_seen(leg: float, state: str) -> None:
    assert read(bead(8.0, leg), EIGHT, HOME).state == state


@pytest.mark.parametrize(("lift", "is_flush"), [(0.0999, True), (0.1, True), (0.1002, False)])
def test_an_edge_within_the_eye_limit_is_flush(lift: float, *, is_flush: bool) -> None:
    assert ("long" in read(bead(6.0, 6.0), EIGHT, Pose(0.0, lift)).flush) is is_flush


@pytest.mark.parametrize(
    ("limit", "said"), [(0.0, "0.0"), (-0.1, "-0.1"), (math.inf, "inf"), (math.nan, "nan")]
)
def test_what_is_said_of_an_eye_limit_that_is_none(limit: float, said: str) -> None:
    with pytest.raises(GeometryError) as error:
        read(bead(8.0, 8.0), EIGHT, HOME, limit)
    (fault,) = error.value.faults
    assert str(fault) == (
        f"/eye_limit: an eye limit of {said} mm; right would be: a length above 0 mm"
    )
    assert fault.code == "eye-limit"
