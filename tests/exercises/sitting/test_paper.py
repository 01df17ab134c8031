"""Papers: the same for one learner each time, another for each, and as hard for all of them."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Sequence
from typing import Any

import pytest

from exercises.coupon import Coupon
from exercises.judging import judge, sizes_of
from exercises.maker import Recipe, RecipeError, Trap
from exercises.maker import making as maker_making
from exercises.maker.dice import distance
from exercises.sitting import hardness
from exercises.sitting.hardness import AS_NEAR, PLAIN, equal_coupon, pattern
from exercises.sitting.paper import Question, paper_of, questions_of
from exercises.sitting.plan import Made, Plan
from exercises.text import Text
from exercises.tray import read_tray
from exercises.versions import HEAD
from tests.exercises.sitting.specimens import chosen, coupon_said, plan

RECIPE = Recipe(12, seed=2, in_doubt=0.1)
DICE = Plan("s-2", Text.of("Dice"), (Made(RECIPE),), seed=9)
LEARNERS = [f"k-{number:02}" for number in range(8)]

DOUBTS_APART = 0.2
"""Doubts: a coupon's size is brought to within 0.1 of its aim, so two may be twice that apart."""


def by_slot(asked: Sequence[Question]) -> dict[str, Coupon]:
    return {each.slot: each.coupon for each in asked}


def nature(coupon: Coupon) -> dict[str, Any]:
    """What is asked of whoever judges a weld, whatever the member that something lies on."""
    judged, section = judge(coupon), coupon.section
    bead = section.bead
    grooves = [cut.depth for cut in (bead.undercut_base, bead.undercut_upright) if cut]
    lips = [lip.length for lip in (bead.overlap_base, bead.overlap_upright) if lip]
    return {
        "right": judged.disposition,
        "acceptable": judged.acceptable,
        "in doubt": judged.in_doubt,
        "rejected": judged.rejected,
        "face": judged.face,
        "undecided": judged.undecided,
        "grooves": grooves,
        "lips": lips,
        "drops": [drop.height for drop in section.spatter],
        "opening": section.joint.root_opening,
        "angle": section.joint.angle,
        "wear": coupon.leaf_wear,
    }


@pytest.fixture(scope="module")
def papers() -> list[dict[str, Coupon]]:
    return [by_slot(questions_of(DICE, code)) for code in LEARNERS]


def test_every_learner_s_coupon_is_as_hard_at_every_place(papers: list[dict[str, Coupon]]) -> None:
    for slot, first in papers[0].items():
        asked, away = nature(first), distance(sizes_of(first))
        for paper in papers[1:]:
            assert nature(paper[slot]) == asked
            assert abs(distance(sizes_of(paper[slot])) - away) <= DOUBTS_APART


def test_so_it_is_at_every_size_that_isn_t_plain_to_see(papers: list[dict[str, Coupon]]) -> None:
    def away(coupon: Coupon) -> list[float]:
        checks = [check for check in judge(coupon).checks if check.doubt > 0.0]
        return sorted(max(-PLAIN, min(PLAIN, c.margin / c.doubt)) for c in checks)

    drawn = pattern(RECIPE, "9")
    for slot, first in zip(sorted(papers[0]), drawn, strict=True):
        asked = away(first.coupon)
        for paper in papers:
            assert away(paper[slot]) == pytest.approx(asked, abs=AS_NEAR + 1e-9)


def test_so_quotas_of_answers_faces_and_doubt_are_the_same(papers: list[dict[str, Coupon]]) -> None:
    def counted(paper: dict[str, Coupon]) -> list[Counter[object]]:
        judged = [judge(coupon) for coupon in paper.values()]
        return [
            Counter(one.disposition for one in judged),
            Counter(one.face for one in judged),
            Counter(one.in_doubt for one in judged),
        ]

    assert all(counted(paper) == counted(papers[0]) for paper in papers)


def test_hardly_a_weld_is_another_learner_s(papers: list[dict[str, Coupon]]) -> None:
    sections = {str(coupon.section) for paper in papers for coupon in paper.values()}
    # Legs are rounded to a hundredth, so two in a class can be the same by chance.
    assert len(sections) >= 0.9 * len(papers) * RECIPE.count


def test_a_neighbour_s_number_says_nothing() -> None:
    asked = [[each.slot for each in questions_of(DICE, code)] for code in LEARNERS]
    same = sum(one == other for one, other in zip(asked[0], asked[1], strict=True))
    assert sorted(asked[0]) == sorted(asked[1])
    assert same < len(asked[0]) / 2
    assert len({tuple(each) for each in asked}) == len(LEARNERS)


def test_titles_and_ids_tell_no_place_of_the_plan() -> None:
    for code in LEARNERS[:4]:
        asked = questions_of(DICE, code)
        assert [each.coupon.id for each in asked] == [f"1-{n + 1:03}" for n in range(len(asked))]
        assert len({str(each.coupon.title) for each in asked}) == len(asked)
        assert not any(each.coupon.hints for each in asked)
    first = [str(paper_of(DICE, code)[0].title) for code in LEARNERS]
    assert len(set(first)) > 1


def test_the_same_code_gets_the_same_paper_in_any_spelling() -> None:
    for sat in (plan(), plan(shuffled=True)):
        assert questions_of(sat, "k-07") == questions_of(sat, "  K-07")
        assert questions_of(sat, "k-07") != questions_of(sat, "k-08")
    assert questions_of(plan(seed=6), "k-07") != questions_of(plan(), "k-07")


def test_chosen_coupons_keep_their_order_unless_all_is_shuffled() -> None:
    names = [f"c-{number}" for number in range(9)]
    part = chosen(*(coupon_said(name) for name in names))
    for code in LEARNERS[:3]:
        assert [c.id for c in paper_of(plan(parts=(part,)), code)] == names
    orders = {
        tuple(c.id for c in paper_of(plan(parts=(part,), shuffled=True), code))
        for code in LEARNERS[:6]
    }
    assert len(orders) == 6
    assert all(sorted(order) == names for order in orders)


def test_a_made_coupon_is_what_its_document_states(papers: list[dict[str, Coupon]]) -> None:
    for coupon in papers[3].values():
        document: dict[str, Any] = {"format": "toe-and-throat/tray", "version": HEAD}
        read = read_tray({**document, "coupons": [dict(coupon.source)]}).coupons[0]
        assert read == coupon
        assert read.digest == coupon.digest


def test_where_no_other_weld_is_found_it_is_the_pattern_s(monkeypatch: pytest.MonkeyPatch) -> None:
    drawn = pattern(RECIPE, "9")[0]
    monkeypatch.setattr(hardness, "scaled", lambda *_: None)
    made = equal_coupon(random.Random(1), RECIPE, drawn, "1-001", "Mast foot")
    assert made.section == drawn.coupon.section
    assert (made.id, str(made.title)) == ("1-001", "Mast foot")


def test_dice_that_fail_once_are_thrown_anew_the_same_each_time(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    recipe = Recipe(4, seed=77)
    draw, calls = maker_making.draw, [0]

    def failing(*given: Any, **named: Any) -> Any:
        calls[0] += 1
        if calls[0] == 3:
            raise RecipeError([])
        return draw(*given, **named)

    monkeypatch.setattr(hardness, "draw", failing)
    pattern.cache_clear()
    found = pattern(recipe, "1")
    calls[0] = 0
    pattern.cache_clear()
    assert pattern(recipe, "1") == found
    assert len(found) == 4
    pattern.cache_clear()


def test_dice_that_never_find_a_weld_say_so_when_it_is_composed() -> None:
    # Thirty doubts short of 3 mm there is no weld left.
    traps: tuple[Trap, ...] = ("overlap", "out of square")
    recipe = Recipe(4, sizes=(3.0, 3.0), traps=traps, nearest=30.0, farthest=40.0)
    faults = plan(parts=(Made(recipe),)).faults()
    assert [(fault.at, fault.code) for fault in faults] == [("/parts/0/recipe", "recipe-unmet")]
    with pytest.raises(RecipeError):
        paper_of(plan(parts=(Made(recipe),)), "k-07")


@pytest.mark.parametrize(
    "recipe",
    [
        Recipe(10, unit="in"),
        Recipe(10, measure="throat"),
        Recipe(10, unit="in", measure="throat", seed=4),
        Recipe(10, faces=("concave",), nearest=1.05, farthest=3.0),
        Recipe(1),
        Recipe(10, sizes=(8.0, 8.0)),
    ],
    ids=str,
)
def test_any_recipe_is_as_hard_for_two_learners(recipe: Recipe) -> None:
    sat = Plan("s-3", Text.of("Dice"), (Made(recipe),), seed=1)
    assert sat.faults() == []
    one, other = (by_slot(questions_of(sat, code)) for code in ("a", "b"))
    for slot, coupon in one.items():
        assert nature(coupon) == nature(other[slot])
        apart = distance(sizes_of(coupon)) - distance(sizes_of(other[slot]))
        assert abs(apart) <= DOUBTS_APART
