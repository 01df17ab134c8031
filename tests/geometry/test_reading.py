"""Readings by the leg edge in closed form: each row of the contract, at its very limits."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.curves import Arc
from geometry.faults import GeometryError
from geometry.joint import Joint
from geometry.leaf import Leaf, rack
from geometry.pose import Pose
from geometry.reading import STATES, Reading, read
from geometry.section import Section
from tests.geometry.plain import BOTH, EIGHT, HOME, ON_BASE, SPUR, T, bead, held_tip, shown


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
    stated = {"x": 0.0, "y": 0.0, "angle": 0.0, key: value}
    with pytest.raises(GeometryError, match=f"^/pose/{key}: "):
        Pose(stated["x"], stated["y"], stated["angle"])


@pytest.mark.parametrize("limit", [0.0, -0.1, math.nan, math.inf])
def test_an_eye_limit_that_is_none_is_refused(limit: float) -> None:
    with pytest.raises(GeometryError, match=r"^/eye_limit: an eye limit of"):
        read(bead(8.0, 8.0), EIGHT, HOME, limit)


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
