"""Coupons with a leaf that somebody has placed: the shop keeps them, and makes none that can't be.

Where the leaf lies isn't edited here.
"""

from __future__ import annotations

from pathlib import Path

from exercises.tray import load_tray
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
