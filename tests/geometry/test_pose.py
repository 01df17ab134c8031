"""Poses: rigid, reversible, and mirrored when turned over."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.curves import Vec
from geometry.pose import Pose, wrap_degrees

LENGTHS = st.floats(-100.0, 100.0)
POINTS = st.tuples(LENGTHS, LENGTHS)
POSES = st.builds(Pose, LENGTHS, LENGTHS, st.floats(-179.99, 180.0), st.booleans())


@given(POSES, POINTS)
def test_to_the_section_and_back(pose: Pose, point: Vec) -> None:
    assert pose.to_leaf(pose.to_section(point)) == pytest.approx(point, abs=1e-9)


@given(POSES, POINTS, POINTS)
def test_a_leaf_is_rigid(pose: Pose, one: Vec, two: Vec) -> None:
    apart = math.dist(pose.to_section(one), pose.to_section(two))
    assert apart == pytest.approx(math.dist(one, two), abs=1e-9)


@given(POSES)
def test_turning_over_mirrors(pose: Pose) -> None:
    along, across = pose.direction((1.0, 0.0)), pose.direction((0.0, 1.0))
    handed = along[0] * across[1] - along[1] * across[0]
    assert handed == pytest.approx(-1.0 if pose.turned else 1.0)


@given(POSES, POINTS, POINTS)
def test_directions_are_differences_of_points(pose: Pose, one: Vec, two: Vec) -> None:
    a, b = pose.to_section(one), pose.to_section(two)
    step = pose.direction((two[0] - one[0], two[1] - one[1]))
    assert (b[0] - a[0], b[1] - a[1]) == pytest.approx(step, abs=1e-9)


@given(POSES, LENGTHS, LENGTHS, POINTS)
def test_a_move_shifts_every_point(pose: Pose, dx: float, dy: float, point: Vec) -> None:
    before, after = pose.to_section(point), pose.moved(dx, dy).to_section(point)
    assert (after[0] - before[0], after[1] - before[1]) == pytest.approx((dx, dy), abs=1e-9)


@given(POSES, st.floats(-360.0, 360.0), POINTS)
def test_a_rotation_keeps_its_middle(pose: Pose, degrees: float, middle: Vec) -> None:
    rotated = pose.rotated(degrees, middle)
    assert rotated.to_section(pose.to_leaf(middle)) == pytest.approx(middle, abs=1e-6)
    assert -180.0 < rotated.angle <= 180.0
    assert rotated.turned == pose.turned


@given(POSES, st.floats(-180.0, 180.0), POINTS, POINTS)
def test_rotating_back_undoes_it(pose: Pose, degrees: float, middle: Vec, point: Vec) -> None:
    back = pose.rotated(degrees, middle).rotated(-degrees, middle)
    assert back.to_section(point) == pytest.approx(pose.to_section(point), abs=1e-6)


@given(st.floats(-1e4, 1e4))
def test_angles_wrap_into_one_turn(angle: float) -> None:
    wrapped = wrap_degrees(angle)
    assert -180.0 < wrapped <= 180.0
    assert math.cos(math.radians(wrapped)) == pytest.approx(math.cos(math.radians(angle)), abs=1e-9)
    assert math.sin(math.radians(wrapped)) == pytest.approx(math.sin(math.radians(angle)), abs=1e-9)


@pytest.mark.parametrize(
    ("angle", "along"),
    [(0.0, (1.0, 0.0)), (90.0, (0.0, 1.0)), (180.0, (-1.0, 0.0)), (-90.0, (0.0, -1.0))],
)
def test_quarter_turns_are_exact(angle: float, along: Vec) -> None:
    assert Pose(0.0, 0.0, angle).direction((1.0, 0.0)) == along


def test_a_leaf_turned_over_lies_on_the_upright() -> None:
    pose = Pose(0.0, 0.0, 90.0, turned=True)
    assert pose.to_section((12.0, 0.0)) == (0.0, 12.0)
    assert pose.to_section((0.0, 8.0)) == (8.0, 0.0)
