"""A section out of a cloud of points: members, root, toes, face, and how well each is known."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from exercises.intake.cloud import Cloud, scatter
from exercises.intake.face import simplified, smoothed
from exercises.intake.lines import Straight
from exercises.intake.members import Corner, FaceRun, corner_by_hand, face_in, find_corner, limit_of
from exercises.intake.refusal import IntakeError, Note, note, refused
from exercises.intake.toes import Toe, find_toe
from exercises.intake.traced import Traced
from exercises.models import MOST_POINTS
from geometry.bead import Bead
from geometry.curves import Vec
from geometry.faults import Fault, GeometryError
from geometry.joint import LARGEST_ANGLE, SMALLEST_ANGLE, Joint
from geometry.section import Section

__all__ = ["TOLERANCE", "Fitted", "Wishes", "fit_section"]

FloatArray = NDArray[np.float64]

TOLERANCE: Final = 0.01
"""mm: how far the face may be from the points that it stands for, unless asked otherwise."""

_LEVEL: Final = 10.0
"""Degrees: a member this much nearer the horizontal than the other is taken as the base."""

_BY_HAND: Final = 0.02
"""mm: how surely a hand puts something, standard."""

_GAP: Final = 0.3
"""mm of a face without a point that are spoken of."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What a person wants otherwise than it was proposed.

    Parameters
    ----------
    base, upright
        Two points of each member, mm in the file's frame; both or neither.
    root
        Where the members meet, mm in the file's frame; they move there as they lie.
    toe_base, toe_upright
        Where the toes are, mm from the root.
    swapped
        Whether base and upright change places.
    tolerance
        mm.
    smooth
        Whether the scatter is taken out of the face.
    """

    base: tuple[Vec, Vec] | None = None
    upright: tuple[Vec, Vec] | None = None
    root: Vec | None = None
    toe_base: float | None = None
    toe_upright: float | None = None
    swapped: bool = False
    tolerance: float = TOLERANCE
    smooth: bool = True


@dataclass(frozen=True, slots=True, eq=False)
class Fitted:
    """A section as it was found in a cloud.

    Parameters
    ----------
    base, upright
        The members' lines in the file's frame, directed away from the root.
    root
        mm, in the file's frame.
    toe_base, toe_upright
        mm from the root, with their uncertainties (root included).
    u_angle
        Standard uncertainty of the angle, degrees.
    trace
        In the section frame.
    throat, u_throat
        Shortest distance from the root to the face, mm, and its standard uncertainty.
    strays
        Points of the face that were left out, file frame (M, 2).
    notes
        What a person should know of it.
    """

    base: Straight
    upright: Straight
    root: FloatArray
    toe_base: Toe
    toe_upright: Toe
    u_angle: float
    trace: tuple[Vec, ...]
    throat: float
    u_throat: float
    strays: FloatArray
    notes: tuple[Note, ...]

    @property
    def corner(self) -> Corner:
        """The two members, base first."""
        return Corner(self.base, self.upright, self.root)

    @property
    def angle(self) -> float:
        """Between the members, degrees; in the range of joints, if it is within its doubt of it."""
        return _held(self.corner)

    @property
    def axes(self) -> tuple[FloatArray, FloatArray]:
        """The section frame's x and y as unit vectors in the file's frame."""
        return _axes(self.corner)

    def in_file(self, points: FloatArray) -> FloatArray:
        """Points of the section frame (N, 2) in the file's frame."""
        across, up = self.axes
        return self.root + np.outer(points[:, 0], across) + np.outer(points[:, 1], up)

    def traced(self, source: Mapping[str, object]) -> Traced:
        """The section as a coupon takes it in."""
        worst = max(self.toe_base.uncertainty, self.toe_upright.uncertainty)
        return Traced(self.angle, self.trace, worst, source)


def _axes(corner: Corner) -> tuple[FloatArray, FloatArray]:
    across = corner.first.along
    up = np.array([-across[1], across[0]])
    return across, up if up @ corner.second.along > 0.0 else -up


def fit_section(cloud: Cloud, wishes: Wishes | None = None, name: str = "") -> Fitted:
    """Return the section in a cloud of points.

    Parameters
    ----------
    cloud
        The points, mm.
    wishes
        What a person set by hand; by default nothing.
    name
        What messages call the file.

    Raises
    ------
    IntakeError
        If no two members with a face between them are found, or they make no section.

    Examples
    --------
    >>> from exercises.intake.cloud import cloud_of_points
    >>> x = np.concatenate([np.zeros(200), np.linspace(0, 8, 120)[1:-1], np.linspace(8, 20, 200)])
    >>> z = np.concatenate([np.linspace(20, 8, 200), np.linspace(8, 0, 120)[1:-1], np.zeros(200)])
    >>> found = fit_section(cloud_of_points(x, z))
    >>> round(found.angle, 3), round(found.toe_base.at, 2), round(found.throat, 2)
    (90.0, 8.0, 5.66)
    """
    wishes = wishes or Wishes()
    by_hand = wishes.base is not None and wishes.upright is not None
    if wishes.base is not None and wishes.upright is not None:
        corner = corner_by_hand(cloud, wishes.base, wishes.upright, name)
    else:
        corner = _base_first(find_corner(cloud, name))
    # By hand the members were named already, whichever way they were swapped before.
    if wishes.swapped and not by_hand:
        corner = Corner(corner.second, corner.first, corner.root)
    if wishes.root is not None:
        corner = _moved(corner, wishes.root)
    run = face_in(cloud, corner)
    if run is None:
        text, right = (
            "between the members there is no face",
            "points from one member over the weld to the other",
        )
        raise refused(name, Fault("", "fit-no-face", text, right))
    return _fitted(cloud, corner, run, wishes, name)


def _moved(corner: Corner, root: Vec) -> Corner:
    """The corner with its members moved to another root, as surely as a hand can."""
    at = np.array(root, float)
    first, second = (
        replace(line, middle=at, u_offset=max(line.u_offset, _BY_HAND))
        for line in (corner.first, corner.second)
    )
    return Corner(first, second, at)


def _base_first(corner: Corner) -> Corner:
    """The flatter member as the base; of two as steep, so that nothing need be mirrored."""
    swapped = Corner(corner.second, corner.first, corner.root)
    steep = [
        math.degrees(math.atan2(abs(line.along[1]), abs(line.along[0])))
        for line in (corner.first, corner.second)
    ]
    if abs(steep[0] - steep[1]) > _LEVEL:
        return corner if steep[0] < steep[1] else swapped
    one, two = corner.first.along, corner.second.along
    return corner if one[0] * two[1] - one[1] * two[0] > 0.0 else swapped


def _fitted(cloud: Cloud, corner: Corner, run: FaceRun, wishes: Wishes, name: str) -> Fitted:
    reach = float(np.hypot(*np.diff(run.points, axis=0).T).sum())
    # A sensor errs along its sight: a member seen aslant scatters less than the face it looks on.
    noise = 0.0 if cloud.exact else max(cloud.noise, scatter(run.points))
    toes: list[Toe] = []
    for second, wish in ((False, wishes.toe_base), (True, wishes.toe_upright)):
        if wish is not None:
            # As well as a hand can see it: as finely as the points lie.
            toes.append(Toe(wish, max(2.0 * noise, _BY_HAND)))
            continue
        inwards = run.points[::-1] if second else run.points
        beyond = run.after if second else run.before
        points = np.vstack([beyond[::-1], inwards])
        along, off = corner.placed(points, second=second)
        toe = find_toe(along, off, len(beyond), noise, reach=reach)
        toes.append(_with_root(toe, corner, second=second))
    across, up = _axes(corner)
    away = run.points - corner.root
    local = np.column_stack([away @ across, away @ up])
    joint = _joint(corner, toes, name)
    ends = (joint.point("base", toes[0].at), joint.point("upright", toes[1].at))
    beside = _beside(cloud, corner, toes, noise)
    face, strays, doubt = _face(local, ends, joint, noise, wishes)
    trace = simplified(face, wishes.tolerance)
    if len(trace) > MOST_POINTS:
        text = f"the face takes {len(trace)} points within {wishes.tolerance:g} mm"
        told: dict[str, float | str] = {
            "count": len(trace), "tolerance": wishes.tolerance, "most": MOST_POINTS,
        }  # fmt: skip
        right = f"at most {MOST_POINTS}: a larger tolerance"
        raise refused(name, Fault("", "fit-many-points", text, right, told))
    vectors = tuple((float(x), float(y)) for x, y in trace)
    _check(vectors, joint, name)
    throat, at = _nearest(trace)
    u_throat = math.hypot(float(np.interp(at, _turns(face), doubt)), _u_root(corner))
    return Fitted(
        corner.first,
        corner.second,
        corner.root,
        toes[0],
        toes[1],
        _u_angle(corner),
        vectors,
        throat,
        u_throat,
        np.vstack(
            [corner.root + np.outer(strays[:, 0], across) + np.outer(strays[:, 1], up), beside]
        ),
        _gaps(local, name),
    )


def _u_angle(corner: Corner) -> float:
    """Standard uncertainty of the angle, degrees."""
    return math.degrees(math.hypot(corner.first.u_turn, corner.second.u_turn))


def _held(corner: Corner) -> float:
    """The angle; a joint at the very end of the range may be measured a hair beyond it."""
    held = min(max(corner.angle, SMALLEST_ANGLE), LARGEST_ANGLE)
    return held if abs(held - corner.angle) < 0.02 + 4.0 * _u_angle(corner) else corner.angle


def _with_root(toe: Toe, corner: Corner, *, second: bool) -> Toe:
    """A toe's uncertainty with that of its own line, and of the root that it is measured from."""
    own, other = (corner.second, corner.first) if second else (corner.first, corner.second)
    sine = math.sin(math.radians(corner.angle))
    at_root = other.u_at(float((corner.root - other.middle) @ other.along)) / sine
    along = abs(math.cos(math.radians(corner.angle))) / sine
    at_root = math.hypot(at_root, own.u_at(float((corner.root - own.middle) @ own.along)) * along)
    return Toe(toe.at, math.hypot(toe.uncertainty, at_root))


def _u_root(corner: Corner) -> float:
    """Standard uncertainty of the root, mm, the worst way."""
    sine = math.sin(math.radians(corner.angle))
    parts = [
        line.u_at(float((corner.root - line.middle) @ line.along))
        for line in (corner.first, corner.second)
    ]
    return math.hypot(*parts) / sine


def _joint(corner: Corner, toes: list[Toe], name: str) -> Joint:
    angle = corner.angle
    joint = Joint(
        _held(corner),
        base_length=max(60.0, toes[0].at * 1.5),
        upright_length=max(60.0, toes[1].at * 1.5),
    )
    faults = joint.faults()
    if not SMALLEST_ANGLE <= joint.angle <= LARGEST_ANGLE:
        text = f"the members stand at {angle:.1f} degrees"
        right = f"{SMALLEST_ANGLE:g} to {LARGEST_ANGLE:g} degrees"
        told: dict[str, float | str] = {
            "angle": angle, "lowest": SMALLEST_ANGLE, "highest": LARGEST_ANGLE,
        }  # fmt: skip
        raise refused(name, Fault("", "fit-angle", text, right, told))
    if faults:
        raise IntakeError([note(name, fault) for fault in faults])
    return joint


def _turns(points: FloatArray) -> FloatArray:
    return np.asarray(np.arctan2(points[:, 1], points[:, 0]), float)


def _face(
    local: FloatArray, ends: tuple[Vec, Vec], joint: Joint, noise: float, wishes: Wishes
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """The face from toe to toe in the section frame, what was left out, and its uncertainty."""
    normal = np.array(joint.normal("upright"))
    inside = (local[:, 1] > 1e-6) & (local @ normal > 1e-6)
    clear = max(3.0 * noise, 1e-6)
    beyond_base = (local[:, 0] > ends[0][0]) & (local[:, 1] < clear)
    up = np.array(joint.direction("upright"))
    beyond_upright = (local @ up > float(np.hypot(*ends[1]))) & (local @ normal < clear)
    points = local[inside & ~beyond_base & ~beyond_upright]
    strays = np.zeros((0, 2))
    doubt = np.full(len(points), noise)
    if noise > 0.0 and len(points):
        points = points[np.argsort(_turns(points), kind="stable")]
        turn, reach = _turns(points), np.hypot(*points.T)
        even, error = smoothed(turn, reach, noise)
        far = np.abs(reach - even) > 5.0 * math.hypot(noise, 1e-3)
        strays = points[far]
        turn, reach, even, doubt = turn[~far], reach[~far], even[~far], error[~far]
        taken = even if wishes.smooth else reach
        points = np.column_stack([np.cos(turn), np.sin(turn)]) * taken[:, None]
        sound = (points[:, 1] > 1e-6) & (points @ normal > 1e-6)
        points, doubt = points[sound], doubt[sound]
    face = np.vstack([ends[0], points, ends[1]])
    distinct = np.concatenate([[True], np.hypot(*np.diff(face, axis=0).T) > 1e-9])
    doubt = np.concatenate([[noise], doubt, [noise]])
    return face[distinct], strays, doubt[distinct]


def _beside(cloud: Cloud, corner: Corner, toes: list[Toe], noise: float) -> FloatArray:
    """Lone points beside a member's line, whose neighbours are all on it: no fit went by them."""
    found = [np.zeros((0, 2))]
    on = max(4.5 * noise, limit_of(cloud))
    for run in () if cloud.exact else cloud.runs:
        for second, toe in enumerate(toes):
            along, off = corner.placed(run, second=bool(second))
            far = np.abs(off) > on
            near = ~far & (along > toe.at)
            around = np.convolve(near, np.ones(5), "same") >= 4.0
            found.append(run[far & around & (along > toe.at)])
    return np.vstack(found)


def _nearest(trace: FloatArray) -> tuple[float, float]:
    """The shortest distance from the root to a polyline, mm, and in which direction, radians."""
    start, way = trace[:-1], np.diff(trace, axis=0)
    square = np.maximum((way**2).sum(axis=1), 1e-300)
    share = np.clip(-(start * way).sum(axis=1) / square, 0.0, 1.0)
    feet = start + way * share[:, None]
    distances = np.hypot(*feet.T)
    best = int(distances.argmin())
    return float(distances[best]), math.atan2(feet[best][1], feet[best][0])


def _check(points: tuple[Vec, ...], joint: Joint, name: str) -> None:
    try:
        Section.of(joint, Bead.traced(points, joint))
    except GeometryError as error:
        raise IntakeError([note(name, fault) for fault in error.faults]) from error


def _gaps(local: FloatArray, name: str) -> tuple[Note, ...]:
    """Long stretches of the face of which nothing was seen."""
    steps = np.hypot(*np.diff(local, axis=0).T)
    widest = float(steps.max(initial=0.0))
    if widest < max(_GAP, 6.0 * float(np.median(steps))):
        return ()
    text = f"nothing was seen of {widest:.2f} mm of the face"
    right = "points there; it is bridged straight"
    return (note(name, Fault("", "fit-gap", text, right, {"gap": widest})),)
