"""Amounts: what a limit allows, as a small closed vocabulary of formulas. Nothing is evaluated.

An amount is a length, or a share of a quantity with a cap, or a table by a quantity, or depends on
a fact, or is the least or the greatest of others. A length may have two columns, mm and inches, as
printed in codes that carry both: the column is the unit that the drawing's callout is in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal

from geometry.lengths import Unit

__all__ = [
    "FACTS",
    "QUANTITIES",
    "Amount",
    "Extreme",
    "Fact",
    "Given",
    "Length",
    "Linear",
    "Quantity",
    "Row",
    "Share",
    "Table",
    "Where",
]

Quantity = Literal[
    "size", "throat", "face_width", "thickness", "thinner", "thicker", "deciding", "edge"
]
QUANTITIES: Final[tuple[Quantity, ...]] = (
    "size",
    "throat",
    "face_width",
    "thickness",
    "thinner",
    "thicker",
    "deciding",
    "edge",
)
"""What an amount may go by, all mm.

``size`` and ``throat``: called for, as leg and as throat. ``face_width``: toe to toe.
``thickness``: of the member where an imperfection lies; the thinner one for what lies on both.
``thinner``, ``thicker``: of the two members. ``deciding``: the thinner one after a process low in
hydrogen or a preheat, else the thicker one. ``edge``: of the edge that the weld runs along.
"""

Fact = Literal["transverse_tension", "girder_end"]
FACTS: Final[tuple[Fact, ...]] = ("transverse_tension", "girder_end")
"""What an amount may depend on: `exercises.conditions` says what each means."""

_ROUNDING: Final = 1e-9
"""mm: a quantity that is a row's bound but for rounding is at it."""


@dataclass(frozen=True, slots=True)
class Given:
    """What amounts are worked out from.

    Parameters
    ----------
    unit
        The column that is read.
    quantities
        mm. What isn't there can't be asked for.
    facts
        Those that hold.

    Examples
    --------
    >>> Given("mm", {"throat": 5.0}).quantities["throat"]
    5.0
    """

    unit: Unit
    quantities: Mapping[Quantity, float]
    facts: frozenset[Fact] = frozenset()


@dataclass(frozen=True, slots=True)
class Length:
    """A length (or an angle), in two columns: `mm` and `inch` are both in mm (degrees).

    Examples
    --------
    >>> Length(2.0, 1.5875).value(Given("in", {}))
    1.5875
    """

    mm: float
    inch: float

    @classmethod
    def plain(cls, value: float) -> Length:
        """Return the length that is the same in both columns."""
        return cls(value, value)

    def value(self, given: Given) -> float:
        """The length of the column that is read, mm."""
        return self.mm if given.unit == "mm" else self.inch


@dataclass(frozen=True, slots=True)
class Share:
    """`by` times the quantity `of`."""

    of: Quantity
    by: float


NOTHING: Final = Length(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Linear:
    """`base` plus a share of a quantity, `less` a length, and at most `cap`.

    Examples
    --------
    >>> convexity = Linear(Length.plain(1.0), Share("face_width", 0.25), cap=Length.plain(5.0))
    >>> [convexity.value(Given("mm", {"face_width": width})) for width in (10.0, 20.0)]
    [3.5, 5.0]
    """

    base: Length
    share: Share
    less: Length = NOTHING
    cap: Length | None = None

    def value(self, given: Given) -> float:
        """What is allowed, mm."""
        share = self.share.by * given.quantities[self.share.of]
        found = self.base.value(given) + share - self.less.value(given)
        return found if self.cap is None else min(found, self.cap.value(given))


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a table: up to and with a bound, or below it, or for all the rest."""

    amount: Amount
    bound: Length | None = None
    inclusive: bool = True

    def holds(self, quantity: float, given: Given) -> bool:
        """Whether the row is for this quantity, mm."""
        if self.bound is None:
            return True
        bound = self.bound.value(given)
        return quantity <= bound + _ROUNDING if self.inclusive else quantity < bound - _ROUNDING


@dataclass(frozen=True, slots=True)
class Table:
    """The amount of the first row that holds; the last row is for all the rest.

    Examples
    --------
    >>> rows = Row(Length.plain(1.0), Length.plain(25.0), inclusive=False), Row(Length.plain(2.0))
    >>> table = Table("thickness", rows)
    >>> [table.value(Given("mm", {"thickness": t})) for t in (24.9, 25.0)]
    [1.0, 2.0]
    """

    by: Quantity
    rows: tuple[Row, ...]

    def value(self, given: Given) -> float:
        """What is allowed, mm."""
        quantity = given.quantities[self.by]
        return next(row for row in self.rows if row.holds(quantity, given)).amount.value(given)


@dataclass(frozen=True, slots=True)
class Where:
    """One amount where a fact holds, another where it doesn't.

    Examples
    --------
    >>> undercut = Where("transverse_tension", Length.plain(0.25), Length.plain(1.0))
    >>> undercut.value(Given("mm", {})), undercut.value(Given("mm", {}, frozenset(FACTS)))
    (1.0, 0.25)
    """

    fact: Fact
    then: Amount
    otherwise: Amount

    def value(self, given: Given) -> float:
        """What is allowed, mm."""
        return (self.then if self.fact in given.facts else self.otherwise).value(given)


@dataclass(frozen=True, slots=True)
class Extreme:
    """The least of some amounts, or the greatest.

    Examples
    --------
    >>> Extreme("least", (Length.plain(2.0), Length.plain(3.0))).value(Given("mm", {}))
    2.0
    """

    which: Literal["least", "greatest"]
    of: tuple[Amount, ...]

    def value(self, given: Given) -> float:
        """What is allowed, mm."""
        found = [amount.value(given) for amount in self.of]
        return min(found) if self.which == "least" else max(found)


Amount = Length | Linear | Table | Where | Extreme
