"""A sitting whose program is killed at random moments: is every answer there, and the time right?

Run as ``python -m tests.measure.sitting_kills [KILLS]``. A child sits through coupons by the real
journal and clocks, as fast as it can, and prints what it is about to do and what was acknowledged,
with what the clock said. It is killed (SIGKILL) at a random moment, again and again, on the same
sitting; now and then while it hands in. After each kill the sitting is resumed here and compared:

- every acknowledged answer and mark is there, and nothing that was never asked for;
- the used time is not more than what the child's clock says had passed when it last spoke, nor
  less than that by more than a beat; what lay between is recorded as an interruption;
- no other program can take the journal while the child lives; a result is whole or not there.
"""

from __future__ import annotations

import json
import random
import signal
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final, NoReturn

from exercises.sitting.progress import BEAT_MS
from exercises.strict_json import Json
from trainer.sealing import timekeeper
from trainer.sealing.clocks import SystemClock
from trainer.sealing.journal import JournalError, left
from trainer.sealing.key import Cost, Key
from trainer.sealing.result_files import open_sealed, write_sealed
from trainer.sealing.timekeeper import Timekeeper

ITEMS: Final = 40
LIMIT_MS: Final = 10 * 3_600_000
LONGEST: Final = 0.5
PASSPHRASE: Final = "three weathered herons"
CHEAP: Final = Cost(log_n=4)
ROOM: Final = 150_000
"""Bytes of superseded answers until the journal is written anew."""

IDLE: Final = 20
"""One child in so many stops to think, for longer than beats are apart."""

SLACK_MS: Final = 1
"""Clocks are cut to whole milliseconds, for each start once."""


def sit_for_ever(path: Path, seed: int) -> NoReturn:
    """Answer coupon after coupon, and say before and after each what is done."""
    rng = random.Random(seed)
    clock = SystemClock()
    # So that kills fall into its being written anew as well.
    timekeeper._ROOM = ROOM  # type: ignore[misc]  # smaller than it would be
    keeper = Timekeeper.resume(path, PASSPHRASE, clock)
    began = keeper.progress.last.awake
    say({"resumed": keeper.progress.used_ms, "torn": keeper.torn})
    number = seed * 1_000_000
    while True:
        number += 1
        item = rng.randrange(ITEMS)
        # What an answer holds besides the call is mostly the handling: some kilobytes.
        rows = number % 300
        handling: list[Json] = [[ms, rng.random(), 8.25, 90.0, False, "drag"] for ms in range(rows)]
        answer: Json = {"number": number, "handling": handling}
        say({"asks": [item, number]})
        keeper.show(item)
        keeper.answer(item, answer)
        keeper.flag(item, on=number % 2 == 0)
        say({"has": [item, number], "ran": clock.awake() - began})
        if seed % IDLE == 0 and number % 5 == 0:
            think_for_ever(keeper, clock, began)
        if rng.random() < 0.2:
            time.sleep(rng.uniform(0.0, 0.05))
        keeper.tick()
        if rng.random() < 0.05:
            say({"writes": number})
            write_sealed(
                path.with_name("a.result"), "result", f"{number}".encode(), keeper.journal.key
            )
            say({"wrote": number})


def think_for_ever(keeper: Timekeeper, clock: SystemClock, began: int) -> NoReturn:
    """State nothing more: only beats tell how time goes."""
    while True:
        time.sleep(0.1)
        keeper.tick()
        say({"ran": clock.awake() - began})


def say(what: Json) -> None:
    """Print a line at once."""
    print(json.dumps(what), flush=True)


@dataclass
class Truth:
    """What the child has said so far, over all its starts."""

    answers: dict[int, int] = field(default_factory=dict)
    asked: set[int] = field(default_factory=set)
    wrote: int | None = None
    may_have_written: set[int] = field(default_factory=set)
    ran: int = 0
    used: int = 0
    torn: int = 0
    acknowledged: int = 0

    def hear(self, lines: list[str]) -> None:
        """Take in what one child said until it was killed."""
        self.ran = 0
        for line in lines:
            if not line.endswith("\n"):
                continue
            said = json.loads(line)
            if "resumed" in said:
                self.torn += said["torn"]
                self.used = said["resumed"]
            if "asks" in said:
                self.asked.add(said["asks"][1])
            if "has" in said:
                item, number = said["has"]
                self.answers[item] = number
                self.acknowledged += 1
            self.ran = said.get("ran", self.ran)
            if "writes" in said:
                self.may_have_written.add(said["writes"])
            if "wrote" in said:
                self.wrote = said["wrote"]


@dataclass
class Outcome:
    """What kills came to."""

    kills: int = 0
    acknowledged: int = 0
    lost: int = 0
    invented: int = 0
    refused: int = 0
    unrecorded: int = 0
    overcharged: int = 0
    undercharged: int = 0
    most_ms_given: int = 0
    torn: int = 0
    held_by_two: int = 0
    broken_results: int = 0
    longest: int = 0
    """Bytes of the journal."""

    @property
    def is_sound(self) -> bool:
        """Whether nothing went wrong."""
        wrongs = (self.lost, self.invented, self.refused, self.unrecorded, self.overcharged)
        return not any((*wrongs, self.undercharged, self.held_by_two, self.broken_results))


def child_of(path: Path, seed: int) -> subprocess.Popen[str]:
    """Start a child that goes on with the sitting."""
    command = [sys.executable, "-m", "tests.measure.sitting_kills", "--sit", str(path), str(seed)]
    return subprocess.Popen(command, stdout=subprocess.PIPE, text=True)


def is_held(path: Path) -> bool:
    """Whether another program keeps this one from the journal."""
    try:
        Timekeeper.resume(path, PASSPHRASE).leave()
    except JournalError as error:
        return error.hindrance == "held"
    return False


def number_of(answer: Json) -> int:
    """The number that the child gave an answer."""
    assert isinstance(answer, dict)
    number = answer["number"]
    assert isinstance(number, int)
    return number


def compare(path: Path, truth: Truth, before: int, found: Outcome) -> int:
    """Resume the sitting here, and count what is wrong; return how often it was interrupted."""
    if left(path.parent) != (path,):
        found.refused += 1
        return before
    try:
        keeper = Timekeeper.resume(path, PASSPHRASE)
    except ValueError:
        found.refused += 1
        return before
    truth.torn += keeper.torn
    progress = keeper.progress
    keeper.journal.close()
    numbers = {item: number_of(answer) for item, answer in progress.answers.items()}
    for item, number in truth.answers.items():
        # One that was asked for later may have reached the disk before the kill.
        kept = numbers.get(item)
        found.lost += kept is None or (kept != number and kept < number)
    found.invented += sum(number not in truth.asked for number in numbers.values())
    truth.answers.update(numbers)
    given = truth.used + truth.ran - progress.used_ms
    found.undercharged += given > BEAT_MS + SLACK_MS
    found.most_ms_given = max(found.most_ms_given, given)
    closed = sum(each.kind == "closed" for each in progress.interruptions)
    # One for the child's own resumption if it came to that, one for this.
    found.unrecorded += closed <= before
    return closed


def check_result(path: Path, truth: Truth, found: Outcome) -> None:
    """See that the result is one that was written, and none older than was acknowledged."""
    result = path.with_name("a.result")
    if not result.exists():
        found.broken_results += truth.wrote is not None
        return
    number = int(open_sealed(result, PASSPHRASE, "result").body)
    whole = number in truth.may_have_written and (truth.wrote is None or number >= truth.wrote)
    found.broken_results += not whole


def kill_often(folder: Path, kills: int, seed: int = 1) -> Outcome:
    """Kill a child that sits `kills` times."""
    rng = random.Random(seed)
    path = folder / "a.sitting-journal"
    key = Key.made(PASSPHRASE, CHEAP)
    Timekeeper.begin(path, key, {"code": "k-07"}, limit_ms=LIMIT_MS, items=ITEMS).leave()
    truth, found, interruptions = Truth(), Outcome(), 0
    for number in range(kills):
        wall = time.monotonic()
        child = child_of(path, number + 1)
        assert child.stdout is not None
        # Some die before they have opened the file, most in the midst of an answer.
        first = child.stdout.readline() if rng.random() < 0.9 else ""
        if first and number % 10 == 0:
            found.held_by_two += not is_held(path)
        time.sleep(rng.uniform(0.0, LONGEST if (number + 1) % IDLE else 3 * BEAT_MS / 1000))
        child.send_signal(signal.SIGKILL)
        lived = round(1000 * (time.monotonic() - wall))
        used_before = truth.used
        truth.hear([first, *child.communicate()[0].splitlines(keepends=True)])
        interruptions = compare(path, truth, interruptions, found)
        check_result(path, truth, found)
        keeper = Timekeeper.resume(path, PASSPHRASE)
        # More than the child lived can't be charged, by a clock that isn't the child's.
        found.overcharged += keeper.progress.used_ms - max(used_before, 0) > lived + SLACK_MS * 2
        truth.used = keeper.progress.used_ms
        keeper.journal.close()
        found.kills += 1
        found.longest = max(found.longest, path.stat().st_size)
    found.acknowledged, found.torn = truth.acknowledged, truth.torn
    return found


if __name__ == "__main__":
    if sys.argv[1:2] == ["--sit"]:
        sit_for_ever(Path(sys.argv[2]), int(sys.argv[3]))
    with tempfile.TemporaryDirectory() as name:
        outcome = kill_often(Path(name), int(sys.argv[1]) if len(sys.argv) > 1 else 200)
        print(outcome)
        sys.exit(0 if outcome.is_sound else 1)
