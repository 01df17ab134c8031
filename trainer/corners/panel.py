"""Below the pictures: knobs, and what else can be asked for; and the talk's own line."""

from __future__ import annotations

from functools import partial
from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFont, QFontMetrics, QResizeEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.corners.knobs import KnobRow, LeafRow
from trainer.corners.state import KNOBS, Corners, Drawn
from trainer.corners.words import drawn_word

__all__ = ["CaptionBar", "Panel"]

_LEAST: Final = 860
"""Logical px of width that the knobs still do with."""

_DRAWN: Final[tuple[Drawn, ...]] = ("legs", "triangle", "throats")


class Panel(QFrame):
    """The knobs and the buttons.

    Signals
    -------
    turned(knob, value), settled(), refused(words), picked(mark), rack_asked(name)
        From the knobs.
    asked(name)
        ``equal``, ``over``, ``draw legs`` and so on, ``talk``, ``full``, ``copy``, ``save png``
        and so on, ``again``, ``undo``.
    """

    turned = Signal(str, float)
    settled = Signal()
    refused = Signal(str)
    picked = Signal(str)
    rack_asked = Signal(str)
    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 14, 8)
        column.setSpacing(6)
        self.knobs = {knob: KnobRow(knob) for knob in KNOBS}
        self.leaf = LeafRow()
        self._narrow = False
        self._knobs = QWidget()
        self._knobs.setProperty("kind", "holder")
        knobs = QHBoxLayout(self._knobs)
        knobs.setContentsMargins(0, 0, 0, 0)
        knobs.setSpacing(14)
        for row in (*self.knobs.values(), self.leaf):
            knobs.addWidget(row, 1)
        column.addWidget(self._knobs)
        self._add_buttons(column)
        # Not the panel's own wish in one row: else no window could become narrow.
        self.setMinimumWidth(_LEAST)
        for row in self.knobs.values():
            row.turned.connect(self.turned)
            row.settled.connect(self.settled)
            row.refused.connect(self.refused)
        self.leaf.picked.connect(self.picked)
        self.leaf.rack_asked.connect(self.rack_asked)

    def _add_buttons(self, column: QVBoxLayout) -> None:
        """The buttons: about the picture at the left, its uses at the right, or below them."""
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(16)
        self._rows.setVerticalSpacing(6)
        self._rows.setColumnStretch(0, 1)
        self._left, self._right = QWidget(), QWidget()
        for part, fill in ((self._left, self._fill_left), (self._right, self._fill_right)):
            part.setProperty("kind", "holder")
            row = QHBoxLayout(part)
            row.setContentsMargins(0, 0, 0, 0)
            row.setSpacing(6)
            fill(row)
        column.addLayout(self._rows)
        self._stacked: bool | None = None
        self._stack(stacked=False)

    def _stack(self, *, stacked: bool) -> None:
        if stacked == self._stacked:
            return
        self._stacked = stacked
        left, right = Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignRight
        self._rows.addWidget(self._left, 0, 0, left)
        place = (1, 0) if stacked else (0, 1)
        self._rows.addWidget(self._right, *place, left if stacked else right)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put what is too long for a row, in whatever language, below each other."""
        super().resizeEvent(event)
        each = (self.contentsRect().width() - 28 - 14 * len(self.knobs)) / (len(self.knobs) + 1)
        narrow = any(row.wanted > each - 6 for row in self.knobs.values())
        if narrow != self._narrow:
            self._narrow = narrow
            for row in self.knobs.values():
                row.stack(stacked=narrow)
            self.leaf.stack(stacked=narrow)
        wanted = self._left.sizeHint().width() + self._right.sizeHint().width() + 16
        self._stack(stacked=wanted > self.contentsRect().width() - 28)

    def _fill_left(self, row: QHBoxLayout) -> None:
        self.equal = QCheckBox(self.tr("Equal legs"))
        self.equal.setToolTip(self.tr("Equal legs (E)"))
        self.equal.clicked.connect(lambda: self.asked.emit("equal"))
        row.addWidget(self.equal)
        row.addSpacing(8)
        self.over = self._button(row, self.tr("Turn over"), "over", "T")
        row.addSpacing(8)
        draw = QLabel(self.tr("Draw"))
        draw.setProperty("tone", "quiet")
        row.addWidget(draw)
        self.drawn: dict[Drawn, QPushButton] = {}
        for key, drawn in zip("123", _DRAWN, strict=True):
            button = self._button(row, drawn_word(drawn), f"draw {drawn}", key)
            button.setCheckable(True)
            self.drawn[drawn] = button

    def _fill_right(self, row: QHBoxLayout) -> None:
        self.undo = self._button(row, self.tr("Undo"), "undo", "Ctrl+Z")
        self.again = self._button(row, self.tr("Reset"), "again", self.tr("Home"))
        row.addSpacing(8)
        self.copy = self._button(row, self.tr("Copy"), "copy", "Ctrl+C")
        self.save = self._button(row, self.tr("Save"), "", "Ctrl+S")
        self.save.setMenu(self._save_menu())
        row.addSpacing(8)
        self.full = self._button(row, self.tr("Full screen"), "full", "F11")
        self.talk = self._button(row, self.tr("Give the talk"), "talk", "\u2192")

    def _button(self, row: QHBoxLayout, words: str, name: str, key: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.setToolTip(f"{words} ({key})")
        if name:
            button.clicked.connect(lambda: self.asked.emit(name))
        row.addWidget(button)
        return button

    def _save_menu(self) -> QMenu:
        menu = QMenu(self)
        for words, name in (
            (self.tr("PNG for a slide, 1920 \u00d7 1080..."), "save slide"),
            (self.tr("PNG for print, A4 wide at 300 dpi..."), "save print"),
            (self.tr("SVG drawing..."), "save svg"),
            (self.tr("PDF page..."), "save pdf"),
        ):
            menu.addAction(words).triggered.connect(partial(self._ask, name))
        return menu

    def _ask(self, name: str, _checked: bool = False) -> None:
        self.asked.emit(name)

    def show_state(self, state: Corners, unit: Unit, *, can_undo: bool, talking: bool) -> None:
        """Show what the knobs stand at."""
        for row in self.knobs.values():
            row.show_state(state, unit)
        self.leaf.show_state(state)
        with QSignalBlocker(self.equal):
            self.equal.setChecked(state.equal)
        for drawn, button in self.drawn.items():
            button.setChecked(drawn in state.drawn)
        self.undo.setEnabled(can_undo)
        # The talk turns them; its caption has their place.
        self._knobs.setVisible(not talking)
        self.talk.setText(self.tr("End the talk") if talking else self.tr("Give the talk"))


class CaptionBar(QFrame):
    """What the talk says, and the way on and back.

    Signals
    -------
    forward(), back(), ended()
        The buttons.
    """

    forward = Signal()
    back = Signal()
    ended = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 10, 8)
        row.setSpacing(14)
        self.topic = QLabel()
        self.topic.setProperty("tone", "strong")
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        for label in (self.topic, self.words):
            label.setAlignment(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        row.addWidget(self.topic)
        row.addWidget(self.words, 1)
        self.previous = self._button(row, "\u2039", self.tr("Back (Left, Page Up)"))
        self.next = self._button(row, "\u203a", self.tr("On (Right, Space, Page Down)"))
        self.end = self._button(row, "\u00d7", self.tr("End the talk (Esc)"))
        self.previous.clicked.connect(self.back)
        self.next.clicked.connect(self.forward)
        self.end.clicked.connect(self.ended)

    def _button(self, row: QHBoxLayout, sign: str, name: str) -> QPushButton:
        button = QPushButton(sign)
        button.setProperty("kind", "small")
        button.setFixedSize(32, 32)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        row.addWidget(button)
        return button

    def say(self, at: int, count: int, topic: str, words: str, size: float) -> None:
        """Show a sentence, in type of `size` logical px; the room for it stays the same."""
        place = translate("Talk", "{at} of {count}").format(at=at, count=count)
        self.topic.setText(f"{place}\n{topic}")
        self.words.setText(words)
        for label in (self.topic, self.words):
            style = f"font-size: {size:g}px;"
            if label.styleSheet() != style:
                label.setStyleSheet(style)
        # Room for two lines, so that the pictures stay where they are; for more only if need be.
        # On a wall the words stand off the edge and off each other as far as on a desk.
        about = max(16, round(0.8 * size))
        self._row.setContentsMargins(about, 8, about // 2, 8)
        self._row.setSpacing(max(14, about - 2))
        font = QFont(self.words.font())
        font.setPixelSize(round(size))
        metrics = QFontMetrics(font)
        strong = QFont(font)
        strong.setWeight(QFont.Weight.DemiBold)
        taken = QFontMetrics(strong).boundingRect(0, 0, 4096, 4096, 0, self.topic.text()).width()
        wide = max(120, self.width() - taken - 130 - 4 * about)
        wraps = int(Qt.TextFlag.TextWordWrap)
        needed = metrics.boundingRect(0, 0, wide, 4096, wraps, words).height()
        self.setFixedHeight(max(needed, 2 * metrics.lineSpacing()) + 20)
