"""A tray out of dice: distinct coupons, each sound, none in doubt unless asked, evenly answered."""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import Final

from exercises.coupon import Coupon
from exercises.disposition import Disposition
from exercises.file_faults import TrayError
from exercises.judging import Judgement
from exercises.maker.dice import Throw, coupon_of, distance, scaled, throw
from exercises.maker.recipe import Recipe, RecipeError
from exercises.maker.words import HINTS, teaching_point, title
from exercises.strict_json import Json
from exercises.tray import Tray, read_tray
from exercises.versions import HEAD
from geometry.faults import Fault

__all__ = ["make_tray"]

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
    faults = recipe.faults()
    quotas = recipe.quotas()
    if faults or quotas is None:
        raise RecipeError(faults)
    rng = random.Random(recipe.seed)
    wanted = [(answer, False) for answer, count in quotas.items() for _ in range(count)]
    either: tuple[Disposition, ...] = ("accept", "add weld metal")
    wanted += [(either[at % 2], True) for at in range(recipe.doubtful())]
    rng.shuffle(wanted)
    made: list[dict[str, Json]] = []
    kinds: list[_Kind] = []
    for number, (answer, doubtful) in enumerate(wanted):
        name = f"made-{recipe.seed}-{number + 1:03}"
        stated, kind = _coupon(rng, recipe, answer, name, kinds, doubtful=doubtful)
        made.append({**stated, "title": title(number)})
        kinds.append(kind)
        if told is not None:
            told(len(made))
    words = {"en": f"Made coupons, seed {recipe.seed}", "es": f"Probetas generadas, {recipe.seed}"}
    head: dict[str, Json] = {"format": "toe-and-throat/tray", "version": HEAD, "title": {**words}}
    return read_tray({**head, "coupons": list(made)})


class _Kind:
    """What makes a coupon another one than its neighbour."""

    def __init__(self, thrown: Throw, coupon: Coupon) -> None:
        bead = coupon.section.bead
        self.kind = (thrown.face, thrown.trap, coupon.callout.size)
        self.sizes = (bead.leg_base, bead.leg_upright, bead.crown)

    def like(self, other: _Kind) -> bool:
        """Whether the two are the same but for what nobody would see."""
        return self.kind == other.kind and all(
            abs(one - two) < _APART for one, two in zip(self.sizes, other.sizes, strict=True)
        )


def _coupon(
    rng: random.Random,
    recipe: Recipe,
    wanted: Disposition,
    name: str,
    kinds: list[_Kind],
    *,
    doubtful: bool,
) -> tuple[dict[str, Json], _Kind]:
    for _ in range(_THROWS):
        thrown = throw(rng, recipe, wanted, doubtful=doubtful)
        try:
            found = scaled(thrown, recipe, name)
        except TrayError:
            # A face that enters a member, a toe off its plate: thrown again.
            continue
        if found is None or not _as_asked(recipe, wanted, found[1], doubtful=doubtful):
            continue
        stated, judgement = found
        coupon = coupon_of(stated)
        kind = _Kind(thrown, coupon)
        if any(kind.like(other) for other in kinds):
            continue
        teaches = teaching_point(coupon, judgement)
        return {**stated, "hints": HINTS, "teaches": teaches}, kind
    text = f"no weld was found whose right call is {wanted!r}"
    right = "another rule set, more faces, more traps, or sizes farther from their limits"
    raise RecipeError([Fault("", "recipe-unmet", text, right, {"disposition": wanted})])


def _as_asked(recipe: Recipe, wanted: Disposition, judgement: Judgement, *, doubtful: bool) -> bool:
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
    return clear and abs(distance(judgement)) <= recipe.farthest + 0.5
