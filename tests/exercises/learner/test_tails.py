"""Tails and quantiles against SciPy, a general-purpose reference library."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import special, stats

from exercises.learner.tails import (
    beta_quantile,
    chi_square_tail,
    f_tail,
    incomplete_beta,
    normal_cdf,
    normal_quantile,
)

shapes = st.floats(0.05, 400.0)
shares = st.floats(0.001, 0.999)


@given(st.floats(-30.0, 30.0))
def test_normal(z: float) -> None:
    assert float(normal_cdf(z)) == pytest.approx(float(special.ndtr(z)), rel=1e-9, abs=1e-15)


@given(shares)
def test_normal_quantile(share: float) -> None:
    assert normal_quantile(share) == pytest.approx(float(special.ndtri(share)), abs=1e-9)


@given(shapes, shapes, st.floats(0.0, 1.0))
def test_incomplete_beta(a: float, b: float, x: float) -> None:
    assert incomplete_beta(a, b, x) == pytest.approx(
        float(special.betainc(a, b, x)), rel=1e-9, abs=1e-12
    )


@given(st.integers(1, 300), st.integers(0, 300), shares)
def test_beta_quantile(hits: int, misses: int, share: float) -> None:
    expected = float(stats.beta.ppf(share, hits, misses + 1))
    assert beta_quantile(share, hits, misses + 1) == pytest.approx(expected, abs=1e-9)


@given(st.floats(1e-6, 200.0), st.integers(1, 40))
def test_chi_square(value: float, freedom: int) -> None:
    expected = float(stats.chi2.sf(value, freedom))
    assert chi_square_tail(value, freedom) == pytest.approx(expected, rel=1e-9, abs=1e-13)


@given(st.floats(1e-3, 50.0), st.integers(1, 60), st.integers(1, 200))
def test_f(value: float, above: int, below: int) -> None:
    expected = float(stats.f.sf(value, above, below))
    assert f_tail(value, above, below) == pytest.approx(expected, rel=1e-8, abs=1e-12)


def test_ends_and_nonsense() -> None:
    assert (incomplete_beta(2.0, 3.0, 0.0), incomplete_beta(2.0, 3.0, 1.0)) == (0.0, 1.0)
    assert chi_square_tail(0.0, 4) == 1.0
    assert f_tail(-1.0, 2, 3) == 1.0
    assert math.isclose(f_tail(1e9, 2, 30), 0.0, abs_tol=1e-12)
    with pytest.raises(ValueError, match="1 or more"):
        chi_square_tail(1.0, 0)
