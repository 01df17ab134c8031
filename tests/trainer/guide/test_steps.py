"""The guide as a value: what counts as done, in which order, and that nothing is given away."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from exercises.coupon import Coupon
from exercises.tray import load_tray
from geometry.measures import FaceShape
from trainer.assets import asset
from trainer.bench import moves
from trainer.bench import state as changes
from trainer.bench.state import BenchState, open_coupon
from trainer.guide.steps import (
    OFF,
    STEPS,
    Guide,
    Seen,
    StepName,
    Target,
    advanced,
    shown_step,
    skipped,
    started,
    target_of,
)
from trainer.guide.words import offer_words, step_title, step_words

COUPONS = load_tray(asset("trays", "heron-footbridge.tray.json")).coupons
Change = Callable[[BenchState], BenchState]


def picked(state: BenchState) -> BenchState:
    return moves.pick(state, "8 mm", 0.0)


def turned(state: BenchState) -> BenchState:
    return moves.turn_over(state, 1000.0)


def pressed(state: BenchState) -> BenchState:
    return moves.press_home(state, 2000.0)


def stated(state: BenchState) -> BenchState:
    return changes.state_reading(state, "touch", 3000.0)


def faced(state: BenchState, face: FaceShape = "convex") -> BenchState:
    return changes.name_face(state, face, 4000.0)


def disposed(state: BenchState) -> BenchState:
    return changes.name_disposition(state, "refer", 5000.0)


def recorded(state: BenchState) -> BenchState:
    return changes.call(state, 6000.0)


WAY: tuple[tuple[Change, StepName], ...] = (
    (faced, "pick"),
    (picked, "turn over"),
    (turned, "press home"),
    (pressed, "look"),
    (stated, "other leg"),
    (turned, "other leg"),
    (pressed, "other leg"),
    (stated, "disposition"),
    (disposed, "record"),
    (recorded, "debrief"),
)


def name_at(guide: Guide, state: BenchState) -> str | None:
    return shown_step(guide, state)


def walked(coupon: Coupon) -> list[tuple[str | None, Target | None]]:
    """Step and target after each thing done, on any coupon, right or wrong."""
    state = open_coupon(coupon)
    guide = started(Seen(state))
    told: list[tuple[str | None, Target | None]] = []
    for change, _ in WAY:
        state = change(state)
        guide = advanced(guide, Seen(state))
        name = shown_step(guide, state)
        told.append((name, target_of(name, Seen(state)) if name else None))
    return told


def test_each_step_is_over_when_its_thing_is_done() -> None:
    assert [name for name, _ in walked(COUPONS[0])] == [name for _, name in WAY]


def test_nothing_told_depends_on_what_a_leaf_shows() -> None:
    """The same things done on bead after bead, too small, too large, hollow: the same words."""
    plain = [
        coupon
        for coupon in COUPONS
        if coupon.section.joint.angle == 90.0 and coupon.task == "judge"
    ]
    assert len(plain) >= 5
    # Which part touches is contact, and spoken before a call; so only steps are compared here,
    # and targets where the leaf came to rest on two members or more.
    names = {tuple(name for name, _ in walked(coupon)) for coupon in plain}
    assert names == {tuple(name for _, name in WAY)}


def test_what_was_done_before_its_turn_counts() -> None:
    state = disposed(stated(pressed(turned(picked(open_coupon(COUPONS[0]))))))
    assert name_at(started(Seen(state)), state) == "face"
    named = faced(state)
    assert name_at(advanced(started(Seen(state)), Seen(named)), named) == "other leg"


def test_a_step_that_is_over_stays_over() -> None:
    state = picked(faced(open_coupon(COUPONS[0])))
    guide = started(Seen(state))
    undone = changes.undone(state, 10.0)
    guide = advanced(guide, Seen(undone))
    assert guide.at == 2
    # Without a leaf there is nothing to turn over: take one again.
    assert name_at(guide, undone) == "pick"


@pytest.mark.parametrize("count", range(1, len(STEPS) + 1))
def test_every_step_can_be_skipped(count: int) -> None:
    state = open_coupon(COUPONS[0])
    guide = started(Seen(state))
    for _ in range(count):
        guide = skipped(guide, Seen(state))
    assert guide.at == count
    assert guide.over == (count == len(STEPS))
    assert skipped(replace(guide, at=len(STEPS)), Seen(state)).at == len(STEPS)


def test_a_call_on_record_is_past_all_handling() -> None:
    state = recorded(disposed(faced(open_coupon(COUPONS[0]))))
    assert name_at(started(Seen(state)), state) == "debrief"


def test_looking_can_be_done_by_looking_or_by_stating() -> None:
    state = pressed(turned(picked(faced(open_coupon(COUPONS[0])))))
    guide = started(Seen(state))
    assert name_at(guide, state) == "look"
    assert name_at(advanced(guide, Seen(state, looked=True)), state) == "state"
    assert target_of("look", Seen(state, loupe=False)) == "loupe switch"
    assert target_of("look", Seen(state, loupe=True)) == "loupe"


def test_a_drag_into_the_corner_is_a_press_home() -> None:
    state = picked(faced(open_coupon(COUPONS[0])))
    assert state.leaf is not None
    assert state.pose is not None
    at = state.pose.to_section(state.leaf.handle)
    state = turned(state)
    guide = started(Seen(state))
    assert name_at(guide, state) == "press home"
    state = changes.undone(state, 10.0)
    held = moves.grab(state, at, 100.0)
    held = moves.drag_to(held, [(at[0] - 4.0, at[1] - 40.0), (at[0] - 40.0, at[1] - 40.0)], 200.0)
    assert name_at(advanced(guide, Seen(held)), held) == "press home"
    laid = moves.release(held, 300.0)
    assert name_at(advanced(guide, Seen(laid)), laid) == "look"


def test_the_way_to_the_other_leg_is_pointed_out() -> None:
    state = stated(pressed(picked(faced(open_coupon(COUPONS[0])))))
    assert target_of("other leg", Seen(state)) == "turn over"
    state = turned(state)
    assert target_of("other leg", Seen(state)) == "press home"
    assert target_of("other leg", Seen(pressed(state))) == "states"
    swapped = moves.swap_ends(state, 4000.0)
    assert target_of("other leg", Seen(swapped)) == "swap ends"
    assert target_of("turn over", Seen(swapped)) == "swap ends"


def test_a_reading_coupon_has_no_disposition_to_choose() -> None:
    state = faced(open_coupon(replace(COUPONS[0], task="read")))
    for change in (picked, turned, pressed, stated, turned, pressed, stated):
        state = change(state)
    assert name_at(started(Seen(state)), state) == "record"


def test_what_is_off_stays_off() -> None:
    state = picked(open_coupon(COUPONS[0]))
    assert advanced(OFF, Seen(state)) == skipped(OFF, Seen(state)) == OFF
    assert shown_step(OFF, state) is None


def every_text() -> list[str]:
    seen = Seen(open_coupon(COUPONS[0]))
    texts = [step_words(step.name, target_of(step.name, seen)) for step in STEPS
             if step.name != "other leg"]  # fmt: skip
    ways: tuple[Target, ...] = ("turn over", "press home", "states", "swap ends")
    texts += [step_words("other leg", target) for target in ways]
    return [*texts, step_words("look", "loupe switch"), offer_words()[1]]


@pytest.mark.parametrize("text", every_text())
def test_no_wall_of_text(text: str) -> None:
    """At most two sentences, and short ones."""
    sentences = [part for part in re.split(r"[.?!:](?:\s|$)", text) if part.strip()]
    assert 1 <= len(re.split(r"[.?!]\s", text)) <= 2
    assert max(len(part.split()) for part in sentences) <= 14
    assert len(text) <= 90


def test_every_step_has_a_title_of_its_own() -> None:
    titles = [step_title(step.name) for step in STEPS]
    assert len(set(titles)) == len(STEPS)
    assert max(len(title) for title in titles) <= 24
