"""The shape of tray and attempts files, as strict models: what may stand where, and as what.

Only shape and plain ranges are checked here. What geometry can't allow is found when a section is
built, what a rule set must know when the tray is.
"""

from __future__ import annotations

import math
import re
from typing import Annotated, Final, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Discriminator, Field, Tag
from pydantic.config import JsonDict
from pydantic_core import PydanticCustomError

from exercises.backdrop import LARGEST_PIXEL, LONGEST_JPEG, SMALLEST_PIXEL
from exercises.callout import CalloutMeasure, Side
from exercises.coupon import Disposition, Task
from exercises.placed import PlacementFault
from exercises.strict_json import quoted
from geometry.joint import Member
from geometry.leaf import Edge, leaf_of_mark
from geometry.lengths import parse_length
from geometry.measures import FaceShape
from geometry.reading import EYE_LIMIT, State

__all__ = [
    "ATTEMPTS_FORMAT",
    "LARGEST_LENGTH",
    "MOST_COUPONS",
    "MOST_POINTS",
    "MOST_RULE_FILES",
    "PRIVATE_PREFIX",
    "TRAY_FORMAT",
    "AttemptModel",
    "BackdropModel",
    "BeadModel",
    "CalloutModel",
    "ConditionsModel",
    "CouponModel",
    "DrawnBeadModel",
    "HeaderModel",
    "IntermittentModel",
    "JointModel",
    "Name",
    "PlacedModel",
    "PoseModel",
    "ReadingModel",
    "SizeModel",
    "SpatterModel",
    "StrictModel",
    "TextModel",
    "TracedBeadModel",
    "TrayModel",
    "UndercutModel",
]

TRAY_FORMAT: Final = "toe-and-throat/tray"
ATTEMPTS_FORMAT: Final = "toe-and-throat/attempts"

PRIVATE_PREFIX: Final = "x-"
"""Keys that begin so belong to whoever wrote them: kept and ignored."""

LARGEST_LENGTH: Final = 1000.0
"""mm: no member is longer, so no length in a file may be."""

MOST_COUPONS: Final = 2000
MOST_POINTS: Final = 20_000
"""Points of one traced face: twenty times what a profile scanner gives across a weld."""

_MOST_DROPS: Final = 200
_MOST_READINGS: Final = 500
_MOST_HINTS: Final = 1000
_MOST_PIECES: Final = 10_000
MOST_RULE_FILES: Final = 20
_LONGEST_WELD: Final = 1e6
_LONGEST_TEXT: Final = 4000
_LONGEST_NAME: Final = 200
_LONGEST_MARK: Final = 40
_LANGUAGE: Final = re.compile(r"[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*")


def _allow_private_keys(schema: JsonDict) -> None:
    schema["patternProperties"] = {f"^{PRIVATE_PREFIX}": {}}


class StrictModel(BaseModel):
    """What every model is: no key unknown, no value bent to fit."""

    model_config = ConfigDict(
        strict=True,
        extra="forbid",
        allow_inf_nan=False,
        frozen=True,
        # Each model is built when first used: a start that grades nothing builds no attempt.
        defer_build=True,
        json_schema_extra=_allow_private_keys,
    )


def _refuse(code: str, text: str, right: str, **params: float | str) -> PydanticCustomError:
    told = {"code": code, "text": text, "right": right, "params": params}
    return PydanticCustomError("stated", "{text}", told)


def _check_text(value: object) -> object:
    """A text is a string, or an object with a string for each language."""
    right = 'text, or an object of texts by language such as {"en": "..."}'
    if isinstance(value, dict):
        if not value:
            raise _refuse("text", "is an empty object", right)
        for tag, words in value.items():
            if not _LANGUAGE.fullmatch(tag):
                text = f"{quoted(tag)} is no language tag"
                raise _refuse("language", text, '"en", "es-MX"', tag=quoted(tag))
            if not isinstance(words, str):
                text = f"the text in {quoted(tag)} is {quoted(words)}"
                raise _refuse("text", text, "text", tag=quoted(tag), value=quoted(words))
        longest = max(len(words) for words in value.values())
    elif isinstance(value, str):
        longest = len(value)
    else:
        raise _refuse("text", f"is {quoted(value)}", right, value=quoted(value))
    if longest > _LONGEST_TEXT:
        text, right = f"has {longest} characters", f"at most {_LONGEST_TEXT}"
        raise _refuse("text-long", text, right, count=longest, at_most=_LONGEST_TEXT)
    return value


def _check_size(value: object) -> object:
    """A callout's size is a number in mm, or a string with its unit."""
    right = f'a length above 0 and at most {LARGEST_LENGTH:g} mm, as 8, "8 mm" or "5/16 in"'
    if isinstance(value, str):
        try:
            length = parse_length(value) if len(value) <= _LONGEST_MARK else None
        except ValueError:
            length = None
        if length is None:
            text = f"{quoted(value)} is no length with its unit"
            raise _refuse("size", text, right, stated=quoted(value), largest=LARGEST_LENGTH)
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        length = float(value)
    else:
        length = math.nan
    if not 0.0 < length <= LARGEST_LENGTH:
        text = f"is {quoted(value)}"
        raise _refuse("size", text, right, value=quoted(value), largest=LARGEST_LENGTH)
    return value


def _check_mark(value: object) -> object:
    """A leaf is named by the mark engraved on it."""
    if not isinstance(value, str) or len(value) > _LONGEST_MARK:
        right = 'a mark such as "8 mm", "5/16 in", "a 4 mm"'
        raise _refuse("leaf", f"is {quoted(value)}", right, value=quoted(value))
    try:
        leaf_of_mark(value)
    except ValueError as error:
        text, _, right = str(error).partition("; right would be")
        right = right.strip(": ")
        # Either the mark lacks only its unit, or no rack has such a leaf.
        name = "known" if right.startswith("one of: ") else "meant"
        params = {"mark": quoted(value), name: right.removeprefix("one of: ")}
        raise _refuse("leaf", text, right, **params) from None
    return value


TextModel = Annotated[str | dict[str, str], BeforeValidator(_check_text)]
SizeModel = Annotated[float | str, BeforeValidator(_check_size)]
MarkModel = Annotated[str, BeforeValidator(_check_mark)]
Length = Annotated[float, Field(ge=0.0, le=LARGEST_LENGTH)]
Coordinate = Annotated[float, Field(ge=-LARGEST_LENGTH, le=LARGEST_LENGTH)]
Name = Annotated[str, Field(min_length=1, max_length=_LONGEST_NAME)]


class JointModel(StrictModel):
    """Two plates that meet at a root; geometry holds the limits of each value."""

    angle: float = 90.0
    root_opening: float = 0.0
    base_thickness: float = 12.0
    upright_thickness: float = 12.0
    base_length: float = 60.0
    upright_length: float = 60.0


class UndercutModel(StrictModel):
    """A groove beside a toe, mm."""

    depth: Length
    width: Length


class _ToesModel(StrictModel):
    undercut_base: UndercutModel | None = None
    undercut_upright: UndercutModel | None = None
    overlap_base: Length | None = None
    overlap_upright: Length | None = None


class DrawnBeadModel(_ToesModel):
    """A bead whose face is an arc."""

    leg_base: float
    leg_upright: float
    crown: float = 0.0


class TracedBeadModel(_ToesModel):
    """A bead whose face is a trace from base toe to upright toe, mm."""

    trace: Annotated[
        list[Annotated[list[Coordinate], Field(min_length=2, max_length=2)]],
        Field(max_length=MOST_POINTS),
    ]


def _bead_kind(value: object) -> str:
    return "traced" if isinstance(value, dict) and "trace" in value else "drawn"


BeadModel = Annotated[
    Annotated[DrawnBeadModel, Tag("drawn")] | Annotated[TracedBeadModel, Tag("traced")],
    Discriminator(_bead_kind),
]


class SpatterModel(StrictModel):
    """A cap of spatter on a member, mm."""

    on: Member
    at: Length
    height: Length


class IntermittentModel(StrictModel):
    """A weld in pieces: their length and either their pitch, centre to centre, or the clear gap."""

    length: SizeModel
    pitch: SizeModel | None = None
    gap: SizeModel | None = None
    count: Annotated[int, Field(ge=1, le=_MOST_PIECES)] | None = None
    staggered: bool = False


class CalloutModel(StrictModel):
    """What the drawing calls for."""

    size: SizeModel
    measure: CalloutMeasure = "leg"
    upright_size: SizeModel | None = None
    intermittent: IntermittentModel | None = None
    side: Side = "arrow"
    all_around: bool = False
    site: bool = False
    built_out: bool = False
    tail: Annotated[str, Field(max_length=_LONGEST_NAME)] = ""


class ConditionsModel(StrictModel):
    """What rules may ask of a weld beside its section."""

    edge: Member | None = None
    low_hydrogen: bool = True
    transverse_tension: bool = False
    girder_end: bool = False
    weld_length: Annotated[float, Field(gt=0.0, le=_LONGEST_WELD)] | None = None


class BackdropModel(StrictModel):
    """A picture behind the section: a JPEG in base 64, and where its upper left corner lies, mm."""

    jpeg: Annotated[str, Field(max_length=LONGEST_JPEG)]
    left: Coordinate
    top: Coordinate
    mm_per_pixel: Annotated[float, Field(ge=SMALLEST_PIXEL, le=LARGEST_PIXEL)]


class PoseModel(StrictModel):
    """Where a leaf was held: mm and degrees."""

    x: Annotated[float, Field(ge=-10_000.0, le=10_000.0)]
    y: Annotated[float, Field(ge=-10_000.0, le=10_000.0)]
    angle: Annotated[float, Field(ge=-360.0, le=360.0)]
    turned: bool = False


class PlacedModel(StrictModel):
    """A leaf that somebody has placed, and what they say of it."""

    leaf: MarkModel
    edge: Edge
    on: Member
    pose: PoseModel
    gauged: Annotated[list[Member], Field(max_length=2)] = []


class CouponModel(StrictModel):
    """One weld to be judged."""

    id: Name
    title: TextModel = ""
    task: Task = "judge"
    joint: JointModel = JointModel()
    bead: BeadModel
    spatter: Annotated[list[SpatterModel], Field(max_length=_MOST_DROPS)] = []
    callout: CalloutModel
    rules: Name = "as-drawn"
    extent: Annotated[float, Field(gt=0.0, le=1.0)] = 1.0
    eye_limit: Annotated[float, Field(gt=0.0, le=2.0)] = EYE_LIMIT
    leaf_wear: Annotated[float, Field(ge=0.0, le=1.0)] = 0.0
    hints: list[TextModel] = []
    teaches: TextModel = ""
    conditions: ConditionsModel = ConditionsModel()
    backdrop: BackdropModel | None = None
    placed: PlacedModel | None = None


class TrayModel(StrictModel):
    """A tray: a file of coupons."""

    format: Literal["toe-and-throat/tray"]
    version: Literal[1, 2, 3, 4]
    title: TextModel = ""
    rule_files: Annotated[list[Name], Field(max_length=MOST_RULE_FILES)] = []
    coupons: Annotated[list[CouponModel], Field(min_length=1, max_length=MOST_COUPONS)]


class HeaderModel(StrictModel):
    """The first line of an attempts file."""

    format: Literal["toe-and-throat/attempts"]
    version: Literal[1, 2]


class ReadingModel(StrictModel):
    """What a learner stated at one seat; what is absent can't be marked."""

    leaf: MarkModel | None = None
    edge: Edge | None = None
    on: Member | None = None
    pose: PoseModel | None = None
    state: State | None = None


class AttemptModel(StrictModel):
    """One attempt at one coupon."""

    coupon: Name
    face: FaceShape | None = None
    readings: Annotated[list[ReadingModel], Field(max_length=_MOST_READINGS)] | None = None
    disposition: Disposition | None = None
    sure: Annotated[float, Field(ge=0.0, le=1.0)] | None = None
    fault: PlacementFault | None = None
    size: MarkModel | None = None
    hints: Annotated[int, Field(ge=0, le=_MOST_HINTS)] | None = None
