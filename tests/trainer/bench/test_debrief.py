"""What is shown once a call is on record."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from shapely.geometry import Polygon

from exercises.grading import grade
from exercises.tray import Tray
from tests.trainer.bench.conftest import Person
from trainer.bench.state import attempt_of
from trainer.bench.truth import place_of, tell, truth_of
from trainer.canvas.scene import Area, Dimension, Line, Mark

Key = Qt.Key


def judge(person: Person, *keys: Key, face: str = "Convex", say: str = "Accept") -> None:
    for key in keys:
        person.key(key)
        person.settle()
    person.click(person.button(face))
    person.click(person.button(say))
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"


SEATED = (Key.Key_8, Key.Key_Space, Key.Key_T)


def texts(person: Person) -> str:
    labels = person.screen.review.panel.findChildren(QLabel)
    return "\n".join(label.text() for label in labels)


def test_the_truth_lies_over_the_section(person: Person) -> None:
    judge(person, *SEATED)
    kinds = [type(overlay) for overlay in person.canvas.scene.overlays]
    assert kinds.count(Dimension) == 2
    assert kinds.count(Area) == 1
    assert kinds.count(Line) == 2
    legs = [o.label for o in person.canvas.scene.overlays if isinstance(o, Dimension)]
    assert legs == ["8.40 mm", "6.70 mm"]


def test_every_reason_stands_beside_its_place(person: Person) -> None:
    judge(person, *SEATED, face="Hollow")
    assert person.state.grade is not None
    labels = " ".join(o.label for o in person.canvas.scene.overlays if isinstance(o, Mark))
    for number, _ in enumerate(person.state.grade.reasons, start=1):
        assert f"{number} " in labels
    assert len(person.state.grade.reasons) >= 4


def test_a_call_that_doubt_covers_is_said_to_be_accepted(person: Person, tray: Tray) -> None:
    person.screen.go_to([coupon.id for coupon in tray.coupons].index("hf-21"))
    judge(person, face="Convex", say="Refer")
    said = texts(person)
    assert "You said: Refer. That is accepted." in said
    assert "Right call" not in said


def test_the_limit_of_an_open_fit_is_explained(person: Person, tray: Tray) -> None:
    person.screen.go_to([coupon.id for coupon in tray.coupons].index("hf-16"))
    judge(person, Key.Key_5, *SEATED[1:], face="Convex", say="Accept")
    said = texts(person)
    assert "6 mm called for + 2 mm root opening = 8 mm needed." in said
    assert "Use the 8 mm leaf." in said


def test_reasons_are_worded_for_every_code(person: Person, tray: Tray) -> None:
    """No reason that a bad call brings falls back on the core's raw keys."""
    for index, _ in enumerate(tray.coupons):
        person.screen.go_to(index)
        if person.state.coupon.task != "judge":
            continue
        judge(person, Key.Key_3, Key.Key_T, face="Flat", say="Refer")
        shown = texts(person)
        assert "leg_" not in shown
        assert "effective_" not in shown
        assert "seat-" not in shown


def test_readings_say_what_the_leaf_showed_and_can_be_looked_at(person: Person) -> None:
    judge(person, *SEATED)
    reading = person.screen.review.panel.readings[0]
    assert "Daylight, 1.3 mm" in reading.accessibleDescription()
    assert "Not right" in reading.accessibleDescription()
    person.key(Key.Key_Space)
    person.click(reading)
    assert person.canvas.scene.pose == person.state.readings[0].pose
    assert person.screen.review.player.now.reading == 0


def test_replay_shows_poses_as_recorded(person: Person) -> None:
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_F, Key.Key_Right, Key.Key_Escape)
    player = person.screen.review.player
    for entry in person.state.handling.entries:
        player.seek(float(entry.ms))
        frame = player.frame
        assert frame.ms == entry.ms
        if frame.leaf is None:
            assert person.canvas.scene.leaf is None
        else:
            assert person.canvas.scene.pose == frame.pose


def test_scrubber_and_keys_go_through_the_handling(person: Person) -> None:
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_F)
    player, panel = person.screen.review.player, person.screen.review.replay
    panel.scrubber.setValue(0)
    assert player.now.at == 0.0
    person.canvas.setFocus()
    person.key(Key.Key_Right)
    assert player.now.at > 0.0
    person.key(Key.Key_Left)
    assert player.now.at == 0.0
    person.key(Key.Key_Space)
    assert player.now.runs
    person.qtbot.waitUntil(lambda: not player.now.runs)
    assert player.now.at == player.log.duration


def test_truth_can_be_taken_off(person: Person) -> None:
    judge(person, *SEATED)
    person.canvas.setFocus()
    person.key(Key.Key_T)
    assert person.canvas.scene.overlays == ()


def test_page_down_goes_on_and_r_begins_again(person: Person) -> None:
    judge(person, *SEATED)
    person.canvas.setFocus()
    person.key(Key.Key_R)
    assert person.state.coupon.id == "hf-01"
    assert person.state.phase == "handling"
    judge(person, *SEATED)
    person.canvas.setFocus()
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief", "a second Enter skips no debrief"
    person.key(Key.Key_PageDown)
    assert person.state.coupon.id == "hf-02"
    assert person.state.readings == ()


def test_after_the_last_coupon_comes_the_first(person: Person, tray: Tray) -> None:
    person.screen.go_to(len(tray.coupons) - 1)
    assert not person.frame.bar.next.isEnabled()
    person.screen.go_to(person.screen.course.index + 1)
    assert person.screen.course.index == 0


def test_grade_is_the_commands_own(person: Person) -> None:
    judge(person, *SEATED)
    assert person.state.grade == grade(person.state.coupon, attempt_of(person.state))


def test_places_of_reasons_lie_at_what_they_speak_of(person: Person) -> None:
    judge(person, *SEATED)
    state = person.state
    assert state.grade is not None
    truth = truth_of(state.coupon.section)
    told = tell(state)
    places = {
        reason.code: place_of(reason, state.coupon, truth, told) for reason in state.grade.reasons
    }
    assert places["reading-other"] == pytest.approx((0.0, 8.0), abs=1e-3)
    assert places["leg-not-gauged"] == pytest.approx((8.4, 0.0))
    assert places["right-add-weld-metal"] == pytest.approx((0.0, 6.7))


def test_triangle_is_the_largest_with_equal_legs(tray: Tray) -> None:
    for coupon in tray.coupons:
        truth = truth_of(coupon.section)
        size = truth.measures.effective_size
        assert truth.triangle[1] == pytest.approx((size, 0.0))
        weld = coupon.section.body("weld").polygon.buffer(2e-3)
        assert weld.covers(Polygon(truth.triangle))
