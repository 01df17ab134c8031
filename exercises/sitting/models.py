"""The shape of sitting and result files, as strict models; coupons in them are those of trays."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Final, Literal

from pydantic import BaseModel, Field

from exercises.callout import CalloutMeasure
from exercises.coupon import Disposition
from exercises.maker.recipe import Trap
from exercises.models import (
    MOST_RULE_FILES,
    AttemptModel,
    Name,
    PoseModel,
    ReadingModel,
    StrictModel,
    TextModel,
)
from exercises.sitting.codes import LONGEST_CODE
from exercises.sitting.plan import MOST_ASKED, MOST_ENTRANTS, Help
from geometry.lengths import Unit
from geometry.measures import FaceShape

__all__ = [
    "BELOW_PLAN",
    "BELOW_RESULT",
    "LARGEST",
    "RESULT_FORMAT",
    "SITTING_FORMAT",
    "ItemModel",
    "PlanModel",
    "RecipeModel",
    "ResultModel",
]

SITTING_FORMAT: Final = "toe-and-throat/sitting"
RESULT_FORMAT: Final = "toe-and-throat/result"

LARGEST: Final = 64 * 1024 * 1024
"""Bytes of either: a result holds the handling of every coupon, a sitting may hold pictures."""

_MOST_PARTS: Final = 100
_MOST_INTERRUPTIONS: Final = 10_000
_MOST_ROWS: Final = 200_000
_LONGEST_MS: Final = 10**12
_LONGEST_TEXT: Final = 4000
_LONGEST_TIME: Final = 40

Object = dict[str, Any]
Share = Annotated[float, Field(ge=0.0, le=1.0)]
Milliseconds = Annotated[int, Field(ge=0, le=_LONGEST_MS)]
Code = Annotated[str, Field(min_length=1, max_length=LONGEST_CODE)]
Time = Annotated[str, Field(max_length=_LONGEST_TIME)]
Digest = Annotated[str, Field(min_length=64, max_length=64)]


class SkillMarksModel(StrictModel):
    """The least mean mark of each skill that is asked for one."""

    face: Share | None = None
    leaf: Share | None = None
    edge: Share | None = None
    seat: Share | None = None
    legs: Share | None = None
    reading: Share | None = None
    disposition: Share | None = None


class RecipeModel(StrictModel):
    """What dice are to make; its own `faults` know the ranges."""

    count: int
    seed: int = 1
    unit: Unit = "mm"
    measure: CalloutMeasure = "leg"
    rules: Name = "as-drawn"
    faces: Annotated[list[FaceShape], Field(max_length=3)]
    traps: Annotated[list[Trap], Field(max_length=8)]
    sizes: Annotated[list[float], Field(min_length=2, max_length=2)]
    nearest: float
    farthest: float
    in_doubt: float = 0.0


class PartModel(StrictModel):
    """Coupons of a tray with the shop's rule sets that they need, or a recipe."""

    tray: Object | None = None
    rules: list[Object] = Field(default_factory=list, max_length=MOST_RULE_FILES)
    recipe: RecipeModel | None = None


class EntrantModel(StrictModel):
    """Who sits."""

    code: str
    extra: float = 0.0


class PlanModel(StrictModel):
    """A sitting; `Plan.faults` knows the ranges."""

    format: Literal["toe-and-throat/sitting"]
    version: Literal[1]
    id: Name
    title: TextModel
    parts: Annotated[list[PartModel], Field(max_length=_MOST_PARTS)]
    shuffled: bool = False
    minutes: float
    pass_mark: float
    skill_marks: SkillMarksModel = SkillMarksModel()
    critical_fails: bool = True
    helps: Annotated[list[Help], Field(max_length=3)]
    entrants: list[EntrantModel] = Field(default_factory=list, max_length=MOST_ENTRANTS)
    seed: int = 1


class HeadPartModel(StrictModel):
    """What a result says of a part of its plan."""

    made: int | None = None
    chosen: int | None = None
    title: TextModel = ""


class HeadModel(StrictModel):
    """What a result says of its plan."""

    id: Name
    title: TextModel
    parts: Annotated[list[HeadPartModel], Field(max_length=_MOST_PARTS)]
    shuffled: bool
    minutes: Annotated[float, Field(gt=0.0)]
    extra: Annotated[float, Field(ge=0.0)]
    pass_mark: Share
    skill_marks: SkillMarksModel
    critical_fails: bool
    helps: Annotated[list[Help], Field(max_length=3)]
    seed: int


class RulesNameModel(StrictModel):
    """Which rules a coupon was judged by."""

    id: Name
    version: int
    digest: Digest | None = None


class ReasonModel(StrictModel):
    """Why a mark is below 1."""

    code: Name
    text: Annotated[str, Field(max_length=_LONGEST_TEXT)]


class GradeModel(StrictModel):
    """A grade, as `exercises.grading.Grade.as_dict` gives it."""

    coupon: Name
    score: Share
    marks: dict[Name, Share | None]
    right: Disposition | None
    in_doubt: bool
    critical: bool
    reasons: list[ReasonModel]


class OutcomeModel(StrictModel):
    """An outcome, as `exercises.learner.outcome.Outcome` has it."""

    distance: float | None
    short: bool | None
    bad: bool
    called_bad: bool | None
    in_doubt: bool
    clean: bool


class ItemModel(StrictModel):
    """One coupon of a paper, and what was made of it."""

    number: Annotated[int, Field(ge=1, le=MOST_ASKED)]
    slot: Name
    coupon: Object
    digest: Digest
    rules: RulesNameModel
    attempt: AttemptModel | None
    grade: GradeModel | None
    outcome: OutcomeModel
    handling: Annotated[list[Any], Field(max_length=_MOST_ROWS)]
    zoom: dict[Name, float | None]
    ms: Milliseconds
    visits: Annotated[int, Field(ge=0, le=_MOST_ROWS)]
    flagged: bool


class InterruptionModel(StrictModel):
    """When a sitting stood still."""

    at: Time
    ms: Milliseconds | None
    kind: Literal["closed", "asleep", "clock"]


class ResultModel(StrictModel):
    """One learner's sitting."""

    format: Literal["toe-and-throat/result"]
    version: Literal[1]
    id: Name
    plan: HeadModel
    code: Code
    learner: Name
    station: Annotated[str, Field(max_length=200)]
    started: Time
    finished: Time
    ended: Literal["finished", "time up"]
    tray_version: Annotated[int, Field(ge=1)]
    rules: list[Object] = Field(default_factory=list, max_length=MOST_RULE_FILES)
    items: Annotated[list[ItemModel], Field(min_length=1, max_length=MOST_ASKED)]
    interruptions: list[InterruptionModel] = Field(
        default_factory=list, max_length=_MOST_INTERRUPTIONS
    )


BELOW_PLAN: Final[Mapping[str, type[BaseModel]]] = {
    "parts": PartModel,
    "recipe": RecipeModel,
    "entrants": EntrantModel,
    "skill_marks": SkillMarksModel,
}
BELOW_RESULT: Final[Mapping[str, type[BaseModel]]] = {
    "plan": HeadModel,
    "parts": HeadPartModel,
    "skill_marks": SkillMarksModel,
    "items": ItemModel,
    "rules": RulesNameModel,
    "attempt": AttemptModel,
    "readings": ReadingModel,
    "pose": PoseModel,
    "grade": GradeModel,
    "reasons": ReasonModel,
    "outcome": OutcomeModel,
    "interruptions": InterruptionModel,
}
"""The model that stands below each key of either file."""
