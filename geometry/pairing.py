"""All pairs of features of two bodies, in the matrix form of `geometry.pairs`."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from geometry.bodies import Body
from geometry.features import Discs, Features, Hollows, Lines, features_of
from geometry.pairs import Pairs

__all__ = ["all_pairs"]

Floats = NDArray[np.float64]

_CONE = 1e-6
"""Slack of the normal cones, in cosines: a flush edge's normal lies on the border of a cone."""

_OVERHANG = 1e-4
"""mm: by how much that slack may lengthen a bulging arc at either end; a crown that is all but flat
has a radius of kilometres."""

_ANY = -2.0
"""Cosine of a cone that holds every direction."""


@lru_cache(maxsize=64)
def all_pairs(fixed: Body, moving: Body) -> Pairs:
    """Return every pair of features of two bodies that could touch.

    Parameters
    ----------
    fixed
        In the section's frame.
    moving
        In its own frame, as laid (mirrored if it is turned over).

    Examples
    --------
    >>> from geometry.pairs import Spot
    >>> box = Body.of_points("box", [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)])
    >>> pairs = all_pairs(box, box)
    >>> pairs.lines, len(pairs)
    (32, 48)
    >>> above = Spot(0.5, 1.25, 0.0)
    >>> pairs.within(above, 0.2).size, pairs.within(above, 0.3).size > 0
    (0, True)
    """
    still, mover = features_of(fixed), features_of(moving)
    line_parts = [_on_fixed_lines(still.lines, mover), _on_moving_lines(mover.lines, still)]
    circle_parts = [
        _discs_apart(still.discs, mover.discs),
        _in_fixed_hollows(still.hollows, mover.discs),
        _in_moving_hollows(still.discs, mover.hollows),
    ]
    centres = np.concatenate((mover.discs.centre, mover.hollows.centre))
    names = tuple(name for part in (*line_parts, *circle_parts) for name in part[0])
    kinds = (line_parts, circle_parts)
    rows, values = ([np.concatenate([part[i] for part in kind]) for kind in kinds] for i in (1, 2))
    return Pairs(
        max(mover.reach, float(np.hypot(*centres.T).max(initial=0.0))),
        names,
        np.arange(len(names)),
        # From a pair's rows to columns, in blocks of all pairs.
        np.concatenate([each.transpose(2, 1, 0).reshape(7, -1) for each in rows], axis=1),
        *(np.ascontiguousarray(each.T) for each in values),
    )


_Part = tuple[list[tuple[str, str]], Floats, Floats]
"""Names, rows and values of one kind of pairs."""


def _names(moving: tuple[str, ...], fixed: tuple[str, ...]) -> list[tuple[str, str]]:
    """Names of all pairs, the fixed feature running fastest."""
    return [(m, f) for m in moving for f in fixed]


def _rows(*columns: Floats | float, shape: tuple[int, int]) -> Floats:
    """Coefficient rows (moving * fixed, 7) from seven broadcast columns."""
    table = np.empty((*shape, 7))
    for i, column in enumerate(columns):
        table[..., i] = column
    return table.reshape(-1, 7)


def _spread(values: Floats, shape: tuple[int, int], axis: int) -> Floats:
    """`values` of one feature set, repeated over all pairs."""
    return np.broadcast_to(values[:, None] if axis == 0 else values, shape).reshape(-1).copy()


def _on_fixed_lines(lines: Lines, mover: Features) -> _Part:
    discs = mover.discs
    mx, my = discs.centre[:, 0, None], discs.centre[:, 1, None]
    shape = (len(discs.names), len(lines.names))
    rows = []
    for across, less in ((lines.normal, discs.radius[:, None]), (lines.along, 0.0)):
        nx, ny = across.T
        base = np.einsum("ij,ij->i", across, lines.start)
        rows.append(
            _rows(nx, ny, nx * mx + ny * my, ny * mx - nx * my, 0.0, 0.0, -base - less, shape=shape)
        )
    nx, ny = lines.normal.T
    ux, uy = discs.middle[:, 0, None], discs.middle[:, 1, None]
    cone = _rows(0.0, 0.0, -(nx * ux + ny * uy), -(ny * ux - nx * uy), 0.0, 0.0, 0.0, shape=shape)
    values = (
        _spread(lines.length, shape, 1),
        _spread(discs.radius, shape, 0),
        _spread(_open_corners(discs) - _slack(discs), shape, 0),
        _spread(np.hypot(*discs.centre.T), shape, 0),
    )
    names = _names(discs.names, lines.names)
    return names, np.stack((*rows, cone), axis=1), np.stack(values, axis=1)


def _on_moving_lines(lines: Lines, still: Features) -> _Part:
    discs = still.discs
    cx, cy = discs.centre.T
    shape = (len(lines.names), len(discs.names))
    rows = []
    for across, less in ((lines.normal, discs.radius), (lines.along, 0.0)):
        nx, ny = across[:, 0, None], across[:, 1, None]
        base = np.einsum("ij,ij->i", across, lines.start)[:, None]
        rows.append(
            _rows(
                0.0, 0.0, nx * cx + ny * cy, nx * cy - ny * cx, -nx, -ny, -base - less, shape=shape
            )
        )
    nx, ny = lines.normal[:, 0, None], lines.normal[:, 1, None]
    ux, uy = discs.middle.T
    cone = _rows(0.0, 0.0, -(nx * ux + ny * uy), -(nx * uy - ny * ux), 0.0, 0.0, 0.0, shape=shape)
    values = (
        _spread(lines.length, shape, 0),
        _spread(discs.radius, shape, 1),
        _spread(_open_corners(discs) - _slack(discs), shape, 1),
        _spread(np.hypot(*discs.centre.T), shape, 1),
    )
    names = _names(lines.names, discs.names)
    return names, np.stack((*rows, cone), axis=1), np.stack(values, axis=1)


def _circles(
    fixed: Discs | Hollows,
    moving: Discs | Hollows,
    signs: tuple[float, float, float],
    cones: tuple[Floats, Floats],
    radius: Floats,
    contact: Floats,
) -> _Part:
    """Circle pairs; `signs` are the gap's, and those of the contact direction in each cone."""
    mx, my = moving.centre[:, 0, None], moving.centre[:, 1, None]
    cx, cy = fixed.centre.T
    shape = (len(moving.names), len(fixed.names))
    fx, fy = fixed.middle.T * signs[1]
    ux, uy = moving.middle[:, 0, None] * signs[2], moving.middle[:, 1, None] * signs[2]
    dx = _rows(1.0, 0.0, mx, -my, 0.0, 0.0, -cx, shape=shape)
    dy = _rows(0.0, 1.0, my, mx, 0.0, 0.0, -cy, shape=shape)
    in_fixed = _spread(fx, shape, 1)[:, None] * dx + _spread(fy, shape, 1)[:, None] * dy
    in_moving = _rows(
        0.0, 0.0, -(ux * cx + uy * cy), uy * cx - ux * cy, ux, uy, ux * mx + uy * my, shape=shape
    )
    values = np.stack(
        (
            np.full(shape[0] * shape[1], signs[0]),
            radius.reshape(-1),
            _spread(cones[0], shape, 1),
            _spread(cones[1], shape, 0),
            _spread(contact, shape, 1),
            _spread(np.hypot(*moving.centre.T), shape, 0),
        ),
        axis=1,
    )
    rows = np.stack((dx, dy, in_fixed, in_moving), axis=1)
    # A disc that is wider than a hollow never lies in it.
    fits = values[:, 1] > 1e-9 if signs[0] < 0 else np.ones(len(values), dtype=bool)
    names = _names(moving.names, fixed.names)
    return [name for name, fit in zip(names, fits, strict=True) if fit], rows[fits], values[fits]


def _discs_apart(fixed: Discs, moving: Discs) -> _Part:
    cones = fixed.cos_half - _slack(fixed), moving.cos_half - _slack(moving)
    radius = moving.radius[:, None] + fixed.radius
    return _circles(fixed, moving, (1.0, 1.0, -1.0), cones, radius, fixed.radius)


def _slack(discs: Discs) -> Floats:
    """By how much each cone is wider, in cosines."""
    sines = np.sqrt(np.maximum(1.0 - discs.cos_half**2, 0.0))
    # And what sums round off.
    round_ones = _OVERHANG * sines / np.maximum(discs.radius, _OVERHANG) + 1e-15
    return np.where(discs.radius > 0.0, np.minimum(_CONE, round_ones), _CONE)


def _open_corners(discs: Discs) -> Floats:
    """Cones in which a corner counts whatever its direction: before a side it can't be behind."""
    return np.where(discs.radius > 0.0, discs.cos_half, _ANY)


# No slack for a hollow's span: where it ends in a corner, air lies on either side of the corner,
# and a point that faced both sides at once would be held by one that it can leave.


def _in_fixed_hollows(fixed: Hollows, moving: Discs) -> _Part:
    cones = fixed.cos_half, _open_corners(moving)
    radius = fixed.radius - moving.radius[:, None]
    return _circles(fixed, moving, (-1.0, 1.0, 1.0), cones, radius, fixed.radius)


def _in_moving_hollows(fixed: Discs, moving: Hollows) -> _Part:
    cones = _open_corners(fixed), moving.cos_half
    radius = moving.radius[:, None] - fixed.radius
    return _circles(fixed, moving, (-1.0, -1.0, -1.0), cones, radius, -fixed.radius)
