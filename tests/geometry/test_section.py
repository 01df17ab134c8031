"""Sections: bodies that fill the outline, and all faults at once."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.faults import GeometryError
from geometry.joint import Joint
from geometry.section import Section
from tests.geometry.sound import sections, traced_sections

T = Joint()


def faults_of(joint: Joint, bead: Bead, *spatter: Spatter) -> list[tuple[str, str]]:
    with pytest.raises(GeometryError) as error:
        Section.of(joint, bead, spatter)
    return [(fault.at, fault.code) for fault in error.value.faults]


@given(sections())
def test_the_bodies_fill_the_outline(section: Section) -> None:
    areas = sum(body.polygon.area for body in section.bodies)
    # A groove's flattened arc stands for two boundaries; each side is good to 1e-4 mm.
    assert areas == pytest.approx(section.outline.polygon.area, abs=1e-4 * 200.0)


@given(sections())
def test_the_bodies_lie_side_by_side(section: Section) -> None:
    bodies = section.bodies
    for i, one in enumerate(bodies):
        for two in bodies[i + 1 :]:
            shared = shapely.intersection(one.polygon, two.polygon)
            assert shared.area <= 1e-3, (one.name, two.name)


@given(sections())
def test_every_exposed_piece_has_a_name_of_the_contract(section: Section) -> None:
    known = {
        "base", "base_end", "base_back", "base_left", "base_underside", "upright", "upright_end",
        "upright_back", "upright_foot", "face", "root_gap", "undercut_base", "undercut_upright",
        "overlap_base", "overlap_upright", *(f"spatter[{i}]" for i in range(len(section.spatter))),
    }  # fmt: skip
    assert set(section.piece_lines) <= known
    assert {f"spatter[{i}]" for i in range(len(section.spatter))} <= set(section.piece_lines)
    total = sum(line.length for line in section.piece_lines.values())
    assert total == pytest.approx(section.outline.polygon.exterior.length)


@given(sections())
def test_toes_and_lips_lie_on_the_outline(section: Section) -> None:
    for member in ("base", "upright"):
        assert member in ("base", "upright")
        lip = section.bead.overlap(member)
        toe, seen = section.toe(member), section.seen_toe(member)
        assert math.hypot(*toe) == pytest.approx(section.bead.leg(member))
        assert math.dist(toe, seen) == pytest.approx(lip.length if lip else 0.0, abs=1e-9)
        assert section.weld_line.distance(shapely.Point(seen)) <= 1e-9


@given(traced_sections())
def test_a_traced_face_is_all_there(section: Section) -> None:
    assert section.bead.trace is not None
    corners = {tuple(point) for point in shapely.get_coordinates(section.piece_lines["face"])}
    assert corners == set(section.bead.trace)


@given(sections())
def test_cleaning_takes_the_spatter_and_nothing_else(section: Section) -> None:
    clean = section.cleaned()
    assert clean.spatter == ()
    assert (clean.joint, clean.bead) == (section.joint, section.bead)
    assert not any(name.startswith("spatter") for name in clean.piece_lines)


def test_the_pieces_of_a_plain_section_in_order() -> None:
    section = Section.of(T, Bead(8.0, 8.0))
    assert section.outline.piece_names == (
        "base_underside", "base_end", "base", "face", "upright", "upright_end", "upright_back",
        "base_back", "base_left",
    )  # fmt: skip


def test_a_root_opening_holds_no_metal() -> None:
    opened = Section.of(Joint(root_opening=2.0), Bead(8.0, 8.0))
    assert {"root_gap", "upright_foot"} <= set(opened.piece_lines)
    # The gap reaches behind the weld, from the root to the upright's back: 2 mm by 12 mm.
    gap = shapely.box(-12.0, 0.0, 0.0, 2.0)
    assert opened.outline.polygon.intersection(gap).area == pytest.approx(0.0, abs=1e-9)
    tight = Section.of(T, Bead(8.0, 8.0)).outline.polygon
    assert tight.intersection(gap).area == pytest.approx(24.0)
    assert opened.body("weld").polygon.area == pytest.approx(32.0)


@pytest.mark.parametrize("angle", [60.0, 80.0, 100.0, 135.0])
def test_a_leaning_upright_stands_on_the_base(angle: float) -> None:
    section = Section.of(Joint(angle=angle), Bead(8.0, 8.0))
    upright = section.body("upright").polygon
    assert upright.bounds[1] == pytest.approx(0.0, abs=1e-9)
    assert upright.distance(section.body("base").polygon) == pytest.approx(0.0, abs=1e-9)


def test_an_undercut_takes_metal_from_its_member() -> None:
    sound = Section.of(T, Bead(8.0, 8.0))
    grooved = Section.of(T, Bead(8.0, 8.0, undercut_upright=Undercut(0.5, 2.0)))
    lost = sound.body("upright").polygon.area - grooved.body("upright").polygon.area
    radius = (1.0 + 0.25) / (2.0 * 0.5)
    half = math.asin(1.0 / radius)
    assert lost == pytest.approx(radius**2 * (half - math.sin(half) * math.cos(half)), abs=1e-3)
    assert grooved.body("weld").polygon.area == sound.body("weld").polygon.area
    assert grooved.piece_lines["undercut_upright"].bounds == pytest.approx(
        (-0.5, 8.0, 0.0, 10.0), abs=1e-4
    )


def test_a_lip_and_a_drop_rest_on_their_members() -> None:
    section = Section.of(
        T, Bead(8.0, 8.0, overlap_base=Overlap(3.0)), (Spatter("upright", 14.0, 0.8),)
    )
    assert section.piece_lines["overlap_base"].bounds == pytest.approx(
        (8.0, 0.0, 11.0, 1.0), abs=1e-4
    )
    assert section.piece_lines["spatter[0]"].bounds == pytest.approx(
        (0.0, 12.8, 0.8, 15.2), abs=1e-4
    )


def test_bodies_are_found_by_name() -> None:
    section = Section.of(T, Bead(8.0, 8.0), (Spatter("base", 14.0, 0.8),))
    assert section.body("spatter[0]").name == "spatter[0]"
    with pytest.raises(KeyError):
        section.body("spatter[1]")


def test_a_joint_that_cannot_be_is_refused_with_all_its_faults() -> None:
    found = faults_of(Joint(angle=40.0, root_opening=-1.0), Bead(8.0, 8.0))
    assert found == [("/joint/angle", "joint-angle"), ("/joint/root_opening", "root-opening")]


def test_a_bead_that_cannot_be_is_refused_with_all_its_faults() -> None:
    assert faults_of(T, Bead(0.0, 99.0)) == [
        ("/bead/leg_base", "toe-off-member"),
        ("/bead/leg_upright", "toe-off-member"),
    ]


def test_an_upright_has_a_back() -> None:
    joint = Joint(angle=135.0, upright_thickness=50.0, upright_length=20.0)
    assert ("/joint/upright_length", "upright-short") in faults_of(joint, Bead(8.0, 8.0))


@pytest.mark.parametrize(
    ("drop", "fault"),
    [
        (Spatter("base", 14.0, 0.0), ("/spatter/0/height", "size-out-of-range")),
        (Spatter("base", 14.0, math.nan), ("/spatter/0/height", "not-finite")),
        (Spatter("base", math.nan, 0.8), ("/spatter/0/at", "not-finite")),
        (Spatter("base", 9.0, 0.8), ("/spatter/0/at", "spatter-off-member")),
        (Spatter("upright", 59.5, 0.8), ("/spatter/0/at", "spatter-off-member")),
    ],
)
def test_spatter_lies_on_bare_metal(drop: Spatter, fault: tuple[str, str]) -> None:
    assert faults_of(T, Bead(8.0, 8.0), drop) == [fault]


def test_drops_of_spatter_stand_apart() -> None:
    drops = Spatter("base", 14.0, 0.8), Spatter("base", 15.0, 0.8), Spatter("upright", 15.0, 0.8)
    assert faults_of(T, Bead(8.0, 8.0), *drops) == [("/spatter/1/at", "spatter-overlaps")]


def test_spatter_keeps_off_lips_and_grooves() -> None:
    bead = Bead(8.0, 8.0, overlap_base=Overlap(3.0), undercut_upright=Undercut(0.5, 3.0))
    drops = Spatter("base", 12.0, 0.8), Spatter("upright", 12.0, 0.8)
    assert faults_of(T, bead, *drops) == [
        ("/spatter/0/at", "spatter-off-member"),
        ("/spatter/1/at", "spatter-off-member"),
    ]


def test_a_trace_that_crosses_itself_is_refused_where_it_stands() -> None:
    trace = ((8.0, 0.0), (2.0, 6.0), (6.0, 6.0), (2.0, 2.0), (0.0, 8.0))
    assert faults_of(T, Bead.traced(trace, T)) == [("/bead/trace", "crossed")]
