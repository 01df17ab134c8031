"""From a photo, by pointer and by keys, from the file to the section."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from exercises.intake.traced import Traced
from tests.exercises.intake.rendered import CARD, CARD_AT, Hand, Rendered, box_points, face_points
from tests.trainer.shop.photo.conftest import WELD
from trainer.shop.photo.page import PhotoPage
from trainer.shop.photo.state import STEPS, Step

Points = list[tuple[float, float]]


def click(page: PhotoPage, qtbot: QtBot, points: Points) -> None:
    """Click on points of the picture, off by up to 4 of its pixels."""
    for spot in Hand(4.0, 7).clicks(points):
        x, y = page.view.sight.to_screen(spot.at)
        at = QPoint(round(x), round(y))
        QTest.mouseClick(page.view, Qt.MouseButton.LeftButton, pos=at)


def members(shown: Rendered) -> tuple[Points, Points]:
    return shown.at((11.0, 0.0), (26.0, 0.0)), shown.at((0.0, 10.0), (0.0, 22.0))


def marked(page: PhotoPage, shown: Rendered, qtbot: QtBot) -> None:
    """Mark everything by clicks and fields."""
    panel = page.panel
    click(page, qtbot, shown.at(*box_points(*CARD_AT, *CARD)))
    for field, length in ((panel.wide, CARD[0]), (panel.high, CARD[1])):
        field.field.setText(f"{length:g}")
        field.field.editingFinished.emit()
    panel.next.click()
    panel.next.click()
    for points in members(shown):
        click(page, qtbot, points)
    panel.next.click()
    click(page, qtbot, shown.at(*face_points(WELD, 3)))


def test_a_picture_becomes_a_section(opened: PhotoPage, shown: Rendered, qtbot: QtBot) -> None:
    marked(opened, shown, qtbot)
    qtbot.waitUntil(lambda: opened.controller.outline is not None)
    opened.panel.next.click()
    assert opened.controller.state.step == "check"
    outline = opened.controller.outline
    assert outline is not None
    assert outline.measures.leg_base == pytest.approx(8.0, abs=0.15)
    assert outline.measures.leg_upright == pytest.approx(6.7, abs=0.15)
    made: list[Traced] = []
    opened.made.connect(made.append)
    opened.panel.next.click()
    qtbot.waitUntil(lambda: bool(made))
    assert made[0].angle == pytest.approx(90.0, abs=0.5)
    assert made[0].backdrop is not None
    assert made[0].source["file"] == "weld.png"


def test_the_picture_need_not_be_kept(opened: PhotoPage, shown: Rendered, qtbot: QtBot) -> None:
    marked(opened, shown, qtbot)
    opened.go("check")
    opened.panel.keep.click()
    made: list[Traced] = []
    opened.made.connect(made.append)
    opened.do("make")
    qtbot.waitUntil(lambda: bool(made))
    assert made[0].backdrop is None


def test_by_keys_alone_points_are_put_moved_and_taken_out(opened: PhotoPage, qtbot: QtBot) -> None:
    view, controller = opened.view, opened.controller
    opened.go("scale")
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_S)
    assert not controller.state.snaps
    QTest.keyClick(view, Qt.Key.Key_Left)
    assert view.cross is not None
    QTest.keyClick(view, Qt.Key.Key_Return)
    QTest.keyClick(view, Qt.Key.Key_Escape)
    for _ in range(3):
        QTest.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClick(view, Qt.Key.Key_Space)
    first, second = controller.state.marks.scale
    assert second.x > first.x + 30.0
    before = controller.state.marks.scale[1]
    for key, held in (
        (Qt.Key.Key_Right, Qt.KeyboardModifier.NoModifier),
        (Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier),
        (Qt.Key.Key_Up, Qt.KeyboardModifier.ControlModifier),
    ):
        QTest.keyClick(view, key, held)
    after = controller.state.marks.scale[1]
    assert (after.x - before.x, after.y - before.y) == pytest.approx((1.0, 9.9))
    QTest.keyClick(view, Qt.Key.Key_BracketLeft)
    assert controller.state.chosen == ("scale", 0)
    QTest.keyClick(view, Qt.Key.Key_Delete)
    assert controller.state.marks.scale == (after,)
    QTest.keyClick(view, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert len(controller.state.marks.scale) == 2
    QTest.keyClick(view, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert len(controller.state.marks.scale) == 1


def test_undo_goes_back_to_the_beginning_and_redo_to_the_end(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    marked(opened, shown, qtbot)
    end = opened.controller.state.marks
    steps = 0
    while opened.controller.can_undo:
        opened.do("undo")
        steps += 1
    assert opened.controller.state.marks.corners == ()
    # The first side alone changes nothing yet.
    assert steps == 4 + 1 + 4 + 3
    while opened.controller.can_redo:
        opened.do("redo")
    assert opened.controller.state.marks == end


def test_a_point_is_dragged_as_one_step_and_settles_on_its_edge(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    view, controller = opened.view, opened.controller
    opened.go("members")
    click(opened, qtbot, members(shown)[0])
    first = controller.state.marks.base[0]
    start = view.sight.to_screen(first.at)
    end = view.sight.to_screen(shown.at((14.0, 0.3))[0])
    _drag(opened, start, end)
    moved = controller.state.marks.base[0]
    assert moved.x > first.x + 20.0
    assert not moved.by_hand
    on = shown.at((14.0, 0.0), (20.0, 0.0))
    along = np.array(on[1]) - np.array(on[0])
    off = np.array(moved.at) - np.array(on[0])
    assert abs(along[0] * off[1] - along[1] * off[0]) / np.hypot(*along) < 0.4
    opened.do("undo")
    assert controller.state.marks.base[0] == first


def _drag(page: PhotoPage, start: tuple[float, float], end: tuple[float, float]) -> None:
    """Press, move in steps, let go."""
    kinds = QMouseEvent.Type
    left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
    shares = [(kinds.MouseButtonPress, 0.0), *((kinds.MouseMove, n / 6) for n in range(1, 7))]
    for kind, share in [*shares, (kinds.MouseButtonRelease, 1.0)]:
        at = QPointF(*(a + share * (b - a) for a, b in zip(start, end, strict=True)))
        button = none if kind == kinds.MouseMove else left
        held = none if kind == kinds.MouseButtonRelease else left
        event = QMouseEvent(kind, at, at, button, held, Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(page.view, event)


def test_beside_all_points_a_drag_moves_the_picture(opened: PhotoPage, qtbot: QtBot) -> None:
    before = opened.view.sight.centre
    _drag(opened, (200.0, 200.0), (260.0, 230.0))
    after = opened.view.sight.centre
    assert after[0] < before[0]
    assert opened.controller.state.marks.corners == ()
    opened.do("fit")
    assert opened.view.sight.centre == before
    opened.do("closer")
    assert (
        opened.view.sight.scale
        > opened.view.sight.fitted(
            opened.controller.picture.size if opened.controller.picture else (1, 1)
        ).scale
    )


def test_by_single_clicks_a_point_is_chosen_moved_and_put_by_hand(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    tools, controller = opened.panel.tools, opened.controller
    opened.go("members")
    click(opened, qtbot, members(shown)[0])
    tools.before.click()
    tools.after.click()
    assert controller.state.chosen == ("base", 1)
    before = controller.state.marks.base[1]
    tools.arrows[3].click()
    after = controller.state.marks.base[1]
    assert (after.x, after.by_hand) == (before.x + 1.0, True)
    tools.edge.click()
    assert not controller.state.marks.base[1].by_hand
    tools.remove.click()
    assert len(controller.state.marks.base) == 1
    assert "1" in tools.point.text()


def test_a_full_group_moves_the_chosen_point_to_a_click(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    opened.go("scale")
    opened.do("snap")
    click(opened, qtbot, [(200.0, 300.0), (500.0, 300.0)])
    click(opened, qtbot, [(600.0, 400.0)])
    first, second = opened.controller.state.marks.scale
    assert first.at == pytest.approx((200.0, 300.0), abs=7.0)
    assert second.at == pytest.approx((600.0, 400.0), abs=7.0)


def test_a_click_on_the_wire_goes_between_its_points(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    opened.go("trace")
    toes = shown.at(*face_points(WELD, 3))
    click(opened, qtbot, [toes[0], toes[2]])
    ends = opened.controller.state.marks.face
    click(opened, qtbot, [toes[1]])
    face = opened.controller.state.marks.face
    assert (face[0], face[2], len(face)) == (*ends, 3)
    assert opened.controller.state.chosen == ("face", 1)


@pytest.mark.parametrize("step", STEPS[1:])
def test_nothing_is_done_without_a_picture(page: PhotoPage, step: Step, qtbot: QtBot) -> None:
    page.go(step)
    assert page.controller.state.step == "open"
    page.view.nudge(1.0, 0.0)
    page.view.put_at_cross()
    for name in ("undo", "redo", "closer", "fit", "remove", "edge", "make", "before"):
        page.do(name)
    assert page.controller.state.marks.corners == ()
    assert not page.panel.steps[step].isEnabled()


@pytest.mark.parametrize("step", STEPS)
def test_every_step_is_painted_whatever_is_there(opened: PhotoPage, step: Step) -> None:
    opened.go(step)
    image = opened.grab().toImage()
    assert image.width() >= 1200
    assert opened.panel.help.text()


def test_a_rectangle_of_unknown_sides_gives_nothing(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    click(opened, qtbot, shown.at(*box_points(*CARD_AT, *CARD)))
    opened.controller.work_out()
    assert not opened.panel.next.isEnabled()
    opened.panel.known["ratio"].click()
    opened.panel.ratio_wide.field.setText("2")
    opened.panel.ratio_wide.field.editingFinished.emit()
    opened.controller.work_out()
    assert opened.controller.state.marks.sides == (2.0, 1.0)
    assert opened.controller.is_done("straighten")
    assert not opened.controller.is_done("scale")
    opened.panel.known["square"].click()
    assert opened.controller.state.marks.sides == (1.0, 1.0)


@pytest.mark.parametrize(("typed", "length"), [
    ("10", 10.0), ("3/8 in", 9.525), ("2 * 5 mm", 10.0), ("0", None), ("-3", None), ("x", None),
    ("2000", None),
])  # fmt: skip
def test_a_known_length_is_entered_in_either_unit(
    opened: PhotoPage, typed: str, length: float | None
) -> None:
    opened.go("scale")
    field = opened.panel.length
    field.field.setText(typed)
    field.field.editingFinished.emit()
    assert opened.controller.state.marks.length == pytest.approx(length)
    assert field.message.isVisible() == (length is None)


# What is not a picture


def test_a_file_that_is_no_picture_is_refused_in_words(
    page: PhotoPage, tmp_path: Path, qtbot: QtBot
) -> None:
    for name, data in (("a.png", b"GIF89a"), ("b.jpg", b"\xff\xd8\xff")):
        (tmp_path / name).write_bytes(data)
        page.open(tmp_path / name)
        qtbot.waitUntil(lambda: not page.busy)
        assert name in page.panel.file.text()
        assert "Right would be" in page.panel.file.text()
    page.open(tmp_path / "none.png")
    qtbot.waitUntil(lambda: not page.busy)
    assert "there is no such file" in page.panel.file.text()
    assert page.controller.picture is None


def test_what_was_marked_stays_when_another_file_is_refused(
    opened: PhotoPage, shown: Rendered, tmp_path: Path, qtbot: QtBot
) -> None:
    marked(opened, shown, qtbot)
    marks = opened.controller.state.marks
    (tmp_path / "a.png").write_bytes(b"nothing")
    opened.open(tmp_path / "a.png")
    qtbot.waitUntil(lambda: not opened.busy)
    assert opened.controller.state.marks == marks
    assert opened.controller.picture is not None


def test_a_picture_can_be_dropped(page: PhotoPage, file: Path, qtbot: QtBot) -> None:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(file))])
    event = QDropEvent(
        QPointF(100, 100), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    page.dropEvent(event)
    qtbot.waitUntil(lambda: page.controller.picture is not None)
    assert page.controller.state.step == "straighten"


def test_a_large_picture_is_shown_out_of_its_halves(
    page: PhotoPage, tmp_path: Path, qtbot: QtBot
) -> None:
    Image.new("RGB", (5000, 3000), (90, 90, 90)).save(tmp_path / "large.jpg")
    page.open(tmp_path / "large.jpg")
    qtbot.waitUntil(lambda: page.controller.picture is not None)
    pyramid = page.view._pyramid
    assert pyramid is not None
    assert [image.width() for _, image in pyramid._levels] == [5000, 2500, 1250, 625]
    page.grab()


def test_leaving_makes_nothing_and_keys_go_no_further(opened: PhotoPage, qtbot: QtBot) -> None:
    left: list[bool] = []
    opened.left.connect(lambda: left.append(True))
    opened.panel.leave.click()
    assert left == [True]
    # A key that means something to the shop behind must not reach it.
    opened.view.setFocus()
    QTest.keyClick(opened.view, Qt.Key.Key_Delete)
    QTest.keyClick(opened.view, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert opened.controller.state.marks.corners == ()


def test_a_screen_reader_hears_of_the_chosen_point(
    opened: PhotoPage, shown: Rendered, qtbot: QtBot
) -> None:
    opened.go("members")
    click(opened, qtbot, members(shown)[0][:1])
    assert opened.view.accessibleDescription().startswith("Base, point 1: ")
    opened.view.let_go()
    assert opened.view.accessibleDescription() == "No point chosen"
