"""A window is never off every screen, nor larger than the room there is, frame included."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.placement import USUAL, Frame, Placement, Screen, kept_placement, placed

BAR = Frame(1, 24, 1, 5)
WIDE = Screen("wide", 0, 0, 2560, 1400)
SMALL = Screen("small", 2560, 0, 1280, 720)

numbers = st.integers(-5000, 5000)
sizes = st.integers(1, 6000)
screens = st.lists(
    st.builds(
        Screen, st.sampled_from("abc"), numbers, numbers, st.integers(640, 4000),
        st.integers(480, 3000),
    ),
    min_size=1, max_size=3,
)  # fmt: skip
placements = st.builds(Placement, numbers, numbers, sizes, sizes, st.booleans(), st.text("abc"))


@given(st.none() | placements, screens)
def test_the_whole_frame_lies_on_one_screen(kept: Placement | None, there: list[Screen]) -> None:
    stand = placed(kept, there, BAR)
    assert any(
        screen.x <= stand.x - BAR.left
        and screen.y <= stand.y - BAR.top
        and stand.x + stand.width + BAR.right <= screen.x + screen.width
        and stand.y + stand.height + BAR.bottom <= screen.y + screen.height
        for screen in there
    )


@given(st.none() | placements, screens)
def test_what_fits_stays(kept: Placement | None, there: list[Screen]) -> None:
    stand = placed(kept, there, BAR)
    assert placed(stand, there, BAR) == stand


def test_a_title_bar_costs_the_lowest_row_nothing_at_1280_by_720() -> None:
    stand = placed(None, [Screen("one", 0, 0, 1280, 720)], BAR)
    assert (stand.y, stand.y + stand.height) == (24, 715)


def test_the_first_time_it_stands_in_the_middle() -> None:
    stand = placed(None, [WIDE, SMALL], Frame(0, 0, 0, 0))
    assert stand == Placement(640, 320, *USUAL, False, "wide")


def test_it_goes_back_to_its_screen() -> None:
    kept = Placement(2700, 100, 1000, 600, True, "small")
    assert placed(kept, [WIDE, SMALL], BAR) == kept


def test_a_screen_that_is_gone_leaves_it_on_the_usual_one() -> None:
    kept = Placement(2700, 100, 1000, 600, False, "small")
    assert placed(kept, [WIDE], BAR) == Placement(1559, 100, 1000, 600, False, "wide")


def test_a_screen_that_moved_is_known_by_its_name() -> None:
    kept = Placement(2700, 100, 1000, 600, False, "small")
    below = SMALL._replace(x=0, y=1400)
    assert placed(kept, [WIDE, below], BAR).screen == "small"


@pytest.mark.parametrize(
    "found",
    [
        None, [], "x", {}, {"x": 1, "y": 1, "width": 1}, {"x": 1, "y": 1, "width": 0, "height": 9},
        {"x": True, "y": 1, "width": 9, "height": 9}, {"x": 1.5, "y": 1, "width": 9, "height": 9},
        {"x": 10**9, "y": 1, "width": 9, "height": 9},
        {"x": 1, "y": 1, "width": 9, "height": 9, "maximised": 1},
        {"x": 1, "y": 1, "width": 9, "height": 9, "screen": None},
    ],
)  # fmt: skip
def test_what_is_no_placement_is_none(found: object) -> None:
    assert kept_placement(found) is None
