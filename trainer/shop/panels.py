"""The shop's panels, which F6 goes through: a coupon has more fields than one would Tab past."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

__all__ = ["go_to_panel"]


def go_to_panel(panels: Sequence[tuple[QWidget, QWidget]], way: int) -> None:
    """Give the keys to the panel after the one that has them, or with -1 before it.

    Parameters
    ----------
    panels
        In reading order: each, and what of it has the keys first.
    way
        1 or -1.
    """
    now = QApplication.focusWidget()
    within = [at for at, (panel, _) in enumerate(panels) if now and panel.isAncestorOf(now)]
    at = (within[0] + way) % len(panels) if within else 0 if way > 0 else len(panels) - 1
    panels[at][1].setFocus(
        Qt.FocusReason.TabFocusReason if way > 0 else Qt.FocusReason.BacktabFocusReason
    )
