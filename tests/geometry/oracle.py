"""A second opinion on measures and readings: clouds of points, numpy, and nothing of geometry's.

From a section it takes what was stated (angle, legs, crown, trace, what lies at the toes) and draws
it anew, as points along every exposed curve, dense enough for a thousandth of a millimetre. A
measure is then a least or a greatest over points. A leaf is two half-lines and one disc or two; it
is slid home till the first point stops it, and what stops it, and how far from home, is its
reading by the contract's table.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

from geometry.joint import Joint, Member
from geometry.leaf import Leaf
from geometry.section import Section

__all__ = ["EYE", "Ruler", "Seat"]

Points = NDArray[np.float64]

EYE: Final = 0.1
"""mm: the eye limit."""

_NEAR: Final = 3e-3
"""mm: closer to a limit than this, the cloud can't say on which side something lies."""

_SPACING: Final = 2e-3


@dataclass(frozen=True)
class Seat:
    """Where a leaf comes to rest that is slid home flush, and what it shows there.

    `x`, `y`: its corner, mm. `gap`: mm or None.
    """

    x: float
    y: float
    state: str
    gap: float | None


def _along(joint: Joint, member: Member) -> Points:
    turn = 0.0 if member == "base" else joint.angle * math.pi / 180.0
    return np.array((math.cos(turn), math.sin(turn)))


def _bow(start: Points, end: Points, rise: float, count: int) -> Points:
    """Points of the arc from start to end whose middle stands `rise` to the right of the chord."""
    chord = end - start
    half = float(np.hypot(*chord)) / 2.0
    right = np.array((chord[1], -chord[0])) / (2.0 * half)
    if abs(rise) < 1e-6:
        return start + np.linspace(0.0, 1.0, count)[:, None] * chord
    # Seen from the middle of the chord: a circle's height over it, by its sagitta.
    radius = (half * half / abs(rise) + abs(rise)) / 2.0
    most = 2.0 * math.atan2(abs(rise), half)
    turns = np.linspace(-most, most, count)
    forth = radius * np.sin(turns)
    # 1 - cos without its loss of digits, so that a shallow bow is smooth.
    up = abs(rise) - 2.0 * radius * np.sin(turns / 2.0) ** 2
    middle = (start + end) / 2.0
    return (
        middle
        + forth[:, None] * chord / (2.0 * half)
        + math.copysign(1.0, rise) * (up[:, None] * right)
    )


def _line(points: Points, spacing: float) -> Points:
    """Points along a polyline, its own among them."""
    lengths = np.hypot(*np.diff(points, axis=0).T)
    parts = [
        a + np.linspace(0.0, 1.0, max(2, math.ceil(length / spacing) + 1))[:, None] * (b - a)
        for a, b, length in zip(points, points[1:], lengths, strict=False)
    ]
    return np.concatenate(parts)


class Ruler:
    """A section drawn as points."""

    def __init__(self, section: Section) -> None:
        self._section = section
        self._joint, self._stated = section.joint, section.bead
        self._base, self._upright = (_along(self._joint, m) for m in ("base", "upright"))
        self._angle = self._joint.angle * math.pi / 180.0
        span = max(self._stated.leg_base, self._stated.leg_upright)
        self._spacing = max(_SPACING, span / 20_000.0) if span > 1.0 else span / 2000.0

    @cached_property
    def face(self) -> Points:
        """The face from base toe to upright toe."""
        bead = self._stated
        if bead.trace is not None:
            return _line(np.array(bead.trace), self._spacing)
        start, end = bead.leg_base * self._base, bead.leg_upright * self._upright
        half = float(np.hypot(*(end - start))) / 2.0
        # The way round a half circle is at most pi times its radius.
        reach = half + abs(bead.crown)
        count = int(np.clip(4.0 * reach / self._spacing, 1000, 60_000))
        return _bow(start, end, bead.crown, count)

    def measures(self) -> dict[str, float]:
        """Every measure that is a number, by key."""
        face, bead = self.face, self._stated
        # Oblique coordinates: how far along each member.
        across = self._upright[1]
        t = face[:, 1] / across
        s = face[:, 0] - t * self._upright[0]
        size = float((s + t).min())
        chord = face[-1] - face[0]
        width = math.hypot(*chord)
        off = (face - face[0]) @ (chord[1], -chord[0]) / width
        return {
            "leg_base": bead.leg_base,
            "leg_upright": bead.leg_upright,
            "actual_throat": float(np.sqrt((face**2).sum(axis=1).min())),
            "theoretical_throat": self._tallest(),
            "effective_size": size,
            "effective_throat": size * math.cos(self._angle / 2.0),
            "convexity": max(0.0, float(off.max())),
            "concavity": max(0.0, float(-off.min())),
            "face_width": width,
            "toe_angle_base": self._toe_angle(self._base, face),
            "toe_angle_upright": self._toe_angle(self._upright, face[::-1]),
        }

    def _tallest(self) -> float:
        """The greatest over all slants of the least height of the face, by golden section."""
        face = self.face[:: max(1, len(self.face) // 6000)]
        face = np.concatenate((face, self.face[-1:], self._corners))
        low, high = self._angle - math.pi / 2.0, math.pi / 2.0
        # No triangle's height leans outside the corner between the members' own squares, unless it
        # falls on a leg, so the ends may lie a right angle further out.
        low, high = min(low, 0.0) - 1.0, max(high, self._angle) + 1.0
        share = (math.sqrt(5.0) - 1.0) / 2.0

        def height(slant: float) -> float:
            return float((face @ (math.cos(slant), math.sin(slant))).min())

        a, b = high - share * (high - low), low + share * (high - low)
        at_a, at_b = height(a), height(b)
        for _ in range(50):
            if at_a > at_b:
                high, b, at_b = b, a, at_a
                a = high - share * (high - low)
                at_a = height(a)
            else:
                low, a, at_a = a, b, at_b
                b = low + share * (high - low)
                at_b = height(b)
        return max(at_a, at_b)

    @property
    def _corners(self) -> Points:
        trace = self._stated.trace
        return self.face[:1] if trace is None else np.array(trace)

    def _toe_angle(self, along: Points, face: Points) -> float:
        """Between member and face at the toe, by the chords to two points near it."""
        toe = face[0]
        away = np.hypot(*(face[:4] - toe).T)
        first = int(np.flatnonzero(away > 0.0)[0])
        near, far = face[first] - toe, face[first + 1] - toe
        turns = [
            math.atan2(abs(along[0] * v[1] - along[1] * v[0]), float(along @ v))
            for v in (near, far)
        ]
        # Twice the nearer less the farther: exact on a circle, whose chords turn evenly.
        straight = self._stated.trace is not None
        return math.degrees(turns[0] if straight else 2.0 * turns[0] - turns[1])

    # --- readings -------------------------------------------------------------------------------

    @cached_property
    def _steel(self) -> tuple[tuple[str, Points], ...]:
        """All that stands off the members' lines, by name: face, lips, spatter."""
        parts = [("face", self.face)]
        for member in ("base", "upright"):
            lip = self._stated.overlap_base if member == "base" else self._stated.overlap_upright
            if lip is not None:
                leg = self._stated.leg_base if member == "base" else self._stated.leg_upright
                parts.append(("lip", self._cap(member, leg, leg + lip.length, lip.length / 3.0)))
        for drop in self._section.spatter:
            half = 1.5 * drop.height
            parts.append(
                ("spatter", self._cap(drop.on, drop.at - half, drop.at + half, drop.height))
            )
        return tuple(parts)

    def _cap(self, member: str, near: float, far: float, height: float) -> Points:
        along = self._base if member == "base" else self._upright
        rise = height if member == "upright" else -height
        return _bow(near * along, far * along, rise, max(400, int(3.0 * (far - near) / _SPACING)))

    def seat(self, leaf: Leaf, on: Member) -> Seat | None:
        """Slide the leaf home to read `on`; None where the cloud can't tell."""
        if self._stated.undercut_base or self._stated.undercut_upright:
            return None
        return self._leg_seat(leaf, on) if leaf.edge == "leg" else self._throat_seat(leaf)

    def _in_frame(self, points: Points, on: Member) -> Points:
        """Points seen with the flush member along +x and the other one leaning over it."""
        if on == "upright":
            return points
        # The reflection in the bisector takes the upright to the base.
        cos, sin = math.cos(self._angle), math.sin(self._angle)
        return np.column_stack(
            (points[:, 0] * cos + points[:, 1] * sin, points[:, 0] * sin - points[:, 1] * cos)
        )

    def _leg_seat(self, leaf: Leaf, on: Member) -> Seat | None:
        size, tip = leaf.size, leaf.size + leaf.wear
        cot = math.cos(self._angle) / math.sin(self._angle)
        if cot > 1e-12 and 1.2 * size * cot > 1e-3:
            return None  # The end edge strikes the leaning member first; how is not drawn here.
        far = self._joint.base_length if on == "upright" else self._joint.upright_length
        tall = self._joint.upright_length if on == "upright" else self._joint.base_length
        if 1.5 * size > far - 1.0 or tip > 0.98 * tall * math.sin(self._angle) - 1.0:
            return None
        # The tip meets its member here; a leaf's corner can't go further in.
        home = tip * cot
        stop, by, at = home, "member", np.array((home, tip))
        for name, points in self._steel:
            local = _with_height(self._in_frame(points, on), tip)
            local = local[(local[:, 1] > 1e-3) & (local[:, 1] <= 2.2 * size)]
            if not len(local):
                continue
            stops = local[:, 0] - _leg_side(leaf, local[:, 1])
            first = int(stops.argmax())
            if stops[first] > stop:
                stop, by, at = float(stops[first]), name, local[first]
        return self._leg_shown(leaf, on, stop, (stop - home, by, at))

    def _leg_shown(
        self, leaf: Leaf, on: Member, stop: float, met: tuple[float, str, Points]
    ) -> Seat | None:
        (off, by, at), tip = met, leaf.size + leaf.wear
        square = off * math.sin(self._angle)
        if abs(square - EYE) < _NEAR or stop + 1.5 * leaf.size > 50.0:
            return None
        point = np.array((stop, tip))
        corner = stop if on == "upright" else None
        x, y = (stop, 0.0) if corner is not None else (stop * self._upright).tolist()
        if square > EYE:
            apart = math.dist(point, at)
            if 0.03 < apart < 0.3 or self._second(leaf, on, stop, at):
                return None
            if by == "face" and apart <= EYE:
                return Seat(x, y, "held off", off)
            return Seat(x, y, "not seated", None)
        metal = min(
            float(np.hypot(*(self._in_frame(points, on) - point).T).min())
            for name, points in self._steel
            if name != "spatter"
        )
        if abs(metal - EYE) < _NEAR:
            return None
        if metal <= EYE:
            return Seat(x, y, "touch", None)
        bead = self._stated
        leg = bead.leg_upright if on == "upright" else bead.leg_base
        lip = bead.overlap_upright if on == "upright" else bead.overlap_base
        toe = (leg + (lip.length if lip else 0.0)) * math.sin(self._angle)
        short = tip - toe
        if abs(short) < _NEAR:
            return None
        return Seat(x, y, "daylight" if short > 0.0 else "not seated", short if short > 0 else None)

    def _second(self, leaf: Leaf, on: Member, stop: float, at: Points) -> bool:
        """Whether something far from what stopped the leaf all but stops it too."""
        for name, points in self._steel:
            local = self._in_frame(points, on)
            local = local[(local[:, 1] > 1e-3) & (local[:, 1] <= 2.2 * leaf.size)]
            apart = np.hypot(*(local - at).T)
            stops = local[:, 0] - _leg_side(leaf, local[:, 1])
            far = apart > (0.3 if name == "face" else 0.0)
            # A tenth from the tip contact has a name of its own, if it is contact at all.
            if stops[far].max(initial=-1e9) > stop - 0.02:
                return True
            if stops[apart > 0.09].max(initial=-1e9) > stop - _NEAR:
                return True
        return False

    def _throat_seat(self, leaf: Leaf) -> Seat | None:
        reach = min(self._joint.base_length, self._joint.upright_length)
        if self._joint.angle != 90.0 or leaf.wear or reach < 3.2 * leaf.size:
            return None
        points = np.concatenate([part for _, part in self._steel])
        rim = points.max(axis=1)
        if ((rim > 2.9 * leaf.size) & (rim < 4.0 * leaf.size)).any():
            return None  # Something lies about the blade's far corners, which are not drawn here.
        faces = np.concatenate([np.full(len(part), name == "face") for name, part in self._steel])
        within = (points.min(axis=1) > -1e-9) & (points.max(axis=1) <= 3.0 * leaf.size)
        points, faces = points[within], faces[within]
        shifts = _throat_shift(leaf, points)
        first = int(shifts.argmax()) if len(shifts) else 0
        stop, at = (float(shifts[first]), points[first]) if len(shifts) else (0.0, np.zeros(2))
        point = np.full(2, leaf.size / 2.0 + stop)
        if stop <= EYE:
            return self._throat_home(stop, point)
        apart = math.dist(point, at)
        # A second place that all but stops it makes it anybody's guess which one does.
        others = (np.hypot(*(points - at).T) > 0.3) | (faces != faces[first])
        rivals = shifts[others].max(initial=0.0) > stop - 0.02
        beside = shifts[np.hypot(*(points - at).T) > 0.09].max(initial=0.0) > stop - _NEAR
        if rivals or beside or stop < EYE + _NEAR or 0.03 < apart < 0.3:
            return None
        if faces[first] and apart <= EYE:
            return Seat(stop, stop, "held off", stop)
        return Seat(stop, stop, "not seated", None)

    def _throat_home(self, stop: float, point: Points) -> Seat | None:
        to_face = float(np.hypot(*(self.face - point).T).min())
        if abs(to_face - EYE) < _NEAR or stop > 1e-3:
            return None
        if to_face <= EYE:
            return Seat(stop, stop, "touch", None)
        return self._throat_daylight(stop, point)

    def _throat_daylight(self, stop: float, point: Points) -> Seat | None:
        face = self.face - (stop, stop)
        beyond = face[:, 1] > face[:, 0]
        cut = face[1:][beyond[1:] != beyond[:-1]]
        short = (2.0 * (point[0] - stop) - cut.sum(axis=1)) * math.sqrt(0.5)
        short = short[short > 0.0]
        if not len(short):
            return None
        return Seat(stop, stop, "daylight", float(short.min()))


def _with_height(points: Points, height: float) -> Points:
    """The points and, of the line through them, those at just this height."""
    y = points[:, 1] - height
    cut = np.flatnonzero(y[:-1] * y[1:] < 0.0)
    share = (y[cut] / (y[cut] - y[cut + 1]))[:, None]
    crossed = points[cut] + share * (points[cut + 1] - points[cut])
    crossed[:, 1] = height
    return np.concatenate((points, crossed))


def _leg_side(leaf: Leaf, heights: Points) -> Points:
    """How far from its corner the blade of a leg edge begins, at each height."""
    size, tip = leaf.size, leaf.size + leaf.wear
    # The circle through the tip and the long edge's end, of 1.2 S, on the corner's side.
    end = np.array((1.5 * size, 0.0))
    apart = end - (0.0, tip)
    half = math.hypot(*apart) / 2.0
    back = math.sqrt((1.2 * size) ** 2 - half**2) / (2.0 * half)
    centre = np.array((0.75 * size, tip / 2.0)) + back * np.array((apart[1], -apart[0]))
    reach = np.sqrt(np.maximum((1.2 * size) ** 2 - (heights - centre[1]) ** 2, 0.0))
    return np.where(heights < tip, centre[0] + reach, 0.0)


def _throat_shift(leaf: Leaf, points: Points) -> Points:
    """How far (mm in x and in y) the leaf must be moved out for each point to be out of it."""
    size, radius = leaf.size, 1.06 * leaf.size

    def inside(shift: Points) -> NDArray[np.bool_]:
        x, y = points[:, 0] - shift, points[:, 1] - shift
        hollow = np.zeros(len(points), dtype=np.bool_)
        for cx, cy in ((0.5 * size, -0.56 * size), (-0.56 * size, 0.5 * size)):
            hollow |= np.hypot(x - cx, y - cy) <= radius
        return (x > 0.0) & (y > 0.0) & ~hollow

    low, high = np.zeros(len(points)), np.minimum(points[:, 0], points[:, 1])
    was_in = inside(low + 1e-9)
    # Going out along the bisector a point passes from the blade into the hollow once.
    for _ in range(40):
        mid = (low + high) / 2.0
        held = inside(mid)
        low, high = np.where(held, mid, low), np.where(held, high, mid)
    shift: Points = np.where(was_in, high, 0.0)
    return shift
