"""Bodies: what is refused, and what the polygon keeps of the true boundary."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bodies import Body, Piece
from geometry.curves import Segment, arc_by_sagitta
from geometry.faults import GeometryError

SQUARE = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))


def codes(error: pytest.ExceptionInfo[GeometryError]) -> list[str]:
    return [fault.code for fault in error.value.faults]


def lens(sagitta: float) -> Body:
    return Body(
        "lens",
        (
            Piece("floor", Segment((0.0, 0.0), (4.0, 0.0))),
            Piece("roof", arc_by_sagitta((4.0, 0.0), (0.0, 0.0), sagitta)),
        ),
    )


def test_a_boundary_runs_counter_clockwise() -> None:
    with pytest.raises(GeometryError) as error:
        Body.of_points("square", tuple(reversed(SQUARE)))
    assert codes(error) == ["crossed"]


def test_a_bow_tie_is_refused() -> None:
    # Shapely would give a bow tie the area 0.0 and say nothing.
    with pytest.raises(GeometryError) as error:
        Body.of_points("tie", ((0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)))
    assert codes(error) == ["crossed"]


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_number_that_is_none_is_refused(value: float) -> None:
    # Shapely measures a distance of 0.0 to such a point: a false contact.
    with pytest.raises(GeometryError) as error:
        Body.of_points("square", (*SQUARE[:3], (0.0, value)))
    assert codes(error) == ["not-finite"]


def test_a_gap_in_the_boundary_is_refused_by_the_piece_before_it() -> None:
    with pytest.raises(GeometryError, match="is open after 'roof'") as error:
        Body(
            "lens",
            (
                Piece("floor", Segment((0.0, 0.0), (4.0, 0.0))),
                Piece("roof", arc_by_sagitta((4.0, 0.0), (0.0, 1e-6), 1.0)),
            ),
        )
    assert codes(error) == ["open"]


@pytest.mark.parametrize("count", [0, 1])
def test_a_body_has_a_boundary(count: int) -> None:
    with pytest.raises(GeometryError) as error:
        Body("line", (Piece("side", Segment((0.0, 0.0), (1.0, 0.0))),) * count)
    assert codes(error) == ["empty"]


def test_a_body_without_area_is_refused() -> None:
    with pytest.raises(GeometryError) as error:
        Body.of_points("line", ((0.0, 0.0), (1.0, 0.0)))
    assert codes(error) == ["empty"]
    with pytest.raises(GeometryError) as error:
        Body.of_points("line", ((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)))
    assert codes(error) == ["crossed"]


@given(st.floats(0.01, 6.0))
def test_the_polygon_keeps_the_area_of_the_true_body(sagitta: float) -> None:
    body = lens(sagitta)
    radius = (4.0 + sagitta * sagitta) / (2.0 * sagitta)
    sweep = 4.0 * math.atan2(sagitta, 2.0)
    area = radius * radius * (sweep - math.sin(sweep)) / 2.0
    length = radius * sweep
    assert body.polygon.area <= area + 1e-9
    assert body.polygon.area == pytest.approx(area, abs=1e-4 * length)


def test_pieces_keep_their_names() -> None:
    body = lens(1.0)
    assert body.piece_names == ("floor", "roof")
    assert body.line("floor").length == 4.0
    assert body.line("floor", "roof").length == pytest.approx(body.polygon.exterior.length)
    assert body.line("wall").is_empty


def test_several_pieces_may_share_a_name() -> None:
    body = Body.of_points("square", SQUARE, "side")
    assert body.piece_names == ("side",)
    assert body.line("side").length == 8.0


def test_the_ring_does_not_repeat_its_first_point() -> None:
    ring = Body.of_points("square", SQUARE).ring
    assert [tuple(point) for point in ring] == list(SQUARE)


@given(st.floats(-0.9, 3.0).filter(lambda sagitta: abs(sagitta) > 0.01))
def test_a_mirror_image_is_a_body_of_the_same_area(sagitta: float) -> None:
    body = Body(
        "slab",
        (
            Piece("floor", Segment((0.0, -1.0), (4.0, -1.0))),
            Piece("side", Segment((4.0, -1.0), (4.0, 0.0))),
            Piece("roof", arc_by_sagitta((4.0, 0.0), (0.0, 0.0), sagitta)),
            Piece("side", Segment((0.0, 0.0), (0.0, -1.0))),
        ),
    )
    image = body.mirrored()
    assert image.polygon.area == pytest.approx(body.polygon.area, abs=1e-9)
    assert sorted(image.piece_names) == sorted(body.piece_names)
    assert image.polygon.bounds[3] == 1.0


def test_bodies_are_told_apart_by_identity() -> None:
    one, two = lens(1.0), lens(1.0)
    assert one != two
    assert len({one, two, one}) == 2
