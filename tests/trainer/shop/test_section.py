"""The section by hand: every handle by drag, by keys and by clicks; held where geometry ends."""

from __future__ import annotations

import math

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.trainer.shop.conftest import Maker
from trainer.canvas.scene import Overlay
from trainer.shop.knobs import knob_of, knobs_of
from trainer.shop.tracing import traced_document

Key = Qt.Key

SPOILED = ("undercut_base.depth", "undercut_base.width", "overlap_upright")


@pytest.fixture
def spoiled(maker: Maker) -> Maker:
    """A weld with all that there can be handles on."""
    maker.screen.choose("undercut_base.depth", 0.5)
    maker.screen.choose("overlap_upright", 1.5)
    maker.screen.do("spatter")
    maker.screen.choose("root_opening", 1.0)
    maker.screen.view.canvas.fit()
    return maker


KEYS = (
    "leg_base", "leg_upright", "crown", *SPOILED, "spatter.0.at", "spatter.0.height",
    "root_opening", "angle",
)  # fmt: skip


def value(maker: Maker, key: str) -> float:
    knob = knob_of(maker.coupon.section, key)
    assert knob is not None
    return knob.value


def steps(maker: Maker) -> int:
    count, past = 0, maker.screen.controller.history.past
    while past is not None:
        count, past = count + 1, past.rest
    return count


def test_there_is_a_handle_on_everything(spoiled: Maker) -> None:
    assert set(spoiled.screen.view.grips) == set(KEYS)
    names = {grip.accessibleName() for grip in spoiled.screen.view.grips.values()}
    assert {"Base leg, 8 mm", "Base undercut: depth, 0.5 mm", "Joint angle, 90\u00b0"} <= names


@pytest.mark.parametrize("key", KEYS)
def test_a_handle_is_dragged_and_that_is_one_step(spoiled: Maker, key: str) -> None:
    before, count = value(spoiled, key), steps(spoiled)
    knob = knob_of(spoiled.coupon.section, key)
    assert knob is not None
    far = 8.0 if key == "angle" else 0.9 * spoiled.screen.view.canvas.view.scale
    way = QPoint(round(far * knob.way[0]), round(-far * knob.way[1]))
    spoiled.drag(spoiled.grip(key), way)
    assert value(spoiled, key) > before
    assert steps(spoiled) == count + 1
    spoiled.screen.do("undo")
    assert value(spoiled, key) == before
    spoiled.screen.do("redo")
    assert value(spoiled, key) > before


def test_a_handle_stays_under_the_pointer(maker: Maker) -> None:
    grip, scale = maker.grip("leg_base"), maker.screen.view.canvas.view.scale
    before = grip.pos()
    maker.drag(grip, QPoint(round(2.0 * scale), 0))
    assert maker.coupon.section.bead.leg_base == pytest.approx(10.0, abs=0.11)
    assert (grip.pos() - before).x() == pytest.approx(2.0 * scale, abs=0.11 * scale)


@pytest.mark.parametrize("key", KEYS)
def test_a_handle_is_moved_with_the_arrow_keys(spoiled: Maker, key: str) -> None:
    knob = knob_of(spoiled.coupon.section, key)
    assert knob is not None
    arrow = (
        (Key.Key_Right if knob.way[0] > 0.0 else Key.Key_Left)
        if abs(knob.way[0]) > 0.6
        else (Key.Key_Up if knob.way[1] > 0.0 else Key.Key_Down)
    )
    spoiled.screen.view.choose(key)
    assert QApplication.focusWidget() is spoiled.grip(key)
    before, count = knob.value, steps(spoiled)
    step = 1.0 if key == "angle" else 0.1
    spoiled.key(arrow)
    assert value(spoiled, key) == pytest.approx(before + step)
    spoiled.key(arrow, Qt.KeyboardModifier.ControlModifier)
    assert value(spoiled, key) == pytest.approx(before + 1.1 * step)
    assert steps(spoiled) == count + 2, "each key that was let go is a step"


def test_a_key_held_down_is_one_step(maker: Maker) -> None:
    grip = maker.grip("leg_base")
    grip.setFocus()
    QTest.keyPress(grip, Key.Key_Right)
    for _ in range(20):
        QTest.keyPress(grip, Key.Key_Right)
    assert value(maker, "leg_base") == pytest.approx(10.1)
    QTest.keyRelease(grip, Key.Key_Right)
    assert steps(maker) == 1


def test_tab_comes_to_every_handle(spoiled: Maker) -> None:
    spoiled.screen.view.canvas.setFocus()
    stops = []
    for _ in range(len(KEYS)):
        spoiled.key(Key.Key_Tab)
        stops.append(QApplication.focusWidget())
    assert stops == [spoiled.grip(knob.key) for knob in knobs_of(spoiled.coupon.section)]


@pytest.mark.parametrize("key", KEYS)
def test_a_click_steps_a_handle(spoiled: Maker, key: str) -> None:
    bar = spoiled.screen.knobs
    bar.chosen.emit(key)
    before = value(spoiled, key)
    spoiled.click(bar.more)
    step = 1.0 if key == "angle" else 0.1
    assert value(spoiled, key) == pytest.approx(before + step)
    spoiled.click(bar.less)
    assert value(spoiled, key) == pytest.approx(before)


@pytest.mark.parametrize(
    ("key", "way", "value", "words"),
    [
        ("crown", (90, 90), -2.34, "the face enters a member"),
        ("leg_base", (-2000, 0), 0.02, "the toe does not lie on the base"),
        ("angle", (-3000, 0), 135.0, "the joint opens"),
        ("root_opening", (0, -3000), 7.99, "the toe does not lie on the upright"),
    ],
)
def test_a_handle_is_held_where_geometry_ends_and_says_why(
    maker: Maker, key: str, way: tuple[int, int], value: float, words: str
) -> None:
    scale = maker.screen.view.canvas.view.scale
    far = QPoint(-round(10 * scale), round(10 * scale)) if key == "crown" else QPoint(*way)
    maker.drag(maker.grip(key), far, stops=8)
    knob = knob_of(maker.coupon.section, key)
    assert knob is not None
    assert knob.value == pytest.approx(value, abs=0.011)
    assert words in maker.screen.saying.text()
    assert maker.screen.saying.isVisible()


def test_spatter_stops_at_the_toe_and_at_the_next_drop(maker: Maker) -> None:
    maker.screen.do("spatter")
    maker.screen.do("spatter")
    first, second = maker.coupon.section.spatter
    maker.screen.controller.turn("spatter.0.at", second.at)
    held = maker.coupon.section.spatter[0]
    assert held.far <= second.near + 1e-9
    assert held.at > first.at
    maker.screen.controller.turn("spatter.0.at", 1.0)
    assert maker.coupon.section.spatter[0].near == pytest.approx(8.0, abs=0.02)


# --- traced faces -------------------------------------------------------------------------------


@pytest.fixture
def traced(maker: Maker) -> Maker:
    maker.screen.do("face")
    maker.screen.view.canvas.fit()
    return maker


def trace(maker: Maker) -> tuple[tuple[float, float], ...]:
    found = maker.coupon.section.bead.trace
    assert found is not None
    return found


def test_an_arc_becomes_a_trace_and_an_arc_again(maker: Maker) -> None:
    before = maker.coupon.section.bead
    maker.screen.do("face")
    assert len(trace(maker)) == 17
    maker.screen.do("face")
    after = maker.coupon.section.bead
    assert after.trace is None
    assert after.leg_base == before.leg_base
    assert after.crown == pytest.approx(before.crown, abs=0.001)


def test_a_point_is_dragged_anywhere(traced: Maker) -> None:
    before = trace(traced)
    index = next(int(key[6:]) for key in traced.screen.view.grips if key.startswith("trace."))
    traced.drag(traced.grip(f"trace.{index}"), QPoint(12, -8))
    scale = traced.screen.view.canvas.view.scale
    x, y = trace(traced)[index]
    assert x == pytest.approx(before[index][0] + 12 / scale, abs=0.06)
    assert y == pytest.approx(before[index][1] + 8 / scale, abs=0.06)
    others = [i for i in range(len(before)) if i != index]
    assert [trace(traced)[i] for i in others] == [before[i] for i in others]
    assert steps(traced) == 2


def test_a_point_stays_out_of_the_plates(traced: Maker) -> None:
    index = next(int(key[6:]) for key in traced.screen.view.grips if key.startswith("trace."))
    traced.drag(traced.grip(f"trace.{index}"), QPoint(0, 900))
    assert trace(traced)[index][1] > 0.0
    assert "lies in a member" in traced.screen.saying.text()


def test_points_are_put_in_and_taken_out_by_keys(traced: Maker) -> None:
    count = len(trace(traced))
    traced.screen.view.choose("trace.8")
    traced.key(Key.Key_Insert)
    assert len(trace(traced)) == count + 1
    assert traced.screen.view.key == "trace.9"
    assert QApplication.focusWidget() is traced.grip("trace.9")
    traced.key(Key.Key_Delete)
    assert len(trace(traced)) == count
    traced.key(Key.Key_PageUp)
    at = int(traced.screen.view.key[6:])
    traced.key(Key.Key_Up)
    assert trace(traced)[at][1] > 0.0


def test_points_are_put_in_and_taken_out_by_clicks(traced: Maker) -> None:
    count = len(trace(traced))
    traced.screen.knobs.chosen.emit("trace.8")
    traced.click(traced.screen.knobs.point_in)
    traced.click(traced.screen.knobs.point_in)
    assert len(trace(traced)) == count + 2
    traced.click(traced.screen.knobs.point_out)
    assert len(trace(traced)) == count + 1
    x, y = trace(traced)[int(traced.screen.view.key[6:])]
    traced.click(traced.screen.knobs.arrows[1, 0])
    assert trace(traced)[int(traced.screen.view.key[6:])][0] == pytest.approx(x + 0.1)
    del y


def test_a_double_click_on_the_face_puts_a_point_there(traced: Maker) -> None:
    canvas, before = traced.screen.view.canvas, trace(traced)
    (ax, ay), (bx, by) = before[3], before[4]
    x, y = canvas.view.to_screen(((ax + bx) / 2.0, (ay + by) / 2.0))
    QTest.mouseDClick(canvas, Qt.MouseButton.LeftButton, pos=QPoint(round(x), round(y)))
    assert len(trace(traced)) == len(before) + 1
    far = canvas.view.to_screen((20.0, 20.0))
    QTest.mouseDClick(canvas, Qt.MouseButton.LeftButton, pos=QPoint(round(far[0]), round(far[1])))
    assert len(trace(traced)) == len(before) + 1


def test_the_last_inner_point_can_go_too(traced: Maker) -> None:
    while len(trace(traced)) > 2:
        traced.screen.view.choose("trace.1")
        traced.screen.do("point out")
    assert not any(key.startswith("trace.") for key in traced.screen.view.grips)


def test_a_trace_of_many_points_has_handles_where_there_is_room(maker: Maker) -> None:
    count = 1500
    points = [
        [
            8.3 * math.cos(i / (count - 1) * math.pi / 2),
            8.3 * math.sin(i / (count - 1) * math.pi / 2),
        ]
        for i in range(count)
    ]
    points[0], points[-1] = [8.3, 0.0], [0.0, 8.3]
    document = {**traced_document(maker.coupon), "bead": {"trace": points}}
    maker.screen.controller.edit(document, "face")  # type: ignore[arg-type]
    few = [key for key in maker.screen.view.grips if key.startswith("trace.")]
    assert 3 < len(few) <= 60
    maker.screen.view.canvas.zoom(8.0)
    assert any(key not in few for key in maker.screen.view.grips if key.startswith("trace."))


def test_the_joint_opens_and_takes_the_trace_along(traced: Maker) -> None:
    legs = traced.coupon.section.bead.leg_base, traced.coupon.section.bead.leg_upright
    traced.screen.controller.turn("angle", 105.0)
    bead = traced.coupon.section.bead
    assert (bead.leg_base, bead.leg_upright) == pytest.approx(legs, abs=1e-3)
    assert traced.coupon.section.joint.angle == 105.0


# --- looking ------------------------------------------------------------------------------------


def test_the_picture_stands_still_under_a_hand_and_follows_another_coupon(maker: Maker) -> None:
    canvas = maker.screen.view.canvas
    before = canvas.view
    maker.drag(maker.grip("leg_base"), QPoint(60, 0))
    assert canvas.view == before
    maker.screen.controller.turn("leg_base", 30.0)
    assert canvas.view == before
    maker.screen.do("fit")
    assert canvas.view.scale < before.scale


def test_what_is_drawn_over_the_section(maker: Maker) -> None:
    assert maker.screen.view.canvas.scene.overlays == ()
    maker.screen.view.canvas.setFocus()
    maker.key(Key.Key_1)
    maker.key(Key.Key_3)
    over: tuple[Overlay, ...] = maker.screen.view.canvas.scene.overlays
    labels = [each.label for each in over]
    assert "base leg 8.0 mm" in labels
    maker.key(Key.Key_1)
    maker.key(Key.Key_3)
    assert maker.screen.view.canvas.scene.overlays == ()


def test_a_screen_reader_is_told_of_the_section(maker: Maker) -> None:
    (part,) = maker.screen.view.canvas.parts
    assert "bead" in part.says
