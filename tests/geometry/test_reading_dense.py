"""Readings on uneven faces against a second method: dense points, no shapely, its own seat."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.curves import Vec
from geometry.joint import Joint, other_member
from geometry.leaf import EDGES, Leaf
from geometry.pose import Pose, wrap_degrees
from geometry.reading import Reading, read
from geometry.section import Section
from tests.geometry.dense import Slide, face_points, slide
from tests.geometry.faces import ROUGH, expected, far_from_the_limits, scanned
from tests.geometry.sound import sections, traced_sections

T = Joint()


def compare(section: Section, leaf: Leaf, moved: Slide) -> Reading:
    """Compare the two methods where the leaf comes to rest; return the reading."""
    reading = read(section, leaf, Pose(moved.off + 1e-7, 0.0))
    state, gap = expected(section, leaf, moved)
    assert (reading.state, moved) == (state, moved)
    if gap is None:
        assert reading.gap is None
    else:
        assert reading.gap == pytest.approx(gap, abs=1e-3)
    assert reading.in_the_way == (("face",) if state == "not seated" else ())
    return reading


def ends_before_the_edges(section: Section, leaf: Leaf) -> bool:
    """Whether no weld reaches beneath an edge that belongs on a member.

    The second method only slides, so it can't tell that from the spur's being held off.
    """
    bead = section.bead
    on_base = bead.leg_base < leaf.long_edge[0][0] - 0.05
    return on_base and (leaf.edge == "leg" or bead.leg_upright < leaf.end_edge[0][1] - 0.05)


@given(traced_sections(), st.sampled_from(ROUGH), st.booleans())
def test_rough_faces(section: Section, leaf: Leaf, swapped: bool) -> None:
    held = leaf.swapped() if swapped else leaf
    assume(ends_before_the_edges(section, held))
    moved = slide(held, face_points(section))
    assume(far_from_the_limits(moved))
    compare(section, held, moved)


@given(
    st.integers(0, 10_000),
    st.floats(6.0, 10.0),
    st.floats(6.0, 10.0),
    st.floats(-1.2, 1.2),
    st.sampled_from(ROUGH),
    st.booleans(),
)
def test_scanned_faces(
    seed: int, base: float, upright: float, crown: float, leaf: Leaf, swapped: bool
) -> None:
    held = leaf.swapped() if swapped else leaf
    section = scanned(seed, base, upright, crown)
    assume(ends_before_the_edges(section, held))
    moved = slide(held, face_points(section))
    assume(far_from_the_limits(moved))
    compare(section, held, moved)


def test_scanned_faces_come_to_every_state() -> None:
    # So that the comparison above can't pass by never seeing a state.
    seen: set[tuple[str, str]] = set()
    for seed, (leg, crown) in enumerate(((8.0, 0.0), (8.0, 1.0), (8.0, -1.0))):
        section = scanned(seed, leg, leg, crown)
        for leaf in ROUGH:
            for held in (leaf, leaf.swapped()):
                moved = slide(held, face_points(section))
                if far_from_the_limits(moved) and leg < held.long_edge[0][0] - 0.05:
                    seen.add((held.edge, compare(section, held, moved).state))
    assert seen >= {(edge, state) for edge in EDGES for state in ("touch", "daylight", "held off")}


def mirrored(section: Section) -> Section:
    """The section seen in a mirror along the joint's bisector: base and upright trade places."""
    joint, bead = section.joint, section.bead
    swapped = replace(
        joint,
        base_thickness=joint.upright_thickness,
        upright_thickness=joint.base_thickness,
        base_length=joint.upright_length,
        upright_length=joint.base_length,
    )
    spatter = tuple(replace(drop, on=other_member(drop.on)) for drop in section.spatter)
    legs = bead.leg_upright, bead.leg_base
    mirrored = Bead(*legs, crown=bead.crown)
    if bead.trace is not None:
        trace = tuple(_reflected(point, joint) for point in reversed(bead.trace))
        mirrored = Bead.traced(trace, joint)
    mirrored = replace(
        mirrored,
        undercut_base=bead.undercut_upright,
        undercut_upright=bead.undercut_base,
        overlap_base=bead.overlap_upright,
        overlap_upright=bead.overlap_base,
    )
    return Section.of(swapped, mirrored, spatter)


def _reflected(point: Vec, joint: Joint) -> Vec:
    cos, sin = math.cos(joint.radians), math.sin(joint.radians)
    if joint.angle == 90.0:
        cos, sin = 0.0, 1.0
    return (point[0] * cos + point[1] * sin, point[0] * sin - point[1] * cos)


def _other_names(names: tuple[str, ...]) -> set[str]:
    trade = {"base": "upright", "upright": "base"}
    return {"_".join(trade.get(word, word) for word in name.split("_")) for name in names}


@given(
    st.one_of(sections(), traced_sections()),
    st.sampled_from(ROUGH),
    st.booleans(),
    # Off the round numbers: at a tolerance's very rim the last digit decides.
    st.tuples(
        st.one_of(st.just(0.0), st.floats(-1.0, 4.0).map(lambda x: x + 0.00123)),
        st.one_of(st.just(0.0), st.floats(-0.3, 1.0).map(lambda y: y + 0.00123)),
    ),
    st.one_of(st.just(0.0), st.floats(-2.0, 2.0)),
)
def test_a_mirror_reads_base_as_upright(
    section: Section, leaf: Leaf, swapped: bool, at: Vec, lean: float
) -> None:
    # A root opening lifts the upright only, so it has no mirror image. Readings don't hang on it.
    section = replace(section, joint=replace(section.joint, root_opening=0.0))
    held = leaf.swapped() if swapped else leaf
    joint = section.joint
    pose = Pose(*at, lean)
    image = Pose(*_reflected(at, joint), wrap_degrees(joint.angle - lean), turned=True)
    one, two = read(section, held, pose), read(mirrored(section), held, image)
    assert two.state == one.state
    assert two.flush == one.flush
    assert two.gap == pytest.approx(one.gap, abs=1e-6)
    found = {name for name in two.in_the_way if not name.startswith(("base_", "upright_"))}
    assert _other_names(tuple(sorted(found))) == {
        name for name in one.in_the_way if not name.startswith(("base_", "upright_"))
    }
