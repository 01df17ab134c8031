"""Distances between all pairs of features of a moving and a fixed body, and their derivatives.

The trick that makes this cheap: with ``v = (x, y, cos, sin, a, b, 1)``, where ``a`` and ``b`` are
the corner's coordinates in the turned frame (``a = cos x + sin y``, ``b = -sin x + cos y``), every
offset of a point from a line, fixed or moving, is a linear function of ``v``. So all pairs are one
table, and a pose is evaluated by one product. Derivatives follow from those of ``v``.

Two kinds of pair are left: a disc against a **line**, and a disc against a **circle** (another
disc, from outside, or a hollow, from inside).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

__all__ = ["HAIR", "At", "Pairs", "Spot"]

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
Bools = NDArray[np.bool_]

HAIR = 1e-6
"""mm: what stands in steel by no more than this stands on it."""

_HAIR_OFF_END = 2e-6
_ROUNDING = 1e-9
_NOWHERE = 1e-12
_BLOCKS = np.arange(4)[:, None]


class Spot(NamedTuple):
    """Where the moving body's frame is: corner `x`, `y` (mm), angle `turn` (radians)."""

    x: float
    y: float
    turn: float

    @property
    def vector(self) -> Floats:
        """The vector v that all offsets are linear in."""
        x, y, turn = self
        cos, sin = math.cos(turn), math.sin(turn)
        return np.array((x, y, cos, sin, cos * x + sin * y, cos * y - sin * x, 1.0))

    def gradient(self, arm: tuple[float, float]) -> Floats:
        """Derivative of `vector` by x, y and a turn about the point `arm` off, shape (3, 7)."""
        x, y, turn = self
        cos, sin = math.cos(turn), math.sin(turn)
        a, b = cos * x + sin * y, cos * y - sin * x
        # A turn about that point carries the frame's origin with it.
        dx, dy = arm[1], -arm[0]
        along, across = b + cos * dx + sin * dy, cos * dy - sin * dx - a
        rows = (
            *(1.0, 0.0, 0.0, 0.0, cos, -sin, 0.0),
            *(0.0, 1.0, 0.0, 0.0, sin, cos, 0.0),
            *(dx, dy, -sin, cos, along, across, 0.0),
        )
        return np.array(rows).reshape(3, 7)

    def bend(self, dx: float, dy: float, dturn: float) -> Floats:
        """Second derivative of `vector` along a straight move by (dx, dy, dturn), shape (7,)."""
        x, y, turn = self
        cos, sin = math.cos(turn), math.sin(turn)
        a, b = cos * x + sin * y, cos * y - sin * x
        square = dturn * dturn
        return np.array(
            (
                0.0,
                0.0,
                -cos * square,
                -sin * square,
                -a * square + 2.0 * (cos * dy - sin * dx) * dturn,
                -b * square - 2.0 * (cos * dx + sin * dy) * dturn,
                0.0,
            )
        )


class At(NamedTuple):
    """The pairs evaluated at one spot.

    `gap` (n,): signed offset in mm, lines first, then circles. `foot` (n_lines,): where along the
    line; `disc_dot`: the contact direction against the disc's cone. `off` (2, n_circles): where
    the moving centre is from the fixed one; `away` (n_circles,): how far; `dots` (2, n_circles):
    the contact direction, times `away`, against the fixed and the moving cone. `facing` (n,):
    whether the two features truly face each other.
    """

    spot: Spot
    gap: Floats
    foot: Floats
    disc_dot: Floats
    off: Floats
    away: Floats
    dots: Floats
    facing: Bools


@dataclass(frozen=True, eq=False)
class Pairs:
    """A set of feature pairs in matrix form.

    `table` (7, 3 * n_lines + 4 * n_circles): columns in blocks. Of all line pairs the offset (less
    the disc's radius), the place of its foot, and the contact direction's product with the middle
    of the disc's cone; then of all circle pairs the centre's offset in x and in y, and the contact
    direction's product with the middles of the fixed and the moving cone (times the distance of
    the centres).

    `line_values` (4, n_lines): the line's length, the disc's radius, the cosine of half its cone,
    and how far (mm) the disc's centre lies from its own frame's origin.

    `circle_values` (6, n_circles): sign, distance of centres at contact, cosines of half the
    fixed and half the moving cone, how far the place of contact lies from the fixed centre, and
    how far the moving centre lies from the moving frame's origin.

    `names` holds (moving, fixed) piece names, `order` each pair's place in them; `reach` is how
    far (mm) the moving body's features lie from its frame's origin at most.
    """

    reach: float
    names: tuple[tuple[str, str], ...]
    order: Ints
    table: Floats
    line_values: Floats
    circle_values: Floats

    @cached_property
    def lines(self) -> int:
        """How many of the pairs are line pairs; the rest are circle pairs."""
        return int(self.line_values.shape[1])

    @cached_property
    def circles(self) -> int:
        """How many of the pairs are circle pairs."""
        return int(self.circle_values.shape[1])

    @cached_property
    def length(self) -> Floats:
        """Lengths of the lines, mm."""
        return np.ascontiguousarray(self.line_values[0])

    @cached_property
    def disc_radius(self) -> Floats:
        """Radii of the discs against lines, mm."""
        return np.ascontiguousarray(self.line_values[1])

    @cached_property
    def disc_cos(self) -> Floats:
        """Cosines of half the cones of the discs against lines."""
        return np.ascontiguousarray(self.line_values[2])

    @cached_property
    def disc_arm(self) -> Floats:
        """How far the discs against lines lie from their own frame's origin, mm."""
        return np.ascontiguousarray(self.line_values[3])

    @cached_property
    def widest_arm(self) -> float:
        """The largest of `disc_arm`, mm."""
        return float(self.disc_arm.max(initial=0.0))

    @cached_property
    def outside(self) -> int:
        """How many of the circle pairs are discs on discs; they come first, then the hollows."""
        return int(np.count_nonzero(self.sign > 0.0))

    @cached_property
    def _fixed_centre(self) -> Floats:
        """The fixed centres of the circle pairs, shape (2, n_circles), mm."""
        first = 3 * self.lines
        return -self.table[6, first : first + 2 * self.circles].reshape(2, -1)

    @cached_property
    def sign(self) -> Floats:
        """1 for disc on disc, -1 for a disc in a hollow."""
        return np.ascontiguousarray(self.circle_values[0])

    @cached_property
    def radius(self) -> Floats:
        """Distance of the centres of circle pairs at contact, mm."""
        return np.ascontiguousarray(self.circle_values[1])

    @cached_property
    def cones(self) -> Floats:
        """Cosines of half the fixed and of half the moving features' cones, shape (2, n)."""
        return np.ascontiguousarray(self.circle_values[2:4])

    @cached_property
    def least_dots(self) -> Floats:
        """What `At.dots` are at least where both features face each other at contact."""
        return self.cones * self.radius

    @cached_property
    def arm(self) -> Floats:
        """How far the moving centres lie from the moving frame's origin, mm."""
        return np.ascontiguousarray(self.circle_values[5])

    @cached_property
    def _past_end(self) -> Floats:
        """How far along the lines a foot may be, give or take rounding, mm."""
        return self.length + _ROUNDING

    def __len__(self) -> int:
        return int(self.order.size)

    def name(self, which: int) -> tuple[str, str]:
        """Names of the moving and the fixed piece of a pair."""
        return self.names[self.order[which]]

    def at(self, spot: Spot) -> At:
        """Evaluate all pairs at `spot`."""
        lines, circles = self.lines, self.circles
        product = np.dot(spot.vector, self.table)
        gap = np.empty(lines + circles)
        facing = np.empty(lines + circles, dtype=np.bool_)

        gap[:lines] = product[:lines]
        foot, disc_dot = product[lines : 2 * lines], product[2 * lines : 3 * lines]
        on = foot >= -_ROUNDING
        on &= foot <= self._past_end
        np.logical_and(on, disc_dot >= self.disc_cos, out=facing[:lines])

        centres = product[3 * lines :].reshape(4, circles)
        off, dots = centres[:2], centres[2:]
        square = off * off
        away = np.sqrt(square[0] + square[1])
        np.multiply(self.sign, away - self.radius, out=gap[lines:])
        in_cones = dots >= self.cones * away
        np.logical_and(in_cones[0], in_cones[1], out=facing[lines:])
        return At(spot, gap, foot, disc_dot, off, away, dots, facing)

    def front(self, at: At) -> Bools:
        """Whether each pair's features are on the right side of each other, give or take a hair.

        A hair (a millionth of a millimetre) is given well within the features only. At a corner a
        point that is under one side is often a hair behind the other, and free all the same.
        """
        sides: Bools = at.gap >= -_ROUNDING
        nearly = at.gap >= -HAIR
        if np.count_nonzero(nearly) == np.count_nonzero(sides):
            return sides
        within = (at.foot >= _HAIR_OFF_END) & (at.foot <= self.length - _HAIR_OFF_END)
        in_cones = at.dots - self.cones * at.away >= _HAIR_OFF_END
        inside = np.concatenate((within, in_cones[0] & in_cones[1]))
        return sides | (inside & nearly)

    def within(self, spot: Spot, width: float) -> Ints:
        """Which pairs' two features may lie within `width` mm of each other at `spot`."""
        lines, circles = self.lines, self.circles
        product = np.dot(spot.vector, self.table)
        foot = product[lines : 2 * lines]
        past = np.maximum(np.maximum(-foot, foot - self.length), 0.0)
        out = product[:lines] + self.disc_radius
        near = np.empty(lines + circles, dtype=np.bool_)
        near[:lines] = out * out + past * past <= (self.disc_radius + width) ** 2
        off = product[3 * lines : 3 * lines + 2 * circles].reshape(2, circles)
        square = off[0] * off[0] + off[1] * off[1]
        near[lines:] = np.abs(np.sqrt(square) - self.radius) <= width
        which = near.nonzero()[0]
        split = int(which.searchsorted(lines + self.outside))
        hollows = which[split:] - lines
        if not hollows.size:
            return which
        dots = product[3 * lines + 2 * circles :].reshape(2, circles).take(hollows, axis=1)
        beside = self._beside(hollows, square.take(hollows), dots)
        return np.concatenate((which[:split], which[split:][beside <= width]))

    def _beside(self, hollows: Ints, square: Floats, dots: Floats) -> Floats:
        """How far (mm) what is beside a hollow lies from its end; 0 where it is before or behind.

        `square` is of the distance between the centres.
        """
        contact, radius = self.circle_values[4].take(hollows), self.radius.take(hollows)
        # Whichever of the two features is the hollow, its cone is its span.
        side = (contact <= 0.0).astype(np.intp)
        dot, cos = dots[side, np.arange(side.size)], self.cones[side, hollows]
        disc = np.maximum(-contact, contact - radius)
        wide = radius + disc
        across = np.sqrt(np.maximum((square - dot * dot) * (1.0 - cos * cos), 0.0))
        from_end = square + wide * wide - 2.0 * wide * (dot * cos + across)
        beside = dot < cos * np.sqrt(square)
        return np.where(beside, np.sqrt(np.maximum(from_end, 0.0)) - disc, 0.0)

    def slopes(self, at: At, which: Ints, arm: tuple[float, float] = (0.0, 0.0)) -> Floats:
        """Gradients of the gaps of pairs `which` by x, y and turn (radians), shape (3, k).

        The turn is about the point `arm` (mm, section's frame) off the moving frame's origin;
        `which` is in rising order.
        """
        # Pairs come in order, lines first.
        split = int(which.searchsorted(self.lines))
        rows = np.empty((3, which.size))
        if split:
            offsets = self.table.take(which[:split], axis=1)
            np.matmul(at.spot.gradient(arm), offsets, out=rows[:, :split])
        if split < which.size:
            circles = which[split:] - self.lines
            pull = self.sign.take(circles) / np.maximum(at.away.take(circles), _NOWHERE)
            off = at.off.take(circles, axis=1)
            np.multiply(off, pull, out=rows[:2, split:])
            # A centre turns about that point, a quarter turn ahead of where it lies.
            lies = off + self._fixed_centre.take(circles, axis=1)
            lies -= ((at.spot.x + arm[0],), (at.spot.y + arm[1],))
            lies *= rows[1::-1, split:]
            np.subtract(lies[0], lies[1], out=rows[2, split:])
        return rows

    def foot_slope(self, at: At, line: int, arm: tuple[float, float]) -> Floats:
        """Gradient of a line pair's foot, as in `slopes`, shape (3,)."""
        return at.spot.gradient(arm) @ self.table[:, self.lines + line]

    def in_cones(self, spot: Spot, circle: int) -> tuple[float, float]:
        """The contact direction's products with a circle pair's cones, as in `At`, at `spot`."""
        first = 3 * self.lines + 2 * self.circles + circle
        both = np.dot(spot.vector, self.table[:, first :: self.circles])
        return float(both[0]), float(both[1])

    def curvature(
        self, at: At, which: int, arm: tuple[float, float], hand_reach: float
    ) -> tuple[tuple[float, float, float], ...]:
        """Second derivative of one gap in (held x, held y, hand_reach * turn), shape (3, 3).

        `arm` leads from the moving frame's origin to the held point, in the section's frame.
        """
        cos, sin = math.cos(at.spot.turn), math.sin(at.spot.turn)
        rx, ry = arm
        if which < self.lines:
            px, py, pc, ps, pa, pb, _ = self.table[:, which].tolist()
            a = cos * at.spot.x + sin * at.spot.y
            b = cos * at.spot.y - sin * at.spot.x
            xt, yt = -sin * pa - cos * pb, cos * pa - sin * pb
            gx, gy = px + cos * pa - sin * pb, py + sin * pa + cos * pb
            tt = -cos * pc - sin * ps - a * pa - b * pb
            tt += 2.0 * (ry * xt - rx * yt) + gx * rx + gy * ry
            xx = xy = yy = 0.0
        else:
            i = which - self.lines
            first = 3 * self.lines + i
            mx, my = self.table.item(2, first), self.table.item(2, first + self.circles)
            qx, qy = cos * mx - sin * my - rx, sin * mx + cos * my - ry
            away, sign = float(at.away[i]), float(self.sign[i])
            if away < 1e-3:
                # Corner on corner: the normal turns too fast for a second derivative to mean much.
                return ((0.0, 0.0, 0.0),) * 3
            ux, uy = at.off.item(0, i) / away, at.off.item(1, i) / away
            across = (-uy, ux, uy * qy + ux * qx)
            bend = sign / away
            xx, xy, yy = (
                across[0] * across[0] * bend,
                across[0] * across[1] * bend,
                across[1] * across[1] * bend,
            )
            xt, yt = across[0] * across[2] * bend, across[1] * across[2] * bend
            tt = across[2] * across[2] * bend - sign * (ux * qx + uy * qy)
        xt, yt, tt = xt / hand_reach, yt / hand_reach, tt / hand_reach**2
        return (xx, xy, xt), (xy, yy, yt), (xt, yt, tt)

    def meeting(self, at: At, which: int) -> tuple[float, float]:
        """Where (mm, section's frame) the two features of a pair are nearest."""
        spot = at.spot
        cos, sin = math.cos(spot.turn), math.sin(spot.turn)
        if which < self.lines:
            px, py, pc, ps, pa, pb, _ = self.table[:, which].tolist()
            radius = self.disc_radius.item(which)
            if pa == 0.0 and pb == 0.0:
                # Fixed line: the disc's centre, carried by the frame, less its way to the line.
                mx, my = px * pc + py * ps, py * pc - px * ps
                x, y = spot.x + cos * mx - sin * my, spot.y + sin * mx + cos * my
                return x - px * radius, y - py * radius
            nx, ny = -pa, -pb
            cx, cy = nx * pc - ny * ps, ny * pc + nx * ps
            wx, wy = cos * nx - sin * ny, sin * nx + cos * ny
            return cx - wx * radius, cy - wy * radius
        i = which - self.lines
        return self._circle_meeting(at, i)

    def meetings(self, at: At, which: Ints) -> Floats:
        """As `meeting` for pairs `which`, in rising order; shape (k, 2)."""
        split = int(which.searchsorted(self.lines))
        places = np.empty((which.size, 2))
        places[:split] = self._line_meetings(at.spot, which[:split])
        circles = which[split:] - self.lines
        pull = self.circle_values[4, circles] / np.maximum(at.away[circles], _NOWHERE)
        places[split:] = (at.off[:, circles] * pull + self._fixed_centre[:, circles]).T
        return places

    def _line_meetings(self, spot: Spot, lines: Ints) -> Floats:
        px, py, pc, ps, pa, pb, _ = self.table.take(lines, axis=1)
        radius = self.disc_radius.take(lines)
        fixed = (pa == 0.0) & (pb == 0.0)
        # The normal and the disc's centre, the line's in its own frame, the disc's in its own.
        nx, ny = px - pa, py - pb
        across = np.where(fixed, ps, -ps)
        mx, my = nx * pc + ny * across, ny * pc - nx * across
        cos, sin = math.cos(spot.turn), math.sin(spot.turn)
        # Of a fixed line the centre is carried by the frame, of a moving one the normal.
        ux, uy = np.where(fixed, mx, nx), np.where(fixed, my, ny)
        ux, uy = cos * ux - sin * uy, sin * ux + cos * uy
        x = np.where(fixed, spot.x + ux - nx * radius, mx - ux * radius)
        y = np.where(fixed, spot.y + uy - ny * radius, my - uy * radius)
        return np.stack((x, y), axis=1)

    def _circle_meeting(self, at: At, i: int) -> tuple[float, float]:
        # A corner that lies on another has no direction, and needs none.
        share = self.circle_values.item(4, i) / max(at.away.item(i), _NOWHERE)
        cx, cy = self._fixed_centre.item(0, i), self._fixed_centre.item(1, i)
        return cx + at.off.item(0, i) * share, cy + at.off.item(1, i) * share

    def subset(self, which: Ints) -> Pairs:
        """Only the pairs `which`, in rising order."""
        split = int(which.searchsorted(self.lines))
        lines, circles = which[:split], which[split:] - self.lines
        columns = np.empty(3 * lines.size + 4 * circles.size, dtype=np.intp)
        np.add(_BLOCKS[:3] * self.lines, lines, out=columns[: 3 * lines.size].reshape(3, -1))
        first = _BLOCKS * self.circles + 3 * self.lines
        np.add(first, circles, out=columns[3 * lines.size :].reshape(4, -1))
        return Pairs(
            self.reach,
            self.names,
            self.order.take(which),
            self.table.take(columns, axis=1),
            self.line_values.take(lines, axis=1),
            self.circle_values.take(circles, axis=1),
        )
