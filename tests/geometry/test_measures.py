"""Measures: closed forms, and a check by dense sampling that shares no formula with them."""

from __future__ import annotations

import math
from dataclasses import asdict, fields, replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.joint import Joint
from geometry.measures import Measures, measure
from geometry.section import Section
from tests.geometry.sound import crown_limits, joints, rounded_beads, sections, traced_sections

LEGS = st.floats(3.0, 20.0)


def measured(base: float, upright: float, crown: float = 0.0, angle: float = 90.0) -> Measures:
    return measure(Section.of(Joint(angle=angle), Bead(base, upright, crown=crown)))


@given(LEGS, LEGS)
def test_a_flat_bead_in_a_t(base: float, upright: float) -> None:
    found = measured(base, upright)
    assert (found.leg_base, found.leg_upright) == (base, upright)
    height = base * upright / math.hypot(base, upright)
    assert found.theoretical_throat == pytest.approx(height, abs=1e-9)
    assert found.actual_throat == pytest.approx(height, abs=1e-9)
    assert found.effective_size == pytest.approx(min(base, upright), abs=1e-9)
    assert found.effective_throat == pytest.approx(min(base, upright) / math.sqrt(2.0), abs=1e-9)
    assert (found.convexity, found.concavity) == pytest.approx((0.0, 0.0), abs=1e-9)
    assert found.face == "flat"
    assert found.face_width == pytest.approx(math.hypot(base, upright))
    lean = math.degrees(math.atan2(upright, base))
    assert found.toe_angle_base == pytest.approx(180.0 - lean)
    assert found.toe_angle_upright == pytest.approx(90.0 + lean)


@given(st.floats(60.0, 135.0), LEGS)
def test_a_flat_bead_of_equal_legs_at_any_angle(angle: float, leg: float) -> None:
    found = measured(leg, leg, angle=angle)
    half = math.radians(angle) / 2.0
    for throat in (found.actual_throat, found.theoretical_throat, found.effective_throat):
        assert throat == pytest.approx(leg * math.cos(half), abs=1e-9)
    assert found.effective_size == pytest.approx(leg, abs=1e-9)
    assert found.face_width == pytest.approx(2.0 * leg * math.sin(half))
    assert found.toe_angle_base == pytest.approx(90.0 + angle / 2.0)
    assert found.toe_angle_upright == pytest.approx(90.0 + angle / 2.0)


@given(LEGS, st.floats(-0.99, -0.05))
def test_a_hollow_bead_of_equal_legs(leg: float, share: float) -> None:
    crown = -share * crown_limits(Joint(), leg, leg)[0]
    found = measured(leg, leg, crown)
    throat = leg / math.sqrt(2.0) + crown
    assert found.actual_throat == pytest.approx(throat, abs=1e-9)
    assert found.effective_throat == pytest.approx(throat, abs=1e-9)
    assert found.theoretical_throat == pytest.approx(throat, abs=1e-9)
    assert found.effective_size == pytest.approx(leg + crown * math.sqrt(2.0), abs=1e-9)
    assert found.concavity == pytest.approx(-crown, abs=1e-9)
    assert found.convexity == pytest.approx(0.0, abs=1e-9)
    swing = math.degrees(2.0 * math.atan2(-crown, leg / math.sqrt(2.0)))
    assert found.toe_angle_base == pytest.approx(135.0 + swing)


@given(LEGS, LEGS, st.floats(0.01, 0.99))
def test_a_convex_face_adds_no_size(base: float, upright: float, share: float) -> None:
    crown = share * crown_limits(Joint(), base, upright)[1]
    proud, flat = measured(base, upright, crown), measured(base, upright)
    assert proud.effective_size == pytest.approx(flat.effective_size, abs=1e-9)
    assert proud.theoretical_throat == pytest.approx(flat.theoretical_throat, abs=1e-9)
    assert proud.actual_throat >= flat.actual_throat - 1e-9
    assert proud.convexity == pytest.approx(crown, abs=1e-9)
    assert proud.concavity == pytest.approx(0.0, abs=1e-9)


def test_a_slender_bead_in_an_acute_joint() -> None:
    # The height of the triangle on both whole legs falls outside it: a smaller one stands taller.
    found = measured(10.0, 3.0, angle=60.0)
    assert found.theoretical_throat == pytest.approx(3.0)
    whole = 10.0 * 3.0 * math.sin(math.radians(60.0)) / found.face_width
    assert whole < 2.93


def test_the_face_is_named_by_the_greater_departure() -> None:
    assert measured(8.0, 8.0, 0.05).face == "flat"
    assert measured(8.0, 8.0, -0.05).face == "flat"
    assert measured(8.0, 8.0, 0.0501).face == "convex"
    assert measured(8.0, 8.0, -0.0501).face == "concave"
    joint = Joint()
    for dip, rise, name in ((0.3, 0.2, "concave"), (0.2, 0.3, "convex"), (0.04, 0.03, "flat")):
        diagonal = math.sqrt(0.5)
        trace = (
            (9.0, 0.0),
            (6.0 + rise * diagonal, 3.0 + rise * diagonal),
            (3.0 - dip * diagonal, 6.0 - dip * diagonal),
            (0.0, 9.0),
        )
        found = measure(Section.of(joint, Bead.traced(trace, joint)))
        assert (found.convexity, found.concavity) == pytest.approx((rise, dip))
        assert found.face == name


def test_a_crown_at_the_very_rim_of_flat_is_flat() -> None:
    # Rounding must not tell +0.05 from -0.05.
    for leg in (3.0, 6.35, 8.0, 11.1125, 19.05):
        assert {measured(leg, leg, crown).face for crown in (0.05, -0.05)} == {"flat"}


def sampled(section: Section) -> NDArray[np.float64]:
    """Points on the face, denser than any tolerance below."""
    parts = []
    for curve in section.face:
        points = curve.flatten(1e-7)
        for start, end in pairwise(points):
            count = max(2, math.ceil(math.dist(start, end) / 1e-3))
            parts.append(np.linspace(start, end, count))
    return np.concatenate(parts)


def tallest_triangle(points: NDArray[np.float64], angle: float) -> float:
    """Greatest height of a triangle inside the bead, searched over its slant.

    The height of the triangle that a slant cuts off has one top over the slants (the least of
    linear functions of a direction), so a grid and a finer grid find it.
    """
    lowest, highest = -math.pi / 2.0, math.radians(angle) + math.pi / 2.0
    best = 0.0
    for _ in range(4):
        slants = np.linspace(lowest, highest, 201)
        heights = np.array([(points @ np.array((math.cos(s), math.sin(s)))).min() for s in slants])
        top = int(heights.argmax())
        best = float(heights[top])
        lowest, highest = slants[max(top - 1, 0)], slants[min(top + 1, 200)]
    return best


def check_against_samples(section: Section) -> None:
    found = measure(section)
    points = sampled(section)
    assert found.actual_throat == pytest.approx(float(np.hypot(*points.T).min()), abs=1e-4)
    bisector = np.array(section.joint.bisector)
    assert found.effective_throat == pytest.approx(float((points @ bisector).min()), abs=1e-4)
    height = tallest_triangle(points[:: max(1, len(points) // 20_000)], section.joint.angle)
    assert found.theoretical_throat == pytest.approx(height, abs=2e-3)
    chord = points[-1] - points[0]
    off = (points - points[0]) @ np.array((chord[1], -chord[0])) / np.hypot(*chord)
    assert found.convexity == pytest.approx(max(0.0, float(off.max())), abs=1e-4)
    assert found.concavity == pytest.approx(max(0.0, float(-off.min())), abs=1e-4)


@given(st.data())
def test_rounded_beads_against_dense_sampling(data: st.DataObject) -> None:
    joint = data.draw(joints())
    check_against_samples(Section.of(joint, data.draw(rounded_beads(joint))))


@given(st.data())
def test_traced_beads_against_dense_sampling(data: st.DataObject) -> None:
    check_against_samples(data.draw(traced_sections(data.draw(joints()))))


@given(st.one_of(sections(), traced_sections()))
def test_measures_stand_in_order(section: Section) -> None:
    found = measure(section)
    slack = 1e-9
    assert 0.0 < found.effective_throat <= found.theoretical_throat + slack
    assert found.theoretical_throat <= found.actual_throat + slack
    assert found.actual_throat <= min(found.leg_base, found.leg_upright) + slack
    assert found.effective_size <= min(found.leg_base, found.leg_upright) + slack
    assert 0.0 < found.toe_angle_base < 180.0
    assert 0.0 < found.toe_angle_upright < 180.0
    assert min(found.convexity, found.concavity) >= 0.0


@given(LEGS, LEGS, st.floats(-0.9, 0.9))
def test_a_fine_trace_of_an_arc_measures_as_the_arc(
    base: float, upright: float, share: float
) -> None:
    joint = Joint()
    lowest, highest = crown_limits(joint, base, upright)
    bead = Bead(base, upright, crown=share * (highest if share > 0.0 else -lowest))
    points = bead.face(joint)[0].flatten(1e-5)
    traced = Bead.traced(tuple((float(x), float(y)) for x, y in points), joint)
    exact, close = measure(Section.of(joint, bead)), measure(Section.of(joint, traced))
    for field in fields(Measures):
        one, two = getattr(exact, field.name), getattr(close, field.name)
        if field.name == "face":
            continue
        assert two == pytest.approx(one, abs=0.5 if "angle" in field.name else 1e-4), field.name


@given(LEGS, LEGS, st.floats(-0.9, 0.9))
def test_a_mirrored_section_has_mirrored_measures(
    base: float, upright: float, share: float
) -> None:
    lowest, highest = crown_limits(Joint(), base, upright)
    crown = share * (highest if share > 0.0 else -lowest)
    one, two = asdict(measured(base, upright, crown)), asdict(measured(upright, base, crown))
    swapped = {"leg_base": "leg_upright", "toe_angle_base": "toe_angle_upright"}
    swapped |= {value: key for key, value in swapped.items()}
    for key, value in one.items():
        other = two[swapped.get(key, key)]
        if key == "face":
            # A crown within rounding of the limit may fall to either side.
            assert other == value or abs(abs(crown) - 0.05) < 1e-9
        else:
            assert other == pytest.approx(value, abs=1e-9)


def test_what_lies_beside_the_face_changes_no_measure() -> None:
    plain = Bead(8.0, 7.0, crown=0.5)
    bare = measure(Section.of(Joint(), plain))
    dressed = replace(plain, undercut_base=Undercut(0.4, 1.5), overlap_upright=Overlap(2.0))
    spatter = (Spatter("base", 14.0, 0.8), Spatter("upright", 15.0, 1.0))
    assert measure(Section.of(Joint(), dressed, spatter)) == bare
    assert measure(Section.of(Joint(root_opening=2.0), dressed)) == bare


def test_measures_are_printed_by_key() -> None:
    keys = [
        "leg_base", "leg_upright", "actual_throat", "theoretical_throat", "effective_size",
        "effective_throat", "convexity", "concavity", "face", "face_width", "toe_angle_base",
        "toe_angle_upright",
    ]  # fmt: skip
    assert list(measured(8.0, 8.0).as_dict()) == keys
