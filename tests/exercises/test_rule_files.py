"""A shop's own rules: what is read, what is refused and where, and how a tray comes to them."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from exercises.attempt import Attempt
from exercises.grading import grade
from exercises.judging import judge
from exercises.rule_files import RulesError, check_rules, load_rules, rules_faults, rules_schema
from exercises.rules import RULE_SETS
from exercises.rules.shipped import rules_text
from exercises.tray import TrayError, check_tray, load_tray, read_tray, save_tray
from tests.exercises.trays import COUPON, document, written

OWN = {"document": "shop rules", "sureness": "own"}
SHOP: dict[str, Any] = {
    "format": "toe-and-throat/rules",
    "version": 1,
    "id": "shop",
    "revision": 3,
    "title": "The shop's",
    "source": OWN,
    "undersize": {"measured_as": "leg", "at_most": "1/16 in", "within": {"share": 0.2},
                  "source": OWN},
    "opening": {"free": {"mm": 2, "in": "1/16 in"}, "source": OWN},
    "minimum_size": {"measured_as": "leg", "at_least": 4, "source": OWN},
    "limits": [
        {"measure": "convexity", "at_most": {"base": 1, "share": {"of": "face_width", "by": 0.1}},
         "source": OWN, "x-since": 2024},
        {"measure": "toe_angle", "at_least": 120, "source": OWN},
        {"measure": "undercut", "at_most": 0.5, "short": 1, "needs": "refer", "source": OWN,
         "within": {"length": 25, "each": 100}},
    ],
}  # fmt: skip
GOLDEN = Path(__file__).parent / "golden" / "version-1.rules.json"


def shop(**changes: object) -> dict[str, Any]:
    return {**copy.deepcopy(SHOP), **changes}


def limit(**changes: object) -> dict[str, Any]:
    stated = {"measure": "convexity", "at_most": 1, "source": OWN, **changes}
    return shop(limits=[{key: value for key, value in stated.items() if value is not ...}])


def amount(value: object) -> dict[str, Any]:
    return limit(at_most=value)


def found(value: object) -> list[tuple[str, str]]:
    return [(fault.at, fault.code) for fault in rules_faults(value)]  # type: ignore[arg-type]


# --- what is read -----------------------------------------------------------------------------


def test_a_shop_s_rules_are_read(tmp_path: Path) -> None:
    rules = load_rules(written(tmp_path, SHOP, "shop.rules.json"))
    assert (rules.id, rules.version, str(rules.title)) == ("shop", 3, "The shop's")
    assert rules.undersize is not None
    assert rules.opening is not None
    assert (rules.opening.free.mm, rules.opening.free.inch) == (2.0, 1.5875)
    assert [each.needs for each in rules.limits] == ["dress back", "dress back", "refer"]
    assert len(rules.digest) == 64
    assert rules.lines[0].in_language("en") == (
        "Leg under its size: \u2264 1.59 mm; over at most 20 % of the length (own rule)."
    )


def test_private_keys_and_spacing_change_no_digest(tmp_path: Path) -> None:
    first = load_rules(written(tmp_path, SHOP, "a.rules.json"))
    same = {**shop(), "x-by": "me"}
    second = load_rules(written(tmp_path, json.dumps(same, indent=4).encode(), "b.rules.json"))
    other = load_rules(written(tmp_path, shop(revision=4), "c.rules.json"))
    assert first.digest == second.digest != other.digest


def test_the_golden_file_still_means_what_it_meant() -> None:
    rules = load_rules(GOLDEN)
    assert rules.digest == "e330aad346e34f14ad31244ce883611c59e41d7ce3b61052f1f8a3b893247abb"
    kinds = {type(each.amount).__name__ for each in rules.limits}
    assert kinds == {"Length", "Linear", "Table", "Where", "Extreme"}


# --- what is refused --------------------------------------------------------------------------

FAULTS: list[tuple[object, str, str]] = [
    ([], "", "not-an-object"),
    (shop(format="toe-and-throat/tray"), "/format", "format"),
    (shop(version=2), "/version", "newer-version"),
    (shop(id=""), "/id", "wrong-count"),
    (shop(id="iso-5817-c"), "/id", "shipped-id"),
    (shop(revision=0), "/revision", "out-of-range"),
    (shop(title=3), "/title", "text"),
    (shop(limit=[]), "/limit", "unknown-key"),
    (shop(throat_is="actual_throat"), "/throat_is", "not-a-choice"),
    (shop(source={"document": "a", "sureness": "sure"}), "/source/sureness", "not-a-choice"),
    (shop(source={"sureness": "own"}), "/source/document", "missing-key"),
    (shop(opening={"free": "much", "source": OWN}), "/opening/free", "amount"),
    (shop(opening={"free": -1, "source": OWN}), "/opening/free", "amount"),
    (shop(minimum_size={"measured_as": "leg", "source": OWN,
                        "at_least": {"share": {"of": "face_width", "by": 1}}}),
     "/minimum_size/at_least/share/of", "quantity"),
    (shop(undersize={"measured_as": "leg", "at_most": 1, "within": {}, "source": OWN}),
     "/undersize/within", "within"),
    (shop(undersize={"measured_as": "foot", "at_most": 1, "source": OWN}),
     "/undersize/measured_as", "not-a-choice"),
    (limit(measure="colour"), "/limits/0/measure", "not-a-choice"),
    (limit(at_most=...), "/limits/0/at_most", "missing-key"),
    (limit(at_most=..., at_least=3), "/limits/0/at_most", "missing-key"),
    (limit(at_least=3), "/limits/0/at_least", "wrong-bound"),
    (limit(measure="toe_angle"), "/limits/0/at_least", "missing-key"),
    (limit(measure="toe_angle", at_most=..., at_least="90"), "/limits/0/at_least", "angle"),
    (limit(measure="toe_angle", at_most=..., at_least=181), "/limits/0/at_least", "angle"),
    (limit(measure="joint_angle", at_most={"least_of": [1]}), "/limits/0/at_most", "angle"),
    (limit(short=2), "/limits/0", "short-within"),
    (limit(within={"share": 0.1}), "/limits/0", "short-within"),
    (limit(needs="grind"), "/limits/0/needs", "not-a-choice"),
    (limit(short=2, within={"share": 0}), "/limits/0/within/share", "out-of-range"),
    (limit(short=2, within={"share": 1.1}), "/limits/0/within/share", "out-of-range"),
    (limit(short=2, within={"length": 5}), "/limits/0/within", "within"),
    (limit(short=2, within={"share": 0.1, "each": 9}), "/limits/0/within", "within"),
    (limit(short=2, within={"length": 50, "each": 49}), "/limits/0/within", "within"),
    (limit(short=2, within={"length": 0, "each": 49}), "/limits/0/within", "within"),
    (limit(short=2, within={"length": {"mm": 1, "in": "2 in"}, "each": {"mm": 2, "in": "1 in"}}),
     "/limits/0/within", "within"),
    (limit(short=2, within={"length": "x", "each": 49}), "/limits/0/within/length", "amount"),
    (amount(True), "/limits/0/at_most", "amount"),
    (amount("2"), "/limits/0/at_most", "amount"),
    (amount(1e9), "/limits/0/at_most", "amount"),
    (amount({"mm": 2}), "/limits/0/at_most", "amount"),
    (amount({"mm": 2, "in": 0.1}), "/limits/0/at_most/in", "amount"),
    (amount({}), "/limits/0/at_most", "amount"),
    (amount({"eval": "1 + 1"}), "/limits/0/at_most", "amount"),
    (amount({"share": {"of": "weight", "by": 1}}), "/limits/0/at_most/share/of", "quantity"),
    (amount({"share": {"of": "size", "by": 0}}), "/limits/0/at_most/share/by", "amount"),
    (amount({"share": {"of": "size"}}), "/limits/0/at_most/share", "amount"),
    (amount({"share": {"of": "size", "by": 1}, "cap": "x"}), "/limits/0/at_most/cap", "amount"),
    (amount({"share": {"of": "size", "by": 1}, "plus": 1}), "/limits/0/at_most/plus",
     "unknown-key"),
    (amount({"by": "age", "rows": [{"amount": 1}]}), "/limits/0/at_most/by", "quantity"),
    (amount({"by": "size", "rows": []}), "/limits/0/at_most/rows", "amount"),
    (amount({"by": "size", "rows": [{"up_to": 3, "amount": 1}]}), "/limits/0/at_most/rows/0",
     "row"),
    (amount({"by": "size", "rows": [{"amount": 1}, {"amount": 2}]}), "/limits/0/at_most/rows/0",
     "row"),
    (amount({"by": "size", "rows": [{"up_to": 3, "below": 4, "amount": 1}, {"amount": 2}]}),
     "/limits/0/at_most/rows/0", "row"),
    (amount({"by": "size", "rows": [{"up_to": 3}, {"amount": 2}]}), "/limits/0/at_most/rows/0",
     "amount"),
    (amount({"by": "size", "rows": [{"up_to": 3, "amount": 1}, {"up_to": 3, "amount": 1},
                                    {"amount": 2}]}), "/limits/0/at_most/rows/1/up_to", "amount"),
    (amount({"where": "monday", "then": 1, "else": 2}), "/limits/0/at_most/where", "fact"),
    (amount({"where": "girder_end", "then": 1}), "/limits/0/at_most/else", "missing-key"),
    (amount({"least_of": []}), "/limits/0/at_most/least_of", "amount"),
    (amount({"least_of": [1, {"greatest_of": ["?"]}]}),
     "/limits/0/at_most/least_of/1/greatest_of/0", "amount"),
    (shop(limits=[SHOP["limits"][0], SHOP["limits"][0]]), "/limits/1/measure", "repeated-limit"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "pointer", "code"), FAULTS, ids=lambda value: str(value)[-60:])
def test_a_fault_has_its_place(value: Any, pointer: str, code: str) -> None:
    if isinstance(value, dict):
        for each in value["limits"]:
            each.pop("x-since", None)
    assert (pointer, code) in found(value)
    if code != "missing-key":
        assert len(found(value)) == 1


def test_all_faults_are_said_at_once(tmp_path: Path) -> None:
    value = shop(id="as-drawn", opening={"free": -1, "source": OWN})
    value["limits"][2]["at_most"] = {"least_of": [0.5, "?"]}
    text = json.dumps(value).replace('"title"', '"title": 1, "title"')
    faults = check_rules(written(tmp_path, text.encode(), "s.rules.json"))
    assert {(fault.pointer, fault.code) for fault in faults} == {
        ("/title", "repeated-key"), ("/id", "shipped-id"), ("/opening/free", "amount"),
        ("/limits/2/at_most/least_of/1", "amount"),
    }  # fmt: skip
    assert {fault.file for fault in faults} == {str(tmp_path / "s.rules.json")}


@pytest.mark.parametrize("data", [b"", b"[1", b"\xff", b"[" * 50_000, b'{"a": NaN}'])
def test_what_is_no_json_is_refused(tmp_path: Path, data: bytes) -> None:
    assert check_rules(written(tmp_path, data, "s.rules.json"))
    with pytest.raises(RulesError):
        load_rules(tmp_path / "none.rules.json")


def test_the_schema_takes_what_is_sound_and_refuses_what_isn_t() -> None:
    validator = jsonschema.Draft202012Validator(rules_schema())
    validator.check_schema(rules_schema())
    for name in RULE_SETS:
        validator.validate(json.loads(rules_text(name)))
    validator.validate(SHOP)
    for value in (shop(id=3), amount({"eval": "1"}), amount({"least_of": []}), amount(True)):
        assert not validator.is_valid(value)


# --- beside a tray ----------------------------------------------------------------------------


def tray(folder: Path, names: list[str], rules: str = "shop") -> Path:
    return written(folder, {**document({**COUPON, "rules": rules}), "rule_files": names})


def codes(path: Path) -> list[tuple[str, str]]:
    return [(fault.pointer, fault.code) for fault in check_tray(path)]


def test_a_tray_is_judged_by_the_file_beside_it(tmp_path: Path) -> None:
    path = tray(tmp_path, ["shop.rules.json"])
    written(tmp_path, SHOP, "shop.rules.json")
    (coupon,) = load_tray(path).coupons
    assert coupon.rule_set.id == "shop"
    assert coupon.canonical()["rules_digest"] == coupon.rule_set.digest
    assert "toe_angle_base" in [check.key for check in judge(coupon).checks]
    assert grade(coupon, Attempt("hb-04", disposition="accept")).critical
    before = coupon.digest
    written(tmp_path, shop(revision=4), "shop.rules.json")
    assert load_tray(path).coupons[0].digest != before
    save_tray(tmp_path / "b.tray.json", load_tray(path))
    (tmp_path / "elsewhere").mkdir()
    with pytest.raises(TrayError):
        save_tray(tmp_path / "elsewhere" / "b.tray.json", load_tray(path))


@pytest.mark.parametrize(
    "name",
    ["../shop.rules.json", "sub/shop.rules.json", "/shop.rules.json", "C:shop.rules.json",
     "sub\\shop.rules.json", ".shop.rules.json", "..", "shop.json", "a\x00.rules.json"],
)  # fmt: skip
def test_a_tray_reaches_nothing_but_its_folder(tmp_path: Path, name: str) -> None:
    written(tmp_path, SHOP, "shop.rules.json")
    (tmp_path / "in").mkdir()
    written(tmp_path / "in", SHOP, "shop.rules.json")
    assert codes(tray(tmp_path / "in", [name])) == [("/rule_files/0", "rules-file-name")]


def test_a_faulty_rules_file_is_said_by_its_own_name(tmp_path: Path) -> None:
    path = tray(tmp_path, ["shop.rules.json"])
    written(tmp_path, shop(revision=0), "shop.rules.json")
    (fault,) = check_tray(path)
    assert (fault.file, fault.pointer) == (str(tmp_path / "shop.rules.json"), "/revision")
    (tmp_path / "shop.rules.json").unlink()
    (fault,) = check_tray(path)
    assert (fault.file, fault.code) == (str(tmp_path / "shop.rules.json"), "unreadable")


def test_ids_of_rules(tmp_path: Path) -> None:
    written(tmp_path, SHOP, "a.rules.json")
    written(tmp_path, SHOP, "b.rules.json")
    assert codes(tray(tmp_path, ["a.rules.json", "b.rules.json"])) == [
        ("/rule_files/1", "repeated-rules")
    ]
    assert codes(tray(tmp_path, ["a.rules.json"], "other")) == [
        ("/coupons/0/rules", "unknown-rules")
    ]
    assert codes(tray(tmp_path, ["a.rules.json"], "iso-5817-c")) == []
    assert ("/rule_files/0", "string-type") in codes(tray(tmp_path, [3]))  # type: ignore[list-item]


def test_a_document_without_a_folder_has_no_files_beside_it() -> None:
    from_nowhere = {**document({**COUPON, "rules": "shop"}), "rule_files": ["a.rules.json"]}
    with pytest.raises(TrayError) as caught:
        read_tray(from_nowhere)
    assert [fault.code for fault in caught.value.faults] == ["rules-no-folder"]
