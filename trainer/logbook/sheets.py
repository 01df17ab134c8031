"""A learner's sheet: one document to print, as PDF, and the same as HTML for screen readers.

The PDF has pictures; the HTML says in words and tables what they show, since a PDF of Qt's has no
structure that a screen reader could follow.
"""

from __future__ import annotations

import html
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPageLayout, QPageSize, QPainter, QPdfWriter

from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.figures import figures
from trainer.logbook.findings import Findings
from trainer.logbook.plot_view import image_of
from trainer.logbook.plots import PLOTS, Style
from trainer.logbook.words import faults_by_label, heading, sentences
from trainer.look.fonts import font
from trainer.look.tokens import LIGHT

__all__ = ["Sheet", "html_sheet", "write_pdf"]

_DPI: Final = 300
_MARGIN: Final = 15.0
_POINTS: Final = 72.0


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a sheet is of.

    Parameters
    ----------
    name
        The learner's.
    on
        The day it is made.
    findings
        What their attempts say.
    unit
        Of lengths.
    language
        ``en`` or ``es``: of the document.
    """

    name: str
    on: date
    findings: Findings
    unit: Unit
    language: str


def _title(sheet: Sheet) -> str:
    return translate("Logbook", "Logbook of {name}").format(name=sheet.name)


def _caution() -> str:
    return translate(
        "Logbook",
        "From a training aid, not an instrument: it says how coupons on a screen were judged, not "
        "who may sign for a weld. Codes, contract documents and qualified people decide that.",
    )


def html_sheet(sheet: Sheet) -> str:
    """Return the sheet as one HTML document that needs nothing beside it."""
    parts = [f"<h1>{html.escape(_title(sheet))}</h1>", f"<p>{sheet.on.isoformat()}</p>"]
    for name in PLOTS:
        parts.append(f"<h2>{html.escape(heading(name))}</h2>")
        said = sentences(name, sheet.findings, sheet.unit)
        parts += [f"<p>{html.escape(one)}</p>" for one in said]
        parts += _table(name, sheet.findings)
    parts.append(f"<footer><p>{html.escape(_caution())}</p></footer>")
    body = "\n".join(parts)
    return (
        f'<!DOCTYPE html>\n<html lang="{sheet.language}">\n<head>\n<meta charset="utf-8">\n'
        f"<title>{html.escape(_title(sheet))}</title>\n<style>\n"
        "body{font:16px/1.5 system-ui,sans-serif;max-width:44rem;margin:2rem auto;padding:0 1rem}\n"
        "table{border-collapse:collapse}th,td{padding:.2rem .8rem;text-align:left;"
        "border-bottom:1px solid #767676}\n"
        f"</style>\n</head>\n<body>\n{body}\n</body>\n</html>\n"
    )


def _table(name: str, found: Findings) -> list[str]:
    """What a picture shows, as a table; none where there is nothing to list."""
    share = translate("Logbook", "Share")
    of = translate("Logbook", "Calls")
    rows: list[Sequence[str]] = []
    head: Sequence[str] = ()
    if name == "line":
        head = (translate("Logbook", "Distance from the limit, mm (left: short of it)"),
                translate("Logbook", "Called short"), of)  # fmt: skip
        rows = [(figures(f"{at:+.1f}"), figures(f"{100 * s.value:.0f} %"), str(s.of))
                for at, s in found.shares()]  # fmt: skip
    elif name == "faults":
        head = (translate("Logbook", "Kind"), translate("Logbook", "Times"))
        rows = [(label, str(count)) for label, count in faults_by_label(found)]
    elif name == "sure":
        head = (translate("Logbook", "How sure you were"), share, of)
        rows = [(f"{100 * step.sure:.0f} %", f"{100 * step.right.value:.0f} %", str(step.right.of))
                for step in found.sure]  # fmt: skip
    elif name == "weeks":
        head = (translate("Logbook", "Week from"), of, translate("Logbook", "Marks"))
        rows = [(week.monday.isoformat(), str(week.calls), f"{100 * week.score:.0f} %")
                for week in found.weeks]  # fmt: skip
    if not rows:
        return []
    heads = "".join(f'<th scope="col">{html.escape(one)}</th>' for one in head)
    lines = [
        "<tr>" + "".join(f"<td>{html.escape(cell)}</td>" for cell in row) + "</tr>" for row in rows
    ]
    return ["<table>", f"<thead><tr>{heads}</tr></thead>", "<tbody>", *lines, "</tbody></table>"]


def write_pdf(sheet: Sheet, style: Style, path: Path) -> None:
    """Write the sheet as PDF (A4), whole or not at all.

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
    writer.setTitle(_title(sheet))
    writer.setCreator("Toe & Throat")
    painter = QPainter(writer)
    _Pages(writer, painter, sheet, Style(LIGHT, style.words, style.decimal)).draw()
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


class _Pages:
    """The sheet being drawn, from top to bottom, onto as many pages as it needs."""

    def __init__(self, writer: QPdfWriter, painter: QPainter, sheet: Sheet, style: Style) -> None:
        self._writer = writer
        self._painter = painter
        self._sheet = sheet
        self._style = style
        self._y = 0.0
        self._width = float(writer.width())
        self._height = float(writer.height())

    def draw(self) -> None:
        """Draw all of it."""
        self._text(_title(self._sheet), 18.0, bold=True)
        self._text(self._sheet.on.isoformat(), 9.0, colour=LIGHT.muted)
        self._text(_caution(), 8.5, colour=LIGHT.muted)
        for name in PLOTS:
            said = sentences(name, self._sheet.findings, self._sheet.unit)
            self._room(0.34 * self._height)
            self._gap(4.0)
            self._text(heading(name), 12.5, bold=True)
            for one in said:
                self._text(one, 9.5)
            self._picture(name)

    def _mm(self, length: float) -> float:
        return length * _DPI / 25.4

    def _gap(self, length: float) -> None:
        self._y += self._mm(length)

    def _room(self, needed: float) -> None:
        if self._y + needed > self._height:
            self._writer.newPage()
            self._y = 0.0

    def _text(self, text: str, points: float, *, bold: bool = False, colour: str = "") -> None:
        wanted = QFont(font(LIGHT))
        wanted.setPixelSize(round(points * _DPI / _POINTS))
        wanted.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
        self._painter.setFont(wanted)
        self._painter.setPen(QColor(colour or LIGHT.ink))
        flags = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft
        space = QRectF(0.0, 0.0, self._width, self._height)
        box = self._painter.boundingRect(space, flags, text)
        self._room(box.height())
        self._painter.drawText(QRectF(0.0, self._y, self._width, box.height()), flags, text)
        self._y += box.height() + self._mm(1.2)

    def _picture(self, name: str) -> None:
        wide, high = 0.72 * self._width, 0.2 * self._height
        scale = _DPI / 96.0
        size = QSize(round(wide / scale), round(high / scale))
        image = image_of(name, self._sheet.findings, self._style, size, scale)
        self._room(high)
        self._painter.drawImage(QRectF(0.0, self._y, wide, high), image)
        self._y += high
