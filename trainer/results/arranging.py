"""Rows put in order and sifted: what a table shows of what there is. No Qt.

A table of ten thousand rows is put in order by one call of `sorted` over keys that were made once;
a proxy that asks a comparison for each pair of rows would cross from one language to the other a
hundred thousand times.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Final, Generic, TypeVar

__all__ = ["Arranged", "Column", "Key", "Tone"]

Row = TypeVar("Row")

Key = float | str | None
"""What a cell is sorted by; None, where there is nothing, comes last whichever way is up."""

Tone = str
"""`plain`, `bad`, `good` or `quiet`: how a cell looks. What it says, its text says too."""


@dataclass(frozen=True)
class Column(Generic[Row]):
    """One column of a table.

    Parameters
    ----------
    name
        Its stable name.
    title
        What stands above it.
    means
        What it is, in one plain line with the standard term; shown where it is asked for.
    text
        What a cell says.
    key
        What it is sorted by; its text if None. All of a column are numbers, or all are text.
    tone
        How a cell looks.
    number
        Whether it is a figure, and stands at the right.
    """

    name: str
    title: str
    means: str
    text: Callable[[Row], str]
    key: Callable[[Row], Key] | None = None
    tone: Callable[[Row], Tone] | None = None
    number: bool = False

    def key_of(self, row: Row) -> Key:
        """What a row is sorted by in this column."""
        if self.key is not None:
            return self.key(row)
        return self.text(row).casefold()


@dataclass(slots=True)
class Arranged(Generic[Row]):
    """Rows, and the order that those which are shown stand in.

    Parameters
    ----------
    columns
        Of the table.
    rows
        All there are.

    Examples
    --------
    >>> columns = [Column("n", "N", "", str, float)]
    >>> of = Arranged(columns, [10, 9, 100])
    >>> of.arrange("n")
    >>> [of.rows[at] for at in of.order]
    [9, 10, 100]
    >>> of.sift("10")
    >>> [of.rows[at] for at in of.order]
    [10, 100]
    """

    columns: Sequence[Column[Row]]
    rows: Sequence[Row]
    order: list[int] = field(default_factory=list)
    sorted_by: str = ""
    descending: bool = False
    _keys: dict[str, list[Key]] = field(default_factory=dict)
    _says: list[str] = field(default_factory=list)
    _words: str = ""
    _keeps: Callable[[Row], bool] | None = None
    _all: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.take(self.rows)

    def take(self, rows: Sequence[Row]) -> None:
        """Take other rows, and show them in the order and through the sieve that there is."""
        self.rows, self._keys, self._says = rows, {}, []
        self.arrange(self.sorted_by, descending=self.descending)

    def arrange(self, by: str, *, descending: bool = False) -> None:
        """Put them in the order of a column, or as they came if `by` is empty.

        Rows that are alike in it stay in the order that they came in.
        """
        self.sorted_by, self.descending = by, descending
        everything = range(len(self.rows))
        if by:
            keys = self._keys_of(by)
            there = [at for at in everything if keys[at] is not None]
            without = [at for at in everything if keys[at] is None]
            # One column holds one kind of key, which a type of mixed keys can't say.
            there.sort(key=keys.__getitem__, reverse=descending)  # type: ignore[arg-type]
            self._all = [*there, *without]
        else:
            self._all = list(everything)
        self._sift()

    def sift(self, words: str = "", keeps: Callable[[Row], bool] | None = None) -> None:
        """Show only rows that hold every word somewhere, and that `keeps` keeps."""
        self._words, self._keeps = words, keeps
        self._sift()

    def _sift(self) -> None:
        words = self._words.casefold().split()
        shown = self._all
        if words:
            says = self._said()
            shown = [at for at in shown if all(word in says[at] for word in words)]
        if self._keeps is not None:
            keeps, rows = self._keeps, self.rows
            shown = [at for at in shown if keeps(rows[at])]
        self.order = shown if shown is not self._all else list(shown)

    def _keys_of(self, name: str) -> list[Key]:
        if name not in self._keys:
            column = next(one for one in self.columns if one.name == name)
            self._keys[name] = [column.key_of(row) for row in self.rows]
        return self._keys[name]

    def _said(self) -> list[str]:
        """All that each row says, for looking words up in."""
        if not self._says:
            texts = [column.text for column in self.columns]
            self._says = [_APART.join(text(row) for text in texts).casefold() for row in self.rows]
        return self._says

    def lines(self, chosen: Sequence[int] | None = None) -> list[list[str]]:
        """The titles, and what is shown as text; of `chosen` places in the order alone, or all."""
        places = range(len(self.order)) if chosen is None else chosen
        shown = [self.rows[self.order[place]] for place in places]
        titles = [column.title for column in self.columns]
        return [titles, *([column.text(row) for column in self.columns] for row in shown)]


_APART: Final = "\x1f"
