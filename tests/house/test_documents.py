"""README and DEVELOPERS say what is so: their commands run in CI, their files exist."""

from __future__ import annotations

import re
import struct
from pathlib import Path

import pytest

from trainer.__main__ import COMMANDS
from trainer.bench.keys import KEYS
from trainer.start import _IMPORT_LIBRARIES, _PLATFORM_LIBRARIES

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
CI = (ROOT / ".ci" / "run").read_text(encoding="utf-8")


def test_readme_has_the_two_commands_that_ci_runs() -> None:
    """CI takes them from README by their beginning, and by their order."""
    commands = re.findall(r"^python3 -m venv.*$", README, re.MULTILINE)
    assert [command.split(" && ")[-1] for command in commands] == [
        ".venv/bin/toe-and-throat",
        ".venv/bin/pytest",
    ]
    assert "grep '^python3 -m venv'" in CI


def test_readme_begins_with_the_job_and_shows_the_bench() -> None:
    title, job = README.split("\n\n")[:2]
    assert title == "# Toe & Throat"
    assert job.startswith("A trainer for the fillet weld gauge.")
    [picture] = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", README)
    assert (ROOT / picture).is_file()


def test_readme_names_every_command_and_no_other() -> None:
    named = re.findall(r"^toe-and-throat (\w+)", README, re.MULTILINE)
    assert list(dict.fromkeys(named)) == list(COMMANDS)


def test_readme_counts_the_trays_that_ship() -> None:
    numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
    count = len([*(ROOT / "assets" / "trays").glob("*.tray.json")])
    assert f"{numbers[count]} ship with the program" in README


def test_readme_s_picture_is_as_large_as_developers_says() -> None:
    """It is made anew by hand; a window of another size would be another picture."""
    [(width, height)] = re.findall(r"`seated-(\d+)x(\d+)-1x-light\.png`", DEVELOPERS)
    header = (ROOT / "assets" / "pictures" / "bench.png").read_bytes()[:24]
    assert struct.unpack(">II", header[16:24]) == (int(width), int(height))


@pytest.mark.parametrize("key", ["Space", "F", "E", "C", "Z", "0", "Enter", ",", "."])
def test_keys_in_readme_are_keys_of_the_bench(key: str) -> None:
    assert f"`{key}`" in README
    shown = " ".join(row.shown for row in KEYS.rows)
    assert key in shown.replace("/", " ").split()


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_links_lead_somewhere(text: str) -> None:
    links = [link for link in re.findall(r"\]\(([^)]+)\)", text) if "://" not in link]
    assert not [link for link in links if not (ROOT / link).exists()]


def test_files_that_developers_names_exist() -> None:
    named = set(
        re.findall(r"`((?:geometry|exercises|trainer|tests|assets|\.ci)/[\w./-]*)`", DEVELOPERS)
    )
    named -= {"tests/out/"}  # made by running
    assert len(named) > 20
    assert not [name for name in sorted(named) if not (ROOT / name).exists()]


def test_modules_that_developers_runs_exist() -> None:
    named = set(re.findall(r"-m (tests[\w.]+)", DEVELOPERS))
    assert named
    assert not [name for name in named if not (ROOT / (name.replace(".", "/") + ".py")).is_file()]


def test_ci_installs_what_the_window_will_ask_for() -> None:
    """And DEVELOPERS lists the same packages."""
    asked = {*_IMPORT_LIBRARIES.values(), *_PLATFORM_LIBRARIES["xcb"].values()}
    assert not [package for package in asked if not re.search(rf"\b{package}\b", CI)]
    assert not [package for package in asked if not re.search(rf"\b{package}\b", DEVELOPERS)]
