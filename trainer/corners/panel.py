"""Below the pictures: knobs, and what else can be asked for; and the talk's own line."""

from __future__ import annotations

from functools import partial
from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
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
        knobs = QHBoxLayout()
        knobs.setSpacing(14)
        for row in (*self.knobs.values(), self.leaf):
            knobs.addWidget(row, 1)
        column.addLayout(knobs)
        column.addLayout(self._buttons())
        for row in self.knobs.values():
            row.turned.connect(self.turned)
            row.settled.connect(self.settled)
            row.refused.connect(self.refused)
        self.leaf.picked.connect(self.picked)
        self.leaf.rack_asked.connect(self.rack_asked)

    def _buttons(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(6)
        self.equal = QCheckBox(self.tr("Equal legs"))
        self.equal.clicked.connect(lambda: self.asked.emit("equal"))
        row.addWidget(self.equal)
        row.addSpacing(8)
        self.over = self._button(row, self.tr("Turn over"), "over", self.tr("T"))
        row.addSpacing(8)
        draw = QLabel(self.tr("Draw"))
        draw.setProperty("tone", "quiet")
        row.addWidget(draw)
        self.drawn: dict[Drawn, QPushButton] = {}
        for key, drawn in zip("123", _DRAWN, strict=True):
            button = self._button(row, drawn_word(drawn), f"draw {drawn}", key)
            button.setCheckable(True)
            self.drawn[drawn] = button
        row.addStretch(1)
        self.undo = self._button(row, self.tr("Undo"), "undo", "Ctrl+Z")
        self.again = self._button(row, self.tr("Reset"), "again", "Home")
        row.addSpacing(8)
        self.copy = self._button(row, self.tr("Copy"), "copy", "Ctrl+C")
        self.save = self._button(row, self.tr("Save"), "", "Ctrl+S")
        self.save.setMenu(self._save_menu())
        row.addSpacing(8)
        self.full = self._button(row, self.tr("Full screen"), "full", "F11")
        self.talk = self._button(row, self.tr("Give the talk"), "talk", "\u2192")
        return row

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
        row = QHBoxLayout(self)
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
        self.setFixedHeight(round(2.9 * size + 18.0))
