"""The rack before the bench is there: leaves in the very places where the real ones will hang."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from PySide6.QtGui import QPainter

from trainer.arrangement import COMPACT_WIDTH, Box, leaf_places
from trainer.hanging import Dress, hanging_picture, paint_hanging, path_of

if TYPE_CHECKING:
    from PySide6.QtGui import QPixmap

__all__ = ["FirstRack"]


class FirstRack:
    """Leaves as they hang in the room that the bench will give them.

    Parameters
    ----------
    told
        What was recorded of the real rack.
    look
        ``light`` or ``dark``.

    Raises
    ------
    KeyError, TypeError
        If that isn't a recording.
    """

    def __init__(self, told: Mapping[str, Any], look: str) -> None:
        self._insets = {name: told["insets"][name] for name in ("ample", "narrow")}
        self._leaves = {
            leaf["mark"]: (float(leaf["share"]), path_of(leaf["strokes"]))
            for leaf in told["leaves"]
        }
        self._plain = Dress(*told["dresses"][look]["plain"])
        self._lit = Dress(*told["dresses"][look]["lit"])

    def places(self, foot: Box, window: int) -> dict[str, Box]:
        """Return where each leaf hangs, by its mark.

        Parameters
        ----------
        foot
            The strip below the picture.
        window
            The window's width.
        """
        left, top, right, bottom = self._insets["narrow" if window < COMPACT_WIDTH else "ample"]
        x, y, width, height = foot
        room = leaf_places(width - left - right, height - top - bottom, len(self._leaves))
        return {
            mark: (x + left + at[0], y + top + at[1], at[2], at[3])
            for mark, at in zip(self._leaves, room, strict=True)
        }

    def paint(self, painter: QPainter, places: Mapping[str, Box], lit: str | None) -> None:
        """Paint every leaf in its place, the one called `lit` as if under the pointer."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for mark, (x, y, width, height) in places.items():
            share, strokes = self._leaves[mark]
            painter.translate(x, y)
            dress = self._lit if mark == lit else self._plain
            paint_hanging(painter, (width, height), share, strokes, dress)
            painter.translate(-x, -y)

    def picture(self, mark: str, size: tuple[int, int], ratio: float) -> QPixmap:
        """Return one leaf alone, as it is carried away."""
        return hanging_picture(size, ratio, *self._leaves[mark], self._lit)
