"""The bench as somebody uses it: real widgets, mouse and keys only."""

from __future__ import annotations

import json

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QWidget

from geometry.reading import STATES
from tests.trainer.bench.conftest import Person
from trainer.bench.rack import LeafButton

Key = Qt.Key


def leaf(person: Person, mark: str) -> LeafButton:
    return next(b for b in person.screen.rack_panel.rack.buttons if b.leaf.mark == mark)


def seat(person: Person, mark: str = "8 mm") -> None:
    person.click(leaf(person, mark))
    person.key(Key.Key_Space)
    person.settle()


def test_first_coupon_lies_there(person: Person) -> None:
    assert person.state.coupon.id == "hf-01"
    assert person.canvas.scene.section is person.state.section
    assert person.state.leaf is None


def test_both_legs_by_keys_alone(person: Person) -> None:
    """Pick, press home, state; turn over, press home, state; face, disposition, record."""
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_F, Key.Key_Space, Key.Key_H):
        person.key(key)
        person.settle()
    assert [(r.leaf, r.on, r.state) for r in person.state.readings] == [
        ("8 mm", "upright", "daylight"),
        ("8 mm", "base", "held off"),
    ]
    person.click(person.button("Convex"))
    person.click(person.button("Add weld metal"))
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"
    assert person.state.grade is not None
    assert person.state.grade.score == pytest.approx(1.0)


def test_tab_and_arrows_reach_every_statement(person: Person) -> None:
    """No mouse at all: focus goes from the picture on, arrows within a group."""
    wanted = {"Convex", "Accept", "Put it on record"}
    seen = set()
    person.key(Key.Key_8)
    person.click(person.button("Convex"))
    person.click(person.button("Accept"))
    person.canvas.setFocus()
    for _ in range(60):
        person.key(Key.Key_Tab)
        focus = person.window.focusWidget()
        if isinstance(focus, QAbstractButton):
            seen.add(focus.accessibleName())
    assert wanted <= seen
    person.button("Convex").setFocus()
    person.key(Key.Key_Right)
    person.key(Key.Key_Space)
    assert person.state.face == "flat"


def test_rack_is_gone_along_with_arrows(person: Person) -> None:
    leaf(person, "3 mm").setFocus()
    person.key(Key.Key_Right)
    person.key(Key.Key_Right)
    person.key(Key.Key_Space)
    assert person.state.leaf is not None
    assert person.state.leaf.mark == "5 mm"
    assert person.canvas.hasFocus()


def test_drag_in_the_picture_moves_the_leaf(person: Person) -> None:
    person.click(leaf(person, "8 mm"))
    before = person.state.pose
    assert before is not None
    start = before.to_section((14.0, 10.0))
    person.drag(start, (start[0] + 1.0, start[1] + 1.0), (start[0] + 3.0, start[1] + 2.0))
    after = person.state.pose
    assert after is not None
    assert after.x - before.x == pytest.approx(3.0, abs=0.1)
    assert after.y - before.y == pytest.approx(2.0, abs=0.1)
    assert person.state.hand is None


def test_drag_out_of_the_rack_into_the_picture(person: Person) -> None:
    button = leaf(person, "10 mm")
    target = person.canvas.mapTo(person.window, person.spot((30.0, 30.0)))
    inside = button.mapFrom(person.window, target)
    middle = button.rect().center()
    person.press(button, middle)
    for share in (0.3, 0.6, 0.8, 1.0):
        step = QPoint(
            round(middle.x() + (inside.x() - middle.x()) * share),
            round(middle.y() + (inside.y() - middle.y()) * share),
        )
        QTest.mouseMove(button, step)
    assert person.state.hand is not None
    person.let_go(button, inside)
    assert person.state.hand is None
    assert person.state.leaf is not None
    assert person.state.leaf.mark == "10 mm"


def test_click_in_the_picture_places_the_leaf(person: Person) -> None:
    person.click(leaf(person, "5 mm"))
    person.click_at((25.0, 20.0))
    state = person.state
    assert state.leaf is not None
    assert state.pose is not None
    near = 1.0 / person.canvas.view.scale
    assert state.pose.to_section(state.leaf.handle) == pytest.approx((25.0, 20.0), abs=near)


@pytest.mark.parametrize(
    ("name", "event"),
    [
        ("Press home", "press home"), ("Turn over", "turn over 8 mm leg"),
        ("Swap ends", "swap ends 8 mm throat"), ("Put back", "put back"), ("Undo", "undo"),
        ("Clean toes", None), ("Move left", "nudge"), ("Move right", "nudge"),
        ("Move up", "nudge"), ("Move down", "nudge"), ("Turn left", "turn"),
        ("Turn right", "turn"),
    ],
)  # fmt: skip
def test_every_step_has_a_button(person: Person, name: str, event: str | None) -> None:
    person.click(leaf(person, "8 mm"))
    events = len(person.state.handling.entries)
    person.click(person.button(name))
    person.settle()
    added = [entry.event for entry in person.state.handling.entries[events:]]
    # The first coupon's toes are clean already: cleaning them does nothing.
    assert added == ([event] if event else [])


def test_arrow_keys_move_a_tenth_and_with_shift_a_whole_millimetre(person: Person) -> None:
    person.key(Key.Key_8)
    before = person.state.pose
    assert before is not None
    person.key(Key.Key_Right)
    person.key(Key.Key_Up, shift=True)
    after = person.state.pose
    assert after is not None
    assert after.x - before.x == pytest.approx(0.1)
    assert after.y - before.y == pytest.approx(1.0)
    person.key(Key.Key_Comma)
    person.key(Key.Key_Greater, shift=True)
    turned = person.state.pose
    assert turned is not None
    assert turned.angle == pytest.approx(0.1 - 1.0)


def test_nothing_before_the_call_depends_on_the_reading(
    person: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever `read` would say, nothing asks it, and the picture carries no overlay."""

    def refuse(*_: object) -> None:
        raise AssertionError("the bench read the leaf before the call")

    monkeypatch.setattr("geometry.reading.read", refuse)
    monkeypatch.setattr("exercises.stances.read", refuse)
    words: list[str] = []
    person.screen.announced.connect(words.append)
    seat(person)
    person.key(Key.Key_F)
    person.key(Key.Key_Space)
    person.settle()
    person.key(Key.Key_T)
    assert person.canvas.scene.overlays == ()
    assert words
    said = " ".join(words).lower()
    assert not [state for state in STATES if state in said]
    assert "long edge on upright" in said


def test_a_wrong_and_a_right_statement_look_the_same(person: Person) -> None:
    seat(person)
    scenes = []
    for key in (Key.Key_T, Key.Key_D):
        person.key(key)
        scenes.append(person.canvas.scene)
        chosen = [b.isChecked() for b in person.screen.call_panel.states.buttons.values()]
        assert chosen.count(True) == 1
    assert scenes[0] == scenes[1]


def test_a_reading_can_be_taken_back(person: Person) -> None:
    seat(person)
    person.key(Key.Key_T)
    row = person.screen.job_card.rows[0]
    person.click(row.remove)
    assert person.state.readings == ()


def test_enter_says_what_is_missing_and_records_nothing(person: Person) -> None:
    person.key(Key.Key_Return)
    assert person.state.phase == "handling"
    assert "face" in person.screen.record_bar.missing(person.state)
    assert not person.records.path.exists()


def test_a_call_is_put_on_record(person: Person) -> None:
    seat(person)
    person.key(Key.Key_T)
    person.click(person.button("Convex"))
    person.click(person.button("Accept"))
    person.click(person.button("Put it on record"))
    line = json.loads(person.records.path.read_text(encoding="utf-8"))
    assert line["digest"] == person.state.coupon.digest
    assert line["grade"]["critical"] is True
    assert line["rules"] == {"id": "as-drawn", "version": 1}
    assert line["handling"][0][5] == "pick 8 mm leg"
    assert line["zoom"]["picture"] == pytest.approx(person.canvas.view.device_scale)
    # A gap of the eye limit spans 3 to 6 device pixels in the loupe (contract, section 7).
    assert 3.0 - 1e-9 <= line["zoom"]["loupe"] * 0.1 <= 6.0 + 1e-9


def test_a_full_disk_costs_no_call(person: Person) -> None:
    person.records.path.mkdir()
    person.click(person.button("Convex"))
    person.click(person.button("Add weld metal"))
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"
    assert len(person.frame.dialogs) == 1
    person.frame.dialogs[0].reject()


def test_units_change_what_is_shown_and_nothing_else(person: Person) -> None:
    seat(person)
    before = person.state
    person.click(person.button("Inches"))
    assert person.canvas.scene.unit == "in"
    assert person.state is before


def test_another_set_hangs_on_the_rack(person: Person) -> None:
    person.click(person.button("Inch leaves, marked by leg"))
    assert [b.leaf.mark for b in person.screen.rack_panel.rack.buttons][:2] == ["1/8 in", "3/16 in"]
    person.key(Key.Key_BracketRight)
    assert person.state.leaf is not None
    assert person.state.leaf.mark == "1/8 in"


def test_zoom_and_loupe_by_keys(person: Person) -> None:
    person.key(Key.Key_8)
    scale = person.canvas.view.scale
    person.key(Key.Key_Plus)
    assert person.canvas.view.scale > scale
    person.key(Key.Key_0)
    assert person.canvas.view.scale == pytest.approx(scale)
    assert person.canvas.scene.loupe is not None
    person.key(Key.Key_L)
    assert person.canvas.scene.loupe is None


def test_bench_notes_are_turned_up_one_by_one(person: Person) -> None:
    hints = [hint.in_language("en") for hint in person.state.coupon.hints]
    notes = person.screen.call_panel.notes
    assert notes.words == ""
    assert len(notes.slips) == len(hints)
    person.click(notes.slips[0])
    assert person.state.hints == 1
    assert notes.words == hints[0]
    person.key(Key.Key_U)
    assert notes.words == hints[1]
    person.click(notes.slips[0])
    assert notes.words == hints[0]
    assert person.state.hints == 2, "read again, nothing turned up"


def test_every_control_has_a_name_and_room_for_a_finger(person: Person) -> None:
    """At least 24 px either way (WCAG 2.2, 2.5.8), and a name for who can't see it."""
    person.key(Key.Key_8)
    person.key(Key.Key_Space)
    person.settle()
    person.key(Key.Key_T)
    small = []
    for widget in person.window.findChildren(QWidget):
        focusable = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        if not widget.isVisible() or not (focusable or isinstance(widget, QAbstractButton)):
            continue
        if not widget.accessibleName() and not getattr(widget, "text", str)():
            small.append(f"{widget} has no name")
        if min(widget.width(), widget.height()) < 24:
            small.append(f"{widget.accessibleName()} is {widget.width()} x {widget.height()}")
    assert small == []


def record(person: Person) -> None:
    """Seat a leaf, state, call."""
    seat(person)
    person.key(Key.Key_N)
    person.click(person.button("Convex"))
    person.click(person.button("Add weld metal"))
    person.click(person.button("Put it on record"))


@pytest.mark.parametrize("size", [(960, 540), (1280, 720), (1920, 1080)])
def test_nothing_is_cut_at_any_size(person: Person, size: tuple[int, int]) -> None:
    person.window.resize(*size)
    person.qtbot.wait(20)
    assert (person.window.width(), person.window.height()) == size
    for widget in person.screen.rack_panel.findChildren(QAbstractButton):
        if widget.isVisible():
            room = person.screen.rack_panel.rect()
            place = widget.rect().translated(widget.mapTo(person.screen.rack_panel, QPoint(0, 0)))
            assert room.contains(place), widget.accessibleName()
            assert widget.width() >= widget.minimumSizeHint().width()
    side = person.screen.bench.column
    for phase in ("handling", "debrief"):
        assert person.state.phase == phase
        assert side.horizontalScrollBar().maximum() == 0
        if phase == "handling":
            record(person)
            person.qtbot.wait(20)


@pytest.mark.parametrize("before", ["Put it on record", "Touch", "Refer"])
def test_keys_mean_the_debrief_whatever_had_the_focus(person: Person, before: str) -> None:
    """A call, then Space plays, R begins again, Enter goes on.

    Enter presses the button that has the focus; one that is pressed already lets it through.
    """
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D):
        person.key(key)
        person.settle()
    person.click(person.button("Convex"))
    person.click(person.button("Add weld metal"))
    person.button(before).setFocus()
    if before != "Put it on record":
        person.key(Key.Key_Return)
        assert person.state.phase == "handling"
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"
    assert person.canvas.hasFocus()
    person.key(Key.Key_Space)
    assert person.screen.review.player.now.runs
    person.key(Key.Key_R)
    assert person.state.phase == "handling"
    assert person.canvas.hasFocus()


def test_digits_take_the_leaf_with_that_mark(person: Person) -> None:
    person.key(Key.Key_8)
    assert person.state.leaf is not None
    assert person.state.leaf.mark == "8 mm"
    person.click(person.screen.rack_panel.sets["throat"])
    person.key(Key.Key_4)
    assert person.state.leaf.mark == "a 4 mm"
    person.click(person.screen.rack_panel.sets["inch"])
    person.key(Key.Key_1)
    assert person.state.leaf.mark == "1/8 in"
    person.click(person.screen.rack_panel.sets["metric"])
    person.key(Key.Key_9)
    assert person.state.leaf.mark == "1/8 in"
    assert "marked 9" in person.screen.saying.text()


def test_a_coupon_lies_as_it_was_left_and_is_marked_when_judged(person: Person) -> None:
    seat(person)
    person.key(Key.Key_D)
    left = person.state
    person.click(person.screen.rack_panel.sets["inch"])
    person.screen.go_to(1)
    assert person.state.leaf is None
    assert person.state.rack == "inch", "the learner's own choice"
    person.screen.go_to(0)
    assert (person.state.leaf, person.state.pose) == (left.leaf, left.pose)
    assert person.state.readings == left.readings
    person.click(person.button("Convex"))
    person.click(person.button("Accept"))
    person.key(Key.Key_Return)
    person.key(Key.Key_Return)
    chooser = person.frame.bar.chooser
    assert "judged" in chooser.itemText(0)
    assert "judged" not in chooser.itemText(1)


def test_nothing_moves_under_the_pointer(person: Person) -> None:
    """Readings and hints have their room before they come."""
    places = []
    call = person.screen.call_panel
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_F, Key.Key_Space, Key.Key_H):
        person.key(key)
        person.settle()
        person.qtbot.wait(20)
        places.append(call.states.mapTo(person.window, QPoint(0, 0)))
    person.click(call.notes.slips[0])
    person.qtbot.wait(20)
    places.append(call.states.mapTo(person.window, QPoint(0, 0)))
    assert len({(place.x(), place.y()) for place in places}) == 1
    assert person.screen.bench.column.verticalScrollBar().maximum() == 0


def test_groups_begin_at_their_first_on_another_coupon(person: Person) -> None:
    person.click(person.button("Hollow"))
    person.screen.go_to(1)
    buttons = person.screen.call_panel.faces.buttons
    assert buttons["convex"].focusPolicy() == Qt.FocusPolicy.TabFocus
    assert buttons["concave"].focusPolicy() == Qt.FocusPolicy.NoFocus


def test_what_does_nothing_says_why(person: Person) -> None:
    seat(person)
    person.key(Key.Key_C)
    person.key(Key.Key_C)
    assert "Nothing to clean" in person.screen.saying.text()


def test_zoom_keeps_the_tip_where_it_is(person: Person) -> None:
    seat(person)
    state = person.state
    assert state.leaf is not None
    assert state.pose is not None
    tip = state.pose.to_section(state.leaf.point)
    before = person.spot(tip)
    person.key(Key.Key_Minus)
    assert (person.spot(tip) - before).manhattanLength() <= 2


def test_look_goes_to_the_moment_of_the_reading(person: Person) -> None:
    seat(person)
    person.key(Key.Key_D)
    person.qtbot.wait(30)
    person.key(Key.Key_Escape)
    person.click(person.button("Convex"))
    person.click(person.button("Accept"))
    person.key(Key.Key_Return)
    player = person.screen.review.player
    person.click(person.screen.review.panel.readings[0])
    stated = next(entry.ms for entry in player.log.entries if entry.event == "state daylight")
    assert player.now.at == stated
    scrubber = person.screen.review.replay.scrubber
    scrubber.setFocus()
    person.key(Key.Key_Right)
    assert player.frame.event == "put back"


def test_the_symbol_is_drawn_by_the_standard_that_is_chosen(person: Person) -> None:
    shown = person.screen.job_card.symbol
    assert shown.symbol is not None
    assert shown.symbol.convention == "iso-a"
    person.screen.symbol_menu.choices["a2.4"].trigger()
    assert shown.symbol.convention == "a2.4"
    assert "AWS A2.4" in shown.accessibleName()
    assert person.frame.settings.symbols == "a2.4"
