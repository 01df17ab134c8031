"""A leaf on its way from the rack, before it has come to where it can lie."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget

__all__ = ["LeafGhost"]

_OPACITY = 0.85


class LeafGhost(QWidget):
    """The picture of a leaf under the pointer, over everything else in the window."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._picture = QPixmap()
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def carry(self, picture: QPixmap, at: QPoint) -> None:
        """Show `picture` with its middle at a point of the screen."""
        self._picture = picture
        size = picture.deviceIndependentSize().toSize()
        self.resize(size)
        window = self.parentWidget()
        if window is None:
            return
        local = window.mapFromGlobal(at)
        self.move(local - QPoint(size.width() // 2, size.height() // 2))
        self.show()
        self.raise_()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the picture, a little see-through."""
        painter = QPainter(self)
        painter.setOpacity(_OPACITY)
        painter.drawPixmap(0, 0, self._picture)
        painter.end()
