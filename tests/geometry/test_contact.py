"""Contact: never in steel, always at rest, and a leaf that slides, pivots and falls flush."""

from __future__ import annotations

import itertools
import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.bead import Bead, Overlap, Spatter
from geometry.bodies import Body
from geometry.contact import Hand, Motion, drag, touches, turn
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.penetration import is_free, penetration
from geometry.pose import Pose, wrap_degrees
from geometry.section import Section
from tests.geometry.drags import between, examine, random_leaf, random_pull, random_section

DEEPEST = 1e-6
SAVING = 1e-3


@settings(max_examples=120)
@given(st.integers(0, 2**32 - 1))
def test_a_drag_enters_nothing_and_comes_to_rest(seed: int) -> None:
    rng = random.Random(seed)
    pull = random_pull(rng, random_section(rng), random_leaf(rng))
    found = examine(pull, pull.drag(), rng, tries=25)
    assert found.deepest <= DEEPEST
    assert found.saving <= SAVING


def test_a_seeded_sweep_mostly_ends_in_contact() -> None:
    # A kernel that will not move, or lets go of the steel, fails here.
    rng = random.Random(20)
    found = []
    for _ in range(15):
        section, leaf = random_section(rng), random_leaf(rng)
        for _ in range(8):
            pull = random_pull(rng, section, leaf)
            found.append(examine(pull, pull.drag(), rng, tries=15))
    assert max(one.deepest for one in found) <= DEEPEST
    assert max(one.saving for one in found) <= SAVING
    assert sum(one.moved for one in found) >= 0.97 * len(found)
    assert sum(one.contact for one in found) >= 0.7 * len(found)


def _walk(section: Section, start: Pose, pointers: list[tuple[float, float]]) -> list[Motion]:
    """Drag the 8 mm leaf by its handle along pointers, mm."""
    leaf = leaf_of_mark("8 mm")
    pose, motions = start, []
    for pointer in pointers:
        hand = Hand(leaf.handle, pointer, start.angle)
        motions.append(drag(section.outline, leaf.body, pose, hand))
        pose = motions[-1].pose
    return motions


def test_a_free_leaf_follows_the_pointer_exactly() -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0, 1.0))
    leaf = leaf_of_mark("8 mm")
    motion = _walk(section, Pose(20.0, 30.0, 10.0), [(60.0, 55.0)])[-1]
    assert motion.pose.to_section(leaf.handle) == pytest.approx((60.0, 55.0), abs=1e-9)
    assert motion.pose.angle == pytest.approx(10.0, abs=1e-9)
    assert motion.touches == ()


def test_a_leaf_slides_along_the_base() -> None:
    section = Section.of(Joint(), Bead(6.0, 6.0))
    leaf = leaf_of_mark("8 mm")
    x, y = Pose(20.0, 0.5).to_section(leaf.handle)
    motions = _walk(section, Pose(20.0, 0.5), [(x - 0.5 * i, y - 5.0) for i in range(1, 21)])
    for motion in motions:
        assert motion.pose.y == pytest.approx(0.0, abs=1e-6)
        assert motion.pose.angle == pytest.approx(0.0, abs=1e-5)
    assert motions[-1].pose.x == pytest.approx(10.0, abs=1e-5)


def test_a_tilted_leaf_falls_flush_under_a_push() -> None:
    section = Section.of(Joint(), Bead(6.0, 6.0))
    leaf = leaf_of_mark("8 mm")
    start = Pose(20.0, 4.0, 9.0)
    pose, angles = start, []
    x, y = start.to_section(leaf.handle)
    for step in range(40):
        # The wrist gives in as it is pushed: it wants the angle that the leaf has.
        hand = Hand(leaf.handle, (x, y - 0.5 * (step + 1)), pose.angle)
        pose = drag(section.outline, leaf.body, pose, hand).pose
        angles.append(pose.angle)
    assert pose.angle == pytest.approx(0.0, abs=1e-6)
    assert all(b <= a + 1e-9 for a, b in itertools.pairwise(angles)), "the angle reverses"


@pytest.mark.parametrize("away", [40.0, 400.0])
@pytest.mark.parametrize("angle", [0.0, 17.0, -120.0])
def test_a_fling_tunnels_through_nothing(away: float, angle: float) -> None:
    # From behind the upright, and from under the base, straight at the corner.
    section = Section.of(Joint(), Bead(8.0, 8.0, 1.0))
    leaf = leaf_of_mark("8 mm")
    for at in ((-60.0, 35.0), (5.0, -60.0)):
        start = Pose(*at, angle)
        assert is_free(section.outline, leaf.body, start)
        way = math.hypot(*at)
        pointer = (at[0] - at[0] / way * away, at[1] - at[1] / way * away)
        held = start.to_section((12.0, 12.0))
        hand = Hand((12.0, 12.0), (pointer[0] + held[0] - at[0], pointer[1] + held[1] - at[1]), 0.0)
        motion = drag(section.outline, leaf.body, start, hand)
        for a, b in itertools.pairwise(motion.path):
            for share in (0.5, 1.0):
                depth = penetration(section.outline, leaf.body, between(a, b, share))
                assert depth <= DEEPEST
        # It is still on its own side: the steel lies between it and the corner.
        assert motion.pose.x < 0.0 or motion.pose.y < 0.0


def test_slow_and_fast_come_to_the_same_rest() -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0, 1.0))
    leaf = leaf_of_mark("8 mm")
    start = Pose(25.0, 20.0)
    x, y = start.to_section(leaf.handle)
    fast = _walk(section, start, [(x - 27.0, y - 22.0)])[-1].pose
    slow = _walk(
        section, start, [(x - 27.0 * i / 120.0, y - 22.0 * i / 120.0) for i in range(1, 121)]
    )[-1].pose
    assert slow.x == pytest.approx(fast.x, abs=1e-4)
    assert slow.y == pytest.approx(fast.y, abs=1e-4)
    assert slow.angle == pytest.approx(fast.angle, abs=1e-3)


def test_nothing_chatters_at_rest() -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0, 1.5), (Spatter("base", 20.0, 0.9),))
    leaf = leaf_of_mark("8 mm")
    pose = Pose(25.0, 20.0, 3.0)
    hand = Hand(leaf.handle, (14.0, 2.0), 3.0)
    pose = drag(section.outline, leaf.body, pose, hand).pose
    for _ in range(20):
        again = drag(section.outline, leaf.body, pose, hand).pose
        assert math.hypot(again.x - pose.x, again.y - pose.y) < 1e-5
        assert abs(wrap_degrees(again.angle - pose.angle)) < 1e-5
        pose = again


def test_a_leaf_rocks_on_spatter() -> None:
    section = Section.of(Joint(), Bead(6.0, 6.0), (Spatter("base", 20.0, 1.0),))
    leaf = leaf_of_mark("8 mm")
    angles = []
    for push_at in (13.0, 23.5):
        start = Pose(3.0, 6.0)
        grab = (push_at, 6.0)
        x, y = start.to_section(grab)
        pose = drag(section.outline, leaf.body, start, Hand(grab, (x, y - 30.0), 0.0)).pose
        named = {touch.fixed for touch in touches(section.outline, leaf.body, pose)}
        assert "spatter[0]" in named
        angles.append(pose.angle)
    # Pressed on one side of the drop it tips one way, on the other side the other way.
    assert angles[0] > 0.5
    assert angles[1] < -0.5


def test_an_end_edge_is_stopped_by_a_leaning_upright() -> None:
    section = Section.of(Joint(angle=70.0), Bead(5.0, 5.0))
    leaf = leaf_of_mark("8 mm")
    start = Pose(25.0, 0.5)
    x, y = start.to_section(leaf.handle)
    motion = _walk(section, start, [(x - 25.0, y - 40.0)])[-1]
    assert ("back|end", "upright") in {(t.moving, t.fixed) for t in motion.touches}
    # Closed form: the top of the end edge, 2.2 S up, lies on the upright's face line.
    assert motion.pose.x == pytest.approx(2.2 * 8.0 / math.tan(math.radians(70.0)), abs=1e-5)


def test_a_long_edge_stops_at_a_lip() -> None:
    section = Section.of(Joint(), Bead(6.0, 4.0, overlap_base=Overlap(3.0)))
    leaf = leaf_of_mark("5 mm")
    start = Pose(30.0, 1.0)
    x, y = start.to_section(leaf.handle)
    hand = Hand(leaf.handle, (x - 32.0, y - 40.0), 0.0)
    motion = drag(section.outline, leaf.body, start, hand)
    # Home its long edge would begin 7.5 mm from the root, inside the lip's end at 9 mm.
    assert "overlap_base" in {touch.fixed for touch in motion.touches}
    assert motion.pose.x > 1.0


def test_a_turn_stops_at_steel_and_turns_about_the_point() -> None:
    section = Section.of(Joint(), Bead(6.0, 6.0))
    leaf = leaf_of_mark("8 mm")
    start = Pose(12.0, 2.0)
    about = start.to_section(leaf.handle)
    free = turn(section.outline, leaf.body, start, about, 5.0).pose
    stopped = turn(section.outline, leaf.body, start, about, 40.0).pose
    assert free.angle == pytest.approx(5.0, abs=1e-9)
    assert 5.0 < stopped.angle < 40.0
    assert stopped.to_section(leaf.handle) == pytest.approx(about, abs=1e-9)
    nearer = stopped.rotated(0.01, about)
    assert penetration(section.outline, leaf.body, nearer) > 0.0


def test_a_pose_in_steel_is_left_alone() -> None:
    section = Section.of(Joint(), Bead(6.0, 6.0))
    leaf = leaf_of_mark("8 mm")
    pose = Pose(20.0, -1e-4)
    motion = drag(section.outline, leaf.body, pose, Hand(leaf.handle, (60.0, 60.0), 0.0))
    assert motion.path == (pose,)


def test_any_instrument_can_be_moved() -> None:
    # A wedge, which is no leaf: the kernel knows bodies and pieces only.
    section = Section.of(Joint(), Bead(6.0, 6.0, 0.8))
    wedge = Body.of_points("wedge", [(0.0, 0.0), (20.0, 0.0), (20.0, 4.0)], "flank")
    start = Pose(25.0, 3.0)
    motion = drag(section.outline, wedge, start, Hand((15.0, 2.0), (10.0, 0.0), 0.0))
    assert {touch.moving for touch in motion.touches} == {"flank"}
    assert {touch.fixed for touch in motion.touches} == {"face", "upright"}
    assert penetration(section.outline, wedge, motion.pose) <= DEEPEST


def test_motion_is_a_pure_function() -> None:
    # What was looked up before must not show in the result: same start, other history.
    section = Section.of(Joint(), Bead(8.0, 8.0, 1.0))
    leaf = leaf_of_mark("8 mm")
    start, hand = Pose(25.0, 20.0, 4.0), Hand(leaf.handle, (12.0, 1.0), 0.0)
    first = drag(section.outline, leaf.body, start, hand)
    for x in range(10):
        drag(section.outline, leaf.body, Pose(30.0 + x, 25.0), hand)
    assert drag(section.outline, leaf.body, start, hand) == first
    fresh = Section.of(Joint(), Bead(8.0, 8.0, 1.0))
    assert drag(fresh.outline, leaf_of_mark("8 mm").body, start, hand) == first


def test_a_leaf_that_is_rolled_past_a_half_turn_is_turned_on() -> None:
    # Steel rolls it over the other way than the wrist would have it; past the half turn the wanted
    # angle is nearer on that side, and where it comes to rest the same hand has no more to do.
    section = Section.of(Joint(80.0, 0.97, 14.18, 14.27), Bead(3.3, 2.5))
    leaf = leaf_of_mark("7/8 in")
    hand = Hand((36.0, 43.2), (-3.0, 23.6), -106.4)
    rest = drag(section.outline, leaf.body, Pose(50.3, 13.7, -85.7), hand).pose
    again = drag(section.outline, leaf.body, rest, hand).pose
    assert math.hypot(again.x - rest.x, again.y - rest.y) < 1e-5
    assert hand.cost(rest) - hand.cost(again) < SAVING
    assert wrap_degrees(rest.angle - hand.angle) < -90.0, "it was not rolled over"
