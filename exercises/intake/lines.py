"""Straight stretches in points: found by random samples, refined by total least squares."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["Straight", "found_lines", "refined", "total_least_squares"]

FloatArray = NDArray[np.float64]

_DRAWS: Final = 600
_REFINED: Final = 40
_KEPT: Final = 14
_LEAST: Final = 0.03
"""Of the best line's score: what holds less is no member."""


@dataclass(frozen=True, slots=True, eq=False)
class Straight:
    """A line through points, and how well it is known.

    Parameters
    ----------
    middle, along
        A point of it and its unit direction, (2,).
    u_offset
        Standard uncertainty of its place at `middle`, square to it, mm.
    u_turn
        Standard uncertainty of its direction, radians.
    scatter
        Of its points about it, mm.
    count
        How many points it goes by.
    """

    middle: FloatArray
    along: FloatArray
    u_offset: float = 0.0
    u_turn: float = 0.0
    scatter: float = 0.0
    count: int = 0

    def off(self, points: FloatArray) -> FloatArray:
        """How far points (N, 2) lie to the left of it, mm."""
        away = points - self.middle
        return np.asarray(self.along[0] * away[:, 1] - self.along[1] * away[:, 0], float)

    def u_at(self, distance: float) -> float:
        """Standard uncertainty of its place `distance` mm along from `middle`, mm."""
        return float(np.hypot(self.u_offset, self.u_turn * distance))


def total_least_squares(points: FloatArray) -> Straight:
    """Return the line from which points (N, 2) lie least far, squares summed, with uncertainty.

    Neighbours that err together count for fewer: by the correlation of one residual to the next.

    Examples
    --------
    >>> line = total_least_squares(np.array([[0.0, 0.0], [1.0, 1.0], [2.0, 2.0]]))
    >>> np.abs(line.along).round(6).tolist(), line.count
    ([0.707107, 0.707107], 3)
    """
    middle = points.mean(axis=0)
    away = points - middle
    values, vectors = np.linalg.eigh(away.T @ away)
    along = vectors[:, 1]
    off = along[0] * away[:, 1] - along[1] * away[:, 0]
    count = len(points)
    scatter = float(np.sqrt((off @ off) / max(count - 2, 1)))
    next_to = float(off[1:] @ off[:-1]) / max(float(off @ off), 1e-300)
    together = min(max(next_to, 0.0), 0.98)
    effective = max(count * (1.0 - together) / (1.0 + together), 3.0)
    spread = float(np.sqrt(max(values[1], 1e-300) / count))
    u_offset = scatter / np.sqrt(effective)
    return Straight(middle, along, float(u_offset), float(u_offset / spread), scatter, count)


def refined(
    line: Straight, points: FloatArray, within: float, rounds: int = 5
) -> tuple[Straight, NDArray[np.bool_]]:
    """Return `line` fitted anew to the points within a distance of it (mm), and which they are."""
    near = np.abs(line.off(points)) <= within
    for _ in range(rounds):
        if near.sum() < 3:
            break
        line = total_least_squares(points[near])
        again = np.abs(line.off(points)) <= within
        if np.array_equal(again, near):
            break
        near = again
    return line, near


def found_lines(points: FloatArray, weights: FloatArray, within: float) -> list[Straight]:
    """Return the straight stretches that hold most of the points, the best first.

    Parameters
    ----------
    points
        (N, 2), in order along the profile, mm.
    weights
        (N,) mm of profile that each stands for.
    within
        How far from a line its points may lie, mm.

    Examples
    --------
    >>> x = np.linspace(0.0, 5.0, 200)
    >>> corner = np.vstack([np.column_stack([5.0 - x, 0 * x]), np.column_stack([0 * x, x])])
    >>> lines = found_lines(corner, np.full(400, 0.025), 0.01)
    >>> sorted(np.abs(line.along).round(3).tolist() for line in lines[:2])
    [[0.0, 1.0], [1.0, 0.0]]
    """
    # The same points give the same lines: nothing hangs on chance that can't be had again.
    rng = np.random.default_rng(20_26)
    count = len(points)
    apart = rng.uniform(0.03, 0.3, _DRAWS) * count
    first = rng.uniform(0.0, count - apart)
    one, two = points[first.astype(int)], points[(first + apart).astype(int).clip(0, count - 1)]
    way = two - one
    length = np.hypot(*way.T)
    sound = length > 4.0 * within
    one, way = one[sound], way[sound] / length[sound, None]
    scores = np.array(
        [
            _score(a[0] * (points[:, 1] - p[1]) - a[1] * (points[:, 0] - p[0]), weights, within)
            for p, a in zip(one, way, strict=True)
        ]
    )
    made: list[tuple[float, Straight]] = []
    for index in np.argsort(-scores):
        rough = Straight(one[index], way[index])
        # Most samples fall on the longest lines; each of these is worked out once.
        if any(_same(rough, other, 3.0 * within) for _, other in made):
            continue
        line, near = refined(rough, points, within)
        if near.sum() < 8 or any(_same(line, other, within) for _, other in made):
            continue
        made.append((_score(line.off(points), weights, within), line))
        if len(made) == _REFINED:
            break
    made.sort(key=lambda pair: -pair[0])
    worth = _LEAST * made[0][0] if made else 0.0
    return [line for score, line in made[:_KEPT] if score >= worth]


def _score(off: FloatArray, weights: FloatArray, within: float) -> float:
    return float((weights * np.maximum(0.0, 1.0 - (off / within) ** 2)).sum())


def _same(line: Straight, other: Straight, within: float) -> bool:
    turned = abs(line.along[0] * other.along[1] - line.along[1] * other.along[0])
    return turned < 0.01 and abs(float(other.off(line.middle[None, :])[0])) < 2.0 * within
