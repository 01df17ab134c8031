"""EN 1993-1-8, 4.5.2: the throat as the height of the largest triangle, legs equal or not.

Source: the clause as remembered (no copy was read); the values are computed from
a = z1 z2 / sqrt(z1^2 + z2^2) and set beside the largest isosceles triangle's, which the American
size goes by. They tell the two apart wherever the legs differ. The least throat of 3 mm is of the
same clause; how far fusion faces may open, 4.3.2.1, was seen in Stahlbau-Kalender 2021.
"""

from __future__ import annotations

import pytest

from exercises.coupon import Callout, Coupon
from exercises.judging import judge
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


@pytest.mark.parametrize(
    ("angle", "is_within"), [(60.0, True), (90.0, True), (120.0, True), (120.5, False)]
)
def test_fusion_faces_may_open_to_120_degrees(angle: float, *, is_within: bool) -> None:
    # S: 4.3.2.1; beyond, the weld is proved by tests. A closed one ends at 60 as the program does.
    section = Section.of(Joint(angle=angle), Bead(9.0, 9.0))
    judged = judge(Coupon("a", section, Callout(4.0, "throat", "4 mm"), rules="en-1993-1-8"))
    (found,) = [check for check in judged.checks if check.key == "joint_angle"]
    assert (found.passed, found.limit, found.disposition) == (is_within, 120.0, "refer")


@pytest.mark.parametrize(("called", "asked"), [(2.0, 3.0), (3.0, 3.0), (4.0, 4.0)])
def test_a_throat_is_at_least_3_mm(called: float, asked: float) -> None:
    # M: 4.5.2.
    section = Section.of(Joint(), Bead(9.0, 9.0))
    callout = Callout(called, "throat", f"{called:g} mm")
    judged = judge(Coupon("a", section, callout, rules="en-1993-1-8"))
    (found,) = [check for check in judged.checks if check.key == "theoretical_throat"]
    assert found.limit == pytest.approx(asked)
