"""The two members of a joint."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.joint import MEMBERS, Joint, Member, other_member
from geometry.measures import measure
from geometry.section import Section

ANGLES = st.floats(60.0, 135.0)


def dot(a: tuple[float, float], b: tuple[float, float]) -> float:
    return a[0] * b[0] + a[1] * b[1]


@given(ANGLES)
def test_the_faces_meet_at_the_angle(angle: float) -> None:
    joint = Joint(angle=angle)
    cosine = dot(joint.direction("base"), joint.direction("upright"))
    assert cosine == pytest.approx(math.cos(math.radians(angle)))


@given(ANGLES, st.sampled_from(MEMBERS))
def test_normals_point_into_the_air(angle: float, member: Member) -> None:
    joint = Joint(angle=angle)
    normal = joint.normal(member)
    assert math.hypot(*normal) == pytest.approx(1.0)
    assert dot(normal, joint.direction(member)) == pytest.approx(0.0, abs=1e-12)
    assert dot(normal, joint.direction(other_member(member))) > 0.0


@given(ANGLES)
def test_the_bisector_stands_equally_off_both_faces(angle: float) -> None:
    joint = Joint(angle=angle)
    heights = [dot(joint.bisector, joint.normal(member)) for member in MEMBERS]
    assert heights[0] == pytest.approx(heights[1])
    assert heights[0] > 0.0


def test_a_square_joint_is_exactly_square() -> None:
    joint = Joint()
    assert joint.point("base", 8.0) == (8.0, 0.0)
    assert joint.point("upright", 8.0) == (0.0, 8.0)


def test_members_have_their_own_sizes() -> None:
    joint = Joint(base_thickness=10.0, upright_thickness=6.0, base_length=70.0, upright_length=40.0)
    assert [joint.thickness(member) for member in MEMBERS] == [10.0, 6.0]
    assert [joint.length(member) for member in MEMBERS] == [70.0, 40.0]


@pytest.mark.parametrize("angle", [60.0, 90.0, 135.0])
def test_angles_of_the_fillet_range_are_sound(angle: float) -> None:
    assert Joint(angle=angle).faults() == []


@pytest.mark.parametrize("angle", [59.9, 135.1, 0.0, -90.0, math.nan, math.inf])
def test_other_angles_are_faults(angle: float) -> None:
    assert [(fault.at, fault.code) for fault in Joint(angle=angle).faults()] == [
        ("/joint/angle", "joint-angle")
    ]


def test_all_faults_are_found_at_once() -> None:
    joint = Joint(20.0, -1.0, 0.0, math.nan, math.inf, 1e9)
    assert {fault.at for fault in joint.faults()} == {
        "/joint/angle",
        "/joint/root_opening",
        "/joint/base_thickness",
        "/joint/upright_thickness",
        "/joint/base_length",
        "/joint/upright_length",
    }


@pytest.mark.parametrize("opening", [-0.01, math.nan, math.inf, 5e-324, -5e-324, 1e-300, 9.9e-7])
def test_a_root_opening_is_none_or_one_that_can_be_measured(opening: float) -> None:
    (fault,) = Joint(root_opening=opening).faults()
    assert (fault.at, fault.code) == ("/joint/root_opening", "root-opening")
    assert "nanometre" in fault.right


@pytest.mark.parametrize("opening", [0.0, -0.0, 1e-6, 1e-5])
@pytest.mark.parametrize("angle", [60.0, 90.0, 100.0, 135.0])
def test_the_least_opening_is_measured_without_a_warning(opening: float, angle: float) -> None:
    section = Section.of(Joint(angle=angle, root_opening=opening), Bead(8.0, 8.0))
    assert measure(section).leg_base == 8.0
