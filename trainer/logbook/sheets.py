"""A learner's sheet: one document to print, as PDF, and the same as HTML for screen readers.

The PDF has pictures; the HTML says in words and tables what they show.
"""

from __future__ import annotations

import html
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.figures import figures
from trainer.logbook.findings import Findings
from trainer.logbook.pages import Pages, html_document, html_table, write_pages
from trainer.logbook.plot_view import image_of
from trainer.logbook.plots import PLOTS, Style
from trainer.logbook.words import faults_by_label, heading, sentences
from trainer.look.tokens import LIGHT

__all__ = ["Sheet", "caution", "html_sheet", "write_pdf"]


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


def caution() -> str:
    """What a sheet is, and what it is not."""
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
    parts.append(f"<footer><p>{html.escape(caution())}</p></footer>")
    return html_document(_title(sheet), sheet.language, "\n".join(parts))


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
    return html_table(head, rows)


def write_pdf(sheet: Sheet, style: Style, path: Path) -> None:
    """Write the sheet as PDF (A4), whole or not at all.

    Raises
    ------
    OSError
        If it can't be written.
    """
    printed = Style(LIGHT, style.words, style.decimal)

    def draw(pages: Pages) -> None:
        pages.text(_title(sheet), 18.0, bold=True)
        pages.text(sheet.on.isoformat(), 9.0, colour=LIGHT.muted)
        pages.text(caution(), 8.5, colour=LIGHT.muted)
        for name in PLOTS:
            pages.room(0.34)
            pages.gap(4.0)
            pages.text(heading(name), 12.5, bold=True)
            for one in sentences(name, sheet.findings, sheet.unit):
                pages.text(one, 9.5)
            paint = partial(image_of, name, sheet.findings, printed)
            pages.picture(paint, 0.72, 0.2)

    write_pages(path, _title(sheet), draw)
