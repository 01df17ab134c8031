"""Looking things up, by keys and by mouse: search, list, page, back and forward, on paper."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from exercises.definitions import reference
from exercises.rules import RULE_SETS, RuleSet
from exercises.source_words import source_words
from exercises.text import Text
from tests.trainer.reference.conftest import Reader, reader
from trainer.language import Speech
from trainer.look.tokens import DARK, LIGHT
from trainer.reference.book import FIRST, Book
from trainer.reference.page import key_of, page_html, plain_page
from trainer.reference.screen import ReferenceScreen
from trainer.reference.words import SIGNS

__all__ = ["reader"]

Key = Qt.Key
ALT = Qt.KeyboardModifier.AltModifier
CONTROL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


def test_typing_searches_and_enter_reads_what_fits_best(reader: Reader) -> None:
    assert reader.screen.search.hasFocus()
    reader.type("convexity level c")
    assert reader.screen.contents.keys[0] == "rules.iso-5817-c.convexity"
    assert reader.shown == FIRST
    reader.key(Key.Key_Return)
    assert reader.shown == "rules.iso-5817-c.convexity"
    assert reader.screen.article.hasFocus()
    text = reader.screen.article.toPlainText()
    assert "1 mm + 0.15 × face width, 4 mm at most" in text
    assert "Table 1, 1.10" in text
    assert "Seen" in text


def test_the_list_is_gone_along_by_the_keys_as_one_step(reader: Reader) -> None:
    reader.type("throat")
    reader.key(Key.Key_Down)
    assert reader.screen.contents.hasFocus()
    first = reader.shown
    assert first == reader.screen.contents.keys[0]
    reader.key(Key.Key_Down)
    reader.key(Key.Key_Down)
    assert reader.shown == reader.screen.contents.keys[2]
    reader.key(Key.Key_Left, ALT)
    assert reader.shown == FIRST
    reader.key(Key.Key_Right, ALT)
    assert reader.shown == reader.screen.contents.keys[2]
    assert first != reader.shown


def test_nothing_found_is_said(reader: Reader) -> None:
    reader.type("zzz")
    assert reader.screen.contents.keys == ()
    assert reader.screen.count.text() == "0 found"
    reader.key(Key.Key_Down)
    reader.key(Key.Key_Return)
    assert reader.shown == FIRST
    reader.key(Key.Key_Escape)
    assert reader.screen.search.text() == ""
    assert len(reader.screen.contents.keys) == len(reference())


def test_a_link_is_followed_and_led_back_from(reader: Reader) -> None:
    reader.click_entry("rules.iso-5817-c")
    assert reader.shown == "rules.iso-5817-c"
    reader.screen.article.setFocus()
    reader.key(Key.Key_Tab)
    reader.key(Key.Key_Return)
    assert reader.shown == "rules.iso-5817-c.undersize"
    assert reader.screen.contents.current == "rules.iso-5817-c.undersize"
    reader.click(reader.screen.back)
    assert reader.shown == "rules.iso-5817-c"
    reader.click(reader.screen.forward)
    assert reader.shown == "rules.iso-5817-c.undersize"
    assert not reader.screen.forward.isEnabled()


def test_a_stroke_begins_the_search_but_may_be_searched_for(reader: Reader) -> None:
    reader.screen.article.setFocus()
    reader.key(Key.Key_Slash)
    assert reader.screen.search.hasFocus()
    assert reader.screen.search.text() == ""
    reader.type("2553")
    reader.key(Key.Key_Slash)
    assert "/" in reader.screen.search.text()
    reader.screen.article.setFocus()
    reader.key(Key.Key_F, CONTROL)
    assert reader.screen.search.selectedText() == reader.screen.search.text()


def test_a_link_from_another_screen_and_the_way_back_there(reader: Reader) -> None:
    reader.frame.show_screen("bench")
    reader.frame.look_up("measure.convexity")
    assert reader.frame.shown_screen == "reference"
    assert reader.shown == "measure.convexity"
    assert reader.screen.leave.isVisible()
    assert reader.screen.leave.text() == "To the bench"
    reader.key(Key.Key_Escape)
    assert reader.frame.shown_screen == "bench"
    reader.frame.show_screen("reference")
    assert not reader.screen.leave.isVisible()
    reader.frame.show_screen("bench")
    reader.frame.look_up("no.such.entry")
    assert reader.shown == FIRST


def test_an_entry_is_copied_as_text_and_with_its_type(reader: Reader) -> None:
    reader.screen.open("leaf.rack.metric")
    reader.key(Key.Key_C, CONTROL | SHIFT)
    data = QGuiApplication.clipboard().mimeData()
    assert "8 mm\t8\t5.657\t0.3150" in data.text()
    assert "<table" in data.html()
    assert reader.screen.said.text() == "Copied"


def test_an_entry_is_saved_as_a_pdf_with_its_words(reader: Reader, tmp_path: Path) -> None:
    reader.screen.open("rules.iso-5817-c")
    file = tmp_path / "level-c.pdf"
    reader.screen.save_pdf(file)
    pages = PdfReader(file).pages
    text = " ".join(" ".join(page.extract_text() for page in pages).split())
    assert "ISO 5817, level C" in text
    assert "Difference of the legs" in text
    width, height = (float(side) for side in pages[0].mediabox[2:])
    assert width == pytest.approx(595, abs=1)
    assert height == pytest.approx(842, abs=1)
    assert reader.frame.settings.folder("pictures") == str(tmp_path)


def test_a_pdf_that_can_t_be_saved_is_said_so(reader: Reader, tmp_path: Path) -> None:
    reader.screen.save_pdf(tmp_path / "gone" / "a.pdf")
    assert len(reader.frame.dialogs) == 1
    reader.frame.dialogs[0].reject()


def test_a_shop_s_own_rules_come_and_go_with_the_tray(reader: Reader) -> None:
    shop = replace(RULE_SETS["iso-5817-b"], id="yard", title=Text.of("The yard's"))
    reader.frame.shop_rules = (shop,)
    reader.frame.show_screen("bench")
    reader.frame.show_screen("reference")
    reader.type("yard convexity")
    assert "rules.yard.convexity" in reader.screen.contents.keys
    reader.key(Key.Key_Return)
    assert reader.shown == "rules.yard.convexity"
    reader.frame.shop_rules = ()
    reader.frame.show_screen("bench")
    reader.frame.show_screen("reference")
    assert reader.shown == FIRST
    assert "rules.yard.convexity" not in reader.screen.state.before


def test_another_language_goes_on_where_the_first_was(reader: Reader, qapp: QApplication) -> None:
    reader.type("eye limit")
    reader.key(Key.Key_Return)
    before, speech = QLocale(), Speech(qapp)
    speech.speak("es")
    try:
        other = ReferenceScreen(reader.frame)
        reader.qtbot.addWidget(other)
        other.go_on_from(reader.screen)
        assert other.state.shown == "doubt.eye"
        text = other.article.toPlainText()
        assert "Límite del ojo" in text
        assert "0,1 mm" in text
        assert "De segunda mano" in text
        other.search.setText("angulo del borde")
        assert "measure.toe_angle_base" in other.contents.keys
    finally:
        speech.speak("en")
        QLocale.setDefault(before)


def test_the_page_wears_the_theme(reader: Reader) -> None:
    book = reader.screen.book
    for theme in (LIGHT, DARK):
        html = page_html(book, "doubt.eye", theme)
        assert theme.ink in html
        assert theme.accent_wash in html
    reader.frame.change_settings(replace(reader.frame.settings, appearance="dark"))
    assert DARK.ink in reader.screen.article.toHtml()


def test_every_entry_has_a_page_with_its_source_and_how_sure_it_is() -> None:
    for tag in ("en", "es"):
        book = Book(tag)
        for key, entry in book.entries.items():
            html, text = page_html(book, key, LIGHT), plain_page(book, key)
            assert SIGNS[entry.sureness] in html
            assert source_words(entry.source).in_language(tag) in text
            assert entry.title.in_language(tag) in text
            assert book.group(key)


def test_the_list_holds_every_entry_once() -> None:
    book = Book("en")
    listed: list[str] = []
    lines = list(book.lines(""))
    while lines:
        line = lines.pop()
        listed += [line.key] if line.key else []
        lines += line.under
    assert sorted(listed) == sorted(book.entries)


def test_a_shop_s_set_of_a_shipped_id_is_not_listed_twice() -> None:
    shipped: RuleSet = RULE_SETS["as-drawn"]
    assert len(Book("en", (shipped,)).entries) == len(Book("en").entries)


def test_only_links_to_entries_are_followed(reader: Reader) -> None:
    assert key_of("https://example.org/a") == ""
    assert not reader.screen.article.openExternalLinks()


def test_the_keys_are_on_the_sheet(reader: Reader) -> None:
    rows = [row for _, groups in reader.frame.key_sheet() for group in groups for row in group.rows]
    assert "Ctrl+F  /" in [shown for shown, _ in rows]
