"""Pages to print: text, rows and pictures from top to bottom, as PDF written whole or not at all.

And the same in HTML for screen readers: a PDF of Qt's has no structure that one could follow.
"""

from __future__ import annotations

import html
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QImage, QPageLayout, QPageSize, QPainter, QPdfWriter

from trainer.look.fonts import font
from trainer.look.tokens import LIGHT

__all__ = ["Pages", "html_document", "html_table", "write_pages"]

_DPI: Final = 300
_MARGIN: Final = 15.0
_POINTS: Final = 72.0


def write_pages(path: Path, title: str, draw: Callable[[Pages], None]) -> None:
    """Write what `draw` lays out as PDF (A4), whole or not at all.

    Raises
    ------
    OSError
        If it can't be written.
    """
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(_DPI)
    writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    margins = QMarginsF(_MARGIN, _MARGIN, _MARGIN, _MARGIN)
    writer.setPageMargins(margins, QPageLayout.Unit.Millimeter)
    writer.setTitle(title)
    writer.setCreator("Toe & Throat")
    painter = QPainter(writer)
    draw(Pages(writer, painter))
    painter.end()
    buffer.close()
    # In memory first: what can't be written is then told by the system, in its words.
    temporary = path.with_name(f".{path.name}.new")
    try:
        temporary.write_bytes(bytes(data.data()))
        temporary.replace(path)
    except OSError:
        temporary.unlink(missing_ok=True)
        raise


class Pages:
    """A document being drawn, onto as many pages as it needs."""

    def __init__(self, writer: QPdfWriter, painter: QPainter) -> None:
        self._writer = writer
        self._painter = painter
        self._y = 0.0
        self._width = float(writer.width())
        self._height = float(writer.height())

    def gap(self, length: float) -> None:
        """Leave so many mm free."""
        self._y += length * _DPI / 25.4

    def room(self, share: float) -> None:
        """Begin another page, unless this share of one is left."""
        self._room(share * self._height)

    def _room(self, needed: float) -> None:
        if self._y + needed > self._height:
            self._writer.newPage()
            self._y = 0.0

    def _take_up(self, points: float, *, bold: bool, colour: str) -> None:
        wanted = QFont(font(LIGHT))
        wanted.setPixelSize(round(points * _DPI / _POINTS))
        wanted.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
        self._painter.setFont(wanted)
        self._painter.setPen(QColor(colour or LIGHT.ink))

    def text(self, text: str, points: float, *, bold: bool = False, colour: str = "") -> None:
        """Write a paragraph, in a size of type."""
        self._take_up(points, bold=bold, colour=colour)
        flags = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft
        space = QRectF(0.0, 0.0, self._width, self._height)
        box = self._painter.boundingRect(space, flags, text)
        self._room(box.height())
        self._painter.drawText(QRectF(0.0, self._y, self._width, box.height()), flags, text)
        self._y += box.height()
        self.gap(1.2)

    def row(self, cells: Sequence[str], shares: Sequence[float], points: float,
            *, bold: bool = False) -> None:  # fmt: skip
        """Write a row of cells, each with its share of the width."""
        self._take_up(points, bold=bold, colour="")
        flags = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft
        air = 0.012 * self._width
        boxes: list[QRectF] = []
        left = 0.0
        for cell, share in zip(cells, shares, strict=True):
            wide = share * self._width - air
            space = QRectF(left, 0.0, wide, self._height)
            boxes.append(self._painter.boundingRect(space, flags, cell))
            left += share * self._width
        high = max(box.height() for box in boxes)
        self._room(high)
        left = 0.0
        for cell, share in zip(cells, shares, strict=True):
            wide = share * self._width - air
            self._painter.drawText(QRectF(left, self._y, wide, high), flags, cell)
            left += share * self._width
        self._y += high
        self.gap(0.8)

    def picture(self, paint: Callable[[QSize, float], QImage], wide: float, high: float) -> None:
        """Draw a picture: `paint` is asked for one of a size, logical pixels, and a scale.

        Parameters
        ----------
        wide, high
            Shares of the page's width and height.
        """
        width, height = wide * self._width, high * self._height
        scale = _DPI / 96.0
        image = paint(QSize(round(width / scale), round(height / scale)), scale)
        self._room(height)
        self._painter.drawImage(QRectF(0.0, self._y, width, height), image)
        self._y += height


def html_document(title: str, language: str, body: str) -> str:
    r"""Return one HTML document that needs nothing beside it.

    Examples
    --------
    >>> html_document("A & B", "en", "<p>c</p>")[:31]
    '<!DOCTYPE html>\n<html lang="en"'
    """
    said = html.escape(title)
    return (
        f'<!DOCTYPE html>\n<html lang="{language}">\n<head>\n<meta charset="utf-8">\n'
        f"<title>{said}</title>\n<style>\n"
        "body{font:16px/1.5 system-ui,sans-serif;max-width:44rem;margin:2rem auto;padding:0 1rem}\n"
        "table{border-collapse:collapse}th,td{padding:.2rem .8rem;text-align:left;"
        "border-bottom:1px solid #767676}\n"
        f"</style>\n</head>\n<body>\n{body}\n</body>\n</html>\n"
    )


def html_table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """Return the lines of a table; none where there is nothing to list.

    Examples
    --------
    >>> html_table(["a"], [["<"]])[3]
    '<tr><td>&lt;</td></tr>'
    """
    if not rows:
        return []
    heads = "".join(f'<th scope="col">{html.escape(one)}</th>' for one in head)
    lines = [
        "<tr>" + "".join(f"<td>{html.escape(cell)}</td>" for cell in row) + "</tr>" for row in rows
    ]
    return ["<table>", f"<thead><tr>{heads}</tr></thead>", "<tbody>", *lines, "</tbody></table>"]
