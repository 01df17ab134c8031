"""Units that scans and drawings are in; inside it is all millimetres."""

from __future__ import annotations

import re
from typing import Final, Literal

from geometry.lengths import MM_PER_INCH

__all__ = ["MM_PER", "UNITS", "FileUnit", "unit_in", "unit_named"]

FileUnit = Literal["mm", "µm", "cm", "m", "in", "mil"]

MM_PER: Final[dict[FileUnit, float]] = {
    "mm": 1.0,
    "µm": 1e-3,
    "cm": 10.0,
    "m": 1000.0,
    "in": MM_PER_INCH,
    "mil": MM_PER_INCH / 1000.0,
}
"""Millimetres in one of each unit."""

UNITS: Final[tuple[FileUnit, ...]] = tuple(MM_PER)

_NAMES: Final[dict[str, FileUnit]] = {
    "mm": "mm", "millimeter": "mm", "millimeters": "mm", "millimetre": "mm", "millimetres": "mm",
    "milímetros": "mm", "milimetros": "mm", "µm": "µm", "μm": "µm", "um": "µm", "micron": "µm",
    "microns": "µm", "micrometer": "µm", "micrometers": "µm", "micrometre": "µm",
    "micrometres": "µm", "micras": "µm", "cm": "cm", "m": "m", "meter": "m", "meters": "m",
    "metre": "m", "metres": "m", "in": "in", "inch": "in", "inches": "in", '"': "in",
    "pulgadas": "in", "mil": "mil", "mils": "mil", "thou": "mil",
}  # fmt: skip

_WORDS: Final = "|".join(sorted(map(re.escape, _NAMES), key=len, reverse=True))
_BRACKETED: Final = re.compile(rf"[\[(/_\s]\s*({_WORDS})\s*[\])]?\s*$", re.IGNORECASE)
_STATED: Final = re.compile(
    rf"(?:units?|unidad(?:es)?|einheit(?:en)?)\"?\s*[:=,;\s]\s*\"?\s*({_WORDS})(?!\w)",
    re.IGNORECASE,
)


def unit_named(text: str) -> FileUnit | None:
    """Return the unit that `text` names, if it names one.

    Examples
    --------
    >>> unit_named("Inches"), unit_named("um"), unit_named("ell")
    ('in', 'µm', None)
    """
    return _NAMES.get(text.strip().strip(".").lower())


def unit_in(text: str, *, heading: bool = False) -> FileUnit | None:
    """Return the unit that a line of a head states, or with `heading` the name of one column.

    Examples
    --------
    >>> unit_in("# Units: mm"), unit_in("z [µm]", heading=True), unit_in("x_mm", heading=True)
    ('mm', 'µm', 'mm')
    """
    match = (_BRACKETED if heading else _STATED).search(text)
    if match is not None:
        return unit_named(match[1])
    return unit_named(text) if heading and text.strip().lower() not in {"m", '"'} else None
