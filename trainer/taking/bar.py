"""The bar over a sitting: which coupon, marked or not, the time that is left, ways out."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QMenu, QPushButton, QSizePolicy, QWidget

from trainer.bench.worded import toned
from trainer.cut_words import CutLabel
from trainer.taking.sitting import Place
from trainer.taking.words import FINAL_MS, left_words, mark_passed, spoken_left

__all__ = ["SittingBar", "TimeView"]

_HEIGHT: Final = 48
"""Logical pixels."""

_TELLING: Final = 12
"""Letters of the title that still say which sitting it is."""


class TimeView(QWidget):
    """The time that is left, in words; it can be hidden, and comes back for the last minutes.

    Signals
    -------
    spoken
        What a screen reader was told: at set marks only.
    """

    spoken = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        self.words, self.boxed = toned("", "heading"), toned("", "saying")
        for label in (self.words, self.boxed):
            label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            # A name of its own: a text that changes by the second must not be told by the second.
            label.setAccessibleName(self.tr("Time left"))
            row.addWidget(label, alignment=Qt.AlignmentFlag.AlignVCenter)
        self.switch = QPushButton()
        self.switch.setProperty("kind", "link")
        self.switch.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.switch.clicked.connect(self.hide_or_show)
        row.addWidget(self.switch)
        self._hidden = False
        self._ms: int | None = None
        self._show()

    @property
    def shown(self) -> bool:
        """Whether the time can be read."""
        return not self._hidden or (self._ms is not None and self._ms <= FINAL_MS)

    def hide_or_show(self) -> None:
        """Hide the time, or show it again; not in the last minutes."""
        if self._ms is None or self._ms > FINAL_MS:
            self._hidden = not self._hidden
            self._show()

    def show_left(self, ms: int) -> None:
        """Show what is left; say it where a mark is passed."""
        before, self._ms = self._ms, ms
        self._show()
        mark = mark_passed(before, ms) if before is not None else None
        if mark is not None:
            self._speak(spoken_left(mark))

    def _speak(self, words: str) -> None:
        self.spoken.emit(words)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, words))

    def _show(self) -> None:
        final = self._ms is not None and self._ms <= FINAL_MS
        words = left_words(self._ms) if self._ms is not None else ""
        # At the end it stands in a box: told by more than a colour.
        self.boxed.setVisible(final)
        self.words.setVisible(not final)
        self.boxed.setText(words)
        self.words.setText(words if self.shown else self.tr("time is hidden"))
        self.switch.setVisible(not final)
        self.switch.setText(self.tr("show  Y") if self._hidden else self.tr("hide  Y"))
        self.switch.setAccessibleName(
            self.tr("Show the time left") if self._hidden else self.tr("Hide the time left")
        )


class SittingBar(QFrame):
    """The bar.

    Signals
    -------
    stepped
        -1 or 1: the coupon before or after.
    flag_asked
        The coupon is to be marked for review, or no more.
    hand_in_asked
        What was answered is to be handed in.
    """

    stepped = Signal(int)
    flag_asked = Signal()
    hand_in_asked = Signal()

    def __init__(self, title: str, code: str, more: QMenu, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "bar")
        self.setFixedHeight(_HEIGHT)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 12, 0)
        row.setSpacing(8)
        self.title = CutLabel(telling=_TELLING)
        self.title.setText(f"{title} \u00b7 {code}")
        self.title.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.title.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        row.addWidget(self.title, 1)
        self.previous = self._small("\u2039", self.tr("Coupon before"), "PgUp")
        self.previous.clicked.connect(lambda: self.stepped.emit(-1))
        self.where = toned("", "heading")
        self.next = self._small("\u203a", self.tr("Coupon after"), "PgDn")
        self.next.clicked.connect(lambda: self.stepped.emit(1))
        self.flag = QPushButton(self.tr("Mark for review  V"))
        self.flag.setProperty("kind", "segment")
        self.flag.setCheckable(True)
        self.flag.setAccessibleName(self.tr("Mark for review"))
        self.flag.setAccessibleDescription("V")
        self.flag.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.flag.clicked.connect(self._ask_flag)
        for widget in (self.previous, self.where, self.next, self.flag):
            row.addWidget(widget)
        row.addStretch(1)
        self.time = TimeView()
        row.addWidget(self.time)
        row.addSpacing(8)
        self._add_ways_out(row, more)

    def _add_ways_out(self, row: QHBoxLayout, more: QMenu) -> None:
        self.hand_in = QPushButton(self.tr("Hand in..."))
        self.hand_in.setToolTip(self.tr("Hand in: first a list of what is unanswered  Ctrl+H"))
        self.hand_in.setAccessibleDescription(self.tr("Ctrl+H"))
        self.hand_in.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.hand_in.clicked.connect(self.hand_in_asked)
        row.addWidget(self.hand_in)
        self.more = self._small("\u22ef", self.tr("More: look, keys, leaving"), "")
        self.more.setMenu(more)
        self.more.setStyleSheet("QPushButton::menu-indicator { image: none; width: 0; }")
        row.addWidget(self.more)

    def _small(self, sign: str, name: str, key: str) -> QPushButton:
        button = QPushButton(sign)
        button.setProperty("kind", "small")
        button.setFixedSize(30, 30)
        button.setAccessibleName(name)
        button.setToolTip(f"{name}  {key}".rstrip())
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        return button

    def minimumSizeHint(self) -> QSize:
        """A narrow window shortens the title."""
        return QSize(640, _HEIGHT)

    def _ask_flag(self) -> None:
        # Whether it is marked is the sitting's to say, not the click's.
        with QSignalBlocker(self.flag):
            self.flag.setChecked(not self.flag.isChecked())
        self.flag_asked.emit()

    def show_place(self, place: Place, count: int) -> None:
        """Show which coupon is on the bench, and whether it is marked."""
        self.where.setText(
            self.tr("Coupon {number} of {count}").format(number=place.number, count=count)
        )
        self.previous.setEnabled(place.number > 1)
        self.next.setEnabled(place.number < count)
        with QSignalBlocker(self.flag):
            self.flag.setChecked(place.flagged)
        self.flag.setText(
            self.tr("Marked for review  V") if place.flagged else self.tr("Mark for review  V")
        )
