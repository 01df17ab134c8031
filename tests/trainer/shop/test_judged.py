"""What follows from a change, at once: judgement, doubt, and what each leaf would show."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QTableWidget

from exercises.judging import judge
from geometry.leaf import rack
from geometry.reading import read
from geometry.seat import press_home, waiting_pose
from tests.trainer.shop.conftest import Maker
from trainer.shop.answers import SEATS, Answers
from trainer.shop.judged_panel import check_words


def cell(table: QTableWidget, row: int, column: int) -> str:
    item = table.item(row, column)
    assert item is not None
    return item.text()


def words(maker: Maker) -> str:
    maker.screen.working.finish()
    return maker.screen.side.verdict.words.text()


def test_the_right_call_follows_a_drag(maker: Maker) -> None:
    assert words(maker) == "Right call: Accept"
    maker.drag(maker.grip("leg_upright"), QPoint(0, 60))
    assert words(maker) == "Right call: Add weld metal"
    maker.screen.choose("overlap_base", 1.0)
    assert words(maker) == "Right call: Dress back"
    maker.screen.choose("angle", 75.0)
    maker.screen.choose("overlap_base", None)
    maker.screen.choose("leg_upright", 9.0)
    assert words(maker) == "Right call: Refer"
    assert "No leaf of any rack settles this" in maker.screen.side.verdict.doubt.text()


def test_inside_the_doubt_there_is_a_warning(maker: Maker) -> None:
    words(maker)
    assert maker.screen.side.verdict.doubt.isHidden()
    maker.screen.choose("leg_base", 7.1)
    words(maker)
    assert not maker.screen.side.verdict.doubt.isHidden()
    assert "learners may call it either way" in maker.screen.side.verdict.doubt.text()
    maker.screen.choose("leg_base", 8.6)
    maker.screen.choose("leg_upright", 8.6)
    words(maker)
    assert maker.screen.side.verdict.doubt.isHidden()


def test_every_check_has_measured_limit_margin_and_verdict(maker: Maker) -> None:
    maker.screen.choose("rules", "iso-5817-b")
    maker.screen.choose("leg_upright", 6.7)
    maker.screen.working.finish()
    table, judgement = maker.screen.side.checks, judge(maker.coupon)
    assert table.rowCount() == len(judgement.checks) > 5
    row = next(i for i, check in enumerate(judgement.checks) if check.key == "leg_upright")
    said = [cell(table, row, column) for column in range(5)]
    assert said == ["Upright leg", "6.70", "\u2265 7.00", "\u22120.30", "fails"]
    for check in judgement.checks:
        assert all(check_words(check, "mm"))
        assert all(check_words(check, "in"))


@pytest.mark.parametrize("name", ["metric", "throat"])
def test_the_table_of_leaves_is_what_the_bench_would_show(maker: Maker, name: str) -> None:
    side = maker.screen.side
    side.results.setCurrentIndex(1)
    side.rack_asked.emit(name)
    maker.screen.choose("leg_upright", 6.7)
    maker.screen.working.finish()
    section = maker.coupon.section
    leaves = rack(name)  # type: ignore[arg-type]
    assert side.leaves.table.rowCount() == len(leaves)
    for row, leaf in enumerate(leaves[:6]):
        for place, (edge, on) in enumerate(SEATS):
            held = leaf.with_edge(edge)
            pose = press_home(section, held, waiting_pose(section, held, on)).pose
            shown = read(section, held, pose)
            said = cell(side.leaves.table, row, 1 + place).lower()
            assert said.startswith(shown.state)
            if shown.gap is not None:
                assert f"{shown.gap:.2f}" in said


def test_leaves_are_pressed_beside_a_drag_and_not_on_its_path(maker: Maker) -> None:
    """A drag's own turn presses none: however many moves come in one, none waits for a press."""
    maker.screen.side.results.setCurrentIndex(1)
    maker.screen.working.finish()
    grip, working = maker.grip("leg_base"), maker.screen.working
    pressed: list[None] = []
    working.answered.connect(lambda: pressed.append(None))
    for step in range(1, 30):
        grip.moved.emit("leg_base", 8.0 + step / 10.0)  # type: ignore[attr-defined]
        assert pressed == []
    assert working.answers.stale, "what was found before is pale until it is found anew"
    working.finish()
    assert pressed
    assert not working.answers.stale


def test_the_nearest_leaves_are_pressed_first(maker: Maker) -> None:
    answers = Answers()
    answers.ask(maker.coupon, "metric")
    for _ in range(3):
        answers.step()
    assert {mark for mark, _ in answers.found} == {"7 mm"}


def test_a_leaf_is_laid_onto_the_picture_and_follows(maker: Maker) -> None:
    side = maker.screen.side
    side.results.setCurrentIndex(1)
    maker.screen.working.finish()
    side.leaves.table.setCurrentCell(5, 1)
    scene = maker.screen.view.canvas.scene
    assert scene.leaf is not None
    assert (scene.leaf.mark, scene.leaf.edge) == ("8 mm", "leg")
    before = scene.pose
    maker.screen.choose("leg_base", 10.0)
    assert maker.screen.view.canvas.scene.pose != before
    maker.click(side.leaves.off)
    assert maker.screen.view.canvas.scene.leaf is None
    QTest.qWait(1)


def test_measures_are_live(maker: Maker) -> None:
    maker.screen.choose("leg_base", 9.25)
    maker.screen.working.finish()
    assert cell(maker.screen.side.measures, 0, 1) == "9.25 mm"
