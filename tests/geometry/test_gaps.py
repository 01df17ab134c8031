"""Moved by the contact kernel, read by shapely, and checked by dense points.

Three ways that share no code: the kernel finds the rest, the reading measures there, and points
along the face, 0.2 micrometres apart, say what both should have found.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import Leaf
from geometry.reading import Reading, read
from geometry.seat import press_home, waiting_pose
from geometry.section import Section
from tests.geometry.dense import face_points, slide
from tests.geometry.faces import ROUGH, expected, far_from_the_limits, scanned


def pressed(section: Section, leaf: Leaf) -> Reading:
    """What a leaf shows that is pressed home from out along the bisector."""
    home = press_home(section, leaf, waiting_pose(section, leaf, "upright")).pose
    return read(section, leaf, home)


@settings(max_examples=40)
@given(
    st.integers(0, 10_000),
    st.floats(6.0, 10.0),
    st.floats(6.0, 10.0),
    st.floats(-1.2, 1.2),
    st.sampled_from(ROUGH),
)
def test_the_leg_edge_on_scanned_faces(
    seed: int, base: float, upright: float, crown: float, leaf: Leaf
) -> None:
    assume(base < leaf.long_edge[0][0] - 0.05)
    section = scanned(seed, base, upright, crown)
    moved = slide(leaf, face_points(section))
    assume(far_from_the_limits(moved))
    state, gap = expected(section, leaf, moved)
    reading = pressed(section, leaf)
    assert reading.state == state
    if gap is not None:
        assert reading.gap == pytest.approx(gap, abs=1e-3)
        assert "long" in reading.flush


@settings(max_examples=40)
@given(st.integers(0, 10_000), st.floats(6.0, 10.0), st.floats(-1.2, -0.3), st.sampled_from(ROUGH))
def test_the_throat_edge_on_scanned_hollows(
    seed: int, leg: float, crown: float, leaf: Leaf
) -> None:
    held = leaf.swapped()
    assume(leg < held.long_edge[0][0] - 0.05)
    section = scanned(seed, leg, leg, crown)
    moved = slide(held, face_points(section))
    assume(far_from_the_limits(moved) and moved.off == 0.0)
    state, gap = expected(section, held, moved)
    reading = pressed(section, held)
    assert (reading.state, reading.flush) == (state, ("long", "end"))
    if gap is not None:
        assert reading.gap == pytest.approx(gap, abs=1e-3)


@settings(max_examples=40)
@given(st.floats(4.0, 12.0), st.floats(0.05, 0.3))
def test_a_spur_held_off_by_a_crown(size: float, share: float) -> None:
    """Straight on the bisector the spur stands on the crown, and both edges are equally off."""
    crown = share * size
    section = Section.of(Joint(), Bead(size, size, crown=crown))
    leaf = Leaf(size, "leaf", "throat")
    reading = pressed(section, leaf)
    assume(crown / math.sqrt(2.0) > 0.11)
    assert reading.state == "held off"
    assert reading.gap == pytest.approx(crown / math.sqrt(2.0), abs=1e-3)
