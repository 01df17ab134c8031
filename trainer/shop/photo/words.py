"""What the page says: the steps, what to do at each, and what was found."""

from __future__ import annotations

from typing import Final

from exercises.file_faults import FileError, TrayFault
from exercises.intake.photo import Outline
from exercises.intake.photo_frame import scale_of
from geometry.faults import Fault
from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.fault_words import fault_words
from trainer.figures import figures, length_words
from trainer.shop.photo.painting import Words
from trainer.shop.photo.state import PhotoState, Step, spot_of

__all__ = ["fault_line", "file_words", "picture_words", "point_words", "results", "step_help",
           "step_word"]  # fmt: skip

_SURE: Final = 2.0
"""Times the standard uncertainty that is shown: about 19 in 20 lie within (GUM 6.3.3)."""


def step_word(step: Step) -> str:
    """A step's name."""
    return {
        "open": translate("Photo", "Open"),
        "straighten": translate("Photo", "Straighten"),
        "scale": translate("Photo", "Scale"),
        "members": translate("Photo", "Members"),
        "trace": translate("Photo", "Trace"),
        "check": translate("Photo", "Check"),
    }[step]


def step_help(step: Step, *, scaled: bool = False) -> str:
    """What to do at a step; `scaled` where the rectangle's sides give the scale already."""
    if step == "scale" and scaled:
        return translate(
            "Photo",
            "The rectangle\u2019s sides give the scale. If a longer length is known, click its "
            "two ends and say how long it is: it then counts instead.",
        )
    return {
        "open": translate(
            "Photo",
            "A picture of a weld, cut and etched: PNG, JPEG, TIFF or WebP. Take it square on, with "
            "a rule or a rectangle of known size beside the cut, in the same plane.",
        ),
        "straighten": translate(
            "Photo",
            "If the camera stood askew: click the four corners of a rectangle that lies in the "
            "plane of the cut, and say how long its sides are. Else go on.",
        ),
        "scale": translate(
            "Photo", "Click the two ends of a known length, and say how long it is."
        ),
        "members": translate(
            "Photo",
            "Click two points or more on the bare face of each member, clear of the weld and far "
            "apart. Where both lines meet is the root.",
        ),
        "trace": translate(
            "Photo",
            "Click along the weld\u2019s face from one toe to the other. Between clicks the line "
            "follows the strongest edge; where it strays, click on it, or place points by hand.",
        ),
        "check": translate(
            "Photo", "The section as it will be taken. Points can still be moved at every step."
        ),
    }[step]


def file_words(error: FileError) -> str:
    """Why a file can't be used, and what would do."""
    wrong, right = fault_words(error.faults[0])
    return translate("Photo", "{file}: {wrong}. Right would be: {right}.").format(
        file=error.faults[0].file, wrong=wrong, right=right
    )


def fault_line(fault: Fault) -> str:
    """What is missing or can't be, and what would be right."""
    wrong, right = fault_words(TrayFault.of("", fault))
    wrong = wrong[:1].upper() + wrong[1:]
    return translate("Photo", "{wrong}. Right would be: {right}.").format(wrong=wrong, right=right)


def _sure(value: float, doubt: float, unit: Unit) -> str:
    """A length with how far it may be off."""
    places = 2 if unit == "mm" else 3
    number = length_words(value, unit, decimals=places).rsplit(" ", 1)[0]
    off = length_words(_SURE * doubt, unit, decimals=places)
    return f"{number} \u00b1 {off}"


def results(state: PhotoState, outline: Outline | None, unit: Unit) -> list[tuple[str, str]]:
    """Names and figures of what the marks come to so far."""
    rows: list[tuple[str, str]] = []
    scale = scale_of(state.marks) if outline is None else outline.pixel
    if outline is None:
        if scale is not None and not state.marks.corners:
            rows.append((translate("Photo", "One pixel"), _pixel(scale, unit)))
        return rows
    measures, doubts = outline.measures, outline.doubts
    angle = figures(f"{outline.frame.angle:.1f} \u00b1 {_SURE * doubts.angle:.1f}\u00b0")
    return [
        (translate("Photo", "One pixel"), _pixel(outline.pixel, unit)),
        (translate("Photo", "Angle"), angle),
        (translate("Photo", "Base leg"), _sure(measures.leg_base, doubts.leg_base, unit)),
        (
            translate("Photo", "Upright leg"),
            _sure(measures.leg_upright, doubts.leg_upright, unit),
        ),
        (
            translate("Photo", "Actual throat"),
            _sure(measures.actual_throat, doubts.actual_throat, unit),
        ),
    ]


def _pixel(size: float, unit: Unit) -> str:
    return length_words(size, unit, decimals=3 if unit == "mm" else 4)


def picture_words(state: PhotoState, outline: Outline | None, unit: Unit) -> Words:
    """What stands in the picture."""
    marks = state.marks
    sides = ("", "")
    if marks.sides is not None and state.known == "lengths":
        sides = (length_words(marks.sides[0], unit), length_words(marks.sides[1], unit))
    elif marks.sides is not None and state.known == "ratio":
        sides = (figures(f"{marks.sides[0]:g}"), figures(f"{marks.sides[1]:g}"))
    measures = None if outline is None else outline.measures
    legs = ("", "")
    throat = ""
    if measures is not None:
        said = [
            length_words(value, unit, decimals=2 if unit == "mm" else 3)
            for value in (measures.leg_base, measures.leg_upright, measures.actual_throat)
        ]
        legs, throat = (said[0], said[1]), said[2]
    return Words(
        base=translate("Photo", "base"),
        upright=translate("Photo", "upright"),
        length="" if marks.length is None else length_words(marks.length, unit),
        sides=sides,
        legs=legs,
        throat=throat,
    )


def point_words(state: PhotoState) -> str:
    """Which point is chosen and where it is, for whoever can't see it."""
    spot = spot_of(state, state.chosen)
    if spot is None or state.chosen is None:
        return translate("Photo", "No point chosen")
    group, index = state.chosen
    name = {
        "corners": translate("Photo", "Corner {n}"),
        "scale": translate("Photo", "End {n} of the length"),
        "base": translate("Photo", "Base, point {n}"),
        "upright": translate("Photo", "Upright, point {n}"),
        "face": translate("Photo", "Face, point {n}"),
    }[group].format(n=index + 1)
    how = translate("Photo", "by hand") if spot.by_hand else translate("Photo", "on an edge")
    return translate("Photo", "{point}: {x}, {y} px, {how}").format(
        point=name, x=figures(f"{spot.x:.1f}"), y=figures(f"{spot.y:.1f}"), how=how
    )
