"""Pairs of features, many at once, against the same ones by one, by differences and by samples."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest

from geometry.bead import Bead
from geometry.contact import Hand, drag
from geometry.features import Discs, Hollows, features_of
from geometry.joint import Joint
from geometry.leaf import Leaf, leaf_of_mark
from geometry.nearby import near
from geometry.pairing import all_pairs
from geometry.pairs import Pairs, Spot
from geometry.pose import Pose
from geometry.section import Section
from geometry.sweep import dip, free
from tests.geometry.drags import random_leaf, random_pull, random_section

SEEDS = range(12)


def bodies(seed: int) -> tuple[random.Random, Section, Leaf, Pairs]:
    rng = random.Random(seed)
    section, leaf = random_section(rng), random_leaf(rng)
    return rng, section, leaf, all_pairs(section.outline, leaf.body)


def some_spot(rng: random.Random) -> Spot:
    return Spot(rng.uniform(-5.0, 15.0), rng.uniform(-5.0, 15.0), rng.uniform(-3.0, 3.0))


def some_of(pairs: Pairs, seed: int, count: int) -> np.ndarray:
    """Some of the pairs, in rising order, lines and circles among them."""
    chosen = np.random.default_rng(seed).choice(len(pairs), min(count, len(pairs)), replace=False)
    return np.sort(chosen)


@pytest.mark.parametrize("seed", SEEDS)
def test_slopes_are_what_differences_say(seed: int) -> None:
    rng, _, _, pairs = bodies(seed)
    spot, arm, step = some_spot(rng), (rng.uniform(-9.0, 9.0), rng.uniform(-9.0, 9.0)), 1e-6
    at, which = pairs.at(spot), some_of(pairs, seed, 80)
    slopes = pairs.slopes(at, which, arm)

    def turned(by: float) -> Spot:
        # About the held point, which stays where it is.
        x, y = spot.x + arm[0], spot.y + arm[1]
        cos, sin = math.cos(by), math.sin(by)
        u, v = cos * arm[0] - sin * arm[1], sin * arm[0] + cos * arm[1]
        return Spot(x - u, y - v, spot.turn + by)

    ways = (
        (Spot(spot.x - step, spot.y, spot.turn), Spot(spot.x + step, spot.y, spot.turn)),
        (Spot(spot.x, spot.y - step, spot.turn), Spot(spot.x, spot.y + step, spot.turn)),
        (turned(-step), turned(step)),
    )
    for row, (before, after) in zip(slopes, ways, strict=True):
        change = (pairs.at(after).gap[which] - pairs.at(before).gap[which]) / (2.0 * step)
        assert row == pytest.approx(change, abs=1e-5)


@pytest.mark.parametrize("seed", SEEDS)
def test_meetings_of_many_are_those_of_each(seed: int) -> None:
    rng, _, _, pairs = bodies(seed)
    at, which = pairs.at(some_spot(rng)), some_of(pairs, seed, 80)
    each = [pairs.meeting(at, index) for index in which.tolist()]
    assert pairs.meetings(at, which) == pytest.approx(np.array(each), abs=1e-12)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_part_is_evaluated_as_the_whole(seed: int) -> None:
    rng, _, _, pairs = bodies(seed)
    spot, which = some_spot(rng), some_of(pairs, seed, 60)
    whole, part = pairs.at(spot), pairs.subset(which)
    at = part.at(spot)
    assert at.gap == pytest.approx(whole.gap[which], abs=1e-12)
    assert [part.name(i) for i in range(len(part))] == [pairs.name(i) for i in which.tolist()]


def arc(feature: Discs | Hollows, index: int) -> np.ndarray:
    """Dense points of an arc, in its own frame."""
    middle = math.atan2(feature.middle[index, 1], feature.middle[index, 0])
    half = math.acos(max(-1.0, min(1.0, float(feature.cos_half[index]))))
    angles = middle + np.linspace(-half, half, 4001)
    around = np.column_stack((np.cos(angles), np.sin(angles)))
    points: np.ndarray = feature.centre[index] + feature.radius[index] * around
    return points


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_left_out_is_not_near(seed: int) -> None:
    """A corner beside a leaf's hollow edge, beyond its end, is as far from it as from that end."""
    _, section, _, _ = bodies(seed)
    leaf = leaf_of_mark("8 mm", "throat" if seed % 2 else "leg")
    pairs = all_pairs(section.outline, leaf.body)
    rng = random.Random(seed)
    spot = Spot(rng.uniform(0.0, 9.0), rng.uniform(0.0, 9.0), rng.uniform(-0.5, 0.5))
    mover, still = features_of(leaf.body).hollows, features_of(section.outline).discs
    # They come last: each hollow of the leaf with every disc of the steel that fits it.
    order = [(m, f) for m in range(len(mover.names)) for f in range(len(still.names))]
    order = [(m, f) for m, f in order if mover.radius[m] - still.radius[f] > 1e-9]
    first = len(pairs) - len(order)
    cos, sin = math.cos(spot.turn), math.sin(spot.turn)
    for width in (0.7, 3.0):
        kept = set((pairs.within(spot, width) - first).tolist())
        for index, (m, f) in enumerate(order):
            x, y = arc(mover, m).T
            points = np.column_stack((spot.x + cos * x - sin * y, spot.y + sin * x + cos * y))
            off = points - still.centre[f]
            away = float(np.hypot(*off.T).min()) - float(still.radius[f])
            if abs(away - width) > 0.01 and still.radius[f] == 0.0:
                # All that is near is kept, and of what is beyond an end nothing else.
                assert (index in kept) == (away <= width)
            elif away < width - 0.01:
                assert index in kept


@pytest.mark.parametrize("seed", range(40))
def test_what_a_move_may_enter_is_what_each_pair_says(seed: int) -> None:
    """Tests of many pairs at once pass over nothing that the test of one would find."""
    rng, section, leaf, _ = bodies(seed)
    while seed % 2 and section.bead.trace is None:
        section = random_section(rng)
    pull = random_pull(rng, section, leaf)
    rest = drag(section.outline, leaf.body, pull.pose, Hand(leaf.handle, (0.0, 0.0), 0.0)).pose
    if rest.turned:
        rest = Pose(20.0, 20.0, 0.0)
    pairs = all_pairs(section.outline, leaf.body)
    spot = Spot(rest.x, rest.y, rest.radians)
    end = Spot(
        spot.x + rng.uniform(-2.0, 1.0),
        spot.y + rng.uniform(-2.0, 1.0),
        spot.turn + rng.uniform(-0.05, 0.05),
    )
    close = near(pairs, spot, 6.0).pairs
    depth, guilty = dip(close, close.at(spot), close.at(end), pairs.reach)
    alone = []
    for index in range(len(close)):
        one = close.subset(np.array([index]))
        if dip(one, one.at(spot), one.at(end), pairs.reach)[1]:
            alone.append(index)
    assert guilty == alone
    assert (depth > 0.0) == bool(guilty)
    assert free(close, close.at(spot), close.at(end), pairs.reach) is not bool(guilty)


@pytest.mark.parametrize("crown", [1e-5, 1e-4])
def test_a_face_all_but_flat_ends_at_its_toes(crown: float) -> None:
    """Its arc has a radius of metres or kilometres, and none of it lies beyond the plates."""
    section = Section.of(Joint(), Bead(8.0, 8.0, crown))
    leaf = leaf_of_mark("8 mm", "throat")
    # Below the base, from before the line of the face, carried on through the plate, to behind it.
    start, aim = Pose(80.0, -60.0), (10.0, -50.0)
    motion = drag(section.outline, leaf.body, start, Hand(leaf.handle, aim, 0.0))
    assert motion.touches == ()
    assert motion.pose.to_section(leaf.handle) == pytest.approx(aim, abs=1e-6)
