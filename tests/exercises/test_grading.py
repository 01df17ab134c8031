"""Grades: each mark of the contract's table, and a reason for each below 1."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import DISPOSITIONS, Coupon, Disposition
from exercises.grading import MARKS, Grade, grade
from geometry.joint import MEMBERS, Member
from geometry.leaf import EDGES, Edge, leaf_of_mark
from geometry.measures import FaceShape
from geometry.pose import Pose
from geometry.reading import STATES, State
from geometry.seat import home_pose
from tests.exercises.trays import coupon

UPRIGHT, BASE = Pose(0.0, 0.0), Pose(0.0, 0.0, 90.0, turned=True)


def weld(
    leg_base: float,
    leg_upright: float,
    crown: float = 0.9,
    toes: dict[str, object] | None = None,
    **changes: object,
) -> Coupon:
    bead = {"leg_base": leg_base, "leg_upright": leg_upright, "crown": crown, **(toes or {})}
    return coupon(bead=bead, **changes)


def leg(on: Member, state: State | None = None, mark: str = "8 mm", **at: float) -> StatedReading:
    """The leg edge at home, or moved off it."""
    pose = (BASE if on == "base" else UPRIGHT).moved(at.get("x", 0.0), at.get("y", 0.0))
    return StatedReading(mark, "leg", on, pose, state)


def throat(state: State | None = None, mark: str = "8 mm", **at: float) -> StatedReading:
    return StatedReading(mark, "throat", "base", UPRIGHT.moved(at.get("x", 0.0), 0.0), state)


def codes(given: Grade, mark: str) -> list[str]:
    return [reason.code for reason in given.reasons if reason.mark == mark]


SHORT = weld(8.0, 6.7)
"""8 mm called for; the leaf touches on the base and shows 1.3 mm of daylight on the upright."""

PERFECT = Attempt(
    "hb-04", "convex", (leg("base", "touch"), leg("upright", "daylight")), "add weld metal", 0.9
)


def test_all_right() -> None:
    given = grade(SHORT, PERFECT)
    assert given.as_dict() == {
        "coupon": "hb-04",
        "score": 1.0,
        "marks": dict.fromkeys(MARKS, 1.0),
        "right": "add weld metal",
        "in_doubt": False,
        "critical": False,
        "reasons": [],
    }


def test_what_is_absent_can_t_be_marked() -> None:
    given = grade(SHORT, Attempt("hb-04"))
    assert given.marks == dict.fromkeys(MARKS)
    assert (given.score, given.reasons, given.critical) == (0.0, (), False)


def test_the_score_is_the_mean_of_the_marks_that_apply() -> None:
    given = grade(SHORT, Attempt("hb-04", face="convex", disposition="dress back"))
    assert [name for name, mark in given.marks.items() if mark is not None] == [
        "face", "disposition",
    ]  # fmt: skip
    assert given.score == 0.5


# --- face ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("crown", "stated", "mark"),
    [
        (0.9, "convex", 1.0), (0.9, "flat", 0.0), (0.9, "concave", 0.0),
        (-0.9, "concave", 1.0), (-0.9, "flat", 0.0), (-0.9, "convex", 0.0),
        (0.0, "flat", 1.0), (0.0, "convex", 0.0), (0.0, "concave", 0.0),
        # Within 0.05 mm of the boundary between two neighbours both names are right.
        (0.03, "convex", 1.0), (0.03, "flat", 1.0), (0.03, "concave", 0.0),
        (0.09, "flat", 1.0), (0.11, "flat", 0.0), (-0.09, "flat", 1.0), (-0.11, "flat", 0.0),
        (-0.03, "concave", 1.0), (-0.03, "convex", 0.0),
    ],
)  # fmt: skip
def test_face(crown: float, stated: FaceShape, mark: float) -> None:
    given = grade(weld(8.5, 8.5, crown), Attempt("hb-04", face=stated))
    assert given.marks["face"] == mark
    assert bool(codes(given, "face")) == (mark < 1.0)


# --- leaf ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("marks", "size", "mark"),
    [
        (["8 mm"], 8, 1.0),
        (["10 mm"], 8, 0.0),
        (["10 mm", "8 mm"], 8, 1.0),
        # The inch rack has no 8 mm leaf: the two that bracket it, or half a mark for one.
        (["5/16 in", "3/8 in"], 8, 1.0),
        (["5/16 in"], 8, 0.5),
        (["5/16 in"], "5/16 in", 1.0),
        (["8 mm"], "5/16 in", 0.5),
        (["7 mm", "8 mm"], "5/16 in", 1.0),
        ([], 8, 0.0),
    ],
)
def test_leaf(marks: list[str], size: object, mark: float) -> None:
    made = weld(8.6, 8.5, callout={"size": size})
    readings = tuple(StatedReading(each, "leg", "base") for each in marks)
    given = grade(made, Attempt("hb-04", readings=readings))
    assert given.marks["leaf"] == mark
    assert bool(codes(given, "leaf")) == (mark < 1.0)


def test_leaf_is_asked_at_each_seat() -> None:
    readings = (StatedReading("8 mm", "leg", "base"), StatedReading("10 mm", "leg", "upright"))
    assert grade(SHORT, Attempt("hb-04", readings=readings)).marks["leaf"] == 0.5


def test_a_throat_callout_has_its_own_leaf() -> None:
    made = weld(7.6, 7.5, callout={"size": 5, "measure": "throat"})
    for mark, share in (("a 5 mm", 1.0), ("8 mm", 0.5), ("5 mm", 0.0)):
        readings = (StatedReading(mark, "leg", "base"), StatedReading(mark, "leg", "upright"))
        assert grade(made, Attempt("hb-04", readings=readings)).marks["leaf"] == share


def test_in_a_skewed_joint_the_leaf_of_the_callout_is_the_limit_s_own() -> None:
    made = weld(9.0, 8.8, joint={"angle": 100})
    for mark, share in (("8 mm", 1.0), ("7 mm", 0.0), ("10 mm", 0.0)):
        readings = tuple(StatedReading(mark, "leg", on) for on in MEMBERS)
        assert grade(made, Attempt("hb-04", readings=readings)).marks["leaf"] == share


# --- edge and legs ------------------------------------------------------------------------------

LEGS = (StatedReading("8 mm", "leg", "base"), StatedReading("8 mm", "leg", "upright"))
SPUR = (StatedReading("8 mm", "throat", "base"),)
THROAT_CALLOUT: dict[str, object] = {"size": 5, "measure": "throat"}


@pytest.mark.parametrize(
    ("crown", "callout", "readings", "edge", "legs"),
    [
        (0.9, {"size": 8}, LEGS, 1.0, 1.0),
        (0.9, {"size": 8}, LEGS[:1], 1.0, 0.5),
        (0.9, {"size": 8}, SPUR, 0.0, 0.0),
        (0.9, {"size": 8}, LEGS[:1] + SPUR, 0.5, 0.5),
        (0.9, {"size": 8}, (), 0.0, 0.0),
        (0.0, {"size": 8}, LEGS, 1.0, 1.0),
        (0.0, {"size": 8}, SPUR, 1.0, 0.0),
        (-0.9, {"size": 8}, LEGS + SPUR, 1.0, 1.0),
        (-0.9, {"size": 8}, LEGS, 0.0, 1.0),
        (-0.9, {"size": 8}, SPUR, 1.0, 0.0),
        # A throat callout on a convex or flat face needs both legs as well; on a hollow one none.
        (0.9, THROAT_CALLOUT, LEGS, 1.0, 1.0),
        (0.9, THROAT_CALLOUT, SPUR, 0.0, 0.0),
        (0.0, THROAT_CALLOUT, SPUR, 1.0, 0.0),
        (0.0, THROAT_CALLOUT, LEGS, 1.0, 1.0),
        (-0.9, THROAT_CALLOUT, SPUR, 1.0, None),
        (-0.9, THROAT_CALLOUT, LEGS, 0.0, None),
    ],
)
def test_edge_and_legs(
    crown: float,
    callout: dict[str, object],
    readings: tuple[StatedReading, ...],
    edge: float,
    legs: float | None,
) -> None:
    given = grade(weld(8.6, 8.5, crown, callout=callout), Attempt("hb-04", readings=readings))
    assert (given.marks["edge"], given.marks["legs"]) == (edge, legs)
    assert bool(codes(given, "edge")) == (edge < 1.0)
    assert bool(codes(given, "legs")) == (legs is not None and legs < 1.0)


def test_the_pose_tells_which_leg_was_gauged() -> None:
    """Both are said to be on the base; the poses show one of each."""
    readings = (leg("base"), StatedReading("8 mm", "leg", "base", UPRIGHT))
    assert grade(SHORT, Attempt("hb-04", readings=readings)).marks["legs"] == 1.0


def test_the_reason_names_the_leg_that_was_left_out() -> None:
    given = grade(SHORT, Attempt("hb-04", readings=(leg("base"),)))
    (reason,) = [each for each in given.reasons if each.mark == "legs"]
    assert (reason.code, reason.params) == ("leg-not-gauged", {"member": "upright"})


def test_where_no_leaf_can_settle_it_there_is_no_right_way_to_hold_one() -> None:
    made = weld(8.5, 8.4, joint={"angle": 80})
    given = grade(made, Attempt("hb-04", face="convex", readings=LEGS, disposition="refer"))
    assert given.marks == {
        **dict.fromkeys(MARKS), "face": 1.0, "disposition": 1.0,
    }  # fmt: skip
    assert (given.right, given.score) == ("refer", 1.0)


# --- seat ---------------------------------------------------------------------------------------


def seat(made: Coupon, *readings: StatedReading) -> tuple[float | None, list[str]]:
    given = grade(made, Attempt("hb-04", readings=readings))
    return given.marks["seat"], codes(given, "seat")


def test_seat_is_the_share_of_readings_that_are_legal_and_seated() -> None:
    assert seat(SHORT, leg("base"), leg("upright")) == (1.0, [])
    assert seat(SHORT, leg("base"), leg("upright", y=0.5)) == (0.5, ["seat-open"])
    assert seat(SHORT, leg("base"), leg("upright", y=-0.5)) == (0.5, ["seat-in-steel"])
    assert seat(SHORT, leg("base", x=30.0)) == (0.0, ["seat-open"])


def test_a_pose_written_to_a_hundredth_is_legal() -> None:
    assert seat(SHORT, leg("upright", y=-0.009)) == (1.0, [])


def test_without_poses_the_seat_can_t_be_known() -> None:
    assert seat(SHORT, *LEGS) == (None, [])
    assert seat(SHORT) == (None, [])


def test_spatter_is_in_the_way_until_it_is_cleaned_off() -> None:
    made = weld(8.0, 6.7, spatter=[{"on": "base", "at": 16, "height": 0.6}])
    rocking = StatedReading("8 mm", "leg", "upright", Pose(0.0, 0.62, 0.0), "not seated")
    assert seat(made, rocking) == (0.0, ["seat-open"])
    # At home the leaf would stand in the spatter: so it was cleaned off before.
    assert seat(made, leg("upright", "daylight")) == (1.0, [])
    given = grade(made, Attempt("hb-04", readings=(leg("upright", "daylight"), rocking)))
    assert given.marks["reading"] == 1.0


def test_where_this_leaf_can_t_be_seated_an_honest_try_is_not_marked_down() -> None:
    made = weld(8.6, 8.5, joint={"angle": 80})
    striking = StatedReading("8 mm", "leg", "upright", Pose(4.0, 0.0), "not seated")
    assert seat(made, striking) == (None, [])
    inside = StatedReading("8 mm", "leg", "upright", Pose(0.0, 0.0), "not seated")
    assert seat(made, inside) == (0.0, ["seat-in-steel"])


# --- reading ------------------------------------------------------------------------------------


def reading(made: Coupon, *readings: StatedReading) -> float | None:
    return grade(made, Attempt("hb-04", readings=readings)).marks["reading"]


@pytest.mark.parametrize("state", STATES)
def test_reading_is_what_the_leaf_shows_at_its_pose(state: State) -> None:
    assert reading(SHORT, leg("upright", state)) == (1.0 if state == "daylight" else 0.0)
    assert reading(SHORT, leg("base", state)) == (1.0 if state == "touch" else 0.0)
    off = leg("upright", state, y=2.0)
    assert reading(SHORT, off) == (1.0 if state == "not seated" else 0.0)


def test_reading_is_a_share() -> None:
    stated = (leg("base", "touch"), leg("upright", "touch"), leg("upright"))
    given = grade(SHORT, Attempt("hb-04", readings=stated))
    assert given.marks["reading"] == 0.5
    (reason,) = [each for each in given.reasons if each.mark == "reading"]
    assert reason.code == "reading-other"
    assert reason.params["reading"] == 1
    assert reason.params["state"] == "daylight"
    assert reason.params["gap"] == pytest.approx(1.3)


@pytest.mark.parametrize(
    ("leg_upright", "right"),
    [
        (7.95, {"touch"}), (7.915, {"touch", "daylight"}), (7.885, {"touch", "daylight"}),
        (7.85, {"daylight"}),
    ],
)  # fmt: skip
def test_a_gap_at_the_edge_of_sight_may_be_called_either_way(
    leg_upright: float, right: set[State]
) -> None:
    made = weld(8.0, leg_upright)
    allowed = {state for state in STATES if reading(made, leg("upright", state)) == 1.0}
    assert allowed == right


def test_a_worn_leaf_shows_what_a_worn_leaf_shows() -> None:
    worn = weld(8.0, 8.0, leaf_wear=0.3)
    assert reading(worn, leg("base", "daylight"), leg("upright", "daylight")) == 1.0
    assert grade(worn, Attempt("hb-04")).right == "accept"


def test_what_the_spur_shows() -> None:
    made = weld(9.2, 9.1, -1.3)
    assert reading(made, throat("daylight"), throat("touch")) == 0.5


# --- disposition --------------------------------------------------------------------------------


@pytest.mark.parametrize("stated", DISPOSITIONS)
def test_disposition(stated: Disposition) -> None:
    given = grade(SHORT, Attempt("hb-04", disposition=stated))
    assert given.marks["disposition"] == (1.0 if stated == "add weld metal" else 0.0)
    assert codes(given, "disposition") == (
        [] if stated == "add weld metal" else ["right-add-weld-metal"]
    )
    assert given.critical == (stated == "accept")


def test_critical_fails_the_coupon() -> None:
    attempt = Attempt("hb-04", "convex", PERFECT.readings, "accept")
    given = grade(SHORT, attempt)
    assert (given.critical, given.score) == (True, 0.0)
    assert sum(mark or 0.0 for mark in given.marks.values()) == 6.0


def test_in_doubt_either_verdict_and_refer_are_right_and_nothing_is_critical() -> None:
    near = weld(8.0, 7.95)
    for stated, mark in zip(DISPOSITIONS, (1.0, 0.0, 1.0, 1.0), strict=True):
        given = grade(near, Attempt("hb-04", disposition=stated))
        assert (given.marks["disposition"], given.in_doubt, given.critical) == (mark, True, False)


def test_accepting_what_should_be_referred_is_wrong_but_not_critical() -> None:
    given = grade(weld(8.6, 8.5, joint={"angle": 80}), Attempt("hb-04", disposition="accept"))
    assert (given.marks["disposition"], given.critical) == (0.0, False)
    assert codes(given, "disposition") == ["right-refer"]


@pytest.mark.parametrize(
    ("toes", "text"),
    [
        (
            {"overlap_base": 1.5},
            "the right call is dress back: the overlap on the base is 1.5 mm, and 0 mm is allowed",
        ),
        (
            {"undercut_upright": {"depth": 0.5, "width": 1.5}},
            (
                "the right call is add weld metal: the undercut at the upright toe is 0.5 mm, and "
                "0 mm is allowed"
            ),
        ),
    ],
)
def test_what_the_eye_finds_is_critical_to_miss(toes: dict[str, object], text: str) -> None:
    given = grade(weld(8.6, 8.5, toes=toes), Attempt("hb-04", disposition="accept"))
    assert given.critical
    assert [reason.text for reason in given.reasons] == [text]


# --- other tasks --------------------------------------------------------------------------------


def test_a_task_to_read_marks_the_reading_only() -> None:
    made = weld(8.0, 6.7, task="read")
    attempt = Attempt("hb-04", None, (leg("upright", "daylight"),), "accept")
    given = grade(made, attempt)
    assert given.marks == {**dict.fromkeys(MARKS), "seat": 1.0, "reading": 1.0}
    assert (given.right, given.critical) == (None, False)


@pytest.mark.parametrize(
    ("marks", "mark"), [(["6 mm", "7 mm"], 1.0), (["6 mm"], 0.5), (["8 mm"], 0.0)]
)
def test_a_task_of_size_asks_for_the_leaves_about_the_weld_s_own(
    marks: list[str], mark: float
) -> None:
    made = weld(8.0, 6.7, task="size")
    readings = tuple(StatedReading(each, "leg", "upright") for each in marks)
    given = grade(made, Attempt("hb-04", readings=readings))
    assert given.marks["leaf"] == mark
    assert given.marks["disposition"] is None


# --- always -------------------------------------------------------------------------------------

COUPONS = [
    SHORT,
    weld(8.6, 8.5, 0.0),
    weld(9.2, 9.1, -1.3),
    weld(8.0, 8.0, spatter=[{"on": "base", "at": 16, "height": 0.6}]),
    weld(8.6, 8.5, toes={"overlap_base": 1.5}),
    weld(9.0, 8.8, 0.6, joint={"angle": 100}),
    weld(8.6, 8.5, 0.6, joint={"angle": 80}),
    weld(7.1, 7.0, -1.2, callout={"size": 4, "measure": "throat"}),
]
POSES = st.builds(
    Pose, st.floats(-20, 20), st.floats(-20, 20), st.floats(-179, 180), st.booleans()
) | st.sampled_from([UPRIGHT, BASE])
READINGS = st.builds(
    StatedReading,
    st.none() | st.sampled_from(["3 mm", "8 mm", "5/16 in", "a 5 mm", "1 in"]),
    st.none() | st.sampled_from(EDGES),
    st.none() | st.sampled_from(MEMBERS),
    st.none() | POSES,
    st.none() | st.sampled_from(STATES),
)
ATTEMPTS = st.builds(
    Attempt,
    st.just("hb-04"),
    st.none() | st.sampled_from(["convex", "flat", "concave"]),
    st.none() | st.lists(READINGS, max_size=3).map(tuple),
    st.none() | st.sampled_from(DISPOSITIONS),
    st.none() | st.floats(0, 1),
)


@given(st.sampled_from(COUPONS), ATTEMPTS)
def test_any_attempt_gets_a_grade_and_each_mark_below_one_its_reason(
    made: Coupon, attempt: Attempt
) -> None:
    given = grade(made, attempt)
    marks = [mark for mark in given.marks.values() if mark is not None]
    assert all(0.0 <= mark <= 1.0 for mark in marks)
    expected = sum(marks) / len(marks) if marks and not given.critical else 0.0
    assert given.score == pytest.approx(expected)
    lower = {name for name, mark in given.marks.items() if mark is not None and mark < 1.0}
    assert {reason.mark for reason in given.reasons} == lower
    assert all(reason.text and reason.text.isprintable() for reason in given.reasons)
    assert grade(made, attempt) == given


@pytest.mark.parametrize("edge", EDGES)
@pytest.mark.parametrize("on", MEMBERS)
def test_home_is_where_these_tests_think_it_is(edge: Edge, on: Member) -> None:
    leaf = leaf_of_mark("8 mm", edge)
    expected = BASE if (edge, on) == ("leg", "base") else UPRIGHT
    assert home_pose(SHORT.section.joint, leaf, on) == expected
