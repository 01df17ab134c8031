"""One coupon at a stated distance from its limit, for a drill that knows where it should lie."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Final

from exercises.coupon import Coupon
from exercises.disposition import Disposition
from exercises.doubt import doubt
from exercises.file_faults import TrayError
from exercises.judging import Judgement
from exercises.learner.outcome import size_distance
from exercises.maker.dice import coupon_of, scaled, throw
from exercises.maker.recipe import Recipe, RecipeError
from exercises.maker.words import HINTS, teaching_point, title
from geometry.faults import Fault

__all__ = ["NEAR", "coupon_at"]

NEAR: Final = 0.03
"""mm that a made coupon may lie off the distance asked for: a quarter of what a leaf can tell."""

_THROWS: Final = 60


def coupon_at(distance: float, rng: random.Random, recipe: Recipe, number: int) -> Coupon:
    """Return a coupon whose size lies `distance` mm of size from its limit.

    Its right call hangs on nothing but that size: short of the limit, weld metal is to be added;
    beyond it, it is to be accepted. Within the leaf's doubt either verdict is right.

    Parameters
    ----------
    distance
        mm; below 0 short.
    rng
        The same numbers give the same coupon.
    recipe
        Faces, traps, sizes, rules and unit; how many and how hard is not asked here.
    number
        The drill's how-manieth it is, from 0: its name and title.

    Raises
    ------
    RecipeError
        If the recipe can't be, or no such weld is found.

    Examples
    --------
    >>> from exercises.judging import judge
    >>> made = coupon_at(-0.3, random.Random(2), Recipe(1, traps=()), 0)
    >>> made.id, judge(made).disposition, round(size_distance(judge(made)), 1)
    ('drill-001', 'add weld metal', -0.3)
    """
    wanted: Disposition = "add weld metal" if distance < 0.0 else "accept"
    plain = replace(
        recipe,
        traps=tuple(trap for trap in recipe.traps if trap not in {"undercut", "out of square"}),
    )
    name = f"drill-{number + 1:03}"
    for _ in range(_THROWS):
        thrown = throw(rng, plain, wanted, doubtful=False)
        if thrown.trap in {"overlap", "oversize crown"}:
            continue
        worth = doubt("throat" if thrown.face == "concave" else "leg")
        try:
            found = scaled(replace(thrown, aim=distance / worth), plain, name)
        except TrayError:
            # A face that enters a member, a toe off its plate: thrown again.
            continue
        if found is not None and _fits(found.judgement, distance, wanted):
            stated = {
                **found.stated,
                "title": title(number),
                "hints": HINTS,
                "teaches": teaching_point(found.coupon, found.judgement),
            }
            return coupon_of(stated)
    text = f"no weld was found {distance:.2f} mm from its limit"
    right = "another rule set, more faces, or other sizes"
    raise RecipeError([Fault("", "recipe-unmet", text, right, {"distance": distance})])


def _fits(judgement: Judgement, distance: float, wanted: Disposition) -> bool:
    """Whether the judge finds the weld where it was asked for, and nothing else to speak of."""
    found = size_distance(judgement)
    if found is None or abs(found - distance) > NEAR:
        return False
    return judgement.in_doubt or judgement.disposition == wanted
