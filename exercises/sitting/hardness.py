"""How hard a made part of a sitting is: drawn once, so that every learner's own is as hard.

For each place of the part the dice are thrown once for the whole class: the answer, the face, the
trap and how bad it is, and how many doubts each size lies from its limit. A learner's coupon keeps
all of these and is another weld: another callout, the longer leg and the trap on either
member.
"""

from __future__ import annotations

import random
from dataclasses import replace
from functools import lru_cache
from typing import Final

from exercises.coupon import Coupon
from exercises.file_faults import TrayError
from exercises.judging import Judgement
from exercises.maker.dice import scaled, vary
from exercises.maker.making import Drawn, answers_wanted, draw, is_as_asked
from exercises.maker.recipe import Recipe, RecipeError
from exercises.maker.words import teaching_point
from exercises.strict_json import Json
from exercises.text import Text

__all__ = ["AS_NEAR", "PLAIN", "equal_coupon", "pattern"]

AS_NEAR: Final = 0.5
"""Doubts: by how much a learner's weld may lie nearer its limits, or farther off, at any size."""

PLAIN: Final = 8.0
"""Doubts: what lies farther off its limit is plain to see, however far it is."""

_SHUFFLES: Final = 3
"""How often the whole pattern is drawn anew where the dice find no weld for one place of it."""

_VARIED: Final = 40
"""Throws for a learner's coupon before they get the pattern's own weld, mirrored or as it is."""


@lru_cache(maxsize=32)
def pattern(recipe: Recipe, seed: str) -> tuple[Drawn, ...]:
    """Return one weld for each place of a made part: what every learner's own is as hard as.

    Parameters
    ----------
    recipe
        What the part is to be like.
    seed
        The same recipe and seed give the same pattern.

    Raises
    ------
    RecipeError
        If the recipe can't be, or the dice find no weld that it asks for.

    Examples
    --------
    >>> found = pattern(Recipe(4), "7")
    >>> sorted(drawn.judgement.disposition for drawn in found)
    ['accept', 'add weld metal', 'dress back', 'refer']
    >>> pattern(Recipe(4), "7") == found
    True
    """
    refused: RecipeError | None = None
    for shuffle in range(_SHUFFLES):
        rng = random.Random(f"{seed}/{recipe.seed}/{shuffle}")
        wanted = answers_wanted(recipe)
        rng.shuffle(wanted)
        drawn: list[Drawn] = []
        try:
            for answer, doubtful in wanted:
                drawn.append(draw(rng, recipe, answer, "pattern", drawn, doubtful=doubtful))
        except RecipeError as error:
            refused = error
            continue
        return tuple(drawn)
    assert refused is not None
    raise refused


def equal_coupon(
    rng: random.Random, recipe: Recipe, drawn: Drawn, name: str, title: Json
) -> Coupon:
    """Return a coupon that is as hard as `drawn`, and another weld where the dice find one.

    It never fails: where no other weld is found, it is the one that was drawn.

    Parameters
    ----------
    rng
        The same numbers give the same coupon.
    recipe
        That `drawn` was made by.
    drawn
        One place of `pattern`.
    name, title
        Of the coupon.
    """
    for _ in range(_VARIED):
        thrown = vary(rng, recipe, drawn.thrown)
        try:
            found = scaled(thrown, recipe, name)
        except TrayError:
            # A face that enters a member, a toe off its plate: thrown again.
            continue
        if found is not None and _equal(recipe, drawn.judgement, found.judgement):
            return _worded(found.coupon, found.judgement, name, title)
    return _worded(drawn.coupon, drawn.judgement, name, title)


def _equal(recipe: Recipe, asked: Judgement, found: Judgement) -> bool:
    """Whether a weld asks of a learner what the pattern's does, by the judge that will grade it."""
    return (
        found.disposition == asked.disposition
        and found.acceptable == asked.acceptable
        and found.face == asked.face
        and found.undecided == asked.undecided
        and found.rejected == asked.rejected
        and _as_near(asked, found)
        and is_as_asked(recipe, asked.disposition, found, doubtful=asked.in_doubt)
    )


def _as_near(asked: Judgement, found: Judgement) -> bool:
    """Whether every check that a leaf has a say in lies as far from its limit, on either member."""
    one, other = (sorted(_doubts(judged)) for judged in (asked, found))
    return len(one) == len(other) and all(
        abs(a - b) <= AS_NEAR for a, b in zip(one, other, strict=True)
    )


def _doubts(judged: Judgement) -> list[float]:
    found = (check.margin / check.doubt for check in judged.checks if check.doubt > 0.0)
    return [max(-PLAIN, min(PLAIN, away)) for away in found]


def _worded(coupon: Coupon, judgement: Judgement, name: str, title: Json) -> Coupon:
    """The coupon with its words; no weld is built anew for them."""
    teaches = teaching_point(coupon, judgement)
    return replace(
        coupon,
        id=name,
        title=_text(title),
        teaches=_text(teaches),
        source={**coupon.source, "id": name, "title": title, "teaches": teaches},
    )


def _text(words: Json) -> Text:
    if isinstance(words, dict):
        return Text(tuple((tag, str(said)) for tag, said in words.items()))
    return Text.of(str(words))
