"""The sheet of keys: groups in two columns, or in one where there is no room for two."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from trainer.key_table import KeyGroup

__all__ = ["KeySheet"]

_BETWEEN: Final = 28
"""Between two columns, px."""

_ABOUT: Final = 12
"""Between the words and the ring of the focus, px."""

_WORDS: Final = 260
"""The least that what a key does is wide, px; beyond it goes on in the next line."""

_FEW: Final = 3
"""Rows: a group with less than twice as many isn't parted."""

_SHORTEST: Final = 160
"""The least that the sheet is high, px."""


class KeySheet(QScrollArea):
    """Scrolls up and down, never sideways.

    Parameters
    ----------
    screens
        Title of each screen and its groups; one without a title holds everywhere.
    """

    def __init__(
        self,
        screens: Sequence[tuple[str, Sequence[KeyGroup]]],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._rows: list[QBoxLayout] = []
        self._sheet = QWidget()
        self._sheet.setProperty("kind", "holder")
        page = QVBoxLayout(self._sheet)
        page.setContentsMargins(_ABOUT, _ABOUT, _ABOUT, _ABOUT)
        page.setSpacing(14)
        several = sum(bool(title) for title, _ in screens) > 1
        for title, groups in screens:
            if title and several:
                page.addWidget(_toned(title, "title"))
            page.addLayout(self._beside(groups))
        page.addStretch(1)
        self.setWidgetResizable(True)
        self.setWidget(self._sheet)
        self.setFrameShape(QScrollArea.Shape.NoFrame)

    @property
    def columns(self) -> int:
        """How many columns stand beside each other."""
        beside = QBoxLayout.Direction.LeftToRight
        return 2 if any(row.direction() == beside for row in self._rows) else 1

    def wanted(self) -> QSize:
        """Its size with two columns and nothing to scroll, px."""
        self._fold(one=False)
        return self._sheet.sizeHint() + QSize(self._bar, 0)

    def least(self) -> QSize:
        """The least that it can be read in, px: one column, to be scrolled."""
        self._fold(one=True)
        return QSize(self._sheet.minimumSizeHint().width() + self._bar, _SHORTEST)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Home and End go to either end, beside the keys that Qt scrolls by."""
        bar, key = self.verticalScrollBar(), Qt.Key(event.key())
        if key == Qt.Key.Key_Home:
            bar.setValue(bar.minimum())
        elif key == Qt.Key.Key_End:
            bar.setValue(bar.maximum())
        else:
            super().keyPressEvent(event)

    @property
    def _bar(self) -> int:
        return self.verticalScrollBar().sizeHint().width()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand the columns beside or below each other."""
        super().resizeEvent(event)
        self._fold(one=False)
        if self._sheet.minimumSizeHint().width() > self.viewport().width():
            self._fold(one=True)

    def _fold(self, *, one: bool) -> None:
        way = QBoxLayout.Direction.TopToBottom if one else QBoxLayout.Direction.LeftToRight
        for row in self._rows:
            row.setDirection(way)
            row.setSpacing(14 if one else _BETWEEN)
        layout = self._sheet.layout()
        if layout is not None:
            layout.invalidate()

    def _beside(self, groups: Sequence[KeyGroup]) -> QBoxLayout:
        """Groups in two columns of about the same height."""
        row = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._rows.append(row)
        columns: list[list[KeyGroup]] = [[], []]
        heights = [0, 0]
        groups = _halved(groups[0]) if len(groups) == 1 else groups
        for group in groups:
            # In order, down the first column and then the second.
            whole = sum(len(each.rows) + 2 for each in groups)
            at = 0 if not heights[1] and heights[0] + len(group.rows) / 2 < whole / 2 else 1
            columns[at].append(group)
            heights[at] += len(group.rows) + 2
        for column in columns:
            row.addLayout(_column(column), 1)
        return row


def _halved(group: KeyGroup) -> tuple[KeyGroup, ...]:
    """A group that stands alone, in two: the other half goes on beside it."""
    half = (len(group.rows) + 1) // 2
    if half < _FEW:
        return (group,)
    return KeyGroup(group.title, group.rows[:half]), KeyGroup("", group.rows[half:])


def _column(groups: Sequence[KeyGroup]) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(16)
    grid.setVerticalSpacing(3)
    grid.setColumnStretch(1, 1)
    grid.setColumnMinimumWidth(0, 84)
    at = 0
    for group in groups:
        if at:
            grid.setRowMinimumHeight(at, 10)
            at += 1
        grid.addWidget(_toned(group.title, "heading"), at, 0, 1, 2)
        for keys, what in group.rows:
            at += 1
            words = QLabel(what)
            words.setWordWrap(True)
            words.setMinimumWidth(_WORDS)
            key = _toned(keys, "key")
            key.setContentsMargins(0, 2, 0, 0)  # on one line with the larger words
            grid.addWidget(key, at, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(words, at, 1)
        at += 1
    grid.setRowStretch(at, 1)
    return grid


def _toned(text: str, tone: str) -> QLabel:
    label = QLabel(text)
    label.setProperty("tone", tone)
    label.setTextFormat(Qt.TextFormat.PlainText)
    return label
