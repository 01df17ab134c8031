"""Faces as a profile scanner gives them, and what dense points say of a leaf on them."""

from __future__ import annotations

import math
import random

import numpy as np

from geometry.bead import Bead
from geometry.curves import Vec
from geometry.joint import Joint
from geometry.leaf import Leaf, rack
from geometry.reading import EYE_LIMIT
from geometry.section import Section
from tests.geometry.dense import Slide, face_points

__all__ = ["ROUGH", "expected", "far_from_the_limits", "scanned"]

ROUGH = [*rack("metric")[1:8], *rack("throat")[2:7]]
"""Leaves of 4 to 12 mm."""


def scanned(seed: int, leg_base: float, leg_upright: float, crown: float) -> Section:
    """A face as a profile scanner gives it: some hundred uneven, slightly noisy points."""
    joint, dice = Joint(), random.Random(seed)
    arc = Bead(leg_base, leg_upright, crown=crown).face(joint)[0]
    ideal = np.concatenate([arc.flatten(1e-6)])
    turns = np.unwrap(np.arctan2(ideal[:, 1], ideal[:, 0]))
    reach = np.hypot(*ideal.T)
    steps = sorted(dice.uniform(0.004, 0.996) for _ in range(400))
    points: list[Vec] = [(leg_base, 0.0)]
    for step in steps:
        turn = step * math.pi / 2.0
        if ideal.shape[0] > 2:
            out = float(np.interp(turn, turns, reach))
        else:
            out = 1.0 / (math.cos(turn) / leg_base + math.sin(turn) / leg_upright)
        out += dice.gauss(0.0, 0.005)
        points.append((out * math.cos(turn), out * math.sin(turn)))
    points.append((0.0, leg_upright))
    return Section.of(joint, Bead.traced(tuple(points), joint))


def far_from_the_limits(moved: Slide) -> bool:
    """Whether neither method stands on the edge between two states."""
    return (
        abs(moved.off - EYE_LIMIT) > 2e-3
        and abs(moved.to_face - EYE_LIMIT) > 2e-3
        # What is at the tip and what is beside it, and whether only that carries the leaf.
        and not 0.05 < moved.from_point < 0.25
        and not (moved.off > EYE_LIMIT and moved.slack < 0.02)
    )


def expected(section: Section, leaf: Leaf, moved: Slide) -> tuple[str, float | None]:
    """State and gap by the contract's table, from what the second method measured."""
    if moved.off > EYE_LIMIT:
        return ("held off", moved.off) if moved.from_point <= EYE_LIMIT else ("not seated", None)
    if moved.to_face <= EYE_LIMIT:
        return "touch", None
    if leaf.edge == "leg":
        return "daylight", leaf.size - section.bead.leg_upright
    # The face's crossing with the bisector that is nearest to the spur.
    face = face_points(section) - (moved.off, 0.0)
    beyond = face[:, 1] > face[:, 0]
    cut = face[1:][beyond[1:] != beyond[:-1]]
    short = (2.0 * leaf.spur[0] - cut.sum(axis=1)) * math.sqrt(0.5)
    return "daylight", float(short[short > 0.0].min())
