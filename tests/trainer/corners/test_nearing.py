"""A press that begins near the steel ends where one from farther out ends. No source."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark, rack
from geometry.penetration import is_free
from geometry.pose import Pose
from geometry.reading import read
from geometry.seat import home_pose, press_home, waiting_pose
from geometry.section import Section
from geometry.tolerances import CONTACT
from trainer.corners.nearing import brought_near

_MARKS = [leaf.mark for name in ("inch", "metric") for leaf in rack(name)]


def _bead(legs: tuple[float, float], rise: float) -> Bead:
    """A bead whose face rises or falls by a share of its chord."""
    return Bead(*legs, crown=rise * math.hypot(*legs))


@given(
    legs=st.tuples(st.floats(3.0, 25.0), st.floats(3.0, 25.0)),
    rise=st.floats(-0.15, 0.3),
    mark=st.sampled_from(_MARKS),
)
def test_a_throat_edge_comes_to_the_same_rest(
    legs: tuple[float, float], rise: float, mark: str
) -> None:
    bead = _bead(legs, rise)
    assume(not bead.faults(Joint()))  # a deep hollow between unlike legs enters a member
    section, leaf = Section.of(Joint(), bead), leaf_of_mark(mark, "throat")
    near = brought_near(section, leaf, home_pose(section.joint, leaf, "upright"), (0.5**0.5,) * 2)
    assert near is not None
    assert is_free(section.outline, leaf.body, near)
    short = press_home(section, leaf, near).pose
    far = press_home(section, leaf, waiting_pose(section, leaf, "upright")).pose
    assert math.hypot(short.x - far.x, short.y - far.y) < CONTACT
    assert abs(short.angle - far.angle) < 2.0 * CONTACT
    assert read(section, leaf, short).state == read(section, leaf, far).state


@pytest.mark.parametrize(("leg", "waits_at"), [(9.0, 1.0), (8.5, 0.5), (6.0, 0.0)])
def test_it_waits_a_hair_off_what_stops_it(leg: float, waits_at: float) -> None:
    """A leaf of 8 mm on a flat bead: the bead's face, or the upright."""
    section = Section.of(Joint(), Bead(leg, leg))
    near = brought_near(section, leaf_of_mark("8 mm"), Pose(0.0, 0.002), (1.0, 0.0))
    assert near is not None
    assert waits_at < near.x < waits_at + 0.05


def test_where_it_is_asked_from_makes_no_difference() -> None:
    section, leaf = Section.of(Joint(), Bead(8.0, 7.0, crown=0.5)), leaf_of_mark("8 mm", "throat")
    out = section.joint.bisector
    found = [
        brought_near(section, leaf, Pose(off * out[0], off * out[1]), out)
        for off in (-5.0, 0.0, 30.0)
    ]
    places = [pose.x for pose in found if pose is not None]
    assert len(places) == 3
    assert places == pytest.approx([places[0]] * 3)


def test_a_face_that_doubles_back_is_not_told() -> None:
    """Seen along the base, the face of a bead whose crown overhangs its upright toe."""
    section = Section.of(Joint(), Bead(4.0, 4.0, crown=2.7))
    assert brought_near(section, leaf_of_mark("3 mm"), Pose(0.0, 0.002), (1.0, 0.0)) is None
