"""Sealed files on the disk: whole or not at all."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.file_faults import FileError
from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.result_files import open_sealed, result_name, sweep, write_sealed
from trainer.sealing.seal import Opener

KEY = Key.made("three weathered herons", Cost(log_n=4))


def test_a_file_is_read_as_it_was_written(tmp_path: Path) -> None:
    path = tmp_path / "a.result"
    assert write_sealed(path, "result", b"one", KEY) is KEY
    write_sealed(path, "result", b"two", KEY)
    for secret in (KEY, "three weathered herons", Opener("three weathered herons")):
        assert open_sealed(path, secret, "result").body == b"two"
        with pytest.raises(SealError, match="kind"):
            open_sealed(path, secret, "sitting")
    assert list(tmp_path.iterdir()) == [path]


def test_a_full_disk_leaves_the_old_file_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.result"
    write_sealed(path, "result", b"old", KEY)

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        with pytest.raises(OSError, match="No space"):
            write_sealed(path, "result", b"new", KEY)
    assert open_sealed(path, KEY).body == b"old"
    assert list(tmp_path.iterdir()) == [path]


def test_what_isn_t_there_is_said(tmp_path: Path) -> None:
    for path in (tmp_path, tmp_path / "nothing"):
        with pytest.raises(FileError) as caught:
            open_sealed(path, KEY)
        assert caught.value.faults[0].code == "unreadable"


@given(st.text(max_size=300), st.text(max_size=300), st.text(max_size=10))
def test_any_title_and_code_give_a_name_that_a_disk_takes(
    tmp_path_factory: pytest.TempPathFactory, title: str, code: str, mark: str
) -> None:
    name = result_name(title, code, mark)
    assert len(name.encode()) <= 255
    assert not set(name) & set('/\\:*?"<>|\0\n ')
    assert name.endswith(".result")
    path = tmp_path_factory.mktemp("names") / name
    path.write_bytes(b"")
    assert path.parent.joinpath(name).is_file()


def test_a_name_that_says_nothing_is_still_one() -> None:
    assert result_name("..", "/", "3fa9") == "3fa9.result"
    assert result_name("Übung «7»", "k\u0301-07", "a") == "Übung-7_ḱ-07_a.result"


def test_what_kills_left_half_written_is_swept_once_it_is_old(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.result"
    write_sealed(path, "result", b"old", KEY)
    with monkeypatch.context() as patched:
        # As a kill would: what is half written stays.
        patched.setattr(Path, "unlink", lambda *_, **__: None)
        patched.setattr(os, "replace", lambda *_: 1 / 0)
        with pytest.raises(ZeroDivisionError):
            write_sealed(path, "result", b"new", KEY)
    (part,) = (each for each in tmp_path.iterdir() if each != path)
    sweep(tmp_path)
    assert part.exists()
    os.utime(part, (1, 1))
    sweep(tmp_path)
    assert list(tmp_path.iterdir()) == [path]
    assert open_sealed(path, KEY).body == b"old"
