"""Leaves: the contract's shape to the letter, and the racks."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.curves import Arc
from geometry.joint import Joint
from geometry.leaf import RACKS, Leaf, RackName, leaf_of_mark, rack
from geometry.lengths import MM_PER_INCH
from geometry.section import Section

EVERY_LEAF = [leaf for name in RACKS for leaf in rack(name)]
SIZES = st.floats(3.0, 26.0)


def arcs(leaf: Leaf) -> list[Arc]:
    found = [piece.curve for piece in leaf.body.pieces if piece.name == "arc"]
    assert all(isinstance(arc, Arc) for arc in found)
    return [arc for arc in found if isinstance(arc, Arc)]


@given(SIZES)
def test_the_leg_edge(size: float) -> None:
    leaf = Leaf(size, "leaf")
    assert leaf.point == leaf.tip == (0.0, size)
    assert leaf.end_edge == ((0.0, size), (0.0, pytest.approx(2.2 * size)))
    assert leaf.long_edge == ((pytest.approx(1.5 * size), 0.0), (pytest.approx(3.0 * size), 0.0))
    (arc,) = arcs(leaf)
    assert arc.radius == pytest.approx(1.2 * size)
    # The contract gives the centre to four decimals of the size.
    assert arc.centre == pytest.approx((0.3106 * size, -0.1591 * size), abs=6e-5 * size)
    rise = math.degrees(math.atan2(arc.start_direction[1], arc.start_direction[0]))
    assert arc.start == leaf.tip
    assert rise == pytest.approx(15.0, abs=0.05)


@given(SIZES)
def test_the_throat_edge(size: float) -> None:
    leaf = Leaf(size, "leaf", "throat")
    assert leaf.point == leaf.spur == (pytest.approx(0.5 * size), pytest.approx(0.5 * size))
    assert leaf.long_edge == ((pytest.approx(1.4 * size), 0.0), (pytest.approx(3.0 * size), 0.0))
    assert leaf.end_edge == ((0.0, pytest.approx(1.4 * size)), (0.0, pytest.approx(3.0 * size)))
    upper, lower = arcs(leaf)
    assert upper.end == lower.start == leaf.spur
    assert [arc.radius for arc in (upper, lower)] == pytest.approx([1.06 * size] * 2)
    assert upper.centre == pytest.approx((-0.56 * size, 0.5 * size), abs=1e-9 * size)
    assert lower.centre == pytest.approx((0.5 * size, -0.56 * size), abs=1e-9 * size)


@given(SIZES, st.floats(0.0, 1.0))
def test_wear_puts_the_points_further_out(size: float, wear: float) -> None:
    worn = Leaf(size, "leaf").worn(wear)
    assert worn.tip == (0.0, pytest.approx(size + wear))
    apart = math.dist(worn.spur, Leaf(size, "leaf").spur)
    assert apart == pytest.approx(wear, abs=1e-9)
    assert worn.long_edge == Leaf(size, "leaf").long_edge
    for edge in ("leg", "throat"):
        assert edge in ("leg", "throat")
        assert worn.with_edge(edge).body.polygon.is_valid


@pytest.mark.parametrize("leaf", EVERY_LEAF, ids=lambda leaf: leaf.mark)
def test_every_leaf_of_a_rack_is_a_body_by_both_ends(leaf: Leaf) -> None:
    for held in (leaf, leaf.swapped()):
        assert set(held.body.piece_names) == {"long", "end", "arc", "back"}
        assert held.turned_body.polygon.area == pytest.approx(held.body.polygon.area)
        assert held.body.polygon.contains(shapely.Point(held.handle))


def test_the_leg_edge_clears_what_the_contract_says() -> None:
    leaf = Leaf(10.0, "leaf")
    for crown, free in ((0.0, True), (3.9, True), (4.4, False)):
        weld = Section.of(Joint(), Bead(10.0, 10.0, crown=crown)).body("weld").polygon
        shared = weld.intersection(leaf.body.polygon).area
        assert (shared <= 1e-3) == free, crown
    for other, free in ((14.9, True), (15.3, False)):
        weld = Section.of(Joint(), Bead(other, 10.0)).body("weld").polygon
        shared = weld.intersection(leaf.body.polygon).area
        assert (shared <= 1e-3) == free, other


@given(SIZES)
def test_the_spur_stands_where_a_flat_face_does(size: float) -> None:
    weld = Section.of(Joint(), Bead(size, size)).body("weld").polygon
    leaf = Leaf(size, "leaf", "throat")
    assert weld.distance(shapely.Point(leaf.spur)) <= 1e-9
    assert weld.intersection(leaf.body.polygon).area <= 1e-6


def test_swapping_ends_twice_is_the_same_leaf() -> None:
    leaf = leaf_of_mark("8 mm", wear=0.2)
    assert leaf.swapped() != leaf
    assert leaf.swapped().swapped() == leaf
    assert hash(leaf.swapped().swapped()) == hash(leaf)
    assert leaf.swapped().wear == 0.2


@pytest.mark.parametrize(
    ("name", "sizes"),
    [
        ("metric", [3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 25]),
        ("inch", [25.4 * n / 16 for n in (2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16)]),
        (
            "throat",
            [a * math.sqrt(2) for a in (3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 10, 12)],
        ),
    ],
)
def test_the_racks_are_those_of_the_contract(name: RackName, sizes: list[float]) -> None:
    assert [leaf.size for leaf in rack(name)] == pytest.approx(sizes)


def test_marks_of_the_inch_rack() -> None:
    assert [leaf.mark for leaf in rack("inch")] == [
        "1/8 in", "3/16 in", "1/4 in", "5/16 in", "3/8 in", "7/16 in", "1/2 in", "5/8 in",
        "3/4 in", "7/8 in", "1 in",
    ]  # fmt: skip


@pytest.mark.parametrize("leaf", EVERY_LEAF, ids=lambda leaf: leaf.mark)
def test_every_mark_finds_its_leaf(leaf: Leaf) -> None:
    assert leaf_of_mark(leaf.mark) == leaf
    assert leaf_of_mark(leaf.mark, "throat", 0.1) == leaf.with_edge("throat").worn(0.1)


@pytest.mark.parametrize(
    ("mark", "size"),
    [
        ("8mm", 8.0),
        (" 8 MM ", 8.0),
        ('5/16"', 5 * MM_PER_INCH / 16),
        ("0.25 in", MM_PER_INCH / 4),
        ("1 inch", MM_PER_INCH),
        ("a4mm", 4 * math.sqrt(2)),
        ("A 3.5 mm", 3.5 * math.sqrt(2)),
    ],
)
def test_marks_may_be_written_freely(mark: str, size: float) -> None:
    assert leaf_of_mark(mark).size == pytest.approx(size)


@pytest.mark.parametrize(("mark", "right"), [("8", "8 mm"), ("5/16", "5/16 in"), ("1", "1 in")])
def test_a_mark_without_its_unit_is_refused_with_the_right_one(mark: str, right: str) -> None:
    with pytest.raises(ValueError, match=f"'{mark}' has no unit; right would be: {right}$"):
        leaf_of_mark(mark)


@pytest.mark.parametrize(
    "mark", ["", "a", "9", "9 mm", "9/16 in", "a 9 mm", "a 1/4 in", "leaf", "nan mm", "25.4 mm"]
)
def test_other_marks_are_refused_with_those_there_are(mark: str) -> None:
    with pytest.raises(ValueError, match=r"no rack has a leaf .* 5/16 in.* a 12 mm"):
        leaf_of_mark(mark)
