"""A station's attempts pushed to the school's server: a lost network delays, and never loses.

What is pushed was kept first, in the station's own logbook; ids are made where a row is made, and
a row that the server has already is passed over there (``ON CONFLICT DO NOTHING``, with no target
named, so that the right to add rows is all it takes). So whatever is sent twice is there once, even
where the server died between keeping it and saying so.
"""

from __future__ import annotations

import random
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from itertools import groupby
from pathlib import Path
from typing import Final

import sqlalchemy as sa
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import Connection, Engine

from trainer.logbook.opening import LogbookError
from trainer.school.address import Address
from trainer.school.outbox import Outbox, Parcel, Waiting
from trainer.school.server import check_version, server_engine
from trainer.school.trouble import SchoolError, speaking_to

__all__ = ["Push", "PushState", "Pushed", "Pusher", "pause_after", "push", "push_once"]

_BATCH: Final = 250
"""Attempts in one transaction: so many are sent again where the line breaks in between."""

_PAPERS: Final = 8
_SHORTEST_S: Final = 2.0
_LONGEST_S: Final = 300.0

Stopped = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Pushed:
    """What one push came to.

    Parameters
    ----------
    attempts, papers, overrides
        How many the server acknowledged.
    refused
        What it said of rows that it won't have; they wait, and hold up no others.
    """

    attempts: int = 0
    papers: int = 0
    overrides: int = 0
    refused: tuple[SchoolError, ...] = ()


@dataclass(frozen=True, slots=True)
class PushState:
    """How pushing stands, for a screen to show.

    Parameters
    ----------
    waiting
        What the server doesn't have yet; None until it was counted.
    last
        When the server last acknowledged something.
    trouble
        What keeps the rest; None if nothing does.
    busy
        Whether it is being tried now.
    next_s
        Seconds from the last try to the next.
    """

    waiting: Waiting | None = None
    last: datetime | None = None
    trouble: SchoolError | LogbookError | None = None
    busy: bool = False
    next_s: float = 0.0


def pause_after(failures: int, rng: random.Random) -> float:
    """Return how many seconds to wait after so many failures in a row.

    Twice as long each time, up to five minutes, and between half of that and all of it: so that
    forty stations don't come back at once when a server does.

    Examples
    --------
    >>> rng = random.Random(1)
    >>> [round(pause_after(n, rng), 1) for n in (1, 2, 3, 12)]
    [1.1, 3.7, 7.1, 188.3]
    """
    longest = min(_LONGEST_S, _SHORTEST_S * 2.0 ** min(failures - 1, 16))
    return longest * rng.uniform(0.5, 1.0)


def push(
    outbox: Outbox,
    connection: Connection,
    stopped: Stopped = lambda: False,
    went_on: Callable[[Pushed], None] = lambda _: None,
) -> Pushed:
    """Send all that waits, in batches; each is noted as sent once the server has it.

    Parameters
    ----------
    outbox
        Of the station.
    connection
        To the server, its tables known to be of this version, no transaction under way.
    stopped
        Asked before each batch: whether to send no more.
    went_on
        Told after each batch what came of all so far.

    Raises
    ------
    SchoolError
        If the server can't take it now; what was acknowledged until then is noted.
    LogbookError
        If the station's own file can't be read or written.
    """
    run, newest = Push(outbox, connection), outbox.newest()
    for parcels in run.batches():
        if stopped():
            return run.done
        run.send(parcels)
        went_on(run.done)
    if not run.done.refused:
        outbox.settle(newest)
    return run.done


@dataclass
class Push:
    """One push under way: what was acknowledged, and what was refused."""

    outbox: Outbox
    connection: Connection
    done: Pushed = field(default_factory=Pushed)
    _there: set[str] = field(default_factory=set)

    def batches(self) -> Iterator[list[Parcel]]:
        """Yield what waits, a batch at a time: papers first, since somebody waits for them."""
        after = ""
        while papers := self.outbox.papers(_PAPERS, after):
            yield papers
            after = papers[-1].marks[0]
        last: tuple[int, str] | None = None
        while attempts := self.outbox.attempts(_BATCH, last):
            yield attempts
            row = attempts[-1].rows[0][1]
            last = (row["order_made"], row["id"])
        after = ""
        while overrides := self.outbox.overrides(_BATCH, after):
            yield overrides
            after = overrides[-1].marks[0]

    def send(self, parcels: Sequence[Parcel]) -> None:
        """Send a batch, and first what it refers to and isn't known to be there."""
        shared = [p for p in self.outbox.shared(parcels) if p.marks[0] not in self._there]
        lacking = self.outbox.unsent(shared)
        # In transactions of their own, and short: many stations add the same coupons at once, and
        # each waits for whoever was first until that one's transaction ends.
        for start in range(0, len(lacking), _BATCH):
            self._put(lacking[start : start + _BATCH])
        self._there.update(parcel.marks[0] for parcel in shared)
        taken = self._put(parcels)
        rows = [row for parcel in taken for row in parcel.rows]
        counts = {name: sum(table.name == name for table, _ in rows) for name in
                  ("attempts", "sat", "overrides")}  # fmt: skip
        self.done = replace(
            self.done,
            attempts=self.done.attempts + counts["attempts"],
            papers=self.done.papers + counts["sat"],
            overrides=self.done.overrides + counts["overrides"],
        )

    def _put(self, parcels: Sequence[Parcel]) -> list[Parcel]:
        """Put parcels on the server and note them; one by one if it won't have all of them."""
        try:
            self._insert(parcels)
            taken = list(parcels)
        except SchoolError as error:
            if error.trouble not in {"row", "permission"} or not parcels:
                raise
            if error.trouble == "permission" and parcels[0].rows[0][0].name != "overrides":
                raise
            taken = self._one_by_one(parcels)
        self.outbox.note(taken)
        return taken

    def _one_by_one(self, parcels: Sequence[Parcel]) -> list[Parcel]:
        taken: list[Parcel] = []
        for parcel in parcels:
            try:
                self._insert([parcel])
                taken.append(parcel)
            except SchoolError as error:
                if error.trouble not in {"row", "permission"}:
                    self.outbox.note(taken)
                    raise
                self.done = replace(self.done, refused=(*self.done.refused, error))
        return taken

    def _insert(self, parcels: Sequence[Parcel]) -> None:
        with speaking_to(), self.connection.begin():
            _add(self.connection, parcels)


def _add(connection: Connection, parcels: Sequence[Parcel]) -> None:
    rows = [row for parcel in parcels for row in parcel.rows]
    # Stable: within a table rows keep their order; tables come in the order of the first parcel's.
    order = {table.name: place for place, (table, _) in reversed(list(enumerate(rows)))}
    for _, of_table in groupby(sorted(rows, key=lambda row: order[row[0].name]),
                               key=lambda row: row[0].name):  # fmt: skip
        some = list(of_table)
        connection.execute(_insertion(connection, some[0][0]), [row for _, row in some])


def _insertion(connection: Connection, table: sa.Table) -> sa.Insert:
    """An insertion that passes over rows that are there, whatever makes them so."""
    if connection.dialect.name == "sqlite":
        return sqlite.insert(table).on_conflict_do_nothing()
    return postgresql.insert(table).on_conflict_do_nothing()


class Pusher:
    """Pushes what waits from a thread of its own, for as long as the program runs.

    It never blocks: `nudge`, `retry` and `state` return at once, and `stop` within a moment. What
    the server doesn't have when the program ends, waits for the next start.

    Parameters
    ----------
    path
        The logbook's file.
    address
        Of the server; its password may be where PostgreSQL's tools look for it.
    changed
        Called whenever `state` is another, in the thread: a signal may cross to the window's.
    every_s
        Seconds between looks at what waits, where nobody nudges.
    rng
        Of the pauses after failures.
    connect
        Makes the server's engine.
    """

    def __init__(
        self,
        path: Path,
        address: Address,
        changed: Callable[[], None] = lambda: None,
        *,
        every_s: float = 60.0,
        rng: random.Random | None = None,
        connect: Callable[[Address], Engine] = server_engine,
    ) -> None:
        self._path = path
        self._address = address
        self._changed = changed
        self._every_s = every_s
        self._rng = rng or random.Random()
        self._connect = connect
        self._state = PushState()
        self._ring = threading.Condition()
        self._asked = False
        self._nudged = True
        self._ended = False
        self._thread = threading.Thread(target=self._run, name="pushing", daemon=True)

    @property
    def state(self) -> PushState:
        """How it stands, replaced whole; may be read from any thread."""
        return self._state

    def start(self) -> None:
        """Begin."""
        self._thread.start()

    def nudge(self) -> None:
        """Something was kept: push it soon, unless the server is known to be in trouble."""
        with self._ring:
            self._nudged = True
            self._ring.notify()

    def retry(self) -> None:
        """Somebody asks: try at once, whatever came of the last try."""
        with self._ring:
            self._asked = True
            self._ring.notify()

    def stop(self, within_s: float = 1.0) -> None:
        """End it; wait for a batch under way, but no longer than that.

        A thread that waits for a dead network then is left behind; it ends with the program, and
        nothing is lost by that: what isn't noted as sent is sent again.
        """
        with self._ring:
            self._ended = True
            self._ring.notify()
        if self._thread.is_alive():
            self._thread.join(within_s)

    def _run(self) -> None:
        try:
            with closing(Outbox(self._path)) as outbox:
                self._push_on(outbox)
        except Exception as error:
            # Ours to mend, and reported as such by whoever hears of it; the screen says so too.
            self._show(replace(self._state, busy=False, trouble=SchoolError("other", repr(error))))
            raise

    def _push_on(self, outbox: Outbox) -> None:
        failures = 0
        while not self._ended:
            with self._ring:
                self._nudged = self._asked = False
            failures = 0 if self._try(outbox) else failures + 1
            pause = pause_after(failures, self._rng) if failures else self._every_s
            self._show(replace(self._state, busy=False, next_s=pause))
            self._sleep(pause, in_trouble=failures > 0)

    def _try(self, outbox: Outbox) -> bool:
        """Push once; return whether nothing is in the way."""
        try:
            waiting = outbox.waiting()
            self._show(replace(self._state, waiting=waiting, busy=bool(waiting)))
            if waiting:
                self._push(outbox, waiting)
            trouble: SchoolError | LogbookError | None = None
        except (SchoolError, LogbookError) as error:
            trouble = error
        self._show(replace(self._state, trouble=trouble))
        return trouble is None

    def _push(self, outbox: Outbox, waiting: Waiting) -> None:
        def went_on(done: Pushed) -> None:
            left = Waiting(
                max(0, waiting.attempts - done.attempts),
                max(0, waiting.papers - done.papers),
                max(0, waiting.overrides - done.overrides),
            )
            now = datetime.now(UTC)
            self._show(replace(self._state, waiting=left, last=now, trouble=None))

        with _connected(self._address, self._connect) as connection:
            done = push(outbox, connection, lambda: self._ended, went_on)
        self._show(replace(self._state, waiting=outbox.waiting()))
        if done.refused:
            raise done.refused[0]

    def _show(self, state: PushState) -> None:
        if state != self._state:
            self._state = state
            self._changed()

    def _sleep(self, seconds: float, *, in_trouble: bool) -> None:
        """Wait until it is time, or until something was kept, or somebody asks."""

        def awake() -> bool:
            return self._ended or self._asked or (self._nudged and not in_trouble)

        with self._ring:
            self._ring.wait_for(awake, timeout=seconds)


def push_once(
    path: Path, address: Address, connect: Callable[[Address], Engine] = server_engine
) -> Pushed:
    """Push all that waits in a logbook's file, once.

    Raises
    ------
    SchoolError, LogbookError
        If the server or the file can't be used; what was acknowledged until then is noted.
    """
    with closing(Outbox(path)) as outbox, _connected(address, connect) as connection:
        return push(outbox, connection)


@contextmanager
def _connected(address: Address, connect: Callable[[Address], Engine]) -> Iterator[Connection]:
    """Open a connection to a server whose tables are of this version."""
    engine = connect(address)
    try:
        with speaking_to(), engine.connect() as connection:
            check_version(connection)
            connection.rollback()
            yield connection
    finally:
        engine.dispose()
