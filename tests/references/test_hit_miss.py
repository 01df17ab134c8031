"""Hit and miss curves against published ones.

Sources: MIL-HDBK-1823A, Example 3 (the 119 rows that the logarithmic model uses), with the
coefficients that the public tests of a statistics package print for it; its Example 8 isn't held
here. Bliss, Annals of Applied Biology 22 (1935) 134: beetle mortality (coefficients as in Dobson
and in Agresti: from memory, and recomputed by statsmodels). Bounds of a90/95 are recomputed, not
the handbook's: they are compared with the same bound by SciPy.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import brentq, minimize_scalar

from exercises.learner.demonstration import demonstrate, trials_needed
from exercises.learner.hit_miss import Curve, fit_curve

HITS = (
    "16 18 18 19 19 19 19 21 21 21 21 21 23 25 25 25 25 25 27 27 27 27 29 29 29 31 31 31 33 33 33 "
    "33 35 37 37 37 37 39 39 39 39 41 41 41 41 41 43 43 43 43 45 45 47 47 47 47 47 47 49 49 49 49 "
    "49 49 51 53 53 55 57 57 57 58 58 58 58 60 60 62 62 62 64 64 66 68 68 68 76 84 97"
)
MISSES = (
    "4 6 6 6 8 8 8 10 10 10 10 10 10 12 12 12 12 12 14 14 16 18 18 19 19 21 23 25 33 100"
)  # fmt: skip
DEPTHS = np.array([float(depth) for depth in f"{HITS} {MISSES}".split()]) / 1000.0
CAUGHT = np.array([True] * len(HITS.split()) + [False] * len(MISSES.split()))

DOSES = np.array([1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.8610, 1.8839])
TRIED = np.array([59, 60, 62, 56, 63, 59, 62, 60])
DEAD = np.array([6, 13, 18, 28, 52, 53, 61, 60])


def curve_of(sizes: np.ndarray, hits: np.ndarray, link: str) -> Curve:
    found = fit_curve(sizes.tolist(), hits.tolist(), link)  # type: ignore[arg-type]
    assert isinstance(found, Curve)
    return found


def test_the_data_are_those_of_the_handbook_s_example() -> None:
    assert (len(DEPTHS), int(CAUGHT.sum())) == (119, 89)


@pytest.mark.parametrize(
    ("link", "log", "intercept", "slope", "deviance", "a50", "a90"),
    [
        ("logit", True, 17.6573206618, 4.3900784170, 60.5226, 0.01792, 0.02955),
        ("probit", True, 8.12190, 2.01231, 66.2858, 0.01767, 0.03340),
        ("logit", False, -2.66477, 144.0649, 78.1982, 0.01850, 0.03375),
    ],
)
def test_example_3_of_mil_hdbk_1823a(
    link: str, log: bool, intercept: float, slope: float, deviance: float, a50: float, a90: float
) -> None:
    found = curve_of(np.log(DEPTHS) if log else DEPTHS, CAUGHT, link)
    assert found.intercept == pytest.approx(intercept, rel=1e-5)
    assert found.slope == pytest.approx(slope, rel=1e-5)
    assert found.deviance == pytest.approx(deviance, abs=1e-3)
    sizes = np.array([found.size_caught(0.5), found.size_caught(0.9)])
    assert (np.exp(sizes) if log else sizes) == pytest.approx([a50, a90], abs=1e-5)


def test_its_a90_with_95_percent_confidence_by_the_profile_likelihood() -> None:
    found = curve_of(np.log(DEPTHS), CAUGHT, "logit")
    surely = found.size_surely_caught(0.9, 0.95)
    assert surely is not None
    # 2.706 above the least deviance: 0.03577 in (recomputed, no published print of this bound).
    assert np.exp(surely) == pytest.approx(0.03577, abs=1e-5)

    def held(at: float) -> float:
        def deviance(slope: float) -> float:
            eta = np.log(9.0) + slope * (np.log(DEPTHS) - at)
            return float(2.0 * np.logaddexp(0.0, np.where(CAUGHT, -eta, eta)).sum())

        return float(minimize_scalar(deviance, bounds=(0.01, 60.0), method="bounded").fun)

    bound = brentq(lambda at: held(at) - found.deviance - 1.6448536**2, -3.5, -3.0)
    assert surely == pytest.approx(bound, abs=1e-6)


@pytest.mark.parametrize(
    ("link", "intercept", "slope", "deviance", "half"),
    [
        ("logit", -60.7175, 34.2703, 11.2322, 1.77172),
        ("probit", -34.9353, 19.7279, 10.1198, 1.77085),
    ],
)
def test_beetles_of_bliss(
    link: str, intercept: float, slope: float, deviance: float, half: float
) -> None:
    sizes = np.repeat(DOSES, TRIED)
    hits = np.concatenate(
        [np.arange(tried) < dead for tried, dead in zip(TRIED, DEAD, strict=True)]
    )
    found = curve_of(sizes, hits, link)
    assert found.intercept == pytest.approx(intercept, abs=2e-4)
    assert found.slope == pytest.approx(slope, abs=2e-4)
    assert found.size_caught(0.5) == pytest.approx(half, abs=1e-5)
    # The deviance of grouped data is ours less that of the groups' own shares.
    share = DEAD / TRIED
    with np.errstate(divide="ignore", invalid="ignore"):
        full = np.where(share > 0, DEAD * np.log(share), 0.0) + np.where(
            share < 1, (TRIED - DEAD) * np.log(1 - share), 0.0
        )
    assert found.deviance + 2.0 * np.nansum(full) == pytest.approx(deviance, abs=1e-3)


def test_binomial_demonstrations_of_nine_in_ten() -> None:
    """29/29, 45/46, 59/61, 73/76, each the fewest: recomputed from the exact binomial tail."""
    for misses, (hits, trials, bound) in enumerate(
        [(29, 29, 0.90186), (45, 46, 0.90098), (59, 61, 0.90037), (73, 76, 0.90113)]
    ):
        assert demonstrate(hits, trials).bound == pytest.approx(bound, abs=1e-5)
        assert trials_needed(misses) == trials
        assert not demonstrate(hits - 1, trials - 1).shown
    assert 0.9**29 < 0.05 < 0.9**28
