"""A rule set: what a shop judges by."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

from exercises.callout import CalloutMeasure
from exercises.rules.limits import Limit, MinimumSize, Opening, Source, Undersize
from exercises.rules.sizes import SizeRow, ThroatKey, size_rows
from exercises.rules.wording import Column, limit_line, minimum_line, opening_line, undersize_line
from exercises.text import Text
from geometry.lengths import Unit
from geometry.measures import FaceShape

__all__ = ["RuleSet"]


@dataclass(frozen=True)
class RuleSet:
    """What a shop judges by.

    Parameters
    ----------
    id, version
        A grade names both, so that a later version never regrades the past. In a file the version
        of a set is its ``revision``; ``version`` there is the format's.
    title
        What it is called.
    source
        Of the sizes.
    throat_is
        The measure that a throat callout means.
    undersize
        How far a size may fall short; None where nothing is allowed.
    opening
        What a root opening adds to the size called for; None where it adds nothing.
    minimum_size
        What a smaller callout is raised to; None where nothing is.
    limits
        On everything else. What isn't listed isn't limited.
    stated_lines
        What a job card says of it, where the file says it in words of its own.
    notes
        What else is to be said of it.
    digest
        SHA-256 of a shop's own file, as read; empty for a set that ships with the program.

    Examples
    --------
    >>> rules = RuleSet("shop", 1, Text.of("Shop"), Source("a shop", "", "", "own"))
    >>> rules.row("throat", "concave").edges, rules.added_for_opening(2.0)
    (('throat',), 0.0)
    """

    id: str
    version: int
    title: Text
    source: Source
    throat_is: ThroatKey = "effective_throat"
    undersize: Undersize | None = None
    opening: Opening | None = None
    minimum_size: MinimumSize | None = None
    limits: tuple[Limit, ...] = ()
    stated_lines: tuple[Text, ...] = ()
    notes: tuple[Text, ...] = ()
    digest: str = field(default="", compare=False)

    @cached_property
    def sizes(self) -> tuple[SizeRow, ...]:
        """One row for each callout measure and face."""
        return size_rows(self.throat_is)

    @property
    def lines(self) -> tuple[Text, ...]:
        """What is said of it as a whole: in words of its own, or made from its limits."""
        return self.lines_in("both")

    def lines_in(self, column: Column) -> tuple[Text, ...]:
        """What a job card says of it, lengths in one column: the one that its callout is in."""
        if self.stated_lines:
            return self.stated_lines
        lines = [undersize_line(self.undersize, column)]
        if self.opening is not None:
            lines.append(opening_line(self.opening, column))
        if self.minimum_size is not None:
            lines.append(minimum_line(self.minimum_size, column))
        return (*lines, *(limit_line(limit, column) for limit in self.limits), *self.notes)

    def row(self, measure: CalloutMeasure, face: FaceShape, *, unequal: bool = False) -> SizeRow:
        """The row for a callout measure and a face; `KeyError` if there is none."""
        for row in self.sizes:
            if (row.measure, row.face, row.unequal) == (measure, face, unequal):
                return row
        raise KeyError((measure, face))

    def added_for_opening(self, opening: float, unit: Unit = "mm") -> float:
        """What a root opening of `opening` mm adds to the leg size called for, mm."""
        if self.opening is None:
            return 0.0
        free = self.opening.free.mm if unit == "mm" else self.opening.free.inch
        # The whole of it, not what lies above the free part; a hair of rounding opens nothing.
        return opening if opening > free + 1e-9 else 0.0
