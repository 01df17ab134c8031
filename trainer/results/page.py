"""The page of results: the class, one learner's paper, files brought in, marks set by hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import TypeVar

from PySide6.QtCore import QSize, QTimer
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QShowEvent
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from exercises.file_faults import FileError
from exercises.sitting.marking import Override
from exercises.sitting.result import Result
from trainer.bench.saying import Saying
from trainer.bench.translation import translate
from trainer.fault_words import fault_words
from trainer.landing import Landing
from trainer.loading import Loading
from trainer.logbook.keeping import Keeping
from trainer.logbook.opening import LogbookError
from trainer.logbook.words import trouble_words
from trainer.notices import Notice
from trainer.results.asking import REFUSED, Asking
from trainer.results.bringing import Bringing, Brought, sitting_title
from trainer.results.class_results import ClassResults
from trainer.results.exporting import Exporting
from trainer.results.gathering import verdict_sentence
from trainer.results.opening import Opened
from trainer.results.override_dialog import Setting
from trainer.results.paper_page import Paper, PaperPage
from trainer.results.reading import Look, look
from trainer.results.ready import ready_rows
from trainer.results.shut_papers import ShutPapers
from trainer.results.source import Source
from trainer.school.address import Address
from trainer.school.merging import Merged, merge
from trainer.school.overriding import override
from trainer.school.reading import ClassBook, Sat
from trainer.school.trouble import SchoolError
from trainer.school.words import school_words
from trainer.window import WindowFrame

__all__ = ["ResultsPage"]

Made = TypeVar("Made")


class ResultsPage(QWidget):
    """The page.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    keeping
        What keeps the logbook that results come into.
    typed
        Tells which server's address was typed, with a password that is kept nowhere.
    """

    def __init__(
        self,
        window: WindowFrame,
        keeping: Keeping,
        typed: Callable[[], Address | None] = lambda: None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._window, self._keeping, self._typed = window, keeping, typed
        self.asking = Asking(self)
        self.shut = ShutPapers(window, keeping, self)
        self._read: tuple[Source, str, Result] | None = None
        self.look = Look()
        self._wanted = ""
        self._loading: Loading[Look] | None = None
        self._again = False
        self._server = False
        self.setAcceptDrops(True)
        self.setAccessibleName(self.tr("Results"))
        self.rooms = QStackedWidget()
        self.of_class = ClassResults()
        self.of_learner = PaperPage(window)
        self.rooms.addWidget(self.of_class)
        self.rooms.addWidget(self.of_learner)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.rooms)
        Landing(self, self.rooms.currentWidget)
        self.bringing = Bringing(window, self._merge, self)
        self.exporting = Exporting(window, self)
        self.saying = Saying(self.rooms)
        self._listen()

    def _listen(self) -> None:
        page = self.of_class
        page.source_chosen.connect(self.choose_source)
        page.sitting_chosen.connect(self.choose_sitting)
        page.paper_asked.connect(self.open_paper)
        page.logbook_asked.connect(self.open_logbook)
        page.bring_asked.connect(self.bringing.ask_for_files)
        page.export_asked.connect(self._export_class)
        page.shut.open_asked.connect(lambda: self.shut.ask(self.look.shut))
        self.shut.opened.connect(self.refresh)
        self.bringing.brought.connect(self._show_brought)
        self.exporting.working.connect(self.saying.say)
        self.of_learner.left.connect(self.show_class)
        self.of_learner.overridden.connect(self._override)
        self.of_learner.export_asked.connect(self._export_paper)
        self._window.theme_changed.connect(self._show)
        self._window.settings_changed.connect(self._show_ready)
        self._window.settings_changed.connect(self._show_sources)
        self._show_sources()

    # --- what is read ---------------------------------------------------------------------------

    def refresh(self) -> None:
        """Read all of it anew, beside the window."""
        if self._loading is not None:
            self._again = True
            return
        logbook = self._keeping.logbook
        if logbook is None:
            self.look = Look(trouble=self._keeping.trouble)
            self._show()
            return
        self.of_class.show_busy(self.tr("Reading..."))
        self._loading = Loading(partial(look, self._source(logbook.path), self._wanted))
        self._loading.over.connect(self._take)
        self._loading.start()

    @property
    def busy(self) -> bool:
        """Whether something is being read, set by hand, or brought in."""
        beside = (self.asking, self.bringing, self.exporting)
        return self._loading is not None or any(one.busy for one in beside)

    def _take(self) -> None:
        assert self._loading is not None
        loading, self._loading = self._loading, None
        self.of_class.show_busy("")
        self.look = loading.result
        if self._again:
            self._again = False
            self.refresh()
            return
        self._show()
        self._show_paper_again()

    def wait(self) -> None:
        """Wait until what is being read has been, as when the window closes."""
        if self._loading is not None:
            self._loading.wait()
        self.asking.wait()
        self.shut.wait()
        self.exporting.wait()
        self.bringing.stop()

    def _source(self, path: Path) -> Source:
        url = self._window.settings.server if self._server else ""
        typed = self._typed() if url else None
        password = typed.password if typed is not None and typed.url == url else None
        logbook = self._keeping.logbook
        opened = frozenset(logbook.opened) if logbook is not None else frozenset[str]()
        return Source(path, url, password, opened)

    def choose_source(self, server: bool) -> None:
        """Read the school's server from now on, or the logbook of this machine."""
        self._server = server
        self.refresh()

    def _show_sources(self) -> None:
        offered = bool(self._window.settings.server)
        self._server = self._server and offered
        self.of_class.show_sources(offered=offered, server=self._server)

    def choose_sitting(self, sitting: str) -> None:
        """Look at another sitting."""
        self._wanted = sitting
        self.refresh()

    # --- what is shown --------------------------------------------------------------------------

    def _show(self) -> None:
        found, theme = self.look, self._window.theme
        trouble = "\n".join(_told(found.trouble)) if found.trouble is not None else ""
        self.of_class.show_trouble(trouble)
        self.of_class.shut.show_shut(found.shut)
        self.of_class.show_sittings(found.sittings, found.chosen)
        self.of_class.show_class(found.reckoned, found.known, theme)
        self._show_ready()

    def _show_ready(self) -> None:
        unit = self._window.settings.unit or "mm"
        self.of_class.show_ready(ready_rows(self.look.seen, unit), self._window.theme)

    def show_class(self) -> None:
        """Back to the class, at the learner that was looked at."""
        self.of_learner.hide_handling()
        self.rooms.setCurrentWidget(self.of_class)
        if self.of_learner.paper is not None:
            self.of_class.learners.table.choose(self.of_learner.paper.id)
        self.of_class.setFocus()

    def _sat(self, paper: str) -> Sat | None:
        papers = self.look.reckoned.papers if self.look.reckoned is not None else ()
        return next((one for one in papers if one.id == paper), None)

    def open_paper(self, paper: str) -> None:
        """Go through a paper; one that is on a server is fetched beside the window."""
        source = self._source(self._keeping.path)
        if source.url and not self._has_read(source, paper):
            if not self.asking.busy:
                self.of_class.show_busy(self.tr("Reading..."))
                self.asking.ask(
                    source,
                    lambda book: book.result(paper),
                    lambda result: self._fetched(source, paper, result),
                    self._fetched_nothing,
                )
            return
        if self._show_paper(paper):
            self.rooms.setCurrentWidget(self.of_learner)
            self.of_learner.setFocus()

    def _has_read(self, source: Source, paper: str) -> bool:
        return self._read is not None and self._read[:2] == (source, paper)

    def _fetched(self, source: Source, paper: str, result: Result) -> None:
        self._read = source, paper, result
        self.of_class.show_busy("")
        # Somebody may look at another source by now.
        if source == self._source(self._keeping.path):
            self.open_paper(paper)

    def _fetched_nothing(self, error: Exception) -> None:
        self.of_class.show_busy("")
        self._tell(*_told(error))

    def _result(self, paper: str) -> Result | None:
        """A paper as it was handed in, which never changes: what was read last isn't read again."""
        source = self._source(self._keeping.path)
        if self._read is not None and self._has_read(source, paper):
            return self._read[2]
        result = self._tried(lambda: self._book(lambda book: book.result(paper)))
        if result is not None:
            self._read = source, paper, result
        return result

    def _show_paper(self, paper: str) -> bool:
        sat, reckoned = self._sat(paper), self.look.reckoned
        if sat is None or reckoned is None:
            return False
        result = self._result(paper)
        if result is None:
            return False
        standing = reckoned.standings[reckoned.papers.index(sat)]
        known = self.look.known.get(sat.learner)
        name = known.name if known is not None else ""
        who = sat.code if name in ("", sat.code) else f"{sat.code}, {name}"
        title = self.tr("{who}: {sitting}").format(who=who, sitting=sitting_title(sat.plan))
        overrides = tuple(one.override for one in sat.overrides)
        self.of_learner.show_paper(
            Paper(paper, title, verdict_sentence(standing), result.items, overrides)
        )
        return True

    def _show_paper_again(self) -> None:
        """What is gone through may have been marked anew, or erased."""
        paper = self.of_learner.paper
        if self.rooms.currentWidget() is not self.of_learner or paper is None:
            return
        if not self._show_paper(paper.id):
            self.show_class()

    def open_logbook(self, learner: str) -> None:
        """Open a learner's logbook: they are at the bench from then on, as chosen there."""
        logbook = self._keeping.logbook
        if logbook is None:
            return
        known = self._tried(logbook.learners) or []
        found = next((one for one in known if one.id == learner), None)
        if found is None:
            self._tell(self.tr("The logbook of this machine knows nothing of this learner."), "")
            return
        self._keeping.choose(found)
        # As when somebody is chosen there: they are at the bench at the next start too.
        self._window.change_settings(replace(self._window.settings, learner=found.id))
        self._window.show_screen("logbook")

    # --- what is done ---------------------------------------------------------------------------

    def _book(self, do: Callable[[ClassBook], Made]) -> Made:
        logbook = self._keeping.logbook
        if logbook is None:
            raise self._keeping.trouble or LogbookError("unwritable", self._keeping.path)
        with self._source(logbook.path).book() as book:
            return do(book)

    def _merge(self, opened: Opened) -> Merged:
        logbook, result = self._keeping.logbook, opened.result
        if logbook is None or result is None:
            raise self._keeping.trouble or LogbookError("unwritable", self._keeping.path)
        return merge(logbook, result)

    def _show_brought(self, rows: Sequence[Brought]) -> None:
        if any(row.came in ("new", "clash") for row in rows):
            # What has just come in is what somebody wants to see.
            self.refresh()

    def _override(self, number: int, said: Setting) -> None:
        paper = self.of_learner.paper
        if paper is None:
            return
        one = Override(number, said.mark, said.value, said.reason, said.by, datetime.now(UTC))
        self.asking.ask(
            self._source(self._keeping.path),
            lambda book: override(book, paper.id, one),
            self._overridden,
            self._not_overridden,
        )

    def _overridden(self, _: object) -> None:
        self.of_learner.end_asking()
        self.refresh()

    def _not_overridden(self, error: Exception) -> None:
        what, then = _told(error)
        if not self.of_learner.end_asking(f"{what}\n{then}"):
            self._tell(what, then)

    def _export_class(self, kind: str) -> None:
        source = self._source(self._keeping.path)
        self.exporting.export_class(kind, self.look, self.of_class.shown_lines(), source)

    def _export_paper(self, kind: str) -> None:
        sat = self._sat(self.of_learner.paper.id) if self.of_learner.paper is not None else None
        if sat is not None:
            source = self._source(self._keeping.path)
            lines, logbook = self.of_learner.lines(), self._keeping.logbook
            self.exporting.export_paper(kind, sat, lines, source, logbook)

    def _tried(self, act: Callable[[], Made]) -> Made | None:
        """Do something, or say why it couldn't be done."""
        try:
            return act()
        except REFUSED as error:
            self._tell(*_told(error))
        return None

    def _tell(self, title: str, text: str) -> None:
        notice = Notice(title, text, self.window())
        notice.finish()
        self._window.show_dialog(notice)

    # --- files that come by themselves ----------------------------------------------------------

    def open_path(self, path: Path) -> None:
        """Bring a file in that was chosen elsewhere."""
        self.bringing.bring([path])

    def go_on_from(self, other: ResultsPage) -> None:
        """Go on at the sitting, the view and the paper that another one shows."""
        other.wait()
        self._wanted, self._server, self.look = other._wanted, other._server, other.look
        self._show()
        self.of_class.show_view(other.of_class.shown_view)
        paper = other.of_learner.paper
        if other.rooms.currentWidget() is other.of_learner and paper is not None:
            self.open_paper(paper.id)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files may be dropped here, several at once."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Bring in what was dropped, once the drop is over."""
        paths = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        event.acceptProposedAction()
        QTimer.singleShot(0, self, lambda: self.bringing.bring(paths))

    def showEvent(self, event: QShowEvent) -> None:
        """What was handed in since is in it."""
        super().showEvent(event)
        self.refresh()

    def sizeHint(self) -> QSize:
        """Room for a table."""
        return QSize(1100, 600)


def _told(error: Exception) -> tuple[str, str]:
    """What is wrong with a logbook, a server or a paper, and what to do."""
    if isinstance(error, SchoolError):
        return school_words(error)
    if isinstance(error, LogbookError):
        return trouble_words(error.trouble, str(error.path))
    if isinstance(error, FileError):
        faults = "\n".join(fault_words(fault)[0] for fault in error.faults[:3])
        what = translate("ResultsPage", "This paper can't be read by this version of the program.")
        return what, faults
    return translate("ResultsPage", "This paper isn't there any more."), ""
