"""The guide at the real bench: by mouse, by keys, by single clicks, and out of the way."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainterPath
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QWidget

from geometry.curves import Vec
from tests.trainer.bench.conftest import Person
from trainer.bench.rack import LeafButton
from trainer.bench.state import BenchState
from trainer.guide.guiding import GUIDED, Guiding
from trainer.guide.steps import STEPS, shown_step

Key = Qt.Key

PUSH = ((2.0, 0.0), (4.0, 0.0), (6.0, 0.0), (8.0, 0.0), (8.0, 2.0), (8.0, 4.0))
"""mm to the left and down: first against the upright, then along it."""


def step(person: Person, guiding: Guiding) -> str | None:
    return shown_step(guiding.guide, person.state)


def leaf(person: Person, mark: str) -> LeafButton:
    return next(b for b in person.screen.rack_panel.rack.buttons if b.leaf.mark == mark)


def box_of(person: Person, widget: QWidget) -> QRect:
    return QRect(widget.mapTo(person.screen.bench, QPoint(0, 0)), widget.size())


def line_crosses_nothing(person: Person, guiding: Guiding) -> None:
    """The line from the card, where there is one, runs over nothing else that can be pressed."""
    path, target = guiding.pointing.path, guiding._target
    count = path.elementCount()
    if guiding.pointing.isHidden() or not path.elementAt(count - 2).isMoveTo():
        return
    start, end = path.elementAt(count - 2), path.elementAt(count - 1)
    line = QPainterPath(QPointF(start.x, start.y))
    line.lineTo(end.x, end.y)
    at = box_of(person, person.canvas).topLeft()
    for label in person.canvas.labels:
        assert not line.intersects(label.translated(at))
    for button in person.screen.bench.findChildren(QAbstractButton):
        over = button is target or (target is not None and target.isAncestorOf(button))
        if button.isVisible() and not over and not guiding.card.isAncestorOf(button):
            assert not line.intersects(QRectF(box_of(person, button))), button.accessibleName()


def hides_nothing(person: Person, guiding: Guiding) -> None:
    """The card hides neither tip, loupe, what it speaks of, nor anything to be pressed."""
    line_crosses_nothing(person, guiding)
    card = guiding.card.geometry()
    bench, canvas = person.screen.bench, person.canvas
    assert bench.rect().contains(card)
    assert not card.intersects(box_of(person, person.screen.call_panel))
    assert not card.intersects(box_of(person, bench.foot))
    at = box_of(person, canvas).topLeft()
    state, pose = person.state, person.screen.controller.shown_pose
    if state.leaf is not None and pose is not None and state.phase == "handling":
        x, y = canvas.view.to_screen(pose.to_section(state.leaf.point))
        assert not card.adjusted(-20, -20, 20, 20).contains(at + QPoint(round(x), round(y)))
    if canvas.lens is not None and state.phase == "handling":
        assert not card.intersects(canvas.lens.rect.toRect().translated(at))


def test_by_keys_alone(person: Person, guiding: Guiding) -> None:
    """The offer is reached by Tab from the picture; every step by the bench's own keys."""
    person.key(Key.Key_Tab)
    assert guiding.card.start.hasFocus()
    person.key(Key.Key_Space)
    assert step(person, guiding) == "face"
    assert person.canvas.hasFocus()
    while not person.screen.call_panel.faces.buttons["convex"].hasFocus():
        person.key(Key.Key_Tab)
    person.key(Key.Key_Space)
    assert step(person, guiding) == "pick"
    for key, after in (
        (Key.Key_8, "turn over"),
        (Key.Key_F, "press home"),
        (Key.Key_Space, "look"),
        (Key.Key_Plus, "state"),
        (Key.Key_T, "other leg"),
        (Key.Key_F, "other leg"),
        (Key.Key_Space, "other leg"),
        (Key.Key_D, "disposition"),
    ):
        if not person.canvas.hasFocus():
            person.canvas.setFocus()
        person.key(key)
        person.settle()
        assert step(person, guiding) == after
        hides_nothing(person, guiding)
    while not person.screen.call_panel.dispositions.buttons["accept"].hasFocus():
        person.key(Key.Key_Tab)
    person.key(Key.Key_Space)
    assert step(person, guiding) == "record"
    person.canvas.setFocus()
    person.key(Key.Key_Return)
    assert step(person, guiding) == "debrief"
    person.key(Key.Key_Space)
    person.qtbot.waitUntil(lambda: guiding.guide.phase == "off")
    assert person.frame.settings.guide_done
    assert guiding.card.isHidden()


def test_by_single_clicks(person: Person, guiding: Guiding) -> None:
    call = person.screen.call_panel
    person.click(guiding.card.start)
    for name, after in (
        ("Convex", "pick"),
        ("Leaf 8 mm", "turn over"),
        ("Turn over", "press home"),
        ("Press home", "look"),
        ("Zoom in", "state"),
        ("Touch", "other leg"),
        ("Turn over", "other leg"),
        ("Press home", "other leg"),
        ("Daylight", "disposition"),
        ("Add weld metal", "record"),
        ("Put it on record", "debrief"),
    ):
        hides_nothing(person, guiding)
        target = leaf(person, "8 mm") if name == "Leaf 8 mm" else person.button(name)
        person.screen.bench.column.ensureWidgetVisible(target)
        person.click(target)
        person.settle()
        assert step(person, guiding) == after
    assert call.isHidden()
    person.click(person.button("Play"))
    person.qtbot.waitUntil(lambda: guiding.guide.phase == "off")
    assert person.frame.settings.guide_done


def test_by_dragging(person: Person, guiding: Guiding) -> None:
    """A leaf carried into the corner by its handle is home as well."""
    person.click(guiding.card.start)
    person.click(person.button("Convex"))
    person.click(leaf(person, "8 mm"))
    person.click(person.button("Turn over"))
    assert step(person, guiding) == "press home"
    state = person.state
    assert state.leaf is not None
    assert state.pose is not None
    at = state.pose.to_section((9.0, 9.0))
    person.drag(at, *[(at[0] - left, at[1] - down) for left, down in PUSH])
    assert step(person, guiding) == "look"
    hides_nothing(person, guiding)


def test_the_call_is_marked_as_guided(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    person.key(Key.Key_8)
    person.click(person.button("Convex"))
    person.click(person.button("Refer"))
    person.canvas.setFocus()
    person.key(Key.Key_Z)
    person.click(person.button("Refer"))
    person.key(Key.Key_Return)
    line = json.loads(person.records.path.read_text(encoding="utf-8"))
    events = [row[-1] for row in line["handling"]]
    assert events.count(GUIDED) == 1
    assert events[0].startswith("pick")


def test_a_call_without_the_guide_is_not_marked(person: Person, guiding: Guiding) -> None:
    person.key(Key.Key_8)
    assert guiding.guide.phase == "off"
    assert [entry.event for entry in person.state.handling.entries] == ["pick 8 mm leg"]


def test_escape_ends_the_guide_before_it_puts_a_leaf_back(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    person.key(Key.Key_8)
    person.key(Key.Key_Escape)
    assert guiding.guide.phase == "off"
    assert guiding.card.isHidden()
    assert guiding.pointing.isHidden()
    assert person.state.leaf is not None
    person.key(Key.Key_Escape)
    assert person.state.leaf is None


def test_the_offer_is_declined_once(person: Person, guiding: Guiding) -> None:
    assert guiding.guide.phase == "offered"
    person.click(guiding.card.close_guide)
    assert person.frame.settings.guide_done
    guiding.offer()
    assert guiding.guide.phase == "off"


def test_the_offer_waits_for_the_first_card(person: Person) -> None:
    person.frame.settings = replace(person.frame.settings, guide_done=False, first_start_seen=False)
    guiding = Guiding(person.frame, person.screen)
    guiding.offer()
    assert guiding.card.isHidden()
    person.frame.change_settings(replace(person.frame.settings, first_start_seen=True))
    assert guiding.card.isVisible()
    assert guiding.guide.phase == "offered"


def test_help_has_it_again(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.close_guide)
    person.key(Key.Key_8)
    person.click(person.button("Convex"))
    person.click(person.button("Refer"))
    person.key(Key.Key_Return)
    person.key(Key.Key_PageDown)
    assert person.screen.course.index == 1
    guiding.action.trigger()
    assert person.screen.course.index == 0
    assert person.state.phase == "handling"
    assert step(person, guiding) == "face"


def test_each_step_can_be_skipped_with_one_click(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    for at in range(len(STEPS) - 1):
        assert guiding.guide.at == at
        assert guiding.card.skip.isVisible()
        said = "I have looked" if step(person, guiding) == "look" else "Skip this step"
        assert guiding.card.skip.text() == said
        person.click(guiding.card.skip)
    assert guiding.card.skip.isHidden()
    assert guiding.card.close_guide.accessibleName() == "Done"
    person.click(guiding.card.close_guide)
    assert guiding.card.isHidden()


def test_another_coupon_ends_it_without_a_word(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    person.screen.go_to(3)
    assert guiding.guide.phase == "off"
    assert not person.frame.settings.guide_done


def test_the_next_coupon_after_the_debrief_is_its_end(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    person.click(person.button("Convex"))
    person.click(person.button("Refer"))
    person.key(Key.Key_Return)
    assert step(person, guiding) == "debrief"
    person.key(Key.Key_PageDown)
    assert guiding.guide.phase == "off"
    assert person.frame.settings.guide_done


def test_the_focus_stays_at_the_work(person: Person, guiding: Guiding) -> None:
    """No step takes the focus to itself: what Space means never changes under a hand."""
    person.click(guiding.card.start)
    for key in (Key.Key_8, Key.Key_F, Key.Key_Space, Key.Key_Plus, Key.Key_T):
        person.key(key)
        person.settle()
        assert person.canvas.hasFocus()


def test_the_loupe_is_switched_on_where_it_is_off(person: Person, guiding: Guiding) -> None:
    person.key(Key.Key_L)
    assert not person.frame.settings.loupe
    person.click(guiding.card.start)
    person.click(person.button("Convex"))
    for key in (Key.Key_8, Key.Key_F, Key.Key_Space):
        person.key(key)
        person.settle()
    assert "loupe on" in guiding.card.words[1]
    person.key(Key.Key_L)
    assert step(person, guiding) == "state"


def test_a_resize_is_no_look(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    person.click(person.button("Convex"))
    for key in (Key.Key_8, Key.Key_F, Key.Key_Space):
        person.key(key)
        person.settle()
    person.window.resize(1100, 720)
    person.qtbot.wait(30)
    assert step(person, guiding) == "look"


@pytest.mark.parametrize("size", [(1280, 720), (1276, 688), (1100, 700), (1024, 700)], ids=str)
def test_the_card_lies_on_no_label_of_the_debrief(
    person: Person, guiding: Guiding, size: tuple[int, int]
) -> None:
    """In a window that fills 1280x720 it lay over a figure of the true section."""
    person.window.resize(*size)
    person.qtbot.wait(30)
    person.click(guiding.card.start)
    person.click(person.button("Convex"))
    person.click(leaf(person, "8 mm"))
    for name in ("Press home", "Touch", "Zoom in", "Turn over", "Press home", "Daylight"):
        person.click(person.button(name))
        person.settle()
    person.click(person.button("Accept"))
    person.click(person.button("Put it on record"))
    person.settle()
    person.qtbot.waitUntil(guiding.card.isVisible)
    assert step(person, guiding) == "debrief"
    labels = person.canvas.labels
    assert len(labels) > 3
    at = box_of(person, person.canvas).topLeft()
    card = QRectF(guiding.card.geometry())
    assert not [label for label in labels if label.translated(at).intersects(card)]
    line_crosses_nothing(person, guiding)


@pytest.mark.parametrize(
    "size", [(920, 560), (1024, 700), (1280, 720), (1920, 1080), (3840, 2160)], ids=str
)
@pytest.mark.parametrize("mark", ["8 mm", "25 mm"])
def test_it_hides_nothing_at_any_size(
    person: Person, guiding: Guiding, size: tuple[int, int], mark: str
) -> None:
    person.window.resize(*size)
    person.qtbot.wait(30)
    person.click(guiding.card.start)
    hides_nothing(person, guiding)
    person.click(person.button("Convex"))
    person.click(leaf(person, mark))
    for name in ("Turn over", "Press home", "Zoom in", "Zoom in", "Touch"):
        hides_nothing(person, guiding)
        person.click(person.button(name))
        person.settle()
        person.qtbot.wait(5)
    hides_nothing(person, guiding)


def tip_to(person: Person, to: Vec) -> None:
    """Bring the leaf's tip to a point, mm, whatever lies there."""

    def moved(state: BenchState, _: float) -> BenchState:
        assert state.leaf is not None
        assert state.pose is not None
        x, y = state.pose.to_section(state.leaf.point)
        return replace(state, pose=state.pose.moved(to[0] - x, to[1] - y))

    person.screen.controller.do(moved)


def test_it_follows_the_leaf_out_of_the_way(person: Person, guiding: Guiding) -> None:
    """Wherever the tip is dragged, the card isn't."""
    person.click(guiding.card.start)
    person.click(person.button("Convex"))
    person.click(leaf(person, "8 mm"))
    state = person.state
    assert state.leaf is not None
    for x in (40, 240, 480, 700, 820):
        for y in (40, 240, 440):
            spot = person.canvas.view.to_mm((float(x), float(y)))
            tip_to(person, spot)
            hides_nothing(person, guiding)


def test_clicks_go_through_the_ring_and_not_through_the_card(
    person: Person, guiding: Guiding
) -> None:
    person.click(guiding.card.start)
    assert guiding.pointing.isVisible()
    assert guiding.pointing.testAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
    person.key(Key.Key_8)
    before = person.state.pose
    QTest.mouseClick(guiding.card, Qt.MouseButton.LeftButton, pos=QPoint(20, 20))
    assert person.state.pose == before


def test_a_screen_reader_hears_each_step(person: Person, guiding: Guiding) -> None:
    person.click(guiding.card.start)
    title, text = guiding.card.words
    assert guiding.card.accessibleName() == f"Guide: {title}"
    assert guiding.card.accessibleDescription() == text
    for button in guiding.card.buttons:
        if button.isVisible():
            assert button.accessibleName() or button.text()
            assert button.height() >= 24
