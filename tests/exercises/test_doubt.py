"""The doubt of a leaf's answer."""

from __future__ import annotations

import math

import pytest

from exercises.doubt import doubt

# The contract's own figures for e = 0.1 mm, and JCGM 106:2012 for the shape: a coverage factor of
# 2 on two uniform distributions of half-widths T and g * e.


def test_the_contract_s_figures() -> None:
    assert round(doubt("leg"), 2) == 0.13
    assert round(doubt("throat"), 2) == 0.17


@pytest.mark.parametrize(("edge", "gain"), [("leg", 1.0), ("throat", math.sqrt(2.0))])
@pytest.mark.parametrize("eye_limit", [0.02, 0.05, 0.1])
def test_two_uniform_parts_added_in_quadrature(edge: str, gain: float, eye_limit: float) -> None:
    parts = [half / math.sqrt(3.0) for half in (0.05, gain * eye_limit)]
    assert doubt(edge, eye_limit) == pytest.approx(2.0 * math.hypot(*parts))  # type: ignore[arg-type]


@pytest.mark.parametrize("eye_limit", [0.100001, 0.2, 2.0])
def test_a_tray_can_t_widen_it(eye_limit: float) -> None:
    assert doubt("leg", eye_limit) == doubt("leg")
    assert doubt("throat", eye_limit) == doubt("throat")
