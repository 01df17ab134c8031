"""Segments and arcs: ends, directions, mirror images, and how well they are flattened."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.curves import Arc, Curve, Segment, Vec, arc_by_radius, arc_by_sagitta

COORDINATES = st.floats(-50.0, 50.0)
POINTS = st.tuples(COORDINATES, COORDINATES)
SAGITTAS = st.floats(0.001, 20.0).flatmap(lambda s: st.sampled_from([s, -s]))


@st.composite
def curves(draw: st.DrawFn) -> Curve:
    start, end = draw(POINTS), draw(POINTS)
    assume(math.dist(start, end) > 0.1)
    return arc_by_sagitta(start, end, draw(st.one_of(st.just(0.0), SAGITTAS)))


def near(a: Vec, b: Vec, tolerance: float = 1e-9) -> bool:
    return math.dist(a, b) <= tolerance


@given(curves())
def test_the_ends_are_kept_exactly(curve: Curve) -> None:
    points = curve.flatten()
    assert tuple(points[0]) == curve.start
    assert tuple(points[-1]) == curve.end


@given(POINTS, POINTS, SAGITTAS)
def test_the_middle_stands_a_sagitta_off_the_chord(start: Vec, end: Vec, sagitta: float) -> None:
    chord = math.dist(start, end)
    assume(chord > 0.1)
    arc = arc_by_sagitta(start, end, sagitta)
    assert isinstance(arc, Arc)
    middle = arc.first + arc.sweep / 2.0
    at = (
        arc.centre[0] + arc.radius * math.cos(middle),
        arc.centre[1] + arc.radius * math.sin(middle),
    )
    right = ((end[1] - start[1]) / chord, (start[0] - end[0]) / chord)
    foot = ((start[0] + end[0]) / 2.0, (start[1] + end[1]) / 2.0)
    expected = (foot[0] + right[0] * sagitta, foot[1] + right[1] * sagitta)
    assert near(at, expected, 1e-9 * max(1.0, arc.radius))
    assert arc.convex == (sagitta > 0.0)


@given(curves())
def test_an_arc_passes_through_its_ends_square_to_the_radius(curve: Curve) -> None:
    assume(isinstance(curve, Arc))
    assert isinstance(curve, Arc)
    for point, direction in (
        (curve.start, curve.start_direction),
        (curve.end, curve.end_direction),
    ):
        radius = (point[0] - curve.centre[0], point[1] - curve.centre[1])
        assert math.hypot(*radius) == pytest.approx(curve.radius, rel=1e-9, abs=1e-9)
        assert math.hypot(*direction) == pytest.approx(1.0)
        along = radius[0] * direction[0] + radius[1] * direction[1]
        assert abs(along) <= 1e-9 * max(1.0, curve.radius)


@given(curves(), st.sampled_from([1e-2, 1e-3, 5e-5]))
def test_flattening_stays_within_its_tolerance(curve: Curve, tolerance: float) -> None:
    assume(isinstance(curve, Arc))
    assert isinstance(curve, Arc)
    points = curve.flatten(tolerance)
    middles = (points[:-1] + points[1:]) / 2.0
    off = curve.radius - np.hypot(*(middles - curve.centre).T)
    assert off.max() <= tolerance * (1.0 + 1e-6) + 1e-9
    assert off.min() >= -1e-9


@given(curves())
def test_length_is_that_of_the_flattened_curve(curve: Curve) -> None:
    steps = np.diff(curve.flatten(1e-6), axis=0)
    assert float(np.hypot(*steps.T).sum()) == pytest.approx(curve.length, rel=1e-3)
    assert float(np.hypot(*steps.T).sum()) <= curve.length * (1.0 + 1e-9)


@given(curves())
def test_run_backwards_twice_is_the_same_curve(curve: Curve) -> None:
    back = curve.reversed()
    assert (back.start, back.end) == (curve.end, curve.start)
    assert near(back.start_direction, (-curve.end_direction[0], -curve.end_direction[1]))
    again = back.reversed()
    assert (again.start, again.end) == (curve.start, curve.end)
    assert near(again.start_direction, curve.start_direction)


@given(curves())
def test_a_mirror_image_keeps_metal_on_the_left(curve: Curve) -> None:
    image = curve.mirrored()
    assert image.start == (curve.end[0], -curve.end[1])
    assert image.end == (curve.start[0], -curve.start[1])
    assert near(image.start_direction, (-curve.end_direction[0], curve.end_direction[1]))
    if isinstance(curve, Arc):
        assert isinstance(image, Arc)
        assert image.convex == curve.convex
    points, mirrored = curve.flatten(), image.flatten()[::-1] * (1.0, -1.0)
    assert np.abs(points - mirrored).max() <= 1e-8 * max(1.0, curve.length)


@given(curves(), st.floats(0.001, 0.999), st.floats(0.001, 0.999))
def test_an_arc_spans_what_it_sweeps_and_nothing_else(
    curve: Curve, inside: float, outside: float
) -> None:
    assume(isinstance(curve, Arc))
    assert isinstance(curve, Arc)
    assert curve.spans(curve.first + inside * curve.sweep)
    rest = math.copysign(math.tau, curve.sweep) - curve.sweep
    assert not curve.spans(curve.first - outside * rest)
    assert curve.spans(curve.first + inside * curve.sweep + math.tau)


def test_a_half_circle() -> None:
    arc = arc_by_sagitta((2.0, 0.0), (-2.0, 0.0), 2.0)
    assert isinstance(arc, Arc)
    assert arc.length == pytest.approx(2.0 * math.pi)
    assert near(arc.start_direction, (0.0, 1.0))
    assert near(arc.end_direction, (0.0, -1.0))


def test_more_than_a_half_circle() -> None:
    arc = arc_by_sagitta((1.0, 0.0), (-1.0, 0.0), 1.0 + math.sqrt(2.0))
    assert isinstance(arc, Arc)
    assert arc.radius == pytest.approx(math.sqrt(2.0))
    assert math.degrees(arc.sweep) == pytest.approx(270.0)


@pytest.mark.parametrize("sagitta", [0.0, 1e-300, -1e-9, 9e-7])
def test_no_sagitta_is_a_straight_line(sagitta: float) -> None:
    assert arc_by_sagitta((0.0, 0.0), (1.0, 0.0), sagitta) == Segment((0.0, 0.0), (1.0, 0.0))


@pytest.mark.parametrize("sagitta", [1e-6, -1e-6, 1e-5])
def test_hardly_any_sagitta_is_still_flattened(sagitta: float) -> None:
    for chord in (1.0, 40.0, 1000.0):
        points = arc_by_sagitta((0.0, 0.0), (chord, 0.0), sagitta).flatten(1e-7)
        assert 2 <= len(points) < 100
        assert np.abs(points[:, 1]).max() <= abs(sagitta) + 1e-4


def test_an_arc_needs_two_points() -> None:
    with pytest.raises(ValueError, match="two distinct end points"):
        arc_by_sagitta((1.0, 1.0), (1.0, 1.0), 0.5)


def test_an_arc_of_a_radius_reaches_two_radii() -> None:
    with pytest.raises(ValueError, match="lie on no circle"):
        arc_by_radius((0.0, 0.0), (2.1, 0.0), 1.0, convex=True)


@given(POINTS, POINTS, st.floats(1.0, 5.0), st.booleans())
def test_an_arc_of_a_radius_is_the_shorter_one(
    start: Vec, end: Vec, stretch: float, convex: bool
) -> None:
    chord = math.dist(start, end)
    assume(chord > 0.1)
    radius = chord / 2.0 * stretch
    arc = arc_by_radius(start, end, radius, convex=convex)
    assume(isinstance(arc, Arc))
    assert isinstance(arc, Arc)
    assert arc.radius == pytest.approx(radius, rel=1e-6)
    assert abs(arc.sweep) <= math.pi * (1.0 + 1e-6)
    assert arc.convex == convex
