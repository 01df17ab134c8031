"""A drill from first coupon to last, by learners that are simulated on real coupons."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from exercises.coupon import Disposition
from exercises.drill import (
    BEFORE_FEEDBACK,
    CLEAN,
    MOST,
    Drill,
    begin,
    ended,
    go_on,
    next_coupon,
)
from exercises.judging import judge
from exercises.learner.line import called_short
from exercises.learner.outcome import outcome_of, size_distance
from exercises.maker.recipe import Recipe, RecipeError
from exercises.maker.single import NEAR, coupon_at


def run(bias: float, spread: float, seed: int, most: int = MOST, **recipe: object) -> Drill:
    rng = random.Random(seed)
    drill = begin(Recipe(1, **recipe), seed)  # type: ignore[arg-type]
    while True:
        assert drill.coupon is not None
        distance = size_distance(judge(drill.coupon))
        assert distance is not None
        short = rng.random() < float(called_short(distance, bias, spread, 0.0))
        call: Disposition = "add weld metal" if short else "accept"
        drill = go_on(drill, call)
        if ended(drill) is not None or len(drill.outcomes) == most:
            return drill
        drill = next_coupon(drill)


@pytest.mark.parametrize("rules", ["as-drawn", "aws-d1.1-static", "iso-5817-c"])
@pytest.mark.parametrize("distance", [-0.9, -0.35, -0.1, 0.0, 0.08, 0.3, 0.9])
def test_a_coupon_lies_where_it_is_asked_to(distance: float, rules: str) -> None:
    for seed in range(4):
        coupon = coupon_at(distance, random.Random(seed), Recipe(1, rules=rules), seed)
        call = judge(coupon)
        assert size_distance(call) == pytest.approx(distance, abs=NEAR + 1e-9)
        if not call.in_doubt:
            assert call.disposition == ("add weld metal" if distance < 0.0 else "accept")
        assert coupon.teaches.in_language("es")


@pytest.mark.parametrize(("unit", "measure"), [("in", "leg"), ("mm", "throat")])
def test_in_inches_and_by_throat_too(unit: str, measure: str) -> None:
    recipe = Recipe(1, unit=unit, measure=measure)  # type: ignore[arg-type]
    coupon = coupon_at(0.25, random.Random(3), recipe, 0)
    assert size_distance(judge(coupon)) == pytest.approx(0.25, abs=NEAR + 1e-9)


def test_what_cannot_be_made_is_told() -> None:
    with pytest.raises(RecipeError) as caught:
        coupon_at(-80.0, random.Random(1), Recipe(1), 0)
    assert caught.value.faults[0].code == "recipe-unmet"


def test_a_drill_ends_when_the_learner_is_known() -> None:
    drill = run(0.15, 0.15, 4)
    assert ended(drill) == "sharp"
    assert CLEAN <= len(drill.outcomes) < MOST
    known = drill.estimate
    assert known.bias.low <= 0.15 <= known.bias.high
    assert known.spread.low <= 0.15 <= known.spread.high
    right, counted = drill.scored
    doubtful = sum(outcome.in_doubt for outcome in drill.outcomes)
    assert counted == len(drill.outcomes) - doubtful
    assert doubtful > 0
    assert right <= counted


def test_the_first_calls_of_a_day_are_before_feedback() -> None:
    drill = begin(Recipe(1), 1, today=BEFORE_FEEDBACK - 2)
    seen = []
    for _ in range(4):
        seen.append(drill.before_feedback)
        drill = next_coupon(go_on(drill, "accept"))
    assert seen == [True, True, False, False]


def test_clean_sections_come_first_and_dirty_ones_after() -> None:
    drill = run(0.0, 0.3, 7, most=CLEAN + 14)
    clean = [outcome.clean for outcome in drill.outcomes]
    assert all(clean[:CLEAN])
    assert not all(clean[CLEAN:]) or ended(drill) == "sharp"


def test_coupons_vary_and_the_same_seed_gives_the_same_drill() -> None:
    one, other = run(0.1, 0.2, 5, most=12), run(0.1, 0.2, 5, most=12)
    assert one.distances == other.distances
    assert one.outcomes == other.outcomes
    assert all(abs(a - b) > 1e-9 for a, b in pairwise(one.distances))
    assert min(one.distances) < 0.0 < max(one.distances)


def test_what_hangs_on_no_size_feeds_no_belief() -> None:
    drill = begin(Recipe(1), 2)
    assert drill.coupon is not None
    after = go_on(drill, "refer")
    assert after.belief is drill.belief
    assert outcome_of(drill.coupon, "refer").call is None
    with pytest.raises(ValueError, match="no coupon"):
        go_on(after, "accept")
