"""Marks in a picture: what they come to, what is missing from them, how they find their edges."""

from __future__ import annotations

import math
from dataclasses import replace
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from exercises.backdrop import LARGEST_PICTURE
from exercises.intake.photo import Wire, outline_of
from exercises.intake.photo_backdrop import backdrop_of
from exercises.intake.photo_edges import Grey, direction_near, edge_along, snap
from exercises.intake.photo_file import Picture
from exercises.intake.photo_follow import follow, snap_corners, snap_length, snap_line
from exercises.intake.photo_frame import Marks, Spot, frame_of, scale_of
from exercises.intake.photo_plane import homography, mapped
from geometry.faults import GeometryError


def half_plane(normal: float, off: float, size: int = 80, soft: float = 1.0) -> Grey:
    """Dark on one side of a straight edge, bright on the other; the edge is exactly known."""
    x, y = np.meshgrid(np.arange(size) + 0.5, np.arange(size) + 0.5)
    way = math.radians(normal)
    far = (x - size / 2) * math.cos(way) + (y - size / 2) * math.sin(way) - off
    return np.asarray(40.0 + 160.0 / (1.0 + np.exp(-far / (0.6 * soft))), np.float32)


def picture(grey: Grey) -> Picture:
    return Picture("a", np.repeat(grey.astype(np.uint8)[..., None], 3, axis=2), grey)


def spots(*points: tuple[float, float], by_hand: bool = False) -> tuple[Spot, ...]:
    return tuple(Spot(x, y, by_hand) for x, y in points)


SQUARE_ON = Marks(
    scale=spots((0, 0), (200, 0)),
    length=10.0,
    base=spots((150, 300), (260, 300), by_hand=True),
    upright=spots((60, 200), (60, 90), by_hand=True),
    face=spots((220, 300), (140, 220), (60, 140), by_hand=True),
)


@pytest.mark.parametrize("normal", [0.0, 30.0, 90.0, 135.0, 211.0])
@pytest.mark.parametrize("off", [0.0, 0.37, -2.6])
def test_an_edge_is_found_to_a_fraction_of_a_pixel(normal: float, off: float) -> None:
    grey = half_plane(normal, off)
    way = (math.cos(math.radians(normal)), math.sin(math.radians(normal)))
    found = edge_along(grey, (40.0, 40.0), way)
    assert found == pytest.approx(off, abs=0.03)
    at = snap(grey, (41.0, 38.0))
    assert at is not None
    assert (at[0] - 40) * way[0] + (at[1] - 40) * way[1] == pytest.approx(off, abs=0.05)
    seen = direction_near(grey, (40.0, 40.0))
    assert seen is not None
    assert abs(seen[0] * way[0] + seen[1] * way[1]) == pytest.approx(1.0, abs=0.01)


def test_where_nothing_changes_there_is_no_edge() -> None:
    flat = np.full((60, 60), 120.0, np.float32)
    noisy = flat + np.random.default_rng(1).normal(0, 1.0, flat.shape).astype(np.float32)
    assert snap(flat, (30.0, 30.0)) is None
    assert edge_along(noisy, (30.0, 30.0), (1.0, 0.0)) is None
    assert snap_line(flat, spots((10, 30), (50, 30)))[0].by_hand


def test_a_click_at_the_border_or_beyond_is_no_trouble() -> None:
    grey = half_plane(0.0, 0.0)
    for at in ((0.0, 0.0), (80.0, 80.0), (-500.0, 40.0), (40.0, 9000.0)):
        snap(grey, at)
    assert len(follow(grey, Spot(-5.0, 10.0), Spot(90.0, 70.0))) > 50


def test_what_was_put_by_hand_stays() -> None:
    grey = half_plane(90.0, 0.0)
    put = spots((10, 43), (70, 38), by_hand=True)
    assert snap_line(grey, put) == put
    assert snap_length(grey, put) == put
    assert follow(grey, *put).tolist() == [[10.0, 43.0], [70.0, 38.0]]
    assert [spot.at for spot in snap_corners(grey, put + put)] == [spot.at for spot in put + put]


def test_the_wire_follows_an_arc_that_its_clicks_only_begin_and_end() -> None:
    x, y = np.meshgrid(np.arange(160) + 0.5, np.arange(160) + 0.5)
    far = np.hypot(x - 80, y - 150) - 100.0
    grey = np.asarray(30 + 170 / (1 + np.exp(-far / 0.7)), np.float32)
    start, end = ((80 + 100 * math.cos(a), 150 - 100 * math.sin(a)) for a in (0.9, 2.3))
    way = follow(grey, Spot(*start), Spot(*end))
    assert np.abs(np.hypot(way[:, 0] - 80, way[:, 1] - 150) - 100.0).max() < 0.6
    middle = way[len(way) // 4 : -len(way) // 4]
    assert np.abs(np.hypot(middle[:, 0] - 80, middle[:, 1] - 150) - 100.0).max() < 0.15


def test_the_wire_keeps_to_one_kind_of_edge() -> None:
    # A stronger edge of the other kind runs beside it.
    y = np.arange(80.0)[:, None] + np.zeros(120)
    grey = np.where(y < 40, 200.0, np.where(y < 52, 120.0, 250.0)).astype(np.float32)
    way = follow(grey, Spot(5.0, 40.0), Spot(115.0, 40.0))
    assert np.abs(way[:, 1] - 40.0).max() < 0.3


def test_a_wire_that_is_known_is_not_followed_again() -> None:
    wire = Wire(picture(half_plane(90.0, 0.0)))
    line = spots((5, 40), (40, 41), (75, 40))
    assert wire.along(line).tolist() == wire.along(line).tolist()
    assert len(wire.along(line[:1])) == 1
    assert wire._follow.cache_info().misses == 2


def test_by_hand_alone_a_picture_gives_its_section() -> None:
    outline = outline_of(SQUARE_ON, Wire(picture(np.zeros((400, 400), np.float32))))
    assert outline.frame.angle == pytest.approx(90.0)
    assert (outline.measures.leg_base, outline.measures.leg_upright) == pytest.approx((8.0, 8.0))
    assert outline.pixel == pytest.approx(0.05)
    # The toe by hand at least, 2 px at most at 0.05 mm each.
    assert 0.05 * 2.0 / math.sqrt(3.0) < outline.doubts.leg_base < 0.25


def test_a_face_that_was_traced_the_other_way_is_the_same() -> None:
    wire = Wire(picture(np.zeros((400, 400), np.float32)))
    other = replace(SQUARE_ON, face=SQUARE_ON.face[::-1])
    assert outline_of(other, wire).face.trace == outline_of(SQUARE_ON, wire).face.trace


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"length": None}, "photo-scale"),
        ({"scale": ()}, "photo-scale"),
        ({"scale": spots((5, 5), (6, 5))}, "photo-together"),
        ({"base": ()}, "photo-member"),
        ({"upright": spots((60, 200))}, "photo-member"),
        ({"upright": spots((60, 200), (61, 200))}, "photo-member"),
        ({"upright": spots((60, 200), (160, 200))}, "photo-parallel"),
        ({"upright": spots((100, 260), (260, 160))}, "photo-angle"),
        ({"face": ()}, "photo-face"),
        ({"face": spots((220, 300), (215, 299))}, "photo-no-toe"),
        ({"corners": spots((0, 0), (9, 0), (9, 9))}, "photo-corners"),
        ({"corners": spots((0, 0), (9, 0), (18, 0), (0, 9))}, "photo-corners"),
        ({"corners": spots((0, 0), (0, 0), (9, 9), (0, 9))}, "photo-corners"),
    ],
)
def test_what_is_missing_or_can_not_be_is_named(changed: dict[str, object], code: str) -> None:
    marks = replace(SQUARE_ON, **changed)  # type: ignore[arg-type]
    with pytest.raises(GeometryError) as caught:
        outline_of(marks, Wire(picture(np.zeros((400, 400), np.float32))))
    assert code in {fault.code for fault in caught.value.faults}


def test_all_that_is_missing_is_said_at_once() -> None:
    with pytest.raises(GeometryError) as caught:
        frame_of(Marks())
    assert [fault.at for fault in caught.value.faults] == ["/scale", "/base", "/upright"]


def test_a_face_within_a_member_is_refused_as_a_section_is() -> None:
    under = replace(SQUARE_ON, face=spots((220, 300), (140, 330), (60, 140), by_hand=True))
    with pytest.raises(GeometryError) as caught:
        outline_of(under, Wire(picture(np.zeros((400, 400), np.float32))))
    assert "face-in-member" in {fault.code for fault in caught.value.faults}


def test_scale_is_known_by_a_length_or_by_the_sides() -> None:
    corners = spots((0, 0), (100, 0), (100, 50), (0, 50))
    assert scale_of(Marks(corners=corners, sides=(20.0, 10.0))) is None
    assert scale_of(Marks(corners=corners, sides=(20.0, 10.0), sides_known=True)) == 1.0
    both = Marks(corners, (2.0, 1.0), scale=spots((0, 0), (0, 50)), length=12.0)
    assert scale_of(both) == pytest.approx(12.0)


def test_a_homography_undoes_what_a_camera_did() -> None:
    seen = np.array([[10.0, 12.0], [93.0, 20.0], [88.0, 70.0], [5.0, 81.0]])
    wanted = np.array([[0.0, 0.0], [30.0, 0.0], [30.0, 20.0], [0.0, 20.0]])
    there = homography(seen, wanted)
    assert mapped(there, seen) == pytest.approx(wanted, abs=1e-9)
    assert mapped(np.asarray(np.linalg.inv(there), float), wanted) == pytest.approx(seen, abs=1e-9)
    with pytest.raises(np.linalg.LinAlgError):
        homography(np.array([[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [3.0, 0.0]]), wanted)


def test_a_kept_picture_is_small_whatever_it_shows() -> None:
    noise = np.random.default_rng(3).integers(0, 255, (1500, 2000)).astype(np.float32)
    shown = picture(noise)
    outline = outline_of(replace(SQUARE_ON, length=2.0), Wire(shown))
    backdrop = backdrop_of(shown, outline.frame, outline.face.trace)
    assert len(backdrop.jpeg) <= LARGEST_PICTURE


def test_a_kept_picture_lies_true_to_the_section() -> None:
    grey = np.full((400, 400), 30.0, np.float32)
    grey[300:, :] = 200.0
    shown = picture(grey)
    outline = outline_of(SQUARE_ON, Wire(shown))
    backdrop = backdrop_of(shown, outline.frame, outline.face.trace)

    levels = np.asarray(Image.open(BytesIO(backdrop.jpeg)).convert("L"), float)
    # The base's face is the line y = 0 of the section frame.
    row = backdrop.top / backdrop.mm_per_pixel
    assert levels[int(row) - 3].mean() < 60.0
    assert levels[int(row) + 3].mean() > 170.0
