"""Whatever a coupon says, under any rules: a verdict that its checks bear out, and a grade."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from exercises.attempt import Attempt
from exercises.coupon import DISPOSITIONS, Coupon
from exercises.grading import grade
from exercises.judging import judge, right_handling
from exercises.rules import SHIPPED
from exercises.tray import TrayError, read_tray
from tests.exercises.trays import document

LENGTH = st.floats(3.0, 14.0)
THICK = st.floats(1.0, 80.0)

CONDITIONS = st.fixed_dictionaries(
    {},
    optional={
        "edge": st.sampled_from(["base", "upright"]),
        "low_hydrogen": st.booleans(),
        "transverse_tension": st.booleans(),
        "girder_end": st.booleans(),
        "weld_length": st.floats(20.0, 2000.0),
    },
)
CALLOUT = st.one_of(
    st.fixed_dictionaries(
        {"size": st.one_of(LENGTH, st.sampled_from(["1/4 in", "3/8 in"]))},
        optional={"upright_size": LENGTH, "built_out": st.booleans()},
    ),
    st.fixed_dictionaries({"size": st.floats(2.0, 8.0), "measure": st.just("throat")}),
)
COUPONS = st.fixed_dictionaries(
    {
        "id": st.just("a"),
        "bead": st.fixed_dictionaries(
            {"leg_base": LENGTH, "leg_upright": LENGTH, "crown": st.floats(-0.8, 1.5)},
            optional={"overlap_base": st.floats(0.3, 1.0)},
        ),
        "callout": CALLOUT,
        "rules": st.sampled_from(SHIPPED),
        "extent": st.sampled_from([0.05, 0.1, 0.25, 1.0]),
        "joint": st.fixed_dictionaries(
            {"base_thickness": THICK, "upright_thickness": THICK},
            optional={"angle": st.floats(75.0, 130.0), "root_opening": st.floats(0.01, 2.9)},
        ),
    },
    optional={"conditions": CONDITIONS},
)


def coupon_of(stated: dict[str, Any]) -> tuple[Coupon | None, set[str]]:
    """The coupon, or the keys of it that are refused."""
    try:
        return read_tray(document(stated)).coupons[0], set()
    except TrayError as error:
        return None, {fault.pointer.split("/")[3] for fault in error.faults}


@settings(max_examples=60)
@given(COUPONS)
def test_a_verdict_is_what_its_checks_bear_out(stated: dict[str, Any]) -> None:
    made, refused = coupon_of(stated)
    # Geometry refuses some of these; nothing else may.
    assert refused <= {"bead", "joint"}
    if made is None:
        return
    call = judge(made)
    needed = {check.disposition for check in call.checks if not check.passed}
    needed |= {"refer"} if call.undecided else set()
    assert call.disposition == next((d for d in DISPOSITIONS if d in needed), "accept")
    assert call.disposition in call.acceptable
    assert call.in_doubt == (len(call.acceptable) > 1)
    for check in call.checks:
        assert check.passed == (check.margin >= -1e-9)
        over = check.measured - check.limit
        assert (over if check.bound == "at_least" else -over) * check.margin >= -1e-9
        assert check.doubt == 0.0 or check.unit == "mm"
    handling = right_handling(made)
    assert all(handling.at[seat] for seat in handling.seats)
    given_grade = grade(made, Attempt("a", disposition="accept"))
    assert given_grade.critical == ("accept" not in call.acceptable and call.rejected)
