"""The talk: it pauses where a verdict flips, and that is where mathematics says."""

from __future__ import annotations

import math

import pytest

from trainer.corners.captions import caption
from trainer.corners.pressing import Pressing
from trainer.corners.state import Corners
from trainer.corners.talk import (
    Passage,
    Stop,
    flips_between,
    passages,
    seek,
    signs,
    stop_between,
)


def stops(passage: Passage) -> list[Stop]:
    found: list[Stop] = []
    share = 0.0
    look = Pressing().corners
    while share < 1.0:
        stop = next(stop for stop in seek(look, 0, passage, share) if stop is not None)
        found.append(stop)
        share = stop.share
    return found


def test_a_growing_flat_bead_touches_an_eye_s_tenth_early() -> None:
    """Derivation: daylight ends when S - leg is the eye limit, 0.1 mm: at 7.9 mm."""
    passage = Passage("size", Corners(7.6, 7.6, 0.0, -2.0), Corners(7.95, 7.95, 0.0, -2.0))
    look = Pressing().corners
    legs = [
        passage.at(stop.share).leg_upright
        for stop in stops(passage)
        for flip in stop.flips
        if flip.place == 0
    ]
    assert legs[0] == pytest.approx(7.9, abs=0.006)
    assert signs(look(passage.at(1.0)))[0][0] == "touch"


def test_a_joint_that_opens_shows_daylight_once_the_toe_is_an_eye_s_tenth_short() -> None:
    """Derivation: flush, the tip lies at 8 / sin(angle) along the upright; the toe at 8."""
    passage = Passage("opens", Corners(angle=95.0), Corners(angle=103.0))
    flips = [stop for stop in stops(passage) if any(flip.place == 0 for flip in stop.flips)]
    angle = passage.at(flips[0].share).angle
    assert angle == pytest.approx(180.0 - math.degrees(math.asin(8.0 / 8.1)), abs=0.05)


def test_a_hollow_s_false_comfort_ends_where_the_size_does() -> None:
    """Derivation: size = leg + crown * sqrt 2 for equal legs; it is doubted below S - 0.129."""
    passage = Passage("crown", Corners(hollow=-0.5), Corners(hollow=-0.01))
    ends = [
        passage.at(stop.share).hollow
        for stop in stops(passage)
        for flip in stop.flips
        if flip.place == 2 and flip.before[1] == "false comfort"
    ]
    assert ends == [pytest.approx(-0.1291 / math.sqrt(2.0), abs=0.01)]


@pytest.mark.parametrize("index", range(5))
def test_every_stop_has_a_flip_and_nothing_flips_between(index: int) -> None:
    passage = passages(Corners())[index]
    look = Pressing().corners
    near = 0.0
    for stop in stops(passage):
        assert stop.share > near
        if stop.share < 1.0:
            assert stop.flips
        # Sampled apart from the search, just short of the stop.
        short = signs(look(passage.at(max(near, stop.share - 0.016))))
        assert flips_between(signs(look(passage.at(near))), short) == ()
        near = stop.share


def test_the_way_back_stops_too() -> None:
    passage = passages(Corners())[0]
    look = Pressing().corners
    assert stop_between(look, 0, passage, 0.36, 0.32) is not None
    assert stop_between(look, 0, passage, 0.32, 0.30) is None


@pytest.mark.parametrize("mark", ["3 mm", "8 mm", "5/16 in", "a 4 mm", "25 mm"])
def test_the_talk_is_given_for_any_leaf(mark: str) -> None:
    for passage in passages(Corners(mark=mark)):
        for share in (0.0, 0.5, 1.0):
            assert len(Pressing().corners(passage.at(share))) == 4


def test_each_stop_has_one_sentence() -> None:
    look = Pressing().corners
    for index, passage in enumerate(passages(Corners())):
        for stop in [Stop(index, 0.0), *stops(passage)]:
            state = passage.at(stop.share)
            words = caption(passage, stop, look(state), state, "mm")
            assert words.count(". ") == 0
            assert words.endswith(".")
            assert "{" not in words
