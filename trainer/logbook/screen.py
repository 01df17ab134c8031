"""The logbook: what one learner's calls say of them, and what is done with the file of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from geometry.lengths import Unit
from trainer.figures import figures
from trainer.hint import Hint
from trainer.landing import Landing
from trainer.logbook.dealing import Dealing
from trainer.logbook.findings import NEWEST, Findings, findings_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.people import PeoplePanel
from trainer.logbook.plot_view import PlotView
from trainer.logbook.plots import PLOTS, Style, style_of
from trainer.logbook.store import LogbookError
from trainer.logbook.words import heading, plot_words, sentences, trouble_words
from trainer.window import WindowFrame

__all__ = ["LogbookScreen"]

_READABLE: Final = 420
"""Logical px: how wide a sentence is that stands alone."""
_PEOPLE: Final = 216
_TWO_COLUMNS: Final = 900
"""Logical px of the room for cards from which two stand side by side."""


@dataclass(slots=True)
class _Card:
    """A finding: its frame, its sentences and its picture."""

    name: str
    frame: QFrame
    title: QLabel
    lead: QLabel
    said: QLabel
    picture: PlotView


class LogbookScreen(QWidget):
    """The logbook.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    keeping
        What keeps the calls.
    """

    def __init__(
        self, window: WindowFrame, keeping: Keeping, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self.keeping = keeping
        self.findings: Findings | None = None
        self.people = PeoplePanel()
        self.people.setFixedWidth(_PEOPLE)
        self.dealing = Dealing(window, keeping, self)
        self._cards: list[_Card] = []
        self._columns = 0
        self._fill()
        self.people.chosen.connect(self._choose)
        self.people.asked.connect(self.dealing.deal)
        self.dealing.changed.connect(self.show_all)
        window.theme_changed.connect(self._show_pictures)
        window.settings_changed.connect(self._show_words)

    # --- what it is made of ---------------------------------------------------------------------

    def _fill(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 12, 12, 12)
        row.setSpacing(12)
        row.addWidget(self.people)
        self._room = QWidget()
        self._room.setProperty("kind", "holder")
        column = QVBoxLayout(self._room)
        column.setContentsMargins(0, 0, 4, 0)
        column.setSpacing(12)
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self.trouble.setProperty("tone", "warning")
        self.trouble.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self.again = QPushButton(self.tr("Try again"))
        self.again.clicked.connect(self._try_again)
        # Lines that one reads at a glance, not one across the window.
        self.empty = Hint(_READABLE)
        self._void = QFrame()
        self._void.setProperty("kind", "panel")
        room = QVBoxLayout(self._void)
        room.addStretch(2)
        room.addWidget(self.empty, alignment=Qt.AlignmentFlag.AlignHCenter)
        room.addStretch(3)
        for widget in (self.trouble, self.again, self._void):
            column.addWidget(widget, 1 if widget is self._void else 0)
            widget.hide()
        self._grid = QGridLayout()
        self._grid.setSpacing(12)
        column.addLayout(self._grid, 1)
        self._cards = [self._card(name) for name in PLOTS]
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(self._room)
        self._scroll = scroll
        row.addWidget(scroll, 1)
        Landing(self, lambda: self.people.list)

    def _card(self, name: str) -> _Card:
        frame = QFrame()
        frame.setProperty("kind", "panel")
        column = QVBoxLayout(frame)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(6)
        title = QLabel(heading(name))
        title.setProperty("tone", "heading")
        lead, said = QLabel(), QLabel()
        said.setProperty("tone", "quiet")
        picture = PlotView(name)
        column.addWidget(title)
        for label in (lead, said):
            label.setWordWrap(True)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            column.addWidget(label)
        column.addWidget(picture, 100)
        # Without a picture the words stay at the top.
        column.addStretch(1)
        return _Card(name, frame, title, lead, said, picture)

    def _arrange(self) -> None:
        """One column or two; the learner's line has a row of its own."""
        wide = self._scroll.viewport().width() >= _TWO_COLUMNS
        columns = 2 if wide else 1
        if columns == self._columns:
            return
        self._columns = columns
        for card in self._cards:
            self._grid.removeWidget(card.frame)
        place = 0
        for card in self._cards:
            if card.name == "line" or columns == 1:
                place += place % columns
                self._grid.addWidget(card.frame, place // columns, 0, 1, columns)
                place += columns
            else:
                self._grid.addWidget(card.frame, place // columns, place % columns)
                place += 1
        for at in range(columns):
            self._grid.setColumnStretch(at, 1)

    # --- what it shows --------------------------------------------------------------------------

    @property
    def _unit(self) -> Unit:
        return self.window_frame.settings.unit or "mm"

    @property
    def style(self) -> Style:  # type: ignore[override]
        """How pictures look now."""
        return style_of(self.window_frame.theme, plot_words(), figures("0.5")[1])

    def show_all(self) -> None:
        """Read the logbook anew, and show what it says."""
        keeping = self.keeping
        found: Findings | None = None
        learners = []
        trouble = keeping.trouble
        if keeping.logbook is not None and keeping.learner is not None:
            try:
                learners = keeping.logbook.learners()
                tallies = keeping.logbook.tallies(keeping.learner.id, newest_lines=NEWEST)
                repeats = keeping.logbook.repeats(keeping.learner.id)
                found = findings_of(tallies, repeats)
            except LogbookError as error:
                trouble = error
        self.findings = found
        self.people.show_learners(learners, keeping.learner if learners else None)
        self._show_trouble(trouble)
        self._show_words()
        self._show_pictures()

    def _show_trouble(self, trouble: LogbookError | None) -> None:
        logbook = self.keeping.logbook
        set_back = trouble is None and logbook is not None and logbook.clock_went_back
        self.trouble.setVisible(trouble is not None or set_back)
        self.again.setVisible(trouble is not None)
        if set_back:
            self.trouble.setText(
                self.tr(
                    "The clock of this machine was set back: calls keep the order that they were "
                    "made in, but their days may be wrong. Set the clock right."
                )
            )
        if trouble is not None:
            first, more = trouble_words(trouble.trouble, str(trouble.path))
            aside = self.keeping.kept_aside
            waiting = self.tr("%n call(s) kept aside.", "", aside) if aside else ""
            self.trouble.setText("\n".join(part for part in (first, more, waiting) if part))

    def _show_words(self) -> None:
        found = self.findings
        nothing = found is not None and not found.calls and not found.weeks and not found.faults
        self._void.setVisible(nothing)
        # A stop of Tab only where there is something to scroll.
        stops = Qt.FocusPolicy.NoFocus if nothing else Qt.FocusPolicy.StrongFocus
        self._scroll.setFocusPolicy(stops)
        if nothing and self.keeping.learner is not None:
            text = self.tr(
                "{name} has made no call yet. Each call that is put on record at the bench comes "
                "here; what it says of them grows from the first on."
            )
            self.empty.setText(text.format(name=self.keeping.learner.name))
        for card in self._cards:
            card.frame.setVisible(found is not None and not nothing)
            if found is not None:
                said = sentences(card.name, found, self._unit)
                card.lead.setText(said[0])
                card.said.setText("\n".join(said[1:]))
                card.said.setVisible(len(said) > 1)
                card.picture.setAccessibleName(card.title.text())
                card.picture.setAccessibleDescription(" ".join(said))

    def _show_pictures(self) -> None:
        if self.findings is None:
            return
        style = self.style
        for card in self._cards:
            card.picture.setVisible(_drawable(card.name, self.findings))
            card.picture.show_findings(self.findings, style)

    # --- what is done ---------------------------------------------------------------------------

    def _choose(self, learner: str) -> None:
        self.dealing.choose(learner)

    def _try_again(self) -> None:
        self.keeping.open(self.keeping.learner.id if self.keeping.learner else None)
        self.show_all()

    def showEvent(self, event: QShowEvent) -> None:
        """Whatever was called since is in it."""
        super().showEvent(event)
        self._arrange()
        self.show_all()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One column or two."""
        super().resizeEvent(event)
        self._arrange()

    def sizeHint(self) -> QSize:
        """Room for two cards."""
        return QSize(1100, 640)


def _drawable(name: str, found: Findings) -> bool:
    """Whether a picture has anything to show: what claims nothing draws nothing."""
    return {
        "line": found.line is not None,
        "rates": found.rates.misses is not None or found.rates.false_alarms is not None,
        "faults": bool(found.faults),
        "sure": bool(found.sure),
        "weeks": len(found.weeks) > 1,
    }[name]
