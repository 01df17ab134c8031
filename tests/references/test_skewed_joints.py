"""AWS D1.1, annex on skewed T-joints: leg factors for equal effective throats.

Source: D1.1/D1.1M:2010, 2.4.2.6 and its figure for where fillets are drawn (60 to 135 degrees);
the table of factors and its formulas are from memory. Both the printed factors and
sqrt(2) sin(psi / 2), which they round, are tested; the printed 1.03 at 95 degrees is known to be
low by 0.013.

The table's leg is the toe's distance square to the other member, which is what a leaf reads; the
length of the fused face is longer by 1 / sin(psi). Taking one for the other is the classic slip.
"""

from __future__ import annotations

import math

import pytest

from geometry.bead import Bead
from geometry.faults import GeometryError
from geometry.joint import Joint
from geometry.leaf import Leaf
from geometry.measures import measure
from geometry.pose import Pose
from geometry.reading import read
from geometry.section import Section

FACTORS = {
    60: 0.71, 65: 0.76, 70: 0.81, 75: 0.86, 80: 0.91, 85: 0.96, 90: 1.00, 95: 1.03, 100: 1.08,
    105: 1.12, 110: 1.16, 115: 1.19, 120: 1.23, 125: 1.25, 130: 1.28, 135: 1.31,
}  # fmt: skip
THROAT = 6.0


def with_throat(angle: float) -> Section:
    """A flat equal-leg weld with an effective throat of `THROAT` mm."""
    leg = THROAT / math.cos(math.radians(angle) / 2.0)
    return Section.of(Joint(angle=angle), Bead(leg, leg))


@pytest.mark.parametrize(("angle", "factor"), FACTORS.items())
def test_the_square_leg_for_a_throat_follows_the_table(angle: int, factor: float) -> None:
    section = with_throat(angle)
    assert measure(section).effective_throat == pytest.approx(THROAT)
    square_leg = section.toe("upright")[1]
    leg_at_square = THROAT * math.sqrt(2.0)
    assert square_leg / leg_at_square == pytest.approx(factor, abs=0.015 if angle == 95 else 0.006)
    exact = math.sqrt(2.0) * math.sin(math.radians(angle) / 2.0)
    assert square_leg / leg_at_square == pytest.approx(exact, abs=1e-9)


@pytest.mark.parametrize(("angle", "factor"), FACTORS.items())
def test_the_fused_leg_is_longer(angle: int, factor: float) -> None:
    found = measure(with_throat(angle))
    ratio = found.leg_upright / (THROAT * math.sqrt(2.0))
    assert ratio == pytest.approx(1.0 / (math.sqrt(2.0) * math.cos(math.radians(angle) / 2.0)))
    assert found.leg_upright * math.sin(math.radians(angle)) / (
        THROAT * math.sqrt(2.0)
    ) == pytest.approx(factor, abs=0.015 if angle == 95 else 0.006)


@pytest.mark.parametrize("angle", [90, 95, 100, 105, 110])
def test_a_leaf_reads_the_square_leg(angle: int) -> None:
    # Wider joints put the base's toe under the long edge.
    section = with_throat(angle)
    square_leg = section.toe("upright")[1]
    leaf = Leaf(square_leg + 0.5, "leaf")
    back = leaf.size / math.tan(math.radians(angle)) if angle != 90 else 0.0
    reading = read(section, leaf, Pose(back, 0.0))
    assert reading.state == "daylight"
    assert reading.gap == pytest.approx(0.5, abs=1e-6)


@pytest.mark.parametrize(
    ("angle", "is_drawn"), [(59.0, False), (60.0, True), (135.0, True), (136.0, False)]
)
def test_fillets_are_drawn_from_60_to_135_degrees(angle: float, is_drawn: bool) -> None:
    if is_drawn:
        assert with_throat(angle).joint.angle == angle
    else:
        with pytest.raises(GeometryError, match="60 to 135"):
            with_throat(angle)


def test_of_legs_that_read_the_same_the_obtuse_side_has_the_smaller_throat() -> None:
    # S: D1.1/D1.1M:2010, 2.4.2.6. Throat = square leg / (2 sin(psi / 2)): M.
    throats = []
    for angle in (60.0, 75.0, 90.0, 105.0, 120.0, 135.0):
        radians = math.radians(angle)
        leg = 8.0 / math.sin(radians)
        throats.append(measure(Section.of(Joint(angle=angle), Bead(leg, leg))).effective_throat)
        assert throats[-1] == pytest.approx(8.0 / (2.0 * math.sin(radians / 2.0)))
    assert throats == sorted(throats, reverse=True)
    assert throats[2] == pytest.approx(8.0 * 0.707, abs=0.002)
