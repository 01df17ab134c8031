"""What the page asks, one thing at a time: a file, a passphrase, a code, whether to begin."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Final

from PySide6.QtCore import QDateTime, QLocale, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from exercises.sitting.codes import LONGEST_CODE
from trainer.bench.worded import point, toned, wrapped
from trainer.taking.dialogs import PassphraseLine
from trainer.taking.handing_in import HandedIn
from trainer.taking.words import count_words

__all__ = [
    "AskStep",
    "DoneStep",
    "FileStep",
    "RulesStep",
    "Step",
    "WayButton",
    "centred",
    "code_step",
    "passphrase_step",
]

_WIDTH: Final = 620
"""Logical pixels of the column: lines that can be read."""


class WayButton(QPushButton):
    """A button that Enter presses too; held down from the line before, Enter presses nothing."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Enter like a click."""
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
        elif not event.isAutoRepeat():
            self.click()


class Step(QFrame):
    """A heading, some words, and what is asked.

    Signals
    -------
    went_back
        One step back.
    """

    went_back = Signal()

    def __init__(self, title: str) -> None:
        super().__init__()
        self.setProperty("kind", "panel")
        self.setFixedWidth(_WIDTH)
        self.setAccessibleName(title)
        self.body = QVBoxLayout(self)
        self.body.setContentsMargins(28, 22, 28, 22)
        self.body.setSpacing(12)
        self.heading = toned(title, "title")
        self.heading.setWordWrap(True)
        self.body.addWidget(self.heading)
        self.words = wrapped("")
        self.words.hide()
        self.body.addWidget(self.words)

    def say(self, text: str) -> None:
        """Say something below the heading."""
        self.words.setText(text)
        self.words.setVisible(bool(text))

    def begin(self) -> None:
        """Have the keys where they are wanted first."""

    def add_ways(self, forward: QPushButton, back: str = "") -> None:
        """Add the button that goes on, and one that goes back."""
        row = QHBoxLayout()
        row.setSpacing(8)
        forward.setProperty("kind", "primary")
        row.addStretch(1)
        if back:
            self.back = WayButton(back)
            self.back.clicked.connect(self.went_back)
            row.addWidget(self.back)
        row.addWidget(forward)
        self.body.addLayout(row)


class FileStep(Step):
    """Which sitting: a file, or one that was begun here and not handed in.

    Signals
    -------
    choose_asked
        A file is to be chosen.
    unfinished_chosen
        The journal of a sitting to go on with.
    """

    choose_asked = Signal()
    unfinished_chosen = Signal(Path)

    def __init__(self) -> None:
        super().__init__("")
        title = self.tr("Take a sitting")
        self.heading.setText(title)
        self.setAccessibleName(title)
        self.say(
            self.tr(
                "A sitting is a timed set of coupons without help, graded when you hand it in. "
                "The proctor has its file (it ends with .sitting) and types its passphrase."
            )
        )
        self._rows = QVBoxLayout()
        self._rows.setSpacing(8)
        self.body.addLayout(self._rows)
        self.buttons: list[QPushButton] = []
        self._parts: list[QFrame | QLabel] = []
        self.trouble = wrapped("", "wrong")
        self.trouble.hide()
        self.body.addWidget(self.trouble)
        self.other = WayButton()
        self.other.hide()
        self.body.addWidget(self.other, alignment=Qt.AlignmentFlag.AlignLeft)
        self.choose = WayButton(self.tr("Choose a sitting..."))
        self.choose.clicked.connect(self.choose_asked)
        self.add_ways(self.choose)

    def begin(self) -> None:
        """At what waits, or at the choice of a file."""
        self.first.setFocus()

    @property
    def first(self) -> QPushButton:
        """What waits, or the choice of a file."""
        return self.buttons[0] if self.buttons else self.choose

    def show_unfinished(self, journals: Sequence[tuple[Path, datetime]]) -> None:
        """List the sittings that were begun here and not handed in."""
        held = self.focusWidget() in self.buttons
        for part in self._parts:
            part.hide()
            part.deleteLater()
        self._parts, self.buttons = [], []
        for path, last in journals:
            row = QFrame()
            row.setProperty("kind", "card")
            line = QHBoxLayout(row)
            line.setContentsMargins(12, 8, 12, 8)
            moment = QDateTime.fromSecsSinceEpoch(round(last.timestamp()))
            when = QLocale().toString(moment, QLocale.FormatType.ShortFormat)
            words = wrapped(
                self.tr(
                    "A sitting that was begun here is not handed in. It was last at work {when}."
                ).format(when=when)
            )
            line.addWidget(words, 1)
            button = WayButton(self.tr("Go on with it..."))
            button.clicked.connect(lambda _=False, path=path: self.unfinished_chosen.emit(path))
            line.addWidget(button)
            self.buttons.append(button)
            self._parts.append(row)
            self._rows.addWidget(row)
        if held:
            self.first.setFocus()

    def say_trouble(self, words: str) -> None:
        """Say why a file can't be sat."""
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))
        self.other.hide()

    def offer(self, words: str) -> None:
        """Offer what can be done with a file that is something else."""
        self.other.setText(words)
        self.other.show()


class AskStep(Step):
    """One line to be typed.

    Parameters
    ----------
    label
        What the line is.
    line
        Where it is typed.
    forward
        What goes on.

    Signals
    -------
    said
        What was typed.
    """

    said = Signal(str)

    def __init__(self, title: str, label: str, line: QLineEdit, forward: str) -> None:
        super().__init__(title)
        name = toned(label, "strong")
        name.setBuddy(line)
        self.line = line
        self.line.setAccessibleName(label)
        self.line.returnPressed.connect(self._say)
        self.line.textEdited.connect(lambda _: self.say_trouble(""))
        self.trouble = wrapped("", "wrong")
        # Its line has its room: nothing moves when words come.
        self.trouble.setMinimumHeight(2 * self.trouble.fontMetrics().height())
        self.forward = WayButton(forward)
        self.forward.clicked.connect(self._say)
        for widget in (name, self.line, self.trouble):
            self.body.addWidget(widget)
        self.add_ways(self.forward, self.tr("Back"))

    def begin(self) -> None:
        """At the line."""
        self.line.setFocus()
        self.line.selectAll()

    def say_trouble(self, words: str) -> None:
        """Say what is wrong with what was typed."""
        self.trouble.setText(words)

    def show_busy(self, words: str) -> None:
        """Wait, and say what for; without words go on."""
        for widget in (self.line, self.forward, self.back):
            widget.setEnabled(not words)
        if words:
            self.trouble.setText(words)

    def _say(self) -> None:
        self.said.emit(self.line.text())


def passphrase_step(title: str, label: str, forward: str) -> AskStep:
    """Return a step that asks for a passphrase."""
    return AskStep(title, label, PassphraseLine(), forward)


def code_step(title: str, label: str, forward: str) -> AskStep:
    """Return a step that asks for a code."""
    line = QLineEdit()
    line.setMaxLength(2 * LONGEST_CODE)
    return AskStep(title, label, line, forward)


class RulesStep(Step):
    """What holds in this sitting, and its beginning.

    Signals
    -------
    begun
        It is to begin.
    """

    begun = Signal()

    def __init__(self) -> None:
        super().__init__("")
        self._lines = QVBoxLayout()
        self._lines.setSpacing(8)
        self.body.addLayout(self._lines)
        self._labels: list[QWidget] = []
        self.trouble = wrapped("", "wrong")
        self.trouble.hide()
        self.body.addWidget(self.trouble)
        self.fill = QCheckBox(self.tr("Fill the screen until it is handed in"))
        self.fill.setChecked(True)
        self.body.addWidget(self.fill)
        self.start = WayButton(self.tr("Begin: the clock starts"))
        self.start.clicked.connect(self.begun)
        self.add_ways(self.start, self.tr("Back"))

    def begin(self) -> None:
        """At the beginning."""
        self.start.setFocus()

    def show_rules(self, title: str, rules: Sequence[str]) -> None:
        """Show the sitting's title and what holds in it."""
        self.heading.setText(title)
        self.setAccessibleName(title)
        for label in self._labels:
            label.hide()
            label.deleteLater()
        self._labels = [point(rule) for rule in rules]
        for label in self._labels:
            self._lines.addWidget(label)
        self.say_trouble("")

    def say_trouble(self, words: str) -> None:
        """Say why it can't begin."""
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))


class DoneStep(Step):
    """It is handed in: what was, where it lies, a copy of it; never how it went.

    Signals
    -------
    copy_asked
        A copy is to be saved.
    retried
        Handing in is to be tried again.
    left
        The next learner may come.
    """

    copy_asked = Signal()
    retried = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__("")
        self.notes = wrapped("", "quiet")
        self.notes.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse
            | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.body.addWidget(self.notes)
        self.retry = WayButton(self.tr("Try again"))
        self.retry.clicked.connect(self.retried)
        self.copy = WayButton(self.tr("Save a copy..."))
        self.copy.clicked.connect(self.copy_asked)
        for button in (self.retry, self.copy):
            self.body.addWidget(button, alignment=Qt.AlignmentFlag.AlignLeft)
        self.close_button = WayButton(self.tr("Done"))
        self.close_button.clicked.connect(self.left)
        self.add_ways(self.close_button)

    def begin(self) -> None:
        """At the copy, or at what ends it."""
        shown = self.copy if self.copy.isVisibleTo(self) else self.retry
        (shown if shown.isVisibleTo(self) else self.close_button).setFocus()

    def show_busy(self) -> None:
        """It is being handed in."""
        self._head(self.tr("Handing in\u2026"))
        self.say(self.tr("All you have stated is kept. One moment."))
        self._show(copy=False, retry=False, close=False, notes="")

    def show_failed(self, reason: str) -> None:
        """The result can't be written; nothing is lost."""
        self._head(self.tr("The result can't be written yet"))
        self.say(
            self.tr(
                "{reason}\n\nNothing is lost: all you have stated is kept at this machine. Make "
                "room on the disk, and try again; or leave, and go on with it later."
            ).format(reason=reason)
        )
        self._show(copy=False, retry=True, close=True, notes="")

    def show_handed(self, handed: HandedIn, copied: str = "") -> None:
        """Say that it is handed in, with what."""
        ended = handed.result.ended
        self._head(
            self.tr("The time is up: your sitting is handed in")
            if ended == "time up"
            else self.tr("Your sitting is handed in")
        )
        lines = [self.tr("Of your coupons: {counts}.").format(counts=count_words(handed.counts))]
        if ended == "time up":
            lines.append(self.tr("What you had stated by then counts."))
        stops = len(handed.result.interruptions)
        if stops:
            lines.append(
                self.tr("The result notes %n interruption(s), with the time of each.", "", stops)
            )
        lines.append(
            self.tr("Your instructor opens it and tells you the marks. You may leave now.")
        )
        self.say("\n\n".join(lines))
        self._show(copy=True, retry=False, close=True, notes=self._notes(handed, copied))

    def _notes(self, handed: HandedIn, copied: str) -> str:
        lines = [self.tr("The sealed result lies at {file}").format(file=handed.file)]
        if handed.merged is None:
            lines.append(
                self.tr(
                    "It could not be taken into the logbook: {reason}. Open it on the page Results "
                    "later; it is safe in its file."
                ).format(reason=handed.trouble or self.tr("the logbook is not open"))
            )
        elif handed.merged.came == "clash":
            lines.append(
                self.tr(
                    "This code has handed in this sitting before: both results are kept, and the "
                    "instructor is told."
                )
            )
        if copied:
            lines.append(copied)
        return "\n".join(lines)

    def _head(self, words: str) -> None:
        self.heading.setText(words)
        self.setAccessibleName(words)

    def _show(self, *, copy: bool, retry: bool, close: bool, notes: str) -> None:
        self.notes.setText(notes)
        self.notes.setVisible(bool(notes))
        self.copy.setVisible(copy)
        self.retry.setVisible(retry)
        self.close_button.setVisible(close)


def centred(step: Step) -> QScrollArea:
    """Return a step in the middle of a page that scrolls where there is no room for it."""
    holder = QWidget()
    holder.setProperty("kind", "holder")
    column = QVBoxLayout(holder)
    column.setContentsMargins(12, 24, 12, 24)
    # Not by an alignment: with that lines are broken for another width than they get.
    row = QHBoxLayout()
    row.addStretch(1)
    row.addWidget(step)
    row.addStretch(1)
    column.addLayout(row)
    column.addStretch(1)
    scroll = QScrollArea()
    scroll.setWidgetResizable(True)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setWidget(holder)
    return scroll
