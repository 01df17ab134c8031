"""Distances between all pairs of features of a moving and a fixed body, and their derivatives.

The trick that makes this cheap: with ``v = (x, y, cos, sin, a, b, 1)``, where ``a`` and ``b`` are
the corner's coordinates in the turned frame (``a = cos x + sin y``, ``b = -sin x + cos y``), every
offset of a point from a line, fixed or moving, is a linear function of ``v``. So all pairs are one
matrix, and a pose is evaluated by one product. Derivatives follow from those of ``v``.

Two kinds of pair are left: a disc against a **line**, and a disc against a **circle** (another
disc, from outside, or a hollow, from inside).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

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


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the moving body's frame is: corner `x`, `y` (mm), angle `turn` (radians)."""

    x: float
    y: float
    turn: float

    @property
    def vector(self) -> Floats:
        """The vector v that all offsets are linear in."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return np.array(
            (
                self.x,
                self.y,
                cos,
                sin,
                cos * self.x + sin * self.y,
                cos * self.y - sin * self.x,
                1.0,
            )
        )

    @property
    def jacobian(self) -> Floats:
        """Derivative of `vector` with respect to (x, y, turn), shape (7, 3)."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        a, b = cos * self.x + sin * self.y, cos * self.y - sin * self.x
        return np.array(
            (
                (1.0, 0.0, 0.0),
                (0.0, 1.0, 0.0),
                (0.0, 0.0, -sin),
                (0.0, 0.0, cos),
                (cos, sin, b),
                (-sin, cos, -a),
                (0.0, 0.0, 0.0),
            )
        )

    def bend(self, dx: float, dy: float, dturn: float) -> Floats:
        """Second derivative of `vector` along a straight move by (dx, dy, dturn), shape (7,)."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        a, b = cos * self.x + sin * self.y, cos * self.y - sin * self.x
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


@dataclass(frozen=True, eq=False)
class At:
    """The pairs evaluated at one spot.

    `gap` (n,): signed offset in mm, lines first, then circles. `foot` (n_lines,): where along the
    line; `disc_dot`: the contact direction against the disc's cone. `dx`, `dy`, `away`
    (n_circles,): offset of the moving centre from the fixed one. `facing` (n,): whether the two
    features truly face each other.
    """

    spot: Spot
    gap: Floats
    foot: Floats
    disc_dot: Floats
    dx: Floats
    dy: Floats
    away: Floats
    fixed_dot: Floats
    moving_dot: Floats
    facing: Bools


@dataclass(frozen=True, eq=False)
class Pairs:
    """A set of feature pairs in matrix form.

    `line_rows` (n, 3, 7): a line pair's offset (less the disc's radius), the place of its foot, and
    the contact direction's product with the middle of the disc's cone. `line_values` (n, 4): the
    line's length, the disc's radius, the cosine of half its cone, and how far (mm) the disc's
    centre lies from its own frame's origin.

    `circle_rows` (n, 4, 7): a circle pair's centre offset in x and in y, and the contact
    direction's product with the middles of the fixed and the moving cone (times the distance of
    the centres). `circle_values` (n, 6): sign, distance of centres at contact, cosines of half the
    fixed and half the moving cone, how far the place of contact lies from the fixed centre, and
    how far the moving centre lies from the moving frame's origin.

    `names` holds (moving, fixed) piece names, `order` each pair's place in them; `reach` is how
    far (mm) the moving body's features lie from its frame's origin at most.
    """

    reach: float
    names: tuple[tuple[str, str], ...]
    order: Ints
    line_rows: Floats
    line_values: Floats
    circle_rows: Floats
    circle_values: Floats

    @cached_property
    def offset(self) -> Floats:
        """Rows (n_lines, 7) of the line pairs' offsets."""
        return np.ascontiguousarray(self.line_rows[:, 0])

    @cached_property
    def length(self) -> Floats:
        """Lengths of the lines, mm."""
        return np.ascontiguousarray(self.line_values[:, 0])

    @cached_property
    def disc_radius(self) -> Floats:
        """Radii of the discs against lines, mm."""
        return np.ascontiguousarray(self.line_values[:, 1])

    @cached_property
    def disc_cos(self) -> Floats:
        """Cosines of half the cones of the discs against lines."""
        return np.ascontiguousarray(self.line_values[:, 2])

    @cached_property
    def disc_arm(self) -> Floats:
        """How far the discs against lines lie from their own frame's origin, mm."""
        return np.ascontiguousarray(self.line_values[:, 3])

    @cached_property
    def widest_arm(self) -> float:
        """The largest of `disc_arm`, mm."""
        return float(self.disc_arm.max(initial=0.0))

    @cached_property
    def outside(self) -> int:
        """How many of the circle pairs are discs on discs; they come first, then the hollows."""
        return int(np.count_nonzero(self.sign > 0.0))

    @cached_property
    def centre(self) -> Floats:
        """The moving centres of the circle pairs in the moving frame, shape (n_circles, 2), mm."""
        return np.column_stack((self.circle_rows[:, 0, 2], self.circle_rows[:, 1, 2]))

    @cached_property
    def sign(self) -> Floats:
        """1 for disc on disc, -1 for a disc in a hollow."""
        return np.ascontiguousarray(self.circle_values[:, 0])

    @cached_property
    def radius(self) -> Floats:
        """Distance of the centres of circle pairs at contact, mm."""
        return np.ascontiguousarray(self.circle_values[:, 1])

    @cached_property
    def fixed_cos(self) -> Floats:
        """Cosines of half the fixed features' cones."""
        return np.ascontiguousarray(self.circle_values[:, 2])

    @cached_property
    def moving_cos(self) -> Floats:
        """Cosines of half the moving features' cones."""
        return np.ascontiguousarray(self.circle_values[:, 3])

    @cached_property
    def arm(self) -> Floats:
        """How far the moving centres lie from the moving frame's origin, mm."""
        return np.ascontiguousarray(self.circle_values[:, 5])

    def __len__(self) -> int:
        return int(self.order.size)

    def name(self, which: int) -> tuple[str, str]:
        """Names of the moving and the fixed piece of a pair."""
        return self.names[self.order[which]]

    @cached_property
    def lines(self) -> int:
        """How many of the pairs are line pairs; the rest are circle pairs."""
        return int(self.line_rows.shape[0])

    def at(self, spot: Spot) -> At:
        """Evaluate all pairs at `spot`."""
        v = spot.vector
        lines = (self.line_rows.reshape(-1, 7) @ v).reshape(-1, 3)
        circles = (self.circle_rows.reshape(-1, 7) @ v).reshape(-1, 4)
        dx, dy = circles[:, 0], circles[:, 1]
        away = np.hypot(dx, dy)
        gap = np.concatenate((lines[:, 0], self.sign * (away - self.radius)))
        foot, disc_dot = lines[:, 1], lines[:, 2]
        in_fixed, in_moving = circles[:, 2], circles[:, 3]
        facing = np.concatenate(
            (
                (foot >= -_ROUNDING)
                & (foot <= self.length + _ROUNDING)
                & (disc_dot >= self.disc_cos),
                (in_fixed >= self.fixed_cos * away) & (in_moving >= self.moving_cos * away),
            )
        )
        return At(spot, gap, foot, disc_dot, dx, dy, away, in_fixed, in_moving, facing)

    def front(self, at: At) -> Bools:
        """Whether each pair's features are on the right side of each other, give or take a hair.

        A hair (a millionth of a millimetre) is given well within the features only. At a corner a
        point that is under one side is often a hair behind the other, and free all the same.
        """
        sides: Bools = at.gap >= -_ROUNDING
        if not ((at.gap < -_ROUNDING) & (at.gap >= -HAIR)).any():
            return sides
        within = (at.foot >= _HAIR_OFF_END) & (at.foot <= self.length - _HAIR_OFF_END)
        in_cones = (at.fixed_dot - self.fixed_cos * at.away >= _HAIR_OFF_END) & (
            at.moving_dot - self.moving_cos * at.away >= _HAIR_OFF_END
        )
        inside = np.concatenate((within, in_cones))
        return sides | (inside & (at.gap >= -HAIR))

    def floor(self, at: At) -> Floats:
        """A lower bound (mm) of the distance between the two features of each pair."""
        past = np.maximum(np.maximum(-at.foot, at.foot - self.length), 0.0)
        count = self.lines
        near = np.hypot(at.gap[:count] + self.disc_radius, past) - self.disc_radius
        return np.concatenate((near, np.abs(at.gap[count:])))

    def slopes(self, at: At, which: Ints) -> Floats:
        """Gradients of the gaps of pairs `which` with respect to (x, y, turn), shape (k, 3).

        `which` is in rising order.
        """
        # Pairs come in order, lines first.
        split = int(np.searchsorted(which, self.lines))
        rows = np.empty((which.size, 3))
        if split:
            np.matmul(self.offset[which[:split]], at.spot.jacobian, out=rows[:split])
        if split < which.size:
            circles = which[split:] - self.lines
            pull = self.sign[circles] / np.maximum(at.away[circles], _NOWHERE)
            ux, uy = pull * at.dx[circles], pull * at.dy[circles]
            # A centre turns about the frame's origin, a quarter turn ahead of where it lies.
            cos, sin = math.cos(at.spot.turn), math.sin(at.spot.turn)
            turned = self.centre[circles] @ np.array(((-sin, cos), (-cos, -sin)))
            rows[split:, 0], rows[split:, 1] = ux, uy
            rows[split:, 2] = ux * turned[:, 0] + uy * turned[:, 1]
        return rows

    def bend(self, at: At, which: int, move: tuple[float, float, float]) -> float:
        """Second derivative of one gap along a straight move (dx, dy, dturn)."""
        v2 = at.spot.bend(*move)
        if which < self.lines:
            return float(self.offset[which] @ v2)
        i = which - self.lines
        v1 = at.spot.jacobian @ np.array(move)
        ex, ey = float(self.circle_rows[i, 0] @ v1), float(self.circle_rows[i, 1] @ v1)
        away = max(float(at.away[i]), _NOWHERE)
        ux, uy = float(at.dx[i]) / away, float(at.dy[i]) / away
        across = ex * uy - ey * ux
        lean = self.circle_rows[i, :2] @ v2
        curve = across * across / away + ux * float(lean[0]) + uy * float(lean[1])
        return float(self.sign[i]) * curve

    def curvature(
        self, at: At, which: int, arm: tuple[float, float], hand_reach: float
    ) -> tuple[tuple[float, float, float], ...]:
        """Second derivative of one gap in (held x, held y, hand_reach * turn), shape (3, 3).

        `arm` leads from the moving frame's origin to the held point, in the section's frame.
        """
        cos, sin = math.cos(at.spot.turn), math.sin(at.spot.turn)
        rx, ry = arm
        if which < self.lines:
            px, py, pc, ps, pa, pb, _ = self.offset[which].tolist()
            a = cos * at.spot.x + sin * at.spot.y
            b = cos * at.spot.y - sin * at.spot.x
            xt, yt = -sin * pa - cos * pb, cos * pa - sin * pb
            gx, gy = px + cos * pa - sin * pb, py + sin * pa + cos * pb
            tt = -cos * pc - sin * ps - a * pa - b * pb
            tt += 2.0 * (ry * xt - rx * yt) + gx * rx + gy * ry
            xx = xy = yy = 0.0
        else:
            i = which - self.lines
            mx, my = float(self.circle_rows[i, 0, 2]), float(self.circle_rows[i, 1, 2])
            qx, qy = cos * mx - sin * my - rx, sin * mx + cos * my - ry
            away, sign = float(at.away[i]), float(self.sign[i])
            if away < 1e-3:
                # Corner on corner: the normal turns too fast for a second derivative to mean much.
                return ((0.0, 0.0, 0.0),) * 3
            ux, uy = float(at.dx[i]) / away, float(at.dy[i]) / away
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
            px, py, pc, ps, pa, pb, _ = self.offset[which].tolist()
            radius = float(self.disc_radius[which])
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
        split = int(np.searchsorted(which, self.lines))
        places = np.empty((which.size, 2))
        for row, line in enumerate(which[:split].tolist()):
            places[row] = self.meeting(at, line)
        circles = which[split:] - self.lines
        pull = self.circle_values[circles, 4] / np.maximum(at.away[circles], _NOWHERE)
        places[split:, 0] = at.dx[circles] * pull - self.circle_rows[circles, 0, 6]
        places[split:, 1] = at.dy[circles] * pull - self.circle_rows[circles, 1, 6]
        return places

    def _circle_meeting(self, at: At, i: int) -> tuple[float, float]:
        fixed_radius = float(self.circle_values[i, 4])
        # A corner that lies on another has no direction, and needs none.
        away = max(float(at.away[i]), _NOWHERE)
        ux, uy = float(at.dx[i]) / away, float(at.dy[i]) / away
        cx, cy = -float(self.circle_rows[i, 0, 6]), -float(self.circle_rows[i, 1, 6])
        return cx + ux * fixed_radius, cy + uy * fixed_radius

    def subset(self, keep: Bools) -> Pairs:
        """Only the pairs marked in `keep`."""
        lines, circles = keep[: self.lines], keep[self.lines :]
        return Pairs(
            self.reach,
            self.names,
            self.order[keep],
            self.line_rows[lines],
            self.line_values[lines],
            self.circle_rows[circles],
            self.circle_values[circles],
        )
