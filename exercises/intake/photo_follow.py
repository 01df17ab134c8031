"""Along an edge from click to click, as a wire that is alive; and where that edge meets a member.

Between two clicks the way along which brightness changes most is found among all ways that bend no
faster than 2 in 1 (a dynamic programme over a band about the chord), then set to a fraction of a
pixel along its own normals.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from exercises.intake.photo_edges import REACH, Floats, Grey, edges_across, sample, smoothed, snap
from exercises.intake.photo_frame import Frame, Spot
from exercises.intake.photo_plane import stretch
from geometry.curves import Vec

__all__ = ["Face", "face_of", "follow", "snap_corners", "snap_length", "snap_line"]

Columns = NDArray[np.intp]

_ALONG_FACE: Final = 5.0
_ALONG_MEMBER: Final = 20.0
"""Pixels to either side, along an edge, over which brightness is a mean: as far as a face that
bends, and one that doesn't, allow. The more of them, the less the picture's noise says."""

_STEEPEST: Final = 2
_BEND: Final = 0.03
"""How many pixels the way may leave its chord by a pixel along it, and what each costs."""

_WIDEST: Final = 0.45
_NARROWEST: Final = 10
_BAND: Final = 160
"""How far from the chord an edge may lie: a share of the chord, and pixels."""

_CLEAR: Final = 6.0
"""Pixels off the member: what is nearer is blurred by the corner, and left out."""

_FITTED: Final = 56.0
_FITTED_SHARE: Final = 0.35
_MOST: Final = 0.7
"""How far off the member a curve is laid through the face to find where it meets it: pixels, or a
share of how far the face stands off, and of that the most."""


@dataclass(frozen=True, slots=True, eq=False)
class Face:
    """The face as it was followed.

    Parameters
    ----------
    trace
        From base toe to upright toe in the section frame, mm.
    toe_angles
        At each toe between member and face, degrees: how sharply an edge tells the toe.
    by_hand
        Whether each toe was put there by hand.
    """

    trace: tuple[Vec, ...] = field(repr=False)
    toe_angles: tuple[float, float]
    by_hand: tuple[bool, bool]


def follow(grey: Grey, start: Spot, end: Spot) -> Floats:
    """Return the way along the strongest edge from one spot to the next, pixels, shape (n, 2).

    Between two spots that were put by hand it is the straight line.
    """
    length = math.hypot(end.x - start.x, end.y - start.y)
    ends = np.array([start.at, end.at])
    if (start.by_hand and end.by_hand) or length < 4.0:
        return ends
    count = math.ceil(length) + 1
    along = (ends[1] - ends[0]) / length
    normal = np.array([-along[1], along[0]])
    chord = ends[0] + np.linspace(0.0, length, count)[:, None] * along
    half = min(max(_NARROWEST, math.ceil(_WIDEST * length)), _BAND)
    offs = np.arange(-half, half + 1, dtype=np.float64)
    x = chord[:, 0, None] + offs[None, :] * normal[0]
    y = chord[:, 1, None] + offs[None, :] * normal[1]
    slope = np.gradient(smoothed(smoothed(sample(grey, x, y), 1.5, 1), 1.0, 0), axis=1)
    way, sign = _strongest(slope, _kind(slope[:, half]))
    path = chord + offs[way][:, None] * normal
    return _refined(grey, path, sign, (start, end))


def _kind(slope: Floats) -> float:
    """Whether it gets brighter (1) or darker (-1) across both ends of a chord; 0 if they differ."""
    ends = [float(slope[:3].mean()), float(slope[-3:].mean())]
    return math.copysign(1.0, ends[0]) if ends[0] * ends[1] > 0.25 else 0.0


def _strongest(slope: Floats, kind: float) -> tuple[Columns, float]:
    """The best way through a band, as a column for each row, and whether it gets brighter.

    A face is brighter than what is behind it, or darker, all along; only where neither holds is an
    edge of either kind followed. Its ends tell which `kind` it is, unless they differ.
    """
    scale = float(np.percentile(np.abs(slope), 98.0)) or 1.0
    best: tuple[float, Columns, float] | None = None
    for sign in (1.0, -1.0, 0.0):
        worth = 0.6 if sign == -kind else 0.75 if sign == 0.0 else 1.0
        gain = np.abs(slope) if sign == 0.0 else np.maximum(sign * slope, 0.0)
        total, way = _way(np.minimum(gain / scale, 1.0))
        if best is None or worth * total > best[0]:
            best = (worth * total, way, sign)
    assert best is not None
    return best[1], best[2]


def _way(gain: Floats) -> tuple[float, Columns]:
    """The sum of gains along the best way through a band from middle to middle, and the way."""
    rows, columns = gain.shape
    middle = columns // 2
    shifts = range(-_STEEPEST, _STEEPEST + 1)
    score = np.full(columns, -np.inf)
    score[middle] = 0.0
    came = np.zeros((rows, columns), np.intp)
    index = np.arange(columns)
    for row in range(1, rows):
        padded = np.pad(score, _STEEPEST, constant_values=-np.inf)
        choices = np.stack(
            [
                padded[_STEEPEST + shift : _STEEPEST + shift + columns] - _BEND * shift * shift
                for shift in shifts
            ]
        )
        chosen = choices.argmax(axis=0)
        came[row] = index + chosen - _STEEPEST
        score = choices[chosen, index] + gain[row]
    way = np.empty(rows, np.intp)
    way[-1] = middle
    for row in range(rows - 1, 0, -1):
        way[row - 1] = came[row, way[row]]
    return float(score[middle]), way


def _normals(path: Floats) -> Floats:
    """Unit normals of a way, to its right as the picture is seen, shape (n, 2)."""
    even = smoothed(path, 3.0, 0)
    along = np.gradient(even, axis=0)
    along /= np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-9)[:, None]
    return np.stack([-along[:, 1], along[:, 0]], axis=1)


def _refined(grey: Grey, path: Floats, sign: float, ends: tuple[Spot, Spot]) -> Floats:
    """The way with each point moved to its edge; what finds none stays on the way."""
    even = smoothed(path, 1.5, 0)
    normals = _normals(path)
    offs, strength = edges_across(grey, even, normals, reach=2.5, sign=sign, swath=_ALONG_FACE)
    found = strength >= max(1.0, 0.2 * float(np.median(strength)))
    moved = even + np.where(found & (np.abs(offs) < 2.6), offs, 0.0)[:, None] * normals
    for at, spot in ((0, ends[0]), (-1, ends[1])):
        if spot.by_hand:
            moved[at] = spot.at
    return np.asarray(moved, np.float64)


def face_of(frame: Frame, path: Floats, by_hand: tuple[bool, bool]) -> Face | None:
    """Return the face that a way along its edge shows, toe to toe; None if it meets no member.

    Parameters
    ----------
    frame
        How the picture lies.
    path
        The way, base toe first, pixels, shape (n, 2).
    by_hand
        Whether the toes were put by hand: then the face begins just there. Else a curve through
        the face near each member, clear of the corner's blur, tells where it meets it.
    """
    points = frame.mm(path)
    if not np.isfinite(points).all() or len(points) < 2:
        return None
    angle = math.radians(frame.angle)
    upright = np.array([math.cos(angle), math.sin(angle)])
    members = ((np.array([1.0, 0.0]), np.array([0.0, 1.0])), (upright, _turned_in(upright)))
    for toe, (along, out) in enumerate(members):
        points = points if toe == 0 else points[::-1]
        pixel = stretch(frame.to_mm, tuple(path[0 if toe == 0 else -1]))
        hand = by_hand[toe]
        points = _begun_at(points, along, out, pixel) if hand else _met(points, out, pixel)
        if len(points) < 2:
            return None
        points = points if toe == 0 else points[::-1]
    trace = tuple((float(x), float(y)) for x, y in points)
    return Face(
        trace, (_leaving(points, *members[0]), _leaving(points[::-1], *members[1])), by_hand
    )


def _turned_in(along: Floats) -> Floats:
    """The normal of the upright that looks into the air between the members."""
    return np.array([along[1], -along[0]])


def _begun_at(points: Floats, along: Floats, out: Floats, pixel: float) -> Floats:
    """The points with the first one put on the member, and none after it beneath that."""
    toe = along * float(points[0] @ along)
    rest = points[1:]
    off = rest @ out
    # Only up to where the face has left the member: the other toe is none of this one's.
    left = np.flatnonzero(np.abs(off) > pixel)
    first = int(left[0]) if len(left) else len(rest)
    return np.vstack([toe[None, :], rest[first:]])


def _met(points: Floats, out: Floats, pixel: float) -> Floats:
    """The points from where the face meets the member on."""
    off = points @ out
    highest = int(np.argmax(off))
    near = np.flatnonzero(off[: highest + 1] <= _CLEAR * pixel)
    first = int(near[-1]) + 1 if len(near) else 0
    reach = min(
        max(_FITTED * pixel, _FITTED_SHARE * float(off[highest])), _MOST * float(off[highest])
    )
    far = np.flatnonzero(off[first : highest + 1] > reach)
    last = first + int(far[0]) if len(far) else highest + 1
    fitted = points[first : max(last, first + 2)]
    if len(fitted) < 2 or float(np.ptp(fitted @ out)) < pixel:
        return points[:0]
    return np.vstack([_laid_on(fitted, out), points[first:]])


def _laid_on(fitted: Floats, out: Floats) -> Floats:
    """Points that go on from the first of `fitted` backwards, along its curve, to the member.

    The curve is a parabola over the chord of the points: as good as an arc over so short a way.
    """
    chord = fitted[-1] - fitted[0]
    chord = chord / np.hypot(*chord)
    normal = np.array([-chord[1], chord[0]])
    at, beside = (fitted - fitted[0]) @ chord, (fitted - fitted[0]) @ normal
    degree = 2 if len(fitted) >= 8 else 1
    curve = np.polynomial.Polynomial.fit(at, beside, degree).convert()
    line = np.polynomial.Polynomial([float(fitted[0] @ out), float(chord @ out)])
    height = line + float(normal @ out) * curve
    roots = height.roots()
    before = [float(root.real) for root in roots if abs(root.imag) < 1e-9 and root.real < at[1]]
    if before:
        meets = max(before)
    else:
        # It turns away before it gets there: on along its tangent, then.
        slope = float(height.deriv()(0.0))
        meets = -float(height(0.0)) / slope if slope > 0.0 else 0.0
        curve = np.polynomial.Polynomial([float(curve(0.0)), float(curve.deriv()(0.0))])
    places = np.linspace(meets, 0.0, 4)[:-1]
    return np.asarray(
        fitted[0] + places[:, None] * chord + curve(places)[:, None] * normal, np.float64
    )


def _leaving(points: Floats, along: Floats, out: Floats) -> float:
    """The angle between member and face at the first point, degrees, over the first tenth."""
    span = max(2, len(points) // 10)
    dx, dy = points[min(span, len(points) - 1)] - points[0]
    run = abs(float(dx * along[0] + dy * along[1]))
    rise = abs(float(dx * out[0] + dy * out[1]))
    return math.degrees(math.atan2(rise, run))


def snap_line(grey: Grey, spots: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Return spots on a straight edge, each moved square to the line through them onto the edge.

    What was put by hand stays, and what has no edge nearby counts as by hand from then on.
    """
    # The first time by clicks that are off, the second along the edge itself, and so further.
    for swath in (6.0, _ALONG_MEMBER):
        if len(spots) < 2:
            break
        (ax, ay), (bx, by) = spots[0].at, spots[-1].at
        length = math.hypot(bx - ax, by - ay)
        if length < 2.0 * REACH:
            break
        normal = (-(by - ay) / length, (bx - ax) / length)
        along = min(swath, length / 3.0)
        spots = tuple(
            spot if spot.by_hand else _snapped(grey, spot, normal, along) for spot in spots
        )
    return spots


def _snapped(grey: Grey, spot: Spot, normal: Vec | None, swath: float) -> Spot:
    at = snap(grey, spot.at, normal, swath=swath)
    return Spot(*spot.at, by_hand=True) if at is None else Spot(*at)


def snap_length(grey: Grey, spots: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Return the two ends of a length, each moved along it onto the strongest edge nearby."""
    if len(spots) != 2:
        return spots
    (ax, ay), (bx, by) = spots[0].at, spots[1].at
    length = math.hypot(bx - ax, by - ay)
    if length < 2.0 * REACH:
        return spots
    along = ((bx - ax) / length, (by - ay) / length)
    return tuple(spot if spot.by_hand else _snapped(grey, spot, along, 2.0) for spot in spots)


def snap_corners(grey: Grey, corners: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Return four corners, in order, each moved to where the edges along its two sides cross.

    A side is a line through the edge at many places between its corners, less the worst of them.
    """
    lines = [_side_line(grey, corners[i], corners[(i + 1) % 4]) for i in range(4)]
    moved: list[Spot] = []
    for index, spot in enumerate(corners):
        first, second = lines[index - 1], lines[index]
        at = None if first is None or second is None else _crossing(first, second)
        near = at is not None and math.dist(at, spot.at) <= 2.0 * REACH
        if spot.by_hand or at is None or not near:
            moved.append(Spot(*spot.at, by_hand=True))
        else:
            moved.append(Spot(*at))
    return tuple(moved)


def _side_line(grey: Grey, start: Spot, end: Spot) -> tuple[Floats, Floats] | None:
    ends = np.array([start.at, end.at])
    length = float(np.hypot(*(ends[1] - ends[0])))
    if length < 4.0 * REACH:
        return None
    along = (ends[1] - ends[0]) / length
    normal = np.array([-along[1], along[0]])
    places = np.linspace(0.08, 0.92, min(60, max(8, int(length / 6.0))))
    points = ends[0] + places[:, None] * (ends[1] - ends[0])
    offs, strength = edges_across(grey, points, np.tile(normal, (len(points), 1)), reach=REACH)
    height, width = grey.shape
    inside = (points >= 0.0).all(axis=1) & (points[:, 0] <= width) & (points[:, 1] <= height)
    keep = inside & (strength >= 0.3 * float(np.median(strength)))
    for _ in range(3):
        if keep.sum() < 4:
            return None
        line = np.polynomial.Polynomial.fit(places[keep], offs[keep], 1)
        rest = np.abs(offs - line(places))
        keep &= rest <= max(0.75, 2.5 * float(np.median(rest[keep])))
    begin, finish = line(np.array([0.0, 1.0]))
    moved = ends + np.array([begin, finish])[:, None] * normal
    return moved[0], moved[1] - moved[0]


def _crossing(first: tuple[Floats, Floats], second: tuple[Floats, Floats]) -> Vec | None:
    (p, u), (q, v) = first, second
    crossed = float(u[0] * v[1] - u[1] * v[0])
    if abs(crossed) < 1e-9:
        return None
    share = float((q - p)[0] * v[1] - (q - p)[1] * v[0]) / crossed
    at = p + share * u
    return float(at[0]), float(at[1])
