"""What the coupon shop looks like: its pictures, for `tests.measure.shots`."""

from __future__ import annotations

from typing import cast

from exercises.maker import Recipe
from tests.measure.stage import Stage
from trainer.late import shipped_tray
from trainer.shop.dice_dialog import DiceDialog
from trainer.shop.screen import ShopScreen

__all__ = ["dice", "shop", "shop_doubt", "shop_leaves", "shop_traced", "shop_wrong"]


def _open(on: Stage) -> ShopScreen:
    """The shop with the shipped tray, as it is opened."""
    on.frame.show_screen("shop")
    screen = cast("ShopScreen", on.frame.screens.currentWidget())
    # A page that takes sections in may have been photographed before.
    screen.show_shop()
    screen._drawn = frozenset()
    screen.controller.mark_saved(screen.controller.shop.tray)
    screen.filing.open_path(shipped_tray())
    for tabs in (screen.side.forms, screen.side.results):
        tabs.setCurrentIndex(0)
    on.settle()
    return screen


def _still(on: Stage, screen: ShopScreen) -> None:
    """Let all be judged and pressed, and nobody's focus be on the tray."""
    screen.working.finish()
    screen.view.canvas.setFocus()
    screen.saying.hide()
    on.settle()


def shop(on: Stage) -> None:
    """The first coupon, as it is opened."""
    _still(on, _open(on))


def shop_doubt(on: Stage) -> None:
    """All that there can be a handle on, inside the doubt, its measures drawn."""
    screen = _open(on)
    screen.choose("leg_upright", 8.05)
    screen.choose("undercut_base.depth", 0.4)
    screen.do("spatter")
    screen._drawn = frozenset({"legs", "throats"})
    screen.show_state()
    _still(on, screen)


def shop_leaves(on: Stage) -> None:
    """What each leaf shows, and one of them on the picture."""
    screen = _open(on)
    screen.side.forms.setCurrentIndex(1)
    screen.side.results.setCurrentIndex(1)
    screen.working.finish()
    screen.side.leaves.table.setCurrentCell(5, 2)
    _still(on, screen)


def shop_wrong(on: Stage) -> None:
    """Entries that are refused, each in its place."""
    screen = _open(on)
    for key, text in (("leg_upright", "5/16 in \u2212 km"), ("crown", "\u22129")):
        field = screen.side.weld.fields[key].field  # type: ignore[union-attr]
        field.setText(text)
        field.editingFinished.emit()
    _still(on, screen)


def shop_traced(on: Stage) -> None:
    """A traced face, one of its points worked with."""
    screen = _open(on)
    screen.controller.show(7)
    screen.do("face")
    screen.view.canvas.fit()
    screen.side.forms.setCurrentIndex(2)
    screen.side.results.setCurrentIndex(2)
    _still(on, screen)
    screen.view.choose("trace.8")
    screen.show_state()
    on.settle()


def dice(on: Stage) -> None:
    """The dialog of the dice."""
    on.frame.show_dialog(DiceDialog(Recipe(12, seed=7, nearest=2.0, farthest=6.0), on.window))
