"""A leaf that somebody has placed: what is truly wrong with it, what a file may not state of one.

Where a leaf lies is stated here by hand from the section: a leg edge reading the upright lies home
at (0, 0), angle 0, unless its leg is longer than the leaf.
"""

from __future__ import annotations

import copy
from typing import Any

import pytest

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.grading import HINT_COST, MARKS, grade
from exercises.placed import PLACEMENT_FAULTS
from exercises.placement_faults import findings, placed_leaf, placement_faults, true_faults
from exercises.tray import TrayError, read_tray
from tests.exercises.trays import coupon, document

HOME = {"x": 0.0, "y": 0.0, "angle": 0.0}
PLACED: dict[str, Any] = {
    "leaf": "8 mm",
    "edge": "leg",
    "on": "upright",
    "pose": HOME,
    "gauged": ["base", "upright"],
}
SHORT = {"leg_base": 7.0, "leg_upright": 6.7, "crown": 0.9}
HOLLOW = {"leg_base": 8.0, "leg_upright": 8.0, "crown": -0.9}


def with_leaf(placed: dict[str, Any] | None = None, **changes: object) -> Coupon:
    """A coupon with a leaf on it; `placed` changes some of what is said of that."""
    whole = {**PLACED, **(placed or {})}
    return coupon(**{"task": "find the fault", "bead": SHORT, "placed": whole, **changes})


def refused(placed: dict[str, Any], **changes: object) -> list[tuple[str, str]]:
    with pytest.raises(TrayError) as caught:
        with_leaf(placed, **changes)
    return [(fault.pointer, fault.code) for fault in caught.value.faults]


def test_a_leaf_held_as_is_right_has_nothing_wrong_with_it() -> None:
    held = with_leaf()
    assert findings(held) == ()
    assert placement_faults(held) == {"nothing"}


@pytest.mark.parametrize(
    ("placed", "faults"),
    [
        ({"leaf": "7 mm"}, ("wrong leaf",)),
        ({"leaf": "10 mm"}, ("wrong leaf",)),
        # No inch leaf is 8 mm: 5/16 and 3/8 in lie about it, and either will do.
        ({"leaf": "5/16 in"}, ("nothing",)),
        ({"leaf": "1/2 in"}, ("wrong leaf",)),
        ({"gauged": ["upright"]}, ("one leg only",)),
        ({"gauged": []}, ("one leg only",)),
        ({"on": "base"}, ("wrong member",)),
        ({"on": "base", "gauged": ["base"], "leaf": "7 mm"},
         ("wrong leaf", "one leg only", "wrong member")),
        # Turned over, the same leaf reads the base.
        ({"on": "base", "pose": {"x": 0.0, "y": 0.0, "angle": 90.0, "turned": True}},
         ("nothing",)),
        ({"on": "upright", "pose": {"x": 0.0, "y": 0.0, "angle": 90.0, "turned": True}},
         ("wrong member",)),
    ],
)  # fmt: skip
def test_each_fault_that_a_seated_leaf_may_have(
    placed: dict[str, Any], faults: tuple[str, ...]
) -> None:
    assert true_faults(with_leaf(placed)) == faults


def test_a_leaf_that_rocks_on_the_toe_is_tilted_and_a_degree_is_seen() -> None:
    # Turned about the far end of its long edge, at x 24, by two degrees: that end stays on the
    # base, and the tip leaves the upright.
    tilted = with_leaf({"pose": {"x": 0.3, "y": 0.84, "angle": -2.0}})
    (found,) = findings(tilted)
    assert found.fault == "tilted"
    assert found.params["degrees"] == pytest.approx(2.0)
    assert found.params["opening"] == pytest.approx(12.0 * 0.0349, abs=1e-3)


def test_on_spatter_beneath_the_long_edge_it_is_tilted_too() -> None:
    drop = {"on": "base", "at": 20.0, "height": 0.6}
    held = with_leaf({"pose": {"x": 0.0, "y": 0.6, "angle": 0.0}}, spatter=[drop])
    assert true_faults(held) == ("on spatter",)
    tilted = with_leaf({"pose": {"x": 1.228, "y": -0.71, "angle": 4.0}}, spatter=[drop])
    assert true_faults(tilted) == ("tilted", "on spatter")


def test_the_throat_edge_on_a_convex_weld_is_the_wrong_one_and_has_no_member() -> None:
    far = {"x": 0.0, "y": 0.0, "angle": 0.0}
    low = {**SHORT, "crown": 0.4}
    held = with_leaf({"edge": "throat", "pose": far, "on": "base"}, bead=low)
    assert true_faults(held) == ("wrong edge",)
    assert placed_leaf(held).edge == "throat"


@pytest.mark.parametrize(
    ("edge", "gauged", "faults"),
    [
        ("throat", ["base", "upright"], ("nothing",)),
        ("throat", ["base"], ("one leg only",)),
        ("leg", ["base", "upright"], ("wrong edge",)),
    ],
)
def test_on_a_hollow_weld_it_is_the_throat_that_is_gone_by(
    edge: str, gauged: list[str], faults: tuple[str, ...]
) -> None:
    held = with_leaf({"edge": edge, "gauged": gauged}, bead=HOLLOW)
    assert true_faults(held) == faults


def test_a_throat_callout_on_a_hollow_face_needs_no_legs() -> None:
    said = {"edge": "throat", "leaf": "a 5 mm", "gauged": []}
    held = with_leaf(said, bead=HOLLOW, callout={"size": 5, "measure": "throat"})
    assert true_faults(held) == ("nothing",)


def test_of_two_legs_each_has_a_leaf_of_its_own() -> None:
    callout = {"size": 6, "upright_size": 8}
    assert true_faults(with_leaf({"leaf": "8 mm"}, callout=callout)) == ("nothing",)
    # Meant for the base and held to the upright: one mistake, not two.
    meant = with_leaf({"leaf": "8 mm", "on": "base"}, callout=callout)
    assert true_faults(meant) == ("wrong member",)


@pytest.mark.parametrize(
    ("placed", "changes", "fault"),
    [
        ({"pose": {"x": -0.5, "y": 0, "angle": 0}}, {}, ("/pose", "placed-in-steel")),
        ({"pose": {"x": 30, "y": 30, "angle": 0}}, {}, ("/pose", "placed-aloft")),
        # Flat on the base, but short of the upright.
        ({"pose": {"x": 2, "y": 0, "angle": 0}}, {}, ("/pose", "placed-adrift")),
        ({"edge": "throat", "pose": {**HOME, "turned": True}}, {},
         ("/pose/turned", "placed-turned")),
        ({"pose": {"x": 30, "y": 0, "angle": 0}},
         {"joint": {"angle": 80}, "bead": {"leg_base": 8.5, "leg_upright": 8.5}},
         ("", "placed-unsettled")),
        ({"leaf": "9 mm"}, {}, ("/leaf", "leaf")),
        ({"gauged": ["root"]}, {}, ("/gauged/0", "not-a-choice")),
        ({"gauged": ["base", "base", "base"]}, {}, ("/gauged", "wrong-count")),
        ({"truth": "tilted"}, {}, ("/truth", "unknown-key")),
    ],
)  # fmt: skip
def test_what_a_file_may_not_state(
    placed: dict[str, Any], changes: dict[str, Any], fault: tuple[str, str]
) -> None:
    at, code = fault
    assert refused(placed, **changes) == [(f"/coupons/0/placed{at}", code)]


def test_a_fault_to_find_needs_a_leaf_and_no_other_task_does() -> None:
    made = document({"id": "a", "task": "find the fault", "bead": SHORT, "callout": {"size": 8}})
    with pytest.raises(TrayError) as caught:
        read_tray(made)
    assert [(f.pointer, f.code) for f in caught.value.faults] == [("/coupons/0", "placed-missing")]
    plain, kept = coupon(bead=SHORT), coupon(bead=SHORT, placed=copy.deepcopy(PLACED))
    assert plain.digest == kept.digest
    assert kept.source["placed"] == PLACED


def test_every_right_answer_is_marked_right_and_no_other() -> None:
    held = with_leaf({"on": "base", "gauged": ["base"]})
    for stated in PLACEMENT_FAULTS:
        given = grade(held, Attempt("hb-04", fault=stated))
        assert [given.marks[name] for name in MARKS] == [None] * 7
        assert given.marks["fault"] == float(stated in ("one leg only", "wrong member"))
        assert given.score == given.marks["fault"]
        assert [reason.code for reason in given.reasons] == ["fault-other"] * (not given.score)
    assert grade(held, Attempt("hb-04")).score == 0.0


def test_each_hint_costs_and_the_score_stays_above_nothing() -> None:
    held = with_leaf(hints=["look", "look again"])
    given = grade(held, Attempt("hb-04", fault="nothing", hints=2))
    assert given.score == pytest.approx(1.0 - 2 * HINT_COST)
    assert given.marks["fault"] == 1.0
    assert [(reason.mark, reason.code) for reason in given.reasons] == [("hints", "hints-asked")]
    # More than there are can't have been shown; and nothing is less than nothing.
    assert grade(held, Attempt("hb-04", fault="nothing", hints=9)).score == given.score
    assert grade(held, Attempt("hb-04", fault="tilted", hints=2)).score == 0.0
    without = with_leaf()
    assert grade(without, Attempt("hb-04", fault="nothing", hints=3)).score == 1.0
