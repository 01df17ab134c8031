"""ESAB filler-metal handbook: weld metal in an equal-leg fillet, per foot and per metre.

Source: the handbook's tables of weight of weld metal per foot and per metre (its printed figures,
read from public copies; entries that are misprints there are left out). Steel is taken there at
0.283 lb/in3; the metric table fits 7.85 g/cm3. A section's area times its length is the metal.
"""

from __future__ import annotations

import pytest

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.lengths import MM_PER_INCH, parse_length
from geometry.section import Section

LB_PER_IN3 = 0.283
KG_PER_MM3 = 7.85e-6


def area(leg: str) -> float:
    """Area of a flat equal-leg fillet's section, mm2."""
    length = parse_length(leg)
    return Section.of(Joint(), Bead(length, length)).body("weld").polygon.area


@pytest.mark.parametrize(
    ("leg", "printed"),
    [
        ("1/8 in", 0.027),
        ("3/16 in", 0.060),
        ("1/4 in", 0.106),
        ("5/16 in", 0.166),
        ("3/8 in", 0.239),
        ("7/16 in", 0.325),
        ("1/2 in", 0.425),
        ("1 in", 1.698),
    ],
)
def test_pounds_per_foot(leg: str, printed: float) -> None:
    pounds = area(leg) / MM_PER_INCH**2 * 12.0 * LB_PER_IN3
    assert pounds == pytest.approx(printed, abs=0.0011)


@pytest.mark.parametrize(
    ("leg", "printed"),
    [
        ("1/8 in", 0.040),
        ("3/16 in", 0.089),
        ("1/4 in", 0.158),
        ("5/16 in", 0.247),
        ("3/8 in", 0.356),
        ("7/16 in", 0.484),
        ("1/2 in", 0.632),
        ("5/8 in", 0.988),
    ],
)
def test_kilograms_per_metre(leg: str, printed: float) -> None:
    assert area(leg) * 1000.0 * KG_PER_MM3 == pytest.approx(printed, abs=0.0016)


def test_the_worked_example() -> None:
    # 0.5 x 0.5 x 0.5 x 12 x 0.283 = 0.424 lb.
    pounds = area("0.5 in") / MM_PER_INCH**2 * 12.0 * LB_PER_IN3
    assert round(pounds, 3) == pytest.approx(0.4245, abs=0.001)


@pytest.mark.parametrize(
    ("width", "height", "printed"),
    [
        ("1/2 in", "1/16 in", 0.071),
        ("3/8 in", "1/16 in", 0.053),
        ("1/4 in", "1/16 in", 0.035),
        ("1 in", "1/16 in", 0.141),
        ("1 in", "1/8 in", 0.283),
        ("1 in", "1/4 in", 0.566),
    ],
)
def test_a_cap_holds_at_least_the_printed_reinforcement(
    width: str, height: str, printed: float
) -> None:
    # The handbook's caps are two thirds of width times height, a parabola; ours are circular and
    # a little fuller: by less than (height / width)^2, with a twentieth of a percent of rounding.
    leg = parse_length(width) / 2.0**0.5
    crown = parse_length(height)
    proud = Section.of(Joint(), Bead(leg, leg, crown=crown)).body("weld").polygon.area
    flat = Section.of(Joint(), Bead(leg, leg)).body("weld").polygon.area
    pounds = (proud - flat) / MM_PER_INCH**2 * 12.0 * LB_PER_IN3
    fuller = 1.0 + (crown / parse_length(width)) ** 2
    assert printed - 0.0006 <= pounds <= printed * fuller + 0.0006
