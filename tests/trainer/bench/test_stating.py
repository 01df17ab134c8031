"""Stating by keys, in mid-air, and what is said when steel stops a step; a leaf that is lost."""

from __future__ import annotations

from collections import Counter

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QSlider

from geometry.reading import STATES
from tests.trainer.bench.conftest import Person
from trainer.bench import moves
from trainer.bench.keys import KEYS
from trainer.bench.stray import leaf_rect
from trainer.bench.words import disposition_word, face_word

Key = Qt.Key


def seat(person: Person) -> None:
    for key in (Key.Key_8, Key.Key_Space):
        person.key(key)
        person.settle()


@pytest.mark.parametrize(
    ("key", "face"), [(Key.Key_X, "convex"), (Key.Key_P, "flat"), (Key.Key_O, "concave")]
)
def test_a_key_names_the_face(person: Person, key: Key, face: str) -> None:
    person.key(key)
    assert person.state.face == face
    assert person.button(face_word(face)).isChecked()


@pytest.mark.parametrize(
    ("key", "call"),
    [
        (Key.Key_A, "accept"),
        (Key.Key_W, "add weld metal"),
        (Key.Key_B, "dress back"),
        (Key.Key_R, "refer"),
    ],
)
def test_a_key_makes_the_call(person: Person, key: Key, call: str) -> None:
    person.key(key)
    assert person.state.disposition == call
    assert person.button(disposition_word(call)).isChecked()


def test_sureness_by_keys(person: Person) -> None:
    person.key(Key.Key_S)
    assert person.state.sure == pytest.approx(0.6)
    for _ in range(3):
        person.key(Key.Key_S, shift=True)
    assert person.state.sure == pytest.approx(0.3)
    for _ in range(9):
        person.key(Key.Key_S)
    assert person.state.sure == 1.0


def test_every_button_of_the_call_shows_its_key_and_does_what_the_key_does(person: Person) -> None:
    call = person.screen.call_panel
    person.key(Key.Key_8)
    for group in (call.faces, call.states, call.dispositions):
        for button in group.buttons.values():
            key = button.accessibleDescription().rpartition(", ")[2]
            assert len(key) == 1
            assert button.toolTip().endswith(key)
            person.key(Key(ord(key)))
            assert button.isChecked()


def test_each_key_is_told_once_for_each_phase() -> None:
    """One key, one thing: what a key means after a call is told as such."""
    told = Counter(
        (key, group.title == "After a call")
        for group in KEYS.groups()
        for keys, _ in group.rows
        for key in keys.split("  ")
        if key not in ("\u2190 \u2191 \u2192 \u2193", "")
    )
    assert [key for key, times in told.items() if times > 1] == []


def test_what_is_said_in_mid_air_replaces_nothing(person: Person) -> None:
    seat(person)
    person.key(Key.Key_D)
    good = person.state.readings[0]
    person.key(Key.Key_8)  # back to where it is held ready
    person.key(Key.Key_T)
    assert person.state.readings[0] == good
    assert [r.state for r in person.state.readings] == ["daylight", "touch"]
    said = person.screen.saying.text()
    assert "touches nothing" in said
    assert "earlier reading" in said
    rows = person.screen.job_card.rows
    assert ["mid-air" in row.remove.accessibleName() for row in rows] == [False, True]
    person.click(rows[1].remove)
    assert person.state.readings == (good,)


def test_a_word_at_the_seat_still_replaces_the_one_before(person: Person) -> None:
    person.key(Key.Key_8)
    person.key(Key.Key_N)
    seat(person)
    person.key(Key.Key_T)
    person.key(Key.Key_D)
    assert [r.state for r in person.state.readings] == ["daylight"]


def test_a_step_that_steel_stops_short_says_by_what(person: Person) -> None:
    """1 mm is asked for, less is left: the piece is named, and no word of what the leaf shows."""
    seat(person)
    person.key(Key.Key_Up)
    person.key(Key.Key_Up)
    person.key(Key.Key_Down, shift=True)
    said = person.screen.saying.text()
    assert said.startswith("Stopped short by steel: ")
    assert "on base" in said
    person.key(Key.Key_Down)
    person.key(Key.Key_Down)
    assert person.screen.saying.text().startswith("Steel stops the leaf that way: ")
    assert not [state for state in STATES if state in person.screen.saying.text()]


def test_a_step_all_its_way_says_nothing(person: Person) -> None:
    person.key(Key.Key_8)
    person.key(Key.Key_Right)
    person.key(Key.Key_Comma, shift=True)
    assert not person.screen.saying.isVisible()


@pytest.mark.parametrize(
    ("by", "side"),
    [((300.0, 0.0), "right"), ((-300.0, 80.0), "left"), ((0.0, 300.0), "up"), ((90, -400), "down")],
)
def test_a_leaf_gone_out_of_the_picture_is_told_and_comes_back(
    person: Person, by: tuple[float, float], side: str
) -> None:
    person.key(Key.Key_8)
    ready = person.state.pose
    assert ready is not None
    cue = person.screen.stray
    assert not cue.isVisible()
    scale = person.canvas.view.scale
    person.canvas.pan(by[0] * scale, -by[1] * scale)
    assert cue.isVisible()
    assert cue.side == side
    assert person.canvas.rect().contains(cue.geometry())
    person.canvas.fit()
    assert not cue.isVisible()


def test_the_sign_and_the_rack_bring_it_back(person: Person) -> None:
    person.key(Key.Key_8)
    ready = person.state.pose
    assert ready is not None
    for bring in ("sign", "rack"):
        person.screen.controller.do(lambda state, now: moves.place(state, (400.0, 300.0), now))
        assert person.screen.stray.isVisible()
        if bring == "sign":
            person.click(person.screen.stray)
        else:
            buttons = person.screen.rack_panel.rack.buttons
            person.click(next(b for b in buttons if b.leaf.mark == "8 mm"))
        assert person.state.pose == ready
        assert not person.screen.stray.isVisible()
        assert person.canvas.hasFocus()
        leaf = person.state.leaf
        assert leaf is not None
        assert leaf_rect(leaf, ready, person.canvas.view).intersects(person.canvas.rect())


def test_a_ring_stands_about_whatever_has_the_focus(person: Person) -> None:
    """Through one whole round of Tab: each control in turn is ringed, and only that one."""
    person.key(Key.Key_8)
    person.canvas.setFocus()
    seen = set()
    for _ in range(60):
        person.key(Key.Key_Tab)
        focus = person.window.focusWidget()
        if focus is person.canvas:
            break
        ring = person.screen.focus_ring.ring
        if isinstance(focus, QComboBox):
            continue
        assert ring is not None, focus
        assert ring.isVisible()
        about = focus.rect().translated(focus.mapTo(person.window, focus.rect().topLeft()))
        lies = ring.rect().translated(ring.mapTo(person.window, ring.rect().topLeft()))
        assert lies.contains(about)
        assert lies.width() <= about.width() + 12
        seen.add(focus)
    assert len(seen) > 25
    assert any(isinstance(widget, QSlider) for widget in seen)


def test_all_keys_of_the_call_are_told() -> None:
    told = [key for row in KEYS.rows for key in row.shown.split("  ")]
    assert {"X", "P", "O", "A", "W", "B", "R", "S", "U"} <= set(told)
