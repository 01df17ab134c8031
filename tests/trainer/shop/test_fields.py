"""Exact figures and words: typed, stepped, chosen; what is wrong is said in place and stays."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCheckBox, QComboBox

from exercises.text import Text
from exercises.versions import Document
from tests.trainer.shop.conftest import Maker
from trainer.shop.choices import Check, Choice
from trainer.shop.fields import CHECKS, document_of, value_of
from trainer.shop.state import PLAIN

Key = Qt.Key


def choose(maker: Maker, key: str, value: str) -> None:
    """Choose an entry of a list, as a click on it does."""
    for form in (maker.screen.side.weld, maker.screen.side.drawing, maker.screen.side.words):
        field = form.fields.get(key)
        if isinstance(field, Choice):
            maker.screen.side.forms.setCurrentWidget(form)
            at = field._values.index(value)
            field.box.setCurrentIndex(at)
            field.box.activated.emit(at)
            return
    raise LookupError(key)


@pytest.mark.parametrize(
    ("key", "text", "mm"),
    [
        ("leg_base", "5/16 in - 0.3 mm", 7.6375),
        ("leg_base", "9", 9.0),
        ("leg_upright", "(8 + 6) / 2", 7.0),
        ("crown", "\u22121.2", -1.2),
        ("root_opening", "1/16 in", 1.5875),
        ("angle", "90\u00b0 - 7.5", 82.5),
        ("base_thickness", '1/2"', 12.7),
        ("overlap_base", "1.5", 1.5),
        ("leaf_wear", "0.2", 0.2),
        ("eye_limit", "0.05 mm", 0.05),
        ("extent", "25 %", 0.25),
    ],
)
def test_a_value_is_typed_in_either_unit(maker: Maker, key: str, text: str, mm: float) -> None:
    entry = maker.type(key, text)
    assert value_of(maker.coupon, key) == pytest.approx(mm)
    assert not entry.wrong
    maker.screen.do("undo")
    assert maker.coupon.source == PLAIN


def test_inches_are_read_and_shown_where_they_are_chosen(maker: Maker) -> None:
    settings = replace(maker.frame.settings, unit="in")
    maker.frame.change_settings(settings)
    maker.type("leg_base", "5/16")
    assert maker.coupon.section.bead.leg_base == 7.9375
    assert maker.field("leg_base").field.text() == "5/16 in"


@pytest.mark.parametrize(
    ("key", "text", "words"),
    [
        ("leg_base", "eight", "can\u2019t stand there"),
        ("leg_base", "8 +", "missing at the end"),
        ("leg_base", "-3", "does not lie on the base"),
        ("crown", "-9", "the face enters a member"),
        ("angle", "8 mm", "no unit of this"),
        ("angle", "30", "The joint opens 30 degrees"),
        ("extent", "1.5", "Is 1.5"),
        ("callout.size", "x", "can\u2019t stand there"),
        ("id", "", "Has 0 characters"),
    ],
)
def test_a_wrong_entry_is_said_in_place_and_kept(
    maker: Maker, key: str, text: str, words: str
) -> None:
    before = maker.coupon
    entry = maker.type(key, text) if text else maker.field(key)
    if not text:
        entry.field.clear()
        entry.field.editingFinished.emit()
    assert words in entry.message.text()
    assert entry.field.text() == text
    assert maker.coupon is before
    assert entry.field.accessibleDescription() == entry.message.text()
    # Other gestures don't take it away.
    maker.drag(maker.grip("leg_upright"), QPoint(0, -20))
    assert entry.field.text() == text
    assert entry.wrong
    entry.field.setFocus()
    QTest.keyClick(entry.field, Key.Key_Escape)
    assert entry.message.text() == ""
    assert not entry.wrong
    assert entry.field.text() != text


def test_a_wrong_entry_waits_while_another_coupon_is_open(maker: Maker) -> None:
    entry = maker.type("leg_base", "8 km")
    maker.screen.do("add plain")
    assert entry.field.text() == "8 mm"
    assert not entry.wrong
    maker.screen.do("before")
    assert entry.field.text() == "8 km"
    assert entry.wrong
    maker.type("leg_base", "8.5 mm")
    assert not entry.wrong
    assert maker.coupon.section.bead.leg_base == 8.5


@pytest.mark.parametrize("key", ["leg_base", "angle", "undercut_base.depth", "leaf_wear"])
def test_a_value_is_stepped_by_clicks_and_by_keys(maker: Maker, key: str) -> None:
    entry = maker.field(key)
    before = value_of(maker.coupon, key)
    less, more = entry.steps
    more.click()
    up = value_of(maker.coupon, key)
    assert up != before
    less.click()
    assert value_of(maker.coupon, key) == (before if before is not None else pytest.approx(0.4))
    QTest.keyClick(entry.field, Key.Key_Up)
    assert value_of(maker.coupon, key) == pytest.approx(up)


def test_a_groove_and_a_lip_come_and_go(maker: Maker) -> None:
    maker.type("undercut_base.width", "3")
    groove = maker.coupon.section.bead.undercut_base
    assert groove is not None
    assert (groove.depth, groove.width) == (0.5, 3.0)
    entry = maker.type("overlap_base", "2")
    assert "both an overlap and an undercut" in entry.message.text()
    maker.type("undercut_base.depth", "0")
    assert maker.coupon.section.bead.undercut_base is None
    assert entry.wrong, "what was refused stands there until it is entered again"
    entry.field.setText("2.0")
    entry.field.editingFinished.emit()
    assert maker.coupon.section.bead.overlap_base is not None


def test_spatter_is_put_on_a_member_and_taken_away(maker: Maker) -> None:
    form = maker.screen.side.weld
    maker.click(form.more)
    _, on, _, height = form._rows[0]
    on.box.activated.emit(1)
    assert maker.coupon.section.spatter[0].on == "upright"
    height.field.setText("1.2")
    height.field.editingFinished.emit()
    assert maker.coupon.section.spatter[0].height == 1.2
    maker.button("Take drop 1 away").click()
    assert maker.coupon.section.spatter == ()
    assert form._rows == []


def test_the_callout_as_a_drawing_has_it(maker: Maker) -> None:
    maker.screen.side.forms.setCurrentIndex(1)
    maker.type("callout.size", "5/16 in")
    assert maker.coupon.callout.text == "5/16 in"
    maker.type("callout.upright_size", "3/8 in")
    assert maker.coupon.callout.unequal
    maker.type("callout.length", "2")
    choose(maker, "callout.spacing", "gap")
    maker.type("callout.distance", "4")
    maker.type("callout.count", "4")
    weld = maker.coupon.callout.intermittent
    assert weld is not None
    assert (weld.length, weld.gap, weld.count) == (50.8, pytest.approx(101.6), 4)
    choose(maker, "callout.side", "both")
    maker.type("callout.tail", "WPS 12")
    choose(maker, "callout.measure", "throat")
    assert maker.coupon.callout.upright_size is None
    assert maker.coupon.callout.tail == "WPS 12"
    entry = maker.type("callout.distance", "")
    assert entry.wrong
    QTest.keyClick(entry.field, Key.Key_Escape)
    entry = maker.field("callout.length")
    entry.field.clear()
    entry.field.editingFinished.emit()
    assert maker.coupon.callout.intermittent is None


@pytest.mark.parametrize("key", CHECKS)
def test_marks_and_conditions_are_switched(maker: Maker, key: str) -> None:
    maker.type("callout.length", "50")
    field = maker.screen.side.drawing.fields[key]
    assert isinstance(field, Check)
    before = value_of(maker.coupon, key)
    field.box.click()
    assert value_of(maker.coupon, key) is (not before)
    field.box.click()
    assert value_of(maker.coupon, key) is before


def test_rules_are_chosen_and_can_be_read(maker: Maker) -> None:
    choose(maker, "rules", "iso-5817-b")
    assert maker.coupon.rules == "iso-5817-b"
    maker.screen.side.drawing.rules.click()
    assert maker.frame.dialogs[-1].windowTitle().startswith("ISO 5817")


def test_words_in_two_languages(maker: Maker) -> None:
    maker.screen.side.forms.setCurrentIndex(2)
    maker.type("title.en", "Bracket to post")
    assert maker.coupon.source["title"] == "Bracket to post"
    maker.type("title.es", "M\u00e9nsula")
    assert maker.coupon.title == Text.of({"en": "Bracket to post", "es": "M\u00e9nsula"})
    maker.type("teaches.en", "Both legs count.")
    maker.click(maker.screen.side.words.more)
    _, entries = maker.screen.side.words._forms[0]
    entries[0].field.setText("Look twice.")
    entries[0].field.editingFinished.emit()
    assert [str(hint) for hint in maker.coupon.hints] == ["Look twice."]
    maker.button("Take hint 1 away").click()
    assert maker.coupon.hints == ()
    choose(maker, "task", "size")
    assert maker.coupon.task == "size"


def test_an_id_of_another_coupon_is_refused(maker: Maker) -> None:
    maker.screen.do("duplicate")
    entry = maker.type("id", "coupon-1")
    assert "Another coupon of this tray has this id" in entry.message.text()
    maker.type("id", "b-7")
    assert maker.shop.ids == {"coupon-1", "b-7"}


def test_texts_in_other_languages_stay(maker: Maker) -> None:
    source: Document = {**PLAIN, "title": {"en": "a", "fr": "b"}}
    maker.screen.controller.edit(source, "title")
    maker.screen.choose("title.en", "c")
    assert maker.coupon.source["title"] == {"en": "c", "fr": "b"}
    document = document_of(maker.coupon, "title.en", "")
    assert document["title"] == {"fr": "b"}


def test_every_field_has_a_name(maker: Maker) -> None:
    side = maker.screen.side
    for form in (side.weld, side.drawing, side.words):
        for box in form.findChildren(QComboBox):
            assert box.accessibleName()
        for field in form.fields.values():
            if not isinstance(field, Choice | Check):
                assert field.field.accessibleName()
        assert all(box.text() for box in form.findChildren(QCheckBox))
