"""How far a leaf's answer can be trusted.

The expanded uncertainty U of a leaf's answer (coverage factor 2) has two parts, each taken as a
uniform distribution: the leaf's own tolerance, and the smallest gap that an eye sees. After JCGM
106:2012, which tells apart what a measurement decides from what it leaves in doubt.

The eye limit is 0.1 mm because an unaided eye parts two points about one minute of arc from each
other, which is 0.1 mm at 350 mm, a usual reading distance. A gap with a light behind it is seen far
smaller, from some 0.002 mm; so 0.1 mm is what every eye may be asked to see, not what one can.

A check that rests on more than one leaf carries the doubt of each: independent, so their squares
add up. A difference of two legs has the root of two of a leg's; a theoretical throat has each leg's
by as much as that leg moves it. What no leaf decides has no doubt here: it isn't ours to state.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from geometry.leaf import Edge
from geometry.reading import EYE_LIMIT

__all__ = ["COVERAGE", "GAIN", "LEAF_TOLERANCE", "doubt", "propagated"]

LEAF_TOLERANCE: Final = 0.05
"""mm: how far a sound leaf's size may be off its mark (contract)."""

COVERAGE: Final = 2.0
"""Coverage factor: about 95 % (JCGM 106:2012)."""

GAIN: Final[dict[Edge, float]] = {"leg": 1.0, "throat": math.sqrt(2.0)}
"""mm of size for a mm of gap: one to one at the tip, the root of two at the spur."""


def doubt(edge: Edge, eye_limit: float = EYE_LIMIT) -> float:
    """Return U of a leaf's answer by `edge`, mm of size.

    Parameters
    ----------
    edge
        The end that answers.
    eye_limit
        mm. Above the usual 0.1 mm it changes nothing: a tray can't widen the doubt.

    Examples
    --------
    >>> round(doubt("leg"), 3), round(doubt("throat"), 3), doubt("leg", 0.5) == doubt("leg")
    (0.129, 0.173, True)
    """
    seen = GAIN[edge] * min(eye_limit, EYE_LIMIT)
    return COVERAGE * math.sqrt((LEAF_TOLERANCE**2 + seen**2) / 3.0)


def propagated(one: float, shares: Iterable[float]) -> float:
    """Return the doubt of a check that rests on several answers, each with the doubt `one`, mm.

    Parameters
    ----------
    one
        mm: U of one leaf's answer.
    shares
        mm of the check for a mm of each answer.

    Examples
    --------
    >>> round(propagated(0.1, (1.0, -1.0)), 4), propagated(0.1, (1.0,))
    (0.1414, 0.1)
    """
    return one * math.hypot(*shares)
