"""Uncertainties carried through linearly, beside the same carried through by random draws."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from exercises.intake.photo import Outline, outline_of
from exercises.intake.photo_doubt import BY_HAND, ON_EDGE, doubts_of, located
from exercises.intake.photo_frame import Marks, Spot
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section
from tests.exercises.intake.rendered import Hand, Shot, marked, rendered, wire_of

SHOTS = [
    (Joint(base_length=52.0, upright_length=28.0), Bead(8.0, 6.7, crown=0.9), True),
    (Joint(base_length=52.0, upright_length=28.0), Bead(7.0, 9.0, crown=-0.6), False),
    (Joint(angle=120.0, base_length=52.0, upright_length=28.0), Bead(6.0, 6.0), True),
]


def outlined(joint: Joint, bead: Bead, *, straighten: bool) -> tuple[Marks, Outline]:
    shot = Shot(tilt=(0.1, -0.08) if straighten else (0.0, 0.0), seed=4)
    shown = rendered(Section.of(joint, bead), shot)
    marks = marked(shown, Hand(3.0, 4), straighten=straighten)
    return marks, outline_of(marks, wire_of(shown))


@pytest.mark.parametrize(("joint", "bead", "straighten"), SHOTS)
def test_linear_and_random_propagation_agree(joint: Joint, bead: Bead, straighten: bool) -> None:
    # Source: JCGM 101:2008, the GUM's first supplement: propagation by a Monte Carlo method.
    marks, outline = outlined(joint, bead, straighten=straighten)
    found = located(marks, outline.frame, outline.face)
    random = np.random.default_rng(7)
    # A rectangular distribution of standard uncertainty u reaches from -√3 u to √3 u.
    reach = math.sqrt(3.0) * found.doubts
    drawn = np.array(
        [found.measures(found.values + random.uniform(-reach, reach)) for _ in range(4000)]
    )
    doubts = outline.doubts
    said = [doubts.leg_base, doubts.leg_upright, doubts.actual_throat, doubts.angle]
    # 4,000 draws know a standard deviation to about 1.1 %.
    assert drawn.std(axis=0) == pytest.approx(said, rel=0.06)
    assert doubts_of(found) == doubts


@pytest.mark.parametrize(("joint", "bead", "straighten"), SHOTS)
def test_what_was_located_says_what_was_traced(joint: Joint, bead: Bead, straighten: bool) -> None:
    marks, outline = outlined(joint, bead, straighten=straighten)
    found = located(marks, outline.frame, outline.face)
    measures = outline.measures
    assert found.measures(found.values) == pytest.approx(
        [measures.leg_base, measures.leg_upright, measures.actual_throat, outline.frame.angle],
        abs=0.02,
    )


def test_a_hand_is_less_sure_than_an_edge() -> None:
    marks, outline = outlined(*SHOTS[1][:2], straighten=False)
    base = tuple(Spot(spot.x, spot.y, by_hand=True) for spot in marks.base)
    found = located(replace(marks, base=base), outline.frame, outline.face)
    assert BY_HAND > 3.0 * ON_EDGE
    assert doubts_of(found).leg_upright > outline.doubts.leg_upright
    assert doubts_of(found).angle > outline.doubts.angle


def test_a_finer_picture_is_surer() -> None:
    section = Section.of(*SHOTS[0][:2])
    found = []
    for per_mm in (10.0, 25.0):
        shown = rendered(section, Shot(per_mm=per_mm, seed=2))
        marks = marked(shown, Hand(2.0, 2), straighten=False)
        found.append(outline_of(marks, wire_of(shown)).doubts)
    assert found[0].leg > 1.5 * found[1].leg


def test_a_long_length_scales_more_surely_than_a_short_one() -> None:
    marks, outline = outlined(*SHOTS[1][:2], straighten=False)
    first, second = marks.scale
    middle = Spot((first.x + second.x) / 2.0, (first.y + second.y) / 2.0)
    near = Spot(first.x + (middle.x - first.x) / 3.0, first.y + (middle.y - first.y) / 3.0)
    short = replace(marks, scale=(first, near), length=(marks.length or 0.0) / 6.0)
    found = doubts_of(located(short, outline.frame, outline.face))
    assert found.leg_base > 1.5 * outline.doubts.leg_base


def test_a_ratio_is_exact_and_a_stated_side_is_not() -> None:
    marks, outline = outlined(*SHOTS[0][:2], straighten=True)
    known = located(marks, outline.frame, outline.face)
    ratio = located(replace(marks, sides_known=False), outline.frame, outline.face)
    assert (known.doubts[8:10] > 0.0).all()
    assert (ratio.doubts[8:10] == 0.0).all()
