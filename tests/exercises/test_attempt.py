"""Attempts files: read line by line, refused whole, each fault with its line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from exercises.attempt import Attempt, AttemptsError, StatedReading, load_attempts
from exercises.strict_json import LARGEST_FILE
from geometry.pose import Pose

HEADER = {"format": "toe-and-throat/attempts", "version": 1}


def written(folder: Path, *lines: object) -> Path:
    path = folder / "attempts.jsonl"
    parts = [line if isinstance(line, bytes) else json.dumps(line).encode() for line in lines]
    path.write_bytes(b"\n".join(parts) + b"\n")
    return path


def faults(folder: Path, *lines: object) -> list[tuple[int | None, str, str]]:
    with pytest.raises(AttemptsError) as caught:
        load_attempts(written(folder, *lines))
    return [(fault.line, fault.pointer, fault.code) for fault in caught.value.faults]


def test_the_contract_s_example_is_read(tmp_path: Path) -> None:
    pose = {"x": 0, "y": 0, "angle": 0, "turned": False}
    reading = {"leaf": "8 mm", "edge": "leg", "on": "upright", "pose": pose, "state": "daylight"}
    line = {
        "coupon": "hb-04", "face": "convex", "readings": [reading],
        "disposition": "add weld metal", "sure": 0.8,
    }  # fmt: skip
    assert load_attempts(written(tmp_path, HEADER, line)) == [
        Attempt(
            "hb-04",
            "convex",
            (StatedReading("8 mm", "leg", "upright", Pose(0.0, 0.0), "daylight"),),
            "add weld metal",
            0.8,
        )
    ]


def test_only_the_coupon_is_needed(tmp_path: Path) -> None:
    lines = [{"coupon": "a"}, {"coupon": "a", "readings": []}, {"coupon": "b", "readings": [{}]}]
    assert load_attempts(written(tmp_path, HEADER, *lines)) == [
        Attempt("a"),
        Attempt("a", readings=()),
        Attempt("b", readings=(StatedReading(None, None, None),)),
    ]


def test_file_order_is_kept_and_empty_lines_are_passed_over(tmp_path: Path) -> None:
    lines = [HEADER, b"", {"coupon": "b"}, b"  \r", {"coupon": "a"}]
    assert [attempt.coupon for attempt in load_attempts(written(tmp_path, *lines))] == ["b", "a"]


def test_windows_line_ends_and_private_keys_are_fine(tmp_path: Path) -> None:
    lines = [json.dumps({**HEADER, "x-by": 1}).encode() + b"\r", b'{"coupon": "a", "x-n": 2}\r']
    assert load_attempts(written(tmp_path, *lines)) == [Attempt("a")]


def test_marks_get_one_spelling_and_angles_one_turn(tmp_path: Path) -> None:
    pose = {"x": 1, "y": 2.5, "angle": 270, "turned": True}
    readings = [{"leaf": " 5/16in", "edge": "leg", "on": "base", "pose": pose}]
    (attempt,) = load_attempts(written(tmp_path, HEADER, {"coupon": "a", "readings": readings}))
    assert attempt.readings is not None
    assert attempt.readings[0].leaf == "5/16 in"
    assert attempt.readings[0].pose == Pose(1.0, 2.5, -90.0, turned=True)


@pytest.mark.parametrize(
    ("line", "pointer", "code"),
    [
        (b"{", "", "not-json"),
        (b"\xff", "", "not-utf-8"),
        (b"[" * 1000, "", "too-deep"),
        (b'{"coupon": "a", "coupon": "b"}', "/coupon", "repeated-key"),
        (b'{"coupon": "a", "sure": NaN}', "/sure", "not-finite"),
        (b'{"coupon": "\\ud800"}', "/coupon", "lone-surrogate"),
        ([], "", "model-type"),
        ({}, "/coupon", "missing-key"),
        ({"coupon": 3}, "/coupon", "string-type"),
        ({"coupon": "a", "faces": "flat"}, "/faces", "unknown-key"),
        ({"coupon": "a", "face": "hollow"}, "/face", "not-a-choice"),
        ({"coupon": "a", "disposition": "repair"}, "/disposition", "not-a-choice"),
        ({"coupon": "a", "sure": 1.5}, "/sure", "out-of-range"),
        ({"coupon": "a", "sure": True}, "/sure", "float-type"),
        ({"coupon": "a", "readings": {}}, "/readings", "list-type"),
        ({"coupon": "a", "readings": [{"leaf": "9 mm"}]}, "/readings/0/leaf", "leaf"),
        ({"coupon": "a", "readings": [{"leaf": 8}]}, "/readings/0/leaf", "leaf"),
        ({"coupon": "a", "readings": [{"leaf": "9" * 5000}]}, "/readings/0/leaf", "leaf"),
        ({"coupon": "a", "readings": [{"edge": "tip"}]}, "/readings/0/edge", "not-a-choice"),
        ({"coupon": "a", "readings": [{"on": "roof"}]}, "/readings/0/on", "not-a-choice"),
        ({"coupon": "a", "readings": [{"state": "gap"}]}, "/readings/0/state", "not-a-choice"),
        ({"coupon": "a", "readings": [{"pose": {"x": 0, "y": 0}}]}, "/readings/0/pose/angle",
         "missing-key"),
        ({"coupon": "a", "readings": [{"pose": {"x": 1e9, "y": 0, "angle": 0}}]},
         "/readings/0/pose/x", "out-of-range"),
        ({"coupon": "a", "readings": [{"pose": {"x": 0, "y": 0, "angle": 0, "z": 0}}]},
         "/readings/0/pose/z", "unknown-key"),
    ],
)  # fmt: skip
def test_a_fault_names_its_line_and_place(
    tmp_path: Path, line: object, pointer: str, code: str
) -> None:
    assert faults(tmp_path, HEADER, {"coupon": "a"}, line) == [(3, pointer, code)]


def test_all_lines_are_looked_at(tmp_path: Path) -> None:
    assert faults(tmp_path, HEADER, b"{", {"coupon": "a"}, {}, {"coupon": ""}) == [
        (2, "", "not-json"),
        (4, "/coupon", "missing-key"),
        (5, "/coupon", "wrong-count"),
    ]


@pytest.mark.parametrize(
    ("header", "pointer", "code"),
    [
        (b"nonsense", "", "not-json"),
        ({"coupon": "a"}, "/format", "format"),
        ({**HEADER, "format": "toe-and-throat/tray"}, "/format", "format"),
        ({**HEADER, "version": 3}, "/version", "newer-version"),
        ({**HEADER, "version": 1.0}, "/version", "version"),
        ({**HEADER, "by": "me"}, "/by", "unknown-key"),
    ],
)
def test_the_header_comes_first(tmp_path: Path, header: object, pointer: str, code: str) -> None:
    assert (1, pointer, code) in faults(tmp_path, header, {"coupon": "a"})
    assert all(line == 1 for line, _, _ in faults(tmp_path, header, {}))


def test_a_file_that_is_no_attempts_file(tmp_path: Path) -> None:
    assert faults(tmp_path, b"") == [(1, "", "empty-file")]
    assert faults(tmp_path, b" " * (LARGEST_FILE + 1)) == [(None, "", "too-large")]
    with pytest.raises(AttemptsError) as caught:
        load_attempts(tmp_path / "missing")
    assert [fault.code for fault in caught.value.faults] == ["unreadable"]


def test_a_fault_prints_its_line(tmp_path: Path) -> None:
    path = written(tmp_path, HEADER, {"coupon": "a", "sure": 2})
    with pytest.raises(AttemptsError, match=r"attempts\.jsonl:2: /sure: is 2; right would be:"):
        load_attempts(path)
