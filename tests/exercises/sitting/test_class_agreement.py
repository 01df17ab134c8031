"""Agreement of a class: by hand, and beside another library."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from statsmodels.stats import inter_rater

from exercises.disposition import DISPOSITIONS
from exercises.sitting.class_agreement import class_agreement
from exercises.sitting.class_table import Answer, class_table
from tests.exercises.sitting.classes import answered

calls = arrays.arrays(np.int64, (4, 6), elements=st.integers(0, 3))
truths = arrays.arrays(np.int64, 6, elements=st.integers(0, 3))


def answer(learner: int, slot: int, said: int, truth: int) -> Answer:
    plain = answered(f"k-{learner}", f"1-{slot:03}", right=said == truth)
    return replace(
        plain,
        said=DISPOSITIONS[said],
        truth=DISPOSITIONS[truth],
        bad=DISPOSITIONS[truth] != "accept",
        called_bad=DISPOSITIONS[said] != "accept",
    )


@given(calls, truths)
def test_it_is_statsmodels_kappa_with_the_truth_and_with_each_other(
    said: np.ndarray, truth: np.ndarray
) -> None:
    table = class_table(
        answer(learner, slot, int(said[learner, slot]), int(truth[slot]))
        for learner in range(4)
        for slot in range(6)
    )
    found = class_agreement(table)
    assert found.places == 6
    for learner, each in enumerate(found.learners):
        crossed = np.zeros((4, 4))
        np.add.at(crossed, (said[learner], truth), 1.0)
        assert each.right is not None
        assert each.right.count == np.trace(crossed)
        if each.kappa is not None:
            other = inter_rater.cohens_kappa(crossed, return_results=False)
            assert each.kappa == pytest.approx(float(other), abs=1e-9)
        bad = truth != DISPOSITIONS.index("accept")
        let_go = (said[learner] == DISPOSITIONS.index("accept")) & bad
        assert (each.misses.count if each.misses else 0) == let_go.sum()
    counts, _ = inter_rater.aggregate_raters(said.T, n_cat=4)
    if found.with_each_other is not None:
        assert found.with_each_other == pytest.approx(float(inter_rater.fleiss_kappa(counts)))
    else:
        assert len(set(said.ravel().tolist())) == 1


def test_doubtful_places_count_between_learners_and_not_against_the_truth() -> None:
    sure = [answer(learner, 0, learner, 0) for learner in range(2)]
    doubtful = [replace(answer(learner, 1, 3, 2), in_doubt=True) for learner in range(2)]
    found = class_agreement(class_table([*sure, *doubtful]))
    assert found.places == 2
    assert [each.right.of for each in found.learners if each.right] == [1, 1]


def test_a_place_that_not_all_called_is_left_out_between_learners() -> None:
    answers = [answer(0, 0, 1, 1), answer(1, 0, 1, 1), answer(0, 1, 3, 3)]
    silent = replace(answer(1, 1, 3, 3), answered=False, said=None, called_bad=None)
    found = class_agreement(class_table([*answers, silent]))
    assert found.places == 1
    assert found.learners[1].right is not None
    assert found.learners[1].right.of == 1


def test_what_can_t_be_known_is_not_said() -> None:
    silent = replace(answer(0, 0, 0, 0), answered=False, said=None, truth=None, called_bad=None)
    found = class_agreement(class_table([silent]))
    assert (found.with_truth, found.with_each_other, found.places) == (None, None, 0)
    assert found.learners[0].right is None
    assert found.learners[0].misses is None
    alone = class_agreement(class_table([answer(0, 0, 1, 1)]))
    assert alone.with_each_other is None
