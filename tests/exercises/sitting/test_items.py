"""Items and reliability: other libraries, properties. Published ones: tests/references."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from scipy import stats

from exercises.sitting.class_table import ENOUGH, FEWEST, answers_of, class_table
from exercises.sitting.items import discrimination, item_figures, upper_lower
from exercises.sitting.reliability import alpha, kr20, reliability
from tests.exercises.sitting.classes import answered, table_of
from tests.exercises.sitting.specimens import plan, result

shapes = st.tuples(st.integers(5, 14), st.integers(2, 7))
tables = shapes.flatmap(lambda shape: arrays.arrays(np.int64, shape, elements=st.integers(0, 1)))
scores = shapes.flatmap(
    lambda shape: arrays.arrays(np.float64, shape, elements=st.sampled_from([0.0, 0.25, 0.5, 1.0]))
)


# --- discrimination -----------------------------------------------------------------------------


@given(tables)
def test_discrimination_is_scipy_s_point_biserial_with_its_interval(table: np.ndarray) -> None:
    right, rest = table[:, 0], table[:, 1:].sum(axis=1)
    found = discrimination(right, rest)
    if found is None:
        assert right.std() == 0.0 or rest.std() == 0.0
        return
    other = stats.pearsonr(right, rest)
    assert found.value == pytest.approx(stats.pointbiserialr(right, rest).statistic)
    if abs(found.value) < 1.0 - 1e-9:
        interval = other.confidence_interval(0.95)
        assert (found.low, found.high) == pytest.approx((interval.low, interval.high))


@given(tables, st.integers(0, 99))
def test_the_order_of_a_class_makes_no_difference(table: np.ndarray, seed: int) -> None:
    mixed = np.random.default_rng(seed).permutation(table)
    before = upper_lower(table[:, 0], table[:, 1:].sum(axis=1))
    after = upper_lower(mixed[:, 0], mixed[:, 1:].sum(axis=1))
    assert before == pytest.approx(after) if before is not None else after is None


def test_upper_and_lower_without_ties_are_counts_of_the_ends() -> None:
    # Ten learners: 27 % of them are 3, so the upper three and the lower three.
    right = [1, 1, 0, 1, 0, 1, 0, 0, 1, 0]
    assert upper_lower(right, range(10, 0, -1)) == pytest.approx(2 / 3 - 1 / 3)
    assert upper_lower(right, [5] * 10) is None
    assert upper_lower([], []) is None


def test_learners_who_are_alike_share_the_last_place() -> None:
    # One place, two learners at the top: half of each.
    assert upper_lower([1, 0, 0], [2, 2, 1], 0.34) == 0.5


def test_what_is_no_list_of_answers_is_refused() -> None:
    with pytest.raises(ValueError, match="as many answers as scores"):
        discrimination([1, 0], [1, 2, 3])
    assert discrimination([1, 0, 1], [3, 2, 1]) is None
    perfect = discrimination([1, 1, 0, 0], [2, 2, 1, 1])
    assert perfect is not None
    assert (perfect.value, perfect.low, perfect.high) == pytest.approx((1.0, 1.0, 1.0))


# --- reliability --------------------------------------------------------------------------------


@given(scores)
def test_alpha_is_what_its_covariances_say(table: np.ndarray) -> None:
    found = alpha(table)
    items = table.shape[1]
    covariances = np.cov(table, rowvar=False)
    if covariances.sum() <= 1e-12:
        assert found is None or abs(covariances.sum()) > 1e-13
        return
    # Cronbach's own other form: the mean covariance over the mean of all.
    mean = (covariances.sum() - np.trace(covariances)) / (items * (items - 1))
    assert found == pytest.approx(items**2 * mean / covariances.sum(), abs=1e-9)


@given(tables)
def test_kr20_is_alpha_of_right_and_wrong(table: np.ndarray) -> None:
    assert kr20(table) == alpha(table)


def test_two_halves_by_hand() -> None:
    # Spearman and Brown: two parallel items that correlate 0.5 have alpha 2 * 0.5 / 1.5.
    rng = np.random.default_rng(3)
    common = rng.normal(size=(200_000, 1))
    parts = common + rng.normal(size=(200_000, 2))
    assert alpha(parts) == pytest.approx(2 / 3, abs=0.01)


def test_the_error_of_a_score_is_what_repeating_the_test_shows() -> None:
    rng = np.random.default_rng(5)
    able = rng.normal(size=(4000, 1))
    items = 20
    first, second = ((able + rng.normal(size=(4000, items)) > 0.0).astype(float) for _ in range(2))
    found = reliability(table_of(first[:600]))
    apart = (first.mean(axis=1) - second.mean(axis=1)).std() / np.sqrt(2.0)
    assert found.error == pytest.approx(apart, rel=0.08)


def test_what_can_t_be_known_is_not_said() -> None:
    with pytest.raises(ValueError, match="one of them"):
        kr20([[0.5, 1.0], [0.0, 1.0]])
    with pytest.raises(ValueError, match="finite scores"):
        alpha([[np.nan, 1.0], [0.0, 1.0]])
    assert alpha([[1.0, 2.0]]) is None
    small = reliability(table_of(np.eye(FEWEST - 1)))
    assert (small.kr20, small.alpha, small.error, small.learners) == (None, None, None, FEWEST - 1)
    contrary = reliability(table_of(np.eye(6)[:, :2]))
    assert contrary.alpha is not None
    assert contrary.alpha < 0.0
    assert contrary.error is None


# --- items of a class ---------------------------------------------------------------------------


def test_counts_of_an_item_by_hand() -> None:
    # Of bad welds two are called, one let go; nothing was said of a third.
    answers = [
        answered("a", "1-001", right=True, ms=10_000),
        answered("b", "1-001", right=False, ms=30_000),
        answered("c", "1-001", right=True, ms=20_000),
        answered("a", "1-002", right=False, bad=False),
        answered("b", "1-002", right=True, bad=False),
    ]
    empty = replace(
        answers[0], learner="d", answered=False, right=False, score=0.0, called_bad=None, said=None,
        ms=5,
    )  # fmt: skip
    doubtful = replace(answers[3], learner="e", in_doubt=True)
    first, second = item_figures(class_table([*answers, empty, doubtful]))
    assert (first.right.count, first.right.of, first.unanswered) == (2, 4, 1)
    assert first.misses is not None
    assert (first.misses.count, first.misses.of) == (1, 3)
    assert (first.false_alarms, first.median_ms) == (None, 20_000.0)
    assert second.false_alarms is not None
    assert (second.false_alarms.count, second.false_alarms.of) == (1, 2)
    assert (first.discrimination, first.upper_lower) == (None, None)


@given(tables)
def test_every_item_s_figures_are_within_their_bounds(table: np.ndarray) -> None:
    for at, each in enumerate(item_figures(table_of(table))):
        assert each.right.count == table[:, at].sum()
        assert -1.0 <= (each.upper_lower or 0.0) <= 1.0
        if each.discrimination is not None:
            rest = table.sum(axis=1) - table[:, at]
            assert each.discrimination.value == pytest.approx(np.corrcoef(table[:, at], rest)[0, 1])
            assert each.discrimination.low <= each.discrimination.value <= each.discrimination.high


def test_a_class_says_how_far_it_can_be_trusted() -> None:
    sizes = [table_of(np.eye(count, 3)).size for count in (FEWEST - 1, FEWEST, ENOUGH)]
    assert sizes == ["too small", "rough", "enough"]


def test_places_that_not_all_had_take_no_part_in_what_compares_learners() -> None:
    whole = table_of(np.eye(6, 4))
    extra = answered("k-000", "2-001", right=True)
    table = class_table([*whole.answers.values(), extra])
    assert table.whole.tolist() == [True] * 4 + [False]
    assert reliability(table) == reliability(whole)
    assert item_figures(table)[:4] == item_figures(whole)
    assert item_figures(table)[4].discrimination is None


def test_two_sittings_of_one_learner_are_not_mixed() -> None:
    one = answered("a", "1-001", right=True)
    with pytest.raises(ValueError, match="two answers at 1-001"):
        class_table([one, one])


def test_answers_of_papers_in_different_orders_meet_by_place() -> None:
    sat = plan(shuffled=True)
    papers = [result(code, sat) for code in ("k-07", "k-08")]
    table = class_table(answer for paper in papers for answer in answers_of(paper))
    assert len(table.slots) == sat.count
    assert table.whole.all()
    for slot in table.slots:
        truths = {answer.truth for answer in table.at(slot) if answer.truth is not None}
        assert len(truths) <= 1
        assert len({answer.bad for answer in table.at(slot)}) == 1
    # All but the last was answered, and each rightly.
    assert np.nansum(table.right, axis=1).tolist() == [sat.count - 1] * 2
