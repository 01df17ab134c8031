"""Readings with lips, spatter and grooves about: what is in the way, and what is not."""

from __future__ import annotations

import math

import pytest

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.joint import Joint
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.reading import Reading, read
from geometry.section import Section
from tests.geometry.plain import EIGHT, HOME, T, bead, shown


def test_a_lip_is_taken_for_the_toe() -> None:
    section = Section.of(T, Bead(8.0, 6.0, overlap_upright=Overlap(1.5)))
    assert shown(read(section, EIGHT, HOME)) == ("daylight", 0.5)
    longer = Section.of(T, Bead(8.0, 6.0, overlap_upright=Overlap(2.0)))
    assert read(longer, EIGHT, HOME).state == "touch"


def test_a_tip_on_a_lip_says_nothing() -> None:
    # A lip 2 mm long is 2/3 mm high at its middle, 8 mm up.
    section = Section.of(T, Bead(8.0, 7.0, overlap_upright=Overlap(2.0)))
    reading = read(section, EIGHT, Pose(2.0 / 3.0, 0.0))
    assert (reading.state, reading.in_the_way) == ("not seated", ("overlap_upright",))


def test_a_lip_under_the_long_edge_is_in_the_way() -> None:
    section = Section.of(T, Bead(11.0, 8.0, overlap_base=Overlap(4.0)))
    reading = read(section, EIGHT, Pose(0.0, 4.0 / 3.0))
    assert (reading.state, reading.flush) == ("not seated", ("end",))
    assert reading.in_the_way == ("overlap_base",)


def test_spatter_under_the_long_edge_is_in_the_way() -> None:
    section = Section.of(T, Bead(8.0, 8.0), (Spatter("base", 18.0, 0.8),))
    raised = read(section, EIGHT, Pose(0.0, 0.8))
    assert raised == Reading("not seated", None, ("end",), ("spatter[0]",), Pose(0.0, 0.8))
    assert read(section.cleaned(), EIGHT, HOME).state == "touch"


def test_spatter_too_low_to_see_is_still_beneath() -> None:
    section = Section.of(T, Bead(8.0, 8.0), (Spatter("base", 18.0, 0.06),))
    reading = read(section, EIGHT, Pose(0.0, 0.06))
    assert (reading.state, reading.in_the_way) == ("not seated", ("spatter[0]",))


@pytest.mark.parametrize("drop", [Spatter("base", 10.5, 0.8), Spatter("base", 26.0, 0.8)])
def test_spatter_beside_the_long_edge_is_not(drop: Spatter) -> None:
    section = Section.of(T, Bead(8.0, 8.0), (drop,))
    assert read(section, EIGHT, HOME).state == "touch"


def test_spatter_at_the_tip_is_in_the_way() -> None:
    section = Section.of(T, Bead(8.0, 6.0), (Spatter("upright", 8.0, 0.8),))
    reading = read(section, EIGHT, Pose(0.8, 0.0))
    assert (reading.state, reading.in_the_way) == ("not seated", ("spatter[0]",))
    assert reading.flush == ("long",)


def test_spatter_above_the_tip_is_in_the_way_even_of_a_long_leg() -> None:
    section = Section.of(T, Bead(8.0, 8.5), (Spatter("upright", 14.0, 0.8),))
    reading = read(section, EIGHT, Pose(0.8, 0.0))
    assert (reading.state, reading.in_the_way) == ("not seated", ("spatter[0]",))


def test_a_groove_is_bridged() -> None:
    section = Section.of(T, Bead(8.0, 7.0, undercut_upright=Undercut(0.8, 3.0)))
    assert shown(read(section, EIGHT, HOME)) == ("daylight", 1.0)
    under = Section.of(T, Bead(8.0, 8.0, undercut_base=Undercut(0.8, 9.0)))
    assert read(under, EIGHT, HOME).state == "touch"


def test_a_tip_sunk_in_a_groove_is_off_its_member() -> None:
    # At 100 degrees only the tip meets the upright. Up to the eye limit it still counts as on it.
    joint = Joint(angle=100.0)
    normal = joint.normal("upright")
    for depth, state in ((0.08, "daylight"), (0.3, "not seated")):
        section = Section.of(joint, Bead(8.0, 7.0, undercut_upright=Undercut(depth, 2.2)))
        middle = joint.point("upright", 8.1)
        tip = (middle[0] - depth * normal[0], middle[1] - depth * normal[1])
        leaf = Leaf(tip[1], "leaf")
        reading = read(section, leaf, Pose(tip[0], 0.0))
        assert reading.state == state
        assert reading.in_the_way == (() if state == "daylight" else ("undercut_upright",))


def test_a_root_opening_changes_no_reading() -> None:
    for upright in (7.0, 8.0):
        opened = Section.of(Joint(root_opening=3.0), Bead(8.0, upright))
        assert read(opened, EIGHT, HOME) == read(bead(8.0, upright), EIGHT, HOME)


def test_a_tip_that_rides_up_on_the_weld_names_it() -> None:
    # Tipped up until the tip stands in the toe, 10 mm up, and the long edge on its far end.
    tipped = math.atan2(3.0, 1.0) - math.acos(10.0 / (8.0 * math.sqrt(10.0)))
    pose = Pose(-8.0 * math.sin(tipped), 10.0 - 8.0 * math.cos(tipped), -math.degrees(tipped))
    assert pose.to_section(EIGHT.tip) == pytest.approx((0.0, 10.0))
    assert pose.to_section(EIGHT.long_edge[1])[1] == pytest.approx(0.0, abs=1e-9)
    reading = read(bead(10.0, 10.0), EIGHT, pose)
    assert (reading.state, reading.flush, reading.in_the_way) == ("not seated", (), ("face",))
