"""Readings by the throat edge in closed form."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead, Spatter
from geometry.leaf import Leaf
from geometry.penetration import penetration
from geometry.pose import Pose
from geometry.reading import read
from geometry.seat import press_home, waiting_pose
from geometry.section import Section
from geometry.tolerances import LEGAL_DEPTH
from tests.geometry.plain import BOTH, HOME, SPUR, T, bead, shown


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


@given(st.floats(4.0, 16.0), st.floats(1.4, 1.41), st.floats(0.06, 0.3))
def test_toes_that_run_out_under_the_edges_are_not_in_the_way(
    size: float, share: float, off: float
) -> None:
    """The spur rides a deep hollow whose thin toes reach under both edges without touching them."""
    leg = share * size
    # The spur's height over the chord is where the hollow's middle has to be.
    crown = (size - leg) / math.sqrt(2.0) + off * math.sqrt(2.0)
    weld, leaf = bead(leg, leg, crown), Leaf(size, "leaf", "throat")
    pose = Pose(off + 1e-6, off + 1e-6)
    assert penetration(weld.outline, leaf.body, pose) < LEGAL_DEPTH
    reading = read(weld, leaf, pose)
    assert reading.in_the_way == ()
    if off < 0.099:
        assert (reading.state, reading.flush) == ("touch", BOTH)
    elif off > 0.102:
        assert shown(reading) == ("held off", pytest.approx(off, abs=1e-4))


@pytest.mark.parametrize("tilt", [-0.3, -0.05, 0.05, 0.3])
def test_a_leaf_that_rocks_on_its_spur_is_held_off(tilt: float) -> None:
    weld, leaf = bead(7.1, 7.0, -1.35), Leaf(5.0, "5 mm", "throat")
    level = press_home(weld, leaf, waiting_pose(weld, leaf, "base")).pose.moved(0.002, 0.002)
    reading = read(weld, leaf, level.rotated(tilt, level.to_section(leaf.spur)))
    assert reading.in_the_way == ()
    assert reading.state == ("held off" if abs(tilt) > 0.2 else "touch")


def test_a_toe_that_carries_an_edge_is_in_the_way() -> None:
    # The leaf has been pushed aside until its long edge stands on the toe of a longer leg.
    section = bead(9.0, 6.0, -1.2)
    leaf = Leaf(5.0, "5 mm", "throat")
    toe_side = section.bead.leg_base - leaf.long_edge[0][0]
    pose = Pose(toe_side - 1.0, 0.02)
    assert "face" in read(section, leaf, pose).in_the_way
