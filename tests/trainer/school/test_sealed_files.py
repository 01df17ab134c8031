"""What lies sealed on this machine goes with the learner it is of, and with nobody else."""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from tests.trainer.school.papers import BEGIN, paper_of
from trainer.logbook.erasing import Erasure
from trainer.logbook.keeping import Keeping
from trainer.logbook.migrating import bring_up_to_date
from trainer.records import Records
from trainer.school.merging import merge
from trainer.school.people import Newcomer
from trainer.school.roster import Roster, due_erasures
from trainer.school.sealed_files import remove
from trainer.sealing.held_files import new_file
from trainer.sealing.journal import DAMAGED
from trainer.sealing.result_files import result_name
from trainer.sealing.whose import MARK, journal_name, owner_of

CODES = ("K-07", "K-08", "7", "A_7")


class Machine:
    """A machine with a logbook, and folders beside it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        records = Records(folder / "calls.jsonl")
        self.keeping = Keeping(folder / "logbook.sqlite3", records, bring_up_to_date, "Bench 1")
        assert self.keeping.open()
        self.roster = Roster(self.keeping)
        self.people = {
            one.code: one
            for one in self.roster.add([Newcomer(code, code, 1) for code in CODES])
        }  # fmt: skip
        for name in ("results", "sittings"):
            (folder / name).mkdir()

    def erasure(self, code: str, before: str | None = None) -> Erasure:
        return Erasure(self.people[code].id, before)

    def hand_in(self, code: str, number: int = 1) -> Path:
        """Put a paper into the logbook, and its file beside it."""
        paper = paper_of(code, number)
        assert self.keeping.logbook is not None
        merge(self.keeping.logbook, paper)
        return self.result(f"Yard, {number}", code, paper.id[:MARK])

    def result(self, title: str, code: str, mark: str) -> Path:
        file = self.folder / "results" / result_name(title, code, mark)
        file.write_bytes(b"sealed")
        return file

    def begin(self, code: str, sitting: str = "s-1") -> Path:
        file = self.folder / "sittings" / journal_name(sitting, code)
        file.write_bytes(b"sealed")
        return file

    def goes(self, *erasures: Erasure) -> set[str]:
        return {path.name for path in self.roster.sealed(erasures).goes}


@pytest.fixture
def machine(tmp_path: Path) -> Iterator[Machine]:
    made = Machine(tmp_path)
    yield made
    made.keeping.close()


def test_results_and_journals_go_with_their_learner_alone(machine: Machine) -> None:
    mine, other = machine.hand_in("K-07"), machine.hand_in("K-08")
    begun, others = machine.begin("K-07"), machine.begin("K-08")
    # Handed in here and never merged: its name is all that tells.
    unmerged = machine.result("Autumn", "k-07", "00000000")
    erasures = [machine.erasure("K-07")]
    sealed = machine.roster.sealed(erasures)
    assert set(sealed.goes) == {mine, begun, unmerged}
    assert machine.roster.erase(erasures, sealed.goes) == []
    left = {path for name in ("results", "sittings") for path in (machine.folder / name).iterdir()}
    assert left == {other, others}
    assert "K-07" not in {one.code for one in machine.roster.people()}


def test_a_code_that_ends_like_another_is_another(machine: Machine) -> None:
    short, long = machine.hand_in("7"), machine.hand_in("A_7")
    assert machine.goes(machine.erasure("7")) == {short.name}
    assert machine.goes(machine.erasure("A_7")) == {long.name}
    # A paper that the logbook knows to be another's isn't taken by its title.
    paper = paper_of("K-08", 5)
    assert machine.keeping.logbook is not None
    merge(machine.keeping.logbook, paper)
    machine.result("About K-08", "7", paper.id[:MARK])
    assert machine.goes(machine.erasure("7")) == {short.name}


def test_what_no_name_tells_stays_and_is_counted(machine: Machine) -> None:
    renamed = machine.folder / "results" / "mine.result"
    renamed.write_bytes(b"sealed")
    unknown = machine.begin("K-07", "a sitting that nobody handed in")
    machine.hand_in("K-08")
    sealed = machine.roster.sealed([machine.erasure("K-07")])
    assert (sealed.goes, sealed.unknown) == ((), (unknown,))


def test_one_that_is_being_sat_stays(machine: Machine) -> None:
    machine.hand_in("K-08")
    path = machine.folder / "sittings" / journal_name("s-1", "K-07")
    file = new_file(path, b"sealed")
    assert machine.goes(machine.erasure("K-07")) == set()
    file.close()
    assert machine.goes(machine.erasure("K-07")) == {path.name}


def test_what_is_kept_too_long_goes_by_its_day(machine: Machine) -> None:
    group = machine.roster.add_group("Tuesday", keep_days=30)
    machine.roster.join(group.id, [machine.people["K-07"].id])
    old = machine.hand_in("K-07")
    newer = machine.result("Autumn", "K-07", "00000000")
    today = date(2026, 6, 1)
    assert today - BEGIN.date() > timedelta(days=30)
    fresh = datetime(2026, 5, 20, tzinfo=UTC).timestamp()
    os.utime(newer, (fresh, fresh))
    erasures = due_erasures(machine.roster.due(today))
    assert machine.goes(*erasures) == {old.name}, "by the day it was handed in, not of the file"
    stale = datetime(2026, 1, 1, tzinfo=UTC).timestamp()
    os.utime(newer, (stale, stale))
    assert machine.goes(*erasures) == {old.name, newer.name}


def test_nobody_without_a_code_has_files(machine: Machine) -> None:
    machine.hand_in("K-07")
    bench = next(one for one in machine.roster.people() if one.code is None)
    assert machine.goes(Erasure(bench.id)) == set()


def test_a_file_that_cannot_be_removed_is_told(machine: Machine) -> None:
    folder = machine.folder / "results" / "Yard_K-07_00000000.result"
    folder.mkdir()
    (trouble,) = machine.roster.erase([machine.erasure("K-07")], [folder])
    assert trouble.filename == str(folder)
    assert "K-07" not in {one.code for one in machine.roster.people()}
    assert remove([folder / "gone"]) == []


@pytest.mark.parametrize(
    ("name", "owner"),
    [
        ("Yard_K-07_3fa90000.result", "K-07"),
        ("Yard_k-07_3fa90000.result", "K-07"),
        ("K-07_3fa90000.result", "K-07"),
        ("Yard_Two_words-here_3fa90000.result", "Two_words here"),
        ("YardK-07_3fa90000.result", None),
        ("Yard_K-07_3fa9.result", None),
        ("Yard_K-07_3fa90000.result.part", None),
        ("Yard_K-077_3fa90000.result", None),
    ],
)
def test_whose_a_name_is(name: str, owner: str | None) -> None:
    assert owner_of(name, ["K-07", "7", "Two_words here"]) == owner


def test_a_journal_that_was_kept_damaged_goes_with_its_learner_too(machine: Machine) -> None:
    machine.hand_in("K-07")
    begun = machine.begin("K-07")
    kept = [begun.with_name(f"{begun.name}{DAMAGED}{end}") for end in ("", "1")]
    for each in kept:
        each.write_bytes(b"sealed")
    begun.unlink()
    assert {each.name for each in kept} <= machine.goes(machine.erasure("K-07"))
    machine.hand_in("K-08")
    assert machine.goes(machine.erasure("K-08")).isdisjoint(each.name for each in kept)
