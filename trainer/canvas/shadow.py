"""The soft shadow that a leaf throws on what is behind it."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QImage, QPaintEngine, QPainter, QPainterPath, QPen

from trainer.canvas.light import tint
from trainer.look.tokens import Theme

__all__ = ["SHADOW_REACH", "paint_shadow"]

SHADOW_REACH: Final = 16.0
"""Logical pixels by which a shadow may pass the outline."""

_ROOM: Final = int(SHADOW_REACH)
_ENDS: Final = 14
"""Logical pixels at each end of an edge in which its shadow may look other than further along."""


def paint_shadow(painter: QPainter, back: QPainterPath, theme: Theme, *, held: bool) -> None:
    """Paint the shadow of the edges in `back` (logical pixels), deeper while a hand holds the leaf.

    Only edges that touch nothing throw one: a shadow must never dim a gap.
    """
    if not _on_whole_pixels(painter) or not _is_square(back):
        _stroke(painter, back, theme, held=held)
        return
    rect = back.boundingRect()
    spare = (math.floor(rect.width()) - 2 * _ENDS, math.floor(rect.height()) - 2 * _ENDS)
    if min(spare) < 1:
        _stroke(painter, back, theme, held=held)
        return
    _stretch(painter, back, spare, theme, held=held)


def _stroke(painter: QPainter, back: QPainterPath, theme: Theme, *, held: bool) -> None:
    # Thin lines side by side, since one wide soft stroke takes five times as long to paint.
    depth = 9 if held else 6
    for index in range(1, depth + 1):
        fade = 1.0 - index / (depth + 1.0)
        pen = QPen(tint(theme.bench.shadow, 0.34 * fade * fade), 1.0)
        painter.strokePath(back.translated(0.55 * index, 0.9 * index), pen)


def _on_whole_pixels(painter: QPainter) -> bool:
    """Whether an image at whole logical pixels is shown pixel for pixel."""
    engine, put, ratio = painter.paintEngine(), painter.transform(), _ratio(painter)
    return (
        engine.type() == QPaintEngine.Type.Raster
        and not (put.isScaling() or put.isRotating())
        and all(float(value).is_integer() for value in (put.dx(), put.dy(), ratio))
    )


def _ratio(painter: QPainter) -> float:
    return painter.device().devicePixelRatioF()


def _is_square(back: QPainterPath) -> bool:
    """Whether two straight edges along the rows and columns of pixels meet in one corner."""
    if back.elementCount() != 3:
        return False
    a, c, b = (back.elementAt(index) for index in range(3))
    level, upright = abs(a.y - c.y) < 1e-6, abs(a.x - c.x) < 1e-6
    return (level and abs(c.x - b.x) < 1e-6) or (upright and abs(c.y - b.y) < 1e-6)


def _stretch(
    painter: QPainter, back: QPainterPath, spare: tuple[int, int], theme: Theme, *, held: bool
) -> None:
    """Paint it with shorter edges, then draw their middles out to length.

    Each pixel comes out as if stroked, in a seventh of the time: blending lines is slow.
    """
    rect, ratio = back.boundingRect(), _ratio(painter)
    left, top = math.floor(rect.left()) - _ROOM, math.floor(rect.top()) - _ROOM
    wide = math.ceil(rect.right()) + _ROOM - left - spare[0]
    high = math.ceil(rect.bottom()) + _ROOM - top - spare[1]
    image = QImage(
        round(wide * ratio), round(high * ratio), QImage.Format.Format_ARGB32_Premultiplied
    )
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    short = QPainter(image)
    short.setRenderHint(QPainter.RenderHint.Antialiasing)
    short.translate(-left, -top)
    _stroke(short, _shortened(back, spare), theme, held=held)
    short.end()
    corner = back.elementAt(1)
    split = _ROOM + _ENDS
    columns = ((0, split, 0), (split, 1, 0), (split + 1, wide - split - 1, spare[0]))
    rows = ((0, split, 0), (split, 1, 0), (split + 1, high - split - 1, spare[1]))
    arm_column = 2 if corner.x > rect.center().x() else 0
    arm_row = 2 if corner.y > rect.center().y() else 0
    for i, (x, across, right) in enumerate(columns):
        for j, (y, down, low) in enumerate(rows):
            if i != arm_column and j != arm_row:
                continue
            target = QRectF(
                left + x + right,
                top + y + low,
                across + (spare[0] if i == 1 else 0),
                down + (spare[1] if j == 1 else 0),
            )
            source = QRectF(x * ratio, y * ratio, across * ratio, down * ratio)
            painter.drawImage(target, image, source)


def _shortened(back: QPainterPath, spare: tuple[int, int]) -> QPainterPath:
    """The same corner, its edges shorter by so many logical pixels."""
    middle = back.boundingRect().center()
    points = []
    for index in range(3):
        at = back.elementAt(index)
        x = at.x - (spare[0] if at.x > middle.x() else 0)
        y = at.y - (spare[1] if at.y > middle.y() else 0)
        points.append(QPointF(x, y))
    path = QPainterPath(points[0])
    for point in points[1:]:
        path.lineTo(point)
    return path
