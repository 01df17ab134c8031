"""Hands on the first paint's rack: a leaf is carried at once, and the bench catches up later.

What a hand does is kept as gestures, in order; the bench carries them out when it comes. A hand
that still holds a leaf then goes on: the first paint has the mouse, and tells what it does.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication, QWidget

from trainer.first_leaves import FirstLeaves
from trainer.first_paint import FirstPaint
from trainer.ghost import LeafGhost

__all__ = ["FirstHands", "Gesture"]


class Gesture:
    """What a hand does with one leaf, from the press on.

    Parameters
    ----------
    mark
        Which leaf.
    start
        Where it was pressed, on the screen.

    Attributes
    ----------
    way
        Where the pointer went, on the screen, the press first.
    pulled
        Whether it went farther than a click does.
    ended
        Whether it was let go.
    """

    def __init__(self, mark: str, start: QPoint) -> None:
        self.mark = mark
        self.way = [start]
        self.pulled = False
        self.ended = False

    def move(self, to: QPoint) -> None:
        """Go on to a point of the screen."""
        self.way.append(to)
        if (to - self.way[0]).manhattanLength() >= QApplication.startDragDistance():
            self.pulled = True


class FirstHands(QObject):
    """Lets leaves be taken off the rack of the first paint.

    Parameters
    ----------
    paint
        Its mouse is listened to.
    window
        Where a leaf is carried.

    Signals
    -------
    pulled, let_go, picked
        After the handing over, as the rack's: the leaf's mark, the pointer's place on the screen.
    freed
        After the handing over: no hand is on it any more.
    """

    pulled = Signal(str, QPoint)
    let_go = Signal(str, QPoint)
    picked = Signal(str)
    freed = Signal()

    def __init__(self, paint: FirstPaint, window: QWidget) -> None:
        super().__init__(paint)
        self._paint = paint
        self._ghost = LeafGhost(window)
        self._held: Gesture | None = None
        self._done: list[Gesture] = []
        self._handed_over = False
        # Nothing beneath is painted as long as this covers it.
        paint.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        paint.setMouseTracking(True)
        self._leaves = FirstLeaves(paint.rack.told, paint.look) if paint.rack else None
        if self._leaves is not None:
            paint.be_exact(self._leaves)
        paint.installEventFilter(self)

    @property
    def holding(self) -> bool:
        """Whether a hand is on a leaf."""
        return self._held is not None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Hear what the mouse does."""
        if not isinstance(event, QMouseEvent):
            return False
        kind, left = event.type(), event.button() == Qt.MouseButton.LeftButton
        if kind == QEvent.Type.MouseMove:
            self._move(event)
        elif kind == QEvent.Type.MouseButtonRelease and left:
            self._release(event)
        elif left and not self._handed_over:
            self._press(event)
        return True

    def _press(self, event: QMouseEvent) -> None:
        """Take hold of the leaf that is pressed."""
        mark = self._paint.leaf_at(event.position().toPoint())
        if mark is not None:
            self._ghost.hide()
            self._light(mark)
            self._held = Gesture(mark, event.globalPosition().toPoint())
            self._done.append(self._held)

    def _move(self, event: QMouseEvent) -> None:
        """A leaf in hand goes along with the pointer; else one lights up under it."""
        held, at = self._held, event.globalPosition().toPoint()
        if held is None:
            self._light(self._paint.leaf_at(event.position().toPoint()))
            return
        held.move(at)
        if held.pulled and self._handed_over:
            self.pulled.emit(held.mark, at)
        elif held.pulled and self._leaves is not None:
            self._paint.keep_copy()
            place, ratio = self._paint.places()[held.mark], self._paint.devicePixelRatioF()
            self._ghost.carry(self._leaves.picture(held.mark, place, ratio), at)

    def _light(self, mark: str | None) -> None:
        if not self._handed_over and self._paint.light(mark):
            shape = Qt.CursorShape.ArrowCursor if mark is None else Qt.CursorShape.OpenHandCursor
            self._paint.setCursor(shape)

    def _release(self, event: QMouseEvent) -> None:
        """Let go: over the picture the leaf waits there for the bench, elsewhere nothing comes."""
        held = self._held
        if held is None:
            return
        self._held, held.ended = None, True
        if self._handed_over:
            self._tell_end(held, event.globalPosition().toPoint())
        elif held.pulled and not self._paint.is_over_picture(event.position().toPoint()):
            self._done.remove(held)
            self._ghost.hide()

    def _tell_end(self, held: Gesture, at: QPoint) -> None:
        if held.pulled:
            self.let_go.emit(held.mark, at)
        else:
            self.picked.emit(held.mark)
        self.freed.emit()

    def hand_over(self) -> list[Gesture]:
        """Let the bench come to the front; return what was done until now, in order."""
        self._handed_over = True
        self._paint.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent, False)
        self._paint.step_back()
        self._ghost.hide()
        self._ghost.deleteLater()
        return self._done
