"""A painter that draws words as outlines: an SVG then looks the same whatever fonts there are."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPainterPath, QTextLayout, QTextOption

__all__ = ["OutlinePainter"]


class OutlinePainter(QPainter):
    """Draws text within a rectangle as paths; all else as a painter does."""

    # Of its many overloads only this one is used on pictures.
    def drawText(self, *words: object) -> None:  # type: ignore[override]
        """Draw (rectangle, flags, text) as outlines, wrapped if the flags say so."""
        rect, flags, text = words
        if not (isinstance(rect, QRectF) and isinstance(flags, int) and isinstance(text, str)):
            raise TypeError("an outline painter draws text by rectangle, flags and words")
        path = _path(self, rect, flags, text)
        self.fillPath(path, self.pen().color())


def _path(painter: QPainter, rect: QRectF, flags: int, text: str) -> QPainterPath:
    font, metrics = painter.font(), QFontMetricsF(painter.font())
    wraps = bool(flags & Qt.TextFlag.TextWordWrap.value)
    lines = _lines(text, painter, rect.width()) if wraps else [text]
    high = metrics.height() * len(lines)
    top = rect.top()
    if flags & Qt.AlignmentFlag.AlignVCenter.value:
        top += (rect.height() - high) / 2.0
    path = QPainterPath()
    for index, line in enumerate(lines):
        baseline = top + index * metrics.height() + metrics.ascent()
        path.addText(QPointF(rect.left(), baseline), font, line)
    return path


def _lines(text: str, painter: QPainter, wide: float) -> list[str]:
    """Break `text` where a painter would."""
    layout = QTextLayout(text, painter.font())
    layout.setTextOption(QTextOption(Qt.AlignmentFlag.AlignLeft))
    layout.beginLayout()
    lines: list[str] = []
    while (line := layout.createLine()).isValid():
        line.setLineWidth(wide)
        start, length = line.textStart(), line.textLength()
        lines.append(text[start : start + length].rstrip())
    layout.endLayout()
    return lines
