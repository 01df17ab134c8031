"""How long a drag step and a press home take, beside a general physics engine on the same bodies.

    python -m tests.measure.steps

Drag steps are 0.3 mm, along seeded walks that keep pulling a leaf about in the corner. The press is
compared with pymunk, tuned as well as it goes (slop 0, bias 1e-6, 10 iterations, steps of 1/60 s):
the same bodies, the same start, the same handle; it rests when no vertex moves 1e-6 mm in a step.
All in one process, alternating; times are the thread's own, so that what else the machine is at
counts for little, and only for little: a busy neighbour takes from the caches, so read the ratios.
"""

from __future__ import annotations

import math
import random
import time
from collections.abc import Callable

import numpy as np
import pymunk

from geometry.bead import Bead
from geometry.contact import Hand, drag
from geometry.joint import Joint
from geometry.leaf import EDGES, Edge, Leaf, leaf_of_mark
from geometry.penetration import penetration
from geometry.pose import Pose
from geometry.seat import press_home
from geometry.section import Section
from tests.geometry.drags import traced_points

_POINTS = (0, 200, 1000, 4000)
_EVENTS = 150
_WALKS = 4
_PRESSES = 15


def section_of(points: int) -> Section:
    """A convex 8 mm weld; its face an arc (0 points) or a scanned trace with 2 µm of noise."""
    bead = Bead(8.0, 8.0, 0.9)
    if points:
        trace = traced_points(bead, Joint(), points, random.Random(7), 0.002)
        bead = Bead.traced(trace, Joint())
    return Section.of(Joint(), bead)


def walk(section: Section, leaf: Leaf, seed: int) -> tuple[list[float], int]:
    """Times (ms) of drag steps in the corner, and how many ended in contact."""
    rng = random.Random(seed)
    outline, body = section.outline, leaf.body
    pose = Pose(30.0, 30.0, rng.uniform(-8.0, 8.0))
    grab = (leaf.handle[0] + rng.uniform(-3.0, 3.0), leaf.handle[1] + rng.uniform(-3.0, 3.0))
    wrist = pose.angle
    x, y = pose.to_section(grab)
    pose = drag(outline, body, pose, Hand(grab, (x - 28.0, y - 28.0), wrist)).pose
    x, y = pose.to_section(grab)
    x, y, heading = x - 0.7, y - 0.7, rng.uniform(0.0, math.tau)
    times, touching = [], 0
    for _ in range(_EVENTS):
        heading += rng.gauss(0.0, 0.35)
        held = pose.to_section(grab)
        if math.dist((x, y), held) > 2.5:
            heading = math.atan2(held[1] - y, held[0] - x) + rng.gauss(0.0, 0.8)
        elif pose.x + pose.y > 4.0:
            # Back towards the corner, so that most steps are taken in contact.
            heading = math.atan2(-pose.y, -pose.x)
        x, y = x + 0.3 * math.cos(heading), y + 0.3 * math.sin(heading)
        began = time.thread_time()
        motion = drag(outline, body, pose, Hand(grab, (x, y), wrist))
        times.append((time.thread_time() - began) * 1e3)
        touching += bool(motion.touches)
        pose = motion.pose
    return times, touching


def _shapes(section: Section, space: pymunk.Space) -> None:
    """The steel's outline as static segments."""
    ring = section.outline.ring
    if section.bead.trace is None:
        # As many sides as a scanned face of a thousand points would have.
        ring = np.concatenate([p.curve.flatten(1e-5)[:-1] for p in section.outline.pieces])
    for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True):
        segment = pymunk.Segment(space.static_body, tuple(a), tuple(b), 0.0)
        segment.friction = 0.0
        space.add(segment)


def _blade(leaf: Leaf, space: pymunk.Space, pose: Pose) -> pymunk.Body:
    """The leaf as a rigid body of convex triangles."""
    import shapely  # noqa: PLC0415 - only this function needs it

    ring = np.concatenate([p.curve.flatten(1e-3)[:-1] for p in leaf.body.pieces])
    body = pymunk.Body(1.0, 200.0)
    body.position, body.angle = (pose.x, pose.y), pose.radians
    space.add(body)
    for triangle in shapely.constrained_delaunay_triangles(shapely.Polygon(ring)).geoms:
        corners = [(x, y) for x, y in shapely.get_coordinates(triangle)[:-1].tolist()]
        shape = pymunk.Poly(body, corners)
        shape.friction = 0.0
        space.add(shape)
    return body


def engine_press(section: Section, leaf: Leaf, start: Pose) -> Callable[[], tuple[float, Pose]]:
    """A press home by the physics engine, set up; the call runs it and returns ms and the rest."""
    space = pymunk.Space(threaded=False)
    space.iterations, space.collision_slop, space.collision_bias = 10, 0.0, 1e-6
    space.damping = 0.05
    _shapes(section, space)
    body = _blade(leaf, space, start)
    corners = [tuple(p) for p in leaf.body.ring[:: max(1, len(leaf.body.ring) // 8)]]

    def run() -> tuple[float, Pose]:
        began = time.thread_time()
        before = [body.local_to_world(c) for c in corners]
        for step in range(20_000):
            # Lean square on the long edge, and a little along it: what press home does.
            force = (-4.0, -60.0) if leaf.edge == "leg" else (-40.0, -40.0)
            body.apply_force_at_world_point(force, body.local_to_world(leaf.handle))
            space.step(1.0 / 60.0)
            after = [body.local_to_world(c) for c in corners]
            # The engine moves first and takes up speed after, so its first step always stands.
            if step and max(map(math.dist, before, after)) < 1e-6:
                break
            before = after
        took = (time.thread_time() - began) * 1e3
        return took, Pose(body.position.x, body.position.y, math.degrees(body.angle))

    return run


def compare_presses(points: int, edge: Edge) -> None:
    """Press home side by side from seeded starts, and print medians, ratio and depths."""
    section, leaf = section_of(points), leaf_of_mark("8 mm", edge)
    rng = random.Random(3)
    ours, theirs, depth = [], [], [0.0, 0.0]
    for _ in range(_PRESSES):
        start = Pose(rng.uniform(4.0, 7.0), rng.uniform(4.0, 7.0), rng.uniform(-5.0, 5.0))
        if penetration(section.outline, leaf.body, start) > 0.0:
            continue
        began = time.thread_time()
        motion = press_home(section, leaf, start)
        ours.append((time.thread_time() - began) * 1e3)
        took, rest = engine_press(section, leaf, start)()
        theirs.append(took)
        for i, pose in enumerate((motion.pose, rest)):
            depth[i] = max(depth[i], penetration(section.outline, leaf.body, pose))
    mine, other = float(np.median(ours)), float(np.median(theirs))
    print(
        f"press home, {points:5d} points, {edge:6s}: {mine:7.2f} ms, engine {other:7.2f} ms, "
        f"{other / mine:5.1f} times as fast; in the steel {depth[0]:.1e} and {depth[1]:.1e} mm"
    )


def main() -> None:
    """Print the figures."""
    leaf = leaf_of_mark("8 mm")
    medians: dict[int, float] = {}
    for points in _POINTS:
        times: list[float] = []
        touching = 0
        for edge in EDGES:
            section, held = section_of(points), leaf.with_edge(edge)
            walk(section, held, 0)
            for seed in range(1, _WALKS + 1):
                some, touched = walk(section, held, seed)
                times += some
                touching += touched
        medians[points] = float(np.median(times))
        print(
            f"drag step, {points:5d} points: median {medians[points]:.3f} ms, "
            f"99th percentile {np.percentile(times, 99):.2f} ms, "
            f"{touching / len(times):.0%} in contact"
        )
    print(f"4,000 points over 1,000: {medians[4000] / medians[1000]:.2f} times")
    for points in (0, 1000):
        for edge in EDGES:
            compare_presses(points, edge)


if __name__ == "__main__":
    main()
