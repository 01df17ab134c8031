"""Divisions of the grid and the scale bar: round ones, in the chosen unit, at any zoom."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from geometry.lengths import MM_PER_INCH, Unit
from trainer.figures import length_words

__all__ = ["Divisions", "bar_length", "divisions"]

_INCH_STEPS: Final = tuple(
    [MM_PER_INCH / part for part in (1024, 256, 64, 32, 16, 8, 4, 2, 1)]
    + [MM_PER_INCH * many for many in (2, 5, 10, 20, 50)]
)


@dataclass(frozen=True, slots=True)
class Divisions:
    """A fine and a strong division of the grid, mm."""

    fine: float
    strong: float


def _steps(unit: Unit) -> tuple[float, ...]:
    if unit == "in":
        return _INCH_STEPS
    return tuple(lead * 10.0**power for power in range(-3, 4) for lead in (1.0, 2.0, 5.0))


def divisions(scale: float, unit: Unit, least: float = 16.0) -> Divisions:
    """Return the grid's divisions at `scale` (px per mm), the fine one at least `least` px wide.

    Examples
    --------
    >>> divisions(20.0, "mm"), divisions(4.0, "mm")
    (Divisions(fine=1.0, strong=5.0), Divisions(fine=5.0, strong=10.0))
    >>> divisions(20.0, "in").fine * 16 / 25.4
    1.0
    """
    steps = _steps(unit)
    fine = next((step for step in steps if step * scale >= least), steps[-1])
    if unit == "in":
        strong = MM_PER_INCH if fine >= MM_PER_INCH / 4.0 - 1e-9 else 4.0 * fine
        return Divisions(fine, strong if strong > fine else 5.0 * fine)
    power = 10.0 ** math.floor(math.log10(fine) + 1e-9)
    lead = round(fine / power)
    return Divisions(fine, (5.0 if lead == 1 else 10.0) * power)


def bar_length(scale: float, unit: Unit, most: float = 220.0) -> tuple[float, str]:
    """Return the scale bar's length (mm), at most `most` pixels, and how a person reads it.

    Examples
    --------
    >>> bar_length(40.0, "mm"), bar_length(40.0, "in")[1]
    ((5.0, '5 mm'), '1/8 in')
    """
    steps = _steps(unit)
    length = next((step for step in reversed(steps) if step * scale <= most), steps[0])
    return length, length_words(length, unit)
