"""Which leaf answers, and whether any can."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.gauging import (
    bisector_size,
    edge_fits,
    leaf_between,
    leg_leaf_size,
    right_leaves,
    seats_on_leg,
    seats_on_throat,
)
from geometry.bead import Bead
from geometry.joint import Joint, Member
from geometry.leaf import RACKS, Edge, leaf_of_mark, rack
from geometry.measures import measure
from geometry.reading import read
from geometry.seat import press_home, waiting_pose
from geometry.section import Section


@pytest.mark.parametrize(
    ("size", "name", "marks"),
    [
        (8.0, "metric", ["8 mm"]),
        (7.9375, "inch", ["5/16 in"]),
        # Leaf-bracketing check: a true 7.0 mm leg on an inch set lies between 1/4 and 5/16
        # (check_values, section 4, recomputed).
        (7.0, "inch", ["1/4 in", "5/16 in"]),
        (5.0 * math.sqrt(2.0), "throat", ["a 5 mm"]),
        (5.0 * math.sqrt(2.0), "metric", ["7 mm", "8 mm"]),
        (2.0, "metric", ["3 mm"]),
        (30.0, "metric", ["25 mm"]),
    ],
)
def test_the_limit_s_own_leaf_or_the_two_that_bracket_it(
    size: float, name: str, marks: list[str]
) -> None:
    assert [leaf.mark for leaf in right_leaves(size, name)] == marks  # type: ignore[arg-type]


@given(st.floats(1.0, 40.0), st.sampled_from(RACKS))
def test_brackets_leave_no_leaf_between(size: float, name: str) -> None:
    leaves = right_leaves(size, name)  # type: ignore[arg-type]
    assert 1 <= len(leaves) <= 2
    between = [
        leaf for leaf in rack(name)  # type: ignore[arg-type]
        if leaves[0].size < leaf.size < leaves[-1].size
    ]  # fmt: skip
    assert between == []
    if len(leaves) == 2:
        assert leaves[0].size < size < leaves[1].size


@given(st.floats(1.0, 30.0), st.floats(1.0, 30.0))
def test_leaves_between_two_sizes_are_between_them(first: float, second: float) -> None:
    found = {leaf.mark for leaf in leaf_between(first, second)}
    low, high = sorted((first, second))
    clearly = {leaf.mark for n in RACKS for leaf in rack(n) if low + 1e-5 < leaf.size < high - 1e-5}
    assert clearly <= found
    assert found == {leaf.mark for leaf in leaf_between(second, first)}


def test_a_leg_in_an_open_joint_reads_less() -> None:
    # AWS D1.1:2010 2.4.2.6 as quoted in check_values 2.7: what a leaf reads is b sin(psi).
    assert leg_leaf_size(10.0, Joint(angle=120.0)) == pytest.approx(10.0 * math.sin(math.pi / 1.5))
    assert leg_leaf_size(10.0, Joint()) == 10.0


@pytest.mark.parametrize("crown", [-1.0, 0.0, 1.0])
def test_the_size_on_the_bisector(crown: float) -> None:
    """Equal legs: the face stands crown beyond the chord there (closed form)."""
    section = Section.of(Joint(), Bead(8.0, 8.0, crown))
    assert bisector_size(section) == pytest.approx(8.0 + crown * math.sqrt(2.0), abs=1e-3)


def test_the_size_on_the_bisector_of_a_lopsided_face_flatters() -> None:
    section = Section.of(Joint(), Bead(6.0, 11.0, -1.0))
    assert bisector_size(section) > measure(section).effective_size + 0.3


def seated(section: Section, mark: str, edge: Edge, on: Member) -> bool:
    leaf = leaf_of_mark(mark, edge)
    home = press_home(section, leaf, waiting_pose(section, leaf, on)).pose
    return read(section, leaf, home).state != "not seated"


SQUARE = [
    Bead(8.0, 8.0, 0.9),
    Bead(8.0, 6.7, 0.9),
    Bead(11.5, 8.5, 0.5),
    Bead(12.5, 8.5, 0.5),
    Bead(9.0, 9.0, -1.3),
    Bead(8.5, 8.5, 3.6),
    Bead(8.2, 8.2, 2.6),
    Bead(11.4, 11.0, -1.5),
]


@pytest.mark.parametrize("bead", SQUARE, ids=repr)
@pytest.mark.parametrize("mark", ["7 mm", "8 mm", "10 mm"])
@pytest.mark.parametrize("on", ["base", "upright"])
def test_what_is_reckoned_to_seat_on_a_leg_does(bead: Bead, mark: str, on: Member) -> None:
    section = Section.of(Joint(), bead)
    if seats_on_leg(leaf_of_mark(mark).size, on, section, measure(section)):
        assert seated(section, mark, "leg", on)


@pytest.mark.parametrize(
    ("bead", "on"),
    [
        (Bead(12.5, 8.5, 0.5), "upright"),
        (Bead(8.5, 12.5, 0.5), "base"),
        (Bead(8.0, 8.0, 3.9), "base"),
    ],
)
def test_what_is_reckoned_not_to_seat_doesn_t(bead: Bead, on: Member) -> None:
    section = Section.of(Joint(), bead)
    assert not seats_on_leg(8.0, on, section, measure(section))
    assert not seated(section, "8 mm", "leg", on)


@pytest.mark.parametrize("leg", [9.0, 11.0])
def test_a_leg_too_long_for_the_throat_edge(leg: float) -> None:
    section = Section.of(Joint(), Bead(leg, leg, -1.5))
    assert seats_on_throat(8.0, section) == (leg < 11.2)


@pytest.mark.parametrize("angle", [75.0, 85.0, 90.0, 95.0, 110.0])
def test_where_edges_fit_the_leaf_seats_and_elsewhere_not(angle: float) -> None:
    convex = Section.of(Joint(angle=angle), Bead(8.5, 8.5, 0.4))
    assert edge_fits("leg", 8.0, convex.joint, 0.1) == seated(convex, "8 mm", "leg", "upright")
    hollow = Section.of(Joint(angle=angle), Bead(9.0, 9.0, -0.6))
    assert edge_fits("throat", 8.0, hollow.joint, 0.1) == seated(hollow, "8 mm", "throat", "base")
