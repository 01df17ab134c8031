"""Where a server is, what its tables and roles are made by, and what the commands say of it."""

from __future__ import annotations

import os
import re
import shutil
import stat
import sys
from pathlib import Path

import pytest

from tests.trainer.logbook.entries import entry_of
from tests.trainer.school.stations import Pretender, rows_of, station_of
from trainer.commands import run
from trainer.late_commands import run_command
from trainer.logbook.opening import HEAD
from trainer.logbook.schema import Base
from trainer.school import serving
from trainer.school.address import Address, address_of, keep_password, password_file
from trainer.school.outbox import Outbox
from trainer.school.pushing import push_once
from trainer.school.server import server_engine
from trainer.school.tables import INSTRUCTORS, PUSHED, STATIONS, tables_as_sql
from trainer.school.trouble import SchoolError

GOLDEN = Path(__file__).parents[1] / "logbook" / "golden" / "0001.sqlite3"
NOBODY = "postgresql://bench@127.0.0.1:1/school"

# --- addresses and passwords --------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "url", "password"),
    [
        ("postgresql://bench@db/school", "postgresql://bench@db/school", None),
        (" postgres://bench:s%40cret@db:5433/school ", "postgresql://bench@db:5433/school",
         "s@cret"),
        ("postgresql+psycopg://db/school?sslmode=verify-full",
         "postgresql://db/school?sslmode=verify-full", None),
        ("postgresql://bench@db/school?password=secret&sslmode=require",
         "postgresql://bench@db/school?sslmode=require", "secret"),
        ("postgresql://bench:@db/school", "postgresql://bench@db/school", None),
        ("postgresql:///school?host=/run/pg", "postgresql:///school?host=%2Frun%2Fpg",
         None),
    ],
)  # fmt: skip
def test_an_address_is_kept_without_its_password(
    typed: str, url: str, password: str | None
) -> None:
    address = address_of(typed)
    assert (address.url, address.password) == (url, password)
    assert address.to.password == password
    assert address_of(address.url) == Address(url)
    assert "cret" not in address.url


@pytest.mark.parametrize(
    "typed",
    ["", "db", "sqlite:///logbook.sqlite3", "mysql://bench:hidden@db/school", "postgresql://",
     "postgresql://bench:hidden@db:port/school", "http://db/school"],
)  # fmt: skip
def test_what_is_no_address_is_refused_and_no_password_repeated(typed: str) -> None:
    with pytest.raises(SchoolError) as caught:
        address_of(typed)
    assert caught.value.trouble == "address"
    assert "hidden" not in str(caught.value)


def test_a_password_goes_where_postgresql_looks_for_it(tmp_path: Path) -> None:
    file = tmp_path / "folder" / "pgpass"
    keep_password(Address("postgresql://bench@db:5433/school", "se:c\\ret"), file)
    keep_password(Address("postgresql://ann@db/school", "other"), file)
    keep_password(Address("postgresql://bench@db:5433/school", "newer"), file)
    assert file.read_text(encoding="utf-8").splitlines() == [
        "db:5433:school:bench:newer", "db:5432:school:ann:other",
    ]  # fmt: skip
    if os.name == "posix":
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
    keep_password(Address("postgresql:///school?host=/run/pg", "a:b\\c"), file)
    assert file.read_text(encoding="utf-8").splitlines()[0] == "/run/pg:5432:school:*:a\\:b\\\\c"
    for password in (None, "", "a\nb"):
        with pytest.raises(ValueError, match="no password"):
            keep_password(Address("postgresql://db/school", password), file)


def test_the_file_of_passwords_is_the_one_that_postgresql_reads(tmp_path: Path) -> None:
    assert password_file({"PGPASSFILE": str(tmp_path / "mine")}, "win32") == tmp_path / "mine"
    assert password_file({}, "linux") == Path.home() / ".pgpass"
    windows = password_file({"APPDATA": str(tmp_path)}, "win32")
    assert windows == tmp_path / "postgresql" / "pgpass.conf"


def test_without_what_speaks_to_it_the_trouble_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "psycopg", None)
    with pytest.raises(SchoolError) as caught:
        server_engine(Address(NOBODY))
    assert caught.value.trouble == "driver"
    assert "toe-and-throat[school]" in str(caught.value)


# --- tables and roles ---------------------------------------------------------------------------


def test_the_printed_sql_makes_every_table_once_and_all_or_nothing() -> None:
    text = tables_as_sql()
    assert text.startswith("BEGIN;")
    assert text.endswith("COMMIT;\n")
    assert (text.count("BEGIN;"), text.count("COMMIT;")) == (1, 1)
    made = re.findall(r"^CREATE TABLE (\w+)", text, re.MULTILINE)
    assert sorted(made) == sorted([*Base.metadata.tables, "alembic_version"])
    assert f"'toe-and-throat {HEAD}'" in text


def test_a_station_may_add_and_nothing_else() -> None:
    granted = re.findall(r"^GRANT (\w+) ON ([\w, ]+) TO (\w+);", tables_as_sql(), re.MULTILINE)
    of_stations = [(right, set(tables.split(", "))) for right, tables, role in granted
                   if role == STATIONS]  # fmt: skip
    assert of_stations == [("INSERT", set(PUSHED))]
    rights = {right for right, _, role in granted if role == INSTRUCTORS}
    assert rights == {"SELECT", "INSERT", "DELETE"}
    assert set(PUSHED) < set(Base.metadata.tables)


# --- commands -----------------------------------------------------------------------------------


def said_by(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = run_command(words)
    out, err = capsys.readouterr()
    return code, out, err


def test_school_prints_its_sql_and_connects_to_nothing(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert said_by(capsys, "school", "--print-sql") == (0, tables_as_sql(), "")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("school", "sqlite:///x"), "no address of a PostgreSQL server"),
        (("school", NOBODY), "can't be reached"),
        (("school", "--print-sql", "--erase", "HK4-7TQ"), "erases nobody"),
        (("push", "--logbook", "nowhere.sqlite3", "--server", NOBODY), "there is no logbook"),
        (("push", "--logbook", str(GOLDEN.parent / "0000"), "--server", NOBODY), "no logbook"),
    ],
)
def test_what_can_t_be_done_is_one_line_and_exit_2(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], told: str
) -> None:
    code, out, err = said_by(capsys, *words)
    assert (code, out) == (2, "")
    assert told in err
    assert err.count("\n") == 1
    assert "Traceback" not in err


def test_push_without_a_server_says_where_one_is_named(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "HOME", "APPDATA"):
        monkeypatch.setenv(name, str(tmp_path))
    code, out, err = said_by(capsys, "push")
    assert (code, out) == (2, "")
    assert "--server URL" in err


def test_push_brings_an_old_logbook_up_and_says_what_was_sent(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    server = Pretender(tmp_path / "server.sqlite3")
    monkeypatch.setattr(
        serving, "push_once", lambda path, address: push_once(path, address, server.connect)
    )
    old = Path(shutil.copyfile(GOLDEN, tmp_path / "old.sqlite3"))
    words = ("push", "--logbook", str(old), "--server", NOBODY)
    assert said_by(capsys, *words) == (0, "0 attempts, 0 papers, 0 overrides sent\n", "")
    assert rows_of(old, "SELECT version_num FROM alembic_version") == [(HEAD,)]

    path = tmp_path / "station.sqlite3"
    station_of(path, "k-1", range(3)).close()
    words = ("push", "--logbook", str(path), "--server", NOBODY)
    assert said_by(capsys, *words) == (0, "3 attempts, 0 papers, 0 overrides sent\n", "")
    assert said_by(capsys, *words)[1].startswith("0 attempts")

    path.write_bytes(b"SQLite format 3\0" + b"\7" * 4000)
    code, _, err = said_by(capsys, *words)
    assert (code, err) == (2, f"{path}: it is damaged, or no logbook\n")


def test_commands_of_a_school_are_named_even_where_nothing_does_them(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["push"]) == 2
    assert "no server can be spoken to" in capsys.readouterr().err


def test_a_logbook_may_be_put_back_while_an_outbox_is_open(tmp_path: Path) -> None:
    path, other = tmp_path / "one.sqlite3", tmp_path / "two.sqlite3"
    station_of(path, "k-1", range(3)).close()
    logbook = station_of(other, "k-1", range(5))
    logbook.add(logbook.learners()[0].id, entry_of(9))
    logbook.close()
    outbox = Outbox(path)
    assert outbox.waiting().attempts == 3
    other.replace(path)
    assert outbox.waiting().attempts == 6
    outbox.close()


@pytest.mark.parametrize(
    ("before", "told"),
    [
        (None, "tables and roles made"),
        ("0001", f"brought up from 0001 to {HEAD}"),
        (HEAD, "nothing to do"),
    ],
)
def test_what_was_made_is_said_and_what_was_there(
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    before: str | None,
    told: str,
) -> None:
    monkeypatch.setattr(serving, "make_tables", lambda _: before)
    code, out, err = said_by(capsys, "school", "postgresql://ann:secret@db/school")
    assert (code, err) == (0, "")
    assert told in out
    assert STATIONS in out
    assert "secret" not in out
