"""The loupe: it never hides what it magnifies, keeps its corner, and shows what stands there."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.section import Section
from trainer.canvas.loupe import CORNERS, lens_of
from trainer.canvas.scene import Loupe, Scene
from trainer.canvas.shapes import Shapes
from trainer.canvas.view import View

FLAT = Section.of(Joint(), Bead(8.0, 8.0))
SHAPES = Shapes()


def scene_at(pose: Pose, edge: str = "leg") -> Scene:
    """A scene with a loupe on an 8 mm leaf."""
    leaf = leaf_of_mark("8 mm", edge)  # type: ignore[arg-type]
    return Scene(section=FLAT, leaf=leaf, pose=pose, loupe=Loupe())


@given(
    x=st.floats(-8.0, 26.0),
    y=st.floats(-14.0, 10.0),
    size=st.sampled_from([(640.0, 480.0), (1140.0, 720.0), (1920.0, 1080.0), (420.0, 700.0)]),
    scale=st.floats(10.0, 40.0),
    previous=st.sampled_from([None, *CORNERS]),
    edge=st.sampled_from(["leg", "throat"]),
)
def test_the_loupe_never_covers_what_it_magnifies(
    x: float, y: float, size: tuple[float, float], scale: float, previous: str | None, edge: str
) -> None:
    view = View((8.0, 5.0), scale, size)
    lens = lens_of(scene_at(Pose(x, y), edge), view, SHAPES, previous)  # type: ignore[arg-type]
    assert lens is not None
    assert math.dist(lens.middle, lens.at) > lens.radius
    left, top, right, bottom = lens.box
    assert left >= 0.0
    assert top >= 0.0
    assert right <= size[0]
    assert bottom <= size[1]


def test_it_stays_in_its_corner_while_that_is_nearly_as_good() -> None:
    view = View((10.0, 6.0), 26.0, (1140.0, 720.0))
    corner, corners = None, []
    for step in range(400):
        angle = step / 20.0
        pose = Pose(2.0 + 1.5 * math.cos(angle), 2.0 + 1.5 * math.sin(angle))
        lens = lens_of(scene_at(pose), view, SHAPES, corner)
        assert lens is not None
        corner = lens.corner
        corners.append(corner)
    assert len(set(corners)) == 1


def test_it_stands_on_the_tip_or_the_spur_or_where_it_is_told() -> None:
    view = View((10.0, 6.0), 26.0, (1140.0, 720.0))
    for edge, at in (("leg", (1.0, 10.0)), ("throat", (5.0, 6.0))):
        lens = lens_of(scene_at(Pose(1.0, 2.0), edge), view, SHAPES)
        assert lens is not None
        assert lens.at == pytest.approx(view.to_screen(at))
        assert lens.view.centre == pytest.approx(at, abs=0.5 / lens.view.device_scale)
    told = replace(scene_at(Pose(1.0, 2.0)), loupe=Loupe(at=(8.0, 0.0)))
    lens = lens_of(told, view, SHAPES)
    assert lens is not None
    assert lens.at == pytest.approx(view.to_screen((8.0, 0.0)))


def test_no_loupe_without_one_or_without_a_leaf() -> None:
    view = View((10.0, 6.0), 26.0, (1140.0, 720.0))
    scene = scene_at(Pose(0.0, 0.0))
    assert lens_of(replace(scene, loupe=None), view, SHAPES) is None
    assert lens_of(replace(scene, leaf=None), view, SHAPES) is None
    assert lens_of(replace(scene, pose=None), view, SHAPES) is None


@given(
    x=st.floats(-5.0, 20.0),
    y=st.floats(-5.0, 10.0),
    ratio=st.sampled_from([1.0, 1.25, 1.5, 1.75, 2.0, 3.0]),
    width=st.integers(400, 2600),
)
def test_the_glass_stands_on_whole_device_pixels(
    x: float, y: float, ratio: float, width: int
) -> None:
    view = View((8.0, 5.0), 22.3, (float(width), 700.0), ratio)
    lens = lens_of(scene_at(Pose(x, y)), view, SHAPES)
    assert lens is not None
    for value in (
        lens.rect.left() * ratio,
        lens.rect.top() * ratio,
        lens.view.centre[0] * lens.view.device_scale,
        lens.view.size[0] * ratio,
    ):
        assert value == pytest.approx(round(value), abs=1e-6)


def test_its_zoom_is_what_it_says() -> None:
    view = View((10.0, 6.0), 26.0, (1140.0, 720.0))
    free = lens_of(scene_at(Pose(0.0, 0.0)), view, SHAPES)
    held = lens_of(replace(scene_at(Pose(0.0, 0.0)), capped=True), view, SHAPES)
    assert free is not None
    assert held is not None
    assert (free.zoom, free.view.scale) == pytest.approx((4.0, 104.0))
    assert (held.zoom, held.view.scale) == pytest.approx((60.0 / 26.0, 60.0))
