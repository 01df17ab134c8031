"""The shop's own in undo and redo: opening another coupon is no step. No Qt here."""

from __future__ import annotations

from dataclasses import replace

from trainer.history import History
from trainer.shop.state import Shop, shown

__all__ = ["ShopHistory", "browsed"]

ShopHistory = History[Shop]
"""A tray being made, and the way here and back."""


def browsed(history: ShopHistory, at: int) -> ShopHistory:
    """Return the history with another coupon open, which is no step.

    Examples
    --------
    >>> from trainer.shop.state import duplicated, new_shop
    >>> browsed(History(duplicated(new_shop())), 0).now.at
    0
    """
    return replace(history, now=shown(history.now, at), gesture="")
