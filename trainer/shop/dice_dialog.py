"""The dice: coupons made by a recipe, which can be stopped."""

from __future__ import annotations

from functools import partial
from typing import Final

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QProgressBar, QWidget

from exercises.coupon import Coupon
from exercises.maker import Recipe, RecipeError
from trainer.bench.translation import translate
from trainer.loading import Loading
from trainer.shop.dice import Cancelled, Throwing
from trainer.shop.recipe_dialog import RecipeDialog
from trainer.shop.words import fault_sentence

__all__ = ["DiceDialog"]

_LOOK: Final = 100
"""ms between two looks at how far the dice are."""


class DiceDialog(RecipeDialog):
    """Asks for a recipe and makes its coupons.

    Parameters
    ----------
    recipe
        What it begins with.

    Signals
    -------
    made(coupons, recipe)
        The coupons are there.
    """

    made = Signal(object, object)

    def __init__(self, recipe: Recipe, parent: QWidget | None = None) -> None:
        self._work: Loading[tuple[Coupon, ...]] | None = None
        self._throwing: Throwing | None = None
        super().__init__(
            recipe,
            translate("Dice", "Coupons from dice"),
            translate(
                "Dice",
                "Each is sound and unlike the others, and no single answer is right too often. "
                "The same seed and choices give the same coupons.",
            ),
            translate("Dice", "Throw"),
            parent,
        )
        self.progress = QProgressBar()
        self.progress.setAccessibleName(translate("Dice", "Coupons made"))
        self.progress.hide()
        self.body.insertWidget(self.body.indexOf(self.message) + 1, self.progress)
        self._look = QTimer(self)
        self._look.setInterval(_LOOK)
        self._look.timeout.connect(self._show_progress)

    # The making

    @property
    def busy(self) -> bool:
        """Whether coupons are being made."""
        return self._work is not None

    def _take(self) -> None:
        """Make the coupons."""
        if self._work is not None:
            return
        self._throwing = Throwing(self.recipe)
        self._work = Loading(self._throwing.made)
        self._work.over.connect(partial(self._end, self._work))
        self.take.setEnabled(False)
        self.progress.setRange(0, self.recipe.count)
        self.progress.setValue(0)
        self.progress.show()
        self._look.start()
        self._work.start()

    def _show_progress(self) -> None:
        if self._throwing is not None:
            self.progress.setValue(self._throwing.count)

    def _end(self, work: Loading[tuple[Coupon, ...]]) -> None:
        self._look.stop()
        self.progress.hide()
        self._work = self._throwing = None
        try:
            coupons = work.result
        except Cancelled:
            super().reject()
            return
        except RecipeError as error:
            self.take.setEnabled(True)
            self._say("\n".join(fault_sentence(fault) for fault in error.faults))
            return
        self.made.emit(coupons, self.recipe)
        self.accept()

    def reject(self) -> None:
        """Leave; dice that are being thrown are stopped first."""
        if self._throwing is not None:
            self._throwing.cancel()
            self._say(translate("Dice", "Stopping..."))
            return
        super().reject()
