"""The photo that a section was taken from: behind it after the call, and never before."""

from __future__ import annotations

import base64
from typing import Any

import pytest
from PySide6.QtCore import Qt

from exercises.tray import Tray, read_tray
from tests.trainer.bench.conftest import Person
from tests.trainer.bench.test_debrief import judge
from tests.trainer.canvas.test_backing import jpeg

Key = Qt.Key


@pytest.fixture
def tray() -> Tray:
    """Two coupons, the first with a photo."""
    bare: dict[str, Any] = {
        "bead": {"leg_base": 8.4, "leg_upright": 6.7, "crown": 0.9},
        "callout": {"size": 8},
    }
    text = base64.b64encode(jpeg()).decode("ascii")
    backdrop = {"jpeg": text, "left": -10, "top": 16, "mm_per_pixel": 0.1}
    coupons: Any = [{"id": "a", **bare, "backdrop": backdrop}, {"id": "b", **bare}]
    return read_tray({"format": "toe-and-throat/tray", "version": 3, "coupons": coupons})


def test_before_a_call_the_photo_is_not_shown(person: Person) -> None:
    for key in (Key.Key_8, Key.Key_Space, Key.Key_P):
        person.key(key)
        person.settle()
        assert person.canvas.scene.backing is None
    assert not person.screen.review.replay.picture.isVisible()


def test_in_the_debrief_it_is_shown_on_asking(person: Person) -> None:
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_T)
    button = person.screen.review.replay.picture
    assert button.isVisible()
    assert person.canvas.scene.backing is None
    person.click(button)
    backing = person.canvas.scene.backing
    assert backing is not None
    assert (backing.left, backing.top, backing.mm_per_pixel) == (-10.0, 16.0, 0.1)
    assert button.isChecked()
    person.key(Key.Key_P)
    assert person.canvas.scene.backing is None
    assert not button.isChecked()


def test_where_there_is_no_photo_nothing_offers_one(person: Person) -> None:
    person.key(Key.Key_PageDown)
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_T)
    assert not person.screen.review.replay.picture.isVisible()
    person.key(Key.Key_P)
    assert person.canvas.scene.backing is None


def test_the_next_coupon_begins_without_it(person: Person) -> None:
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_T)
    person.key(Key.Key_P)
    person.key(Key.Key_R)
    assert person.state.phase != "debrief"
    assert person.canvas.scene.backing is None
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_T)
    assert person.canvas.scene.backing is None
