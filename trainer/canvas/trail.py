"""The pointer's path between two frames: every point kept, told once a frame."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QElapsedTimer, QObject, Qt, QTimer, Signal

from trainer.canvas.drawing import Vec

__all__ = ["FRAME_MS", "Trail"]

FRAME_MS: Final = 8
"""Least time between two reports: half a frame at 60 Hz, so that none misses two frames."""


class Trail(QObject):
    """Collects pointer positions and reports them together.

    The first move after a rest is reported as soon as the events already waiting are in; those
    that follow at most once in `FRAME_MS`.
    """

    moved = Signal(list)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._points: list[Vec] = []
        self._since = QElapsedTimer()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self.flush)

    def add(self, point: Vec) -> None:
        """Take note of a position."""
        self._points.append(point)
        if not self._timer.isActive():
            rested = self._since.elapsed() if self._since.isValid() else FRAME_MS
            self._timer.start(max(0, FRAME_MS - int(rested)))

    def flush(self) -> None:
        """Report what has been collected, now."""
        self._timer.stop()
        if self._points:
            points, self._points = self._points, []
            self._since.start()
            self.moved.emit(points)
