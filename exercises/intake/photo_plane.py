"""Perspective: a plane that a camera saw askew, and the picture of it, each turned into the other.

Points of a picture are in pixels, x to the right and y down, a pixel's middle at half past its
number. The plane's own y runs down too; its unit is the millimetre where a length is known.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np
from numpy.typing import NDArray

from geometry.curves import Vec

__all__ = ["SAME", "Matrix", "homography", "in_order", "is_askew", "mapped", "stretch"]

Matrix = NDArray[np.float64]
"""Points, shape (n, 2), or a homography, shape (3, 3)."""

SAME: Final = np.eye(3)
"""The homography that moves nothing."""

_LEAST_TURN: Final = math.radians(8.0)
"""How far a rectangle's sides must turn at each corner: flatter, it was seen edge on."""


def homography(seen: Matrix, wanted: Matrix) -> Matrix:
    """Return the homography that takes four points to four others.

    Parameters
    ----------
    seen, wanted
        Shape (4, 2); no three in a line.

    Raises
    ------
    numpy.linalg.LinAlgError
        If three of them are in a line.

    Examples
    --------
    >>> square = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    >>> leaning = np.array([[0.0, 0.0], [4.0, 1.0], [4.0, 3.0], [0.0, 4.0]])
    >>> to_square = homography(leaning, square)
    >>> np.allclose(mapped(to_square, leaning), square)
    True
    """
    rows, right = np.zeros((8, 8)), np.empty(8)
    for index in range(4):
        (x, y), (u, v) = seen[index], wanted[index]
        rows[2 * index] = (x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y)
        rows[2 * index + 1] = (0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y)
        right[2 * index], right[2 * index + 1] = u, v
    return np.append(np.linalg.solve(rows, right), 1.0).reshape(3, 3)


def mapped(matrix: Matrix, points: Matrix) -> Matrix:
    """Return points, shape (n, 2), where a homography takes them.

    Examples
    --------
    >>> mapped(SAME, np.array([[3.0, 4.0]])).tolist()
    [[3.0, 4.0]]
    """
    # Spelt out: BLAS would warn of what lies on the horizon, and takes no longer for so few.
    x, y = points[:, 0], points[:, 1]
    u, v, w = (row[0] * x + row[1] * y + row[2] for row in matrix)
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.stack([u / w, v / w], axis=1)


def stretch(matrix: Matrix, at: Vec) -> float:
    """Return how long a pixel at a point is on the plane: the mean over directions.

    Examples
    --------
    >>> stretch(np.diag([2.0, 2.0, 1.0]), (5.0, 5.0))
    2.0
    """
    spread = np.array([at, (at[0] + 1.0, at[1]), (at[0], at[1] + 1.0)])
    origin, right, down = mapped(matrix, spread)
    (a, b), (c, d) = right - origin, down - origin
    return math.sqrt(abs(a * d - b * c))


def in_order(corners: tuple[Vec, ...]) -> tuple[Vec, ...]:
    """Return four corners in the order that a clock's hand meets them, the upper left one first.

    Examples
    --------
    >>> in_order(((9.0, 8.0), (0.0, 1.0), (1.0, 9.0), (8.0, 0.0)))
    ((0.0, 1.0), (8.0, 0.0), (9.0, 8.0), (1.0, 9.0))
    """
    x, y = (sum(corner[axis] for corner in corners) / len(corners) for axis in (0, 1))
    turned = sorted(corners, key=lambda corner: math.atan2(corner[1] - y, corner[0] - x))
    first = min(range(len(turned)), key=lambda at: turned[at][0] + turned[at][1])
    return tuple(turned[first:] + turned[:first])


def is_askew(corners: tuple[Vec, ...]) -> bool:
    """Whether four corners, in order, can be a rectangle that a camera saw.

    Examples
    --------
    >>> is_askew(((0.0, 1.0), (8.0, 0.0), (9.0, 8.0), (1.0, 9.0)))
    True
    >>> is_askew(((0.0, 0.0), (8.0, 0.0), (4.0, 0.1), (1.0, 9.0)))
    False
    """
    for index in range(4):
        before, here, after = (corners[(index + step) % 4] for step in (-1, 0, 1))
        (ax, ay) = (here[0] - before[0], here[1] - before[1])
        (bx, by) = (after[0] - here[0], after[1] - here[1])
        turn = math.atan2(ax * by - ay * bx, ax * bx + ay * by)
        if not _LEAST_TURN < turn < math.pi - _LEAST_TURN:
            return False
    return True
