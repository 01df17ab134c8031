"""What geometry refuses, said so that a person can mend it.

A fault names the place (a JSON Pointer below the coupon, as in ``/bead/crown``), what is wrong
there and what would be right. All faults of a section are found before any is raised.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from numbers import Real

__all__ = ["Fault", "GeometryError", "number_faults"]


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that is wrong with a shape.

    Parameters
    ----------
    at
        JSON Pointer of the value, relative to the coupon ("/bead/crown").
    code
        A stable name for the kind of fault; translations hang on it.
    text
        What is wrong, in plain English.
    right
        What would be right.
    params
        The values that the text speaks of, by name; lengths in mm, angles in degrees.

    Examples
    --------
    >>> print(Fault("/bead/leg_base", "not-positive", "leg_base is -1", "a length above 0 mm"))
    /bead/leg_base: leg_base is -1; right would be: a length above 0 mm
    """

    at: str
    code: str
    text: str
    right: str
    params: Mapping[str, float | str] = field(default_factory=dict)

    def __str__(self) -> str:
        said = f"{self.text}; right would be: {self.right}"
        return f"{self.at}: {said}" if self.at else said


class GeometryError(ValueError):
    """A shape that can't be: carries every `Fault` that was found.

    Examples
    --------
    >>> error = GeometryError([Fault("/bead", "empty", "no bead", "two legs above 0 mm")])
    >>> error.faults[0].code
    'empty'
    """

    def __init__(self, faults: list[Fault] | tuple[Fault, ...]) -> None:
        self.faults: tuple[Fault, ...] = tuple(faults)
        super().__init__("; ".join(str(fault) for fault in self.faults))


def number_faults(
    at: str, values: Mapping[str, object] | Mapping[int, object], right: str = "mm"
) -> list[Fault]:
    """Return a fault for each of `values` that is no finite number, placed at its key below `at`.

    Examples
    --------
    >>> [str(fault) for fault in number_faults("/bead", {"leg_base": 8.0, "crown": float("nan")})]
    ['/bead/crown: crown is nan, which is no number; right would be: mm']
    """
    return [
        Fault(
            f"{at}/{key}",
            "not-finite",
            f"{key} is {value!r}, which is no number",
            right,
            {"key": str(key), "value": repr(value)},
        )
        for key, value in values.items()
        if not _is_number(value)
    ]


def _is_number(value: object) -> bool:
    if isinstance(value, bool) or not isinstance(value, Real):
        return False
    try:
        return math.isfinite(value)
    except OverflowError:
        # A whole number with more digits than any float has.
        return False
