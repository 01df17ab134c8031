"""AWS Inspection Trends, January 2011 pages 14 to 16, and July 2010: how fillets are gauged.

Source, January 2011: the size of an equal-leg fillet is the leg of the largest isosceles right
triangle inside it, and its throat 70.7 % of that; leaf sets rise by 1/16 in to 1/2 in and by
1/8 in from 5/8 in; a leaf has an end for convex and an end for concave welds and answers only
smaller, same or larger. July 2010 quotes AWS A3.0:2010: convexity is the greatest distance from
the face to the line that joins the toes.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import rack
from geometry.lengths import MM_PER_INCH, parse_length
from geometry.measures import measure
from geometry.pose import Pose
from geometry.reading import read
from geometry.section import Section

HOME = Pose(0.0, 0.0)


def weld(base: float, upright: float, crown: float = 0.0) -> Section:
    return Section.of(Joint(), Bead(base, upright, crown=crown))


def test_the_inch_set_rises_by_sixteenths_then_by_eighths() -> None:
    inches = [leaf.size / MM_PER_INCH for leaf in rack("inch")]
    for low, high in pairwise(inches):
        step = 1.0 / 16.0 if high <= 0.5 else 1.0 / 8.0
        assert high - low == pytest.approx(step)


@pytest.mark.parametrize(("base", "upright"), [(8.0, 8.0), (6.0, 9.0), (9.0, 6.0), (5.0, 10.0)])
@pytest.mark.parametrize("crown", [0.0, 0.8])
def test_size_is_the_leg_of_the_largest_isosceles_triangle(
    base: float, upright: float, crown: float
) -> None:
    found = measure(weld(base, upright, crown))
    assert found.effective_size == pytest.approx(min(base, upright))
    assert found.effective_throat / found.effective_size == pytest.approx(0.707, abs=0.0005)


def test_size_of_a_hollow_weld_is_less_than_its_legs() -> None:
    found = measure(weld(8.0, 8.0, -1.0))
    assert found.effective_size == pytest.approx(8.0 - math.sqrt(2.0))


@pytest.mark.parametrize("crown", [0.3, 1.0, 2.0])
def test_convexity_is_measured_from_the_line_through_the_toes(crown: float) -> None:
    found = measure(weld(8.0, 7.0, crown))
    assert found.convexity == pytest.approx(crown)
    assert found.face == "convex"


def test_convexity_is_what_the_actual_throat_has_over_the_effective_one() -> None:
    # Inspection Trends, January 2011. Equal legs, so that the crown stands on the bisector.
    for crown in (0.5, 1.0, 1.5):
        found = measure(weld(8.0, 8.0, crown))
        assert found.actual_throat - found.effective_throat == pytest.approx(found.convexity)


def test_two_leaves_bracket_a_size_between_them() -> None:
    # A 7.0 mm leg: larger than 1/4 in, smaller than 5/16 in (computed).
    section = weld(7.0, 7.0)
    quarter, five = (leaf for leaf in rack("inch") if leaf.mark in ("1/4 in", "5/16 in"))
    off = 7.0 - quarter.size
    assert read(section, quarter, Pose(off, 0.0)).state == "held off"
    assert read(section, five, HOME).state == "daylight"


def test_a_flat_quarter_inch_fillet_passes_both_ends_of_its_leaf() -> None:
    size = parse_length("1/4 in")
    section = weld(size, size)
    (leaf,) = (leaf for leaf in rack("inch") if leaf.mark == "1/4 in")
    assert read(section, leaf, HOME).state == "touch"
    assert read(section, leaf, Pose(0.0, 0.0, 90.0, turned=True)).state == "touch"
    assert read(section, leaf.swapped(), HOME).state == "touch"


@pytest.mark.parametrize("edge", ["leg", "throat"])
def test_the_ends_answer_for_their_own_face(edge: str) -> None:
    # A hollow weld whose legs are full fools the leg end; the throat end shows it.
    section = weld(8.0, 8.0, -1.2)
    (leaf,) = (leaf for leaf in rack("metric") if leaf.mark == "8 mm")
    held = leaf if edge == "leg" else leaf.swapped()
    assert read(section, held, HOME).state == ("touch" if edge == "leg" else "daylight")
