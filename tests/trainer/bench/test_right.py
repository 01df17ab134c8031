"""After a call: where it went wrong is marked, and the right handling lies over the picture."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from exercises.coupon import Coupon
from exercises.judging import right_handling
from exercises.tray import load_tray
from tests.trainer.bench.conftest import Person, person, tray
from trainer.assets import asset
from trainer.bench.review_picture import right_words
from trainer.bench.right import mistakes_of, right_seats
from trainer.canvas.scene import Line

__all__ = ["person", "tray"]

Key = Qt.Key
COUPONS = [
    coupon
    for file in sorted(asset("trays").glob("*.tray.json"))
    for coupon in load_tray(file).coupons
]


@pytest.fixture
def wrong(person: Person) -> Person:
    """The first coupon (short on the upright) accepted after one reading, called what it isn't."""
    for key in (Key.Key_8, Key.Key_Space, Key.Key_T, Key.Key_X, Key.Key_A, Key.Key_Return):
        person.key(key)
        person.settle()
    assert person.state.phase == "debrief"
    return person


@pytest.mark.parametrize("coupon", COUPONS, ids=lambda coupon: coupon.id)
def test_each_seat_of_the_right_handling_is_there_with_its_leaf(coupon: Coupon) -> None:
    seats = right_seats(coupon)
    asked = {(edge, on, mark) for (edge, on), marks in right_handling(coupon).at.items()
             for mark in marks}  # fmt: skip
    assert {(seat.leaf.edge, seat.on, seat.leaf.mark) for seat in seats} == asked
    for seat in seats:
        assert seat.outline[0] == seat.outline[-1]
        assert right_words(seat)


def test_moments_of_mistakes_are_those_of_the_readings_and_of_the_call(wrong: Person) -> None:
    state = wrong.state
    assert state.grade is not None
    found = mistakes_of(state.grade, state.readings, state.handling)
    events = {entry.ms: entry.event for entry in state.handling.entries}
    words = [events[mistake.ms] for mistake in found]
    assert words[0].startswith("state touch")
    assert words[-1].startswith("call")
    numbers = sorted(number for mistake in found for number in mistake.reasons)
    assert numbers == list(range(1, len(state.grade.reasons) + 1))


def test_n_goes_from_mistake_to_mistake_and_round(wrong: Person) -> None:
    player, replay = wrong.screen.review.player, wrong.screen.review.replay
    assert wrong.state.grade is not None
    moments = [
        float(mistake.ms)
        for mistake in mistakes_of(wrong.state.grade, wrong.state.readings, wrong.state.handling)
    ]
    player.seek(0.0)
    seen = []
    for _ in range(len(moments) + 1):
        wrong.key(Key.Key_N)
        seen.append(player.now.at)
    assert seen == [*moments, moments[0]]
    assert replay.mistake.isEnabled()
    player.seek(0.0)
    wrong.click(replay.mistake)
    assert player.now.at == moments[0]


def test_h_lays_the_right_handling_over_the_picture_seat_by_seat(wrong: Person) -> None:
    review = wrong.screen.review
    names = [button.text() for button in review.replay.right]
    assert names == [right_words(seat) for seat in right_seats(wrong.state.coupon)]

    def outlined() -> list[str]:
        scene = wrong.canvas.scene
        assert scene is not None
        return [o.label for o in scene.overlays if isinstance(o, Line) and o.dashed]

    before = outlined()
    seen = []
    for _ in range(len(names)):
        wrong.key(Key.Key_H)
        seen += [label for label in outlined() if label not in before]
    assert [label.split(":")[0] for label in seen] == names
    assert all(":" in label for label in seen)
    wrong.key(Key.Key_H)
    assert outlined() == before
    wrong.click(review.replay.right[-1])
    assert review.player.now.right == len(names) - 1
    wrong.click(review.replay.right[-1])
    assert review.player.now.right is None
