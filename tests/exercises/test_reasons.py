"""How reasons are worded: by marks, by where a limit comes from, and without contradiction."""

from __future__ import annotations

import pytest

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon
from exercises.grading import grade
from tests.exercises.test_grading import SHORT, weld


@pytest.mark.parametrize(
    ("made", "text"),
    [
        (weld(8.6, 8.5), "use the 8 mm leaf"),
        (weld(8.6, 8.5, callout={"size": "5/16 in"}), "use the 5/16 in leaf"),
        # Neither 7.07 mm nor 7.88 mm is engraved on anything.
        (weld(7.6, 7.5, callout={"size": 5, "measure": "throat"}), "use the leaf a 5"),
        (weld(9.0, 8.8, joint={"angle": 100}), "use the 8 mm leaf"),
        (
            weld(11.0, 10.8, callout={"size": 10}, joint={"angle": 100}),
            (
                "use the 8 mm leaf and the 10 mm leaf, one on either side of the limit; a leaf "
                "reads a leg square to the member that its long edge lies on: leg x sin(100\u00b0)"
            ),
        ),
        (
            weld(8.0, 6.7, task="size"),
            "use the 6 mm leaf and the 7 mm leaf, one on either side of the weld",
        ),
    ],
)
def test_the_reason_names_the_leaf_by_its_mark(made: Coupon, text: str) -> None:
    given = grade(made, Attempt("hb-04", readings=(StatedReading("25 mm", "leg", "base"),)))
    assert [reason.text for reason in given.reasons if reason.mark == "leaf"] == [text]


@pytest.mark.parametrize(
    ("made", "grounds"),
    [
        (
            weld(7.4, 7.3, callout={"size": 6}, joint={"root_opening": 2}),
            (
                "the leg on the upright is 7.3 mm, and 6 mm called for + 2 mm root opening = 8 mm "
                "needed"
            ),
        ),
        # A leg of 6 mm is a throat of 4.24 mm; 2 mm more leg is 1.41 mm more throat.
        (
            weld(6.0, 6.0, callout={"size": 4, "measure": "throat"}, joint={"root_opening": 2}),
            (
                "the effective throat is 4.24 mm, and 4 mm called for + 1.41 mm root opening = "
                "5.41 mm needed"
            ),
        ),
        (SHORT, "the leg on the upright is 6.7 mm, and 8 mm is called for"),
    ],
)
def test_the_reason_says_where_the_limit_comes_from(made: Coupon, grounds: str) -> None:
    (reason,) = grade(made, Attempt("hb-04", disposition="accept")).reasons
    assert reason.text == f"the right call is add weld metal: {grounds}"


def test_what_is_covered_by_doubt_is_not_contradicted() -> None:
    near = weld(8.0, 7.95)
    for stated in ("accept", "refer", "add weld metal"):
        assert grade(near, Attempt("hb-04", disposition=stated)).reasons == ()


def test_a_concave_face_is_called_hollow() -> None:
    (reason,) = grade(weld(8.5, 8.5, -0.9), Attempt("hb-04", face="flat")).reasons
    assert reason.code == "face-concave"
    assert reason.text.startswith("the face is hollow: 0.90 mm short of the line")
