"""What a person meets: knobs, handles, the leaf, keys, full screen, words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton

from tests.trainer.corners.conftest import Instructor
from trainer.corners.handles import Handle
from trainer.corners.state import KNOBS, Corners, Knob

Key = Qt.Key


def handle(who: Instructor, pane: int, knob: Knob) -> Handle:
    return who.screen.stage.panes[pane].handles[knob]


def test_four_corners_are_shown_and_said(instructor: Instructor) -> None:
    words = [pane.canvas.accessibleDescription() for pane in instructor.screen.stage.panes]
    assert words[0].startswith("Convex bead \u00b7 leg edge: Touch. Honest.")
    assert words[1].startswith("Convex bead \u00b7 throat edge: Held off 0.71 mm. Half the story.")
    assert words[2].startswith("Hollow bead \u00b7 leg edge: Touch. False comfort.")
    assert words[3].startswith("Hollow bead \u00b7 throat edge: Daylight 1.30 mm. Honest.")


@pytest.mark.parametrize("pane", range(4))
@pytest.mark.parametrize(("knob", "way"), [("leg_base", (40, 0)), ("leg_upright", (0, -40))])
def test_a_toe_is_dragged_in_any_corner(
    instructor: Instructor, pane: int, knob: Knob, way: tuple[int, int]
) -> None:
    instructor.screen.do("equal")
    grip = handle(instructor, pane, knob)
    scale = instructor.screen.stage.panes[pane].canvas.view.scale
    middle = grip.rect().center()
    instructor.drag(grip, middle, middle + QPoint(*way) / 2, middle + QPoint(*way))
    assert instructor.state.value(knob) == pytest.approx(8.0 + 40.0 / scale, abs=0.11)
    other: Knob = "leg_upright" if knob == "leg_base" else "leg_base"
    assert instructor.state.value(other) == 8.0
    for corner in instructor.corners:
        assert corner.section.bead.leg_base == instructor.state.leg_base


def test_a_crown_is_dragged_and_its_pair_follows(instructor: Instructor) -> None:
    grip = handle(instructor, 3, "hollow")
    middle = grip.rect().center()
    instructor.drag(grip, middle, middle + QPoint(6, -6))
    assert -1.3 < instructor.state.hollow < 0.0
    assert instructor.corners[2].section is instructor.corners[3].section
    assert instructor.state.crown == 1.0


def test_the_picture_stands_still_under_a_hand(instructor: Instructor) -> None:
    grip = handle(instructor, 0, "leg_base")
    before = instructor.screen.stage.panes[0].canvas.view
    middle = grip.rect().center()
    QTest.mousePress(grip, Qt.MouseButton.LeftButton, pos=middle)
    QTest.mouseMove(grip, middle + QPoint(150, 0))
    instructor.qtbot.wait(40)
    assert instructor.state.leg_base > 14.0
    assert instructor.screen.stage.panes[0].canvas.view == before
    QTest.mouseRelease(grip, Qt.MouseButton.LeftButton, pos=grip.rect().center())
    instructor.qtbot.waitUntil(
        lambda: instructor.screen.stage.panes[0].canvas.view.scale < before.scale, timeout=3000
    )


def test_the_leaf_is_dragged_larger(instructor: Instructor) -> None:
    pane = instructor.screen.stage.panes[0]
    x, y = pane.canvas.view.to_screen((16.0, 12.0))
    at = QPoint(round(x), round(y))
    instructor.drag(pane.canvas, at, at + QPoint(20, -15), at + QPoint(60, -45))
    assert instructor.state.mark in ("10 mm", "12 mm")
    assert {corner.leaf.mark for corner in instructor.corners} == {instructor.state.mark}


def test_a_leaf_dragged_smaller_stays_with_the_pointer(instructor: Instructor) -> None:
    """Smaller leaves come to rest elsewhere: that must not pull the size down by itself."""
    pane = instructor.screen.stage.panes[0]
    x, y = pane.canvas.view.to_screen((16.0, 12.0))
    at = QPoint(round(x), round(y))
    back = pane.canvas.view.to_screen((12.0, 9.0))
    end = QPoint(round(back[0]), round(back[1]))
    instructor.drag(pane.canvas, at, (at + end) / 2, end, end, end)
    assert instructor.state.mark == "6 mm"


def test_handles_are_targets_and_move_by_keys(instructor: Instructor) -> None:
    grip = handle(instructor, 0, "leg_base")
    assert grip.width() >= 24
    assert grip.height() >= 24
    instructor.click(grip)
    instructor.key(Key.Key_Right)
    assert instructor.state.leg_base == pytest.approx(8.1)
    instructor.key(Key.Key_Left)
    instructor.key(Key.Key_Left)
    assert instructor.state.leg_base == pytest.approx(7.9)
    instructor.screen.controller.flush()
    assert grip.accessibleName() == "Base leg, 7.9 mm"


@pytest.mark.parametrize("knob", KNOBS)
def test_single_clicks_turn_every_knob(instructor: Instructor, knob: Knob) -> None:
    row = instructor.screen.panel.knobs[knob]
    before = instructor.state.value(knob)
    instructor.click(row.more)
    assert instructor.state.value(knob) > before
    instructor.click(row.less)
    assert instructor.state.value(knob) == pytest.approx(before)
    for button in (row.less, row.more):
        assert min(button.width(), button.height()) >= 24


def test_an_exact_value_is_typed_in_either_unit(instructor: Instructor) -> None:
    field = instructor.screen.panel.knobs["leg_base"].field
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, "5/16 in")
    QTest.keyClick(field, Key.Key_Return)
    assert instructor.state.leg_base == 7.9375
    assert field.text() == "7.9 mm"
    hollow = instructor.screen.panel.knobs["hollow"].field
    hollow.setFocus()
    hollow.selectAll()
    QTest.keyClicks(hollow, "-0,65")
    QTest.keyClick(hollow, Key.Key_Return)
    assert instructor.state.hollow == -0.65


def test_what_is_no_value_is_put_back_with_a_word(instructor: Instructor) -> None:
    field = instructor.screen.panel.knobs["angle"].field
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, "steep")
    QTest.keyClick(field, Key.Key_Return)
    assert field.text() == "90\u00b0"
    assert "no angle" in instructor.screen.saying.text()
    field.selectAll()
    QTest.keyClicks(field, "nan")
    QTest.keyClick(field, Key.Key_Return)
    assert instructor.state.angle == 90.0


def test_what_can_t_be_is_held_with_a_quiet_word(instructor: Instructor) -> None:
    instructor.screen.controller.set_value("hollow", -3.9, "test")
    assert instructor.state.hollow == pytest.approx(-2.32, abs=0.02)
    assert "any deeper" in instructor.screen.saying.text()
    assert instructor.screen.saying.isVisible()


def test_many_changes_in_a_frame_are_pressed_once(instructor: Instructor) -> None:
    seen: list[Corners] = []
    instructor.screen.controller.changed.connect(
        lambda: seen.append(instructor.screen.controller.shown)
    )
    for step in range(1, 21):
        instructor.screen.controller.set_value("leg_base", 8.0 + 0.1 * step, "test")
    instructor.qtbot.waitUntil(lambda: len(seen) > 0)
    instructor.qtbot.wait(40)
    assert [state.leg_base for state in seen] == [10.0]


def test_one_gesture_is_one_undo(instructor: Instructor) -> None:
    for step in range(1, 6):
        instructor.screen.controller.set_value("leg_base", 8.0 + 0.1 * step, "a drag")
    instructor.screen.controller.end_gesture()
    instructor.screen.controller.set_value("leg_base", 9.0, "a drag")
    instructor.key(Key.Key_Z, control=True)
    assert instructor.state.leg_base == 8.5
    instructor.key(Key.Key_Z, control=True)
    assert instructor.state == Corners()


def test_keys_draw_and_turn_over_and_change_the_leaf(instructor: Instructor) -> None:
    for key in (Key.Key_1, Key.Key_2, Key.Key_3):
        instructor.key(key)
    assert instructor.state.drawn == {"legs", "triangle", "throats"}
    instructor.key(Key.Key_T)
    assert instructor.state.on == "base"
    instructor.key(Key.Key_BracketRight)
    assert instructor.state.mark == "10 mm"
    instructor.screen.controller.flush()
    labels = [overlay.label for overlay in instructor.screen.stage.panes[2].canvas.scene.overlays]
    assert "base leg 8.0 mm" in labels
    assert "size 6.2 mm" in labels
    # On equal hollow legs the three throats are one line.
    assert "actual = theoretical = effective 4.4 mm" in labels


def test_full_screen_hides_all_but_the_pictures(instructor: Instructor) -> None:
    small = instructor.screen.stage.panes[0].canvas.scene.theme.text_size("body")
    instructor.key(Key.Key_F11)
    instructor.qtbot.waitUntil(instructor.window.isFullScreen)
    instructor.qtbot.wait(50)
    assert not instructor.screen.panel.isVisible()
    assert not instructor.frame.bar.isVisible()
    assert instructor.screen.stage.panes[0].canvas.scene.theme.text_size("body") > small
    instructor.key(Key.Key_Escape)
    instructor.qtbot.waitUntil(lambda: not instructor.window.isFullScreen())
    assert instructor.screen.panel.isVisible()
    assert instructor.frame.bar.isVisible()


def test_units_and_theme_change_live(instructor: Instructor) -> None:
    frame, panes = instructor.frame, instructor.screen.stage.panes
    frame.change_settings(replace(frame.settings, unit="in", appearance="dark"))
    assert "0.051 in" in panes[3].canvas.accessibleDescription()
    assert panes[0].canvas.scene.theme.name == "dark"
    assert instructor.screen.panel.knobs["leg_base"].field.text().endswith(" in")


@pytest.mark.parametrize(
    "size", [(1024, 700), (1280, 720), (1920, 1080), (3840, 2160), (1024, 1400)]
)
def test_no_card_is_cut_at_any_size(instructor: Instructor, size: tuple[int, int]) -> None:
    instructor.window.resize(*size)
    instructor.qtbot.wait(30)
    assert instructor.window.width() == size[0]
    for wanted in (Corners(), Corners(angle=75.0), Corners(10.0, 6.0, equal=False)):
        instructor.screen.controller.show(wanted)
        instructor.screen.controller.flush()
        sizes = {pane.size().toTuple() for pane in instructor.screen.stage.panes}
        assert len(sizes) == 1
        for pane in instructor.screen.stage.panes:
            assert pane.rect().contains(pane.card_rect)
            assert not pane.card_rect.intersects(pane.heading_rect)


def test_what_is_new_is_announced_once_it_is_quiet(instructor: Instructor) -> None:
    said: list[str] = []
    instructor.screen.announced.connect(said.append)
    for step in range(1, 12):
        instructor.screen.controller.set_value("leg_base", 8.0 + 0.1 * step, "test")
        instructor.qtbot.wait(10)
    assert said == []
    instructor.qtbot.waitUntil(lambda: bool(said), timeout=3000)
    assert len(said) == 1
    assert "Convex bead \u00b7 leg edge: Held off" in said[0]
    assert "Convex bead \u00b7 throat edge" not in said[0], "its verdict is what it was"


def test_everything_has_a_name(instructor: Instructor) -> None:
    panel = instructor.screen.panel
    for row in panel.knobs.values():
        assert row.field.accessibleName() == row.slider.accessibleName() == row.label.text()
        assert row.slider.accessibleDescription()
    for button in panel.findChildren(QPushButton):
        assert button.text() or button.accessibleName()
        assert button.toolTip()
