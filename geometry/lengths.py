"""Lengths at the edges: parsing what people write, printing what they read.

Inside the program and in files a length is a plain float in millimetres. This module is the only
one that knows of inches.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction
from typing import Final, Literal

from geometry.faults import Fault, GeometryError

__all__ = ["MM_PER_INCH", "Unit", "format_length", "inch_fraction", "parse_length"]

MM_PER_INCH: Final = 25.4
"""Exact by definition (international inch, 1959)."""

Unit = Literal["mm", "in"]

_MOST_DIGITS: Final = 12

_NUMBER = r"(?:\d+(?:\.\d*)?|\.\d+)"
_LENGTH = re.compile(
    rf"\s*(?:(?P<whole>\d+)(?:\s+|-))?(?:(?P<num>\d+)\s*/\s*(?P<den>\d+)|(?P<dec>{_NUMBER}))"
    r"\s*(?P<unit>mm|in\.?|inch(?:es)?|\"|\u2033)?\s*",
    re.IGNORECASE,
)


def parse_length(text: str, *, default_unit: Unit | None = None) -> float:
    """Return the length that `text` states, in mm.

    Parameters
    ----------
    text
        A decimal number, a fraction or a mixed number, with its unit: ``8 mm``, ``5/16 in``,
        ``1 1/4 in``, ``0.25"``. A decimal comma is read as a point.
    default_unit
        Unit of a bare number; without it a bare number is refused.

    Raises
    ------
    GeometryError
        If the text is no length, has no unit where one is needed, or is not finite.

    Examples
    --------
    >>> parse_length("5/16 in")
    7.9375
    >>> parse_length("1-1/4 in"), parse_length("8 mm"), parse_length("6,5", default_unit="mm")
    (31.75, 8.0, 6.5)
    """
    match = _LENGTH.fullmatch(text.replace(",", "."))
    if match is None or (match["whole"] and match["dec"]):
        raise _refused(f"{text!r} is no length", "'8 mm' or '5/16 in'")
    unit = match["unit"].lower() if match["unit"] else default_unit
    if unit is None:
        raise _refused(f"{text!r} has no unit", f"'{text.strip()} mm' or '... in'")
    if match["dec"]:
        number = float(match["dec"])
    else:
        # Python counts no digits beyond some thousands, and floats none beyond three hundred.
        if any(len(match[part] or "") > _MOST_DIGITS for part in ("whole", "num", "den")):
            raise _refused(f"{text!r} is too long to be a length", "'8 mm'")
        if int(match["den"]) == 0:
            raise _refused(f"{text!r} divides by zero", "'5/16 in'")
        number = float(Fraction(int(match["num"]), int(match["den"])) + int(match["whole"] or 0))
    length = number if unit == "mm" else number * MM_PER_INCH
    if not math.isfinite(length):
        raise _refused(f"{text!r} is too long to be a length", "'8 mm'")
    return length


def _refused(text: str, right: str) -> GeometryError:
    return GeometryError([Fault("", "no-length", text, right)])


def inch_fraction(length: float, *, denominator: int = 16) -> str | None:
    """Return `length` (mm) as a fraction of an inch, or None if it is not one.

    Parameters
    ----------
    length
        mm, zero or more.
    denominator
        The finest division, a power of two.

    Examples
    --------
    >>> inch_fraction(7.9375), inch_fraction(25.4), inch_fraction(31.75), inch_fraction(8.0)
    ('5/16', '1', '1 1/4', None)
    """
    parts = length / MM_PER_INCH * denominator
    if not math.isfinite(parts) or abs(parts - round(parts)) > 1e-6:
        return None
    whole, rest = divmod(Fraction(round(parts), denominator), 1)
    if rest == 0:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def format_length(length: float, unit: Unit = "mm", *, decimals: int | None = None) -> str:
    """Return `length` (mm) as a person reads it, with its unit.

    In inches an exact sixteenth is written as a fraction. Without `decimals`, millimetres get two
    and inches three, less trailing zeros.

    Raises
    ------
    GeometryError
        If the length is no finite number.

    Examples
    --------
    >>> format_length(8.0), format_length(6.7), format_length(7.9375, "in")
    ('8 mm', '6.7 mm', '5/16 in')
    >>> format_length(6.7, "in"), format_length(6.7, decimals=2)
    ('0.264 in', '6.70 mm')
    """
    if unit == "in":
        fraction = inch_fraction(length) if decimals is None else None
        if fraction is not None:
            return f"{fraction} in"
        length /= MM_PER_INCH
    if not math.isfinite(length):
        raise _refused(f"{length} is no length", "finite mm")
    places = decimals if decimals is not None else (2 if unit == "mm" else 3)
    number = f"{length:.{places}f}"
    if decimals is None and "." in number:
        number = number.rstrip("0").rstrip(".")
    # Less than half of the last place below zero is zero, which has no sign.
    return f"{number if float(number) else number.removeprefix('-')} {unit}"
