"""The second shipped tray: the same welds under other rules, each decided by what it teaches."""

from __future__ import annotations

import pytest

from exercises.judging import judge, right_handling
from exercises.tray import load_tray
from trainer.assets import asset

TRAY = load_tray(asset("trays", "kestrel-gantry.tray.json"))

RIGHT = {
    "kg-01": ("add weld metal", {"leg_base", "leg_upright"}),
    "kg-02": ("accept", set()),
    "kg-03": ("add weld metal", {"leg_base", "leg_upright"}),
    "kg-04": ("add weld metal", {"leg_base", "leg_upright"}),
    "kg-05": ("add weld metal", {"leg_base", "leg_upright"}),
    "kg-06": ("add weld metal", {"undercut_upright"}),
    "kg-07": ("accept", set()),
    "kg-08": ("refer", {"maximum_size"}),
    "kg-09": ("accept", set()),
    "kg-10": ("accept", set()),
    "kg-11": ("dress back", {"convexity", "excess_throat", "toe_angle_base", "toe_angle_upright"}),
    "kg-12": ("accept", set()),
    "kg-13": ("dress back", {"asymmetry"}),
    "kg-14": ("refer", {"root_opening"}),
}
"""The right call, and the checks that fail."""


@pytest.mark.parametrize("coupon", TRAY.coupons, ids=lambda coupon: coupon.id)
def test_each_coupon_is_decided_by_what_it_teaches(coupon: object) -> None:
    made = TRAY.coupon(coupon.id)  # type: ignore[attr-defined]
    call = judge(made)
    right, failing = RIGHT[made.id]
    assert call.disposition == right
    assert {check.key for check in call.checks if not check.passed} == failing
    assert not call.in_doubt
    # The long edge of a leaf begins beyond a 10 mm edge: on kg-08 it has nothing to lie on.
    assert call.undecided == (("leg_base",) if made.id == "kg-08" else ())
    # Every seat has a leaf that answers.
    assert all(marks for marks in right_handling(made).at.values())


def test_the_tray_holds_those_coupons_and_says_all_in_both_languages() -> None:
    assert [coupon.id for coupon in TRAY.coupons] == list(RIGHT)
    for coupon in TRAY.coupons:
        for text in (coupon.title, coupon.teaches, *coupon.hints):
            assert text.in_language("en") != text.in_language("es")


def test_one_section_has_three_calls() -> None:
    """The same bead: short along the whole, allowed over a short stretch, refused at the end."""
    first, second, third = TRAY.coupons[:3]
    assert first.section == second.section == third.section
    assert {coupon.callout for coupon in (first, second, third)} == {first.callout}


def test_no_title_gives_its_call_away() -> None:
    for coupon in TRAY.coupons:
        words = f"{coupon.title.in_language('en')} {coupon.title.in_language('es')}".lower()
        assert not [word for word in ("accept", "short leg", "undersize", "refer") if word in words]
