"""Contrast as it is painted: every word, sign, border and focus ring of the real bench.

Source of the limits: WCAG 2.2, 1.4.3 (text 4.5:1) and 1.4.11 (graphics, borders, focus 3:1); what
can't be used now is exempt in both.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QPushButton, QWidget

from tests.measure.likeness import Picture
from tests.measure.shots import picture_of
from tests.trainer.bench.conftest import Person
from trainer.bench.glyph import Glyph
from trainer.look.tokens import contrast
from trainer.settings import Appearance

TEXT = 4.5
GRAPHICS = 3.0
LOOKS = pytest.mark.parametrize("look", ["light", "dark"])
Key = Qt.Key


def wear(person: Person, look: Appearance) -> None:
    person.frame.change_settings(replace(person.frame.settings, appearance=look))
    QApplication.processEvents()


def play(person: Person, state: str) -> None:
    if state in ("seated", "judged"):
        for key in (Key.Key_8, Key.Key_Space, Key.Key_D):
            person.key(key)
            person.settle()
        person.click(person.button("Convex"))
    if state == "judged":
        person.click(person.button("Accept"))
        person.canvas.setFocus()
        person.key(Key.Key_Return)


def seen(person: Person) -> Picture:
    QApplication.processEvents()
    return picture_of(person.window.grab().toImage())


def part(person: Person, picture: Picture, widget: QWidget, out: int = 0) -> Picture:
    at = widget.mapTo(person.window, QPoint(0, 0))
    top, left = max(0, at.y() - out), max(0, at.x() - out)
    return picture[top : at.y() + widget.height() + out, left : at.x() + widget.width() + out]


def colours(picture: Picture) -> Counter[str]:
    return Counter(f"#{r:02x}{g:02x}{b:02x}" for r, g, b in picture.reshape(-1, 3).tolist())


def strongest(picture: Picture) -> float:
    """The contrast of what stands out most from the ground, which is the commonest colour."""
    counted = colours(picture)
    ground = counted.most_common(1)[0][0]
    return max(contrast(colour, ground) for colour in counted)


def on_show(person: Person, kind: type[QWidget]) -> Iterator[QWidget]:
    """Widgets of a kind that are in view whole and can be used."""
    column = person.screen.bench.column.viewport()
    for widget in person.window.findChildren(kind):
        assert isinstance(widget, QWidget)
        if not widget.isVisible() or not widget.isEnabled() or widget.width() < 4:
            continue
        if not column.isAncestorOf(widget) or column.rect().contains(
            widget.mapTo(column, widget.rect().bottomRight())
        ):
            yield widget


@LOOKS
@pytest.mark.parametrize("state", ["waiting", "seated", "judged"])
def test_every_word_and_sign_stands_out(person: Person, look: Appearance, state: str) -> None:
    wear(person, look)
    play(person, state)
    picture = seen(person)
    weak = []
    for widget in [*on_show(person, QLabel), *on_show(person, QPushButton)]:
        words = widget.text() if isinstance(widget, (QLabel, QPushButton)) else ""
        if words and strongest(part(person, picture, widget)) < TEXT:
            weak.append(words)
    assert len(list(on_show(person, QLabel))) >= 15
    weak += [
        glyph.name
        for glyph in on_show(person, Glyph)
        if isinstance(glyph, Glyph)
        and glyph.name
        and strongest(part(person, picture, glyph)) < GRAPHICS
    ]
    assert not weak


@LOOKS
@pytest.mark.parametrize("state", ["waiting", "seated", "judged"])
def test_every_button_shows_where_it_ends(person: Person, look: Appearance, state: str) -> None:
    """Its border, or its ground, against what it stands on; links and tabs are words."""
    wear(person, look)
    play(person, state)
    picture = seen(person)
    weak = []
    for button in on_show(person, QPushButton):
        if button.property("kind") in ("link", "tab", "quiet", "note"):
            continue
        room = part(person, picture, button, 2)
        line = [f"#{r:02x}{g:02x}{b:02x}" for r, g, b in room[room.shape[0] // 2, :6].tolist()]
        if max(contrast(colour, line[0]) for colour in line) < GRAPHICS:
            weak.append((button.accessibleName(), line))
    assert not weak


@LOOKS
def test_the_focus_shows_on_every_stop(person: Person, look: Appearance) -> None:
    """Going along with Tab: each stop changes by 3:1 in enough pixels for a line about it."""
    wear(person, look)
    person.key(Key.Key_8)
    person.canvas.setFocus()
    seen_stops = 0
    for _ in range(18):
        before = seen(person)
        person.key(Key.Key_Tab)
        now = QApplication.focusWidget()
        assert now is not None
        after = seen(person)
        if not isinstance(now, QAbstractButton):
            continue
        old, new = part(person, before, now, 4), part(person, after, now, 4)
        if old.shape != new.shape:
            continue
        changed = np.any(old != new, axis=-1)
        pairs = zip(old[changed].tolist(), new[changed].tolist(), strict=True)
        strong = sum(contrast(_name(one), _name(other)) >= GRAPHICS for one, other in pairs)
        # A line one pixel wide about the control's shorter side, at the least.
        assert strong >= 2 * min(now.width(), now.height()), now.accessibleName()
        seen_stops += 1
    assert seen_stops >= 8


def _name(colour: list[int]) -> str:
    return "#" + "".join(f"{part:02x}" for part in colour)


def test_a_weak_word_would_be_found(person: Person) -> None:
    """What these tests stand on: a word in the tone of what is disabled comes out as too weak."""
    label = next(label for label in on_show(person, QLabel) if isinstance(label, QLabel))
    assert strongest(part(person, seen(person), label)) >= TEXT
    label.setStyleSheet(f"color: {person.frame.theme.disabled}")
    assert strongest(part(person, seen(person), label)) < TEXT
