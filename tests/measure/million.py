"""A logbook of a million attempts: how soon does it open, and in how much memory?

Run as ``python -m tests.measure.million [ATTEMPTS]``. A thousand attempts are kept as the program
keeps them; the file then gets copies of them, moved on in time, until it holds as many as asked.
Measured: opening it, what a learner's attempts say of them, the newest 200, and one attempt more,
each beside the same on the first thousand; and what memory they take.
"""

from __future__ import annotations

import resource
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from tests.trainer.logbook.entries import entry_of
from trainer.logbook.findings import NEWEST, findings_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.store import Logbook

FIRST = 1000
A_YEAR_OF_DAYS = 1100


def grow(path: Path, times: int) -> None:
    """Copy what is in the file `times` times, each copy later than the one before."""
    with closing(sqlite3.connect(path)) as plain:
        named = [row[1] for row in plain.execute("PRAGMA table_info(attempts)")]
        changed = {
            "id": "substr(id, 1, 9) || printf('%08d', :n) || substr(id, 18)",
            "order_made": "order_made + :n * 10000000",
            "at_ms": "at_ms + :n * 100000",
            "day": f"date(day, (:n % {A_YEAR_OF_DAYS}) || ' days')",
        }
        picked = ", ".join(changed.get(name, name) for name in named)
        base = "CREATE TEMP TABLE base AS SELECT * FROM attempts"
        plain.execute(base)
        plain.execute("CREATE TEMP TABLE base_tallies AS SELECT * FROM tallies")
        for n in range(1, times):
            plain.execute(f"INSERT INTO attempts SELECT {picked} FROM base", {"n": n})
            plain.execute(
                "INSERT INTO tallies SELECT learner_id, "
                f"date(day, (:n % {A_YEAR_OF_DAYS}) || ' days'), kind, key, counted, summed "
                "FROM base_tallies WHERE true ON CONFLICT DO UPDATE SET "
                "counted = counted + excluded.counted, summed = summed + excluded.summed",
                {"n": n},
            )
        plain.commit()


def timed(act: Callable[[], object]) -> float:
    """Return the least of three times, seconds."""
    found = []
    for _ in range(3):
        start = time.perf_counter()
        act()
        found.append(time.perf_counter() - start)
    return min(found)


def measure(path: Path) -> dict[str, float]:
    """Return what opening and reading a logbook takes, seconds."""
    with closing(Logbook.open(path, bring_up_to_date)) as logbook:
        (learner,) = logbook.learners()
        numbers = iter(range(9_000_000, 9_100_000))
        return {
            "open": timed(lambda: Logbook.open(path, bring_up_to_date).close()),
            "tallies": timed(lambda: logbook.tallies(learner.id, newest_lines=NEWEST)),
            "findings": timed(
                lambda: findings_of(logbook.tallies(learner.id, newest_lines=NEWEST))
            ),
            "newest": timed(lambda: logbook.attempts(learner.id)),
            "one more": timed(lambda: logbook.add(learner.id, entry_of(next(numbers)))),
        }


def memory() -> float:
    """Return the most memory this process has had, MiB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def main(attempts: int) -> None:
    """Print both, and memory before and after."""
    with tempfile.TemporaryDirectory() as name:
        path = Path(name) / "logbook.sqlite3"
        with closing(Logbook.open(path, bring_up_to_date)) as logbook:
            learner = logbook.add_learner("Bench 1")
            logbook.add_all(learner.id, [entry_of(number) for number in range(FIRST)])
        few, small = measure(path), memory()
        grow(path, max(attempts // FIRST, 1))
        many, large = measure(path), memory()
        with closing(Logbook.open(path, bring_up_to_date)) as logbook:
            count = logbook.count()
        size = path.stat().st_size / 1e6
        print(f"{count} attempts, {size:.0f} MB; memory {small:.0f} MiB with {FIRST}, {large:.0f}")
        for key, took in many.items():
            print(f"{key:9} {1e3 * took:8.1f} ms, with {FIRST}: {1e3 * few[key]:.1f}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000)
