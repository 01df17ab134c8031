"""The window's first paint: a stored picture of the first coupon, and the panels still empty.

A bare window takes a tenth of a second, and nothing of ours may add much to that. So this knows
the least of Qt that can paint, and the picture is a recording of the one painter's own strokes.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QColor, QPainter, QPicture
from PySide6.QtWidgets import QWidget

from trainer.arrangement import BAR, rooms_in

if TYPE_CHECKING:
    from PySide6.QtGui import QPaintEvent

__all__ = ["FORMAT", "FirstPaint"]

FORMAT: Final = "toe-and-throat/first-picture"


class FirstPaint(QWidget):
    """Paints what is known before anything is loaded.

    Parameters
    ----------
    folder
        Holds ``first.json`` and a picture for each look.
    look
        ``light`` or ``dark``.
    pictured
        Whether to show the first coupon; another tray's isn't known yet.

    Signals
    -------
    painted
        It stands on the screen.
    """

    painted = Signal()

    def __init__(self, folder: Path, look: str, *, pictured: bool) -> None:
        super().__init__()
        self._told: dict[str, Any] = {}
        self._picture: QPicture | None = None
        try:
            told = json.loads((folder / "first.json").read_text(encoding="utf-8"))
            self._colours = {name: str(told["looks"][look][name]) for name in _SURFACES}
        except (OSError, ValueError, KeyError, TypeError):
            # A damaged picture is no reason not to start: the bench follows anyway.
            return
        picture = QPicture()
        if pictured and told.get("format") == FORMAT and picture.load(str(folder / f"{look}.pic")):
            self._picture = picture
        self._told = told

    @property
    def pictured(self) -> bool:
        """Whether there is a picture to show."""
        return self._picture is not None

    def paintEvent(self, event: QPaintEvent) -> None:
        """Surfaces, and the picture where the canvas will be."""
        painter = QPainter(self)
        if self._told:
            self._paint_surfaces(painter)
        painter.end()
        self.painted.emit()

    def _paint_surfaces(self, painter: QPainter) -> None:
        rooms = rooms_in(self.width(), self.height())
        panel = QColor(self._colours["panel"])
        painter.fillRect(0, 0, self.width(), self.height(), QColor(self._colours["window"]))
        painter.fillRect(0, 0, self.width(), BAR, panel)
        painter.fillRect(*rooms.foot, panel)
        painter.fillRect(*rooms.picture, QColor(self._colours["light"]))
        if self._picture is not None:
            self._paint_picture(painter, self._picture, rooms.picture)

    def _paint_picture(
        self, painter: QPainter, picture: QPicture, room: tuple[int, int, int, int]
    ) -> None:
        """Replay the strokes, scaled and shifted to where the canvas's own fit will put them."""
        x, y, width, height = room
        box, stored = self._told["box"], self._told["scale"]
        scale = min(
            width / (box[2] - box[0]),
            height / (box[3] - box[1]),
            self._told["largest"] / self.devicePixelRatioF(),
        )
        zoom = scale / stored
        wide, high = self._told["size"]
        painter.setClipRect(x, y, width, height)
        painter.translate(x + width / 2.0, y + height / 2.0)
        painter.scale(zoom, zoom)
        painter.translate(-wide / 2.0, -high / 2.0)
        painter.drawPicture(0, 0, picture)


_SURFACES: Final = ("window", "panel", "light")
