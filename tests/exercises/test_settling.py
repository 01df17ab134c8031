"""What the leaves there are can settle: bounds of a leg, and of what is made of two legs.

No source: leaf sizes are the racks' (contract), each bound is worked out beside its case.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from exercises.checks import Check
from exercises.gauging import bisector_size, leg_leaf_size, right_leaves, seat_pose, shows
from exercises.judging import judge
from exercises.rules import Limit, RuleSet, Source
from exercises.rules.formula import Length
from exercises.settling import answers, leg_bounds
from exercises.text import Text
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.section import Section
from tests.exercises.trays import coupon

A6 = 6.0 * math.sqrt(2.0)
LONG = {"base_length": 200.0, "upright_length": 200.0}


def bounds(leg: float, **joint: float) -> tuple[float | None, float | None]:
    return leg_bounds(Section.of(Joint(**joint), Bead(leg, leg)), "base", 0.1)


def check(legs: tuple[float, float], key: str, rules: str, throat: float, **joint: float) -> Check:
    made = coupon(
        bead={"leg_base": legs[0], "leg_upright": legs[1]},
        callout={"size": throat, "measure": "throat"},
        joint=joint,
        rules=rules,
    )
    return next(each for each in judge(made).checks if each.key == key)


# --- a leg between two leaves ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("leg", "between"),
    [
        # The 8 mm leaf touches a leg of 8: it is reached; the next is the a 6, 8.485 mm.
        (8.0, (8.0, A6)),
        (8.1, (8.0, A6)),
        # No leaf is smaller than 3 mm, and none larger than 25.4.
        (2.9, (None, 3.0)),
        (26.0, (25.4, None)),
    ],
)
def test_the_nearest_leaves_bound_a_leg(
    leg: float, between: tuple[float | None, float | None]
) -> None:
    assert bounds(leg, **LONG) == pytest.approx(between)


def test_in_a_skewed_joint_a_leaf_reads_square_to_its_member() -> None:
    """At 100 degrees a leaf S meets a leg of S / sin 100: 8 mm one of 8.123, 15/16 one of 8.060."""
    low, high = bounds(8.1, angle=100.0)
    assert low == pytest.approx(7.9375 / math.sin(math.radians(100.0)))
    assert high == pytest.approx(8.0 / math.sin(math.radians(100.0)))


def test_a_leg_of_a_skewed_joint_is_not_shown_by_a_leaf_of_its_own_size() -> None:
    """A leg of 8 is met by a leaf of 7.878: between 7.778 (a 5.5) and 7.9375 (5/16)."""
    by = math.sin(math.radians(100.0))
    assert bounds(8.0, angle=100.0) == pytest.approx((5.5 * math.sqrt(2.0) / by, 7.9375 / by))


def test_a_leaf_of_just_the_limit_shows_daylight_where_the_leg_is_within_the_doubt() -> None:
    """8.88 for 9: 0.12 apart, U is 0.129, and no leaf lies between; a 9 mm leaf shows 0.12."""
    section = Section.of(Joint(), Bead(8.88, 8.88))
    assert answers(section, "leg", "upright", (8.88, 9.0), 0.1)
    assert not answers(section, "leg", "upright", (8.86, 9.0), 0.1)


@pytest.mark.parametrize(("angle", "size"), [(90.0, 8.0), (112.5, 7.3910), (135.0, 5.6569)])
def test_a_leg_is_met_by_a_leaf_of_its_sine(angle: float, size: float) -> None:
    """8 sin 112.5 = 7.3910, 8 sin 135 = 5.6569."""
    assert leg_leaf_size(8.0, Joint(angle=angle)) == pytest.approx(size, abs=5e-5)


def test_a_corner_just_as_high_as_the_tip_stops_it() -> None:
    """An 8 mm leaf's end edge begins 8 mm above the base, where the face's corner is at x = 2."""
    cornered = Bead.traced(((9.0, 0.0), (2.0, 8.0), (0.0, 9.0)), Joint())
    pose = seat_pose(Section.of(Joint(), cornered), leaf_of_mark("8 mm"), "upright")
    assert (pose.x, pose.y) == pytest.approx((2.0, 0.0))


@pytest.mark.parametrize("angle", [70.0, 90.0, 115.0])
def test_the_face_on_the_bisector_of_two_different_legs(angle: float) -> None:
    """A line through a and b on two rays crosses their bisector at 2 a b cos(angle / 2) / (a + b),
    so the leaf that it meets is of 2 a b / (a + b): of 7 and 9, 7.875."""
    for legs in ((7.0, 9.0), (9.0, 7.0)):
        section = Section.of(Joint(angle=angle), Bead(*legs))
        assert bisector_size(section) == pytest.approx(7.875)


def test_a_leaf_that_would_have_to_enter_steel_is_not_seated() -> None:
    """The hump at (9, 7) is 10.53 from the arc's centre (0.3106 S, -0.1591 S), its radius 9.6."""
    humped = Bead.traced(((10.0, 0.0), (9.0, 7.0), (0.0, 5.0)), Joint())
    assert shows(Section.of(Joint(), humped), leaf_of_mark("8 mm"), "upright", 0.1) == "not seated"
    # At (8, 6) it would be 9.13 away: clear, and the leg of 5 shows daylight.
    lower = Bead.traced(((10.0, 0.0), (8.0, 6.0), (0.0, 5.0)), Joint())
    assert shows(Section.of(Joint(), lower), leaf_of_mark("8 mm"), "upright", 0.1) == "daylight"


# --- where a throat edge is slid ------------------------------------------------------------------


@pytest.mark.parametrize("angle", [60.0, 80.0, 90.0, 100.0, 135.0])
def test_a_throat_edge_is_slid_along_the_bisector_as_far_as_its_spur_needs(angle: float) -> None:
    """A flat 9 mm weld reaches 9 cos(angle / 2) on the bisector, the spur of an 8 mm leaf 5.657."""
    half = math.radians(angle / 2.0)
    section = Section.of(Joint(angle=angle), Bead(9.0, 9.0))
    pose = seat_pose(section, leaf_of_mark("8 mm", "throat"), "base")
    off = max(0.0, 9.0 * math.cos(half) - 4.0 * math.sqrt(2.0))
    assert (pose.x, pose.y) == pytest.approx((off * math.cos(half), off * math.sin(half)))


def test_a_leaf_of_the_size_but_for_rounding_is_the_size_s_own() -> None:
    """7.9375 mm is 5/16 in; what is off by less than a millionth is the same size."""
    assert [leaf.mark for leaf in right_leaves(7.9375 + 5e-7, "inch")] == ["5/16 in"]
    assert [leaf.mark for leaf in right_leaves(7.9375 + 2e-6, "inch")] == ["5/16 in", "3/8 in"]


# --- a throat of two legs -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("legs", "told", "throat", "joint"),
    [
        # Throat 4.300. The 8 carries leaves up to 5.33 (8 / 1.5), so none below the 5.1 seats.
        ((5.1, 8.0), (None, 4.0 * math.sqrt(2.0)), 4.3, {}),
        # Throat 15.853, and no leaf is larger than the 26.
        ((26.0, 20.0), (25.4, None), 15.85, LONG),
    ],
)
def test_a_throat_near_its_limit_is_not_told_by_one_bound(
    legs: tuple[float, float],
    told: tuple[float | None, float | None],
    throat: float,
    joint: dict[str, float],
) -> None:
    """EN 1993-1-8 4.5.2: the height of the largest triangle inside, of legs equal or not."""
    for flip in (False, True):
        each = (legs[1], legs[0]) if flip else legs
        section = Section.of(Joint(**joint), Bead(*each))
        assert leg_bounds(section, "upright" if flip else "base", 0.1) == pytest.approx(told)
        found = check(each, "theoretical_throat", "en-1993-1-8", throat, **joint)
        assert found.near
        assert found.decided_by_leaf is False


@pytest.mark.parametrize(
    ("legs", "throat", "passed", "told"),
    [
        # At least 6.364 and 8.485 (a 4.5, a 6), so a throat of at least 5.09: above 4.7.
        ((6.4, 8.9), 4.7, True, True),
        # At least 6.364 and 8.485 again, and 5.09 doesn't reach 5.1, though the true 5.196 does
        # by more than the doubt.
        ((6.4, 8.9), 5.1, True, False),
        # Less than 6.35 (1/4) each, so a throat below 4.49: short of 4.7.
        ((6.05, 6.05), 4.7, False, True),
        # The same leaves leave 4.49 open, which would do for 4.455.
        ((6.05, 6.05), 4.455, False, False),
    ],
)
def test_leaves_about_both_legs_tell_a_throat_or_don_t(
    legs: tuple[float, float], throat: float, passed: bool, told: bool
) -> None:
    found = check(legs, "theoretical_throat", "en-1993-1-8", throat)
    assert not found.near
    assert (found.passed, found.decided_by_leaf) == (passed, told)


def test_a_throat_near_its_limit_is_told_where_both_legs_are_bounded() -> None:
    """Leaves that seat on both sides of either leg show that 5.196 is about 5.19: in doubt."""
    found = check((6.4, 8.9), "theoretical_throat", "en-1993-1-8", 5.19)
    assert found.near
    assert found.decided_by_leaf is True


# --- the difference of two legs -------------------------------------------------------------------


def difference(legs: tuple[float, float], allowed: float, **joint: float) -> Check:
    own = Source("a shop", "", "", "own")
    limit = Limit("asymmetry", Length.plain(allowed), "dress back", own)
    made = coupon(
        bead={"leg_base": legs[0], "leg_upright": legs[1]},
        callout={"size": 3, "measure": "leg"},
        joint=joint,
    )
    rules = RuleSet("shop", 1, Text.of("Shop"), own, limits=(limit,))
    judged = judge(replace(made, shop_rules=rules))
    return next(each for each in judged.checks if each.key == "asymmetry")


@pytest.mark.parametrize("legs", [(2.9, 3.4), (3.4, 2.9), (26.0, 24.0), (24.0, 26.0)])
def test_a_difference_is_not_told_without_all_four_bounds(legs: tuple[float, float]) -> None:
    found = difference(legs, 9.0, **LONG)
    assert (found.passed, found.decided_by_leaf) == (True, False)


def test_bounds_of_just_the_limit_show_that_it_is_kept() -> None:
    """Below 7 mm and at least 5: no more than 2 apart, and 2 are allowed."""
    for legs in ((6.7, 5.3), (5.3, 6.7)):
        found = difference(legs, 2.0)
        assert not found.near
        assert (found.passed, found.decided_by_leaf) == (True, True)


def test_bounds_of_just_the_limit_do_not_show_that_it_is_passed() -> None:
    """At least 8 mm and below 7: at least 1 apart, which 1 allows."""
    for legs in ((8.2, 6.7), (6.7, 8.2)):
        found = difference(legs, 1.0)
        assert not found.near
        assert (found.passed, found.decided_by_leaf) == (False, False)
