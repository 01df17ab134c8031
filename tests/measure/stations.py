"""Forty stations push to one PostgreSQL server that is killed twice: is all of it there, once?

Run as ``python -m tests.measure.stations [STATIONS] [ATTEMPTS]`` where PostgreSQL is installed
(Debian: ``postgresql``). It makes a server of its own in a temporary folder. Every station is a
logbook of its own with the program's own thread that pushes; attempts go on being kept in it while
the server is killed (SIGKILL to every process of it) and started again. At the end each attempt of
each logbook must be on the server once, equal in every column. Around that: what each role may do,
what is said of each thing that can be wrong, that a class reads the same from the server.
"""

from __future__ import annotations

import hashlib
import multiprocessing
import random
import shutil
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from contextlib import closing
from multiprocessing.synchronize import Event
from pathlib import Path

import psycopg
import sqlalchemy as sa
from sqlalchemy.engine import Engine

from exercises.sitting.result import learner_id
from tests.measure.postgres import Cluster
from tests.measure.school_checks import make_school, rights, tables, troubles, whole_class
from tests.trainer.logbook.entries import entry_of
from tests.trainer.school.papers import paper_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.opening import engine_of
from trainer.logbook.schema import AttemptRow, LearnerRow, table_of
from trainer.logbook.store import Logbook
from trainer.school.address import Address
from trainer.school.merging import merge
from trainer.school.pushing import Pusher, push_once
from trainer.school.server import server_engine
from trainer.school.tables import make_tables

STATIONS, ATTEMPTS = 40, 25_000
PROCESSES = 2
LIVE = 60
"""Attempts of each station that are kept while it pushes; the rest wait when it starts."""

LONGEST_S = 240.0
"""For all of them to have pushed all; what isn't there then is lost."""

UNDISTURBED = 8
"""Stations of the comparison without kills."""

_ATTEMPTS, _LEARNERS = table_of(AttemptRow), table_of(LearnerRow)


def code_of(station: int) -> str:
    """What the one learner of a station is called."""
    return f"bench-{station:02}"


def make_logbooks(folder: Path, stations: int, each: int) -> list[Path]:
    """Make each station's logbook: attempts that wait, and a paper that was handed in."""
    pattern = folder / "pattern.sqlite3"
    with closing(Logbook.open(pattern, bring_up_to_date)) as logbook:
        learner = logbook.add_learner("Bench")
        logbook.add_all(learner.id, [entry_of(number) for number in range(each)])
        private = logbook.add_learner("No code")
        logbook.add(private.id, entry_of(each))
    paths = []
    for station in range(stations):
        path = folder / f"station-{station:02}.sqlite3"
        shutil.copyfile(pattern, path)
        with closing(Logbook.open(path, bring_up_to_date)) as logbook:
            with logbook.writing() as connection:
                connection.exec_driver_sql(
                    "UPDATE attempts SET id = substr(id, 1, 24) || printf('%03d', ?)"
                    " || substr(id, 28)",
                    (station,),
                )
                connection.execute(
                    sa.update(_LEARNERS)
                    .where(_LEARNERS.c.name == "Bench")
                    .values(code=code_of(station))
                )
            merge(logbook, paper_of(code_of(station)))
        paths.append(path)
    return paths


def run_stations(paths: list[Path], first: int, address: Address, seed: int, end: Event) -> None:
    """Have stations push, each in its own thread, and keep attempts in them meanwhile."""
    rng = random.Random(seed)
    books = [Logbook.open(path, bring_up_to_date) for path in paths]
    pushers = [Pusher(path, address, every_s=1.0, rng=random.Random(seed + n))
               for n, path in enumerate(paths)]  # fmt: skip
    for pusher in pushers:
        pusher.start()
    turns = [n for n in range(len(books)) for _ in range(LIVE)]
    rng.shuffle(turns)
    kept = [0] * len(books)
    for n in turns:
        number = 1_000_000 + (first + n) * LIVE + kept[n]
        learner = next(one for one in books[n].learners() if one.name == "Bench")
        books[n].add(learner.id, entry_of(number))
        kept[n] += 1
        pushers[n].nudge()
    end.wait()
    for pusher in pushers:
        pusher.stop(30.0)
    for book in books:
        book.close()


def digests(engine: Engine, *, coded: bool) -> Iterator[tuple[str, str]]:
    """Yield each attempt's id and a digest of all its columns, its learner by their code."""
    columns = [
        sa.cast(column, sa.Text).label(column.name)
        if isinstance(column.type, sa.JSON) else column
        for column in _ATTEMPTS.columns
    ]  # fmt: skip
    asked = sa.select(*columns, _LEARNERS.c.code).join(
        _LEARNERS, _LEARNERS.c.id == _ATTEMPTS.c.learner_id
    )
    with engine.connect() as connection:
        for row in connection.execute(asked.where(_LEARNERS.c.code.is_not(None))):
            said = row._asdict()
            code = said.pop("code")
            said["learner_id"] = learner_id(code) if coded else said["learner_id"]
            said["handling"] = bytes(said["handling"])
            yield row.id, hashlib.sha256(repr(sorted(said.items())).encode("utf-8")).hexdigest()


class Counter:
    """Counts the attempts that the server has, for as long as it answers."""

    def __init__(self, cluster: Cluster) -> None:
        self._cluster = cluster
        self._connection: psycopg.Connection[tuple[object, ...]] | None = None

    def count(self) -> int | None:
        """How many there are; None while the server has gone."""
        try:
            if self._connection is None or self._connection.closed:
                self._connection = self._cluster.connect("school")
            row = self._connection.execute("SELECT count(*) FROM attempts").fetchone()
        except psycopg.Error:
            self._connection = None
            return None
        return int(str(row[0])) if row else None


def push_through_kills(cluster: Cluster, paths: list[Path], total: int) -> None:
    """Have all stations push, and kill the server when it has a third, and two thirds, of it."""
    spawn = multiprocessing.get_context("spawn")
    end, address = spawn.Event(), cluster.address("school", "bench")
    share = -(-len(paths) // PROCESSES)
    parts = [paths[at : at + share] for at in range(0, len(paths), share)]
    began = time.monotonic()
    workers = [
        spawn.Process(target=run_stations, args=(part, n * share, address, n, end))
        for n, part in enumerate(parts)
    ]
    for worker in workers:
        worker.start()
    down, kills = 0.0, [total // 3, 2 * total // 3]
    counter = Counter(cluster)
    while (there := counter.count()) != total:
        if there is not None and kills and there >= kills[0]:
            kills.pop(0)
            cluster.kill()
            gone = time.monotonic()
            print(f"  killed with about {there} attempts there")
            time.sleep(1.0)
            cluster.start()
            down += time.monotonic() - gone
        if time.monotonic() > began + LONGEST_S or not all(w.is_alive() for w in workers):
            print(f"  gave up: {there} of {total} there")
            break
        time.sleep(0.05)
    took = time.monotonic() - began
    end.set()
    for worker in workers:
        worker.join()
    ended = all(worker.exitcode == 0 for worker in workers)
    print(f"  {took:.1f} s, {down:.1f} of them without a server; workers ended well: {ended}")
    if kills:
        raise SystemExit("the server wasn't killed twice: more attempts are needed")


def undisturbed(cluster: Cluster, paths: list[Path]) -> str:
    """Push logbooks one after the other to another database, beside plain `executemany`."""
    cluster.execute("postgres", ["CREATE DATABASE other"])
    make_tables(server_engine(cluster.address("other")))
    pushed, began = 0, time.monotonic()
    for path in paths:
        with engine_of(path, pooled=False).begin() as connection:
            connection.exec_driver_sql("DELETE FROM sent")
        pushed += push_once(path, cluster.address("other", "bench")).attempts
    took = time.monotonic() - began
    with cluster.connect("other") as connection:
        names = ", ".join(column.name for column in _ATTEMPTS.columns)
        texts = ", ".join(
            f"{c.name}::text" if isinstance(c.type, sa.JSON) else c.name for c in _ATTEMPTS.columns
        )
        rows = connection.execute(f"SELECT {texts} FROM attempts".encode()).fetchall()
        connection.execute("CREATE TABLE plain (LIKE attempts INCLUDING ALL)")
        marks = ", ".join(["%s"] * len(_ATTEMPTS.columns))
        began = time.monotonic()
        with connection.cursor() as cursor:
            for start in range(0, len(rows), 250):
                with connection.transaction():
                    cursor.executemany(
                        f"INSERT INTO plain ({names}) VALUES ({marks})".encode(),
                        rows[start : start + 250],
                    )
        plain = time.monotonic() - began
    assert pushed == len(rows)
    return (
        f"{pushed} attempts undisturbed, read from {len(paths)} logbooks, pushed and noted:"
        f" {took / plain:.1f} times plain executemany of the same rows"
        f" ({took:.2f} s, {plain:.2f} s)"
    )


def all_hold(checks: Iterable[tuple[str, bool]], what: str) -> bool:
    """Print what doesn't hold, and how many do."""
    found = list(checks)
    for name, holds in found:
        if not holds:
            print(f"  NOT SO: {name}")
    print(f"{what}: {sum(holds for _, holds in found)} of {len(found)} hold")
    return all(holds for _, holds in found)


def compared(cluster: Cluster, paths: list[Path], total: int) -> Iterator[tuple[str, bool]]:
    """Yield whether the server has what the stations have."""
    kept = [one for path in paths for one in digests(engine_of(path, pooled=False), coded=True)]
    there = list(digests(server_engine(cluster.address("school")), coded=False))
    yield f"the stations kept {total}", len(dict(kept)) == len(kept) == total
    yield "every attempt is there", dict(kept).keys() <= dict(there).keys()
    yield "none is there twice, and nothing else is", len(there) == total
    yield "each is equal in every column", dict(kept) == dict(there)
    with cluster.connect("school") as connection:
        asked = "SELECT count(*), count(code), count(*) FILTER (WHERE name <> code) FROM learners"
        yield (
            "learners: one a station, by codes alone",
            connection.execute(asked).fetchall() == [(len(paths), len(paths), 0)],
        )
        for table, rows in (("coupons", None), ("tallies", 0), ("sent", 0), ("members", 0)):
            row = connection.execute(f"SELECT count(*) FROM {table}".encode()).fetchone()
            number = int(str(row[0])) if row else -1
            yield f"{table}: {number}", number > 0 if rows is None else number == rows


def main(stations: int, attempts: int) -> int:
    """Do all of it; return the exit code."""
    each = attempts // stations
    in_paper = sum(item.answered for item in paper_of("x").items)
    total = stations * each
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        # The server's user has to get through to its own folder.
        folder.chmod(0o755)
        cluster = Cluster(folder / "server")
        cluster.start()
        try:
            make_school(cluster)
            good = all_hold(tables(cluster), "tables")
            good &= all_hold(rights(cluster), "rights")
            good &= all_hold(troubles(cluster), "troubles told")
            paths = make_logbooks(folder, stations, each - LIVE - in_paper)
            print(f"{stations} stations, {total} attempts, {stations} papers among them:")
            push_through_kills(cluster, paths, total)
            good &= all_hold(compared(cluster, paths, total), "after two kills")
            good &= all_hold(whole_class(cluster, paths), "a class read from the server")
            print(undisturbed(cluster, paths[:UNDISTURBED]))
        finally:
            cluster.stop()
    return 0 if good else 1


if __name__ == "__main__":
    given = [int(word) for word in sys.argv[1:3]]
    sys.exit(main(*(given + [STATIONS, ATTEMPTS][len(given) :])))
