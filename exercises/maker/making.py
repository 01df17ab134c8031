"""A tray out of dice: distinct coupons, each sound, none in doubt unless asked, evenly answered."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from exercises.coupon import Coupon
from exercises.disposition import Disposition
from exercises.file_faults import TrayError
from exercises.judging import Judgement
from exercises.maker.dice import Throw, distance, scaled, throw
from exercises.maker.recipe import Recipe, RecipeError
from exercises.maker.words import HINTS, teaching_point, title
from exercises.strict_json import Json
from exercises.tray import Tray, read_tray
from exercises.versions import HEAD
from geometry.faults import Fault

__all__ = ["Drawn", "answers_wanted", "draw", "is_as_asked", "make_tray"]

_THROWS: Final = 200
"""How often the dice are thrown for one coupon before the recipe is given up."""

_APART: Final = 0.1
"""mm: coupons of the same kind whose legs and crown all lie closer than this are the same."""


def make_tray(recipe: Recipe, told: Callable[[int], object] | None = None) -> Tray:
    """Return a tray made by `recipe`: the same recipe makes the same tray.

    Parameters
    ----------
    recipe
        What it is to be like.
    told
        Is told how many coupons there are, after each; what it raises ends the making.

    Raises
    ------
    RecipeError
        If the recipe can't be, or the dice find no weld that it asks for.

    Examples
    --------
    >>> tray = make_tray(Recipe(4, seed=7, faces=("convex", "concave")))
    >>> [coupon.id for coupon in tray.coupons]
    ['made-7-001', 'made-7-002', 'made-7-003', 'made-7-004']
    >>> make_tray(Recipe(4, seed=7, faces=("convex", "concave"))) == tray
    True
    """
    wanted = answers_wanted(recipe)
    rng = random.Random(recipe.seed)
    rng.shuffle(wanted)
    made: list[dict[str, Json]] = []
    before: list[Drawn] = []
    for number, (answer, doubtful) in enumerate(wanted):
        name = f"made-{recipe.seed}-{number + 1:03}"
        drawn = draw(rng, recipe, answer, name, before, doubtful=doubtful)
        teaches = teaching_point(drawn.coupon, drawn.judgement)
        said: dict[str, Json] = {"hints": HINTS, "teaches": teaches, "title": title(number)}
        made.append({**drawn.stated, **said})
        before.append(drawn)
        if told is not None:
            told(len(made))
    words = {"en": f"Made coupons, seed {recipe.seed}", "es": f"Probetas generadas, {recipe.seed}"}
    head: dict[str, Json] = {"format": "toe-and-throat/tray", "version": HEAD, "title": {**words}}
    return read_tray({**head, "coupons": list(made)})


def answers_wanted(recipe: Recipe) -> list[tuple[Disposition, bool]]:
    """Return the answer that each coupon needs, and whether it is to be in doubt; not shuffled.

    Raises
    ------
    RecipeError
        If the recipe can't be.

    Examples
    --------
    >>> answers_wanted(Recipe(2, traps=()))
    [('accept', False), ('add weld metal', False)]
    """
    faults = recipe.faults()
    quotas = recipe.quotas()
    if faults or quotas is None:
        raise RecipeError(faults)
    wanted = [(answer, False) for answer, count in quotas.items() for _ in range(count)]
    either: tuple[Disposition, ...] = ("accept", "add weld metal")
    return wanted + [(either[at % 2], True) for at in range(recipe.doubtful())]


@dataclass(frozen=True)
class Drawn:
    """A weld that the dice found.

    Parameters
    ----------
    stated
        The coupon as a tray file states it, without its words.
    thrown
        As it was thrown, before its size was brought to its aim.
    coupon, judgement
        The coupon itself, and the right call on it.
    """

    stated: dict[str, Json]
    thrown: Throw
    coupon: Coupon
    judgement: Judgement

    def like(self, other: Drawn) -> bool:
        """Whether the two are the same but for what nobody would see."""
        return self._kind == other._kind and all(
            abs(one - two) < _APART for one, two in zip(self._sizes, other._sizes, strict=True)
        )

    @property
    def _kind(self) -> tuple[str, str | None, float]:
        return self.thrown.face, self.thrown.trap, self.coupon.callout.size

    @property
    def _sizes(self) -> tuple[float, float, float]:
        bead = self.coupon.section.bead
        return bead.leg_base, bead.leg_upright, bead.crown


def draw(
    rng: random.Random,
    recipe: Recipe,
    wanted: Disposition,
    name: str,
    before: Sequence[Drawn] = (),
    *,
    doubtful: bool,
) -> Drawn:
    """Throw the dice until a weld needs the answer `wanted`, and is like none of those `before`.

    Raises
    ------
    RecipeError
        If none is found.
    """
    for _ in range(_THROWS):
        thrown = throw(rng, recipe, wanted, doubtful=doubtful)
        try:
            found = scaled(thrown, recipe, name)
        except TrayError:
            # A face that enters a member, a toe off its plate: thrown again.
            continue
        if found is None or not is_as_asked(recipe, wanted, found.judgement, doubtful=doubtful):
            continue
        drawn = Drawn(found.stated, thrown, found.coupon, found.judgement)
        if not any(drawn.like(other) for other in before):
            return drawn
    text = f"no weld was found whose right call is {wanted!r}"
    right = "another rule set, more faces, more traps, or sizes farther from their limits"
    raise RecipeError([Fault("", "recipe-unmet", text, right, {"disposition": wanted})])


def is_as_asked(
    recipe: Recipe, wanted: Disposition, judgement: Judgement, *, doubtful: bool
) -> bool:
    """Whether a weld is what the recipe asked for, by the judge that will grade it."""
    if judgement.in_doubt is not doubtful:
        return False
    if doubtful:
        return True
    if judgement.disposition != wanted:
        return False
    # Every check that a leaf has a say in is as clear as the recipe wants it, not the worst alone.
    clear = all(
        abs(check.margin) >= recipe.nearest * check.doubt
        for check in judgement.checks
        if check.doubt > 0.0
    )
    return clear and abs(distance(judgement.checks)) <= recipe.farthest + 0.5
