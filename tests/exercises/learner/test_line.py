"""What is believed of a learner: against plain integration, and by learners that are simulated."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import integrate, stats

from exercises.learner.line import Belief, Call, believe, called_short
from exercises.learner.placement import DISTANCES, place

calls = st.lists(st.builds(Call, st.floats(-1.2, 1.2), st.booleans()), min_size=1, max_size=25)


def simulated(spread: float, bias: float, lapse: float, count: int, seed: int) -> Belief:
    rng = random.Random(seed)
    belief = Belief.broad()
    recent: list[float] = []
    for _ in range(count):
        at = place(belief, rng, recent=recent).distance
        recent.append(at)
        short = float(called_short(at, bias, spread, lapse))
        belief = belief.after(Call(at, rng.random() < short))
    return belief


@given(calls, st.randoms(use_true_random=False))
@settings(max_examples=40, deadline=None)
def test_order_does_not_matter_and_belief_stays_a_probability(
    made: list[Call], rng: random.Random
) -> None:
    first = believe(made)
    rng.shuffle(made)
    second = believe(made)
    assert first.weights == pytest.approx(second.weights, abs=1e-12)
    assert float(first.weights.sum()) == pytest.approx(1.0)
    assert float(first.weights.min()) >= 0.0


def test_likelihood_is_that_of_a_normal_line_with_lapses() -> None:
    found = called_short([-0.3, 0.1], 0.05, 0.2, 0.04)
    expected = 0.02 + 0.96 * stats.norm.sf([-0.3, 0.1], loc=0.05, scale=0.2)
    assert found == pytest.approx(expected, abs=1e-12)


def test_the_estimate_is_that_of_an_integral_over_the_same_prior() -> None:
    """Bias alone, spread and lapse as the grid has them: the posterior mean by SciPy's quadrature.

    The median of the grid and the mean of a posterior that is nearly normal lie close together.
    """
    rng = random.Random(4)
    made = [
        Call(at, rng.random() < float(called_short(at, 0.1, 0.15, 0.0)))
        for at in np.linspace(-0.5, 0.7, 60).tolist()
    ]

    def joint(bias: float, log_spread: float) -> float:
        spread = math.exp(log_spread)
        prior = stats.norm.pdf(bias, scale=0.35) * stats.norm.pdf(log_spread, math.log(0.2), 0.8)
        total = 0.0
        for lapse, weight in zip((0.0, 0.02, 0.05, 0.1), (0.3, 0.35, 0.25, 0.1), strict=True):
            short = called_short([c.distance for c in made], bias, spread, lapse)
            right = np.where([c.short for c in made], short, 1.0 - short)
            total += weight * float(np.exp(np.log(np.maximum(right, 1e-300)).sum()))
        return float(prior) * total * 1e8

    biases = np.linspace(-0.3, 0.5, 41)
    logs = np.linspace(math.log(0.03), math.log(0.9), 41)
    table = np.array([[joint(b, s) for s in logs] for b in biases])
    over_bias = integrate.simpson(table, x=logs, axis=1)
    mean = integrate.simpson(biases * over_bias, x=biases) / integrate.simpson(over_bias, x=biases)
    assert believe(made).estimate().bias.middle == pytest.approx(float(mean), abs=0.01)


@pytest.mark.parametrize("spread", [0.1, 0.2, 0.4])
def test_simulated_learners_are_recovered_in_sixty_calls(spread: float) -> None:
    """The median of 24 learners; tests.measure.drill shows it of 500, and against uniform draws."""
    errors = []
    for seed in range(24):
        rng = random.Random(seed)
        bias, lapse = rng.uniform(-0.3, 0.3), rng.uniform(0.0, 0.05)
        found = simulated(spread, bias, lapse, 60, seed).estimate()
        errors.append(
            (abs(found.bias.middle - bias) / spread, abs(found.spread.middle / spread - 1.0))
        )
    bias_error, spread_error = np.median(errors, axis=0)
    # Half as much again as the medians of 500 may be: 24 learners have a median that wanders.
    assert bias_error <= 0.3
    assert spread_error <= 0.375


def test_intervals_hold_what_they_say() -> None:
    inside = 0
    for seed in range(60):
        rng = random.Random(300 + seed)
        bias = rng.gauss(0.0, 0.2)
        found = simulated(0.2, bias, 0.02, 40, seed).estimate().bias
        inside += found.low <= bias <= found.high
    # 95 % of 60 are 57; fewer than 52 come in less than one run in a hundred.
    assert inside >= 52


def test_a_sharp_estimate_is_said_to_be_and_a_new_one_is_not() -> None:
    assert not Belief.broad().estimate().sharp
    long = simulated(0.2, 0.1, 0.0, 150, 1).estimate()
    assert long.sharp
    assert long.calls == 150


def test_a_learner_who_is_never_wrong_has_a_small_spread_and_no_infinity() -> None:
    made = [Call(at / 20.0, at < 0) for at in range(-20, 21)] * 3
    found = believe(made).estimate()
    assert 0.0 < found.spread.middle < 0.06
    assert abs(found.bias.middle) < 0.06
    assert math.isfinite(found.spread.high)


@given(calls)
@settings(max_examples=25, deadline=None)
def test_gains_are_never_below_nothing_and_are_those_of_the_long_way(made: list[Call]) -> None:
    belief = believe(made)
    at = (-0.4, 0.0, 0.15)
    gains = belief.gains(at)

    def unsure(weights: np.ndarray) -> float:
        return float(stats.entropy(weights.sum(axis=2).ravel()))

    for distance, gain in zip(at, gains, strict=True):
        short = float(belief.short_likely(distance)[0])
        after = short * unsure(belief.after(Call(distance, short=True)).weights)
        after += (1.0 - short) * unsure(belief.after(Call(distance, short=False)).weights)
        assert gain == pytest.approx(unsure(belief.weights) - after, abs=1e-8)
        assert gain >= -1e-9


def test_placement_varies_is_easy_now_and_then_and_repeats_nothing_twice_running() -> None:
    rng = random.Random(7)
    belief, easy = Belief.broad(), 0
    recent: list[float] = []
    for _ in range(60):
        placed = place(belief, rng, recent=recent)
        assert placed.distance in DISTANCES
        assert not recent or placed.easy or placed.distance != recent[-1]
        easy += placed.easy
        assert not placed.easy or abs(placed.distance) >= 0.8
        recent.append(placed.distance)
        short = float(called_short(placed.distance, 0.0, 0.2, 0.0))
        belief = belief.after(Call(placed.distance, rng.random() < short))
    assert easy == 6
    assert len(set(recent)) >= 12
    with pytest.raises(ValueError, match="one or more"):
        place(belief, rng, distances=())


def test_nonsense_is_refused() -> None:
    with pytest.raises(ValueError, match="finite"):
        Call(float("nan"), short=True)
