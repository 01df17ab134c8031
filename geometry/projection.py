"""Projection onto an intersection of half-spaces in three variables.

The hand's cost is a squared distance in the space of (grab x, grab y, reach * turn), so one step
of its minimisation is the projection of a point onto a few half-spaces. In three dimensions at
most three of them are active, and they are found by adding the most violated one at a time; the
distance rises with each, so the search ends. For those few plain floats are
faster than arrays.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

__all__ = ["Triple", "factor", "project", "stretching"]

Triple = tuple[float, float, float]
_Row = list[float]
_Solved = tuple[Triple, list[float]]

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
        guess = _ONTO[len(rows)](target, *rows.values())
        # With no multiplier below zero it is the projection onto these few.
        if guess is not None and min(guess[1]) >= 0.0:
            point, held = guess[0], dict(zip(rows, guess[1], strict=True))
    if not len(spaces):
        return point, held
    normals, bounds = spaces[:, :3].T, spaces[:, 3]
    for _ in range(_ROUNDS):
        depth = bounds - np.dot(point, normals)
        for index in held:
            depth[index] = 0.0
        worst = int(depth.argmax())
        if depth[worst] <= _LOOSE:
            return point, held
        rows[worst] = spaces[worst].tolist()
        step = _with(target, rows, [*held, worst])
        if step is None:
            return None
        point, held = step
    return None


_OTHERS = tuple(
    tuple(each for size in (2, 1, 0) for each in combinations(range(count), size))
    for count in range(4)
)
"""Which of so many may be active beside one more, the fullest choices first."""


def _with(
    target: Triple, spaces: Mapping[int, _Row], indices: list[int]
) -> tuple[Triple, dict[int, float]] | None:
    """The projection onto the few half-spaces `indices`, the last of which is active."""
    best: tuple[float, Triple, tuple[int, ...], list[float]] | None = None
    rows = [spaces[i] for i in indices]
    for chosen in _CHOICES[len(indices)]:
        solved = _ONTO[len(chosen)](target, *[rows[i] for i in chosen])
        if solved is None:
            continue
        point, multipliers = solved
        if min(multipliers) < -1e-10:
            continue
        x, y, z = point
        slack = 0.0
        for a, b, c, d in rows:
            slack = max(slack, d - a * x - b * y - c * z)
        if best is None or slack < best[0]:
            best = slack, point, chosen, multipliers
            if slack <= _LOOSE * 10.0:
                break
    if best is None or best[0] >= 1e-9:
        return None
    return best[1], {indices[i]: held for i, held in zip(best[2], best[3], strict=True)}


_CHOICES = tuple(
    tuple(
        (*others, count - 1)
        for size in (2, 1, 0)
        for others in combinations(range(count - 1), size)
    )
    for count in range(5)
)
"""Which of so many may be active beside the last, the fullest choices first."""


def _onto_one(target: Triple, plane: _Row) -> _Solved | None:
    """Projection onto a plane, with its multiplier."""
    x, y, z = target
    a, b, c, d = plane
    square = a * a + b * b + c * c
    if square <= 1e-24:
        return None
    share = (d - a * x - b * y - c * z) / square
    return (x + share * a, y + share * b, z + share * c), [share]


def _onto_two(target: Triple, one: _Row, two: _Row) -> _Solved | None:
    """Projection onto the line of two planes, with their multipliers."""
    x, y, z = target
    (a, b, c, d), (e, f, g, h) = one, two
    first, both, last = a * a + b * b + c * c, a * e + b * f + c * g, e * e + f * f + g * g
    det = first * last - both * both
    if det <= 1e-13 * first * last:
        return None
    # Nearly parallel planes (the sides of a trace) lose half the digits: what a round left is
    # solved for once more then.
    rounds = 1 if det > _FIRM * first * last else 2
    total = [0.0, 0.0]
    for _ in range(rounds):
        p, q = d - a * x - b * y - c * z, h - e * x - f * y - g * z
        m, n = (last * p - both * q) / det, (first * q - both * p) / det
        total[0] += m
        total[1] += n
        x, y, z = x + m * a + n * e, y + m * b + n * f, z + m * c + n * g
    return (x, y, z), total


def _onto_three(target: Triple, one: _Row, two: _Row, three: _Row) -> _Solved | None:
    """The point of three planes, with the multipliers that lead to it."""
    x, y, z = target
    (a1, b1, c1, d1), (a2, b2, c2, d2), (a3, b3, c3, d3) = one, two, three
    a, b = a1 * a1 + b1 * b1 + c1 * c1, a1 * a2 + b1 * b2 + c1 * c2
    c, e = a1 * a3 + b1 * b3 + c1 * c3, a2 * a2 + b2 * b2 + c2 * c2
    f, i = a2 * a3 + b2 * b3 + c2 * c3, a3 * a3 + b3 * b3 + c3 * c3
    # The adjugate of the matrix of their products, which is symmetric.
    u, v, w = e * i - f * f, c * f - b * i, b * f - c * e
    g, h, k = a * i - c * c, b * c - a * f, a * e - b * b
    det = a * u + b * v + c * w
    if abs(det) <= 1e-13 * a * e * i:
        return None
    total = [0.0, 0.0, 0.0]
    for _ in range(1 if abs(det) > _FIRM * a * e * i else 2):
        p = d1 - a1 * x - b1 * y - c1 * z
        q = d2 - a2 * x - b2 * y - c2 * z
        r = d3 - a3 * x - b3 * y - c3 * z
        one_by = (u * p + v * q + w * r) / det
        two_by = (v * p + g * q + h * r) / det
        three_by = (w * p + h * q + k * r) / det
        total = [total[0] + one_by, total[1] + two_by, total[2] + three_by]
        x = x + one_by * a1 + two_by * a2 + three_by * a3
        y = y + one_by * b1 + two_by * b2 + three_by * b3
        z = z + one_by * c1 + two_by * c2 + three_by * c3
    return (x, y, z), total


_ONTO: tuple[Callable[..., _Solved | None], ...] = (_onto_one, _onto_one, _onto_two, _onto_three)
"""By how many planes they are; there is always one."""


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
