"""Drawings and paths: true to the bodies, stored and read back, without numpy."""

from __future__ import annotations

import math
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPointF

from geometry.curves import Arc, arc_by_sagitta
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.section import Section
from trainer.canvas.drawing import Outline, Place, drawing_of
from trainer.canvas.shapes import Shapes, mapped, path_of, pose_transform, smoothed


def test_a_drawing_has_every_body_and_runs_through_its_corners(section: Section) -> None:
    drawing = drawing_of(section)
    assert [body.name for body in drawing.bodies] == [body.name for body in section.bodies]
    for outline, body in zip(drawing.bodies, section.bodies, strict=True):
        assert outline.start == body.pieces[0].curve.start
        assert [step[-2:] for step in outline.steps] == [p.curve.end for p in body.pieces]
    assert drawing.toes == (section.toe("base"), section.toe("upright"))


def test_a_path_is_as_large_as_its_body(section: Section) -> None:
    for outline, body in zip(drawing_of(section).bodies, section.bodies, strict=True):
        left, low, right, high = body.polygon.bounds
        rect = path_of(outline).boundingRect()
        assert (rect.left(), rect.top(), rect.right(), rect.bottom()) == pytest.approx(
            (left, low, right, high), abs=2e-4
        )


@given(
    sagitta=st.floats(1e-6, 6.0),
    sign=st.sampled_from([-1.0, 1.0]),
    at=st.floats(0.0, 1.0),
)
def test_arcs_are_drawn_true(sagitta: float, sign: float, at: float) -> None:
    """Nearly flat arcs too, whose radius is millions of times their sagitta."""
    arc = arc_by_sagitta((8.0, 0.0), (0.0, 8.0), sign * sagitta)
    assert isinstance(arc, Arc)
    step = (*arc.centre, arc.radius, arc.first, arc.sweep, *arc.end)
    path = path_of(Outline("face", arc.start, (step,), closed=False))
    point = path.pointAtPercent(at)
    # Against the sagitta's own circle, without its centre, which lies too far off to subtract.
    along = ((point.x() - 8.0) * -1.0 + point.y()) / math.sqrt(2.0)
    across = (point.x() - 8.0 + point.y()) / math.sqrt(2.0) * sign
    chord = 8.0 * math.sqrt(2.0)
    off = (
        along * (chord - along)
        - across * across
        - across * ((chord * chord / 4.0 - sagitta * sagitta) / sagitta)
    )
    slope = (chord * chord / 4.0 + sagitta * sagitta) / sagitta
    assert abs(off / slope) < 5e-6


@given(
    x=st.floats(-50, 50),
    y=st.floats(-50, 50),
    angle=st.floats(-179, 180),
    turned=st.booleans(),
    u=st.floats(-30, 30),
    v=st.floats(-30, 30),
)
def test_poses_are_drawn_where_the_geometry_has_them(
    x: float, y: float, angle: float, turned: bool, u: float, v: float
) -> None:
    pose = Pose(x, y, angle, turned)
    assert mapped(pose_transform(pose), (u, v)) == pytest.approx(pose.to_section((u, v)))
    place = Place(x, y, angle, turned)
    assert mapped(pose_transform(place), (u, v)) == pytest.approx(pose.to_section((u, v)))


@pytest.mark.parametrize("mark", ["3 mm", "8 mm", "5/16 in", "1 in", "a 4.5 mm"])
@pytest.mark.parametrize("edge", ["leg", "throat"])
def test_a_blade_is_its_leaf(mark: str, edge: str) -> None:
    leaf = leaf_of_mark(mark, edge)  # type: ignore[arg-type]
    paths = Shapes().blade(leaf)
    assert (paths.blade.mark, paths.blade.edge) == (leaf.mark, leaf.edge)
    assert paths.blade.point == leaf.point
    assert paths.blade.corner == (3.0 * leaf.size, leaf.end_edge[1][1])
    middle, radius = paths.hole
    assert paths.outline.contains(middle)
    assert not paths.metal.contains(middle)
    rim = QPointF(radius, 0.0)
    assert all(paths.outline.contains(middle + side) for side in (rim, -rim))
    assert paths.outline.contains(QPointF(*leaf.handle))


def test_paths_are_built_once(convex: Section) -> None:
    shapes = Shapes()
    leaf = leaf_of_mark("8 mm")
    first = shapes.section(convex), shapes.blade(leaf)
    assert shapes.section(convex) is first[0]
    assert shapes.blade(leaf) is first[1]
    assert first[0].steel is shapes.section(convex).steel
    other = leaf.swapped()
    assert shapes.blade(other) is not first[1]


def test_heat_tints_members_only(section: Section) -> None:
    paths = Shapes().section(section)
    weld = paths.body("weld")
    for band in paths.heat:
        assert not band.isEmpty()
        shared = band.intersected(weld).boundingRect()
        assert min(shared.width(), shared.height()) < 0.02


def test_grain_stays_within_the_bead(section: Section) -> None:
    paths = Shapes().section(section)
    bead = paths.body("weld").boundingRect().adjusted(-0.01, -0.01, 0.01, 0.01)
    for lines in paths.grain:
        assert lines.elementCount() > 10
        assert bead.contains(lines.boundingRect())


def test_a_traced_face_is_smoothed_for_the_etching_only() -> None:
    steps = tuple((8.0 - 0.01 * i, 0.01 * i + 0.02 * (i % 2)) for i in range(1, 801))
    face = Outline("face", (8.0, 0.0), steps, closed=False)
    calm = smoothed(face)
    assert len(calm.steps) == 40
    assert (calm.start, calm.steps[-1]) == (face.start, face.steps[-1])
    heights = [x + y - 8.0 for x, y in calm.steps[:-1]]
    assert max(heights) - min(heights) < 0.005


def test_the_canvas_loads_no_numpy() -> None:
    """The window is painted before the geometry is loaded."""
    code = """
import sys, trainer.canvas.canvas
sys.exit(any(name in sys.modules for name in ("numpy", "shapely", "geometry.curves")))
"""
    done = subprocess.run([sys.executable, "-c", code], check=False)
    assert done.returncode == 0
