"""Projection onto an intersection of half-spaces in three variables.

The hand's cost is a squared distance in the space of (grab x, grab y, reach * turn), so one step
of its minimisation is the projection of a point onto a few half-spaces. In three dimensions at
most three of them are active, and they are found by adding the most violated one at a time; the
distance rises with each, so the search ends. For those few plain floats are
faster than arrays.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

__all__ = ["Triple", "factor", "project", "stretching"]

Triple = tuple[float, float, float]
_Row = list[float]

_LOOSE = 1e-12
_FIRM = 1e-2
_ROUNDS = 60


def project(
    target: Triple, spaces: NDArray[np.float64], likely: Iterable[int] = ()
) -> tuple[Triple, dict[int, float]] | None:
    """Return the point of all `spaces` nearest to `target`, with the multipliers that hold it.

    Parameters
    ----------
    target
        The point to project.
    spaces
        Shape (n, 4): a row (a, b, c, d) stands for the points with a x + b y + c z >= d.
    likely
        At most three that may turn out to be the active ones: where they do, it is quicker.

    Returns
    -------
    tuple or None
        The point and, by index of each active half-space, its multiplier: target plus the sum of
        multiplier times normal is the point. None if they have no point in common, as far as can
        be told.

    Examples
    --------
    >>> walls = np.array([(1.0, 0.0, 0.0, 0.0), (0.0, 1.0, 0.0, 0.0)])
    >>> project((-1.0, -2.0, 5.0), walls)
    ((0.0, 0.0, 5.0), {1: 2.0, 0: 1.0})
    >>> project((0.0, 0.0, 0.0), np.array([(1.0, 0.0, 0.0, 1.0), (-1.0, 0.0, 0.0, 1.0)])) is None
    True
    """
    point = target
    held: dict[int, float] = {}
    rows: dict[int, _Row] = {index: spaces[index].tolist() for index in likely}
    if rows:
        guess = _onto(target, list(rows.values()))
        # With no multiplier below zero it is the projection onto these few.
        if guess is not None and min(guess[1]) >= 0.0:
            point, held = guess[0], dict(zip(rows, guess[1], strict=True))
    normals, bounds = spaces[:, :3], spaces[:, 3]
    for _ in range(_ROUNDS):
        depth = bounds - normals @ np.array(point)
        for index in held:
            depth[index] = 0.0
        worst = int(depth.argmax()) if depth.size else 0
        if not depth.size or depth[worst] <= _LOOSE:
            return point, held
        rows[worst] = spaces[worst].tolist()
        step = _with(target, rows, [*held, worst])
        if step is None:
            return None
        point, held = step
    return None


def _with(
    target: Triple, spaces: Mapping[int, _Row], indices: list[int]
) -> tuple[Triple, dict[int, float]] | None:
    """The projection onto the few half-spaces `indices`, the last of which is active."""
    last = indices[-1]
    best: tuple[float, Triple, dict[int, float]] | None = None
    for size in range(min(2, len(indices) - 1), -1, -1):
        for others in combinations(indices[:-1], size):
            chosen = (*others, last)
            solved = _onto(target, [spaces[i] for i in chosen])
            if solved is None:
                continue
            point, multipliers = solved
            if min(multipliers) < -1e-10:
                continue
            x, y, z = point
            slack = 0.0
            for i in indices:
                a, b, c, d = spaces[i]
                slack = max(slack, d - a * x - b * y - c * z)
            if slack <= _LOOSE * 10.0:
                return point, dict(zip(chosen, multipliers, strict=True))
            if best is None or slack < best[0]:
                best = slack, point, dict(zip(chosen, multipliers, strict=True))
    if best is not None and best[0] < 1e-9:
        return best[1], best[2]
    return None


def _onto(target: Triple, planes: list[_Row]) -> tuple[Triple, list[float]] | None:
    """Projection onto the intersection of one to three planes, with its multipliers."""
    x, y, z = target
    gram = [[p[0] * q[0] + p[1] * q[1] + p[2] * q[2] for q in planes] for p in planes]
    total = [0.0] * len(planes)
    # Nearly parallel planes (the sides of a trace) lose half the digits: solve once more then for
    # what the first round left.
    for _ in range(2):
        lack = [d - a * x - b * y - c * z for a, b, c, d in planes]
        solved = _solve(gram, lack)
        if solved is None:
            return None
        multipliers, firm = solved
        for i, (a, b, c, _d) in enumerate(planes):
            total[i] += multipliers[i]
            x, y, z = x + multipliers[i] * a, y + multipliers[i] * b, z + multipliers[i] * c
        if firm:
            break
    return (x, y, z), total


def _solve(gram: list[list[float]], right: list[float]) -> tuple[list[float], bool] | None:
    """Solve a symmetric system of one to three equations; None if it is singular.

    With the solution comes whether the system was far from singular, so that it keeps its digits.
    """
    if len(right) == 1:
        return ([right[0] / gram[0][0]], True) if gram[0][0] > 1e-24 else None
    if len(right) == 2:
        (a, b), (_, d) = gram
        det = a * d - b * b
        if det <= 1e-13 * a * d:
            return None
        p, q = right
        return [(d * p - b * q) / det, (a * q - b * p) / det], det > _FIRM * a * d
    (a, b, c), (_, e, f), (_, _, i) = gram
    u, v, w = e * i - f * f, c * f - b * i, b * f - c * e
    det = a * u + b * v + c * w
    if abs(det) <= 1e-13 * a * e * i:
        return None
    p, q, r = right
    solution = [
        (u * p + v * q + w * r) / det,
        (v * p + (a * i - c * c) * q + (b * c - a * f) * r) / det,
        (w * p + (b * c - a * f) * q + (a * e - b * b) * r) / det,
    ]
    return solution, abs(det) > _FIRM * a * e * i


def factor(matrix: list[list[float]], least: float) -> list[list[float]] | None:
    """Return the lower Cholesky factor of a symmetric 3x3 matrix; None if a pivot is under `least`.

    Examples
    --------
    >>> factor([[4.0, 2.0, 0.0], [2.0, 5.0, 0.0], [0.0, 0.0, 9.0]], 0.0)
    [[2.0, 0.0, 0.0], [1.0, 2.0, 0.0], [0.0, 0.0, 3.0]]
    >>> factor([[1.0, 0.0, 0.0], [0.0, -1.0, 0.0], [0.0, 0.0, 1.0]], 0.0) is None
    True
    """
    (a, b, c), (_, d, e), (_, _, f) = matrix
    if a <= least:
        return None
    l00 = math.sqrt(a)
    l10, l20 = b / l00, c / l00
    second = d - l10 * l10
    if second <= least:
        return None
    l11 = math.sqrt(second)
    l21 = (e - l20 * l10) / l11
    third = f - l20 * l20 - l21 * l21
    if third <= least:
        return None
    return [[l00, 0.0, 0.0], [l10, l11, 0.0], [l20, l21, math.sqrt(third)]]


def stretching(matrix: list[list[float]]) -> NDArray[np.float64]:
    """Return the change of variables, shape (3, 3), that makes a bent cost a plain square.

    Where the matrix bends down, the size of the bend still says how far to trust a slope: it is
    taken as bending up as much.

    Examples
    --------
    >>> stretching([[4.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 16.0]]).diagonal().tolist()
    [0.5, 1.0, 0.25]
    """
    lower = factor(matrix, 0.05)
    if lower is None:
        values, vectors = np.linalg.eigh(np.array(matrix))
        bent: NDArray[np.float64] = vectors / np.sqrt(np.maximum(np.abs(values), 0.01))
        return bent
    # The transposed inverse of the lower factor.
    (a, _, _), (b, c, _), (d, e, f) = lower
    x, y = -b / (a * c), -e / (c * f)
    z = (b * e - c * d) / (a * c * f)
    return np.array([[1.0 / a, x, z], [0.0, 1.0 / c, y], [0.0, 0.0, 1.0 / f]])
