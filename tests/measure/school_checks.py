"""What a school's server allows to whom, and what is said where it refuses: on a real one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import psycopg
import sqlalchemy as sa
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext

from exercises.sitting.marking import Override
from exercises.sitting.result import learner_id
from tests.measure.postgres import PASSWORD, Cluster
from tests.trainer.school.papers import BEGIN
from trainer.logbook.migrating import upgrade
from trainer.logbook.schema import Base
from trainer.school.address import Address
from trainer.school.erasing import erase_there
from trainer.school.overriding import override
from trainer.school.reading import ClassBook
from trainer.school.server import Rights, server_engine, try_server
from trainer.school.tables import INSTRUCTORS, PUSHED, STATIONS, make_tables, tables_as_sql
from trainer.school.trouble import SchoolError

__all__ = ["make_school", "rights", "tables", "troubles", "whole_class"]

EVERY = (*sorted(Base.metadata.tables), "alembic_version")
DENIED = "42501"


def make_school(cluster: Cluster) -> None:
    """Make a school's database, its tables, and logins for stations, an instructor, a stranger."""
    cluster.execute("postgres", ["CREATE DATABASE school"])
    assert make_tables(server_engine(cluster.address("school"))) is None
    logins = {"bench": f"IN ROLE {STATIONS}", "ann": f"IN ROLE {INSTRUCTORS}", "stranger": ""}
    cluster.execute(
        "school",
        [f"CREATE ROLE {name} LOGIN PASSWORD '{PASSWORD}' {role}" for name, role in logins.items()],
    )


def tables(cluster: Cluster) -> Iterator[tuple[str, bool]]:
    """Yield whether tables are the same whichever way they were made."""
    cluster.execute("postgres", ["CREATE DATABASE printed", "CREATE DATABASE older"])
    cluster.execute("printed", [tables_as_sql()])
    older = server_engine(cluster.address("older"))
    with older.begin() as connection:
        upgrade(connection, "0001")
    yield "brought up from 0001", make_tables(older) == "0001"
    yield "made again, nothing to do", make_tables(older) is not None
    for name in ("school", "printed", "older"):
        with server_engine(cluster.address(name)).connect() as connection:
            different = compare_metadata(MigrationContext.configure(connection), Base.metadata)
        try_server(cluster.address(name))
        yield f"tables of {name} are those that the program speaks of", different == []
    with cluster.connect("printed") as one, cluster.connect("school") as other:
        asked = (
            "SELECT grantee, table_name, privilege_type FROM information_schema.role_table_grants"
        )
        same = sorted(one.execute(asked)) == sorted(other.execute(asked))
    yield "the printed SQL gives the same rights", same


def _refused(connection: psycopg.Connection[tuple[object, ...]], statement: str) -> bool:
    try:
        connection.execute(statement.encode("utf-8"))
    except psycopg.Error as error:
        return error.sqlstate == DENIED
    return False


def rights(cluster: Cluster) -> Iterator[tuple[str, bool]]:
    """Yield whether each role may do what it is for, and nothing else."""
    with cluster.connect("school", "bench") as bench:
        for table in EVERY:
            for statement in (f"SELECT * FROM {table}", f"SELECT count(*) FROM {table}",
                              f"DELETE FROM {table}", f"TRUNCATE {table} CASCADE",
                              f"UPDATE {table} SET {_column(table)} = NULL"):  # fmt: skip
                yield f"station: {statement}", _refused(bench, statement)
            if table not in PUSHED:
                yield (
                    f"station: adds no {table}",
                    _refused(bench, f"INSERT INTO {table} DEFAULT VALUES"),
                )
        added = "INSERT INTO sittings VALUES ('s-0', '\"Yard\"', '{}')"
        yield "station: reads nothing back", _refused(bench, f"{added} RETURNING id")
        yield "station: names no target", _refused(bench, f"{added} ON CONFLICT (id) DO NOTHING")
        yield (
            "station: changes nothing by adding",
            _refused(bench, f"{added} ON CONFLICT (id) DO UPDATE SET title = '\"Quay\"'"),
        )
        yield (
            "station: adds nothing out of what is there",
            _refused(bench, "INSERT INTO sittings SELECT * FROM sittings"),
        )
        yield "station: becomes nobody else", _refused(bench, f"SET ROLE {INSTRUCTORS}")
        yield "station: copies nothing out", _refused(bench, "COPY attempts TO STDOUT")
        yield "station: makes no table", _refused(bench, "CREATE TABLE mine (id int)")
    for name, may in (("bench", Rights(True, False)), ("ann", Rights(True, True))):
        told = try_server(cluster.address("school", name))
        yield f"{name} is told what it may do", told == may
    with cluster.connect("school", "stranger") as stranger:
        for table in EVERY:
            yield f"stranger: reads no {table}", _refused(stranger, f"SELECT * FROM {table}")
            yield (
                f"stranger: adds no {table}",
                _refused(stranger, f"INSERT INTO {table} DEFAULT VALUES"),
            )
    with cluster.connect("school", "ann") as ann:
        for table in EVERY:
            yield (
                f"instructor: changes no {table}",
                _refused(ann, f"UPDATE {table} SET {_column(table)} = NULL"),
            )
            yield f"instructor: reads {table}", bool(ann.execute(
                f"SELECT count(*) FROM {table}".encode()
            ).fetchall())  # fmt: skip


def _column(table: str) -> str:
    if table == "alembic_version":
        return "version_num"
    return str(next(iter(Base.metadata.tables[table].columns)).name)


def troubles(cluster: Cluster) -> Iterator[tuple[str, bool]]:
    """Yield whether each thing that can be wrong with a server is told as what it is."""
    good = cluster.address("school", "bench")
    port = f":{cluster.port}/"

    def with_(old: str, new: str) -> Address:
        return replace(good, url=good.url.replace(old, new))

    def also(option: str) -> Address:
        return replace(good, url=f"{good.url}?{option}")

    def told(name: str, what: Callable[[], object]) -> bool:
        try:
            what()
        except SchoolError as error:
            return error.trouble == name
        return False

    cluster.execute("postgres", ["CREATE DATABASE bare", "CREATE ROLE nobody_in_it NOLOGIN"])
    wrong: dict[str, tuple[str, Address]] = {
        "wrong password": ("password", replace(good, password="another")),
        "no password": ("password", Address(good.url + "?passfile=/nowhere")),
        "no such role": ("password", with_("bench@", "nobody@")),
        "a role that can't log in": ("password", with_("bench@", "nobody_in_it@")),
        "no such database": ("database", cluster.address("nowhere", "bench")),
        "no tables": ("tables", cluster.address("bare", "bench")),
        "nobody at the port": ("unreachable", with_(port, ":1/")),
        "no such host": ("unreachable", with_("127.0.0.1", "no.invalid")),
        "no encryption there": ("encryption", also("sslmode=require")),
        "no certificate of ours": ("encryption", also("sslmode=verify-full")),
        "an option that there isn't": ("address", also("sslmod=require")),
    }  # fmt: skip
    for said, (name, address) in wrong.items():
        yield f"{said}: {name}", told(name, lambda address=address: try_server(address))  # type: ignore[misc]
    for said, name in (("toe-and-throat 0001", "older"), ("toe-and-throat 9001", "newer"),
                       ("of somebody", "tables")):  # fmt: skip
        cluster.execute("older", [f"COMMENT ON TABLE alembic_version IS '{said}'"])
        yield f"{said}: {name}", told(name, lambda: try_server(cluster.address("older")))
    cluster.execute("older", ["UPDATE alembic_version SET version_num = '9001'"])
    engine = server_engine(cluster.address("older"))
    yield "newer tables are left alone", told("newer", lambda: make_tables(engine))
    yield (
        "no right to make tables: permission",
        told("permission", lambda: make_tables(server_engine(cluster.address("bare", "stranger")))),
    )
    yield (
        "a login of no role: permission",
        told("permission", lambda: try_server(cluster.address("school", "stranger"))),
    )
    yield (
        "a station's role reads no class: permission",
        told("permission", lambda: ClassBook.of_server(good).papers()),
    )


def whole_class(cluster: Cluster, logbooks: list[Path]) -> Iterator[tuple[str, bool]]:
    """Yield whether an instructor reads from the server what lies in the stations' logbooks."""
    with closing(ClassBook.of_server(cluster.address("school", "ann"))) as book:
        papers = {paper.id: paper for paper in book.papers()}
        calls = book.calls()
        alike = whole = counted = True
        for path in logbooks:
            with closing(ClassBook.of_logbook(path)) as own:
                for paper in own.papers():
                    there = papers.pop(paper.id)
                    alike &= there.items == paper.items and there.plan == paper.plan
                    whole &= book.result(paper.id) == own.result(paper.id)
                    last = paper
                for member in own.learners():
                    if member.code:
                        of = calls[learner_id(member.code)]
                        counted &= of == own.calls([member.id])[member.id]
        yield "every paper is there and alike", alike and not papers
        yield "every paper is there whole", whole
        yield "every learner's calls are there in their order", counted
        (sitting,) = book.sittings()
        yield "the sitting is there once", sitting.papers == len(logbooks)
        said = Override(1, "score", 1.0, "the power went", "ann", BEGIN)
        override(book, last.id, said)
        yield "an override is kept beside", [k.override for k in book.overrides()] == [said]
        before = len(book.learners())
        yield "a station erases nobody", _denied(cluster, last.code)
        yield "an instructor erases who is named", erase_there(book, [last.code, "nobody"]) == 1
        with book.reading() as connection:
            left = sum(
                connection.execute(sa.text(f"SELECT count(*) FROM {table} WHERE {key} = :id"),
                                   {"id": learner_id(last.code)}).scalar_one()
                for table, key in (("learners", "id"), ("sat", "learner_id"),
                                   ("attempts", "learner_id"))
            )  # fmt: skip
        yield (
            "nothing of them is left, and all of the others",
            left == 0 and (len(book.learners()) == before - 1 and not book.overrides()),
        )


def _denied(cluster: Cluster, code: str) -> bool:
    with closing(ClassBook.of_server(cluster.address("school", "bench"))) as book:
        try:
            erase_there(book, [code])
        except SchoolError as error:
            return error.trouble == "permission"
    return False
