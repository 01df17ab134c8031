"""Fingers on the canvas, as touch events that Qt makes itself."""

from __future__ import annotations

import math

import pytest
from PySide6.QtCore import QEvent, QPoint
from PySide6.QtGui import QInputDevice, QPointingDevice, QTouchEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from tests.trainer.canvas.conftest import OFF_BLADE, ON_BLADE, Told, at, settle
from trainer.canvas.canvas import Canvas
from trainer.canvas.fingers import twist_of


@pytest.fixture
def finger() -> QPointingDevice:
    """A touch screen."""
    return QTest.createTouchDevice(QInputDevice.DeviceType.TouchScreen)


class Hand:
    """Two fingers on the canvas, `first` and `second` (logical pixels)."""

    def __init__(self, canvas: Canvas, device: QPointingDevice) -> None:
        self.canvas, self.device = canvas, device

    def one(self, first: QPoint) -> None:
        """Put one finger down."""
        QTest.touchEvent(self.canvas, self.device).press(0, first, self.canvas).commit()

    def join(self, first: QPoint, second: QPoint) -> None:
        """Put the second down beside it."""
        event = QTest.touchEvent(self.canvas, self.device)
        event.move(0, first, self.canvas).press(1, second, self.canvas).commit()

    def both(self, first: QPoint, second: QPoint) -> None:
        """Put both down at once."""
        event = QTest.touchEvent(self.canvas, self.device)
        event.press(0, first, self.canvas).press(1, second, self.canvas).commit()

    def move(self, first: QPoint, second: QPoint) -> None:
        """Move both."""
        event = QTest.touchEvent(self.canvas, self.device)
        event.move(0, first, self.canvas).move(1, second, self.canvas).commit()

    def lift(self, first: QPoint, second: QPoint) -> None:
        """Lift the second, then the first, which slips a little as it goes."""
        event = QTest.touchEvent(self.canvas, self.device)
        event.move(0, first, self.canvas).release(1, second, self.canvas).commit()
        slipped = first + QPoint(25, 0)
        QTest.touchEvent(self.canvas, self.device).move(0, slipped, self.canvas).commit()
        QTest.touchEvent(self.canvas, self.device).release(0, slipped, self.canvas).commit()


@pytest.fixture
def hand(canvas: Canvas, finger: QPointingDevice) -> Hand:
    """Somebody's hand."""
    return Hand(canvas, finger)


def test_a_finger_carries_the_leaf(
    canvas: Canvas, told: Told, finger: QPointingDevice, qtbot: QtBot
) -> None:
    spot = at(canvas, ON_BLADE)
    QTest.touchEvent(canvas, finger).press(0, spot, canvas).commit()
    for i in range(1, 6):
        QTest.touchEvent(canvas, finger).move(0, spot + QPoint(8 * i, 0), canvas).commit()
    settle(qtbot)
    QTest.touchEvent(canvas, finger).release(0, spot + QPoint(40, 0), canvas).commit()
    names = told.names("hovered")
    assert names[0] == "grabbed"
    assert names[-1] == "released"
    assert told.path()[-1] == pytest.approx(canvas.view.to_mm((spot.x() + 40, spot.y())))


def test_a_finger_may_be_less_exact_than_a_mouse(
    canvas: Canvas, told: Told, finger: QPointingDevice
) -> None:
    spot = at(canvas, (24.0, 8.0)) + QPoint(11, 0)
    QTest.touchEvent(canvas, finger).press(0, spot, canvas).commit()
    QTest.touchEvent(canvas, finger).release(0, spot, canvas).commit()
    assert told.names("hovered") == ["grabbed", "released", "clicked"]


def round_about(middle: QPoint, radius: float, degrees: float) -> tuple[QPoint, QPoint]:
    """Two places across from each other, the first `degrees` counter-clockwise from the right."""
    angle = math.radians(degrees)
    arm = QPoint(round(radius * math.cos(angle)), -round(radius * math.sin(angle)))
    return middle + arm, middle - arm


@pytest.mark.parametrize("degrees", [30.0, -75.0])
def test_two_fingers_on_the_leaf_turn_it(
    canvas: Canvas, told: Told, hand: Hand, qtbot: QtBot, degrees: float
) -> None:
    middle = at(canvas, ON_BLADE)
    scale = canvas.view.scale
    hand.both(*round_about(middle, 60.0, 0.0))
    for step in range(1, 11):
        hand.move(*round_about(middle, 60.0, degrees * step / 10.0))
    settle(qtbot)
    hand.lift(*round_about(middle, 60.0, degrees))
    turned = sum(float(str(each[0])) for each in told.of("wheel_turned"))
    assert turned == pytest.approx(degrees, abs=1.0)
    # About the point between them: that point stays, but for whole pixels.
    assert math.dist(told.path()[-1], canvas.view.to_mm((middle.x(), middle.y()))) < 0.1
    assert told.names("hovered", "dragged", "wheel_turned") == ["grabbed", "released"]
    assert canvas.view.scale == scale


def test_two_fingers_carry_the_leaf_where_they_go(
    canvas: Canvas, told: Told, hand: Hand, qtbot: QtBot
) -> None:
    a = at(canvas, ON_BLADE)
    b = a + QPoint(60, 0)
    hand.one(a)
    hand.join(a, b)
    apart, way = QPoint(20, 0), QPoint(40, -30)
    hand.move(a + way - apart, b + way + apart)
    settle(qtbot)
    hand.lift(a + way - apart, b + way + apart)
    began = told.of("grabbed")[0]
    went = (told.path()[-1][0] - float(str(began[0])), told.path()[-1][1] - float(str(began[1])))
    assert went == pytest.approx((40.0 / canvas.view.scale, 30.0 / canvas.view.scale), abs=1e-6)
    assert told.names("hovered", "dragged") == ["grabbed", "released"]


def test_a_hand_that_turns_off_its_middle_goes_round_it(
    canvas: Canvas, told: Told, hand: Hand, qtbot: QtBot
) -> None:
    """The first finger took the leaf; the point between two is another one of the leaf."""
    middle = at(canvas, ON_BLADE)
    first, second = round_about(middle, 60.0, 0.0)
    hand.one(first)
    hand.join(first, second)
    hand.move(*round_about(middle, 60.0, 90.0))
    settle(qtbot)
    above = canvas.view.to_mm((middle.x(), middle.y() - 60.0))
    assert told.path()[-1] == pytest.approx(above, abs=1e-6)


def test_two_fingers_off_the_leaf_zoom_and_pan(canvas: Canvas, told: Told, hand: Hand) -> None:
    a = at(canvas, OFF_BLADE) - QPoint(40, 0)
    b = a + QPoint(30, 0)
    assert not canvas.is_on_leaf((b.x(), b.y()), 14.0)
    scale, centre = canvas.view.scale, canvas.view.centre
    hand.both(a, b)
    hand.move(a + QPoint(0, 30), b + QPoint(0, 30))
    assert canvas.view.scale == scale
    assert canvas.view.centre == pytest.approx((centre[0], centre[1] + 30.0 / scale))
    hand.move(a - QPoint(15, -30), b + QPoint(15, 30))
    assert canvas.view.scale == pytest.approx(2.0 * scale, rel=1e-3)
    hand.lift(a, b)
    assert told.names("hovered") == []


def test_a_touch_that_the_system_takes_over_lets_go(
    canvas: Canvas, told: Told, hand: Hand, finger: QPointingDevice
) -> None:
    spot = at(canvas, ON_BLADE)
    hand.one(spot)
    QApplication.sendEvent(canvas, QTouchEvent(QEvent.Type.TouchCancel, finger))
    assert told.names("hovered") == ["grabbed", "released"]
    QTest.touchEvent(canvas, finger).release(0, spot, canvas).commit()
    assert "clicked" not in told.names()


def test_a_turn_past_the_half_is_not_taken_for_its_rest() -> None:
    """From just below to just above the left: a few degrees, not nearly a full turn."""
    near, far = ((0.0, 0.0), (-10.0, 1.0)), ((0.0, 0.0), (-10.0, -1.0))
    assert twist_of(near, far).degrees == pytest.approx(-2.0 * math.degrees(math.atan(0.1)))
