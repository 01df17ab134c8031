"""What geometry refuses, said so that a person can mend it.

A fault names the place (a JSON Pointer below the coupon, as in ``/bead/crown``), what is wrong
there and what would be right. All faults of a section are found before any is raised.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

__all__ = ["Fault", "GeometryError"]


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
        return f"{self.at}: {self.text}; right would be: {self.right}"


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
