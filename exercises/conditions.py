"""What a rule may ask of a weld that its cross-section doesn't show."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from geometry.joint import Member

__all__ = ["USUAL", "Conditions"]


@dataclass(frozen=True, slots=True)
class Conditions:
    """Where a weld is, how it was made and how it is loaded.

    Parameters
    ----------
    edge
        The member along whose edge the weld runs, as in a lap joint; the length of its face is
        then the thickness of that edge. None where the weld meets no edge.
    low_hydrogen
        Whether the process was low in hydrogen, or the joint preheated.
    transverse_tension
        Whether the weld is on a primary member and crosses its tension.
    girder_end
        Whether this is the weld of a girder's web to its flange, within twice the flange's width of
        an end.
    weld_length
        mm from end to end; None where it isn't known.

    Examples
    --------
    >>> Conditions(edge="upright").low_hydrogen
    True
    """

    edge: Member | None = None
    low_hydrogen: bool = True
    transverse_tension: bool = False
    girder_end: bool = False
    weld_length: float | None = None


USUAL: Final = Conditions()
"""What holds where a coupon says nothing."""
