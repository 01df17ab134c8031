"""The zoo crossed with every public function of geometry.

Each answer is checked against something that shares no code with it: dense points, shapely on the
bare corners, closed forms, or what must hold of any right answer. Nothing may be NaN, and nothing
but a `GeometryError` that names the place may be raised.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from itertools import pairwise
from typing import Final

import numpy as np
import pytest
import shapely
from shapely.affinity import affine_transform
from shapely.geometry import Polygon

from geometry.bead import Bead, trace_end_faults
from geometry.clearance import entered, round_corners
from geometry.contact import Hand, Motion, drag, touches, turn
from geometry.descent import Descent
from geometry.faults import GeometryError
from geometry.features import features_of
from geometry.joint import MEMBERS, Member
from geometry.leaf import EDGES, Leaf
from geometry.measures import measure
from geometry.nearby import near
from geometry.pairing import all_pairs
from geometry.pairs import Spot
from geometry.penetration import is_free, penetration, signed_distance
from geometry.pose import Pose, wrap_degrees
from geometry.reading import STATES, read
from geometry.seat import home_pose, nearest_free, press_home, waiting_pose
from geometry.section import Section
from geometry.sweep import dip, free, middle, travel
from tests.geometry.oracle import Ruler
from tests.geometry.zoo import BAD_LEAVES, BAD_POSES, BAD_SECTIONS, LEAVES, POSES, SECTIONS

__all__ = ["AT_EVERY_POSE", "EVERY_SECTION", "MOVED"]

SPOTS: Final = ("home", "on its other side", "in the air", "deep in steel", "a hair's turn")
SMALL: Final = ("usual", "worn", "small", "tiny")


@cache
def section(name: str) -> Section:
    return SECTIONS[name]()


@cache
def leaf(name: str, edge: str) -> Leaf:
    return LEAVES[name]().with_edge("leg" if edge == "leg" else "throat")


def numbers(value: object) -> Iterator[float]:
    """Every number in an answer, however deep."""
    if isinstance(value, float | int):
        yield float(value)
    elif isinstance(value, np.ndarray):
        yield from value.ravel().tolist()
    elif isinstance(value, tuple | list):
        for item in value:
            yield from numbers(item)
    elif is_dataclass(value):
        for field in fields(value):
            yield from numbers(getattr(value, field.name))


def sound(value: object) -> None:
    assert all(math.isfinite(number) for number in numbers(value))


def laid(held: Leaf, pose: Pose) -> Polygon:
    cos, sin = math.cos(math.radians(pose.angle)), math.sin(math.radians(pose.angle))
    flip = -1.0 if pose.turned else 1.0
    placed = affine_transform(
        held.body.polygon, [cos, -sin * flip, sin, cos * flip, pose.x, pose.y]
    )
    assert isinstance(placed, Polygon)
    return placed


# --- what can't be ------------------------------------------------------------------------------


@pytest.mark.parametrize("name", BAD_SECTIONS)
def test_a_section_that_cannot_be_is_refused_by_place(name: str) -> None:
    make, place = BAD_SECTIONS[name]
    with pytest.raises(GeometryError) as error:
        make()
    assert place in {fault.at for fault in error.value.faults}
    assert all(fault.text and fault.right for fault in error.value.faults)


@pytest.mark.parametrize("name", BAD_LEAVES)
def test_a_leaf_that_cannot_be_is_refused_by_place(name: str) -> None:
    make, place = BAD_LEAVES[name]
    with pytest.raises(GeometryError) as error:
        make()
    assert place in {fault.at for fault in error.value.faults}


@pytest.mark.parametrize("name", BAD_POSES)
def test_a_pose_that_cannot_be_is_refused_by_place(name: str) -> None:
    make, place = BAD_POSES[name]
    with pytest.raises(GeometryError) as error:
        make()
    assert place in {fault.at for fault in error.value.faults}


# --- every section ------------------------------------------------------------------------------


def _measure(of: Section) -> None:
    found, ruler = measure(of), Ruler(of)
    sound(found)
    for key, value in ruler.measures().items():
        assert getattr(found, key) == pytest.approx(value, rel=2e-4, abs=2e-4), key


def _outline(of: Section) -> None:
    for body in (*of.bodies, of.outline):
        assert body.polygon.is_valid
        sound(body.ring)
        features = features_of(body)
        sound(features)
        # A bulging arc reaches as far as its centre does and a radius.
        widest = features.discs.radius.max(initial=0.0)
        assert features.reach + widest >= np.hypot(*body.ring.T).max() - 1e-3
    # Steel and weld make up the outline, and nothing else does.
    whole = sum(body.polygon.area for body in of.bodies)
    assert of.outline.polygon.area == pytest.approx(whole, rel=1e-4, abs=0.01)


def _signed_distance(of: Section) -> None:
    # Points about the bead, and on a grid about the whole plate.
    low, high = of.outline.ring.min(axis=0) - 5.0, of.outline.ring.max(axis=0) + 5.0
    grid = np.stack(np.meshgrid(*np.linspace(low, high, 9).T), axis=-1).reshape(-1, 2)
    span = max(of.bead.leg_base, of.bead.leg_upright)
    points = np.concatenate(
        (grid, of.face[0].start + span * np.random.default_rng(3).normal(size=(40, 2)))
    )
    found = signed_distance(of.outline, points)
    inside = shapely.contains_xy(of.outline.polygon, points[:, 0], points[:, 1])
    away = shapely.distance(of.outline.polygon.boundary, shapely.points(points))
    assert np.abs(np.abs(found) - away).max() < 2e-4
    clear = away > 1e-3
    assert ((found < 0.0) == inside)[clear].all()


def _bead(of: Section) -> None:
    bead, joint = of.bead, of.joint
    assert not bead.faults(joint)
    assert not joint.faults()
    if bead.trace is not None:
        assert not trace_end_faults(bead.trace, joint)
        again = Bead.traced(bead.trace, joint)
        assert (again.trace, again.leg_base) == (bead.trace, bead.leg_base)


def _read_at_the_seat(of: Section) -> None:
    for kind in ("small", "usual", "less than worn"):
        for edge in EDGES:
            for member in MEMBERS:
                held = leaf(kind, edge)
                seat = Ruler(of).seat(held, member)
                if seat is not None:
                    turned = edge == "leg" and member == "base"
                    pose = Pose(seat.x, seat.y, of.joint.angle if turned else 0.0, turned)
                    reading = read(of, held, pose)
                    assert reading.state == seat.state
                    assert (reading.gap is None) == (seat.gap is None)
                    if seat.gap is not None:
                        assert reading.gap == pytest.approx(seat.gap, rel=1e-3, abs=4e-3)


def _home_pose(of: Section) -> None:
    for edge in EDGES:
        for member in MEMBERS:
            pose = home_pose(of.joint, leaf("usual", edge), member)
            assert (pose.x, pose.y) == (0.0, 0.0)
            assert pose.turned == (edge == "leg" and member == "base")
            # The long edge lies along the member that the tip does not read.
            assert pose.angle in (0.0, of.joint.angle)


EVERY_SECTION: Final[dict[str, Callable[[Section], None]]] = {
    "measures.measure": _measure,
    "features.features_of": _outline,
    "penetration.signed_distance": _signed_distance,
    "bead.trace_end_faults": _bead,
    "seat.home_pose": _home_pose,
    "reading.read": _read_at_the_seat,
}


@pytest.mark.parametrize("name", SECTIONS)
@pytest.mark.parametrize("call", EVERY_SECTION)
def test_every_section(call: str, name: str) -> None:
    EVERY_SECTION[call](section(name))


# --- every section and leaf at every pose -------------------------------------------------------


def _read(of: Section, held: Leaf, pose: Pose) -> None:
    reading = read(of, held, pose)
    assert reading.state in STATES
    sound(reading)
    assert (reading.gap is not None) == (reading.state in ("daylight", "held off"))
    assert reading.gap is None or reading.gap > 0.0
    assert reading.state == "not seated" or not reading.in_the_way
    assert set(reading.in_the_way) <= set(of.outline.piece_names)


def _depth(of: Section, held: Leaf, pose: Pose) -> None:
    depth = penetration(of.outline, held.body, pose)
    sound(depth)
    steel, blade = of.outline.polygon, laid(held, pose)
    assert is_free(of.outline, held.body, pose) == (depth <= 1e-6)
    # Points every half millimetre of either boundary, where they stand in the other body. A deep
    # crossing is sampled every millimetre in geometry, which says so.
    step = max(0.5, of.outline.polygon.length / 4000.0)
    sampled = max(_deepest(steel, blade, step), _deepest(blade, steel, step))
    assert sampled - (0.55 if sampled > 0.25 else 1e-3) <= depth <= sampled + step


def _deepest(body: Polygon, other: Polygon, step: float) -> float:
    ring = shapely.get_coordinates(shapely.segmentize(other, step))
    inside = ring[shapely.contains_xy(body, ring[:, 0], ring[:, 1])]
    away = shapely.distance(body.boundary, shapely.points(inside))
    return float(away.max(initial=0.0))


def _touches(of: Section, held: Leaf, pose: Pose) -> None:
    found = touches(of.outline, held.body, pose)
    sound(found)
    for touch in found:
        spot = shapely.Point(touch.at)
        assert set(touch.fixed.split("|")) <= set(of.outline.piece_names)
        assert set(touch.moving.split("|")) <= set(held.body.piece_names)
        assert shapely.distance(spot, of.outline.polygon.boundary) < 2e-3


def _moves(of: Section, held: Leaf, pose: Pose) -> None:
    """A drag, a turn and all that they stand on: free all the way, and no dearer at the end."""
    hand = Hand(held.handle, of.joint.bisector, 0.0)
    motion = drag(of.outline, held.body, pose, hand)
    twist = turn(of.outline, held.body, pose, pose.to_section(held.handle), 30.0)
    for moved in (motion, twist):
        sound(moved)
        assert moved.path[0] == pose
        # The contract of a drag asks for a free pose; of others only that it ends, in numbers.
        if not is_free(of.outline, held.body, pose):
            continue
        _is_free_all_along(of, held, moved)
    assert hand.cost(motion.pose) <= hand.cost(pose) * (1.0 + 1e-9) + 1e-9


def _is_free_all_along(of: Section, held: Leaf, moved: Motion) -> None:
    for a, b in pairwise(moved.path[:40]):
        half = Pose(
            (a.x + b.x) / 2.0,
            (a.y + b.y) / 2.0,
            a.angle + wrap_degrees(b.angle - a.angle) / 2.0,
            a.turned,
        )
        for at in (half, b):
            assert penetration(of.outline, held.body, at) <= 1e-6


def _seats(of: Section, held: Leaf, pose: Pose) -> None:
    """Press home, the waiting pose and the nearest room."""
    member: Member = "base" if pose.turned and held.edge == "leg" else "upright"
    waiting = waiting_pose(of, held, member)
    assert is_free(of.outline, held.body, waiting)
    pressed = press_home(of, held, waiting)
    sound(pressed)
    assert is_free(of.outline, held.body, pressed.pose)
    # Resting is being as close as bodies keep: a corner that meets a corner has no name for it.
    assert shapely.distance(of.outline.polygon, laid(held, pressed.pose)) < 2e-4
    room = nearest_free(of, held, pose)
    if room is not None:
        assert is_free(of.outline, held.body, room)
        assert (room.angle, room.turned) == (pose.angle, pose.turned)


def _pairs(of: Section, held: Leaf, pose: Pose) -> None:
    """The kernel's parts: what they say of a pose agrees with the distance between the bodies."""
    body = held.body.mirrored() if pose.turned else held.body
    pairs, spot = all_pairs(of.outline, body), Spot(pose.x, pose.y, pose.radians)
    at = pairs.at(spot)
    sound(at.gap)
    behind = ((at.gap < 0.0) & at.facing).nonzero()[0]
    assert set(round_corners(pairs, at, behind, at.facing)) <= set(behind.tolist())
    away = shapely.distance(of.outline.polygon, laid(held, pose))
    close = near(pairs, spot, 1.0)
    assert len(close.pairs) <= len(pairs)
    if away > 1e-3:
        # What stands free may be behind a side of a corner, and is in no steel for all that.
        assert not entered(pairs, at)
        facing = at.gap[at.facing]
        least = float(facing[facing > 0.0].min(initial=math.inf))
        assert least >= away - 1e-3 or least == math.inf
    beside = Spot(pose.x + 0.5, pose.y, pose.radians)
    assert travel(spot, beside, pairs.reach) == pytest.approx(0.5, rel=1e-6)
    half = middle(spot, beside)
    assert half.x == pytest.approx(pose.x + 0.25, abs=1e-6)
    lowest, guilty = dip(close.pairs, close.pairs.at(spot), close.pairs.at(beside), pairs.reach)
    assert not math.isnan(lowest)
    ends = close.pairs.at(spot), close.pairs.at(beside)
    assert free(close.pairs, *ends, pairs.reach) is (not guilty)
    if away > 0.6:
        assert lowest >= 0.0
        assert not guilty
    if away <= 1e-3:
        return
    descent = Descent(pairs, held.handle, (*pose.to_section(held.handle), pose.radians), 15.0)
    spots, _, _ = descent.run(spot)
    # A hand that wants what it has goes nowhere.
    assert math.dist((spots[-1].x, spots[-1].y), (spot.x, spot.y)) < 1e-6


AT_EVERY_POSE: Final[dict[str, Callable[[Section, Leaf, Pose], None]]] = {
    "reading.read": _read,
    "penetration.penetration": _depth,
    "contact.touches": _touches,
    "pairing.all_pairs": _pairs,
}


@pytest.mark.parametrize("name", SECTIONS)
@pytest.mark.parametrize("call", AT_EVERY_POSE)
def test_every_leaf_at_every_pose(call: str, name: str) -> None:
    kinds = LEAVES if call == "reading.read" else SMALL[:2]
    spots = POSES if call in ("reading.read", "penetration.penetration") else SPOTS
    for kind in kinds:
        for edge in EDGES:
            for spot in spots:
                AT_EVERY_POSE[call](section(name), leaf(kind, edge), POSES[spot])


MOVED: Final = (
    "contact.drag", "contact.turn", "seat.press_home", "seat.waiting_pose", "seat.nearest_free",
    "penetration.is_free", "nearby.near", "sweep.travel", "sweep.middle", "sweep.dip",
    "sweep.free",
    "clearance.entered", "clearance.round_corners",
)  # fmt: skip
"""What the calls below, and those of the pairs above, come to as well."""


@pytest.mark.parametrize("name", SECTIONS)
def test_every_leaf_moves_and_is_seated(name: str) -> None:
    of = section(name)
    for edge in EDGES:
        held = leaf("usual", edge)
        _moves(of, held, POSES["in the air"])
        _moves(of, held, POSES["deep in steel"])
        _seats(of, held, POSES["home"])
