"""Plans: what is wrong with one is said at once, all of it, in English and Spanish words."""

from __future__ import annotations

import math
import uuid
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.maker import Recipe
from exercises.sitting.codes import LONGEST_CODE, code_key, is_code, learner_id
from exercises.sitting.plan import MOST_ASKED, SKILLS, Chosen, Entrant, Made, PassMarks, Plan
from exercises.text import NO_TEXT, Text
from tests.exercises.sitting.specimens import chosen, coupon_said, plan


def faults_of(**changes: Any) -> list[tuple[str, str]]:
    return [(fault.at, fault.code) for fault in plan(**changes).faults()]


def test_a_sound_plan_has_none() -> None:
    assert plan().faults() == []
    assert plan(entrants=()).faults() == []


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        ({"id": ""}, [("/id", "sitting-id")]),
        ({"id": "a\nb"}, [("/id", "sitting-id")]),
        ({"title": NO_TEXT}, [("/title", "sitting-title")]),
        ({"title": Text.of("  ")}, [("/title", "sitting-title")]),
        ({"seed": -1}, [("/seed", "sitting-seed")]),
        ({"parts": ()}, [("/parts", "sitting-empty")]),
        ({"minutes": 0.0}, [("/minutes", "sitting-minutes")]),
        ({"minutes": math.nan}, [("/minutes", "sitting-minutes")]),
        ({"minutes": 601.0}, [("/minutes", "sitting-minutes")]),
        ({"pass_mark": 1.01}, [("/pass_mark", "sitting-pass-mark")]),
        ({"pass_mark": math.nan}, [("/pass_mark", "sitting-pass-mark")]),
        ({"skill_marks": {"seat": -0.1}}, [("/skill_marks/seat", "sitting-pass-mark")]),
        ({"entrants": (Entrant(""),)}, [("/entrants/0/code", "sitting-code")]),
        ({"entrants": (Entrant("x" * 65),)}, [("/entrants/0/code", "sitting-code")]),
        (
            {"entrants": (Entrant("k-1"), Entrant("K-1"))},
            [("/entrants/1/code", "sitting-repeated-code")],
        ),
        ({"entrants": (Entrant("k", -0.1),)}, [("/entrants/0/extra", "sitting-extra")]),
        ({"entrants": (Entrant("k", math.inf),)}, [("/entrants/0/extra", "sitting-extra")]),
        ({"parts": (Made(Recipe(0)),)}, [("/parts/0/recipe/count", "recipe-count")]),
        (
            {"parts": (Chosen(Text.of("T"), ()), Made(Recipe(4)))},
            [("/parts/0/tray/coupons", "sitting-none-chosen")],
        ),
    ],
)
def test_what_is_wrong_is_said_where_it_is(changes: Any, found: list[tuple[str, str]]) -> None:
    assert faults_of(**changes) == found


def test_all_that_is_wrong_is_said_at_once() -> None:
    found = faults_of(id="", parts=(), minutes=0.0, pass_mark=2.0, entrants=(Entrant(" "),))
    assert len(found) == 5


def test_too_many_coupons_are_refused() -> None:
    half = Made(Recipe(MOST_ASKED // 2))
    assert ("/parts", "sitting-too-many") in faults_of(parts=(half, half, chosen()))


def test_two_coupons_of_one_id_in_one_part_are_refused() -> None:
    part = chosen(coupon_said("a"), coupon_said("b"))
    twice = Chosen(part.title, (*part.coupons, part.coupons[0]))
    assert faults_of(parts=(twice,)) == [("/parts/0/tray/coupons/2/id", "repeated-id")]
    # Two trays may have coupons of one id.
    assert faults_of(parts=(part, part)) == []


def test_shop_s_rules_come_with_their_coupons() -> None:
    whole = chosen()
    without = Chosen(whole.title, whole.coupons)
    assert faults_of(parts=(without,)) == [
        ("/parts/0/tray/coupons/1/rules", "sitting-rules-missing")
    ]


def test_a_skill_that_nothing_asks_for_is_no_pass_mark() -> None:
    reading = chosen(coupon_said("a", task="read"))
    marks = dict.fromkeys(SKILLS, 0.5)
    found = faults_of(parts=(reading,), skill_marks=marks)
    unasked = [at.rpartition("/")[2] for at, code in found if code == "sitting-skill-unasked"]
    assert unasked == ["leaf", "edge", "legs", "disposition"]
    assert faults_of(parts=(reading, Made(Recipe(4))), skill_marks=marks) == []


def test_time_and_entrants() -> None:
    sat = plan()
    assert [sat.minutes_for(code) for code in ("k-07", " K-08", "k-99")] == [40.0, 50.0, 40.0]
    assert [sat.admits(code) for code in ("K-07", "k-99")] == [True, False]
    assert plan(entrants=()).admits("k-99")
    assert sat.count == 10
    assert sat.marks == PassMarks(0.7, {"disposition": 0.6}, critical_fails=True)


@given(st.text(max_size=LONGEST_CODE + 4))
def test_a_code_s_learner_is_the_same_in_any_case(code: str) -> None:
    found = learner_id(code)
    assert str(uuid.UUID(found)) == found
    assert learner_id(f"  {code} ") == found
    assert learner_id(code.casefold()) == found
    assert code_key(code_key(code)) == code_key(code)
    if is_code(code):
        assert Plan("s", Text.of("T"), (), entrants=(Entrant(code),)).admits(code)


def test_composed_and_taken_apart_letters_are_one_code() -> None:
    assert learner_id("caf\u00e9") == learner_id("cafe\u0301")
    assert learner_id("STRASSE") == learner_id("stra\u00dfe")
