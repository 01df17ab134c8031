"""The hand's descent: from a free spot to the nearest rest, along a way that is proved free."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from geometry.clearance import entered, round_corners
from geometry.curves import Vec
from geometry.nearby import Near, near
from geometry.pairs import At, Pairs, Spot
from geometry.projection import Triple, factor, project, stretching
from geometry.sweep import dip, free, middle, travel
from geometry.tolerances import CLEARANCE

__all__ = ["Descent"]

_LONGEST_STEP = 20.0
"""mm: the longest step."""
_FIRST_STEP = 0.8
"""mm: what the first step is let, and what is looked around for; it doubles while it is used up."""
_SHORTEST_STEP = 1e-5
"""mm: a step cut below this is no step."""
_STILL = 1e-11
"""mm squared: a step whose square is below this goes nowhere."""
_LEAST_FALL = 0.0002
"""How far the cost must bend down, beside its own bend of 1, for a balance to be unstable."""
_MOST_CUTS = 24
"""How often a step is halved before it is given up."""
_STRIDE = 3
"""Steps from which the way of a longer one is taken."""
_AFTER_LEAP = 1
_AFTER_STUMBLE = 3
"""Steps after which a longer one is tried again: after one that went well, and one that didn't."""
_LEAP_CUTS = 2
"""How often a longer one is halved before it is given up."""
_CRAWL = 1e-5
"""mm squared: after a step whose square is below this, a longer one leads nowhere."""
_WORTH = 1e-7
"""mm squared: a step that promises less than this is not worth taking; the body rests."""
_FARTHEST_BACK = 3.0
"""mm: how far a step is brought back to where all is clear before it is thought too bold."""
_LEDGE = 2e-5
"""mm: what is left of a line to stand on when the body is shifted past its end."""
_PAST = 1e-6
"""mm: how far past."""
_HIGHEST_LIFT = 0.5
"""mm: how far at most a way is raised over what it would graze."""
_HIGHEST_HOP = 0.03
"""mm: roughness that a way may lead over, rather than along each of its flanks."""
_LEAST_LIFT = 0.5
"""How much apart a shift of a millimetre takes the pair that it takes apart least, as reckoned."""
_MOST_STEPS = 2000


class _Taken(NamedTuple):
    """A step that was taken: the spots it led over, the pairs at its end, how far the next may."""

    way: list[Spot]
    end: At
    allowed: float


@dataclass(eq=False)
class Descent:
    """One pull of a hand.

    Parameters
    ----------
    pairs
        All pairs of the two bodies.
    grab
        The held point in the moving body's frame as laid, mm.
    target
        (x, y) wanted for it in mm, and the angle wanted in radians.
    hand_reach
        mm that a radian of turn costs.
    """

    pairs: Pairs
    grab: Vec
    target: Triple
    hand_reach: float
    _due: int = field(init=False, default=_STRIDE)
    _kept: tuple[At, NDArray[np.bool_]] | None = field(init=False, default=None)
    _swing: float = field(init=False)

    def __post_init__(self) -> None:
        # How far the farthest feature may lie from the grab, mm.
        self._swing = self.pairs.reach + math.hypot(*self.grab)

    # -- the hand's own coordinates -----------------------------------------------------------

    def _held(self, spot: Spot) -> Triple:
        """The spot as (grab x, grab y, reach * turn)."""
        rx, ry = self._arm(spot)
        return spot.x + rx, spot.y + ry, self.hand_reach * spot.turn

    def _arm(self, spot: Spot) -> Vec:
        """From the moving frame's origin to the grab, in the section's frame."""
        cos, sin = math.cos(spot.turn), math.sin(spot.turn)
        u, v = self.grab
        return cos * u - sin * v, sin * u + cos * v

    def _lack(self, spot: Spot) -> Triple:
        """What the spot still lacks to the target, in the hand's coordinates."""
        x, y, w = self._held(spot)
        tx, ty, turn = self.target
        return tx - x, ty - y, self.hand_reach * turn - w

    def _moved(self, spot: Spot, step: Triple) -> Spot:
        x, y, w = self._held(spot)
        turn = (w + step[2]) / self.hand_reach if step[2] else spot.turn
        cos, sin = math.cos(turn), math.sin(turn)
        u, v = self.grab
        return Spot(x + step[0] - (cos * u - sin * v), y + step[1] - (sin * u + cos * v), turn)

    @property
    def _reach(self) -> float:
        return self.pairs.reach

    def _length(self, step: Triple) -> float:
        """The most that any point of the body moves in a step, mm."""
        return math.hypot(step[0], step[1]) + self._swing * abs(step[2]) / self.hand_reach

    # -- the way ------------------------------------------------------------------------------

    def run(self, spot: Spot) -> tuple[list[Spot], Pairs, At]:
        """Return the spots from `spot` to where the pull comes to rest, and the pairs there."""
        path = [spot]
        allowed = _FIRST_STEP
        band = self._near(spot, allowed)
        at = band.pairs.at(spot)
        if entered(band.pairs, at):
            return path, band.pairs, at
        trail = [self._held(spot)]
        self._due = _STRIDE
        for _ in range(_MOST_STEPS):
            taken = self._leap(band, at, trail, allowed) or self._go(band, at, allowed)
            if taken is None:
                break
            way, end, allowed = taken
            path += way
            self._turn_on(way[-1])
            trail.append(self._held(way[-1]))
            before, band = band, self._near(way[-1], allowed)
            at = end if band is before else band.pairs.at(way[-1])
        return path, band.pairs, at

    def _turn_on(self, spot: Spot) -> None:
        """Want the angle on its near side again, when steel has rolled the body past a half turn.

        Else the body would rest where the same hand, asked anew, would turn it on.
        """
        x, y, wanted = self.target
        if abs(wanted - spot.turn) > math.pi:
            self.target = x, y, spot.turn + math.remainder(wanted - spot.turn, math.tau)

    def _leap(self, band: Near, at: At, trail: list[Triple], allowed: float) -> _Taken | None:
        """Farther the way that the last few steps went, now and then, over roughness of a trace.

        Facet by facet a body would crawl over a scanned face; its crawl shows where it goes.
        """
        if len(trail) < self._due:
            return None
        if _square(_less(trail[-1], trail[-2])) < _CRAWL:
            return None
        way = _less(trail[-1], trail[max(0, len(trail) - 1 - _STRIDE)])
        lack = self._lack(at.spot)
        # As far along it as the hand would have it.
        share = (lack[0] * way[0] + lack[1] * way[1] + lack[2] * way[2]) / max(_square(way), _STILL)
        if share < 1.0:
            return None
        step = (share * way[0], share * way[1], share * way[2])
        taken = self._take(band, at, step, allowed, cuts=_LEAP_CUTS)
        self._due = len(trail) + (_AFTER_STUMBLE if taken is None else _AFTER_LEAP)
        return taken

    def _go(self, band: Near, at: At, allowed: float) -> _Taken | None:
        """The first step that pays, or a way past a line's end; None at rest."""
        for step in self._steps(band.pairs, at, allowed):
            taken = self._take(band, at, step, allowed)
            if taken is not None:
                return taken
        return self._past_ends(band, at, allowed)

    def turn(self, spot: Spot, angle: float) -> list[Spot]:
        """Return the spots of a turn by `angle` about the grab, as far as steel lets it."""
        path = [spot]
        left, share = angle, 1.0
        while abs(left) * self._swing > 1e-7:
            band = near(self.pairs, path[-1], abs(left) * self._swing)
            at = band.pairs.at(path[-1])
            if len(path) == 1 and entered(band.pairs, at):
                return path
            most = 0.5 * band.width / max(self._swing, 1.0) * share
            part = max(-most, min(most, left))
            end = self._moved(path[-1], (0.0, 0.0, part * self.hand_reach))
            after = band.pairs.at(end)
            if self._clear(band.pairs, at, after) and self._free(band, at, after):
                path.append(end)
                left -= part
                share = min(1.0, share * 2.0)
                continue
            share *= 0.5
            if abs(part) * self._swing < 1e-6:
                break
        return path

    def _front(self, pairs: Pairs, at: At) -> NDArray[np.bool_]:
        """`Pairs.front`, kept for the last spot that it was asked of."""
        if self._kept is None or self._kept[0] is not at:
            self._kept = at, pairs.front(at)
        return self._kept[1]

    def _near(self, spot: Spot, need: float) -> Near:
        """The pairs near `spot`, enough for a step of `need` mm or for all that is lacking."""
        return near(self.pairs, spot, min(need, self._length(self._lack(spot))))

    def _steps(self, pairs: Pairs, at: At, allowed: float) -> list[Triple]:
        """The steps that the pairs at hand leave open, best first; none at rest."""
        lack = self._lack(at.spot)
        # What lies farther off than the step may go can't stop it.
        near = (at.facing & self._front(pairs, at) & (at.gap < allowed)).nonzero()[0]
        spaces = self._spaces(pairs, at, near, CLEARANCE)
        solved = project(lack, spaces)
        if solved is None:
            return []
        step, held = solved
        if _gain(lack, step) < _WORTH:
            if held and _square(step) > _STILL:
                # A slope so slight that only its own bend tells how far down it goes.
                bent = self._bent(pairs, at, lack, spaces, near, held)
                if bent is not None:
                    return [bent]
            off = self._escape(pairs, at, near, held)
            return [off] if off is not None else []
        bent = self._bent(pairs, at, lack, spaces, near, held) if held else None
        return [bent, step] if bent is not None else [step]

    def _spaces(
        self, pairs: Pairs, at: At, which: NDArray[np.intp], clearance: float
    ) -> NDArray[np.float64]:
        """The half-spaces, in the hand's coordinates, that keep pairs `which` clear."""
        spaces = np.empty((4, which.size))
        spaces[:3] = pairs.slopes(at, which, self._arm(at.spot))
        spaces[2] /= self.hand_reach
        spaces[3] = clearance - at.gap.take(which)
        return spaces.T

    def _bent(
        self,
        pairs: Pairs,
        at: At,
        lack: Triple,
        spaces: NDArray[np.float64],
        near: NDArray[np.intp],
        held: dict[int, float],
    ) -> Triple | None:
        """The step again, with the curvature of the pairs that hold the body."""
        stretch = stretching(self._hessian(pairs, at, near, held))
        bent = np.empty((4, len(spaces)))
        np.matmul(stretch.T, spaces.T[:3], out=bent[:3])
        bent[3] = spaces[:, 3]
        aim_x, aim_y, aim_z = (np.array(lack) @ stretch).tolist()
        solved = project((aim_x, aim_y, aim_z), bent.T, held)
        if solved is None:
            return None
        x, y, z = (stretch @ np.array(solved[0])).tolist()
        # Half of what the unbent cost promises along this way, or it is no way down.
        return (x, y, z) if lack[0] * x + lack[1] * y + lack[2] * z > 0.5 * _WORTH else None

    def _hessian(
        self, pairs: Pairs, at: At, near: NDArray[np.intp], held: dict[int, float]
    ) -> list[list[float]]:
        """Half the cost's second derivative, less what the holding pairs bend away."""
        total = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]
        arm = self._arm(at.spot)
        for index, multiplier in held.items():
            bend = pairs.curvature(at, int(near[index]), arm, self.hand_reach)
            for i in range(3):
                for j in range(3):
                    total[i][j] -= multiplier * bend[i][j]
        return total

    def _escape(
        self,
        pairs: Pairs,
        at: At,
        near: NDArray[np.intp],
        held: dict[int, float],
    ) -> Triple | None:
        """A small step off an unstable balance, or None if the rest is a true one."""
        if not held or len(held) > 2:
            return None
        bends = self._hessian(pairs, at, near, held)
        if factor(bends, _LEAST_FALL) is not None:
            # It bends up every way, whatever holds it.
            return None
        hessian = np.array(bends)
        rows = self._spaces(pairs, at, near[sorted(held)], CLEARANCE)[:, :3]
        free = np.linalg.svd(rows)[2][len(held) :]
        values, vectors = np.linalg.eigh(free @ hessian @ free.T)
        if values[0] > -_LEAST_FALL:
            return None
        way = vectors[:, 0] @ free
        # Either side is as good; the first coordinate that differs decides, so that it repeats.
        lead = next((value for value in way.tolist() if abs(value) > 1e-6), 1.0)
        size = math.copysign(0.05, lead)
        return float(way[0] * size), float(way[1] * size), float(way[2] * size)

    def _take(
        self, band: Near, at: At, step: Triple, allowed: float, cuts: int = _MOST_CUTS
    ) -> _Taken | None:
        """Try the step, shorter and shorter, until it pays and its way is free."""
        room = band.width - travel(band.middle, at.spot, self._reach)
        length = self._length(step)
        share = min(1.0, min(room, allowed) / length) if length else 1.0
        cost = _square(self._lack(at.spot))

        def pays(end: At) -> bool:
            return cost - _square(self._lack(end.spot)) > 0.2 * _WORTH

        for _ in range(cuts):
            part = (step[0] * share, step[1] * share, step[2] * share)
            end = self._restored(band.pairs, at, self._moved(at.spot, part))
            if end is not None and travel(band.middle, end.spot, self._reach) <= band.width:
                way = self._way(band, at, end) if pays(end) else None
                if way is not None and pays(way[1]):
                    # After a step that went straight as far as it might, look farther.
                    farther = 2.0 * share * length if len(way[0]) == 1 else 0.0
                    return _Taken(*way, min(_LONGEST_STEP, max(_FIRST_STEP, farther)))
            share *= 0.5
            if share * length < _SHORTEST_STEP:
                break
        return None

    def _past_ends(self, band: Near, at: At, allowed: float) -> _Taken | None:
        """A way on for a body that is held by the very end of a line, if that saves anything.

        Where two corners all but meet, each is held off the other's side although getting past one
        of them would do. So the body is shifted past the line's end, by a millionth or so, and
        looks again from there.
        """
        pairs = band.pairs
        count = pairs.lines
        over = pairs.length - at.foot
        short = np.minimum(at.foot, over)
        held = (at.gap[:count] < 10.0 * CLEARANCE) & (np.abs(short) < _LEDGE)
        cost = _square(self._lack(at.spot))
        for index in np.flatnonzero(held & at.facing[:count]).tolist():
            forward = float(over[index]) < float(at.foot[index])
            shifted = self._shifted(pairs, at, index, 1.0 if forward else -1.0)
            if shifted is None:
                continue
            for step in self._steps(pairs, shifted, allowed):
                taken = self._take(band, shifted, step, allowed)
                if taken is not None and _square(self._lack(taken.way[-1])) < cost - _WORTH:
                    return taken._replace(way=[shifted.spot, *taken.way])
        return None

    def _shifted(self, pairs: Pairs, at: At, index: int, forward: float) -> At | None:
        """The body just past an end of line pair `index`, if the way there is free."""
        near = np.flatnonzero(at.facing & self._front(pairs, at) & (at.gap < _LEDGE))
        spaces = self._spaces(pairs, at, near, CLEARANCE)
        along = pairs.foot_slope(at, index, self._arm(at.spot)) * forward
        left = float(pairs.length[index] - at.foot[index]) if forward > 0.0 else at.foot[index]
        past = np.array([[along[0], along[1], along[2] / self.hand_reach, float(left) + _PAST]])
        solved = project((0.0, 0.0, 0.0), np.concatenate((spaces, past)))
        if solved is None or self._length(solved[0]) > 10.0 * _LEDGE:
            return None
        end = self._restored(pairs, at, self._moved(at.spot, solved[0]))
        if end is None or not free(pairs, at, end, self._reach):
            return None
        return end

    def _restored(self, pairs: Pairs, start: At, spot: Spot) -> At | None:
        """The nearest spot to `spot` where every pair that was clear before is clear."""
        front = self._front(pairs, start)
        at = pairs.at(spot)
        for _ in range(8):
            facing = front & at.facing
            low = (facing & (at.gap < 0.5 * CLEARANCE)).nonzero()[0]
            passed = round_corners(pairs, at, low, facing)
            if low.size == len(passed):
                return at
            facing[passed] = False
            near = (facing & (at.gap < 0.05)).nonzero()[0]
            solved = project((0.0, 0.0, 0.0), self._spaces(pairs, at, near, CLEARANCE))
            if solved is None or self._length(solved[0]) > _FARTHEST_BACK:
                return None
            at = pairs.at(self._moved(at.spot, solved[0]))
        return None

    def _clear(self, pairs: Pairs, start: At, end: At) -> bool:
        facing = self._front(pairs, start) & end.facing
        low = (facing & (end.gap < 0.5 * CLEARANCE)).nonzero()[0]
        return low.size == len(round_corners(pairs, end, low, facing))

    def _way(self, band: Near, start: At, end: At) -> tuple[list[Spot], At] | None:
        """The spots that lead from `start` to `end`, raised where the straight way would dip.

        Where only the last way down isn't free, they end above `end`.
        """
        depth, guilty = dip(band.pairs, start, end, self._reach)
        if depth == 0.0:
            return [end.spot], end
        lift = _lift(band.pairs, start, guilty)
        if lift is None:
            return None
        # Many facets tell of roughness, a single feature of a bulge.
        if len(guilty) > 1:
            return self._hop(band, start, lift, end) or self._tent(band, start, lift, depth, end)
        return self._tent(band, start, lift, depth, end) or self._hop(band, start, lift, end)

    def _hop(self, band: Near, start: At, lift: Vec, end: At) -> tuple[list[Spot], At] | None:
        """The way over roughness: up, across and, if that is free, down again."""
        up = self._raised(band, start, start.spot, lift, _HIGHEST_HOP)
        if up is None or not self._free(band, start, up):
            return None
        over = self._raised(band, start, end.spot, lift, _HIGHEST_HOP)
        if over is None or not self._free(band, up, over):
            return None
        if not self._free(band, over, end):
            return [up.spot, over.spot], over
        return [up.spot, over.spot, end.spot], end

    def _tent(
        self, band: Near, start: At, lift: Vec, depth: float, end: At
    ) -> tuple[list[Spot], At] | None:
        """The way over a bulge: the tangents at both ends meet twice as high as it stands out."""
        rise = min(2.5 * depth, _HIGHEST_LIFT)
        top = self._raised(band, start, middle(start.spot, end.spot), lift, rise)
        if top is None or not (self._free(band, start, top) and self._free(band, top, end)):
            return None
        return [top.spot, end.spot], end

    def _raised(self, band: Near, start: At, spot: Spot, lift: Vec, rise: float) -> At | None:
        """The body `rise` mm above `spot`, if it is clear there and near enough to tell."""
        rise += 2.0 * CLEARANCE
        above = Spot(spot.x + rise * lift[0], spot.y + rise * lift[1], spot.turn)
        if travel(band.middle, above, self._reach) > band.width:
            return None
        at = band.pairs.at(above)
        return at if self._clear(band.pairs, start, at) else None

    def _free(self, band: Near, start: At, end: At) -> bool:
        """Whether the straight way is proved free."""
        return free(band.pairs, start, end, self._reach)


def _lift(pairs: Pairs, at: At, guilty: list[int]) -> Vec | None:
    """A shift that takes every one of the pairs a millimetre apart; None if there is none near."""
    slopes = pairs.slopes(at, np.array(guilty))[:2]
    x, y = slopes.sum(axis=1).tolist()
    size = math.hypot(x, y)
    if size < 1e-6:
        return None
    least = float(np.dot((x, y), slopes).min()) / size
    if least < 0.05:
        return None
    size *= max(least, _LEAST_LIFT)
    return x / size, y / size


def _square(triple: Triple) -> float:
    return triple[0] * triple[0] + triple[1] * triple[1] + triple[2] * triple[2]


def _less(minuend: Triple, subtrahend: Triple) -> Triple:
    return (
        minuend[0] - subtrahend[0],
        minuend[1] - subtrahend[1],
        minuend[2] - subtrahend[2],
    )


def _gain(lack: Triple, step: Triple) -> float:
    """How much of the cost a step saves."""
    return _square(lack) - _square(_less(lack, step))
