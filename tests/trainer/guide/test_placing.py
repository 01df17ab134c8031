"""Where the card lies."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.guide.placing import Box, Spot, place_for, spots_in

ROOM: Box = (10.0, 60.0, 680.0, 440.0)
CARD = (248.0, 120.0)


def overlaps(one: Box, other: Box) -> bool:
    return (
        one[0] < other[0] + other[2]
        and other[0] < one[0] + one[2]
        and one[1] < other[1] + other[3]
        and other[1] < one[1] + one[3]
    )


def test_every_place_is_in_the_room() -> None:
    for left, top, width, height in spots_in(ROOM, CARD):
        assert ROOM[0] < left < left + width < ROOM[0] + ROOM[2]
        assert ROOM[1] < top < top + height < ROOM[1] + ROOM[3]


@given(st.floats(0.0, 560.0), st.floats(0.0, 320.0))
def test_the_tip_is_never_hidden(x: float, y: float) -> None:
    """Wherever the tip is, there is room beside it even in the smallest picture."""
    tip: Box = (ROOM[0] + x, ROOM[1] + y, 112.0, 112.0)
    lens: Box = (ROOM[0] + 500.0, ROOM[1] + 12.0, 168.0, 200.0)
    place = place_for(spots_in(ROOM, CARD), [Spot(tip, 20.0), Spot(lens, 12.0)], None, None)
    assert not overlaps(place, tip)
    assert not overlaps(place, lens)


def test_it_lies_near_what_it_points_at() -> None:
    place = place_for(spots_in(ROOM, CARD), [], (680.0, 480.0, 20.0, 20.0), None)
    assert place[:2] == pytest.approx((430.0, 368.0))


def test_it_stays_while_that_is_nearly_as_good_and_goes_when_it_is_not() -> None:
    places = spots_in(ROOM, CARD)
    target: Box = (680.0, 480.0, 20.0, 20.0)
    last = places[-2]
    assert place_for(places, [], target, last) == last
    tip = Spot((last[0] + 20.0, last[1] + 20.0, 60.0, 60.0), 20.0)
    assert place_for(places, [tip], target, last) != last


def test_a_place_that_is_gone_is_not_stayed_at() -> None:
    places = spots_in(ROOM, CARD)
    assert place_for(places, [], None, (0.0, 0.0, 1.0, 1.0)) in places
