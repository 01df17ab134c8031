"""The five commands as a person or a script meets them."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from exercises.tray import load_tray
from geometry.measures import measure
from trainer import __main__, commands
from trainer.__main__ import main
from trainer.assets import asset

TRAY = str(asset("trays", "heron-footbridge.tray.json"))
HEADER = {"format": "toe-and-throat/attempts", "version": 1}
READ = ("read", TRAY, "--coupon", "hf-01", "--leaf", "8 mm", "--edge", "leg", "--on", "upright")


class Said:
    """What a command came to."""

    def __init__(self, code: int, out: str, err: str) -> None:
        self.code, self.out, self.err = code, out, err

    @property
    def json(self) -> Any:
        return json.loads(self.out)


Say = Callable[..., Said]


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Say:
    def run(*words: str) -> Said:
        try:
            code = main(words)
        except SystemExit as left:
            code = left.code if isinstance(left.code, int) else 1
        out, err = capsys.readouterr()
        assert "Traceback" not in out + err
        return Said(code, out, err)

    return run


def lines(folder: Path, *values: object) -> str:
    path = folder / "attempts.jsonl"
    path.write_text("".join(f"{json.dumps(value)}\n" for value in values), encoding="utf-8")
    return str(path)


def broken(folder: Path) -> str:
    document = json.loads(Path(TRAY).read_text(encoding="utf-8"))
    document["coupons"] = document["coupons"][:2]
    document["coupons"][0]["bead"]["crown"] = -9
    document["coupons"][1]["legbase"] = 1
    path = folder / "broken.tray.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    return str(path)


# --- check --------------------------------------------------------------------------------------


def test_check_is_silent_on_a_sound_tray(say: Say) -> None:
    said = say("check", TRAY, TRAY)
    assert (said.code, said.out, said.err) == (0, "", "")


def test_check_prints_one_line_a_fault(say: Say, tmp_path: Path) -> None:
    path = broken(tmp_path)
    said = say("check", TRAY, path, str(tmp_path / "missing"))
    assert (said.code, said.err) == (2, "")
    crown, key, missing = said.out.splitlines()
    assert crown.startswith(f"{path}: /coupons/0/bead/crown: with crown -9 mm the face enters")
    assert "; right would be: more than -" in crown
    assert key.startswith(f'{path}: /coupons/1/legbase: "legbase" is no key here; right would be:')
    assert missing.startswith(f"{tmp_path / 'missing'}: (whole document): the file can't be read")


# --- measure ------------------------------------------------------------------------------------

KEYS = [
    "leg_base", "leg_upright", "actual_throat", "theoretical_throat", "effective_size",
    "effective_throat", "convexity", "concavity", "face", "face_width", "toe_angle_base",
    "toe_angle_upright",
]  # fmt: skip


def test_measure_prints_an_object_by_coupon(say: Say) -> None:
    said = say("measure", TRAY, "--json")
    assert (said.code, said.err) == (0, "")
    tray = load_tray(TRAY)
    assert list(said.json) == [coupon.id for coupon in tray.coupons]
    assert all(list(each) == KEYS for each in said.json.values())
    for coupon in tray.coupons:
        assert said.json[coupon.id] == measure(coupon.section).as_dict()


def test_measure_of_one_coupon_prints_that_object(say: Say) -> None:
    said = say("measure", TRAY, "--coupon", "hf-01", "--json")
    assert said.json["leg_upright"] == 6.7
    assert said.json["face"] == "convex"


def test_measure_for_people_says_its_units(say: Say) -> None:
    said = say("measure", TRAY, "--coupon", "hf-01")
    assert said.code == 0
    assert said.out.startswith("hf-01\n")
    assert "  leg_upright             6.700 mm\n" in said.out
    assert "degrees" in said.out
    assert len(say("measure", TRAY).out.split("\n\n")) == len(load_tray(TRAY).coupons)


# --- read ---------------------------------------------------------------------------------------


def test_read_prints_what_the_leaf_shows(say: Say) -> None:
    said = say(*READ, "--json")
    assert (said.code, said.err) == (0, "")
    assert list(said.json) == ["state", "gap", "flush", "in_the_way", "pose"]
    assert said.json["state"] == "daylight"
    assert said.json["gap"] == pytest.approx(1.3, abs=1e-3)
    assert "long" in said.json["flush"]
    assert said.json["in_the_way"] == []
    assert said.json["pose"] == pytest.approx(
        {"x": 0.0, "y": 0.0, "angle": 0.0, "turned": False}, abs=1e-3
    )


def test_read_takes_marks_as_people_write_them(say: Say) -> None:
    for mark in ("8mm", " 8 mm ", "5/16 in", "5/16in", "a 4 mm", "a4 mm", "a4", "a 4", "A 4"):
        said = say(*READ[:5], mark, *READ[6:], "--json")
        assert said.code == 0, said.err


@pytest.mark.parametrize(("mark", "right"), [("8", "8 mm"), ("5/16", "5/16 in"), ("1", "1 in")])
def test_a_mark_without_its_unit_is_shown_with_it(say: Say, mark: str, right: str) -> None:
    said = say(*READ[:5], mark, *READ[6:])
    assert (said.code, said.out) == (2, "")
    assert said.err == f"toe-and-throat: {mark!r} has no unit; right would be: {right}\n"


def test_a_throat_mark_is_that_leaf_with_or_without_its_unit(say: Say) -> None:
    words = ("read", TRAY, "--coupon", "hf-13", "--edge", "leg", "--on", "base", "--json", "--leaf")
    assert say(*words, "a5").json == say(*words, "a 5 mm").json


def test_the_leaf_that_just_rides_a_hollow_touches(say: Say) -> None:
    """Its edges stand off by less than the eye limit, and thin toes lie beneath them."""
    words = ("read", TRAY, "--coupon", "hf-14", "--leaf", "5 mm", "--edge", "throat", "--json")
    said = say(*words, "--on", "base").json
    assert (said["state"], said["flush"], said["in_the_way"]) == ("touch", ["long", "end"], [])


@pytest.mark.parametrize("coupon", ["hf-01", "hf-02", "hf-08", "hf-17"])
@pytest.mark.parametrize("on", ["base", "upright"])
def test_nothing_is_printed_but_what_means_something(say: Say, coupon: str, on: str) -> None:
    words = ("read", TRAY, "--coupon", coupon, "--leaf", "8 mm", "--edge", "leg", "--on", on)
    document = say(*words, "--json")
    assert "e-" not in document.out
    assert "-0.0," not in document.out
    pose = document.json["pose"]
    assert all(pose[key] == round(pose[key], 6) for key in ("x", "y", "angle"))
    assert "-0.000" not in say(*words).out


def test_read_for_people(say: Say) -> None:
    said = say(*READ)
    assert said.code == 0
    assert said.out.splitlines()[:2] == ["state       daylight", "gap         1.300 mm"]


def test_read_presses_home_on_the_weld_as_it_was_found(say: Say) -> None:
    words = ("read", TRAY, "--coupon", "hf-12", "--leaf", "6 mm", "--edge", "leg", "--json", "--on")
    assert say(*words, "upright").json["state"] == "not seated"
    assert say(*words, "upright").json["in_the_way"] == ["spatter[0]"]


# --- grade --------------------------------------------------------------------------------------

EXAMPLE = {
    "coupon": "hf-01",
    "face": "convex",
    "readings": [
        {"leaf": "8 mm", "edge": "leg", "on": "upright",
         "pose": {"x": 0, "y": 0, "angle": 0, "turned": False}, "state": "daylight"},
    ],
    "disposition": "add weld metal",
    "sure": 0.8,
}  # fmt: skip


def test_grade_prints_a_list_in_file_order(say: Say, tmp_path: Path) -> None:
    path = lines(tmp_path, HEADER, {"coupon": "hf-02"}, EXAMPLE, {"coupon": "hf-02"})
    said = say("grade", TRAY, path, "--json")
    assert (said.code, said.err) == (0, "")
    assert [each["coupon"] for each in said.json] == ["hf-02", "hf-01", "hf-02"]
    given = said.json[1]
    assert list(given) == [
        "coupon", "score", "marks", "right", "in_doubt", "critical", "reasons",
    ]  # fmt: skip
    assert list(given["marks"]) == [
        "face", "leaf", "edge", "seat", "legs", "reading", "disposition",
    ]  # fmt: skip
    assert given["marks"]["legs"] == 0.5
    assert given["score"] == pytest.approx(6.5 / 7.0)
    assert (given["right"], given["in_doubt"], given["critical"]) == (
        "add weld metal", False, False,
    )  # fmt: skip
    assert given["reasons"] == [
        {"code": "leg-not-gauged",
         "text": "the leg on the base was not gauged with the leg edge"},
    ]  # fmt: skip
    assert said.json[0]["marks"] == dict.fromkeys(given["marks"])


def test_grade_for_people(say: Say, tmp_path: Path) -> None:
    path = lines(tmp_path, HEADER, EXAMPLE, {"coupon": "hf-01", "disposition": "accept"})
    said = say("grade", TRAY, path)
    assert said.code == 0
    assert said.out.startswith("hf-01  score 0.93; right call: add weld metal\n  face 1.00, leaf")
    assert "critical: accepted what the rules reject" in said.out


def test_grade_in_doubt_names_no_right_call(say: Say, tmp_path: Path) -> None:
    said = say("grade", TRAY, lines(tmp_path, HEADER, {"coupon": "hf-21", "disposition": "refer"}))
    assert said.out.startswith("hf-21  score 1.00\n")
    assert "in doubt: either verdict, or refer, is right" in said.out
    assert "right call" not in said.out


def test_help_shows_an_attempts_file_that_can_be_graded(say: Say, tmp_path: Path) -> None:
    path = tmp_path / "attempts.jsonl"
    shown = [line for line in say("grade", "--help").out.splitlines() if line.startswith("{")]
    assert len(shown) == 2
    path.write_text("\n".join(shown), encoding="utf-8")
    said = say("grade", TRAY, str(path), "--json")
    assert (said.code, said.err) == (0, "")
    assert [each["coupon"] for each in said.json] == ["hf-01"]


def test_grade_of_nothing_is_an_empty_list(say: Say, tmp_path: Path) -> None:
    assert say("grade", TRAY, lines(tmp_path, HEADER), "--json").json == []


# --- schema -------------------------------------------------------------------------------------


def test_schema_prints_the_schema(say: Say) -> None:
    said = say("schema")
    assert (said.code, said.err) == (0, "")
    assert said.json["$schema"].endswith("2020-12/schema")
    assert set(said.json["required"]) == {"format", "version", "coupons"}


# --- errors of use ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "words",
    [
        ("check",),
        ("measure",),
        ("measure", TRAY, "--coupon"),
        ("measure", TRAY, "--coupon", "nobody"),
        ("measure", TRAY, "--coupon", "nobody", "--json"),
        ("measure", "missing.tray.json", "--json"),
        ("measure", TRAY, TRAY),
        ("read", TRAY),
        (*READ[:4], "--leaf", "9 mm", *READ[6:]),
        (*READ[:4], "--leaf", "", *READ[6:]),
        (*READ[:4], "--leaf", "9" * 5000, *READ[6:]),
        (*READ[:4], "--leaf", "9" * 400 + "/1 mm", *READ[6:]),
        (*READ[:-3], "neither", "--on", "upright"),
        (*READ[:-1], "roof"),
        ("grade", TRAY),
        ("grade", TRAY, "missing.jsonl", "--json"),
        ("grade", "missing.tray.json", "missing.jsonl"),
        ("schema", "please"),
        ("check", TRAY, "--quickly"),
        ("two.tray.json", "trays.tray.json"),
        ("--frobnicate",),
    ],
    ids=lambda words: " ".join(words)[-50:],
)
def test_an_error_of_use_goes_to_standard_error(say: Say, words: tuple[str, ...]) -> None:
    said = say(*words)
    assert (said.code, said.out) == (2, "")
    assert said.err.strip()


def test_a_broken_tray_leaves_standard_output_empty(say: Say, tmp_path: Path) -> None:
    said = say("measure", broken(tmp_path), "--json")
    assert (said.code, said.out) == (2, "")
    assert len(said.err.splitlines()) == 2


def test_a_coupon_that_is_not_there_is_named_with_those_that_are(say: Say) -> None:
    assert "no coupon 'nobody' in this tray; right would be: hf-01, hf-02" in (
        say("measure", TRAY, "--coupon", "nobody").err
    )


def test_attempts_at_strangers_are_refused(say: Say, tmp_path: Path) -> None:
    path = lines(tmp_path, HEADER, {"coupon": "xx"}, {"coupon": "hf-01"}, {"coupon": 3},
                 {"coupon": "yy", "sure": 2})  # fmt: skip
    said = say("grade", TRAY, path)
    assert (said.code, said.out) == (2, "")
    first, second, third, fourth = said.err.splitlines()
    assert first.startswith(
        f'{path}:2: /coupon: the tray has no coupon "xx"; right would be: hf-01'
    )
    assert second.startswith(f"{path}:4: /coupon: ")
    assert third.startswith(f"{path}:5: /sure: is 2")
    assert fourth.startswith(f'{path}:5: /coupon: the tray has no coupon "yy"')


def test_what_is_no_json_is_told_with_its_place(say: Say, tmp_path: Path) -> None:
    path = tmp_path / "a.tray.json"
    path.write_text("{\n 'a': 1}", encoding="utf-8")
    said = say("check", str(path)).out
    assert "line 2, column 2 can't be read as JSON: " in said
    assert "at \"'a': 1}\"; right would be: JSON: keys and texts in double quotes" in said
    path.write_text("[1, ", encoding="utf-8")
    assert "at its end" in say("check", str(path)).out
    path.write_text(" ", encoding="utf-8")
    assert "there is nothing here" in say("check", str(path)).out


def test_a_file_that_can_t_be_read_says_why(say: Say, tmp_path: Path) -> None:
    missing = str(tmp_path / "missing")
    assert say("check", missing).out == (
        f"{missing}: (whole document): the file can't be read: there is no such file; "
        "right would be: the path of a file that exists\n"
    )
    assert "it is a folder" in say("check", str(tmp_path)).out


def test_a_fault_in_attempts_names_its_line(say: Say, tmp_path: Path) -> None:
    path = lines(tmp_path, HEADER, {"coupon": "hf-01"}, {"coupon": "hf-01", "sure": 2})
    said = say("grade", TRAY, path, "--json")
    assert (said.code, said.out) == (2, "")
    assert said.err == f"{path}:3: /sure: is 2; right would be: 1 or less\n"


def test_a_bug_gets_a_line_and_a_code_of_its_own(say: Say, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_: object) -> None:
        raise ZeroDivisionError("a bug")

    monkeypatch.setattr(commands, "check_tray", fail)
    said = say("check", TRAY)
    assert (said.code, said.out) == (70, "")
    assert said.err.count("\n") == 1
    assert "a fault of the program" in said.err


def test_an_interrupt_is_quiet(say: Say, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(commands, "check_tray", interrupted)
    said = say("check", TRAY)
    assert (said.code, said.out, said.err) == (130, "", "")


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60)
@given(st.lists(st.sampled_from(["check", "measure", "read", "grade", "schema", "--json", "--on",
                                 "base", "--leaf", "8 mm", "--edge", "leg", "--coupon", "hf-01",
                                 TRAY, "x", "-", "--", "--version", "-h"]),
                min_size=2, max_size=9))  # fmt: skip
def test_no_words_make_it_fall_over(say: Say, words: list[str]) -> None:
    said = say(*words)
    assert said.code in (0, 2)
    assert bool(said.err) <= (said.code == 2)


# --- help, version, window ----------------------------------------------------------------------


def test_help_names_every_command_and_how_to_open_the_window(say: Say) -> None:
    said = say("--help")
    assert (said.code, said.err) == (0, "")
    for word in (*__main__.COMMANDS, "TRAY", "exit codes", "open the window"):
        assert word in said.out


@pytest.mark.parametrize("command", __main__.COMMANDS)
def test_each_command_explains_itself(say: Say, command: str) -> None:
    said = say(command, "--help")
    assert said.code == 0
    assert said.out.startswith(f"usage: toe-and-throat {command}")


def test_version(say: Say) -> None:
    said = say("--version")
    assert said.code == 0
    assert said.out.startswith("toe-and-throat ")


@pytest.mark.parametrize(
    ("words", "tray"),
    [((), None), (("a.tray.json",), Path("a.tray.json")), (("./check",), Path("check"))],
)
def test_nothing_or_one_tray_opens_the_window(
    say: Say, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], tray: Path | None
) -> None:
    opened: list[tuple[list[str], Path | None]] = []

    def open_window(argv: list[str], tray: Path | None) -> int:
        opened.append((argv, tray))
        return 7

    monkeypatch.setattr(__main__, "open_window", open_window)
    assert say(*words).code == 7
    assert opened == [(sys.argv[:1], tray)]


def test_standard_output_that_is_no_file_is_no_trouble(monkeypatch: pytest.MonkeyPatch) -> None:
    out = io.StringIO()
    monkeypatch.setattr(sys, "stdout", out)
    assert main(["schema"]) == 0
    assert json.loads(out.getvalue())["type"] == "object"
