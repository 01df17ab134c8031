"""Throwing the dice for one coupon, and bringing its size to where it is wanted.

Shapes are thrown; the size isn't: legs are scaled until the nearest of the size checks lies as many
doubts off its limit as was drawn. So every rule set sets its own limit, and the maker knows none.
"""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from exercises.checks import Check
from exercises.coupon import Coupon
from exercises.disposition import Disposition
from exercises.doubt import doubt
from exercises.judging import Judgement, judge, sizes_of
from exercises.maker.recipe import Recipe, Trap
from exercises.strict_json import Json
from exercises.tray import read_tray
from exercises.versions import HEAD
from geometry.leaf import Leaf, RackName, rack
from geometry.measures import FaceShape

__all__ = ["Scaled", "Throw", "coupon_of", "distance", "scaled", "throw", "vary"]

_PLATES: Final = (6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0)
_ROUNDS: Final = 5
_NEAR: Final = 0.1
"""Doubts by which a scaled weld may miss the distance that was drawn."""

_HARDLY: Final = 0.03
"""mm: a quarter of what a leaf can tell."""


@dataclass(frozen=True, slots=True)
class Throw:
    """One weld as thrown, before it is scaled.

    Parameters
    ----------
    face, trap
        What it is, and the one thing that is odd about it, if any.
    leaf
        Whose size is called for.
    base, upright, crown
        Shares of the called leg.
    aim
        How far the nearest size is to lie from its limit, in doubts; negative: short of it.
    extras
        Keys of the bead, the joint and the coupon that the trap needs.
    """

    face: FaceShape
    trap: Trap | None
    leaf: Leaf
    base: float
    upright: float
    crown: float
    aim: float
    extras: tuple[tuple[str, str, Json], ...] = ()


def throw(rng: random.Random, recipe: Recipe, wanted: Disposition, *, doubtful: bool) -> Throw:
    """Return a weld that may well need the disposition `wanted`."""
    trap = _trap(rng, recipe, wanted)
    faces = recipe.faces
    if trap == "oversize crown":
        faces = tuple(face for face in faces if face == "convex") or faces
    elif wanted == "refer":
        # Only a throat edge can't seat in a joint that is out of square.
        faces = tuple(face for face in faces if face == "concave") or faces
    face = rng.choice(faces)
    leaves = _leaves(recipe)
    legs = _legs(rng, trap)
    away = rng.uniform(recipe.nearest, recipe.farthest)
    if doubtful:
        aim = rng.uniform(-0.85, 0.85)
    elif wanted == "add weld metal" and trap != "undercut":
        aim = -away
    else:
        aim = away
    leaf = rng.choice(leaves)
    crown = _crown(rng, face, trap)
    extras = tuple(_extras(rng, trap, leaf))
    return Throw(face, trap, leaf, legs[0], legs[1], crown, aim, extras)


def _trap(rng: random.Random, recipe: Recipe, wanted: Disposition) -> Trap | None:
    """Something odd, where it leads to the answer that is wanted or at least not away from it."""
    if wanted == "dress back":
        return rng.choice(recipe.excesses())
    if wanted == "refer":
        return "out of square"
    apart = ("overlap", "oversize crown", "out of square")
    others: list[Trap] = [trap for trap in recipe.traps if trap not in apart]
    if wanted == "accept":
        others = [trap for trap in others if trap != "undercut"]
    # Most welds have nothing odd about them but their size.
    return rng.choice(others) if others and rng.random() < 0.6 else None


def vary(rng: random.Random, recipe: Recipe, thrown: Throw) -> Throw:
    """Return a throw that is as hard as `thrown`, and another weld.

    Face, trap and aim stay, of the trap how bad it is, and in mm the crown and by how much one leg
    is the longer. The leaf is any of the recipe's, and what lies on one member, or is longer, may
    be on the other.
    """
    leaf = rng.choice(_leaves(recipe))
    longer = _hardly_moved(rng, abs(thrown.upright - thrown.base) * thrown.leaf.size)
    legs = [1.0, 1.0 + longer / leaf.size]
    rng.shuffle(legs)
    if thrown.trap == "oversize crown":
        # What is too much of a crown goes by the weld's size; all else about it is mm.
        crown = thrown.crown
    else:
        crown = _hardly_moved(rng, thrown.crown * thrown.leaf.size) / leaf.size
    extras = thrown.extras
    if rng.random() < 0.5:
        extras = tuple(_mirrored(extra) for extra in extras)
    return replace(thrown, leaf=leaf, base=legs[0], upright=legs[1], crown=crown, extras=extras)


def _hardly_moved(rng: random.Random, mm: float) -> float:
    """A length that differs by what hardly anybody tells; none stays none."""
    return mm + rng.uniform(-_HARDLY, _HARDLY) if abs(mm) > _HARDLY else mm


def _mirrored(extra: tuple[str, str, Json]) -> tuple[str, str, Json]:
    """What a trap adds, on the other member."""
    place, key, value = extra
    if isinstance(value, list):
        value = [
            {**drop, "on": "upright" if drop["on"] == "base" else "base"}
            for drop in value
            if isinstance(drop, dict)
        ]
    head, _, member = key.rpartition("_")
    if member in {"base", "upright"}:
        key = f"{head}_{'upright' if member == 'base' else 'base'}"
    return place, key, value


def _legs(rng: random.Random, trap: Trap | None) -> list[float]:
    """Both legs as shares of the called one, in any order."""
    share = rng.uniform(0.94, 1.0)
    legs = [1.0, 1.0 / share] if trap != "unequal legs" else [1.0, rng.uniform(1.12, 1.4)]
    rng.shuffle(legs)
    return legs


def _leaves(recipe: Recipe) -> tuple[Leaf, ...]:
    name: RackName = (
        "inch" if recipe.unit == "in" else "throat" if recipe.measure == "throat" else "metric"
    )
    low, high = recipe.sizes
    every = rack(name)
    return tuple(leaf for leaf in every if low - 0.3 <= leaf.size <= high + 0.3) or every[:1]


def _crown(rng: random.Random, face: FaceShape, trap: Trap | None) -> float:
    """The face's sagitta as a share of the called leg."""
    if face == "flat":
        return 0.0
    if face == "concave":
        return -rng.uniform(0.06, 0.16)
    return rng.uniform(0.25, 0.34) if trap == "oversize crown" else rng.uniform(0.05, 0.14)


def _extras(rng: random.Random, trap: Trap | None, leaf: Leaf) -> list[tuple[str, str, Json]]:
    """What the trap adds: the object it belongs to, the key, the value."""
    member = rng.choice(("base", "upright"))
    if trap == "undercut":
        cut: Json = {"depth": round(rng.uniform(0.5, 1.2), 2), "width": round(rng.uniform(2, 4), 1)}
        return [("bead", f"undercut_{member}", cut)]
    if trap == "overlap":
        return [("bead", f"overlap_{member}", round(rng.uniform(0.8, 2.5), 1))]
    if trap == "spatter":
        at = round(leaf.size * rng.uniform(1.7, 2.4), 1)
        drop: Json = {"on": member, "at": at, "height": round(rng.uniform(0.4, 1.0), 1)}
        return [("", "spatter", [drop])]
    if trap == "root opening":
        return [("joint", "root_opening", round(rng.uniform(0.5, 2.5), 1))]
    if trap == "out of square":
        angle = rng.uniform(65.0, 80.0) if rng.random() < 0.5 else rng.uniform(100.0, 118.0)
        return [("joint", "angle", round(angle))]
    if trap == "worn leaf":
        return [("", "leaf_wear", round(rng.uniform(0.15, 0.35), 2))]
    return []


def document(thrown: Throw, recipe: Recipe, scale: float, **said: Json) -> dict[str, Json]:
    """Return the coupon as a tray file states it, its legs scaled by `scale`."""
    size = thrown.leaf.size * scale
    plate = min((p for p in _PLATES if p >= 1.2 * thrown.leaf.size), default=_PLATES[-1])
    joint: dict[str, Json] = {"base_thickness": plate, "upright_thickness": plate}
    bead: dict[str, Json] = {
        "leg_base": round(size * thrown.base, 2),
        "leg_upright": round(size * thrown.upright, 2),
        "crown": round(size * thrown.crown, 2),
    }
    coupon: dict[str, Json] = {**said, "task": "judge", "joint": joint, "bead": bead}
    coupon["callout"] = {"size": _called(thrown.leaf, recipe), "measure": recipe.measure}
    coupon["rules"] = recipe.rules
    places = {"": coupon, "joint": joint, "bead": bead}
    for place, key, value in thrown.extras:
        places[place][key] = value
    return coupon


def _called(leaf: Leaf, recipe: Recipe) -> Json:
    """The size that is called for, as the drawing writes it."""
    if recipe.measure == "throat" and recipe.unit == "mm":
        return float(leaf.mark.removeprefix("a").removesuffix("mm"))
    if recipe.measure == "throat":
        return f"{leaf.size / 25.4 / 2**0.5:.2f} in"
    return leaf.mark if recipe.unit == "in" else leaf.size


def coupon_of(stated: dict[str, Json]) -> Coupon:
    """Build a coupon of a document, hardened as a file is.

    Raises
    ------
    TrayError
        If no section can be so.
    """
    from_file: dict[str, Json] = {
        "format": "toe-and-throat/tray",
        "version": HEAD,
        "title": "made",
        "coupons": [stated],
    }
    return read_tray(from_file).coupons[0]


def distance(checks: Iterable[Check]) -> float:
    """Return how far the worst size lies from its limit, in doubts; negative: short of it."""
    sizes = [check for check in checks if check.required is not None and check.doubt > 0]
    return min((check.margin / check.doubt for check in sizes), default=float("nan"))


@dataclass(frozen=True)
class Scaled:
    """A weld whose size lies where it was asked for.

    Parameters
    ----------
    stated, coupon
        As a tray file states it, and as that is read.
    judgement
        The right call on it.
    """

    stated: dict[str, Json]
    coupon: Coupon
    judgement: Judgement


def scaled(thrown: Throw, recipe: Recipe, name: str) -> Scaled | None:
    """Return the weld with its size brought to its aim; None if it can't be.

    Raises
    ------
    TrayError
        If no section can be so.
    """
    # Where the callout itself is the limit, this is the answer already.
    scale = 1.0 + thrown.aim * doubt("leg") / thrown.leaf.size
    for _ in range(_ROUNDS):
        stated = document(thrown, recipe, scale, id=name)
        coupon = coupon_of(stated)
        sizes = sizes_of(coupon)
        off = thrown.aim - distance(sizes)
        if abs(off) <= _NEAR:
            return Scaled(stated, coupon, judge(coupon))
        worst = min(
            (check for check in sizes if check.doubt > 0),
            key=lambda check: check.margin / check.doubt,
            default=None,
        )
        if worst is None or worst.measured <= 0.0:
            return None
        # A size grows as the legs do.
        step = off * worst.doubt / worst.measured
        scale *= 1.0 + max(-0.3, min(0.3, step))
    return None
