"""A leg edge slid home rests where it would rest if pressed home from the air. No source."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.joint import Member
from geometry.leaf import rack
from geometry.reading import read
from geometry.seat import press_home, waiting_pose
from geometry.section import Section
from trainer.corners.sliding import slid_home
from trainer.corners.state import PAIRS, Corners, Knob, changed, crown_of


def _section(state: Corners, crown: float) -> Section:
    return Section.of(state.joint, Bead(state.leg_base, state.leg_upright, crown=crown))


@given(
    legs=st.tuples(st.floats(3.0, 25.0), st.floats(0.5, 2.0)),
    crowns=st.tuples(st.floats(-4.0, 4.0), st.floats(-4.0, 4.0)),
    angle=st.one_of(st.just(90.0), st.floats(60.0, 135.0)),
    leaf=st.sampled_from([leaf.mark for name in ("inch", "metric") for leaf in rack(name)]),
    on=st.sampled_from(["base", "upright"]),
)
def test_a_slide_ends_where_a_press_ends(
    legs: tuple[float, float],
    crowns: tuple[float, float],
    angle: float,
    leaf: str,
    on: Member,
) -> None:
    state = _state(legs, crowns, angle, leaf, on)
    for pair in PAIRS:
        section, edge = _section(state, crown_of(state, pair)), state.leaf("leg")
        slid = slid_home(section, edge, on)
        if slid is None:
            continue
        pressed = press_home(section, edge, waiting_pose(section, edge, on)).pose
        assert math.hypot(slid.x - pressed.x, slid.y - pressed.y) < 1e-6
        assert abs(slid.angle - pressed.angle) < 1e-6
        assert read(section, edge, slid).state == read(section, edge, pressed).state


def _state(
    legs: tuple[float, float],
    crowns: tuple[float, float],
    angle: float,
    leaf: str,
    on: Member,
) -> Corners:
    state = replace(Corners(), equal=False, mark=leaf, on=on)
    wanted: tuple[tuple[Knob, float], ...] = (
        ("angle", angle),
        ("leg_base", legs[0]),
        ("leg_upright", legs[0] * legs[1]),
        ("crown", crowns[0]),
        ("hollow", crowns[1]),
    )
    for knob, value in wanted:
        state = changed(state, knob, value).state
    return state


@pytest.mark.parametrize("mark", ["4 mm", "6 mm", "8 mm", "10 mm", "16 mm"])
def test_the_usual_beads_are_slid_onto(mark: str) -> None:
    state = Corners(mark=mark)
    for pair in PAIRS:
        section = _section(state, crown_of(state, pair))
        assert slid_home(section, state.leaf("leg"), "upright") is not None


def test_a_crown_beyond_the_toe_is_left_to_the_press() -> None:
    """A leaf may lie flat on either side of what overhangs the toe that it reads."""
    state = Corners(
        leg_base=3.0552189509039156,
        leg_upright=3.0552189509039156,
        crown=1.2444134641570779,
        angle=99.57294757367195,
        mark="3 mm",
        on="base",
    )
    assert slid_home(_section(state, state.crown), state.leaf("leg"), "base") is None
