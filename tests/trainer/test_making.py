"""The command that makes a tray, as an instructor meets it."""

from __future__ import annotations

from pathlib import Path

import pytest

from exercises.judging import judge
from exercises.tray import load_tray
from trainer.commands import run


def make(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = run(["make", *words])
    said = capsys.readouterr()
    return code, said.out, said.err


def test_a_tray_is_made_and_told_of(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "friday.tray.json"
    code, out, err = make(capsys, str(file), "--count", "8", "--seed", "7")
    assert (code, err) == (0, "")
    assert out.startswith(f"{file}: 8 coupons: 2 accept, 2 add weld metal, 2 dress back, 2 refer")
    tray = load_tray(file)
    assert len(tray.coupons) == 8
    assert not any(judge(coupon).in_doubt for coupon in tray.coupons)


def test_the_order_of_words_changes_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    one, other = tmp_path / "one.tray.json", tmp_path / "other.tray.json"
    traps = ["overlap", "out of square"]
    make(capsys, str(one), "--count", "4", "--trap", *traps)
    make(capsys, str(other), "--count", "4", "--trap", *reversed(traps))
    assert one.read_bytes() == other.read_bytes()


def test_what_is_there_is_not_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "mine.tray.json"
    file.write_text("mine")
    code, out, err = make(capsys, str(file))
    assert (code, out) == (2, "")
    assert "is there already" in err
    assert file.read_text() == "mine"


def test_all_that_is_wrong_with_a_recipe_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "none.tray.json"
    code, out, err = make(capsys, str(file), "--count", "0", "--in-doubt", "0.9")
    assert (code, out) == (2, "")
    assert [line.partition(":")[0] for line in err.splitlines()] == ["count", "in_doubt"]
    assert not file.exists()


def test_a_folder_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = make(capsys, str(tmp_path / "no" / "a.tray.json"), "--count", "4")
    assert code == 2
    assert "can't be written" in err


def test_a_name_that_no_disk_takes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = make(capsys, str(tmp_path / f"{'n' * 300}.tray.json"), "--count", "4")
    assert (code, out) == (2, "")
    assert "can't be written" in err


def test_a_link_that_leads_nowhere_is_not_written_through(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    link = tmp_path / "link.tray.json"
    link.symlink_to(tmp_path / "nowhere.tray.json")
    code, out, err = make(capsys, str(link), "--count", "4")
    assert (code, out) == (2, "")
    assert "is there already" in err
    assert [each.name for each in tmp_path.iterdir()] == ["link.tray.json"]
