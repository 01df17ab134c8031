"""What a sitting came to: by hand, and by properties that must hold whatever was stated."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from statistics import fmean
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.attempt import Attempt
from exercises.grading import HINT_COST, MARKS
from exercises.sitting.marking import (
    LONGEST_REASON,
    OVERRIDABLE,
    Override,
    mark,
    marked,
    override_faults,
)
from exercises.sitting.plan import SKILLS, PassMarks
from exercises.sitting.result import item_of
from tests.exercises.sitting.specimens import chosen, coupon_said, plan, result

AT = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


@dataclass(frozen=True)
class Paper:
    """As much of an item as marks need."""

    number: int
    grade: dict[str, Any] | None
    attempt: dict[str, Any] | None = None
    hints: int = 0

    @property
    def answered(self) -> bool:
        return self.grade is not None


def graded(number: int, *, critical: bool = False, **marks: float | None) -> Paper:
    every: dict[str, float | None] = {**dict.fromkeys(MARKS), **marks}
    known = [value for value in every.values() if value is not None]
    score = 0.0 if critical or not known else fmean(known)
    return Paper(number, {"score": score, "marks": every, "critical": critical}, {"coupon": "a"})


def override(item: int, of: str, value: float, minutes: int = 0, reason: str = "seen") -> Override:
    return Override(item, of, value, reason, "instructor 2", AT + timedelta(minutes=minutes))


PAPER = [
    graded(1, face=1.0, seat=0.5, disposition=1.0),
    graded(2, face=0.0, disposition=1.0),
    graded(3, face=1.0, disposition=0.0, critical=True),
    Paper(4, None),
]
"""Scores by hand: 5/6, 1/2, 0 (critical), 0 (unanswered)."""


def test_the_score_is_the_mean_over_all_coupons_of_the_paper() -> None:
    found = mark(PassMarks(0.3, critical_fails=False), PAPER)
    assert found.score == pytest.approx((5 / 6 + 1 / 2) / 4)
    assert found.by_skill["face"] == pytest.approx(2 / 3)
    assert found.by_skill["seat"] == 0.5
    assert found.by_skill["disposition"] == pytest.approx(2 / 3)
    assert found.by_skill["legs"] is None
    assert (found.critical, found.unanswered, found.passed, found.why) == (1, 1, True, ())


def test_one_critical_call_fails_the_whole_unless_the_plan_says_not() -> None:
    failed = mark(PassMarks(0.3), PAPER)
    assert not failed.passed
    assert [(why.code, why.params) for why in failed.why] == [("critical-call", {"count": 1})]
    assert failed.score == mark(PassMarks(0.3, critical_fails=False), PAPER).score


def test_each_pass_mark_that_is_missed_is_said() -> None:
    marks = PassMarks(0.5, {"seat": 0.6, "legs": 0.1, "face": 2 / 3})
    found = mark(marks, PAPER)
    said = [(why.code, why.params.get("skill")) for why in found.why]
    assert said == [
        ("score-short", None), ("skill-short", "seat"), ("skill-unseen", "legs"),
        ("critical-call", None),
    ]  # fmt: skip
    assert all(why.text and why.as_dict()["code"] == why.code for why in found.why)


def test_a_mean_that_is_its_pass_mark_but_for_rounding_passes() -> None:
    papers = [graded(n, face=value) for n, value in enumerate((0.1, 0.2, 0.3), 1)]
    assert fmean([0.1, 0.2, 0.3]) <= 0.2
    assert mark(PassMarks(0.2, {"face": 0.2}), papers).passed


def test_an_empty_paper_has_no_score_and_doesn_t_pass() -> None:
    found = mark(PassMarks(0.1), [])
    assert (found.score, found.passed, found.unanswered) == (0.0, False, 0)


def test_the_plan_or_its_marks_say_the_same() -> None:
    handed = result()
    assert mark(plan(), handed.items) == mark(plan().marks, handed.items)
    assert handed.marks == plan().marks


def test_it_agrees_with_the_grade_that_the_bench_gives() -> None:
    for item in result(skipped=0).items:
        assert item.grade is not None
        assert marked(item).score == item.grade["score"]
        assert marked(item).marks == item.grade["marks"]


# --- overrides ----------------------------------------------------------------------------------


def test_an_overridden_mark_takes_the_graded_one_s_place() -> None:
    given = [override(1, "seat", 1.0), override(2, "seat", 0.0)]
    assert marked(PAPER[0], given).score == 1.0
    assert marked(PAPER[0], given).overridden == {"seat"}
    # A mark that didn't apply counts once it is given.
    assert marked(PAPER[1], given).score == pytest.approx(1 / 3)
    assert mark(PassMarks(0.0), PAPER, given).by_skill["seat"] == 0.5
    # And nothing of what was graded has changed.
    assert PAPER[0].grade is not None
    assert PAPER[0].grade["marks"]["seat"] == 0.5


def test_the_latest_override_of_a_mark_holds_whatever_their_order() -> None:
    early, late = override(1, "face", 0.2), override(1, "face", 0.8, minutes=3)
    for order in ([early, late], [late, early]):
        assert marked(PAPER[0], order).marks["face"] == 0.8


def test_a_critical_call_can_be_lifted_and_laid() -> None:
    lifted = mark(PassMarks(0.3), PAPER, [override(3, "critical", 0.0)])
    assert lifted.critical == 0
    assert lifted.score == pytest.approx((5 / 6 + 1 / 2 + 1 / 2) / 4)
    laid = marked(PAPER[0], [override(1, "critical", 1.0)])
    assert (laid.critical, laid.score) == (True, 0.0)


def test_an_overridden_score_holds_whatever_the_marks_are() -> None:
    given = [override(4, "score", 0.9), override(4, "face", 0.0), override(3, "score", 0.25)]
    assert marked(PAPER[3], given).score == 0.9
    assert marked(PAPER[2], given).score == 0.25
    assert mark(PassMarks(0.0), PAPER, given).unanswered == 1


def test_hints_still_cost_once_a_mark_is_overridden() -> None:
    coupon = chosen(coupon_said("a", hints=["look", "look again"])).coupons[0]
    stated = Attempt("a", face="convex", disposition="accept", hints=5)
    item = item_of(1, "1-001", coupon, stated)
    found = marked(item, [override(1, "critical", 0.0), override(1, "disposition", 1.0)])
    assert found.score == pytest.approx(1.0 - 2 * HINT_COST)


@pytest.mark.parametrize(
    ("given", "code"),
    [
        ({"mark": "seats"}, "override-mark"),
        ({"value": 1.5}, "override-value"),
        ({"value": float("nan")}, "override-value"),
        ({"mark": "critical", "value": 0.5}, "override-value"),
        ({"reason": " \n "}, "override-reason"),
        ({"reason": "x" * (LONGEST_REASON + 1)}, "override-reason"),
        ({"by": ""}, "override-by"),
    ],
)
def test_what_is_no_override_is_refused(given: dict[str, Any], code: str) -> None:
    whole: dict[str, Any] = {"mark": "seat", "value": 1.0, "reason": "seen", "by": "QA", **given}
    assert [fault.code for fault in override_faults(**whole)] == [code]
    with pytest.raises(ValueError, match="right would be"):
        Override(item=1, at=AT, **whole)
    with pytest.raises(ValueError, match="zone"):
        Override(1, "seat", 1.0, "seen", "QA", AT.replace(tzinfo=None))


# --- properties ---------------------------------------------------------------------------------

values = st.none() | st.floats(0.0, 1.0)
papers = st.lists(
    st.one_of(
        st.just(None),
        st.tuples(st.booleans(), st.dictionaries(st.sampled_from(SKILLS), values, max_size=7)),
    ),
    min_size=1,
    max_size=8,
).map(
    lambda given: [
        Paper(n, None) if each is None else graded(n, critical=each[0], **each[1])
        for n, each in enumerate(given, 1)
    ]
)
overrides = st.lists(
    st.tuples(st.integers(1, 8), st.sampled_from(OVERRIDABLE), st.sampled_from([0.0, 1.0]),
              st.integers(0, 9)),
    max_size=6,
).map(lambda given: [override(*each) for each in given])  # fmt: skip


@given(papers, overrides, st.floats(0.0, 1.0))
def test_scores_stay_within_bounds_and_passing_needs_every_mark(
    paper: list[Paper], given: list[Override], needed: float
) -> None:
    before = [replace(each) for each in paper]
    found = mark(PassMarks(needed, {"face": needed}), paper, given)
    assert paper == before
    assert 0.0 <= found.score <= 1.0
    assert found.passed == (not found.why)
    if found.passed:
        assert found.score >= needed - 1e-9
        assert (found.by_skill["face"] or 0.0) >= needed - 1e-9
        assert found.critical == 0
    assert found.unanswered == sum(not each.answered for each in paper)


@given(papers)
def test_answering_one_more_never_lowers_the_score(paper: list[Paper]) -> None:
    before = mark(PassMarks(0.5), paper).score
    answered = [each if each.answered else graded(each.number, disposition=0.0) for each in paper]
    assert mark(PassMarks(0.5), answered).score >= before - 1e-12


@given(papers, st.randoms())
def test_the_order_of_coupons_makes_no_difference(paper: list[Paper], rng: Any) -> None:
    mixed = list(paper)
    rng.shuffle(mixed)
    one, other = (mark(PassMarks(0.5, {"seat": 0.4}), each) for each in (paper, mixed))
    assert one.score == pytest.approx(other.score)
    assert (one.critical, one.unanswered) == (other.critical, other.unanswered)
