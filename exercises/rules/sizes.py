"""Which measure must reach a callout, and how a leaf is held to show whether it does.

One table for all rule sets: for each callout measure and face a row. What differs between them is
only which throat a throat callout means.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from exercises.callout import CalloutMeasure
from geometry.joint import MEMBERS, Member
from geometry.leaf import Edge
from geometry.measures import FaceShape

__all__ = ["Comparison", "SizeRow", "ThroatKey", "size_rows"]

ThroatKey = Literal["effective_throat", "theoretical_throat"]


@dataclass(frozen=True, slots=True)
class Comparison:
    """A measure that must reach the callout, and the edge that shows whether it does.

    Parameters
    ----------
    key
        Key of `geometry.measures.Measures`.
    edge
        The edge that answers.
    legs
        The legs at which a leg edge answers; empty for the throat edge.
    """

    key: str
    edge: Edge
    legs: tuple[Member, ...] = ()


@dataclass(frozen=True, slots=True)
class SizeRow:
    """How a callout of `measure` is judged on a `face`.

    Parameters
    ----------
    measure, face
        What the row is for.
    compared
        Every measure that must reach the callout.
    edges
        The edges that are right to hold to this face; more than one where either will do.
    legs
        Legs that have to be gauged, with the leg edge.
    throat
        Whether the throat has to be read, with the throat edge.
    unequal
        Whether the row is for a callout of two different legs.

    Examples
    --------
    >>> size_rows("effective_throat")[5].name
    'leg-concave-unequal'
    """

    measure: CalloutMeasure
    face: FaceShape
    compared: tuple[Comparison, ...]
    edges: tuple[Edge, ...]
    legs: tuple[Member, ...]
    throat: bool
    unequal: bool = False

    @property
    def name(self) -> str:
        """What the row is called in keys: ``leg-concave-unequal``."""
        return f"{self.measure}-{self.face}" + ("-unequal" if self.unequal else "")

    @property
    def seats(self) -> tuple[tuple[Edge, Member], ...]:
        """Pairs of edge and member: what has to be gauged. The throat edge lies on either."""
        legs: tuple[tuple[Edge, Member], ...] = tuple(("leg", member) for member in self.legs)
        return (*legs, ("throat", "base")) if self.throat else legs


_BOTH_LEGS: Final = (
    Comparison("leg_base", "leg", ("base",)),
    Comparison("leg_upright", "leg", ("upright",)),
)


def size_rows(throat: ThroatKey) -> tuple[SizeRow, ...]:
    """Return every row for rules by which a throat callout means `throat`.

    Examples
    --------
    >>> [row.face for row in size_rows("effective_throat") if row.throat]
    ['concave', 'concave', 'concave']
    """
    by_legs, by_spur = Comparison(throat, "leg", MEMBERS), Comparison(throat, "throat")
    rows: list[SizeRow] = []
    for unequal in (False, True):
        # A hollow face takes metal from the middle: legs of the size called for don't show that,
        # and the spur alone flatters unequal legs. Both have to be seen.
        hollow = "theoretical_throat" if unequal else "effective_size"
        inside = (Comparison(hollow, "throat"), *_BOTH_LEGS)
        rows += [
            # The shorter leg decides: each leg is compared, so that either can be named.
            SizeRow("leg", "convex", _BOTH_LEGS, ("leg",), MEMBERS, throat=False, unequal=unequal),
            SizeRow(
                "leg",
                "flat",
                _BOTH_LEGS,
                # On two different legs a spur of either size shows nothing of the other.
                ("leg",) if unequal else ("leg", "throat"),
                MEMBERS,
                throat=False,
                unequal=unequal,
            ),
            SizeRow(
                "leg", "concave", inside, ("leg", "throat"), MEMBERS, throat=True, unequal=unequal
            ),
        ]
    return (
        *rows,
        SizeRow("throat", "convex", (by_legs,), ("leg",), MEMBERS, throat=False),
        SizeRow("throat", "flat", (by_legs,), ("leg", "throat"), MEMBERS, throat=False),
        SizeRow("throat", "concave", (by_spur,), ("throat",), (), throat=True),
    )
