"""Coupons with a leaf that somebody has placed: made in the shop, kept, and none that can't be."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from exercises.placement_faults import true_faults
from exercises.tray import load_tray
from geometry.pose import Pose
from tests.trainer.shop.conftest import Maker
from tests.trainer.shop.test_fields import choose
from trainer.assets import asset
from trainer.shop.choices import Choice

SHIPPED = asset("trays", "seal-slipway.tray.json")


def test_a_placed_leaf_is_kept_with_all_that_is_changed_around_it(
    maker: Maker, tmp_path: Path
) -> None:
    path = tmp_path / "mine.tray.json"
    path.write_bytes(SHIPPED.read_bytes())
    maker.screen.open_path(path)
    before = maker.coupon.placed
    assert before is not None
    maker.screen.side.forms.setCurrentIndex(2)
    maker.type("title.en", "Dock ladder, top rung")
    maker.screen.choose("leg_base", 8.9)
    maker.screen.do("save")
    kept = load_tray(path)
    assert kept.coupons[0].placed == before
    assert kept.coupons[0].section.bead.leg_base == 8.9
    assert [coupon.placed for coupon in kept.coupons[1:]] == [
        coupon.placed for coupon in load_tray(SHIPPED).coupons[1:]
    ]


def test_a_weld_that_would_grow_into_the_placed_leaf_is_refused_in_words(maker: Maker) -> None:
    maker.screen.open_path(SHIPPED)
    before = maker.coupon
    said = maker.screen.choose("leg_upright", 9.6)
    assert "The leaf stands" in said
    assert maker.coupon is before


def test_the_task_is_offered_only_where_a_leaf_is_placed(maker: Maker) -> None:
    field = maker.screen.side.words.fields["task"]
    assert isinstance(field, Choice)
    assert "find the fault" not in field._values
    maker.screen.open_path(SHIPPED)
    maker.screen.side.forms.setCurrentIndex(2)
    assert field.box.currentText() == "find the fault of the placed leaf"
    choose(maker, "task", "judge")
    assert maker.coupon.task == "judge"
    assert maker.coupon.placed is not None
    choose(maker, "task", "find the fault")
    assert maker.coupon.task == "find the fault"


def place(maker: Maker, mark: str, seat: int) -> None:
    """Lay a leaf on the picture out of the table, and leave it there."""
    side = maker.screen.side
    side.results.setCurrentWidget(side.leaves)
    maker.screen.working.finish()
    (item,) = side.leaves.table.findItems(mark, Qt.MatchFlag.MatchExactly)
    side.leaves.table.setCurrentCell(item.row(), 1 + seat)
    side.leaves.place.setFocus()
    maker.key(Qt.Key.Key_Space)


@pytest.mark.parametrize(("seat", "on", "turned"), [(0, "base", True), (1, "upright", False)])
def test_a_leaf_is_placed_by_its_author(
    maker: Maker, tmp_path: Path, seat: int, on: str, turned: bool
) -> None:
    place(maker, "7 mm", seat)
    placed = maker.coupon.placed
    assert placed is not None
    assert maker.coupon.task == "find the fault"
    assert (placed.leaf, placed.edge, placed.on, placed.gauged) == ("7 mm", "leg", on, (on,))
    assert placed.pose.turned == turned
    scene = maker.screen.view.canvas.scene
    assert scene.pose == placed.pose, "one sees it lie there"
    assert true_faults(maker.coupon) == ("one leg only",)
    words = maker.screen.side.words
    gauged = words.fields["placed.gauged"]
    assert isinstance(gauged, Choice)
    assert QApplication.focusWidget() is gauged.box
    assert "Right: one leg only" in words._lies.text()
    path = tmp_path / "mine.tray.json"
    maker.screen.filing.path = path
    maker.screen.do("save")
    assert load_tray(path).coupons[0].placed == placed


def test_what_its_holder_says_makes_the_fault(maker: Maker) -> None:
    place(maker, "7 mm", 1)
    choose(maker, "placed.gauged", "both")
    assert true_faults(maker.coupon) == ("nothing",)
    choose(maker, "placed.on", "base")
    assert true_faults(maker.coupon) == ("wrong member",)
    choose(maker, "placed.gauged", "")
    assert maker.coupon.placed is not None
    assert maker.coupon.placed.gauged == ()


@pytest.mark.parametrize("seat", [0, 1])
@pytest.mark.parametrize("tilt", ["4", "-4"])
def test_a_tilted_leaf_goes_where_there_is_room(maker: Maker, seat: int, tilt: str) -> None:
    place(maker, "8 mm", seat)
    before = maker.coupon.placed
    assert before is not None
    entry = maker.type("placed.tilt", tilt)
    assert not entry.wrong, entry.message.text()
    after = maker.coupon.placed
    assert after is not None
    assert after.pose.angle == before.pose.angle + float(tilt)
    assert "tilted" in true_faults(maker.coupon)
    assert entry.field.text() == tilt.replace("-", "\u2212") + "\u00b0"


def test_a_place_inside_steel_is_refused_in_words(maker: Maker) -> None:
    place(maker, "8 mm", 1)
    before = maker.coupon
    entry = maker.type("placed.y", "-2")
    assert "inside steel" in entry.message.text()
    assert maker.coupon is before
    maker.type("placed.x", "0.3")
    assert maker.coupon.placed is not None
    assert maker.coupon.placed.pose == Pose(0.3, 0.0, 0.0)


def test_placing_is_undone_and_taken_away(maker: Maker) -> None:
    place(maker, "8 mm", 1)
    maker.screen.controller.undo()
    assert maker.coupon.placed is None
    assert maker.screen.view.canvas.scene.leaf is None
    maker.screen.controller.redo()
    maker.click(maker.screen.side.words.away)
    assert maker.coupon.placed is None
    assert maker.coupon.task == "judge"
    assert not maker.screen.side.words.away.isVisible()


def test_the_throat_edge_is_placed_with_no_leg_gauged(maker: Maker) -> None:
    place(maker, "8 mm", 2)
    placed = maker.coupon.placed
    assert placed is not None
    assert (placed.edge, placed.gauged, placed.pose.turned) == ("throat", (), False)
    assert "wrong edge" in true_faults(maker.coupon)
