"""Words and rows in the room that they have: cut and told whole, near to each other, readable."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QHelpEvent, QImage
from PySide6.QtWidgets import QApplication, QLabel, QListWidget, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from trainer.bench.choice import Choice, ChoiceRow
from trainer.bench.worded import point, wrapped
from trainer.cut_words import CutChoice, CutLabel
from trainer.look.theme import apply
from trainer.look.tokens import DARK, LIGHT, Theme
from trainer.results.arranging import Column
from trainer.results.rows_table import RowsTable
from trainer.results.tabled import readable
from trainer.sheet import screen_sheet
from trainer.shop.knob_bar import KnobBar
from trainer.sittings.terms_form import TermsForm
from trainer.sittings.tick_table import Row, TickTable

ROWS = [Row(n, (f"K-{n:02}", f"Learner {n}", "Tuesday", str(n))) for n in range(4)]
HEADS = ("Code", "Name", "Group", "Calls")
OPEN: list[QWidget] = []
"""Windows that nothing else holds."""

LONG = "Of these words there are more than any line of a page that is read would hold. " * 4


@pytest.fixture(autouse=True)
def _dressed(qapp: QApplication) -> Iterator[None]:
    before = (qapp.palette(), qapp.styleSheet(), qapp.font())
    apply(qapp, LIGHT)
    yield
    OPEN.clear()
    qapp.setPalette(before[0])
    qapp.setStyleSheet(before[1])
    qapp.setFont(before[2])


def shown(qtbot: QtBot, widget: QWidget, width: int, height: int, theme: Theme = LIGHT) -> QWidget:
    """A window of that size that holds a widget, in the sheet of the screens."""
    window = QWidget()
    qtbot.addWidget(window)
    OPEN.append(window)
    window.setStyleSheet(screen_sheet(theme))
    column = QVBoxLayout(window)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(widget)
    window.resize(width, height)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    QApplication.processEvents()
    return window


def table(qtbot: QtBot, width: int) -> TickTable:
    made = TickTable(HEADS, "Learners", boxes=False)
    shown(qtbot, made, width, 240)
    made.show_rows(ROWS, LIGHT)
    QApplication.processEvents()
    return made


def test_on_a_wide_window_what_stands_in_one_row_stays_in_sight_of_each_other(
    qtbot: QtBot,
) -> None:
    made = table(qtbot, 2400)
    assert made.columnWidth(1) <= 420
    assert made.columnViewportPosition(2) < 700
    last = made.columnViewportPosition(3) + made.columnWidth(3)
    assert last == made.viewport().width(), "the rows are as wide as the table all the same"


def test_on_a_narrow_window_the_column_takes_what_is_left(qtbot: QtBot) -> None:
    made = table(qtbot, 420)
    last = made.columnViewportPosition(3) + made.columnWidth(3)
    assert last == made.viewport().width()
    made.window().resize(2400, 240)
    QApplication.processEvents()
    assert made.columnWidth(1) <= 420


def test_a_row_that_is_chosen_leaves_the_mark_of_focus_whole(qtbot: QtBot) -> None:
    made = table(qtbot, 600)
    made.choose(1)
    made.setFocus(Qt.FocusReason.TabFocusReason)
    QApplication.processEvents()
    image: QImage = made.grab().toImage()
    middle = range(12, made.height() - 12)
    for x in (0, 1, made.width() - 2, made.width() - 1):
        assert {image.pixelColor(x, y).name() for y in middle} == {LIGHT.accent}


def test_a_title_stands_over_the_words_of_its_column(qtbot: QtBot) -> None:
    made = table(qtbot, 600)
    window = made.window()
    image = window.grab().toImage()
    head = made.horizontalHeader().height() + 2
    left = made.columnViewportPosition(1) + 2

    def begins(top: int, bottom: int) -> int:
        ground = image.pixelColor(left + 1, top)
        return next(
            x for x in range(left, left + 60)
            for y in range(top, bottom) if image.pixelColor(x, y) != ground
        )  # fmt: skip

    title, words = begins(4, head - 4), begins(head + 4, head + 24)
    assert abs(title - words) <= 1


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
def test_who_is_chosen_in_a_list_looks_as_in_the_shops(qtbot: QtBot, theme: Theme) -> None:
    names = QListWidget()
    names.setProperty("kind", "tray")
    names.addItems(["Bench 3", "Bench 7"])
    window = shown(qtbot, names, 200, 120, theme)
    names.setCurrentRow(0)
    QApplication.processEvents()
    rect = names.visualItemRect(names.item(0))
    at = names.viewport().mapTo(window, rect.center())
    image = window.grab().toImage()
    assert image.pixelColor(rect.right() - 8, at.y()).name() == theme.accent_wash
    rim = names.viewport().mapTo(window, rect.topLeft()).x() + 3
    row = {image.pixelColor(rim, y).name() for y in range(at.y() - 4, at.y() + 4)}
    assert row == {theme.accent_wash}, "no letter touches the rim"


def columns(*, number: bool) -> list[Column[int]]:
    told: list[Column[int]] = [
        Column("name", "Name", "Who it is", str, str),
        Column("n", "Times", "How often", str, float, number=number),
    ]
    return told


@pytest.mark.parametrize("number", [True, False])
def test_a_figure_at_the_end_of_a_row_stays_with_it(qtbot: QtBot, number: bool) -> None:
    made: RowsTable[int] = RowsTable(columns(number=number), str)
    shown(qtbot, made, 1600, 200)
    made.show_rows([1, 2, 3])
    QApplication.processEvents()
    assert (made.columnWidth(1) < 300) == number


def test_words_are_cut_with_an_ellipsis_and_told_whole(qtbot: QtBot) -> None:
    choice = CutChoice()
    choice.setToolTip("Handle to work with")
    choice.addItems(["Upright undercut: width", "Crown"])
    shown(qtbot, choice, 110, 40)
    assert choice.shown.endswith("\u2026")
    ask = QHelpEvent(QEvent.Type.ToolTip, QPoint(5, 5), choice.mapToGlobal(QPoint(5, 5)))
    QApplication.sendEvent(choice, ask)
    assert choice.toolTip() == "Upright undercut: width"
    choice.setCurrentIndex(1)
    assert choice.shown == "Crown"
    QApplication.sendEvent(choice, ask)
    assert choice.toolTip() == "Handle to work with"


def test_a_label_that_is_cut_has_its_words_in_the_tip(qtbot: QtBot) -> None:
    label = CutLabel("Leg on the upright")
    assert label.minimumSizeHint().width() == 0
    assert label.toolTip() == "Leg on the upright"
    qtbot.addWidget(label)


def test_a_long_sentence_is_broken_where_an_eye_can_follow(qtbot: QtBot) -> None:
    holder = QWidget()
    label = wrapped(LONG)
    holder.setLayout(readable(label))
    shown(qtbot, holder, 1900, 200)
    assert label.x() == holder.layout().contentsRect().left()  # type: ignore[union-attr]  # it has
    assert 600 < label.width() <= 900
    holder.window().resize(700, 200)
    QApplication.processEvents()
    assert label.width() >= 670, "and where there is less room, all of it"


def test_the_lines_of_a_point_stand_under_each_other(qtbot: QtBot) -> None:
    made = point(LONG)
    shown(qtbot, made, 400, 300)
    dot, words = made.findChildren(QLabel)
    assert dot.text() == "\u2022"
    assert words.x() > dot.geometry().right()
    assert words.height() >= 4 * words.fontMetrics().lineSpacing()


def test_keys_are_left_out_before_choices_take_another_row(qtbot: QtBot) -> None:
    names = ("Convexa", "Plana", "C\u00f3ncava")
    choices = [(name, Choice(name, "", "disc", "X")) for name in names]
    row = ChoiceRow("Face", choices, lambda _: None, columns=3)
    shown(qtbot, row, 320, 60)
    whole = sum(button.settled_width() for _, button in choices) + 8
    row.fit(whole)
    tops = {button.y() for button in row.buttons.values()}
    row.fit(whole - 12)
    QApplication.processEvents()
    assert len(tops) == 1
    assert tops == {button.y() for button in row.buttons.values()}, "still one row"
    assert all(button.settled_width() < whole // 3 for button in row.buttons.values())


def test_a_longer_word_has_a_wider_button_where_it_would_touch_the_rim(qtbot: QtBot) -> None:
    names = ("Luz", "Contacto", "Apartada", "Sin asentar")
    choices = [(name, Choice(name, "", "disc", "X", upright=True)) for name in names]
    row = ChoiceRow("State", choices, lambda _: None, columns=4)
    window = shown(qtbot, row, 300, 60)
    row.fit(300)
    QApplication.processEvents()
    longest = choices[-1][1]
    word = next(label for label in longest.findChildren(QLabel) if label.text() == names[-1])
    at = word.mapTo(longest, QPoint(0, 0)).x()
    assert at >= 3
    assert at + word.width() <= longest.width() - 3
    window.resize(600, 60)
    row.fit(600)
    QApplication.processEvents()
    widths = [button.width() for _, button in choices]
    assert max(widths) - min(widths) <= 1, "with room they are alike"


def test_no_button_under_the_section_is_cut_where_the_bar_is_narrow(qtbot: QtBot) -> None:
    bar = KnobBar()
    bar.choice.addItems(["Upright undercut: width"])
    place = QWidget()
    bar.setParent(place)
    shown(qtbot, place, 430, 44)
    bar.setGeometry(0, 0, 430, 44)
    bar.looks["fit"].setText("Ajustar")
    bar.draw.setText("Dibujar")
    bar.set_narrow(True)
    QApplication.processEvents()
    for button in (bar.looks["fit"], bar.draw):
        assert button.width() >= button.sizeHint().width()
    assert bar.draw.geometry().right() < bar.looks["fit"].x()
    assert bar.looks["fit"].geometry().right() <= bar.width()


def test_the_form_of_a_sitting_says_how_wide_its_words_are(qtbot: QtBot) -> None:
    form = TermsForm()
    shown(qtbot, form, 700, 300)
    form.window().resize(form.needed_width, 300)
    QApplication.processEvents()
    holder = form.widget()
    assert holder is not None
    assert holder.width() <= form.viewport().width(), "nothing is under the bar"


def test_no_line_ends_between_a_figure_and_its_unit(qtbot: QtBot) -> None:
    words = "8.00 mm needed, 1.30 mm short, 100 % of 5/16 in: 4 s"
    label = wrapped(words)
    qtbot.addWidget(label)
    assert label.text() == words
    assert "8.00\u00a0mm needed, 1.30\u00a0mm short" in QLabel.text(label)
    assert QLabel.text(label).endswith("100\u00a0% of 5/16\u00a0in: 4\u00a0s")


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
def test_no_box_stands_where_two_scroll_bars_meet(
    qapp: QApplication, qtbot: QtBot, theme: Theme
) -> None:
    apply(qapp, theme)
    made: RowsTable[int] = RowsTable(columns(number=True), str)
    window = shown(qtbot, made, 120, 120, theme)
    made.show_rows(list(range(40)))
    QApplication.processEvents()
    down, along = made.verticalScrollBar(), made.horizontalScrollBar()
    assert down.isVisible()
    assert along.isVisible()
    across = down.mapTo(window, QPoint(0, 0)).x()
    below = along.mapTo(window, QPoint(0, 0)).y()
    image = window.grab().toImage()
    seen = {
        image.pixelColor(across + x, below + y).name()
        for x in range(down.width() - 4)
        for y in range(along.height() - 4)
    }
    assert seen == {theme.raised}
