"""What an eye sees: acuity, a backlit gap, and the doubt that follows.

Sources: acuity of about one arc-minute, an optics rule of thumb (second-hand), worked out at two
distances (computed); light-gap method from 0.002 mm (second-hand, an encyclopaedia); viewing within
600 mm, ISO 17637 and ASME V Article 9 (from memory); uncertainty JCGM 106:2012, the contract's own
figures. No published figure for the spread of a fillet leaf gauge was found, so none is tested.
"""

from __future__ import annotations

import math

import pytest

from exercises.doubt import COVERAGE, LEAF_TOLERANCE, doubt
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.reading import EYE_LIMIT, read
from geometry.section import Section

MINUTE = math.radians(1.0 / 60.0)
BACKLIT = 0.002
"""mm."""


@pytest.mark.parametrize(("distance", "seen"), [(250.0, 0.073), (600.0, 0.175)])
def test_acuity(distance: float, seen: float) -> None:
    # S2, computed.
    assert distance * math.tan(MINUTE) == pytest.approx(seen, abs=0.0006)


def test_the_eye_limit_is_seen_within_the_distance_of_viewing() -> None:
    # An eye that sees 0.1 mm without light behind it stands between 250 and 600 mm off (M).
    distance = EYE_LIMIT / math.tan(MINUTE)
    assert 250.0 < distance < 600.0
    assert EYE_LIMIT > 40.0 * BACKLIT


def test_a_coupon_may_ask_as_much_as_a_backlit_gap_shows() -> None:
    # S2: from 0.002 mm. So fine a limit must still be told from none.
    section, leaf = Section.of(Joint(), Bead(8.0, 8.0 - 3.0 * BACKLIT)), leaf_of_mark("8 mm")
    shown = read(section, leaf, Pose(0.0, 0.0), BACKLIT)
    assert shown.state == "daylight"
    assert shown.gap == pytest.approx(3.0 * BACKLIT, abs=1e-6)
    assert read(section, leaf, Pose(0.0, 0.0), 5.0 * BACKLIT).state == "touch"


def test_the_doubt_of_a_leaf() -> None:
    # The contract: 0.13 mm at a leg, 0.17 mm at the spur. Two uniform parts, coverage 2.
    assert round(doubt("leg"), 2) == 0.13
    assert round(doubt("throat"), 2) == 0.17
    parts = [LEAF_TOLERANCE / math.sqrt(3.0), EYE_LIMIT / math.sqrt(3.0)]
    assert doubt("leg") == pytest.approx(COVERAGE * math.hypot(*parts))
    # What an eye leaves open is more than what a leaf does.
    assert parts[1] > parts[0]
