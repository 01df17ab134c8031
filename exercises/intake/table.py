"""Points out of text: CSV, TSV, whatever was copied out of a scanner's program."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from exercises.intake.decoding import decoded
from exercises.intake.layout import Layout, find_layout, is_remark, number, split
from exercises.intake.refusal import IntakeError, Note, note, refused
from exercises.intake.units import FileUnit, unit_in
from exercises.strict_json import quoted
from geometry.faults import Fault

__all__ = ["MOST_POINTS_READ", "Table", "read_table"]

FloatArray = NDArray[np.float64]

MOST_POINTS_READ: Final = 1_000_000
"""Points that are read of one file."""

_MOST_NOTES: Final = 20
_FARTHEST: Final = 1e9
_ACROSS: Final = frozenset(["x", "pos", "position", "lateral", "width", "breite", "posición"])
_UP: Final = frozenset(["z", "height", "profile", "depth", "höhe", "altura", "alt"])
_WORD: Final = re.compile(r"[^\W\d_]+")


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """Points as a file states them.

    Parameters
    ----------
    x, z
        One value a row, in the file's units; z is NaN where the scanner saw nothing.
    lines
        Line of each row in the file, from 1.
    units
        What the file says of the units of x and of z.
    columns
        Which columns x and z are, from 0, and how many there are.
    names
        The columns' headings, if there are any.
    notes
        Every row that could not be read, up to twenty, then a count.
    """

    x: FloatArray
    z: FloatArray
    lines: NDArray[np.int64]
    layout: Layout
    encoding: str
    units: tuple[FileUnit | None, FileUnit | None]
    columns: tuple[int, int, int]
    names: tuple[str, ...]
    notes: tuple[Note, ...]


def read_table(
    data: bytes | str, name: str = "", *, columns: tuple[int, int] | None = None
) -> Table:
    r"""Return the points in a text of columns.

    Parameters
    ----------
    data
        The file's bytes, or pasted text.
    name
        What messages call it.
    columns
        Which columns are x and z, from 0; by default by their headings, else the first two that
        neither count nor stand still.

    Raises
    ------
    IntakeError
        If it is no text, has no two columns of numbers, or most rows can't be read.

    Examples
    --------
    >>> table = read_table("x [mm];z [mm]\n0,0;1,5\n0,1;NaN\n0,2;oops\n0,3;1,7\n", "a.csv")
    >>> table.x.tolist(), table.z.tolist(), table.units
    ([0.0, 0.1, 0.3], [1.5, nan, 1.7], ('mm', 'mm'))
    >>> print(table.notes[0])
    a.csv:4: column 2: "oops" is no number; right would be: a number, or NaN for a drop-out
    """
    text, encoding = decoded(data, name) if isinstance(data, bytes) else (data, "text")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    layout = find_layout(lines)
    if layout is None:
        raise _no_columns(lines, name)
    rows = _Rows(lines, layout, name)
    rows.refuse_what_is_unclear()
    across, up = columns if columns is not None else rows.likely_columns()
    if max(across, up) >= rows.width or across == up or min(across, up) < 0:
        text = f"there is no column {max(across, up) + 1} beside another"
        right = f"two of the columns 1 to {rows.width}"
        told = {"column": max(across, up) + 1, "columns": rows.width}
        raise refused(name, Fault("", "scan-column", text, right, told))
    x, z, at = rows.points(across, up)
    return Table(
        x,
        z,
        at,
        layout,
        encoding,
        rows.units(across, up),
        (across, up, rows.width),
        rows.names,
        tuple(rows.notes),
    )


def _no_columns(lines: Sequence[str], name: str) -> IntakeError:
    at, line = next(
        ((at, line) for at, line in enumerate(lines, 1) if not is_remark(line)), (1, "")
    )
    text = f"no line holds two numbers; the first reads {quoted(line.strip())}"
    right = "two columns of numbers, x and z, with a comma, semicolon, tab or blank between them"
    fault = Fault("", "scan-no-columns", text, right, {"first": quoted(line.strip())})
    return refused(name, fault, line=at)


class _Rows:
    """The rows of a text, its head apart."""

    def __init__(self, lines: Sequence[str], layout: Layout, name: str) -> None:
        self._layout, self._name = layout, name
        self._rows: list[list[float | None]] = []
        self._fields: dict[int, list[str]] = {}
        self._at: list[int] = []
        self._head: list[str] = []
        self.names: tuple[str, ...] = ()
        self.notes: list[Note] = []
        for at, line in enumerate(lines, 1):
            if is_remark(line):
                self._head.append(line)
                continue
            fields = split(line, layout)
            values = [number(field, layout.decimal) for field in fields]
            real = sum(value is not None and not math.isnan(value) for value in values)
            if not self._rows and (real < 2 or None in values):
                self._head.append(line)
                self.names = tuple(field.strip().strip('"') for field in fields)
                continue
            if len(self._rows) == MOST_POINTS_READ:
                text = f"there are more than {MOST_POINTS_READ} points"
                told: dict[str, float | str] = {"count": MOST_POINTS_READ}
                right = "one profile, or every tenth point"
                raise refused(name, Fault("", "scan-many-points", text, right, told), line=at)
            if None in values:
                self._fields[len(self._rows)] = fields
            self._rows.append(values)
            self._at.append(at)
        widths = np.bincount([len(row) for row in self._rows] or [0])
        self.width = int(widths.argmax())
        if len(self.names) != self.width:
            self.names = ()
        if self.width < 2:
            raise _no_columns(lines, name)

    def refuse_what_is_unclear(self) -> None:
        """Refuse commas that may part columns as well as decimals."""
        if (self._layout.delimiter, self._layout.decimal, self.width) != (",", ".", 4):
            return
        if self.names:
            # As many names as columns: nobody's decimals have a name of their own.
            return
        if any(
            value is None or not float(value).is_integer() for row in self._rows for value in row
        ):
            return
        text = "commas part whole numbers: columns, or decimals?"
        right = "semicolons or tabs between the columns, or decimal points"
        raise refused(self._name, Fault("", "scan-commas", text, right), line=self._at[0])

    def likely_columns(self) -> tuple[int, int]:
        """Which columns are x and z."""
        first = [(_WORD.findall(name.lower()) or [""])[0] for name in self.names]
        across = next((at for at, word in enumerate(first) if word in _ACROSS), None)
        up = next((at for at, word in enumerate(first) if word in _UP), None)
        if up is None and across is not None and "y" in first:
            up = first.index("y")
        if across is not None and up is not None:
            return across, up
        if self.width == 2:
            return 0, 1
        sample = [row for row in self._rows if len(row) == self.width][:2000]
        table = np.array(
            [[math.nan if value is None else value for value in row] for row in sample]
        )
        moving = [at for at in range(self.width) if not _stands_still_or_counts(table[:, at])]
        rest = [at for at in range(self.width) if at not in moving]
        chosen = sorted((moving + rest)[:2]) if len(moving) < 2 else moving[:2]
        return chosen[0], chosen[1]

    def points(self, across: int, up: int) -> tuple[FloatArray, FloatArray, NDArray[np.int64]]:
        """The points of two columns; rows that hold none are noted."""
        x, z, at = [], [], []
        unread = 0
        for index, row in enumerate(self._rows):
            pair = (row[across], row[up]) if len(row) > max(across, up) else (None, None)
            if pair[0] is None or pair[1] is None or math.isnan(pair[0]):
                # Nothing was seen there, and the row doesn't say where: nothing to show either.
                blank = all(value is not None and math.isnan(value) for value in pair)
                unread += not blank
                if not blank:
                    self._note(index, across, up, unread)
                continue
            if max(abs(pair[0]), 0.0 if math.isnan(pair[1]) else abs(pair[1])) > _FARTHEST:
                unread += 1
                self._note(index, across, up, unread)
                continue
            x.append(pair[0])
            z.append(pair[1])
            at.append(self._at[index])
        if unread > len(self._rows) / 2:
            raise IntakeError(self.notes)
        if unread > _MOST_NOTES:
            text = f"{unread - _MOST_NOTES} more rows could not be read"
            right = "a number, or NaN for a drop-out"
            told: dict[str, float | str] = {"count": unread - _MOST_NOTES}
            self.notes.append(note(self._name, Fault("", "scan-more-rows", text, right, told)))
        return np.array(x, float), np.array(z, float), np.array(at, np.int64)

    def _note(self, index: int, across: int, up: int, unread: int) -> None:
        if unread > _MOST_NOTES:
            return
        row, line = self._rows[index], self._at[index]
        right = "a number, or NaN for a drop-out"
        if len(row) <= max(across, up):
            told: dict[str, float | str] = {"count": len(row), "columns": self.width}
            text = f"the row has {len(row)} of {self.width} columns"
            fault = Fault("", "scan-short-row", text, f"{self.width} columns in every row", told)
        else:
            bad = across if row[across] is None or math.isnan(row[across] or 0.0) else up
            fields = self._fields.get(index, [])
            said = quoted(fields[bad].strip()) if bad < len(fields) else quoted(row[bad])
            place = f"column {bad + 1}"
            told = {"value": said, "column": bad + 1}
            fault = Fault(place, "scan-text", f"{said} is no number", right, told)
        self.notes.append(note(self._name, fault, line=line))

    def units(self, across: int, up: int) -> tuple[FileUnit | None, FileUnit | None]:
        """What the head says of the units of two columns."""
        stated = next((unit for line in self._head if (unit := unit_in(line))), None)
        if not self.names:
            return stated, stated
        one = unit_in(self.names[across], heading=True) or stated
        two = unit_in(self.names[up], heading=True) or stated
        return one or two, two or one


def _stands_still_or_counts(column: FloatArray) -> bool:
    finite = column[np.isfinite(column)]
    if len(finite) < 3:
        return True
    steps = np.diff(finite)
    return bool(
        np.ptp(finite) == 0.0
        or (np.all(steps == 1.0) and np.all(finite == np.round(finite)) and len(finite) > 5)
    )
