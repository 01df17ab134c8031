"""What takes no section: lengths, lines, arcs, outlines, planes; and that the zoo forgets nothing.

As in `test_zoo`: a right answer, or a `GeometryError` that names the place.
"""

from __future__ import annotations

import importlib
import inspect
import math
import pkgutil
from collections.abc import Callable
from fractions import Fraction
from typing import Any, Final

import numpy as np
import pytest
from numpy.typing import NDArray

import geometry
from geometry.bodies import Body, Piece
from geometry.curves import Arc, Segment, arc_by_radius, arc_by_sagitta
from geometry.faults import GeometryError, number_faults
from geometry.joint import MEMBERS, other_member
from geometry.leaf import RACKS, leaf_of_mark, rack
from geometry.lengths import format_length, inch_fraction, parse_length
from geometry.pose import wrap_degrees
from geometry.projection import factor, project, stretching
from tests.geometry.test_zoo import AT_EVERY_POSE, EVERY_SECTION, MOVED

HERE: Final = (
    "bead.trace_end_faults", "curves.arc_by_radius", "curves.arc_by_sagitta",
    "faults.number_faults", "joint.other_member", "leaf.leaf_of_mark", "leaf.rack",
    "lengths.format_length", "lengths.inch_fraction", "lengths.parse_length", "pose.wrap_degrees",
    "projection.factor", "projection.project", "projection.stretching",
)  # fmt: skip

NONE: Final = (math.nan, math.inf, -math.inf)


def test_the_zoo_meets_every_public_function() -> None:
    """A new public function belongs into the zoo before it belongs to geometry."""
    public = set()
    for module in pkgutil.iter_modules(geometry.__path__):
        loaded = importlib.import_module(f"geometry.{module.name}")
        for name in loaded.__all__:
            # A cached function is no function to inspect, but wraps one.
            if inspect.isfunction(inspect.unwrap(getattr(loaded, name))):
                public.add(f"{module.name}.{name}")
    assert public == {*EVERY_SECTION, *AT_EVERY_POSE, *MOVED, *HERE}


# --- lines, arcs, outlines ----------------------------------------------------------------------

POINTS: Final[dict[str, tuple[Any, Any]]] = {
    "apart": ((0.0, 0.0), (3.0, 4.0)),
    "a hair apart": ((1.0, 1.0), (1.0, 1.0 + 1e-12)),
    "a speck apart": ((0.0, 0.0), (1e-300, 0.0)),
    "a world apart": ((-1e5, 0.0), (1e5, 0.0)),
}
SAGITTAS: Final = (0.0, 1e-300, -1e-7, 1e-6, 0.5, -2.5, 40.0, 1e5)


@pytest.mark.parametrize("name", POINTS)
@pytest.mark.parametrize("sagitta", SAGITTAS)
def test_an_arc_passes_through_three_points(name: str, sagitta: float) -> None:
    start, end = POINTS[name]
    curve = arc_by_sagitta(start, end, sagitta)
    assert (curve.start, curve.end) == (start, end)
    points = curve.flatten(max(1e-4, abs(sagitta) * 1e-6))
    assert np.isfinite(points).all()
    if isinstance(curve, Arc):
        chord = math.dist(start, end)
        # The circle's own equation: each end a radius off, and the middle at the sagitta.
        for point in (start, end):
            assert math.dist(point, curve.centre) == pytest.approx(curve.radius, rel=1e-6)
        aside = abs(math.dist(curve.centre, np.add(start, end) / 2.0))
        near = min(abs(curve.radius - aside), abs(curve.radius + aside))
        far = max(abs(curve.radius - aside), abs(curve.radius + aside))
        found = far if abs(sagitta) > chord / 2.0 else near
        assert found == pytest.approx(abs(sagitta), rel=1e-3, abs=1e-6)
    else:
        assert abs(sagitta) < 1e-6


@pytest.mark.parametrize("value", NONE)
def test_an_arc_of_no_number_is_refused(value: float) -> None:
    for place, arguments in (
        ("/start/x", ((value, 0.0), (1.0, 0.0), 0.5)),
        ("/start/y", ((0.0, value), (1.0, 0.0), 0.5)),
        ("/end/x", ((0.0, 0.0), (value, 0.0), 0.5)),
        ("/end/y", ((0.0, 0.0), (1.0, value), 0.5)),
        ("/sagitta", ((0.0, 0.0), (1.0, 0.0), value)),
    ):
        with pytest.raises(GeometryError, match=f"^{place}: "):
            arc_by_sagitta(*arguments)
        start, end, radius = arguments
        place_of_radius = place.replace("sagitta", "radius")
        with pytest.raises(GeometryError, match=f"^{place_of_radius}: "):
            arc_by_radius(start, end, radius, convex=True)


@pytest.mark.parametrize("radius", [0.0, -1.0, 0.49, 1e-300])
def test_a_circle_too_small_is_refused(radius: float) -> None:
    with pytest.raises(GeometryError, match=r"^/radius: "):
        arc_by_radius((0.0, 0.0), (1.0, 0.0), radius, convex=False)


@pytest.mark.parametrize("radius", [0.5, 1.0, 1e5])
@pytest.mark.parametrize("convex", [True, False])
def test_an_arc_by_its_radius_has_it(radius: float, *, convex: bool) -> None:
    curve = arc_by_radius((0.0, 0.0), (1.0, 0.0), radius, convex=convex)
    if isinstance(curve, Arc):
        assert curve.radius == pytest.approx(radius, rel=1e-6)
        assert curve.convex == convex
    else:
        # A radius of a hundred metres over a millimetre: nothing but a line.
        assert radius > 1e5 - 1.0


def test_ends_that_coincide_are_refused() -> None:
    for make in (
        lambda: arc_by_sagitta((1.0, 2.0), (1.0, 2.0), 0.5),
        lambda: arc_by_radius((1.0, 2.0), (1.0, 2.0), 0.5, convex=True),
        lambda: Segment((1.0, 2.0), (1.0, 2.0)).start_direction,
    ):
        with pytest.raises(GeometryError, match=r"^/end: .*\(1.*2"):
            make()


SQUARE: Final = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))


@pytest.mark.parametrize(
    "ring",
    [
        (), SQUARE[:1], SQUARE[:2], SQUARE[::-1], (*SQUARE, SQUARE[3]), (SQUARE[0], *SQUARE),
        ((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)), ((0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)),
        (*SQUARE, (1.0, 0.0)), ((0.0, 0.0), (2.0, 0.0), (1.0, math.nan)),
        ((0.0, 0.0), (math.inf, 0.0), (1.0, 1.0)), ((0.0, 0.0), (1e-200, 0.0), (0.0, 1e-200)),
    ],
)  # fmt: skip
def test_an_outline_that_is_none_is_refused(ring: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(GeometryError, match="box") as error:
        Body.of_points("box", ring)
    assert error.value.faults[0].params["body"] == "box"


def test_an_outline_of_no_pieces_is_refused() -> None:
    with pytest.raises(GeometryError, match="box"):
        Body("box", ())
    with pytest.raises(GeometryError, match="box"):
        Body("box", (Piece("side", Segment((0.0, 0.0), (0.0, 0.0))),) * 3)


# --- numbers ------------------------------------------------------------------------------------


@pytest.mark.parametrize("angle", [0.0, 180.0, -180.0, 180.0 + 1e-9, 539.9, -1e9, 1e15, 1e-300])
def test_an_angle_is_wrapped_to_the_same_direction(angle: float) -> None:
    wrapped = wrap_degrees(angle)
    assert -180.0 < wrapped <= 180.0
    assert (Fraction(angle) - Fraction(wrapped)) % 360 == pytest.approx(0.0, abs=1e-6) or (
        Fraction(angle) - Fraction(wrapped)
    ) % 360 == pytest.approx(360.0, abs=1e-6)


@pytest.mark.parametrize("value", NONE)
def test_what_is_no_number_is_no_length_and_no_angle(value: float) -> None:
    calls: tuple[Callable[[float], object], ...] = (wrap_degrees, format_length)
    for call in calls:
        with pytest.raises(GeometryError):
            call(value)
    assert inch_fraction(value) is None
    assert [fault.at for fault in number_faults("/here", {"there": value})] == ["/here/there"]


@pytest.mark.parametrize(
    "text", ["", " ", "mm", "-8 mm", "8 8 mm", "1/0 in", "nan mm", "inf mm", "1e400 mm",
             f"{'9' * 400} mm", "1/2/3 in", "8 cm", "\0", "1 1.5 in", f"{'1' * 5000}/3 in"],
)  # fmt: skip
def test_what_is_no_length_is_refused(text: str) -> None:
    with pytest.raises(GeometryError):
        parse_length(text)
    with pytest.raises(GeometryError):
        leaf_of_mark(text)


@pytest.mark.parametrize("length", [0.0, 1e-9, 25.4 / 16.0, 0.05, 1e6, 999.999])
def test_a_printed_length_is_read_back(length: float) -> None:
    assert parse_length(format_length(length)) == pytest.approx(length, abs=0.00501)
    assert parse_length(format_length(length, "in")) == pytest.approx(length, abs=0.0128)
    fraction = inch_fraction(length)
    if fraction is not None:
        assert parse_length(f"{fraction} in") == pytest.approx(length, abs=1e-5)


def test_racks_hold_leaves_of_their_marks() -> None:
    for name in RACKS:
        sizes = [leaf.size for leaf in rack(name)]
        assert sizes == sorted(set(sizes))
        for leaf in rack(name):
            assert leaf_of_mark(leaf.mark) == leaf
    with pytest.raises(GeometryError, match="metric"):
        rack("imperial")  # type: ignore[arg-type]


def test_the_other_of_two_members() -> None:
    assert [other_member(member) for member in MEMBERS] == ["upright", "base"]
    with pytest.raises(GeometryError, match="roof"):
        other_member("roof")  # type: ignore[arg-type]


# --- planes and matrices ------------------------------------------------------------------------


def nearest(target: tuple[float, float, float], spaces: NDArray[np.float64]) -> NDArray[np.float64]:
    """The nearest point of all half-spaces, by projecting on each in turn (Dykstra)."""
    point, left = np.array(target), np.zeros((len(spaces), 3))
    for _ in range(4000):
        for index, (*normal, bound) in enumerate(spaces):
            wanted = point + left[index]
            across = np.array(normal)
            short = max(0.0, bound - float(across @ wanted)) / float(across @ across)
            point = wanted + short * across
            left[index] = wanted - point
    return point


@pytest.mark.parametrize("seed", range(12))
def test_a_point_is_projected_onto_half_spaces(seed: int) -> None:
    dice = np.random.default_rng(seed)
    normals = dice.normal(size=(dice.integers(1, 5), 3))
    # All of them hold the origin, so they have points in common.
    spaces = np.column_stack((normals, -np.abs(dice.normal(size=len(normals)))))
    target = tuple((3.0 * dice.normal(size=3)).tolist())
    found = project((target[0], target[1], target[2]), spaces)
    assert found is not None
    assert found[0] == pytest.approx(nearest(target, spaces).tolist(), abs=1e-4)


def test_half_spaces_at_the_edge() -> None:
    at = (1.0, 2.0, 3.0)
    assert project(at, np.empty((0, 4))) == (at, {})
    twice = np.array([(1.0, 0.0, 0.0, 5.0)] * 2)
    found = project(at, twice)
    assert found is not None
    assert found[0] == pytest.approx((5.0, 2.0, 3.0))
    assert project(at, np.array([(0.0, 0.0, 0.0, 1.0)])) is None
    hair = project(at, np.array([(1.0, 0.0, 0.0, 5.0), (1.0, 1e-9, 0.0, 5.0)]))
    assert hair is None or hair[0] == pytest.approx((5.0, 2.0, 3.0), abs=1e-6)


MATRICES: Final[dict[str, list[list[float]]]] = {
    "plain": [[4.0, 1.0, 0.5], [1.0, 3.0, 0.2], [0.5, 0.2, 2.0]],
    "none": [[0.0] * 3 for _ in range(3)],
    "flat": [[1.0, 1.0, 1.0] for _ in range(3)],
    "bent down": [[-2.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
    "tiny": [[1e-300, 0.0, 0.0], [0.0, 1e-300, 0.0], [0.0, 0.0, 1e-300]],
    "huge": [[1e150, 0.0, 0.0], [0.0, 1e150, 0.0], [0.0, 0.0, 1e150]],
}


@pytest.mark.parametrize("name", MATRICES)
def test_matrices_at_the_edge(name: str) -> None:
    matrix = np.array(MATRICES[name])
    lower = factor(MATRICES[name], 0.0)
    if lower is not None:
        assert np.array(lower) @ np.array(lower).T == pytest.approx(matrix, rel=1e-9)
    # An independent word on whether it bends up: all eigenvalues above zero.
    assert (lower is not None) == bool((np.linalg.eigvalsh(matrix) > 1e-310).all())
    change = stretching(MATRICES[name])
    assert np.isfinite(change).all()
    if name in ("plain", "huge"):
        assert change.T @ matrix @ change == pytest.approx(np.eye(3), abs=1e-9)
