"""A small shake: the leaf can't do what was asked."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QObject, QVariantAnimation, Signal

__all__ = ["Shake"]

_MS: Final = 260
_REACH: Final = 5.0


class Shake(QObject):
    """Offsets the picture of the leaf for a quarter of a second; the leaf itself stays.

    Where motion is not wanted the leaf lights up for as long instead.
    """

    moved = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._still = False
        self._run = QVariantAnimation(self)
        self._run.setStartValue(0.0)
        self._run.setEndValue(1.0)
        self._run.setDuration(_MS)
        self._run.valueChanged.connect(self.moved)
        self._run.finished.connect(self.moved)

    def start(self, *, still: bool) -> None:
        """Shake once; `still` for a light in place of the motion."""
        self._still = still
        self._run.stop()
        self._run.start()

    @property
    def running(self) -> bool:
        """Whether it is under way."""
        return self._run.state() == QVariantAnimation.State.Running

    @property
    def lit(self) -> bool:
        """Whether the leaf is lit in place of a shake."""
        return self.running and self._still

    @property
    def offset(self) -> float:
        """By how many logical pixels the leaf's picture stands aside."""
        if not self.running or self._still:
            return 0.0
        done = float(self._run.currentValue())
        return _REACH * (1.0 - done) * math.sin(done * 3.0 * math.tau)
