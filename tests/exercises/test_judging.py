"""The right call: sizes in mm of size, doubt, precedence, and what a leaf can't settle."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.checks import Check
from exercises.coupon import Coupon, Disposition
from exercises.doubt import doubt
from exercises.judging import judge, right_handling
from exercises.required import called_size, limit_for
from tests.exercises.trays import coupon

U_LEG, U_THROAT = doubt("leg"), doubt("throat")
ROOT_TWO = math.sqrt(2.0)


def weld(
    leg_base: float,
    leg_upright: float,
    crown: float = 0.9,
    size: float | str = 8,
    measure: str = "leg",
    joint: dict[str, float] | None = None,
    spatter: tuple[dict[str, object], ...] = (),
    toes: dict[str, object] | None = None,
) -> Coupon:
    return coupon(
        bead={"leg_base": leg_base, "leg_upright": leg_upright, "crown": crown, **(toes or {})},
        callout={"size": size, "measure": measure},
        joint=joint or {},
        spatter=list(spatter),
    )


def check(made: Coupon, key: str) -> Check:
    return next(each for each in judge(made).checks if each.key == key)


@pytest.mark.parametrize(
    ("made", "right"),
    [
        (weld(8.5, 8.4), "accept"),
        (weld(8.4, 6.7), "add weld metal"),
        (weld(6.7, 8.4), "add weld metal"),
        (weld(11.0, 10.5), "accept"),
        (weld(8.4, 8.4, crown=0.0), "accept"),
        (weld(8.4, 7.4, crown=0.0), "add weld metal"),
        # Hollow: legs 9.2 and 9.1 look good, the throat is short of 8 / root two.
        (weld(9.2, 9.1, crown=-1.3), "add weld metal"),
        (weld(10.2, 10.1, crown=-1.0), "accept"),
        # Hollow and wide, but one leg short: no throat mends that.
        (weld(11.0, 7.5, crown=-0.3), "add weld metal"),
        (weld(8.6, 8.5, size="5/16 in"), "accept"),
        (weld(8.6, 7.6, size="5/16 in"), "add weld metal"),
        (weld(7.6, 7.5, size=5, measure="throat"), "accept"),
        # The crown stands 6.8 mm from the root here, but a crown is no throat.
        (weld(6.8, 6.8, crown=2.0, size=5, measure="throat"), "add weld metal"),
        (weld(7.1, 7.0, crown=-1.2, size=4, measure="throat"), "add weld metal"),
        (weld(7.1, 7.0, crown=-0.5, size=4, measure="throat"), "accept"),
    ],
)
def test_sizes(made: Coupon, right: Disposition) -> None:
    call = judge(made)
    assert call.disposition == right
    assert not call.in_doubt
    assert call.acceptable == {right}
    assert call.undecided == ()


UNDERCUT: dict[str, object] = {"undercut_upright": {"depth": 0.5, "width": 1.5}}
LIP: dict[str, object] = {"overlap_base": 1.5}


@pytest.mark.parametrize(
    ("made", "right"),
    [
        (weld(8.5, 8.4, toes=UNDERCUT), "add weld metal"),
        (weld(8.5, 8.4, toes=LIP), "dress back"),
        (weld(8.5, 6.0, toes=LIP), "dress back"),
        (weld(8.5, 8.4, toes={**LIP, **UNDERCUT}), "dress back"),
        (weld(8.5, 8.4, joint={"angle": 80}), "refer"),
        (weld(8.5, 8.4, joint={"angle": 80}, toes=LIP), "refer"),
        (weld(8.5, 6.0, joint={"angle": 80}), "refer"),
    ],
)
def test_precedence(made: Coupon, right: Disposition) -> None:
    assert judge(made).disposition == right
    assert judge(made).acceptable == {right}


def test_spatter_changes_no_verdict() -> None:
    drops = ({"on": "base", "at": 13, "height": 0.8}, {"on": "upright", "at": 13, "height": 1.2})
    assert judge(weld(8.5, 8.4, spatter=drops)) == judge(weld(8.5, 8.4))


# --- what is compared ---------------------------------------------------------------------------


def test_a_check_says_what_it_compared() -> None:
    short = check(weld(8.4, 6.7), "leg_upright")
    assert (short.measured, short.limit, short.passed) == (6.7, 8.0, False)
    assert short.margin == pytest.approx(-1.3)
    assert short.doubt == U_LEG
    assert short.decided_by_leaf
    assert short.disposition == "add weld metal"


def test_throats_are_compared_in_mm_of_size() -> None:
    throat = check(weld(7.1, 7.1, crown=-1.2, size=4, measure="throat"), "effective_throat")
    assert throat.measured == pytest.approx(7.1 / ROOT_TWO - 1.2)
    assert throat.limit == pytest.approx(4.0)
    assert throat.margin == pytest.approx((throat.measured - 4.0) * ROOT_TWO)
    assert throat.doubt == U_THROAT


def test_a_convex_throat_has_the_doubt_of_the_leg_edge() -> None:
    made = weld(7.6, 7.5, size=5, measure="throat")
    throat = check(made, "effective_throat")
    assert throat.measured == pytest.approx(7.5 / ROOT_TWO)
    assert throat.margin == pytest.approx(7.5 - 5.0 * ROOT_TWO)
    assert throat.doubt == U_LEG


@given(st.floats(3.0, 15.0))
def test_a_throat_callout_asks_for_its_leg(throat: float) -> None:
    # a = z / root two, universal for a flat, equal-legged T (check_values, section 3).
    made = weld(30.0, 30.0, size=throat, measure="throat")
    assert called_size(made) == pytest.approx(throat * ROOT_TWO)
    assert limit_for(made, "leg") == limit_for(made, "throat") == called_size(made)


def test_an_opening_is_added_to_the_size_called_for() -> None:
    tight, open_ = weld(7.4, 7.3, size=6), weld(7.4, 7.3, size=6, joint={"root_opening": 2})
    assert (called_size(tight), called_size(open_)) == (6.0, 8.0)
    assert (judge(tight).disposition, judge(open_).disposition) == ("accept", "add weld metal")
    assert check(open_, "leg_base").margin == pytest.approx(-0.6)
    throat = weld(7.4, 7.3, size=4, measure="throat", joint={"root_opening": 1})
    assert called_size(throat) == pytest.approx(4.0 * ROOT_TWO + 1.0)


def test_in_an_open_joint_the_leaf_s_limit_is_less_than_the_leg() -> None:
    made = weld(9.0, 8.8, joint={"angle": 100})
    assert called_size(made) == 8.0
    assert limit_for(made, "leg") == pytest.approx(8.0 * math.sin(math.radians(100)))
    assert judge(made).disposition == "accept"


# --- doubt --------------------------------------------------------------------------------------


@pytest.mark.parametrize("off", [-0.9, -0.5, 0.0, 0.5, 0.9])
def test_within_u_either_verdict_and_refer_are_right(off: float) -> None:
    call = judge(weld(8.0 + off * U_LEG, 9.0))
    assert call.in_doubt
    assert call.acceptable == {"accept", "add weld metal", "refer"}
    assert call.disposition == ("accept" if off >= 0.0 else "add weld metal")
    assert not call.rejected


@pytest.mark.parametrize(("off", "right"), [(-1.02, "add weld metal"), (1.02, "accept")])
def test_beyond_u_there_is_one_verdict(off: float, right: Disposition) -> None:
    call = judge(weld(8.0 + off * U_LEG, 9.0))
    assert not call.in_doubt
    assert call.acceptable == {right}


def test_at_its_size_a_weld_passes() -> None:
    assert check(weld(8.0, 8.0), "leg_base").passed
    made = weld(5.0 * ROOT_TWO, 5.0 * ROOT_TWO, crown=0.0, size=5, measure="throat")
    assert check(made, "effective_throat").passed


@pytest.mark.parametrize(
    ("made", "right"),
    [
        # Another leg is clearly short: the near one can change nothing.
        (weld(8.05, 6.0), "add weld metal"),
        # An undercut asks for weld metal whatever the size is.
        (weld(8.05, 8.05, toes=UNDERCUT), "add weld metal"),
        (weld(8.05, 8.05, toes=LIP), "dress back"),
        (weld(8.05, 8.05, joint={"angle": 80}), "refer"),
    ],
)
def test_doubt_that_could_change_nothing_is_none(made: Coupon, right: Disposition) -> None:
    call = judge(made)
    assert not call.in_doubt
    assert call.acceptable == {right}


def test_a_hollow_weld_has_the_wider_doubt_of_the_spur() -> None:
    # 0.15 mm of size under: beyond the leg edge's doubt, within the spur's.
    crown = -(9.0 - 7.85) / ROOT_TWO
    assert judge(weld(9.0, 9.0, crown=crown)).in_doubt
    assert not judge(weld(9.0, 7.85, crown=0.5)).in_doubt


def test_a_keener_eye_narrows_the_doubt_and_a_dull_one_doesn_t_widen_it() -> None:
    def in_doubt(eye_limit: float, leg: float) -> bool:
        made = coupon(bead={"leg_base": leg, "leg_upright": 9, "crown": 1}, eye_limit=eye_limit)
        return judge(made).in_doubt

    assert in_doubt(0.1, 8.1)
    assert not in_doubt(0.02, 8.1)
    assert not in_doubt(0.5, 8.15)


@given(st.floats(6.5, 9.5), st.floats(6.5, 9.5))
def test_doubt_is_exactly_what_checks_near_their_limits_could_change(
    leg_base: float, leg_upright: float
) -> None:
    """By hand for the simplest rule: two legs, each below, near or above."""
    call = judge(weld(leg_base, leg_upright, crown=0.6))
    margins = [leg_base - 8.0, leg_upright - 8.0]
    fails = any(margin < -U_LEG for margin in margins)
    near = any(abs(margin) <= U_LEG for margin in margins)
    assert call.in_doubt == (near and not fails)
    if fails:
        assert call.acceptable == {"add weld metal"}


# --- what no leaf can settle --------------------------------------------------------------------


def test_below_ninety_degrees_nothing_seats() -> None:
    call = judge(weld(8.5, 8.4, joint={"angle": 80}))
    assert call.undecided == ("leg_base", "leg_upright")
    assert not call.rejected


def test_a_lean_that_no_eye_sees_is_none() -> None:
    assert judge(weld(8.5, 8.4, joint={"angle": 89.8})).disposition == "accept"


def test_a_hollow_face_in_an_open_joint_has_no_throat_edge() -> None:
    call = judge(weld(10.2, 10.1, crown=-0.9, joint={"angle": 100}))
    assert call.disposition == "refer"
    assert call.undecided == ("effective_size",)


def test_but_a_leg_that_the_leaf_shows_short_settles_it() -> None:
    call = judge(weld(10.2, 6.9, crown=-0.3, joint={"angle": 100}))
    assert call.disposition == "add weld metal"
    assert call.undecided == ()


def test_a_long_leg_carries_the_leaf_that_would_answer_for_the_other() -> None:
    call = judge(weld(13.2, 8.35, crown=0.4))
    assert (call.disposition, call.undecided) == ("refer", ("leg_upright",))
    # The 8 is carried as long as its tip has no metal to stand on further out; the 10 clears.
    assert judge(weld(13.2, 10.2, crown=0.4)).disposition == "accept"


def test_a_size_between_two_leaves_of_every_rack_is_not_settled() -> None:
    # Between 17.5 and 18.9 mm there is no leaf: 19.05 mm (3/4 in) shows daylight, 16.97 (a 12) not.
    call = judge(weld(18.7, 18.6, size="17.5 mm"))
    assert call.disposition == "refer"
    assert judge(weld(19.2, 19.2, size="17.5 mm")).disposition == "accept"


def test_a_lopsided_hollow_that_flatters_the_spur_is_not_settled() -> None:
    """Spur and both legs say 6 mm; a dip beside the bisector makes the triangle smaller."""
    trace = [[7.5, 0], [5.0, 0.7], [3.1, 3.1], [0.8, 6.2], [0, 7.5]]
    call = judge(coupon(bead={"trace": trace}, callout={"size": 6}))
    assert call.face == "concave"
    assert call.measures.effective_size == pytest.approx(5.7)
    assert call.disposition == "refer"
    assert call.undecided == ("effective_size",)
    assert call.rejected
    # Were the dip on the bisector, the spur would show it.
    level = [[7.5, 0], [5.0, 1.4], [2.85, 2.85], [0.8, 6.2], [0, 7.5]]
    shown = judge(coupon(bead={"trace": level}, callout={"size": 6}))
    assert shown.measures.effective_size == pytest.approx(5.7)
    assert shown.disposition == "add weld metal"


def test_a_crown_that_overhangs_its_toe_makes_a_short_leg_look_long() -> None:
    short = judge(weld(7.7, 7.7, crown=4.0))
    assert (short.disposition, short.undecided) == ("refer", ("leg_base", "leg_upright"))
    assert short.rejected
    assert judge(weld(7.7, 7.7, crown=1.0)).disposition == "add weld metal"
    assert judge(weld(8.5, 8.5, crown=4.0)).disposition == "accept"


# --- how a leaf is held -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("made", "leaves", "seats"),
    [
        (weld(8.5, 8.4), {"leg": ("8 mm",)}, {("leg", "base"), ("leg", "upright")}),
        (weld(8.5, 8.4, size="5/16 in"), {"leg": ("5/16 in",)},
         {("leg", "base"), ("leg", "upright")}),
        (weld(8.5, 8.4, size=9), {"leg": ("8 mm", "10 mm")}, {("leg", "base"), ("leg", "upright")}),
        (weld(7.6, 7.5, size=5, measure="throat"), {"leg": ("a 5 mm",)},
         {("leg", "base"), ("leg", "upright")}),
        (weld(7.1, 7.0, crown=-1.2, size=4, measure="throat"), {"throat": ("a 4 mm",)},
         {("throat", "base")}),
        (weld(9.2, 9.1, crown=-1.3), {"leg": ("8 mm",), "throat": ("8 mm",)},
         {("leg", "base"), ("leg", "upright"), ("throat", "base")}),
        (weld(7.4, 7.3, size=6, joint={"root_opening": 2}), {"leg": ("8 mm",)},
         {("leg", "base"), ("leg", "upright")}),
        # 8 mm x sin 100 is 7.88 mm: within the doubt the callout's own leaf is the limit's. At
        # 10 mm it isn't (9.85 mm), nor is the 8 mm leaf that of 5/16 in (7.94 mm).
        (weld(9.0, 8.8, joint={"angle": 100}), {"leg": ("8 mm",)},
         {("leg", "base"), ("leg", "upright")}),
        (weld(11.0, 10.8, size=10, joint={"angle": 100}), {"leg": ("8 mm", "10 mm")},
         {("leg", "base"), ("leg", "upright")}),
    ],
)  # fmt: skip
def test_right_handling(
    made: Coupon, leaves: dict[str, tuple[str, ...]], seats: set[tuple[str, str]]
) -> None:
    right = right_handling(made)
    assert right.leaves == leaves
    assert set(right.seats) == seats
