"""Segments and circular arcs in the plane: the only curves that bodies are made of.

A boundary runs with its metal on the left, so the **outward** normal of a piece lies to the right
of its direction. An arc that turns left (counter-clockwise) bulges out of the metal and is convex;
one that turns right is hollow.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.faults import Fault, GeometryError, number_faults
from geometry.tolerances import FLATTENING

__all__ = ["Arc", "Curve", "Segment", "Vec", "arc_by_radius", "arc_by_sagitta"]

Vec = tuple[float, float]
"""A point or a direction: (x, y) in mm, or a unit vector."""


@dataclass(frozen=True, slots=True)
class Segment:
    """The straight line from `start` to `end` (mm).

    One of no length has no direction: asked for it, it raises `GeometryError`.

    Examples
    --------
    >>> Segment((0.0, 0.0), (3.0, 4.0)).length
    5.0
    """

    start: Vec
    end: Vec

    @property
    def length(self) -> float:
        """Length in mm."""
        return math.dist(self.start, self.end)

    @property
    def start_direction(self) -> Vec:
        """Unit vector along the curve at its start."""
        length = self.length
        if not 0.0 < length < math.inf:
            raise _refused(
                "/end",
                "no-direction",
                f"the line from {self.start} to {self.end} has no direction",
                "two distinct points",
            )
        return (
            (self.end[0] - self.start[0]) / length,
            (self.end[1] - self.start[1]) / length,
        )

    @property
    def end_direction(self) -> Vec:
        """Unit vector along the curve at its end."""
        return self.start_direction

    def reversed(self) -> Segment:
        """The same line run the other way."""
        return Segment(self.end, self.start)

    def mirrored(self) -> Segment:
        """The mirror image in the x axis, run backwards so that metal stays on the left."""
        return Segment(_mirror(self.end), _mirror(self.start))

    def flatten(self, tolerance: float = FLATTENING) -> NDArray[np.float64]:
        """Both ends, as an array of shape (2, 2) in mm; `tolerance` is not needed."""
        return np.array([self.start, self.end], dtype=np.float64)


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular arc about `centre`, swept by `sweep` radians from `first` (mm, radians).

    Parameters
    ----------
    centre
        (x, y) in mm.
    radius
        mm, above zero.
    first
        Angle of the start as seen from the centre, radians.
    sweep
        Angle swept, radians: above zero turns left. Less than a full turn.
    start, end
        The exact end points. They are stored, so that pieces meet without a gap of rounding.

    Examples
    --------
    >>> quarter = Arc((0.0, 0.0), 2.0, 0.0, math.pi / 2, (2.0, 0.0), (0.0, 2.0))
    >>> round(quarter.length, 6), quarter.convex
    (3.141593, True)
    """

    centre: Vec
    radius: float
    first: float
    sweep: float
    start: Vec
    end: Vec

    @property
    def convex(self) -> bool:
        """Whether the arc bulges out of the metal on its left."""
        return self.sweep > 0

    @property
    def length(self) -> float:
        """Length in mm."""
        return self.radius * abs(self.sweep)

    @property
    def start_direction(self) -> Vec:
        """Unit vector along the curve at its start."""
        return self._direction(self.first)

    @property
    def end_direction(self) -> Vec:
        """Unit vector along the curve at its end."""
        return self._direction(self.first + self.sweep)

    def _direction(self, angle: float) -> Vec:
        turn = 1.0 if self.sweep > 0 else -1.0
        return (-math.sin(angle) * turn, math.cos(angle) * turn)

    def reversed(self) -> Arc:
        """The same arc run the other way."""
        return Arc(
            self.centre, self.radius, self.first + self.sweep, -self.sweep, self.end, self.start
        )

    def mirrored(self) -> Arc:
        """The mirror image in the x axis, run backwards so that metal stays on the left."""
        return Arc(
            _mirror(self.centre),
            self.radius,
            -(self.first + self.sweep),
            self.sweep,
            _mirror(self.end),
            _mirror(self.start),
        )

    def spans(self, angle: float) -> bool:
        """Whether the direction `angle` (radians, from the centre) falls within the arc."""
        turn = math.copysign(1.0, self.sweep)
        return ((angle - self.first) * turn) % math.tau <= abs(self.sweep)

    def flatten(self, tolerance: float = FLATTENING) -> NDArray[np.float64]:
        """Points on the arc, shape (n, 2) in mm, whose chords stand at most `tolerance` mm off it.

        Examples
        --------
        >>> arc = arc_by_sagitta((10.0, 0.0), (0.0, 10.0), 1.0)
        >>> middle = (arc.flatten()[:-1] + arc.flatten()[1:]) / 2
        >>> gap = arc.radius - np.hypot(*(middle - arc.centre).T)
        >>> bool(gap.max() <= 1e-4)
        True
        """
        # Twice the arc cosine of 1 - tolerance / radius, without its loss of digits.
        step = 4.0 * math.asin(min(math.sqrt(0.5), math.sqrt(tolerance / self.radius / 2.0)))
        count = max(2, math.ceil(abs(self.sweep) / step) + 1)
        angles = self.first + np.linspace(0.0, self.sweep, count)
        points = np.column_stack(
            (
                self.centre[0] + self.radius * np.cos(angles),
                self.centre[1] + self.radius * np.sin(angles),
            )
        )
        points[0] = self.start
        points[-1] = self.end
        return points


Curve = Segment | Arc


def _refused(at: str, code: str, text: str, right: str) -> GeometryError:
    return GeometryError([Fault(at, code, text, right)])


def _check(start: Vec, end: Vec, values: Mapping[str, float]) -> None:
    """Refuse what is no number, before it spreads."""
    found = number_faults("/start", dict(zip("xy", start, strict=True)))
    found += number_faults("/end", dict(zip("xy", end, strict=True)))
    found += number_faults("", values)
    if not found and start == end:
        text = f"both ends lie at ({start[0]:g}, {start[1]:g})"
        found.append(Fault("/end", "no-direction", text, "two distinct end points"))
    if found:
        raise GeometryError(found)


def _mirror(point: Vec) -> Vec:
    return (point[0], -point[1])


def arc_by_sagitta(start: Vec, end: Vec, sagitta: float) -> Curve:
    """Return the arc through `start` and `end` whose middle stands `sagitta` mm off the chord.

    Parameters
    ----------
    start, end
        mm, distinct.
    sagitta
        mm; above zero the arc bulges to the right of the chord (out of the metal on its left),
        below zero to the left, and within 1e-6 of zero the chord itself is returned.

    Raises
    ------
    GeometryError
        If the end points coincide, or a value is no finite number.

    Examples
    --------
    >>> half = arc_by_sagitta((-1.0, 0.0), (1.0, 0.0), 1.0)
    >>> half.radius, round(half.sweep / math.pi, 9), tuple(round(v, 9) for v in half.centre)
    (1.0, 1.0, (0.0, 0.0))
    """
    _check(start, end, {"sagitta": sagitta})
    chord = math.dist(start, end)
    half = chord / 2.0
    # A flatter arc's radius is so long that its last digit is longer than its sagitta.
    if abs(sagitta) < 1e-6:
        return Segment(start, end)
    radius = (half * half + sagitta * sagitta) / (2.0 * abs(sagitta))
    right = ((end[1] - start[1]) / chord, -(end[0] - start[0]) / chord)
    offset = sagitta - math.copysign(radius, sagitta)
    centre = (
        (start[0] + end[0]) / 2.0 + right[0] * offset,
        (start[1] + end[1]) / 2.0 + right[1] * offset,
    )
    sweep = math.copysign(4.0 * math.atan2(abs(sagitta), half), sagitta)
    first = math.atan2(start[1] - centre[1], start[0] - centre[0])
    return Arc(centre, radius, first, sweep, start, end)


def arc_by_radius(start: Vec, end: Vec, radius: float, *, convex: bool) -> Curve:
    """Return the shorter arc of `radius` (mm) from `start` to `end`.

    Raises
    ------
    GeometryError
        If the points are farther apart than two radii, or coincide; if a value is no finite number.

    Examples
    --------
    >>> arc = arc_by_radius((0.0, 8.0), (12.0, 0.0), 9.6, convex=False)
    >>> [round(v / 8.0, 4) for v in arc.centre]
    [0.3106, -0.1591]
    """
    _check(start, end, {"radius": radius})
    half = math.dist(start, end) / 2.0
    if half > radius:
        text = f"points {2 * half:g} mm apart lie on no circle of radius {radius:g} mm"
        raise _refused("/radius", "radius-short", text, f"{half:g} mm or more")
    # The radius less its reach to the chord, without the loss of digits of a flat arc.
    sagitta = half * half / (radius + math.sqrt(radius * radius - half * half))
    return arc_by_sagitta(start, end, sagitta if convex else -sagitta)
