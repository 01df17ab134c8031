"""The window's first paint: the first coupon, the rack, and the panels still empty.

A bare window takes a tenth of a second, and nothing of ours may add much to that. So this replays
recordings of the real painters' strokes. Even to name a colour would be too much: Qt's binding then
loads the namespace `Qt`, whose hundred enumerations take a quarter as long as the bare window.

It lies over the window until the bench beneath is ready.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter, QPicture, QPixmap
from PySide6.QtWidgets import QMainWindow, QWidget

from trainer.arrangement import BAR, Box, rooms_in
from trainer.first_bar import FirstBar
from trainer.first_rack import FirstRack, picture_of

if TYPE_CHECKING:
    from PySide6.QtCore import QPoint
    from PySide6.QtGui import QPaintEvent, QResizeEvent

    from trainer.first_leaves import FirstLeaves

__all__ = ["FORMAT", "FirstPaint", "MainWindow"]

FORMAT: Final = "toe-and-throat/first-picture"

_SURFACES: Final = ("window", "panel", "light")


class MainWindow(QMainWindow):
    """The window.

    Signals
    -------
    resized
        It has another size.
    """

    resized = Signal()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Tell of it."""
        super().resizeEvent(event)
        self.resized.emit()


class FirstPaint(QWidget):
    """Paints what is known before anything is loaded.

    Parameters
    ----------
    folder
        Holds ``first.json`` and a picture for each look.
    look
        ``light`` or ``dark``.
    window
        Is covered, whatever its size.
    pictured
        Whether to show the first coupon and its rack; another tray's aren't known yet.
    language
        The tag of the language that the bar speaks.

    Signals
    -------
    painted
        It stands on the screen.
    """

    painted = Signal()

    def __init__(
        self,
        folder: Path,
        look: str,
        window: MainWindow,
        *,
        pictured: bool,
        language: str = "en",
    ) -> None:
        super().__init__(window)
        self._language = language
        self._bar: FirstBar | None = None
        self._folder = folder
        self._with_picture = pictured
        self._told: dict[str, Any] = {}
        self._picture: QPicture | None = None
        self._rack: FirstRack | None = None
        self._leaves: FirstLeaves | None = None
        self._copy: QPixmap | None = None
        self._lit: str | None = None
        self._covers = True
        self.wear(look)
        self.resize(window.size())
        window.resized.connect(self._cover)

    def _cover(self) -> None:
        """Be as large as the window; a method, since those hear nothing once this is deleted."""
        self.resize(self.window().size())

    def wear(self, look: str) -> None:
        """Paint in this look from now on."""
        self.look = look
        self._told, self._picture, self._rack, self._leaves = {}, None, None, None
        self._bar = None
        self.change()
        try:
            told = json.loads((self._folder / "first.json").read_text(encoding="utf-8"))
            self._surfaces = {name: picture_of(told["looks"][look][name]) for name in _SURFACES}
            rack = FirstRack(told["rack"], look) if self._with_picture else None
        except (OSError, ValueError, KeyError, TypeError):
            # A damaged picture is no reason not to start: the bench follows anyway.
            return
        self._told = told
        try:
            self._bar = FirstBar(self._folder, look, self._language)
        except (OSError, ValueError, KeyError, TypeError):
            self._bar = None
        picture = QPicture()
        file = str(self._folder / f"{look}.pic")
        if self._with_picture and told.get("format") == FORMAT and picture.load(file):
            self._picture, self._rack = picture, rack

    @property
    def pictured(self) -> bool:
        """Whether there is a picture to show."""
        return self._picture is not None

    # What stands where

    def places(self) -> dict[str, Box]:
        """Return where each leaf hangs, by its mark; empty if none does."""
        if self._rack is None:
            return {}
        return self._rack.places(rooms_in(self.width(), self.height()).foot, self.width())

    def leaf_at(self, at: QPoint) -> str | None:
        """Return the mark of the leaf that hangs at a point, if one does."""
        x, y = at.x(), at.y()
        for mark, (left, top, width, height) in self.places().items():
            if left <= x < left + width and top <= y < top + height:
                return mark
        return None

    def is_over_picture(self, at: QPoint) -> bool:
        """Return whether a point is where the canvas will be."""
        x, y, width, height = rooms_in(self.width(), self.height()).picture
        return x <= at.x() < x + width and y <= at.y() < y + height

    # Painting

    @property
    def rack(self) -> FirstRack | None:
        """The rack, if there is one to show."""
        return self._rack

    def be_exact(self, leaves: FirstLeaves) -> None:
        """Have `leaves` painted stroke by stroke from now on; there is time for it."""
        self._leaves = leaves
        self.change()

    def change(self) -> None:
        """Paint anew."""
        self._copy = None
        self.update()

    def light(self, mark: str | None) -> bool:
        """Light a leaf, or none, as the rack does under the pointer; return whether that is new."""
        if mark == self._lit:
            return False
        self._lit = mark
        self.change()
        return True

    def keep_copy(self) -> None:
        """Paint once what stands still: replaying it for every move would hold a leaf up."""
        if self._copy is not None:
            return
        ratio = self.devicePixelRatioF()
        copy = QPixmap(self.size() * ratio)
        copy.setDevicePixelRatio(ratio)
        painter = QPainter(copy)
        self._paint(painter)
        painter.end()
        self._copy = copy

    def step_back(self) -> None:
        """Lie behind the bench, unseen. It keeps the mouse if it has it."""
        self._covers = False
        self.lower()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another size is another picture."""
        super().resizeEvent(event)
        self.change()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Surfaces, and the picture where the canvas will be."""
        if not self._covers:
            return
        painter = QPainter(self)
        if self._copy is not None:
            painter.drawPixmap(0, 0, self._copy)
        else:
            self._paint(painter)
        painter.end()
        self.painted.emit()

    def _paint(self, painter: QPainter) -> None:
        if not self._told:
            painter.fillRect(self.rect(), self.palette().window())
            return
        rooms = rooms_in(self.width(), self.height())
        self._fill(painter, (0, 0, self.width(), self.height()), "window")
        self._fill(painter, (0, 0, self.width(), BAR), "panel")
        if self._bar is not None:
            self._bar.replay(painter, self.width())
        self._fill(painter, rooms.foot, "panel")
        self._fill(painter, rooms.picture, "light")
        if self._picture is not None:
            painter.save()
            self._paint_picture(painter, self._picture, rooms.picture)
            painter.restore()
        if self._leaves is not None:
            self._leaves.paint(painter, self.places(), self._lit)
        elif self._rack is not None:
            self._rack.replay(painter, self.places())

    def _fill(self, painter: QPainter, room: Box, surface: str) -> None:
        """Fill a room: what was recorded is a square of one pixel."""
        painter.save()
        painter.translate(room[0], room[1])
        painter.scale(room[2], room[3])
        painter.drawPicture(0, 0, self._surfaces[surface])
        painter.restore()

    def _paint_picture(self, painter: QPainter, picture: QPicture, room: Box) -> None:
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
