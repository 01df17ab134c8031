"""A sitting's class: papers, coupons, pairs and pictures, and who is ready, each a view."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import QSignalBlocker, QSize, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QHBoxLayout,
    QMenu,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from exercises.sitting.plan import SKILLS
from trainer.bench import words
from trainer.bench.worded import wrapped
from trainer.figures import figures
from trainer.landing import Landing
from trainer.logbook.plots import style_of
from trainer.look.tokens import Theme
from trainer.results.class_tables import (
    coupon_choices,
    coupon_columns,
    pair_columns,
    ready_choices,
    ready_columns,
)
from trainer.results.class_words import (
    class_sentences,
    coupon_sentences,
    pair_sentences,
    picture_of,
    picture_sentences,
)
from trainer.results.figures_of import when
from trainer.results.gathering import coupon_rows, learner_rows, pair_rows
from trainer.results.learner_table import learner_choices, learner_columns
from trainer.results.pictures_page import PicturesPage, picture_words
from trainer.results.reckoning import Reckoned
from trainer.results.rows import CouponRow, LearnerRow, PairRow, ReadyRow
from trainer.results.shut_papers import ShutStrip
from trainer.results.tabled import Tabled
from trainer.school.reading import ClassMember, Sitting

__all__ = ["VIEWS", "ClassResults"]

VIEWS: Final = ("learners", "coupons", "pairs", "pictures", "ready")
"""What can be looked at, in the order of the buttons."""


class ClassResults(QWidget):
    """The page.

    Signals
    -------
    source_chosen(server)
        The school's server is to be read, or the logbook of this machine.
    sitting_chosen(id)
        Another sitting is to be looked at.
    paper_asked(id)
        A paper is to be gone through.
    logbook_asked(learner)
        A learner's logbook is to be opened.
    bring_asked()
        Result files are to be brought in.
    export_asked(kind)
        What is shown, or all of it, is to be written to a file.
    view_chosen(name)
        Another view is shown.
    """

    source_chosen = Signal(bool)
    sitting_chosen = Signal(str)
    paper_asked = Signal(str)
    logbook_asked = Signal(str)
    bring_asked = Signal()
    export_asked = Signal(str)
    view_chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._head())
        self.trouble = wrapped("", "warning")
        self.trouble.hide()
        column.addWidget(self.trouble)
        self.shut = ShutStrip()
        column.addWidget(self.shut)
        column.addLayout(self._buttons())
        self.rooms = QStackedWidget()
        self._fill()
        column.addWidget(self.rooms, 1)
        Landing(self, self.rooms.currentWidget)
        self.show_view("learners")

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.sources = QComboBox()
        self.sources.setAccessibleName(self.tr("Where results are read from"))
        self.sources.setToolTip(self.tr("Where results are read from"))
        self.sources.addItems([self.tr("This machine"), self.tr("School's server")])
        self.sources.activated.connect(lambda at: self.source_chosen.emit(at == 1))
        self.sources.hide()
        row.addWidget(self.sources)
        self.sittings = QComboBox()
        self.sittings.setAccessibleName(self.tr("Sitting"))
        self.sittings.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.sittings.setMinimumContentsLength(24)
        self.sittings.setPlaceholderText(self.tr("No sitting yet"))
        self.sittings.activated.connect(
            lambda at: self.sitting_chosen.emit(str(self.sittings.itemData(at)))
        )
        row.addWidget(self.sittings, 1)
        self.busy = wrapped("", "quiet")
        self.busy.setWordWrap(False)
        row.addWidget(self.busy)
        row.addStretch(1)
        self.bring = QPushButton(self.tr("Bring in results..."))
        self.bring.setProperty("kind", "segment")
        self.bring.setToolTip(
            self.tr("Result files from a stick or a folder, several at once; or drop them here")
        )
        self.bring.clicked.connect(self.bring_asked)
        row.addWidget(self.bring)
        self.export = QPushButton(self.tr("Export"))
        self.export.setProperty("kind", "segment")
        self._menu = QMenu(self.export)
        self._fill_menu()
        self.export.setMenu(self._menu)
        row.addWidget(self.export)
        return row

    def _fill_menu(self) -> None:
        self.exports: dict[str, QAction] = {}
        entries = [
            (self.tr("This table as it is shown (CSV)..."), "table"),
            (self.tr("Every answer of this sitting (CSV)..."), "csv"),
            (self.tr("Statements of this sitting (xAPI)..."), "xapi"),
            (self.tr("Sheet of the class to print (PDF)..."), "pdf"),
            (self.tr("Sheet of the class for screen readers (HTML)..."), "html"),
        ]
        for text, kind in entries:
            action = self._menu.addAction(text)
            self.exports[kind] = action
            action.triggered.connect(lambda _=False, kind=kind: self.export_asked.emit(kind))

    def _buttons(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(4)
        titles = {
            "learners": self.tr("Learners"),
            "coupons": self.tr("Coupons"),
            "pairs": self.tr("Wrong together"),
            "pictures": self.tr("Pictures"),
            "ready": self.tr("Who is ready"),
        }
        group = QButtonGroup(self)
        self.buttons: dict[str, QPushButton] = {}
        for name in VIEWS:
            button = QPushButton(titles[name])
            button.setProperty("kind", "segment")
            button.setCheckable(True)
            button.clicked.connect(lambda _=False, name=name: self.show_view(name))
            group.addButton(button)
            self.buttons[name] = button
            row.addWidget(button)
        row.addStretch(1)
        return row

    def _fill(self) -> None:
        find = self.tr("Find...")
        self.learners: Tabled[LearnerRow] = Tabled(
            self.tr("Papers of the sitting"), find, learner_columns(SKILLS), lambda row: row.id,
            self.tr("Open the paper"),
        )  # fmt: skip
        self.learners.opened.connect(lambda row: self.paper_asked.emit(row.id))
        self.coupons: Tabled[CouponRow] = Tabled(
            self.tr("Coupons of the sitting"), find, coupon_columns(), lambda row: row.id
        )
        self.pairs: Tabled[PairRow] = Tabled(
            self.tr("Coupons got wrong together"), find, pair_columns(), lambda row: row.id
        )
        self.pictures = PicturesPage()
        self.ready: Tabled[ReadyRow] = Tabled(
            self.tr("Who is ready"), find, ready_columns(), lambda row: row.id,
            self.tr("Open the logbook"),
        )  # fmt: skip
        self.ready.opened.connect(lambda row: self.logbook_asked.emit(row.id))
        self.evidence = wrapped("", "plain")
        self.evidence.setMinimumHeight(3 * self.evidence.fontMetrics().lineSpacing())
        self.ready.insert_below(self.evidence)
        self.ready.table.moved.connect(self._show_evidence)
        self._rooms: dict[str, QWidget] = {
            "learners": self.learners, "coupons": self.coupons, "pairs": self.pairs,
            "pictures": self.pictures, "ready": self.ready,
        }  # fmt: skip
        for room in self._rooms.values():
            self.rooms.addWidget(room)

    def minimumSizeHint(self) -> QSize:
        """Not what its parts would like: no window could become narrow."""
        return QSize(700, 320)

    # --- what is shown --------------------------------------------------------------------------

    @property
    def shown_view(self) -> str:
        """The name of the view that is shown."""
        shown = self.rooms.currentWidget()
        return next(name for name, room in self._rooms.items() if room is shown)

    def shown_lines(self) -> list[list[str]]:
        """The table that is shown, as text with its titles; nothing where none is."""
        tables = {"learners": self.learners.lines, "coupons": self.coupons.lines,
                  "pairs": self.pairs.lines, "ready": self.ready.lines}  # fmt: skip
        lines = tables.get(self.shown_view)
        return lines() if lines is not None else []

    def show_view(self, name: str) -> None:
        """Show one of `VIEWS`."""
        self.rooms.setCurrentWidget(self._rooms[name])
        self.buttons[name].setChecked(True)
        self.exports["table"].setEnabled(name != "pictures")
        self.sittings.setEnabled(name != "ready" and self.sittings.count() > 0)
        self.view_chosen.emit(name)

    def show_sittings(self, sittings: Sequence[Sitting], chosen: str) -> None:
        """Offer the sittings of which something was handed in."""
        with QSignalBlocker(self.sittings):
            self.sittings.clear()
            for one in sittings:
                title = one.title.in_language(words.language()) or one.id
                papers = self.tr("%n paper(s)", "", one.papers)
                self.sittings.addItem(f"{title}, {when(one.last)}, {papers}", one.id)
            found = self.sittings.findData(chosen)
            self.sittings.setCurrentIndex(found if sittings else -1)
        self.sittings.setEnabled(bool(sittings) and self.shown_view != "ready")

    def show_sources(self, *, offered: bool, server: bool) -> None:
        """Offer the school's server, if there is one, and say which is read."""
        self.sources.setVisible(offered)
        self.sources.setCurrentIndex(int(server))

    def show_trouble(self, said: str) -> None:
        """Say what keeps results from being read; nothing, if `said` is empty."""
        self.trouble.setText(said)
        self.trouble.setVisible(bool(said))

    def show_busy(self, said: str) -> None:
        """Say what is going on, or with nothing that nothing is."""
        self.busy.setText(said)

    def show_class(
        self, reckoned: Reckoned | None, known: Mapping[str, ClassMember], theme: Theme
    ) -> None:
        """Show what a sitting's papers come to; with None, that there is none."""
        self._dress(theme)
        skills = reckoned.skills if reckoned is not None else list(SKILLS)
        self.learners.lay(learner_columns(skills))
        papers = learner_rows(reckoned, known) if reckoned is not None else []
        named = sorted({name for row in papers for name in row.groups})
        self.learners.show_rows(
            papers, learner_choices(papers, skills, named),
            class_sentences(reckoned) if reckoned is not None and papers else "",
            self._nothing(),
        )  # fmt: skip
        coupons = coupon_rows(reckoned) if reckoned is not None else []
        self.coupons.show_rows(
            coupons, coupon_choices(coupons),
            coupon_sentences(reckoned) if reckoned is not None and papers else "",
            self._nothing(),
        )  # fmt: skip
        pairs = pair_rows(reckoned) if reckoned is not None else []
        said = pair_sentences(reckoned) if reckoned is not None and papers else ""
        none = self.tr("No two coupons were got wrong by the same learner.")
        self.pairs.show_rows(pairs, (), said, none if papers else self._nothing())
        if reckoned is not None:
            picture = picture_of(reckoned)
            self.pictures.show_class(
                picture, picture_sentences(reckoned, picture),
                style_of(theme, picture_words(), figures("0.5")[1]),
            )  # fmt: skip
        self.buttons["pictures"].setEnabled(bool(papers))
        for kind in ("csv", "xapi", "pdf", "html"):
            self.exports[kind].setEnabled(bool(papers))

    def _nothing(self) -> str:
        if not self.trouble.isHidden():
            # Whether anything was handed in nobody knows then.
            return self.tr("Nothing can be read: see above.")
        if not self.shut.isHidden():
            return self.tr("All that was handed in of this sitting is shut: see above.")
        return self.tr(
            "Nothing was handed in yet. Sittings that are sat on this machine come here by "
            "themselves; results from other machines are brought in from their files: "
            "choose them above, or drop them here."
        )

    def show_ready(self, rows: Sequence[ReadyRow], theme: Theme) -> None:
        """Show who is ready."""
        self._dress(theme)
        named = sorted({name for row in rows for name in row.groups})
        count = dict.fromkeys(("ready", "not yet", "not enough seen"), 0)
        for row in rows:
            count[row.verdict] += 1
        said = self.tr(
            "{ready} ready, {not_yet} not yet, {unseen} not seen enough of. What counts: calls at "
            "the bench and in sittings, made before anything told how they went."
        ).format(ready=count["ready"], not_yet=count["not yet"], unseen=count["not enough seen"])
        self.ready.show_rows(
            rows, ready_choices(named), said if rows else "",
            self.tr("There is no learner yet: add the class under Class, or bring results in."),
        )  # fmt: skip
        self._show_evidence()

    def _show_evidence(self) -> None:
        row = self.ready.table.current
        self.evidence.setText(f"{row.code or row.name}: {row.sentence}" if row is not None else "")

    def _dress(self, theme: Theme) -> None:
        for tabled in (self.learners, self.coupons, self.pairs, self.ready):
            tabled.wear(theme)
