"""Trays out of dice are sound, distinct, as hard as asked and evenly answered."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import combinations

import pytest

from exercises.judging import judge
from exercises.maker import MOST_CONSTANT, Recipe, RecipeError, make_tray
from exercises.maker.words import title
from exercises.tray import Tray, load_tray, read_tray, save_tray

USUAL = Recipe(20, seed=11)


@pytest.fixture(scope="module")
def usual() -> Tray:
    return make_tray(USUAL)


def test_no_answer_is_right_too_often(usual: Tray) -> None:
    right = Counter(answer for c in usual.coupons for answer in judge(c).acceptable)
    assert sum(right.values()) == 20
    assert max(right.values()) <= MOST_CONSTANT * 20


def test_none_is_in_doubt_and_all_are_as_hard_as_asked(usual: Tray) -> None:
    for coupon in usual.coupons:
        judgement = judge(coupon)
        assert not judgement.in_doubt
        away = [abs(c.margin) / c.doubt for c in judgement.checks if c.doubt > 0.0]
        assert USUAL.nearest <= min(away) <= USUAL.farthest + 0.5


def test_all_are_different(usual: Tray) -> None:
    beads = [coupon.section.bead for coupon in usual.coupons]
    joints = [(coupon.section.joint, coupon.callout.size) for coupon in usual.coupons]
    for (one, here), (two, there) in combinations(zip(beads, joints, strict=True), 2):
        apart = max(
            abs(one.leg_base - two.leg_base),
            abs(one.leg_upright - two.leg_upright),
            abs(one.crown - two.crown),
        )
        assert (
            here != there or apart > 0.1 or replace(one, leg_base=8.0) != replace(two, leg_base=8.0)
        )
    assert len({coupon.digest for coupon in usual.coupons}) == 20


def test_all_faces_come(usual: Tray) -> None:
    assert {judge(coupon).face for coupon in usual.coupons} == {"convex", "flat", "concave"}


def test_the_tray_survives_its_file(usual: Tray, tmp_path_factory: pytest.TempPathFactory) -> None:
    file = tmp_path_factory.mktemp("made") / "made.tray.json"
    save_tray(file, usual)
    assert load_tray(file) == usual


def test_a_title_says_nothing_of_the_answer() -> None:
    titles = [str(title(number)) for number in range(200)]
    assert len(set(titles)) == 200


def test_the_seed_decides() -> None:
    recipe = Recipe(4, seed=5, traps=("overlap", "out of square"))
    assert make_tray(recipe) == make_tray(recipe)
    other = make_tray(replace(recipe, seed=6))
    assert [c.section for c in other.coupons] != [c.section for c in make_tray(recipe).coupons]


def test_what_is_asked_to_be_in_doubt_is() -> None:
    recipe = Recipe(20, seed=3, in_doubt=0.1, faces=("convex",))
    judgements = [judge(coupon) for coupon in make_tray(recipe).coupons]
    assert sum(judgement.in_doubt for judgement in judgements) == 2
    right = Counter(answer for judgement in judgements for answer in judgement.acceptable)
    assert max(right.values()) <= MOST_CONSTANT * 20


@pytest.mark.parametrize("rules", ["aws-d1.1-static", "iso-5817-c", "en-1993-1-8"])
def test_other_rules_set_other_limits(rules: str) -> None:
    recipe = Recipe(6, seed=2, rules=rules, measure="throat" if rules[0] == "e" else "leg")
    tray = make_tray(recipe)
    assert {coupon.rules for coupon in tray.coupons} == {rules}
    assert {judge(coupon).disposition for coupon in tray.coupons} >= {"accept", "add weld metal"}


@pytest.mark.parametrize(
    ("recipe", "places"),
    [
        (Recipe(0), ["/count"]),
        (Recipe(10, rules="nobody's"), ["/rules"]),
        (Recipe(10, faces=(), sizes=(12.0, 5.0)), ["/faces", "/sizes"]),
        (Recipe(10, nearest=0.9), ["/nearest"]),
        (Recipe(10, nearest=3.0, farthest=3.4), ["/farthest"]),
        (Recipe(10, in_doubt=0.5), ["/in_doubt"]),
        (Recipe(10, traps=()), ["/count"]),
        (Recipe(20, traps=("overlap",), in_doubt=0.3), ["/count"]),
    ],
)
def test_a_recipe_that_cannot_be_says_why(recipe: Recipe, places: list[str]) -> None:
    assert [fault.at for fault in recipe.faults()] == places
    with pytest.raises(RecipeError) as caught:
        make_tray(recipe)
    assert list(caught.value.faults) == recipe.faults()
    assert all(fault.right for fault in caught.value.faults)


def test_a_lone_coupon_needs_no_balance() -> None:
    (coupon,) = make_tray(Recipe(1, seed=9)).coupons
    assert read_tray({**make_tray(Recipe(1, seed=9)).as_document()}).coupons == (coupon,)
