"""An entry as a page: title, formula, words, tables, where it comes from, and what else to read."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from html import escape
from typing import Final

from exercises.reference import Entry
from exercises.rule_tables import Cell, Table
from exercises.source_words import source_words
from trainer.bench.translation import translate
from trainer.look.tokens import Theme
from trainer.reference.book import Book
from trainer.reference.words import SIGNS, surely

__all__ = ["SCHEME", "key_of", "page_html", "plain_page"]

SCHEME: Final = "entry"
"""What the address of a link to an entry begins with."""

_SHORTER: Final = 120
"""Logical pixels by which lines of text are shorter than tables."""

_LEAST, _MOST = 22, 90
"""Letters that a column is taken to hold, at least and at most, when the width is shared out."""

_SHORT_HEAD: Final = 12
"""Letters."""

_UNIT: Final = re.compile(r"(?<=\d) (?=(?:mm|in|%)(?!\w))")
"""The space between a figure and its unit."""

_ROOM: Final = '<p class="room">&nbsp;</p>'
"""Air before a table: Qt gives tables no margins."""


def key_of(address: str) -> str:
    """Return the key of the entry that an address leads to; empty if it is another's.

    Examples
    --------
    >>> key_of("entry:doubt.eye"), key_of("https://example.org")
    ('doubt.eye', '')
    """
    scheme, _, key = address.partition(":")
    return key if scheme == SCHEME else ""


def page_html(book: Book, key: str, theme: Theme) -> str:
    """Return the page of an entry, in the colours and the type of a theme."""
    entry, tag = book.entries[key], book.language
    text = entry.text.in_language(tag)
    formula = entry.formula.in_language(tag)
    parts = [
        f'<p class="group">{escape(book.group(key))}</p>',
        f"<h1>{escape(entry.title.in_language(tag))}</h1>",
        _formula(formula, theme) if formula else "",
        f'<p class="text">{escape(text)}</p>' if text else "",
        *(_table(table, tag, theme) for table in entry.tables),
        _source(entry, tag, theme),
        _related(book, entry),
    ]
    return f"<style>{_style(theme)}</style>{''.join(parts)}"


def _style(t: Theme) -> str:
    """Margins in multiples of four; one size down for what is said beside."""
    body, small, caption = (t.text_size(name) for name in ("body", "small", "caption"))
    return f"""
        p, li {{ color: {t.ink}; font-size: {body + 1:g}px; line-height: 150%; }}
        h1 {{ color: {t.ink}; font-size: {t.text_size("product") + 6:g}px; font-weight: 600;
            margin: 0 0 8px 0; }}
        h2 {{ color: {t.ink}; font-size: {t.text_size("title"):g}px; font-weight: 600;
            margin: 28px 0 8px 0; }}
        p.group {{ color: {t.muted}; font-size: {caption:g}px; font-weight: 600;
            margin: 0 0 4px 0; }}
        p.text {{ margin: 16px {_SHORTER}px 4px 0; }}
        p.source {{ font-size: {small:g}px; margin: 28px 0 0 0; }}
        p.surely {{ color: {t.muted}; font-size: {small:g}px; margin: 0; }}
        p.formula {{ font-size: {t.text_size("title"):g}px; font-weight: 600; margin: 0;
            line-height: 100%; }}
        p.room {{ font-size: 6px; line-height: 100%; margin: 0; }}
        p.related {{ margin: 0 0 4px 0; }}
        a {{ color: {t.accent}; text-decoration: underline; }}
        th {{ color: {t.muted}; font-size: {caption:g}px; font-weight: 600; text-align: left; }}
        td {{ color: {t.ink}; font-size: {small:g}px; }}
    """


def _formula(formula: str, t: Theme) -> str:
    """The formula on a ground of its own, a bar of the accent before it."""
    words = f'<span style="color: {t.accent_wash_ink};">{_measured(formula)}</span>'
    return (
        f'{_ROOM}<table width="100%" cellspacing="0" cellpadding="0"><tr>'
        f'<td width="4" bgcolor="{t.accent}"></td>'
        f'<td bgcolor="{t.accent_wash}" style="padding: 12px 16px;">'
        f'<p class="formula">{words}</p>'
        "</td></tr></table>"
    )


def _table(table: Table, tag: str, t: Theme) -> str:
    """A table with a line under each row and none between columns."""
    title = table.title.in_language(tag)
    edge = f"border-bottom: 1px solid {t.line}; padding: 6px 12px 6px 0;"
    strong = f"border-bottom: 1px solid {t.outline}; padding: 4px 12px 4px 0;"
    head = "".join(
        f'<th align="left" width="{share}%" style="{strong}">{_head(text.in_language(tag))}</th>'
        for text, share in zip(table.heads, _shares(table, tag), strict=True)
    )
    rows = "".join(
        "<tr>" + "".join(f'<td style="{edge}">{_cell(cell, tag)}</td>' for cell in row) + "</tr>"
        for row in table.rows
    )
    said = f"<h2>{escape(title)}</h2>" if title else ""
    return (
        f'{said or _ROOM}<table cellspacing="0" cellpadding="0" width="100%" '
        f'style="border-collapse: collapse;"><tr>{head}</tr>{rows}</table>'
    )


def _head(words: str) -> str:
    """A column's head; a short one stays on its line."""
    said = escape(words)
    return said.replace(" ", "&nbsp;") if len(words) <= _SHORT_HEAD else said


def _measured(words: str) -> str:
    """Words in HTML: a figure keeps its unit beside it, rows of a table stand under each other."""
    return _UNIT.sub("&nbsp;", escape(words)).replace("; ", ";<br>")


def _shares(table: Table, tag: str) -> list[int]:
    """Percent of the width for each column: by the root of its longest text, so none starves."""
    columns = zip(table.heads, *([cell.text for cell in row] for row in table.rows), strict=True)
    longest = [max(len(text.in_language(tag)) for text in column) for column in columns]
    weights = [math.sqrt(min(max(each, _LEAST), _MOST)) for each in longest]
    return [round(100.0 * weight / sum(weights)) for weight in weights]


def _cell(cell: Cell, tag: str) -> str:
    words = _measured(cell.text.in_language(tag))
    return _link(cell.to, words) if cell.to else words


def _link(key: str, words: str) -> str:
    return f'<a href="{SCHEME}:{escape(key)}">{words}</a>'


def _source(entry: Entry, tag: str, t: Theme) -> str:
    """Where it comes from, and how surely: by a shape and in words."""
    source = translate("Reference", "Source: {source}").format(
        source=source_words(entry.source).in_language(tag)
    )
    sign = SIGNS[entry.sureness]
    return (
        f'<p class="source">{escape(source)}</p>'
        f'<p class="surely"><span style="color: {t.accent};">{sign}</span>&nbsp; '
        f"{escape(surely(entry.sureness))}</p>"
    )


def _related(book: Book, entry: Entry) -> str:
    keys = [key for key in entry.related if key in book.entries]
    if not keys:
        return ""
    heading = escape(translate("Reference", "See also"))
    lines = "".join(f'<p class="related">{_link(key, escape(book.title(key)))}</p>' for key in keys)
    return f"<h2>{heading}</h2>{lines}"


def plain_page(book: Book, key: str) -> str:
    """Return the page of an entry as plain text: for the clipboard, and for a screen reader."""
    entry, tag = book.entries[key], book.language
    parts = [entry.title.in_language(tag), entry.formula.in_language(tag)]
    parts.append(entry.text.in_language(tag))
    parts += ["\n".join(_plain_rows(table, tag)) for table in entry.tables]
    source = translate("Reference", "Source: {source}").format(
        source=source_words(entry.source).in_language(tag)
    )
    parts.append(f"{source}\n{surely(entry.sureness)}")
    return "\n\n".join(part for part in parts if part)


def _plain_rows(table: Table, tag: str) -> Sequence[str]:
    """Rows with tabs between their cells: a spreadsheet takes them apart again."""
    rows = ["\t".join(text.in_language(tag) for text in table.heads)]
    rows += ["\t".join(cell.text.in_language(tag) for cell in row) for row in table.rows]
    title = table.title.in_language(tag)
    return [title, *rows] if title else rows
