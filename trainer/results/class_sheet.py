"""A class's sheet: to print, as PDF with pictures, and as HTML with tables for screen readers."""

from __future__ import annotations

import html
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Final, TypeVar

from matplotlib.figure import Figure

from trainer.bench.translation import translate
from trainer.logbook.pages import Pages, html_document, html_table, write_pages
from trainer.logbook.plot_view import pictured
from trainer.logbook.plots import Style
from trainer.logbook.sheets import caution
from trainer.look.tokens import LIGHT
from trainer.results.arranging import Column
from trainer.results.class_tables import coupon_columns
from trainer.results.learner_table import learner_columns
from trainer.results.pictures_page import picture_heading
from trainer.results.plots import PLOTS, Picture, draw
from trainer.results.rows import CouponRow, LearnerRow

__all__ = ["ClassSheet", "class_html", "write_class_pdf"]

Row = TypeVar("Row")

_LEARNER: Final = ("code", "score", "passed", "why", "critical", "unanswered", "used")
_LEARNER_SHARES: Final = (0.14, 0.08, 0.13, 0.38, 0.08, 0.11, 0.08)
_COUPON: Final = ("number", "title", "kind", "difficulty", "discrimination", "misses",
                  "false alarms")  # fmt: skip
_COUPON_SHARES: Final = (0.06, 0.24, 0.18, 0.17, 0.17, 0.09, 0.09)


@dataclass(frozen=True, slots=True)
class ClassSheet:
    """What a sheet is of.

    Parameters
    ----------
    title
        Of the sitting.
    on
        The day it is made.
    language
        ``en`` or ``es``: of the document.
    said, coupons_said
        What is said of the papers, and of the coupons.
    learners, coupons
        The rows.
    picture, sentences
        The pictures, and what each says.
    """

    title: str
    on: date
    language: str
    said: str
    coupons_said: str
    learners: Sequence[LearnerRow]
    coupons: Sequence[CouponRow]
    picture: Picture
    sentences: Mapping[str, Sequence[str]]

    @property
    def heading(self) -> str:
        """What stands on top."""
        return translate("Results", "Results of {sitting}").format(sitting=self.title)


def _tables(sheet: ClassSheet) -> tuple[tuple[str, str, list[list[str]], tuple[float, ...]], ...]:
    """Heading, what is said, rows with their titles first, and the columns' shares of a page."""
    learners = _lines(_picked(learner_columns(()), _LEARNER), sheet.learners)
    coupons = _lines(_picked(coupon_columns(), _COUPON), sheet.coupons)
    return (
        (translate("Results", "Learners"), sheet.said, learners, _LEARNER_SHARES),
        (translate("Results", "Coupons"), sheet.coupons_said, coupons, _COUPON_SHARES),
    )


def _picked(columns: Sequence[Column[Row]], names: Sequence[str]) -> list[Column[Row]]:
    return [next(one for one in columns if one.name == name) for name in names]


def _lines(columns: Sequence[Column[Row]], rows: Sequence[Row]) -> list[list[str]]:
    return [
        [column.title for column in columns],
        *([column.text(row) for column in columns] for row in rows),
    ]


def class_html(sheet: ClassSheet) -> str:
    """Return the sheet as one HTML document: what pictures show is said and listed."""
    parts = [f"<h1>{html.escape(sheet.heading)}</h1>", f"<p>{sheet.on.isoformat()}</p>"]
    for heading, said, lines, _ in _tables(sheet):
        parts.append(f"<h2>{html.escape(heading)}</h2>")
        parts.append(f"<p>{html.escape(said)}</p>")
        parts += html_table(lines[0], lines[1:])
    for name in PLOTS:
        parts.append(f"<h2>{html.escape(picture_heading(name))}</h2>")
        parts += [f"<p>{html.escape(one)}</p>" for one in sheet.sentences.get(name, ())]
    parts.append(f"<footer><p>{html.escape(caution())}</p></footer>")
    return html_document(sheet.heading, sheet.language, "\n".join(parts))


def write_class_pdf(sheet: ClassSheet, style: Style, path: Path) -> None:
    """Write the sheet as PDF (A4), whole or not at all.

    Raises
    ------
    OSError
        If it can't be written.
    """
    printed = Style(LIGHT, style.words, style.decimal)

    def lay(pages: Pages) -> None:
        pages.text(sheet.heading, 18.0, bold=True)
        pages.text(sheet.on.isoformat(), 9.0, colour=LIGHT.muted)
        pages.text(caution(), 8.5, colour=LIGHT.muted)
        for heading, said, lines, shares in _tables(sheet):
            pages.room(0.2)
            pages.gap(4.0)
            pages.text(heading, 12.5, bold=True)
            pages.text(said, 9.5)
            for at, line in enumerate(lines):
                pages.row(line, shares, 8.5, bold=at == 0)
        for name in PLOTS:
            pages.room(0.4)
            pages.gap(4.0)
            pages.text(picture_heading(name), 12.5, bold=True)
            for one in sheet.sentences.get(name, ()):
                pages.text(one, 9.5)
            paint = partial(_paint, name, sheet.picture, printed)
            pages.picture(partial(pictured, paint), 0.86, 0.3)

    write_pages(path, sheet.heading, lay)


def _paint(name: str, picture: Picture, style: Style, figure: Figure) -> None:
    draw(name, figure, picture, style)
