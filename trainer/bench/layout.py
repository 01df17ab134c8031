"""How the bench is laid out: the picture, the strip below it, the column beside it.

Sizes depend on the window alone, never on what is put in: the picture doesn't jump when it fills.
"""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from trainer.arrangement import room_for
from trainer.canvas.canvas import Canvas

__all__ = ["BenchLayout"]


_LEAST: Final = QSize(900, 420)

_SHORT: Final = 700
"""Logical pixels: below this height the column shows only what it has to."""


class BenchLayout(QWidget):
    """Canvas upper left, a panel below it, a scrolling column at the right with a pinned end.

    Signals
    -------
    rearranged
        Room has become short, or ample; the panels should arrange themselves for that.
    """

    rearranged = Signal()

    def __init__(self, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.canvas = canvas
        self.narrow, self.compact, self.short = False, False, False
        # Not what the panels would like at their widest: else no window could ever become narrow.
        self.setMinimumSize(_LEAST)
        self._root = QHBoxLayout(self)
        left = QVBoxLayout()
        self._left = left
        canvas.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        canvas.setMinimumSize(200, 120)
        left.addWidget(canvas, 1)
        self.foot = QFrame()
        self.foot.setProperty("kind", "panel")
        self.foot_box = QVBoxLayout(self.foot)
        self.foot_box.setContentsMargins(0, 0, 0, 0)
        left.addWidget(self.foot)
        self._root.addLayout(left, 1)
        self._root.addWidget(self._side())
        self._arrange(self.sizeHint())

    def _side(self) -> QWidget:
        self.side = QWidget()
        stack = QVBoxLayout(self.side)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(6)
        self.column = QScrollArea()
        self.column.setWidgetResizable(True)
        self.column.setFrameShape(QFrame.Shape.NoFrame)
        self.column.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.column.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        self.side_box = QVBoxLayout(holder)
        self.side_box.setContentsMargins(0, 0, 0, 0)
        self.side_box.setSpacing(8)
        self.side_box.addStretch(1)
        self.column.setWidget(holder)
        stack.addWidget(self.column, 1)
        self.pinned_box = QVBoxLayout()
        stack.addLayout(self.pinned_box)
        return self.side

    def sizeHint(self) -> QSize:
        """A comfortable size."""
        return QSize(1280, 664)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give each part its share of the new size."""
        self._arrange(event.size())
        # At once, not a turn of the loop later: the picture may be in somebody's hand.
        self._root.activate()
        super().resizeEvent(event)

    def show_top_of_side(self) -> None:
        """Scroll the column back to its beginning."""
        self.column.verticalScrollBar().setValue(0)

    def _arrange(self, size: QSize) -> None:
        room = room_for(size.width(), size.height())
        self._root.setContentsMargins(room.margin, room.margin, room.margin, room.margin)
        self._root.setSpacing(room.margin)
        self._left.setSpacing(room.margin)
        self.foot.setFixedHeight(room.foot)
        self.side.setFixedWidth(room.side)
        arranged = (room.narrow, room.compact, size.height() < _SHORT)
        if arranged != (self.narrow, self.compact, self.short):
            self.narrow, self.compact, self.short = arranged
            self.rearranged.emit()
