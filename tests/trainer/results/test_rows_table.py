"""A table of ten thousand rows: sorted by number, sifted, copied; the choice outlives both."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from trainer.look.tokens import LIGHT
from trainer.results.arranging import Arranged, Column
from trainer.results.rows_table import RowsTable, as_tsv
from trainer.results.sieve import Choice, Option, SieveBar

MANY = 10_000


@dataclass(frozen=True)
class Row:
    name: str
    value: float | None


def columns(asked: Counter[str] | None = None) -> list[Column[Row]]:
    told = asked if asked is not None else Counter()

    def key(row: Row) -> float | None:
        told["key"] += 1
        return row.value

    def text(row: Row) -> str:
        told["text"] += 1
        return "-" if row.value is None else f"{row.value:g}"

    return [
        Column("name", "Name", "what it is called", lambda row: row.name),
        Column("value", "Value", "how much", text, key, number=True),
    ]


def rows(count: int, seed: int = 1) -> list[Row]:
    rng = random.Random(seed)
    return [
        Row(f"K-{n:05d}", None if rng.random() < 0.05 else float(rng.randrange(2000)))
        for n in range(count)
    ]


def values(of: Arranged[Row]) -> list[float | None]:
    return [of.rows[at].value for at in of.order]


@given(st.lists(st.one_of(st.none(), st.integers(-50, 50)), max_size=40), st.booleans())
def test_numbers_are_sorted_as_numbers_and_nothing_comes_last(
    found: list[int | None], down: bool
) -> None:
    of = Arranged(columns(), [Row(str(n), v) for n, v in enumerate(found)])
    of.arrange("value", descending=down)
    there = sorted((v for v in found if v is not None), reverse=down)
    assert values(of) == [*there, *([None] * (len(found) - len(there)))]
    # Of equal rows the one that came first stays first.
    for one, other in zip(of.order, of.order[1:], strict=False):
        if of.rows[one].value == of.rows[other].value:
            assert one < other


def test_a_row_is_asked_for_its_key_once_however_often_it_is_sorted() -> None:
    asked: Counter[str] = Counter()
    of = Arranged(columns(asked), rows(MANY))
    of.arrange("value")
    assert asked["key"] == MANY
    of.arrange("value", descending=True)
    of.arrange("name")
    of.arrange("value")
    assert asked["key"] == MANY


def test_words_are_looked_for_in_every_column_and_all_of_them_must_be_there() -> None:
    of = Arranged(columns(), [Row("Kestrel 7", 12.0), Row("Otter 7", 3.0), Row("kestrel 9", 7.0)])
    of.sift("KESTREL 7")
    assert [of.rows[at].name for at in of.order] == ["Kestrel 7", "kestrel 9"]
    of.sift("kestrel 12")
    assert [of.rows[at].name for at in of.order] == ["Kestrel 7"]
    of.sift("", lambda row: (row.value or 0.0) < 10.0)
    assert [of.rows[at].name for at in of.order] == ["Otter 7", "kestrel 9"]
    of.take([Row("Kestrel 1", 1.0), Row("Heron", 50.0)])
    assert [of.rows[at].name for at in of.order] == ["Kestrel 1"], "the sieve stays"


@pytest.fixture
def table(qtbot: QtBot) -> RowsTable[Row]:
    made: RowsTable[Row] = RowsTable(columns(), lambda row: row.name)
    made.wear(LIGHT)
    made.resize(500, 400)
    made.show_rows(rows(MANY))
    made.show()
    qtbot.addWidget(made)
    qtbot.waitExposed(made)
    made.setFocus()
    return made


def test_a_choice_and_the_focus_outlive_sorting_and_sifting(table: RowsTable[Row]) -> None:
    assert table.choose("K-04711")
    table.setCurrentIndex(table.rows.index(table.currentIndex().row(), 1))
    table.sort("value")
    assert table.current is not None
    assert table.current.name == "K-04711"
    assert table.currentIndex().column() == 1
    assert [row.name for row in table.chosen] == ["K-04711"]
    assert table.visualRect(table.currentIndex()).intersects(table.viewport().rect())
    table.sift("04711")
    assert table.rows.rowCount() == 1
    assert table.current.name == "K-04711"
    table.sift("nobody")
    assert table.rows.rowCount() == 0
    assert table.current is None
    table.sift("")
    assert table.current is not None, "what the sieve hid comes back chosen"
    assert table.current.name == "K-04711"


def test_only_what_is_seen_is_put_into_words(qtbot: QtBot) -> None:
    asked: Counter[str] = Counter()
    made: RowsTable[Row] = RowsTable(columns(asked), lambda row: row.name)
    qtbot.addWidget(made)
    made.resize(500, 400)
    made.show_rows(rows(MANY))
    made.show()
    qtbot.waitExposed(made)
    QApplication.processEvents()
    assert asked["text"] < 1000


def test_a_click_on_a_title_sorts_and_another_turns_it_round(table: RowsTable[Row]) -> None:
    header = table.horizontalHeader()
    at = QPoint(header.sectionViewportPosition(1) + 20, header.height() // 2)
    QTest.mouseClick(header.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert (table.rows.arranged.sorted_by, table.rows.arranged.descending) == ("value", False)
    assert header.sortIndicatorSection() == 1
    assert header.sortIndicatorOrder() == Qt.SortOrder.AscendingOrder
    QTest.mouseClick(header.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert table.rows.arranged.descending
    assert header.sortIndicatorOrder() == Qt.SortOrder.DescendingOrder


def test_return_opens_and_ctrl_c_copies_for_a_spreadsheet(table: RowsTable[Row]) -> None:
    opened: list[Row] = []
    table.opened.connect(opened.append)
    table.sort("value", descending=True)
    table.setCurrentIndex(table.rows.index(0, 0))
    QTest.keyClick(table, Qt.Key.Key_Return)
    assert [row.name for row in opened] == [table.rows.row(0).name]
    QTest.keyClick(table, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    lines = QGuiApplication.clipboard().text().splitlines()
    first, second = table.rows.row(0), table.rows.row(1)
    assert lines == [
        "Name\tValue",
        f"{first.name}\t{first.value:g}",
        f"{second.name}\t{second.value:g}",
    ]
    assert table.choose("K-00003")
    table.copy()
    assert len(QGuiApplication.clipboard().text().splitlines()) == MANY + 1, (
        "one row is chosen by having the focus: then it is all"
    )


def test_a_cell_breaks_no_row_of_the_copy() -> None:
    assert as_tsv([["a\tb", "c\nd"]]) == "a b\tc d\n"


def test_the_row_above_sifts_and_sorts_by_keys_and_says_how_many(
    table: RowsTable[Row], qtbot: QtBot
) -> None:
    bar: SieveBar[Row] = SieveBar(table, "Find...")
    qtbot.addWidget(bar)
    bar.resize(1000, 40)
    bar.show()
    small = Option[Row]("Small", lambda row: (row.value or 0.0) < 100.0)
    bar.offer([Choice("size", "Size", [Option("All sizes", None), small])])
    assert bar.count.text() == "all 10000"
    QTest.keyClicks(bar.field, "k-000")
    qtbot.waitUntil(lambda: table.rows.rowCount() == 100)
    bar.choosers["size"].setFocus()
    QTest.keyClick(bar.choosers["size"], Qt.Key.Key_Down)
    shown = [table.rows.row(at) for at in range(table.rows.rowCount())]
    assert shown
    assert all(row.value is None or row.value < 100.0 for row in shown)
    assert bar.count.text() == f"{len(shown)} of 10000"
    bar.order.setCurrentIndex(bar.order.findData("value"))
    bar.order.activated.emit(bar.order.currentIndex())
    QTest.mouseClick(bar.down, Qt.MouseButton.LeftButton)
    numbers = [v for v in values(table.rows.arranged) if v is not None]
    assert numbers == sorted(numbers, reverse=True)
    bar.clear()
    assert table.rows.rowCount() == MANY
