"""Pressing home reaches every seat that has a closed form, from wherever it starts."""

from __future__ import annotations

import math
import random

import pytest

from geometry.bead import Bead
from geometry.joint import Joint, Member
from geometry.leaf import EDGES, Edge, leaf_of_mark, rack
from geometry.measures import measure
from geometry.penetration import is_free, penetration
from geometry.pose import Pose
from geometry.reading import read
from geometry.seat import home_pose, nearest_free, press_home, waiting_pose
from geometry.section import Section

SIZE = 8.0


def _pressed(section: Section, edge: Edge, on: Member = "upright") -> Pose:
    leaf = leaf_of_mark("8 mm", edge)
    return press_home(section, leaf, waiting_pose(section, leaf, on)).pose


@pytest.mark.parametrize("leg", [4.0, 6.7, 7.9, 8.0])
@pytest.mark.parametrize("crown", [0.0, 0.5, -0.6])
@pytest.mark.parametrize("on", ["upright", "base"])
def test_a_leg_edge_comes_home_on_a_leg_no_larger(leg: float, crown: float, on: Member) -> None:
    section = Section.of(Joint(), Bead(leg, leg, crown))
    pose = _pressed(section, "leg", on)
    assert (pose.x, pose.y) == pytest.approx((0.0, 0.0), abs=1e-5)
    assert pose.angle == pytest.approx(90.0 if on == "base" else 0.0, abs=1e-5)
    gap = read(section, leaf_of_mark("8 mm"), pose).gap
    assert gap is None if leg > 7.85 else gap == pytest.approx(SIZE - leg, abs=1e-3)


@pytest.mark.parametrize(("leg", "base"), [(9.0, 9.0), (11.0, 11.0), (10.0, 7.0)])
def test_a_flat_face_holds_the_tip_off(leg: float, base: float) -> None:
    # Closed form: at the tip's height the straight face lies base * (1 - S / leg) off the upright.
    section = Section.of(Joint(), Bead(base, leg))
    pose = _pressed(section, "leg")
    off = base * (1.0 - SIZE / leg)
    assert (pose.x, pose.y) == pytest.approx((off, 0.0), abs=1e-5)
    reading = read(section, leaf_of_mark("8 mm"), pose)
    assert reading.state == "held off"
    assert reading.gap == pytest.approx(off, abs=1e-3)


@pytest.mark.parametrize("crown", [0.8, 1.5, -0.9])
def test_an_arc_face_holds_the_tip_off(crown: float) -> None:
    # Closed form: the face's circle through both toes, cut at the tip's height.
    leg = 9.0
    section = Section.of(Joint(), Bead(leg, leg, crown))
    half = leg / math.sqrt(2.0)
    radius = (half**2 + crown**2) / (2.0 * abs(crown))
    middle = half + crown - math.copysign(radius, crown)
    cx = cy = middle / math.sqrt(2.0)
    side = math.copysign(1.0, crown)
    off = cx + side * math.sqrt(radius**2 - (SIZE - cy) ** 2)
    pose = _pressed(section, "leg")
    assert (pose.x, pose.y) == pytest.approx((off, 0.0), abs=1e-4)


@pytest.mark.parametrize("crown", [-1.3, -0.5, 0.0])
def test_a_throat_edge_comes_home_over_a_face_no_higher(crown: float) -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0, crown))
    pose = _pressed(section, "throat")
    assert (pose.x, pose.y, pose.angle) == pytest.approx((0.0, 0.0, 0.0), abs=1e-5)
    gap = read(section, leaf_of_mark("8 mm", "throat"), pose).gap
    assert gap is None if crown == 0.0 else gap == pytest.approx(-crown, abs=1e-3)


@pytest.mark.parametrize("crown", [0.4, 0.9, 2.0])
def test_a_spur_rides_a_crown_straight_on_the_bisector(crown: float) -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0, crown))
    pose = _pressed(section, "throat")
    off = crown / math.sqrt(2.0)
    assert (pose.x, pose.y) == pytest.approx((off, off), abs=1e-5)
    assert pose.angle == pytest.approx(0.0, abs=1e-5)
    reading = read(section, leaf_of_mark("8 mm", "throat"), pose)
    assert (reading.state, reading.gap) == ("held off", pytest.approx(off, abs=1e-3))


@pytest.mark.parametrize("leaf", rack("metric") + rack("inch"))
def test_every_leaf_touches_its_own_flat_weld(leaf: object) -> None:
    section = Section.of(
        Joint(base_length=90.0, upright_length=90.0),
        Bead(leaf.size, leaf.size),  # type: ignore[attr-defined]
    )
    for edge in EDGES:
        held = leaf.with_edge(edge)  # type: ignore[attr-defined]
        for on in ("upright", "base"):
            pose = press_home(section, held, waiting_pose(section, held, on)).pose
            assert read(section, held, pose).state == "touch"


@pytest.mark.parametrize(
    "bead",
    [Bead(8, 8), Bead(8, 6.7, 0.9), Bead(9, 9, 1.5), Bead(7, 10, 1), Bead(9, 9, -1.3)],
    ids=str,
)
@pytest.mark.parametrize(("edge", "on"), [("leg", "upright"), ("leg", "base"), ("throat", "base")])
def test_the_seat_does_not_hang_on_the_start(bead: Bead, edge: Edge, on: Member) -> None:
    section = Section.of(Joint(), bead)
    leaf = leaf_of_mark("8 mm", edge)
    seat = press_home(section, leaf, waiting_pose(section, leaf, on)).pose
    home = home_pose(section.joint, leaf, on)
    rng = random.Random(str((bead, edge, on)))
    for _ in range(6):
        start = home
        while not is_free(section.outline, leaf.body, start):
            start = home.moved(rng.uniform(0.0, 40.0), rng.uniform(0.0, 40.0))
            start = start.rotated(rng.uniform(-15.0, 15.0), (0.0, 0.0))
        pose = press_home(section, leaf, start).pose
        assert (pose.x, pose.y) == pytest.approx((seat.x, seat.y), abs=1e-4)
        assert pose.angle == pytest.approx(seat.angle, abs=1e-4)


def test_pressing_home_enters_nothing_on_any_section() -> None:
    for angle in (60.0, 80.0, 90.0, 100.0, 135.0):
        section = Section.of(Joint(angle), Bead(7.0, 8.0, 0.8))
        for edge in EDGES:
            leaf = leaf_of_mark("8 mm", edge)
            motion = press_home(section, leaf, waiting_pose(section, leaf, "upright"))
            assert max(penetration(section.outline, leaf.body, p) for p in motion.path) <= 1e-6
            assert motion.touches


def test_room_is_found_beside_steel_and_nowhere_else() -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0, 1.0))
    leaf = leaf_of_mark("8 mm", "throat")
    assert nearest_free(section, leaf, Pose(30.0, 30.0)) == Pose(30.0, 30.0)
    moved = nearest_free(section, leaf, Pose(0.0, 0.0))
    assert moved is not None
    assert is_free(section.outline, leaf.body, moved)
    # The spur stands 1 mm deep in the crown; the nearest room is 1 mm off, and a hair.
    assert math.hypot(moved.x, moved.y) == pytest.approx(1.0, abs=0.05)
    # Behind the upright the nearest room is behind it too, not through it.
    behind = nearest_free(section, leaf_of_mark("8 mm"), Pose(-30.0, 20.0))
    assert behind is not None
    assert behind.x < -30.0
    # In the middle of a block of steel there is none near.
    block = Section.of(Joint(base_thickness=200.0, upright_length=100.0), Bead(8.0, 8.0))
    assert nearest_free(block, leaf_of_mark("8 mm"), Pose(10.0, -100.0)) is None


def test_seats_agree_with_measures() -> None:
    # The kernel seats the spur, the measures know the face: daylight is the difference.
    section = Section.of(Joint(), Bead(8.0, 8.0, -1.2))
    reading = read(section, leaf_of_mark("8 mm", "throat"), _pressed(section, "throat"))
    assert reading.gap == pytest.approx(
        SIZE / math.sqrt(2.0) - measure(section).actual_throat, abs=1e-3
    )
