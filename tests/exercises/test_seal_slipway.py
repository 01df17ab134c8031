"""The shipped tray of leaves that somebody else has placed: what is wrong with each.

Which answers are right is stated here by hand, from what the coupon's placement is there to show.
"""

from __future__ import annotations

import pytest

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.grading import grade
from exercises.judging import judge
from exercises.placed import PLACEMENT_FAULTS
from exercises.placement_faults import placed_leaf, true_faults
from exercises.tray import load_tray
from geometry.reading import read
from trainer.assets import asset

TRAY = load_tray(asset("trays", "seal-slipway.tray.json"))
COUPONS: dict[str, Coupon] = {coupon.id: coupon for coupon in TRAY.coupons}

# Coupon: what is wrong with the leaf, and what it shows as it lies.
TRUE: dict[str, tuple[tuple[str, ...], str]] = {
    "sl-01": (("one leg only",), "held off"),
    "sl-02": (("wrong leaf",), "held off"),
    "sl-03": (("wrong edge",), "held off"),
    "sl-04": (("tilted",), "not seated"),
    "sl-05": (("tilted", "on spatter"), "not seated"),
    "sl-06": (("wrong member",), "held off"),
    # Short by 0.64 and 0.74 mm: that a leaf shows light is no fault of how it is held.
    "sl-07": (("nothing",), "daylight"),
    "sl-08": (("wrong edge", "one leg only"), "held off"),
}


def test_the_table_is_of_this_tray() -> None:
    assert list(COUPONS) == list(TRUE)
    assert {coupon.task for coupon in TRAY.coupons} == {"find the fault"}


@pytest.mark.parametrize("name", TRUE)
def test_what_is_wrong_and_what_the_leaf_shows(name: str) -> None:
    coupon = COUPONS[name]
    assert coupon.placed is not None
    faults, state = TRUE[name]
    assert true_faults(coupon) == faults
    shown = read(coupon.section, placed_leaf(coupon), coupon.placed.pose, coupon.eye_limit)
    assert shown.state == state


def test_every_answer_is_right_somewhere_and_none_gets_far() -> None:
    right = [fault for faults, _ in TRUE.values() for fault in faults]
    assert set(right) == set(PLACEMENT_FAULTS)
    assert max(right.count(fault) for fault in PLACEMENT_FAULTS) <= 2


@pytest.mark.parametrize("name", TRUE)
def test_a_right_answer_is_a_full_grade(name: str) -> None:
    for fault in true_faults(COUPONS[name]):
        given = grade(COUPONS[name], Attempt(name, fault=fault, hints=0))
        assert (given.score, given.reasons) == (1.0, ())


@pytest.mark.parametrize("name", TRUE)
def test_sizes_lie_well_off_their_limits(name: str) -> None:
    call = judge(COUPONS[name])
    assert not call.in_doubt
    assert not call.undecided
    for check in call.checks:
        if check.doubt > 0.0:
            assert abs(check.margin) >= 2.0 * check.doubt, check


GIVEN_AWAY = (
    "edge", "leaf", "tilt", "spatter", "leg", "member", "wrong",
    "canto", "hoja", "inclin", "salpic", "cateto", "pieza",
)  # fmt: skip


@pytest.mark.parametrize("name", TRUE)
def test_words_are_in_both_languages_and_titles_give_nothing_away(name: str) -> None:
    coupon = COUPONS[name]
    assert len(coupon.hints) == 2
    for text in (coupon.title, coupon.teaches, *coupon.hints):
        assert text.in_language("en") != text.in_language("es")
    for language in ("en", "es"):
        title = coupon.title.in_language(language).lower()
        assert not [word for word in GIVEN_AWAY if word in title]
        assert 0 < len(coupon.teaches.in_language(language)) <= 110
