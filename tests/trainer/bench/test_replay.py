"""The replay: its pace, its pauses, its moments, by mouse and by keys."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from exercises.handling import Entry, HandlingLog
from tests.trainer.bench.conftest import Person
from trainer.bench.player import PAUSE, SPEEDS, Player, stations

Key = Qt.Key


def log_of(*told: tuple[int, str]) -> HandlingLog:
    return HandlingLog(
        tuple(
            Entry(ms, float(n), 0.0, 0.0, turned=False, event=e) for n, (ms, e) in enumerate(told)
        )
    )


@pytest.fixture
def player(qapp: QApplication) -> Player:
    player = Player()
    drag = [(1000 + 16 * n, "drag") for n in range(1, 20)]
    player.load(
        log_of(
            (0, "pick 8 mm leg"), (1000, "grab"), *drag, (1320, "release"), (9000, "state touch")
        )
    )
    player.seek(0.0)
    return player


@pytest.fixture
def judged(person: Person) -> Person:
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_F, Key.Key_Space, Key.Key_H):
        person.key(key)
        person.settle()
    for key in (Key.Key_X, Key.Key_W, Key.Key_Return):
        person.key(key)
    assert person.state.phase == "debrief"
    return person


@pytest.mark.parametrize("speed", SPEEDS)
def test_pace_is_how_much_passes_in_a_moment(player: Player, speed: float) -> None:
    player.skip(False)
    player.go_at(speed)
    player.play()
    player.go_on(100.0)
    assert player.now.at == pytest.approx(100.0 * speed)


def test_pauses_are_skipped_or_sat_out(player: Player) -> None:
    """From a drag's end to the next thing done there are more than 7 s in which nothing moves."""
    for skips, least, most in ((True, 8000.0, 9000.0), (False, 1300.0, 2000.0)):
        player.seek(1320.0)
        player.skip(skips)
        player.play()
        player.go_on(400.0)
        assert least < player.now.at < most
        player.play()


def test_nothing_that_moves_is_skipped(player: Player) -> None:
    player.play()
    seen = []
    while player.now.runs:
        player.go_on(16.0)
        seen.append(player.frame.event)
    assert {"pick 8 mm leg", "drag", "release", "state touch"} <= set(seen)
    times = [float(e.ms) for e in player.log.entries]
    assert max(b - a for a, b in pairwise(times)) > PAUSE
    assert len(seen) * 16.0 < player.log.duration / 2.0


def test_reduced_motion_shows_ends_of_gestures_only(player: Player) -> None:
    player.reduced_motion = True
    player.play()
    shown = set()
    while player.now.runs:
        player.go_on(16.0)
        shown.add(player.now.at)
    assert shown <= set(stations(player.log)) | {float(player.log.duration)}


def test_steps_go_by_gestures_and_with_shift_by_pictures(player: Player) -> None:
    player.step(1)
    assert player.frame.event == "release"
    player.step(-1)
    assert player.now.at == 0.0
    player.step(1, single=True)
    assert player.frame.event == "grab"
    player.seek(1100.0)
    player.step(-1)
    assert player.now.at == 0.0, "back from within a drag is to before it"


def test_seeking_lets_it_play_on_from_there(player: Player) -> None:
    player.play()
    player.seek(1200.0)
    assert player.now.runs
    player.go_on(16.0)
    assert player.now.at == pytest.approx(1216.0)


def test_click_and_drag_on_the_scrubber_seek(judged: Person) -> None:
    player, scrubber = judged.screen.review.player, judged.screen.review.replay.scrubber
    left = Qt.MouseButton.LeftButton
    none = Qt.KeyboardModifier.NoModifier
    middle = scrubber.rect().center()
    QTest.mouseClick(scrubber, left, none, middle)
    assert player.now.at == pytest.approx(player.log.duration / 2.0, rel=0.05)
    judged.press(scrubber, middle)
    QTest.mouseMove(scrubber, QPoint(scrubber.width() // 4, middle.y()))
    judged.let_go(scrubber, QPoint(scrubber.width() // 4, middle.y()))
    assert player.now.at == pytest.approx(player.log.duration / 4.0, rel=0.15)


def test_everything_by_keys(judged: Person) -> None:
    player = judged.screen.review.player
    judged.key(Key.Key_Home)
    assert player.now.at == 0.0
    judged.key(Key.Key_Right)
    first = player.now.at
    assert first > 0.0
    judged.key(Key.Key_Right, shift=True)
    assert player.now.at > first
    judged.key(Key.Key_End)
    assert player.now.at == player.log.duration
    judged.key(Key.Key_Period)
    assert player.now.speed == 2.0
    for _ in range(3):
        judged.key(Key.Key_Comma)
    assert player.now.speed == 0.5
    judged.key(Key.Key_S)
    assert not player.now.skips


def test_the_strip_shows_pace_and_pauses(judged: Person) -> None:
    strip, player = judged.screen.review.replay, judged.screen.review.player
    judged.click(strip.speeds[4.0])
    assert player.now.speed == 4.0
    assert [speed for speed, b in strip.speeds.items() if b.isChecked()] == [4.0]
    judged.click(strip.skips)
    assert not player.now.skips
    assert not strip.skips.isChecked()
    judged.key(Key.Key_R)
    assert judged.state.phase == "handling"


def test_page_keys_turn_to_another_coupon_from_the_scrubber_too(judged: Person) -> None:
    judged.screen.review.replay.scrubber.setFocus()
    judged.key(Key.Key_PageDown)
    assert judged.state.coupon.id == "hf-02"
    judged.key(Key.Key_PageUp)
    assert judged.state.coupon.id == "hf-01"
