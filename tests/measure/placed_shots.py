"""Pictures of a leaf that somebody else has placed, before and after the call; and of a size."""

from __future__ import annotations

from PySide6.QtCore import Qt

from exercises.tray import load_tray
from tests.measure.stage import Stage
from trainer.assets import asset

__all__ = ["fault_asked", "fault_found", "size_stated"]

Key = Qt.Key


def fault_asked(on: Stage) -> None:
    """A leaf on spatter; an answer is chosen, a bench note turned up."""
    on.bench.open_tray(load_tray(asset("trays", "seal-slipway.tray.json")))
    on.lay_out(4)
    on.key(Key.Key_3, Key.Key_U)


def fault_found(on: Stage) -> None:
    """Its debrief, with the right handling over the picture."""
    fault_asked(on)
    on.key(Key.Key_1, Key.Key_Return, Key.Key_H)


def size_stated(on: Stage) -> None:
    """A size task, two leaves read and the smaller one stated."""
    tray = load_tray(asset("trays", "heron-footbridge.tray.json"))
    on.bench.open_tray(tray)
    on.lay_out([coupon.id for coupon in tray.coupons].index("hf-26"))
    on.key(Key.Key_8, Key.Key_Space, Key.Key_H, Key.Key_M, Key.Key_BracketRight, Key.Key_Space)
    on.key(Key.Key_D, Key.Key_X)
