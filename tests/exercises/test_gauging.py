"""Which leaf answers, and whether any can."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.gauging import (
    bisector_size,
    dressed,
    leaves_between,
    leg_leaf_size,
    right_leaves,
    seat_pose,
    shows,
)
from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.joint import Joint, Member
from geometry.leaf import RACKS, Edge, leaf_of_mark, rack
from geometry.measures import measure
from geometry.pose import Pose
from geometry.reading import Reading, read
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
def test_brackets_leave_no_leaves_between(size: float, name: str) -> None:
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
    found = {leaf.mark for leaf in leaves_between(first, second)}
    low, high = sorted((first, second))
    clearly = {leaf.mark for n in RACKS for leaf in rack(n) if low + 1e-5 < leaf.size < high - 1e-5}
    assert clearly <= found
    assert found == {leaf.mark for leaf in leaves_between(second, first)}


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


def pressed(section: Section, mark: str, edge: Edge, on: Member) -> Reading:
    """What a leaf shows that was pressed home among true contacts."""
    leaf = leaf_of_mark(mark, edge)
    return read(section, leaf, press_home(section, leaf, waiting_pose(section, leaf, on)).pose)


SECTIONS = [
    Section.of(Joint(angle=angle), bead)
    for angle, bead in [
        (90.0, Bead(8.0, 8.0, 0.9)),
        (90.0, Bead(8.0, 6.7, 0.9)),
        (90.0, Bead(11.5, 8.5, 0.5)),
        (90.0, Bead(9.0, 9.0, -1.3)),
        (90.0, Bead(8.2, 8.2, 1.5)),
        (90.0, Bead(11.4, 11.0, -1.5)),
        (90.0, Bead(8.5, 8.4, 0.8, overlap_upright=Overlap(1.5))),
        (80.0, Bead(8.6, 8.5, 0.6)),
        (100.0, Bead(9.0, 8.8, 0.6)),
        (100.0, Bead(10.2, 10.1, -0.9)),
    ]
]
LOPSIDED = Section.of(Joint(), Bead(13.2, 8.35, 0.4))
SEATS: list[tuple[Edge, Member]] = [("leg", "base"), ("leg", "upright"), ("throat", "base")]


@pytest.mark.parametrize("section", SECTIONS, ids=lambda s: f"{s.joint.angle:g} {s.bead}"[:60])
@pytest.mark.parametrize("mark", ["5 mm", "7 mm", "8 mm", "10 mm", "12 mm"])
@pytest.mark.parametrize(("edge", "on"), SEATS)
def test_what_it_shows_is_what_a_press_among_true_contacts_shows(
    section: Section, mark: str, edge: Edge, on: Member
) -> None:
    """Two ways there, which share no code: sliding home by plane geometry, and the hand.

    A spur on a lopsided crown is let slip aside by the hand, so that only its state is compared.
    """
    expected = pressed(section, mark, edge, on)
    leaf = leaf_of_mark(mark, edge)
    assert shows(section, leaf, on, 0.1) == expected.state
    if edge == "leg" and expected.state in ("held off", "daylight"):
        gap = read(section, leaf, seat_pose(section, leaf, on)).gap
        assert gap == pytest.approx(expected.gap, abs=0.02)


@pytest.mark.parametrize("mark", ["5 mm", "7 mm", "8 mm", "10 mm", "12 mm"])
@pytest.mark.parametrize("on", ["base", "upright"])
def test_and_so_it_does_where_one_leg_is_long(mark: str, on: Member) -> None:
    """A spur would slip off such a crown altogether, so that here the leg edge only is tried."""
    expected = pressed(LOPSIDED, mark, "leg", on)
    assert shows(LOPSIDED, leaf_of_mark(mark), on, 0.1) == expected.state


def test_closed_forms_of_the_seat() -> None:
    """Flat faces: the face stands S from the base at z - S from the upright (similar triangles)."""
    section = Section.of(Joint(), Bead(9.0, 9.0))
    assert seat_pose(section, leaf_of_mark("8 mm"), "upright").x == pytest.approx(1.0, abs=1e-3)
    assert seat_pose(section, leaf_of_mark("8 mm"), "base").y == pytest.approx(1.0, abs=1e-3)
    assert seat_pose(section, leaf_of_mark("10 mm"), "upright") == Pose(0.0, 0.0)
    over = math.hypot(0.5, 0.5)
    spur = seat_pose(section, leaf_of_mark("8 mm", "throat"), "base")
    assert math.hypot(spur.x, spur.y) == pytest.approx(over, abs=1e-3)


def test_a_lean_lets_the_tip_back_or_holds_it_off() -> None:
    bead = Bead(7.0, 7.0)
    leaning = Section.of(Joint(angle=80.0), bead)
    top = 2.2 * 10.0 / math.tan(math.radians(80.0))
    leaf = leaf_of_mark("10 mm")
    assert seat_pose(leaning, leaf, "upright").x == pytest.approx(top)
    assert shows(leaning, leaf, "upright", 0.1) == "not seated"
    open_ = Section.of(Joint(angle=100.0), bead)
    back = 10.0 / math.tan(math.radians(100.0))
    assert seat_pose(open_, leaf, "upright").x == pytest.approx(back)
    assert shows(open_, leaf, "upright", 0.1) == "daylight"


def test_spatter_stops_the_slide() -> None:
    section = Section.of(Joint(), Bead(7.0, 7.0), (Spatter("upright", 12.0, 0.8),))
    leaf = leaf_of_mark("8 mm")
    assert seat_pose(section, leaf, "upright").x == pytest.approx(0.8, abs=1e-3)
    assert shows(section, leaf, "upright", 0.1) == "not seated"
    assert shows(dressed(section), leaf, "upright", 0.1) == "daylight"


def test_dressing_takes_lips_and_spatter_and_nothing_else() -> None:
    bead = Bead(8.0, 8.0, 0.5, undercut_base=Undercut(0.5, 1.5), overlap_upright=Overlap(1.0))
    section = Section.of(Joint(angle=95.0), bead, (Spatter("base", 14.0, 0.5),))
    left = dressed(section)
    assert left.bead == Bead(8.0, 8.0, 0.5, undercut_base=Undercut(0.5, 1.5))
    assert (left.joint, left.spatter) == (section.joint, ())
    assert dressed(left) is left
