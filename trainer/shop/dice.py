"""What is asked of the dice, as entered in their dialog: a recipe, or what keeps it from being one.

No Qt here.
"""

from __future__ import annotations

import threading
from typing import Final

from exercises.coupon import Coupon
from exercises.maker import Recipe, make_tray

__all__ = ["DIFFICULTIES", "Cancelled", "Throwing", "difficulty_of"]

DIFFICULTIES: Final[dict[str, tuple[float, float]]] = {
    "plain": (4.0, 12.0),
    "middling": (2.0, 6.0),
    "hard": (1.1, 2.5),
}
"""How far the nearest size lies from its limit, in doubts of the leaf: least and most."""


def difficulty_of(nearest: float, farthest: float) -> str:
    """Return the name of a difficulty, or nothing where it is one of its own.

    Examples
    --------
    >>> difficulty_of(2.0, 6.0), difficulty_of(3.0, 9.0)
    ('middling', '')
    """
    return next((n for n, pair in DIFFICULTIES.items() if pair == (nearest, farthest)), "")


class Cancelled(Exception):  # noqa: N818  # nothing went wrong
    """The dice are no longer wanted."""


class Throwing:
    """Makes coupons by a recipe, in whatever thread that is; it can be told to stop.

    Examples
    --------
    >>> throwing = Throwing(Recipe(4, seed=7))
    >>> [coupon.id for coupon in throwing.made()], throwing.count
    (['made-7-001', 'made-7-002', 'made-7-003', 'made-7-004'], 4)
    """

    def __init__(self, recipe: Recipe) -> None:
        self.recipe = recipe
        self.count = 0
        self._stop = threading.Event()

    def cancel(self) -> None:
        """Stop with the coupon that is being made."""
        self._stop.set()

    def made(self) -> tuple[Coupon, ...]:
        """Return the coupons.

        Raises
        ------
        RecipeError
            If the recipe can't be, or the dice find no weld that it asks for.
        Cancelled
            If it was told to stop.
        """
        return make_tray(self.recipe, self._hear).coupons

    def _hear(self, count: int) -> None:
        self.count = count
        if self._stop.is_set():
            raise Cancelled
