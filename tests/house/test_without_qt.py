"""The commands where Qt can't be imported, and what opening the window says there."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from trainer.assets import asset

ROOT = Path(__file__).resolve().parents[2]

# What stands as None among the modules can't be imported: as if Qt had never been installed.
RUN = """
import runpy, sys
sys.modules["PySide6"] = sys.modules["shiboken6"] = None
sys.argv[0] = "trainer"
runpy.run_module("trainer", run_name="__main__", alter_sys=True)
"""


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", RUN, *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture(scope="module")
def tray() -> Path:
    return min(asset("trays").glob("*.tray.json"))


@pytest.fixture(scope="module")
def coupon(tray: Path) -> str:
    return str(json.loads(tray.read_text(encoding="utf-8"))["coupons"][0]["id"])


def test_check(tray: Path) -> None:
    done = run("check", str(tray))
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


def test_measure(tray: Path, coupon: str) -> None:
    done = run("measure", str(tray), "--coupon", coupon, "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["leg_base"] > 0


def test_read(tray: Path, coupon: str) -> None:
    asked = ("--coupon", coupon, "--leaf", "8 mm", "--edge", "leg", "--on", "upright", "--json")
    done = run("read", str(tray), *asked)
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["state"] in {"touch", "daylight", "held off", "not seated"}


def test_grade(tray: Path, coupon: str, tmp_path: Path) -> None:
    attempts = tmp_path / "attempts.jsonl"
    lines = [{"format": "toe-and-throat/attempts", "version": 1}, {"coupon": coupon}]
    attempts.write_text("\n".join(map(json.dumps, lines)) + "\n", encoding="utf-8")
    done = run("grade", str(tray), str(attempts), "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert [grade["coupon"] for grade in json.loads(done.stdout)] == [coupon]


def test_schema() -> None:
    done = run("schema")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["type"] == "object"


def test_school() -> None:
    done = run("school", "--print-sql")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("BEGIN;")


def test_push(tmp_path: Path) -> None:
    done = run("push", "--server", "postgresql://db/school", "--logbook", str(tmp_path / "none"))
    assert (done.returncode, done.stdout) == (2, "")
    assert "there is no logbook" in done.stderr


def test_the_window_says_what_it_lacks() -> None:
    done = run()
    assert done.returncode == 2
    assert "PySide6-Essentials" in done.stderr
    assert "Traceback" not in done.stderr
