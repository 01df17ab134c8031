"""Beads: what the contract refuses, at its very limits."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead, Overlap, Spatter, Undercut, trace_end_faults
from geometry.curves import Arc, Segment
from geometry.joint import Joint
from tests.geometry.sound import crown_limits, joints, rounded_beads, traces

T = Joint()
LEGS = st.floats(2.0, 25.0)


def codes(bead: Bead, joint: Joint = T) -> list[str]:
    return [fault.code for fault in bead.faults(joint)]


def places(bead: Bead, joint: Joint = T) -> list[str]:
    return [fault.at for fault in bead.faults(joint)]


def test_the_hollow_limit_of_a_square_equal_leg_bead() -> None:
    # Contract: |crown| < chord/2 * tan(phi/2), phi = 45 degrees here.
    limit = 8.0 / math.sqrt(2.0) * math.tan(math.radians(22.5))
    assert codes(Bead(8.0, 8.0, crown=-limit + 1e-6)) == []
    assert codes(Bead(8.0, 8.0, crown=-limit - 1e-6)) == ["face-in-member"]


@given(joints(), LEGS, LEGS)
def test_a_face_just_short_of_a_member_is_sound(joint: Joint, base: float, upright: float) -> None:
    lowest, highest = crown_limits(joint, base, upright)
    for crown in (lowest, highest):
        assert codes(Bead(base, upright, crown=crown * (1.0 - 1e-9)), joint) == []
        assert codes(Bead(base, upright, crown=crown * (1.0 + 1e-9)), joint) == ["face-in-member"]


@given(st.data())
def test_a_sound_face_lies_between_the_members(data: st.DataObject) -> None:
    joint = data.draw(joints())
    bead = data.draw(rounded_beads(joint))
    assert codes(bead, joint) == []
    normal = joint.normal("upright")
    for curve in bead.face(joint):
        points = curve.flatten()
        assert points[:, 1].min() >= -1e-9
        assert (points @ normal).min() >= -1e-9


@pytest.mark.parametrize("leg", [0.0, -1.0, 0.01, 60.0, 75.0, math.nan, math.inf])
def test_a_toe_lies_on_its_member(leg: float) -> None:
    assert codes(Bead(leg, 8.0)) == ["toe-off-member"]
    assert places(Bead(8.0, leg)) == ["/bead/leg_upright"]


def test_both_legs_are_looked_at() -> None:
    assert places(Bead(0.0, 61.0)) == ["/bead/leg_base", "/bead/leg_upright"]


def test_a_weld_bridges_the_root_opening() -> None:
    joint = Joint(root_opening=3.0)
    assert codes(Bead(8.0, 3.0), joint) == ["toe-off-member"]
    assert codes(Bead(3.0, 8.0), joint) == []


@pytest.mark.parametrize("crown", [math.nan, math.inf, -math.inf])
def test_a_crown_is_a_number(crown: float) -> None:
    assert codes(Bead(8.0, 8.0, crown=crown)) == ["face-in-member"]


def test_a_flat_face_is_straight_and_a_crowned_one_bulges() -> None:
    assert Bead(8.0, 6.0).face(T) == (Segment((8.0, 0.0), (0.0, 6.0)),)
    for crown in (1.0, -1.0):
        (arc,) = Bead(8.0, 6.0, crown=crown).face(T)
        assert isinstance(arc, Arc)
        assert arc.convex == (crown > 0.0)
        assert (arc.start, arc.end) == ((8.0, 0.0), (0.0, 6.0))


@given(st.data())
def test_a_trace_is_kept_as_it_is_but_for_its_ends(data: st.DataObject) -> None:
    joint = data.draw(joints())
    points = data.draw(traces(joint))
    bead = Bead.traced(points, joint)
    assert bead.trace is not None
    assert bead.trace[1:-1] == points[1:-1]
    assert bead.leg_base == pytest.approx(math.hypot(*points[0]))
    assert bead.leg_upright == pytest.approx(math.hypot(*points[-1]))
    assert codes(bead, joint) == []
    assert [curve.start for curve in bead.face(joint)] == list(bead.trace[:-1])


def test_the_ends_of_a_trace_are_projected_onto_the_members() -> None:
    joint = Joint(angle=100.0)
    along, normal = joint.direction("upright"), joint.normal("upright")
    last = (7.0 * along[0] + 0.04 * normal[0], 7.0 * along[1] + 0.04 * normal[1])
    bead = Bead.traced(((8.0, -0.03), (4.0, 4.0), last), joint)
    assert bead.trace is not None
    assert bead.trace[0] == (8.0, 0.0)
    assert bead.trace[-1] == pytest.approx(joint.point("upright", 7.0), abs=1e-12)
    assert (bead.leg_base, bead.leg_upright) == pytest.approx((8.0, 7.0))


def test_points_that_repeat_are_left_out() -> None:
    bead = Bead.traced(((8.0, 0.0), (8.0, 0.0), (4.0, 4.0), (4.0, 4.0), (0.0, 8.0)), T)
    assert bead.trace == ((8.0, 0.0), (4.0, 4.0), (0.0, 8.0))


@pytest.mark.parametrize("off", [0.051, -0.051])
def test_the_ends_of_a_trace_lie_within_a_twentieth(off: float) -> None:
    faults = trace_end_faults(((8.0, off), (off, 8.0)), T)
    assert [(fault.at, fault.code) for fault in faults] == [
        ("/bead/trace/0", "trace-end"),
        ("/bead/trace/1", "trace-end"),
    ]
    near = off * 0.049 / 0.051
    assert trace_end_faults(((8.0, near), (near, 8.0)), T) == []


@pytest.mark.parametrize("points", [(), ((8.0, 0.0),)])
def test_a_trace_has_two_points(points: tuple[tuple[float, float], ...]) -> None:
    assert [fault.code for fault in trace_end_faults(points, T)] == ["trace-short"]
    assert codes(Bead.traced(points, T)) != []


@pytest.mark.parametrize("point", [(4.0, 0.0), (4.0, -1.0), (0.0, 4.0), (-1.0, 4.0)])
def test_a_trace_stays_out_of_the_members(point: tuple[float, float]) -> None:
    bead = Bead.traced(((8.0, 0.0), point, (0.0, 8.0)), T)
    assert codes(bead) == ["face-in-member"]
    assert bead.faults(T)[0].params["index"] == 2


@pytest.mark.parametrize(
    ("undercut", "at"),
    [
        (Undercut(0.5, 0.0), "/bead/undercut_base/width"),
        (Undercut(0.5, 60.0), "/bead/undercut_base/width"),
        (Undercut(0.5, math.nan), "/bead/undercut_base/width"),
        (Undercut(0.0, 2.0), "/bead/undercut_base/depth"),
        (Undercut(-0.5, 2.0), "/bead/undercut_base/depth"),
        (Undercut(1.0, 2.0), "/bead/undercut_base/depth"),
        (Undercut(13.0, 40.0), "/bead/undercut_base/depth"),
        (Undercut(math.nan, 2.0), "/bead/undercut_base/depth"),
    ],
)
def test_a_groove_is_shallow_and_fits_the_member(undercut: Undercut, at: str) -> None:
    assert places(Bead(8.0, 8.0, undercut_base=undercut)) == [at]


@pytest.mark.parametrize("length", [0.0, -1.0, 52.0, math.nan])
def test_a_lip_fits_the_member(length: float) -> None:
    assert places(Bead(8.0, 8.0, overlap_upright=Overlap(length))) == [
        "/bead/overlap_upright/length"
    ]


def test_a_toe_has_a_lip_or_a_groove() -> None:
    bead = Bead(8.0, 8.0, undercut_base=Undercut(0.3, 1.0), overlap_base=Overlap(1.0))
    assert codes(bead) == ["lip-over-groove"]
    apart = Bead(8.0, 8.0, undercut_base=Undercut(0.3, 1.0), overlap_upright=Overlap(1.0))
    assert codes(apart) == []


def test_no_lip_fits_under_a_face_that_hangs_over() -> None:
    trace = ((8.0, 0.0), (10.0, 0.5), (10.0, 2.0), (0.0, 8.0))
    assert codes(Bead.traced(trace, T, overlap_base=Overlap(1.0))) == ["lip-under-face"]
    assert codes(Bead.traced(trace, T, overlap_upright=Overlap(1.0))) == []


def test_faults_at_both_toes_are_found_at_once() -> None:
    bead = Bead(
        8.0, 8.0, crown=-9.0, undercut_base=Undercut(5.0, 1.0), overlap_upright=Overlap(-1.0)
    )
    assert places(bead) == [
        "/bead/crown",
        "/bead/undercut_base/depth",
        "/bead/overlap_upright/length",
    ]


def test_sizes_that_follow_from_others() -> None:
    assert Overlap(3.0).height == pytest.approx(1.0)
    drop = Spatter("base", 14.0, 0.8)
    assert (drop.near, drop.far) == pytest.approx((12.8, 15.2))
    bead = Bead(8.0, 7.0, undercut_base=Undercut(0.3, 1.5), overlap_upright=Overlap(2.0))
    assert (bead.reach("base"), bead.reach("upright")) == (9.5, 9.0)
