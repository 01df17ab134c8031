"""All four, pressed home: against closed forms that no code of ours has part in."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.joint import Member
from geometry.leaf import Edge
from geometry.penetration import is_free
from geometry.reading import read
from trainer.corners.pressing import PLACES, Corner, Pressing
from trainer.corners.state import PAIRS, Corners, Pair


def corner(state: Corners, pair: Pair, edge: Edge) -> Corner:
    return Pressing().corners(state)[PLACES.index((pair, edge))]


def test_a_flat_bead_of_the_leaf_s_size_touches_everywhere() -> None:
    """Derivation: tip at (0, S) on the toe, spur at (S/2, S/2) on the chord of legs S."""
    for mark, leg in (("8 mm", 8.0), ("5 mm", 5.0), ("5/16 in", 7.9375), ("a 5 mm", 7.0710678)):
        state = Corners(leg, leg, 0.0, 0.0, mark=mark)
        for found in Pressing().corners(state):
            assert (found.reading.state, found.verdict.trust) == ("touch", "honest")


@pytest.mark.parametrize(("leg", "crown"), [(8.0, -1.3), (7.0, -0.5), (9.0, -2.2), (6.5, 0.3)])
def test_the_throat_s_daylight(leg: float, crown: float) -> None:
    """Derivation: on the bisector the face is at leg / sqrt 2 + crown, the spur at S / sqrt 2."""
    found = corner(Corners(leg, leg, hollow=crown), "hollow", "throat")
    gap = 8.0 / math.sqrt(2.0) - (leg / math.sqrt(2.0) + crown)
    assert found.reading.state == "daylight"
    assert found.reading.gap == pytest.approx(gap, abs=2e-4)


@pytest.mark.parametrize("crown", [0.5, 1.0, 2.0])
def test_a_crown_holds_the_throat_edge_off(crown: float) -> None:
    """Derivation: lifted by the crown along the bisector, each edge stands off crown / sqrt 2."""
    found = corner(Corners(crown=crown), "crown", "throat")
    assert found.reading.state == "held off"
    assert found.reading.gap == pytest.approx(crown / math.sqrt(2.0), abs=2e-4)


@pytest.mark.parametrize("leg", [4.0, 6.7, 7.8])
@pytest.mark.parametrize("on", ["upright", "base"])
def test_the_leg_s_daylight_is_what_the_leg_is_short(leg: float, on: Member) -> None:
    """Derivation: tip at S, toe at the leg, on the same line; either face, either member."""
    state = Corners(leg, leg, 0.8, -0.8, on=on)
    for pair in PAIRS:
        found = corner(state, pair, "leg")
        assert found.reading.gap == pytest.approx(8.0 - leg, abs=1e-4)


@pytest.mark.parametrize("angle", [100.0, 110.0, 120.0])
def test_out_of_square_the_leg_edge_sees_less(angle: float) -> None:
    """Derivation: the toe stands leg * sin(angle) off the flush member (design, section 3)."""
    found = corner(Corners(angle=angle, leg_base=7.0, leg_upright=7.0), "hollow", "leg")
    assert found.reading.gap == pytest.approx(8.0 - 7.0 * math.sin(math.radians(angle)), abs=1e-4)


@pytest.mark.parametrize("angle", [60.0, 75.0, 80.0, 100.0, 120.0, 135.0])
def test_out_of_square_the_throat_edge_has_no_seat(angle: float) -> None:
    """Both edges can't be flush in a joint that isn't square (design, section 3)."""
    for pair in PAIRS:
        found = corner(Corners(angle=angle), pair, "throat")
        assert (found.reading.state, found.verdict.code) == ("not seated", "throat-skewed")


def test_below_square_the_end_edge_strikes() -> None:
    """The leaning upright is met before the tip can be (design, section 3)."""
    found = corner(Corners(angle=75.0), "hollow", "leg")
    assert (found.reading.state, found.reading.in_the_way) == ("not seated", ("upright",))


@pytest.mark.parametrize(
    "state",
    [
        Corners(),
        Corners(10.0, 6.0, equal=False),
        Corners(angle=75.0),
        Corners(angle=115.0, on="base"),
        Corners(mark="25 mm"),
        Corners(25.0, 25.0, 4.0, -4.0, mark="3 mm"),
        Corners(3.0, 25.0, 0.5, -0.3, 135.0, mark="14 mm", equal=False),
    ],
)
def test_leaves_lie_in_no_steel_and_are_read_where_they_lie(state: Corners) -> None:
    for found in Pressing().corners(state):
        pose = found.reading.pose
        assert is_free(found.section.outline, found.leaf.body, pose)
        assert read(found.section, found.leaf, pose) == found.reading


def test_what_comes_out_hangs_on_the_state_alone() -> None:
    target = Corners(8.4, 7.7, 1.2, -0.9, equal=False)
    used = Pressing()
    for step in range(12):
        used.corners(replace(target, leg_base=6.0 + 0.3 * step, mark="10 mm"))
    used.corners(replace(target, crown=target.hollow, hollow=target.crown))
    fresh = Pressing().corners(target)
    for old, new in zip(used.corners(target), fresh, strict=True):
        assert (old.pair, old.edge, old.reading) == (new.pair, new.edge, new.reading)


def test_equal_bodies_are_built_once() -> None:
    pressing = Pressing()
    first = pressing.corners(Corners())
    assert first[0].section is first[1].section
    leaf_changed = pressing.corners(Corners(mark="10 mm"))
    assert leaf_changed[0].section is first[0].section
    turned = pressing.corners(Corners(on="base"))
    assert turned[1] is first[1], "a throat edge is never turned over"
    one_crown = pressing.corners(Corners(crown=1.5))
    assert one_crown[2] is first[2]
    assert one_crown[3] is first[3]
