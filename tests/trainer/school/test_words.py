"""Every trouble of a server and every fault of a roster has its words, in both languages."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import psycopg
import pytest
import sqlalchemy as sa
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from exercises.file_faults import TrayFault
from trainer.fault_words import CODES, fault_words
from trainer.language import Speech
from trainer.school.people import newcomers
from trainer.school.roster import Group, RosterError, _checked
from trainer.school.trouble import SENTENCES, TROUBLES, SchoolError, explained
from trainer.school.words import school_words

SCHOOL = Path(__file__).resolve().parents[3] / "trainer" / "school"


def stated_codes() -> Iterator[str]:
    for path in SCHOOL.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Fault":
                code = node.args[1]
                assert isinstance(code, ast.Constant), ast.unparse(node)
                yield str(code.value)


def test_every_fault_of_a_roster_has_its_words() -> None:
    found = set(stated_codes())
    assert len(found) > 12
    assert found - set(CODES) == set()


@pytest.fixture
def spanish(qapp: QApplication) -> Iterator[None]:
    speech = Speech(qapp)
    speech.speak("es")
    yield
    speech.speak("en")
    QLocale.setDefault(QLocale("C"))


def faults() -> list[TrayFault]:
    text = "Pia, k-1\nOdo, K-1\nPia, k-3\nUna, AAA-ACN\nIda, \x07\n"
    found = [*newcomers(text)[1], *newcomers("")[1], *newcomers("a\n" * 3000)[1],
             *newcomers(f"{'x' * 300}\nEva, k-9\nBench, k-7", ["Bench"], ["K-9"])[1]]  # fmt: skip
    with pytest.raises(RosterError) as caught:
        _checked(Group("", " ", 0))
    return [TrayFault.of("", fault) for fault in [*found, *caught.value.faults]]


def test_english_words_are_those_of_the_core() -> None:
    for fault in faults():
        assert fault_words(fault) == (fault.text, fault.right), fault.code


def test_spanish_words_are_other_words(spanish: None) -> None:
    for fault in faults():
        wrong, right = fault_words(fault)
        assert wrong != fault.text, fault.code
        assert right != fault.right, fault.code
        assert "{" not in wrong + right
    for trouble in TROUBLES:
        what, then = school_words(SchoolError(trouble, "the server's words"))
        assert "{" not in what + then
        assert then.endswith("the server's words")
        assert what.lower() not in SENTENCES[trouble].lower()


def test_troubles_have_a_sentence_each() -> None:
    assert set(SENTENCES) == set(TROUBLES)
    assert len(set(SENTENCES.values())) == len(TROUBLES)
    assert str(SchoolError("busy", "too  many\n clients")) == (
        "the server is too busy just now, or starting (too many clients)"
    )


@pytest.mark.parametrize(
    ("state", "trouble"),
    [
        (psycopg.errors.InsufficientPrivilege, "permission"),
        (psycopg.errors.InvalidPassword, "password"),
        (psycopg.errors.InvalidCatalogName, "database"),
        (psycopg.errors.UndefinedTable, "tables"),
        (psycopg.errors.UndefinedColumn, "older"),
        (psycopg.errors.DiskFull, "full"),
        (psycopg.errors.TooManyConnections, "busy"),
        (psycopg.errors.CannotConnectNow, "busy"),
        (psycopg.errors.AdminShutdown, "busy"),
        (psycopg.errors.DeadlockDetected, "busy"),
        (psycopg.errors.QueryCanceled, "timeout"),
        (psycopg.errors.LockNotAvailable, "timeout"),
        (psycopg.errors.ConnectionFailure, "unreachable"),
        (psycopg.errors.ForeignKeyViolation, "row"),
        (psycopg.errors.StringDataRightTruncation, "row"),
        (psycopg.errors.SyntaxError, "other"),
    ],
)
def test_what_the_server_answers_is_told_apart(state: type[psycopg.Error], trouble: str) -> None:
    error = explained(sa.exc.DBAPIError("INSERT", {}, state("the server's words")))
    assert (error.trouble, error.detail) == (trouble, "the server's words")


@pytest.mark.parametrize(
    ("said", "trouble"),
    [
        ('FATAL:  password authentication failed for user "bench"', "password"),
        ("fe_sendauth: no password supplied", "password"),
        ("FATAL:  la autentificación password falló para el usuario «bench»", "password"),
        ('FATAL:  role "bench" does not exist', "password"),
        ('FATAL:  database "school" does not exist', "database"),
        ("FATAL:  no existe la base de datos «school»", "database"),
        ('FATAL:  no pg_hba.conf entry for host "10.0.0.7", user "a", database "b"', "permission"),
        ('FATAL:  role "a" is not permitted to log in', "permission"),
        ("server does not support SSL, but SSL was required", "encryption"),
        ("SSL error: certificate verify failed", "encryption"),
        ("FATAL:  the database system is starting up", "busy"),
        ("FATAL:  the database system is shutting down", "busy"),
        ("FATAL:  sorry, too many clients already", "busy"),
        ("connection timeout expired", "timeout"),
        ('could not translate host name "db" to address: Name not known', "unreachable"),
        ("connection to server failed: Connection refused", "unreachable"),
        ("server closed the connection unexpectedly", "unreachable"),
        ('invalid connection option "sslmod"', "address"),
        ("something that nobody has seen", "unreachable"),
    ],
)
def test_a_connection_that_didn_t_come_about_is_told_apart(said: str, trouble: str) -> None:
    assert explained(sa.exc.OperationalError("", {}, psycopg.OperationalError(said))).trouble == (
        trouble
    )


def test_what_isn_t_the_server_s_is_told_too() -> None:
    assert explained(ImportError("No module named 'psycopg'")).trouble == "driver"
    assert explained(sa.exc.ArgumentError("no URL")).trouble == "address"
    assert explained(sa.exc.InvalidRequestError("ours")).trouble == "other"
