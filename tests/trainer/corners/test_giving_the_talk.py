"""The talk as it is given: keys, remotes, pauses, captions."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from tests.trainer.corners.conftest import Instructor
from trainer.corners.state import Corners
from trainer.corners.talk import signs

Key = Qt.Key


@pytest.fixture
def still(instructor: Instructor) -> Instructor:
    """Without animation, as who asked the system for less motion has it."""
    instructor.frame.theme = replace(instructor.frame.theme, reduced_motion=True)
    instructor.screen.show_state()
    return instructor


def caption(who: Instructor) -> str:
    return who.screen.bar.words.text()


@pytest.mark.parametrize("key", [Key.Key_Right, Key.Key_Space, Key.Key_PageDown])
def test_a_remote_s_keys_go_on(still: Instructor, key: Key) -> None:
    still.key(key)
    still.arrive()
    assert still.screen.bar.isVisible()
    assert caption(still).startswith("Both legs grow")
    still.key(key)
    still.arrive()
    assert caption(still) == (
        "At legs of 6.4 mm: convex bead under the throat edge, daylight becomes touch, false "
        "comfort."
    )
    shown = still.corners[1]
    assert (shown.reading.state, shown.verdict.trust) == ("touch", "false comfort")


@pytest.mark.parametrize("key", [Key.Key_Left, Key.Key_PageUp])
def test_and_back(still: Instructor, key: Key) -> None:
    still.key(Key.Key_Right)
    still.arrive()
    start = still.state
    still.key(Key.Key_Right)
    still.arrive()
    still.key(key)
    still.arrive()
    assert still.state == start
    assert caption(still).startswith("Both legs grow")
    still.key(key)
    assert still.screen.talker.on, "before the first stop there is nothing"


def test_the_whole_talk_pauses_at_flips_alone(still: Instructor) -> None:
    still.key(Key.Key_Right)
    still.arrive()
    seen = [(still.screen.talker.stop, signs(still.corners))]
    for _ in range(40):
        still.key(Key.Key_Right)
        still.arrive()
        if still.screen.talker.stop == seen[-1][0]:
            break
        seen.append((still.screen.talker.stop, signs(still.corners)))
        assert caption(still).endswith(".")
    stops = [stop for stop, _ in seen if stop is not None]
    assert [stop.passage for stop in stops] == sorted(stop.passage for stop in stops)
    assert stops[-1].passage == 4
    assert stops[-1].share == 1.0
    for stop, shown in seen:
        if stop is not None:
            for flip in stop.flips:
                assert shown[flip.place] == flip.after
    # Each of the four things that the talk is about makes a verdict flip.
    assert {stop.passage for stop in stops if stop.flips} == {0, 1, 2, 3, 4}


def test_with_motion_it_goes_there_smoothly(instructor: Instructor) -> None:
    seen: list[float] = []
    instructor.key(Key.Key_Right)
    instructor.arrive()
    instructor.screen.controller.changed.connect(
        lambda: seen.append(instructor.screen.controller.shown.leg_base)
    )
    instructor.key(Key.Key_Right)
    instructor.arrive()
    assert len(seen) > 2
    assert seen == sorted(seen)
    assert instructor.screen.talker.stop is not None
    assert instructor.screen.talker.stop.flips


def test_asked_again_on_the_way_it_arrives_at_once(instructor: Instructor) -> None:
    instructor.key(Key.Key_Right)
    instructor.arrive()
    instructor.key(Key.Key_Right)
    instructor.qtbot.waitUntil(lambda: instructor.screen.talker.on_the_way, timeout=20000)
    instructor.key(Key.Key_Right)
    assert not instructor.screen.talker.on_the_way


def test_a_hand_on_a_knob_ends_it_there_and_escape_ends_it_as_it_was(still: Instructor) -> None:
    still.key(Key.Key_Right)
    still.arrive()
    still.screen.controller.set_value("angle", 100.0, "test")
    assert not still.screen.talker.on
    assert not still.screen.bar.isVisible()
    assert still.state.angle == 100.0
    before = still.state
    still.key(Key.Key_Right)
    still.arrive()
    assert still.screen.talker.on
    still.key(Key.Key_Escape)
    assert not still.screen.talker.on
    assert still.state == before


def test_drawings_don_t_end_it(still: Instructor) -> None:
    still.key(Key.Key_Right)
    still.arrive()
    still.key(Key.Key_2)
    still.key(Key.Key_Right)
    still.arrive()
    assert still.screen.talker.on
    assert still.state.drawn == {"triangle"}


def test_it_is_given_in_full_screen_by_page_keys(still: Instructor) -> None:
    still.key(Key.Key_F11)
    still.qtbot.waitUntil(still.window.isFullScreen)
    still.key(Key.Key_PageDown)
    still.arrive()
    assert still.screen.bar.isVisible()
    still.key(Key.Key_Escape)
    assert still.window.isFullScreen(), "the first Escape ends the talk"
    still.key(Key.Key_Escape)
    still.qtbot.waitUntil(lambda: not still.window.isFullScreen())
    assert still.state == Corners()
