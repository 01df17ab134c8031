"""The shop's panels, which F6 goes through: a coupon has more fields than one would Tab past."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

__all__ = ["Panels"]


class Panels:
    """Goes from panel to panel.

    Parameters
    ----------
    panels
        In reading order: each, and what of it has the keys first.
    """

    def __init__(self, *panels: tuple[QWidget, QWidget]) -> None:
        self._panels = panels

    def go(self, way: int) -> None:
        """Give the keys to the panel after the one that has them, or with -1 before it."""
        now = QApplication.focusWidget()
        panels = self._panels
        within = [at for at, (panel, _) in enumerate(panels) if now and panel.isAncestorOf(now)]
        at = (within[0] + way) % len(panels) if within else 0 if way > 0 else len(panels) - 1
        panels[at][1].setFocus(
            Qt.FocusReason.TabFocusReason if way > 0 else Qt.FocusReason.BacktabFocusReason
        )
