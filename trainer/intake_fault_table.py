"""The words of what is wrong with a scan or a drawing, by code."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.fault_table import Variant

__all__ = ["CODES", "VALUES"]

_READING: Final[dict[str, tuple[Variant, ...]]] = {
    "scan-too-large": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file is larger than {mib} MiB"),
            QT_TRANSLATE_NOOP("Faults", "a smaller one: one profile, or every tenth point"),
        ),
    ),
    "scan-empty": (
        (
            QT_TRANSLATE_NOOP("Faults", "there is nothing in it"),
            QT_TRANSLATE_NOOP("Faults", "two columns of numbers, x and z"),
        ),
    ),
    "scan-not-text": (
        (
            QT_TRANSLATE_NOOP("Faults", "this is {what}, not text"),
            QT_TRANSLATE_NOOP("Faults", "points as text (CSV, TSV), or an outline as DXF or SVG"),
        ),
        (
            QT_TRANSLATE_NOOP("Faults", "byte {byte} (0x{hex}) is in no text"),
            QT_TRANSLATE_NOOP("Faults", "points as text (CSV, TSV), or an outline as DXF or SVG"),
        ),
    ),
    "scan-encoding": (
        (
            QT_TRANSLATE_NOOP("Faults", "byte {byte} (0x{hex}) fits no encoding of text"),
            QT_TRANSLATE_NOOP("Faults", "text in UTF-8"),
        ),
    ),
    "scan-no-columns": (
        (
            QT_TRANSLATE_NOOP("Faults", "no line holds two numbers; the first reads {first}"),
            QT_TRANSLATE_NOOP(
                "Faults",
                "two columns of numbers, x and z, with a comma, semicolon, tab or blank between "
                "them",
            ),
        ),
    ),
    "scan-column": (
        (
            QT_TRANSLATE_NOOP("Faults", "there is no column {column} beside another"),
            QT_TRANSLATE_NOOP("Faults", "two of the columns 1 to {columns}"),
        ),
    ),
    "scan-many-points": (
        (
            QT_TRANSLATE_NOOP("Faults", "there are more than {count} points"),
            QT_TRANSLATE_NOOP("Faults", "one profile, or every tenth point"),
        ),
    ),
    "scan-commas": (
        (
            QT_TRANSLATE_NOOP("Faults", "commas part whole numbers: columns, or decimals?"),
            QT_TRANSLATE_NOOP(
                "Faults", "semicolons or tabs between the columns, or decimal points"
            ),
        ),
    ),
    "scan-text": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is no number"),
            QT_TRANSLATE_NOOP("Faults", "a number, or NaN for a drop-out"),
        ),
    ),
    "scan-short-row": (
        (
            QT_TRANSLATE_NOOP("Faults", "the row has {count} of {columns} columns"),
            QT_TRANSLATE_NOOP("Faults", "{columns} columns in every row"),
        ),
    ),
    "scan-more-rows": (
        (
            QT_TRANSLATE_NOOP("Faults", "{count} more rows could not be read"),
            QT_TRANSLATE_NOOP("Faults", "a number, or NaN for a drop-out"),
        ),
    ),
}

_DRAWINGS: Final[dict[str, tuple[Variant, ...]]] = {
    "drawing-too-much": (
        (
            QT_TRANSLATE_NOOP(
                "Faults", "the drawing has more than {outlines} outlines or {points} points"
            ),
            QT_TRANSLATE_NOOP("Faults", "a drawing of one section"),
        ),
    ),
    "drawing-library": (
        (
            QT_TRANSLATE_NOOP("Faults", "drawings of this kind can't be read here"),
            QT_TRANSLATE_NOOP("Faults", "the extra: toe-and-throat[{extra}]"),
        ),
    ),
    "drawing-binary": (
        (
            QT_TRANSLATE_NOOP("Faults", "this is a binary DXF"),
            QT_TRANSLATE_NOOP("Faults", "the drawing saved as DXF in text (ASCII)"),
        ),
    ),
    "drawing-no-dxf": (
        (
            QT_TRANSLATE_NOOP("Faults", "this can't be read as DXF: {reason}"),
            QT_TRANSLATE_NOOP(
                "Faults", "a DXF drawing, of any version, saved anew by the program that made it"
            ),
        ),
    ),
    "drawing-empty": (
        (
            QT_TRANSLATE_NOOP("Faults", "the drawing holds no line, arc, polyline or spline"),
            QT_TRANSLATE_NOOP(
                "Faults",
                "the section's outline as lines, arcs, polylines or splines in model space",
            ),
        ),
    ),
    "drawing-empty-svg": (
        (
            QT_TRANSLATE_NOOP("Faults", "the drawing holds no path or shape"),
            QT_TRANSLATE_NOOP(
                "Faults",
                "the section's outline as a path or a polyline; text and pictures are none",
            ),
        ),
    ),
    "drawing-left-out": (
        (
            QT_TRANSLATE_NOOP("Faults", "{count} of kind {kind_of} left out"),
            QT_TRANSLATE_NOOP("Faults", "paths, lines, arcs, polylines, shapes or splines"),
        ),
    ),
    "drawing-entities": (
        (
            QT_TRANSLATE_NOOP(
                "Faults", "the file defines entities, which could grow without bound"
            ),
            QT_TRANSLATE_NOOP("Faults", "an SVG without <!ENTITY ...> in it"),
        ),
    ),
    "drawing-no-xml": (
        (
            QT_TRANSLATE_NOOP("Faults", "line {line}, column {column} can't be read as XML"),
            QT_TRANSLATE_NOOP("Faults", "a whole, well-formed SVG file"),
        ),
    ),
    "drawing-xml-encoding": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file's encoding can't be read as XML"),
            QT_TRANSLATE_NOOP("Faults", "an SVG file in UTF-8"),
        ),
    ),
    "drawing-no-svg": (
        (
            QT_TRANSLATE_NOOP("Faults", "the document is <{tag}>, not <svg>"),
            QT_TRANSLATE_NOOP("Faults", "an SVG drawing"),
        ),
    ),
}

_FITTING: Final[dict[str, tuple[Variant, ...]]] = {
    "fit-few-points": (
        (
            QT_TRANSLATE_NOOP("Faults", "only {count} points are left to fit to"),
            QT_TRANSLATE_NOOP("Faults", "{least} or more, over both members and the face"),
        ),
    ),
    "fit-size": (
        (
            QT_TRANSLATE_NOOP("Faults", "the points reach over {size} mm"),
            QT_TRANSLATE_NOOP(
                "Faults", "a section of {lowest} to {highest} mm; is the unit the right one?"
            ),
        ),
    ),
    "fit-no-line": (
        (
            QT_TRANSLATE_NOOP("Faults", "no straight stretch is long enough to be a member"),
            QT_TRANSLATE_NOOP(
                "Faults", "a few millimetres of both members' bare faces beside the weld"
            ),
        ),
    ),
    "fit-one-line": (
        (
            QT_TRANSLATE_NOOP("Faults", "only one member was found, not two with a face between"),
            QT_TRANSLATE_NOOP(
                "Faults", "a few millimetres of both members' bare faces beside the weld"
            ),
        ),
    ),
    "fit-angle": (
        (
            QT_TRANSLATE_NOOP("Faults", "the members stand at {angle} degrees"),
            QT_TRANSLATE_NOOP("Faults", "{lowest} to {highest} degrees"),
        ),
    ),
    "fit-no-face": (
        (
            QT_TRANSLATE_NOOP("Faults", "between the members there is no face"),
            QT_TRANSLATE_NOOP("Faults", "points from one member over the weld to the other"),
        ),
    ),
    "fit-gap": (
        (
            QT_TRANSLATE_NOOP("Faults", "nothing was seen of {gap} mm of the face"),
            QT_TRANSLATE_NOOP("Faults", "points there; it is bridged straight"),
        ),
    ),
    "fit-many-points": (
        (
            QT_TRANSLATE_NOOP("Faults", "the face takes {count} points within {tolerance} mm"),
            QT_TRANSLATE_NOOP("Faults", "at most {most}: a larger tolerance"),
        ),
    ),
}

CODES: Final[dict[str, tuple[Variant, ...]]] = {**_READING, **_DRAWINGS, **_FITTING}

VALUES: Final[dict[str, str]] = {
    "a PNG picture": QT_TRANSLATE_NOOP("Faults", "a PNG picture"),
    "a JPEG picture": QT_TRANSLATE_NOOP("Faults", "a JPEG picture"),
    "a zip archive or a spreadsheet": QT_TRANSLATE_NOOP("Faults", "a zip archive or a spreadsheet"),
    "an old spreadsheet or document": QT_TRANSLATE_NOOP("Faults", "an old spreadsheet or document"),
    "a PDF": QT_TRANSLATE_NOOP("Faults", "a PDF"),
    "a DWG drawing": QT_TRANSLATE_NOOP("Faults", "a DWG drawing"),
    "a gzip archive": QT_TRANSLATE_NOOP("Faults", "a gzip archive"),
}
