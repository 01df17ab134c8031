"""The true measures of a section: legs, throats, sizes, convexity, toe angles.

Nothing is sampled. An arc is measured by its centre and radius, a traced face by its vertices: a
projection or a distance to a hull is extreme there, or where a perpendicular meets an arc.
"""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass
from typing import Final, Literal

from shapely.geometry import MultiPoint, Point

from geometry.curves import Arc, Curve, Segment, Vec
from geometry.joint import Member
from geometry.section import Section
from geometry.tolerances import FLAT_FACE

__all__ = ["FaceShape", "Measures", "measure"]

FaceShape = Literal["convex", "concave", "flat"]

_ROOT: Final[Vec] = (0.0, 0.0)

_ROUNDING: Final = 1e-9
"""mm: a crown of just `FLAT_FACE` comes out of its arc a few last digits off."""


@dataclass(frozen=True, slots=True)
class Measures:
    """True measures (mm, degrees); the keys that the `measure` command prints.

    Parameters
    ----------
    leg_base, leg_upright
        Root to fused toe along that member, mm.
    actual_throat
        Shortest distance from root to face, mm.
    theoretical_throat
        Greatest height, from the root, of a triangle inside the bead with its legs on the
        members, mm.
    effective_size, effective_throat
        Leg and height of the largest such triangle with equal legs, mm.
    convexity, concavity
        Greatest distance of the face beyond, and short of, the chord between the toes, mm.
    face
        ``convex`` or ``concave``, whichever of the two is greater; ``flat`` if neither is more
        than 0.05 mm.
    face_width
        Toe to toe, mm.
    toe_angle_base, toe_angle_upright
        Between the member and the face's tangent at the toe, through the air, degrees.
    """

    leg_base: float
    leg_upright: float
    actual_throat: float
    theoretical_throat: float
    effective_size: float
    effective_throat: float
    convexity: float
    concavity: float
    face: FaceShape
    face_width: float
    toe_angle_base: float
    toe_angle_upright: float

    def as_dict(self) -> dict[str, float | str]:
        """The measures by key."""
        return asdict(self)


def measure(section: Section) -> Measures:
    """Return the true measures of `section`.

    Lips, grooves, spatter and a root opening change none of them: legs and throats run from the
    root to the fused face.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> found = measure(Section.of(Joint(), Bead(6.0, 8.0)))
    >>> found.face, round(found.theoretical_throat, 9), round(found.effective_size, 9)
    ('flat', 4.8, 6.0)
    >>> hollow = measure(Section.of(Joint(), Bead(8.0, 8.0, crown=-1.0)))
    >>> hollow.face, round(hollow.effective_throat, 4), round(hollow.toe_angle_base, 2)
    ('concave', 4.6569, 155.05)
    """
    joint, face = section.joint, section.face
    throat = -_farthest(face, (-joint.bisector[0], -joint.bisector[1]))
    toes = section.toe("base"), section.toe("upright")
    chord = Segment(*toes)
    along = chord.start_direction
    # The face runs with metal on its left, so the chord's right is beyond it.
    beyond = (along[1], -along[0])
    level = _dot(toes[0], beyond)
    convexity = max(0.0, _farthest(face, beyond) - level)
    concavity = max(0.0, _farthest(face, (-beyond[0], -beyond[1])) + level)
    return Measures(
        leg_base=section.bead.leg_base,
        leg_upright=section.bead.leg_upright,
        actual_throat=min(_root_distance(curve) for curve in face),
        theoretical_throat=_hull_distance(face, chord),
        effective_size=throat / math.cos(joint.radians / 2.0),
        effective_throat=throat,
        convexity=convexity,
        concavity=concavity,
        face=_shape(convexity, concavity),
        face_width=chord.length,
        toe_angle_base=_toe_angle(section, "base"),
        toe_angle_upright=_toe_angle(section, "upright"),
    )


def _dot(a: Vec, b: Vec) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _farthest(face: tuple[Curve, ...], direction: Vec) -> float:
    """The greatest reach of the face along a unit vector, from the root, mm."""
    reach = max(_dot(face[0].start, direction), *(_dot(curve.end, direction) for curve in face))
    for curve in face:
        if isinstance(curve, Arc) and curve.spans(math.atan2(direction[1], direction[0])):
            reach = max(reach, _dot(curve.centre, direction) + curve.radius)
    return reach


def _root_distance(curve: Curve) -> float:
    """The shortest distance from the root to a curve, mm."""
    if isinstance(curve, Segment):
        along = curve.start_direction
        before = -_dot(curve.start, along)
        if 0.0 < before < curve.length:
            return abs(curve.start[0] * along[1] - curve.start[1] * along[0])
    elif curve.spans(math.atan2(-curve.centre[1], -curve.centre[0])):
        # The nearest point of a circle lies on the line through its centre.
        return abs(math.dist(curve.centre, _ROOT) - curve.radius)
    return min(math.dist(curve.start, _ROOT), math.dist(curve.end, _ROOT))


def _hull_distance(face: tuple[Curve, ...], chord: Segment) -> float:
    """The distance from the root to the convex hull of the face, mm.

    A line square to the unit vector n cuts off a triangle that fits inside the bead when no point
    of the face lies short of it, so the greatest height is the maximum over n of the least p.n
    over the face. That is the distance from the root to the face's hull.
    """
    if len(face) == 1:
        # The hull of one arc is the disc's segment: it is bounded by the arc and its chord.
        return min(_root_distance(face[0]), _root_distance(chord))
    corners = [curve.start for curve in face] + [face[-1].end]
    return float(MultiPoint(corners).convex_hull.distance(Point(_ROOT)))


def _shape(convexity: float, concavity: float) -> FaceShape:
    if max(convexity, concavity) <= FLAT_FACE + _ROUNDING:
        return "flat"
    return "convex" if convexity > concavity else "concave"


def _toe_angle(section: Section, member: Member) -> float:
    along = section.joint.direction(member)
    if member == "base":
        off = section.face[0].start_direction
    else:
        last = section.face[-1].end_direction
        off = (-last[0], -last[1])
    cross = along[0] * off[1] - along[1] * off[0]
    return math.degrees(math.atan2(abs(cross), _dot(along, off)))
