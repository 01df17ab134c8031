"""The sign at the picture's edge when the leaf has left it: where it is, and a way back."""

from __future__ import annotations

from typing import Final, Literal

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtWidgets import QPushButton

from geometry.leaf import Leaf
from geometry.pose import Pose
from trainer.canvas.canvas import Canvas
from trainer.canvas.view import View
from trainer.look.icons import icon_pixmap
from trainer.look.tokens import LIGHT, Theme

__all__ = ["Side", "StrayCue", "leaf_rect", "side_of"]

Side = Literal["left", "right", "up", "down"]

_SEEN: Final = 32.0
"""Logical pixels: a leaf that shows less than this either way is as good as gone."""

_EDGE: Final = 10
_SIGN: Final = 18


def leaf_rect(leaf: Leaf, pose: Pose, view: View) -> QRectF:
    """Return what a leaf at a pose takes up in a view, logical pixels."""
    left, low, right, high = leaf.body.polygon.bounds
    corners = ((left, low), (right, low), (right, high), (left, high))
    spots = [view.to_screen(pose.to_section(corner)) for corner in corners]
    xs, ys = [x for x, _ in spots], [y for _, y in spots]
    return QRectF(QPointF(min(xs), min(ys)), QPointF(max(xs), max(ys)))


def side_of(rect: QRectF, frame: QRectF) -> Side | None:
    """Return past which side of `frame` a leaf that takes up `rect` lies; None if it is seen.

    Examples
    --------
    >>> frame = QRectF(0.0, 0.0, 400.0, 300.0)
    >>> side_of(QRectF(100.0, -500.0, 80.0, 80.0), frame)
    'up'
    >>> side_of(QRectF(100.0, 100.0, 80.0, 80.0), frame) is None
    True
    """
    seen = rect.intersected(frame)
    if seen.width() >= _SEEN and seen.height() >= _SEEN:
        return None
    beyond: dict[Side, float] = {
        "left": frame.left() - rect.right(),
        "right": rect.left() - frame.right(),
        "up": frame.top() - rect.bottom(),
        "down": rect.top() - frame.bottom(),
    }
    return max(beyond, key=lambda side: beyond[side])


class StrayCue(QPushButton):
    """A button over the picture, at the side where the leaf has gone.

    Parameters
    ----------
    canvas
        What it lies on, and follows.
    """

    def __init__(self, canvas: Canvas) -> None:
        super().__init__(canvas)
        self._canvas = canvas
        self._theme: Theme = LIGHT
        self._lies: tuple[Leaf, Pose] | None = None
        self.side: Side | None = None
        self.setProperty("kind", "cue")
        self.setAutoDefault(False)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setIconSize(QSize(_SIGN, _SIGN))
        self.setCursor(Qt.CursorShape.ArrowCursor)
        canvas.view_changed.connect(self._look)
        self.hide()

    def follow(self, leaf: Leaf | None, pose: Pose | None, theme: Theme) -> None:
        """Look after a leaf at a pose; None while there is none, or a hand is on it."""
        self._lies = None if leaf is None or pose is None else (leaf, pose)
        self._theme = theme
        self._look()

    def _look(self) -> None:
        """Stand where the leaf went, if it did."""
        frame = QRectF(self._canvas.rect())
        self.side = None
        if self._lies is not None:
            rect = leaf_rect(*self._lies, self._canvas.view)
            self.side = side_of(rect, frame)
            if self.side is not None:
                self._dress(self._lies[0].mark, self.side)
                self._place(rect, frame)
        self.setVisible(self.side is not None)

    def _dress(self, mark: str, side: Side) -> None:
        words = {
            "left": self.tr("Leaf {mark} lies to the left: bring it back"),
            "right": self.tr("Leaf {mark} lies to the right: bring it back"),
            "up": self.tr("Leaf {mark} lies above: bring it back"),
            "down": self.tr("Leaf {mark} lies below: bring it back"),
        }[side].format(mark=mark)
        if words != self.text():
            self.setText(words)
            self.setAccessibleName(words)
            self.setToolTip(self.tr("Or click the leaf on the rack again"))
        sign = icon_pixmap(f"arrow-{side}", self._theme.ink, _SIGN, self.devicePixelRatioF())
        self.setIcon(sign)
        self.resize(self.sizeHint())

    def _place(self, rect: QRectF, frame: QRectF) -> None:
        room = frame.adjusted(_EDGE, _EDGE, -_EDGE - self.width(), -_EDGE - self.height())
        middle = rect.center() - QPointF(self.width() / 2.0, self.height() / 2.0)
        x = min(max(middle.x(), room.left()), room.right())
        y = min(max(middle.y(), room.top()), room.bottom())
        self.move(round(x), round(y))
        self.raise_()
