"""Results written to files: tables, every answer, statements for other programs, sheets."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from exercises.sitting.marking import marked
from trainer.figures import figures
from trainer.language import spoken
from trainer.loading import Loading
from trainer.logbook.dealing import write_lines
from trainer.logbook.exports import COLUMNS, csv_lines, statements
from trainer.logbook.findings import NEWEST, findings_of
from trainer.logbook.opening import LogbookError
from trainer.logbook.plots import Style, style_of
from trainer.logbook.sheets import Sheet, html_sheet, write_pdf
from trainer.logbook.store import Learner, Logbook
from trainer.logbook.words import plot_words, trouble_words
from trainer.look.tokens import LIGHT
from trainer.notices import Notice
from trainer.results.bringing import sitting_title
from trainer.results.class_sheet import ClassSheet, class_html, write_class_pdf
from trainer.results.class_words import (
    class_sentences,
    coupon_sentences,
    picture_of,
    picture_sentences,
)
from trainer.results.gathering import coupon_rows, learner_rows
from trainer.results.pictures_page import picture_words
from trainer.results.reading import Look
from trainer.results.reckoning import Reckoned
from trainer.results.source import Source
from trainer.school.reading import ClassBook, Sat
from trainer.school.trouble import SchoolError
from trainer.school.words import school_words
from trainer.window import WindowFrame

__all__ = ["PAPER_COLUMNS", "Exporting", "answer_lines", "table_lines"]

_SUFFIX: Final = {
    "table": ".csv", "paper csv": ".csv", "csv": ".csv", "xapi": ".jsonl", "pdf": ".pdf",
    "html": ".html",
}  # fmt: skip

_READS: Final = ("csv", "xapi")
"""What is written out of a book, and not out of what is shown."""

PAPER_COLUMNS: Final = ("code", "paper", "station", "item", "slot", "shown_seconds", "visits",
                        "score_now", "overridden")  # fmt: skip
"""What the table of answers says of each before the columns that a logbook's table has."""

# What a spreadsheet would take for a formula when it opens the file.
_FORMULA: Final = ("=", "+", "-", "@", "\t", "\r")


def table_lines(lines: Iterable[Sequence[str]]) -> Iterator[str]:
    r"""Yield rows as lines of CSV; text that a spreadsheet would work out has an apostrophe first.

    Examples
    --------
    >>> list(table_lines([["code", "why"], ["=1", "a,b"]]))
    ['code,why\r\n', '\'=1,"a,b"\r\n']
    """
    for line in lines:
        yield _line([f"'{cell}" if cell.startswith(_FORMULA) else cell for cell in line])


def _line(cells: Iterable[object]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\r\n").writerow(["" if one is None else one for one in cells])
    return text.getvalue()


def answer_lines(papers: Sequence[Sat], book: ClassBook) -> Iterator[str]:
    """Yield every answer of some papers as a line of CSV: whose, and then as a logbook's table.

    What was graded stands as it was graded; what it is worth now, overrides included, beside it.
    """
    yield _line((*PAPER_COLUMNS, *COLUMNS))
    for paper in papers:
        overrides = [one.override for one in paper.overrides]
        by_attempt = {item.attempt_id: item for item in paper.items if item.attempt_id}
        for entry in book.entries(sat=paper.id):
            item = by_attempt[entry.id]
            now = marked(item, overrides)
            code = f"'{paper.code}" if paper.code.startswith(_FORMULA) else paper.code
            first = _line(
                (
                    code, paper.id, paper.station, item.number, item.slot,
                    round(item.ms / 1000.0, 1), item.visits, round(now.score, 6),
                    " ".join(sorted(now.overridden)),
                )
            )  # fmt: skip
            rest = list(csv_lines([entry]))[1]
            yield f"{first.removesuffix(chr(13) + chr(10))},{rest}"


class Exporting(QObject):
    """Writes what is asked for, with the dialogs that it takes.

    Signals
    -------
    working(words)
        Something is read from a server and written beside the window.
    """

    working = Signal(str)

    def __init__(self, window: WindowFrame, page: QWidget) -> None:
        super().__init__(page)
        self._window, self._page = window, page
        self._going_on: list[Loading[None]] = []

    @property
    def busy(self) -> bool:
        """Whether something is being written beside the window."""
        return bool(self._going_on)

    def wait(self) -> None:
        """Wait until all that was asked for is written."""
        for loading in self._going_on:
            loading.wait()

    def export_class(
        self, kind: str, look: Look, lines: Sequence[Sequence[str]], source: Source
    ) -> None:
        """Write something of a sitting's class; `lines` is the table that is shown."""
        reckoned = look.reckoned
        plan = next((one for one in look.sittings if one.id == look.chosen), None)
        title = sitting_title(plan.plan) if plan is not None else ""
        if reckoned is None and kind != "table":
            self._tell(self.tr("There is nothing to write yet."), "")
            return
        acts: dict[str, Callable[[Path], None]] = {
            "table": lambda path: write_lines(path, table_lines(lines), bom=True),
        }
        if reckoned is not None:
            papers = reckoned.papers
            acts |= {
                "csv": lambda path: _with_book(
                    source, lambda book: write_lines(path, answer_lines(papers, book), bom=True)
                ),
                "xapi": lambda path: _with_book(
                    source, lambda book: write_lines(path, _statements(papers, book))
                ),
                "pdf": lambda path: write_class_pdf(
                    _sheet(reckoned, look, title), _printed(picture_words()), path
                ),
                "html": lambda path: write_lines(path, [class_html(_sheet(reckoned, look, title))]),
            }
        beside = bool(source.url) and kind in _READS
        self._write(acts[kind], title or self.tr("results"), _SUFFIX[kind], beside=beside)

    def export_paper(
        self, kind: str, paper: Sat, lines: Sequence[Sequence[str]], source: Source,
        logbook: Logbook | None,
    ) -> None:  # fmt: skip
        """Write something of a learner.

        Parameters
        ----------
        lines
            The table of their paper.
        source
            Where it is read from.
        logbook
            Of this machine, for what their sheet is made of.
        """
        learner = Learner(paper.learner, paper.name or paper.code)
        acts: dict[str, Callable[[Path], None]] = {
            "paper csv": lambda path: write_lines(path, table_lines(lines), bom=True),
            "csv": lambda path: _with_book(
                source,
                lambda book: write_lines(
                    path, csv_lines(book.entries(learner=learner.id)), bom=True
                ),
            ),
            "xapi": lambda path: _with_book(
                source,
                lambda book: write_lines(
                    path,
                    (f"{one}\n" for one in statements(learner, book.entries(learner=learner.id))),
                ),
            ),
        }
        if logbook is not None:
            acts |= {
                "pdf": lambda path: write_pdf(
                    self._learner_sheet(logbook, learner), _printed(plot_words()), path
                ),
                "html": lambda path: write_lines(
                    path, [html_sheet(self._learner_sheet(logbook, learner))]
                ),
            }
        if kind in acts:
            beside = bool(source.url) and kind in _READS
            self._write(acts[kind], paper.code, _SUFFIX[kind], beside=beside)

    def _learner_sheet(self, logbook: Logbook, learner: Learner) -> Sheet:
        tallies = logbook.tallies(learner.id, newest_lines=NEWEST)
        found = findings_of(tallies, logbook.repeats(learner.id))
        unit = self._window.settings.unit or "mm"
        return Sheet(learner.name, _today(), found, unit, spoken())

    def _write(
        self, act: Callable[[Path], None], name: str, suffix: str, *, beside: bool = False
    ) -> None:
        """Ask where to, and write; what a server has to send is waited for by nobody."""
        path = self._where_to(name, suffix)
        if path is None:
            return
        if not beside:
            self._tell_of(path, lambda: act(path))
            return
        loading = Loading(lambda: act(path))
        self._going_on.append(loading)
        loading.over.connect(lambda: self._end(path, loading))
        loading.start()
        self.working.emit(self.tr("Reading from the server, and writing..."))

    def _end(self, path: Path, loading: Loading[None]) -> None:
        self._going_on.remove(loading)
        self._tell_of(path, lambda: loading.result)

    def _tell_of(self, path: Path, do: Callable[[], object]) -> None:
        try:
            do()
        except LogbookError as error:
            self._tell(*trouble_words(error.trouble, str(error.path)))
        except SchoolError as error:
            self._tell(*school_words(error))
        except OSError as error:
            said = f"{error.filename or ''}\n{error.strerror or error}".strip()
            self._tell(self.tr("It could not be written."), said)
        else:
            self._tell(self.tr("It is written"), str(path))

    def _where_to(self, name: str, suffix: str) -> Path | None:
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        plain = "".join(c if c.isalnum() else "-" for c in name).strip("-") or "results"
        start = str(Path(folder) / f"toe-and-throat-{plain}{suffix}")
        kinds = f"{suffix[1:].upper()} (*{suffix})"
        chosen, _ = QFileDialog.getSaveFileName(self._page, self.tr("Save as"), start, kinds)
        if not chosen:
            return None
        return Path(chosen if chosen.endswith(suffix) else chosen + suffix)

    def _tell(self, title: str, text: str) -> None:
        notice = Notice(title, text, self._page.window())
        notice.finish()
        self._window.show_dialog(notice)


def _with_book(source: Source, do: Callable[[ClassBook], None]) -> None:
    with source.book() as book:
        do(book)


def _today() -> date:
    return datetime.now(UTC).astimezone().date()


def _printed(words: dict[str, str]) -> Style:
    return style_of(LIGHT, words, figures("0.5")[1])


def _statements(papers: Sequence[Sat], book: ClassBook) -> Iterator[str]:
    for paper in papers:
        learner = Learner(paper.learner, paper.code)
        for line in statements(learner, book.entries(sat=paper.id)):
            yield f"{line}\n"


def _sheet(reckoned: Reckoned, look: Look, title: str) -> ClassSheet:
    picture = picture_of(reckoned)
    return ClassSheet(
        title=title,
        on=_today(),
        language=spoken(),
        said=class_sentences(reckoned),
        coupons_said=coupon_sentences(reckoned),
        learners=learner_rows(reckoned, look.known),
        coupons=coupon_rows(reckoned),
        picture=picture,
        sentences=picture_sentences(reckoned, picture),
    )
