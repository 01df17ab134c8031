"""Who is in a class: codes that catch a slip, many at once, groups, and what is erased when."""

from __future__ import annotations

import itertools
import random
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from exercises.sitting.codes import learner_id
from tests.trainer.logbook.entries import BEGIN, entry_of
from tests.trainer.school.papers import paper_of
from trainer.logbook.backups import back_up
from trainer.logbook.erasing import Erasure
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.records import Records
from trainer.school.codes import ALPHABET, made_code, mistyped, tidy_code
from trainer.school.merging import merge
from trainer.school.people import (
    MOST,
    Newcomer,
    code_faults,
    csv_of,
    newcomers,
    there_already,
)
from trainer.school.roster import Roster, RosterError, due_erasures


@pytest.fixture
def keeping(tmp_path: Path) -> Iterator[Keeping]:
    records = Records(tmp_path / "calls.jsonl")
    opened = Keeping(tmp_path / "logbook.sqlite3", records, bring_up_to_date, "Bench 1")
    assert opened.open()
    yield opened
    opened.close()


@pytest.fixture
def roster(keeping: Keeping) -> Roster:
    return Roster(keeping)


def codes_of(error: pytest.ExceptionInfo[RosterError]) -> list[str]:
    return [fault.code for fault in error.value.faults]


# --- codes --------------------------------------------------------------------------------------


def test_every_slip_of_one_character_or_of_two_that_changed_places_is_caught() -> None:
    rng = random.Random(1)
    for _ in range(40):
        code = made_code(draw=rng.choice)
        assert not mistyped(code)
        assert not mistyped(code.lower())
        letters = [place for place, c in enumerate(code) if c != "-"]
        for place, other in itertools.product(letters, "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"):
            if other != code[place]:
                assert mistyped(code[:place] + other + code[place + 1 :])
        for one, two in itertools.combinations(letters, 2):
            changed = list(code)
            changed[one], changed[two] = changed[two], changed[one]
            assert mistyped("".join(changed)) == (code[one] != code[two])


def test_codes_have_no_characters_that_are_taken_for_each_other() -> None:
    assert len(set(ALPHABET)) == 23
    assert not set(ALPHABET) & set("0O1IL2Z5S8BUV")
    made = {made_code() for _ in range(200)}
    assert {len(code) for code in made} == {7}
    assert len(made) > 190


def test_a_code_that_is_taken_is_drawn_again() -> None:
    drawn = iter("AAAAACCCCC")
    first = made_code(draw=lambda _: "A")
    assert made_code([first.lower()], draw=lambda _: next(drawn)).startswith("CCC-CC")


@pytest.mark.parametrize("own", ["k-07", "BUS-012", "Kestrel", "garden", "2026-117", "Ñ-1"])
def test_a_school_s_own_codes_are_taken_as_they_are(own: str) -> None:
    assert code_faults(own) == []
    assert tidy_code(f" {own} ").casefold() == own.casefold()


# --- many at once -------------------------------------------------------------------------------


def test_a_table_is_read_by_whatever_stands_between_its_columns() -> None:
    for between in ("\t", ";", ","):
        text = "\ufeff" + between.join(("Código", "Nombre")) + "\r\n"
        text += between.join(("k-1", '"Pía, la de la tarde"')) + "\r\n\r\n"
        text += between.join((" K-2 ", "Odo")) + "\n"
        found, faults = newcomers(text)
        assert faults == []
        assert [(each.name, each.code, each.line) for each in found] == [
            ("Pía, la de la tarde", "k-1", 2), ("Odo", "K-2", 4),
        ]  # fmt: skip


def test_a_table_that_was_taken_in_before_adds_who_is_new() -> None:
    table = csv_of(
        [("Pia", "K-07", "Tuesday"), ("Odo, of Yard", "AAA-AAN", ""), ("Ana", "K-09", "")]
    )
    there = [("Pia", "k-07"), ("Odo, of Yard", "AAA-AAN")]
    names, codes = zip(*there, strict=True)
    found, faults = newcomers(table, names, codes, there)
    assert ([one.name for one in found], faults) == (["Ana"], [])
    assert there_already(table, there) == 2
    # Another name with that code, another code with that name: that is to be put right.
    for row in (("Ben", "K-07", ""), ("Pia", "K-08", "")):
        assert newcomers(csv_of([row]), names, codes, there)[1]
    # A name alone may be somebody else's.
    assert newcomers("Pia", names, codes, there)[1]
    found, faults = newcomers(csv_of([("Pia", "K-07", "")]), names, codes, there)
    assert (found, faults) == ([], [])


def test_who_has_no_code_gets_one_and_who_has_no_name_is_called_by_it() -> None:
    found, faults = newcomers("Pia\nOdo\n")
    assert faults == []
    assert [each.name for each in found] == ["Pia", "Odo"]
    assert len({each.code for each in found}) == 2
    assert not any(mistyped(each.code) for each in found)
    found, faults = newcomers("code\nk-1\nk-2\n")
    assert [(each.name, each.code) for each in found] == [("k-1", "k-1"), ("k-2", "k-2")]


def test_all_faults_of_a_table_are_told_at_once() -> None:
    text = "\n".join(
        ("Pia, k-1", "Odo, K-1", "Pia, k-3", "Una, AAA-ACN", f"{'x' * 201}, k-5", "Eva, k-9",
         "Bench 1, k-10", "Ida, \x07")
    )  # fmt: skip
    found, faults = newcomers(text, names=["Bench 1"], codes=["K-9"])
    assert found == []
    assert [(fault.at, fault.code) for fault in faults] == [
        ("/2", "code-twice"), ("/3", "learner-name-twice"), ("/4", "code-mistyped"),
        ("/5", "learner-name-long"), ("/6", "code-taken"), ("/7", "learner-name-taken"),
        ("/8", "code-none"),
    ]  # fmt: skip
    assert [fault.code for fault in newcomers(" \n")[1]] == ["learners-none"]
    assert [fault.code for fault in newcomers("a\n" * (MOST + 1))[1]] == ["learners-too-many"]


def test_what_is_written_is_read_again_and_is_no_formula_to_a_spreadsheet() -> None:
    people = [("=1+1", "k-1", "Tuesday"), ("Pia; Odo", "k-2", "")]
    text = csv_of(people)
    assert "\n=1" not in text
    found, faults = newcomers(text)
    assert faults == []
    assert [(each.name, each.code) for each in found] == [(n, c) for n, c, _ in people]


# --- the roster ---------------------------------------------------------------------------------


def test_people_join_and_leave_groups(roster: Roster) -> None:
    monday, tuesday = roster.add_group("Monday"), roster.add_group(" Tuesday ", 30)
    pia, odo = roster.add([Newcomer("Pia", "k-1", 1), Newcomer("Odo", "k-2", 2)], tuesday.id)
    roster.join(monday.id, [pia.id, odo.id])
    roster.join(monday.id, [pia.id])
    roster.leave(monday.id, [odo.id])
    assert [(g.name, g.keep_days, g.members) for g in roster.groups()] == [
        ("Monday", None, 1), ("Tuesday", 30, 2),
    ]  # fmt: skip
    assert [p.name for p in roster.people(tuesday.id)] == ["Odo", "Pia"]
    assert [p.name for p in roster.people(monday.id)] == ["Pia"]
    roster.change_group(tuesday.id, "Evening", None)
    roster.remove_group(monday.id)
    assert [g.name for g in roster.groups()] == ["Evening"]
    assert [p.name for p in roster.people()] == ["Bench 1", "Odo", "Pia"]
    assert pia.id == learner_id("K-1")


def test_what_a_roster_can_t_take_is_said_and_changes_nothing(roster: Roster) -> None:
    roster.add([Newcomer("Pia", "k-1", 1)])
    roster.add_group("Monday")
    for newcomer in (Newcomer("Pia", "k-2", 1), Newcomer("Odo", "K-1", 1)):
        with pytest.raises(RosterError) as caught:
            roster.add([Newcomer("Una", "k-7", 1), newcomer])
        assert codes_of(caught) == ["roster-taken"]
    assert len(roster.people()) == 2
    for name, days, code in (("Monday", None, "group-taken"), (" ", None, "group-name"),
                             ("Late", 0, "group-days")):  # fmt: skip
        with pytest.raises(RosterError) as caught:
            roster.add_group(name, days)
        assert codes_of(caught) == [code]
    other = roster.add_group("Late")
    with pytest.raises(RosterError) as caught:
        roster.change_group(other.id, "Monday", None)
    assert codes_of(caught) == ["group-taken"]


def test_a_code_is_given_until_something_was_done_by_it(roster: Roster, keeping: Keeping) -> None:
    (bench,) = roster.people()
    assert bench.code is None
    roster.set_code(bench.id, " k-1 ")
    roster.set_code(bench.id, "k-2")
    roster.set_code(bench.id, None)
    roster.set_code(bench.id, "k-3")
    roster.add([Newcomer("Pia", "k-4", 1)])
    for code, fault in (("K-4", "code-taken"), ("AAA-ACN", "code-mistyped"), ("", "code-none")):
        with pytest.raises(RosterError) as caught:
            roster.set_code(bench.id, code)
        assert codes_of(caught) == [fault]
    merge(roster.logbook, paper_of("K-3"))
    roster.set_code(bench.id, "K-3")
    with pytest.raises(RosterError) as caught:
        roster.set_code(bench.id, "k-5")
    assert codes_of(caught) == ["code-used"]
    keeping.close()
    with pytest.raises(RosterError) as caught:
        roster.people()
    assert codes_of(caught) == ["roster-shut"]


def test_what_is_kept_too_long_is_shown_and_then_gone(
    roster: Roster, keeping: Keeping, tmp_path: Path
) -> None:
    short, good = roster.add_group("Short", 30), roster.add_group("For good")
    pia, odo, una = roster.add(
        [Newcomer(name, code, 1) for name, code in (("Pia", "k-1"), ("Odo", "k-2"), ("Una", "k-3"))]
    )
    roster.join(short.id, [pia.id, odo.id, una.id])
    roster.join(good.id, [una.id])
    old, new = BEGIN, BEGIN + timedelta(days=60)
    with roster.logbook.writing() as connection:
        long_ago = int(old.timestamp() * 1000)
        connection.exec_driver_sql(f"UPDATE learners SET made_ms = {long_ago}")
    marked = replace(entry_of(2), coupon={"id": "x", "title": "only Odo's"}, digest="d" * 64)
    roster.logbook.add_all(pia.id, [replace(entry_of(1), at=old), replace(entry_of(3), at=new)])
    roster.logbook.add_all(odo.id, [replace(marked, at=old)])
    roster.logbook.add_all(una.id, [replace(entry_of(4), at=old)])
    merge(roster.logbook, paper_of("k-1"))
    back_up(keeping.path, keeping.backups / "logbook-20260302T090000Z.sqlite3")

    today = (new + timedelta(days=1)).date()
    due = roster.due(today)
    assert [(d.person.name, d.attempts, d.sat, d.wholly) for d in due] == [
        ("Odo", 1, 0, True), ("Pia", 6, 1, False),
    ]  # fmt: skip
    assert roster.logbook.count() == 9
    roster.erase(due_erasures(due))
    assert roster.due(today) == []
    assert {p.name: p.attempts for p in roster.people()} == {"Bench 1": 0, "Pia": 1, "Una": 1}
    # What stays is counted as if the rest had never been.
    assert sum(t.count for t in roster.logbook.tallies(pia.id) if t.kind == "line") == 1
    for file in (keeping.path, *keeping.backups.iterdir()):
        raw = file.read_bytes() + b"".join(f.read_bytes() for f in tmp_path.glob("*-wal"))
        assert b"only Odo" not in raw, file
        with closing(sqlite3.connect(file)) as plain:
            assert plain.execute("SELECT count(*) FROM sat").fetchone() == (0,)
            assert plain.execute("SELECT count(*) FROM sittings").fetchone() == (0,)
            assert plain.execute("PRAGMA foreign_key_check").fetchall() == []


def test_who_is_erased_is_gone_with_papers_memberships_and_notes(
    roster: Roster, keeping: Keeping
) -> None:
    group = roster.add_group("Short", 30)
    (pia,) = roster.add([Newcomer("Pia", "k-1", 1)], group.id)
    paper = paper_of("k-1")
    merge(roster.logbook, paper)
    with roster.logbook.writing() as connection:
        for sent in (pia.id, paper.id, "something else"):
            connection.exec_driver_sql("INSERT INTO sent VALUES (?, 1)", (sent,))
    bench = keeping.learner
    keeping.choose(roster.logbook.learners()[1])
    roster.erase([Erasure(pia.id)])
    assert keeping.learner == bench
    with closing(sqlite3.connect(keeping.path)) as plain:
        for table in ("sat", "sittings", "attempts", "coupons", "members", "tallies"):
            assert plain.execute(f"SELECT count(*) FROM {table}").fetchone() == (0,), table
        assert plain.execute("SELECT id FROM sent").fetchall() == [("something else",)]
    assert roster.due(date(2030, 1, 1)) == []


def test_who_was_added_lately_is_not_due_for_having_done_nothing(roster: Roster) -> None:
    group = roster.add_group("Short", 30)
    roster.add([Newcomer("Pia", "k-1", 1)], group.id)
    today = datetime.now(UTC).date()
    assert roster.due(today) == []
    assert [d.wholly for d in roster.due(today + timedelta(days=40))] == [True]
