"""What a made tray is to be like: how many coupons, of what faces, with which traps, how hard."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from exercises.callout import CalloutMeasure
from exercises.disposition import Disposition
from exercises.rules import RULE_SETS
from geometry.faults import Fault
from geometry.lengths import Unit
from geometry.measures import FaceShape

__all__ = ["FACES", "MOST_CONSTANT", "TRAPS", "Recipe", "RecipeError", "Trap"]

Trap = Literal[
    "unequal legs",
    "undercut",
    "overlap",
    "oversize crown",
    "spatter",
    "root opening",
    "out of square",
    "worn leaf",
]
TRAPS: Final[tuple[Trap, ...]] = (
    "unequal legs",
    "undercut",
    "overlap",
    "oversize crown",
    "spatter",
    "root opening",
    "out of square",
    "worn leaf",
)
FACES: Final[tuple[FaceShape, ...]] = ("convex", "flat", "concave")

MOST_CONSTANT: Final = 0.4
"""The greatest share of a made tray that one and the same answer gets right."""

_MOST: Final = 500
_NEAREST: Final = 1.05
_FARTHEST: Final = 40.0


class RecipeError(ValueError):
    """A recipe that no tray can be made by; `faults` says why, one for each thing that is wrong."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults: tuple[Fault, ...] = tuple(faults)
        super().__init__("; ".join(str(fault) for fault in self.faults))


@dataclass(frozen=True, slots=True)
class Recipe:
    r"""What a maker is to make.

    Parameters
    ----------
    count
        How many coupons.
    seed
        The same seed makes the same tray.
    unit
        ``mm`` or ``in``: what callouts are stated in, and which leaves they are of.
    measure
        ``leg`` or ``throat``: what callouts size.
    rules
        Id of a rule set that ships.
    faces
        Which faces there are.
    traps
        What may be wrong or in the way, beside the size.
    sizes
        Least and greatest size called for, mm of leg.
    nearest, farthest
        How far the nearest size lies from its limit, in units of the leaf's doubt: 1.5 is hard, 8
        is plain to see.
    in_doubt
        The share of coupons that are within the doubt, from 0 to 0.3.

    Examples
    --------
    >>> Recipe(12).faults()
    []
    >>> print(*Recipe(12, faces=(), nearest=0.5).faults(), sep="\n")
    /faces: no face is named; right would be: one or more of convex, flat, concave
    /nearest: the nearest size lies 0.5 doubts off its limit; right would be: 1.05 to 40
    """

    count: int
    seed: int = 1
    unit: Unit = "mm"
    measure: CalloutMeasure = "leg"
    rules: str = "as-drawn"
    faces: tuple[FaceShape, ...] = FACES
    traps: tuple[Trap, ...] = TRAPS
    sizes: tuple[float, float] = (5.0, 12.0)
    nearest: float = 1.5
    farthest: float = 8.0
    in_doubt: float = 0.0

    def answers(self) -> tuple[Disposition, ...]:
        """The dispositions that coupons of this recipe can need."""
        found: list[Disposition] = ["accept", "add weld metal"]
        if self.excesses():
            found.append("dress back")
        if "out of square" in self.traps:
            found.append("refer")
        return tuple(found)

    def excesses(self) -> tuple[Trap, ...]:
        """The traps that a rule set limits as too much metal."""
        rules = RULE_SETS.get(self.rules)
        limited = {limit.measure for limit in rules.limits} if rules else set()
        known: tuple[tuple[Trap, str], ...] = (
            ("overlap", "overlap"),
            ("oversize crown", "convexity"),
        )
        return tuple(trap for trap, key in known if trap in self.traps and key in limited)

    def faults(self) -> list[Fault]:
        """Return all that keeps a tray from being made."""
        found: list[Fault] = []

        def wrong(at: str, text: str, right: str, **params: float | str) -> None:
            found.append(Fault(f"/{at}", f"recipe-{at.replace('_', '-')}", text, right, params))

        if not 1 <= self.count <= _MOST:
            wrong("count", f"{self.count} coupons", f"1 to {_MOST}", count=self.count, most=_MOST)
        if self.rules not in RULE_SETS:
            known = ", ".join(RULE_SETS)
            wrong("rules", f"no rule set is called {self.rules!r}", known, value=self.rules)
        if not self.faces:
            wrong("faces", "no face is named", "one or more of " + ", ".join(FACES))
        low, high = self.sizes
        if not 3.0 <= low <= high <= 25.0:
            text = f"sizes from {low:g} to {high:g} mm"
            wrong("sizes", text, "from 3 to 25 mm, the lesser first", low=low, high=high)
        if not _NEAREST <= self.nearest <= _FARTHEST:
            text = f"the nearest size lies {self.nearest:g} doubts off its limit"
            right = f"{_NEAREST:g} to {_FARTHEST:g}"
            wrong("nearest", text, right, value=self.nearest)
        elif not self.nearest + 0.5 <= self.farthest <= _FARTHEST:
            text = f"the farthest size lies {self.farthest:g} doubts off its limit"
            right = f"{self.nearest + 0.5:g} to {_FARTHEST:g}"
            wrong("farthest", text, right, value=self.farthest, nearest=self.nearest)
        if not 0.0 <= self.in_doubt <= 0.3:
            text = f"{self.in_doubt:.0%} of the coupons in doubt"
            wrong("in_doubt", text, "0 to 30 %", value=self.in_doubt)
        return found or self._balance_faults()

    def doubtful(self) -> int:
        """How many coupons are to be in doubt."""
        return round(self.in_doubt * self.count)

    def _balance_faults(self) -> list[Fault]:
        """What keeps any one answer from being right too often."""
        if self.quotas() is not None:
            return []
        text = (
            f"{self.count} coupons with {len(self.answers())} kinds of right answer, "
            f"{self.doubtful()} of them in doubt, can't keep one answer from being right more "
            f"often than {MOST_CONSTANT:.0%}"
        )
        right = "more coupons, fewer in doubt, or the traps overlap and out of square as well"
        params = {"count": self.count, "answers": len(self.answers()), "doubtful": self.doubtful()}
        return [Fault("/count", "recipe-balance", text, right, params)]

    def quotas(self) -> dict[Disposition, int] | None:
        """Return how many coupons outside the doubt need each answer; None if it can't be even.

        A coupon in doubt takes several answers, so it counts for each of them. A single coupon, or
        two, can't be balanced, and needn't be.

        Examples
        --------
        >>> Recipe(10).quotas()
        {'accept': 3, 'add weld metal': 3, 'dress back': 2, 'refer': 2}
        >>> Recipe(10, traps=()).quotas() is None
        True
        """
        answers, doubtful = self.answers(), self.doubtful()
        left = self.count - doubtful
        quotas: dict[Disposition, int] = dict.fromkeys(answers, 0)
        if self.count <= len(answers) and not doubtful:
            return {answer: int(at < left) for at, answer in enumerate(answers)}
        most = int(MOST_CONSTANT * self.count + 1e-9)
        room = {answer: most - (doubtful if answer != "dress back" else 0) for answer in answers}
        for at in range(left * len(answers)):
            if sum(quotas.values()) == left:
                break
            answer = answers[at % len(answers)]
            if quotas[answer] < room[answer]:
                quotas[answer] += 1
        return quotas if sum(quotas.values()) == left else None
