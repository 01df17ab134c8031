"""From a picture to legs and throat: pictures of known sections, clicked by a hand that is off.

Source of the limit: the shop's own promise, legs and throat within 0.1 mm or two pixels.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from exercises.intake.photo import Outline, outline_of, taken
from exercises.tray import read_tray
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.measures import measure
from geometry.section import Section
from tests.exercises.intake.rendered import (
    Hand,
    Rendered,
    Shot,
    marked,
    rendered,
    section_of,
    shot_of,
    wire_of,
)

PLAIN = Section.of(Joint(base_length=52.0, upright_length=28.0), Bead(8.0, 6.7, crown=0.9))


def errors(outline: Outline, section: Section) -> list[float]:
    """Base leg, upright leg and throat as traced, less the true ones, mm."""
    got, true = outline.measures, measure(section)
    names = ("leg_base", "leg_upright", "actual_throat")
    return [getattr(got, name) - getattr(true, name) for name in names]


def traced(shown: Rendered, hand: Hand, *, straighten: bool, clicks: int = 5) -> Outline:
    marks = marked(shown, hand, straighten=straighten, clicks=clicks)
    return outline_of(marks, wire_of(shown))


@pytest.mark.parametrize("seed", range(24))
def test_a_tilted_picture_gives_its_legs_and_throat(seed: int) -> None:
    section, shot = section_of(seed), shot_of(seed)
    outline = traced(rendered(section, shot), Hand(4.0, seed), straighten=True)
    limit = max(0.1, 2.0 / shot.per_mm)
    assert max(map(abs, errors(outline, section))) <= limit
    assert outline.frame.angle == pytest.approx(section.joint.angle, abs=0.6)


@pytest.mark.parametrize("seed", range(100, 108))
def test_a_picture_taken_straight_on_needs_a_length_only(seed: int) -> None:
    shot = Shot(per_mm=10.0 + seed % 8, blur=1.5, noise=6.0, uneven=0.4, turn=5.0, seed=seed)
    section = section_of(seed)
    outline = traced(rendered(section, shot), Hand(4.0, seed), straighten=False)
    assert max(map(abs, errors(outline, section))) <= max(0.1, 2.0 / shot.per_mm)
    assert outline.pixel == pytest.approx(1.0 / shot.per_mm, rel=0.01)


@pytest.mark.parametrize("clicks", [2, 3, 9])
def test_few_clicks_are_enough_and_many_do_no_harm(clicks: int) -> None:
    shown = rendered(PLAIN, Shot(seed=3))
    outline = traced(shown, Hand(4.0, 3), straighten=False, clicks=clicks)
    assert max(map(abs, errors(outline, PLAIN))) <= 0.1


def test_an_upright_at_either_side_is_the_same_weld() -> None:
    found = [
        traced(rendered(PLAIN, Shot(mirrored=side, seed=5)), Hand(2.0, 5), straighten=False)
        for side in (False, True)
    ]
    for outline in found:
        assert max(map(abs, errors(outline, PLAIN))) <= 0.1


def test_what_is_said_of_doubt_is_about_as_large_as_the_errors() -> None:
    shares = []
    for seed in range(30, 46):
        section, shot = section_of(seed), shot_of(seed)
        outline = traced(rendered(section, shot), Hand(4.0, seed), straighten=True)
        doubts = outline.doubts
        said = (doubts.leg_base, doubts.leg_upright, doubts.actual_throat)
        shares += [off / doubt for off, doubt in zip(errors(outline, section), said, strict=True)]
    spread = math.sqrt(float(np.mean(np.square(shares))))
    assert 0.15 < spread < 1.2


def test_what_is_taken_makes_a_coupon_with_the_picture_behind_it() -> None:
    shown = rendered(PLAIN, Shot(per_mm=16.0, seed=9))
    outline = traced(shown, Hand(3.0, 9), straighten=False)
    made = taken(outline, shown.picture, keeps=True)
    assert made.uncertainty == pytest.approx(outline.doubts.leg, abs=1e-4)
    assert made.source["file"] == "weld.png"
    assert made.backdrop is not None
    coupon: dict[str, Any] = {
        "id": "a",
        "joint": {"angle": made.angle},
        "bead": {"trace": [list(point) for point in made.trace]},
        "callout": {"size": 6},
        "backdrop": made.backdrop.as_document(),
        "x-source": dict(made.source),
    }
    document: Any = {"format": "toe-and-throat/tray", "version": 3, "coupons": [coupon]}
    (read,) = read_tray(document).coupons
    assert measure(read.section).leg_base == pytest.approx(8.0, abs=0.1)
    left, low, right, high = made.backdrop.box
    assert left < -4.0 < 12.0 < right
    assert low < -4.0 < 10.0 < high
    assert taken(outline, shown.picture, keeps=False).backdrop is None
