"""How the bench is laid out: the picture, the strip below it, the column beside it.

Only Qt and the canvas, so that the window can be painted before anything else is loaded. Sizes
depend on the window alone, never on what is put in: the picture doesn't jump when it fills.
"""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from trainer.canvas.canvas import Canvas

__all__ = ["BenchLayout"]

_COMPACT_WIDTH: Final = 1120
_COMPACT_HEIGHT: Final = 640
_FOOT: Final = 166
_FOOT_COMPACT: Final = 176


class BenchLayout(QWidget):
    """Canvas upper left, a panel below it, a scrolling column at the right with a pinned end.

    Signals
    -------
    compacted
        Whether room is now short; the panels should arrange themselves for that.
    """

    compacted = Signal(bool)

    def __init__(self, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.canvas = canvas
        self.compact = False
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
        column = QVBoxLayout(self.side)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        self.side_box = QVBoxLayout(holder)
        self.side_box.setContentsMargins(0, 0, 0, 0)
        self.side_box.setSpacing(10)
        self.side_box.addStretch(1)
        self._scroll.setWidget(holder)
        column.addWidget(self._scroll, 1)
        self.pinned_box = QVBoxLayout()
        column.addLayout(self.pinned_box)
        return self.side

    def sizeHint(self) -> QSize:
        """A comfortable size."""
        return QSize(1280, 664)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give each part its share of the new size."""
        self._arrange(event.size())
        super().resizeEvent(event)

    def show_in_side(self, widget: QWidget) -> None:
        """Scroll the column so far that `widget` can be seen."""
        self._scroll.ensureWidgetVisible(widget, 0, 12)

    def _arrange(self, size: QSize) -> None:
        compact = size.width() < _COMPACT_WIDTH or size.height() < _COMPACT_HEIGHT - 56
        margin = 8 if compact else 16
        self._root.setContentsMargins(margin, margin, margin, margin)
        self._root.setSpacing(margin)
        self._left.setSpacing(margin)
        self.foot.setFixedHeight(_FOOT_COMPACT if size.width() < _COMPACT_WIDTH else _FOOT)
        wide = 408 if size.width() >= 1500 else 372 if size.width() >= _COMPACT_WIDTH else 328
        self.side.setFixedWidth(wide)
        if compact != self.compact:
            self.compact = compact
            self.compacted.emit(compact)
