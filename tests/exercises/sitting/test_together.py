"""Items that were got wrong together: exact small tables, what is planted, what is chance."""

from __future__ import annotations

import itertools
import random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from scipy import stats

from exercises.sitting.class_table import FEWEST
from exercises.sitting.together import _beyond, _by_chance, _tail, _trade, phi, wrong_together
from tests.exercises.sitting.classes import table_of

tables = arrays.arrays(np.int64, (6, 4), elements=st.integers(0, 1))


def same_margins(table: np.ndarray) -> list[np.ndarray]:
    """Every table of 0 and 1 with the margins of this one."""
    found = []
    for bits in itertools.product((0, 1), repeat=table.size):
        other = np.array(bits).reshape(table.shape)
        rows = (other.sum(axis=1) == table.sum(axis=1)).all()
        if rows and (other.sum(axis=0) == table.sum(axis=0)).all():
            found.append(other)
    return found


def test_random_tables_are_those_of_the_same_margins_each_as_often() -> None:
    wrong = np.array([[1, 1, 0], [1, 0, 1], [1, 0, 0], [0, 1, 0]])
    every = same_margins(wrong)
    assert len(every) > 4
    both = np.array([table.T @ table for table in every])
    mean, spread = _by_chance(wrong.astype(float), 4000, random.Random(2))
    assert mean == pytest.approx(both.mean(axis=0), abs=0.05)
    assert spread == pytest.approx(both.std(axis=0), abs=0.05)


@given(tables, st.randoms(use_true_random=False))
def test_a_trade_keeps_both_margins(table: np.ndarray, rng: random.Random) -> None:
    rows = [set(np.flatnonzero(row).tolist()) for row in table]
    for _ in range(20):
        _trade(rows, rng)
    after = np.array([[int(column in row) for column in range(4)] for row in rows])
    assert (after.sum(axis=0) == table.sum(axis=0)).all()
    assert (after.sum(axis=1) == table.sum(axis=1)).all()


@given(tables)
def test_phi_is_scipy_s_correlation_and_chi_square_over_the_count(table: np.ndarray) -> None:
    one, other = table[:, 0], table[:, 1]
    found = phi(one, other)
    if found is None:
        assert one.std() == 0.0 or other.std() == 0.0
        return
    assert found == pytest.approx(stats.pearsonr(one, other).statistic)
    crossed = stats.contingency.crosstab(one, other).count
    assert found**2 == pytest.approx(stats.chi2_contingency(crossed, correction=False)[0] / 6)


def test_what_is_planted_is_found_first_and_the_rest_is_chance() -> None:
    rng = np.random.default_rng(11)
    able = rng.normal(size=(40, 1))
    right = (able + rng.normal(size=(40, 12)) + 0.4 > 0.0).astype(int)
    # Whoever misses the fourth misses the ninth: one misunderstanding, two items.
    right[:, 8] = right[:, 3]
    found = wrong_together(table_of(right))
    assert found[0].slots == ("1-003", "1-008")
    assert found[0].beyond
    assert found[0].both == int((right[:, 3] == 0).sum())
    assert found[0].phi == pytest.approx(1.0)
    assert sum(pair.beyond for pair in found) <= 2


def test_a_class_that_only_differs_in_strength_shows_no_pairs() -> None:
    beyond = 0
    for seed in range(12):
        rng = np.random.default_rng(seed)
        able, hard = rng.normal(size=(30, 1)) * 1.5, rng.normal(size=(1, 10))
        right = (able - hard + rng.logistic(size=(30, 10)) > 0.0).astype(int)
        plain = [pair.phi or 0.0 for pair in wrong_together(table_of(right), draws=100)]
        # Plain correlation is fooled by strength; beside random tables it isn't.
        assert np.mean(plain) > 0.05
        beyond += sum(pair.beyond for pair in wrong_together(table_of(right), draws=100))
    assert beyond <= 2


def test_of_many_pairs_those_beyond_chance_are_as_benjamini_and_hochberg_say() -> None:
    # Their worked example, from memory: of fifteen tails, at 5 %, the four smallest.
    tails = [0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240,
             0.4262, 0.5719, 0.6528, 0.7590, 1.0]  # fmt: skip
    assert _beyond(tails, 15) == 0.0095
    assert _beyond([], 3) < 0.0
    assert _beyond([0.4], 1) < 0.0


def test_a_pair_that_can_t_be_otherwise_is_no_finding() -> None:
    assert _tail(3.0, 3.0, 0.0) == 1.0
    assert wrong_together(table_of(np.zeros((FEWEST, 3)))) != ()
    assert not any(pair.beyond for pair in wrong_together(table_of(np.zeros((8, 3)))))


def test_nothing_is_said_of_a_class_that_is_too_small_or_all_right() -> None:
    assert wrong_together(table_of(np.zeros((FEWEST - 1, 3)))) == ()
    assert wrong_together(table_of(np.zeros((8, 1)))) == ()
    assert wrong_together(table_of(np.ones((8, 3)))) == ()


def test_lists_of_other_lengths_are_refused() -> None:
    with pytest.raises(ValueError, match="one length"):
        phi([1, 0], [1])
    assert phi([], []) is None
