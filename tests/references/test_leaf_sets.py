"""Leaf sets as they are sold: eleven inch sizes, metric by legs, metric by throats.

Sources: steps of 1/16 in to 1/2 in and of 1/8 in from 5/8 in, Inspection Trends, January 2011,
page 14 (seen); the usual eleven inch sizes (from memory); the usual metric leg set (from memory,
little sure: it varies by maker, so only what most have in common is tested); throats 3 to 7 mm by
0.5, then 8, 10, 12, ISO 17637 Table A.1 (from memory). Bracketing was computed.
"""

from __future__ import annotations

import math

import pytest

from geometry.leaf import rack
from geometry.lengths import MM_PER_INCH


def test_the_eleven_inch_sizes() -> None:
    # M; the steps S.
    sixteenths = [round(leaf.size / MM_PER_INCH * 16.0, 9) for leaf in rack("inch")]
    assert sixteenths == [2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16]
    assert [leaf.mark for leaf in rack("inch")] == [
        "1/8 in", "3/16 in", "1/4 in", "5/16 in", "3/8 in", "7/16 in", "1/2 in", "5/8 in",
        "3/4 in", "7/8 in", "1 in",
    ]  # fmt: skip


def test_the_metric_legs_that_most_sets_share() -> None:
    # M, little sure.
    assert {3.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0} <= {
        leaf.size for leaf in rack("metric")
    }


def test_the_throats() -> None:
    # M: ISO 17637, Table A.1.
    marks = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 10, 12]
    assert [leaf.mark for leaf in rack("throat")] == [f"a {mark:g} mm" for mark in marks]
    sizes = [leaf.size for leaf in rack("throat")]
    assert sizes == pytest.approx([mark * math.sqrt(2.0) for mark in marks])


@pytest.mark.parametrize(
    ("leg", "name", "below", "above"),
    [(7.0, "inch", "1/4 in", "5/16 in"), (7.5, "metric", "7 mm", "8 mm"),
     (13.0, "metric", "12 mm", "14 mm"), (9.0, "throat", "a 6 mm", "a 6.5 mm")],
)  # fmt: skip
def test_the_leaves_about_a_leg(leg: float, name: str, below: str, above: str) -> None:
    # C: a true 7.0 mm leg on an inch set is larger than 1/4 and smaller than 5/16.
    (leaves,) = [rack(each) for each in ("inch", "metric", "throat") if each == name]
    smaller = [leaf.mark for leaf in leaves if leaf.size <= leg]
    larger = [leaf.mark for leaf in leaves if leaf.size > leg]
    assert (smaller[-1], larger[0]) == (below, above)
