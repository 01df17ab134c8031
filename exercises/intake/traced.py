"""What every way of taking a section in ends with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from exercises.backdrop import Backdrop
from geometry.curves import Vec

__all__ = ["Traced"]


@dataclass(frozen=True, slots=True)
class Traced:
    """A section taken in from a picture, a scan or a drawing, in the section frame.

    Parameters
    ----------
    angle
        Between the members, degrees: 60 to 135.
    trace
        The face from base toe to upright toe, mm; the toes lie on their members.
    uncertainty
        Of a leg, mm, standard (one sigma); None where nothing is known of it.
    source
        What a coupon keeps of where it came from, under ``x-source``: kind, file name, scale.
        Plain JSON values only.
    backdrop
        The picture behind the section, if there is one to keep.

    Examples
    --------
    >>> taken = Traced(90.0, ((8.0, 0.0), (3.9, 3.9), (0.0, 7.8)), 0.02, {"kind": "scan"})
    >>> taken.source["kind"], taken.backdrop
    ('scan', None)
    """

    angle: float
    trace: tuple[Vec, ...]
    uncertainty: float | None
    source: Mapping[str, object] = field(default_factory=dict)
    backdrop: Backdrop | None = None
