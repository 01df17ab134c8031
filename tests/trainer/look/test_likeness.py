"""The measure that compares screens with what was kept: what it must see, what it must not mind."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QLabel, QWidget

from tests.measure.likeness import Picture, lab, reduced, unlikeness
from tests.measure.shots import WIDTH, picture_of
from tests.trainer.bench.conftest import Person
from trainer.look.theme import apply
from trainer.look.tokens import DARK, LIGHT, Theme
from trainer.sheet import screen_sheet


def seen(person: Person) -> Picture:
    QApplication.processEvents()
    return picture_of(person.window.grab().toImage())


def kept(picture: Picture) -> Picture:
    return reduced(picture, WIDTH)


def room_of(person: Person, widget: QWidget) -> tuple[slice, slice]:
    at = widget.mapTo(person.window, QPoint(0, 0))
    return slice(at.y(), at.y() + widget.height()), slice(at.x(), at.x() + widget.width())


def labels(person: Person) -> list[QLabel]:
    """The words on the panels that stand alone, each at least as long as a short word."""
    column = person.screen.bench.column.viewport()
    return [
        label
        for label in person.window.findChildren(QLabel)
        if label.isVisible()
        and label.text()
        and label.fontMetrics().horizontalAdvance(label.text()) >= 36
        and (
            not column.isAncestorOf(label)
            or column.rect().contains(label.mapTo(column, label.rect().bottomRight()))
        )
    ]


def dress(person: Person, theme: Theme) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    apply(app, theme)
    person.window.setStyleSheet(screen_sheet(theme))
    person.frame.theme = theme
    person.screen.show_state()


def test_lab_agrees_with_published_values() -> None:
    """sRGB's red, green and blue in CIELAB under D65, as colour tables have them."""
    colours = np.array([[[255, 0, 0], [0, 255, 0], [0, 0, 255]]], dtype=np.uint8)
    expected = [[53.24, 80.09, 67.20], [87.73, -86.18, 83.18], [32.30, 79.19, -107.86]]
    assert lab(colours)[0] == pytest.approx(np.array(expected), abs=0.03)


def test_the_same_picture_is_alike(person: Person) -> None:
    picture = seen(person)
    found = unlikeness(picture, kept(picture))
    assert found.alike
    assert found.worst == 0.0


def test_another_smoothing_is_alike(person: Person) -> None:
    """Letters and lines softened, shifted by half a pixel, with noise, as machines may differ."""
    picture = seen(person)
    reference, exact = kept(picture), picture.astype(np.float64)
    beside, below = np.roll(exact, 1, 1), np.roll(exact, 1, 0)
    noise = np.random.default_rng(3).normal(0.0, 2.0, exact.shape)
    for other in (
        0.25 * beside + 0.5 * exact + 0.25 * np.roll(exact, -1, 1),
        0.5 * (exact + beside),
        0.5 * (exact + below),
        exact + noise,
    ):
        changed = np.clip(np.rint(other), 0, 255).astype(np.uint8)
        assert not np.array_equal(changed, picture)
        assert unlikeness(changed, reference).alike


def test_other_hinting_of_letters_is_alike(person: Person) -> None:
    """The same words in the same places, drawn by another font engine's rules."""
    reference = kept(seen(person))
    plain = seen(person)
    for label in labels(person):
        font = QFont(label.font())
        font.setHintingPreference(QFont.HintingPreference.PreferFullHinting)
        font.setStyleStrategy(QFont.StyleStrategy.NoSubpixelAntialias)
        label.setFont(font)
    changed = seen(person)
    assert unlikeness(changed, reference).alike
    assert changed.shape == plain.shape


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
def test_a_missing_word_is_seen_wherever_it_stood(person: Person, theme: Theme) -> None:
    dress(person, theme)
    picture = seen(person)
    reference = kept(picture)
    found = labels(person)
    assert len(found) >= 15
    tried = found[::3]
    missed = []
    for label in tried:
        changed = picture.copy()
        rows, columns = room_of(person, label)
        if label.isEnabled():
            changed[rows, columns] = changed[rows, columns][0, 0]
            if unlikeness(changed, reference).alike:
                missed.append(label.text())
    assert not missed


def test_a_panel_that_moved_is_seen(person: Person) -> None:
    """By eight pixels, to any side."""
    picture = seen(person)
    reference = kept(picture)
    bench = person.screen.bench
    for widget in (bench.foot, bench.side, person.frame.bar, person.canvas):
        rows, columns = room_of(person, widget)
        for axis, way in ((0, 8), (0, -8), (1, 8), (1, -8)):
            changed = picture.copy()
            changed[rows, columns] = np.roll(changed[rows, columns], way, axis)
            assert not unlikeness(changed, reference).alike


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
@pytest.mark.parametrize(
    ("role", "colour"),
    [
        ("accent", "#9a5a1c"), ("ink", "#a03020"), ("muted", "#b06a10"), ("window", "#808080"),
        ("panel", "#c8b890"), ("outline", "#d03030"), ("accent_wash", "#e0b0b0"),
    ],
)  # fmt: skip
def test_a_colour_of_another_hue_is_seen(
    person: Person, theme: Theme, role: str, colour: str
) -> None:
    dress(person, theme)
    person.key(Qt.Key.Key_8)
    person.canvas.setFocus()
    reference = kept(seen(person))
    changed: dict[str, Any] = {role: colour}
    dress(person, replace(theme, **changed))
    assert not unlikeness(seen(person), reference).alike


def test_the_table_in_another_colour_is_seen(person: Person) -> None:
    reference = kept(seen(person))
    dress(person, replace(LIGHT, bench=replace(LIGHT.bench, glow="#e8f2ff", light="#d8e6f6")))
    assert not unlikeness(seen(person), reference).alike


def test_it_says_where(person: Person) -> None:
    picture = seen(person)
    changed = picture.copy()
    rows, columns = room_of(person, person.screen.record_bar)
    changed[rows, columns] = 0
    across, down = unlikeness(changed, kept(picture)).at
    assert columns.start <= across * picture.shape[1] <= columns.stop
    assert rows.start <= down * picture.shape[0] <= rows.stop


def test_another_size_is_no_likeness(person: Person) -> None:
    picture = seen(person)
    with pytest.raises(ValueError, match="other proportions"):
        unlikeness(picture[:400], kept(picture))
