"""The window's first paint: the first coupon, and the rack, whose leaves can be taken at once.

A bare window takes a tenth of a second, and nothing of ours may add much to that. So this knows
the least of Qt that can paint; the coupon is a recording of the one painter's own strokes. It lies
over the window until the bench beneath is ready, and hands over to it what was done meanwhile.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPicture,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QApplication, QWidget

from trainer.arrangement import BAR, Box, rooms_in
from trainer.first_rack import FirstRack, Gesture
from trainer.ghost import LeafGhost

__all__ = ["FORMAT", "FirstPaint"]

FORMAT: Final = "toe-and-throat/first-picture"

_SURFACES: Final = ("window", "panel", "light")


class FirstPaint(QWidget):
    """Paints what is known before anything is loaded, and lets a leaf be taken.

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

    Signals
    -------
    painted
        It stands on the screen.
    pulled, let_go
        After the handing over, as the rack's: a leaf's mark, the pointer's place on the screen.
    picked
        After the handing over: a leaf was clicked.
    freed
        No hand is on it any more, and none will be.
    """

    painted = Signal()
    pulled = Signal(str, QPoint)
    let_go = Signal(str, QPoint)
    picked = Signal(str)
    freed = Signal()

    def __init__(self, folder: Path, look: str, window: QWidget, *, pictured: bool) -> None:
        super().__init__(window)
        self._told: dict[str, Any] = {}
        self._picture: QPicture | None = None
        self._rack: FirstRack | None = None
        self._whole: QPixmap | None = None
        self._lit: str | None = None
        self._held: Gesture | None = None
        self._done: list[Gesture] = []
        self._over = False
        self._ghost = LeafGhost(window)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        self._read(folder, look, pictured=pictured)
        self.resize(window.size())
        window.installEventFilter(self)

    def _read(self, folder: Path, look: str, *, pictured: bool) -> None:
        try:
            told = json.loads((folder / "first.json").read_text(encoding="utf-8"))
            self._colours = {name: str(told["looks"][look][name]) for name in _SURFACES}
            rack = FirstRack(told["rack"], look) if pictured else None
        except (OSError, ValueError, KeyError, TypeError):
            # A damaged picture is no reason not to start: the bench follows anyway.
            return
        picture = QPicture()
        if pictured and told.get("format") == FORMAT and picture.load(str(folder / f"{look}.pic")):
            self._picture, self._rack = picture, rack
        self._told = told

    @property
    def pictured(self) -> bool:
        """Whether there is a picture to show."""
        return self._picture is not None

    @property
    def held(self) -> bool:
        """Whether a hand is on a leaf."""
        return self._held is not None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Cover the window in its new size."""
        if event.type() == QEvent.Type.Resize and isinstance(event, QResizeEvent):
            self.resize(event.size())
        return False

    # Painting

    def paintEvent(self, event: QPaintEvent) -> None:
        """The first time as fast as can be; then, under a leaf that is carried, from a copy."""
        painter = QPainter(self)
        if self._whole is not None:
            painter.drawPixmap(0, 0, self._whole)
        else:
            self._paint(painter)
        painter.end()
        self.painted.emit()

    def _paint(self, painter: QPainter) -> None:
        """Surfaces, the picture where the canvas will be, the leaves where the rack will be."""
        if not self._told:
            painter.fillRect(self.rect(), self.palette().window())
            return
        rooms = rooms_in(self.width(), self.height())
        panel = QColor(self._colours["panel"])
        painter.fillRect(0, 0, self.width(), self.height(), QColor(self._colours["window"]))
        painter.fillRect(0, 0, self.width(), BAR, panel)
        painter.fillRect(*rooms.foot, panel)
        painter.fillRect(*rooms.picture, QColor(self._colours["light"]))
        if self._picture is not None:
            painter.save()
            self._paint_picture(painter, self._picture, rooms.picture)
            painter.restore()
        if self._rack is not None:
            self._rack.paint(painter, self._places(), self._lit)

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

    def _keep_copy(self) -> None:
        """Paint once what stands still: replaying it for every move would hold the leaf up."""
        ratio = self.devicePixelRatioF()
        whole = QPixmap(self.size() * ratio)
        whole.setDevicePixelRatio(ratio)
        painter = QPainter(whole)
        self._paint(painter)
        painter.end()
        self._whole = whole

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another size is another picture."""
        super().resizeEvent(event)
        self._whole = None

    # A hand on a leaf

    def _places(self) -> list[tuple[str, Box]]:
        if self._rack is None:
            return []
        return self._rack.places(rooms_in(self.width(), self.height()).foot, self.width())

    def _leaf_at(self, at: QPoint) -> str | None:
        for mark, (x, y, width, height) in self._places():
            if x <= at.x() < x + width and y <= at.y() < y + height:
                return mark
        return None

    def _light(self, mark: str | None) -> None:
        """Light the leaf under the pointer, as the rack does."""
        if mark == self._lit or self._over:
            return
        self._lit, self._whole = mark, None
        shape = Qt.CursorShape.ArrowCursor if mark is None else Qt.CursorShape.OpenHandCursor
        self.setCursor(shape)
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the leaf that is pressed."""
        mark = self._leaf_at(event.position().toPoint())
        if mark is None or event.button() != Qt.MouseButton.LeftButton or self._over:
            return
        self._light(mark)
        self._ghost.hide()
        self._held = Gesture(mark, event.globalPosition().toPoint())
        self._done.append(self._held)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A leaf in hand goes along with the pointer."""
        held, at = self._held, event.globalPosition().toPoint()
        if held is None:
            self._light(self._leaf_at(event.position().toPoint()))
            return
        held.move(at, QApplication.startDragDistance())
        if not held.pulled:
            return
        if self._over:
            self.pulled.emit(held.mark, at)
        else:
            self._carry(held, at)

    def _carry(self, held: Gesture, at: QPoint) -> None:
        if self._whole is None:
            self._keep_copy()
        if not self._ghost.isVisible():
            place = dict(self._places())[held.mark]
            assert self._rack is not None
            self._picture_held = self._rack.picture(held.mark, place, self.devicePixelRatioF())
        self._ghost.carry(self._picture_held, at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go: over the picture the leaf waits there for the bench, elsewhere nothing comes."""
        held = self._held
        if held is None or event.button() != Qt.MouseButton.LeftButton:
            return
        self._held, held.over = None, True
        if self._over:
            self._end(held, event.globalPosition().toPoint())
        elif held.pulled and not self._is_over_picture(event.position().toPoint()):
            self._done.remove(held)
            self._ghost.hide()

    def _end(self, held: Gesture, at: QPoint) -> None:
        if held.pulled:
            self.let_go.emit(held.mark, at)
        else:
            self.picked.emit(held.mark)
        self.freed.emit()

    def _is_over_picture(self, at: QPoint) -> bool:
        x, y, width, height = rooms_in(self.width(), self.height()).picture
        return x <= at.x() < x + width and y <= at.y() < y + height

    def hand_over(self) -> list[Gesture]:
        """Step back behind the bench; return what was done until now, in order.

        A hand that is still on a leaf stays on this widget, which has the mouse: what it does from
        now on is told by signals.
        """
        self._over = True
        self._ghost.hide()
        self.lower()
        return self._done
