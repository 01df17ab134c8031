"""Pushing from a station's logbook, to a server that fails in every way one can.

The server here is another SQLite file with the same tables, since the machine may have no
PostgreSQL; `tests.measure.stations` does the same with a real one, killed twice.
"""

from __future__ import annotations

import random
import shutil
import threading
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import psycopg
import pytest
import sqlalchemy as sa
from sqlalchemy.engine import Connection

from exercises.sitting.codes import learner_id
from exercises.sitting.marking import Override
from tests.trainer.logbook.entries import entry_of
from tests.trainer.school.papers import BEGIN, paper_of
from tests.trainer.school.stations import ADDRESS, Pretender, rows_of, station_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.opening import LogbookError
from trainer.logbook.store import Logbook
from trainer.school.erasing import erase_there
from trainer.school.merging import merge
from trainer.school.outbox import Outbox, Waiting
from trainer.school.overriding import override
from trainer.school.pushing import Pushed, Pusher, PushState, pause_after, push, push_once
from trainer.school.reading import ClassBook
from trainer.school.trouble import SchoolError


@pytest.fixture
def server(tmp_path: Path) -> Pretender:
    return Pretender(tmp_path / "server.sqlite3")


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A station's logbook of three batches, made once."""
    path = tmp_path_factory.mktemp("whole") / "station.sqlite3"
    station_of(path, "k-01", range(600)).close()
    return path


@pytest.fixture
def station(tmp_path: Path, whole: Path) -> Iterator[Logbook]:
    path = Path(shutil.copyfile(whole, tmp_path / "station.sqlite3"))
    with closing(Logbook.open(path, bring_up_to_date)) as logbook:
        yield logbook


def sent(station: Logbook, server: Pretender) -> Pushed:
    return push_once(station.path, ADDRESS, server.connect)


def waiting(station: Logbook) -> Waiting:
    with closing(Outbox(station.path)) as outbox:
        return outbox.waiting()


def lost() -> psycopg.OperationalError:
    return psycopg.OperationalError("server closed the connection unexpectedly")


class Fails:
    """Makes a server fail at its nth statement of a kind."""

    def __init__(self, at: int, kind: str, error: Exception, *, times: int = 1) -> None:
        self.at, self.kind, self.error, self.times = at, kind, error, times
        self.heard = 0

    def __call__(self, statement: str) -> None:
        if statement.startswith(self.kind):
            self.heard += 1
            if self.at <= self.heard < self.at + self.times:
                raise sa.exc.OperationalError(statement, {}, self.error)


# --- what goes, and what doesn't ----------------------------------------------------------------


def test_every_attempt_of_whoever_has_a_code_is_there_once(
    station: Logbook, server: Pretender
) -> None:
    assert waiting(station) == Waiting(attempts=600)
    assert sent(station, server).attempts == 600
    assert not waiting(station)
    # What came is what was kept, but for whose it is: a code, the same on every machine.
    asked = "SELECT * FROM attempts {} ORDER BY id"
    here = rows_of(station.path, asked.format("WHERE id < '00000000-0000-4000-8000-000000900000'"))
    there = rows_of(server.path, asked.format(""))
    own = {row[1] for row in here}
    assert len(own) == 1
    assert [row[2:] for row in here] == [row[2:] for row in there]
    assert {row[1] for row in there} == {learner_id("k-01")} != own
    assert sent(station, server) == Pushed()
    assert rows_of(server.path, "SELECT count(*) FROM attempts") == [(600,)]


def test_names_and_tallies_and_who_has_no_code_stay(station: Logbook, server: Pretender) -> None:
    sent(station, server)
    assert rows_of(server.path, "SELECT name, code FROM learners") == [("k-01", "k-01")]
    for table in ("tallies", "sent", "groups", "members"):
        assert rows_of(server.path, f"SELECT count(*) FROM {table}") == [(0,)], table
    assert b"Name of" not in server.path.read_bytes()
    assert b"Nobody at" not in server.path.read_bytes()


def test_one_learner_at_two_stations_is_one(
    station: Logbook, server: Pretender, tmp_path: Path
) -> None:
    with closing(station_of(tmp_path / "other.sqlite3", " K-01", range(600, 700))) as other:
        sent(station, server)
        sent(other, server)
    assert rows_of(server.path, "SELECT count(*) FROM learners") == [(1,)]
    assert rows_of(server.path, "SELECT count(DISTINCT learner_id), count(*) FROM attempts") == [
        (1, 700)
    ]


def test_a_code_given_later_sends_what_was_done_before_it(
    station: Logbook, server: Pretender
) -> None:
    with closing(Outbox(station.path)) as outbox, server.connect(ADDRESS).connect() as connection:
        assert push(outbox, connection).attempts == 600
        assert not outbox.waiting()
        with station.writing() as writing:
            writing.execute(sa.text("UPDATE learners SET code = 'k-02' WHERE code IS NULL"))
        assert outbox.waiting() == Waiting(attempts=1)
        assert push(outbox, connection).attempts == 1
    assert rows_of(server.path, "SELECT code FROM learners ORDER BY code") == [("k-01",), ("k-02",)]


def test_what_is_settled_isn_t_looked_through_but_now_and_then_all_is(station: Logbook) -> None:
    with closing(Outbox(station.path)) as outbox:
        outbox.settle(outbox.newest())
        assert not outbox.waiting()
        assert outbox.attempts(10) == []
        for _ in range(40):
            if outbox.waiting():
                break
        assert outbox.waiting() == Waiting(attempts=600)


def test_a_paper_goes_whole_or_not_at_all(station: Logbook, server: Pretender) -> None:
    first, second = paper_of("k-01", 1), paper_of("k-01", 2)
    for paper in (first, second, paper_of("k-09")):
        merge(station, paper)
    assert waiting(station) == Waiting(attempts=615, papers=3)

    # The server dies as the answers of the papers come.
    server.before = Fails(1, "INSERT INTO attempts", lost())
    with pytest.raises(SchoolError) as caught:
        sent(station, server)
    assert caught.value.trouble == "unreachable"
    assert rows_of(server.path, "SELECT count(*) FROM sat") == [(0,)]
    assert sent(station, server) == Pushed(attempts=615, papers=3)
    with (
        closing(ClassBook(server.connect(ADDRESS))) as book,
        closing(ClassBook.of_logbook(station.path)) as own,
    ):
        assert book.result(first.id) == own.result(first.id)
        assert [paper.items for paper in book.papers()] == [paper.items for paper in own.papers()]
        assert [paper.clash for paper in book.papers()] == [True, False, True]
        assert [paper.name for paper in book.papers()] == ["k-01", "k-09", "k-01"]
        assert book.sittings() == own.sittings()


def test_overrides_go_after_their_papers(station: Logbook, server: Pretender) -> None:
    paper = paper_of("k-01")
    merge(station, paper)
    said = Override(6, "score", 1.0, "the power went", "instructor 2", BEGIN)
    with closing(ClassBook.of_logbook(station.path)) as own:
        override(own, paper.id, said)
    # Who may add rows of a station only, may add no override; nothing else waits for that.
    denied = psycopg.errors.InsufficientPrivilege("permission denied for table overrides")
    server.before = Fails(1, "INSERT INTO overrides", denied, times=9)
    done = sent(station, server)
    assert (done.attempts, done.papers, done.overrides) == (605, 1, 0)
    assert [error.trouble for error in done.refused] == ["permission"]
    assert waiting(station) == Waiting(overrides=1)
    server.before = lambda _: None
    assert sent(station, server) == Pushed(overrides=1)
    with closing(ClassBook(server.connect(ADDRESS))) as book:
        assert [kept.override for kept in book.overrides()] == [said]


def test_who_is_erased_there_is_not_sent_again(
    station: Logbook, server: Pretender, tmp_path: Path
) -> None:
    merge(station, paper_of("k-01"))
    with closing(station_of(tmp_path / "other.sqlite3", "k-02", range(600, 610))) as other:
        sent(other, server)
    sent(station, server)
    with closing(ClassBook(server.connect(ADDRESS))) as book:
        assert erase_there(book, ["K-01", "nobody"]) == 1
        assert [one.code for one in book.learners()] == ["k-02"]
        assert (book.papers(), book.sittings()) == ([], [])
    assert sent(station, server) == Pushed()
    assert rows_of(server.path, "SELECT count(*) FROM attempts") == [(10,)]
    assert rows_of(server.path, "SELECT count(*) FROM coupons") == [(10,)]
    assert station.count() == 606


# --- what goes wrong ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kind", "at"),
    [("INSERT INTO coupons", 1), ("INSERT INTO attempts", 1), ("INSERT INTO attempts", 2),
     ("INSERT INTO attempts", 3), ("COMMIT", 1), ("COMMIT", 2), ("COMMIT", 3)],
)  # fmt: skip
def test_a_server_that_dies_at_any_moment_loses_and_doubles_nothing(
    station: Logbook, server: Pretender, kind: str, at: int
) -> None:
    server.before = Fails(at, kind, lost())
    with pytest.raises(SchoolError) as caught:
        sent(station, server)
    assert caught.value.trouble == "unreachable"
    assert "server closed the connection" in caught.value.detail
    left = waiting(station).attempts
    assert left > 0
    assert rows_of(server.path, "SELECT count(*) FROM attempts") == [(600 - left,)]
    assert sent(station, server).attempts == left
    assert rows_of(server.path, "SELECT count(*) FROM attempts") == [(600,)]


def test_an_acknowledgement_that_is_lost_doubles_nothing(
    station: Logbook, server: Pretender, monkeypatch: pytest.MonkeyPatch
) -> None:
    def dies(self: Outbox, parcels: Any) -> None:
        # The server has them; the station never hears.
        raise SchoolError("unreachable", "the line broke")

    monkeypatch.setattr(Outbox, "note", dies)
    for _ in range(3):
        with pytest.raises(SchoolError):
            sent(station, server)
    monkeypatch.undo()
    assert rows_of(server.path, "SELECT count(*) FROM coupons")[0][0] == 40
    assert sent(station, server).attempts == 600
    assert rows_of(server.path, "SELECT count(*) FROM attempts") == [(600,)]


def test_a_row_that_the_server_won_t_have_holds_up_no_other(
    station: Logbook, server: Pretender
) -> None:
    with server.connect(ADDRESS).begin() as made:
        made.exec_driver_sql(
            "CREATE TRIGGER no BEFORE INSERT ON attempts WHEN NEW.id LIKE '%000000000007'"
            " BEGIN SELECT RAISE(ABORT, 'CHECK constraint failed: no'); END"
        )
    # What SQLite raises of its own has no SQLSTATE; PostgreSQL's has.
    sqlstate = psycopg.errors.CheckViolation("violates check constraint")

    def as_postgresql(context: Any) -> None:
        context.original_exception.sqlstate = sqlstate.sqlstate

    connect = server.connect

    def with_states(address: Any) -> Any:
        engine = connect(address)
        sa.event.listen(engine, "handle_error", as_postgresql)
        return engine

    done = push_once(station.path, ADDRESS, with_states)
    assert done.attempts == 599
    assert [error.trouble for error in done.refused] == ["row"]
    assert waiting(station) == Waiting(attempts=1)


def test_a_server_of_another_version_gets_nothing(station: Logbook, server: Pretender) -> None:
    for version, trouble in (("toe-and-throat 0001", "older"), ("toe-and-throat 9001", "newer"),
                             (None, "tables"), ("somebody else's", "tables")):  # fmt: skip
        server.version = version
        with pytest.raises(SchoolError) as caught:
            sent(station, server)
        assert caught.value.trouble == trouble
    assert rows_of(server.path, "SELECT count(*) FROM learners") == [(0,)]
    assert waiting(station) == Waiting(attempts=600)


def test_stopping_ends_between_batches(station: Logbook, server: Pretender) -> None:
    asked: list[int] = []

    def stopped() -> bool:
        asked.append(1)
        return len(asked) > 1

    with closing(Outbox(station.path)) as outbox, server.connect(ADDRESS).connect() as connection:
        done = push(outbox, connection, stopped)
    assert 0 < done.attempts < 600
    assert waiting(station).attempts == 600 - done.attempts


# --- the thread ---------------------------------------------------------------------------------


class Watched:
    """A pusher whose states are waited for, and never slept for."""

    def __init__(self, station: Logbook, server: Pretender, **how: Any) -> None:
        self.ring = threading.Condition()
        self.states: list[PushState] = []
        self.pusher = Pusher(
            station.path, ADDRESS, self.hear, rng=random.Random(1),
            connect=how.pop("connect", server.connect), **how,
        )  # fmt: skip

    def hear(self) -> None:
        with self.ring:
            self.states.append(self.pusher.state)
            self.ring.notify_all()

    def until(self, what: Any) -> PushState:
        with self.ring:
            assert self.ring.wait_for(
                lambda: any(what(state) for state in self.states), timeout=30
            ), self.states
            found = next(state for state in reversed(self.states) if what(state))
            self.states.clear()
            return found


def is_idle(state: PushState) -> bool:
    return not state.busy and state.next_s > 0


def test_the_thread_pushes_what_waits_and_what_is_kept_later(
    station: Logbook, server: Pretender
) -> None:
    watched = Watched(station, server, every_s=3600.0)
    assert watched.pusher.state == PushState()
    watched.pusher.start()
    state = watched.until(lambda s: is_idle(s) and s.waiting == Waiting())
    assert state.last is not None
    assert state.trouble is None
    before = server.connected
    station.add(station.learners()[0].id, entry_of(700))
    watched.pusher.nudge()
    watched.until(lambda s: s.last is not None and s.last > state.last and not s.waiting)
    # Where nothing waits nobody is called.
    assert server.connected == before + 1
    watched.pusher.nudge()
    watched.pusher.stop(30.0)
    assert server.connected == before + 1
    assert not watched.pusher._thread.is_alive()
    assert rows_of(server.path, "SELECT count(*) FROM attempts") == [(601,)]


def test_in_trouble_it_waits_longer_each_time_and_tries_when_asked(
    station: Logbook, server: Pretender
) -> None:
    server.before = Fails(1, "SELECT obj_description", lost(), times=3)
    watched = Watched(station, server, every_s=3600.0)
    # The pauses are passed over by asking.
    watched.pusher.start()
    pauses: list[float] = []
    for _ in range(3):
        state = watched.until(lambda s: is_idle(s) and s.trouble is not None)
        pauses.append(state.next_s)
        assert isinstance(state.trouble, SchoolError)
        assert (state.trouble.trouble, state.waiting) == ("unreachable", Waiting(600))
        # What is kept meanwhile doesn't make it hammer at a dead server.
        watched.pusher.nudge()
        watched.pusher.retry()
    state = watched.until(lambda s: is_idle(s) and not s.waiting)
    assert state.trouble is None
    assert 1 <= pauses[0] <= 2 <= pauses[1] <= 4 <= pauses[2] <= 8
    watched.pusher.stop(30.0)


def test_it_ends_at_once_even_in_a_long_pause(station: Logbook, server: Pretender) -> None:
    server.version = None
    watched = Watched(station, server)
    watched.pusher.start()
    watched.until(lambda s: is_idle(s) and s.trouble is not None)
    watched.pusher.stop(30.0)
    assert not watched.pusher._thread.is_alive()
    never = Watched(station, server).pusher
    never.stop()


def test_a_server_that_never_answers_holds_up_nobody(station: Logbook, server: Pretender) -> None:
    answers, called = threading.Event(), threading.Event()

    def connect(_: object) -> Any:
        called.set()
        answers.wait(30)
        raise SchoolError("timeout")

    watched = Watched(station, server, connect=connect)
    watched.pusher.start()
    assert called.wait(30)
    assert watched.pusher.state.busy
    # Calls are kept as ever meanwhile, and the program can end.
    station.add(station.learners()[0].id, entry_of(701))
    watched.pusher.nudge()
    watched.pusher.stop(0.01)
    assert watched.pusher._thread.daemon
    answers.set()
    watched.pusher._thread.join(30)
    assert waiting(station).attempts == 601


def test_a_logbook_that_can_t_be_read_is_told_as_such(
    station: Logbook, server: Pretender, monkeypatch: pytest.MonkeyPatch
) -> None:
    def locked(self: Outbox) -> Waiting:
        raise LogbookError("locked", self.path)

    monkeypatch.setattr(Outbox, "waiting", locked)
    watched = Watched(station, server)
    watched.pusher.start()
    state = watched.until(lambda s: is_idle(s) and s.trouble is not None)
    assert isinstance(state.trouble, LogbookError)
    watched.pusher.stop(30.0)


@pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")
def test_what_nobody_foresaw_is_shown_and_reported(
    station: Logbook, server: Pretender, monkeypatch: pytest.MonkeyPatch
) -> None:
    def breaks(self: Outbox) -> Waiting:
        raise RuntimeError("ours")

    monkeypatch.setattr(Outbox, "waiting", breaks)
    watched = Watched(station, server)
    watched.pusher.start()
    state = watched.until(lambda s: s.trouble is not None)
    assert isinstance(state.trouble, SchoolError)
    assert (state.trouble.trouble, state.busy) == ("other", False)
    watched.pusher._thread.join(30)


def test_pauses_grow_and_stay_apart() -> None:
    pauses = [[pause_after(n, random.Random(seed)) for n in range(1, 40)] for seed in range(40)]
    for each in pauses:
        assert all(0 < pause <= 300 for pause in each)
        assert each[-1] >= 150
    assert len({each[0] for each in pauses}) == 40


def test_a_connection_is_let_go_of_whatever_happens(station: Logbook, server: Pretender) -> None:
    opened: list[Connection] = []
    closed: list[Connection] = []
    connect = server.connect

    def counting(address: Any) -> Any:
        engine = connect(address)
        sa.event.listen(engine, "engine_connect", opened.append)
        sa.event.listen(engine.pool, "close", lambda c, _: closed.append(c))
        return engine

    push_once(station.path, ADDRESS, counting)
    server.before = Fails(1, "SELECT", lost())
    with pytest.raises(SchoolError):
        push_once(station.path, ADDRESS, counting)
    assert len(opened) == len(closed) == 2
