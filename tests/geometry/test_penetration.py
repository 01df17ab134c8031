"""How deep a body stands in another, against depths that are known by construction."""

from __future__ import annotations

import math

import pytest

from geometry.bead import Bead
from geometry.bodies import Body
from geometry.joint import Joint
from geometry.penetration import penetration
from geometry.pose import Pose
from geometry.section import Section

_SPIKE = Body.of_points("spike", [(0.0, 0.0), (3.0, -3.0), (3.0, 3.0)])
"""Its sharp corner, at the origin, points against its own x."""


@pytest.mark.parametrize("hollow", [2e-4, 2e-3, 8e-3, 0.05, 0.5])
@pytest.mark.parametrize("share", [0.25, 0.9])
def test_a_corner_in_a_hollow_however_slight_stands_in_no_steel(
    hollow: float, share: float
) -> None:
    section = Section.of(Joint(), Bead(8.3, 8.3, -hollow))
    # Straight along the bisector, over the chord's middle, which the arc lies `hollow` below.
    below = share * hollow
    at = 4.15 - below / math.sqrt(2.0)
    assert penetration(section.outline, _SPIKE, Pose(at, at, 45.0)) == 0.0
    deep = 4.15 - (hollow + 0.01) / math.sqrt(2.0)
    found = penetration(section.outline, _SPIKE, Pose(deep, deep, 45.0))
    assert found == pytest.approx(0.01, rel=1e-3)
