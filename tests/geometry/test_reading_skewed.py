"""Readings in joints that aren't square."""

from __future__ import annotations

import math

import pytest

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.pose import Pose
from geometry.reading import read
from geometry.section import Section
from tests.geometry.plain import BOTH, EIGHT, SPUR


@pytest.mark.parametrize("angle", [100.0, 110.0, 120.0])
def test_an_obtuse_joint_is_read_square_to_the_flush_member(angle: float) -> None:
    section = Section.of(Joint(angle=angle), Bead(6.5, 6.0))
    lean = math.radians(angle)
    reading = read(section, EIGHT, Pose(8.0 / math.tan(lean), 0.0))
    assert reading.state == "daylight"
    assert reading.gap == pytest.approx(8.0 - 6.0 * math.sin(lean))
    assert reading.flush == ("long",)


def test_an_obtuse_joint_is_read_on_the_base_as_well() -> None:
    joint = Joint(angle=100.0)
    section = Section.of(joint, Bead(6.0, 6.5))
    along = joint.direction("upright")
    back = 8.0 / math.tan(joint.radians)
    pose = Pose(back * along[0], back * along[1], 100.0, turned=True)
    reading = read(section, EIGHT, pose)
    assert (reading.state, reading.flush) == ("daylight", ("long",))
    assert reading.gap == pytest.approx(8.0 - 6.0 * math.sin(joint.radians))


def test_held_off_is_told_along_the_flush_member() -> None:
    # Flush on the base of a 100 degree joint, the tip meets the flat face 8 mm up.
    joint = Joint(angle=100.0)
    section = Section.of(joint, Bead(10.0, 10.0))
    toe = section.toe("upright")
    share = 8.0 / toe[1]
    at_face = 10.0 + (toe[0] - 10.0) * share
    at_upright = 8.0 / math.tan(joint.radians)
    reading = read(section, EIGHT, Pose(at_face, 0.0))
    assert reading.state == "held off"
    assert reading.gap == pytest.approx(at_face - at_upright)


@pytest.mark.parametrize("angle", [60.0, 80.0, 88.0])
def test_below_square_the_end_edge_strikes_the_other_member(angle: float) -> None:
    joint = Joint(angle=angle)
    section = Section.of(joint, Bead(5.0, 5.0))
    top = 2.2 * 8.0
    reading = read(section, EIGHT, Pose(top / math.tan(joint.radians), 0.0))
    assert (reading.state, reading.gap, reading.flush) == ("not seated", None, ("long",))
    assert reading.in_the_way == ("upright",)
    along = joint.direction("upright")
    out = top / math.tan(joint.radians)
    turned = Pose(out * along[0], out * along[1], angle, turned=True)
    assert read(section, EIGHT, turned).in_the_way == ("base",)


def test_a_joint_is_as_good_as_square_within_the_eye_limit() -> None:
    # The end edge, 1.2 S long, leans by 0.5 degrees: 0.084 mm at the tip.
    joint = Joint(angle=89.5)
    section = Section.of(joint, Bead(8.0, 8.0))
    reading = read(section, EIGHT, Pose(17.6 / math.tan(joint.radians), 0.0))
    assert reading.state == "touch"


@pytest.mark.parametrize(
    ("angle", "state"), [(89.4, "touch"), (90.6, "touch"), (89.0, "not seated")]
)
def test_the_throat_edge_needs_a_square_joint(angle: float, state: str) -> None:
    # 1.6 * 8 * sin(0.3 degrees) = 0.067 mm: shared out between both edges it isn't seen.
    joint = Joint(angle=angle)
    lean = angle - 90.0
    # Below square the outer ends rest on the members, above it the inner ones.
    end = 24.0 if lean < 0.0 else 11.2
    out = -end * math.sin(math.radians(lean) / 2.0) / math.sin(joint.radians / 2.0)
    pose = Pose(out * joint.bisector[0], out * joint.bisector[1], lean / 2.0)
    throat = out + 4.0 * math.sqrt(2.0)
    leg = throat / math.cos(joint.radians / 2.0)
    reading = read(Section.of(joint, Bead(leg, leg)), SPUR, pose)
    assert reading.state == state
    assert reading.flush == (BOTH if state == "touch" else ())


@pytest.mark.parametrize("angle", [60.0, 80.0, 100.0, 110.0])
def test_the_throat_edge_finds_the_leaning_member_in_its_way(angle: float) -> None:
    joint = Joint(angle=angle)
    section = Section.of(joint, Bead(4.0, 4.0))
    stop = (24.0 if angle < 90.0 else 11.2) / math.tan(joint.radians)
    reading = read(section, SPUR, Pose(stop, 0.0))
    assert (reading.state, reading.flush) == ("not seated", ("long",))
    assert reading.in_the_way == ("upright",)


def test_an_end_edge_that_lies_on_a_leaning_upright_is_stopped_by_it() -> None:
    # At 80 degrees, flush with the wrong member: the long edge stands on its far end.
    joint = Joint(angle=80.0)
    up = 24.0 * math.sin(math.radians(10.0))
    reading = read(
        Section.of(joint, Bead(5.0, 5.0)), EIGHT, Pose(up / math.tan(joint.radians), up, -10.0)
    )
    assert (reading.state, reading.flush) == ("not seated", ("end",))
    assert reading.in_the_way == ("upright",)
