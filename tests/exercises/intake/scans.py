"""Scans of sections whose true measures are known: noise, outliers, drop-outs, any frame."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.faults import GeometryError
from geometry.joint import Joint
from geometry.section import Section

FloatArray = NDArray[np.float64]


@dataclass(frozen=True)
class Kind:
    """How a scan is made: mm, degrees, shares."""

    noise: float = 0.01
    outliers: float = 0.01
    drop_outs: float = 0.02
    step: float = 0.05
    reach: float = 12.0
    frame: str = "valley"


def surface(section: Section, step: float, reach: float) -> FloatArray:
    """Points of what lies in the air, from the base's end to the upright's, `step` apart."""
    pieces = [
        *(piece.curve.reversed() for piece in reversed(section._surface("base"))),
        *section.bead.face(section.joint),
        *(piece.curve for piece in section._surface("upright")),
    ]
    dense = np.vstack([curve.flatten()[:-1] for curve in pieces] + [[pieces[-1].end]])
    way = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(dense, axis=0).T))])
    at = np.arange(0.0, way[-1], step)
    even = np.column_stack([np.interp(at, way, dense[:, 0]), np.interp(at, way, dense[:, 1])])
    legs = max(section.bead.leg_base, section.bead.leg_upright) + reach
    return np.asarray(even[np.hypot(*even.T) < legs], float)


def scan(section: Section, kind: Kind, seed: int) -> FloatArray:
    """A scan (N, 2) in a frame of its own, NaN where nothing was seen."""
    rng = np.random.default_rng(seed)
    points = surface(section, kind.step, kind.reach)
    # The sensor looks down the bisector; what it gets wrong is the distance.
    turn = math.pi / 2.0 - math.radians(section.joint.angle) / 2.0
    points = turned(points, turn)
    count = len(points)
    points[:, 1] += rng.normal(0.0, kind.noise, count)
    wild = rng.random(count) < kind.outliers
    points[wild, 1] += rng.uniform(-6.0, 6.0, wild.sum())
    lost = rng.random(count) < kind.drop_outs
    for _ in range(2):
        at = int(rng.integers(0, count - 8))
        lost[at : at + int(rng.integers(1, 6))] = True
    points[lost, 1] = math.nan
    if kind.frame == "level":
        points = turned(points, -turn)
    elif kind.frame == "mirrored":
        points = points[::-1] * np.array([-1.0, 1.0])
    elif kind.frame == "turned":
        points = turned(points, rng.uniform(-math.pi, math.pi))
    return np.asarray(points + rng.uniform(-50.0, 50.0, 2), float)


def turned(points: FloatArray, angle: float) -> FloatArray:
    """Points turned about the origin."""
    cos, sin = math.cos(angle), math.sin(angle)
    return np.asarray(points @ np.array([[cos, sin], [-sin, cos]]), float)


def random_section(seed: int) -> Section:
    """A section with any angle, any face, and something at its toes or on its members."""
    rng = np.random.default_rng(seed)
    while True:
        joint = Joint(float(rng.choice([60.0, 75.0, 90.0, 90.0, 105.0, 120.0, 135.0])))
        legs = rng.uniform(4.0, 12.0) * np.array([1.0, rng.uniform(0.75, 1.3)])
        crown = float(rng.choice([0.0, rng.uniform(0.05, 0.15), -rng.uniform(0.03, 0.1)])) * legs[0]
        trap = rng.integers(0, 5)
        bead = Bead(
            float(legs[0]),
            float(legs[1]),
            crown,
            undercut_base=Undercut(0.4, 1.2) if trap == 1 else None,
            undercut_upright=Undercut(0.5, 1.5) if trap == 2 else None,
            overlap_base=Overlap(1.2) if trap == 3 else None,
        )
        drops = (Spatter("base", float(legs[0]) + 4.0, 0.8),) if trap == 4 else ()
        try:
            return Section.of(joint, bead, drops)
        except GeometryError:
            continue
