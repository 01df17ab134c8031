"""EN 1993-1-8, 4.5.2: the throat as the height of the largest triangle, legs equal or not.

Source: the clause as remembered (no copy was read); the values are computed from
a = z1 z2 / sqrt(z1^2 + z2^2) and set beside the largest isosceles triangle's, which the American
size goes by. They tell the two apart wherever the legs differ.
"""

from __future__ import annotations

import pytest

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.lengths import MM_PER_INCH
from geometry.measures import measure
from geometry.section import Section


@pytest.mark.parametrize(
    ("one", "two", "throat", "size", "isosceles"),
    [
        (3.0, 4.0, 2.400, 3.0, 2.121),
        (6.0, 6.0, 4.243, 6.0, 4.243),
        (6.0, 8.0, 4.800, 6.0, 4.243),
        (6.0, 9.0, 4.992, 6.0, 4.243),
        (5.0, 10.0, 4.472, 5.0, 3.536),
        (8.0, 12.0, 6.656, 8.0, 5.657),
    ],
)
def test_both_throats_of_flat_welds(
    one: float, two: float, throat: float, size: float, isosceles: float
) -> None:
    for legs in ((one, two), (two, one)):
        found = measure(Section.of(Joint(), Bead(*legs)))
        assert found.theoretical_throat == pytest.approx(throat, abs=0.0006)
        assert found.effective_size == pytest.approx(size)
        assert found.effective_throat == pytest.approx(isosceles, abs=0.0006)


def test_a_quarter_by_three_eighths_of_an_inch() -> None:
    legs = MM_PER_INCH / 4.0, MM_PER_INCH * 3.0 / 8.0
    found = measure(Section.of(Joint(), Bead(*legs)))
    assert found.theoretical_throat / MM_PER_INCH == pytest.approx(0.2080, abs=5e-5)
    assert found.effective_size / MM_PER_INCH == pytest.approx(0.25)
    assert found.effective_throat / MM_PER_INCH == pytest.approx(0.1768, abs=5e-5)


@pytest.mark.parametrize("crown", [0.2, 1.0, 2.0])
def test_a_crown_adds_nothing_to_either(crown: float) -> None:
    flat = measure(Section.of(Joint(), Bead(6.0, 9.0)))
    proud = measure(Section.of(Joint(), Bead(6.0, 9.0, crown=crown)))
    assert proud.theoretical_throat == pytest.approx(flat.theoretical_throat)
    assert proud.effective_throat == pytest.approx(flat.effective_throat)
