"""Where the keyboard is, everywhere: each stop of Tab shows it, none keeps it, none comes twice.

Source of the limits: WCAG 2.2, 2.1.2 (no trap), 2.4.7 and 2.4.13 (the same pixels with and without
focus differ by 3:1, in as many as a line along the control's shorter sides has).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QWidget

from tests.measure.likeness import Picture
from tests.measure.shots import picture_of
from tests.trainer.bench.conftest import Person, person, tray
from trainer.corners.screen import CornersScreen
from trainer.look.tokens import contrast
from trainer.settings import Appearance
from trainer.unforeseen import Trouble

__all__ = ["person", "tray"]

Key = Qt.Key
LEAST = 3.0
OUT = 5
LOOKS = pytest.mark.parametrize("look", ["light", "dark"])


def picture(widget: QWidget) -> Picture:
    """What a window or a dialog looks like now."""
    QApplication.processEvents()
    return picture_of(widget.grab().toImage())


def about(window: QWidget, widget: QWidget) -> tuple[slice, slice]:
    """The part of a window's picture that a widget takes up, and a little around it."""
    at = widget.mapTo(window, QPoint(0, 0))
    down = slice(max(0, at.y() - OUT), at.y() + widget.height() + OUT)
    return down, slice(max(0, at.x() - OUT), at.x() + widget.width() + OUT)


def shown(window: QWidget, widget: QWidget) -> int:
    """How many pixels about `widget` change by 3:1 as it loses the focus; it has it again then."""
    place = about(window, widget)
    with_focus = picture(window)[place]
    widget.clearFocus()
    without = picture(window)[place]
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    QApplication.processEvents()
    changed = np.any(with_focus != without, axis=-1)
    pairs = np.unique(
        np.hstack([with_focus[changed], without[changed]]), axis=0, return_counts=True
    )
    return sum(
        int(count)
        for pair, count in zip(*pairs, strict=True)
        if contrast(_name(pair[:3]), _name(pair[3:])) >= LEAST
    )


def _name(colour: Picture) -> str:
    return "#" + "".join(f"{int(part):02x}" for part in colour)


def round_of_tab(window: QWidget, *, back: bool = False) -> list[QWidget]:
    """All that Tab (or with Shift) stops at until it comes to where it began."""
    key, held = Key.Key_Tab, Qt.KeyboardModifier.NoModifier
    if back:
        key, held = Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier
    stops: list[QWidget] = []
    for _ in range(120):
        QTest.keyClick(window.windowHandle(), key, held)
        now = QApplication.focusWidget()
        assert now is not None, f"Tab led nowhere after {stops[-1:]}"
        if stops and now is stops[0]:
            return stops
        assert now not in stops, f"Tab goes round without {stops[0]}"
        stops.append(now)
    raise AssertionError(f"Tab never comes round: {stops[-3:]}")


def names(stops: list[QWidget]) -> list[str]:
    """What stops are called, for a message."""
    return [stop.accessibleName() or type(stop).__name__ for stop in stops]


def check(window: QWidget) -> list[QWidget]:
    """Go round, and find each stop on the screen, shown and known by name; return the stops."""
    stops = round_of_tab(window)
    weak = {}
    for stop in stops:
        QTest.keyClick(window.windowHandle(), Key.Key_Tab)
        now = QApplication.focusWidget()
        assert now is not None
        assert now.isVisible()
        strong = shown(window, now)
        if strong < 2 * min(now.width(), now.height()):
            weak[f"{type(now).__name__} {now.accessibleName()}"] = strong
        del stop
    assert not weak
    return stops


def wear(one: Person, look: Appearance) -> None:
    """Put on a look."""
    one.frame.change_settings(replace(one.frame.settings, appearance=look))
    QApplication.processEvents()


def judge(one: Person) -> None:
    """Make the first coupon's call by keys alone."""
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_X, Key.Key_A, Key.Key_Return):
        one.key(key)
        one.settle()
    assert one.state.phase == "debrief"


@LOOKS
@pytest.mark.parametrize("judged", [False, True])
def test_every_stop_at_the_bench_shows(person: Person, look: Appearance, judged: bool) -> None:
    wear(person, look)
    if judged:
        judge(person)
    else:
        person.key(Key.Key_8)
    stops = check(person.window)
    assert person.canvas in stops
    assert len(stops) > (8 if judged else 25), names(stops)


@LOOKS
def test_every_stop_at_the_four_corners_shows(person: Person, look: Appearance) -> None:
    wear(person, look)
    person.frame.add_screen("corners", "Four corners", lambda: CornersScreen(person.frame))
    held = Qt.KeyboardModifier.ControlModifier
    QTest.keyClick(person.window.windowHandle(), Key.Key_2, held)
    person.qtbot.wait(50)
    stops = check(person.window)
    assert len(stops) > 10, names(stops)
    assert not any(person.screen.bench.isAncestorOf(stop) for stop in stops)


@pytest.mark.parametrize("judged", [False, True])
def test_the_way_back_is_the_way_there(person: Person, judged: bool) -> None:
    if judged:
        judge(person)
    there = round_of_tab(person.window)
    back = round_of_tab(person.window, back=True)
    assert set(there) == set(back)
    turned = [stop for stop in reversed(back) if stop is not there[0]]
    assert turned == there[1:]


@LOOKS
def test_every_stop_of_a_dialog_shows(person: Person, look: Appearance) -> None:
    wear(person, look)
    for show in (
        person.frame.show_keys,
        person.frame.show_first_start,
        lambda: person.frame.show_notice("Title", "Words"),
        lambda: person.frame.show_unforeseen(Trouble("ValueError", "Where it was", None)),
    ):
        show()
        (dialog,) = person.frame.dialogs
        dialog.activateWindow()
        person.qtbot.waitUntil(dialog.isActiveWindow)
        focus = QApplication.focusWidget()
        assert focus is not None, "a dialog takes the focus as it opens"
        assert dialog.isAncestorOf(focus)
        QTest.keyClick(dialog.windowHandle(), Key.Key_Tab)
        if QApplication.focusWidget() is not focus:
            check(dialog)
        QTest.keyClick(dialog.windowHandle(), Key.Key_Escape)
        assert person.frame.dialogs == ()


@pytest.mark.qt_log_ignore("This plugin does not support")
@LOOKS
def test_the_chosen_line_of_a_menu_shows(person: Person, look: Appearance) -> None:
    wear(person, look)
    held = Qt.KeyboardModifier.AltModifier
    QTest.keyClick(person.window.windowHandle(), Key.Key_V, held)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu), "Alt and a letter open a menu"
    QTest.keyClick(menu, Key.Key_Down)
    before, first = picture(menu), menu.activeAction()
    QTest.keyClick(menu, Key.Key_Down)
    after, second = picture(menu), menu.activeAction()
    assert second is not first
    place = menu.actionGeometry(second)
    rows = slice(place.top(), place.bottom()), slice(place.left(), place.right())
    old, new = before[rows], after[rows]
    changed = np.any(old != new, axis=-1)
    ratios = [contrast(_name(a), _name(b)) for a, b in zip(old[changed], new[changed], strict=True)]
    assert sum(ratio >= LEAST for ratio in ratios) >= 2 * place.height()
    QTest.keyClick(menu, Key.Key_Escape)
