"""The shared state: what a knob may be turned to, and what holds it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.leaf import RACKS, RackName, rack
from geometry.section import Section
from trainer.corners.state import (
    KNOBS,
    PAIRS,
    RANGES,
    Corners,
    Knob,
    changed,
    crown_of,
    crown_range,
    leaf_beside,
    rack_of,
    turned_over,
    with_equal_legs,
    with_leaf,
    with_leaf_near,
    with_rack,
    without_or_with,
)

KNOB = st.sampled_from(KNOBS)
VALUE = st.floats(-400.0, 400.0)


@given(st.lists(st.tuples(KNOB, VALUE), max_size=6), st.booleans())
def test_whatever_is_turned_both_beads_can_be(turns: list[tuple[Knob, float]], equal: bool) -> None:
    state = Corners(equal=equal)
    for knob, value in turns:
        state = changed(state, knob, value).state
        lowest, highest = RANGES[knob]
        assert lowest <= state.value(knob) <= highest
    for pair in PAIRS:
        crown = crown_of(state, pair)
        # Refuses with `GeometryError` what can't be.
        section = Section.of(state.joint, Bead(state.leg_base, state.leg_upright, crown=crown))
        assert section.outline.polygon.is_valid


def test_the_deepest_hollow_is_the_contract_s() -> None:
    """|crown| < chord / 2 * tan(phi / 2), phi between chord and member (design, section 3)."""
    least, _ = crown_range(8.0, 8.0, 90.0)
    assert least == pytest.approx(-8.0 * math.sqrt(0.5) * math.tan(math.radians(22.5)), abs=0.03)


def test_a_crown_is_held_with_a_reason_and_comes_back_when_there_is_room() -> None:
    deep = changed(Corners(), "hollow", -2.2)
    assert deep.limit is None
    short = changed(deep.state, "leg_base", 4.0)
    assert short.limit is not None
    assert (short.limit.code, short.limit.knob) == ("face", "hollow")
    assert crown_of(short.state, "hollow") == pytest.approx(short.limit.value)
    assert crown_of(changed(short.state, "leg_base", 8.0).state, "hollow") == -2.2


def test_a_crown_asked_for_beyond_its_limit_stays_at_it() -> None:
    change = changed(Corners(), "hollow", -3.0)
    assert change.limit is not None
    assert change.state.hollow == change.limit.value == crown_of(change.state, "hollow")


@pytest.mark.parametrize("knob", KNOBS)
def test_the_end_of_a_range_is_told(knob: Knob) -> None:
    limit = changed(Corners(leg_base=20.0, leg_upright=20.0), knob, 1e6).limit
    assert limit is not None
    assert (limit.code, limit.value) == ("range", RANGES[knob][1])


def test_locked_legs_go_together_and_unlocked_ones_part() -> None:
    both = changed(Corners(), "leg_upright", 9.0).state
    assert (both.leg_base, both.leg_upright) == (9.0, 9.0)
    free = changed(with_equal_legs(both, equal=False), "leg_upright", 6.0).state
    assert (free.leg_base, free.leg_upright) == (9.0, 6.0)
    assert with_equal_legs(free, equal=True).leg_upright == 9.0


@pytest.mark.parametrize("name", RACKS)
def test_every_leaf_of_every_rack_can_be_taken(name: RackName) -> None:
    state = with_rack(Corners(), name)
    assert rack_of(state) == name
    for leaf in rack(name):
        taken = with_leaf_near(state, leaf.size)
        assert taken.mark == leaf.mark
        assert with_leaf(state, leaf.mark) == taken
    steps = [leaf_beside(state, step).mark for step in (-50, 50)]
    assert steps == [rack(name)[0].mark, rack(name)[-1].mark]


def test_the_same_leaf_is_the_same_object() -> None:
    """What is painted of it is kept by identity."""
    assert Corners().leaf("leg") is changed(Corners(), "crown", 2.0).state.leaf("leg")


def test_turning_over_and_drawing_are_undone_by_themselves() -> None:
    assert turned_over(turned_over(Corners())) == Corners()
    assert without_or_with(without_or_with(Corners(), "legs"), "legs") == Corners()
