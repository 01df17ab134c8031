"""Judging by rule sets: every limit on both sides, allowances by extent, what leaves can tell."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from exercises.checks import Check
from exercises.coupon import Coupon, Disposition
from exercises.doubt import doubt
from exercises.judging import judge, limit_leaves, right_handling
from exercises.required import (
    Required,
    asked_throat,
    called_size,
    limit_for,
    required,
    throat_of,
)
from exercises.rules import Source
from exercises.rules.formula import Length
from exercises.rules.limits import Undersize, Within
from exercises.settling import leg_bounds
from tests.exercises.trays import coupon

U_LEG, U_SPUR = doubt("leg"), doubt("throat")
OWN = Source("a shop", "", "", "own")
STATIC, CYCLIC = "aws-d1.1-static", "aws-d1.1-cyclic"


def weld(
    legs: tuple[float, float],
    crown: float = 0.4,
    *,
    rules: str = STATIC,
    size: float | str = 8,
    measure: str = "leg",
    callout: dict[str, object] | None = None,
    joint: dict[str, float] | None = None,
    toes: dict[str, object] | None = None,
    **others: object,
) -> Coupon:
    return coupon(
        bead={"leg_base": legs[0], "leg_upright": legs[1], "crown": crown, **(toes or {})},
        callout={"size": size, "measure": measure, **(callout or {})},
        joint=joint or {},
        rules=rules,
        **others,
    )


def check(made: Coupon, key: str) -> Check:
    return next(each for each in judge(made).checks if each.key == key)


def keys(made: Coupon) -> list[str]:
    return [each.key for each in judge(made).checks]


# --- the classic mistake --------------------------------------------------------------------------


def test_five_for_eight_along_a_whole_weld_is_refused() -> None:
    """AWS D1.1 Table 6.1 (6): 3 mm under for 8, over at most 10 % of the length."""
    whole, tenth = weld((5.2, 5.2)), weld((5.2, 5.2), extent=0.1)
    assert judge(whole).disposition == "add weld metal"
    assert not judge(whole).in_doubt
    assert judge(tenth).disposition == "accept"
    assert (required(whole).allowed, required(whole).withheld) == (0.0, 3.0)
    assert (required(tenth).allowed, required(tenth).withheld) == (3.0, 0.0)
    assert (called_size(whole), called_size(tenth)) == (8.0, 5.0)
    assert check(tenth, "leg_base").short
    assert not check(whole, "leg_base").short


@pytest.mark.parametrize(("extent", "size"), [(0.0999, 5.0), (0.1, 5.0), (0.1001, 8.0), (1.0, 8.0)])
def test_the_share_of_the_length_is_a_sharp_line(extent: float, size: float) -> None:
    assert called_size(weld((6.0, 6.0), extent=extent)) == size


def test_nothing_is_allowed_at_a_girder_s_end() -> None:
    made = weld((5.2, 5.2), extent=0.05, conditions={"girder_end": True})
    assert called_size(made) == 8.0


@pytest.mark.parametrize("amount", [0.001, 0.1, 0.25, 0.5, 0.501, 1.0])
def test_a_size_with_little_allowed_over_a_share_is_marked_so(amount: float) -> None:
    """However little it is: a limit for a part of the length must never pass for one of all."""
    made = weld((8.0, 8.0), extent=0.1)
    within = Undersize("leg", Length.plain(amount), OWN, Within(share=0.1))
    shop = replace(made.rule_set, undersize=within)
    tenth, more = replace(made, shop_rules=shop), replace(made, shop_rules=shop, extent=0.11)
    for key in ("leg_base", "leg_upright"):
        found = check(tenth, key)
        assert found.limit == pytest.approx(8.0 - amount)
        assert found.short
        assert check(more, key).limit == 8.0
        assert not check(more, key).short
    # What is allowed along all of it is no short length's.
    along = replace(made, shop_rules=replace(shop, undersize=replace(within, within=None)))
    assert check(along, "leg_base").limit == pytest.approx(8.0 - amount)
    assert not check(along, "leg_base").short


def test_thin_plate_may_be_two_tenths_under_over_a_quarter_and_is_marked_so() -> None:
    """ISO 5817, level C, 1.20, up to 3 mm: 0.2 mm of throat (from memory)."""
    thin = {"base_thickness": 2.0, "upright_thickness": 12.0}
    for extent, limit in ((0.25, 2.8), (0.26, 3.0)):
        made = weld((5.0, 5.0), rules="iso-5817-c", size=3, measure="throat", joint=thin,
                    extent=extent)  # fmt: skip
        found = check(made, "effective_throat")
        assert found.limit == pytest.approx(limit)
        assert found.short == (extent == 0.25)


def test_iso_allows_a_throat_under_over_a_quarter_and_level_b_never() -> None:
    for rules, allowed in (("iso-5817-d", 0.8), ("iso-5817-c", 0.8), ("iso-5817-b", 0.0)):
        made = weld((6.0, 6.0), rules=rules, size=5, measure="throat", extent=0.25)
        assert check(made, "effective_throat").limit == pytest.approx(5.0 - allowed)
        wide = weld((6.0, 6.0), rules=rules, size=5, measure="throat", extent=0.26)
        assert check(wide, "effective_throat").limit == pytest.approx(5.0)


def test_a_throat_s_allowance_on_a_leg_is_that_of_its_triangle() -> None:
    # z 8 is a 5.657; 0.3 + 0.1 a = 0.866 of throat is 1.224 of leg.
    made = weld((7.0, 7.0), rules="iso-5817-c", extent=0.2)
    throat = 8.0 / math.sqrt(2.0)
    assert called_size(made) == pytest.approx(8.0 - (0.3 + 0.1 * throat) * math.sqrt(2.0))


# --- what is added --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("gap", "leg"),
    # check_values, 2.5: 1/4 in leg, G = 1/8 -> 3/8; 1/16 -> 1/4; 3/32 -> 11/32; 3/16 -> 7/16.
    [(1 / 8, 3 / 8), (1 / 16, 1 / 4), (3 / 32, 11 / 32), (3 / 16, 7 / 16)],
)
def test_the_whole_gap_is_added_above_the_free_part(gap: float, leg: float) -> None:
    made = weld((13.0, 13.0), size="1/4 in", joint={"root_opening": gap * 25.4})
    assert called_size(made) == pytest.approx(leg * 25.4)
    assert judge(made).disposition == "accept"


def test_a_gap_beyond_the_rules_is_referred() -> None:
    made = weld((16.0, 16.0), size="1/4 in", joint={"root_opening": 7 / 32 * 25.4})
    call = judge(made)
    assert call.disposition == "refer"
    assert call.undecided == ()
    assert not check(made, "root_opening").passed
    thick = {"root_opening": 7 / 32 * 25.4, "base_thickness": 80, "upright_thickness": 80}
    assert judge(weld((16.0, 16.0), size="1/4 in", joint=thick)).disposition == "accept"


def test_a_callout_below_the_least_size_is_raised_to_it() -> None:
    # 3/16 in called for on 3/4 in plates: 1/4 in is the least (check_values, 2.6).
    plates = {"base_thickness": 19.05, "upright_thickness": 19.05}
    made = weld((5.2, 5.2), size="3/16 in", joint=plates)
    asked = required(made)
    assert (asked.called, asked.minimum) == (pytest.approx(4.7625), pytest.approx(6.35))
    assert judge(made).disposition == "add weld metal"
    assert check(made, "leg_base").source == made.rule_set.minimum_size.source  # type: ignore[union-attr]
    # Where less may be short, it is short of the size that is raised.
    assert required(weld((5.2, 5.2), size="3/16 in", joint=plates, extent=0.1)).size == (
        pytest.approx((1 / 4 - 3 / 32) * 25.4)
    )


def test_without_low_hydrogen_the_thicker_member_decides() -> None:
    plates = {"base_thickness": 25.0, "upright_thickness": 10.0}
    assert required(weld((9, 9), size=3, joint=plates)).nominal == 5.0
    hot = weld((9, 9), size=3, joint=plates, conditions={"low_hydrogen": False})
    assert required(hot).nominal == 8.0


def test_eurocode_raises_a_thin_throat() -> None:
    made = weld((4.0, 4.0), 0.2, rules="en-1993-1-8", size=2.5, measure="throat")
    assert called_size(made) == pytest.approx(3.0 * math.sqrt(2.0))


# --- every other limit, on both sides -------------------------------------------------------------


def two_sides(
    make: object, key: str, at: float, step: float, needs: Disposition, *, least: bool = False
) -> None:
    """The limit holds at `at`, and not a step beyond."""
    assert callable(make)
    beyond = at - step if least else at + step
    assert check(make(at), key).passed, check(make(at), key)
    failed = check(make(beyond), key)
    assert not failed.passed
    assert failed.disposition == needs
    assert (failed.bound == "at_least") == least


def groove(depth: float, **others: object) -> Coupon:
    return weld((9.0, 9.0), toes={"undercut_base": {"depth": depth, "width": 3 * depth}}, **others)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("limit", "others"),
    [
        (1.0, {"rules": STATIC}),
        (1.0, {"rules": CYCLIC}),
        (0.25, {"rules": CYCLIC, "conditions": {"transverse_tension": True}}),
        (2.0, {"rules": STATIC, "extent": 0.16}),
        (1.0, {"rules": STATIC, "extent": 0.17}),
        # The switch: a weld shorter than 300 mm has no such share.
        (1.0, {"rules": STATIC, "extent": 0.16, "conditions": {"weld_length": 299.0}}),
        (2.0, {"rules": STATIC, "extent": 0.16, "conditions": {"weld_length": 300.0}}),
        (1 / 32 * 25.4, {"rules": STATIC, "size": "5/16 in"}),
        (0.5, {"rules": "iso-5817-b"}),
        (0.5, {"rules": "iso-5817-c"}),
        (1.0, {"rules": "iso-5817-d"}),
        (0.3, {"rules": "iso-5817-b", "joint": {"base_thickness": 6.0, "upright_thickness": 3.0}}),
    ],
)
def test_undercut(limit: float, others: dict[str, object]) -> None:
    two_sides(lambda at: groove(at, **others), "undercut_base", limit, 0.01, "add weld metal")


def test_undercut_in_thin_plate_only_over_short_lengths() -> None:
    thin = {"base_thickness": 2.0, "upright_thickness": 12.0}
    for extent, limit in ((0.2, 0.2), (0.5, 0.0)):
        found = check(groove(0.1, rules="iso-5817-c", joint=thin, extent=extent), "undercut_base")
        assert found.limit == pytest.approx(limit)
        assert found.short == (extent == 0.2)


def test_overlap() -> None:
    def lip(length: float) -> Coupon:
        return weld((9.0, 9.0), rules="iso-5817-d", toes={"overlap_upright": length})

    width = 9.0 * math.sqrt(2.0)
    two_sides(lip, "overlap_upright", 0.2 * width, 0.01, "dress back")
    assert judge(weld((9.0, 9.0), toes={"overlap_upright": 0.5})).disposition == "dress back"


@pytest.mark.parametrize(
    ("rules", "limit"),
    [(STATIC, 3.0), ("iso-5817-b", 1 + 0.9 * math.sqrt(2)), ("iso-5817-c", 1 + 1.35 * math.sqrt(2)),
     ("iso-5817-d", 1 + 2.25 * math.sqrt(2))],
)  # fmt: skip
def test_convexity(rules: str, limit: float) -> None:
    def crowned(crown: float) -> Coupon:
        return weld((9.0, 9.0), crown, rules=rules, size=5)

    two_sides(crowned, "convexity", limit, 0.01, "dress back")


def test_toe_angle_at_least() -> None:
    # An arc of sagitta h on chord c meets it at 2 atan(2 h / c).
    def steep(angle: float) -> Coupon:
        turn = math.radians((135.0 - angle) / 2.0)
        return weld((9.0, 9.0), 4.5 * math.sqrt(2.0) * math.tan(turn), rules="iso-5817-b")

    two_sides(steep, "toe_angle_base", 110.0, 0.1, "dress back", least=True)
    assert check(steep(120.0), "toe_angle_upright").unit == "degrees"


def test_asymmetry_and_its_doubt() -> None:
    def lopsided(difference: float) -> Coupon:
        return weld((8.0 + difference, 8.0), rules="iso-5817-b", size=5, measure="throat")

    two_sides(lopsided, "asymmetry", 2.25, 0.01, "dress back")
    found = check(lopsided(2.3), "asymmetry")
    assert found.doubt == pytest.approx(math.sqrt(2.0) * U_LEG)
    assert judge(lopsided(2.25 + 0.9 * math.sqrt(2.0) * U_LEG)).in_doubt
    far = lopsided(2.25 + 1.1 * math.sqrt(2.0) * U_LEG)
    assert not judge(far).in_doubt
    assert judge(far).acceptable == {"dress back"}


@pytest.mark.parametrize(
    ("long", "short", "size", "passed", "told"),
    [
        # 8.2 lies between the 8 and the a 6 (8.49), 7.1 above the a 5 (7.07): 1.42 at most.
        (8.2, 7.1, 5, True, True),
        # 2.49 at most, and 2.25 is allowed.
        (8.2, 6.2, 5, True, False),
        # 8.95 is above the a 6, 6.2 below the 1/4 in: 2.13 at least, and 1.95 is allowed.
        (8.95, 6.2, 3, False, True),
        (8.95, 6.2, 4.5, False, False),
        # Within the doubt, leaves that seat show that it is.
        (8.2, 6.1, 5, True, True),
        # The long leg carries every leaf that would bound the short one.
        (12.0, 6.2, 5, False, False),
    ],
)
def test_leaves_about_both_legs_tell_their_difference_or_don_t(
    long: float, short: float, size: float, passed: bool, told: bool
) -> None:
    for legs in ((long, short), (short, long)):
        found = check(weld(legs, 0.3, rules="iso-5817-b", size=size, measure="throat"), "asymmetry")
        assert (found.passed, found.decided_by_leaf) == (passed, told)


@pytest.mark.parametrize(
    ("legs", "crown", "told"),
    [
        # A flat face stands where the spur says; 6.75 of throat is a leaf of 9.55.
        ((9.0, 9.0), 0.0, True),
        ((11.0, 11.0), 0.0, True),
        # 9.52 and 9.55 lie too near for two leaves, and a leaf of just the limit tells it.
        ((9.52, 9.52), 0.0, True),
        ((8.0, 8.0), 1.5, True),
        # Its throat is 6.61, beside the bisector; on it the spur shows 6.91.
        ((14.0, 7.5), 0.0, False),
    ],
)
def test_the_spur_tells_an_excess_or_flatters_it(
    legs: tuple[float, float], crown: float, told: bool
) -> None:
    made = weld(legs, crown, rules="iso-5817-b", size=5, measure="throat")
    assert check(made, "excess_throat").decided_by_leaf == told


def test_no_spur_tells_an_excess_where_no_throat_edge_seats() -> None:
    closed = weld((11.0, 11.0), 0.0, rules="iso-5817-b", size=5, joint={"angle": 80})
    assert not check(closed, "excess_throat").decided_by_leaf
    assert not check(closed, "asymmetry").decided_by_leaf


def test_excess_is_over_what_is_asked_not_only_called() -> None:
    """Metal that fills an opening, or that a least size asks for, is none too much."""
    open_ = weld((11.0, 11.0), 0.0, rules="as-drawn", size=6, joint={"root_opening": 3})
    assert asked_throat(open_) == pytest.approx(9.0 / math.sqrt(2.0))
    raised = weld((9.0, 9.0), 0.0, size=5, joint={"base_thickness": 25, "upright_thickness": 25})
    assert asked_throat(raised) == pytest.approx(8.0 / math.sqrt(2.0))
    tenth = weld((9.0, 9.0), 0.0, extent=0.1)
    assert asked_throat(tenth) == pytest.approx(8.0 / math.sqrt(2.0))
    assert asked_throat(unequal((6.5, 8.5))) == pytest.approx(4.8)


def test_legs_called_unequal_have_no_asymmetry() -> None:
    made = weld((6.2, 9.2), rules="iso-5817-b", size=6, callout={"upright_size": 9})
    assert "asymmetry" not in keys(made)
    assert "asymmetry" in keys(weld((6.2, 9.2), rules="iso-5817-b", size=6))


def test_excess_throat_and_its_doubt() -> None:
    def thick(excess: float) -> Coupon:
        leg = (5.0 + excess) * math.sqrt(2.0)
        return weld((leg, leg), 0.0, rules="iso-5817-b", size=5, measure="throat")

    two_sides(thick, "excess_throat", 1.75, 0.01, "dress back")
    found = check(thick(1.8), "excess_throat")
    assert found.doubt == U_SPUR
    # The margin is in mm of size, as the leaf's marks are.
    assert found.margin == pytest.approx(-0.05 * math.sqrt(2.0))
    assert check(thick(1.0), "excess_throat").measured == pytest.approx(1.0)
    assert judge(thick(2.2)).disposition == "dress back"


def test_the_size_called_for_along_an_edge() -> None:
    def lap(size: float, **callout: object) -> Coupon:
        edge = {"upright_length": 10.0, "upright_thickness": 40.0}
        return weld(
            (8.6, 8.6), size=size, callout=callout, joint=edge, conditions={"edge": "upright"}
        )

    two_sides(lap, "maximum_size", 8.0, 0.1, "refer")
    assert judge(lap(8.5)).disposition == "refer"
    assert "maximum_size" not in keys(lap(8.5, built_out=True))
    assert "maximum_size" not in keys(weld((9.0, 9.0)))


def test_an_edge_is_as_thick_as_its_face_is_long() -> None:
    edge = {"upright_length": 10.0, "upright_thickness": 40.0, "base_thickness": 30.0}
    made = weld((8.0, 8.0), size=3, joint=edge, conditions={"edge": "upright"})
    # The thinner member is the edge's plate, 10 mm: the least size is 5, not 8.
    assert required(made).nominal == 5.0


@pytest.mark.parametrize(("rules", "limit"), [(STATIC, 5.0), ("iso-5817-c", 0.5 + 0.2 * 5.0)])
def test_root_opening(rules: str, limit: float) -> None:
    def gaping(opening: float) -> Coupon:
        made = {"root_opening": opening}
        return weld((16.0, 16.0), rules=rules, size=5, measure="throat", joint=made)

    two_sides(gaping, "root_opening", limit, 0.01, "refer")


def test_a_joint_too_open_for_eurocode_is_referred() -> None:
    for angle, passed in ((120.0, True), (121.0, False)):
        made = weld((9.0, 9.0), rules="en-1993-1-8", size=6, joint={"angle": angle})
        found = check(made, "joint_angle")
        assert (found.passed, found.unit) == (passed, "degrees")
    assert judge(made).disposition == "refer"


# --- unequal legs, and a throat of any triangle ---------------------------------------------------


def unequal(legs: tuple[float, float], crown: float = 0.3, **others: object) -> Coupon:
    return weld(legs, crown, rules="as-drawn", size=6, callout={"upright_size": 8}, **others)  # type: ignore[arg-type]


def test_each_leg_has_its_own_limit_and_leaf() -> None:
    made = unequal((6.3, 8.3))
    assert judge(made).disposition == "accept"
    assert (called_size(made, "base"), called_size(made, "upright")) == (6.0, 8.0)
    assert called_size(made) == 6.0
    assert judge(unequal((8.3, 6.3))).disposition == "add weld metal"
    right = right_handling(made)
    assert right.at == {("leg", "base"): ("6 mm",), ("leg", "upright"): ("8 mm",)}
    assert right.leaves == {"leg": ("6 mm", "8 mm")}
    assert limit_leaves(made, "leg", "metric", "upright") == ("8 mm",)


def test_a_hollow_face_between_unequal_legs_is_read_where_its_flat_face_would_be() -> None:
    # The line from (6, 0) to (0, 8) crosses the bisector at 24/7: the spur of a 48/7 leaf.
    made = unequal((9.0, 9.0), -0.4)
    assert limit_for(made, "throat") == pytest.approx(48 / 7)
    found = check(made, "theoretical_throat")
    assert found.limit == pytest.approx(4.8)
    assert found.doubt == U_SPUR
    assert found.passed
    assert not check(unequal((7.0, 8.5), -0.9), "theoretical_throat").passed


def test_eurocode_takes_a_triangle_of_unequal_legs() -> None:
    """5 x 10 has a throat of 4.472; the isosceles one in it 3.536 (check_values, section 3)."""
    made = weld((5.0, 10.0), 0.0, rules="en-1993-1-8", size=4, measure="throat")
    found = check(made, "theoretical_throat")
    assert found.measured == pytest.approx(4.472, abs=5e-4)
    assert found.passed
    other = weld((5.0, 10.0), 0.0, rules="as-drawn", size=4, measure="throat")
    assert not check(other, "effective_throat").passed
    # Each leg's doubt counts by as much as it moves the throat: (other leg / hypotenuse)^3.
    chord = math.hypot(5.0, 10.0)
    shares = (math.sqrt(2.0) * (10 / chord) ** 3, math.sqrt(2.0) * (5 / chord) ** 3)
    assert found.doubt == pytest.approx(U_LEG * math.hypot(*shares), rel=1e-3)


def test_leaves_about_both_legs_settle_such_a_throat_or_don_t() -> None:
    # 6.1 and 8.2 lie above the 6 and the 8, whose throat is 4.8.
    sure = weld((6.1, 8.2), 0.0, rules="en-1993-1-8", size=4.6, measure="throat")
    assert check(sure, "theoretical_throat").decided_by_leaf
    assert judge(sure).disposition == "accept"
    # 5.04 is enough for 4.92, but all that leaves show of it is 4.8.
    between = weld((6.3, 8.4), 0.0, rules="en-1993-1-8", size=4.92, measure="throat")
    assert check(between, "theoretical_throat").passed
    assert not check(between, "theoretical_throat").decided_by_leaf
    assert judge(between).disposition == "refer"


def test_at_equal_legs_both_throats_are_judged_alike() -> None:
    for legs, right in ((7.6, "accept"), (6.6, "add weld metal")):
        for rules in ("as-drawn", "en-1993-1-8"):
            made = weld((legs, legs), 0.3, rules=rules, size=5, measure="throat")
            assert judge(made).disposition == right


# --- what is said ---------------------------------------------------------------------------------


def test_every_check_names_its_source() -> None:
    for rules in (STATIC, CYCLIC, "iso-5817-c", "en-1993-1-8"):
        for found in judge(weld((8.2, 8.2), rules=rules)).checks:
            assert found.source.document
            assert found.source.sureness in ("seen", "second-hand", "from memory")


def test_what_is_required_is_the_callout_where_nothing_changes_it() -> None:
    plain = Required(6.0)
    assert required(weld((6.0, 6.0), rules="as-drawn", size=6)) == plain
    assert (plain.nominal, plain.size, plain.withheld) == (6.0, 6.0, 0.0)


def test_the_triangle_of_unequal_legs_in_a_skewed_joint() -> None:
    """Area two ways: half of base x upright x sin(angle), and half of chord x height."""
    made = unequal((6.3, 8.3), joint={"angle": 110})
    angle = math.radians(110)
    chord = math.dist((6.0, 0.0), (8.0 * math.cos(angle), 8.0 * math.sin(angle)))
    height = 6.0 * 8.0 * math.sin(angle) / chord
    assert throat_of(made, 6.0, 8.0) == pytest.approx(height)
    assert asked_throat(made) == pytest.approx(height)
    assert made.callout.throat(made.section.joint) == pytest.approx(height)
    assert throat_of(made, 6.0, 6.0) == pytest.approx(6.0 * math.cos(angle / 2.0))


def test_a_leg_that_no_leaf_bounds_settles_no_throat() -> None:
    # The 8 carries every leaf below the 5.1 (1.5 S is 7.5); the a 4 above it shows daylight.
    made = weld((5.1, 8.0), 0.0, rules="en-1993-1-8", size=4, measure="throat")
    low, high = leg_bounds(made.section, "base", 0.1)
    assert (low, high) == (None, pytest.approx(4.0 * math.sqrt(2.0)))
    assert not check(made, "theoretical_throat").decided_by_leaf
