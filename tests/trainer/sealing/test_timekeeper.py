"""A sitting that runs, on a real journal and clocks that the test turns."""

from __future__ import annotations

import errno
import itertools
import os
import random
import time
from collections.abc import Callable
from dataclasses import fields
from pathlib import Path
from typing import BinaryIO

import pytest

from exercises.sitting.progress import BEAT_MS, Progress
from trainer.sealing import held_files, journal, timekeeper
from trainer.sealing.clocks import SystemClock
from trainer.sealing.journal import SUFFIX, Journal, JournalError
from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.timekeeper import Timekeeper

KEY = Key.made("three weathered herons", Cost(log_n=4))
MINUTE = 60_000


class Hands:
    """Clocks whose hands a test turns."""

    def __init__(self) -> None:
        self._wall, self._awake = 1_795_700_000_000, 123_456

    def wall(self) -> int:
        return self._wall

    def awake(self) -> int:
        return self._awake

    def turn(self, ms: int, *, asleep: int = 0) -> None:
        self._wall += ms + asleep
        self._awake += ms

    def begin_anew(self, gap: int) -> None:
        """The machine is started again after `gap` ms."""
        self._wall += gap
        self._awake = 11


@pytest.fixture
def hands() -> Hands:
    return Hands()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / f"a{SUFFIX}"


def begin(path: Path, hands: Hands) -> Timekeeper:
    head = {"code": "k-07"}
    return Timekeeper.begin(path, KEY, head, limit_ms=10 * MINUTE, items=4, clock=hands)


def killed(keeper: Timekeeper) -> None:
    """The program is gone: nothing more is written, and the system lets go of the file."""
    keeper.journal.close()


def test_beats_are_never_further_apart_than_said(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    stood = [hands.awake()]
    for _ in range(300):
        hands.turn(1_000)
        before = keeper.progress.last
        assert keeper.tick() == 10 * MINUTE - (hands.awake() - stood[0])
        if keeper.progress.last is not before:
            stood.append(hands.awake())
    assert max(b - a for a, b in itertools.pairwise(stood)) <= BEAT_MS
    assert len(stood) < 300 / 3
    keeper.journal.close()


def test_a_kill_costs_the_learner_nothing_and_gives_at_most_a_beat(
    path: Path, hands: Hands
) -> None:
    keeper, truly = begin(path, hands), 0
    for number in range(4):
        for _ in range(7 + number):
            hands.turn(1_000)
            truly += 1_000
            keeper.tick()
        keeper.answer(number, number)
        hands.turn(700 * number)
        truly += 700 * number
        killed(keeper)
        hands.begin_anew(90_000)
        keeper = Timekeeper.resume(path, "three weathered herons", hands)
        charged = keeper.progress.used_ms
        assert truly - BEAT_MS <= charged <= truly
        truly = charged
    assert keeper.progress.answers == {0: 0, 1: 1, 2: 2, 3: 3}
    assert [each.kind for each in keeper.progress.interruptions] == ["closed"] * 4
    assert all((each.ms or 0) >= 90_000 for each in keeper.progress.interruptions)
    assert keeper.head == {"code": "k-07"}
    killed(keeper)


def test_a_lid_is_noticed_at_the_first_tick_after_it(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    hands.turn(1_000)
    keeper.tick()
    hands.turn(1_000, asleep=45 * MINUTE)
    left = keeper.tick()
    assert keeper.progress.last.kind == "woke"
    assert left == 10 * MINUTE - 2_000
    (found,) = keeper.progress.interruptions
    assert (found.kind, found.ms) == ("asleep", 45 * MINUTE)
    killed(keeper)
    keeper = Timekeeper.resume(path, KEY, hands)
    assert keeper.progress.interruptions[0] == found
    killed(keeper)


def test_a_clock_set_back_is_noticed_and_gives_no_time(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    hands.turn(1_000, asleep=-45 * MINUTE)
    assert keeper.tick() == 10 * MINUTE - 1_000
    assert [each.kind for each in keeper.progress.interruptions] == ["clock"]
    hands.turn(1_000)
    keeper.tick()
    assert len(keeper.progress.interruptions) == 1
    killed(keeper)


def test_leaving_counts_to_the_moment(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    hands.turn(3_210)
    keeper.leave()
    hands.begin_anew(5_000)
    keeper = Timekeeper.resume(path, KEY, hands)
    assert keeper.progress.used_ms == 3_210
    assert keeper.progress.interruptions[0].ms == 5_000
    killed(keeper)


def test_an_event_that_the_disk_refuses_changes_nothing(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper = begin(path, hands)
    keeper.answer(0, "kept")
    before = keeper.progress

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        acts: list[Callable[[], None]] = [
            lambda: keeper.answer(0, "lost"),
            lambda: keeper.show(1),
            lambda: keeper.flag(1, on=True),
            lambda: keeper.finish("finished"),
        ]
        for act in acts:
            with pytest.raises(JournalError, match="No space"):
                act()
        hands.turn(BEAT_MS)
        with pytest.raises(JournalError, match="No space"):
            keeper.tick()
        assert keeper.progress is before
        assert keeper.left_ms == 10 * MINUTE - BEAT_MS, "time runs on all the same"
    keeper.answer(0, "kept after all")
    killed(keeper)
    keeper = Timekeeper.resume(path, KEY, hands)
    assert keeper.progress.answers == {0: "kept after all"}
    killed(keeper)


def test_what_makes_no_sense_is_never_written(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    size = path.stat().st_size
    with pytest.raises(ValueError, match="no item 4"):
        keeper.show(4)
    assert path.stat().st_size == size
    with pytest.raises(ValueError, match=r"not JSON compliant|out of range"):
        keeper.answer(0, float("nan"))
    assert path.stat().st_size == size
    killed(keeper)


def test_a_sitting_that_can_t_begin_leaves_nothing(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        with pytest.raises(JournalError, match="No space"):
            begin(path, hands)
    assert list(path.parent.iterdir()) == []
    begin(path, hands).leave()


@pytest.mark.parametrize("step", ["write_out", "sync_folder"])
def test_a_sitting_killed_while_it_begins_can_be_begun(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    """A journal takes its name once it is whole; what was left half lies under another."""

    class Killed(BaseException):
        pass

    def kill(*_: object) -> None:
        raise Killed

    with monkeypatch.context() as patched:
        patched.setattr(f"trainer.sealing.held_files.{step}", kill)
        patched.setattr(Path, "unlink", lambda *_, **__: None)
        with pytest.raises(Killed):
            begin(path, hands)
    if step == "write_out":
        assert [each.name for each in path.parent.iterdir()] == [f"a{SUFFIX}.part"]
        begin(path, hands).leave()
    keeper = Timekeeper.resume(path, KEY, hands)
    assert keeper.progress.items == 4
    killed(keeper)
    assert list(path.parent.iterdir()) == [path]


def test_a_journal_without_a_beginning_is_refused(path: Path, hands: Hands) -> None:
    Journal.create(path, KEY, {"code": "k-07"}).close()
    with pytest.raises(SealError) as caught:
        Timekeeper.resume(path, KEY, hands)
    assert caught.value.trouble == "truncated"
    # It was let go of.
    Journal.resume(path, KEY).journal.discard()


def test_a_journal_of_something_else_is_refused(path: Path, hands: Hands) -> None:
    odd = Journal.create(path, KEY, {})
    odd.append({"kind": "sung", "wall": 1, "awake": 1})
    odd.close()
    with pytest.raises(SealError) as caught:
        Timekeeper.resume(path, KEY, hands)
    assert caught.value.trouble == "changed"


def test_what_no_disk_would_take_comes_with_the_end(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    hands.turn(11 * MINUTE)
    keeper.finish("time up", {3: "stated in time"})
    killed(keeper)
    again = Timekeeper.resume(path, KEY, hands)
    assert again.progress.answers == {3: "stated in time"}
    assert again.progress.ended == "time up"
    killed(again)


def test_one_that_was_finished_is_resumed_to_be_handed_in(path: Path, hands: Hands) -> None:
    keeper = begin(path, hands)
    keeper.answer(2, "a")
    keeper.finish("time up")
    killed(keeper)
    hands.begin_anew(MINUTE)
    again = Timekeeper.resume(path, KEY, hands)
    assert (again.progress.ended, again.progress.answers) == ("time up", {2: "a"})
    assert again.progress.interruptions == ()
    again.tick()
    again.leave()
    Timekeeper.resume(path, KEY, hands).discard()
    assert not path.exists()


def fiddled(keeper: Timekeeper, hands: Hands, seed: int = 5) -> None:
    """Many answers to few coupons, each with a handling that grows; some are taken back."""
    rng = random.Random(seed)
    for number in range(60):
        hands.turn(rng.randrange(3_000))
        item = rng.randrange(3)
        keeper.show(item)
        back = rng.random() < 0.2
        keeper.answer(item, None if back else {"n": number, "handling": rng.randbytes(900).hex()})
        keeper.flag(item, on=rng.random() < 0.5)
        keeper.tick()


def without_resumptions(progress: Progress) -> dict[str, object]:
    said = {each.name: getattr(progress, each.name) for each in fields(progress)}
    return {key: value for key, value in said.items() if key not in {"last", "interruptions"}}


def test_a_journal_full_of_superseded_answers_is_written_anew(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One with room for all says the same at the end, and is many times as long."""
    roomy = begin(path.with_name(f"b{SUFFIX}"), hands)
    fiddled(roomy, hands)
    killed(roomy)
    monkeypatch.setattr(timekeeper, "_ROOM", 6_000)
    tight_hands = Hands()
    tight = begin(path, tight_hands)
    fiddled(tight, tight_hands)
    killed(tight)
    assert tight.journal.size < roomy.journal.size / 2
    ends = []
    for keeper in (roomy, tight):
        again = Timekeeper.resume(keeper.journal.path, KEY, hands)
        killed(again)
        ends.append(without_resumptions(again.progress))
        assert ends[-1] == without_resumptions(keeper.progress)
    assert ends[0] == ends[1]


def test_what_was_written_anew_is_resumed_and_written_anew_again(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(timekeeper, "_ROOM", 6_000)
    keeper = begin(path, hands)
    for seed in range(4):
        fiddled(keeper, hands, seed)
        before = without_resumptions(keeper.progress)
        killed(keeper)
        hands.begin_anew(5_000)
        keeper = Timekeeper.resume(path, KEY, hands)
        assert without_resumptions(keeper.progress) == before
    assert [each.kind for each in keeper.progress.interruptions] == ["closed"] * 4
    assert list(path.parent.iterdir()) == [path]
    killed(keeper)


def test_a_journal_that_is_resumed_often_grows_no_longer_for_that(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(timekeeper, "_ROOM", 20_000)
    begin(path, hands).leave()
    for number in range(40):
        keeper = Timekeeper.resume(path, KEY, hands)
        for _ in range(3):
            keeper.answer(0, {"n": number, "handling": os.urandom(900).hex()})
        killed(keeper)
    assert path.stat().st_size < 60_000, "all answers together would be 160,000"


@pytest.mark.parametrize("step", ["held part", "write_out", "replace", "sync_folder"])
def test_a_disk_that_refuses_while_it_is_written_anew_loses_nothing(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    monkeypatch.setattr(timekeeper, "_ROOM", 6_000)
    keeper = begin(path, hands)

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        if step == "held part":
            patched.setattr(held_files, "_held_part", full)
        elif step == "replace":
            patched.setattr(os, "replace", full)
        elif step == "write_out":
            # The journal's own lines are taken, the new file is not.
            patched.setattr(held_files, "write_out", full)
        else:
            patched.setattr(journal, "sync_folder", full)
        told = 0
        for number in range(60):
            try:
                keeper.answer(number % 2, {"n": number, "handling": "x" + os.urandom(900).hex()})
            except JournalError:
                told += 1
            else:
                kept = dict(keeper.progress.answers)
        assert (told > 0) is (step == "sync_folder")
    assert keeper.progress.answers == kept
    killed(keeper)
    again = Timekeeper.resume(path, KEY, hands)
    assert again.progress.answers == kept
    killed(again)
    assert list(path.parent.iterdir()) == [path]


def test_another_program_never_takes_up_what_was_replaced(
    path: Path, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It has opened the old file, and gets to hold it once that is let go of."""
    keeper = begin(path, hands)
    true = held_files.hold_soon

    def late(file: BinaryIO) -> bool:
        monkeypatch.setattr(journal, "hold_soon", true)
        keeper.journal.renew({}, [])
        return true(file)

    monkeypatch.setattr(journal, "hold_soon", late)
    with pytest.raises(JournalError) as caught:
        Timekeeper.resume(path, KEY, hands)
    assert caught.value.hindrance == "held"
    killed(keeper)


def test_a_machine_whose_clock_was_lost_can_be_resumed(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(time, "time_ns", lambda: -5_000_000_000)
    Timekeeper.begin(path, KEY, {}, limit_ms=MINUTE, items=1).leave()
    keeper = Timekeeper.resume(path, KEY)
    assert keeper.progress.started.year == 1970
    keeper.discard()


def test_the_systems_clocks_run(path: Path) -> None:
    keeper = Timekeeper.begin(path, KEY, {}, limit_ms=MINUTE, items=1)
    first = keeper.left_ms
    while SystemClock().awake() <= keeper.progress.last.awake + 20:
        keeper.tick()
    assert keeper.left_ms < first
    keeper.discard()
