"""Light and dark while the program runs: what was switched looks like what was started so."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog

from tests.measure.likeness import Picture, reduced, unlikeness
from tests.measure.shots import WIDTH, picture_of
from tests.trainer.bench.conftest import Person
from trainer.notices import FaultRow
from trainer.settings import Appearance

Key = Qt.Key


def wear(person: Person, look: Appearance) -> None:
    person.frame.change_settings(replace(person.frame.settings, appearance=look))
    QApplication.processEvents()


def seen(person: Person) -> Picture:
    QApplication.processEvents()
    return picture_of(person.window.grab().toImage())


def alike(now: Picture, before: Picture) -> bool:
    return unlikeness(now, reduced(before, WIDTH)).alike


def nothing(person: Person) -> None:
    """A coupon laid out."""


def seated(person: Person) -> None:
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D):
        person.key(key)
        person.settle()


def judged(person: Person) -> None:
    seated(person)
    person.click(person.button("Convex"))
    person.click(person.button("Accept"))
    person.canvas.setFocus()
    person.key(Key.Key_Return)


@pytest.mark.parametrize("play", [nothing, seated, judged])
def test_switched_there_and_back_is_the_same_picture(
    person: Person, play: Callable[[Person], None]
) -> None:
    """Nothing keeps a colour of the look before: not the canvas, nor a sign, nor the loupe."""
    wear(person, "light")
    play(person)
    light = seen(person)
    wear(person, "dark")
    dark = seen(person)
    wear(person, "light")
    assert alike(seen(person), light)
    wear(person, "dark")
    assert alike(seen(person), dark)


@pytest.mark.parametrize("play", [nothing, seated])
def test_switched_before_or_after_is_the_same_picture(
    person: Person, play: Callable[[Person], None]
) -> None:
    wear(person, "light")
    play(person)
    wear(person, "dark")
    after = seen(person)
    person.screen.again()
    # The loupe stays in its corner while that is as good as another.
    person.canvas._corner = None
    play(person)
    assert alike(seen(person), after)


@pytest.mark.parametrize(
    "show",
    [
        lambda person: person.frame.show_first_start(),
        lambda person: person.frame.show_notice("As drawn", "No undercut is allowed."),
        lambda person: person.frame.show_faults("a.tray.json", [FaultRow("/a", "b", "c")]),
    ],
    ids=["first start", "notice", "faults"],
)
def test_an_open_dialog_switches_too(person: Person, show: Callable[[Person], object]) -> None:
    wear(person, "dark")
    show(person)
    dark = dialog_seen(person)
    person.frame.dialogs[-1].reject()
    wear(person, "light")
    show(person)
    assert not alike(dialog_seen(person), dark)
    wear(person, "dark")
    assert alike(dialog_seen(person), dark)


def dialog_seen(person: Person) -> Picture:
    QApplication.processEvents()
    dialog = person.frame.dialogs[-1]
    assert isinstance(dialog, QDialog)
    return picture_of(dialog.grab().toImage())
