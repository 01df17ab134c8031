"""A logbook whose program is killed at random moments: does it keep all that it acknowledged?

Run as ``python -m tests.measure.kills [KILLS]``. A child keeps attempts as fast as it can and
prints each one's number once it is kept; it is killed (SIGKILL) at a random moment, again and
again, on the same file. After each kill the file must be sound and hold every number printed.
"""

from __future__ import annotations

import random
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from tests.trainer.logbook.entries import entry_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.records import Records

LONGEST = 0.6


@dataclass(frozen=True)
class Outcome:
    """What kills came to."""

    kills: int
    acknowledged: int
    lost: int
    broken: int


def keep_for_ever(folder: Path, start: int) -> None:
    """Keep attempts from `start` on, and print each number once it is kept."""
    keeping = Keeping(
        folder / "logbook.sqlite3", Records(folder / "calls.jsonl"), bring_up_to_date, "Bench 1"
    )
    keeping.open()
    number = start
    while True:
        keeping.add(entry_of(number))
        print(number, flush=True)
        number += 1


def child_of(folder: Path, start: int) -> subprocess.Popen[str]:
    """Start a child that keeps attempts."""
    command = [sys.executable, "-m", "tests.measure.kills", "--keep", str(folder), str(start)]
    return subprocess.Popen(command, stdout=subprocess.PIPE, text=True)


def kept_in(folder: Path) -> tuple[set[str], bool]:
    """The ids that are kept, in the logbook or aside, and whether the logbook is sound."""
    with closing(sqlite3.connect(folder / "logbook.sqlite3")) as plain:
        sound = plain.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        ids = {row[0] for row in plain.execute("SELECT id FROM attempts")}
        orphans = plain.execute("PRAGMA foreign_key_check").fetchall()
    aside = folder / "calls.jsonl"
    text = aside.read_text(encoding="utf-8") if aside.exists() else ""
    return ids | {line.split('"id": "')[1][:36] for line in text.splitlines()}, (
        sound and not orphans
    )


def kill_often(folder: Path, kills: int, seed: int = 1) -> Outcome:
    """Kill a child that keeps attempts `kills` times."""
    rng = random.Random(seed)
    acknowledged: list[int] = []
    lost = broken = 0
    start = 0
    for _ in range(kills):
        child = child_of(folder, start)
        assert child.stdout is not None
        # Some die before they have opened the file, some in the midst of an attempt.
        first = child.stdout.readline() if rng.random() < 0.9 else ""
        time.sleep(rng.uniform(0.0, LONGEST))
        child.send_signal(signal.SIGKILL)
        said = [first, *child.communicate()[0].splitlines(keepends=True)]
        now = [int(line) for line in said if line.endswith("\n")]
        acknowledged += now
        start += len(now) + 5
        if (folder / "logbook.sqlite3").exists():
            ids, sound = kept_in(folder)
            broken += not sound
            lost += sum(entry_of(number).id not in ids for number in now)
    ids, sound = kept_in(folder)
    broken += not sound
    lost = max(lost, sum(entry_of(number).id not in ids for number in acknowledged))
    return Outcome(kills, len(acknowledged), lost, broken)


if __name__ == "__main__":
    if sys.argv[1:2] == ["--keep"]:
        keep_for_ever(Path(sys.argv[2]), int(sys.argv[3]))
    with tempfile.TemporaryDirectory() as name:
        print(kill_often(Path(name), int(sys.argv[1]) if len(sys.argv) > 1 else 200))
