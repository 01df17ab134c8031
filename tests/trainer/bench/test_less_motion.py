"""Less motion, chosen in the View menu: nothing at the bench glides, shakes or plays by itself."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from tests.trainer.bench.conftest import Person
from trainer.bench.controller import BenchController

Key = Qt.Key


def moving_frames(person: Person, monkeypatch: pytest.MonkeyPatch) -> list[None]:
    """A list that grows with each frame of an animation of the bench."""
    frames: list[None] = []
    real = BenchController._next_frame

    def frame(controller: BenchController) -> None:
        frames.append(None)
        real(controller)

    monkeypatch.setattr(BenchController, "_next_frame", frame)
    person.screen.controller._frames.timeout.disconnect()
    person.screen.controller._frames.timeout.connect(lambda: frame(person.screen.controller))
    return frames


@pytest.mark.parametrize("less", [False, True])
def test_a_press_home_glides_only_with_motion(
    person: Person, monkeypatch: pytest.MonkeyPatch, less: bool
) -> None:
    if less:
        person.frame.motion_action.trigger()
    assert person.frame.settings.less_motion is less
    frames = moving_frames(person, monkeypatch)
    person.key(Key.Key_8)
    person.key(Key.Key_Space)
    person.settle()
    assert bool(frames) is not less
    assert person.screen.controller.shown_pose == person.state.pose


def test_a_refusal_shakes_only_with_motion(person: Person) -> None:
    person.key(Key.Key_8)
    shake = person.canvas._shake
    offsets: dict[bool, set[float]] = {False: set(), True: set()}
    for less in (False, True):
        person.frame.change_settings(replace(person.frame.settings, less_motion=less))
        shake.moved.connect(lambda less=less: offsets[less].add(shake.offset))
        person.canvas.shake()
        person.qtbot.waitUntil(lambda: not shake.running)
        shake.moved.disconnect()
    assert len(offsets[False]) > 1
    assert offsets[True] == {0.0}


def test_a_replay_shows_ends_of_gestures_only(person: Person) -> None:
    person.frame.motion_action.trigger()
    for key in (Key.Key_8, Key.Key_Space, Key.Key_X, Key.Key_A, Key.Key_Return):
        person.key(key)
    assert person.screen.review.player.reduced_motion


def test_the_choice_is_shown_and_kept(person: Person) -> None:
    action = person.frame.motion_action
    assert action.isCheckable()
    assert not action.isChecked()
    action.trigger()
    assert person.frame.theme.reduced_motion
    action.trigger()
    assert not person.frame.theme.reduced_motion
