"""What the page says of a scan or a drawing: figures, handles, what was left out and why."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

import numpy as np
from PySide6.QtCore import QObject

from exercises.file_faults import TrayFault
from exercises.intake.cloud import Cloud
from exercises.intake.outline import Drawing, Outline
from exercises.intake.refusal import Note
from exercises.intake.scan import Fitted
from exercises.intake.toes import Toe
from exercises.intake.units import MM_PER, FileUnit
from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.fault_words import fault_words
from trainer.figures import figures, length_words
from trainer.shop.scan.source import Found, Source
from trainer.shop.scan.state import Handle

__all__ = [
    "cleaned_words", "fault_line", "handle_word", "labels", "legend", "note_lines",
    "outline_word", "results", "source_words", "sure", "unit_asked", "unit_word",
]  # fmt: skip

_SURE: Final = 2.0
_MOST: Final = 4


class Counts(QObject):
    """Counted things; Qt's tool knows a plural only by a class's own `tr`."""

    def outlines(self, count: int) -> str:
        """Outlines of a drawing."""
        return self.tr("%n outline(s)", "", count)

    def points(self, count: int) -> str:
        """Points of a scan."""
        return self.tr("%n point(s)", "", count)

    def outliers(self, count: int) -> str:
        """Lone points that were left out."""
        return self.tr("%n point(s) farther off than the others scatter", "", count)

    def strays(self, count: int) -> str:
        """Patches of points that were left out."""
        return self.tr("%n point(s) in patches that stand off", "", count)

    def unseen(self, count: int) -> str:
        """Places without a point."""
        return self.tr("%n place(s) where nothing was seen", "", count)

    def more(self, count: int) -> str:
        """How many notes aren't shown."""
        return self.tr("And %n more.", "", count)


def handle_word(handle: Handle) -> str:
    """What a handle is called."""
    return {
        "toe base": translate("Scan", "Base toe"),
        "toe upright": translate("Scan", "Upright toe"),
        "root": translate("Scan", "Root"),
        "base near": translate("Scan", "Base, near end"),
        "base far": translate("Scan", "Base, far end"),
        "upright near": translate("Scan", "Upright, near end"),
        "upright far": translate("Scan", "Upright, far end"),
    }[handle]


def unit_word(unit: FileUnit) -> str:
    """What a unit is called."""
    return {
        "mm": translate("Scan", "mm"),
        "µm": translate("Scan", "µm"),
        "cm": translate("Scan", "cm"),
        "m": translate("Scan", "m"),
        "in": translate("Scan", "in"),
        "mil": translate("Scan", "mil (1/1000 in)"),
    }[unit]


def sure(toe: Toe, unit: Unit) -> str:
    """A length with how far it may be off."""
    return _sure(toe.at, toe.uncertainty, unit)


def _sure(value: float, doubt: float, unit: Unit) -> str:
    places = 3 if unit == "mm" else 4
    number = length_words(value, unit, decimals=places).rsplit(" ", 1)[0]
    return f"{number} \u00b1 {length_words(_SURE * doubt, unit, decimals=places)}"


def labels(fitted: Fitted, unit: Unit) -> dict[Handle, str]:
    """What stands beside the toes and the root in the plot."""
    places = 2 if unit == "mm" else 3
    degrees = figures(f"{fitted.angle:.1f}\u00b0")
    return {
        "toe base": translate("Scan", "Base leg {length}").format(
            length=length_words(fitted.toe_base.at, unit, decimals=places)
        ),
        "toe upright": translate("Scan", "Upright leg {length}").format(
            length=length_words(fitted.toe_upright.at, unit, decimals=places)
        ),
        "root": translate("Scan", "Root, {angle}").format(angle=degrees),
    }


def results(found: Found, unit: Unit) -> list[tuple[str, str]]:
    """Names and figures of what was found."""
    fitted, cloud = found.fitted, found.cloud
    if fitted is None or cloud is None:
        return []
    if cloud.exact:
        # As drawn: nothing scatters, so there is nothing to be unsure of.
        places = 3 if unit == "mm" else 4
        lengths = (fitted.toe_base.at, fitted.toe_upright.at, fitted.throat)
        base, upright, throat = (length_words(at, unit, decimals=places) for at in lengths)
        return [
            (translate("Scan", "Base leg"), base),
            (translate("Scan", "Upright leg"), upright),
            (translate("Scan", "Actual throat"), throat),
            (translate("Scan", "Angle"), figures(f"{fitted.angle:.2f}\u00b0")),
            (translate("Scan", "Points of the face"), str(len(fitted.trace))),
        ]
    noise = length_words(cloud.noise, unit, decimals=3 if unit == "mm" else 4)
    return [
        (translate("Scan", "Base leg"), sure(fitted.toe_base, unit)),
        (translate("Scan", "Upright leg"), sure(fitted.toe_upright, unit)),
        (translate("Scan", "Actual throat"), _sure(fitted.throat, fitted.u_throat, unit)),
        (
            translate("Scan", "Angle"),
            figures(f"{fitted.angle:.2f} \u00b1 {_SURE * fitted.u_angle:.2f}\u00b0"),
        ),
        (translate("Scan", "Points of the face"), str(len(fitted.trace))),
        (translate("Scan", "Scatter of the points"), noise),
    ]


def source_words(source: Source) -> str:
    """What was opened, in a line."""
    name = source.name or translate("Scan", "Pasted")
    held = source.held
    if isinstance(held, Drawing):
        count = len(held.outlines)
        said = Counts().outlines(count)
        return f"{name}: {said}"
    said = Counts().points(len(held.x))
    marks = {"\t": translate("Scan", "tabs"), "": translate("Scan", "blanks")}
    mark = marks.get(held.layout.delimiter, f"\u201c{held.layout.delimiter}\u201d")
    words = translate("Scan", "{name}: {points}; columns parted by {mark}, decimals by {decimal}")
    return words.format(
        name=name, points=said, mark=mark, decimal=f"\u201c{held.layout.decimal}\u201d"
    )


def legend(found: Found) -> tuple[str, str, str]:
    """What discs, crosses and ticks are in the plot, where there are any."""
    cloud = found.cloud
    if cloud is None or cloud.exact:
        return ("", "", "")
    left_out = len(cloud.removed) or (found.fitted is not None and len(found.fitted.strays))
    return (
        translate("Scan", "kept"),
        translate("Scan", "left out") if left_out else "",
        translate("Scan", "nothing seen here") if len(cloud.unseen) else "",
    )


def unit_asked(source: Source) -> str:
    """That the unit has to be said, and what two answers would come to."""
    held = source.held
    if isinstance(held, Drawing):
        points = np.vstack([one.points for one in held.outlines])
    else:
        points = np.column_stack([held.x, held.z])
        points = points[np.isfinite(points).all(axis=1)]
    size = float(np.ptp(points, axis=0).max()) if len(points) else 0.0
    words = translate(
        "Scan",
        "The file doesn\u2019t say its unit: choose it. As mm it would reach over {mm}, as inches "
        "over {inch}, as \u00b5m over {micron}.",
    )
    asked: dict[str, FileUnit] = {"mm": "mm", "inch": "in", "micron": "\u00b5m"}
    reach = {name: size * MM_PER[unit] for name, unit in asked.items()}
    said = {
        # What is far too small for a weld says so best.
        name: length_words(length, "mm", decimals=1 if length >= 1.0 else 3)
        for name, length in reach.items()
    }
    return words.format(**said)


def outline_word(number: int, outline: Outline, scale: float, unit: Unit) -> str:
    """How one outline of a drawing is called in the list."""
    length = length_words(outline.length * scale, unit, decimals=1 if unit == "mm" else 2)
    words = translate("Scan", "{n}: {length} long, open")
    if outline.closed:
        words = translate("Scan", "{n}: {length} long, closed")
    said = words.format(n=number, length=length)
    return f"{said} ({outline.layer})" if outline.layer not in ("", "0") else said


def cleaned_words(cloud: Cloud, fitted: Fitted | None) -> str:
    """What was left out of the points, and why."""
    counts = Counter(cloud.whys)
    lone = counts["outlier"] + (0 if fitted is None else len(fitted.strays))
    said = []
    if lone:
        said.append(Counts().outliers(lone))
    if counts["stray"]:
        said.append(Counts().strays(counts["stray"]))
    if len(cloud.unseen):
        said.append(Counts().unseen(len(cloud.unseen)))
    words = translate("Scan", "Left out: {what}.").format(what="; ".join(said)) if said else ""
    if cloud.every > 1:
        thinned = translate("Scan", "Of every {n} points one is used.").format(n=cloud.every)
        words = f"{words} {thinned}".strip()
    return words


def fault_line(fault: TrayFault) -> str:
    """What is wrong, where, and what would be right."""
    wrong, right = fault_words(fault)
    wrong = wrong[:1].upper() + wrong[1:]
    where = ""
    if fault.line is not None:
        where = translate("Scan", "Line {n}: ").format(n=fault.line)
    words = translate("Scan", "{where}{wrong}. Right would be: {right}.")
    return words.format(where=where, wrong=wrong, right=right)


def note_lines(notes: Sequence[Note]) -> str:
    """The first few notes, and how many more there are."""
    lines = [fault_line(one) for one in notes[:_MOST]]
    rest = len(notes) - _MOST
    if rest > 0:
        lines.append(Counts().more(rest))
    return "\n".join(lines)
