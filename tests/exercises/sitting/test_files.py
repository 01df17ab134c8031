"""Files of sittings and results: golden ones, round trips, and what is refused, where."""

from __future__ import annotations

import copy
import json
from dataclasses import replace
from datetime import timedelta, timezone
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from exercises.file_faults import FileError
from exercises.maker import FACES, TRAPS, Recipe
from exercises.rule_files import rules_of
from exercises.sitting.embedded import load_chosen
from exercises.sitting.marking import mark
from exercises.sitting.plan import HELPS, SKILLS, Chosen, Entrant, Made, Plan
from exercises.sitting.plan_file import PlanError, plan_as_dict, plan_bytes, read_plan
from exercises.sitting.result import ENDINGS, KINDS, Interruption
from exercises.sitting.result_file import ResultError, read_result, result_as_dict, result_bytes
from exercises.text import Text
from exercises.versions import HEAD
from tests.exercises.sitting.specimens import AT, SHOP, chosen, coupon_said, plan, result

GOLDEN = Path(__file__).parents[1] / "golden"
RELAXED = settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])

PLAN = plan(parts=(chosen(), chosen(coupon_said("c", task="read"), title=""), Made(Recipe(4))))
RESULT = result(of=plan(parts=(chosen(),)))


def said(document: Any) -> bytes:
    return json.dumps(document, ensure_ascii=False).encode("utf-8")


def plan_faults(document: Any) -> list[tuple[str, str]]:
    with pytest.raises(PlanError) as caught:
        read_plan(said(document), "a.sitting")
    assert all(fault.file == "a.sitting" for fault in caught.value.faults)
    return [(fault.pointer, fault.code) for fault in caught.value.faults]


def result_faults(document: Any) -> list[tuple[str, str]]:
    with pytest.raises(ResultError) as caught:
        read_result(said(document), "a.result")
    return [(fault.pointer, fault.code) for fault in caught.value.faults]


# --- golden files -------------------------------------------------------------------------------


def test_the_golden_sitting_is_read_as_it_was_written() -> None:
    data = (GOLDEN / "version-1.sitting.json").read_bytes()
    found = read_plan(data)
    assert found == PLAN
    assert json.loads(data) == plan_as_dict(found)


def test_the_golden_result_is_read_as_it_was_written() -> None:
    data = (GOLDEN / "version-1.result.json").read_bytes()
    found = read_result(data)
    assert found == RESULT
    assert json.loads(data) == result_as_dict(found)
    standing = mark(found.marks, found.items)
    # By hand: one of two coupons unanswered; of the other's seven marks the sum is what was kept.
    marks = [value for value in json.loads(data)["items"][0]["grade"]["marks"].values()
             if value is not None]  # fmt: skip
    assert standing.score == pytest.approx(sum(marks) / len(marks) / 2)
    assert standing.unanswered == 1


# --- round trips --------------------------------------------------------------------------------

recipes = st.builds(
    Recipe,
    count=st.sampled_from([1, 4]),
    seed=st.integers(0, 3),
    unit=st.sampled_from(["mm", "in"]),
    faces=st.sampled_from([FACES, ("convex", "concave")]),
    traps=st.sampled_from([TRAPS, ("overlap", "out of square", "spatter")]),
)
codes = st.text(
    st.characters(codec="utf-8", categories=["L", "N", "P"]), min_size=1, max_size=12
).filter(lambda code: code == code.strip())
marks = st.floats(0.0, 1.0)
plans = st.builds(
    Plan,
    id=st.uuids().map(str),
    title=st.text(min_size=1).filter(str.strip).map(Text.of),
    parts=st.lists(
        st.one_of(recipes.map(Made), st.sampled_from([chosen(), PLAN.parts[1]])),
        min_size=1,
        max_size=3,
    ).map(tuple),
    shuffled=st.booleans(),
    minutes=st.floats(1.0, 600.0),
    pass_mark=marks,
    skill_marks=st.dictionaries(st.sampled_from(["face", "seat", "reading"]), marks),
    helps=st.frozensets(st.sampled_from(HELPS)),
    entrants=st.lists(
        st.builds(Entrant, codes, st.floats(0.0, 3.0)),
        unique_by=lambda each: each.code.casefold(),
        max_size=4,
    ).map(tuple),
    seed=st.integers(0, 2),
    critical_fails=st.booleans(),
)


@RELAXED
@given(plans)
def test_a_plan_survives_its_file(made: Plan) -> None:
    if not made.faults():
        found = read_plan(plan_bytes(made))
        assert found == made
        assert list(found.skill_marks) == [s for s in SKILLS if s in made.skill_marks]
        assert [p.rules for p in found.parts if isinstance(p, Chosen)] == [
            p.rules for p in made.parts if isinstance(p, Chosen)
        ]
    else:
        with pytest.raises(PlanError):
            read_plan(plan_bytes(made))


zones = st.integers(-14 * 4, 14 * 4).map(lambda quarter: timezone(timedelta(minutes=15 * quarter)))
times = st.builds(
    lambda seconds, ms, zone: (AT + timedelta(seconds=seconds, milliseconds=ms)).astimezone(zone),
    st.integers(-(10**8), 10**8),
    st.integers(0, 999),
    zones,
)


@RELAXED
@given(
    times,
    times,
    st.sampled_from(ENDINGS),
    st.lists(
        st.builds(Interruption, times, st.none() | st.integers(0, 10**9), st.sampled_from(KINDS)),
        max_size=4,
    ).map(tuple),
    st.text(max_size=30),
)
def test_a_result_survives_its_file(
    started: Any, finished: Any, ended: Any, stops: Any, station: str
) -> None:
    # A clock that was set back may have it finished before it started: that is said, not refused.
    made = replace(
        RESULT, started=started, finished=finished, ended=ended, interruptions=stops,
        station=station,
    )  # fmt: skip
    assert read_result(result_bytes(made)) == made


def test_a_whole_sitting_out_of_dice_survives_its_file() -> None:
    made = result(code="k-08", skipped=3)
    found = read_result(result_bytes(made))
    assert found == made
    assert [item.coupon.digest for item in found.items] == [item.digest for item in made.items]
    assert found.shop_rules == made.shop_rules


def test_the_picture_behind_a_section_stays_out_of_results() -> None:
    assert all("backdrop" not in item.coupon.source for item in RESULT.items)


def test_coupons_of_a_tray_come_with_the_rules_files_beside_it(tmp_path: Path) -> None:
    (tmp_path / "shop.rules.json").write_text(json.dumps(SHOP), encoding="utf-8")
    tray = {
        "format": "toe-and-throat/tray",
        "version": HEAD,
        "rule_files": ["shop.rules.json"],
        "coupons": [coupon_said("a", rules="shop"), coupon_said("b")],
    }
    file = tmp_path / "yard.tray.json"
    file.write_text(json.dumps(tray), encoding="utf-8")
    both, plain = load_chosen(file), load_chosen(file, {"b"})
    assert (set(both.rules), set(plain.rules)) == ({"shop"}, set())
    found = read_plan(plan_bytes(plan(parts=(both,)))).parts[0]
    assert isinstance(found, Chosen)
    assert found.coupons[0].rule_set.digest == rules_of(SHOP).digest
    assert found.coupons[0].digest == both.coupons[0].digest
    (tmp_path / "shop.rules.json").unlink()
    with pytest.raises(FileError):
        load_chosen(file)


# --- what is refused ----------------------------------------------------------------------------


def changed(document: Any, pointer: str, value: Any) -> Any:
    """A copy of a document with another value at a place."""
    whole = copy.deepcopy(document)
    holder: Any = whole
    *path, last = [int(key) if key.isdecimal() else key for key in pointer.split("/")[1:]]
    for key in path:
        holder = holder[key]
    holder[last] = value
    return whole


# Through text, so that no part of a document is another part of it too.
SITTING = json.loads(plan_bytes(PLAN))
HANDED_IN = json.loads(result_bytes(RESULT))


@pytest.mark.parametrize(
    ("pointer", "value", "found"),
    [
        ("/format", "toe-and-throat/tray", [("/format", "format")]),
        ("/version", 2, [("/version", "newer-version")]),
        ("/version", "1", [("/version", "version")]),
        ("/minutes", "40", [("/minutes", "float-type")]),
        ("/minutes", 0, [("/minutes", "sitting-minutes")]),
        ("/helps", ["hints"], [("/helps/0", "not-a-choice")]),
        ("/skill_marks", {"sight": 1}, [("/skill_marks/sight", "unknown-key")]),
        ("/parts/0/recipe", {}, None),
        ("/parts/2/recipe/count", 0, [("/parts/2/recipe/count", "recipe-count")]),
        ("/parts/2/recipe/sizes", [1], [("/parts/2/recipe/sizes", "wrong-count")]),
        ("/parts/2/recipe/traps", ["luck"], [("/parts/2/recipe/traps/0", "not-a-choice")]),
        ("/parts/2", {}, [("/parts/2", "sitting-part")]),
        ("/parts/2", {"tray": 5}, [("/parts/2/tray", "dict-type")]),
        (
            "/parts/0/tray/coupons/0/bead/crown",
            40,
            [("/parts/0/tray/coupons/0/bead/crown", "face-in-member")],
        ),
        ("/parts/0/tray/version", 9, [("/parts/0/tray/version", "newer-version")]),
        ("/parts/0/rules", [], [("/parts/0/tray/coupons/1/rules", "unknown-rules")]),
        ("/parts/0/rules", [SHOP, SHOP], [("/parts/0/rules/1/id", "repeated-rule-set")]),
        ("/parts/0/rules/0/limits", 5, [("/parts/0/rules/0/limits", "list-type")]),
        ("/entrants/1/code", "K-07", [("/entrants/1/code", "sitting-repeated-code")]),
        ("/entrants/1/name", "somebody", [("/entrants/1/name", "unknown-key")]),
        ("/secret", 1, [("/secret", "unknown-key")]),
    ],
)
def test_a_sitting_that_can_t_be_is_refused_at_its_place(
    pointer: str, value: Any, found: list[tuple[str, str]] | None
) -> None:
    faults = plan_faults(changed(SITTING, pointer, value))
    if found is None:
        assert all(at.startswith(pointer) for at, _ in faults)
    else:
        assert [(at, code) for at, code in faults if code != "more-faults"] == found


def test_keys_that_are_whoever_s_are_passed_over() -> None:
    private = changed(changed(SITTING, "/x-room", 3), "/parts/0/tray/coupons/0/x-seen", True)
    found = read_plan(said(private))
    assert found == PLAN
    kept = found.parts[0]
    assert isinstance(kept, Chosen)
    assert kept.coupons[0].source["x-seen"] is True


@pytest.mark.parametrize(
    ("pointer", "value", "found"),
    [
        ("/version", 2, [("/version", "newer-version")]),
        ("/tray_version", HEAD + 1, [("/tray_version", "newer-version")]),
        ("/tray_version", 0, [("/tray_version", "out-of-range")]),
        ("/id", "5", [("/id", "result-id")]),
        ("/code", "k-09", [("/learner", "result-learner")]),
        ("/started", "yesterday", [("/started", "result-time")]),
        ("/started", "2026-03-02T09:00:00", [("/started", "result-time")]),
        ("/ended", "given up", [("/ended", "not-a-choice")]),
        ("/items", [], [("/items", "wrong-count")]),
        ("/items/0/number", 2, [("/items", "result-numbers")]),
        ("/items/0/slot", "1-002", [("/items", "result-slots")]),
        ("/items/0/ms", -1, [("/items/0/ms", "out-of-range")]),
        ("/items/0/digest", "0" * 64, [("/items/0/digest", "result-digest")]),
        ("/items/0/coupon/bead/leg_base", 8.1, [("/items/0/digest", "result-digest")]),
        (
            "/items/0/coupon/bead/leg_base",
            -8,
            [("/items/0/coupon/bead/leg_base", "toe-off-member")],
        ),
        ("/items/0/handling/1", [1, 2], [("/items/0/handling", "result-handling")]),
        ("/items/0/attempt", None, [("/items/0", "result-grade")]),
        ("/items/0/attempt/coupon", "z", [("/items/0", "result-stranger")]),
        ("/items/0/grade/score", 1.5, [("/items/0/grade/score", "out-of-range")]),
        ("/items/0/grade/luck", 1, [("/items/0/grade/luck", "unknown-key")]),
        ("/items/1/rules/digest", "0" * 64, [("/items/1/rules/digest", "result-rules-missing")]),
        ("/rules", [], [("/items/1/rules/digest", "result-rules-missing")]),
        ("/rules/0/limits", 5, [("/rules/0/limits", "list-type")]),
        ("/interruptions/0/kind", "tired", [("/interruptions/0/kind", "not-a-choice")]),
        ("/interruptions/1/at", "", [("/interruptions/1/at", "result-time")]),
        ("/plan/pass_mark", 7, [("/plan/pass_mark", "out-of-range")]),
    ],
)
def test_a_result_that_can_t_be_is_refused_at_its_place(
    pointer: str, value: Any, found: list[tuple[str, str]]
) -> None:
    faults = result_faults(changed(HANDED_IN, pointer, value))
    assert faults[0] in found
    if not pointer.startswith("/rules"):
        assert faults == found


def test_all_faults_of_a_result_are_said_at_once() -> None:
    broken = changed(changed(HANDED_IN, "/id", "5"), "/items/0/digest", "0" * 64)
    broken = changed(broken, "/finished", "")
    assert {code for _, code in result_faults(broken)} == {
        "result-id", "result-digest", "result-time",
    }  # fmt: skip


def test_a_call_left_incomplete_is_kept_without_a_grade() -> None:
    items = (replace(RESULT.items[0], grade=None), RESULT.items[1])
    found = read_result(result_bytes(replace(RESULT, items=items)))
    assert found.items[0].attempt is not None
    assert not found.items[0].answered


def test_a_coupon_of_no_tray_can_t_be_written() -> None:
    lone = replace(RESULT.items[0].coupon, source={})
    with pytest.raises(ValueError, match="of no tray"):
        plan_bytes(plan(parts=(Chosen(Text.of("T"), (lone,)),)))


def test_a_file_larger_than_may_be_is_refused_unread() -> None:
    with pytest.raises(PlanError, match="larger than 64 MiB"):
        read_plan(b" " * (64 * 1024 * 1024 + 1))
