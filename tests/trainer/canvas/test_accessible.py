"""The canvas as a screen reader meets it, through Qt's own interfaces."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from geometry.section import Section
from tests.trainer.canvas.conftest import at
from trainer.canvas.canvas import Canvas
from trainer.canvas.scene import Scene
from trainer.canvas.spoken import Action, Part, differing

PARTS = (
    Part("section", "Weld", "base, upright, weld face"),
    Part("leaf", "Leaf 8 mm", "at 0, 0"),
    Part("tip", "Tip", "on the upright"),
)
NAME, SAYS = QAccessible.Text.Name, QAccessible.Text.Description


@pytest.fixture
def spoken(canvas: Canvas) -> Canvas:
    """A canvas whose scene has words."""
    actions = (Action("press home", "Press home", "Space"),)
    canvas.set_scene(replace(canvas.scene, parts=PARTS, actions=actions))
    return canvas


def heard(widget: QWidget) -> QAccessibleInterface:
    """What a screen reader gets for a widget."""
    found = QAccessible.queryAccessibleInterface(widget)
    assert found is not None
    return found


def child(widget: QWidget, index: int) -> QAccessibleInterface:
    """A child of a widget, as a screen reader gets it."""
    found = heard(widget).child(index)
    assert found is not None
    return found


def test_section_leaf_and_tip_are_its_children(spoken: Canvas) -> None:
    picture = heard(spoken)
    assert picture.role() == QAccessible.Role.Canvas
    told = [(child(spoken, i).text(NAME), child(spoken, i).text(SAYS)) for i in range(3)]
    assert told == [(part.name, part.says) for part in PARTS]
    assert picture.childCount() == 3
    assert picture.child(3) is None
    for index in range(3):
        part = child(spoken, index)
        assert picture.indexOfChild(part) == index
        assert part.role() == QAccessible.Role.Graphic
        parent = part.parent()
        assert parent is not None
        assert parent.object() is spoken


def test_widgets_that_lie_on_the_picture_come_after_its_parts(spoken: Canvas) -> None:
    handle = QPushButton("Handle", spoken)
    handle.setGeometry(10, 10, 40, 24)
    handle.show()
    picture = heard(spoken)
    assert picture.childCount() == 4
    last = child(spoken, 3)
    assert last.object() is handle
    assert picture.indexOfChild(last) == 3
    spot = handle.mapToGlobal(handle.rect().center())
    found = picture.childAt(spot.x(), spot.y())
    assert found is not None
    assert found.object() is handle
    assert picture.indexOfChild(heard(spoken.window())) == -1


def test_without_a_leaf_only_the_section_is_there(spoken: Canvas) -> None:
    spoken.set_scene(replace(spoken.scene, leaf=None, pose=None))
    assert heard(spoken).childCount() == 1
    assert child(spoken, 0).text(NAME) == "Weld"


def test_a_part_is_where_the_picture_shows_it(spoken: Canvas) -> None:
    whole = QRect(spoken.mapToGlobal(QPoint(0, 0)), spoken.size())
    for index in range(3):
        assert whole.contains(child(spoken, index).rect())
    tip = spoken.mapToGlobal(at(spoken, (0.0, 8.0)))
    assert (child(spoken, 2).rect().center() - tip).manhattanLength() <= 2
    on_tip = heard(spoken).childAt(tip.x(), tip.y())
    assert on_tip is not None
    assert on_tip.text(NAME) == "Tip"


def test_a_part_outside_of_the_view_is_said_to_be(spoken: Canvas) -> None:
    assert not child(spoken, 2).state().offscreen
    spoken.pan(5000.0, 0.0)
    assert child(spoken, 2).state().offscreen
    assert child(spoken, 2).rect().isEmpty()


def test_what_can_be_done_is_offered_and_asked_for(spoken: Canvas, qtbot: QtBot) -> None:
    actions = heard(spoken).actionInterface()
    assert "press home" in actions.actionNames()
    assert actions.localizedActionName("press home") == "Press home"
    assert actions.keyBindingsForAction("press home") == ["Space"]
    with qtbot.waitSignal(spoken.asked) as asked:
        actions.doAction("press home")
    assert asked.args == ["press home"]


@pytest.fixture
def listening() -> Iterator[None]:
    """As if a screen reader were there."""
    QAccessible.setActive(True)
    yield
    QAccessible.setActive(False)


def test_a_listener_outlives_what_it_listens_to(
    qtbot: QtBot, convex: Section, listening: None
) -> None:
    """Two canvases, parts that come and go, a canvas that is deleted while its parts are known."""
    holder = QWidget()
    qtbot.addWidget(holder)
    row = QHBoxLayout(holder)
    pair = [Canvas(), Canvas()]
    for number, canvas in enumerate(pair):
        row.addWidget(canvas)
        canvas.set_scene(Scene(section=convex, parts=(Part("section", f"Corner {number}"),)))
    holder.show()
    qtbot.waitExposed(holder)
    for number, canvas in enumerate(pair):
        assert child(canvas, 0).text(NAME) == f"Corner {number}"
    kept = child(pair[0], 0)
    pair[0].deleteLater()
    QApplication.sendPostedEvents(None, 52)
    QApplication.processEvents()
    gc.collect()
    del kept
    assert child(pair[1], 0).text(NAME) == "Corner 1"
    for _ in range(50):
        pair[1].set_scene(replace(pair[1].scene, section=None))
        pair[1].set_scene(replace(pair[1].scene, section=convex))
        gc.collect(0)
    assert child(pair[1], 0).text(NAME) == "Corner 1"


def test_what_differs_between_two_scenes_is_told_once() -> None:
    section, leaf, _ = PARTS
    other = (replace(section, name="Bead"), replace(leaf, says="at 1, 0"))
    assert differing(PARTS, other) == (("tip",), (), ("section",), ("leaf",))
    assert differing((), PARTS)[1] == ("section", "leaf", "tip")
    assert differing(PARTS, PARTS) == ((), (), (), ())
