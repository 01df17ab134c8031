"""Agreement: properties, another library, what is refused. Published values: tests/references."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from statsmodels.stats import inter_rater
from statsmodels.stats.contingency_tables import SquareTable

from exercises.learner.agreement import appraise, bowker, cohen_kappa, fleiss_kappa, grey_zones
from exercises.learner.demonstration import Share, demonstrate, trials_needed
from exercises.learner.gauge_study import gauge_study

tables = arrays.arrays(np.int64, (3, 3), elements=st.integers(0, 40))


@given(tables)
def test_cohen_and_bowker_are_those_of_statsmodels(table: np.ndarray) -> None:
    found = cohen_kappa(table)
    rows, columns = table.sum(axis=1), table.sum(axis=0)
    if found is None:
        assert float(rows @ columns) == float(table.sum()) ** 2
    else:
        other = inter_rater.cohens_kappa(table.astype(float), return_results=False)
        assert found == pytest.approx(float(other), abs=1e-9)
    symmetry = bowker(table)
    off = table[np.triu_indices(3, 1)] + table.T[np.triu_indices(3, 1)]
    if off.min() > 0:
        other = SquareTable(table.astype(float), shift_zeros=False).symmetry()
        assert symmetry.statistic == pytest.approx(float(other.statistic))
        assert symmetry.tail == pytest.approx(float(other.pvalue), abs=1e-9)
    assert 0 <= symmetry.freedom <= 3


@given(st.lists(st.integers(0, 6), min_size=2, max_size=30))
def test_fleiss_is_that_of_statsmodels(good: list[int]) -> None:
    counts = [[6 - count, count] for count in good]
    found = fleiss_kappa(counts)
    if found is None:
        assert len(set(good)) == 1
    else:
        assert found == pytest.approx(float(inter_rater.fleiss_kappa(np.array(counts))), abs=1e-9)


def test_what_is_no_table_is_refused() -> None:
    with pytest.raises(ValueError, match="square"):
        cohen_kappa([[1, 2]])
    with pytest.raises(ValueError, match="0 or more"):
        bowker([[1, -2], [1, 1]])
    with pytest.raises(ValueError, match="unequally"):
        fleiss_kappa([[1, 2], [2, 2]])
    with pytest.raises(ValueError, match="subjects by categories"):
        fleiss_kappa([])
    with pytest.raises(ValueError, match="one or more calls"):
        appraise([[True]], [True, False])
    with pytest.raises(ValueError, match="operators by parts"):
        gauge_study([[1.0, 2.0]])
    with pytest.raises(ValueError, match="n at least 1"):
        Share(2, 1)
    with pytest.raises(ValueError, match="no more hits"):
        demonstrate(3, 2)
    with pytest.raises(ValueError, match="0 or more"):
        trials_needed(-1)


def test_without_bad_parts_misses_are_not_known() -> None:
    found = appraise([[True], [True, False]], [True, True])
    assert found.misses is None
    assert found.standing("misses") is None
    assert found.false_alarms == Share(1, 3)
    assert found.kappa is not None
    assert found.standing("effectiveness") == "unacceptable"


def test_a_grey_zone_needs_parts_on_both_sides_of_it() -> None:
    assert grey_zones([1.0, 2.0], [[True], [True]], 0.0, 9.0) == (None, None)
    assert grey_zones([1.0, 2.0], [[False], [False]], 0.0, 9.0) == (None, None)
    assert grey_zones([0.9, 1.0, 1.1], [[False], [True, False], [True]], 1.0, 9.0)[0] == (
        pytest.approx(0.2)
    )


def test_a_study_without_error_or_with_an_interaction() -> None:
    same = np.arange(4.0)[None, :, None] * np.ones((2, 4, 3))
    study = gauge_study(same)
    assert (study.repeatability, study.reproducibility, study.pooled) == (0.0, 0.0, True)
    crossed = same.copy()
    crossed[1] = crossed[1, ::-1]
    found = gauge_study(crossed + np.random.default_rng(1).normal(0.0, 0.01, crossed.shape))
    assert not found.pooled
    assert found.reproducibility > 1.0
    assert found.total == pytest.approx(np.hypot(found.gauge, found.between_parts))
