"""The rack in the first paint: leaves in the very places where the real ones will hang."""

from __future__ import annotations

import binascii
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from PySide6.QtGui import QPicture

from trainer.arrangement import COMPACT_WIDTH, Box, leaf_places

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter

__all__ = ["FirstRack", "picture_of"]


def picture_of(text: str) -> QPicture:
    """Return the strokes that were written down as base64.

    Raises
    ------
    ValueError
        If that isn't base64.
    """
    picture = QPicture()
    picture.setData(binascii.a2b_base64(text))
    return picture


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
    KeyError, TypeError, ValueError
        If that isn't a recording.
    """

    def __init__(self, told: Mapping[str, Any], look: str) -> None:
        self.told = told
        self._insets = {name: told["insets"][name] for name in ("ample", "narrow")}
        self._marks = [str(leaf["mark"]) for leaf in told["leaves"]]
        self._recorded = [picture_of(leaf) for leaf in told["recorded"][look]]
        self._width, self._height = told["size"]

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
        room = leaf_places(width - left - right, height - top - bottom, len(self._marks))
        return {
            mark: (x + left + at[0], y + top + at[1], at[2], at[3])
            for mark, at in zip(self._marks, room, strict=True)
        }

    def replay(self, painter: QPainter, places: Mapping[str, Box]) -> None:
        """Paint every leaf in its place from the recording, without naming a colour.

        In rooms of another size than it was recorded in, lines come out a little thick or thin.
        """
        for picture, (x, y, width, height) in zip(self._recorded, places.values(), strict=True):
            painter.save()
            painter.translate(x, y)
            painter.scale(width / self._width, height / self._height)
            painter.drawPicture(0, 0, picture)
            painter.restore()
