"""What a leaf shows at a pose: touch, daylight, held off, or not seated.

A reading hangs on the pose alone, never on how the leaf came there. Its distances are taken by
shapely from the flattened outline, apart from the contact kernel, so that the two check each
other.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Final, Literal

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, MultiLineString, Point, Polygon

from geometry.curves import Vec
from geometry.faults import Fault, GeometryError
from geometry.joint import Member, other_member
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import WELD_PIECES, Section
from geometry.tolerances import CLEARANCE, CONTACT, LEGAL_DEPTH

__all__ = ["EYE_LIMIT", "STATES", "Reading", "State", "read"]

State = Literal["touch", "daylight", "held off", "not seated"]
STATES: Final[tuple[State, ...]] = ("touch", "daylight", "held off", "not seated")

EYE_LIMIT: Final = 0.1
"""mm: the smallest gap an unaided eye is asked to see, unless a coupon says otherwise."""

_ROUNDING: Final = 10.0 * CLEARANCE
"""mm: a gap of just the eye limit is within it, though the kernel keeps its clearance."""

_AT_POINT: Final = 0.1
"""mm: contact this near the tip or spur is contact at it, however small the eye limit: the arc
and the face part there by a few degrees, and need this much to part by more than `CONTACT`."""


@dataclass(frozen=True, slots=True)
class Reading:
    """State of a leaf at a pose.

    Parameters
    ----------
    state
        One of `STATES`.
    gap
        mm, for daylight and held off; else None.
    flush
        Which edges are flush: of ``long``, ``end``.
    in_the_way
        Names of the section's pieces that keep the leaf off, in the order of the outline. Empty
        unless the state is ``not seated``, and then too if the leaf simply isn't home.
    pose
        Where it was read.
    """

    state: State
    gap: float | None
    flush: tuple[str, ...]
    in_the_way: tuple[str, ...]
    pose: Pose


def read(section: Section, leaf: Leaf, pose: Pose, eye_limit: float = EYE_LIMIT) -> Reading:
    """Return what `leaf` shows at `pose`.

    The long edge belongs to the base, or to the upright if the leaf is turned over; the end edge
    and the tip belong to the other member.

    Parameters
    ----------
    section, leaf, pose
        What is gauged, with what, and where it lies. A pose inside steel is read all the same.
    eye_limit
        The smallest gap that an eye is asked to see, mm; above zero.

    Raises
    ------
    GeometryError
        If the eye limit is no finite number above zero.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.leaf import leaf_of_mark
    >>> section = Section.of(Joint(), Bead(8.0, 6.7))
    >>> leaf = leaf_of_mark("8 mm")
    >>> shown = read(section, leaf, Pose(0.0, 0.0))
    >>> shown.state, round(shown.gap, 6), shown.flush
    ('daylight', 1.3, ('long', 'end'))
    >>> read(section, leaf, Pose(0.0, 0.0, 90.0, turned=True)).state
    'touch'
    """
    if not (math.isfinite(eye_limit) and eye_limit > 0.0):
        text = f"an eye limit of {eye_limit} mm"
        raise GeometryError([Fault("/eye_limit", "eye-limit", text, "a length above 0 mm")])
    lie = _Lie(section, leaf, pose, eye_limit + _ROUNDING)
    return _read_leg(lie) if leaf.edge == "leg" else _read_throat(lie)


def _read_leg(lie: _Lie) -> Reading:
    member = lie.end_member
    off = lie.height(lie.point, member)
    if not lie.is_flush("long") or not lie.is_over(lie.point, member):
        return lie.not_seated()
    if off < -lie.limit:
        return lie.not_seated(f"undercut_{member}" if lie.section.bead.undercut(member) else member)
    if off > lie.limit:
        # The tip may be held by the face itself only; all else would be in the way.
        if lie.face_at_point and not lie.in_the_way:
            between = math.sin(lie.section.joint.radians)
            return lie.shows("held off", off / between)
        return lie.not_seated()
    if lie.weld_at_point:
        return lie.shows("touch")
    toe = lie.section.seen_toe(member)
    short = lie.height(lie.point, lie.long_member) - lie.height(toe, lie.long_member)
    if short <= 0.0:
        return lie.not_seated("face")
    return lie.shows("daylight", short)


def _read_throat(lie: _Lie) -> Reading:
    if lie.is_flush("long") and lie.is_flush("end"):
        if lie.face_at_point:
            return lie.shows("touch")
        short = lie.spur_to_face
        return lie.not_seated("face") if short is None else lie.shows("daylight", short)
    edges = lie.long, lie.end
    if lie.is_square and lie.face_at_point and not lie.in_the_way and all(edges):
        off = max(edge.most for edge in edges if edge)
        if off > lie.limit:
            return lie.shows("held off", off)
    return lie.not_seated()


@dataclass(frozen=True, slots=True)
class _Facing:
    """The part of an edge that faces its member, as distances along it and heights above it."""

    near: float
    far: float
    near_height: float
    far_height: float

    @property
    def most(self) -> float:
        """The widest gap beneath the part, mm."""
        return max(self.near_height, self.far_height)

    @property
    def least(self) -> float:
        """The narrowest gap beneath the part, mm; below zero if it has sunk in."""
        return min(self.near_height, self.far_height)


@dataclass(frozen=True)
class _Lie:
    """A leaf as it lies on a section; `limit` is the widest gap that isn't seen, mm."""

    section: Section
    leaf: Leaf
    pose: Pose
    limit: float

    def shows(self, state: State, gap: float | None = None) -> Reading:
        """The reading of a leaf that is seated."""
        return Reading(state, gap, self.flush, (), self.pose)

    def not_seated(self, *reason: str) -> Reading:
        """The reading of a leaf that isn't: `reason` names what the contacts alone can't."""
        # A tip that rides the weld with the long edge tipped up is carried by the weld.
        named = self.in_the_way or reason or (("face",) if self.rides_the_face else ())
        return Reading("not seated", None, self.flush, named, self.pose)

    @property
    def long_member(self) -> Member:
        """The member that the long edge belongs to."""
        return "upright" if self.pose.turned else "base"

    @property
    def end_member(self) -> Member:
        """The member that the end edge and the tip belong to."""
        return other_member(self.long_member)

    @cached_property
    def point(self) -> Vec:
        """The tip or the spur, in the section's frame."""
        return self.pose.to_section(self.leaf.point)

    def height(self, point: Vec, member: Member) -> float:
        """How far a point stands off a member's face line, mm; grooves don't count."""
        normal = self.section.joint.normal(member)
        return point[0] * normal[0] + point[1] * normal[1]

    def along(self, point: Vec, member: Member) -> float:
        """Distance of a point from the root along a member's face, mm."""
        direction = self.section.joint.direction(member)
        return point[0] * direction[0] + point[1] * direction[1]

    def is_over(self, point: Vec, member: Member) -> bool:
        """Whether the member's face reaches under the point."""
        length = self.section.joint.length(member)
        return -CONTACT <= self.along(point, member) <= length + CONTACT

    @cached_property
    def long(self) -> _Facing | None:
        """What of the long edge faces its member."""
        return self._facing(self.leaf.long_edge, (0.0, 1.0), self.long_member)

    @cached_property
    def end(self) -> _Facing | None:
        """What of the end edge faces its member."""
        return self._facing(self.leaf.end_edge, (1.0, 0.0), self.end_member)

    def _facing(self, edge: tuple[Vec, Vec], blade: Vec, member: Member) -> _Facing | None:
        normal = self.section.joint.normal(member)
        side = self.pose.direction(blade)
        if side[0] * normal[0] + side[1] * normal[1] <= 0.0:
            return None
        near, far = (self.pose.to_section(point) for point in edge)
        starts, ends = self.along(near, member), self.along(far, member)
        first, last = max(starts, 0.0), min(ends, self.section.joint.length(member))
        if last - first <= CONTACT:
            return None
        low, high = self.height(near, member), self.height(far, member)
        slope = (high - low) / (ends - starts)
        return _Facing(first, last, low + (first - starts) * slope, low + (last - starts) * slope)

    def is_flush(self, edge: Literal["long", "end"]) -> bool:
        """Whether no gap beneath the edge can be seen, and nothing lies beneath it."""
        facing = self.long if edge == "long" else self.end
        if facing is None or facing.most > self.limit or facing.least < -self.limit:
            return False
        return not self._beneath[edge]

    @cached_property
    def flush(self) -> tuple[str, ...]:
        """Which edges are flush."""
        edges: tuple[Literal["long", "end"], ...] = ("long", "end")
        return tuple(edge for edge in edges if self.is_flush(edge))

    @cached_property
    def _beneath(self) -> dict[str, tuple[str, ...]]:
        """Names of pieces that lie between an edge and its member."""
        return {
            "long": self._pieces_under(self.long, self.long_member, self.leaf.long_edge),
            "end": self._pieces_under(self.end, self.end_member, self.leaf.end_edge),
        }

    def _pieces_under(
        self, facing: _Facing | None, member: Member, edge: tuple[Vec, Vec]
    ) -> tuple[str, ...]:
        # Under an edge that stands well off there is room for what isn't in the way.
        if facing is None or facing.most > self.limit:
            return ()
        # What only meets the edge's end, or is no higher than a contact, isn't beneath it. A
        # stated pose may be off by LEGAL_DEPTH.
        near, far = facing.near + LEGAL_DEPTH, facing.far - LEGAL_DEPTH
        top = max(facing.most, 0.0) + LEGAL_DEPTH
        corners = ((near, CONTACT), (far, CONTACT), (far, top), (near, top))
        gap = Polygon([self._on(member, *corner) for corner in corners])
        names, lines = self._pieces
        under = shapely.intersects(lines, gap)
        found = tuple(name for name, is_under in zip(names, under, strict=True) if is_under)
        # A face that runs out under an edge without touching it keeps nothing off: the point may
        # rest on that very face, and hold both edges up by less than an eye can see.
        return tuple(name for name in found if name != "face" or self._bears(name, edge))

    def _bears(self, name: str, edge: tuple[Vec, Vec]) -> bool:
        """Whether a piece touches an edge of the leaf, or crosses it."""
        line = LineString(self._placed(edge))
        return bool(_within(self.section.piece_lines[name], line, self._touching))

    @property
    def _touching(self) -> float:
        """How near a second contact must be to be one, mm."""
        # The point being on the weld, it must be as close as bodies keep. Else a pose that was
        # stated to a hundredth leaves everything that far off.
        return CONTACT if self.rides_the_face else LEGAL_DEPTH

    def _on(self, member: Member, along: float, height: float) -> Vec:
        foot = self.section.joint.point(member, along)
        normal = self.section.joint.normal(member)
        return (foot[0] + normal[0] * height, foot[1] + normal[1] * height)

    @property
    def _pieces(self) -> tuple[tuple[str, ...], NDArray[np.object_]]:
        lines = self.section.piece_lines
        return tuple(lines), np.array(list(lines.values()), dtype=np.object_)

    @property
    def is_square(self) -> bool:
        """Whether both edges of a throat leaf can lie flush at once in this joint."""
        lean = math.radians(abs(self.section.joint.angle - 90.0))
        (near, _), (far, _) = self.leaf.long_edge
        return (far - near) * math.sin(lean / 2.0) <= self.limit

    @cached_property
    def face_at_point(self) -> bool:
        """Whether the weld face is within the limit of the tip or spur."""
        return self._at_point(("face",), self.limit)

    @cached_property
    def weld_at_point(self) -> bool:
        """Whether weld metal, lips included, is within the limit of the tip or spur."""
        return self._at_point(WELD_PIECES, self.limit)

    @cached_property
    def rides_the_face(self) -> bool:
        """Whether the tip or spur is on the weld face, as near as poses are stated."""
        return self._at_point(("face",), LEGAL_DEPTH)

    def _at_point(self, names: Iterable[str], distance: float) -> bool:
        lines, point = self.section.piece_lines, Point(self.point)
        return any(bool(_within(lines[name], point, distance)) for name in names if name in lines)

    @property
    def spur_to_face(self) -> float | None:
        """From spur to face along the leaf's bisector, mm; None if the face isn't that way."""
        lead = np.array(self.pose.direction((math.sqrt(0.5), math.sqrt(0.5))))
        # Cut by hand: overlaying a line of thousands of parts takes shapely milliseconds.
        face = shapely.get_coordinates(self.section.piece_lines["face"]) - self.point
        aside, short = lead[0] * face[:, 1] - lead[1] * face[:, 0], -(face @ lead)
        before, after = aside[:-1], aside[1:]
        cut = np.flatnonzero((before * after <= 0.0) & (before != after))
        share = before[cut] / (before[cut] - after[cut])
        gaps = short[cut] + share * (short[cut + 1] - short[cut])
        gaps = gaps[gaps > 0.0]
        return float(gaps.min()) if gaps.size else None

    @cached_property
    def in_the_way(self) -> tuple[str, ...]:
        """Names of the pieces that keep the leaf off, in the order of the outline."""
        needed = ("long",) if self.leaf.edge == "leg" else ("long", "end")
        beneath = {name for edge in needed for name in self._beneath[edge]}
        names, lines = self._pieces
        parts = self._parts
        touching = _within(
            lines[:, None],
            np.array(list(parts.values()), dtype=np.object_)[None, :],
            self._touching,
        )
        found = []
        for name, row in zip(names, touching, strict=True):
            met = {part for part, touches in zip(parts, row, strict=True) if touches}
            if name in beneath or (met and self._blocks(name, met)):
                found.append(name)
        return tuple(found)

    def _blocks(self, name: str, met: set[str]) -> bool:
        """Whether a piece that meets these parts of the leaf is in the way, or carries it."""
        if name == "face":
            return bool(met - {"point"})
        # An edge that overhangs its member's end meets the corner there, and rests all the same.
        if name in _along(self.long_member):
            return not self._rests("long", met)
        if name in _along(self.end_member):
            return not self._rests("end", met)
        return True

    def _rests(self, edge: Literal["long", "end"], met: set[str]) -> bool:
        """Whether a member that meets these parts of the leaf is where that edge belongs."""
        if self.leaf.edge == "throat":
            return edge in met and (self.is_square or self.is_flush(edge))
        if edge == "long":
            return "long" in met
        return not self._strikes if "end" in met else "point" in met

    @property
    def _strikes(self) -> bool:
        """Whether the end edge meets a leaning member before the tip can, the leaf being flush."""
        low, top = self.leaf.end_edge
        return (top[1] - low[1]) * math.cos(self.section.joint.radians) > self.limit

    @property
    def _parts(self) -> dict[str, shapely.Geometry]:
        """The leaf's boundary in the section's frame; arcs and end less what is at the point."""
        spare = max(self.limit, _AT_POINT)
        at = np.array(self.leaf.point)
        arcs = []
        for piece in self.leaf.body.pieces:
            if piece.name == "arc":
                points = piece.curve.flatten()
                away = points[np.hypot(*(points - at).T) > spare]
                if len(away) > 1:
                    arcs.append(self._placed(away))
        low, top = self.leaf.end_edge
        if self.leaf.edge == "leg":
            low = (low[0], min(low[1] + spare, top[1]))
        far = self.leaf.long_edge[1]
        return {
            "long": LineString(self._placed(self.leaf.long_edge)),
            "end": LineString(self._placed((low, top))),
            "arc": MultiLineString(arcs),
            "back": LineString(self._placed((far, (far[0], top[1]), top))),
            "point": Point(self.point),
        }

    def _placed(self, points: NDArray[np.float64] | tuple[Vec, ...]) -> NDArray[np.float64]:
        """Points of the leaf's frame in the section's frame, shape (n, 2), mm."""
        local = np.asarray(points, dtype=np.float64)
        cos, sin = self.pose.axes
        across = -local[:, 1] if self.pose.turned else local[:, 1]
        placed = np.column_stack(
            (
                self.pose.x + cos * local[:, 0] - sin * across,
                self.pose.y + sin * local[:, 0] + cos * across,
            )
        )
        # At an angle of 1e-170 degrees GEOS would divide by zero, and numpy would warn of it.
        return placed.round(12)


def _along(member: Member) -> tuple[str, ...]:
    """Names of the pieces that an edge meets which lies along a member."""
    return member, f"undercut_{member}", f"{member}_end"


def _within(one: object, other: object, distance: float) -> NDArray[np.bool_]:
    """Whether shapes lie within `distance` mm of each other, element by element.

    GEOS reckons with infinities on its way, and older versions of shapely hand on the flag that
    the processor keeps of it; the shapes themselves are finite.
    """
    ones, others = np.asarray(one, dtype=np.object_), np.asarray(other, dtype=np.object_)
    with np.errstate(invalid="ignore"):
        return np.asarray(shapely.dwithin(ones, others, distance))
