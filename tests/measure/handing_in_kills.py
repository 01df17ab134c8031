"""Sittings whose program is killed from the first call until the result is in the logbook.

Run as ``python -m tests.measure.handing_in_kills [KILLS]``. A child sits one sitting after another
and hands each in: result sealed on the disk, taken into the logbook, journal removed. It is killed
(SIGKILL) at random moments; the next child takes up what was left, as the program offers to. At the
end one child sits one more and is let finish; then each sitting that was ever begun must be

- in the logbook once, with an attempt for each of its answers, and nothing twice;
- in one sealed file, which says the same;
- with no journal left behind.
"""

from __future__ import annotations

import random
import signal
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import sqlalchemy as sa

from exercises.sitting.embedded import chosen_of
from exercises.sitting.plan import Plan
from exercises.sitting.result_file import read_result
from exercises.text import Text
from exercises.tray import load_tray
from trainer.assets import asset
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.schema import AttemptRow, SatRow, table_of
from trainer.logbook.store import Logbook
from trainer.sealing.journal import left
from trainer.sealing.key import Cost, Key
from trainer.sealing.result_files import SUFFIXES, open_sealed
from trainer.taking.drafts import Draft
from trainer.taking.handing_in import hand_in, let_go, take_in
from trainer.taking.sitting import Sitting

KEY: Final = Key.derived("three weathered herons", Cost(log_n=4), b"0123456789abcdef")
LONGEST: Final = 0.35
COUPONS: Final = 3


def plan() -> Plan:
    """A sitting of the first coupons of a shipped tray."""
    tray = load_tray(asset("trays", "heron-footbridge.tray.json"))
    chosen = chosen_of(tray, names={coupon.id for coupon in tray.coupons[:COUPONS]})
    return Plan("s-1", Text.of("Friday: railings"), (chosen,), minutes=600.0, pass_mark=0.8)


def say(what: str) -> None:
    """Print a line at once."""
    print(what, flush=True)


def sit(folder: Path, first: int, last: int) -> None:
    """Sit the sittings of so many codes, each from where it was left, and hand each in."""
    asked = plan()
    with closing(Logbook.open(folder / "logbook.sqlite3", bring_up_to_date)) as logbook:
        say("ready")
        for path in left(folder / "sittings"):
            go_on(Sitting.resume(path, KEY), folder, logbook)
        for number in range(first, last):
            code = f"k-{number:03}"
            say(f"begins {code}")
            go_on(Sitting.begin(folder / "sittings", KEY, asked, code), folder, logbook)


def go_on(sitting: Sitting, folder: Path, logbook: Logbook) -> None:
    """Answer what isn't answered, end it, hand it in."""
    if sitting.progress.ended is None:
        for item, question in enumerate(sitting.questions):
            sitting.show(item)
            size = question.coupon.callout.size
            said = {"coupon": question.coupon.id, "face": "convex", "disposition": "accept"}
            sitting.keep(item, Draft({**said, "sure": 0.5}, [], {"picture": size}, whole=True))
        sitting.finish("finished")
    say(f"ended {sitting.code}")
    handed = take_in(hand_in(sitting, folder / "results"), logbook)
    assert handed.merged is not None, handed.trouble
    let_go(sitting)
    say(f"handed {sitting.code}")


@dataclass
class Outcome:
    """What kills came to."""

    kills: int
    begun: int
    handed_in: int
    killed_between: int
    """After the end of a sitting, and before it was handed in."""
    missing: int
    twice: int
    attempts: int
    wrong_files: int
    left_behind: int

    @property
    def is_sound(self) -> bool:
        """Whether nothing went wrong."""
        wrongs = (self.missing, self.twice, self.wrong_files, self.left_behind)
        return not any(wrongs) and self.attempts == self.begun * COUPONS


def kill_often(folder: Path, kills: int, seed: int = 1) -> Outcome:
    """Kill a child that sits and hands in `kills` times; then let one finish, and look."""
    rng = random.Random(seed)
    begun: set[str] = set()
    handed: set[str] = set()
    between = 0
    for number in range(kills + 1):
        is_last = number == kills
        first = 1 + max((int(code[2:]) for code in begun), default=0)
        span = (first, first + (1 if is_last else 1000))
        command = [sys.executable, "-m", "tests.measure.handing_in_kills", "--sit", str(folder)]
        child = subprocess.Popen([*command, *map(str, span)], stdout=subprocess.PIPE, text=True)
        assert child.stdout is not None
        lines = [child.stdout.readline()] if rng.random() < 0.95 else []
        if not is_last:
            time.sleep(rng.uniform(0.0, LONGEST))
            child.send_signal(signal.SIGKILL)
        lines += child.communicate()[0].splitlines(keepends=True)
        said = [line.split() for line in lines if line.endswith("\n")]
        begun |= {words[1] for words in said if words[0] == "begins"}
        handed |= {words[1] for words in said if words[0] == "handed"}
        between += bool(said) and said[-1][0] == "ended"
    return looked_at(folder, kills, begun, handed, between)


def looked_at(folder: Path, kills: int, begun: set[str], handed: set[str], between: int) -> Outcome:
    """Compare the logbook and the files with what was said."""
    sat, attempts = table_of(SatRow), table_of(AttemptRow)
    found: dict[str, str] = {}
    twice = 0
    with (
        closing(Logbook.open(folder / "logbook.sqlite3", bring_up_to_date)) as logbook,
        logbook.writing() as connection,
    ):
        for row in connection.execute(sa.select(sat.c.id, sat.c.learner_id)):
            twice += row.learner_id in found
            found[row.learner_id] = row.id
        ids = list(connection.execute(sa.select(attempts.c.id)).scalars())
    files = [
        read_result(open_sealed(path, KEY, "result").body, path.name)
        for path in sorted((folder / "results").glob(f"[!.]*{SUFFIXES['result']}"))
    ]
    in_files = {result.id for result in files}
    codes = {result.code for result in files}
    # One that was said to begin and was killed before its journal was there isn't begun.
    truly = {code for code in begun if code in codes}
    return Outcome(
        kills=kills,
        begun=len(truly),
        handed_in=len(handed),
        killed_between=between,
        missing=len(handed - codes) + len(in_files - set(found.values())),
        twice=twice + len(ids) - len(set(ids)) + len(files) - len(codes),
        attempts=len(ids),
        wrong_files=sum(len(result.items) != COUPONS for result in files),
        left_behind=len(left(folder / "sittings")),
    )


if __name__ == "__main__":
    if sys.argv[1:2] == ["--sit"]:
        sit(Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4]))
        sys.exit(0)
    with tempfile.TemporaryDirectory() as name:
        outcome = kill_often(Path(name), int(sys.argv[1]) if len(sys.argv) > 1 else 200)
        print(outcome)
        sys.exit(0 if outcome.is_sound else 1)
