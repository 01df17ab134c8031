"""Sections and leaves that the canvas is shown."""

from __future__ import annotations

import math
import random

import pytest

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.curves import Arc
from geometry.joint import Joint
from geometry.section import Section


def traced_section(count: int = 500) -> Section:
    """A section whose face is `count` slightly noisy points."""
    chance = random.Random(3)
    arc = Section.of(Joint(), Bead(8.0, 7.2, 1.0)).face[0]
    assert isinstance(arc, Arc)
    points = []
    for index in range(count):
        share = index / (count - 1)
        angle = arc.first + share * arc.sweep
        radius = arc.radius + math.sin(math.pi * share) * chance.uniform(-0.02, 0.02)
        points.append(
            (arc.centre[0] + radius * math.cos(angle), arc.centre[1] + radius * math.sin(angle))
        )
    return Section.of(Joint(), Bead.traced(tuple(points), Joint()))


SECTIONS = {
    "flat": Section.of(Joint(), Bead(8.0, 8.0)),
    "convex": Section.of(Joint(), Bead(8.0, 6.7, 0.9)),
    "hollow": Section.of(Joint(), Bead(8.0, 8.0, -1.2)),
    "leaning": Section.of(Joint(angle=80.0), Bead(8.0, 8.0, 0.6)),
    "undercut": Section.of(
        Joint(angle=100.0),
        Bead(8.0, 8.0, 0.4, undercut_upright=Undercut(0.6, 2.0), overlap_base=Overlap(1.6)),
    ),
    "spatter": Section.of(
        Joint(root_opening=2.0),
        Bead(10.0, 10.0, 1.2),
        (Spatter("base", 16.0, 0.8), Spatter("upright", 13.0, 0.6)),
    ),
    "traced": traced_section(),
}


@pytest.fixture(params=sorted(SECTIONS))
def section(request: pytest.FixtureRequest) -> Section:
    """Each kind of section in turn."""
    return SECTIONS[request.param]


@pytest.fixture
def convex() -> Section:
    """A convex bead of unequal legs."""
    return SECTIONS["convex"]


@pytest.fixture
def flat() -> Section:
    """A flat bead, both legs 8 mm."""
    return SECTIONS["flat"]
