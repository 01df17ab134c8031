"""Writing: the new file whole, or the old one as it was."""

from __future__ import annotations

import json
import os
import stat
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.strict_json import Json
from exercises.writing import document_bytes, replace_file


def test_it_writes_a_new_file(tmp_path: Path) -> None:
    replace_file(tmp_path / "a", b"new")
    assert (tmp_path / "a").read_bytes() == b"new"
    assert [path.name for path in tmp_path.iterdir()] == ["a"]


def test_it_replaces_an_old_one_and_keeps_its_permissions(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old and longer")
    path.chmod(0o640)
    replace_file(path, b"new")
    assert path.read_bytes() == b"new"
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_new_file_gets_what_the_mask_leaves(tmp_path: Path) -> None:
    mask = os.umask(0o027)
    try:
        replace_file(tmp_path / "a", b"new")
    finally:
        os.umask(mask)
    assert stat.S_IMODE((tmp_path / "a").stat().st_mode) == 0o640


def test_a_link_is_followed(tmp_path: Path) -> None:
    (tmp_path / "real").write_bytes(b"old")
    (tmp_path / "link").symlink_to(tmp_path / "real")
    replace_file(tmp_path / "link", b"new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_bytes() == b"new"


@pytest.mark.parametrize("step", ["fsync", "replace"])
def test_whatever_fails_the_old_file_stays_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")

    def fail(*_: object) -> None:
        raise OSError(28, "no space left")

    monkeypatch.setattr(os, step, fail)
    with pytest.raises(OSError, match="no space left"):
        replace_file(path, b"new")
    assert path.read_bytes() == b"old"
    assert [each.name for each in tmp_path.iterdir()] == ["a"]


def test_no_one_sees_a_file_that_is_half_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The data is on the disk before the name is taken, and the folder after."""
    path = tmp_path / "a"
    path.write_bytes(b"old")
    steps: list[str] = []
    sync, replace = os.fsync, os.replace

    def synced(descriptor: int) -> None:
        steps.append("folder" if stat.S_ISDIR(os.fstat(descriptor).st_mode) else "file")
        assert path.read_bytes() == (b"new" if steps[-1] == "folder" else b"old")
        sync(descriptor)

    def replaced(source: str, target: Path) -> None:
        steps.append("replace")
        assert Path(source).parent == path.parent
        assert Path(source).read_bytes() == b"new"
        replace(source, target)

    monkeypatch.setattr(os, "fsync", synced)
    monkeypatch.setattr(os, "replace", replaced)
    replace_file(path, b"new")
    assert steps == ["file", "replace", "folder"]


def test_the_longest_name_can_be_written(tmp_path: Path) -> None:
    path = tmp_path / ("x" * 255)
    replace_file(path, b"new")
    assert path.read_bytes() == b"new"


def test_a_folder_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        replace_file(tmp_path / "no" / "a", b"new")


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=["Cs"])),
    lambda inner: st.lists(inner)
    | st.dictionaries(st.text(st.characters(exclude_categories=["Cs"])), inner),
    max_leaves=60,
)  # fmt: skip


@given(JSON)
def test_a_document_laid_out_is_the_same_document(value: object) -> None:
    assert json.loads(document_bytes(value)) == value  # type: ignore[arg-type]


def test_lines_stay_readable() -> None:
    trace: list[Json] = [[8.123 - i / 100, i / 100] for i in range(700)]
    lines = document_bytes({"bead": {"trace": trace}}).decode().splitlines()
    assert max(len(line) for line in lines) <= 96
    assert len(lines) < 700 / 3
