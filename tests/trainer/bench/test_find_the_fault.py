"""A leaf that somebody else has placed: looked at, not moved; what is wrong is said and told."""

from __future__ import annotations

import json

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from exercises.placed import PLACEMENT_FAULTS
from exercises.tray import Tray, load_tray
from tests.trainer.bench.conftest import Person
from trainer.assets import asset
from trainer.bench.placed_words import fault_word

Key = Qt.Key


@pytest.fixture
def tray() -> Tray:
    return load_tray(asset("trays", "seal-slipway.tray.json"))


def told(person: Person) -> str:
    labels = person.screen.review.panel.findChildren(QLabel)
    return "\n".join(label.text() for label in labels)


def go_to(person: Person, name: str) -> None:
    ids = [coupon.id for coupon in person.screen.course.tray.coupons]
    person.screen.go_to(ids.index(name))


def test_the_leaf_lies_there_and_the_job_card_says_what_is_claimed(person: Person) -> None:
    placed = person.state.coupon.placed
    assert placed is not None
    assert person.state.leaf is not None
    assert (person.state.leaf.mark, person.state.pose) == (placed.leaf, placed.pose)
    assert person.canvas.scene.leaf is person.state.leaf
    claim = person.screen.job_card.claim
    assert claim.held.text() == "Goes by: 8 mm, leg edge, upright leg"
    assert claim.gauged.text() == "Legs gauged: upright. They say they are done."
    call = person.screen.call_panel
    assert call.faults.isVisible()
    hidden = (call.faces, call.states, call.dispositions, call.sizes)
    assert not any(part.isVisible() for part in hidden)


@pytest.mark.parametrize(
    "key", [Key.Key_Space, Key.Key_Left, Key.Key_Comma, Key.Key_F, Key.Key_E, Key.Key_Escape,
            Key.Key_C, Key.Key_BracketRight],
)  # fmt: skip
def test_no_key_moves_it_and_the_bench_says_why(person: Person, key: Key) -> None:
    before = person.state
    person.key(key)
    assert person.state is before
    assert "Somebody else placed this leaf" in person.screen.saying.text()


def test_no_pointer_moves_it_either(person: Person) -> None:
    leaf, pose = person.state.leaf, person.state.pose
    assert leaf is not None
    assert pose is not None
    handle = pose.to_section(leaf.handle)
    assert not person.canvas.is_on_leaf(person.canvas.view.to_screen(handle))
    before = person.state
    person.drag(handle, (handle[0] + 8.0, handle[1] + 4.0), (handle[0] + 16.0, handle[1]))
    person.click_at((20.0, 20.0))
    person.click(person.screen.rack_panel.rack.buttons[2])
    assert person.state is before
    assert not any(b.isEnabled() for b in person.screen.rack_panel.steps.buttons.values())


def test_loupe_and_zoom_serve_to_look(person: Person) -> None:
    assert person.canvas.lens is not None
    scale = person.canvas.view.scale
    person.key(Key.Key_Plus)
    assert person.canvas.view.scale > scale
    person.key(Key.Key_L)
    assert person.canvas.lens is None


def test_each_digit_names_the_answer_that_its_button_shows(person: Person) -> None:
    buttons = person.screen.call_panel.faults.row.buttons
    for place, fault in enumerate(PLACEMENT_FAULTS, start=1):
        person.key(Key(ord(str(place))))
        assert person.state.fault == fault
        assert buttons[fault].isChecked()
        assert buttons[fault].accessibleName() == fault_word(fault)
        assert buttons[fault].accessibleDescription().endswith(f", {place}")
    person.key(Key.Key_9)
    assert person.state.fault == PLACEMENT_FAULTS[-1]
    person.key(Key.Key_Z)
    assert person.state.fault == PLACEMENT_FAULTS[-2]


def test_nothing_else_can_be_stated(person: Person) -> None:
    for key in (Key.Key_X, Key.Key_D, Key.Key_A, Key.Key_M):
        person.key(key)
    state = person.state
    stated = (state.face, state.readings, state.disposition, state.size)
    assert stated == (None, (), None, None)
    person.key(Key.Key_Return)
    assert state.phase == "handling"
    assert person.screen.record_bar.missing(state) == "Still to state: what is wrong"


def test_arrows_go_through_the_answers(person: Person) -> None:
    buttons = person.screen.call_panel.faults.row.buttons
    buttons["wrong edge"].setFocus()
    QTest.keyClick(buttons["wrong edge"], Key.Key_Down)
    assert buttons["tilted"].hasFocus()
    QTest.keyClick(buttons["tilted"], Key.Key_Space)
    assert person.state.fault == "tilted"


def test_a_right_answer_and_the_other_that_holds_too(person: Person) -> None:
    go_to(person, "sl-05")
    person.key(Key.Key_4)
    person.key(Key.Key_Return)
    assert person.state.grade is not None
    assert person.state.grade.score == 1.0
    said = told(person)
    assert "You said: On spatter. That is right; so is: tilted." in said
    assert "On spatter: a drop keeps it off the steel." in said
    assert "Tilted: 3.6\u00b0 off" in said
    assert "How this weld should be gauged" in said
    assert "8 mm, base leg: Daylight" in said
    assert not person.screen.review.replay.play.isVisible()
    spoken = person.canvas.accessibleDescription()
    assert "On spatter" in spoken


def test_the_leaf_still_lies_there_in_the_debrief_with_its_faults_marked(person: Person) -> None:
    go_to(person, "sl-08")
    person.key(Key.Key_7)
    person.key(Key.Key_Return)
    scene = person.canvas.scene
    assert scene.leaf is person.state.leaf
    marked = [getattr(each, "label", "") for each in scene.overlays]
    assert any("wrong edge" in text for text in marked)
    assert any("one leg only" in text for text in marked)
    assert "Right would be: wrong edge, one leg only." in told(person)


def test_nothing_wrong_is_told_so(person: Person) -> None:
    go_to(person, "sl-07")
    person.key(Key.Key_3)
    person.key(Key.Key_Return)
    said = told(person)
    assert "Nothing: the right leaf by the right edge, home, nothing owed." in said
    assert "Nothing is wrong with how the leaf is held; you said: tilted." in said


def test_a_hint_costs_and_is_kept_with_the_call(person: Person) -> None:
    person.key(Key.Key_U)
    person.key(Key.Key_5)
    person.key(Key.Key_Return)
    assert person.state.grade is not None
    assert person.state.grade.score == pytest.approx(0.95)
    assert "Bench notes turned up: 1. That takes 5 off the score." in told(person)
    kept = json.loads(person.records.path.read_text(encoding="utf-8"))
    assert kept["attempt"]["hints"] == 1
    assert kept["attempt"]["fault"] == "one leg only"
    assert kept["attempt"]["readings"] is None
    assert kept["grade"]["marks"]["fault"] == 1.0
    assert kept["coupon"]["placed"]["leaf"] == "8 mm"


def test_again_lays_it_out_as_it_lay(person: Person) -> None:
    person.key(Key.Key_5)
    person.key(Key.Key_Return)
    person.key(Key.Key_R)
    placed = person.state.coupon.placed
    assert placed is not None
    assert person.state.pose == placed.pose
    assert person.state.fault is None


def test_before_a_call_nothing_shown_or_spoken_tells_what_is_wrong(person: Person) -> None:
    """Beside the answers themselves, which are the same for every leaf."""
    for coupon in person.screen.course.tray.coupons:
        go_to(person, coupon.id)
        assert person.canvas.scene.overlays == ()
        parts = " ".join(part.says for part in person.canvas.scene.parts).lower()
        for state in ("held off", "daylight", "not seated", "tilted", "wrong"):
            assert state not in parts
        answers = person.screen.call_panel.faults.row.buttons.values()
        assert not any(button.isChecked() for button in answers)
