"""From a file or a clipboard to a fitted section; no Qt, since it is done beside the window."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np

from exercises.file_faults import read_bytes
from exercises.intake.cloud import Cloud, cloud_of_outlines, cloud_of_points
from exercises.intake.decoding import LARGEST_SCAN
from exercises.intake.dxf import read_dxf
from exercises.intake.outline import Drawing
from exercises.intake.refusal import IntakeError, Note
from exercises.intake.scan import Fitted, Wishes, fit_section
from exercises.intake.svg import read_svg
from exercises.intake.table import Table, read_table
from exercises.intake.units import MM_PER, FileUnit

__all__ = ["SUFFIXES", "Choice", "Found", "Source", "found_in", "read_source"]

SUFFIXES: Final = (".csv", ".tsv", ".txt", ".dat", ".asc", ".xyz", ".prn", ".dxf", ".svg")
"""What is offered; whatever else is tried as text."""


@dataclass(frozen=True, slots=True, eq=False)
class Source:
    """What was opened or pasted.

    Parameters
    ----------
    name
        The file's name; empty for what was pasted.
    data
        What it holds, to be read again with another unit or other columns.
    held
        What was read of it.
    """

    name: str
    data: bytes | str
    held: Table | Drawing

    @property
    def unit(self) -> FileUnit | None:
        """The unit that it states; None if it states none, or two that differ."""
        if isinstance(self.held, Drawing):
            return self.held.unit
        across, up = self.held.units
        return across if across == up else None

    @property
    def states_units(self) -> bool:
        """Whether nothing has to be asked."""
        return (isinstance(self.held, Table) and None not in self.held.units) or bool(self.unit)


@dataclass(frozen=True, slots=True)
class Choice:
    """What only a person can say of a source: unit, columns, which outlines."""

    unit: FileUnit | None = None
    columns: tuple[int, int] | None = None
    outlines: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """What a source comes to: its points, and the section in them or why there is none."""

    cloud: Cloud | None = None
    fitted: Fitted | None = None
    faults: tuple[Note, ...] = ()


def read_source(given: Path | str | Source, choice: Choice) -> Source:
    r"""Return what a file or pasted text holds; a source is read again with another choice.

    Raises
    ------
    FileError
        If it can't be read, or isn't what it should be.

    Examples
    --------
    >>> read_source("0 1\n1 2\n", Choice()).held.x.tolist()
    [0.0, 1.0]
    """
    if isinstance(given, Source):
        name, data = given.name, given.data
    elif isinstance(given, Path):
        name, data = given.name, read_bytes(given, LARGEST_SCAN)
    else:
        name, data = "", given
    start = data[:400].lstrip() if isinstance(data, bytes) else b""
    lower = name.lower()
    if isinstance(data, bytes) and lower.endswith(".dxf"):
        return Source(name, data, read_dxf(data, name, unit=choice.unit))
    if isinstance(data, bytes) and (lower.endswith(".svg") or b"<svg" in start):
        return Source(name, data, read_svg(data, name, unit=choice.unit))
    return Source(name, data, read_table(data, name, columns=choice.columns))


def found_in(source: Source, choice: Choice, wishes: Wishes) -> Found:
    """Return the points of a source and the section in them; faults where there is none."""
    cloud: Cloud | None = None
    try:
        cloud = cloud_of(source, choice)
        return Found(cloud, fit_section(cloud, wishes, source.name))
    except IntakeError as error:
        return Found(cloud, None, error.faults)


def cloud_of(source: Source, choice: Choice) -> Cloud:
    """Return the points of a source in mm.

    Raises
    ------
    IntakeError
        If they are too few, or reach too far.
    """
    held = source.held
    if isinstance(held, Drawing):
        scale = MM_PER[choice.unit or held.unit or "mm"]
        return cloud_of_outlines([held.outlines[at] for at in choice.outlines], scale, source.name)
    across, up = (MM_PER[choice.unit or unit or "mm"] for unit in held.units)
    return cloud_of_points(np.array(held.x * across), np.array(held.z * up), source.name)
