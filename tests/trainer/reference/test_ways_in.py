"""From the bench into the reference and back: by mouse and by keys, and nothing is given away."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from tests.trainer.bench.conftest import Person, person, tray
from trainer.bench.look_up import LookUp
from trainer.reference.screen import ReferenceScreen

__all__ = ["person", "tray"]

Key = Qt.Key


@pytest.fixture
def reference(person: Person) -> ReferenceScreen:
    person.frame.add_screen("reference", "Reference", lambda: ReferenceScreen(person.frame))
    screen = person.frame.make_screen("reference")
    assert isinstance(screen, ReferenceScreen)
    return screen


def test_the_job_card_leads_to_callout_and_rules(
    person: Person, reference: ReferenceScreen
) -> None:
    callout, rules = person.screen.job_card.look_ups
    for button, wanted in ((callout, "callout.leg"), (rules, "rules.as-drawn")):
        person.click(button)
        assert person.frame.shown_screen == "reference"
        assert reference.state.shown == wanted
        person.key(Key.Key_Escape)
        assert person.frame.shown_screen == "bench"


def test_what_the_job_card_leads_to_tells_nothing_of_the_weld(
    person: Person, reference: ReferenceScreen
) -> None:
    """The same callout and rules lead to the same entries, however the weld is."""
    keys = set()
    coupons = person.screen.course.tray.coupons
    for index, coupon in enumerate(coupons):
        person.screen.go_to(index)
        keys.add((coupon.callout, coupon.rules, *(b.key for b in person.screen.job_card.look_ups)))
    assert len(keys) == len({(callout, rules) for callout, rules, *_ in keys})
    assert all(key in reference.book.entries for *_, one, other in keys for key in (one, other))


def test_every_line_of_a_debrief_leads_to_its_entry(
    person: Person, reference: ReferenceScreen
) -> None:
    for key in (Key.Key_8, Key.Key_Space, Key.Key_T, Key.Key_P, Key.Key_A, Key.Key_Return):
        person.key(key)
        person.settle()
    assert person.state.phase == "debrief"
    panel = person.screen.review.panel
    led = [button.key for button in panel.look_ups]
    assert "rules.as-drawn.size.leg-convex" in led
    assert "rules.as-drawn" in led
    assert "word.face" in led
    assert set(led) <= set(reference.book.entries)
    assert set(panel.look_ups) <= set(person.screen.review.stops())
    person.click(panel.look_ups[0])
    assert reference.state.shown == led[0]
    assert reference.state.came_from == "bench"


def test_a_question_mark_is_large_enough_and_says_what_it_is_about(person: Person) -> None:
    for button in person.window.findChildren(LookUp):
        assert min(button.width(), button.height()) >= 24
        assert button.accessibleName().startswith("Look up: ")
