"""The two members of a profile: which lines they are, their root, and the face between them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from exercises.intake.cloud import Cloud
from exercises.intake.lines import Straight, found_lines, refined
from exercises.intake.refusal import refused
from geometry.curves import Vec
from geometry.faults import Fault
from geometry.joint import LARGEST_ANGLE, SMALLEST_ANGLE

__all__ = ["Corner", "FaceRun", "corner_by_hand", "face_in", "find_corner", "limit_of"]

FloatArray = NDArray[np.float64]

BoolArray = NDArray[np.bool_]

_LEAST_SHARE: Final = 0.05
"""Of all points: so many must lie on each member beyond its toe."""

_BESIDE: Final = 120
"""Points beyond the face's ends that a toe may lie among."""

_ROOM: Final = 2.0
"""Degrees beyond the range of joints in which a pair of lines is still worth a message."""


@dataclass(frozen=True, slots=True, eq=False)
class Corner:
    """Two members that meet at a root.

    Parameters
    ----------
    first, second
        Their lines, each directed away from the root.
    root
        Where they meet, mm, in the file's own frame.
    """

    first: Straight
    second: Straight
    root: FloatArray

    @property
    def angle(self) -> float:
        """Between the two, degrees."""
        return math.degrees(math.acos(float(np.clip(self.first.along @ self.second.along, -1, 1))))

    def placed(self, points: FloatArray, *, second: bool) -> tuple[FloatArray, FloatArray]:
        """How far along a member points lie from the root, and how far off it, in the air, mm."""
        line, other = (self.second, self.first) if second else (self.first, self.second)
        away = points - self.root
        normal = np.array([-line.along[1], line.along[0]])
        if normal @ other.along < 0.0:
            normal = -normal
        return away @ line.along, away @ normal


@dataclass(frozen=True, slots=True, eq=False)
class FaceRun:
    """The points from where the face leaves one member to where it meets the other.

    `points` (N, 2) run from the first member to the second; `before` and `after` are the points
    just beyond them, on the members.
    """

    points: FloatArray
    before: FloatArray
    after: FloatArray


def limit_of(cloud: Cloud) -> float:
    """How far from a member's line its points may lie, mm."""
    return 0.003 if cloud.exact else max(3.5 * cloud.noise, 0.02)


def _spacing(points: FloatArray) -> float:
    return float(np.median(np.hypot(*np.diff(points, axis=0).T))) if len(points) > 1 else 0.0


def _cornered(one: Straight, two: Straight, points: FloatArray, within: float) -> Corner | None:
    """The corner of two lines, each directed to where most of its points are."""
    turn = one.along[0] * two.along[1] - one.along[1] * two.along[0]
    if abs(turn) < math.sin(math.radians(10.0)):
        return None
    away = two.middle - one.middle
    root = one.middle + one.along * ((away[0] * two.along[1] - away[1] * two.along[0]) / turn)
    pair = []
    for line in (one, two):
        near = np.abs(line.off(points)) <= within
        side = float(np.median((points[near] - root) @ line.along)) if near.any() else 1.0
        way = line.along if side >= 0.0 else -line.along
        pair.append(
            Straight(line.middle, way, line.u_offset, line.u_turn, line.scatter, line.count)
        )
    return Corner(pair[0], pair[1], root)


def face_in(cloud: Cloud, corner: Corner) -> FaceRun | None:
    """Return the face between two members: where the bisector first meets the profile, and on.

    From there it is followed both ways, until it is on a member; None if it never is.
    """
    middle = corner.first.along + corner.second.along
    middle = middle / np.hypot(*middle)
    limit = limit_of(cloud)
    best: tuple[float, int, int] | None = None
    for number, (run, closed) in enumerate(zip(cloud.runs, cloud.closed, strict=True)):
        away = (np.vstack([run, run[:1]]) if closed else run) - corner.root
        across = middle[0] * away[:, 1] - middle[1] * away[:, 0]
        forward = away @ middle
        cuts = np.flatnonzero((across[:-1] <= 0.0) != (across[1:] <= 0.0))
        share = across[cuts] / (across[cuts] - across[cuts + 1])
        at = forward[cuts] + share * (forward[cuts + 1] - forward[cuts])
        for where, before in zip(at, cuts, strict=True):
            if where > 5.0 * limit + 0.1 and (best is None or where < best[0]):
                best = (float(where), number, int(before))
    if best is None:
        return None
    _, chosen, cut = best
    return _followed(cloud.runs[chosen], cut, corner, limit, closed=cloud.closed[chosen])


def _followed(
    run: FloatArray, cut: int, corner: Corner, limit: float, *, closed: bool
) -> FaceRun | None:
    if closed:
        # Begun at the far side, so that the face lies in the middle.
        shift = cut - len(run) // 2
        run, cut = np.roll(run, -shift, axis=0), len(run) // 2
    on = limit + 0.7 * min(_spacing(run), 0.5)
    on_first, on_second = (_on_member(run, corner, on, second=second) for second in (False, True))
    either = np.flatnonzero(on_first | on_second)
    low, high = either[either <= cut], either[either > cut]
    # A face drawn by itself ends at its toes, which lie on members drawn elsewhere.
    first = int(low[-1]) if len(low) else 0
    last = int(high[0]) if len(high) else len(run) - 1
    if last - first < 2:
        return None
    if on_first[first] and on_second[last]:
        return FaceRun(
            run[first : last + 1], run[:first][-_BESIDE:][::-1], run[last + 1 :][:_BESIDE]
        )
    if on_second[first] and on_first[last]:
        return FaceRun(
            run[first : last + 1][::-1], run[last + 1 :][:_BESIDE], run[:first][-_BESIDE:][::-1]
        )
    return None


def _on_member(run: FloatArray, corner: Corner, on: float, *, second: bool) -> BoolArray:
    """Which points are on a member, or the last before its line."""
    along, off = corner.placed(run, second=second)
    crosses = np.zeros(len(run), bool)
    crosses[:-1] = (off[:-1] > 0.0) != (off[1:] > 0.0)
    return np.asarray(((np.abs(off) <= on) | crosses) & (along > 0.3), bool)


def _beyond(corner: Corner, run: FaceRun, points: FloatArray, within: float) -> tuple[int, int]:
    """How many points lie on each member beyond the face's ends."""
    counts = []
    for second, end in ((False, run.points[0]), (True, run.points[-1])):
        along, off = corner.placed(points, second=second)
        toe = float(corner.placed(end[None, :], second=second)[0][0])
        counts.append(int(((np.abs(off) <= within) & (along >= toe - within)).sum()))
    return counts[0], counts[1]


def find_corner(cloud: Cloud, name: str = "") -> Corner:
    """Return the two members of a profile.

    Of all pairs of straight stretches it is the one with a face between them and the most points
    on the members beyond it; a bead drawn alone, whose legs end at its toes, comes second.

    Raises
    ------
    IntakeError
        If there is no such pair: says whether a line, a second one or a face is missing.
    """
    points = cloud.kept
    if len(points) > 4000:
        points = points[:: -(-len(points) // 4000)]
    steps = np.hypot(*np.diff(points, axis=0).T)
    weights = np.minimum(np.append(steps, 0.0), 5.0 * np.median(steps))
    within = limit_of(cloud)
    lines = found_lines(points, weights, within)
    best: tuple[tuple[bool, int], Corner] | None = None
    wrong: float | None = None
    least = max(6, int(_LEAST_SHARE * len(points)))
    for number, one in enumerate(lines):
        for two in lines[number + 1 :]:
            corner = _cornered(one, two, points, within)
            if corner is None:
                continue
            run = face_in(cloud, corner)
            if run is None:
                continue
            if not SMALLEST_ANGLE - _ROOM <= corner.angle <= LARGEST_ANGLE + _ROOM:
                wrong = corner.angle if wrong is None else wrong
                continue
            beyond = _beyond(corner, run, points, within)
            rank = (min(beyond) >= least, sum(beyond))
            # Only a drawing may be of the bead alone; a scan needs its members to be measured by.
            if (rank[0] or cloud.exact) and (best is None or rank > best[0]):
                best = (rank, corner)
    if best is None:
        raise refused(name, _why_none(lines, wrong))
    return _settled(best[1], cloud)


def _why_none(lines: list[Straight], wrong: float | None) -> Fault:
    right = "a few millimetres of both members' bare faces beside the weld"
    if not lines:
        text = "no straight stretch is long enough to be a member"
        return Fault("", "fit-no-line", text, right)
    if wrong is not None:
        return _angle_fault(wrong)
    return Fault(
        "", "fit-one-line", "only one member was found, not two with a face between", right
    )


def _angle_fault(angle: float) -> Fault:
    right = f"{SMALLEST_ANGLE:g} to {LARGEST_ANGLE:g} degrees"
    told: dict[str, float | str] = {
        "angle": angle, "lowest": SMALLEST_ANGLE, "highest": LARGEST_ANGLE,
    }  # fmt: skip
    return Fault("", "fit-angle", f"the members stand at {angle:.1f} degrees", right, told)


def _settled(corner: Corner, cloud: Cloud) -> Corner:
    """The corner with each line fitted only to what lies beyond its toe, if that is enough."""
    points, within = cloud.kept, limit_of(cloud)
    for _ in range(2):
        run = face_in(cloud, corner)
        if run is None:
            return corner
        lines = []
        for second, line, end in (
            (False, corner.first, run.points[0]), (True, corner.second, run.points[-1]),
        ):  # fmt: skip
            along, _off = corner.placed(points, second=second)
            toe = float(corner.placed(end[None, :], second=second)[0][0])
            bare = points[along > toe + 2.0 * within]
            fitted, near = refined(line, bare, within)
            lines.append(fitted if near.sum() >= 20 else line)
        again = _cornered(lines[0], lines[1], points, within)
        if again is None:
            return corner
        corner = again
    return corner


def corner_by_hand(
    cloud: Cloud, first: tuple[Vec, Vec], second: tuple[Vec, Vec], name: str = ""
) -> Corner:
    """Return the corner of two members that a person laid through two points each.

    Each line is fitted to the points near it between the two, where there are enough.

    Raises
    ------
    IntakeError
        If they don't meet at an angle that a fillet has.
    """
    points, within = cloud.kept, limit_of(cloud)
    lines = []
    for start, end in (first, second):
        way = np.subtract(end, start)
        length = max(float(np.hypot(*way)), 1e-9)
        line = Straight(np.array(start, float), way / length)
        share = (points - np.array(start)) @ way / length**2
        between = points[(share >= -0.02) & (share <= 1.02)]
        # A hand is less sure than a fit: first what lies within half a millimetre.
        rough, near = refined(line, between, max(0.5, within))
        if near.sum() >= 20:
            rough, near = refined(rough, between, within)
        # Of a few points the hand knows better than a fit.
        lines.append(rough if near.sum() >= 20 else line)
    corner = _cornered(lines[0], lines[1], points, within)
    if corner is None or not (SMALLEST_ANGLE - _ROOM <= corner.angle <= LARGEST_ANGLE + _ROOM):
        raise refused(name, _angle_fault(0.0 if corner is None else corner.angle))
    return corner
