"""From the last call until the result is in the logbook: whatever fails, nothing is lost."""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from exercises.sitting.progress import BEAT_MS
from exercises.sitting.result_file import result_bytes
from tests.measure.handing_in_kills import COUPONS, KEY, kill_often, plan
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.store import Logbook
from trainer.sealing.journal import JournalError, left
from trainer.sealing.key import SealError
from trainer.sealing.result_files import open_sealed, write_sealed
from trainer.taking import handing_in
from trainer.taking.drafts import Draft
from trainer.taking.handing_in import hand_in, let_go, take_in
from trainer.taking.sitting import Sitting, journal_of


class Clocks:
    """Both clocks of a machine, set by hand."""

    def __init__(self) -> None:
        self.ran = 5_000

    def wall(self) -> int:
        return 1_764_000_000_000 + self.ran

    def awake(self) -> int:
        return self.ran


@pytest.fixture
def clocks() -> Clocks:
    return Clocks()


@pytest.fixture
def logbook(tmp_path: Path) -> Iterator[Logbook]:
    with closing(Logbook.open(tmp_path / "logbook.sqlite3", bring_up_to_date)) as opened:
        yield opened


def draft(sitting: Sitting, item: int, face: str = "convex") -> Draft:
    said = {"coupon": sitting.questions[item].coupon.id, "face": face, "disposition": "accept"}
    return Draft({**said, "sure": 0.5}, [[0, 40.0, 40.0, 0.0, False, "pick 8 mm leg"]], {},
                 whole=True)  # fmt: skip


def sat(folder: Path, clocks: Clocks) -> Sitting:
    """A sitting with all coupons answered."""
    sitting = Sitting.begin(folder / "sittings", KEY, plan(), "k-07", clock=clocks)
    for item in range(COUPONS):
        sitting.show(item)
        clocks.ran += 10_000
        sitting.keep(item, draft(sitting, item))
    return sitting


def taken_up(folder: Path, clocks: Clocks) -> Sitting:
    """The sitting that a kill has left, in another start of the program."""
    (path,) = left(folder / "sittings")
    clocks.ran += 60_000
    return Sitting.resume(path, KEY, clocks)


def faces(sitting: Sitting) -> list[object]:
    return [item.attempt and item.attempt["face"] for item in sitting.result().items]


def killed(sitting: Sitting) -> None:
    sitting.keeper.journal.close()


@pytest.mark.parametrize("moment", ["ended", "written", "taken in", "let go"])
def test_a_kill_anywhere_hands_the_same_result_in_once(
    tmp_path: Path, clocks: Clocks, logbook: Logbook, moment: str
) -> None:
    sitting = sat(tmp_path, clocks)
    sitting.finish("finished")
    first = result_bytes(sitting.result())
    if moment != "ended":
        handed = hand_in(sitting, tmp_path / "results")
        if moment != "written":
            merged = take_in(handed, logbook).merged
            assert merged is not None
            assert (merged.came, merged.attempts) == ("new", COUPONS)
    if moment == "let go":
        let_go(sitting)
        assert left(tmp_path / "sittings") == ()
    else:
        killed(sitting)
        again = taken_up(tmp_path, clocks)
        assert result_bytes(again.result()) == first, "the time in between changes nothing"
        handed = take_in(hand_in(again, tmp_path / "results"), logbook)
        assert handed.merged is not None
        assert handed.merged.came == ("known" if moment == "taken in" else "new")
        let_go(again)
    (file,) = (tmp_path / "results").iterdir()
    assert open_sealed(file, KEY, "result").body == first
    assert logbook.count() == COUPONS
    assert left(tmp_path / "sittings") == ()


def test_a_full_disk_keeps_the_journal_until_the_result_is_written(
    tmp_path: Path, clocks: Clocks, monkeypatch: pytest.MonkeyPatch
) -> None:
    sitting = sat(tmp_path, clocks)
    sitting.finish("finished")

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        for _ in range(3):
            with pytest.raises(OSError, match="No space"):
                hand_in(sitting, tmp_path / "results")
    assert list((tmp_path / "results").iterdir()) == []
    killed(sitting)
    again = taken_up(tmp_path, clocks)
    assert faces(again) == ["convex"] * COUPONS
    hand_in(again, tmp_path / "results")
    let_go(again)


def test_a_result_that_can_t_be_read_back_is_not_handed_in(
    tmp_path: Path, clocks: Clocks, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A disk that says it has written, and has not."""
    sitting = sat(tmp_path, clocks)
    sitting.finish("finished")
    true = write_sealed

    def lying(path: Path, *rest: object) -> None:
        true(path, *rest)  # type: ignore[arg-type]  # whatever it is called with
        path.write_bytes(path.read_bytes()[:-3])

    with monkeypatch.context() as patched:
        patched.setattr(handing_in, "write_sealed", lying)
        with pytest.raises(SealError, match="truncated"):
            hand_in(sitting, tmp_path / "results")
    hand_in(sitting, tmp_path / "results")
    let_go(sitting)


def test_a_logbook_that_is_not_there_leaves_the_result_in_its_file(
    tmp_path: Path, clocks: Clocks
) -> None:
    sitting = sat(tmp_path, clocks)
    sitting.finish("finished")
    handed = take_in(hand_in(sitting, tmp_path / "results"), None, "another program has it")
    assert (handed.merged, handed.trouble) == (None, "another program has it")
    assert handed.file.is_file()
    killed(sitting)


def refusing(monkeypatch: pytest.MonkeyPatch) -> pytest.MonkeyPatch:
    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    return monkeypatch


def test_the_last_call_counts_though_the_disk_was_full_long_after_the_end(
    tmp_path: Path, clocks: Clocks, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As the runner does: it holds what was on the bench, and ends it once the disk has room."""
    sitting = sat(tmp_path, clocks)
    with monkeypatch.context() as patched:
        refusing(patched)
        with pytest.raises(JournalError):
            sitting.keep(0, draft(sitting, 0, "flat"))
        sitting.hold(0, draft(sitting, 0, "flat"))
        clocks.ran += 600 * 60_000 + 20 * BEAT_MS
        with pytest.raises(JournalError):
            sitting.finish("time up")
    sitting.finish("time up")
    assert faces(sitting) == ["flat", "convex", "convex"]
    first = result_bytes(sitting.result())
    killed(sitting)
    again = taken_up(tmp_path, clocks)
    assert result_bytes(again.result()) == first
    killed(again)


def test_a_call_that_was_kept_while_the_window_stood_still_comes_with_the_end(
    tmp_path: Path, clocks: Clocks
) -> None:
    sitting = sat(tmp_path, clocks)
    clocks.ran += 600 * 60_000 + 2 * BEAT_MS
    sitting.keep(1, draft(sitting, 1, "flat"))
    sitting.finish("time up")
    killed(sitting)
    again = taken_up(tmp_path, clocks)
    assert faces(again) == ["convex", "flat", "convex"]
    killed(again)


def test_a_journal_that_somebody_removes_is_made_anew_with_the_next_call(
    tmp_path: Path, clocks: Clocks
) -> None:
    sitting = sat(tmp_path, clocks)
    journal_of(tmp_path / "sittings", plan(), "k-07").unlink()
    sitting.keep(2, draft(sitting, 2, "flat"))
    killed(sitting)
    again = taken_up(tmp_path, clocks)
    again.finish("finished")
    assert faces(again) == ["convex", "convex", "flat"]
    killed(again)


def test_two_programs_never_sit_one_sitting(tmp_path: Path, clocks: Clocks) -> None:
    sitting = sat(tmp_path, clocks)
    path = journal_of(tmp_path / "sittings", plan(), "k-07")
    with pytest.raises(JournalError):
        Sitting.begin(tmp_path / "sittings", KEY, plan(), "K-07 ")
    with pytest.raises(JournalError):
        Sitting.resume(path, KEY)
    killed(sitting)
    with pytest.raises(JournalError):
        Sitting.begin(tmp_path / "sittings", KEY, plan(), "k-07")
    again = taken_up(tmp_path, clocks)
    assert again.standing(0) == "answered"
    killed(again)


def test_another_sitting_s_key_takes_nothing_up(tmp_path: Path, clocks: Clocks) -> None:
    killed(sat(tmp_path, clocks))
    (path,) = left(tmp_path / "sittings")
    with pytest.raises(SealError, match="passphrase"):
        Sitting.resume(path, replace(KEY, secret=b"k" * 32))
    killed(taken_up(tmp_path, clocks))


def test_no_kill_loses_a_sitting_or_has_it_twice(tmp_path: Path) -> None:
    """Four kills here; tests.measure.handing_in_kills does two hundred."""
    found = kill_often(tmp_path, 4, seed=3)
    assert found.is_sound, found
    assert found.begun >= 1
