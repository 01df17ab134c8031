"""The commands as processes: exit codes, streams, encodings, and what is loaded on the way."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import IO

import pytest

from tests.trainer.test_commands import TRAY, broken

ROOT = Path(__file__).resolve().parents[2]


def spawn(
    *words: str, stdout: int | IO[bytes] = subprocess.PIPE, env: Mapping[str, str] | None = None
) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "trainer", *words],
        cwd=ROOT,
        stdout=stdout,
        stderr=subprocess.PIPE,
        env=env,
        check=False,
    )


def test_as_a_process_it_exits_with_its_code(tmp_path: Path) -> None:
    done = spawn("check", broken(tmp_path))
    assert (done.returncode, done.stderr) == (2, b"")
    assert len(done.stdout.splitlines()) == 2


@pytest.mark.parametrize("words", [("measure", TRAY, "--json"), ("schema",), ("check", "missing")])
def test_a_reader_that_leaves_early_changes_nothing(words: tuple[str, ...]) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    try:
        done = spawn(*words, stdout=writing)
    finally:
        os.close(writing)
    assert (done.returncode, done.stderr) == (2 if words[0] == "check" else 0, b"")


def test_a_full_disk_is_said() -> None:
    if Path("/dev/full").exists():
        with Path("/dev/full").open("wb") as full:
            done = spawn("schema", stdout=full)
        assert done.returncode == 2
        assert done.stderr.startswith(b"toe-and-throat: can't write: ")
        assert done.stderr.count(b"\n") == 1


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_any_terminal_can_take_what_is_said(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "ó\u2028\U0001f600.tray.json"
    path.write_text('{"é\u4e2d": NaN}', encoding="utf-8")
    done = spawn("check", str(path), env={**os.environ, "PYTHONIOENCODING": encoding})
    assert (done.returncode, done.stderr) == (2, b"")
    assert len(done.stdout.splitlines()) == 3
    measured = spawn("measure", TRAY, "--json", env={**os.environ, "PYTHONIOENCODING": encoding})
    assert json.loads(measured.stdout)["hf-01"]["face"] == "convex"


def test_a_file_name_that_is_no_text_is_no_trouble(tmp_path: Path) -> None:
    done = spawn("check", os.fsdecode(os.fsencode(tmp_path) + b"/\xff\xfe"))
    assert (done.returncode, done.stderr) == (2, b"")
    assert b"\\udcff" in done.stdout


LOADED = "import sys, trainer.__main__; print(sorted(m for m in sys.modules if m in {names}))"


def loaded(names: set[str]) -> str:
    code = LOADED.format(names=names)
    return subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout.strip()


def test_the_way_to_the_window_loads_nothing_heavy() -> None:
    heavy = {"numpy", "shapely", "pydantic", "PySide6", "exercises.tray", "trainer.commands"}
    assert loaded(heavy) == "[]"
