"""The shape of rules files, as strict models; amounts are looked through by `amount_faults`."""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import Field, WithJsonSchema

from exercises.disposition import Disposition
from exercises.models import Name, StrictModel, TextModel
from exercises.rules.formula import FACTS, QUANTITIES
from exercises.rules.limits import LimitMeasure, Sureness
from exercises.rules.sizes import ThroatKey

__all__ = [
    "AMOUNT_SCHEMAS",
    "REFERENCE",
    "RULES_FORMAT",
    "LimitModel",
    "MinimumSizeModel",
    "OpeningModel",
    "RulesModel",
    "SourceModel",
    "UndersizeModel",
    "WithinModel",
]

RULES_FORMAT: Final = "toe-and-throat/rules"

_LONGEST: Final = 200
_MOST_LINES: Final = 100

_LENGTH: Final[dict[str, Any]] = {
    "description": "mm; or a string with its unit; or both columns of a code",
    "oneOf": [
        {"type": "number"},
        {"type": "string"},
        {
            "type": "object",
            "properties": {"mm": {"type": ["number", "string"]}, "in": {"type": "string"}},
            "required": ["mm", "in"],
            "additionalProperties": False,
            "patternProperties": {"^x-": {}},
        },
    ],
}


def _object(required: tuple[str, ...], **properties: object) -> dict[str, object]:
    return {
        "type": "object",
        "properties": properties,
        "required": list(required),
        "additionalProperties": False,
        "patternProperties": {"^x-": {}},
    }


_TO_AMOUNT: Final = {"$ref": "#/$defs/Amount"}
_TO_LENGTH: Final = {"$ref": "#/$defs/Length"}
_SHARE: Final = _object(("of", "by"), of={"enum": list(QUANTITIES)}, by={"type": "number"})
_ROW: Final = _object(("amount",), amount=_TO_AMOUNT, up_to=_TO_LENGTH, below=_TO_LENGTH)
_AMOUNTS: Final = {"type": "array", "items": _TO_AMOUNT, "minItems": 1}

AMOUNT_SCHEMAS: Final[dict[str, object]] = {
    "Length": _LENGTH,
    "Amount": {
        "oneOf": [
            _TO_LENGTH,
            _object(("share",), share=_SHARE, base=_TO_LENGTH, less=_TO_LENGTH, cap=_TO_LENGTH),
            _object(
                ("by", "rows"),
                by={"enum": list(QUANTITIES)},
                rows={"type": "array", "items": _ROW, "minItems": 1},
            ),
            _object(
                ("where", "then", "else"),
                **{"where": {"enum": list(FACTS)}, "then": _TO_AMOUNT, "else": _TO_AMOUNT},
            ),
            _object(("least_of",), least_of=_AMOUNTS),
            _object(("greatest_of",), greatest_of=_AMOUNTS),
        ]
    },
}
"""JSON Schema of amounts, which refer to themselves."""

REFERENCE: Final = "x-reference"
"""Stands for ``$ref`` until the definitions of amounts are put beside the models'."""

_Plain = Any
"""A JSON value that the models let pass: `exercises.amounts` finds what is wrong with it."""

AmountModel = Annotated[_Plain, WithJsonSchema({REFERENCE: "#/$defs/Amount"})]
LengthModel = Annotated[_Plain, WithJsonSchema({REFERENCE: "#/$defs/Length"})]


class SourceModel(StrictModel):
    """Where a rule comes from, and how surely it is known."""

    document: Name
    edition: Annotated[str, Field(max_length=_LONGEST)] = ""
    clause: Annotated[str, Field(max_length=_LONGEST)] = ""
    sureness: Sureness
    note: TextModel = ""


class WithinModel(StrictModel):
    """For how much of a weld's length an allowance is: a share, or so much in every so much."""

    share: Annotated[float, Field(gt=0.0, le=1.0)] | None = None
    length: LengthModel = None
    each: LengthModel = None
    prorate: bool = False


class LimitModel(StrictModel):
    """The most, or for a toe angle the least, that a measure may be."""

    measure: LimitMeasure
    at_most: AmountModel = None
    at_least: AmountModel = None
    short: AmountModel = None
    within: WithinModel | None = None
    needs: Disposition | None = None
    source: SourceModel


class UndersizeModel(StrictModel):
    """How far a size may fall short."""

    measured_as: Literal["leg", "throat"]
    at_most: AmountModel
    within: WithinModel | None = None
    source: SourceModel


class OpeningModel(StrictModel):
    """What a root opening adds: above the free part, all of it."""

    free: LengthModel
    source: SourceModel


class MinimumSizeModel(StrictModel):
    """The size that a smaller callout is raised to."""

    measured_as: Literal["leg", "throat"]
    at_least: AmountModel
    source: SourceModel


class RulesModel(StrictModel):
    """A rule set."""

    format: Literal["toe-and-throat/rules"]
    version: Literal[1]
    id: Name
    revision: Annotated[int, Field(ge=1)] = 1
    title: TextModel
    source: SourceModel
    throat_is: ThroatKey = "effective_throat"
    undersize: UndersizeModel | None = None
    opening: OpeningModel | None = None
    minimum_size: MinimumSizeModel | None = None
    limits: list[LimitModel] = Field(default=[], max_length=_MOST_LINES)
    lines: list[TextModel] = Field(default=[], max_length=_MOST_LINES)
    notes: list[TextModel] = Field(default=[], max_length=_MOST_LINES)
