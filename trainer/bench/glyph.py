"""Small signs beside words: the four states, the three faces, what a button does."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPixmap
from PySide6.QtWidgets import QWidget

from trainer.look.icons import icon_pixmap

__all__ = ["FACE_GLYPHS", "STATE_GLYPHS", "Glyph"]

STATE_GLYPHS: Final = {
    "daylight": "ring",
    "touch": "disc",
    "held off": "triangle",
    "not seated": "slash",
}
FACE_GLYPHS: Final = {"convex": "face-convex", "flat": "face-flat", "concave": "face-hollow"}

_SIZE: Final = 18


class Glyph(QWidget):
    """A sign beside a word; never the only bearer of a meaning.

    Parameters
    ----------
    name
        Of an icon; "" leaves its place empty.
    """

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.name = name
        self._drawn: tuple[str, float] = ("", 0.0)
        self._pixmap = QPixmap()
        self.setFixedSize(_SIZE, _SIZE)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def sizeHint(self) -> QSize:
        """Its one size."""
        return QSize(_SIZE, _SIZE)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the sign in the text colour, greyed with its button."""
        if not self.name:
            return
        colour = self.palette().color(QPalette.ColorRole.WindowText)
        wanted = (colour.name(QColor.NameFormat.HexRgb), self.devicePixelRatioF())
        if wanted != self._drawn:
            self._drawn = wanted
            self._pixmap = icon_pixmap(self.name, wanted[0], _SIZE, wanted[1])
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._pixmap)
        painter.end()
