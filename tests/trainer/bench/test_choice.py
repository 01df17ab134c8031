"""Choices find room for their words in any language: first without keys, then in more rows."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from trainer.bench.choice import Choice, ChoiceRow


def row_of(*titles: str, columns: int) -> ChoiceRow:
    choices = [(title, Choice(title, key="X", glyph="ring")) for title in titles]
    return ChoiceRow("Things", choices, lambda _: None, columns=columns)


@pytest.mark.parametrize(
    "titles", [("a", "b", "c"), ("Convexa", "Plana", "Cóncava"), ("mmmmmmmmmmmm",) * 3]
)
@pytest.mark.parametrize("width", [240, 300, 400])
def test_words_find_room(qapp: QApplication, titles: tuple[str, ...], width: int) -> None:
    row = row_of(*(f"{title}{at}" for at, title in enumerate(titles)), columns=3)
    row.fit(width)
    grid = row.layout()
    assert grid is not None
    grid.activate()
    longest = max(button.settled_width() for button in row.buttons.values())
    assert row.minimumSizeHint().width() <= max(width, longest)


def test_arrows_follow_the_rows_that_there_are(qapp: QApplication) -> None:
    row = row_of("mmmmmmmmmmmmmmm", "nnnnnnnnnnnnnnn", "ooooooooooooooo", columns=3)
    first, _, last = row.buttons.values()
    row.fit(2000)
    row.step_focus(first, Qt.Key.Key_Down)
    assert last.focusPolicy() == Qt.FocusPolicy.NoFocus, "all in one row: nothing lies below"
    row.fit(2 * max(button.settled_width() for button in row.buttons.values()) + 4)
    row.step_focus(first, Qt.Key.Key_Down)
    assert last.focusPolicy() == Qt.FocusPolicy.TabFocus
