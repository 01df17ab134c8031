"""Limits: what a rule set says of one measure, where it comes from, and how surely."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from exercises.disposition import Disposition
from exercises.rules.formula import Amount, Length
from exercises.text import NO_TEXT, Text
from geometry.lengths import Unit

__all__ = [
    "AT_LEAST",
    "DEFAULT_NEEDS",
    "PER_MEMBER",
    "Limit",
    "LimitMeasure",
    "MinimumSize",
    "Opening",
    "Source",
    "Sureness",
    "Undersize",
    "Within",
]

Sureness = Literal["own", "seen", "second-hand", "from memory"]
"""How a rule is known: our own; its text was seen; seen as others repeat it; from memory."""

LimitMeasure = Literal[
    "undercut",
    "overlap",
    "toe_angle",
    "convexity",
    "asymmetry",
    "excess_throat",
    "root_opening",
    "maximum_size",
    "joint_angle",
]
"""What a rule set may limit beside the size.

``undercut`` (depth), ``overlap`` (length) and ``toe_angle`` (degrees, through the air): at each
toe. ``convexity``: of the face. ``asymmetry``: difference of the legs where none is called for.
``excess_throat``: actual throat beyond the one asked for. ``root_opening``. ``maximum_size``: the
leg called for along an edge. ``joint_angle``: degrees.
"""

PER_MEMBER: Final[frozenset[LimitMeasure]] = frozenset(("undercut", "overlap", "toe_angle"))
"""Measures that each toe has; their checks are named ``undercut_base`` and so on."""

AT_LEAST: Final[frozenset[LimitMeasure]] = frozenset(("toe_angle",))
"""Measures that must reach their limit; all others may not pass it."""

DEFAULT_NEEDS: Final[dict[LimitMeasure, Disposition]] = {
    "undercut": "add weld metal",
    "overlap": "dress back",
    "toe_angle": "dress back",
    "convexity": "dress back",
    "asymmetry": "dress back",
    "excess_throat": "dress back",
    "root_opening": "refer",
    "maximum_size": "refer",
    "joint_angle": "refer",
}
"""What a weld needs that fails a limit: excess is dressed back, a fit or a drawing is referred."""

_ROUNDING: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Source:
    """Where a rule comes from, and how surely.

    Examples
    --------
    >>> Source("ISO 5817", "2014", "Table 1, 1.10", "seen").name
    'ISO 5817:2014, Table 1, 1.10'
    """

    document: str
    edition: str
    clause: str
    sureness: Sureness
    note: Text = NO_TEXT

    @property
    def text(self) -> str:
        """The source's name, as lists of sources give it."""
        return self.name

    @property
    def name(self) -> str:
        """Document, edition and clause, as far as they are known."""
        edition = f":{self.edition}" if self.edition else ""
        return f"{self.document}{edition}" + (f", {self.clause}" if self.clause else "")


@dataclass(frozen=True, slots=True)
class Within:
    """How much of a weld's length an allowance is for.

    Parameters
    ----------
    share
        Of the weld's length; used where `length` is None.
    length, each
        So much in every so much, mm.
    prorate
        Whether a weld shorter than `each` has its share; else it has no allowance.

    Examples
    --------
    >>> within = Within(length=Length.plain(50.0), each=Length.plain(300.0))
    >>> [within.admits(extent, 600.0, "mm") for extent in (1 / 6, 0.17)]
    [True, False]
    >>> within.admits(0.1, 200.0, "mm")
    False
    """

    share: float = 0.0
    length: Length | None = None
    each: Length | None = None
    prorate: bool = False

    def share_in(self, unit: Unit) -> float:
        """The share of a weld's length, in the column of `unit`."""
        if self.length is None or self.each is None:
            return self.share
        if unit == "mm":
            return self.length.mm / self.each.mm
        return self.length.inch / self.each.inch

    def admits(self, extent: float, weld_length: float | None, unit: Unit) -> bool:
        """Whether what is found over `extent` of a weld is within; an unknown length is long."""
        if self.each is not None and not self.prorate and weld_length is not None:
            each = self.each.mm if unit == "mm" else self.each.inch
            if weld_length < each - _ROUNDING:
                return False
        return extent <= self.share_in(unit) + _ROUNDING


@dataclass(frozen=True, slots=True)
class Limit:
    """The most (or the least) that a measure may be.

    Parameters
    ----------
    measure
        What is limited.
    amount
        mm, or degrees: along the whole weld.
    short
        mm: what holds instead where the coupon's extent lies `within`; None where nothing does.
    within
        The share of the length that `short` is for.
    needs
        What a weld needs that fails.
    source
        Whose limit it is.

    Examples
    --------
    >>> from exercises.rules.formula import Linear, Share
    >>> convexity = Linear(Length.plain(1.0), Share("face_width", 0.1))
    >>> limit = Limit("convexity", convexity, "dress back", Source("a shop", "", "", "own"))
    >>> limit.unit, limit.bound
    ('mm', 'at_most')
    """

    measure: LimitMeasure
    amount: Amount
    needs: Disposition
    source: Source
    short: Amount | None = None
    within: Within | None = None

    @property
    def bound(self) -> Literal["at_most", "at_least"]:
        """Which side of the limit is right."""
        return "at_least" if self.measure in AT_LEAST else "at_most"

    @property
    def unit(self) -> Literal["mm", "degrees"]:
        """What the measure is in."""
        return "degrees" if self.measure in ("toe_angle", "joint_angle") else "mm"


@dataclass(frozen=True, slots=True)
class Undersize:
    """How far a size may fall short of its callout, and over how much of the weld's length.

    Parameters
    ----------
    measured_as
        Whether `amount` is of the leg or of the throat.
    amount
        mm.
    within
        The share of the length; None where it is for all of it.
    source
        Whose allowance it is.
    """

    measured_as: Literal["leg", "throat"]
    amount: Amount
    source: Source
    within: Within | None = None


@dataclass(frozen=True, slots=True)
class Opening:
    """What a root opening adds: nothing up to `free` mm, above it the whole opening."""

    free: Length
    source: Source


@dataclass(frozen=True, slots=True)
class MinimumSize:
    """The size that a smaller callout is raised to, mm, stated as leg or as throat."""

    measured_as: Literal["leg", "throat"]
    amount: Amount
    source: Source
