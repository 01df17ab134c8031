"""What a sitting is composed of: one frozen value, and every change that can be made of it.

No Qt here. A draft holds a plan without its parts, and the parts as they are chosen from: a tray
whole, with those of its coupons that are picked, or a recipe for the dice.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final
from uuid import uuid4

from exercises.coupon import Coupon
from exercises.maker import Recipe
from exercises.sitting.codes import code_key
from exercises.sitting.plan import Chosen, Entrant, Help, Made, Plan, Skill
from exercises.text import NO_TEXT, Text

__all__ = [
    "Draft",
    "FromDice",
    "FromTray",
    "Part",
    "draft_of",
    "new_draft",
    "shown",
    "with_entrants",
    "with_extra",
    "with_help",
    "with_moved",
    "with_part",
    "with_picked",
    "with_plan",
    "with_recipe",
    "with_skill_mark",
    "without_part",
]

_MINUTES: Final = 60.0
_PASS: Final = 0.8
_HELPS: Final[frozenset[Help]] = frozenset({"loupe", "unit switch"})


@dataclass(frozen=True)
class FromTray:
    """A part out of a tray.

    Parameters
    ----------
    tray
        All that the tray has, with the shop's rules that its coupons are judged by.
    picked
        Places of those that the sitting asks.
    """

    tray: Chosen
    picked: frozenset[int]

    @classmethod
    def whole(cls, tray: Chosen) -> FromTray:
        """Return a part with every coupon picked."""
        return cls(tray, frozenset(range(len(tray.coupons))))

    @property
    def title(self) -> Text:
        """The tray's."""
        return self.tray.title

    @property
    def coupons(self) -> tuple[Coupon, ...]:
        """All that it has."""
        return self.tray.coupons

    @property
    def count(self) -> int:
        """How many coupons it comes to."""
        return len(self.picked)


@dataclass(frozen=True)
class FromDice:
    """A part that the dice make, for each learner their own.

    Parameters
    ----------
    recipe
        What they are asked for.
    """

    recipe: Recipe

    @property
    def count(self) -> int:
        """How many coupons it comes to."""
        return self.recipe.count


Part = FromTray | FromDice


@dataclass(frozen=True)
class Draft:
    """A sitting being composed, and the part of it that is open.

    Parameters
    ----------
    base
        All but its parts.
    parts
        In the order that they are asked.
    at
        Place of the open part; -1 where there is none.

    Examples
    --------
    >>> draft = with_part(new_draft(), FromDice(Recipe(12)))
    >>> draft.at, draft.count, draft.plan.minutes
    (0, 12, 60.0)
    """

    base: Plan
    parts: tuple[Part, ...] = ()
    at: int = -1

    @property
    def part(self) -> Part | None:
        """The part that is open."""
        return self.parts[self.at] if 0 <= self.at < len(self.parts) else None

    @property
    def count(self) -> int:
        """How many coupons a learner is asked."""
        return sum(part.count for part in self.parts)

    @property
    def plan(self) -> Plan:
        """The sitting as it would be sealed."""
        return replace(self.base, parts=tuple(_planned(part) for part in self.parts))

    @property
    def codes(self) -> frozenset[str]:
        """The codes of those who sit it, as codes are compared."""
        return frozenset(code_key(entrant.code) for entrant in self.base.entrants)


def _planned(part: Part) -> Chosen | Made:
    if isinstance(part, FromDice):
        return Made(part.recipe)
    coupons = tuple(part.coupons[at] for at in sorted(part.picked))
    needed = {coupon.rules for coupon in coupons}
    rules = {name: rule for name, rule in part.tray.rules.items() if name in needed}
    return Chosen(part.title, coupons, rules)


def new_draft() -> Draft:
    """Return a sitting that asks nothing yet, with an id and a seed of its own.

    Examples
    --------
    >>> new_draft().count, new_draft().base.id == new_draft().base.id
    (0, False)
    """
    return Draft(
        Plan(
            id=str(uuid4()),
            title=NO_TEXT,
            parts=(),
            shuffled=True,
            minutes=_MINUTES,
            pass_mark=_PASS,
            skill_marks={},
            helps=_HELPS,
            entrants=(),
            seed=random.SystemRandom().randrange(1, 2**31),
        )
    )


def draft_of(plan: Plan) -> Draft:
    """Return a plan as something to go on composing; of a tray there is only what it asked."""
    parts = tuple(_unplanned(part) for part in plan.parts)
    return Draft(replace(plan, parts=()), parts, 0 if parts else -1)


def _unplanned(part: Chosen | Made) -> Part:
    return FromDice(part.recipe) if isinstance(part, Made) else FromTray.whole(part)


def shown(draft: Draft, at: int) -> Draft:
    """Return the draft with another part open; the nearest there is."""
    return replace(draft, at=min(max(at, 0), len(draft.parts) - 1))


# Parts


def with_part(draft: Draft, part: Part) -> Draft:
    """Return the draft with a part more, after all others, and that open."""
    return replace(draft, parts=(*draft.parts, part), at=len(draft.parts))


def without_part(draft: Draft) -> Draft:
    """Return the draft without the open part.

    Examples
    --------
    >>> two = with_part(with_part(new_draft(), FromDice(Recipe(8))), FromDice(Recipe(12)))
    >>> without_part(two).count, without_part(without_part(two)).at
    (8, -1)
    """
    if draft.part is None:
        return draft
    parts = (*draft.parts[: draft.at], *draft.parts[draft.at + 1 :])
    return shown(replace(draft, parts=parts), draft.at)


def with_moved(draft: Draft, step: int) -> Draft:
    """Return the draft with the open part moved by that many places, as far as there are."""
    to = min(max(draft.at + step, 0), len(draft.parts) - 1)
    if draft.part is None or to == draft.at:
        return draft
    parts = list(draft.parts)
    parts.insert(to, parts.pop(draft.at))
    return replace(draft, parts=tuple(parts), at=to)


def _replaced(draft: Draft, part: Part) -> Draft:
    parts = list(draft.parts)
    parts[draft.at] = part
    return replace(draft, parts=tuple(parts))


def with_picked(draft: Draft, picked: Iterable[int]) -> Draft:
    """Return the draft with these coupons of the open tray picked, and no others of it.

    Examples
    --------
    >>> with_picked(new_draft(), [0]).count
    0
    """
    part, chosen = draft.part, frozenset(picked)
    if not isinstance(part, FromTray) or chosen == part.picked:
        return draft
    return _replaced(draft, replace(part, picked=chosen))


def with_recipe(draft: Draft, recipe: Recipe) -> Draft:
    """Return the draft with another recipe for the open part's dice."""
    part = draft.part
    if not isinstance(part, FromDice) or part.recipe == recipe:
        return draft
    return _replaced(draft, FromDice(recipe))


# All else


def with_plan(draft: Draft, plan: Plan) -> Draft:
    """Return the draft with another plan around its parts.

    Examples
    --------
    >>> draft = new_draft()
    >>> with_plan(draft, replace(draft.base, minutes=45.0)).plan.minutes
    45.0
    """
    return draft if plan == draft.base else replace(draft, base=replace(plan, parts=()))


def with_help(draft: Draft, name: Help, *, stays: bool) -> Draft:
    """Return the draft with a help that stays, or doesn't."""
    helps = draft.base.helps | {name} if stays else draft.base.helps - {name}
    return with_plan(draft, replace(draft.base, helps=helps))


def with_skill_mark(draft: Draft, skill: Skill, mark: float | None) -> Draft:
    """Return the draft with the mark that a skill has to reach; None if it has to reach none."""
    marks: Mapping[Skill, float] = {
        **{key: value for key, value in draft.base.skill_marks.items() if key != skill},
        **({skill: mark} if mark is not None else {}),
    }
    return with_plan(draft, replace(draft.base, skill_marks=marks))


def with_entrants(draft: Draft, codes: Iterable[str], *, sits: bool) -> Draft:
    """Return the draft with these learners among those who sit it, or not; the others stay.

    Examples
    --------
    >>> draft = with_entrants(new_draft(), ["k-07", "K-07", "k-08"], sits=True)
    >>> [one.code for one in with_entrants(draft, ["k-07"], sits=False).base.entrants]
    ['k-08']
    """
    given = {code_key(code): code for code in reversed(list(codes))}
    kept = [one for one in draft.base.entrants if sits or code_key(one.code) not in given]
    known = {code_key(one.code) for one in kept}
    new = [Entrant(code) for key, code in given.items() if key not in known] if sits else []
    entrants = tuple(sorted([*kept, *new], key=lambda one: code_key(one.code)))
    return with_plan(draft, replace(draft.base, entrants=entrants))


def with_extra(draft: Draft, codes: Iterable[str], extra: float) -> Draft:
    """Return the draft with that share of time more for these learners.

    Examples
    --------
    >>> draft = with_entrants(new_draft(), ["k-07", "k-08"], sits=True)
    >>> [one.extra for one in with_extra(draft, ["K-07"], 0.25).base.entrants]
    [0.25, 0.0]
    """
    keys = {code_key(code) for code in codes}
    entrants = tuple(
        replace(one, extra=extra) if code_key(one.code) in keys else one
        for one in draft.base.entrants
    )
    return with_plan(draft, replace(draft.base, entrants=entrants))
