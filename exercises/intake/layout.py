"""How a text of points is laid out: what stands between columns, and which mark is the decimal."""

from __future__ import annotations

import csv
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

__all__ = ["DROP_OUTS", "Layout", "find_layout", "is_remark", "number", "split"]

DROP_OUTS: Final = frozenset(
    [
        "", "nan", "-nan", "+nan", "nan(ind)", "-nan(ind)", "1.#qnan", "-1.#ind", "1.#inf",
        "-1.#inf", "inf", "-inf", "+inf", "infinity", "-infinity", "na", "n/a", "#n/a", "null",
        "none", "-", "--", "---", "*", "**", "***", "****", "invalid", "nodata", "no data",
        "out", "?",
    ]
)  # fmt: skip
"""What stands where a scanner saw nothing, in lower case."""

_REMARKS: Final = ("#", "%", "//", "!")
_SAMPLE: Final = 400


@dataclass(frozen=True, slots=True)
class Layout:
    """What parts the columns (empty: blanks) and what the decimals.

    Examples
    --------
    >>> find_layout(["x;z", "0,5;1,25", "0,6;1,3"])
    Layout(delimiter=';', decimal=',')
    """

    delimiter: str
    decimal: str


_CANDIDATES: Final = tuple(
    Layout(delimiter, decimal)
    for delimiter, decimal in (
        ("\t", "."), ("\t", ","), (";", "."), (";", ","), ("|", "."), ("|", ","), (",", "."),
        ("", "."), ("", ","), (",", ","),
    )
)  # fmt: skip


def is_remark(line: str) -> bool:
    """Whether a line is a remark, or blank."""
    bare = line.lstrip()
    return not bare or bare.startswith(_REMARKS)


def number(field: str, decimal: str) -> float | None:
    """Return the number that a field states; NaN for a drop-out, None for other text.

    Examples
    --------
    >>> number(" 1,5", ","), number("n/a", "."), number("1_000", "."), number("1.5", ",")
    (1.5, nan, None, None)
    """
    bare = field.strip().strip('"').strip()
    if decimal == ",":
        if "." in bare or bare.endswith(","):
            return math.nan if bare.lower() in DROP_OUTS else None
        bare = bare.replace(",", ".", 1)
    if "_" in bare:
        return None
    try:
        value = float(bare)
    except ValueError:
        return math.nan if bare.lower() in DROP_OUTS else None
    return value if math.isfinite(value) else math.nan


def split(line: str, layout: Layout) -> list[str]:
    """Return the fields of a line.

    Examples
    --------
    >>> split('"1,5","2,5"', Layout(",", ",")), split(" 1  2 ", Layout("", "."))
    (['1,5', '2,5'], ['1', '2'])
    """
    if not layout.delimiter:
        return line.split()
    if '"' in line:
        try:
            return next(csv.reader([line], delimiter=layout.delimiter), [])
        except csv.Error:
            return line.split(layout.delimiter)
    fields = line.split(layout.delimiter)
    # Some write a delimiter after the last column as well.
    return fields[:-1] if len(fields) > 2 and not fields[-1].strip() else fields


def find_layout(lines: Sequence[str]) -> Layout | None:
    """Return the layout that reads most of the lines as columns of numbers; None if none does."""
    said = [line for line in lines if not is_remark(line)]
    step = max(1, len(said) // _SAMPLE)
    sample = said[:50] + said[50::step]
    best, most = None, (0, 0)
    for layout in _CANDIDATES:
        whole = partly = 0
        for line in sample:
            values = [number(field, layout.decimal) for field in split(line, layout)]
            real = sum(value is not None and math.isfinite(value) for value in values)
            partly += real >= 2
            whole += real >= 2 and None not in values
        if (whole, partly) > most:
            best, most = layout, (whole, partly)
    return best
