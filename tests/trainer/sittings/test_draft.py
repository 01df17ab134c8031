"""The composed value: its parts, who sits it, and undo."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from exercises.maker import Recipe, make_tray
from exercises.sitting.embedded import chosen_of
from exercises.sitting.plan import Chosen, Made
from exercises.text import Text
from trainer.sittings import draft as changes
from trainer.sittings.draft import Draft, FromDice, FromTray, draft_of, new_draft
from trainer.sittings.files import is_another, open_sitting, renewed, seal_sitting
from trainer.sittings.passphrases import suggested, worth_of
from trainer.sittings.truths import Truths, outline_of
from trainer.sittings.words import faults_words, gesture_word, part_lines, recipe_lines


def tray_part(count: int = 4) -> FromTray:
    return FromTray.whole(chosen_of(make_tray(Recipe(count, seed=7))))


@pytest.fixture
def draft() -> Draft:
    """A tray's four coupons, then eight from dice."""
    two = changes.with_part(changes.with_part(new_draft(), tray_part()), FromDice(Recipe(8)))
    return changes.with_plan(two, replace(two.base, title=Text.of("Yard")))


def test_a_draft_comes_to_a_plan_that_can_be_sat(draft: Draft) -> None:
    plan = draft.plan
    assert plan.faults() == []
    assert [type(part) for part in plan.parts] == [Chosen, Made]
    assert plan.count == draft.count == 12


def test_what_is_picked_is_asked_in_the_trays_order(draft: Draft) -> None:
    picked = changes.with_picked(changes.shown(draft, 0), [3, 1])
    part = picked.plan.parts[0]
    assert isinstance(part, Chosen)
    assert [coupon.id for coupon in part.coupons] == ["made-7-002", "made-7-004"]


def test_a_part_that_asks_nothing_is_a_fault_and_not_silently_left_out(draft: Draft) -> None:
    none = changes.with_picked(changes.shown(draft, 0), [])
    assert [fault.code for fault in none.plan.faults()] == ["sitting-none-chosen"]


def test_parts_move_and_go(draft: Draft) -> None:
    moved = changes.with_moved(draft, -1)
    assert [type(part) for part in moved.parts] == [FromDice, FromTray]
    assert moved.at == 0
    assert changes.with_moved(moved, -1) is moved
    gone = changes.without_part(changes.without_part(moved))
    assert (gone.parts, gone.at) == ((), -1)
    assert changes.without_part(gone) is gone


def test_codes_are_compared_as_codes_are(draft: Draft) -> None:
    some = changes.with_entrants(draft, ["k-07", "K-07", "K-08"], sits=True)
    assert [one.code for one in some.base.entrants] == ["k-07", "K-08"]
    more = changes.with_extra(some, ["K-07"], 0.5)
    assert more.plan.minutes_for("K-07") == 90.0
    again = changes.with_entrants(more, ["k-07"], sits=True)
    assert again.base.entrants == more.base.entrants, "ticked again, one keeps their time"
    fewer = changes.with_entrants(more, ["K-07"], sits=False)
    assert [one.code for one in fewer.base.entrants] == ["K-08"]


def test_a_skill_that_needs_no_mark_is_no_key_of_the_plan(draft: Draft) -> None:
    needs = changes.with_skill_mark(draft, "legs", 0.7)
    assert needs.plan.marks.skills == {"legs": 0.7}
    assert changes.with_skill_mark(needs, "legs", None).plan.marks.skills == {}


def test_a_change_that_changes_nothing_is_the_same_value(draft: Draft) -> None:
    assert changes.with_plan(draft, draft.base) is draft
    assert changes.with_help(draft, "loupe", stays=True) is draft
    assert changes.with_picked(changes.shown(draft, 0), range(4)).parts == draft.parts


def test_a_sealed_plan_goes_on_as_it_was(draft: Draft, tmp_path: Path) -> None:
    sealed = seal_sitting(tmp_path / "a.sitting", draft.plan, "three weathered herons")
    opened = open_sitting(sealed.path, "three weathered herons")
    assert draft_of(opened.plan).plan == draft.plan
    assert b"made-7-001" not in sealed.path.read_bytes()


def test_what_is_asked_otherwise_is_another_sitting(draft: Draft) -> None:
    plan = draft.plan
    titled = replace(changes.with_entrants(draft, ["k"], sits=True).plan, title=Text.of("Other"))
    assert renewed(titled, plan).id == plan.id
    for other in (
        replace(plan, minutes=30.0),
        replace(plan, seed=plan.seed + 1),
        replace(plan, pass_mark=0.7),
        replace(plan, helps=frozenset()),
        changes.with_picked(changes.shown(draft, 0), [1]).plan,
    ):
        assert is_another(other, plan)
        assert renewed(other, plan).id not in ("", plan.id)


def test_an_outline_counts_what_the_recipe_promises() -> None:
    recipe = Recipe(20, seed=3, in_doubt=0.1)
    outline = outline_of(make_tray(recipe).coupons, Truths())
    quotas = recipe.quotas()
    assert quotas is not None
    assert outline.in_doubt == recipe.doubtful() == 2
    assert sum(outline.answers.values()) == outline.count == 20
    assert all(outline.answers[answer] >= count for answer, count in quotas.items())


def test_every_step_has_a_word() -> None:
    steps = (
        "add tray", "add dice", "remove", "move", "pick", "recipe", "title", "order", "minutes",
        "pass", "critical", "help", "entrants", "extra", "seed", "seal",
    )  # fmt: skip
    assert len({gesture_word(step) for step in steps}) == len(steps)


def test_what_is_said_of_parts(draft: Draft) -> None:
    assert part_lines(FromDice(Recipe(8)))[1] == "8 coupons, each learner their own"
    some = replace(tray_part(), picked=frozenset({0, 2}))
    assert part_lines(some)[1] == "2 of 4 coupons"
    told = dict(recipe_lines(Recipe(8, nearest=3.0, farthest=9.0)))
    assert told["Difficulty"] == "3 to 9 times what a leaf can tell"
    calls = told["Right calls"].replace("\u00a0", " ")
    assert calls == "Accept 2, add weld metal 2, dress back 2, refer 2"


def test_no_more_faults_are_said_than_there_is_room_for() -> None:
    plan = replace(new_draft().plan, minutes=0.0, pass_mark=2.0)
    lines = faults_words(plan.faults(), 2)
    assert len(lines) == 3
    assert lines[-1].endswith("and 2 more")


def test_a_suggested_passphrase_is_worth_most_and_is_never_the_same() -> None:
    made = {suggested() for _ in range(200)}
    assert len(made) == 200
    assert {worth_of(one) for one in made} == {"good"}
