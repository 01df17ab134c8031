"""Leg and throat tables, inch and metric, and areas of crowned faces.

Source: trigonometry of the flat 90 degree equal-leg fillet, throat = leg / sqrt(2). The rounded
values are those that welding tables print; they were computed, not copied. The leaf set by throat
(3 to 7 mm by 0.5, then 8, 10, 12) is ISO 17637, Table A.1, from memory.
"""

from __future__ import annotations

import math

import pytest

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark, rack
from geometry.lengths import MM_PER_INCH, parse_length
from geometry.measures import measure
from geometry.section import Section


@pytest.mark.parametrize(
    ("leg", "leg_mm", "throat_in", "throat_mm", "width_in"),
    [
        ("1/8 in", 3.18, 0.0884, 2.25, 0.177),
        ("3/16 in", 4.76, 0.1326, 3.37, 0.265),
        ("1/4 in", 6.35, 0.1768, 4.49, 0.354),
        ("5/16 in", 7.94, 0.2210, 5.61, 0.442),
        ("3/8 in", 9.53, 0.2652, 6.74, 0.530),
        ("7/16 in", 11.11, 0.3094, 7.86, 0.619),
        ("1/2 in", 12.70, 0.3536, 8.98, 0.707),
        ("5/8 in", 15.88, 0.4419, 11.23, 0.884),
        ("1 in", 25.40, 0.7071, 17.96, 1.414),
    ],
)
def test_the_inch_table(
    leg: str, leg_mm: float, throat_in: float, throat_mm: float, width_in: float
) -> None:
    size = leaf_of_mark(leg).size
    assert size == parse_length(leg) == pytest.approx(leg_mm, abs=0.0051)
    found = measure(Section.of(Joint(), Bead(size, size)))
    for throat in (found.actual_throat, found.theoretical_throat, found.effective_throat):
        assert throat == pytest.approx(throat_mm, abs=0.0051)
        assert throat / MM_PER_INCH == pytest.approx(throat_in, abs=0.000051)
    assert found.face_width / MM_PER_INCH == pytest.approx(width_in, abs=0.00051)


@pytest.mark.parametrize(
    ("leg", "throat"),
    [(3, 2.12), (4, 2.83), (5, 3.54), (6, 4.24), (7, 4.95), (8, 5.66), (10, 7.07), (12, 8.49),
     (15, 10.61), (20, 14.14)],
)  # fmt: skip
def test_the_metric_table_of_throats(leg: float, throat: float) -> None:
    found = measure(Section.of(Joint(), Bead(leg, leg)))
    assert found.effective_throat == pytest.approx(throat, abs=0.0051)


@pytest.mark.parametrize(
    ("throat", "leg"),
    [(3, 4.24), (3.5, 4.95), (4, 5.66), (4.5, 6.36), (5, 7.07), (6, 8.49), (7, 9.90), (8, 11.31),
     (10, 14.14), (12, 16.97)],
)  # fmt: skip
def test_the_metric_table_of_legs(throat: float, leg: float) -> None:
    leaf = leaf_of_mark(f"a {throat:g} mm")
    assert leaf.size == pytest.approx(leg, abs=0.0051)
    section = Section.of(Joint(), Bead(leaf.size, leaf.size))
    assert measure(section).effective_throat == pytest.approx(throat)
    assert section.body("weld").polygon.area == pytest.approx(throat**2)


def test_the_throat_marked_leaves() -> None:
    throats = [leaf.size / math.sqrt(2.0) for leaf in rack("throat")]
    assert throats == pytest.approx([3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 10, 12])


@pytest.mark.parametrize(
    ("width", "crown", "area"), [(7.071, 1.0, 4.789), (8.485, 1.5, 8.694), (7.071, 2.0, 10.006)]
)
def test_areas_of_circular_caps(width: float, crown: float, area: float) -> None:
    leg = width / math.sqrt(2.0)
    proud = Section.of(Joint(), Bead(leg, leg, crown=crown)).body("weld").polygon.area
    assert proud - leg * leg / 2.0 == pytest.approx(area, abs=0.0015)
