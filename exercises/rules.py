"""Rule sets, as data: what a callout asks of a weld, and how a leaf is held to find out.

A rule set is two tables. The first names, for each callout measure and each face, the measure
that is compared and how the leaf shows it. The second holds the limits on everything else, each
with its source and how far that source can be trusted.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal

from exercises.coupon import CalloutMeasure, Disposition
from exercises.text import Text
from geometry.joint import MEMBERS, Member
from geometry.leaf import Edge
from geometry.measures import FaceShape

__all__ = [
    "AS_DRAWN",
    "RULE_SETS",
    "Comparison",
    "Confidence",
    "Limit",
    "RuleSet",
    "SizeRow",
    "Source",
]

Confidence = Literal["own", "S", "S2", "M"]
"""Own rule; or seen in the source's text, seen second-hand, from memory."""


@dataclass(frozen=True, slots=True)
class Source:
    """Where a rule comes from, and how surely."""

    text: str
    confidence: Confidence


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
    """

    measure: CalloutMeasure
    face: FaceShape
    compared: tuple[Comparison, ...]
    edges: tuple[Edge, ...]
    legs: tuple[Member, ...]
    throat: bool


@dataclass(frozen=True, slots=True)
class Limit:
    """The most that a measure other than the size may be.

    Parameters
    ----------
    key
        ``undercut_base`` and so on (depth, mm), ``overlap_base`` and so on (length, mm),
        ``root_opening`` (mm).
    at_most
        mm.
    disposition
        What is needed above it.
    source
        Whose limit it is.
    """

    key: str
    at_most: float
    disposition: Disposition
    source: Source


@dataclass(frozen=True, slots=True)
class RuleSet:
    """What a shop judges by.

    Parameters
    ----------
    id, version
        A grade names both, so that a later version never regrades the past.
    title, lines
        What a job card says of it.
    sizes
        One row for each callout measure and face.
    allowed_under
        mm by which a size may fall short of its callout.
    opening_free
        mm of root opening that cost nothing; a wider one is added whole to the size called for.
    limits
        On everything else. What isn't listed isn't limited.
    source
        Of the sizes.
    """

    id: str
    version: int
    title: Text
    lines: tuple[Text, ...]
    sizes: tuple[SizeRow, ...]
    allowed_under: float
    opening_free: float
    limits: tuple[Limit, ...]
    source: Source

    def row(self, measure: CalloutMeasure, face: FaceShape) -> SizeRow:
        """The row for a callout measure and a face.

        Examples
        --------
        >>> AS_DRAWN.row("throat", "concave").edges
        ('throat',)
        """
        for row in self.sizes:
            if (row.measure, row.face) == (measure, face):
                return row
        raise KeyError((measure, face))

    def added_for_opening(self, opening: float) -> float:
        """What a root opening of `opening` mm adds to the leg size called for, mm.

        Examples
        --------
        >>> AS_DRAWN.added_for_opening(0.0), AS_DRAWN.added_for_opening(2.0)
        (0.0, 2.0)
        """
        return opening if opening > self.opening_free else 0.0


_BOTH_LEGS: Final = (
    Comparison("leg_base", "leg", ("base",)),
    Comparison("leg_upright", "leg", ("upright",)),
)
_HOLLOW_THROAT: Final = Comparison("effective_throat", "throat")

_SIZES: Final = (
    # The shorter leg decides: each leg is compared, so that either can be named.
    SizeRow("leg", "convex", _BOTH_LEGS, ("leg",), MEMBERS, throat=False),
    SizeRow("leg", "flat", _BOTH_LEGS, ("leg", "throat"), MEMBERS, throat=False),
    # A hollow face takes metal from the middle: legs of the size called for don't show that, and
    # the spur alone flatters unequal legs. Both have to be seen.
    SizeRow(
        "leg",
        "concave",
        (Comparison("effective_size", "throat"), *_BOTH_LEGS),
        ("leg", "throat"),
        MEMBERS,
        throat=True,
    ),
    SizeRow(
        "throat",
        "convex",
        (Comparison("effective_throat", "leg", MEMBERS),),
        ("leg",),
        MEMBERS,
        throat=False,
    ),
    SizeRow(
        "throat",
        "flat",
        (Comparison("effective_throat", "leg", MEMBERS),),
        ("leg", "throat"),
        MEMBERS,
        throat=False,
    ),
    SizeRow("throat", "concave", (_HOLLOW_THROAT,), ("throat",), (), throat=True),
)

_OWN: Final = Source("own rule of this trainer", "own")

AS_DRAWN: Final = RuleSet(
    id="as-drawn",
    version=1,
    title=Text.of({"en": "As drawn", "es": "Según plano"}),
    lines=(
        Text.of(
            {
                "en": "Nothing is allowed under the callout.",
                "es": "No se admite nada por debajo de lo indicado.",
            }
        ),
        Text.of(
            {
                "en": "No undercut and no overlap is allowed.",
                "es": "No se admiten mordeduras ni solapes.",
            }
        ),
        Text.of(
            {
                "en": "A root opening is added to the size called for.",
                "es": "La separación en la raíz se suma al tamaño indicado.",
            }
        ),
        Text.of(
            {
                "en": "Convexity and excess are not limited.",
                "es": "La convexidad y el exceso no se limitan.",
            }
        ),
    ),
    sizes=_SIZES,
    allowed_under=0.0,
    opening_free=0.0,
    limits=(
        Limit("overlap_base", 0.0, "dress back", _OWN),
        Limit("overlap_upright", 0.0, "dress back", _OWN),
        Limit("undercut_base", 0.0, "add weld metal", _OWN),
        Limit("undercut_upright", 0.0, "add weld metal", _OWN),
    ),
    source=_OWN,
)

RULE_SETS: Final[Mapping[str, RuleSet]] = {AS_DRAWN.id: AS_DRAWN}
