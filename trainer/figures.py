"""Figures as the spoken language writes them. Files and commands keep the decimal point."""

from __future__ import annotations

import re
from typing import Final

from PySide6.QtCore import QLocale

from geometry.lengths import Unit, format_length

__all__ = ["figures", "length_words", "number_words", "unbroken"]

_POINT: Final = re.compile(r"(?<=\d)\.(?=\d)")

_UNIT: Final = re.compile(r"(?<=\d) (?=(?:mm|in|min|s|px|%)(?!\w))")


def figures(text: str) -> str:
    """Return `text` with its decimal points as the spoken language writes them.

    Examples
    --------
    >>> figures("6.7 mm, 5/16 in.")
    '6.7 mm, 5/16 in.'
    """
    mark = QLocale().decimalPoint()
    return text if mark == "." else _POINT.sub(mark, text)


def length_words(length: float, unit: Unit, *, decimals: int | None = None) -> str:
    """Return a length (mm) as a person reads it in the spoken language.

    The symbols are the same in every language: mm, and in for the inch (ISO 80000, ASTM SI 10);
    exact sixteenths of an inch stay fractions, as drawings in inches have them.

    Examples
    --------
    >>> length_words(6.7, "mm"), length_words(7.9375, "in")
    ('6.7 mm', '5/16 in')
    """
    return figures(format_length(length, unit, decimals=decimals))


def number_words(value: float) -> str:
    """Return a bare number as a person reads it in the spoken language.

    Examples
    --------
    >>> number_words(90.0), number_words(82.5)
    ('90', '82.5')
    """
    return figures(f"{value:g}")


def unbroken(text: str) -> str:
    r"""Return `text` to be shown in lines, none of which ends between a figure and its unit.

    Examples
    --------
    >>> unbroken("8 mm needed: 1.30 mm short").split(" ")
    ['8\xa0mm', 'needed:', '1.30\xa0mm', 'short']
    """
    return _UNIT.sub("\u00a0", text)
