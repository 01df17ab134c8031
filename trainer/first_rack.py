"""The rack before the bench is there: leaves that can be taken at once, and followed up later.

What a hand does with them is kept as gestures, in order; the bench carries them out when it comes.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QPoint, QSize
from PySide6.QtGui import QPainter, QPainterPath, QPixmap

from trainer.arrangement import COMPACT_WIDTH, Box, leaf_places
from trainer.hanging import Dress, hanging_picture, paint_hanging, path_of

__all__ = ["FirstRack", "Gesture"]


class Gesture:
    """What a hand does with one leaf, from the press on.

    Parameters
    ----------
    mark
        Which leaf.
    start
        Where it was pressed, on the screen.
    """

    def __init__(self, mark: str, start: QPoint) -> None:
        self.mark = mark
        self.way = [start]
        self.pulled = False
        self.over = False

    def move(self, to: QPoint, far: int) -> None:
        """Go on to a point of the screen; `far` pixels from the start it is no click any more."""
        self.way.append(to)
        if (to - self.way[0]).manhattanLength() >= far:
            self.pulled = True


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
        self._leaves: list[tuple[str, float, QPainterPath]] = [
            (leaf["mark"], leaf["share"], path_of(leaf["strokes"])) for leaf in told["leaves"]
        ]
        self._plain = Dress(*told["dresses"][look]["plain"])
        self._lit = Dress(*told["dresses"][look]["lit"])

    def places(self, foot: Box, window: int) -> list[tuple[str, Box]]:
        """Return each leaf's mark and where it hangs.

        Parameters
        ----------
        foot
            The strip below the picture.
        window
            The window's width.
        """
        insets = self._insets["narrow" if window < COMPACT_WIDTH else "ample"]
        left, top, right, bottom = insets
        x, y, width, height = foot
        room = leaf_places(width - left - right, height - top - bottom, len(self._leaves))
        marks = (leaf[0] for leaf in self._leaves)
        return [
            (mark, (x + left + at[0], y + top + at[1], at[2], at[3]))
            for mark, at in zip(marks, room, strict=True)
        ]

    def paint(self, painter: QPainter, places: list[tuple[str, Box]], lit: str | None) -> None:
        """Paint every leaf in its place, the one called `lit` as if under the pointer."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for (mark, share, strokes), (_, place) in zip(self._leaves, places, strict=True):
            painter.save()
            painter.translate(place[0], place[1])
            dress = self._lit if mark == lit else self._plain
            paint_hanging(painter, (place[2], place[3]), share, strokes, dress)
            painter.restore()

    def picture(self, mark: str, place: Box, ratio: float) -> QPixmap:
        """Return one leaf alone, as it is carried away."""
        share, strokes = next(leaf[1:] for leaf in self._leaves if leaf[0] == mark)
        return hanging_picture(QSize(place[2], place[3]), ratio, share, strokes, self._lit)
