"""Views, their limits and caps, and the divisions of the grid."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.leaf import leaf_of_mark
from geometry.lengths import parse_length
from geometry.section import Section
from trainer.canvas.drawing import blade_of, drawing_of
from trainer.canvas.ruler import bar_length, divisions
from trainer.canvas.view import (
    LARGEST_SCALE,
    SMALLEST_SCALE,
    View,
    capped_scale,
    fitted,
    loupe_scale,
)

VIEWS = st.builds(
    View,
    centre=st.tuples(st.floats(-100, 100), st.floats(-100, 100)),
    scale=st.floats(SMALLEST_SCALE, 500.0),
    size=st.tuples(st.integers(200, 4000), st.integers(200, 3000)),
    ratio=st.sampled_from([1.0, 1.25, 1.5, 2.0, 3.0]),
)
POINTS = st.tuples(st.floats(-100, 100), st.floats(-100, 100))


@given(view=VIEWS, point=POINTS)
def test_screen_and_millimetres_are_each_others_inverse(
    view: View, point: tuple[float, float]
) -> None:
    assert view.to_mm(view.to_screen(point)) == pytest.approx(point, abs=1e-8)


@given(view=VIEWS, at=st.tuples(st.floats(0, 2000), st.floats(0, 2000)), by=st.floats(0.1, 10))
def test_zoom_keeps_the_point_under_the_pointer(
    view: View, at: tuple[float, float], by: float
) -> None:
    zoomed = view.zoomed(by, at)
    assert zoomed.to_mm(at) == pytest.approx(view.to_mm(at), abs=1e-7)
    assert SMALLEST_SCALE <= zoomed.scale <= LARGEST_SCALE


@given(view=VIEWS, dx=st.floats(-500, 500), dy=st.floats(-500, 500))
def test_pan_carries_the_picture_along(view: View, dx: float, dy: float) -> None:
    before = view.to_screen((1.0, 2.0))
    after = view.panned(dx, dy).to_screen((1.0, 2.0))
    assert after == pytest.approx((before[0] + dx, before[1] + dy), abs=1e-6)


@given(view=VIEWS, zoom=st.floats(0.5, 50.0), eye_limit=st.floats(0.02, 1.0))
def test_in_marked_work_a_gap_of_the_eye_limit_spans_3_to_6_device_pixels(
    view: View, zoom: float, eye_limit: float
) -> None:
    """Source: the design's own contract, sections 7 and 8."""
    largest = capped_scale(eye_limit, view.ratio)
    capped = view.zoomed(1.0, (0.0, 0.0), largest=largest)
    assert capped.device_scale * eye_limit <= 6.0 + 1e-9
    in_loupe = loupe_scale(capped, zoom, eye_limit, capped=True) * view.ratio * eye_limit
    assert 3.0 - 1e-9 <= in_loupe <= 6.0 + 1e-9


@pytest.mark.parametrize("mark", ["3 mm", "8 mm", "25 mm"])
@pytest.mark.parametrize("size", [(1280.0, 720.0), (1920.0, 1080.0), (400.0, 700.0)])
def test_fit_shows_the_bead_and_the_leaf_at_home(
    section: Section, mark: str, size: tuple[float, float]
) -> None:
    blade, drawing = blade_of(leaf_of_mark(mark)), drawing_of(section)
    view = fitted(View((0.0, 0.0), 1.0, size), drawing, blade, largest=LARGEST_SCALE)
    points = [*drawing.toes, (0.0, 0.0), blade.point, blade.corner]
    for x, y in (view.to_screen(point) for point in points):
        assert 0.0 <= x <= size[0]
        assert 0.0 <= y <= size[1]


def test_fit_shows_a_leaf_that_waits_nearby_but_does_not_follow_one_far_off(flat: Section) -> None:
    view = View((0.0, 0.0), 1.0, (1000.0, 700.0))
    blade, drawing = blade_of(leaf_of_mark("8 mm")), drawing_of(flat)
    near = fitted(view, drawing, blade, largest=1e3, lies=(6.0, 5.0, 30.0, 23.0))
    far = fitted(view, drawing, blade, largest=1e3, lies=(600.0, 500.0, 630.0, 523.0))
    assert near.box[2] >= 30.0
    assert near.box[3] >= 23.0
    assert far.box[2] < 100.0
    assert far.scale > 8.0


@given(scale=st.floats(SMALLEST_SCALE, LARGEST_SCALE), unit=st.sampled_from(["mm", "in"]))
def test_grid_and_scale_bar_are_round_and_neither_crowded_nor_lost(scale: float, unit: str) -> None:
    step = divisions(scale, unit)  # type: ignore[arg-type]
    assert 16.0 <= step.fine * scale <= 16.0 * 5.0
    assert step.strong / step.fine == pytest.approx(round(step.strong / step.fine))
    assert 2 <= round(step.strong / step.fine) <= 10
    length, text = bar_length(scale, unit)  # type: ignore[arg-type]
    assert 220.0 / 5.0 <= length * scale <= 220.0
    assert parse_length(text) == pytest.approx(length, rel=0.03)
    assert text.endswith(unit)
