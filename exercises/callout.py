"""What a drawing calls for: a size by leg or by throat, its length and pitch, and its marks.

Both standards for weld symbols state the same weld, and read one figure of it differently: the
pitch of an intermittent weld is centre to centre in AWS A2.4 and in ISO 2553 system B, and a clear
gap in ISO 2553 system A. It is kept here centre to centre; the gap is worked out.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from typing import Final, Literal

from geometry.joint import Joint, Member
from geometry.lengths import Unit

__all__ = [
    "SIDES",
    "Callout",
    "CalloutMeasure",
    "Intermittent",
    "Side",
]

CalloutMeasure = Literal["leg", "throat"]

Side = Literal["arrow", "other", "both"]
SIDES: Final[tuple[Side, ...]] = ("arrow", "other", "both")
"""The side of the joint that the symbol's arrow points to, the other one, or both."""


def _exact(length: float) -> Decimal:
    """A length as its decimal digits say it, so that sums of such lengths are exact."""
    return Decimal(repr(length))


@dataclass(frozen=True, slots=True)
class Intermittent:
    """A weld in pieces.

    Parameters
    ----------
    length
        Of one piece, mm.
    pitch
        From the middle of one piece to the middle of the next, mm; longer than a piece.
    count
        How many pieces, where the drawing says it.
    staggered
        Whether the pieces on the two sides of the joint alternate.

    Examples
    --------
    >>> weld = Intermittent.of_gap(50.0, 100.0, count=3)
    >>> weld.pitch, weld.gap, weld.overall
    (150.0, 100.0, 350.0)
    """

    length: float
    pitch: float
    count: int | None = None
    staggered: bool = False

    @classmethod
    def of_gap(
        cls, length: float, gap: float, count: int | None = None, *, staggered: bool = False
    ) -> Intermittent:
        """Return the weld whose pieces stand `gap` mm apart, end to end (ISO 2553, system A).

        Examples
        --------
        >>> Intermittent.of_gap(0.1, 0.2).pitch
        0.3
        """
        return cls(length, float(_exact(length) + _exact(gap)), count, staggered)

    @property
    def gap(self) -> float:
        """Clear length between two pieces, mm."""
        return float(_exact(self.pitch) - _exact(self.length))

    @property
    def overall(self) -> float | None:
        """From the first piece's beginning to the last one's end, mm; None without a count."""
        if self.count is None:
            return None
        return float(_exact(self.length) + (self.count - 1) * _exact(self.pitch))


@dataclass(frozen=True, slots=True)
class Callout:
    """What the drawing calls for.

    Parameters
    ----------
    size
        mm: leg size, or throat; where the legs differ, the leg on the base.
    measure
        ``leg`` (z) or ``throat`` (a).
    text
        The size as a person reads it, with its unit: ``8 mm``, ``5/16 in``.
    upright_size, upright_text
        Where the legs differ, the leg on the upright, mm and in words; else None and empty.
    intermittent
        Length and pitch of the pieces; None for a weld all along the joint.
    side
        Of the joint, as the arrow sees it.
    all_around, site
        Whether the weld runs all around the joint; whether it is made on site.
    built_out
        Whether a weld along an edge is to be built out to the full edge.
    tail
        What the symbol's tail says, or empty.

    Examples
    --------
    >>> Callout(7.9375, "leg", "5/16 in").prefix
    'z'
    >>> unequal = Callout(6.0, "leg", "6 mm", upright_size=8.0, upright_text="8 mm")
    >>> unequal.leg("upright", Joint()), round(unequal.throat(Joint()), 6)
    (8.0, 4.8)
    """

    size: float
    measure: CalloutMeasure
    text: str
    upright_size: float | None = None
    upright_text: str = ""
    intermittent: Intermittent | None = None
    side: Side = "arrow"
    all_around: bool = False
    site: bool = False
    built_out: bool = False
    tail: str = ""

    @property
    def prefix(self) -> str:
        """The letter that weld symbols put before the size: z for a leg, a for a throat."""
        return "z" if self.measure == "leg" else "a"

    @property
    def unit(self) -> Unit:
        """The unit that the drawing states the size in."""
        return "mm" if "mm" in self.text.lower() else "in"

    @property
    def unequal(self) -> bool:
        """Whether the two legs called for differ."""
        return self.upright_size is not None and self.upright_size != self.size

    def leg(self, member: Member, joint: Joint) -> float:
        """The leg called for on `member` of `joint`, mm; a throat's is that of equal legs."""
        if self.measure == "throat":
            return self.size / math.cos(joint.radians / 2.0)
        if member == "upright" and self.upright_size is not None:
            return self.upright_size
        return self.size

    def throat(self, joint: Joint) -> float:
        """The throat called for in `joint`, mm; a leg's is that of a flat face.

        Examples
        --------
        >>> round(Callout(8.0, "leg", "8 mm").throat(Joint()), 3)
        5.657
        """
        if self.measure == "throat":
            return self.size
        base, upright = self.leg("base", joint), self.leg("upright", joint)
        if base == upright:
            return base * math.cos(joint.radians / 2.0)
        chord = math.sqrt(base**2 + upright**2 - 2.0 * base * upright * math.cos(joint.radians))
        return base * upright * math.sin(joint.radians) / chord
