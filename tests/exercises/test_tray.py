"""Tray files: each kind of fault with its place, all at once; what is sound comes back exactly."""

from __future__ import annotations

import copy
import json
import os
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from exercises.strict_json import LARGEST_FILE
from exercises.tray import (
    Tray,
    TrayError,
    check_tray,
    load_tray,
    read_tray,
    save_tray,
    tray_schema,
)
from exercises.versions import HEAD
from geometry.bead import Overlap, Spatter, Undercut
from tests.exercises.trays import COUPON, GOLDEN, document, written


def found(value: object) -> list[tuple[str, str]]:
    """The faults of a document as (pointer, code)."""
    try:
        read_tray(value)  # type: ignore[arg-type]
    except TrayError as error:
        return [(fault.pointer, fault.code) for fault in error.faults]
    return []


def changed(**changes: object) -> list[tuple[str, str]]:
    """The faults of one coupon with some keys changed, relative to it."""
    faults = found(document({**COUPON, **changes}))
    return [(pointer.removeprefix("/coupons/0"), code) for pointer, code in faults]


def bead(**changes: object) -> list[tuple[str, str]]:
    return changed(bead={**COUPON["bead"], **changes})


# --- what is read -----------------------------------------------------------------------------


def test_the_contract_s_example_is_read(tmp_path: Path) -> None:
    tray = load_tray(written(tmp_path, document()))
    (coupon,) = tray.coupons
    assert (coupon.id, coupon.task, coupon.rules, str(coupon.title)) == (
        "hb-04", "judge", "as-drawn", "hb-04",
    )  # fmt: skip
    assert (coupon.callout.size, coupon.callout.measure, coupon.callout.text) == (8, "leg", "8 mm")
    joint = coupon.section.joint
    assert (joint.angle, joint.root_opening) == (90.0, 0.0)
    assert (joint.base_thickness, joint.upright_thickness) == (12.0, 12.0)
    assert (joint.base_length, joint.upright_length) == (60.0, 60.0)
    assert (coupon.extent, coupon.eye_limit, coupon.leaf_wear) == (1.0, 0.1, 0.0)
    assert (coupon.hints, str(coupon.teaches)) == ((), "")


def test_every_key_arrives() -> None:
    every = load_tray(GOLDEN).coupon("hb-05")
    section = every.section
    assert (section.joint.angle, section.joint.root_opening) == (100.0, 1.5)
    assert section.bead.undercut_base == Undercut(0.4, 1.2)
    assert section.bead.overlap_upright == Overlap(1.1)
    assert section.spatter == (Spatter("base", 14.0, 0.8), Spatter("upright", 15.0, 1.0))
    assert (every.callout.size, every.callout.measure) == (7.9375, "throat")
    assert every.callout.text == "5/16 in"
    assert (every.extent, every.eye_limit, every.leaf_wear) == (0.5, 0.15, 0.2)
    assert [hint.in_language("es") for hint in every.hints] == ["Look.", "Mire otra vez."]
    assert every.title.in_language("fr") == "Every key"
    assert every.task == "read"


def test_a_trace_s_ends_are_projected() -> None:
    traced = load_tray(GOLDEN).coupon("hb-06")
    trace = traced.section.bead.trace
    assert trace is not None
    assert (trace[0], trace[-1]) == ((6.0, 0.0), (0.0, 6.5))
    assert trace[1:-1] == ((4.1, 2.2), (2.3, 4.0))


def test_whole_numbers_and_others_mean_the_same() -> None:
    as_float = {**COUPON, "bead": {"leg_base": 8.0, "leg_upright": 6.7, "crown": 0.9}}
    assert read_tray(document(as_float)).coupons[0] == read_tray(document()).coupons[0]


@pytest.mark.parametrize(
    ("size", "length", "text"),
    [(8, 8.0, "8 mm"), (6.35, 6.35, "6.35 mm"), ("8 mm", 8.0, "8 mm"), ("1/4 in", 6.35, "1/4 in"),
     ("1  1/4 in", 31.75, "1 1/4 in")],
)  # fmt: skip
def test_a_callout_s_size_is_a_number_or_says_its_unit(
    size: object, length: float, text: str
) -> None:
    callout = read_tray(document({**COUPON, "callout": {"size": size}})).coupons[0].callout
    assert callout.size == pytest.approx(length)
    assert callout.text == text


def test_an_overlap_of_nothing_is_none() -> None:
    coupon = {**COUPON, "bead": {**COUPON["bead"], "overlap_base": 0}}
    assert read_tray(document(coupon)).coupons[0].section.bead.overlap_base is None


# --- what is refused --------------------------------------------------------------------------

SHAPE: list[tuple[dict[str, Any], str, str]] = [
    ({"id": ""}, "/id", "wrong-count"),
    ({"id": 4}, "/id", "string-type"),
    ({"id": "x" * 201}, "/id", "wrong-count"),
    ({"title": 3}, "/title", "text"),
    ({"title": {}}, "/title", "text"),
    ({"title": {"en": 3}}, "/title", "text"),
    ({"title": {"not a tag": "x"}}, "/title", "language"),
    ({"title": "x" * 4001}, "/title", "text-long"),
    ({"task": "guess"}, "/task", "not-a-choice"),
    ({"joint": []}, "/joint", "model-type"),
    ({"joint": {"angel": 90}}, "/joint/angel", "unknown-key"),
    ({"joint": {"angle": "90"}}, "/joint/angle", "float-type"),
    ({"joint": {"angle": True}}, "/joint/angle", "float-type"),
    ({"joint": {"angle": float("nan")}}, "/joint/angle", "finite-number"),
    ({"joint": {"angle": 10**400}}, "/joint/angle", "float-type"),
    ({"bead": None}, "/bead", "model-type"),
    ({"bead": {"leg_base": 8}}, "/bead/leg_upright", "missing-key"),
    ({"bead": {"trace": "a line"}}, "/bead/trace", "list-type"),
    ({"bead": {"trace": [[6, 0], [1], [0, 6]]}}, "/bead/trace/1", "wrong-count"),
    ({"bead": {"trace": [[6, 0], [1, 2, 3], [0, 6]]}}, "/bead/trace/1", "wrong-count"),
    ({"bead": {"trace": [[6, 0], [1e300, 2], [0, 6]]}}, "/bead/trace/1/0", "out-of-range"),
    ({"bead": {"trace": [[6, 0], [0, 6]], "crown": 1}}, "/bead/crown", "unknown-key"),
    ({"spatter": {}}, "/spatter", "list-type"),
    ({"spatter": [{"on": "roof", "at": 14, "height": 1}]}, "/spatter/0/on", "not-a-choice"),
    ({"spatter": [{"on": "base", "at": 14}]}, "/spatter/0/height", "missing-key"),
    ({"spatter": [{"on": "base", "at": 1e9, "height": 1}]}, "/spatter/0/at", "out-of-range"),
    ({"callout": 8}, "/callout", "model-type"),
    ({"callout": {}}, "/callout/size", "missing-key"),
    ({"callout": {"size": 0}}, "/callout/size", "size"),
    ({"callout": {"size": -1}}, "/callout/size", "size"),
    ({"callout": {"size": 1001}}, "/callout/size", "size"),
    ({"callout": {"size": "8"}}, "/callout/size", "size"),
    ({"callout": {"size": "8 cm"}}, "/callout/size", "size"),
    ({"callout": {"size": "5/0 in"}}, "/callout/size", "size"),
    ({"callout": {"size": "0 mm"}}, "/callout/size", "size"),
    ({"callout": {"size": f"{10**399} mm"}}, "/callout/size", "size"),
    ({"callout": {"size": True}}, "/callout/size", "size"),
    ({"callout": {"size": None}}, "/callout/size", "size"),
    ({"callout": {"size": 8, "measure": "foot"}}, "/callout/measure", "not-a-choice"),
    ({"rules": 1}, "/rules", "string-type"),
    ({"rules": "as-guessed"}, "/rules", "unknown-rules"),
    ({"extent": 0}, "/extent", "out-of-range"),
    ({"extent": 1.01}, "/extent", "out-of-range"),
    ({"eye_limit": 0}, "/eye_limit", "out-of-range"),
    ({"eye_limit": 3}, "/eye_limit", "out-of-range"),
    ({"leaf_wear": -0.1}, "/leaf_wear", "out-of-range"),
    ({"leaf_wear": 2}, "/leaf_wear", "out-of-range"),
    ({"hints": "look"}, "/hints", "list-type"),
    ({"hints": ["look", 3]}, "/hints/1", "text"),
    ({"teaches": []}, "/teaches", "text"),
    ({"legbase": 3}, "/legbase", "unknown-key"),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "pointer", "code"), SHAPE, ids=lambda value: str(value)[:40])
def test_a_fault_of_shape(changes: dict[str, Any], pointer: str, code: str) -> None:
    assert changed(**changes) == [(pointer, code)]


GEOMETRY: list[tuple[dict[str, Any], str, str]] = [
    ({"joint": {"angle": 59.9}}, "/joint/angle", "joint-angle"),
    ({"joint": {"angle": 136}}, "/joint/angle", "joint-angle"),
    ({"joint": {"root_opening": -1}}, "/joint/root_opening", "root-opening"),
    ({"joint": {"base_thickness": 0}}, "/joint/base_thickness", "member-size"),
    ({"joint": {"upright_thickness": -3}}, "/joint/upright_thickness", "member-size"),
    ({"joint": {"base_length": 8}}, "/bead/leg_base", "toe-off-member"),
    ({"bead": {"leg_base": 0, "leg_upright": 8}}, "/bead/leg_base", "toe-off-member"),
    ({"bead": {"leg_base": 8, "leg_upright": -2}}, "/bead/leg_upright", "toe-off-member"),
    ({"bead": {"leg_base": 8, "leg_upright": 8, "crown": -3}}, "/bead/crown", "face-in-member"),
    ({"bead": {"leg_base": 8, "leg_upright": 8, "crown": 14}}, "/bead/crown", "face-in-member"),
    ({"bead": {"trace": []}}, "/bead/trace", "trace-short"),
    ({"bead": {"trace": [[6, 0]]}}, "/bead/trace", "trace-short"),
    ({"bead": {"trace": [[6, 0.06], [3, 3], [0, 6]]}}, "/bead/trace/0", "trace-end"),
    ({"bead": {"trace": [[6, 0], [3, 3], [0.2, 6]]}}, "/bead/trace/2", "trace-end"),
    ({"bead": {"trace": [[6, 0], [3, -3], [0, 6]]}}, "/bead/trace", "face-in-member"),
    ({"bead": {"trace": [[6, 0], [6, 0]]}}, "/bead/trace/1", "trace-end"),
    ({"bead": {"trace": [[6, 0], [1, 5], [5, 5], [1, 4], [0, 6]]}}, "/bead/trace", "crossed"),
    ({"spatter": [{"on": "base", "at": 8, "height": 1}]}, "/spatter/0/at", "spatter-off-member"),
    ({"spatter": [{"on": "base", "at": 14, "height": 0}]}, "/spatter/0/height",
     "size-out-of-range"),
    ({"spatter": [{"on": "base", "at": 14, "height": 1}, {"on": "base", "at": 15, "height": 1}]},
     "/spatter/1/at", "spatter-overlaps"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "pointer", "code"), GEOMETRY, ids=lambda value: str(value)[:40]
)
def test_what_geometry_can_t_allow_has_its_place(
    changes: dict[str, Any], pointer: str, code: str
) -> None:
    assert changed(**changes) == [(pointer, code)]


@pytest.mark.parametrize(
    ("changes", "pointer", "code"),
    [
        ({"undercut_base": {"depth": 2, "width": 2}}, "/bead/undercut_base/depth",
         "size-out-of-range"),
        ({"undercut_base": {"depth": 1, "width": 90}}, "/bead/undercut_base/width",
         "size-out-of-range"),
        ({"undercut_base": {"depth": 1}}, "/bead/undercut_base/width", "missing-key"),
        # In a file an overlap is a number, so that is where its fault is.
        ({"overlap_base": 90}, "/bead/overlap_base", "size-out-of-range"),
        ({"overlap_upright": -1}, "/bead/overlap_upright", "out-of-range"),
        ({"overlap_base": 1, "undercut_base": {"depth": 0.4, "width": 2}}, "/bead/overlap_base",
         "lip-over-groove"),
    ],
)  # fmt: skip
def test_what_spoils_a_toe_has_its_limits(changes: dict[str, Any], pointer: str, code: str) -> None:
    assert bead(**changes) == [(pointer, code)]


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ([], [("", "not-an-object")]),
        (None, [("", "not-an-object")]),
        ({}, [("/format", "format"), ("/version", "version")]),
        ({"format": "toe-and-throat/attempts", "version": 1}, [("/format", "format")]),
        ({"format": "toe-and-throat/tray", "version": HEAD + 1}, [("/version", "newer-version")]),
        ({"format": "toe-and-throat/tray", "version": 10**50}, [("/version", "newer-version")]),
        ({"format": "toe-and-throat/tray", "version": 0}, [("/version", "version")]),
        ({"format": "toe-and-throat/tray", "version": 1.0}, [("/version", "version")]),
        ({"format": "toe-and-throat/tray", "version": True}, [("/version", "version")]),
        ({"format": "toe-and-throat/tray", "version": "1"}, [("/version", "version")]),
        ({"format": "toe-and-throat/tray", "version": 1}, [("/coupons", "missing-key")]),
        ({**document(), "coupons": []}, [("/coupons", "wrong-count")]),
        ({**document(), "coupons": {}}, [("/coupons", "list-type")]),
        ({**document(), "coupons": [3]}, [("/coupons/0", "model-type")]),
        ({**document(), "titel": "T"}, [("/titel", "unknown-key")]),
        ({**document(), "title": 3}, [("/title", "text")]),
    ],
)
def test_the_document_itself(value: object, expected: list[tuple[str, str]]) -> None:
    assert found(value) == expected


def test_an_unknown_key_is_named_and_the_near_one_offered() -> None:
    with pytest.raises(TrayError) as caught:
        read_tray(document({**COUPON, "joint": {"angel": 90}}))
    (fault,) = caught.value.faults
    assert (fault.pointer, fault.text) == ("/coupons/0/joint/angel", '"angel" is no key here')
    assert fault.right == '"angle"'
    assert (fault.params["key"], fault.params["near"]) == ("angel", '"angle"')


def test_an_unknown_key_without_a_near_one_gets_the_list() -> None:
    with pytest.raises(TrayError) as caught:
        read_tray(document({**COUPON, "callout": {"size": 8, "zzz": 1}}))
    right = caught.value.faults[0].right
    assert right.startswith('one of "size", "measure", "upright_size", "intermittent", ')
    assert right.endswith('"tail", or a key that begins "x-"')


def test_ids_are_unique() -> None:
    assert found(document(COUPON, {**COUPON, "id": "b"}, COUPON, COUPON)) == [
        ("/coupons/2/id", "repeated-id"),
        ("/coupons/3/id", "repeated-id"),
    ]


def test_all_faults_are_said_at_once(tmp_path: Path) -> None:
    """Text, shape, geometry, ids and rules: none hides another's coupon."""
    value = document(
        {**COUPON, "joint": {"angel": 1}},
        {**COUPON, "id": "b", "bead": {"leg_base": 8, "leg_upright": 8, "crown": -3}},
        {**COUPON, "id": "b", "rules": "none"},
        {**COUPON, "id": "d", "eye_limit": "NAN"},
    )
    text = (
        json.dumps(value).replace('"NAN"', "NaN").replace('"title": "T"', '"title": 1,"title": 2')
    )
    faults = check_tray(written(tmp_path, text.encode()))
    assert {(fault.pointer, fault.code) for fault in faults} == {
        ("/title", "repeated-key"),
        ("/coupons/0/joint/angel", "unknown-key"),
        ("/coupons/1/bead/crown", "face-in-member"),
        ("/coupons/2/rules", "unknown-rules"),
        ("/coupons/2/id", "repeated-id"),
        ("/coupons/3/eye_limit", "not-finite"),
    }
    assert len(faults) == 6


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "not-json"),
        (b"\xff\xfe", "not-utf-8"),
        (b"\xef\xbb\xbf{}", "byte-order-mark"),
        (b"[" * 100_000, "too-deep"),
        (b" " * (LARGEST_FILE + 10), "too-large"),
        (b"null", "not-an-object"),
    ],
)
def test_a_file_that_is_no_tray(tmp_path: Path, data: bytes, code: str) -> None:
    path = written(tmp_path, data)
    (fault,) = check_tray(path)
    assert (fault.file, fault.pointer, fault.code) == (str(path), "", code)


def test_a_file_that_can_t_be_read_is_a_fault_too(tmp_path: Path) -> None:
    for path in (tmp_path / "missing", tmp_path, tmp_path / "a\0b", tmp_path / ("x" * 5000)):
        (fault,) = check_tray(path)
        assert (fault.file, fault.code) == (str(path), "unreadable")
        assert "\n" not in str(fault)
        assert "\0" not in str(fault)


def test_an_endless_file_is_cut_off() -> None:
    if os.path.exists("/dev/zero"):  # noqa: PTH110 - a device, where there is one
        assert [fault.code for fault in check_tray("/dev/zero")] == ["too-large"]


def test_a_fault_is_one_printable_line(tmp_path: Path) -> None:
    path = written(tmp_path, {**document(), "a\nb\x1b[31m\u2028\u202e": 1}, "odd\nname.tray.json")
    (fault,) = check_tray(path)
    line = str(fault)
    assert line.isprintable()
    assert line.startswith(f"{tmp_path}/odd\\nname.tray.json: /a\\nb\\x1b[31m\\u2028\\u202e: ")
    assert "; right would be: " in line


def test_nothing_is_half_loaded(tmp_path: Path) -> None:
    path = written(tmp_path, document(COUPON, {**COUPON, "id": ""}))
    with pytest.raises(TrayError):
        load_tray(path)


def test_what_would_take_minutes_is_refused_by_its_count(tmp_path: Path) -> None:
    points = [[6, 0], *([[3, 3]] * 20_000), [0, 6]]
    assert changed(bead={"trace": points}) == [("/bead/trace", "wrong-count")]
    drops = [{"on": "base", "at": 14, "height": 0.1}] * 201
    assert changed(spatter=drops) == [("/spatter", "wrong-count")]
    assert found({**document(), "coupons": [COUPON] * 2001}) == [("/coupons", "wrong-count")]
    strange = check_tray(written(tmp_path, {**document(), **{f"k{i}": 1 for i in range(1500)}}))
    assert len(strange) == 1001
    assert strange[-1].params == {"more": 500}


# --- keys that are someone's own ----------------------------------------------------------------


def test_private_keys_are_ignored_at_every_level_and_kept(tmp_path: Path) -> None:
    tray = load_tray(GOLDEN)
    save_tray(tmp_path / "b.tray.json", tray)
    kept = json.loads((tmp_path / "b.tray.json").read_text(encoding="utf-8"))
    assert kept["x-made-by"] == {"name": "a bench in a shed", "seen": [1, 2.5, None]}
    assert kept["coupons"][1]["x-note"] == "kept"
    assert kept["coupons"][1]["joint"]["x-drawing"] == "no. 3"
    assert kept["coupons"][1]["title"]["x-fr"] == "non"
    assert tray.coupon("hb-05").title.versions == (("en", "Every key"), ("es", "Todas las claves"))


def test_private_keys_mean_nothing_to_the_digest() -> None:
    private = {**COUPON, "x-seen": 3}
    assert read_tray(document(private)).coupons[0].digest == read_tray(document()).coupons[0].digest


# --- writing -------------------------------------------------------------------------------------


def test_a_tray_comes_back_exactly(tmp_path: Path) -> None:
    tray = load_tray(GOLDEN)
    save_tray(tmp_path / "b.tray.json", tray)
    again = load_tray(tmp_path / "b.tray.json")
    assert again == tray
    written_back = json.loads((tmp_path / "b.tray.json").read_text(encoding="utf-8"))
    assert written_back == json.loads(GOLDEN.read_text(encoding="utf-8"))
    # 8 stays 8 and 6.0 stays 6.0: equal values alone would hide that.
    assert json.dumps(written_back) == json.dumps(json.loads(GOLDEN.read_text(encoding="utf-8")))


def test_what_was_written_is_written_the_same_again(tmp_path: Path) -> None:
    first, second = tmp_path / "1.tray.json", tmp_path / "2.tray.json"
    save_tray(first, load_tray(GOLDEN))
    save_tray(second, load_tray(first))
    assert first.read_bytes() == second.read_bytes()


def test_saving_leaves_the_loaded_tray_alone(tmp_path: Path) -> None:
    tray = load_tray(GOLDEN)
    before = copy.deepcopy(tray.as_document())
    tray.as_document()["coupons"] = []
    save_tray(tmp_path / "b.tray.json", tray)
    assert tray.as_document() == before


def test_a_tray_that_could_not_be_loaded_is_not_written(tmp_path: Path) -> None:
    path = written(tmp_path, document())
    old = path.read_bytes()
    coupon = load_tray(path).coupons[0]
    with pytest.raises(TrayError) as caught:
        save_tray(path, Tray(coupon.title, (coupon, coupon)))
    assert [fault.code for fault in caught.value.faults] == ["repeated-id"]
    assert path.read_bytes() == old


# --- the schema ----------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def validator() -> jsonschema.Draft202012Validator:
    schema = tray_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def test_the_schema_takes_what_the_loader_takes(
    validator: jsonschema.Draft202012Validator,
) -> None:
    assert list(validator.iter_errors(document())) == []
    golden = json.loads(GOLDEN.read_text(encoding="utf-8"))
    assert list(validator.iter_errors(golden)) == []


NOT_IN_SCHEMA = {"unknown-rules", "language", "text-long", "finite-number"}


@pytest.mark.parametrize(("changes", "pointer", "code"), SHAPE, ids=lambda value: str(value)[:40])
def test_the_schema_refuses_what_the_loader_refuses(
    validator: jsonschema.Draft202012Validator, changes: dict[str, Any], pointer: str, code: str
) -> None:
    if code in NOT_IN_SCHEMA or pointer in ("/callout/size", "/title", "/joint/angle"):
        # Said by words of our own, which JSON Schema has no way to say.
        assert changed(**changes) == [(pointer, code)]
        return
    assert not validator.is_valid(document({**COUPON, **changes}))
