"""The largest leaf that a weld still meets, and the mark on a stated size."""

from __future__ import annotations

import pytest

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.grading import grade
from exercises.largest_leaf import largest_leaf, right_sizes
from geometry.leaf import RackName
from tests.exercises.trays import coupon


def sized(base: float, upright: float, crown: float = 0.8, **changes: object) -> Coupon:
    bead = {"leg_base": base, "leg_upright": upright, "crown": crown}
    return coupon(**{"task": "size", "bead": bead, **changes})


@pytest.mark.parametrize(
    ("made", "name", "right"),
    [
        (sized(8.5, 7.4), "metric", {"7 mm"}),
        (sized(8.5, 7.4), "inch", {"1/4 in"}),
        # 5 * sqrt 2 is 7.07, 5.5 * sqrt 2 is 7.78.
        (sized(8.5, 7.4), "throat", {"a 5 mm"}),
        # Within 0.13 mm of a leaf either side is right.
        (sized(8.5, 8.1), "metric", {"7 mm", "8 mm"}),
        (sized(8.5, 7.9), "metric", {"7 mm", "8 mm"}),
        (sized(8.5, 8.14), "metric", {"8 mm"}),
        (sized(2.4, 2.4, 0.2), "metric", set()),
    ],
)
def test_by_both_legs(made: Coupon, name: RackName, right: set[str]) -> None:
    assert right_sizes(made, name) == right
    if len(right) < 2:
        assert largest_leaf(made, name) == next(iter(right), None)


def test_a_hollow_weld_meets_what_its_throat_meets() -> None:
    # Legs of 10 hollowed by 1: the throat of a flat weld is 7.07 mm, here 6.07, which is a leg of
    # 8.59 on a flat weld.
    assert right_sizes(sized(10.0, 10.0, -1.0), "metric") == {"8 mm"}


def test_a_skewed_joint_reads_square_to_the_flush_member() -> None:
    # 10.1 * sin 80 degrees is 9.95: a ten is within doubt. 10.1 itself would be too.
    made = sized(10.1, 10.1, joint={"angle": 100})
    assert right_sizes(made, "metric") == {"8 mm", "10 mm"}


def test_a_stated_size_is_marked_by_the_rack_that_it_hangs_on() -> None:
    made = sized(8.5, 7.4)
    for stated, mark in (("7 mm", 1.0), ("8 mm", 0.0), ("6 mm", 0.0), ("1/4 in", 1.0)):
        given = grade(made, Attempt("hb-04", size=stated))
        assert given.marks["size"] == mark
        assert given.score == mark
        told = [(reason.code, reason.params.get("leaf")) for reason in given.reasons]
        assert told == ([] if mark else [("size-other", "7 mm")])


def test_a_weld_below_every_leaf_says_so() -> None:
    (reason,) = grade(sized(2.4, 2.4, 0.2), Attempt("hb-04", size="3 mm")).reasons
    assert reason.code == "size-none"


def test_the_mark_stands_only_where_a_size_is_asked_for_and_stated() -> None:
    assert "size" not in grade(sized(8.5, 7.4), Attempt("hb-04")).marks
    assert "size" not in grade(coupon(), Attempt("hb-04", size="8 mm")).marks
