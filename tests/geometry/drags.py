"""Random sections, leaves and drags, and an examiner that shares no code with the kernel.

The examiner knows only signed distances to true segments and arcs (`geometry.penetration`) and the
hand's cost. It looks at every sub-pose, between every two, and around the rest.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass

import numpy as np

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.contact import HAND_REACH, Hand, Motion, drag
from geometry.faults import GeometryError
from geometry.joint import MEMBERS, Joint
from geometry.leaf import EDGES, RACKS, Leaf, rack
from geometry.penetration import is_free, penetration
from geometry.pose import Pose, wrap_degrees
from geometry.section import Section

BETWEEN = (0.25, 0.5, 0.75)


@dataclass(frozen=True)
class Pull:
    """A leaf, where it lies free, and a hand that pulls it."""

    section: Section
    leaf: Leaf
    pose: Pose
    hand: Hand

    def drag(self) -> Motion:
        return drag(self.section.outline, self.leaf.body, self.pose, self.hand)


@dataclass(frozen=True)
class Findings:
    """What the examiner found: deepest penetration (mm), cost that a small step would save (mm
    squared), whether the leaf moved and whether it ended in contact."""

    deepest: float
    saving: float
    moved: bool
    contact: bool


def random_section(rng: random.Random) -> Section:
    """A sound section: any angle, opening, legs and face, and anything that spoils a toe."""
    while True:
        try:
            return _section(rng)
        except GeometryError:
            continue


def _section(rng: random.Random) -> Section:
    angle = rng.choice([90.0, 90.0, 90.0, 80.0, 100.0, 60.0, 135.0, rng.uniform(60.0, 135.0)])
    joint = Joint(
        angle,
        rng.choice([0.0, 0.0, 0.0, rng.uniform(0.3, 2.5)]),
        rng.uniform(6.0, 16.0),
        rng.uniform(6.0, 16.0),
    )
    leg_base = rng.uniform(3.0, 14.0)
    leg_upright = leg_base * rng.uniform(0.6, 1.5)
    groove_base, lip_base = _spoilt_toe(rng)
    groove_upright, lip_upright = _spoilt_toe(rng)
    spatter: tuple[Spatter, ...] = ()
    if rng.random() < 0.4:
        at, height = rng.uniform(16.0, 40.0), rng.uniform(0.3, 1.5)
        spatter = (Spatter(rng.choice(MEMBERS), at, height),)
    crown = rng.choice([0.0, rng.uniform(-0.2, 0.35) * leg_base])
    spoilt = (groove_base, groove_upright, lip_base, lip_upright)
    bead = Bead(leg_base, leg_upright, crown, None, *spoilt)
    if rng.random() < 0.35:
        trace = traced_points(bead, joint, rng.choice([40, 200, 400]), rng, rng.choice([0, 0.01]))
        traced = Bead.traced(trace, joint)
        bead = Bead(traced.leg_base, traced.leg_upright, 0.0, traced.trace, *spoilt)
    return Section.of(joint, bead, spatter)


def _spoilt_toe(rng: random.Random) -> tuple[Undercut | None, Overlap | None]:
    """A groove or a lip at a toe, or mostly neither."""
    what = rng.random()
    groove = Undercut(rng.uniform(0.2, 0.8), rng.uniform(2.0, 4.0)) if what < 0.15 else None
    lip = Overlap(rng.uniform(0.8, 3.0)) if 0.15 <= what < 0.3 else None
    return groove, lip


def traced_points(
    bead: Bead, joint: Joint, count: int, rng: random.Random, noise: float
) -> tuple[tuple[float, float], ...]:
    """`count` uneven points along an arc face, `noise` mm off it, as a profile scanner gives."""
    fine = bead.face(joint)[0].flatten(1e-7)
    steps = np.diff(fine, axis=0)
    along = np.concatenate(([0.0], np.cumsum(np.hypot(*steps.T))))
    numbers = np.random.default_rng(rng.randrange(10**6))
    # Uneven, but in order: somewhere within each stretch of its own.
    at = (np.arange(count) + numbers.uniform(-0.4, 0.4, count)) * along[-1] / (count - 1)
    at[0], at[-1] = 0.0, along[-1]
    points = np.column_stack((np.interp(at, along, fine[:, 0]), np.interp(at, along, fine[:, 1])))
    if noise:
        which = np.clip(np.searchsorted(along, at[1:-1]) - 1, 0, len(steps) - 1)
        across = steps[which][:, ::-1] / np.hypot(*steps[which].T)[:, None] * (1.0, -1.0)
        points[1:-1] += across * numbers.normal(0.0, noise, (count - 2, 1))
    return tuple((float(x), float(y)) for x, y in points)


def random_leaf(rng: random.Random) -> Leaf:
    leaf = rng.choice(rack(rng.choice(RACKS)))
    return leaf.with_edge(rng.choice(EDGES)).worn(rng.choice([0.0, 0.0, rng.uniform(0.0, 0.4)]))


def random_pull(rng: random.Random, section: Section, leaf: Leaf) -> Pull:
    """A pull from anywhere that is free: in front, far off, or behind the steel."""
    outline, body = section.outline, leaf.body
    while True:
        angle = rng.choice([0.0, 0.0, rng.uniform(-180.0, 180.0)])
        pose = Pose(rng.uniform(-40.0, 70.0), rng.uniform(-40.0, 80.0), angle, rng.random() < 0.3)
        if is_free(outline, body, pose):
            break
    size = leaf.size
    held = (rng.uniform(0.3, 2.9) * size, rng.uniform(0.9, 2.1) * size)
    grab = rng.choice([leaf.handle, held])
    pointer = (rng.uniform(-10.0, 25.0), rng.uniform(-10.0, 25.0))
    if rng.random() < 0.25:
        # Slow: a step of a few tenths of a millimetre, from where a first pull came to rest.
        pose = drag(outline, body, pose, Hand(grab, pointer, pose.angle)).pose
        x, y = pose.to_section(grab)
        pointer = (x + rng.uniform(-0.3, 0.3), y + rng.uniform(-0.3, 0.3))
    wanted = wrap_degrees(pose.angle + rng.choice([0.0, 0.0, rng.uniform(-40.0, 40.0)]))
    return Pull(section, leaf, pose, Hand(grab, pointer, wanted))


def between(a: Pose, b: Pose, share: float) -> Pose:
    """The pose on the straight way from `a` to `b`."""
    turn = wrap_degrees(b.angle - a.angle)
    return Pose(
        a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), a.angle + share * turn, a.turned
    )


def examine(pull: Pull, motion: Motion, rng: random.Random, tries: int = 40) -> Findings:
    """Look at every sub-pose, between every two, and at `tries` small steps from the rest."""
    outline, body = pull.section.outline, pull.leaf.body
    deepest = penetration(outline, body, motion.path[0])
    for a, b in zip(motion.path, motion.path[1:], strict=False):
        for share in (*BETWEEN, 1.0):
            deepest = max(deepest, penetration(outline, body, between(a, b, share)))
    saving = max((_saving(pull, motion.pose, rng) for _ in range(tries)), default=0.0)
    return Findings(deepest, saving, len(motion.path) > 1, bool(motion.touches))


def _cost(hand: Hand, rest: Pose, step: Pose) -> float:
    """The hand's cost after a step, its wrist turned on, not back the other way round."""
    twist = wrap_degrees(rest.angle - hand.angle) + wrap_degrees(step.angle - rest.angle)
    x, y = step.to_section(hand.grab)
    square = (x - hand.pointer[0]) ** 2 + (y - hand.pointer[1]) ** 2
    return square + (HAND_REACH * math.radians(twist)) ** 2


def _saving(pull: Pull, rest: Pose, rng: random.Random) -> float:
    """What a small random step from the rest would save, if it can be made: its way is free."""
    size = 10.0 ** rng.uniform(-4.0, -1.0)
    held = rest.to_section(pull.hand.grab)
    step = rest.rotated(math.degrees(rng.gauss(0.0, size / 20.0)), held)
    step = step.moved(rng.gauss(0.0, size), rng.gauss(0.0, size))
    saved = pull.hand.cost(rest) - _cost(pull.hand, rest, step)
    if saved <= 1e-3:
        return 0.0
    outline, body = pull.section.outline, pull.leaf.body
    # The end at first, where most are stopped; then closely: a ledge a thousandth wide holds as
    # well as any.
    shares = [1.0, *np.geomspace(1e-5, 0.03, 16).tolist(), *np.linspace(0.03, 1.0, 400).tolist()]
    free = all(penetration(outline, body, between(rest, step, s)) <= 1e-6 for s in shares)
    return saved if free else 0.0
