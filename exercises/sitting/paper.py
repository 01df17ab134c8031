"""A paper: what one learner is asked, in which order."""

from __future__ import annotations

import random
from dataclasses import dataclass

from exercises.coupon import Coupon
from exercises.maker.words import title
from exercises.sitting.codes import learner_id
from exercises.sitting.hardness import equal_coupon, pattern
from exercises.sitting.plan import Made, Plan

__all__ = ["Question", "paper_of", "questions_of"]


@dataclass(frozen=True, slots=True)
class Question:
    """One coupon of a paper.

    Parameters
    ----------
    slot
        Which place of the plan it fills: part and place in it, from 1. It is the same for every
        learner whatever their order, so a class's answers to it can be laid side by side.
    coupon
        What is asked.
    """

    slot: str
    coupon: Coupon


def questions_of(plan: Plan, code: str) -> tuple[Question, ...]:
    """Return what the learner with this code is asked: the same plan and code, the same paper.

    Parameters
    ----------
    plan
        A plan without faults.
    code
        The learner's, in any spelling of it.

    Raises
    ------
    RecipeError
        If the plan has a recipe that can't be (its `faults` say so).

    Examples
    --------
    >>> from exercises.maker.recipe import Recipe
    >>> from exercises.text import Text
    >>> plan = Plan("s-1", Text.of("Yard"), (Made(Recipe(3, faces=("convex",))),), seed=4)
    >>> found = questions_of(plan, "k-07")
    >>> sorted(each.slot for each in found), [each.coupon.id for each in found]
    (['1-001', '1-002', '1-003'], ['1-001', '1-002', '1-003'])
    >>> questions_of(plan, "K-07 ") == found, questions_of(plan, "k-08") == found
    (True, False)
    """
    asked: list[Question] = []
    for index, part in enumerate(plan.parts):
        if isinstance(part, Made):
            asked += _made(plan, index, part, code)
        else:
            asked += [Question(_slot(index, at), each) for at, each in enumerate(part.coupons)]
    if plan.shuffled:
        _dice(plan, code, "order").shuffle(asked)
    return tuple(asked)


def paper_of(plan: Plan, code: str) -> tuple[Coupon, ...]:
    """Return the coupons of `questions_of`, in order."""
    return tuple(each.coupon for each in questions_of(plan, code))


def _made(plan: Plan, index: int, part: Made, code: str) -> list[Question]:
    rng = _dice(plan, code, str(index))
    drawn = pattern(part.recipe, str(plan.seed))
    order = list(range(len(drawn)))
    rng.shuffle(order)
    # Titles say nothing: they go by the learner's own order, and begin anywhere.
    first = rng.randrange(96)
    return [
        Question(
            _slot(index, slot),
            equal_coupon(rng, part.recipe, drawn[slot], _slot(index, at), title(first + at)),
        )
        for at, slot in enumerate(order)
    ]


def _slot(part: int, place: int) -> str:
    return f"{part + 1}-{place + 1:03}"


def _dice(plan: Plan, code: str, of: str) -> random.Random:
    return random.Random(f"{plan.seed}/{learner_id(code)}/{of}")
