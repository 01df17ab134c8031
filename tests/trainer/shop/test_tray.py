"""A tray is arranged by drag, by buttons and by keys; each of it is one step that can be undone."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QMimeData, QModelIndex, Qt
from PySide6.QtTest import QTest

from exercises.coupon import Coupon
from exercises.intake.traced import Traced
from exercises.strict_json import Json
from exercises.tray import load_tray, read_tray
from tests.trainer.shop.conftest import Maker
from trainer.assets import asset
from trainer.shop import state as changes
from trainer.shop.building import NO_RULES, coupon_of
from trainer.shop.state import PLAIN, Shop, new_shop, shop_of

Key = Qt.Key
Alt = Qt.KeyboardModifier.AltModifier


@pytest.fixture
def three(maker: Maker) -> Maker:
    """Three coupons, a to c, the first open."""
    for name in ("b", "c"):
        maker.screen.do("add plain")
        maker.screen.choose("id", name)
    maker.screen.do("before")
    maker.screen.do("before")
    maker.screen.choose("id", "a")
    return maker


def ids(maker: Maker) -> list[str]:
    return [coupon.id for coupon in maker.shop.coupons]


def drop(maker: Maker, start: int, row: int) -> None:
    """Drop a row between two others, as the list is told of it."""
    model = maker.screen.tray.list.model()
    data: QMimeData = model.mimeData([model.index(start, 0)])
    model.dropMimeData(data, Qt.DropAction.MoveAction, row, 0, QModelIndex())


def test_a_coupon_is_moved_by_drag(three: Maker) -> None:
    drop(three, 0, 3)
    assert ids(three) == ["b", "c", "a"]
    drop(three, 2, 0)
    assert ids(three) == ["a", "b", "c"]
    drop(three, 0, 2)
    assert ids(three) == ["b", "a", "c"]
    assert three.coupon.id == "a"
    three.screen.do("undo")
    assert ids(three) == ["a", "b", "c"]


def test_a_coupon_is_moved_by_buttons_and_by_keys(three: Maker) -> None:
    three.click(three.screen.tray.down)
    assert ids(three) == ["b", "a", "c"]
    three.click(three.screen.tray.up)
    assert ids(three) == ["a", "b", "c"]
    listed = three.screen.tray.list
    QTest.keyClick(listed, Key.Key_Down, Alt)
    QTest.keyClick(listed, Key.Key_Down, Alt)
    QTest.keyClick(listed, Key.Key_Down, Alt)
    assert ids(three) == ["b", "c", "a"]
    QTest.keyClick(listed, Key.Key_Up, Alt)
    assert ids(three) == ["b", "a", "c"]


def test_one_is_duplicated_and_deleted(three: Maker) -> None:
    three.click(three.screen.tray.duplicate)
    assert ids(three) == ["a", "a-2", "b", "c"]
    assert three.coupon.id == "a-2"
    QTest.keyClick(three.screen.tray.list, Key.Key_Delete)
    assert ids(three) == ["a", "b", "c"]
    three.click(three.screen.tray.delete)
    three.click(three.screen.tray.delete)
    assert ids(three) == ["a"]
    assert not three.screen.tray.delete.isEnabled(), "a tray holds at least one coupon"
    for _ in range(3):
        three.screen.do("undo")
    assert ids(three) == ["a", "a-2", "b", "c"]


def test_rows_open_coupons_and_say_what_they_are(three: Maker) -> None:
    listed = three.screen.tray.list
    listed.setCurrentIndex(listed.model().index(1, 0))
    assert three.coupon.id == "b"
    said = listed.model().index(2, 0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "3. c, c, z 7 mm \u00b7 judge"
    assert three.screen.tray.count.text() == "2 of 3"


def test_the_tray_has_a_title(three: Maker) -> None:
    field = three.screen.tray.title
    field.setFocus()
    QTest.keyClicks(field, "Handrail brackets")
    QTest.keyClick(field, Key.Key_Return)
    assert str(three.shop.tray.title) == "Handrail brackets"
    three.screen.do("undo")
    assert str(three.shop.tray.title) == ""
    assert field.text() == ""


def test_undo_and_redo_have_no_limit(maker: Maker) -> None:
    count = 700
    for step in range(count):
        maker.screen.controller.turn("leg_base", 8.0 + (step + 1) / 100.0)
    for _ in range(count):
        maker.screen.controller.undo()
    assert maker.coupon.source == PLAIN
    assert not maker.screen.tools.undo.isEnabled()
    for _ in range(count):
        maker.screen.controller.redo()
    assert maker.coupon.section.bead.leg_base == 15.0
    assert not maker.screen.tools.redo.isEnabled()
    assert maker.screen.tools.undo.toolTip() == "Undo: base leg (Ctrl+Z)"


def test_a_section_that_was_taken_in_is_a_coupon(maker: Maker) -> None:
    traced = Traced(
        90.0, ((8.2, 0.0), (4.5, 4.4), (0.0, 8.1)), 0.03, {"kind": "photo", "file": "x"}
    )
    maker.screen.take_in(traced)
    assert maker.coupon.id == "photo-1"
    assert maker.coupon.callout.text == "8 mm"
    assert maker.coupon.rules == "as-drawn"
    kept = maker.coupon.source["x-source"]
    assert kept == {"kind": "photo", "file": "x", "uncertainty": 0.03}
    assert maker.coupon.section.bead.trace is not None
    maker.screen.do("undo")
    assert ids(maker) == ["coupon-1"]


def test_a_section_that_can_not_be_is_refused_in_words(maker: Maker) -> None:
    maker.screen.take_in(Traced(90.0, ((8.2, 3.0), (0.0, 8.1)), None, {}))
    assert ids(maker) == ["coupon-1"]
    assert "The trace ends" in maker.screen.saying.text()


# --- the state by itself ------------------------------------------------------------------------


def coupon(name: str) -> Coupon:
    return coupon_of({**PLAIN, "id": name}, NO_RULES)


DEEDS = ("add", "duplicate", "delete", "move", "merge", "split", "show", "title")


def deed(shop: Shop, name: str, rng: random.Random) -> Shop:
    count = len(shop.coupons)
    if name == "add":
        return changes.added(shop, [coupon(rng.choice("abc")), coupon("a")])
    if name == "move":
        return changes.moved(shop, rng.randrange(count), rng.randrange(-1, count + 1))
    if name == "merge":
        return changes.merged(shop, new_shop().tray)
    if name == "split":
        return (changes.split(shop) or (shop,))[0]
    if name == "show":
        return changes.shown(shop, rng.randrange(-2, count + 2))
    if name == "title":
        titles: tuple[Json, ...] = ("", "x", {"en": "x", "es": "y"})
        return changes.titled(shop, rng.choice(titles))
    return {"duplicate": changes.duplicated, "delete": changes.deleted}[name](shop)


@given(st.lists(st.sampled_from(DEEDS), max_size=30), st.integers(0, 9999))
def test_whatever_is_done_the_tray_can_be_opened_again(names: list[str], seed: int) -> None:
    rng, shop = random.Random(seed), new_shop()
    for name in names:
        shop = deed(shop, name, rng)
        assert 0 <= shop.at < len(shop.coupons)
        assert len(shop.ids) == len(shop.coupons)
    again = read_tray(shop.tray.as_document())
    assert again == shop.tray
    assert [dict(c.source) for c in again.coupons] == [dict(c.source) for c in shop.coupons]


@given(st.text(max_size=12), st.lists(st.text(max_size=12), max_size=8))
def test_a_free_id_is_free_and_no_longer_than_it_need_be(wanted: str, taken: list[str]) -> None:
    found = changes.free_id(wanted, taken)
    assert found not in taken
    if wanted not in taken:
        assert found == wanted


def test_a_split_and_its_merge_are_the_whole_again() -> None:
    shop = shop_of(load_tray(asset("trays", "heron-footbridge.tray.json")))
    parts = changes.split(changes.shown(shop, 9))
    assert parts is not None
    kept, rest = parts
    assert (len(kept.coupons), len(rest.coupons)) == (9, len(shop.coupons) - 9)
    both = changes.merged(kept, rest)
    assert [c.digest for c in both.coupons] == [c.digest for c in shop.coupons]


def test_no_tray_holds_too_many(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(changes, "MOST_COUPONS", 3)
    shop = changes.duplicated(changes.duplicated(new_shop()))
    with pytest.raises(changes.TooManyError):
        changes.duplicated(shop)
