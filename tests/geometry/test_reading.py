"""Readings in closed form: each row of the contract's table, at its very limits."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.curves import Arc
from geometry.joint import Joint
from geometry.leaf import Leaf, leaf_of_mark, rack
from geometry.pose import Pose
from geometry.reading import STATES, Reading, read
from geometry.section import Section

T = Joint()
HOME = Pose(0.0, 0.0)
ON_BASE = Pose(0.0, 0.0, 90.0, turned=True)
EIGHT = leaf_of_mark("8 mm")
SPUR = EIGHT.swapped()
BOTH = ("long", "end")


def bead(base: float, upright: float, crown: float = 0.0) -> Section:
    return Section.of(T, Bead(base, upright, crown=crown))


def shown(reading: Reading) -> tuple[str, float | None]:
    return reading.state, None if reading.gap is None else round(reading.gap, 6)


def held_tip(section: Section, size: float) -> float:
    """How far off the upright a flat bead holds the tip of a leaf that is flush on the base."""
    base, upright = section.bead.leg_base, section.bead.leg_upright
    return base * (1.0 - size / upright)


# Leg edge


def test_a_leg_of_just_the_size_is_touched() -> None:
    assert read(bead(8.0, 8.0), EIGHT, HOME) == Reading("touch", None, BOTH, (), HOME)


def test_a_short_leg_shows_daylight() -> None:
    assert read(bead(8.0, 6.7), EIGHT, HOME).gap == pytest.approx(1.3)
    assert read(bead(8.0, 6.7), EIGHT, HOME).state == "daylight"


def test_each_placement_reads_its_own_leg() -> None:
    section = bead(7.2, 8.0)
    assert shown(read(section, EIGHT, HOME)) == ("touch", None)
    assert shown(read(section, EIGHT, ON_BASE)) == ("daylight", 0.8)


def test_a_long_leg_holds_the_tip_off() -> None:
    section = bead(8.0, 9.0)
    off = held_tip(section, 8.0)
    reading = read(section, EIGHT, Pose(off, 0.0))
    assert shown(reading) == ("held off", round(off, 6))
    assert (reading.flush, reading.in_the_way) == (("long",), ())
    turned = read(bead(9.0, 8.0), EIGHT, Pose(0.0, off, 90.0, turned=True))
    assert shown(turned) == ("held off", round(off, 6))


@pytest.mark.parametrize(
    ("leg", "state"),
    [
        (7.9, "touch"),
        (7.9 - 1e-5, "daylight"),
        (7.8, "daylight"),
        (8.0 / 0.9875, "touch"),
        (8.0 / 0.9874, "held off"),
        (8.2, "held off"),
    ],
)
def test_the_eye_limit_divides_the_states(leg: float, state: str) -> None:
    # Base leg 8: a leg of 8 / 0.9875 holds the tip off by 8 * (1 - 0.9875) = 0.1 mm.
    section = bead(8.0, leg)
    pose = Pose(max(0.0, held_tip(section, 8.0)), 0.0)
    assert read(section, EIGHT, pose).state == state


@pytest.mark.parametrize("limit", [0.02, 0.05, 0.1, 0.3, 1.0])
def test_a_coupon_has_its_own_eye_limit(limit: float) -> None:
    assert read(bead(8.0, 8.0 - limit), EIGHT, HOME, limit).state == "touch"
    short = read(bead(8.0, 7.999 - limit), EIGHT, HOME, limit)
    assert shown(short) == ("daylight", round(limit + 0.001, 6))
    long = bead(8.0, 8.0 / (1.0 - (limit + 0.001) / 8.0))
    held = read(long, EIGHT, Pose(limit + 0.001, 0.0), limit)
    assert shown(held) == ("held off", round(limit + 0.001, 6))


@given(st.floats(3.0, 25.0), st.floats(3.0, 25.0), st.floats(0.15, 3.0))
def test_daylight_is_the_leaf_less_the_leg(size: float, base: float, short: float) -> None:
    leaf, upright = Leaf(size, "leaf"), size - short
    if upright > 1.0 and base < 1.49 * size:
        reading = read(bead(base, upright), leaf, HOME)
        assert reading.state == "daylight"
        assert reading.gap == pytest.approx(short, abs=1e-9)


@given(st.floats(3.0, 12.0), st.floats(1.02, 1.3), st.floats(0.7, 1.1))
def test_held_off_is_the_face_at_the_tips_height(size: float, long: float, base: float) -> None:
    section = bead(size * base, size * long)
    off = held_tip(section, size)
    if off > 0.11:
        reading = read(section, Leaf(size, "leaf"), Pose(off + 1e-7, 0.0))
        assert reading.state == "held off"
        assert reading.gap == pytest.approx(off, abs=1e-3)


def test_a_crown_is_cleared_by_the_relief() -> None:
    assert read(bead(8.0, 8.0, 3.0), EIGHT, HOME).state == "touch"
    assert shown(read(bead(8.0, 7.5, 2.5), EIGHT, HOME)) == ("daylight", 0.5)


def test_a_hollow_face_leaves_the_toe_at_the_tip() -> None:
    assert read(bead(8.0, 8.0, -1.5), EIGHT, HOME).state == "touch"


def test_an_arc_that_rides_the_crown_says_nothing() -> None:
    # A proud face circle lies in the relief's circle and touches it from within, on the right.
    section = bead(11.9, 7.5, 3.8)
    crown, relief = section.face[0], EIGHT.body.pieces[-1].curve
    assert isinstance(crown, Arc)
    assert isinstance(relief, Arc)
    across, inner = crown.centre[1] - relief.centre[1], relief.radius - crown.radius
    off = crown.centre[0] - relief.centre[0] - math.sqrt(inner**2 - across**2)
    pose = Pose(off + 1e-7, 0.0)
    assert off > 0.5
    assert read(section, EIGHT, pose) == Reading("not seated", None, ("long",), ("face",), pose)


def test_a_base_leg_beyond_the_relief_stops_the_leaf() -> None:
    # The arc's end at 1.5 S meets the toe of the base.
    reading = read(bead(13.0, 7.0), EIGHT, Pose(1.0, 0.0))
    assert (reading.state, reading.gap) == ("not seated", None)
    assert reading.in_the_way == ("face",)


def test_a_worn_leaf_rejects_a_good_weld() -> None:
    assert shown(read(bead(8.0, 8.0), EIGHT.worn(0.3), HOME)) == ("daylight", 0.3)
    assert read(bead(8.0, 8.0), EIGHT.worn(0.08), HOME).state == "touch"
    assert shown(read(bead(8.0, 8.0), SPUR.worn(0.3), HOME)) == ("daylight", 0.3)


def test_inch_leaves_read_inch_welds() -> None:
    weld = bead(6.35, 6.35)
    states = [read(weld, leaf, HOME).state for leaf in rack("inch")[2:4]]
    assert states == ["touch", "daylight"]
    assert read(weld, rack("inch")[3], HOME).gap == pytest.approx(1.5875)


# What may be in the way


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


# Not home


@pytest.mark.parametrize("leaf", [EIGHT, SPUR])
@pytest.mark.parametrize(
    "pose",
    [Pose(60.0, 60.0), Pose(60.0, 60.0, 45.0), Pose(60.0, 60.0, 90.0, turned=True)],
)
def test_a_leaf_in_the_air_is_not_seated(leaf: Leaf, pose: Pose) -> None:
    assert read(bead(8.0, 8.0), leaf, pose) == Reading("not seated", None, (), (), pose)


def test_a_leaf_short_of_home_has_nothing_in_its_way() -> None:
    section = bead(8.0, 8.0)
    assert read(section, EIGHT, Pose(2.0, 0.0)).in_the_way == ()
    assert read(section, EIGHT, Pose(2.0, 0.0)).flush == ("long",)
    tilted = read(section, EIGHT, Pose(0.4, 0.0, 2.0))
    assert (tilted.state, tilted.flush, tilted.in_the_way) == ("not seated", (), ())


def test_a_leaf_beyond_its_member_is_not_seated() -> None:
    section = Section.of(Joint(upright_length=7.5), Bead(6.0, 6.0))
    reading = read(section, EIGHT, HOME)
    assert (reading.state, reading.gap, reading.flush) == ("not seated", None, ("long",))
    short = Section.of(Joint(base_length=11.0), Bead(6.0, 8.0))
    assert read(short, EIGHT, HOME).flush == ("end",)
    assert read(short, EIGHT, HOME).state == "not seated"


def test_an_edge_may_overhang_its_members_end() -> None:
    section = Section.of(Joint(base_length=14.0), Bead(6.0, 8.0))
    assert read(section, EIGHT, HOME).state == "touch"


def test_a_leaf_on_its_back_is_flush_with_nothing() -> None:
    reading = read(bead(8.0, 8.0), EIGHT, Pose(40.0, 17.6, 180.0))
    assert reading.flush == ()
    assert (reading.state, reading.in_the_way) == ("not seated", ("base",))


@pytest.mark.parametrize("pose", [HOME, ON_BASE])
def test_a_pose_inside_the_weld_is_no_seat(pose: Pose) -> None:
    reading = read(bead(10.0, 10.0), EIGHT, pose)
    assert (reading.state, reading.gap, reading.in_the_way) == ("not seated", None, ("face",))
    spur = read(bead(10.0, 10.0), SPUR, HOME)
    assert (spur.state, spur.gap, spur.in_the_way) == ("not seated", None, ("face",))


def test_a_pose_inside_the_base_is_no_seat() -> None:
    reading = read(bead(8.0, 7.0), EIGHT, Pose(0.0, -0.5))
    assert (reading.state, reading.flush) == ("not seated", ("end",))
    assert read(bead(8.0, 8.0), EIGHT, Pose(-0.5, 0.0)).in_the_way == ("upright",)


@pytest.mark.parametrize("key", ["x", "y", "angle"])
@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_pose_that_is_none_is_refused(key: str, value: float) -> None:
    pose = Pose(**{"x": 0.0, "y": 0.0, "angle": 0.0, key: value})
    with pytest.raises(ValueError, match="is no place"):
        read(bead(8.0, 8.0), EIGHT, pose)


@pytest.mark.parametrize("limit", [0.0, -0.1, math.nan, math.inf])
def test_an_eye_limit_that_is_none_is_refused(limit: float) -> None:
    with pytest.raises(ValueError, match="eye limit"):
        read(bead(8.0, 8.0), EIGHT, HOME, limit)


# Throat edge


@given(st.floats(3.0, 25.0))
def test_a_flat_weld_of_the_size_touches_the_spur(size: float) -> None:
    reading = read(bead(size, size), Leaf(size, "leaf", "throat"), HOME)
    assert (reading.state, reading.flush) == ("touch", BOTH)


@given(st.floats(4.0, 16.0), st.floats(-0.2, -0.03))
def test_a_hollow_shows_daylight_along_the_bisector(size: float, share: float) -> None:
    crown = share * size
    reading = read(bead(size, size, crown), Leaf(size, "leaf", "throat"), HOME)
    if -crown > 0.11:
        assert reading.state == "daylight"
        assert reading.gap == pytest.approx(-crown, abs=1e-4)


def test_a_flat_face_short_of_the_spur() -> None:
    # Throat of the leaf 8 / sqrt(2), of the weld 7 / sqrt(2).
    reading = read(bead(7.0, 7.0), SPUR, HOME)
    assert reading.gap == pytest.approx(math.sqrt(0.5))


def test_unequal_legs_are_read_on_the_bisector_only() -> None:
    # The chord of 6 x 12 cuts the bisector at (4, 4): just where an 8 mm spur stands.
    assert read(bead(6.0, 12.0), SPUR, HOME).state != "daylight"
    assert read(bead(6.0, 11.0), SPUR, HOME).gap == pytest.approx(
        (4.0 - 66.0 / 17.0) * math.sqrt(2.0)
    )


def test_a_crown_holds_the_leaf_off() -> None:
    # Flush on the base, the spur 4 mm up meets the flat face of a 10 mm weld at x = 6.
    reading = read(bead(10.0, 10.0), SPUR, Pose(2.0, 0.0))
    assert shown(reading) == ("held off", 2.0)
    assert (reading.flush, reading.in_the_way) == (("long",), ())
    other = read(bead(10.0, 10.0), SPUR, Pose(0.0, 2.0))
    assert (shown(other), other.flush) == (("held off", 2.0), ("end",))
    between = read(bead(10.0, 10.0), SPUR, Pose(1.0, 1.0))
    assert (shown(between), between.flush) == (("held off", 1.0), ())


def test_the_larger_gap_is_told() -> None:
    # Askew by a degree about the spur: the base's gap is the widest at the long edge's far end.
    pose = Pose(1.0, 1.0).rotated(-1.0, (5.0, 5.0))
    far = pose.to_section((0.0, 24.0))[0]
    reading = read(bead(10.0, 10.0), SPUR, pose)
    assert reading.state == "held off"
    assert reading.gap == pytest.approx(far)


def test_an_arc_on_a_lopsided_face_is_in_the_way() -> None:
    # A hump near the upright meets the upper arc long before the spur meets anything.
    hump = (3.5, 8.0)
    section = Section.of(T, Bead.traced(((6.0, 0.0), (3.0, 3.0), hump, (0.0, 9.5)), T))
    leaf_side = -0.56 * 8.0 + math.sqrt((1.06 * 8.0) ** 2 - (hump[1] - 4.0) ** 2)
    reading = read(section, SPUR, Pose(hump[0] - leaf_side + 1e-7, 0.0))
    assert (reading.state, reading.in_the_way) == ("not seated", ("face",))


def test_spatter_keeps_an_edge_off() -> None:
    section = Section.of(T, Bead(8.0, 8.0), (Spatter("upright", 15.0, 0.8),))
    reading = read(section, SPUR, Pose(0.8, 0.0))
    assert (reading.state, reading.in_the_way) == ("not seated", ("spatter[0]",))
    assert reading.flush == ("long",)


def test_a_throat_leaf_short_of_home_has_nothing_in_its_way() -> None:
    reading = read(bead(8.0, 8.0), SPUR, Pose(0.5, 0.0))
    assert (reading.state, reading.in_the_way) == ("not seated", ())


# Joints that aren't square


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


# What holds for every reading


@given(st.floats(4.0, 12.0), st.floats(0.75, 1.3), st.floats(0.0, 0.15))
def test_larger_leaves_never_show_less(leg: float, ratio: float, crown: float) -> None:
    """Along a rack a weld holds leaves off, then is touched, then falls short: never back."""
    base = leg * ratio
    section = bead(base, leg)
    shown_by = []
    for step in range(60, 141, 2):
        size = leg * step / 100.0
        pose = Pose(max(0.0, base * (1.0 - size / leg)), 0.0)
        shown_by.append(read(section, Leaf(size, "leaf"), pose, 0.05 + crown))
    seated = [reading for reading in shown_by if reading.state != "not seated"]
    order = ["held off", "touch", "daylight"]
    ranks = [order.index(reading.state) for reading in seated]
    assert ranks == sorted(ranks)
    assert ranks[-1] == 2
    gaps = [reading.gap or 0.0 for reading in seated]
    signed = [gap * (rank - 1) for gap, rank in zip(gaps, ranks, strict=True)]
    assert all(one <= two + 1e-9 for one, two in pairwise(signed))


@given(
    st.floats(-1.0, 3.0),
    st.floats(-1.0, 3.0),
    st.floats(-3.0, 3.0),
    st.booleans(),
    st.sampled_from([EIGHT, SPUR]),
)
def test_a_reading_keeps_the_contracts_promises(
    x: float, y: float, angle: float, turned: bool, leaf: Leaf
) -> None:
    section = Section.of(
        T,
        Bead(8.0, 8.6, crown=0.4, overlap_base=Overlap(1.0), undercut_upright=Undercut(0.3, 1.0)),
        (Spatter("upright", 15.0, 0.5),),
    )
    pose = Pose(y, x, 90.0 - angle, turned=True) if turned else Pose(x, y, angle)
    reading = read(section, leaf, pose)
    assert reading.state in STATES
    assert (reading.gap is None) == (reading.state in ("touch", "not seated"))
    assert reading.gap is None or reading.gap > 0.0
    assert reading.state == "not seated" or reading.in_the_way == ()
    assert set(reading.in_the_way) <= set(section.piece_lines)
    assert reading.state in ("held off", "not seated") or "long" in reading.flush
    assert reading.pose == pose
    assert read(section, leaf, pose) == reading


@pytest.mark.parametrize("x", [2.0 - 0.004, 2.0 + 0.004])
def test_a_pose_stated_to_a_hundredth_reads_the_same(x: float) -> None:
    assert read(bead(10.0, 10.0), SPUR, Pose(x, 0.0)).state == "held off"
    assert read(bead(10.0, 10.0), EIGHT, Pose(x, 0.0)).state == "held off"
    assert read(bead(8.0, 8.0), EIGHT, Pose(x - 2.0, 0.0)).state == "touch"
    assert read(bead(8.0, 8.0), EIGHT, Pose(0.0, x - 2.0)).state == "touch"
