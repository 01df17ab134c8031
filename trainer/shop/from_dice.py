"""Coupons out of dice, put after those of the tray that is open."""

from __future__ import annotations

import random
from collections.abc import Callable

from PySide6.QtCore import QObject

from exercises.coupon import Coupon
from exercises.maker import Recipe
from exercises.text import NO_TEXT
from exercises.tray import Tray
from geometry.lengths import Unit
from trainer.shop import state as changes
from trainer.shop.controller import ShopController
from trainer.shop.dice_dialog import DiceDialog
from trainer.shop.state import TooManyError
from trainer.window import WindowFrame

__all__ = ["FromDice"]


class FromDice(QObject):
    """Asks for a recipe, and takes what the dice give.

    Parameters
    ----------
    window, controller
        Where it is asked, and the tray.
    done
        Told what came of it.
    """

    def __init__(
        self,
        window: WindowFrame,
        controller: ShopController,
        done: Callable[[str], object],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._window, self._controller, self._done = window, controller, done
        self._recipe: Recipe | None = None

    def throw(self, unit: Unit) -> None:
        """Ask what is to be made; the recipe of the last time is there again."""
        recipe = self._recipe or Recipe(
            12, seed=random.randint(1, 9999), unit=unit, nearest=2.0, farthest=6.0
        )
        dialog = DiceDialog(recipe, self._window.window)
        dialog.made.connect(self._take)
        self._window.show_dialog(dialog)

    def _take(self, coupons: tuple[Coupon, ...], recipe: Recipe) -> None:
        """Put what the dice gave after all that is there, as one step."""
        self._recipe = recipe
        made = Tray(NO_TEXT, tuple(coupons))
        try:
            self._controller.do(lambda s: changes.merged(s, made), "dice")
        except TooManyError:
            self._done(self.tr("The tray holds no more coupons."))
            return
        self._done(self.tr("From dice: {n}").format(n=len(coupons)))
