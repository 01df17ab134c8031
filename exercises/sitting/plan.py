"""A sitting as it is composed: what is asked, how long there is, what passes, and who sits it.

Frozen values. `exercises.sitting.paper` lays out what one learner gets, `plan_file` reads and
writes the whole.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Final, Literal

from exercises.coupon import Coupon
from exercises.maker.recipe import Recipe, RecipeError
from exercises.sitting.codes import LONGEST_CODE, code_key, is_code
from exercises.sitting.hardness import pattern
from exercises.strict_json import Json, quoted
from exercises.text import Text
from geometry.faults import Fault

__all__ = [
    "HELPS",
    "LONGEST_MINUTES",
    "MOST_ASKED",
    "MOST_ENTRANTS",
    "SKILLS",
    "Chosen",
    "Entrant",
    "Help",
    "Made",
    "PassMarks",
    "Plan",
    "Skill",
]

Skill = Literal["face", "leaf", "edge", "seat", "legs", "reading", "disposition"]
SKILLS: Final[tuple[Skill, ...]] = (
    "face", "leaf", "edge", "seat", "legs", "reading", "disposition",
)  # fmt: skip

Help = Literal["loupe", "press home", "unit switch"]
HELPS: Final[tuple[Help, ...]] = ("loupe", "press home", "unit switch")

MOST_ASKED: Final = 500
"""Coupons of one sitting."""

MOST_ENTRANTS: Final = 2000
LONGEST_MINUTES: Final = 600.0
_MOST_EXTRA: Final = 3.0
_LONGEST_ID: Final = 200
_MOST_SEED: Final = 2**53

_ASKED: Final[Mapping[str, tuple[Skill, ...]]] = {
    "judge": SKILLS,
    "size": ("face", "leaf", "edge", "seat", "legs", "reading"),
    "read": ("face", "seat", "reading"),
    "find the fault": (),
}
"""What each task can be marked on (see `exercises.grading`)."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """Coupons out of a tray, the same for every learner.

    Parameters
    ----------
    title
        The tray's.
    coupons
        In order; each as its tray states it.
    rules
        The documents of the shop's own rule sets that these coupons are judged by, by id.
    """

    title: Text
    coupons: tuple[Coupon, ...]
    rules: Mapping[str, Json] = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Made:
    """Coupons out of dice: each learner their own, equally hard, in an order of their own."""

    recipe: Recipe


@dataclass(frozen=True, slots=True)
class Entrant:
    """Who sits.

    Parameters
    ----------
    code
        Pseudonymous; two spellings that differ in case alone are one.
    extra
        Share of the time that they have more: 0.25 makes 40 minutes 50.
    """

    code: str
    extra: float = 0.0


@dataclass(frozen=True, slots=True)
class PassMarks:
    """What passes.

    Parameters
    ----------
    overall
        Least score over all coupons of the paper, 0 to 1.
    skills
        Least mean mark of some skills, 0 to 1 each.
    critical_fails
        Whether one critical call, a bad weld accepted outside the doubt, fails the whole sitting.
    """

    overall: float
    skills: Mapping[Skill, float] = field(default_factory=dict)
    critical_fails: bool = True


@dataclass(frozen=True, slots=True)
class Plan:
    r"""A sitting.

    Parameters
    ----------
    id
        Of this sitting alone.
    title
        What it is called.
    parts
        What is asked, in order.
    shuffled
        Whether each learner gets the whole in an order of their own. The coupons of a part that is
        made are in an order of their own anyway: a neighbour's third is another's ninth.
    minutes
        For the whole.
    pass_mark, skill_marks, critical_fails
        What passes: see `PassMarks`.
    helps
        Which helps stay.
    entrants
        Who may sit; anybody if there are none.
    seed
        Of dice and order.

    Examples
    --------
    >>> plan = Plan("s-1", Text.of("Yard"), (Made(Recipe(8)),), minutes=40.0, pass_mark=0.8,
    ...     entrants=(Entrant("k-07", extra=0.25),))
    >>> plan.faults(), plan.minutes_for("K-07"), plan.minutes_for("k-08"), plan.count
    ([], 50.0, 40.0, 8)
    >>> print(*Plan("s-1", Text.of("Yard"), (), minutes=0.0).faults(), sep="\n")
    /parts: nothing is asked; right would be: coupons of a tray, or dice
    /minutes: the time is 0 minutes; right would be: 1 to 600
    """

    id: str
    title: Text
    parts: tuple[Chosen | Made, ...]
    shuffled: bool = False
    minutes: float = 60.0
    pass_mark: float = 0.8
    skill_marks: Mapping[Skill, float] = field(default_factory=dict)
    helps: frozenset[Help] = frozenset(HELPS)
    entrants: tuple[Entrant, ...] = ()
    seed: int = 1
    critical_fails: bool = True

    @property
    def marks(self) -> PassMarks:
        """What passes."""
        return PassMarks(self.pass_mark, self.skill_marks, self.critical_fails)

    @property
    def count(self) -> int:
        """How many coupons each learner gets."""
        return sum(_count(part) for part in self.parts)

    def entrant(self, code: str) -> Entrant | None:
        """Who sits with this code; None if nobody does, or nobody is named."""
        key = code_key(code)
        return next((each for each in self.entrants if code_key(each.code) == key), None)

    def admits(self, code: str) -> bool:
        """Whether somebody with this code may sit."""
        return not self.entrants or self.entrant(code) is not None

    def minutes_for(self, code: str) -> float:
        """The time that a learner has, theirs more included."""
        found = self.entrant(code)
        return self.minutes * (1.0 + (found.extra if found else 0.0))

    def faults(self) -> list[Fault]:
        """Return all that keeps this from being sat; places are those of its file.

        The dice are thrown too, so that none can fail on the day: some 10 ms a coupon the first
        time, a few seconds where they find no weld; the same recipe and seed are thrown once.
        """
        return [
            *_named_faults(self),
            *_part_faults(self.parts, self.seed),
            *_time_faults(self),
            *_mark_faults(self),
            *_entrant_faults(self.entrants),
        ]


def _count(part: Chosen | Made) -> int:
    return part.recipe.count if isinstance(part, Made) else len(part.coupons)


def _named_faults(plan: Plan) -> list[Fault]:
    found: list[Fault] = []
    if not 0 < len(plan.id) <= _LONGEST_ID or not plan.id.isprintable():
        right = f"1 to {_LONGEST_ID} characters"
        params: dict[str, float | str] = {"value": quoted(plan.id), "most": _LONGEST_ID}
        found.append(Fault("/id", "sitting-id", f"the id is {quoted(plan.id)}", right, params))
    if not str(plan.title).strip():
        found.append(Fault("/title", "sitting-title", "the sitting has no title", "a title"))
    if not 0 <= plan.seed <= _MOST_SEED:
        right, params = f"0 to {_MOST_SEED}", {"value": str(plan.seed), "most": str(_MOST_SEED)}
        found.append(Fault("/seed", "sitting-seed", f"the seed is {plan.seed}", right, params))
    return found


def _part_faults(parts: Sequence[Chosen | Made], seed: int) -> list[Fault]:
    if not parts:
        right = "coupons of a tray, or dice"
        return [Fault("/parts", "sitting-empty", "nothing is asked", right)]
    found: list[Fault] = []
    for index, part in enumerate(parts):
        at = f"/parts/{index}"
        if isinstance(part, Made):
            found += [replace(fault, at=f"{at}/recipe{fault.at}") for fault in _dice(part, seed)]
        else:
            found += _chosen_faults(part, at)
    total = sum(_count(part) for part in parts)
    if total > MOST_ASKED:
        params = {"count": total, "most": MOST_ASKED}
        text, right = f"{total} coupons are asked", f"at most {MOST_ASKED}"
        found.append(Fault("/parts", "sitting-too-many", text, right, params))
    return found


def _chosen_faults(part: Chosen, at: str) -> list[Fault]:
    if not part.coupons:
        text, right = "no coupon is chosen", "one coupon or more"
        return [Fault(f"{at}/tray/coupons", "sitting-none-chosen", text, right)]
    found: list[Fault] = []
    first: dict[str, int] = {}
    for index, coupon in enumerate(part.coupons):
        place, named = f"{at}/tray/coupons/{index}", quoted(coupon.id)
        if coupon.id in first:
            other = first[coupon.id] + 1
            text, right = f"{named} is the id of coupon {other} too", "an id of its own"
            params: dict[str, float | str] = {"id": coupon.id, "named": named, "other": other}
            found.append(Fault(f"{place}/id", "repeated-id", text, right, params))
        if coupon.shop_rules is not None and coupon.rules not in part.rules:
            text = f"the shop's rules {quoted(coupon.rules)} don't come with the coupons"
            right = "the coupons with their rules files"
            params = {"rules": quoted(coupon.rules)}
            found.append(Fault(f"{place}/rules", "sitting-rules-missing", text, right, params))
        first.setdefault(coupon.id, index)
    return found


def _dice(part: Made, seed: int) -> list[Fault]:
    try:
        pattern(part.recipe, str(seed))
    except RecipeError as error:
        return list(error.faults)
    return []


def _time_faults(plan: Plan) -> list[Fault]:
    # A NaN is no time either.
    if 1.0 <= plan.minutes <= LONGEST_MINUTES:
        return []
    stated = f"{plan.minutes:g}"
    params: dict[str, float | str] = {"value": stated, "most": LONGEST_MINUTES}
    text, right = f"the time is {stated} minutes", f"1 to {LONGEST_MINUTES:g}"
    return [Fault("/minutes", "sitting-minutes", text, right, params)]


def _mark_faults(plan: Plan) -> list[Fault]:
    found: list[Fault] = []
    stated: list[tuple[str, float]] = [("/pass_mark", plan.pass_mark)]
    stated += [(f"/skill_marks/{skill}", mark) for skill, mark in plan.skill_marks.items()]
    for at, mark in stated:
        if not 0.0 <= mark <= 1.0:
            value = f"{mark:g}"
            text, right = f"the pass mark is {value}", "0 to 1"
            found.append(Fault(at, "sitting-pass-mark", text, right, {"value": value}))
    asked = _skills_asked(plan.parts)
    for skill in plan.skill_marks:
        if skill not in asked and plan.parts:
            text = f"no coupon of this sitting can be marked on {quoted(skill)}"
            right = "another skill, or coupons that ask for it"
            at, params = f"/skill_marks/{skill}", {"skill": skill, "named": quoted(skill)}
            found.append(Fault(at, "sitting-skill-unasked", text, right, params))
    return found


def _skills_asked(parts: Sequence[Chosen | Made]) -> set[str]:
    tasks = {c.task for part in parts if isinstance(part, Chosen) for c in part.coupons}
    if any(isinstance(part, Made) for part in parts):
        tasks.add("judge")
    return {skill for task in tasks for skill in _ASKED[task]}


def _entrant_faults(entrants: Sequence[Entrant]) -> list[Fault]:
    found: list[Fault] = []
    first: dict[str, int] = {}
    params: dict[str, float | str]
    if len(entrants) > MOST_ENTRANTS:
        params = {"count": len(entrants), "most": MOST_ENTRANTS}
        text, right = f"{len(entrants)} learners are named", f"at most {MOST_ENTRANTS}"
        found.append(Fault("/entrants", "sitting-entrants", text, right, params))
    for index, each in enumerate(entrants):
        at, key = f"/entrants/{index}", code_key(each.code)
        if not is_code(each.code):
            text = f"{quoted(each.code)} is no code"
            right = f"1 to {LONGEST_CODE} characters, no space around them"
            params = {"value": quoted(each.code), "most": LONGEST_CODE}
            found.append(Fault(f"{at}/code", "sitting-code", text, right, params))
        elif key in first:
            text = f"{quoted(each.code)} is the code of learner {first[key] + 1} too"
            params = {"value": quoted(each.code), "other": first[key] + 1}
            right = "a code of their own"
            found.append(Fault(f"{at}/code", "sitting-repeated-code", text, right, params))
        first.setdefault(key, index)
        if not (math.isfinite(each.extra) and 0.0 <= each.extra <= _MOST_EXTRA):
            value = f"{each.extra:g}"
            text, right = f"the time more is {value}", f"0 to {_MOST_EXTRA:g} of the whole"
            params = {"value": value, "most": _MOST_EXTRA}
            found.append(Fault(f"{at}/extra", "sitting-extra", text, right, params))
    return found
