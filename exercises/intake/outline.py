"""Outlines out of drawings: runs of points, closed or not, in millimetres once units are known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from exercises.intake.refusal import IntakeError, Note, refused
from exercises.intake.units import FileUnit
from geometry.faults import Fault

__all__ = [
    "FLATNESS", "MOST_OUTLINES", "MOST_VERTICES", "Drawing", "Outline", "joined", "too_much",
]  # fmt: skip

FloatArray = NDArray[np.float64]

FLATNESS: Final = 0.002
"""mm: how far a flattened curve may stand off the true one."""

MOST_OUTLINES: Final = 2000
MOST_VERTICES: Final = 200_000

_GAP: Final = 1e-4
"""Share of a drawing's size: ends that lie closer than this are one point."""


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """A run of points (N, 2), y up, in the drawing's units, and where it was drawn."""

    points: FloatArray
    closed: bool
    layer: str = ""

    @property
    def length(self) -> float:
        """How long it is, in the drawing's units."""
        ends = np.vstack([self.points, self.points[:1]]) if self.closed else self.points
        return float(np.hypot(*np.diff(ends, axis=0).T).sum())


@dataclass(frozen=True, slots=True, eq=False)
class Drawing:
    """What a drawing holds.

    Parameters
    ----------
    outlines
        The longest first.
    unit
        What the file says it is in; None if it doesn't say.
    notes
        What it holds that is no outline and was left out.
    """

    outlines: tuple[Outline, ...]
    unit: FileUnit | None
    notes: tuple[Note, ...]


def too_much(name: str) -> IntakeError:
    """Return the error for a drawing that is more than one section."""
    text = f"the drawing has more than {MOST_OUTLINES} outlines or {MOST_VERTICES} points"
    right = "a drawing of one section"
    told: dict[str, float | str] = {"outlines": MOST_OUTLINES, "points": MOST_VERTICES}
    return refused(name, Fault("", "drawing-too-much", text, right, told))


def joined(outlines: Sequence[Outline]) -> list[Outline]:
    """Return outlines with those that meet end to end made one, the longest first.

    Where three meet nothing is joined, since none of the ways on is the right one.

    Examples
    --------
    >>> parts = [Outline(np.array(p, float), False) for p in ([[0, 0], [1, 0]], [[1, 1], [1, 0]])]
    >>> joined(parts)[0].points.tolist()
    [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0]]
    """
    open_ones = [one for one in outlines if not one.closed and len(one.points) > 1]
    whole = [one for one in outlines if one.closed and len(one.points) > 2]
    if open_ones:
        every = np.vstack([one.points for one in outlines])
        gap = max(float(np.ptp(every, axis=0).max()) * _GAP, 1e-12)
        whole += _chains(open_ones, gap)
    return sorted(whole, key=lambda one: -one.length)


def _chains(parts: Sequence[Outline], gap: float) -> list[Outline]:
    ends: dict[tuple[int, int], list[tuple[int, int]]] = {}
    node_of: dict[tuple[int, int], tuple[int, int]] = {}
    for index, part in enumerate(parts):
        for end in (0, -1):
            cell = _cell(part.points[end], gap, ends)
            ends.setdefault(cell, []).append((index, end))
            node_of[index, end] = cell
    used: set[int] = set()
    made: list[Outline] = []
    for index, part in enumerate(parts):
        if index in used:
            continue
        used.add(index)
        points, layer = part.points, part.layer
        for end in (-1, 0):
            at = (index, end)
            while (on := _next(at, ends[node_of[at]], used)) is not None:
                used.add(on[0])
                more = parts[on[0]].points if on[1] == 0 else parts[on[0]].points[::-1]
                # Grown at its own end; turned round for the other.
                points = np.vstack([points, more[1:]]) if end else np.vstack([more[:0:-1], points])
                at = (on[0], -1 if on[1] == 0 else 0)
        closed = len(points) > 3 and float(np.hypot(*(points[0] - points[-1]))) <= gap
        made.append(Outline(points[:-1] if closed else points, closed, layer))
    return made


def _cell(
    point: FloatArray, gap: float, known: dict[tuple[int, int], list[tuple[int, int]]]
) -> tuple[int, int]:
    x, y = int(np.floor(point[0] / gap)), int(np.floor(point[1] / gap))
    near = ((x + dx, y + dy) for dx in (0, -1, 1) for dy in (0, -1, 1))
    return next((cell for cell in near if cell in known), (x, y))


def _next(
    at: tuple[int, int], meeting: Sequence[tuple[int, int]], used: set[int]
) -> tuple[int, int] | None:
    others = [end for end in meeting if end != at]
    if len(others) != 1 or others[0][0] in used:
        return None
    return others[0]
