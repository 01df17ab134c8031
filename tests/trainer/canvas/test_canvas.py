"""The canvas, driven by real events."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRect, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from geometry.pose import Pose
from tests.trainer.canvas.conftest import OFF_BLADE, ON_BLADE, Told, at, settle
from trainer.canvas.canvas import Canvas
from trainer.canvas.painter import paint
from trainer.canvas.scene import Loupe, Mark, Scene
from trainer.look.tokens import DARK, LIGHT

LEFT, RIGHT, MIDDLE = (
    Qt.MouseButton.LeftButton,
    Qt.MouseButton.RightButton,
    Qt.MouseButton.MiddleButton,
)
NONE = Qt.KeyboardModifier.NoModifier

# Carrying the leaf


def test_a_drag_on_the_blade_tells_its_whole_path(canvas: Canvas, told: Told, qtbot: QtBot) -> None:
    start = at(canvas, ON_BLADE)
    QTest.mousePress(canvas, LEFT, NONE, start)
    steps = [start + QPoint(3 * i, -2 * i) for i in range(1, 21)]
    for step in steps:
        QTest.mouseMove(canvas, step)
    settle(qtbot)
    QTest.mouseRelease(canvas, LEFT, NONE, steps[-1])
    assert told.names("hovered")[0] == "grabbed"
    assert told.names("hovered")[-1] == "released"
    assert "clicked" not in told.names()
    wanted = [canvas.view.to_mm((step.x(), step.y())) for step in steps]
    path = told.path()
    for told_point, point in zip(path[-20:], wanted, strict=True):
        assert told_point == pytest.approx(point)
    grab = told.of("grabbed")[0]
    assert grab == pytest.approx(canvas.view.to_mm((start.x(), start.y())))


def test_moves_of_one_frame_are_told_together(canvas: Canvas, told: Told, qtbot: QtBot) -> None:
    start = at(canvas, ON_BLADE)
    QTest.mousePress(canvas, LEFT, NONE, start)
    settle(qtbot)
    before = len(told.of("dragged"))
    for i in range(1, 30):
        QTest.mouseMove(canvas, start + QPoint(i, 0))
    assert len(told.of("dragged")) - before <= 29 // 2
    settle(qtbot)
    assert len(told.path()) >= 29
    QTest.mouseRelease(canvas, LEFT, NONE, start)


def test_letting_go_tells_what_is_left_first(canvas: Canvas, told: Told) -> None:
    start = at(canvas, ON_BLADE)
    QTest.mousePress(canvas, LEFT, NONE, start)
    QTest.mouseMove(canvas, start + QPoint(40, 0))
    QTest.mouseRelease(canvas, LEFT, NONE, start + QPoint(40, 0))
    names = told.names("hovered")
    assert names.index("dragged") < names.index("released")
    assert told.path()[-1] == pytest.approx(canvas.view.to_mm((start.x() + 40, start.y())))


@pytest.mark.parametrize("point", [(1.0, 17.0), (23.5, 0.2), (12.5, 2.0), (2.6, 10.4), (15.0, 9.0)])
def test_the_whole_blade_can_be_held(
    canvas: Canvas, told: Told, point: tuple[float, float]
) -> None:
    QTest.mouseClick(canvas, LEFT, NONE, at(canvas, point))
    assert told.names("hovered") == ["grabbed", "released", "clicked"]


def test_a_turned_and_tilted_blade_is_held_where_it_lies(canvas: Canvas, told: Told) -> None:
    pose = Pose(14.0, 3.0, 70.0, turned=True)
    canvas.set_scene(replace(canvas.scene, pose=pose))
    QTest.mouseClick(canvas, LEFT, NONE, at(canvas, pose.to_section((16.0, 9.0))))
    QTest.mouseClick(canvas, LEFT, NONE, at(canvas, pose.to_section((3.0, 3.0))))
    assert told.names("hovered") == ["grabbed", "released", "clicked", "clicked"]


def test_a_click_beside_the_blade_is_only_a_click(canvas: Canvas, told: Told) -> None:
    spot = at(canvas, OFF_BLADE)
    QTest.mouseClick(canvas, LEFT, NONE, spot)
    assert told.names("hovered") == ["clicked"]
    assert told.of("clicked")[0] == pytest.approx(canvas.view.to_mm((spot.x(), spot.y())))


def test_a_few_pixels_beside_the_blade_still_count(canvas: Canvas) -> None:
    x, y = canvas.view.to_screen((24.0, 8.0))
    assert canvas.is_on_leaf((x + 2.0, y))
    assert not canvas.is_on_leaf((x + 6.0, y))


def test_no_leaf_no_hold(canvas: Canvas, told: Told) -> None:
    canvas.set_scene(replace(canvas.scene, leaf=None, pose=None))
    QTest.mouseClick(canvas, LEFT, NONE, at(canvas, ON_BLADE))
    assert told.names("hovered") == ["clicked"]


# The pointer


def test_hover_lights_the_leaf_and_opens_the_hand(canvas: Canvas, told: Told, qtbot: QtBot) -> None:
    blade = at(canvas, (20.0, 5.0))
    dark = canvas.grab().toImage().pixelColor(blade).lightnessF()
    QTest.mouseMove(canvas, at(canvas, ON_BLADE))
    assert canvas.cursor().shape() == Qt.CursorShape.OpenHandCursor
    assert canvas.grab().toImage().pixelColor(blade).lightnessF() > dark + 0.03
    QTest.mouseMove(canvas, at(canvas, OFF_BLADE))
    assert canvas.cursor().shape() == Qt.CursorShape.ArrowCursor
    assert told.of("hovered") == [(True,), (False,)]
    assert canvas.grab().toImage().pixelColor(blade).lightnessF() == pytest.approx(dark)
    settle(qtbot)


def test_the_hand_closes_on_the_leaf_and_opens_again(canvas: Canvas) -> None:
    spot = at(canvas, ON_BLADE)
    QTest.mouseMove(canvas, spot)
    QTest.mousePress(canvas, LEFT, NONE, spot)
    assert canvas.cursor().shape() == Qt.CursorShape.ClosedHandCursor
    QTest.mouseRelease(canvas, LEFT, NONE, spot)
    assert canvas.cursor().shape() == Qt.CursorShape.OpenHandCursor


# Wheel, zoom, pan


def wheel(
    canvas: Canvas,
    notches: float,
    *,
    modifiers: Qt.KeyboardModifier = NONE,
    pixels: QPoint | None = None,
) -> None:
    """Turn the wheel over the blade."""
    spot = QPointF(at(canvas, ON_BLADE))
    phase = Qt.ScrollPhase.ScrollUpdate if pixels is not None else Qt.ScrollPhase.NoScrollPhase
    event = QWheelEvent(
        spot,
        canvas.mapToGlobal(spot),
        pixels or QPoint(),
        QPoint(0, round(120 * notches)),
        Qt.MouseButton.NoButton,
        modifiers,
        phase,
        False,
    )
    QApplication.sendEvent(canvas, event)


def test_a_notch_turns_5_degrees_and_half_a_degree_with_shift(canvas: Canvas, told: Told) -> None:
    """Source: the design's own contract, section 8."""
    wheel(canvas, 1.0)
    wheel(canvas, -2.0)
    wheel(canvas, 1.0, modifiers=Qt.KeyboardModifier.ShiftModifier)
    assert [round(float(values[0]), 6) for values in told.of("wheel_turned")] == [5.0, -10.0, 0.5]  # type: ignore[arg-type]


def test_ctrl_and_the_wheel_zoom_about_the_pointer(canvas: Canvas, told: Told) -> None:
    spot = at(canvas, ON_BLADE)
    before, scale = canvas.view.to_mm((spot.x(), spot.y())), canvas.view.scale
    wheel(canvas, 2.0, modifiers=Qt.KeyboardModifier.ControlModifier)
    assert canvas.view.scale == pytest.approx(scale * 1.44)
    assert canvas.view.to_mm((spot.x(), spot.y())) == pytest.approx(before)
    assert "wheel_turned" not in told.names()


def test_two_fingers_on_a_touch_pad_pan(canvas: Canvas, told: Told) -> None:
    before = canvas.view.to_screen((0.0, 0.0))
    wheel(canvas, 0.2, pixels=QPoint(12, -7))
    assert canvas.view.to_screen((0.0, 0.0)) == pytest.approx((before[0] + 12, before[1] - 7))
    assert "wheel_turned" not in told.names()


@pytest.mark.parametrize("button", [MIDDLE, RIGHT])
def test_middle_and_right_drag_pan_even_on_the_leaf(
    canvas: Canvas, told: Told, button: Qt.MouseButton
) -> None:
    spot = at(canvas, ON_BLADE)
    before = canvas.view.to_screen((0.0, 0.0))
    QTest.mousePress(canvas, button, NONE, spot)
    QTest.mouseMove(canvas, spot + QPoint(30, 20))
    QTest.mouseRelease(canvas, button, NONE, spot + QPoint(30, 20))
    assert canvas.view.to_screen((0.0, 0.0)) == pytest.approx((before[0] + 30, before[1] + 20))
    assert told.names("hovered") == []


def test_a_drag_beside_the_leaf_pans_and_is_no_click(canvas: Canvas, told: Told) -> None:
    spot = at(canvas, OFF_BLADE)
    before = canvas.view.to_screen((0.0, 0.0))
    QTest.mousePress(canvas, LEFT, NONE, spot)
    QTest.mouseMove(canvas, spot + QPoint(-25, 10))
    QTest.mouseRelease(canvas, LEFT, NONE, spot + QPoint(-25, 10))
    assert canvas.view.to_screen((0.0, 0.0)) == pytest.approx((before[0] - 25, before[1] + 10))
    assert told.names("hovered") == []


def test_zoom_has_limits(canvas: Canvas) -> None:
    for _ in range(60):
        canvas.zoom_in()
    assert canvas.view.scale == canvas.largest_scale
    for _ in range(120):
        canvas.zoom_out()
    assert 0.5 <= canvas.view.scale <= 3.0
    canvas.fit()
    assert 10.0 < canvas.view.scale < 60.0


def test_marked_work_caps_the_zoom_also_of_a_view_that_is_closer(canvas: Canvas) -> None:
    for _ in range(60):
        canvas.zoom_in()
    canvas.set_scene(replace(canvas.scene, capped=True, eye_limit=0.2))
    assert canvas.view.device_scale * 0.2 <= 6.0 + 1e-9
    for _ in range(20):
        canvas.zoom_in()
    assert canvas.view.device_scale * 0.2 == pytest.approx(6.0)


def test_the_fit_follows_the_window_until_someone_zooms(canvas: Canvas) -> None:
    fitted = canvas.view.scale
    canvas.resize(700, 500)
    assert canvas.view.scale < fitted
    canvas.zoom_in()
    chosen = canvas.view
    canvas.resize(900, 640)
    assert (canvas.view.scale, canvas.view.centre) == (chosen.scale, chosen.centre)
    assert canvas.view.size == (900.0, 640.0)


# Painting


class Ear(QObject):
    """Keeps the rectangle of every paint event."""

    def __init__(self, canvas: Canvas) -> None:
        super().__init__(canvas)
        self.rects: list[QRect] = []
        canvas.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Listen, and let pass."""
        if isinstance(event, QPaintEvent):
            self.rects.append(event.rect())
        return False


def directly(canvas: Canvas) -> QImage:
    """The canvas's scene, painted without its caches."""
    image = QImage(canvas.size(), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    paint(painter, canvas.scene, canvas.view)
    painter.end()
    return image


def differing(first: QImage, second: QImage, inset: int = 10) -> int:
    """How many pixels differ by more than a trace, the frame left out."""
    count = 0
    for y in range(inset, first.height() - inset, 2):
        for x in range(inset, first.width() - inset, 2):
            a, b = first.pixelColor(x, y), second.pixelColor(x, y)
            if abs(a.red() - b.red()) + abs(a.green() - b.green()) + abs(a.blue() - b.blue()) > 40:
                count += 1
    return count


def test_what_is_cached_shows_what_is_painted(canvas: Canvas, qtbot: QtBot) -> None:
    """After any sequence of moves: nothing stale, nothing shifted, in the loupe too."""
    canvas.set_scene(replace(canvas.scene, loupe=Loupe(zoom=3.0)))
    for step in range(25):
        pose = Pose(2.0 + math.cos(step), 2.0 + math.sin(step), 5.0 * math.sin(step))
        canvas.set_scene(replace(canvas.scene, pose=pose))
        QApplication.processEvents()
    canvas.clearFocus()
    assert differing(canvas.grab().toImage(), directly(canvas)) < 60
    canvas.pan(33.0, -21.0)
    canvas.zoom_in()
    canvas.set_scene(replace(canvas.scene, unit="in"))
    assert differing(canvas.grab().toImage(), directly(canvas)) < 60


def test_a_moving_leaf_repaints_no_more_than_it_must(canvas: Canvas, qtbot: QtBot) -> None:
    settle(qtbot)
    ear = Ear(canvas)
    canvas.set_scene(replace(canvas.scene, pose=Pose(0.0, 1.0)))
    qtbot.waitUntil(lambda: bool(ear.rects))
    rect = ear.rects[-1]
    assert rect.width() * rect.height() < 0.75 * canvas.width() * canvas.height()
    assert rect.contains(at(canvas, (24.0, 1.0)))
    assert rect.contains(at(canvas, (0.0, 18.6)))


@pytest.mark.parametrize(
    "change",
    [
        lambda scene: replace(scene, theme=DARK),
        lambda scene: replace(scene, unit="in"),
        lambda scene: replace(scene, grid=False),
        lambda scene: replace(scene, section=scene.section.cleaned()),
        lambda scene: replace(scene, overlays=(Mark((8.0, 0.0), "touch", "Touch"),)),
        lambda scene: replace(scene, scale_bar=False),
    ],
)
def test_whatever_changes_shows(
    canvas: Canvas, change: Callable[[Scene], Scene], qtbot: QtBot
) -> None:
    settle(qtbot)
    ear = Ear(canvas)
    canvas.set_scene(change(canvas.scene))
    qtbot.waitUntil(lambda: bool(ear.rects))
    assert ear.rects[-1] == canvas.rect()
    assert differing(canvas.grab().toImage(), directly(canvas)) < 40


def test_focus_is_seen(canvas: Canvas, qtbot: QtBot) -> None:
    canvas.clearFocus()
    calm = canvas.grab().toImage()
    canvas.activateWindow()
    canvas.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(canvas.hasFocus)
    ringed = canvas.grab().toImage()
    assert ringed.pixelColor(1, 320).name() == LIGHT.accent
    assert calm.pixelColor(1, 320).name() != LIGHT.accent


def test_painted_is_told_after_each_frame(canvas: Canvas, qtbot: QtBot) -> None:
    with qtbot.waitSignal(canvas.painted, timeout=2000):
        canvas.set_scene(replace(canvas.scene, pose=Pose(1.0, 1.0)))


def test_a_shake_ends_where_it_began(canvas: Canvas, qtbot: QtBot) -> None:
    settle(qtbot)
    before = canvas.grab().toImage()
    canvas.shake()
    qtbot.waitUntil(lambda: canvas.grab().toImage() != before, timeout=2000)
    qtbot.waitUntil(lambda: canvas.grab().toImage() == before, timeout=2000)


def test_without_motion_a_refusal_is_a_light(canvas: Canvas, qtbot: QtBot) -> None:
    calm = replace(canvas.scene.theme, reduced_motion=True)
    canvas.set_scene(replace(canvas.scene, theme=calm))
    spot = at(canvas, (20.0, 5.0))
    before = canvas.grab().toImage()
    canvas.shake()
    qtbot.wait(40)
    during = canvas.grab().toImage()
    assert during.pixelColor(spot).lightnessF() > before.pixelColor(spot).lightnessF() + 0.03
    edge = at(canvas, (24.0, 8.0)) + QPoint(4, 0)
    assert during.pixelColor(edge) == before.pixelColor(edge)
    qtbot.waitUntil(lambda: canvas.grab().toImage() == before, timeout=2000)


def test_the_owner_s_accessible_name_is_kept(canvas: Canvas) -> None:
    canvas.setAccessibleName("Section and leaf")
    canvas.set_scene(replace(canvas.scene, pose=Pose(1.0, 1.0)))
    assert canvas.accessibleName() == "Section and leaf"
    assert canvas.focusPolicy() == Qt.FocusPolicy.StrongFocus


# Looking elsewhere without a drag


@pytest.mark.parametrize("button", [RIGHT, MIDDLE])
def test_a_click_of_the_other_buttons_brings_a_place_to_the_middle(
    canvas: Canvas, told: Told, button: Qt.MouseButton
) -> None:
    spot = at(canvas, ON_BLADE)
    place = canvas.view.to_mm((spot.x(), spot.y()))
    QTest.mouseClick(canvas, button, NONE, spot)
    assert canvas.view.centre == pytest.approx(place)
    assert told.names("hovered") == []


def test_a_step_of_the_view_shows_more_of_that_side(canvas: Canvas) -> None:
    (left, low, _, _), scale = canvas.view.box, canvas.view.scale
    canvas.step_view(1, 0)
    canvas.step_view(0, -1)
    assert canvas.view.box[:2] == pytest.approx((left + 80.0 / scale, low - 80.0 / scale))
