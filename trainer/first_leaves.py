"""The leaves of the first paint's rack, painted stroke by stroke once there is time for it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtGui import QPainter, QPixmap

from trainer.arrangement import Box
from trainer.hanging import Dress, hanging_picture, paint_hanging, path_of

__all__ = ["FirstLeaves"]


class FirstLeaves:
    """What the real rack paints, without the real leaves.

    Parameters
    ----------
    told
        What was recorded of the real rack.
    look
        ``light`` or ``dark``.
    """

    def __init__(self, told: Mapping[str, Any], look: str) -> None:
        self._leaves = {
            str(leaf["mark"]): (float(leaf["share"]), path_of(leaf["strokes"]))
            for leaf in told["leaves"]
        }
        self._plain = Dress(*told["dresses"][look]["plain"])
        self._lit = Dress(*told["dresses"][look]["lit"])

    def paint(self, painter: QPainter, places: Mapping[str, Box], lit: str | None) -> None:
        """Paint every leaf in its place, the one called `lit` as if under the pointer."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for mark, (x, y, width, height) in places.items():
            share, strokes = self._leaves[mark]
            painter.translate(x, y)
            dress = self._lit if mark == lit else self._plain
            paint_hanging(painter, (width, height), share, strokes, dress)
            painter.translate(-x, -y)

    def picture(self, mark: str, place: Box, ratio: float) -> QPixmap:
        """Return one leaf alone, as it is carried away."""
        return hanging_picture((place[2], place[3]), ratio, *self._leaves[mark], self._lit)
