"""Slips with codes, to be cut and handed out: always in ink on white."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, Qt
from PySide6.QtGui import QFont, QPageLayout, QPageSize, QPainter, QPdfWriter, QPen

from trainer.bench.translation import translate
from trainer.look.fonts import font
from trainer.look.tokens import LIGHT

__all__ = ["COLUMNS", "ROWS", "slips_pdf"]

COLUMNS: Final = 2
ROWS: Final = 8
"""Slips on a page of A4."""

_MARGIN: Final = 12.0
_DPI: Final = 300
_MM: Final = _DPI / 25.4


def slips_pdf(people: Sequence[tuple[str, str]]) -> bytes:
    """Return slips of names and codes as a PDF on A4.

    Parameters
    ----------
    people
        Name and code of each.
    """
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(translate("Slips", "Code slips"))
    writer.setCreator("Toe & Throat")
    writer.setResolution(_DPI)
    margins = QMarginsF(_MARGIN, _MARGIN, _MARGIN, _MARGIN)
    size = QPageSize(QPageSize.PageSizeId.A4)
    upright = QPageLayout.Orientation.Portrait
    writer.setPageLayout(QPageLayout(size, upright, margins, QPageLayout.Unit.Millimeter))
    painter = QPainter(writer)
    width = writer.width() / COLUMNS
    height = writer.height() / ROWS
    for at, (name, code) in enumerate(people):
        place = at % (COLUMNS * ROWS)
        if at and place == 0:
            writer.newPage()
        room = QRectF((place % COLUMNS) * width, (place // COLUMNS) * height, width, height)
        _slip(painter, room, name, code)
    painter.end()
    buffer.close()
    return bytes(data.data())


def _slip(painter: QPainter, room: QRectF, name: str, code: str) -> None:
    """One slip: cutting lines around it, whose it is, and the code large."""
    painter.setPen(QPen(Qt.GlobalColor.gray, 0.2 * _MM, Qt.PenStyle.DashLine))
    painter.drawRect(room)
    inner = room.adjusted(5 * _MM, 4 * _MM, -5 * _MM, -4 * _MM)
    painter.setPen(Qt.GlobalColor.black)
    small, large = font(LIGHT), font(LIGHT)
    _size(small, 3.4)
    _size(large, 7.0)
    large.setWeight(QFont.Weight.DemiBold)
    painter.setFont(small)
    painter.drawText(inner, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft, name)
    painter.setFont(large)
    painter.drawText(inner, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, code)
    painter.setFont(small)
    painter.drawText(
        inner,
        Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignLeft,
        translate("Slips", "Type this code when the sitting begins."),
    )


def _size(of: QFont, mm: float) -> None:
    of.setPixelSize(round(mm * _MM))
