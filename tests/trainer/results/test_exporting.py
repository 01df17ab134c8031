"""What is written to files: every row and answer, as other programs and people read them."""

from __future__ import annotations

import csv
import json
from html.parser import HTMLParser
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QFileDialog

from exercises.sitting.marking import mark
from exercises.sitting.result import Result
from tests.trainer.results.conftest import LEARNERS, Teacher
from trainer.logbook.exports import COLUMNS
from trainer.results.exporting import PAPER_COLUMNS, table_lines
from trainer.results.figures_of import percent
from trainer.results.override_dialog import Setting


@pytest.fixture(autouse=True)
def _english() -> None:
    QLocale.setDefault(QLocale("en"))


def export(
    teacher: Teacher, kind: str, to: Path, monkeypatch: pytest.MonkeyPatch, *, paper: bool = False
) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(to), ""))
    page = teacher.page.of_learner if paper else teacher.page.of_class
    page.export_asked.emit(kind)
    teacher.frame.dialogs[-1].reject()


def rows_of(path: Path) -> list[list[str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.reader(file))


def test_the_table_is_written_as_it_is_shown(
    teacher: Teacher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = teacher.page.of_class
    page.learners.sieve.choosers["group"].setCurrentText("Tuesday")
    page.learners.table.sort("code", descending=True)
    export(teacher, "table", tmp_path / "t.csv", monkeypatch)
    head, *rows = rows_of(tmp_path / "t.csv")
    assert head[:2] == ["Code", "Name here"]
    assert [row[0] for row in rows] == sorted((row[0] for row in rows), reverse=True)
    assert len(rows) == LEARNERS // 2


def test_every_answer_is_there_as_graded_and_what_it_is_worth_now(
    teacher: Teacher, results: list[Result], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    result = results[0]
    teacher.page.open_paper(result.id)
    number = next(item.number for item in result.items if item.answered)
    said = Setting("score", 0.25, "seen again", "Instructor 2")
    teacher.page.of_learner.overridden.emit(number, said)
    teacher.settle()
    teacher.page.show_class()
    export(teacher, "csv", tmp_path / "a.csv", monkeypatch)
    head, *rows = rows_of(tmp_path / "a.csv")
    assert head == [*PAPER_COLUMNS, *COLUMNS]
    assert len(rows) == sum(item.answered for one in results for item in one.items)
    told = [dict(zip(head, row, strict=True)) for row in rows]
    mine = next(row for row in told if row["code"] == result.code and row["item"] == str(number))
    item = result.items[number - 1]
    assert item.grade is not None
    assert float(mine["score"]) == item.grade["score"]
    assert (float(mine["score_now"]), mine["overridden"]) == (0.25, "score")
    assert all(row["score_now"] != "" for row in told)
    assert "Learner" not in (tmp_path / "a.csv").read_text(encoding="utf-8"), "names stay here"


def test_statements_are_one_for_each_answer_and_name_nobody(
    teacher: Teacher, results: list[Result], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    export(teacher, "xapi", tmp_path / "s.jsonl", monkeypatch)
    lines = (tmp_path / "s.jsonl").read_text(encoding="utf-8").splitlines()
    told = [json.loads(line) for line in lines]
    assert len(told) == len({one["id"] for one in told})
    assert len(told) == sum(item.answered for one in results for item in one.items)
    assert not any("name" in one["actor"] for one in told)


class _Html(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.cells: list[str] = []
        self.heads = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.heads += tag == "th"

    def handle_data(self, data: str) -> None:
        self.cells.append(data)


def test_a_class_sheet_prints_and_reads_aloud(
    teacher: Teacher, results: list[Result], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    export(teacher, "html", tmp_path / "c.html", monkeypatch)
    export(teacher, "pdf", tmp_path / "c.pdf", monkeypatch)
    read = _Html()
    read.feed((tmp_path / "c.html").read_text(encoding="utf-8"))
    pages = PdfReader(tmp_path / "c.pdf").pages
    printed = " ".join(" ".join(page.extract_text() for page in pages).split())
    for result in results:
        standing = mark(result.marks, result.items)
        at = read.cells.index(result.code)
        assert read.cells[at + 1] == percent(standing.score)
        assert result.code in printed
    assert read.heads == 14
    for heading in ("Scores by skill", "Difficulty and discrimination", "Time by coupon"):
        assert heading in printed
        assert heading in read.cells
    assert "training aid" in printed


def test_a_learners_paper_and_logbook_are_written(
    teacher: Teacher, results: list[Result], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    result = results[2]
    teacher.page.open_paper(result.id)
    for kind, name in (("paper csv", "p.csv"), ("csv", "l.csv"), ("xapi", "l.jsonl"),
                       ("pdf", "l.pdf"), ("html", "l.html")):  # fmt: skip
        export(teacher, kind, tmp_path / name, monkeypatch, paper=True)
    assert len(rows_of(tmp_path / "p.csv")) == 1 + len(result.items)
    answered = sum(item.answered for item in result.items)
    assert len(rows_of(tmp_path / "l.csv")) == 1 + answered
    assert len((tmp_path / "l.jsonl").read_text(encoding="utf-8").splitlines()) == answered
    assert PdfReader(tmp_path / "l.pdf").pages
    assert "<h1>" in (tmp_path / "l.html").read_text(encoding="utf-8")


def test_what_cannot_be_written_is_said(
    teacher: Teacher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    to = tmp_path / "no such folder" / "t.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(to), ""))
    teacher.page.of_class.export_asked.emit("table")
    assert "could not be written" in teacher.frame.dialogs[-1].windowTitle()
    assert not to.exists()


def test_a_spreadsheet_is_given_nothing_to_work_out() -> None:
    lines = list(table_lines([["=1+1", "-2", "plain", "@x"]]))
    assert lines == ["'=1+1,'-2,plain,'@x\r\n"]
