"""What holds of all sections: order, mirrors, scale, sampling, and one seat from every start."""

from __future__ import annotations

import math
from dataclasses import asdict, replace
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.faults import GeometryError
from geometry.joint import MEMBERS, Joint, other_member
from geometry.leaf import EDGES, Leaf
from geometry.measures import measure
from geometry.penetration import is_free
from geometry.pose import Pose
from geometry.reading import read
from geometry.seat import home_pose, press_home, waiting_pose
from geometry.section import Section
from tests.geometry.oracle import Ruler
from tests.geometry.sound import crown_limits, joints, rounded_beads, sections, traced_sections

T = Joint()
LEGS = st.floats(4.0, 16.0)
RANK = {"daylight": 0, "touch": 1, "held off": 2}


def scaled(section: Section, by: float) -> Section:
    """The section with every length `by` times as long."""

    def of(part: object) -> object:
        if isinstance(part, float):
            return part * by
        if isinstance(part, tuple):
            return tuple(of(each) for each in part)
        return part

    joint = section.joint
    grown = {key: of(value) for key, value in asdict(joint).items() if key != "angle"}
    bead = section.bead
    lips = {f"overlap_{m}": bead.overlap(m) for m in MEMBERS}
    grooves = {f"undercut_{m}": bead.undercut(m) for m in MEMBERS}
    return Section.of(
        replace(joint, **grown),  # type: ignore[arg-type]
        replace(
            bead,
            leg_base=bead.leg_base * by,
            leg_upright=bead.leg_upright * by,
            crown=bead.crown * by,
            trace=of(bead.trace),  # type: ignore[arg-type]
            **{k: lip and replace(lip, length=lip.length * by) for k, lip in lips.items()},  # type: ignore[arg-type]
            **{
                k: g and replace(g, depth=g.depth * by, width=g.width * by)
                for k, g in grooves.items()
            },  # type: ignore[arg-type]
        ),
        tuple(replace(d, at=d.at * by, height=d.height * by) for d in section.spatter),
    )


@given(st.one_of(sections(), traced_sections()), st.sampled_from([0.25, 0.5, 2.0, 4.0]))
def test_scaling_a_section_scales_its_measures(section: Section, by: float) -> None:
    # By powers of two, so that the last digits go along.
    one, other = measure(section).as_dict(), measure(scaled(section, by)).as_dict()
    for key, value in one.items():
        if isinstance(value, str):
            # Flat is what is within 0.05 mm, which doesn't scale.
            continue
        length = 1.0 if "angle" in key else by
        assert other[key] == pytest.approx(value * length, rel=1e-6, abs=1e-6), key


@given(
    st.one_of(sections(), traced_sections()),
    st.floats(3.0, 14.0).map(lambda size: size + 0.000123),
    st.sampled_from(EDGES),
    st.floats(-0.5, 3.0).map(lambda x: x + 0.00123),
)
def test_scaling_everything_scales_a_reading(
    section: Section, size: float, edge: str, off: float
) -> None:
    # The eye's limit is a length as well. The tolerances are not: at twice the size they are half.
    held = Leaf(size, "leaf").with_edge("leg" if edge == "leg" else "throat")
    # A long edge that lies on its member, or a throat on the bisector.
    pose = Pose(off, 0.0 if edge == "leg" else off)
    grown = replace(held, size=2.0 * size)
    one = read(section, held, pose, 0.1)
    near = [read(section, held, pose, limit).state for limit in (0.096, 0.104)]
    assume(all(state == one.state for state in near))
    other = read(scaled(section, 2.0), grown, Pose(2.0 * pose.x, 2.0 * pose.y), 0.2)
    assume(set(one.in_the_way) == set(other.in_the_way) or one.state == other.state)
    assert other.state == one.state
    if one.gap is not None:
        assert other.gap == pytest.approx(2.0 * one.gap, abs=5e-4)


@given(LEGS, LEGS, st.sampled_from(EDGES), st.sampled_from(MEMBERS), st.sampled_from([0.5, 2.0]))
@settings(max_examples=40)
def test_scaling_everything_scales_the_seat(
    base: float, upright: float, edge: str, member: str, by: float
) -> None:
    section = Section.of(T, Bead(base, upright))
    held = Leaf(8.0, "leaf").with_edge("leg" if edge == "leg" else "throat")
    on = MEMBERS[0] if member == MEMBERS[0] else MEMBERS[1]
    # A flat face that lies along the spur's flank or under the arc has no seat of its own.
    assume(max(base, upright) < 11.0)
    grown, bigger = scaled(section, by), replace(held, size=8.0 * by)
    one = press_home(section, held, waiting_pose(section, held, on)).pose
    start = waiting_pose(section, held, on)
    other = press_home(grown, bigger, replace(start, x=start.x * by, y=start.y * by)).pose
    assume(abs(one.angle - home_pose(T, held, on).angle) < 1e-3)
    assert (other.x, other.y) == pytest.approx((one.x * by, one.y * by), abs=2e-3)


@given(st.one_of(sections(), traced_sections()))
def test_the_effective_size_is_never_above_the_smaller_leg(section: Section) -> None:
    found = measure(section)
    smaller = min(found.leg_base, found.leg_upright)
    assert found.effective_size <= smaller * (1.0 + 1e-12)
    assert found.effective_throat <= smaller * math.cos(section.joint.radians / 2.0) + 1e-9


@given(st.data(), st.integers(2, 400))
def test_measures_do_not_hang_on_how_a_face_is_sampled(data: st.DataObject, count: int) -> None:
    # The same polyline with points put in between: collinear ones say nothing new.
    section = data.draw(traced_sections(data.draw(joints())))
    trace = section.bead.trace or ()
    shares = sorted(data.draw(st.lists(st.floats(0.01, 0.99), min_size=1, max_size=4)))
    denser: list[tuple[float, float]] = []
    for a, b in pairwise(trace):
        denser.append(a)
        denser += [(a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])) for s in shares]
    denser.append(trace[-1])
    again = Section.of(section.joint, Bead.traced(tuple(denser), section.joint))
    one, other = measure(section).as_dict(), measure(again).as_dict()
    for key, value in one.items():
        assert other[key] == (value if isinstance(value, str) else pytest.approx(value, abs=1e-6))


@given(st.data(), st.integers(60, 500))
def test_a_sampled_arc_measures_as_the_arc(data: st.DataObject, count: int) -> None:
    joint = data.draw(joints())
    bead = data.draw(rounded_beads(joint))
    section = Section.of(joint, bead)
    points = bead.face(joint)[0].flatten(1e-6)
    step = max(1, len(points) // count)
    kept = [*points[:-1:step].tolist(), points[-1].tolist()]
    try:
        again = Section.of(joint, Bead.traced(tuple((x, y) for x, y in kept), joint))
    except GeometryError:
        # A chord of an arc that just clears a member may enter it.
        assume(False)
        return
    one, other = measure(section).as_dict(), measure(again).as_dict()
    for key, value in one.items():
        if isinstance(value, float) and "angle" not in key:
            assert other[key] == pytest.approx(value, abs=2e-2), key


def mirrored(section: Section) -> Section:
    """Base and upright change places."""
    joint, bead = section.joint, section.bead
    flipped = replace(
        joint,
        root_opening=0.0,
        base_thickness=joint.upright_thickness,
        upright_thickness=joint.base_thickness,
    )
    stated = Bead(
        bead.leg_upright,
        bead.leg_base,
        bead.crown,
        None,
        bead.undercut_upright,
        bead.undercut_base,
        bead.overlap_upright,
        bead.overlap_base,
    )
    drops = tuple(replace(drop, on=other_member(drop.on)) for drop in section.spatter)
    return Section.of(flipped, stated, drops)


@given(sections(), st.floats(3.0, 14.0), st.sampled_from(EDGES))
def test_a_mirrored_section_reads_the_same_at_its_seat(
    section: Section, size: float, edge: str
) -> None:
    section = replace(section, joint=replace(section.joint, root_opening=0.0))
    held = Leaf(size, "leaf").with_edge("leg" if edge == "leg" else "throat")
    image = mirrored(section)
    for member in MEMBERS:
        seat = Ruler(section).seat(held, member)
        if seat is None:
            continue
        other = Ruler(image).seat(held, other_member(member))
        assert other is not None
        shown = []
        for of, where, on in ((section, seat, member), (image, other, other_member(member))):
            turned = edge == "leg" and on == "base"
            pose = Pose(where.x, where.y, of.joint.angle if turned else 0.0, turned)
            shown.append(read(of, held, pose))
        assert shown[0].state == shown[1].state
        assert shown[0].gap == pytest.approx(shown[1].gap, abs=1e-3)


@given(LEGS, st.floats(-0.8, 0.8), st.sampled_from(EDGES))
def test_a_reading_is_monotone_in_the_leaf(leg: float, share: float, edge: str) -> None:
    # A larger leaf never shows more metal than a smaller one.
    lowest, highest = crown_limits(T, leg, leg)
    crown = share * (-lowest if share < 0.0 else 0.2 * highest)
    section = Section.of(T, Bead(leg, leg, crown=crown))
    ruler, shown = Ruler(section), []
    for step in range(-6, 7):
        held = Leaf(leg + crown * math.sqrt(2.0) * (edge == "throat") + 0.15 * step, "leaf")
        held = held.with_edge("leg" if edge == "leg" else "throat")
        seat = ruler.seat(held, "upright")
        if seat is not None:
            shown.append(read(section, held, Pose(seat.x, seat.y)))
    ranks = [RANK[reading.state] for reading in shown if reading.state in RANK]
    assert ranks == sorted(ranks, reverse=True)
    for state, way in (("daylight", 1.0), ("held off", -1.0)):
        gaps = [way * (r.gap or 0.0) for r in shown if r.state == state]
        assert gaps == sorted(gaps)


@given(st.floats(5.0, 11.0), st.sampled_from(MEMBERS))
def test_a_reading_is_monotone_in_the_leg(size: float, member: str) -> None:
    held = Leaf(size, "leaf")
    on = MEMBERS[0] if member == MEMBERS[0] else MEMBERS[1]
    shown = []
    for step in range(-6, 7):
        read_leg = size + 0.15 * step
        legs = (read_leg, size) if on == "base" else (size, read_leg)
        section = Section.of(T, Bead(*legs))
        seat = Ruler(section).seat(held, on)
        if seat is not None:
            pose = Pose(seat.x, seat.y, 90.0 if on == "base" else 0.0, on == "base")
            shown.append(read(section, held, pose))
    ranks = [RANK[reading.state] for reading in shown]
    assert len(ranks) > 8
    assert ranks == sorted(ranks)


@given(
    st.floats(4.0, 8.0),
    st.floats(-0.6, 0.3),
    st.sampled_from(EDGES),
    st.tuples(st.floats(2.0, 30.0), st.floats(2.0, 30.0), st.floats(-12.0, 12.0)),
)
@settings(max_examples=60)
def test_press_home_from_any_start_comes_to_one_seat(
    leg: float, share: float, edge: str, start: tuple[float, float, float]
) -> None:
    # Where the leaf is no smaller than the legs its seat is home, or on the crown: there is one.
    crown = share * 0.2 * leg if edge == "leg" else min(0.0, share * 0.2 * leg)
    section = Section.of(T, Bead(leg, leg, crown=crown))
    held = Leaf(8.0, "leaf").with_edge("leg" if edge == "leg" else "throat")
    begun = Pose(*start)
    assume(is_free(section.outline, held.body, begun))
    seat = press_home(section, held, waiting_pose(section, held, "upright")).pose
    found = press_home(section, held, begun).pose
    assert (found.x, found.y, found.angle) == pytest.approx((seat.x, seat.y, seat.angle), abs=1e-3)
