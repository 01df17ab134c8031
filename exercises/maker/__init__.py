"""Coupons out of dice, for an instructor who needs more than are at hand."""

from __future__ import annotations

from exercises.maker.making import make_tray
from exercises.maker.recipe import FACES, MOST_CONSTANT, TRAPS, Recipe, RecipeError, Trap

__all__ = ["FACES", "MOST_CONSTANT", "TRAPS", "Recipe", "RecipeError", "Trap", "make_tray"]
