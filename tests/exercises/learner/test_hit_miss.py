"""Curves through hits and misses: against statsmodels, and where there is none."""

from __future__ import annotations

import random

import numpy as np
import pytest
import statsmodels.api as sm
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import minimize

from exercises.learner.hit_miss import Curve, NoCurve, fit_curve


def drawn(seed: int, count: int, middle: float, slope: float) -> tuple[list[float], list[bool]]:
    rng = random.Random(seed)
    sizes = [rng.uniform(-1.0, 1.5) for _ in range(count)]
    hits = [rng.random() < 1.0 / (1.0 + np.exp(-slope * (size - middle))) for size in sizes]
    return sizes, hits


@pytest.mark.parametrize("link", ["logit", "probit"])
@pytest.mark.parametrize("seed", range(12))
def test_coefficients_are_those_of_statsmodels(seed: int, link: str) -> None:
    sizes, hits = drawn(seed, 120, 0.2, 6.0)
    found = fit_curve(sizes, hits, link)  # type: ignore[arg-type]
    assert isinstance(found, Curve)
    model = {"logit": sm.Logit, "probit": sm.Probit}[link]
    other = model(np.array(hits, float), sm.add_constant(np.array(sizes))).fit(disp=0)
    assert [found.intercept, found.slope] == pytest.approx(other.params.tolist(), rel=1e-5)
    assert found.deviance == pytest.approx(-2.0 * float(other.llf), rel=1e-9)


@given(st.lists(st.tuples(st.floats(-2.0, 2.0), st.booleans()), min_size=4, max_size=40))
@settings(max_examples=200)
def test_a_curve_is_the_likeliest_or_there_is_none(calls: list[tuple[float, bool]]) -> None:
    sizes, hits = [size for size, _ in calls], [hit for _, hit in calls]
    found = fit_curve(sizes, hits, fewest=1)
    if isinstance(found, NoCurve):
        return
    assume(np.ptp(sizes) > 1e-3)
    x, sign = np.array(sizes), np.where(hits, 1.0, -1.0)

    def deviance(beta: np.ndarray) -> float:
        return float(2.0 * np.logaddexp(0.0, -sign * (beta[0] + beta[1] * x)).sum())

    # From ours no search finds a likelier one.
    best = minimize(deviance, [found.intercept, found.slope], method="Nelder-Mead")
    assert found.deviance <= best.fun + 1e-6 * (1.0 + abs(best.fun))
    assert found.slope > 0.0


def test_what_can_not_be_said_is_not() -> None:
    few = fit_curve([0.1, 0.2], [True, False])
    assert few == NoCurve("too few", 1, 1)
    sizes = [at / 10 for at in range(20)]
    assert fit_curve(sizes, [True] * 20) == NoCurve("all hits", 20, 0)
    assert fit_curve(sizes, [False] * 20) == NoCurve("all misses", 0, 20)
    divided = fit_curve(sizes, [at >= 10 for at in range(20)])
    assert divided == NoCurve("separated", 10, 10, (0.9, 1.0))
    # Both at one size, all else divided there: the likeliest curve is still a step.
    both = fit_curve([*sizes, 1.0], [*(at >= 10 for at in range(20)), False])
    assert both == NoCurve("separated", 10, 11, (1.0, 1.0))
    assert fit_curve(sizes, [at < 10 for at in range(20)]) == NoCurve("not rising", 10, 10)
    assert fit_curve([1.0] * 20, [True, False] * 10) == NoCurve("not rising", 10, 10)
    falling = fit_curve(sizes, [at < 10 or at == 15 for at in range(20)])
    assert isinstance(falling, NoCurve)
    assert falling.reason == "not rising"
    lopsided = fit_curve(sizes, [at > 1 for at in range(18)] + [False, True])
    assert isinstance(lopsided, NoCurve)
    assert lopsided.reason == "too few"


@pytest.mark.parametrize("sizes", [[0.1], [float("nan"), 0.2], [float("inf"), 0.2]])
def test_nonsense_is_refused(sizes: list[float]) -> None:
    with pytest.raises(ValueError, match="finite sizes"):
        fit_curve(sizes, [True, False])


def test_the_bound_lies_beyond_the_fitted_size_and_nears_it_with_calls() -> None:
    far = []
    for count in (60, 240, 960):
        found = fit_curve(*drawn(5, count, 0.2, 6.0))
        assert isinstance(found, Curve)
        surely = found.size_surely_caught()
        assert surely is not None
        assert found.caught(found.size_caught(0.9)) == pytest.approx(0.9)
        far.append(surely - found.size_caught(0.9))
    assert far[0] > far[1] > far[2] > 0.0


def test_the_bound_holds_as_often_as_it_says() -> None:
    """Of 200 learners whose true size is known, 95 % have it below their bound: 180 or more."""
    held, tried = 0, 0
    true = 0.2 + np.log(9.0) / 6.0
    for seed in range(200):
        found = fit_curve(*drawn(1000 + seed, 100, 0.2, 6.0))
        if isinstance(found, Curve):
            surely = found.size_surely_caught()
            tried += 1
            held += surely is None or surely >= true
    assert tried >= 190
    # Of a binomial with p 0.95 fewer than nine in ten come once in a thousand times.
    assert held >= 0.9 * tried
