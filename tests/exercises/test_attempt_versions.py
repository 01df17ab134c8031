"""Attempts files by version: what an old file says, and comes to, never changes."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from exercises.attempt import Attempt, AttemptsError, load_attempts
from exercises.grading import MARKS, grade
from exercises.tray import load_tray
from exercises.versions import ATTEMPTS_HEAD, ATTEMPTS_LATER_KEYS, ATTEMPTS_MIGRATIONS
from tests.exercises.trays import GOLDEN

FOLDER = GOLDEN.parent


def golden(version: int) -> list[Attempt]:
    return load_attempts(FOLDER / f"version-{version}.attempts.jsonl")


def test_there_is_a_step_and_a_golden_file_for_every_version() -> None:
    assert sorted(ATTEMPTS_MIGRATIONS) == list(range(1, ATTEMPTS_HEAD))
    files = {path.name for path in FOLDER.glob("*.attempts.jsonl")}
    assert files == {f"version-{v}.attempts.jsonl" for v in range(1, ATTEMPTS_HEAD + 1)}


def test_version_1_still_gets_the_grades_that_it_got() -> None:
    """`version-1.grades.json` was written by the program before version 2 came."""
    tray = load_tray(GOLDEN)
    given = [grade(tray.coupon(attempt.coupon), attempt).as_dict() for attempt in golden(1)]
    assert given == json.loads((FOLDER / "version-1.grades.json").read_text(encoding="utf-8"))
    assert all(tuple(each["marks"]) == MARKS for each in given)  # type: ignore[arg-type]


def test_version_2_states_a_fault_a_size_and_hints() -> None:
    assert [(a.coupon, a.fault, a.size, a.hints) for a in golden(2)] == [
        ("hb-04", None, None, 1), ("hb-05", None, "7 mm", None), ("hb-10", "wrong member", None, 0),
    ]  # fmt: skip


def test_a_key_of_version_2_is_none_of_version_1(tmp_path: Path) -> None:
    said = (FOLDER / "version-2.attempts.jsonl").read_text(encoding="utf-8")
    path = tmp_path / "old.jsonl"
    path.write_text(said.replace('"version": 2', '"version": 1'), encoding="utf-8")
    with pytest.raises(AttemptsError) as caught:
        load_attempts(path)
    told = {(fault.line, fault.pointer, fault.code) for fault in caught.value.faults}
    assert told == {
        (2, "/hints", "later-key"), (3, "/size", "later-key"),
        (4, "/fault", "later-key"), (4, "/hints", "later-key"),
    }  # fmt: skip
    assert {path[-1] for path in ATTEMPTS_LATER_KEYS[2]} == {"fault", "size", "hints"}


@pytest.mark.parametrize(
    ("line", "pointer", "code"),
    [
        ({"coupon": "a", "fault": "crooked"}, "/fault", "not-a-choice"),
        ({"coupon": "a", "size": "9 mm"}, "/size", "leaf"),
        ({"coupon": "a", "size": 8}, "/size", "leaf"),
        ({"coupon": "a", "hints": -1}, "/hints", "out-of-range"),
        ({"coupon": "a", "hints": 1.5}, "/hints", "int-type"),
    ],
)
def test_what_version_2_refuses(
    tmp_path: Path, line: dict[str, object], pointer: str, code: str
) -> None:
    path = tmp_path / "new.jsonl"
    head = {"format": "toe-and-throat/attempts", "version": 2}
    path.write_text(f"{json.dumps(head)}\n{json.dumps(line)}\n", encoding="utf-8")
    with pytest.raises(AttemptsError) as caught:
        load_attempts(path)
    assert [(f.pointer, f.code) for f in caught.value.faults] == [(pointer, code)]
