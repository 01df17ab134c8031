"""Every check and every reason leads to an entry that is there."""

from __future__ import annotations

from typing import Any

import pytest

from exercises.attempt import Attempt
from exercises.callout import Callout, Intermittent
from exercises.coupon import Coupon
from exercises.definitions import reference
from exercises.grading import grade
from exercises.judging import judge
from exercises.rules import RULE_SETS
from exercises.signposts import entry_of_callout, entry_of_check, entry_of_reason, entry_of_rules
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section

KEYS = {entry.key for entry in reference()}
FACES = (0.9, 0.0, -0.9)
CALLOUTS = (
    Callout(8.0, "leg", "8 mm"),
    Callout(5.0, "throat", "5 mm"),
    Callout(6.0, "leg", "6 mm", upright_size=8.0, upright_text="8 mm"),
)


@pytest.mark.parametrize("rules", RULE_SETS)
@pytest.mark.parametrize("callout", CALLOUTS, ids=lambda callout: callout.text)
@pytest.mark.parametrize("crown", FACES)
def test_every_check_of_every_set(rules: str, callout: Callout, crown: float) -> None:
    coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 6.7, crown=crown)), callout, rules=rules)
    judgement = judge(coupon)
    for check in judgement.checks:
        found = entry_of_check(coupon, check.key, judgement.face)
        assert found in KEYS
        assert found.startswith(entry_of_rules(coupon.rule_set))
        assert (".size." in found) == (check.required is not None)
    for code in ("right-accept", "leaf-other", "leg-not-gauged"):
        assert entry_of_reason(coupon, code, {}, judgement.face) in KEYS


def test_a_shop_may_call_its_limits_anything_but_they_have_entries() -> None:
    coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 8.0)), CALLOUTS[0], rules="iso-5817-b")
    assert entry_of_check(coupon, "toe_angle_upright", "flat") == "rules.iso-5817-b.toe_angle"
    assert entry_of_check(coupon, "root_opening", "flat") == "rules.iso-5817-b.root_opening"


@pytest.mark.parametrize(
    ("attempt", "wanted"),
    [
        ({"face": "flat"}, "word.face"),
        ({"readings": []}, "gauge.holding"),
        ({"disposition": "accept"}, "rules.as-drawn.size.leg-convex"),
    ],
)
def test_reasons_that_grading_gives(attempt: dict[str, Any], wanted: str) -> None:
    coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 6.7, crown=0.9)), CALLOUTS[0])
    graded = grade(coupon, Attempt("a", **attempt))
    found = [entry_of_reason(coupon, r.code, r.params, "convex") for r in graded.reasons]
    assert wanted in found
    assert set(found) <= KEYS


def test_what_is_least_usual_of_a_callout_is_explained() -> None:
    pieces = Intermittent(50.0, 150.0)
    said = {
        "callout.pitch": Callout(8.0, "leg", "8 mm", intermittent=pieces, site=True),
        "callout.marks": Callout(8.0, "leg", "8 mm", tail="GMAW"),
        "callout.unequal": CALLOUTS[2],
        "callout.throat": CALLOUTS[1],
        "callout.leg": CALLOUTS[0],
    }
    for key, callout in said.items():
        assert entry_of_callout(callout) == key
        assert key in KEYS
    assert entry_of_callout(Callout(8.0, "leg", "8 mm", side="both")) == "callout.marks"
